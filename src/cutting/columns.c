/* Column generation. */
#include <math.h>

#include "cutting/columns.h"
#include "cutting/measured.h"
#include "cutting/measuring.h"

#define PER_BOARD 12 /* loads added in one round for one board */

/* ---- set up -------------------------------------------------------------------------------------- */

static size_t number_rows(sb_columns *c) {
    const sb_bench *bench = c->bench;
    size_t rows = bench->kinds.count;
    int64_t pieces = sb_bench_pieces(bench);
    c->row_of_board = SB_NEW_ARRAY(bench->run->pool, size_t, bench->boards.count);
    for (size_t s = 0; s < bench->boards.count; s++)
        c->row_of_board[s] = bench->boards.items[s].available < pieces ? rows++ : SIZE_MAX;
    return rows;
}

static double dearest_board(const sb_bench *bench) {
    double most = 1;
    for (size_t s = 0; s < bench->boards.count; s++)
        most = fmax(most, (double)(bench->boards.items[s].fixed + bench->change + 3 * bench->cut));
    return most;
}

static double wanted_in(const sb_columns *c, size_t row) {
    if (row < c->bench->kinds.count)
        return (double)c->demand[row];
    size_t s = 0;
    while (c->row_of_board[s] != row)
        s++;
    return (double)c->available[s];
}

/* As many of one kind as fit: a first mix that makes everything. */
static void add_single_kinds(sb_columns *c) {
    const sb_bench *bench = c->bench;
    for (size_t i = 0; i < bench->kinds.count; i++)
        for (size_t s = 0; s < bench->boards.count; s++) {
            const sb_offered *on = &bench->boards.items[s];
            int64_t count = on->capacity / bench->kinds.items[i].least;
            if (count > c->demand[i])
                count = c->demand[i];
            if (on->most && count > on->most[i])
                count = on->most[i];
            while (on->most && count > 0 && !sb_load_outcome(bench, s, &(sb_lot){i, count}, 1).fits)
                count--;
            if (count > 0)
                sb_columns_add(c, s, &(sb_lot){i, count}, 1);
        }
}

sb_columns *sb_columns_new(const sb_bench *bench, const int64_t *demand, const int64_t *available) {
    sb_pool *pool = bench->run->pool;
    sb_columns *c = SB_NEW(pool, sb_columns);
    *c = (sb_columns){.bench = bench, .demand = demand, .available = available};
    c->rows = number_rows(c);
    c->unit = dearest_board(bench);
    c->scale = sb_duals_scale(bench);
    c->duals = SB_NEW_ARRAY(pool, double, c->rows);
    c->entries = SB_NEW_ARRAY(pool, sb_lp_entry, c->rows + 1);
    c->whole = SB_NEW_ARRAY(pool, int64_t, bench->kinds.count);
    c->limits = SB_NEW_ARRAY(pool, int64_t, bench->kinds.count);
    double *wanted = SB_NEW_ARRAY(pool, double, c->rows);
    for (size_t row = 0; row < c->rows; row++)
        wanted[row] = wanted_in(c, row);
    c->lp =
        sb_lp_new(pool, bench->kinds.count, c->rows, wanted, 2); /* twice the dearest board for one part */
    if (!c->lp)
        return NULL;
    add_single_kinds(c);
    return c;
}

/* ---- loads --------------------------------------------------------------------------------------- */

/* Loads on boards with faults are those that can be cut there, at what they cost. */
static double cost_of(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    if (bench->boards.items[board].faults.count == 0)
        return sb_load_least_cost(bench, board, lots, count);
    return (double)sb_load_outcome(bench, board, lots, count).cost;
}

void sb_columns_add(sb_columns *c, size_t board, const sb_lot *lots, size_t count) {
    sb_pool *pool = c->bench->run->pool;
    size_t entries = 0;
    for (size_t i = 0; i < count; i++)
        c->entries[entries++] = (sb_lp_entry){(int)lots[i].kind, (double)lots[i].count};
    if (c->row_of_board[board] != SIZE_MAX)
        c->entries[entries++] = (sb_lp_entry){(int)c->row_of_board[board], 1};
    sb_lp_add(c->lp, cost_of(c->bench, board, lots, count) / c->unit, c->entries, entries);
    SB_PUSH(pool, c->loads, ((sb_load){board, 1, c->lots.count, count, 0}));
    for (size_t i = 0; i < count; i++)
        SB_PUSH(pool, c->lots, lots[i]);
}

static bool is_wanted(const sb_columns *c, const sb_load *load) {
    for (size_t i = 0; i < load->lots; i++)
        if (c->lots.items[load->first + i].count > c->demand[c->lots.items[load->first + i].kind])
            return false;
    return c->available[load->board] > 0;
}

