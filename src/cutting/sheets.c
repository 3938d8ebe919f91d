/* The search over one stock of sheets: several ways, the cheapest plan kept, a bound beside it. */
#include <math.h>

#include "cutting/sheet_bend.h"
#include "cutting/sheet_dive.h"
#include "cutting/sheet_numbers.h"
#include "cutting/sheet_search.h"
#include "cutting/sheet_squeeze.h"

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

#define FINE_WORK 300000000 /* steps for a fine mix at most, */
#define FINE_MORE 8         /* and so many times the budget */
#define ROUNDED   0.015     /* so much of its value does a mix lose by rounded sizes */

static bool rounds(const sb_sheet_mix *m) {
    const int64_t *unit = m->worths->unit;
    return unit[0] > sb_axis_step(m->bench, false) || unit[1] > sb_axis_step(m->bench, true);
}

/* One size of sheet, the bound one sheet below the plan, and rounded sizes alone may be why. */
static bool may_be_rounding(const sb_sheet_search *s, const sb_sheet_mix *m) {
    const sb_sheet_bench *bench = s->bench;
    if (bench->stages <= 3 || bench->offers.count > 1 || !bench->problem->rules.material_only || !rounds(m))
        return false;
    double value = sb_lp_value(m->program->lp) * m->program->unit;
    return s->best->missing <= 0 && s->best->cost - s->bound->bound.milli == bench->offers.items[0].fixed &&
           value * (1 + ROUNDED) > (double)s->bound->bound.milli;
}

static void bound_finely(sb_sheet_search *s, sb_sheet_columns *c) {
    sb_sheet_mix *m = sb_sheet_mix_new(s, c, true);
    int64_t left = s->bench->work->left;
    s->bench->work->left = s->budget < FINE_WORK / FINE_MORE ? s->budget * FINE_MORE : FINE_WORK;
    if (m)
        sb_sheet_mix_solve(m);
    s->bench->work->left = left;
}

static sb_sheet_mix *bound_mix(sb_sheet_search *s, sb_sheet_columns *c) {
    sb_sheet_mix *m = sb_sheet_mix_new(s, c, false);
    if (m)
        sb_sheet_mix_solve(m);
    if (m && goes_on(s))
        sb_sheet_numbers(m);
    return m;
}

/* In strips [%]: from a workshop job's thirty kinds on the more, the more kinds there are. */
static int64_t dives_share(const sb_sheet_search *s) {
    size_t panes = s->bench->panes.count;
    return panes <= 30 ? 20 : panes < 105 ? 20 + (int64_t)(panes - 30) / 3 : 45;
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
    sb_sheet_mix *m = goes_on(s) ? bound_mix(s, c) : NULL;
    allow(s, s->bending ? dives_share(s) : 60);
    if (goes_on(s))
        sb_sheets_dive(s, c);
    allow(s, s->bench->stages <= 3 ? 100 : s->bending ? 60 : 20);
    /* Squeezing makes more of the same work than whole numbers of columns. */
    if (goes_on(s) && s->bending && m)
        sb_sheets_squeeze(s, m);
    else if (goes_on(s) && !s->bending)
        sb_sheets_choose(s, c);
    if (m && !sb_sheets_are_least(s) && may_be_rounding(s, m))
        bound_finely(s, c);
}

/* ---- all of it ----------------------------------------------------------------------------------- */

/* More stages than strips have pay less than several sizes of sheet, squeezed into cheaper numbers. */
static bool goes_in_strips(const sb_sheet_bench *bench) {
    return bench->stages <= 3 || bench->offers.count > 1;
}

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
    s.bending = goes_in_strips(bench) ? sb_bending_new(bench) : NULL;
    if (goes_on(&s))
        try_mix(&s);
    allow(&s, 100);
    if (goes_on(&s) && bench->stages > 3)
        sb_sheets_improve(&s, true);
}
