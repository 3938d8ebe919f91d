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
    size_t track[SB_TRACKED], tracked;
    int64_t *f;     /* F, by set of tracked panes, then by point of x, then of y */
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
#define DEAREST    3e8    /* sums for one set of duals */

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

/* ---- tracked panes ------------------------------------------------------------------------------------ */

static double cost_of(const guillotine *g, size_t tracked) {
    double work = (double)(g->x.count * g->y.count) * (double)(g->x.count + g->y.count) / 4;
    for (size_t t = 0; t < tracked; t++)
        work *= 3;
    return work;
}

bool sb_guillotine_track(struct sb_guillotine *g, size_t pane) {
    if (g->tracked == SB_TRACKED || cost_of(g, g->tracked + 1) > DEAREST)
        return false;
    g->track[g->tracked++] = pane;
    g->f = SB_NEW_ARRAY(g->bench->run->pool, int64_t, (g->x.count * g->y.count) << g->tracked);
    return true;
}

size_t sb_guillotine_tracked(const struct sb_guillotine *g, const size_t **panes) {
    *panes = g->track;
    return g->tracked;
}

/* Its bit; 0: as often as one likes. */
static uint32_t bit_of(const guillotine *g, size_t pane) {
    for (size_t t = 0; t < g->tracked; t++)
        if (g->track[t] == pane)
            return 1u << t;
    return 0;
}

/* ---- F ---------------------------------------------------------------------------------------------- */

static int64_t *row_of(const guillotine *g, uint32_t set, size_t i) {
    return &g->f[(set * g->x.count + i) * g->y.count];
}

