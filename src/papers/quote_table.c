/* The priced pieces of one option: every total follows from the cells above it. */
#include "papers/quote_table.h"

#include "papers/relate.h"
#include "papers/wording.h"

enum {
    TITLE,
    SIZE,
    COUNT,
    UNIT,
    AMOUNT,
    TAX
};

typedef struct ledger {
    sb_run *run;
    const sb_estimate *e;
    const sb_wording *words;
    sb_table *table;
    int digits;
    const sb_tax_line *tax; /* NULL: none */
    bool gross, by_line, leading;
    size_t tax_row; /* where the rate of the tax stands */
} ledger;

static const char *word(const ledger *l, const char *key) {
    return sb_wording_text(l->run, l->words, key);
}

static const sb_relation *at(const ledger *l, size_t row, size_t column) {
    return sb_rel_cell(l->run, l->table, row, column);
}

static size_t last(const ledger *l) {
    return l->table->rows.count - 1;
}

static sb_cell named(const ledger *l, sb_cell cell, const char *name) {
    return l->leading ? sb_cell_named(cell, name) : cell;
}

/* ---- lines ---- */

/* The tax of one amount: on it, or inside it. */
static const sb_relation *tax_of(const ledger *l, const sb_relation *amount) {
    const sb_relation *rate = at(l, l->tax_row, UNIT);
    if (!l->gross)
        return rel_product(l->run, amount, rate, l->digits);
    return rel_less(l->run, amount, rel_before(l->run, amount, rate, l->digits), l->digits);
}

static sb_money tax_in(const ledger *l, sb_money amount) {
    return l->gross ? sb_tax_inside(amount, l->tax->tax->rate) : sb_tax_of(amount, l->tax->tax->rate);
}

static void put_line_tax(const ledger *l, sb_cell *row, sb_money amount) {
    if (l->by_line)
        row[TAX] = sb_cell_related(sb_cell_money(tax_in(l, amount)), tax_of(l, at(l, last(l), AMOUNT)));
}

static void put_piece(const ledger *l, const sb_price_line *line) {
    const sb_takeoff_piece *piece = &l->e->takeoff->pieces.items[line->piece];
    sb_cell *row = sb_row_add(l->run, l->table);
    row[TITLE] = sb_cell_text(piece->title);
    row[SIZE] = sb_cell_text(piece->size_text);
    row[COUNT] = sb_cell_count(line->count);
    row[UNIT] = sb_cell_money(line->unit);
    row[AMOUNT] = sb_cell_related(sb_cell_money(line->line), rel_product(l->run, at(l, last(l), COUNT),
                                                                         at(l, last(l), UNIT), l->digits));
    put_line_tax(l, row, line->line);
}

static void put_delivery(ledger *l) {
    if (l->e->delivery_line.minor == 0)
        return;
    const char *text = l->e->job->delivery.text;
    sb_cell *row = sb_row_add(l->run, l->table);
    row[TITLE] = sb_cell_text(word(l, "delivery"));
    row[SIZE] = sb_cell_text(text ? text : "");
    row[AMOUNT] = sb_cell_money(l->e->delivery_line);
    put_line_tax(l, row, l->e->delivery_line);
}

/* ---- totals ---- */

static sb_cell *total_row(const ledger *l, const char *label) {
    sb_cell *row = sb_total_row_add(l->run, l->table);
    row[TITLE] = sb_cell_text(label);
    return row;
}

static size_t put_total(const ledger *l, const char *label, sb_money amount, const sb_relation *relation,
                        const char *name) {
    sb_cell *row = total_row(l, label);
    row[AMOUNT] = named(l, sb_cell_related(sb_cell_money(amount), relation), name);
    return last(l);
}

static void embolden(const ledger *l, size_t row) {
    sb_cell *cells = l->table->rows.items[row];
    cells[TITLE].strong = cells[AMOUNT].strong = true;
}

static size_t put_tax(const ledger *l, const char *label, const sb_relation *of) {
    const sb_relation *relation = l->by_line ? rel_sum_of(l->run, l->table, TAX, l->digits) : tax_of(l, of);
    sb_cell *row = total_row(l, label);
    row[UNIT] = named(l, sb_cell_share(l->tax->tax->rate), "tax_rate");
    row[AMOUNT] = named(l, sb_cell_related(sb_cell_money(l->tax->amount), relation), "tax");
    return last(l);
}

/* Net prices: the tax comes on top. */
static size_t close_net(const ledger *l, const sb_relation *lines) {
    if (!l->tax)
        return put_total(l, word(l, "total"), l->e->gross, lines, "total");
    size_t net = put_total(l, word(l, "net"), l->e->net, lines, "net");
    size_t tax = put_tax(l, l->tax->tax->title, at(l, net, AMOUNT));
    const sb_relation *both = rel_plus(l->run, at(l, net, AMOUNT), at(l, tax, AMOUNT), l->digits);
    return put_total(l, word(l, "total-gross"), l->e->gross, both, "total");
}

