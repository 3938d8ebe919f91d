/* Column generation for the bound of one stock of sheets. */
#include <math.h>
#include <string.h>

#include "cutting/sheet_mix.h"

#define ROUNDS 400
#define POINTS 300   /* along an axis, any number of stages */
#define FINE   1200  /* the same where it is worth the work */
#define UNITS  16384 /* along an axis, in strips of few kinds, */
#define COARSE 2048  /* and of many */
#define FEW    40
#define STRIPS 64 /* of one sheet at most */

/* ---- set up ---------------------------------------------------------------------------------------- */

/* The dearest; 0 where sheets that cost nothing are enough, since no duals help then. */
static double dearest(const sb_sheet_bench *bench) {
    double most = 0;
    for (size_t o = 0; o < bench->offers.count; o++) {
        if (sb_sheet_least(bench, o) == 0 && bench->offers.items[o].available == INT64_MAX)
            return 0;
        most = fmax(most, (double)sb_sheet_least(bench, o));
    }
    return most;
}

static void add_column(sb_sheet_mix *m, size_t offer, const int64_t *made) {
    int64_t *kept = SB_NEW_ARRAY(m->bench->run->pool, int64_t, m->bench->panes.count);
    for (size_t i = 0; i < m->bench->panes.count; i++)
        kept[i] = made[i];
    SB_PUSH(m->bench->run->pool, m->columns, kept);
    sb_sheet_program_add(m->program, offer, made, (double)sb_sheet_least(m->bench, offer));
}

/* Of several offers every one gets a row, as if few of it were there. */
static const sb_sheet_bench *with_rows(const sb_sheet_bench *bench) {
    sb_sheet_bench *few = SB_NEW(bench->run->pool, sb_sheet_bench);
    if (bench->offers.count == 1)
        return bench;
    *few = *bench;
    memset(&few->offers, 0, sizeof few->offers);
    for (size_t o = 0; o < bench->offers.count; o++) {
        SB_PUSH(bench->run->pool, few->offers, bench->offers.items[o]);
        few->offers.items[o].available = 0;
    }
    return few;
}

static bool start_program(sb_sheet_mix *m) {
    sb_pool *pool = m->bench->run->pool;
    m->demand = SB_NEW_ARRAY(pool, int64_t, m->bench->panes.count);
    m->available = SB_NEW_ARRAY(pool, int64_t, m->bench->offers.count);
    for (size_t i = 0; i < m->bench->panes.count; i++)
        m->demand[i] = m->bench->panes.items[i].pieces;
    for (size_t o = 0; o < m->bench->offers.count; o++)
        m->available[o] = sb_sheets_usable(m->bench, o);
    m->program = sb_sheet_program_new(with_rows(m->bench), dearest(m->bench), m->demand, m->available);
    for (size_t j = 0; m->program && j < m->found->laid.count; j++)
        add_column(m, m->found->laid.items[j].offer, m->found->laid.items[j].made);
    return m->program != NULL;
}

static int64_t fineness(const sb_sheet_bench *bench, bool fine) {
    int64_t panes = (int64_t)bench->panes.count, units = panes > FEW ? UNITS * FEW / panes : UNITS;
    if (bench->stages > 3)
        return fine ? FINE : POINTS;
    return units > COARSE ? units : COARSE;
}

sb_sheet_mix *sb_sheet_mix_new(sb_sheet_search *s, sb_sheet_columns *columns, bool fine) {
    sb_pool *pool = s->bench->run->pool;
    size_t panes = s->bench->panes.count;
    sb_sheet_mix *m = SB_NEW(pool, sb_sheet_mix);
    *m = (sb_sheet_mix){.bench = s->bench, .s = s, .found = columns};
    if (dearest(m->bench) <= 0 || !start_program(m))
        return NULL;
    m->duals = SB_NEW_ARRAY(pool, double, panes);
    m->whole = SB_NEW_ARRAY(pool, int64_t, panes);
    m->made = SB_NEW_ARRAY(pool, int64_t, panes);
    m->worths = sb_worths_new(m->bench, fineness(m->bench, fine));
    return m->worths ? m : NULL;
}

