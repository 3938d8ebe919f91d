/* papers/quote_table.h -- the priced pieces of one option on the customer's paper. */
#ifndef SAWBILL_PAPERS_QUOTE_TABLE_H
#define SAWBILL_PAPERS_QUOTE_TABLE_H

#include "sawbill/papers.h"

/* Pieces with unit and line price, delivery, tax, total, deposit; what the discount was. `leading`: its totals get names. */
void quote_table(sb_run *run, sb_sheet *sheet, const sb_estimate *estimate, const sb_wording *words,
                 bool leading);

#endif
