/* On the sheet Pieces: the price of each kind, the supplement to the shop's minimum, tax by rate. */
#include "papers/estimate.h"

static const sb_relation *own(const estimate_paper *p, size_t column) {
    return sb_rel_cell(p->run, p->prices, p->prices->rows.count - 1, column);
}

/* ---- lines: the pieces and, behind them, the supplement ---- */

static size_t line_count(const estimate_paper *p) {
    return p->e->pieces.count + has_minimum(p);
}

static const sb_tax *tax_of(const estimate_paper *p, size_t line) {
    return line < p->e->pieces.count ? p->e->pieces.items[line].tax : p->e->job_tax;
}

static const sb_relation *rate_of(const estimate_paper *p, size_t line) {
    return tax_rate_cell(p, tax_of(p, line));
}

static const sb_relation *plus(const estimate_paper *p, const sb_relation *a, const sb_relation *b) {
    return !a ? b : !b ? a : sb_rel(p->run, SB_REL_ADD, a, b);
}

/* The sum of a column over the lines of one tax from `first` to before `end`, each run of neighbours as one; NULL: there are none. Halved
 * again and again, so that no formula nests deeper than it must. */
static const sb_relation *lines_sum(const estimate_paper *p, size_t tax, size_t column, size_t first,
                                    size_t end) {
    while (first < end && tax_index(p, tax_of(p, first)) != tax)
        first++;
    while (end > first && tax_index(p, tax_of(p, end - 1)) != tax)
        end--;
    if (first == end)
        return NULL;
    size_t next = first;
    while (next < end && tax_index(p, tax_of(p, next)) == tax)
        next++;
    if (next == end)
        return sb_rel_sum(p->run, p->prices, column, first, end - 1);
    size_t middle = first + (end - first) / 2;
    return plus(p, lines_sum(p, tax, column, first, middle), lines_sum(p, tax, column, middle, end));
}

/* ---- net and tax of a line ---- */

static const sb_relation *delivery_tax(const estimate_paper *p) {
    return rel_product(p->run, build_cell(p, BUILD_DELIVERY), tax_rate_cell(p, p->e->delivery_tax),
                       p->digits);
}

static bool delivered_under(const estimate_paper *p, size_t tax) {
    return tax_index(p, p->e->delivery_tax) == tax;
}

/* Quoted gross, tax on the total: what the net of a tax without delivery comes to over its lines up to one. */
static const sb_relation *net_up_to(const estimate_paper *p, size_t tax, size_t end) {
    const sb_relation *up_to = lines_sum(p, tax, PRICE_LINE, 0, end);
    if (!up_to)
        return sb_rel_number(p->run, 0, 0);
    const sb_relation *net = sb_rel_cell(p->run, p->taxes, tax, TAX_NET);
    if (delivered_under(p, tax))
        net = sb_rel(p->run, SB_REL_SUB, net, build_cell(p, BUILD_DELIVERY));
    /* a supplement may be all there is under a tax, and then be nothing: nothing of it is nothing */
    const sb_relation *all = sb_rel(p->run, SB_REL_MAX, lines_sum(p, tax, PRICE_LINE, 0, line_count(p)),
                                    sb_rel_number(p->run, 1, p->digits));
    return rel_ratio(p->run, sb_rel(p->run, SB_REL_MUL, up_to, net), all, p->digits);
}

static const sb_relation *net_relation(const estimate_paper *p, size_t line) {
    size_t tax = tax_index(p, tax_of(p, line));
    if (!p->gross)
        return own(p, PRICE_LINE);
    if (p->by_line)
        return rel_before(p->run, own(p, PRICE_LINE), rate_of(p, line), p->digits);
    return rel_less(p->run, net_up_to(p, tax, line + 1), net_up_to(p, tax, line), p->digits);
}

static void put_net(estimate_paper *p, sb_cell *row, size_t line, sb_money shown, sb_money net) {
    sb_share rate = tax_of(p, line) ? tax_of(p, line)->rate : (sb_share){0};
    sb_money tax = p->gross ? sb_money_sub(shown, net) : sb_tax_of(net, rate);
    row[PRICE_NET] = sb_cell_related(sb_cell_money(net), net_relation(p, line));
    if (p->by_line)
        row[PRICE_TAX] =
            sb_cell_related(sb_cell_money(tax),
                            p->gross ? rel_less(p->run, own(p, PRICE_LINE), own(p, PRICE_NET), p->digits)
                                     : rel_product(p->run, own(p, PRICE_NET), rate_of(p, line), p->digits));
    if (p->taxed.count > 1 && tax_of(p, line))
        row[PRICE_NET + 1 + p->by_line] = sb_cell_text(tax_of(p, line)->id);
}