static void put_panes(const guillotine *g, uint32_t set) {
    for (size_t n = 0; n < g->x.count * g->y.count; n++)
        row_of(g, set, 0)[n] = 0;
    for (size_t n = 0; n < g->panes.count; n++) {
        const sb_lying_pane *lying = &g->panes.items[n];
        if (lying->w > g->x.room || lying->l > g->y.room || (bit_of(g, lying->pane) & ~set))
            continue;
        int64_t *f = &row_of(g, set, g->x.floor[lying->w])[g->y.floor[lying->l]];
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

/* Cuts along y: p is divided, the first half has the tracked panes of `part`. */
static void divide_x(const guillotine *g, size_t i, uint32_t set, uint32_t part) {
    int64_t p = g->x.at[i], *row = row_of(g, set, i);
    raise_row(row, row_of(g, part, 0), row_of(g, set & ~part, i - 1), g->y.count);
    for (size_t c = 1; 2 * g->x.at[c] <= p; c++)
        raise_row(row, row_of(g, part, c), row_of(g, set & ~part, g->x.floor[p - g->x.at[c]]), g->y.count);
}

/* Cuts across: q is divided. */
static int64_t divide_q(const guillotine *g, const int64_t *one, const int64_t *other, size_t j,
                        int64_t best) {
    int64_t q = g->y.at[j];
    for (size_t c = 1; 2 * g->y.at[c] <= q; c++) {
        int64_t sum = one[c] + other[g->y.floor[q - g->y.at[c]]];
        best = sum > best ? sum : best;
    }
    return best;
}

/* All parts of a set, from the set itself down to nothing. */
static uint32_t next_part(uint32_t set, uint32_t part) {
    return (part - 1) & set;
}

static void divide_y(const guillotine *g, size_t i, uint32_t set) {
    int64_t *row = row_of(g, set, i);
    for (size_t j = 1; j < g->y.count; j++) {
        int64_t best = row[j] > row[j - 1] ? row[j] : row[j - 1];
        uint32_t part = set;
        do {
            best = divide_q(g, row_of(g, part, i), row_of(g, set & ~part, i), j, best);
            part = next_part(set, part);
        } while (part != set);
        row[j] = best;
    }
}

static void fill_set(const guillotine *g, uint32_t set) {
    put_panes(g, set);
    for (size_t i = 1; i < g->x.count; i++) {
        uint32_t part = set;
        do {
            divide_x(g, i, set, part);
            part = next_part(set, part);
        } while (part != set);
        divide_y(g, i, set);
    }
}

static int64_t f_at(const guillotine *g, uint32_t set, size_t i, size_t j) {
    return row_of(g, set, i)[j];
}

static uint32_t all_tracked(const guillotine *g) {
    return (1u << g->tracked) - 1;
}

static size_t x_of(const guillotine *g, size_t offer) {
    return g->x.floor[sb_offer_room(g->bench, offer, false, g->unit)];
}

static size_t y_of(const guillotine *g, size_t offer) {
    return g->y.floor[sb_offer_room(g->bench, offer, true, g->unit)];
}

void sb_guillotine_find(struct sb_guillotine *g, const int64_t *duals, int64_t *upper) {
    g->duals = duals;
    for (uint32_t set = 0; set <= all_tracked(g); set++)
        fill_set(g, set);
    g->bench->work->left -= (int64_t)(cost_of(g, g->tracked) / 50);
    for (size_t o = 0; o < g->bench->offers.count; o++)
        upper[o] = f_at(g, all_tracked(g), x_of(g, o), y_of(g, o));
}

/* ---- what is on the best sheet ---------------------------------------------------------------------- */

static const sb_lying_pane *pane_at(const guillotine *g, uint32_t set, size_t i, size_t j) {
    for (size_t n = 0; n < g->panes.count; n++) {
        const sb_lying_pane *lying = &g->panes.items[n];
        if (lying->w <= g->x.at[i] && lying->l <= g->y.at[j] && !(bit_of(g, lying->pane) & ~set) &&
            g->duals[lying->pane] == f_at(g, set, i, j))
            return lying;
    }
    return NULL;
}

typedef struct halves { /* of a rectangle */
    bool found, across;
    uint32_t part;
    size_t cut, rest;
} halves;

static halves find_halves(const guillotine *g, uint32_t set, size_t i, size_t j) {
    uint32_t part = set;
    int64_t value = f_at(g, set, i, j);
    do {
        for (size_t c = 0; 2 * g->x.at[c] <= g->x.at[i]; c++) {
            size_t rest = c == 0 ? i - 1 : g->x.floor[g->x.at[i] - g->x.at[c]];
            if (f_at(g, part, c, j) + f_at(g, set & ~part, rest, j) == value)
                return (halves){true, false, part, c, rest};
        }
        for (size_t c = 0; 2 * g->y.at[c] <= g->y.at[j]; c++) {
            size_t rest = c == 0 ? j - 1 : g->y.floor[g->y.at[j] - g->y.at[c]];
            if (f_at(g, part, i, c) + f_at(g, set & ~part, i, rest) == value)
                return (halves){true, true, part, c, rest};
        }
        part = next_part(set, part);
    } while (part != set);
    return (halves){0};
}

static void collect(const guillotine *g, uint32_t set, size_t i, size_t j, int64_t *made) {
    if (f_at(g, set, i, j) == 0)
        return;
    const sb_lying_pane *lying = pane_at(g, set, i, j);
    if (lying) {
        made[lying->pane]++;
        return;
    }
    halves h = find_halves(g, set, i, j);
    collect(g, h.part, h.across ? i : h.cut, h.across ? h.cut : j, made);
    collect(g, set & ~h.part, h.across ? i : h.rest, h.across ? h.rest : j, made);
}

void sb_guillotine_best(struct sb_guillotine *g, size_t offer, int64_t *made) {
    collect(g, all_tracked(g), x_of(g, offer), y_of(g, offer), made);
}

/* ---- onto the sheet ----------------------------------------------------------------------------------- */

static void put_down(const guillotine *g, const int64_t *demand, sb_laid *out, size_t node,
                     const sb_lying_pane *lying) {
    const sb_node *on = &out->tree.items[node];
    const sb_pane *pane = &g->bench->panes.items[lying->pane];
    int64_t w = sb_pane_w(pane, lying->turned), l = sb_pane_l(pane, lying->turned);
    bool wider = on->w - w > on->l - l;
    if (w > on->w || l > on->l || out->made[lying->pane] >= demand[lying->pane])
        return;
    if (sb_tree_put(g->bench, &out->tree, node, lying->pane, lying->turned, !wider) ||
        sb_tree_put(g->bench, &out->tree, node, lying->pane, lying->turned, wider))
        out->made[lying->pane]++;
}

/* Where units are rounded, a cut may not fit any more, and what is behind it stays waste. */
static void cut_out(const guillotine *g, const int64_t *demand, sb_laid *out, size_t node, uint32_t set,
                    size_t i, size_t j) {
    if (f_at(g, set, i, j) == 0)
        return;
    const sb_lying_pane *lying = pane_at(g, set, i, j);
    if (lying) {
        put_down(g, demand, out, node, lying);
        return;
    }
    halves h = find_halves(g, set, i, j);
    size_t first_i = h.across ? i : h.cut, first_j = h.across ? h.cut : j;
    size_t rest_i = h.across ? i : h.rest, rest_j = h.across ? h.rest : j;
    if (h.cut == 0) { /* nothing but waste there */
        cut_out(g, demand, out, node, set & ~h.part, rest_i, rest_j);
        return;
    }
    int64_t size = (h.across ? g->y.at[h.cut] * g->unit[1] : g->x.at[h.cut] * g->unit[0]) - g->bench->kerf;
    const sb_node *on = &out->tree.items[node];
    if (size <= 0 || size > (h.across ? on->l : on->w) ||
        !sb_tree_may_cut(g->bench, &out->tree, node, h.across, size))
        return;
    size_t first = sb_tree_cut(g->bench, &out->tree, node, h.across, size);
    size_t second = first == node ? SIZE_MAX : out->tree.items[node].second;
    cut_out(g, demand, out, first, h.part, first_i, first_j);
    if (second != SIZE_MAX)
        cut_out(g, demand, out, second, set & ~h.part, rest_i, rest_j);
}

void sb_guillotine_lay(struct sb_guillotine *g, const int64_t *demand, sb_laid *out) {
    cut_out(g, demand, out, 0, all_tracked(g), x_of(g, out->offer), y_of(g, out->offer));
}
