/* Board after board: the load worth most for its cost, or simply the longest parts first. */
#include <math.h>
#include <stdlib.h>

#include "cutting/measured.h"
#include "cutting/measuring.h"
#include "cutting/search.h"

#define STEPS 1500 /* nodes for one load */

/* ---- state --------------------------------------------------------------------------------------- */

sb_filling sb_filling_new(const sb_bench *bench) {
    sb_pool *pool = bench->run->pool;
    sb_filling f = {bench, NULL, NULL, NULL};
    f.worth = SB_NEW_ARRAY(pool, double, bench->kinds.count);
    f.demand = SB_NEW_ARRAY(pool, int64_t, bench->kinds.count);
    f.available = SB_NEW_ARRAY(pool, int64_t, bench->boards.count + 1);
    sb_filling_reset(&f);
    sb_filling_by_length(&f);
    return f;
}

void sb_filling_reset(sb_filling *f) {
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        f->demand[i] = f->bench->kinds.items[i].demand;
    for (size_t s = 0; s < f->bench->boards.count; s++)
        f->available[s] = f->bench->boards.items[s].available;
}

static double best_price(const sb_bench *bench) {
    double price = INFINITY;
    for (size_t s = 0; s < bench->boards.count; s++) {
        const sb_offered *on = &bench->boards.items[s];
        if (on->capacity > 0 && on->fixed > 0)
            price = fmin(price, (double)on->fixed / (double)on->capacity);
    }
    return isinf(price) ? 1e-6 : price;
}

void sb_filling_by_length(sb_filling *f) {
    double price = best_price(f->bench), longest = 1;
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        longest = fmax(longest, (double)f->bench->kinds.items[i].least);
    for (size_t i = 0; i < f->bench->kinds.count; i++) {
        double take = (double)f->bench->kinds.items[i].least;
        f->worth[i] = price * take * (1 + 0.02 * take / longest); /* long parts are harder to place */
    }
}

static bool all_made(const sb_filling *f) {
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        if (f->demand[i] > 0)
            return false;
    return true;
}

/* ---- a load for one board ------------------------------------------------------------------------ */

/* Ways to fill a board: as if every angled cut were shared, as if none were, and leaving a useful leftover. */
typedef enum way {
    CLOSE,
    SAFE,
    SPARING,
    WAYS
} way;

static int64_t take_of(const sb_bench *bench, const sb_kind *kind, way how) {
    int64_t front = bench->endings.items[kind->turns[0].front].kerf;
    int64_t rear = bench->endings.items[kind->turns[0].rear].kerf;
    return how == SAFE ? 2 * (kind->length + (front > rear ? front : rear)) : kind->least;
}

static int64_t capacity_of(const sb_bench *bench, size_t board, way how) {
    const sb_offered *on = &bench->boards.items[board];
    if (how == SAFE)
        return 2 * (on->room + bench->kerf);
    return how == CLOSE ? on->capacity : on->capacity - 2 * (bench->kerf + bench->useful);
}

static double leftover_price(const sb_bench *bench) { /* of half a nanometre */
    return (double)bench->value / (2000.0 * SB_NM_PER_MM);
}

static void set_items(const sb_filling *f, sb_knapsack *k, double scale, way how) {
    const sb_bench *bench = f->bench;
    k->items.count = 0;
    for (size_t i = 0; i < bench->kinds.count; i++) {
        const sb_kind *kind = &bench->kinds.items[i];
        sb_knap_item item = {.size = take_of(bench, kind, how), .limit = f->demand[i], .tag = i};
        if (item.limit == 0 || item.size > k->capacity)
            continue;
        double lost = how == SPARING ? leftover_price(bench) * (double)kind->least : 0;
        item.value = (int64_t)((f->worth[i] - (double)bench->cut - lost) * scale);
        item.setup = (int64_t)((double)bench->change * scale);
        SB_PUSH(bench->run->pool, k->items, item);
    }
}

static void take_filling(const sb_bench *bench, const sb_knapsack *k, sb_pick *out) {
    out->lots.count = 0;
    for (size_t i = 0; i < k->items.count; i++)
        if (k->items.items[i].taken > 0)
            SB_PUSH(bench->run->pool, out->lots, ((sb_lot){k->items.items[i].tag, k->items.items[i].taken}));
}

/* Takes the parts worth least for their length off until the load fits. */
static void drop_least(const sb_filling *f, sb_pick *out) {
    size_t worst = 0;
    for (size_t i = 1; i < out->lots.count; i++) {
        size_t a = out->lots.items[i].kind, b = out->lots.items[worst].kind;
        if (f->bench->kinds.items[a].least < f->bench->kinds.items[b].least)
            worst = i;
    }
    if (--out->lots.items[worst].count == 0)
        out->lots.items[worst] = out->lots.items[--out->lots.count];
}

static int by_kind(const void *a, const void *b) {
    const sb_lot *one = a, *other = b;
    return one->kind < other->kind ? -1 : one->kind > other->kind;
}

