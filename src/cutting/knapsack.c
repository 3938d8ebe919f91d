/* Branch and bound for the knapsack with limits and set-up charges. */
#include <stdlib.h>

#include "cutting/knapsack.h"

#define FEW 24 /* so many are sorted by putting each in its place */

static int64_t smaller(int64_t a, int64_t b) {
    return a < b ? a : b;
}

/* ---- set up -------------------------------------------------------------------------------------- */

static int by_density(const void *a, const void *b) {
    const sb_knap_item *one = a, *other = b;
    if (one->density != other->density)
        return one->density > other->density ? -1 : 1;
    if (one->size != other->size)
        return one->size > other->size ? -1 : 1;
    return one->tag < other->tag ? -1 : one->tag > other->tag;
}

/* As qsort, and quicker where there are few. */
static void sort_items(sb_knapsack *k) {
    sb_knap_item *items = k->items.items;
    if (k->items.count > FEW)
        qsort(items, k->items.count, sizeof *items, by_density);
    for (size_t i = 1; i < k->items.count && k->items.count <= FEW; i++) {
        sb_knap_item item = items[i];
        size_t at = i;
        for (; at > 0 && by_density(&item, &items[at - 1]) < 0; at--)
            items[at] = items[at - 1];
        items[at] = item;
    }
}

/* Worth per length, the set-up charge shared out over as many as could ever be taken. */
static void weigh(sb_knapsack *k) {
    for (size_t i = 0; i < k->items.count; i++) {
        sb_knap_item *item = &k->items.items[i];
        item->most = k->capacity < 0 ? 0 : smaller(item->limit, k->capacity / item->size);
        item->taken = item->trial = 0;
        double setup = item->most > 0 ? (double)item->setup / (double)item->most : 0;
        item->density = item->most > 0 ? ((double)item->value - setup) / (double)item->size : 0;
    }
    sort_items(k);
    int64_t smallest = INT64_MAX, shortest = INT64_MAX;
    for (size_t i = k->items.count; i-- > 0;) {
        sb_knap_item *item = &k->items.items[i];
        if (item->density > 0)
            smallest = smaller(smallest, item->size);
        if (item->most > 0)
            shortest = smaller(shortest, item->size);
        item->smallest = smallest;
        item->shortest = shortest;
    }
}

static int by_size(const void *a, const void *b) {
    const sb_knap_single *one = a, *other = b;
    return one->size < other->size ? -1 : one->size > other->size;
}

static void sort_singles(sb_knapsack *k) {
    sb_knap_single *singles = k->singles.items;
    if (k->singles.count > FEW)
        qsort(singles, k->singles.count, sizeof *singles, by_size);
    for (size_t i = 1; i < k->singles.count && k->singles.count <= FEW; i++) {
        sb_knap_single single = singles[i];
        size_t at = i;
        for (; at > 0 && by_size(&single, &singles[at - 1]) < 0; at--)
            singles[at] = singles[at - 1];
        singles[at] = single;
    }
}

/* By size, each with the most that one item of its size or a smaller one is worth. */
static void list_singles(sb_knapsack *k) {
    k->singles.count = 0;
    for (size_t i = 0; i < k->items.count && k->items.items[i].density > 0; i++)
        SB_PUSH(k->pool, k->singles,
                ((sb_knap_single){k->items.items[i].size, k->items.items[i].value, k->items.items[i].value}));
    sort_singles(k);
    for (size_t i = 1; i < k->singles.count; i++)
        if (k->singles.items[i].most < k->singles.items[i - 1].most)
            k->singles.items[i].most = k->singles.items[i - 1].most;
}

static size_t singles_within(const sb_knapsack *k, int64_t room) {
    size_t low = 0, high = k->singles.count;
    while (low < high) {
        size_t middle = (low + high) / 2;
        if (k->singles.items[middle].size <= room)
            low = middle + 1;
        else
            high = middle;
    }
    return low;
}

static int64_t best_single(const sb_knapsack *k, int64_t room) {
    size_t within = singles_within(k, room);
    return within == 0 ? 0 : k->singles.items[within - 1].most;
}

/* ---- depth first --------------------------------------------------------------------------------- */

