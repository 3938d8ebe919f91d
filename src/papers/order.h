/* papers/order.h -- the tables of an order, on any sheet. */
#ifndef SAWBILL_PAPERS_ORDER_H
#define SAWBILL_PAPERS_ORDER_H

#include "sawbill/papers.h"

/* What to buy of whom, totals by merchant, what comes from the rack. */
void order_fill(sb_run *run, sb_sheet *sheet, const sb_shop *shop, const sb_order *order);

#endif