static void judge(const sb_filling *f, sb_pick *out) {
    qsort(out->lots.items, out->lots.count, sizeof *out->lots.items, by_kind);
    sb_outcome outcome = sb_load_outcome(f->bench, out->board, out->lots.items, out->lots.count);
    while (!outcome.fits && out->lots.count > 0) {
        drop_least(f, out);
        if (out->lots.count > 0)
            outcome = sb_load_outcome(f->bench, out->board, out->lots.items, out->lots.count);
    }
    double worth = 0;
    for (size_t i = 0; i < out->lots.count; i++)
        worth += f->worth[out->lots.items[i].kind] * (double)out->lots.items[i].count;
    out->cost = outcome.cost;
    out->ratio = out->lots.count == 0 ? -1 : outcome.cost > 0 ? worth / (double)outcome.cost : 1e30 + worth;
}

static void find_load(const sb_filling *f, size_t board, way how, sb_pick *out) {
    const sb_bench *bench = f->bench;
    sb_knapsack *k = bench->scratch->knapsack;
    double most = 1;
    for (size_t i = 0; i < bench->kinds.count; i++)
        most = fmax(most, f->worth[i]);
    out->board = board;
    out->ratio = -1;
    k->capacity = capacity_of(bench, board, how);
    k->steps = STEPS;
    k->exact = false; /* near enough for a guess */
    k->floor = INT64_MIN;
    set_items(f, k, most < 1e8 ? 1000 : 1, how);
    sb_knapsack_solve(bench->run->pool, k);
    bench->work->left -= STEPS - k->steps + (int64_t)k->items.count + 1;
    if (!k->any)
        return;
    take_filling(bench, k, out);
    judge(f, out);
}

/* By place, as the faults of the board ask; a knapsack does not know of them. */
static void find_by_place(const sb_filling *f, size_t board, way how, sb_pick *out) {
    const sb_bench *bench = f->bench;
    double *values = bench->scratch->measuring->values;
    for (size_t i = 0; i < bench->kinds.count; i++) {
        double lost = how == SPARING ? leftover_price(bench) * (double)bench->kinds.items[i].least : 0;
        values[i] = f->worth[i] - (double)bench->cut - lost;
    }
    out->ratio = -1;
    if (sb_measured_load(bench, board, values, f->demand, out))
        judge(f, out);
}

static void keep_better(sb_pick *best, sb_pick *tried) {
    if (tried->ratio <= best->ratio)
        return;
    sb_pick old = *best;
    *best = *tried;
    *tried = old;
}

static bool is_worth_trying(const sb_bench *bench, size_t board, way how) {
    bool faults = bench->boards.items[board].faults.count > 0;
    return how == CLOSE || (how == SAFE && (faults || !bench->all_square)) ||
           (how == SPARING && bench->useful > 0);
}

static void find_best_load(const sb_filling *f, sb_pick *best, sb_pick *tried) {
    best->ratio = -1;
    for (size_t s = 0; s < f->bench->boards.count; s++)
        for (way how = CLOSE; how < WAYS && f->available[s] > 0; how++)
            if (is_worth_trying(f->bench, s, how)) {
                if (how != CLOSE && f->bench->boards.items[s].faults.count > 0)
                    find_by_place(f, s, how, tried);
                else
                    find_load(f, s, how, tried);
                keep_better(best, tried);
            }
}

/* ---- board after board --------------------------------------------------------------------------- */

int64_t sb_filling_times(const sb_filling *f, size_t board, const sb_lot *lots, size_t count) {
    int64_t times = f->available[board];
    for (size_t i = 0; i < count; i++) {
        int64_t can = f->demand[lots[i].kind] / lots[i].count;
        times = can < times ? can : times;
    }
    return times;
}

void sb_filling_use(sb_filling *f, const sb_pick *load, int64_t times, sb_cutting *cutting) {
    for (size_t i = 0; i < load->lots.count; i++)
        f->demand[load->lots.items[i].kind] -= times * load->lots.items[i].count;
    if (f->available[load->board] != INT64_MAX)
        f->available[load->board] -= times;
    sb_cutting_add(f->bench, cutting, load->board, times, load->lots.items, load->lots.count, load->cost);
}

/* What the load really cost, shared out by length, a little more to the long ones. */
static void learn_from(sb_filling *f, const sb_pick *load, int64_t times) {
    double taken = 0;
    for (size_t i = 0; i < load->lots.count; i++)
        taken += pow((double)f->bench->kinds.items[load->lots.items[i].kind].least, 1.02) *
                 (double)load->lots.items[i].count;
    for (size_t i = 0; i < load->lots.count; i++) {
        const sb_lot *lot = &load->lots.items[i];
        double cost = (double)load->cost * pow((double)f->bench->kinds.items[lot->kind].least, 1.02) / taken;
        double made = (double)(lot->count * times), share = made / (made + (double)f->demand[lot->kind] + 1);
        f->worth[lot->kind] += 0.5 * share * (cost - f->worth[lot->kind]);
    }
}

static void count_missing(const sb_filling *f, sb_cutting *cutting) {
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        cutting->missing += f->demand[i] * f->bench->kinds.items[i].least;
}

void sb_fill(sb_filling *f, bool learn, sb_cutting *cutting) {
    sb_pick *best = &f->bench->scratch->picks[0], *tried = &f->bench->scratch->picks[1];
    while (!all_made(f)) {
        find_best_load(f, best, tried);
        if (best->ratio < 0)
            break;
        int64_t times = sb_filling_times(f, best->board, best->lots.items, best->lots.count);
        sb_filling_use(f, best, times, cutting);
        if (learn && best->cost > 0)
            learn_from(f, best, times);
    }
    count_missing(f, cutting);
}
