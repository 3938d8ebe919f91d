/* What a job's discount is, below the prices that it is in. */
#include "papers/quote_table.h"

#include "papers/relate.h"

typedef struct discounting {
    sb_run *run;
    const sb_estimate *e;
    const sb_wording *words;
    sb_table *table;
    int digits;
} discounting;

static const char *word(const discounting *d, const char *key) {
    return sb_wording_text(d->run, d->words, key);
}

static const sb_relation *at(const discounting *d, size_t row, size_t column) {
    return sb_rel_cell(d->run, d->table, row, column);
}

sb_money quote_pieces_sum(const sb_estimate *e) {
    sb_money sum = {0};
    for (size_t i = 0; i < e->pieces.count; i++)
        sum = sb_money_add(sum, e->pieces.items[i].line);
    return sum;
}

sb_money quote_list_price(const sb_estimate *e) {
    return (sb_money){
        sb_mul_div(quote_pieces_sum(e).minor, 1000000, sb_sub(1000000, e->discount_rate.ppm))};
}

static void put_step(const discounting *d, const char *label, sb_share share, sb_money amount) {
    sb_cell *row = sb_row_add(d->run, d->table);
    row[QUOTE_TITLE] = sb_cell_text(label);
    if (share.ppm)
        row[QUOTE_UNIT] = sb_cell_rate(share);
    row[QUOTE_AMOUNT] = sb_cell_money(amount);
}

static void relate(const discounting *d, size_t row, const sb_relation *relation) {
    d->table->rows.items[row][QUOTE_AMOUNT].relation = relation;
}

/* The lines above are after discount and on the price point. The list price is the one of which the discount is the told share
 * to the cent. */
static void put_discount(const discounting *d, const sb_table *above) {
    enum {
        LIST,
        LESS,
        LEFT
    };
    sb_share rate = d->e->discount_rate;
    sb_money left = quote_pieces_sum(d->e), list = quote_list_price(d->e);
    const sb_relation *lines =
        sb_rel_round(d->run, sb_rel_sum(d->run, above, QUOTE_AMOUNT, 0, d->e->pieces.count - 1), d->digits);
    put_step(d, word(d, "list-price"), (sb_share){0}, list);
    put_step(d, word(d, "discount"), rate, sb_money_sub(left, list));
    put_step(d, word(d, "discounted"), (sb_share){0}, left);
    relate(d, LIST, rel_with_margin(d->run, lines, at(d, LESS, QUOTE_UNIT), d->digits));
    relate(d, LESS,
           rel_less(d->run, sb_rel_number(d->run, 0, 0),
                    rel_product(d->run, at(d, LIST, QUOTE_AMOUNT), at(d, LESS, QUOTE_UNIT), d->digits),
                    d->digits));
    relate(d, LEFT, rel_plus(d->run, at(d, LIST, QUOTE_AMOUNT), at(d, LESS, QUOTE_AMOUNT), d->digits));
}

bool quote_shows_discount(const sb_estimate *e) {
    return !e->shop->settings.discount_hidden && e->discount_rate.ppm > 0 && e->discount_rate.ppm < 1000000 &&
           e->pieces.count > 0;
}

/* As many as above, so that a page puts both into the same columns. */
static const char *columns_like(sb_run *run, const sb_table *above) {
    const char *headings = "||>|>|>";
    for (size_t i = QUOTE_TAX; i < above->column_count; i++)
        headings = sb_pool_print(run->pool, "%s|>", headings);
    return headings;
}

void quote_discount(sb_run *run, sb_sheet *sheet, const sb_estimate *e, const sb_wording *words,
                    const sb_table *above) {
    discounting d = {.run = run, .e = e, .words = words, .digits = e->shop->settings.currency.digits};
    if (!quote_shows_discount(e))
        return;
    d.table = sb_table_add(run, sheet, "", columns_like(run, above));
    d.table->no_heading = true;
    put_discount(&d, above);
}
