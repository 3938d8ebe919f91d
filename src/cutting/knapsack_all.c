/* All fillings of a knapsack that are worth enough. */
#include "cutting/knapsack.h"

typedef struct visiting {
    sb_knapsack *k;
    sb_knap_visit *visit;
    void *context;
} visiting;

static bool visit_from(visiting *v, size_t i, int64_t room, int64_t worth);

/* So many of one item, and whatever goes with that. */
static bool visit_with(visiting *v, size_t i, int64_t room, int64_t worth) {
    sb_knap_item *item = &v->k->items.items[i];
    int64_t most = room / item->size;
    if (most > item->most)
        most = item->most;
    bool goes_on = true;
    for (int64_t x = most; x > 0 && goes_on; x--) {
        item->trial = x;
        goes_on = visit_from(v, i + 1, room - x * item->size, worth + x * item->value - item->setup);
    }
    item->trial = 0;
    return goes_on;
}

static bool visit_from(visiting *v, size_t i, int64_t room, int64_t worth) {
    sb_knapsack *k = v->k;
    double reach;
    if (worth > k->floor && room < k->capacity && !v->visit(v->context, k, worth, room))
        return false;
    for (; i < k->items.count && k->items.items[i].shortest <= room; i++) {
        if (k->items.items[i].size > room || k->items.items[i].most == 0)
            continue;
        if (sb_knapsack_is_beaten(k, i, room, worth, &reach))
            return true;
        if (k->steps-- <= 0 || !visit_with(v, i, room, worth))
            return false;
    }
    return true;
}

bool sb_knapsack_all(sb_pool *pool, sb_knapsack *k, sb_knap_visit *visit, void *context) {
    sb_knapsack_prepare(pool, k);
    visiting v = {k, visit, context};
    return visit_from(&v, 0, k->capacity, 0);
}
