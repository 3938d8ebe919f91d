/* The search over one stock of sheets: several ways, the cheapest plan kept, a bound beside it. */
#include <math.h>

#include "cutting/sheet_bend.h"
#include "cutting/sheet_dive.h"
#include "cutting/sheet_numbers.h"
#include "cutting/sheet_search.h"

/* ---- whole plans --------------------------------------------------------------------------------- */

static void worth_by_area(sb_sheet_search *s) {
    double price = INFINITY, largest = 1;
    for (size_t i = 0; i < s->bench->offers.count; i++) {
        const sb_sheet_offer *on = &s->bench->offers.items[i];
        if (on->fixed > 0)
            price = fmin(price, (double)on->fixed / ((double)on->w * (double)on->l));
    }
    for (size_t i = 0; i < s->bench->panes.count; i++)
        largest = fmax(largest, s->bench->panes.items[i].area);
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        double area = s->bench->panes.items[i].area;
        s->f.worth[i] = (isinf(price) ? 1e-12 : price) * area * (1 + 0.05 * area / largest);
    }
}

static void keep_worths(sb_sheet_search *s) {
    for (size_t i = 0; i < s->bench->panes.count; i++)
        s->worth[i] = s->f.worth[i];
}

/* Once with all sizes on offer, once with each alone, and then again with what was learnt. */
static void try_whole(sb_sheet_search *s, size_t rounds) {
    size_t offers = s->bench->offers.count;
    for (size_t i = 0; i < rounds + offers && !sb_sheets_are_least(s) && sb_work_goes_on(s->bench->work);
         i++) {
        sb_sheets_reset(s);
        s->few = i > offers;
        if (i > 0 && i <= offers && offers > 1)
            sb_sheets_offer_only(s, i - 1);
        sb_sheets_fill(s, true, &s->tried);
        if (!sb_laying_better(&s->tried, s->best))
            continue;
        sb_laying_copy(s->bench, s->best, &s->tried);
        keep_worths(s);
    }
}

/* ---- work ---------------------------------------------------------------------------------------- */

/* A share of the budget for the next way; what is left of all of it for the last. */
static void allow(sb_sheet_search *s, int64_t percent) {
    s->left -= s->allowed - s->bench->work->left;
    s->allowed = percent < 100 ? s->budget / 100 * percent : s->left;
    s->bench->work->left = s->allowed;
}

static bool goes_on(const sb_sheet_search *s) {
    return !sb_sheets_are_least(s) && sb_work_goes_on(s->bench->work);
}

/* ---- out of a mix of sheets ----------------------------------------------------------------------- */

static void bound_mix(sb_sheet_search *s, sb_sheet_columns *c) {
    sb_sheet_mix *m = sb_sheet_mix_new(s, c);
    if (!m)
        return;
    sb_sheet_mix_solve(m);
    if (goes_on(s))
        sb_sheet_numbers(m);
}

static void try_mix(sb_sheet_search *s) {
    sb_pool *pool = s->bench->run->pool;
    int64_t *demand = SB_NEW_ARRAY(pool, int64_t, s->bench->panes.count);
    int64_t *available = SB_NEW_ARRAY(pool, int64_t, s->bench->offers.count);
    sb_sheets_reset(s);
    for (size_t i = 0; i < s->bench->panes.count; i++)
        demand[i] = s->f.demand[i];
    for (size_t o = 0; o < s->bench->offers.count; o++)
        available[o] = s->f.available[o];
    sb_sheet_columns *c = sb_sheet_columns_new(s->bench, demand, available);
    if (!c)
        return;
    for (size_t i = 0; i < s->best->sheets.count; i++)
        sb_sheet_columns_add(c, &s->best->sheets.items[i]);
    s->few = false;
    if (!sb_sheet_columns_solve(c, s, 100))
        return;
    allow(s, 30);
    if (goes_on(s))
        bound_mix(s, c);
    allow(s, 60);
    if (goes_on(s))
        sb_sheets_dive(s, c);
    allow(s, 20);
    if (goes_on(s))
        sb_sheets_choose(s, c);
}

/* ---- all of it ----------------------------------------------------------------------------------- */

void sb_sheets_search(sb_sheet_bench *bench, sb_laying *best, sb_bound *bound) {
    sb_pool *pool = bench->run->pool;
    sb_sheet_search s = {.bench = bench, .best = best, .bound = bound, .f = {.bench = bench}};
    s.budget = s.left = s.allowed = bench->work->left;
    s.f.worth = SB_NEW_ARRAY(pool, double, bench->panes.count);
    s.f.demand = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    s.f.available = SB_NEW_ARRAY(pool, int64_t, bench->offers.count + 1);
    s.worth = SB_NEW_ARRAY(pool, double, bench->panes.count);
    s.picks[0].made = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    s.picks[1].made = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    sb_sheet_bound(bench, bound);
    worth_by_area(&s);
    sb_sheets_reset(&s);
    keep_worths(&s);
    sb_sheets_fill(&s, true, best);
    if (best->missing == 0)
        sb_work_show(bench->work, bench->problem->stock.items[bench->stock].name, &best->cost, &bound->bound);
    allow(&s, 5);
    try_whole(&s, 12);
    allow(&s, 5);
    sb_sheets_improve(&s, false);
    allow(&s, 20);
    if (goes_on(&s))
        sb_sheets_few(&s);
    s.bending = bench->stages <= 3 ? sb_bending_new(bench) : NULL;
    if (goes_on(&s))
        try_mix(&s);
    allow(&s, 100);
    if (goes_on(&s) && !s.bending)
        sb_sheets_improve(&s, true);
}
