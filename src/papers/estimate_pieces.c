/* The sheet Pieces: what each kind of piece costs, and its price. */
#include "papers/estimate.h"

static const sb_takeoff_piece *piece_of(const estimate_paper *p, size_t i) {
    return &p->e->takeoff->pieces.items[p->e->pieces.items[i].piece];
}

/* ---- cost ---- */

static const sb_relation *spent(const estimate_paper *p, size_t column) {
    return sb_rel_cell(p->run, p->costs, p->costs->rows.count - 1, column);
}

static void put_cost_row(estimate_paper *p, size_t i) {
    const sb_price_line *line = &p->e->pieces.items[i];
    sb_cell *row = sb_row_add(p->run, p->costs);
    row[COST_PIECE] = sb_cell_text(piece_of(p, i)->title);
    row[COST_MATERIAL] = sb_cell_related(sb_cell_money(line->material), material_share(p, i));
    row[COST_LABOUR] = sb_cell_related(sb_cell_money(line->labour), labour_share(p, i));
    row[COST_OVERHEAD] =
        sb_cell_related(sb_cell_money(line->overhead), share_cell(p, SHARE_OVERHEAD, i, BUILD_OVERHEAD));
    const sb_relation *two = sb_rel(p->run, SB_REL_ADD, spent(p, COST_MATERIAL), spent(p, COST_LABOUR));
    row[COST_COST] =
        sb_cell_related(sb_cell_money(line->cost), rel_plus(p->run, two, spent(p, COST_OVERHEAD), p->digits));
    row[COST_CONTINGENCY] = sb_cell_related(sb_cell_money(line->contingency),
                                            share_cell(p, SHARE_CONTINGENCY, i, BUILD_CONTINGENCY));
    row[COST_BASE] =
        sb_cell_related(sb_cell_money(line->base),
                        rel_plus(p->run, spent(p, COST_COST), spent(p, COST_CONTINGENCY), p->digits));
    row[COST_HOURS] = sb_cell_duration(line->time);
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
    p->costs =
        sb_table_add(p->run, p->pieces, "Cost of each kind",
                     "Piece|Material>|Labour>|Overhead>|Cost>|Contingency>|Cost with contingency>|Hours>");
    for (size_t i = 0; i < p->e->pieces.count; i++)
        put_cost_row(p, i);
    estimate_totals(p, p->costs, COST_MATERIAL, COST_BASE, 0);
    p->costs->rows.items[p->costs->rows.count - 1][COST_HOURS] = sb_cell_strong(sb_cell_duration(p->e->time));
}

void estimate_pieces(estimate_paper *p) {
    estimate_shared_start(p);
    put_costs(p);
    estimate_prices(p);
    estimate_shared(p);
}