/* Gross prices: the tax lies inside. */
static size_t close_gross(const ledger *l, const sb_relation *lines) {
    size_t total = put_total(l, word(l, "total-gross"), l->e->gross, lines, "total");
    size_t tax = put_tax(l, wording_fill(l->run, l->words, "tax-included", "tax", l->tax->tax->title),
                         at(l, total, AMOUNT));
    put_total(l, word(l, "net"), l->e->net,
              rel_less(l->run, at(l, total, AMOUNT), at(l, tax, AMOUNT), l->digits), "net");
    return total;
}

static void put_deposit(const ledger *l, size_t total) {
    if (l->e->deposit_rate.ppm == 0)
        return;
    sb_cell *row = total_row(l, word(l, "deposit"));
    row[UNIT] = named(l, sb_cell_share(l->e->deposit_rate), "deposit_rate");
    row[AMOUNT] =
        named(l,
              sb_cell_related(sb_cell_money(l->e->deposit),
                              rel_product(l->run, at(l, total, AMOUNT), at(l, last(l), UNIT), l->digits)),
              "deposit");
}

/* ---- discount ---- */

static sb_money pieces_sum(const ledger *l) {
    sb_money sum = {0};
    for (size_t i = 0; i < l->e->pieces.count; i++)
        sum = sb_money_add(sum, l->e->pieces.items[i].line);
    return sum;
}

static void put_step(const ledger *l, const char *label, sb_share share, sb_money amount) {
    sb_cell *row = sb_row_add(l->run, l->table);
    row[TITLE] = sb_cell_text(label);
    if (share.ppm)
        row[UNIT] = sb_cell_share(share);
    row[AMOUNT] = sb_cell_money(amount);
}

static void relate(const ledger *l, size_t row, const sb_relation *relation) {
    l->table->rows.items[row][AMOUNT].relation = relation;
}

/* The lines above are after discount and on the price point. The list price is the one of which the discount is the told share
 * to the cent. */
static void put_discount(const ledger *l, const sb_table *above) {
    enum {
        LIST,
        LESS,
        LEFT
    };
    sb_share rate = l->e->discount_rate;
    sb_money left = pieces_sum(l), list = {sb_mul_div(left.minor, 1000000, sb_sub(1000000, rate.ppm))};
    const sb_relation *lines =
        sb_rel_round(l->run, sb_rel_sum(l->run, above, AMOUNT, 0, l->e->pieces.count - 1), l->digits);
    put_step(l, word(l, "list-price"), (sb_share){0}, list);
    put_step(l, word(l, "discount"), rate, sb_money_sub(left, list));
    put_step(l, word(l, "discounted"), (sb_share){0}, left);
    relate(l, LIST, rel_with_margin(l->run, lines, at(l, LESS, UNIT), l->digits));
    relate(l, LESS,
           rel_less(l->run, sb_rel_number(l->run, 0, 0),
                    rel_product(l->run, at(l, LIST, AMOUNT), at(l, LESS, UNIT), l->digits), l->digits));
    relate(l, LEFT, rel_plus(l->run, at(l, LIST, AMOUNT), at(l, LESS, AMOUNT), l->digits));
}

static bool shows_discount(const sb_estimate *e) {
    return !e->shop->settings.discount_hidden && e->discount_rate.ppm > 0 && e->discount_rate.ppm < 1000000 &&
           e->pieces.count > 0;
}

static sb_table *new_table(sb_run *run, sb_sheet *sheet, const ledger *l) {
    const char *unit = !l->tax ? "unit-price" : l->gross ? "unit-price-gross" : "unit-price-net";
    const char *headings =
        sb_pool_print(run->pool, "%s|%s|%s>|%s>|%s>%s%s", word(l, "piece"), word(l, "size"), word(l, "count"),
                      word(l, unit), word(l, "amount"), l->by_line ? "|" : "",
                      l->by_line ? sb_pool_print(run->pool, "%s>", word(l, "tax")) : "");
    return sb_table_add(run, sheet, "", headings);
}

void quote_table(sb_run *run, sb_sheet *sheet, const sb_estimate *e, const sb_wording *words, bool leading) {
    const sb_settings *s = &e->shop->settings;
    ledger l = {.run = run, .e = e, .words = words, .digits = s->currency.digits, .leading = leading};
    l.tax = e->taxes.count ? &e->taxes.items[0] : NULL;
    l.gross = s->prices_gross && l.tax;
    l.by_line = s->tax_per_line && l.tax;
    l.table = new_table(run, sheet, &l);
    /* the tax stands in the second of the total rows, under the net or the gross total */
    l.tax_row = e->pieces.count + (e->delivery_line.minor != 0) + 1;
    for (size_t i = 0; i < e->pieces.count; i++)
        put_piece(&l, &e->pieces.items[i]);
    put_delivery(&l);
    const sb_relation *lines = rel_sum_of(run, l.table, AMOUNT, l.digits);
    size_t total = l.gross ? close_gross(&l, lines) : close_net(&l, lines);
    embolden(&l, total);
    put_deposit(&l, total);
    if (!shows_discount(e))
        return;
    const sb_table *above = l.table;
    l.table = sb_table_add(run, sheet, "", "||>|>|>");
    l.table->no_heading = true;
    put_discount(&l, above);
}
