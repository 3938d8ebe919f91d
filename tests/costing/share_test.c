/* Shares in whole units that add up: the method of the largest remainder. */
#include "made.h"

static void share(int64_t amount, const int64_t *weights, size_t count, int64_t *out) {
    sb_run run = sb_run_new();
    sb_money shares[64];
    sb_share_out(&run, (sb_money){amount}, weights, count, shares);
    for (size_t i = 0; i < count; i++)
        out[i] = shares[i].minor;
    sb_run_free(&run);
}

static void check(int64_t amount, const int64_t *weights, size_t count, const int64_t *expected) {
    int64_t got[64];
    share(amount, weights, count, got);
    for (size_t i = 0; i < count; i++)
        assert_int_equal(got[i], expected[i]);
}

static void a_euro_in_three(void **state) {
    (void)state;
    check(100, (int64_t[]){1, 1, 1}, 3, (int64_t[]){34, 33, 33}); /* ties: the earlier first */
    check(-100, (int64_t[]){1, 1, 1}, 3, (int64_t[]){-34, -33, -33});
    check(100, (int64_t[]){0, 0, 0, 0}, 4, (int64_t[]){25, 25, 25, 25});
    check(7, (int64_t[]){0, 5, 0}, 3, (int64_t[]){0, 7, 0});
    check(0, (int64_t[]){3, 4}, 2, (int64_t[]){0, 0});
    check(9, (int64_t[]){-5, 1, 2}, 3, (int64_t[]){0, 3, 6});
}

/* Ten seats on 100 000 votes with the Hare quota: the usual textbook example, from memory. */
static void seats_of_an_assembly(void **state) {
    (void)state;
    check(10, (int64_t[]){47000, 16000, 15900, 12000, 6000, 3100}, 6, (int64_t[]){5, 2, 1, 1, 1, 0});
}

static void large_amounts_do_not_wrap(void **state) {
    (void)state;
    int64_t half = INT64_MAX / 2;
    check(half, (int64_t[]){half, half}, 2, (int64_t[]){half / 2 + 1, half / 2});
    check(SB_BAD, (int64_t[]){1, 1}, 2, (int64_t[]){SB_BAD, SB_BAD});
}

/* Whatever the weights: the shares add up, and none is a whole unit off its exact due. */
static void shares_add_up(void **state) {
    (void)state;
    chance c = {20260302};
    for (int round = 0; round < 3000; round++) {
        int64_t weights[12], shares[12], sum = 0, all = 0;
        size_t count = (size_t)chance_from(&c, 1, 12);
        int64_t amount = chance_from(&c, -100000, 100000);
        for (size_t i = 0; i < count; i++)
            all += weights[i] = chance_from(&c, 0, 3) ? chance_from(&c, 0, 1000) : 0;
        share(amount, weights, count, shares);
        for (size_t i = 0; i < count; i++) {
            sum += shares[i];
            int64_t off = all > 0 ? shares[i] * all - amount * weights[i] : 0;
            assert_true(all == 0 || (off < all && off > -all));
        }
        assert_int_equal(sum, amount);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_euro_in_three),
        cmocka_unit_test(seats_of_an_assembly),
        cmocka_unit_test(large_amounts_do_not_wrap),
        cmocka_unit_test(shares_add_up),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
