/* The sheet Pieces: how the cost is shared out over the kinds of piece, and the price of each. */
#include "papers/estimate.h"

static const sb_takeoff_piece *piece_of(const estimate_paper *p, size_t i) {
    return &p->e->takeoff->pieces.items[p->e->pieces.items[i].piece];
}

/* ---- shares of cost ---- */

enum {
    SHARE_PIECE,
    SHARE_MATERIAL,
    SHARE_LABOUR,
    SHARE_OVERHEAD,
    SHARE_CONTINGENCY,
    SHARE_NET,
    SHARE_HOURS
};

static void put_share_row(estimate_paper *p, size_t i) {
    const sb_price_line *line = &p->e->pieces.items[i];
    sb_cell *row = sb_row_add(p->run, p->shares);
    row[SHARE_PIECE] = sb_cell_text(piece_of(p, i)->title);
    row[SHARE_MATERIAL] = sb_cell_money(line->material);
    row[SHARE_LABOUR] = sb_cell_money(line->labour);
    row[SHARE_OVERHEAD] = sb_cell_money(line->overhead);
    row[SHARE_CONTINGENCY] = sb_cell_money(line->contingency);
    row[SHARE_NET] = sb_cell_money(line->net);
    row[SHARE_HOURS] = sb_cell_duration(line->time);
}

static void put_shares(estimate_paper *p) {
    sb_paragraph_add(p->run, p->pieces,
                     "Material is shared out by what each kind of piece takes of a stock, labour by what it "
                     "causes, work for "
                     "the batch by labour time. Shares add up to the cent.",
                     false);
    p->shares = sb_table_add(p->run, p->pieces, "Shares, as reckoned",
                             "Piece|Material>|Labour>|Overhead>|Contingency>|Net price>|Hours>");
    for (size_t i = 0; i < p->e->pieces.count; i++)
        put_share_row(p, i);
    const sb_money sums[] = {p->e->material_total, p->e->labour_total, p->e->overhead, p->e->contingency,
                             p->e->pieces_net};
    sb_cell *row = sb_total_row_add(p->run, p->shares);
    row[SHARE_PIECE] = sb_cell_text("All");
    for (size_t i = 0; i < sizeof sums / sizeof *sums; i++)
        row[SHARE_MATERIAL + i] = sb_cell_related(
            sb_cell_money(sums[i]), rel_sum_of(p->run, p->shares, SHARE_MATERIAL + i, p->digits));
    row[SHARE_HOURS] = sb_cell_duration(p->e->time);
}

/* A piece's part of an amount that may have changed: its share as reckoned, in proportion. */
static const sb_relation *in_proportion(const estimate_paper *p, size_t row, size_t share, size_t build) {
    size_t last = p->shares->rows.count - 1;
    if (p->shares->rows.items[last][share].amount == 0)
        return NULL;
    const sb_relation *part = sb_rel_cell(p->run, p->shares, row, share);
    const sb_relation *scaled = sb_rel(p->run, SB_REL_MUL, part, build_cell(p, build));
    return rel_ratio(p->run, scaled, sb_rel_cell(p->run, p->shares, last, share), p->digits);
}

/* ---- prices ---- */

enum {
    COST_PIECE,
    COST_MATERIAL,
    COST_LABOUR,
    COST_OVERHEAD,
    COST_COST,
    COST_CONTINGENCY,
    COST_BASE
};
enum {
    PRICE_PIECE,
    PRICE_COUNT,
    PRICE_UNIT = 4
};

static const sb_relation *spent(const estimate_paper *p, size_t column) {
    return sb_rel_cell(p->run, p->costs, p->costs->rows.count - 1, column);
}

static void put_cost_row(estimate_paper *p, size_t i) {
    const sb_price_line *line = &p->e->pieces.items[i];
    sb_cell *row = sb_row_add(p->run, p->costs);
    row[COST_PIECE] = sb_cell_text(piece_of(p, i)->title);
    row[COST_MATERIAL] =
        sb_cell_related(sb_cell_money(line->material), in_proportion(p, i, SHARE_MATERIAL, BUILD_MATERIAL));
    row[COST_LABOUR] =
        sb_cell_related(sb_cell_money(line->labour), in_proportion(p, i, SHARE_LABOUR, BUILD_LABOUR));
    row[COST_OVERHEAD] =
        sb_cell_related(sb_cell_money(line->overhead), in_proportion(p, i, SHARE_OVERHEAD, BUILD_OVERHEAD));
    const sb_relation *two = sb_rel(p->run, SB_REL_ADD, spent(p, COST_MATERIAL), spent(p, COST_LABOUR));
    row[COST_COST] =
        sb_cell_related(sb_cell_money(line->cost), rel_plus(p->run, two, spent(p, COST_OVERHEAD), p->digits));
    const sb_relation *contingency = in_proportion(p, i, SHARE_CONTINGENCY, BUILD_CONTINGENCY);
    if (!contingency) /* none so far: a rate put in later still runs through */
        contingency = rel_product(p->run, spent(p, COST_COST), rate_cell(p, RATE_CONTINGENCY), p->digits);
    row[COST_CONTINGENCY] = sb_cell_related(sb_cell_money(line->contingency), contingency);
    row[COST_BASE] =
        sb_cell_related(sb_cell_money(line->base),
                        rel_plus(p->run, spent(p, COST_COST), spent(p, COST_CONTINGENCY), p->digits));
}

