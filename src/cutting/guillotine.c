/* The most a sheet is worth with any number of stages: F of every rectangle whose sides are sums of sizes. */
#include "cutting/sheet_worth.h"

typedef struct axis {
    int64_t room;    /* of the largest sheet */
    size_t count;    /* of points, 0 first */
    int64_t *at;     /* by point, rising */
    uint32_t *floor; /* by length: the greatest point not above it */
} axis;

typedef struct sb_guillotine {
    const sb_sheet_bench *bench;
    int64_t unit[2];
    axis x, y;
    sb_lying_panes panes; /* w and l in units */
    const int64_t *duals;
    int64_t *f;     /* F, by point of x, then of y */
    int64_t *count; /* room to find the points in */
} guillotine;

/* ---- points ---------------------------------------------------------------------------------------- */

/* Marks what one more size, `most` times at most, makes of the sums so far. */
static void add_size(const axis *a, bool *sum, int64_t *times, int64_t size, int64_t most) {
    for (int64_t at = 0; at <= a->room; at++)
        times[at] = sum[at] ? 0 : INT64_MAX;
    for (int64_t at = size; at <= a->room; at++) {
        int64_t before = times[at - size];
        if (!sum[at] && before < most) {
            sum[at] = true;
            times[at] = before + 1;
        }
    }
}

static size_t mark_sums(const guillotine *g, const axis *a, bool along_y, bool *sum) {
    int64_t *times = SB_NEW_ARRAY(g->bench->run->pool, int64_t, (size_t)a->room + 1);
    size_t count = 0;
    sum[0] = true;
    for (size_t i = 0; i < g->panes.count; i++) {
        const sb_lying_pane *lying = &g->panes.items[i];
        int64_t size = along_y ? lying->l : lying->w;
        if (size > 0 && size <= a->room)
            add_size(a, sum, times, size, g->bench->panes.items[lying->pane].pieces);
    }
    for (int64_t at = 0; at <= a->room; at++)
        count += sum[at];
    return count;
}

static void read_points(const guillotine *g, axis *a, const bool *sum) {
    sb_pool *pool = g->bench->run->pool;
    a->at = SB_NEW_ARRAY(pool, int64_t, a->count);
    a->floor = SB_NEW_ARRAY(pool, uint32_t, (size_t)a->room + 1);
    size_t next = 0;
    for (int64_t at = 0; at <= a->room; at++) {
        if (sum[at])
            a->at[next++] = at;
        a->floor[at] = (uint32_t)(next - 1);
    }
}

#define MOST_UNITS 100000 /* along an axis */

/* The least unit, from the common divisor up, that leaves few enough points; no size is without a unit. */
static bool make_axis(guillotine *g, axis *a, bool along_y, int64_t fineness) {
    int64_t largest = sb_largest_room(g->bench, along_y), unit = sb_axis_step(g->bench, along_y);
    int64_t least = sb_smallest_size(g->bench, along_y);
    if (largest / unit > MOST_UNITS)
        unit = largest / MOST_UNITS + 1;
    for (; unit <= least; unit += unit / 4 + 1) {
        g->unit[along_y] = unit;
        a->room = largest / unit;
        sb_lying_list(g->bench, g->unit, &g->panes);
        bool *sum = SB_NEW_ARRAY(g->bench->run->pool, bool, (size_t)a->room + 1);
        a->count = mark_sums(g, a, along_y, sum);
        if ((int64_t)a->count > fineness)
            continue;
        read_points(g, a, sum);
        return true;
    }
    return false;
}

struct sb_guillotine *sb_guillotine_new(const sb_sheet_bench *bench, int64_t fineness, int64_t *unit) {
    guillotine *g = SB_NEW(bench->run->pool, guillotine);
    *g = (guillotine){.bench = bench, .unit = {1, 1}};
    if (!make_axis(g, &g->x, false, fineness) || !make_axis(g, &g->y, true, fineness))
        return NULL;
    g->f = SB_NEW_ARRAY(bench->run->pool, int64_t, g->x.count * g->y.count);
    unit[0] = g->unit[0];
    unit[1] = g->unit[1];
    return g;
}

/* ---- F ---------------------------------------------------------------------------------------------- */

