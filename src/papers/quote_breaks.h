/* papers/quote_breaks.h -- other numbers of pieces on the customer's paper. */
#ifndef SAWBILL_PAPERS_QUOTE_BREAKS_H
#define SAWBILL_PAPERS_QUOTE_BREAKS_H

#include "sawbill/papers.h"

/* The prices of one of the options, `way`, in every number; the job's own stands out. */
void quote_breaks(sb_run *run, sb_sheet *sheet, const sb_breaks *breaks, size_t way, const sb_wording *words);

#endif