/* ---- price of a line ---- */

static const sb_relation *unit_relation(const estimate_paper *p, size_t line) {
    const sb_relation *due = sb_rel(p->run, SB_REL_SUB, own(p, PRICE_PRICE), own(p, PRICE_DISCOUNT));
    const sb_relation *left = due;
    const sb_relation *less = rate_cell(p, RATE_POINT_LESS);
    if (p->gross)
        due = sb_rel(p->run, SB_REL_MUL, due,
                     sb_rel(p->run, SB_REL_ADD, sb_rel_number(p->run, 1, 0), rate_of(p, line)));
    const sb_relation *each = sb_rel(p->run, SB_REL_DIV, due, own(p, PRICE_COUNT));
    const sb_relation *point =
        sb_rel(p->run, SB_REL_ROUND_UP_TO, sb_rel(p->run, SB_REL_ADD, each, less), rate_cell(p, RATE_POINT));
    return sb_rel(p->run, SB_REL_WHERE, left, rel_less(p->run, point, less, p->digits));
}

static void put_price(estimate_paper *p, sb_cell *row, size_t i, const sb_relation *base) {
    const sb_price_line *line = &p->e->pieces.items[i];
    const sb_relation *rate = rate_cell(p, RATE_PROFIT);
    row[PRICE_PRICE] =
        sb_cell_related(sb_cell_money(line->price), p->e->method == SB_MARGIN_ON_PRICE
                                                        ? rel_with_margin(p->run, base, rate, p->digits)
                                                        : rel_raised(p->run, base, rate, p->digits));
    row[PRICE_DISCOUNT] =
        sb_cell_related(sb_cell_money(line->discount),
                        rel_product(p->run, own(p, PRICE_PRICE), rate_cell(p, RATE_DISCOUNT), p->digits));
    row[PRICE_UNIT] =
        sb_cell_related(sb_cell_money(line->unit), line->count > 0 ? unit_relation(p, i) : NULL);
    row[PRICE_LINE] = sb_cell_related(
        sb_cell_money(line->line), rel_product(p->run, own(p, PRICE_COUNT), own(p, PRICE_UNIT), p->digits));
}

static void put_price_row(estimate_paper *p, size_t i) {
    const sb_price_line *line = &p->e->pieces.items[i];
    sb_cell *row = sb_row_add(p->run, p->prices);
    row[PRICE_PIECE] = sb_cell_text(p->e->takeoff->pieces.items[line->piece].title);
    row[PRICE_COUNT] = sb_cell_count(line->count);
    put_price(p, row, i, sb_rel_cell(p->run, p->costs, i, COST_BASE));
    put_net(p, row, i, line->line, line->net);
}

static void put_supplement_row(estimate_paper *p) {
    size_t count = p->e->pieces.count;
    const sb_relation *lines =
        count ? sb_rel_sum(p->run, p->prices, PRICE_LINE, 0, count - 1) : sb_rel_number(p->run, 0, 0);
    const sb_relation *lack = rel_less(p->run, rate_cell(p, p->minimum_row), lines, p->digits);
    sb_cell *row = sb_row_add(p->run, p->prices);
    row[PRICE_PIECE] = sb_cell_text("Supplement to the minimum");
    row[PRICE_LINE] = sb_cell_related(sb_cell_money(p->e->supplement_line),
                                      sb_rel(p->run, SB_REL_MAX, sb_rel_number(p->run, 0, 0), lack));
    put_net(p, row, count, p->e->supplement_line, p->e->supplement);
}

/* ---- tax by rate ---- */

static const sb_relation *with_delivery(const estimate_paper *p, size_t tax, const sb_relation *lines,
                                        const sb_relation *delivery) {
    const sb_relation *all = delivered_under(p, tax) ? plus(p, lines, delivery) : lines;
    return all ? sb_rel_round(p->run, all, p->digits) : NULL;
}

static const sb_relation *lines_of(const estimate_paper *p, size_t tax, size_t column) {
    return lines_sum(p, tax, column, 0, line_count(p));
}

