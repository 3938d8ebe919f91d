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

#include "cutting/duals.h"
#include "cutting/sheets.h"

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

/* The cost of one sheet that every plan pays, with the largest leftover it could give taken off. */
static int64_t net_cost(const sb_sheet_bench *bench, size_t offer) {
    const sb_sheet_offer *on = &bench->offers.items[offer];
    bool whole = false; /* a part may take all of it, without a cut */
    for (size_t i = 0; i < bench->panes.count; i++) {
        const sb_pane *pane = &bench->panes.items[i];
        whole = whole || (pane->upright && pane->width == on->w && pane->length == on->l) ||
                (pane->sideways && pane->length == on->w && pane->width == on->l);
    }
    double leftover = (double)bench->value * (double)on->w * (double)on->l * 1e-18;
    return on->fixed + bench->cut * (on->truing - 1) + (whole ? 0 : bench->fence) -
           (int64_t)ceil(leftover * (1 + 1e-12));
}

/* What every plan pays or loses beside its sheets: a cut for every part; no leftover where parts are. */
static int64_t common_cost(const sb_sheet_bench *bench) {
    int64_t cost = 0;
    double leftover = 0;
    for (size_t i = 0; i < bench->panes.count; i++) {
        const sb_pane *pane = &bench->panes.items[i];
        cost = sb_add(cost, sb_mul(bench->cut, pane->pieces));
        leftover +=
            (double)bench->value * (double)pane->length * (double)pane->width * 1e-18 * (double)pane->pieces;
    }
    return sb_add(cost, (int64_t)floor(leftover * (1 - 1e-12)));
}

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
        if (product > 0 && net_cost(bench, o) > 0)
            price = fmin(price, (double)net_cost(bench, o) / product);
    }
    return isinf(price) ? 0 : price;
}

static int64_t worth_of(const scale *x, const scale *y, size_t offer, double price) {
    return (int64_t)ceil((double)x->most[offer] * (double)y->most[offer] * price * (1 + 1e-12));
}

/* Sheets whose net cost is below nothing: no plan has more of them than parts. */
static int64_t gain(const sb_sheet_bench *bench) {
    int64_t least = 0, pieces = 0;
    for (size_t o = 0; o < bench->offers.count; o++)
        least = net_cost(bench, o) < least ? net_cost(bench, o) : least;
    for (size_t i = 0; i < bench->panes.count; i++)
        pieces = sb_add(pieces, bench->panes.items[i].pieces);
    return sb_mul(least, pieces);
}

#define DUALS_SCALE 1000

static int64_t cover(const sb_sheet_bench *bench, const scale *x, const scale *y, double price) {
    sb_cover *covers = SB_NEW_ARRAY(bench->run->pool, sb_cover, bench->offers.count);
    size_t count = 0;
    int64_t total = 0;
    for (size_t i = 0; i < bench->panes.count; i++)
        total = sb_add(total, sb_mul(dual_of(bench, x, y, i, price), bench->panes.items[i].pieces));
    for (size_t o = 0; o < bench->offers.count; o++) {
        int64_t net = net_cost(bench, o), worth = worth_of(x, y, o, price);
        if (worth > 0)
            covers[count++] =
                (sb_cover){net > 0 ? net * DUALS_SCALE : 0, worth, bench->offers.items[o].available};
    }
    if (total == SB_BAD)
        return SB_BAD;
    int64_t least = sb_cover_least(bench->run, covers, count, total, false);
    return least == INT64_MAX ? SB_BAD : sb_mul_div_up(least, 1, DUALS_SCALE);
}

/* The pane a need belongs to; SIZE_MAX: it fits no sheet. */
static size_t pane_of(const sb_sheet_bench *bench, size_t need, bool *first) {
    for (size_t i = 0; i < bench->panes.count; i++)
        for (size_t m = 0; m < bench->panes.items[i].needs.count; m++)
            if (bench->panes.items[i].needs.items[m] == need) {
                *first = m == 0;
                return i;
            }
    return SIZE_MAX;
}

static void record_need(const sb_sheet_bench *bench, const scale *x, const scale *y, double price,
                        size_t need, sb_bound *bound) {
    bool first = false;
    size_t pane = pane_of(bench, need, &first);
    bool cut = pane != SIZE_MAX;
    sb_scales none = {0, 0, 0, 0};
    SB_PUSH(bench->run->pool, bound->scales,
            cut ? ((sb_scales){x->of_width[pane], x->of_length[pane], y->of_width[pane], y->of_length[pane]})
                : none);
    SB_PUSH(bench->run->pool, bound->duals, cut ? dual_of(bench, x, y, pane, price) : 0);
    SB_PUSH(bench->run->pool, bound->counted, first ? bench->panes.items[pane].pieces : 0);
}

static void record(const sb_sheet_bench *bench, const scale *x, const scale *y, double price,
                   sb_bound *bound) {
    bound->duals.count = bound->counted.count = bound->scales.count = bound->worth.count =
        bound->least.count = 0;
    bound->how = "cover";
    bound->duals_scale = DUALS_SCALE;
    for (size_t n = 0; n < bench->problem->needs.count; n++)
        if (bench->problem->needs.items[n].stock == bench->stock)
            record_need(bench, x, y, price, n, bound);
    size_t o = 0;
    for (size_t i = 0; i < bench->problem->supplies.count; i++) {
        if (bench->problem->supplies.items[i].stock != bench->stock)
            continue;
        bool usable = o < bench->offers.count && bench->offers.items[o].supply == i;
        SB_PUSH(bench->run->pool, bound->worth, usable ? worth_of(x, y, o, price) : -1);
        int64_t net = usable ? net_cost(bench, o) : 0;
        SB_PUSH(bench->run->pool, bound->least, net > 0 ? net * DUALS_SCALE : 0);
        o += usable;
    }
}

static void try_pair(const sb_sheet_bench *bench, const scale *x, const scale *y, sb_bound *bound) {
    double price = price_of(bench, x, y) * DUALS_SCALE;
    int64_t least = cover(bench, x, y, price);
    int64_t sum = sb_add(sb_add(least, common_cost(bench)), gain(bench));
    if (least == SB_BAD || sum == SB_BAD || sum <= bound->bound.milli)
        return;
    bound->bound.milli = sum;
    bound->common = sb_mul(sb_add(common_cost(bench), gain(bench)), DUALS_SCALE);
    record(bench, x, y, price, bound);
}

void sb_sheet_bound(const sb_sheet_bench *bench, sb_bound *bound) {
    bounding x = {.bench = bench}, y = {.bench = bench, .along_y = true};
    bound->how = "cover";
    bound->duals_scale = DUALS_SCALE;
    bound->bound.milli = -INT64_MAX;
    find_scales(&x);
    find_scales(&y);
    for (size_t i = 0; i < x.count; i++)
        for (size_t j = 0; j < y.count; j++)
            try_pair(bench, &x.scales[i], &y.scales[j], bound);
}
