/* How wide a saw cuts, and how a cut is made that is past its limits. */
#include "bench.h"

static sb_angle deg(int64_t degrees) {
    return (sb_angle){degrees * 1000000};
}

static const sb_saw *saw_with(bench *b, const char *lines) {
    bench_again(b);
    bench_spoil(b, "shop.txt", "  bevel     45 deg left\n",
                sb_pool_print(b->run.pool, "  bevel     45 deg left 45 deg right\n%s", lines));
    return &bench_read_sound(b)->settings.crosscut;
}

static void wide_as_told_at_the_angle_or_the_next_steeper(void **state) {
    const sb_saw *saw = saw_with(*state, "  widest 300 mm at square\n  widest 210 mm at mitre 45 deg\n"
                                         "  widest 260 mm at bevel 30 deg\n");
    assert_int_equal(sb_saw_widest(saw, deg(0), deg(0)).nm, SB_MM(300).nm);
    assert_int_equal(sb_saw_widest(saw, deg(10), deg(0)).nm, SB_MM(210).nm);
    assert_int_equal(sb_saw_widest(saw, deg(-45), deg(0)).nm, SB_MM(210).nm);
    assert_int_equal(sb_saw_widest(saw, deg(0), deg(30)).nm, SB_MM(260).nm);
    assert_int_equal(sb_saw_widest(saw, deg(45), deg(30)).nm, SB_MM(210).nm);
}

/* Geometry: what lies under the blade is as long as before, so 210 at 45 is 210 cos 60 / cos 45 = 148.492 at 60. */
static void past_the_steepest_as_far_as_the_blade_reaches(void **state) {
    const sb_saw *saw = saw_with(*state, "  widest 300 mm at square\n  widest 210 mm at mitre 45 deg\n");
    assert_true(llabs(sb_saw_widest(saw, deg(60), deg(0)).nm - 148492424) < 1000);
    assert_true(llabs(sb_saw_widest(saw, deg(0), deg(45)).nm - 212132034) < 1000); /* 300 cos 45 */
    assert_int_equal(sb_saw_widest(saw_with(*state, ""), deg(45), deg(0)).nm, 0);
}

/* The swing is 50 to the left and 60 to the right. */
static void ways_to_cut(void **state) {
    const sb_saw *saw = saw_with(*state, "  widest 100 mm at square\n  widest 80 mm at mitre 60 deg\n");
    assert_int_equal(sb_saw_way(saw, deg(0), deg(0), SB_MM(100)), SB_WAY_PLAIN);
    assert_int_equal(sb_saw_way(saw, deg(0), deg(0), SB_MM(101)), SB_WAY_BOTH_EDGES);
    assert_int_equal(sb_saw_way(saw, deg(0), deg(0), SB_MM(200)), SB_WAY_BOTH_EDGES);
    assert_int_equal(sb_saw_way(saw, deg(0), deg(0), SB_MM(201)), SB_WAY_BY_HAND);
    assert_int_equal(sb_saw_way(saw, deg(45), deg(0), SB_MM(120)), SB_WAY_BOTH_EDGES);
    assert_int_equal(sb_saw_way(saw, deg(55), deg(0), SB_MM(80)), SB_WAY_PLAIN);
    assert_int_equal(sb_saw_way(saw, deg(55), deg(0), SB_MM(120)), SB_WAY_BY_HAND); /* one hand alone */
    assert_int_equal(sb_saw_way(saw, deg(70), deg(0), SB_MM(20)), SB_WAY_AUXILIARY);
    assert_int_equal(sb_saw_way(saw, deg(0), deg(46), SB_MM(20)), SB_WAY_BY_HAND);
}

static void mistakes(void **state) {
    static const bench_case cases[] = {
        {"shop.txt", "  bevel     45 deg left\n", "  widest 0 mm at square\n", "shop.txt:11:10",
         "more than zero"},
        {"shop.txt", "  bevel     45 deg left\n", "  widest 90 mm\n", "shop.txt:11:15", "`at`"},
        {"shop.txt", "  bevel     45 deg left\n", "  widest 90 mm at mitre\n", "shop.txt:11:24", "an angle"},
        {"shop.txt", "  bevel     45 deg left\n", "  widest 90 mm at bevel 0 deg\n", "shop.txt:11:25",
         "without an angle"},
        {"shop.txt", "  bevel     45 deg left\n", "  widest 90 mm at mitr 45 deg\n", "shop.txt:11:19",
         "mitre"},
        {"shop.txt", "  bevel     45 deg left\n",
         "  widest 90 mm at mitre 45 deg\n  widest 80 mm at mitre 45 deg\n", "shop.txt:12:19", "already"},
    };
    BENCH_CASES(*state, cases);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(wide_as_told_at_the_angle_or_the_next_steeper),
        AT_BENCH(past_the_steepest_as_far_as_the_blade_reaches),
        AT_BENCH(ways_to_cut),
        AT_BENCH(mistakes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
