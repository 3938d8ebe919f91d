/* papers/quote_views.h -- what a piece looks like, for the customer: front and side in outline, with outside measures. */
#ifndef SAWBILL_PAPERS_QUOTE_VIEWS_H
#define SAWBILL_PAPERS_QUOTE_VIEWS_H

#include "papers/quote_sizes.h"

/* A picture of the piece where its recipe gives outlines; of them and the piece's title nothing else is shown. `number`: from 1. */
void quote_views(sb_run *run, sb_sheet *sheet, const sb_takeoff_piece *piece, const quote_sizes *sizes,
                 const sb_wording *words, size_t number);

#endif
