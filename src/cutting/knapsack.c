/* Branch and bound for the knapsack with limits and set-up charges. */
#include <stdlib.h>

#include "cutting/knapsack.h"

/* Rounding noise of the densities, far below one unit of value. */
#define NOISE 0.01

static int64_t smaller(int64_t a, int64_t b) {
    return a < b ? a : b;
}

static int by_density(const void *a, const void *b) {
    const sb_knap_item *one = a, *other = b;
    if (one->density != other->density)
        return one->density > other->density ? -1 : 1;
    if (one->size != other->size)
        return one->size > other->size ? -1 : 1;
    return one->tag < other->tag ? -1 : one->tag > other->tag;
}

/* Worth per length, the set-up charge shared out over as many as could ever be taken. */
static void weigh(sb_knapsack *k) {
    for (size_t i = 0; i < k->items.count; i++) {
        sb_knap_item *item = &k->items.items[i];
        item->most = smaller(item->limit, k->capacity / item->size);
        item->taken = item->trial = 0;
        double setup = item->most > 0 ? (double)item->setup / (double)item->most : 0;
        item->density = ((double)item->value - setup) / (double)item->size;
    }
    qsort(k->items.items, k->items.count, sizeof *k->items.items, by_density);
    int64_t smallest = INT64_MAX;
    for (size_t i = k->items.count; i-- > 0;) {
        sb_knap_item *item = &k->items.items[i];
        if (item->most > 0)
            smallest = smaller(smallest, item->size);
        item->smallest = smallest;
    }
}

/* No filling of `room` from item i on is worth more. */
static double ceiling(const sb_knapsack *k, size_t i, int64_t room) {
    double worth = 0;
    for (; i < k->items.count && room > 0; i++) {
        const sb_knap_item *item = &k->items.items[i];
        if (item->density <= 0)
            break;
        int64_t most = item->most, full = room / item->size;
        if (most <= full)
            worth += (double)(most * item->size) * item->density, room -= most * item->size;
        else
            return worth + (double)room * item->density;
    }
    return worth;
}

static void keep(sb_knapsack *k, int64_t worth) {
    k->best = worth;
    for (size_t i = 0; i < k->items.count; i++)
        k->items.items[i].taken = k->items.items[i].trial;
}

static void raise_upper(sb_knapsack *k, double to) {
    int64_t upper = (int64_t)(to + NOISE);
    if (upper > k->upper)
        k->upper = upper;
}

static void search(sb_knapsack *k, size_t i, int64_t room, int64_t worth) {
    if (worth > k->best && room < k->capacity)
        keep(k, worth);
    if (i == k->items.count || k->items.items[i].smallest > room)
        return;
    double reach = (double)worth + ceiling(k, i, room);
    if (k->best != INT64_MIN && reach + NOISE < (double)k->best + 1)
        return;
    if (k->steps <= 0) {
        raise_upper(k, reach);
        return;
    }
    k->steps--;
    sb_knap_item *item = &k->items.items[i];
    for (int64_t x = smaller(item->most, room / item->size); x >= 0; x--) {
        item->trial = x;
        search(k, i + 1, room - x * item->size, worth + x * item->value - (x > 0 ? item->setup : 0));
    }
    item->trial = 0;
}

/* Where everything is worth less than nothing, the least loss is one piece alone. */
static void take_one(sb_knapsack *k) {
    for (size_t i = 0; i < k->items.count; i++) {
        sb_knap_item *item = &k->items.items[i];
        int64_t worth = item->value - item->setup;
        if (item->most == 0 || (k->any && worth <= k->best))
            continue;
        for (size_t j = 0; j < k->items.count; j++)
            k->items.items[j].taken = j == i;
        k->best = worth;
        k->any = true;
    }
}

void sb_knapsack_solve(sb_knapsack *k) {
    k->any = false;
    k->best = k->upper = INT64_MIN;
    if (k->capacity <= 0 || k->items.count == 0)
        return;
    weigh(k);
    take_one(k);
    if (!k->any)
        return;
    search(k, 0, k->capacity, 0);
    if (k->upper < k->best)
        k->upper = k->best;
}
