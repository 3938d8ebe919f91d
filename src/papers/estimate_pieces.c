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
    row[SHARE_HOURS] = sb_cell_duration(line->time);
}

static void put_shares(estimate_paper *p) {
    sb_paragraph_add(p->run, p->pieces,
                     "Material is shared out by what each kind of piece takes of a stock, labour by what it "
                     "causes, work for "
                     "the batch by labour time. Shares add up to the cent.",
                     false);
    p->shares = sb_table_add(p->run, p->pieces, "Shares, as reckoned",
                             "Piece|Material>|Labour>|Overhead>|Contingency>|Hours>");
    for (size_t i = 0; i < p->e->pieces.count; i++)
        put_share_row(p, i);
    const sb_money sums[] = {p->e->material_total, p->e->labour_total, p->e->overhead, p->e->contingency};
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

/* ---- costs ---- */

enum {
    COST_PIECE,
    COST_MATERIAL,
    COST_LABOUR,
    COST_OVERHEAD,
    COST_COST,
    COST_CONTINGENCY,
    COST_BASE
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

void estimate_totals(estimate_paper *p, sb_table *table, size_t first, size_t last, size_t but) {
    sb_cell *row = sb_total_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text("All"));
    for (size_t column = first; column <= last; column++) {
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
    estimate_totals(p, p->costs, COST_MATERIAL, COST_BASE, 0);
}

void estimate_pieces(estimate_paper *p) {
    put_shares(p);
    put_costs(p);
    estimate_prices(p);
}
