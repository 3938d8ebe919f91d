/* Lower bounds of one stock of sheets.
 *
 * Along x every size w gets a number f(w), along y every size l a number g(l). F_s is the greatest sum of f that
 * fits side by side across sheet s, G_s likewise along it. Then the parts on one sheet s have
 *   sum of f(w_i) g(l_i) <= F_s G_s                    (Fekete and Schepers: conservative scales)
 * and a plan must use sheets whose F_s G_s add up to the whole sum: a covering problem in whole sheets. Sizes
 * carry a kerf, sheets one more, so that kerfs need no thought of their own.
 * The numbers tried: the sizes themselves (which gives the bound by area); the same with what is below a
 * threshold left out and what is above the rest of the sheet counted as the full sheet; and sizes in whole
 * halves, thirds, ...
 */
#include <math.h>
#include <stdlib.h>

#include "cutting/sheet_proof.h"

#define SCALES 14
#define UNIT   100000 /* f of the largest sheet */
#define STEPS  20000

typedef struct scale {
    int64_t *of_width, *of_length; /* by pane: the number of its width and of its length along this axis */
    int64_t *most;                 /* by offer: F or G */
} scale;

typedef struct bounding {
    const sb_sheet_bench *bench;
    bool along_y;
    int64_t largest; /* room of the largest sheet, with a kerf */
    scale scales[SCALES];
    size_t count;
} bounding;

/* ---- one axis ------------------------------------------------------------------------------------ */

static int64_t room_of(const bounding *b, size_t offer) {
    const sb_sheet_offer *on = &b->bench->offers.items[offer];
    return (b->along_y ? on->l : on->w) + b->bench->kerf;
}

/* Does the pane's width (or length) ever lie along this axis? */
static bool lies(const bounding *b, size_t pane, bool length) {
    const sb_pane *of = &b->bench->panes.items[pane];
    return length == b->along_y ? of->upright : of->sideways;
}

static int64_t size_of(const bounding *b, size_t pane, bool length) {
    const sb_pane *of = &b->bench->panes.items[pane];
    return (length ? of->length : of->width) + b->bench->kerf;
}

/* kind 0: the size; 1: with a threshold; 2 and more: in whole 1/kind. */
static int64_t number_of(const bounding *b, int64_t size, int kind, int64_t threshold) {
    double share = (double)size / (double)b->largest;
    if (kind == 1 && size < threshold)
        return 0;
    if (kind == 1 && size > b->largest - threshold)
        return UNIT;
    if (kind >= 2) {
        double parts = share * kind;
        share = fabs(parts - floor(parts + 0.5)) < 1e-9 ? share : floor(parts) / (kind - 1);
    }
    return (int64_t)(share * UNIT);
}

static void add_item(const bounding *b, sb_knapsack *k, const scale *s, size_t pane, bool length) {
    int64_t size = size_of(b, pane, length), value = length ? s->of_length[pane] : s->of_width[pane];
    if (lies(b, pane, length) && size <= k->capacity && value > 0)
        SB_PUSH(b->bench->run->pool, k->items,
                ((sb_knap_item){.size = size, .value = value, .limit = b->bench->panes.items[pane].pieces}));
}

static int64_t most_in_row(const bounding *b, const scale *s, size_t offer) {
    sb_knapsack k = {.capacity = room_of(b, offer), .steps = STEPS};
    for (size_t i = 0; i < b->bench->panes.count; i++) {
        add_item(b, &k, s, i, false);
        add_item(b, &k, s, i, true);
    }
    sb_knapsack_solve(b->bench->run->pool, &k);
    return k.any ? k.upper : 0;
}

static void add_scale(bounding *b, int kind, int64_t threshold) {
    sb_pool *pool = b->bench->run->pool;
    scale s = {SB_NEW_ARRAY(pool, int64_t, b->bench->panes.count),
               SB_NEW_ARRAY(pool, int64_t, b->bench->panes.count),
               SB_NEW_ARRAY(pool, int64_t, b->bench->offers.count)};
    if (b->count == SCALES)
        return;
    for (size_t i = 0; i < b->bench->panes.count; i++) {
        s.of_width[i] = number_of(b, size_of(b, i, false), kind, threshold);
        s.of_length[i] = number_of(b, size_of(b, i, true), kind, threshold);
    }
    for (size_t o = 0; o < b->bench->offers.count; o++)
        s.most[o] = most_in_row(b, &s, o);
    b->scales[b->count++] = s;
}

