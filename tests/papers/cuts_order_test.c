/* Boards come to the stops with the least handling: compared with every way there is to keep one at the saw. */
#include "papers/cuts_stops.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include <cmocka.h>

enum {
    STOPS = 6,
    BOARDS = 7
};

static int64_t pick(uint64_t *seed, int64_t from, int64_t to) {
    *seed = *seed * 6364136223846793005u + 1442695040888963407u;
    return from + (int64_t)((*seed >> 33) % (uint64_t)(to - from + 1));
}

/* How many come off each board at each stop; 0: the stop does without it. */
typedef struct batch {
    int64_t off[STOPS][BOARDS + 1];
    size_t count;
} batch;

static batch batch_by_chance(uint64_t *seed) {
    batch b = {.count = (size_t)pick(seed, 1, STOPS)};
    int64_t thin = pick(seed, 1, 5);
    for (size_t s = 0; s < b.count; s++)
        for (int64_t board = 1; board <= BOARDS; board++)
            b.off[s][board] = pick(seed, 0, thin) == 0 ? pick(seed, 1, 2) : 0;
    return b;
}

static void put_stops(sb_run *run, const batch *b, stops *all) {
    for (size_t s = 0; s < b->count; s++) {
        stop put = {0};
        for (int64_t board = 1; board <= BOARDS; board++)
            if (b->off[s][board] > 0)
                SB_PUSH(run->pool, put.boards, ((span){board, board, b->off[s][board], false}));
        SB_PUSH(run->pool, *all, put);
    }
}

static int64_t boards_at(const batch *b, size_t s) {
    int64_t count = 0;
    for (int64_t board = 1; board <= BOARDS; board++)
        count += b->off[s][board] > 0;
    return count;
}

/* The least that can be fetched from stop `s` on, `kept` being at the saw already (0: none of its boards). */
static int64_t least_from(const batch *b, size_t s, int64_t kept) {
    if (s == b->count)
        return 0;
    int64_t here = boards_at(b, s) - (kept > 0), least = least_from(b, s + 1, 0);
    for (int64_t board = 1; board <= BOARDS && s + 1 < b->count; board++) {
        if (b->off[s][board] == 0 || b->off[s + 1][board] == 0 || (board == kept && boards_at(b, s) > 1))
            continue;
        int64_t on = least_from(b, s + 1, board);
        least = on < least ? on : least;
    }
    return here + least;
}

/* Follows the visits: each board once at its stop, with what comes off it. How many were fetched. */
static int64_t follow(const batch *b, const stops *all) {
    int64_t fetched = 0, at_saw = 0;
    for (size_t s = 0; s < b->count; s++) {
        int64_t off[BOARDS + 1] = {0};
        const spans *visits = &all->items[s].visits;
        for (size_t i = 0; i < visits->count; i++)
            for (int64_t board = visits->items[i].first; board <= visits->items[i].last; board++) {
                assert_true(board >= 1 && board <= BOARDS && off[board] == 0);
                assert_int_equal(visits->items[i].stays, i == 0 && board == at_saw);
                off[board] = visits->items[i].each;
                fetched += !visits->items[i].stays;
                at_saw = board;
            }
        if (visits->count == 0)
            at_saw = 0;
        assert_memory_equal(off, b->off[s], sizeof off);
    }
    return fetched;
}

static void boards_are_fetched_as_seldom_as_can_be(void **state) {
    (void)state;
    uint64_t seed = 9;
    int64_t saved = 0;
    for (int round = 0; round < 2000; round++) {
        sb_run run = sb_run_new();
        batch b = batch_by_chance(&seed);
        stops all = {0};
        int64_t visits = 0;
        put_stops(&run, &b, &all);
        cuts_order_boards(&run, &all);
        for (size_t s = 0; s < b.count; s++)
            visits += boards_at(&b, s);
        int64_t fetched = follow(&b, &all);
        assert_int_equal(fetched, least_from(&b, 0, 0));
        saved += visits - fetched;
        sb_run_free(&run);
    }
    assert_true(saved > 2000);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boards_are_fetched_as_seldom_as_can_be),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
