/* Diving. */
#include "cutting/dive.h"

#include <math.h>

#define SET_ASIDE 3  /* loads at most set aside in one dive */
#define BRANCHES  4  /* loads of one dive that others set aside */
#define DIVES     40 /* at most */
#define ROUNDS    30 /* of pricing for one rest */

typedef struct aside {
    size_t loads[SET_ASIDE], count;
} aside;

typedef struct diving {
    const sb_bench *bench;
    sb_filling *f; /* what is left in the dive; worths are the duals */
    sb_columns *c;
    sb_cutting *best, *fixed, *tried;
    int64_t target;
    int64_t *demand, *available; /* what the columns look at */
    aside now;                   /* not to be fixed by choice in this dive */
    size_t chosen[BRANCHES];     /* the first loads fixed by choice */
    size_t choices;
    SB_LIST(aside) waiting;
} diving;

/* ---- where the dive stands ----------------------------------------------------------------------- */

static void start_over(diving *d) {
    sb_filling_reset(d->f);
    sb_cutting_clear(d->fixed);
}

/* The columns work on a copy, so that the quick ways may use up the filling's own. */
static void tell_columns(diving *d) {
    for (size_t i = 0; i < d->bench->kinds.count; i++)
        d->demand[i] = d->f->demand[i];
    for (size_t s = 0; s < d->bench->boards.count; s++)
        d->available[s] = d->f->available[s];
    sb_columns_refit(d->c);
}

static void return_to_rest(diving *d) {
    for (size_t i = 0; i < d->bench->kinds.count; i++)
        d->f->demand[i] = d->demand[i];
    for (size_t s = 0; s < d->bench->boards.count; s++)
        d->f->available[s] = d->available[s];
}

static int64_t pieces_left(const diving *d) {
    int64_t pieces = 0;
    for (size_t i = 0; i < d->bench->kinds.count; i++)
        pieces += d->f->demand[i];
    return pieces;
}

static bool is_reached(const diving *d) {
    return d->best->missing == 0 && d->best->cost <= d->target;
}

static bool is_hopeless(const diving *d) {
    double least = (double)d->fixed->cost + d->c->value;
    double noise = 1e-6 * (1 + fabs(least));
    return d->best->missing == 0 && least > (double)(d->best->cost - d->bench->grain) + noise;
}

/* ---- the rest, finished by the quick ways -------------------------------------------------------- */

static void keep_if_better(diving *d, const sb_cutting *cutting) {
    if (sb_cutting_better(cutting, d->best))
        sb_cutting_copy(d->bench, d->best, cutting);
}

static void use_duals(diving *d) {
    for (size_t i = 0; i < d->bench->kinds.count; i++)
        d->f->worth[i] = d->c->duals[i] > 0 ? d->c->duals[i] : 1;
}

static void finish_quickly(diving *d) {
    static const double shifts[] = {0, 0.5};
    for (size_t i = 0; i < sizeof shifts / sizeof *shifts && !is_reached(d); i++) {
        use_duals(d);
        sb_cutting_copy(d->bench, d->tried, d->fixed);
        sb_mix_round(d->f, d->c, shifts[i], d->tried);
        keep_if_better(d, d->tried);
        return_to_rest(d);
    }
}

/* ---- one step ------------------------------------------------------------------------------------ */

static bool fix(diving *d, size_t index, int64_t most) {
    const sb_load *load = &d->c->loads.items[index];
    const sb_lot *lots = &d->c->lots.items[load->first];
    int64_t times = sb_filling_times(d->f, load->board, lots, load->lots);
    times = most < times ? most : times;
    sb_outcome outcome = sb_load_outcome(d->bench, load->board, lots, load->lots);
    if (times <= 0 || !outcome.fits)
        return false;
    sb_pick *pick = &d->bench->scratch->picks[0];
    pick->board = load->board;
    pick->cost = outcome.cost;
    pick->lots.count = 0;
    for (size_t i = 0; i < load->lots; i++)
        SB_PUSH(d->bench->run->pool, pick->lots, lots[i]);
    sb_filling_use(d->f, pick, times, d->fixed);
    return true;
}