/* ---- thresholds: sizes up to half the sheet, spread over those there are ------------------------- */

static int by_size(const void *a, const void *b) {
    int64_t one = *(const int64_t *)a, other = *(const int64_t *)b;
    return one < other ? -1 : one > other;
}

static void add_thresholds(bounding *b) {
    int64_t *sizes = SB_NEW_ARRAY(b->bench->run->pool, int64_t, 2 * b->bench->panes.count);
    size_t count = 0;
    for (size_t i = 0; i < b->bench->panes.count; i++)
        for (int length = 0; length < 2; length++) {
            int64_t size = size_of(b, i, length);
            if (lies(b, i, length) && 2 * size <= b->largest)
                sizes[count++] = size;
        }
    qsort(sizes, count, sizeof *sizes, by_size);
    add_scale(b, 1, b->largest / 2);
    size_t wanted = SCALES - b->count;
    for (size_t i = 0; i < wanted && count > 0; i++) {
        size_t at = count <= wanted ? i : i * count / wanted;
        if (at < count &&
            (i == 0 || sizes[at] != sizes[(count <= wanted ? i - 1 : (i - 1) * count / wanted)]))
            add_scale(b, 1, sizes[at]);
    }
}

static void find_scales(bounding *b) {
    b->largest = 1;
    for (size_t o = 0; o < b->bench->offers.count; o++)
        b->largest = room_of(b, o) > b->largest ? room_of(b, o) : b->largest;
    add_scale(b, 0, 0);
    for (int kind = 2; kind <= 5; kind++)
        add_scale(b, kind, 0);
    add_thresholds(b);
}

/* ---- both axes ----------------------------------------------------------------------------------- */

static int64_t dual_of(const sb_sheet_bench *bench, const scale *x, const scale *y, size_t pane,
                       double price) {
    const sb_pane *of = &bench->panes.items[pane];
    double up = (double)x->of_width[pane] * (double)y->of_length[pane];
    double side = (double)x->of_length[pane] * (double)y->of_width[pane];
    double least = !of->sideways ? up : !of->upright ? side : fmin(up, side);
    return (int64_t)(least * price * (1 - 1e-12));
}

static double price_of(const sb_sheet_bench *bench, const scale *x, const scale *y) {
    double price = INFINITY;
    for (size_t o = 0; o < bench->offers.count; o++) {
        double product = (double)x->most[o] * (double)y->most[o];
        if (product > 0 && sb_sheet_least(bench, o) > 0)
            price = fmin(price, (double)sb_sheet_least(bench, o) / product);
    }
    return isinf(price) ? 0 : price;
}

static int64_t worth_of(const scale *x, const scale *y, size_t offer, double price) {
    return (int64_t)ceil((double)x->most[offer] * (double)y->most[offer] * price * (1 + 1e-12));
}

typedef struct pairing { /* room for one proof */
    int64_t *duals, *worths;
    sb_scales *scales;
} pairing;

static void try_pair(const sb_sheet_bench *bench, const scale *x, const scale *y, const pairing *p,
                     sb_bound *bound) {
    double price = price_of(bench, x, y) * SB_SHEET_SCALE;
    for (size_t i = 0; i < bench->panes.count; i++) {
        p->scales[i] = (sb_scales){x->of_width[i], x->of_length[i], y->of_width[i], y->of_length[i]};
        p->duals[i] = dual_of(bench, x, y, i, price);
    }
    for (size_t o = 0; o < bench->offers.count; o++)
        p->worths[o] = worth_of(x, y, o, price);
    sb_sheet_prove(bench, &(sb_sheet_proof){"cover", p->duals, p->worths, p->scales, {0, 0}, NULL}, bound);
}

void sb_sheet_bound(const sb_sheet_bench *bench, sb_bound *bound) {
    sb_pool *pool = bench->run->pool;
    bounding x = {.bench = bench}, y = {.bench = bench, .along_y = true};
    pairing p = {SB_NEW_ARRAY(pool, int64_t, bench->panes.count),
                 SB_NEW_ARRAY(pool, int64_t, bench->offers.count),
                 SB_NEW_ARRAY(pool, sb_scales, bench->panes.count)};
    bound->how = "cover";
    bound->duals_scale = SB_SHEET_SCALE;
    bound->bound.milli = -INT64_MAX;
    find_scales(&x);
    find_scales(&y);
    for (size_t i = 0; i < x.count; i++)
        for (size_t j = 0; j < y.count; j++)
            try_pair(bench, &x.scales[i], &y.scales[j], &p, bound);
}
