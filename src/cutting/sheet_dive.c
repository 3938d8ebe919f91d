/* Diving for sheets. */
#include <math.h>

#include "cutting/sheet_dive.h"

#define SET_ASIDE 3  /* sheets at most set aside in one dive */
#define BRANCHES  3  /* sheets of one dive that others set aside */
#define DIVES     20 /* at most */
#define ROUNDS    8  /* of pricing for one rest */
#define FREED     6  /* sheets of the best plan given free at most */
#define DRAWS     3
#define PATIENCE  80 /* dives into parts of the best plan that give nothing */

typedef struct aside {
    size_t columns[SET_ASIDE], count;
} aside;

typedef struct diving {
    sb_sheet_search *s; /* its filling is used up by the quick way */
    sb_sheet_columns *c;
    sb_laying fixed, tried;
    int64_t *demand, *available; /* what is left in the dive: what the columns look at */
    int64_t grain;
    double *price;           /* by pane: duals of the whole program */
    SB_LIST(int64_t) kept;   /* by sheet of the best plan: so many stay */
    aside now;               /* not to be fixed by choice in this dive */
    size_t chosen[BRANCHES]; /* the first sheets fixed by choice */
    size_t choices;
    SB_LIST(aside) waiting;
} diving;

int64_t sb_sheets_grain(const sb_sheet_bench *bench) {
    int64_t grain = 0;
    if (!bench->problem->rules.material_only)
        return 1;
    for (size_t o = 0; o < bench->offers.count; o++)
        for (int64_t a = bench->offers.items[o].fixed; a != 0;) {
            int64_t rest = grain % a;
            grain = a;
            a = rest;
        }
    return grain > 0 ? grain : 1;
}

/* ---- where the dive stands --------------------------------------------------------------------------- */

static void start_over(diving *d) {
    const sb_sheet_bench *bench = d->s->bench;
    d->fixed.sheets.count = 0;
    d->fixed.cost = 0;
    d->fixed.missing = 0;
    for (size_t i = 0; i < bench->panes.count; i++)
        d->demand[i] = bench->panes.items[i].pieces;
    for (size_t o = 0; o < bench->offers.count; o++)
        d->available[o] = bench->offers.items[o].available;
}

/* The search's own filling starts from what is left in the dive. */
static void return_to_rest(diving *d) {
    for (size_t i = 0; i < d->s->bench->panes.count; i++)
        d->s->f.demand[i] = d->demand[i];
    for (size_t o = 0; o < d->s->bench->offers.count; o++)
        d->s->f.available[o] = d->available[o];
}

static bool is_done(const diving *d) {
    for (size_t i = 0; i < d->s->bench->panes.count; i++)
        if (d->demand[i] > 0)
            return false;
    return true;
}

static bool is_hopeless(const diving *d) {
    double least = (double)d->fixed.cost + d->c->value, noise = 1e-6 * (1 + fabs(least));
    return d->s->best->missing <= 0 && least > (double)(d->s->best->cost - d->grain) + noise;
}

static void keep_if_better(diving *d, const sb_laying *laying) {
    if (sb_laying_better(laying, d->s->best))
        sb_laying_copy(d->s->bench, d->s->best, laying);
}

/* ---- one step ------------------------------------------------------------------------------------------ */

static void finish_quickly(diving *d) {
    return_to_rest(d);
    for (size_t i = 0; i < d->s->bench->panes.count; i++)
        d->s->f.worth[i] = d->c->duals[i];
    d->s->few = true;
    sb_sheets_fill(d->s, true, &d->tried);
    d->s->few = false;
    for (size_t i = 0; i < d->fixed.sheets.count; i++)
        SB_PUSH(d->s->bench->run->pool, d->tried.sheets, d->fixed.sheets.items[i]);
    d->tried.cost += d->fixed.cost;
    keep_if_better(d, &d->tried);
}

static bool fix(diving *d, const sb_laid *laid, int64_t most) {
    int64_t times = d->available[laid->offer] < most ? d->available[laid->offer] : most;
    for (size_t i = 0; i < d->s->bench->panes.count; i++)
        if (laid->made[i] > 0 && d->demand[i] / laid->made[i] < times)
            times = d->demand[i] / laid->made[i];
    if (times <= 0)
        return false;
    for (size_t i = 0; i < d->s->bench->panes.count; i++)
        d->demand[i] -= times * laid->made[i];
    if (d->available[laid->offer] != INT64_MAX)
        d->available[laid->offer] -= times;
    sb_laid kept = *laid;
    kept.count = times;
    SB_PUSH(d->s->bench->run->pool, d->fixed.sheets, kept);
    d->fixed.cost += times * laid->cost;
    return true;
}

static bool fix_whole(diving *d) {
    bool any = false;
    for (size_t j = 0; j < d->c->times.count; j++) {
        int64_t whole = (int64_t)floor(d->c->times.items[j] + 1e-5);
        if (whole > 0)
            any = fix(d, &d->c->laid.items[j], whole) || any;
    }
    return any;
}

static bool is_aside(const diving *d, size_t column) {
    for (size_t i = 0; i < d->now.count; i++)
        if (d->now.columns[i] == column)
            return true;
    return false;
}