double sb_knapsack_ceiling(const sb_knapsack *k, size_t i, int64_t room) {
    double worth = 0;
    for (; i < k->items.count && room > 0; i++) {
        const sb_knap_item *item = &k->items.items[i];
        if (item->density <= 0)
            break;
        int64_t whole = item->most * item->size;
        if (whole > room)
            return worth + (double)room * item->density;
        worth += (double)whole * item->density;
        room -= whole;
    }
    return worth;
}

static void keep(sb_knapsack *k, int64_t worth) {
    k->best = worth;
    k->any = true;
    for (size_t i = 0; i < k->items.count; i++)
        k->items.items[i].taken = k->items.items[i].trial;
}

static void raise_upper(sb_knapsack *k, double to) {
    int64_t upper = (int64_t)(to + SB_KNAP_NOISE);
    k->open = true;
    if (upper > k->upper)
        k->upper = upper;
}

/* Whether as many as two more can bring more than `least`: for each one, from the longest down, the best that fits
 * beside it. The rest need not be looked at where even the best of them are too little, or where the longer of the
 * two is down to half the room. */
static bool pair_brings_more(const sb_knapsack *k, int64_t room, int64_t least) {
    int64_t beside = 0, best = best_single(k, room);
    size_t fits = 0, i = singles_within(k, room);
    for (; i > 0 && k->singles.items[i - 1].most + best > least; i--) {
        const sb_knap_single *one = &k->singles.items[i - 1];
        if (2 * one->size <= room)
            return 2 * one->most > least;
        for (; fits < i && k->singles.items[fits].size <= room - one->size; fits++)
            beside = k->singles.items[fits].most;
        if (one->value + beside > least)
            return true;
    }
    return false;
}

/* True when nothing below this node can beat `best`; otherwise *reach is the most it can come to. */
bool sb_knapsack_is_beaten(const sb_knapsack *k, size_t i, int64_t room, int64_t worth, double *reach) {
    int64_t smallest = k->items.items[i].smallest;
    *reach = (double)worth + sb_knapsack_ceiling(k, i, room);
    if (*reach + SB_KNAP_NOISE < (double)k->best + 1)
        return true;
    if (room / 2 < smallest)
        return worth + best_single(k, room) <= k->best;
    return room / 3 < smallest && !pair_brings_more(k, room, k->best - worth);
}

static void search(sb_knapsack *k, size_t i, int64_t room, int64_t worth) {
    if (worth > k->best && room < k->capacity)
        keep(k, worth);
    for (; i < k->items.count && k->items.items[i].smallest <= room; i++) {
        sb_knap_item *item = &k->items.items[i];
        if (item->size > room)
            continue;
        double reach;
        if (sb_knapsack_is_beaten(k, i, room, worth, &reach))
            return;
        if (k->steps <= 0) {
            raise_upper(k, reach);
            return;
        }
        k->steps--;
        for (int64_t x = smaller(item->most, room / item->size); x > 0; x--) {
            item->trial = x;
            search(k, i + 1, room - x * item->size, worth + x * item->value - item->setup);
        }
        item->trial = 0;
    }
}

/* Where everything is worth less than nothing, the least loss is one item alone. */
static void take_one(sb_knapsack *k) {
    for (size_t i = 0; i < k->items.count; i++) {
        sb_knap_item *item = &k->items.items[i];
        if (item->most == 0)
            continue;
        int64_t count = item->value > 0 ? item->most : 1, worth = count * item->value - item->setup;
        k->upper = k->upper > worth ? k->upper : worth;
        if (worth <= k->best)
            continue;
        for (size_t j = 0; j < k->items.count; j++)
            k->items.items[j].taken = j == i ? count : 0;
        k->best = worth;
        k->any = true;
    }
}

void sb_knapsack_prepare(sb_pool *pool, sb_knapsack *k) {
    k->pool = pool;
    k->any = k->open = false;
    k->best = k->floor;
    k->upper = INT64_MIN;
    weigh(k);
    list_singles(k);
}

void sb_knapsack_solve(sb_pool *pool, sb_knapsack *k) {
    sb_knapsack_prepare(pool, k);
    take_one(k);
    if (k->upper == INT64_MIN)
        return;
    search(k, 0, k->capacity, 0);
    if (k->open && k->exact && (k->floor == INT64_MIN || k->best == k->floor))
        k->open = !sb_knapsack_by_lists(k);
    if (k->upper < k->best || !k->open)
        k->upper = k->best;
}