static void put_panes(const guillotine *g) {
    for (size_t n = 0; n < g->x.count * g->y.count; n++)
        g->f[n] = 0;
    for (size_t i = 0; i < g->panes.count; i++) {
        const sb_lying_pane *lying = &g->panes.items[i];
        if (lying->w > g->x.room || lying->l > g->y.room)
            continue;
        int64_t *f = &g->f[g->x.floor[lying->w] * g->y.count + g->y.floor[lying->l]];
        if (g->duals[lying->pane] > *f)
            *f = g->duals[lying->pane];
    }
}

static void raise_row(int64_t *row, const int64_t *one, const int64_t *other, size_t count) {
    for (size_t j = 0; j < count; j++) {
        int64_t sum = one[j] + other[j];
        row[j] = sum > row[j] ? sum : row[j];
    }
}

/* Cuts along y: p is divided. */
static void divide_x(const guillotine *g, size_t i) {
    size_t count = g->y.count;
    int64_t p = g->x.at[i], *row = &g->f[i * count];
    raise_row(row, &g->f[(i - 1) * count], g->f, count); /* the row of 0 is nothing */
    for (size_t c = 1; 2 * g->x.at[c] <= p; c++)
        raise_row(row, &g->f[c * count], &g->f[g->x.floor[p - g->x.at[c]] * count], count);
}

/* Cuts across: q is divided, in one row. */
static void divide_y(const guillotine *g, int64_t *row) {
    for (size_t j = 1; j < g->y.count; j++) {
        int64_t q = g->y.at[j], best = row[j] > row[j - 1] ? row[j] : row[j - 1];
        for (size_t c = 1; 2 * g->y.at[c] <= q; c++) {
            int64_t sum = row[c] + row[g->y.floor[q - g->y.at[c]]];
            best = sum > best ? sum : best;
        }
        row[j] = best;
    }
}

void sb_guillotine_find(struct sb_guillotine *g, const int64_t *duals, int64_t *upper) {
    g->duals = duals;
    put_panes(g);
    for (size_t i = 1; i < g->x.count; i++) {
        divide_x(g, i);
        divide_y(g, &g->f[i * g->y.count]);
    }
    g->bench->work->left -= (int64_t)(g->x.count * g->y.count * (g->x.count + g->y.count) / 200);
    for (size_t o = 0; o < g->bench->offers.count; o++) {
        size_t i = g->x.floor[sb_offer_room(g->bench, o, false, g->unit)];
        size_t j = g->y.floor[sb_offer_room(g->bench, o, true, g->unit)];
        upper[o] = g->f[i * g->y.count + j];
    }
}

/* ---- what is on the best sheet ---------------------------------------------------------------------- */

static int64_t f_at(const guillotine *g, size_t i, size_t j) {
    return g->f[i * g->y.count + j];
}

static const sb_lying_pane *pane_at(const guillotine *g, size_t i, size_t j) {
    for (size_t n = 0; n < g->panes.count; n++) {
        const sb_lying_pane *lying = &g->panes.items[n];
        if (lying->w <= g->x.at[i] && lying->l <= g->y.at[j] && g->duals[lying->pane] == f_at(g, i, j))
            return lying;
    }
    return NULL;
}

static void collect(const guillotine *g, size_t i, size_t j, int64_t *made) {
    int64_t value = f_at(g, i, j), p = g->x.at[i], q = g->y.at[j];
    if (value == 0)
        return;
    const sb_lying_pane *lying = pane_at(g, i, j);
    if (lying) {
        made[lying->pane]++;
        return;
    }
    for (size_t c = 0; 2 * g->x.at[c] <= p; c++) {
        size_t rest = c == 0 ? i - 1 : g->x.floor[p - g->x.at[c]];
        if (f_at(g, c, j) + f_at(g, rest, j) == value) {
            collect(g, c, j, made);
            collect(g, rest, j, made);
            return;
        }
    }
    for (size_t c = 0; 2 * g->y.at[c] <= q; c++) {
        size_t rest = c == 0 ? j - 1 : g->y.floor[q - g->y.at[c]];
        if (f_at(g, i, c) + f_at(g, i, rest) == value) {
            collect(g, i, c, made);
            collect(g, i, rest, made);
            return;
        }
    }
}

void sb_guillotine_best(struct sb_guillotine *g, size_t offer, int64_t *made) {
    size_t i = g->x.floor[sb_offer_room(g->bench, offer, false, g->unit)];
    size_t j = g->y.floor[sb_offer_room(g->bench, offer, true, g->unit)];
    collect(g, i, j, made);
}
