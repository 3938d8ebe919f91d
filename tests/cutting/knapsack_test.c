/* The knapsack against every filling there is: with limits, set-up charges, worths below nothing, a floor, and
 * with the lists of states instead of the nodes. */
#include "problems.h"

#include "cutting/knapsack.h"

typedef struct item {
    int64_t size, value, limit, setup;
} item;

static int64_t best_from(const item *items, size_t count, int64_t room, int64_t worth, bool any) {
    if (count == 0)
        return any ? worth : INT64_MIN;
    int64_t best = INT64_MIN;
    for (int64_t x = 0; x <= items->limit && x * items->size <= room; x++) {
        int64_t here = best_from(items + 1, count - 1, room - x * items->size,
                                 worth + x * items->value - (x > 0 ? items->setup : 0), any || x > 0);
        best = here > best ? here : best;
    }
    return best;
}

static int64_t worth_of_taken(const sb_knapsack *k) {
    int64_t worth = 0, size = 0;
    for (size_t i = 0; i < k->items.count; i++) {
        const sb_knap_item *of = &k->items.items[i];
        assert_true(of->taken >= 0 && of->taken <= of->limit);
        worth += of->taken * of->value - (of->taken > 0 ? of->setup : 0);
        size += of->taken * of->size;
    }
    assert_true(size <= k->capacity);
    return worth;
}

static void solve(sb_run *run, const item *items, size_t count, sb_knapsack *k) {
    k->items.count = 0;
    for (size_t i = 0; i < count; i++)
        SB_PUSH(run->pool, k->items,
                ((sb_knap_item){.size = items[i].size,
                                .value = items[i].value,
                                .limit = items[i].limit,
                                .setup = items[i].setup,
                                .tag = i}));
    sb_knapsack_solve(run->pool, k);
}

static void compare(int64_t steps, bool with_floor) {
    sb_run run = sb_run_new();
    uint32_t seed = 99 + (uint32_t)steps;
    sb_knapsack k = {0};
    for (int round = 0; round < 3000; round++) {
        item items[6];
        size_t count = 1 + roll(&seed, 6);
        for (size_t i = 0; i < count; i++)
            items[i] = (item){5 + roll(&seed, 40), (int64_t)roll(&seed, 60) - 6, roll(&seed, 4),
                              roll(&seed, 3) ? 0 : roll(&seed, 50)};
        k.capacity = 30 + roll(&seed, 100);
        k.steps = steps;
        k.exact = true;
        int64_t best = best_from(items, count, k.capacity, 0, false);
        k.floor = with_floor && best > INT64_MIN ? best - 2 + (int64_t)roll(&seed, 4) : INT64_MIN;
        solve(&run, items, count, &k);
        assert_int_equal(k.any, best > k.floor);
        if (k.any)
            assert_int_equal(worth_of_taken(&k), k.best);
        assert_true(k.upper >= best);
        if (!with_floor || best <= k.floor)
            assert_int_equal(k.upper, best > k.floor || best == INT64_MIN ? best : k.floor);
    }
    sb_run_free(&run);
}

static void depth_first(void **state) {
    (void)state;
    compare(1000000, false);
    compare(1000000, true);
}

static void by_lists(void **state) {
    (void)state;
    compare(0, false);
    compare(3, false);
    compare(3, true);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(depth_first),
        cmocka_unit_test(by_lists),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