static bool fix_whole(diving *d) {
    bool any = false;
    for (size_t l = 0; l < d->c->loads.count; l++) {
        int64_t whole = (int64_t)floor(d->c->times[l] + 1e-5);
        if (whole > 0)
            any = fix(d, l, whole) || any;
    }
    return any;
}

static bool is_aside(const diving *d, size_t load) {
    for (size_t i = 0; i < d->now.count; i++)
        if (d->now.loads[i] == load)
            return true;
    return false;
}

static size_t surest(const diving *d) {
    size_t best = SIZE_MAX;
    for (size_t l = 0; l < d->c->loads.count; l++)
        if (d->c->times[l] > 1e-5 && !is_aside(d, l) &&
            (best == SIZE_MAX || d->c->times[l] > d->c->times[best] + 1e-9))
            best = l;
    return best;
}

static bool fix_surest(diving *d) {
    size_t load;
    while ((load = surest(d)) != SIZE_MAX) {
        if (fix(d, load, 1)) {
            if (d->choices < BRANCHES)
                d->chosen[d->choices++] = load;
            return true;
        }
        d->c->times[load] = 0; /* the program counts on cuts that cannot all be shared */
    }
    return false;
}

/* ---- one dive ------------------------------------------------------------------------------------ */

/* True while it is worth going deeper. */
static bool step(diving *d, int64_t *quickly_at) {
    tell_columns(d);
    if (!sb_columns_solve(d->c, ROUNDS) || is_hopeless(d))
        return false;
    int64_t left = pieces_left(d);
    if (left <= *quickly_at) {
        finish_quickly(d);
        *quickly_at = left - left / 8 - 1;
    }
    return !is_reached(d) && (fix_whole(d) || fix_surest(d));
}

static void dive(diving *d) {
    int64_t quickly_at = INT64_MAX;
    while (pieces_left(d) > 0 && sb_work_goes_on(d->bench->work))
        if (!step(d, &quickly_at))
            return;
    if (pieces_left(d) == 0)
        keep_if_better(d, d->fixed);
}

/* ---- one dive after another ---------------------------------------------------------------------- */

static void branch(diving *d) {
    for (size_t i = 0; i < d->choices && d->now.count < SET_ASIDE; i++) {
        aside more = d->now;
        more.loads[more.count++] = d->chosen[i];
        SB_PUSH(d->bench->run->pool, d->waiting, more);
    }
}

static diving set_up(sb_filling *f, sb_columns *c, sb_cutting *best, int64_t target) {
    sb_pool *pool = f->bench->run->pool;
    diving d = {.bench = f->bench, .f = f, .c = c, .best = best, .target = target};
    d.fixed = SB_NEW(pool, sb_cutting);
    d.tried = SB_NEW(pool, sb_cutting);
    d.demand = SB_NEW_ARRAY(pool, int64_t, f->bench->kinds.count);
    d.available = SB_NEW_ARRAY(pool, int64_t, f->bench->boards.count + 1);
    return d;
}

void sb_dive(sb_filling *f, sb_columns *c, sb_cutting *best, int64_t target) {
    diving d = set_up(f, c, best, target);
    const int64_t *demand = c->demand, *available = c->available;
    c->demand = d.demand;
    c->available = d.available;
    SB_PUSH(f->bench->run->pool, d.waiting, (aside){0});
    for (size_t i = 0; i < d.waiting.count && i < DIVES && !is_reached(&d); i++) {
        if (!sb_work_goes_on(f->bench->work))
            break;
        d.now = d.waiting.items[i];
        d.choices = 0;
        start_over(&d);
        dive(&d);
        branch(&d);
    }
    c->demand = demand;
    c->available = available;
    sb_columns_refit(c);
}