/* ---- one round --------------------------------------------------------------------------------------- */

bool sb_sheet_mix_price(sb_sheet_mix *m) {
    if (!sb_sheet_program_solve(m->program, m->duals))
        return false;
    for (size_t i = 0; i < m->bench->panes.count; i++)
        m->whole[i] = (int64_t)(m->duals[i] * SB_SHEET_SCALE);
    sb_worths_find(m->worths, m->whole);
    return true;
}

sb_sheet_proof sb_sheet_mix_proof(const sb_sheet_mix *m) {
    const sb_worths *w = m->worths;
    return (sb_sheet_proof){
        w->by_strips ? "strips" : "guillotine", m->whole, w->upper, NULL, {w->unit[0], w->unit[1]}, w->once};
}

/* What can be cut of it, for plans. */
static void lay_out(sb_sheet_mix *m, size_t offer) {
    int64_t widths[STRIPS];
    const sb_laid *laid =
        m->worths->by_strips
            ? sb_sheets_lay_widths(m->s, offer, widths,
                                   sb_strip_worths_widths(m->worths->strips, offer, widths, STRIPS))
            : sb_sheets_lay_best(m->s, offer, m->worths->any);
    if (laid->ratio >= 0)
        sb_sheet_columns_add(m->found, laid);
}

static void use_duals(sb_sheet_mix *m) {
    sb_sheets_reset(m->s);
    for (size_t i = 0; i < m->bench->panes.count; i++)
        m->s->f.worth[i] = m->duals[i];
}

bool sb_sheet_mix_add_improving(sb_sheet_mix *m) {
    bool added = false;
    use_duals(m);
    for (size_t o = 0; o < m->bench->offers.count; o++) {
        double cost = (double)sb_sheet_least(m->bench, o) + sb_sheet_program_rent(m->program, o);
        if ((double)m->worths->upper[o] <= cost * SB_SHEET_SCALE * (1 + 1e-7))
            continue;
        sb_worths_best(m->worths, o, m->made);
        add_column(m, o, m->made);
        lay_out(m, o);
        added = true;
    }
    return added;
}

/* ---- panes that the mix uses too often ----------------------------------------------------------------- */

static size_t most_overused(const sb_sheet_mix *m) {
    double *over = SB_NEW_ARRAY(m->bench->run->pool, double, m->bench->panes.count);
    size_t best = SIZE_MAX;
    for (size_t j = 0; j < m->columns.count; j++) {
        double times = sb_lp_times(m->program->lp, j);
        for (size_t i = 0; i < m->bench->panes.count && times > 1e-9; i++)
            if (m->columns.items[j][i] > 1 && m->bench->panes.items[i].pieces == 1)
                over[i] += times * (double)(m->columns.items[j][i] - 1);
    }
    for (size_t i = 0; i < m->bench->panes.count; i++)
        if (over[i] > 1e-6 && (best == SIZE_MAX || over[i] * m->duals[i] > over[best] * m->duals[best]))
            best = i;
    return best;
}

/* Columns that hold a pane twice go as soon as it is tracked. False when there is no such pane. */
static bool track_one(sb_sheet_mix *m) {
    size_t pane = most_overused(m);
    if (pane == SIZE_MAX || !sb_worths_track(m->worths, pane))
        return false;
    for (size_t j = 0; j < m->columns.count; j++)
        if (m->columns.items[j][pane] > 1)
            sb_lp_limit(m->program->lp, j, 0);
    return true;
}

/* ---- all rounds ---------------------------------------------------------------------------------------- */

void sb_sheet_mix_solve(sb_sheet_mix *m) {
    for (int round = 0; round < ROUNDS && sb_work_goes_on(m->bench->work); round++) {
        if (!sb_sheet_mix_price(m))
            return;
        sb_sheet_proof proof = sb_sheet_mix_proof(m);
        sb_sheet_prove(m->bench, &proof, m->s->bound);
        if (sb_sheets_are_least(m->s) || (!sb_sheet_mix_add_improving(m) && !track_one(m)))
            return;
    }
}
