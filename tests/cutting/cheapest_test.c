/* The cheapest numbers of boards against counting them all. */
#include "problems.h"

#include "cutting/cheapest.h"

enum {
    BOARDS = 4,
    ROWS = 3
};

typedef struct trial {
    int64_t prices[BOARDS], most[BOARDS], worths[ROWS][BOARDS], totals[ROWS];
    int64_t numbers[BOARDS], best;
    const int64_t *out; /* these numbers and all below them are ruled out; NULL: none are */
} trial;

static bool is_out(const void *context, const int64_t *numbers) {
    const int64_t *out = context;
    for (int s = 0; s < BOARDS; s++)
        if (numbers[s] > out[s])
            return false;
    return true;
}

static bool covers(const trial *t) {
    for (int k = 0; k < ROWS; k++) {
        int64_t worth = 0;
        for (int s = 0; s < BOARDS; s++)
            worth += t->worths[k][s] * t->numbers[s];
        if (worth < t->totals[k])
            return false;
    }
    return !t->out || !is_out(t->out, t->numbers);
}

static void count_all(trial *t, int s, int64_t cost) {
    if (s == BOARDS) {
        if (cost < t->best && covers(t))
            t->best = cost;
        return;
    }
    for (t->numbers[s] = 0; t->numbers[s] <= t->most[s]; t->numbers[s]++)
        count_all(t, s + 1, cost + t->numbers[s] * t->prices[s]);
}

static trial random_trial(uint32_t *seed, int64_t dearest) {
    trial t = {.best = INT64_MAX};
    for (int s = 0; s < BOARDS; s++) {
        t.prices[s] = roll(seed, 8) == 0 ? 0 : 1 + roll(seed, (uint32_t)dearest);
        t.most[s] = roll(seed, 3) == 0 ? 1 : 1 + roll(seed, 6);
        for (int k = 0; k < ROWS; k++)
            t.worths[k][s] = roll(seed, 100);
    }
    for (int k = 0; k < ROWS; k++)
        t.totals[k] = roll(seed, 500);
    return t;
}

static sb_cheapest search_for(sb_run *run, const trial *t, int64_t dearest) {
    sb_cheapest c = sb_cheapest_new(run->pool, BOARDS, t->prices, t->most, BOARDS * 6 * dearest);
    for (int k = 0; k < ROWS; k++)
        sb_cheapest_row(&c, t->worths[k], t->totals[k]);
    return c;
}

static void expect_cheapest(sb_cheapest *c, trial *t, int64_t dearest) {
    int64_t nodes = 1000000;
    sb_cheapest_end end = sb_cheapest_find(c, BOARDS * 6 * dearest, &nodes);
    t->best = INT64_MAX;
    count_all(t, 0, 0);
    assert_int_equal(end, t->best == INT64_MAX ? SB_CHEAPEST_NONE : SB_CHEAPEST_FOUND);
    assert_int_equal(c->cost, t->best);
    if (t->best == INT64_MAX || t->best == 0)
        return;
    nodes = 1000000;
    assert_int_equal(sb_cheapest_find(c, t->best - 1, &nodes), SB_CHEAPEST_NONE);
}

/* Small prices and ones too fine for the tables; then the cheapest is ruled out, so that the next one is found. */
static void is_what_counting_finds(void **state) {
    (void)state;
    uint32_t seed = 4711;
    for (int i = 0; i < 400; i++) {
        sb_run run = sb_run_new();
        int64_t dearest = i % 2 ? 60 : 60000;
        trial t = random_trial(&seed, dearest);
        sb_cheapest c = search_for(&run, &t, dearest);
        expect_cheapest(&c, &t, dearest);
        if (t.best < INT64_MAX) {
            int64_t out[BOARDS];
            int64_t nodes = 1000000;
            sb_cheapest_find(&c, t.best, &nodes);
            memcpy(out, c.found, sizeof out);
            c.is_out = is_out;
            c.context = t.out = out;
            if (t.best > 0)
                expect_cheapest(&c, &t, dearest);
        }
        sb_run_free(&run);
    }
}

static void gives_up_when_its_nodes_are_used_up(void **state) {
    (void)state;
    uint32_t seed = 12;
    sb_run run = sb_run_new();
    trial t = random_trial(&seed, 60);
    sb_cheapest c = search_for(&run, &t, 60);
    int64_t nodes = 2;
    assert_int_equal(sb_cheapest_find(&c, 1000, &nodes), SB_CHEAPEST_OPEN);
    assert_int_equal(nodes, 0);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(is_what_counting_finds),
        cmocka_unit_test(gives_up_when_its_nodes_are_used_up),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