static const sb_relation *tax_cell(const estimate_paper *p, size_t tax, size_t column) {
    return sb_rel_cell(p->run, p->taxes, tax, column);
}

/* Quoted gross, tax on the total: from what the lines come to with tax. */
static void relate_from_gross(estimate_paper *p, sb_cell *row, size_t tax) {
    const sb_relation *delivery = plus(p, build_cell(p, BUILD_DELIVERY), delivery_tax(p));
    row[TAX_GROSS].relation = with_delivery(p, tax, lines_of(p, tax, PRICE_LINE), delivery);
    row[TAX_NET].relation =
        rel_before(p->run, tax_cell(p, tax, TAX_GROSS), tax_cell(p, tax, TAX_RATE), p->digits);
    row[TAX_AMOUNT].relation =
        rel_less(p->run, tax_cell(p, tax, TAX_GROSS), tax_cell(p, tax, TAX_NET), p->digits);
}

static void relate_from_net(estimate_paper *p, sb_cell *row, size_t tax) {
    row[TAX_NET].relation = with_delivery(p, tax, lines_of(p, tax, PRICE_NET), build_cell(p, BUILD_DELIVERY));
    row[TAX_AMOUNT].relation =
        p->by_line ? with_delivery(p, tax, lines_of(p, tax, PRICE_TAX), delivery_tax(p))
                   : rel_product(p->run, tax_cell(p, tax, TAX_NET), tax_cell(p, tax, TAX_RATE), p->digits);
    row[TAX_GROSS].relation =
        rel_plus(p->run, tax_cell(p, tax, TAX_NET), tax_cell(p, tax, TAX_AMOUNT), p->digits);
}

/* What the estimate has of a tax; nothing where no line has it as things are. */
static sb_tax_line line_of(const estimate_paper *p, size_t i) {
    sb_tax_line none = {.tax = p->taxed.count ? p->taxed.items[i] : NULL};
    if (!none.tax)
        none.base = p->e->net;
    for (size_t j = 0; none.tax && j < p->e->taxes.count; j++)
        if (tax_index(p, p->e->taxes.items[j].tax) == i)
            return p->e->taxes.items[j];
    return none;
}

static void put_tax_row(estimate_paper *p, size_t i) {
    const sb_tax_line found = line_of(p, i), *line = &found;
    sb_cell *row = sb_row_add(p->run, p->taxes);
    row[TAX_TITLE] = sb_cell_text(
        line->tax ? sb_pool_print(p->run->pool, "%s, %s", line->tax->title, line->tax->id) : "None");
    row[TAX_RATE] = sb_cell_related(sb_cell_rate(line->tax ? line->tax->rate : (sb_share){0}),
                                    tax_rate_cell(p, line->tax));
    row[TAX_NET] = sb_cell_money(line->base);
    row[TAX_AMOUNT] = sb_cell_money(line->amount);
    row[TAX_GROSS] = sb_cell_money(sb_money_add(line->base, line->amount));
    if (p->gross && !p->by_line)
        relate_from_gross(p, row, i);
    else
        relate_from_net(p, row, i);
}

static const char *headings(const estimate_paper *p) {
    return sb_pool_print(p->run->pool, "Piece|Count>|Price>|Discount>|%s|%s|Net>%s%s",
                         p->gross ? "Each, with tax>" : "Each, net>",
                         p->gross ? "Line, with tax>" : "Line, net>", p->by_line ? "|Tax>" : "",
                         p->taxed.count > 1 ? "|Taxed as" : "");
}

void estimate_prices(estimate_paper *p) {
    p->prices = sb_table_add(p->run, p->pieces, "Prices", headings(p));
    p->taxes = sb_table_add(p->run, p->pieces, "Tax by rate", "Tax|Rate>|Net>|Tax>|With tax>");
    for (size_t i = 0; i < p->e->pieces.count; i++)
        put_price_row(p, i);
    if (has_minimum(p))
        put_supplement_row(p);
    estimate_totals(p, p->prices, PRICE_PRICE, p->by_line ? PRICE_TAX : PRICE_NET, PRICE_UNIT);
    for (size_t i = 0; i < tax_count(p); i++)
        put_tax_row(p, i);
    estimate_totals(p, p->taxes, TAX_NET, TAX_GROSS, TAX_TITLE);
}
