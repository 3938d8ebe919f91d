/* Sheets laid out for the duals of the program, as long as they are worth more than they cost. */
#include <math.h>

#include "cutting/sheet_bend.h"
#include "cutting/sheet_columns.h"

sb_sheet_columns *sb_sheet_columns_new(const sb_sheet_bench *bench, const int64_t *demand,
                                       const int64_t *available) {
    sb_sheet_columns *c = SB_NEW(bench->run->pool, sb_sheet_columns);
    double unit = 1;
    *c = (sb_sheet_columns){.bench = bench, .demand = demand, .available = available};
    for (size_t o = 0; o < bench->offers.count; o++)
        unit = fmax(unit, (double)bench->offers.items[o].fixed);
    c->duals = SB_NEW_ARRAY(bench->run->pool, double, bench->panes.count);
    c->cost = SB_NEW_ARRAY(bench->run->pool, double, bench->offers.count);
    c->program = sb_sheet_program_new(bench, unit, demand, available);
    return c->program ? c : NULL;
}

/* ---- columns ---------------------------------------------------------------------------------------- */

/* Fowler, Noll and Vo's hash of what the sheet makes. */
static uint64_t key_of(const sb_sheet_columns *c, const sb_laid *laid) {
    uint64_t key = 14695981039346656037u ^ laid->offer;
    for (size_t i = 0; i < c->bench->panes.count; i++)
        key = (key ^ (uint64_t)laid->made[i]) * 1099511628211u;
    return key;
}

static bool is_there(const sb_sheet_columns *c, uint64_t key, int64_t cost) {
    for (size_t i = 0; i < c->keys.count; i++)
        if (c->keys.items[i] == key && c->laid.items[i].cost <= cost)
            return true;
    return false;
}

static bool is_wanted(const sb_sheet_columns *c, const sb_laid *laid) {
    for (size_t i = 0; i < c->bench->panes.count; i++)
        if (laid->made[i] > c->demand[i])
            return false;
    return c->available[laid->offer] > 0;
}

bool sb_sheet_columns_add(sb_sheet_columns *c, const sb_laid *laid) {
    sb_pool *pool = c->bench->run->pool;
    uint64_t key = key_of(c, laid);
    c->bench->work->left -= 2 + (int64_t)c->keys.count / 60;
    if (is_there(c, key, laid->cost))
        return false;
    sb_laid kept = sb_laid_keep(c->bench, laid);
    kept.count = is_wanted(c, laid);
    sb_sheet_program_add(c->program, laid->offer, laid->made, (double)laid->cost);
    SB_PUSH(pool, c->laid, kept);
    SB_PUSH(pool, c->keys, key);
    if (kept.count == 0)
        sb_lp_limit(c->program->lp, c->laid.count - 1, 0);
    return true;
}

void sb_sheet_columns_refit(sb_sheet_columns *c) {
    sb_sheet_program_want(c->program, c->demand, c->available);
    for (size_t j = 0; j < c->laid.count; j++) {
        sb_laid *laid = &c->laid.items[j];
        bool may = is_wanted(c, laid);
        if (may != (laid->count > 0))
            sb_lp_limit(c->program->lp, j, may ? -1 : 0);
        laid->count = may;
    }
    c->bench->work->left -= (int64_t)(c->laid.count * c->bench->panes.count / 100);
}

/* ---- pricing ---------------------------------------------------------------------------------------- */

typedef struct pricing {
    sb_sheet_columns *c;
    size_t added;
} pricing;

static void take_if_improving(void *context, const sb_laid *laid) {
    pricing *p = context;
    sb_sheet_columns *c = p->c;
    double worth = 0, cost = (double)laid->cost + sb_sheet_program_rent(c->program, laid->offer);
    for (size_t i = 0; i < c->bench->panes.count; i++)
        worth += c->duals[i] * (double)laid->made[i];
    if (worth > cost + 1e-6 * (1 + fabs(cost)))
        p->added += sb_sheet_columns_add(c, laid);
}

/* Whatever is on it. */
static double least_cost(const sb_sheet_columns *c, size_t offer) {
    double rent = sb_sheet_program_rent(c->program, offer);
    return c->bench->value > 0 ? 0 : (double)c->bench->offers.items[offer].fixed + rent;
}

static bool add_improving(sb_sheet_columns *c, sb_sheet_search *s) {
    pricing p = {c, 0};
    for (size_t i = 0; i < c->bench->panes.count; i++)
        s->f.worth[i] = c->duals[i];
    for (size_t o = 0; o < c->bench->offers.count; o++)
        c->cost[o] = least_cost(c, o);
    if (s->bending)
        sb_sheets_bend(s->bending, s, c->cost, take_if_improving, &p);
    if (p.added == 0 && !s->brief)
        sb_sheets_lay_all(s, take_if_improving, &p);
    return p.added > 0;
}

static void read_times(sb_sheet_columns *c) {
    c->times.count = 0;
    for (size_t j = 0; j < c->laid.count; j++) {
        double times = sb_lp_times(c->program->lp, j);
        SB_PUSH(c->bench->run->pool, c->times, times > 1e-7 ? times : 0);
    }
}

bool sb_sheet_columns_solve(sb_sheet_columns *c, sb_sheet_search *s, int rounds) {
    bool solved = sb_sheet_program_solve(c->program, c->duals);
    while (solved && rounds-- > 0 && sb_work_goes_on(c->bench->work) && add_improving(c, s))
        solved = sb_sheet_program_solve(c->program, c->duals);
    if (solved) {
        read_times(c);
        c->value = sb_lp_value(c->program->lp) * c->program->unit;
    }
    return solved;
}
