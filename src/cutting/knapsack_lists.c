/* The knapsack by lists of states, item after item.
 *
 * A state (size, worth) is dropped where another is no longer and worth no less, and where worth plus the
 * ceiling of what may follow does not beat `best`. So there are never more states than lengths that can be
 * reached, and mostly far fewer. */
#include "cutting/knapsack.h"

#define MOST_STATES 400000 /* over all items */
#define A_STEP      4      /* states looked at in about the time of one node */

static sb_knap_state state_of(const sb_knapsack *k, size_t index) {
    return index == SIZE_MAX ? (sb_knap_state){0, 0, SIZE_MAX, 0, 0} : k->states.items[index];
}

static void keep(sb_knapsack *k, size_t index) {
    k->best = k->states.items[index].worth;
    k->any = true;
    for (size_t i = 0; i < k->items.count; i++)
        k->items.items[i].taken = 0;
    for (; index != SIZE_MAX; index = k->states.items[index].from)
        k->items.items[k->states.items[index].item].taken = k->states.items[index].count;
}

static bool can_win(const sb_knapsack *k, size_t next_item, int64_t size, int64_t worth) {
    double reach = (double)worth + sb_knapsack_ceiling(k, next_item, k->capacity - size);
    return reach + SB_KNAP_NOISE >= (double)k->best + 1;
}

/* The state with so many of the item on top of another, where it is worth keeping. */
static void grow(sb_knapsack *k, size_t from, size_t item, int64_t count) {
    const sb_knap_item *of = &k->items.items[item];
    sb_knap_state state = state_of(k, from);
    state.size += count * of->size;
    state.worth += count * of->value - of->setup;
    bool best = state.worth > k->best;
    if (!best && !can_win(k, item + 1, state.size, state.worth))
        return;
    SB_PUSH(k->pool, k->states, ((sb_knap_state){state.size, state.worth, from, item, count}));
    if (best)
        keep(k, k->states.count - 1);
}

/* Puts a state behind the line unless the last one there beats it. */
static void append(sb_knapsack *k, size_t index) {
    if (k->next.count > 0) {
        sb_knap_state last = state_of(k, k->next.items[k->next.count - 1]), fresh = state_of(k, index);
        if (last.worth >= fresh.worth)
            return;
        if (last.size == fresh.size) {
            k->next.items[k->next.count - 1] = index;
            return;
        }
    }
    SB_PUSH(k->pool, k->next, index);
}

/* The line merged with the states from `first` on, both by rising size. */
static void merge(sb_knapsack *k, size_t first) {
    size_t a = 0, b = first;
    k->next.count = 0;
    while (a < k->line.count || b < k->states.count) {
        bool old = b == k->states.count ||
                   (a < k->line.count && state_of(k, k->line.items[a]).size <= k->states.items[b].size);
        append(k, old ? k->line.items[a++] : b++);
    }
}

static void swap_lines(sb_knapsack *k) {
    size_t *items = k->line.items, capacity = k->line.capacity;
    k->line.items = k->next.items;
    k->line.count = k->next.count;
    k->line.capacity = k->next.capacity;
    k->next.items = items;
    k->next.capacity = capacity;
}

/* Drops what can no longer win, now that more is known or the item is behind us. */
static void thin(sb_knapsack *k, size_t next_item) {
    size_t kept = 0;
    for (size_t i = 0; i < k->line.count; i++) {
        sb_knap_state state = state_of(k, k->line.items[i]);
        if (can_win(k, next_item, state.size, state.worth))
            k->line.items[kept++] = k->line.items[i];
    }
    k->line.count = kept;
}

/* The states without the item are the base; those with 1, 2, .. of it are merged in. */
static bool add_item(sb_knapsack *k, size_t item) {
    k->base.count = 0;
    for (size_t i = 0; i < k->line.count; i++)
        SB_PUSH(k->pool, k->base, k->line.items[i]);
    for (int64_t count = 1; count <= k->items.items[item].most; count++) {
        size_t first = k->states.count;
        int64_t room = k->capacity - count * k->items.items[item].size;
        for (size_t i = 0; i < k->base.count && state_of(k, k->base.items[i]).size <= room; i++)
            grow(k, k->base.items[i], item, count);
        if (k->states.count == first)
            continue; /* more of it may still pay for the setting up */
        if (k->states.count > MOST_STATES)
            return false;
        merge(k, first);
        swap_lines(k);
        k->steps -= (int64_t)(k->base.count + k->line.count) / A_STEP + 1;
    }
    thin(k, item + 1);
    return true;
}

bool sb_knapsack_by_lists(sb_knapsack *k) {
    k->states.count = k->line.count = 0;
    SB_PUSH(k->pool, k->line, SIZE_MAX);
    for (size_t i = 0; i < k->items.count && k->items.items[i].density > 0 && k->line.count > 0; i++)
        if (!add_item(k, i))
            return false;
    return true;
}
