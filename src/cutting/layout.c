/* What a sequence of parts takes on a board: kerfs between neighbours, and the order that costs least. */
#include "cutting/boards.h"

/* ---- neighbours ---------------------------------------------------------------------------------- */

static int64_t larger(int64_t a, int64_t b) {
    return a > b ? a : b;
}

int64_t sb_junction(const sb_bench *bench, size_t rear, size_t front, int64_t *cuts) {
    const sb_ending *behind = &bench->endings.items[rear], *before = &bench->endings.items[front];
    bool share = behind->opposite == front;
    *cuts = share ? 1 : 2;
    return share ? before->shared : larger(behind->kerf, before->kerf);
}

/* ---- order --------------------------------------------------------------------------------------- */

/* A board's sequence grows from the front: each time the part that takes least behind the last one, the same
 * kind before others, longer before shorter. */
typedef struct growth {
    const sb_bench *bench;
    sb_layout *layout;
    int64_t *open; /* still to place, by lot */
    const sb_lot *lots;
    size_t count, last_lot;
} growth;

static void place(growth *g, size_t lot, size_t turn) {
    const sb_kind *kind = &g->bench->kinds.items[g->lots[lot].kind];
    sb_layout *layout = g->layout;
    int64_t at = 0, cuts = 0;
    if (layout->parts.count > 0) {
        at = layout->used + sb_junction(g->bench, layout->last, kind->turns[turn].front, &cuts);
    }
    SB_PUSH(g->bench->run->pool, layout->parts, ((sb_lying){g->lots[lot].kind, turn, at}));
    layout->used = at + kind->length;
    layout->cuts += cuts;
    layout->last = kind->turns[turn].rear;
    g->open[lot]--;
    g->last_lot = lot;
}

/* What the part adds behind the last one, and whether it is to be preferred at equal amounts. */
static int64_t added(const growth *g, size_t lot, size_t turn, bool same) {
    const sb_layout *layout = g->layout;
    const sb_kind *kind = &g->bench->kinds.items[g->lots[lot].kind];
    int64_t cuts, gap = sb_junction(g->bench, layout->last, kind->turns[turn].front, &cuts);
    return 4 * gap + 2 * (cuts > 1) + !same;
}

static void place_next(growth *g) {
    size_t best_lot = SIZE_MAX, best_turn = 0;
    int64_t least = INT64_MAX;
    for (size_t i = 0; i < g->count; i++) {
        const sb_kind *kind = &g->bench->kinds.items[g->lots[i].kind];
        for (size_t t = 0; g->open[i] > 0 && t < kind->turn_count; t++) {
            int64_t adds = added(g, i, t, i == g->last_lot);
            if (adds < least)
                least = adds, best_lot = i, best_turn = t;
        }
    }
    place(g, best_lot, best_turn);
}

static void grow_from(growth *g, size_t lot, size_t turn) {
    size_t parts = 0;
    g->layout->parts.count = 0;
    g->layout->used = g->layout->cuts = 0;
    for (size_t i = 0; i < g->count; i++) {
        g->open[i] = g->lots[i].count;
        parts += (size_t)g->lots[i].count;
    }
    place(g, lot, turn);
    while (g->layout->parts.count < parts)
        place_next(g);
}

/* Fits where the other does not, or costs less; of two that cost the same the shorter one. */
static bool is_better(const sb_bench *bench, size_t board, const sb_layout *one, const sb_layout *other) {
    sb_outcome a = sb_layout_outcome(bench, board, one), b = sb_layout_outcome(bench, board, other);
    if (a.fits != b.fits)
        return a.fits;
    return a.fits && a.cost != b.cost ? a.cost < b.cost : one->used < other->used;
}

static void keep_if_better(const sb_bench *bench, size_t board, sb_layout *best, sb_layout *tried) {
    if (best->parts.count > 0 && !is_better(bench, board, tried, best))
        return;
    sb_layout old = *best;
    *best = *tried;
    *tried = old;
}

#define STARTS 12 /* first parts tried; off-square boards seldom carry more than a few kinds */

/* Between square ends the order does not matter to the length: kinds follow each other as the lots do. */
static void lay_square(growth *g) {
    g->layout->parts.count = 0;
    g->layout->used = g->layout->cuts = 0;
    for (size_t i = 0; i < g->count; i++) {
        g->open[i] = g->lots[i].count;
        while (g->open[i] > 0)
            place(g, i, 0);
    }
}

bool sb_load_is_square(const sb_bench *bench, const sb_lot *lots, size_t count) {
    for (size_t i = 0; !bench->all_square && i < count; i++) {
        const sb_turn *turn = &bench->kinds.items[lots[i].kind].turns[0];
        if (!bench->endings.items[turn->front].square || !bench->endings.items[turn->rear].square)
            return false;
    }
    return true;
}

const sb_layout *sb_layout_find(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    sb_layout *found = &bench->scratch->found, *tried = &bench->scratch->tried;
    growth g = {bench, found, bench->scratch->open, lots, count, 0};
    found->parts.count = 0;
    if (sb_load_is_square(bench, lots, count)) {
        lay_square(&g);
        return found;
    }
    g.layout = tried;
    size_t starts = 0;
    for (size_t i = 0; i < count; i++)
        for (size_t t = 0; t < bench->kinds.items[lots[i].kind].turn_count && starts < STARTS;
             t++, starts++) {
            grow_from(&g, i, t);
            keep_if_better(bench, board, found, tried);
        }
    return found;
}
