/* Column generation for the bound of one stock of sheets. */
#include <math.h>

#include "cutting/lp.h"
#include "cutting/sheet_mix.h"
#include "cutting/sheet_proof.h"
#include "cutting/sheet_worth.h"

#define ROUNDS 400

typedef struct mixing {
    const sb_sheet_bench *bench;
    const sb_laying *best;
    sb_bound *bound;
    sb_lp *lp;
    size_t rows;
    size_t *row_of_offer; /* SIZE_MAX: more of it than could be used */
    double unit;          /* thousandths to the program's 1 */
    double *duals;        /* y by pane [thousandths] */
    int64_t *whole, *made;
    sb_lp_entry *entries;
    sb_worths *worths;
} mixing;

/* ---- set up ---------------------------------------------------------------------------------------- */

static int64_t all_pieces(const sb_sheet_bench *bench) {
    int64_t pieces = 0;
    for (size_t i = 0; i < bench->panes.count; i++)
        pieces += bench->panes.items[i].pieces;
    return pieces;
}

static void number_rows(mixing *m) {
    const sb_sheet_bench *bench = m->bench;
    int64_t pieces = all_pieces(bench);
    m->rows = bench->panes.count;
    m->row_of_offer = SB_NEW_ARRAY(bench->run->pool, size_t, bench->offers.count);
    for (size_t o = 0; o < bench->offers.count; o++)
        m->row_of_offer[o] = bench->offers.items[o].available < pieces ? m->rows++ : SIZE_MAX;
}

static void add_column(mixing *m, size_t offer, const int64_t *made) {
    size_t entries = 0;
    for (size_t i = 0; i < m->bench->panes.count; i++)
        if (made[i] > 0)
            m->entries[entries++] = (sb_lp_entry){(int)i, (double)made[i]};
    if (m->row_of_offer[offer] != SIZE_MAX)
        m->entries[entries++] = (sb_lp_entry){(int)m->row_of_offer[offer], 1};
    sb_lp_add(m->lp, (double)sb_sheet_net(m->bench, offer) / m->unit, m->entries, entries);
}

static bool start_program(mixing *m) {
    sb_pool *pool = m->bench->run->pool;
    double *wanted = SB_NEW_ARRAY(pool, double, m->rows);
    for (size_t i = 0; i < m->bench->panes.count; i++)
        wanted[i] = (double)m->bench->panes.items[i].pieces;
    for (size_t o = 0; o < m->bench->offers.count; o++)
        if (m->row_of_offer[o] != SIZE_MAX)
            wanted[m->row_of_offer[o]] = (double)m->bench->offers.items[o].available;
    m->lp = sb_lp_new(pool, m->bench->panes.count, m->rows, wanted, 2);
    if (!m->lp)
        return false;
    for (size_t i = 0; i < m->best->sheets.count; i++)
        add_column(m, m->best->sheets.items[i].offer, m->best->sheets.items[i].made);
    return true;
}

static bool set_up(mixing *m) {
    const sb_sheet_bench *bench = m->bench;
    sb_pool *pool = bench->run->pool;
    m->unit = 1;
    for (size_t o = 0; o < bench->offers.count; o++) {
        if (sb_sheet_net(bench, o) <= 0)
            return false; /* sheets that earn money: no duals help */
        m->unit = fmax(m->unit, (double)sb_sheet_net(bench, o));
    }
    number_rows(m);
    m->whole = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    m->made = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    m->entries = SB_NEW_ARRAY(pool, sb_lp_entry, m->rows + 1);
    return start_program(m);
}

/* ---- one round --------------------------------------------------------------------------------------- */

static bool solve(mixing *m) {
    int64_t before = sb_lp_pivots(m->lp);
    if (!sb_lp_solve(m->lp))
        return false;
    m->bench->work->left -= 1500 + (sb_lp_pivots(m->lp) - before + 2) * (int64_t)(m->rows + 50);
    for (size_t i = 0; i < m->bench->panes.count; i++) {
        m->duals[i] = fmax(0, sb_lp_dual(m->lp, i) * m->unit);
        m->whole[i] = (int64_t)(m->duals[i] * SB_SHEET_SCALE);
    }
    return true;
}

static void prove(mixing *m) {
    sb_worths_find(m->worths, m->whole);
    sb_sheet_proof proof = {m->worths->by_strips ? "strips" : "guillotine",
                            m->whole,
                            m->worths->upper,
                            NULL,
                            {m->worths->unit[0], m->worths->unit[1]}};
    sb_sheet_prove(m->bench, &proof, m->bound);
}

/* What the sheet may cost in the program. */
static double limit_of(const mixing *m, size_t offer) {
    size_t row = m->row_of_offer[offer];
    double limit = row == SIZE_MAX ? 0 : -sb_lp_dual(m->lp, row) * m->unit;
    return (limit + (double)sb_sheet_net(m->bench, offer)) * SB_SHEET_SCALE;
}

static bool add_improving(mixing *m) {
    bool added = false;
    for (size_t o = 0; o < m->bench->offers.count; o++) {
        if ((double)m->worths->upper[o] <= limit_of(m, o) * (1 + 1e-7))
            continue;
        sb_worths_best(m->worths, o, m->made);
        add_column(m, o, m->made);
        added = true;
    }
    return added;
}

static bool is_met(const mixing *m) {
    return m->best->missing <= 0 && m->bound->bound.milli >= m->best->cost;
}

bool sb_sheet_mix(const sb_sheet_bench *bench, const sb_laying *best, sb_bound *bound, double *duals) {
    mixing m = {.bench = bench, .best = best, .bound = bound, .duals = duals};
    m.worths = sb_worths_new(bench, bench->stages <= 3 ? 2048 : 300);
    if (!m.worths || !set_up(&m))
        return false;
    bool solved = false;
    for (int round = 0; round < ROUNDS && sb_work_goes_on(bench->work); round++) {
        if (!solve(&m))
            break;
        prove(&m);
        solved = true;
        if (is_met(&m) || !add_improving(&m))
            break;
    }
    return solved;
}
