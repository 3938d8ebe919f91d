/* The priced pieces of one option: every total follows from the cells above it. */
#include "papers/quote_table.h"

#include "papers/relate.h"
#include "papers/wording.h"

typedef struct ledger {
    sb_run *run;
    const sb_estimate *e;
    const sb_wording *words;
    const quote_sizes *sizes;
    sb_table *table;
    sb_table *rates; /* NULL: one tax or none */
    int digits;
    const sb_tax_line *tax; /* NULL: none */
    bool gross, by_line, leading;
    size_t lines;   /* pieces, supplement, delivery */
    size_t tax_row; /* where the rate of the only tax stands */
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

static const sb_tax *line_tax(const ledger *l, size_t line) {
    const sb_estimate *e = l->e;
    if (line < e->pieces.count)
        return e->pieces.items[line].tax;
    return line == e->pieces.count && e->supplement_line.minor != 0 ? e->job_tax : e->delivery_tax;
}

static size_t tax_index(const ledger *l, const sb_tax *tax) {
    size_t i = 0;
    while (i + 1 < l->e->taxes.count && l->e->taxes.items[i].tax != tax)
        i++;
    return i;
}

static size_t rate_column(const ledger *l) {
    return l->by_line ? QUOTE_TAX + 1 : QUOTE_TAX;
}

/* The tax of one amount: on it, or inside it. */
static const sb_relation *tax_of(const ledger *l, const sb_relation *amount) {
    const sb_relation *rate = l->rates ? at(l, last(l), rate_column(l)) : at(l, l->tax_row, QUOTE_UNIT);
    if (!l->gross)
        return rel_product(l->run, amount, rate, l->digits);
    return rel_less(l->run, amount, rel_before(l->run, amount, rate, l->digits), l->digits);
}

static void put_line_tax(const ledger *l, sb_cell *row, sb_money amount) {
    if (!l->tax)
        return;
    sb_share rate = line_tax(l, last(l))->rate;
    sb_money tax = l->gross ? sb_tax_inside(amount, rate) : sb_tax_of(amount, rate);
    if (l->rates)
        row[rate_column(l)] = sb_cell_rate(rate);
    if (l->by_line)
        row[QUOTE_TAX] = sb_cell_related(sb_cell_money(tax), tax_of(l, at(l, last(l), QUOTE_AMOUNT)));
}

static void put_piece(const ledger *l, const sb_price_line *line) {
    const sb_takeoff_piece *piece = &l->e->takeoff->pieces.items[line->piece];
    sb_cell *row = sb_row_add(l->run, l->table);
    row[QUOTE_TITLE] = sb_cell_text(piece->title);
    row[QUOTE_SIZE] = sb_cell_text(quote_size(l->run, l->sizes, piece));
    row[QUOTE_COUNT] = sb_cell_count(line->count);
    row[QUOTE_UNIT] = sb_cell_money(line->unit);
    row[QUOTE_AMOUNT] =
        sb_cell_related(sb_cell_money(line->line), rel_product(l->run, at(l, last(l), QUOTE_COUNT),
                                                               at(l, last(l), QUOTE_UNIT), l->digits));
    put_line_tax(l, row, line->line);
}

static void put_supplement(const ledger *l) {
    if (l->e->supplement_line.minor == 0)
        return;
    sb_cell *row = sb_row_add(l->run, l->table);
    row[QUOTE_TITLE] = sb_cell_text(word(l, "supplement"));
    row[QUOTE_AMOUNT] = sb_cell_money(l->e->supplement_line);
    put_line_tax(l, row, l->e->supplement_line);
}

static void put_delivery(ledger *l) {
    if (l->e->delivery_line.minor == 0)
        return;
    const char *text = l->e->job->delivery.text;
    sb_cell *row = sb_row_add(l->run, l->table);
    row[QUOTE_TITLE] = sb_cell_text(word(l, "delivery"));
    row[QUOTE_SIZE] = sb_cell_text(text ? text : "");
    row[QUOTE_AMOUNT] = sb_cell_money(l->e->delivery_line);
    put_line_tax(l, row, l->e->delivery_line);
}

/* ---- totals ---- */

static sb_cell *total_row(const ledger *l, const char *label) {
    sb_cell *row = sb_total_row_add(l->run, l->table);
    row[QUOTE_TITLE] = sb_cell_text(label);
    return row;
}

static size_t put_total(const ledger *l, const char *label, sb_money amount, const sb_relation *relation,
                        const char *name) {
    sb_cell *row = total_row(l, label);
    row[QUOTE_AMOUNT] = named(l, sb_cell_related(sb_cell_money(amount), relation), name);
    return last(l);
}

static void embolden(const ledger *l, size_t row) {
    sb_cell *cells = l->table->rows.items[row];
    cells[QUOTE_TITLE].strong = cells[QUOTE_AMOUNT].strong = true;
}

/* ---- several taxes: a table of their own ---- */

enum {
    BY_TAX,
    BY_RATE,
    BY_BASE,
    BY_AMOUNT
};

/* The sum of a column over the lines of one tax; the job has few kinds of piece. */
static const sb_relation *sum_of(const ledger *l, size_t tax, size_t column) {
    const sb_relation *sum = NULL;
    for (size_t first = 0, next; first < l->lines; first = next) {
        for (next = first; next < l->lines && tax_index(l, line_tax(l, next)) == tax;)
            next++;
        if (next == first) {
            next++;
            continue;
        }
        const sb_relation *run = sb_rel_sum(l->run, l->table, column, first, next - 1);
        sum = sum ? sb_rel(l->run, SB_REL_ADD, sum, run) : run;
    }
    return sb_rel_round(l->run, sum ? sum : sb_rel_number(l->run, 0, 0), l->digits);
}

static void relate_rate(const ledger *l, sb_cell *row, size_t tax) {
    const sb_relation *lines = sum_of(l, tax, QUOTE_AMOUNT),
                      *rate = sb_rel_cell(l->run, l->rates, tax, BY_RATE);
    const sb_relation *base = sb_rel_cell(l->run, l->rates, tax, BY_BASE);
    const sb_relation *amount = sb_rel_cell(l->run, l->rates, tax, BY_AMOUNT);
    if (l->by_line) {
        row[BY_AMOUNT].relation = sum_of(l, tax, QUOTE_TAX);
        row[BY_BASE].relation = l->gross ? rel_less(l->run, lines, amount, l->digits) : lines;
    } else {
        row[BY_BASE].relation = l->gross ? rel_before(l->run, lines, rate, l->digits) : lines;
        row[BY_AMOUNT].relation =
            l->gross ? rel_less(l->run, lines, base, l->digits) : rel_product(l->run, base, rate, l->digits);
    }
}

static void put_rates(const ledger *l) {
    for (size_t i = 0; i < l->e->taxes.count; i++) {
        const sb_tax_line *line = &l->e->taxes.items[i];
        sb_cell *row = sb_row_add(l->run, l->rates);
        row[BY_TAX] = sb_cell_text(line->tax->title);
        row[BY_RATE] = sb_cell_rate(line->tax->rate);
        row[BY_BASE] = sb_cell_money(line->base);
        row[BY_AMOUNT] = sb_cell_money(line->amount);
        relate_rate(l, row, i);
    }
}

static size_t put_all_taxes(const ledger *l, const char *label) {
    const sb_relation *all =
        sb_rel_round(l->run, sb_rel_sum(l->run, l->rates, BY_AMOUNT, 0, l->e->taxes.count - 1), l->digits);
    return put_total(l, label, l->e->tax, all, "tax");
}

static size_t put_tax(const ledger *l, const char *label, const sb_relation *of) {
    if (l->rates)
        return put_all_taxes(l, label);
    const sb_relation *relation =
        l->by_line ? rel_sum_of(l->run, l->table, QUOTE_TAX, l->digits) : tax_of(l, of);
    sb_cell *row = total_row(l, label);
    row[QUOTE_UNIT] = named(l, sb_cell_rate(l->tax->tax->rate), "tax_rate");
    row[QUOTE_AMOUNT] = named(l, sb_cell_related(sb_cell_money(l->tax->amount), relation), "tax");
    return last(l);
}

/* Net prices: the tax comes on top. */
static size_t close_net(const ledger *l, const sb_relation *lines) {
    if (!l->tax)
        return put_total(l, word(l, "total"), l->e->gross, lines, "total");
    size_t net = put_total(l, word(l, "net"), l->e->net, lines, "net");
    size_t tax = put_tax(l, l->rates ? word(l, "tax") : l->tax->tax->title, at(l, net, QUOTE_AMOUNT));
    const sb_relation *both = rel_plus(l->run, at(l, net, QUOTE_AMOUNT), at(l, tax, QUOTE_AMOUNT), l->digits);
    return put_total(l, word(l, "total-gross"), l->e->gross, both, "total");
}

/* Gross prices: the tax lies inside. */
static size_t close_gross(const ledger *l, const sb_relation *lines) {
    size_t total = put_total(l, word(l, "total-gross"), l->e->gross, lines, "total");
    const char *title = l->rates ? word(l, "tax") : l->tax->tax->title;
    size_t tax =
        put_tax(l, wording_fill(l->run, l->words, "tax-included", "tax", title), at(l, total, QUOTE_AMOUNT));
    put_total(l, word(l, "net"), l->e->net,
              rel_less(l->run, at(l, total, QUOTE_AMOUNT), at(l, tax, QUOTE_AMOUNT), l->digits), "net");
    return total;
}

/* ---- what is due when ---- */

/* What is due up to here: one rounding over all shares since `first`, so that payments add up to the total. */
static const sb_relation *due(const ledger *l, size_t total, size_t first, size_t end) {
    if (first == end)
        return sb_rel_number(l->run, 0, 0);
    return rel_product(l->run, at(l, total, QUOTE_AMOUNT),
                       sb_rel_sum(l->run, l->table, QUOTE_UNIT, first, end - 1), l->digits);
}

static void put_payment(const ledger *l, const char *label, sb_share share, sb_money amount, size_t total,
                        size_t first, const char *name) {
    sb_cell *row = total_row(l, label);
    size_t here = last(l);
    row[QUOTE_UNIT] = sb_cell_rate(share);
    row[QUOTE_AMOUNT] =
        named(l,
              sb_cell_related(sb_cell_money(amount), rel_less(l->run, due(l, total, first, here + 1),
                                                              due(l, total, first, here), l->digits)),
              name);
}

static void put_payments(const ledger *l, size_t total) {
    const sb_estimate *e = l->e;
    size_t first = l->table->rows.count;
    if (e->deposit_rate.ppm != 0) {
        put_payment(l, word(l, "deposit"), e->deposit_rate, e->deposit, total, first, "deposit");
        sb_cell *row = l->table->rows.items[first];
        row[QUOTE_UNIT] = named(l, row[QUOTE_UNIT], "deposit_rate");
    }
    for (size_t i = 0; i < e->stages.count; i++)
        put_payment(l, e->stages.items[i].text, e->stages.items[i].share, e->stages.items[i].amount, total,
                    first, NULL);
    if (e->stages.count && e->rest.minor != 0)
        put_total(l, word(l, "rest"), e->rest,
                  rel_less(l->run, at(l, total, QUOTE_AMOUNT), due(l, total, first, l->table->rows.count),
                           l->digits),
                  "rest");
}

static sb_table *new_table(sb_run *run, sb_sheet *sheet, const ledger *l) {
    const char *unit = !l->tax ? "unit-price" : l->gross ? "unit-price-gross" : "unit-price-net";
    bool rates = l->e->taxes.count > 1;
    const char *headings =
        sb_pool_print(run->pool, "%s|%s|%s>|%s>|%s>%s%s%s%s", word(l, "piece"), word(l, "size"),
                      word(l, "count"), word(l, unit), word(l, "amount"), l->by_line ? "|" : "",
                      l->by_line ? sb_pool_print(run->pool, "%s>", word(l, "tax")) : "", rates ? "|" : "",
                      rates ? sb_pool_print(run->pool, "%s>", word(l, "tax-rate")) : "");
    return sb_table_add(run, sheet, "", headings);
}

void quote_table(sb_run *run, sb_sheet *sheet, const sb_estimate *e, const sb_wording *words,
                 const quote_sizes *sizes, bool leading) {
    const sb_settings *s = &e->shop->settings;
    ledger l = {.run = run, .e = e, .words = words, .sizes = sizes, .leading = leading};
    l.digits = s->currency.digits;
    l.tax = e->taxes.count ? &e->taxes.items[0] : NULL;
    l.gross = s->prices_gross && l.tax;
    l.by_line = s->tax_per_line && l.tax;
    l.table = new_table(run, sheet, &l);
    quote_discount(run, sheet, e, words, l.table);
    if (e->taxes.count > 1)
        l.rates = sb_table_add(run, sheet, "",
                               sb_pool_print(run->pool, "%s|%s>|%s>|%s>", word(&l, "tax"),
                                             word(&l, "tax-rate"), word(&l, "tax-base"), word(&l, "tax")));
    l.lines = e->pieces.count + (e->supplement_line.minor != 0) + (e->delivery_line.minor != 0);
    l.tax_row = l.lines + 1; /* the second of the total rows, under the net or the gross total */
    for (size_t i = 0; i < e->pieces.count; i++)
        put_piece(&l, &e->pieces.items[i]);
    put_supplement(&l);
    put_delivery(&l);
    if (l.rates)
        put_rates(&l);
    const sb_relation *lines = rel_sum_of(run, l.table, QUOTE_AMOUNT, l.digits);
    size_t total = l.gross ? close_gross(&l, lines) : close_net(&l, lines);
    embolden(&l, total);
    put_payments(&l, total);
}