void sb_columns_refit(sb_columns *c) {
    for (size_t row = 0; row < c->rows; row++)
        sb_lp_want(c->lp, row, wanted_in(c, row));
    for (size_t l = 0; l < c->loads.count; l++) {
        sb_load *load = &c->loads.items[l];
        bool may = is_wanted(c, load);
        if (may != (load->count > 0))
            sb_lp_limit(c->lp, l, may ? -1 : 0);
        load->count = may;
    }
}

/* ---- pricing ------------------------------------------------------------------------------------- */

/* The best load, then the best of what it leaves, and so on: loads that go together. */
static size_t add_from(sb_columns *c, size_t board, int64_t steps) {
    const sb_bench *bench = c->bench;
    size_t row = c->row_of_board[board], added = 0;
    double fixed = (double)bench->boards.items[board].fixed - (row == SIZE_MAX ? 0 : c->duals[row]);
    int64_t floor = (int64_t)((fixed + 1e-7 * (1 + fixed)) * (double)c->scale);
    for (size_t i = 0; i < bench->kinds.count; i++)
        c->limits[i] = c->demand[i];
    while (added < PER_BOARD) {
        sb_worth_find(bench, board, &(sb_valuing){c->whole, c->scale, false, c->limits, floor}, steps,
                      &c->worth);
        if (!c->worth.any)
            break;
        sb_columns_add(c, board, c->worth.lots.items, c->worth.lots.count);
        for (size_t i = 0; i < c->worth.lots.count; i++)
            c->limits[c->worth.lots.items[i].kind] -= c->worth.lots.items[i].count;
        added++;
    }
    return added;
}

/* The load that the places of the faults allow, where it is worth more than it costs. */
static size_t add_by_place(sb_columns *c, size_t board) {
    const sb_bench *bench = c->bench;
    sb_pick *load = &bench->scratch->picks[0];
    double *values = bench->scratch->measuring->values, worth = 0;
    for (size_t i = 0; i < bench->kinds.count; i++)
        values[i] = c->duals[i] - (double)bench->cut;
    if (!sb_measured_load(bench, board, values, c->demand, load))
        return 0;
    sb_outcome outcome = sb_load_outcome(bench, board, load->lots.items, load->lots.count);
    size_t row = c->row_of_board[board];
    for (size_t i = 0; i < load->lots.count; i++)
        worth += c->duals[load->lots.items[i].kind] * (double)load->lots.items[i].count;
    worth += row == SIZE_MAX ? 0 : c->duals[row];
    if (!outcome.fits || worth <= (double)outcome.cost + 1e-7 * (1 + fabs((double)outcome.cost)))
        return 0;
    sb_columns_add(c, board, load->lots.items, load->lots.count);
    return 1;
}

static bool add_improving(sb_columns *c, int64_t steps) {
    size_t added = 0;
    for (size_t i = 0; i < c->bench->kinds.count; i++)
        c->whole[i] = (int64_t)(fmax(c->duals[i], 0) * (double)c->scale);
    for (size_t s = 0; s < c->bench->boards.count; s++)
        if (c->available[s] > 0)
            added += c->bench->boards.items[s].faults.count > 0 ? add_by_place(c, s) : add_from(c, s, steps);
    return added > 0;
}

/* ---- the mix ------------------------------------------------------------------------------------- */

static bool solve_once(sb_columns *c) {
    int64_t before = sb_lp_pivots(c->lp);
    if (!sb_lp_solve(c->lp))
        return false;
    int64_t pivots = sb_lp_pivots(c->lp) - before;
    c->bench->work->left -= 1500 + (int64_t)c->loads.count + (pivots + 2) * (int64_t)(c->rows + 50);
    for (size_t row = 0; row < c->rows; row++)
        c->duals[row] = sb_lp_dual(c->lp, row) * c->unit;
    c->value = sb_lp_value(c->lp) * c->unit;
    return true;
}

static void read_times(sb_columns *c) {
    c->room_for_times.count = 0;
    for (size_t l = 0; l < c->loads.count; l++) {
        double times = sb_lp_times(c->lp, l);
        SB_PUSH(c->bench->run->pool, c->room_for_times, times > 1e-7 ? times : 0);
    }
    c->times = c->room_for_times.items;
}

bool sb_columns_solve(sb_columns *c, size_t rounds) {
    int64_t steps = 5000 + 400 * (int64_t)c->bench->kinds.count;
    c->converged = false;
    bool solved = solve_once(c);
    while (solved && rounds-- > 0 && sb_work_goes_on(c->bench->work)) {
        c->converged = !add_improving(c, steps);
        if (c->converged)
            break;
        solved = solve_once(c);
    }
    if (solved)
        read_times(c);
    return solved;
}