static const sb_relation *own(const estimate_paper *p, size_t column) {
    return sb_rel_cell(p->run, p->prices, p->prices->rows.count - 1, column);
}

static const sb_relation *unit_relation(const estimate_paper *p) {
    const sb_relation *due = sb_rel(p->run, SB_REL_SUB, own(p, PRICE_PRICE), own(p, PRICE_DISCOUNT));
    if (p->gross)
        due = sb_rel(p->run, SB_REL_MUL, due,
                     sb_rel(p->run, SB_REL_ADD, sb_rel_number(p->run, 1, 0), rate_cell(p, RATE_TAX)));
    const sb_relation *each = sb_rel(p->run, SB_REL_DIV, due, own(p, PRICE_COUNT));
    return sb_rel(p->run, SB_REL_ROUND_UP_TO, each, rate_cell(p, RATE_POINT));
}

static void put_price(estimate_paper *p, sb_cell *row, size_t i) {
    const sb_price_line *line = &p->e->pieces.items[i];
    const sb_relation *base = sb_rel_cell(p->run, p->costs, i, COST_BASE), *rate = rate_cell(p, RATE_PROFIT);
    row[PRICE_PRICE] =
        sb_cell_related(sb_cell_money(line->price), p->e->method == SB_MARGIN_ON_PRICE
                                                        ? rel_with_margin(p->run, base, rate, p->digits)
                                                        : rel_raised(p->run, base, rate, p->digits));
    row[PRICE_DISCOUNT] =
        sb_cell_related(sb_cell_money(line->discount),
                        rel_product(p->run, own(p, PRICE_PRICE), rate_cell(p, RATE_DISCOUNT), p->digits));
    row[PRICE_UNIT] = sb_cell_related(sb_cell_money(line->unit), line->count > 0 ? unit_relation(p) : NULL);
    row[PRICE_LINE] = sb_cell_related(
        sb_cell_money(line->line), rel_product(p->run, own(p, PRICE_COUNT), own(p, PRICE_UNIT), p->digits));
}

static const sb_relation *net_relation(const estimate_paper *p, size_t i) {
    if (!p->gross)
        return own(p, PRICE_LINE);
    if (p->by_line)
        return rel_before(p->run, own(p, PRICE_LINE), rate_cell(p, RATE_TAX), p->digits);
    return in_proportion(p, i, SHARE_NET, BUILD_PIECES);
}

static void put_tax(estimate_paper *p, sb_cell *row, const sb_price_line *line) {
    sb_money tax =
        p->gross ? sb_money_sub(line->line, line->net) : sb_tax_of(line->net, p->e->taxes.items[0].tax->rate);
    const sb_relation *relation =
        p->gross ? rel_less(p->run, own(p, PRICE_LINE), own(p, PRICE_NET), p->digits)
                 : rel_product(p->run, own(p, PRICE_NET), rate_cell(p, RATE_TAX), p->digits);
    row[PRICE_TAX] = sb_cell_related(sb_cell_money(tax), relation);
}

static void put_price_row(estimate_paper *p, size_t i) {
    const sb_price_line *line = &p->e->pieces.items[i];
    sb_cell *row = sb_row_add(p->run, p->prices);
    row[PRICE_PIECE] = sb_cell_text(piece_of(p, i)->title);
    row[PRICE_COUNT] = sb_cell_count(line->count);
    put_price(p, row, i);
    row[PRICE_NET] = sb_cell_related(sb_cell_money(line->net), net_relation(p, i));
    if (p->by_line)
        put_tax(p, row, line);
}

/* Totals of the money columns from `first` on, but of the price of one: the sum of what stands above. */
static void put_totals(estimate_paper *p, sb_table *table, size_t first, size_t but) {
    sb_cell *row = sb_total_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text("All"));
    for (size_t column = first; column < table->column_count; column++) {
        int64_t sum = 0;
        for (size_t i = 0; i + 1 < table->rows.count; i++)
            sum = sb_add(sum, table->rows.items[i][column].amount);
        if (column != but)
            row[column] = sb_cell_strong(sb_cell_related(sb_cell_money((sb_money){sum}),
                                                         rel_sum_of(p->run, table, column, p->digits)));
    }
}

static void put_costs(estimate_paper *p) {
    p->costs = sb_table_add(p->run, p->pieces, "Cost of each kind",
                            "Piece|Material>|Labour>|Overhead>|Cost>|Contingency>|Cost with contingency>");
    for (size_t i = 0; i < p->e->pieces.count; i++)
        put_cost_row(p, i);
    put_totals(p, p->costs, COST_MATERIAL, 0);
}

static void put_prices(estimate_paper *p) {
    p->prices =
        sb_table_add(p->run, p->pieces, "Prices",
                     sb_pool_print(p->run->pool, "Piece|Count>|Price>|Discount>|%s|%s|Net>%s",
                                   p->gross ? "Each, with tax>" : "Each, net>",
                                   p->gross ? "Line, with tax>" : "Line, net>", p->by_line ? "|Tax>" : ""));
    for (size_t i = 0; i < p->e->pieces.count; i++)
        put_price_row(p, i);
    put_totals(p, p->prices, PRICE_PRICE, PRICE_UNIT);
}

void estimate_pieces(estimate_paper *p) {
    put_shares(p);
    put_costs(p);
    put_prices(p);
}
