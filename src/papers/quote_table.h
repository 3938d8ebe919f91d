/* papers/quote_table.h -- the priced pieces of one option on the customer's paper. */
#ifndef SAWBILL_PAPERS_QUOTE_TABLE_H
#define SAWBILL_PAPERS_QUOTE_TABLE_H

#include "papers/quote_sizes.h"

enum {
    QUOTE_TITLE,
    QUOTE_SIZE,
    QUOTE_COUNT,
    QUOTE_UNIT,
    QUOTE_AMOUNT,
    QUOTE_TAX /* by line; behind it, or in its place, the rate where there are several */
};

/* Pieces with unit and line price, supplement, delivery, taxes, total, payments; what the discount was. `leading`: its totals get
 * names. */
void quote_table(sb_run *run, sb_sheet *sheet, const sb_estimate *estimate, const sb_wording *words,
                 const quote_sizes *sizes, bool leading);

/* List price, discount and what is left, right under the table `above`, whose rows may be yet to come, where the shop shows discounts and the job has one: quote_discount.c */
void quote_discount(sb_run *run, sb_sheet *sheet, const sb_estimate *estimate, const sb_wording *words, const sb_table *above);
/* Whether it does; if so the pieces' sum as the quote shows them, and the list price of which the discount is the told share. */
bool quote_shows_discount(const sb_estimate *estimate);
sb_money quote_pieces_sum(const sb_estimate *estimate);
sb_money quote_list_price(const sb_estimate *estimate);

#endif
