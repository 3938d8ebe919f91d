/* The cheapest packs that hold at least what is needed.
 *
 * Packs are tried in the order of what a unit costs in them, as many as could be of use first. What is still open
 * costs at least the next unit price, so a branch that cannot beat the best choice so far is left at once; the first choice
 * found is the greedy one. The search is exact unless it meets its limit, which takes dozens of pack sizes.
 */
#include "takeoff/inside.h"

#include <stdlib.h>

enum {
    MOST_STEPS = 200000
};

typedef struct packing {
    takeoff_pack *packs; /* by what a unit costs */
    size_t count;
    int64_t *chosen, *best; /* [count] */
    int64_t best_cost;      /* SB_BAD: none yet */
    int64_t steps;
} packing;

static int by_unit_cost(const void *left, const void *right) {
    const takeoff_pack *a = left, *b = right;
    int order = sb_ratio_compare(sb_ratio_of(a->cost, a->size), sb_ratio_of(b->cost, b->size));
    if (order != 0)
        return order;
    if (a->size != b->size)
        return a->size > b->size ? -1 : 1;
    return a->index < b->index ? -1 : a->index > b->index;
}

static void keep(packing *p, int64_t cost) {
    p->best_cost = cost;
    for (size_t i = 0; i < p->count; i++)
        p->best[i] = p->chosen[i];
}

/* The least that `open` more can cost from pack `from` on, rounded up: costs are whole. */
static int64_t least(const packing *p, size_t from, int64_t open) {
    return sb_mul_div_up(open, p->packs[from].cost, p->packs[from].size);
}

static bool worse(const packing *p, int64_t cost) {
    return p->best_cost != SB_BAD && cost >= p->best_cost;
}

static void choose(packing *p, size_t from, int64_t open, int64_t cost) {
    if (open <= 0) {
        if (!worse(p, cost))
            keep(p, cost);
        return;
    }
    if (from == p->count || ++p->steps > MOST_STEPS || worse(p, sb_add(cost, least(p, from, open))))
        return;
    const takeoff_pack *pack = &p->packs[from];
    int64_t most = (open - 1) / pack->size + 1;
    if (pack->available >= 0 && pack->available < most)
        most = pack->available;
    for (int64_t n = most; n >= 0 && p->steps <= MOST_STEPS; n--) {
        int64_t left = open - n * pack->size, so_far = sb_add(cost, sb_mul(n, pack->cost));
        bool last = from + 1 == p->count;
        if (left > 0 && (last || worse(p, sb_add(so_far, least(p, from + 1, left)))))
            break; /* fewer of the cheaper pack cover less, or only cost more */
        p->chosen[from] = n;
        choose(p, from + 1, left, so_far);
    }
    p->chosen[from] = 0;
}

bool takeoff_cheapest_packs(sb_run *run, takeoff_pack *packs, size_t count, int64_t need) {
    packing p = {.packs = packs, .count = count, .best_cost = SB_BAD};
    p.chosen = SB_NEW_ARRAY(run->pool, int64_t, count + 1);
    p.best = SB_NEW_ARRAY(run->pool, int64_t, count + 1);
    if (count > 1)
        qsort(packs, count, sizeof *packs, by_unit_cost);
    choose(&p, 0, need, 0);
    for (size_t i = 0; i < count; i++)
        packs[i].count = p.best[i];
    return p.best_cost != SB_BAD;
}
