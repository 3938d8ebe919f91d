/* papers/order.h -- the tables of an order, on any sheet. */
#ifndef SAWBILL_PAPERS_ORDER_H
#define SAWBILL_PAPERS_ORDER_H

#include "sawbill/papers.h"

/* What to buy of whom, totals by merchant, what comes from the rack. */
void order_fill(sb_run *run, sb_sheet *sheet, const sb_shop *shop, const sb_order *order);

/* What is bought only because the rack falls under its minimum. */
sb_money order_restock(const sb_order *order);

/* How much a line takes, in words: "3", "0.6 l". */
const char *order_amount(sb_run *run, const sb_order_line *line, const sb_style *style);

/* What one of a line is: "3000 mm", "2440 x 1220 mm", "pack of 200", "2.5 l", "" where it is a single thing. */
const char *order_size(sb_run *run, const sb_order_line *line, const sb_style *style);

#endif