static size_t surest(const diving *d) {
    size_t best = SIZE_MAX;
    const double *times = d->c->times.items;
    for (size_t j = 0; j < d->c->times.count; j++)
        if (times[j] > 1e-5 && !is_aside(d, j) && (best == SIZE_MAX || times[j] > times[best] + 1e-9))
            best = j;
    return best;
}

static bool fix_surest(diving *d) {
    size_t column;
    while ((column = surest(d)) != SIZE_MAX) {
        if (fix(d, &d->c->laid.items[column], 1)) {
            if (d->choices < BRANCHES)
                d->chosen[d->choices++] = column;
            return true;
        }
        d->c->times.items[column] = 0;
    }
    return false;
}

/* ---- one dive after another ----------------------------------------------------------------------------- */

/* True while it is worth going deeper. */
static bool step(diving *d) {
    sb_sheet_columns_refit(d->c);
    return_to_rest(d);
    if (!sb_sheet_columns_solve(d->c, d->s, ROUNDS) || is_hopeless(d))
        return false;
    finish_quickly(d);
    return !sb_sheets_are_least(d->s) && (fix_whole(d) || fix_surest(d));
}

static void dive(diving *d) {
    while (!is_done(d) && sb_work_goes_on(d->s->bench->work))
        if (!step(d))
            return;
    if (is_done(d))
        keep_if_better(d, &d->fixed);
}

static void branch(diving *d) {
    for (size_t i = 0; i < d->choices && d->now.count < SET_ASIDE; i++) {
        aside more = d->now;
        more.columns[more.count++] = d->chosen[i];
        SB_PUSH(d->s->bench->run->pool, d->waiting, more);
    }
}

/* ---- a few sheets of the best plan given free, the rest of it fixed -------------------------------------- */

/* What a sheet costs above what its parts are worth to the whole program. */
static double loss_of(const diving *d, const sb_laid *laid) {
    double worth = 0;
    for (size_t i = 0; i < d->s->bench->panes.count; i++)
        worth += d->price[i] * (double)laid->made[i];
    return (double)laid->cost - worth;
}

/* The one that loses most of a few drawn. */
static size_t draw(const diving *d, const int64_t *kept) {
    const sb_laying *best = d->s->best;
    size_t found = SIZE_MAX;
    for (int n = 0; n < DRAWS; n++) {
        size_t drawn = sb_work_dice(d->s->bench->work, best->sheets.count);
        if (kept[drawn] > 0 && (found == SIZE_MAX || loss_of(d, &best->sheets.items[drawn]) >
                                                         loss_of(d, &best->sheets.items[found])))
            found = drawn;
    }
    return found;
}

static void give_free(diving *d) {
    const sb_laying *best = d->s->best;
    d->kept.count = 0;
    for (size_t n = 0; n < best->sheets.count; n++)
        SB_PUSH(d->s->bench->run->pool, d->kept, best->sheets.items[n].count);
    int64_t *kept = d->kept.items;
    for (size_t left = 2 + sb_work_dice(d->s->bench->work, FREED - 1); left > 0; left--) {
        size_t drawn = draw(d, kept);
        if (drawn != SIZE_MAX)
            kept[drawn]--;
    }
    start_over(d);
    for (size_t n = 0; n < best->sheets.count; n++)
        if (kept[n] > 0)
            fix(d, &best->sheets.items[n], kept[n]);
}

static void dive_again(diving *d) {
    d->now.count = 0;
    for (int idle = 0; idle < PATIENCE && !sb_sheets_are_least(d->s); idle++) {
        int64_t before = d->s->best->cost;
        if (d->s->best->sheets.count == 0 || !sb_work_goes_on(d->s->bench->work))
            return;
        give_free(d);
        dive(d);
        idle = d->s->best->cost < before ? 0 : idle;
    }
}

static void dive_all(diving *d) {
    sb_work *work = d->s->bench->work;
    int64_t later = work->left / 2;
    work->left -= later;
    SB_PUSH(d->s->bench->run->pool, d->waiting, (aside){0});
    for (size_t i = 0; i < d->waiting.count && i < DIVES && !sb_sheets_are_least(d->s); i++) {
        if (!sb_work_goes_on(work))
            break;
        d->now = d->waiting.items[i];
        d->choices = 0;
        start_over(d);
        dive(d);
        branch(d);
    }
    work->left += later;
}

void sb_sheets_dive(sb_sheet_search *s, sb_sheet_columns *c) {
    sb_pool *pool = s->bench->run->pool;
    diving d = {.s = s, .c = c, .grain = sb_sheets_grain(s->bench)};
    const int64_t *demand = c->demand, *available = c->available;
    c->demand = d.demand = SB_NEW_ARRAY(pool, int64_t, s->bench->panes.count);
    c->available = d.available = SB_NEW_ARRAY(pool, int64_t, s->bench->offers.count);
    d.price = SB_NEW_ARRAY(pool, double, s->bench->panes.count);
    for (size_t i = 0; i < s->bench->panes.count; i++)
        d.price[i] = c->duals[i];
    s->brief = s->bending != NULL;
    dive_all(&d);
    dive_again(&d);
    s->brief = false;
    c->demand = demand;
    c->available = available;
    sb_sheet_columns_refit(c);
}
