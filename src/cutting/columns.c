/* Column generation: the cheapest mix of loads when boards may be cut in fractions. */
#include <math.h>

#include "cutting/search.h"

#define LARGEST 500 /* rows the dense inverse is used for */

typedef struct generation {
    const sb_bench *bench;
    sb_simplex *simplex;
    size_t *row_of_board; /* SIZE_MAX: more of it than could be used */
    sb_mix *mix;
    int64_t *whole; /* duals as whole numbers */
    int64_t scale;
    sb_worth worth;
    sb_lp_entry *entries;
} generation;

/* ---- set up -------------------------------------------------------------------------------------- */

static int64_t all_pieces(const sb_bench *bench) {
    int64_t pieces = 0;
    for (size_t i = 0; i < bench->kinds.count; i++)
        pieces += bench->kinds.items[i].demand;
    return pieces;
}

static size_t number_rows(generation *g) {
    const sb_bench *bench = g->bench;
    size_t rows = bench->kinds.count;
    int64_t pieces = all_pieces(bench);
    g->row_of_board = SB_NEW_ARRAY(bench->run->pool, size_t, bench->boards.count);
    for (size_t s = 0; s < bench->boards.count; s++)
        g->row_of_board[s] = bench->boards.items[s].available < pieces ? rows++ : SIZE_MAX;
    return rows;
}

/* Making a part any other way is dearer than the dearest board for it alone. */
static double dearest_board(const sb_bench *bench) {
    double most = 1;
    for (size_t s = 0; s < bench->boards.count; s++)
        most = fmax(most, (double)(bench->boards.items[s].fixed + bench->change + 3 * bench->cut));
    return 2 * most;
}

static bool set_up(generation *g) {
    const sb_bench *bench = g->bench;
    size_t rows = number_rows(g), kinds = bench->kinds.count;
    g->mix->duals = SB_NEW_ARRAY(bench->run->pool, double, rows);
    if (rows > LARGEST)
        return false;
    double *wanted = SB_NEW_ARRAY(bench->run->pool, double, rows);
    double *missing = SB_NEW_ARRAY(bench->run->pool, double, rows);
    for (size_t i = 0; i < kinds; i++) {
        wanted[i] = (double)bench->kinds.items[i].demand;
        missing[i] = dearest_board(bench);
    }
    for (size_t s = 0; s < bench->boards.count; s++)
        if (g->row_of_board[s] != SIZE_MAX)
            wanted[g->row_of_board[s]] = (double)bench->boards.items[s].available;
    g->simplex = sb_simplex_new(bench->run->pool, kinds, rows, wanted, missing);
    g->entries = SB_NEW_ARRAY(bench->run->pool, sb_lp_entry, rows + 1);
    g->whole = SB_NEW_ARRAY(bench->run->pool, int64_t, kinds);
    g->scale = sb_duals_scale(bench);
    return true;
}

/* ---- columns ------------------------------------------------------------------------------------- */

static void add_column(generation *g, size_t board, const sb_lot *lots, size_t count) {
    sb_pool *pool = g->bench->run->pool;
    sb_mix *mix = g->mix;
    size_t entries = 0;
    for (size_t i = 0; i < count; i++)
        g->entries[entries++] = (sb_lp_entry){lots[i].kind, (double)lots[i].count};
    if (g->row_of_board[board] != SIZE_MAX)
        g->entries[entries++] = (sb_lp_entry){g->row_of_board[board], 1};
    sb_simplex_add(g->simplex, sb_load_least_cost(g->bench, board, lots, count), g->entries, entries,
                   mix->loads.count);
    SB_PUSH(pool, mix->loads, ((sb_load){board, 0, mix->lots.count, count, 0}));
    for (size_t i = 0; i < count; i++)
        SB_PUSH(pool, mix->lots, lots[i]);
}

/* As many of one kind as fit: a first mix that makes everything. */
static void add_single_kinds(generation *g) {
    const sb_bench *bench = g->bench;
    for (size_t i = 0; i < bench->kinds.count; i++)
        for (size_t s = 0; s < bench->boards.count; s++) {
            const sb_kind *kind = &bench->kinds.items[i];
            int64_t count = bench->boards.items[s].capacity / kind->least;
            if (count > kind->demand)
                count = kind->demand;
            if (count > 0)
                add_column(g, s, &(sb_lot){i, count}, 1);
        }
}

static bool add_best(generation *g, size_t board, int64_t steps) {
    const sb_bench *bench = g->bench;
    size_t row = g->row_of_board[board];
    double price = row == SIZE_MAX ? 0 : -g->simplex->dual[row];
    sb_worth_find(bench, board, &(sb_valuing){g->whole, g->scale, false, NULL, INT64_MIN}, steps, &g->worth);
    double fixed = (double)bench->boards.items[board].fixed + price;
    if (!g->worth.any || (double)g->worth.best / (double)g->scale <= fixed + 1e-7 * (1 + fixed))
        return false;
    add_column(g, board, g->worth.lots.items, g->worth.lots.count);
    return true;
}

static bool add_improving(generation *g, int64_t steps) {
    const sb_bench *bench = g->bench;
    bool added = false;
    for (size_t i = 0; i < bench->kinds.count; i++)
        g->whole[i] = (int64_t)(fmax(g->simplex->dual[i], 0) * (double)g->scale);
    for (size_t s = 0; s < bench->boards.count; s++)
        added = add_best(g, s, steps) || added;
    return added;
}

/* ---- the mix ------------------------------------------------------------------------------------- */

static void read_mix(generation *g) {
    const sb_simplex *s = g->simplex;
    g->mix->times = SB_NEW_ARRAY(g->bench->run->pool, double, g->mix->loads.count + 1);
    for (size_t i = 0; i < s->rows; i++) {
        size_t tag = s->columns.items[s->basis[i]].tag;
        if (tag != SIZE_MAX && s->basic[i] > 1e-6)
            g->mix->times[tag] = s->basic[i];
    }
    for (size_t i = 0; i < g->bench->kinds.count; i++)
        g->mix->duals[i] = fmax(s->dual[i], 0);
}

bool sb_mix_find(const sb_bench *bench, sb_mix *out) {
    generation g = {.bench = bench, .mix = out};
    *out = (sb_mix){0};
    if (!set_up(&g))
        return false;
    add_single_kinds(&g);
    size_t most = 20 * g.simplex->rows + 200;
    int64_t steps = 2000 + 40 * (int64_t)bench->kinds.count;
    bool improves = true;
    for (size_t round = 0; improves && round < most && sb_work_goes_on(bench->work); round++) {
        sb_simplex_run(g.simplex, 4 * g.simplex->rows + 50);
        bench->work->left -= (int64_t)(g.simplex->rows * g.simplex->rows / 8);
        improves = add_improving(&g, steps);
    }
    sb_simplex_run(g.simplex, 4 * g.simplex->rows + 50);
    read_mix(&g);
    return !improves;
}
