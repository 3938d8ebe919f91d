/* papers/why_measures.h -- what the cutting plan answers for. */
#ifndef SAWBILL_PAPERS_WHY_MEASURES_H
#define SAWBILL_PAPERS_WHY_MEASURES_H

#include "papers/why.h"

void why_plan(why *w); /* what it costs, and what no plan can cost less than */
void why_boards(why *w);
void why_sheets(why *w);

#endif
