/* The linear program over ways to cut sheets. */
#include <math.h>

#include "cutting/sheet_program.h"

static void number_rows(sb_sheet_program *p) {
    const sb_sheet_bench *bench = p->bench;
    int64_t pieces = 0;
    for (size_t i = 0; i < bench->panes.count; i++)
        pieces += bench->panes.items[i].pieces;
    p->rows = bench->panes.count;
    p->row_of_offer = SB_NEW_ARRAY(bench->run->pool, size_t, bench->offers.count);
    for (size_t o = 0; o < bench->offers.count; o++)
        p->row_of_offer[o] = bench->offers.items[o].available < pieces ? p->rows++ : SIZE_MAX;
}

sb_sheet_program *sb_sheet_program_new(const sb_sheet_bench *bench, double unit, const int64_t *demand,
                                       const int64_t *available) {
    sb_pool *pool = bench->run->pool;
    sb_sheet_program *p = SB_NEW(pool, sb_sheet_program);
    *p = (sb_sheet_program){.bench = bench, .unit = fmax(unit, 1)};
    number_rows(p);
    p->entries = SB_NEW_ARRAY(pool, sb_lp_entry, p->rows + 1);
    p->lp = sb_lp_new(pool, bench->panes.count, p->rows, SB_NEW_ARRAY(pool, double, p->rows), 2);
    if (!p->lp)
        return NULL;
    sb_sheet_program_want(p, demand, available);
    return p;
}

void sb_sheet_program_add(sb_sheet_program *p, size_t offer, const int64_t *made, double cost) {
    size_t entries = 0;
    for (size_t i = 0; i < p->bench->panes.count; i++)
        if (made[i] > 0)
            p->entries[entries++] = (sb_lp_entry){(int)i, (double)made[i]};
    if (p->row_of_offer[offer] != SIZE_MAX)
        p->entries[entries++] = (sb_lp_entry){(int)p->row_of_offer[offer], 1};
    sb_lp_add(p->lp, cost / p->unit, p->entries, entries);
}

void sb_sheet_program_want(sb_sheet_program *p, const int64_t *demand, const int64_t *available) {
    for (size_t i = 0; i < p->bench->panes.count; i++)
        sb_lp_want(p->lp, i, (double)demand[i]);
    for (size_t o = 0; o < p->bench->offers.count; o++)
        if (p->row_of_offer[o] != SIZE_MAX)
            sb_lp_want(p->lp, p->row_of_offer[o], (double)available[o]);
}

bool sb_sheet_program_solve(sb_sheet_program *p, double *duals) {
    int64_t before = sb_lp_pivots(p->lp);
    if (!sb_lp_solve(p->lp))
        return false;
    p->bench->work->left -= 1500 + (sb_lp_pivots(p->lp) - before + 2) * (int64_t)(p->rows + 50);
    for (size_t i = 0; i < p->bench->panes.count; i++)
        duals[i] = fmax(0, sb_lp_dual(p->lp, i) * p->unit);
    return true;
}

double sb_sheet_program_rent(const sb_sheet_program *p, size_t offer) {
    size_t row = p->row_of_offer[offer];
    return row == SIZE_MAX ? 0 : -sb_lp_dual(p->lp, row) * p->unit;
}
