/* Whole numbers and ratios that do not lose anything in silence. */
#include "bench.h"

__extension__ typedef __int128 wide;

static void ranges(void **state) {
    (void)state;
    assert_int_equal(sb_add(INT64_MAX, -1), INT64_MAX - 1);
    assert_true(sb_add(INT64_MAX, 1) == SB_BAD);
    assert_true(sb_sub(-INT64_MAX, 1) == SB_BAD); /* that number means BAD, so it is out of range as well */
    assert_true(sb_sub(-INT64_MAX, 2) == SB_BAD);
    assert_true(sb_mul(INT64_C(4000000000), INT64_C(4000000000)) == SB_BAD);
    assert_true(sb_mul(INT64_C(-3000000000), INT64_C(3000000000)) == INT64_C(-9000000000000000000));
}

static void bad_sticks(void **state) {
    (void)state;
    const int64_t bad = SB_BAD;
    assert_true(sb_add(bad, 5) == bad && sb_add(5, bad) == bad);
    assert_true(sb_sub(bad, bad) == bad && sb_sub(0, bad) == bad);
    assert_true(sb_mul(bad, 0) == bad && sb_mul(0, bad) == bad);
    assert_true(sb_mul_div(bad, 0, 1) == bad && sb_mul_div(1, 1, bad) == bad && sb_mul_div(1, 1, 0) == bad);
    assert_true(sb_length_times((sb_length){bad}, 2).nm == bad);
    assert_true(sb_length_up_to_step((sb_length){bad}, SB_MM(1)).nm == bad);
    assert_true(sb_length_area(SB_MM(1), (sb_length){bad}).um2 == bad);
    assert_true(sb_money_share((sb_money){bad}, (sb_share){0}).minor == bad);
    assert_true(sb_money_with_margin((sb_money){bad}, (sb_share){0}).minor == bad);
    assert_true(sb_money_with_markup((sb_money){100}, (sb_share){bad}).minor == bad);
    assert_true(sb_money_with_margin((sb_money){100}, (sb_share){bad}).minor == bad);
    assert_true(sb_cost_money((sb_cost){bad}).minor == bad);
}

static void three_ways_to_round(void **state) {
    (void)state;
    static const struct {
        int64_t a, c, nearest, up, down;
    } cases[] = {
        {7, 2, 4, 4, 3},     {-7, 2, -4, -3, -4}, {7, -2, -4, -3, -4}, {-7, -2, 4, 4, 3},
        {5, 3, 2, 2, 1},     {4, 3, 1, 2, 1},     {-4, 3, -1, -1, -2}, {6, 3, 2, 2, 2},
        {-6, 3, -2, -2, -2}, {0, 5, 0, 0, 0},     {1, 2, 1, 1, 0},     {-1, 2, -1, 0, -1},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        assert_int_equal(sb_mul_div(cases[i].a, 1, cases[i].c), cases[i].nearest);
        assert_int_equal(sb_mul_div_up(cases[i].a, 1, cases[i].c), cases[i].up);
        assert_int_equal(sb_mul_div_down(cases[i].a, 1, cases[i].c), cases[i].down);
    }
    assert_int_equal(sb_mul_div(INT64_MAX, INT64_MAX, INT64_MAX), INT64_MAX);
    assert_true(sb_mul_div(INT64_MAX, 3, 2) == SB_BAD);
}

static int64_t any_number(dice *d) {
    int64_t n = (int64_t)(roll(d, UINT64_MAX) >> roll(d, 64));
    return n == SB_BAD ? 0 : roll(d, 2) ? n : -n;
}

/* down <= exact <= up, at most one apart, and nearest is one of the two. */
static void roundings_agree(void **state) {
    (void)state;
    dice d = {3};
    for (int i = 0; i < 100000; i++) {
        int64_t a = any_number(&d), b = any_number(&d), c = any_number(&d);
        if (c == 0)
            continue;
        wide product = (wide)a * b;
        int64_t up = sb_mul_div_up(a, b, c), down = sb_mul_div_down(a, b, c), nearest = sb_mul_div(a, b, c);
        if (up == SB_BAD || down == SB_BAD)
            continue;
        wide rest = c > 0 ? product - (wide)down * c : (wide)down * c - product, size = c > 0 ? c : -(wide)c;
        assert_true(rest >= 0 && rest < size);
        assert_int_equal(up - down, rest != 0);
        bool away_is_up = product == 0 || ((product > 0) == (c > 0));
        assert_int_equal(nearest, 2 * rest > size || (2 * rest == size && away_is_up) ? up : down);
    }
}

static void steps(void **state) {
    (void)state;
    assert_int_equal(sb_length_add(SB_MM(430), SB_MM(3)).nm, SB_MM(433).nm);
    assert_int_equal(sb_length_sub(SB_MM(430), SB_MM(3)).nm, SB_MM(427).nm);
    assert_int_equal(sb_length_times(SB_MM(430), 14).nm, SB_MM(6020).nm);
    assert_true(sb_length_mm((sb_length){864500000}) == 864.5);
    assert_int_equal(sb_length_up_to_step((sb_length){863900000}, SB_MM(1)).nm, SB_MM(864).nm);
    assert_int_equal(sb_length_up_to_step(SB_MM(864), SB_MM(1)).nm, SB_MM(864).nm);
    assert_int_equal(sb_length_down_to_step((sb_length){864999999}, SB_MM(1)).nm, SB_MM(864).nm);
    assert_int_equal(sb_length_up_to_step((sb_length){1}, (sb_length){SB_NM_PER_INCH / 16}).nm, 1587500);
}

/* A sheet of 1220 x 2440 mm has 2.9768 m2 (size common in European plywood); a beam of a cubic metre of
 * white oak at 761.6 kg/m3 would weigh that (USDA Wood Handbook, chapter 4: 1000 * 0.68 * 1.12). */
static void areas_volumes_weights(void **state) {
    (void)state;
    sb_area sheet = sb_length_area(SB_MM(1220), SB_MM(2440));
    assert_int_equal(sheet.um2, INT64_C(2976800000000));
    assert_int_equal(sb_area_volume(sheet, SB_MM(18)).nl, INT64_C(53582400000));
    sb_volume cube = sb_area_volume(sb_length_area(SB_MM(1000), SB_MM(1000)), SB_MM(1000));
    assert_int_equal(cube.nl, INT64_C(1000000000000));
    assert_int_equal(sb_volume_mass(cube, 762).mg, INT64_C(762000000));
    assert_true(sb_length_area((sb_length){INT64_MAX}, (sb_length){INT64_MAX}).um2 == SB_BAD);
}

/* ---- ratios ---- */

static void assert_ratio(sb_ratio r, int64_t num, int64_t den) {
    assert_int_equal(r.num, num);
    assert_int_equal(r.den, den);
}

static void ratios(void **state) {
    (void)state;
    assert_ratio(sb_ratio_of(6, -4), -3, 2);
    assert_ratio(sb_ratio_of(0, 7), 0, 1);
    assert_ratio(sb_ratio_add(sb_ratio_of(1, 3), sb_ratio_of(1, 6)), 1, 2);
    assert_ratio(sb_ratio_sub(sb_ratio_of(1, 3), sb_ratio_of(1, 3)), 0, 1);
    assert_ratio(sb_ratio_mul(sb_ratio_of(2, 3), sb_ratio_of(-3, 4)), -1, 2);
    assert_ratio(sb_ratio_div(sb_ratio_of(1, 2), sb_ratio_of(-3, 4)), -2, 3);
    assert_int_equal(sb_ratio_whole(sb_ratio_of(5, 2), 1), 3);
    assert_int_equal(sb_ratio_whole(sb_ratio_of(-5, 2), 1), -3);
    assert_int_equal(sb_ratio_whole_up(sb_ratio_of(1, 3), 10), 4);
    assert_int_equal(sb_ratio_whole_down(sb_ratio_of(1, 3), 10), 3);
    assert_true(sb_ratio_compare(sb_ratio_of(1, 3), sb_ratio_of(333333333, 1000000000)) > 0);
    assert_true(sb_ratio_compare(sb_ratio_of(-1, 3), sb_ratio_of(1, 3)) < 0);
    assert_int_equal(sb_ratio_compare(sb_ratio_of(2, 4), sb_ratio_of(1, 2)), 0);
    assert_true(sb_ratio_real(sb_ratio_of(1, 4)) == 0.25);
}

static void ratios_out_of_range(void **state) {
    (void)state;
    sb_ratio large = sb_ratio_of(INT64_MAX, 1), fine = sb_ratio_of(1, INT64_MAX), half = sb_ratio_of(1, 2);
    assert_false(sb_ratio_ok(sb_ratio_of(1, 0)));
    assert_false(sb_ratio_ok(sb_ratio_of(SB_BAD, 2)));
    assert_false(sb_ratio_ok(sb_ratio_add(large, large)));
    assert_false(sb_ratio_ok(sb_ratio_mul(fine, half)));
    assert_false(sb_ratio_ok(sb_ratio_div(half, sb_ratio_of(0, 1))));
    assert_ratio(sb_ratio_mul(large, fine), 1, 1);
    sb_ratio out = sb_ratio_add(large, large);
    assert_false(sb_ratio_ok(sb_ratio_sub(out, out)));
    assert_true(sb_ratio_whole(out, 1) == SB_BAD);
}

/* Laws of arithmetic, over many small ratios. */
static void ratio_laws(void **state) {
    (void)state;
    dice d = {17};
    for (int i = 0; i < 20000; i++) {
        sb_ratio a = sb_ratio_of((int64_t)roll(&d, 2001) - 1000, (int64_t)roll(&d, 640) + 1);
        sb_ratio b = sb_ratio_of((int64_t)roll(&d, 2001) - 1000, (int64_t)roll(&d, 640) + 1);
        sb_ratio c = sb_ratio_of((int64_t)roll(&d, 2001) - 1000, (int64_t)roll(&d, 640) + 1);
        sb_ratio left = sb_ratio_mul(a, sb_ratio_add(b, c)),
                 right = sb_ratio_add(sb_ratio_mul(a, b), sb_ratio_mul(a, c));
        assert_ratio(left, right.num, right.den);
        sb_ratio back = sb_ratio_sub(sb_ratio_add(a, b), b);
        assert_ratio(back, a.num, a.den);
        if (b.num != 0) {
            back = sb_ratio_div(sb_ratio_mul(a, b), b);
            assert_ratio(back, a.num, a.den);
        }
    }
}

/* ---- dates ---- */

/* ISO 8601 counts by the Gregorian calendar; 2000-02-29 existed, 1900-02-29 did not. 11016 days lie between
 * 1970-01-01 and 2000-02-29 (30 years, 7 leap days before it, 59 days). */
static void days(void **state) {
    (void)state;
    assert_int_equal(sb_date_days((sb_date){1970, 1, 1}), 0);
    assert_int_equal(sb_date_days((sb_date){2000, 2, 29}), 30 * 365 + 7 + 59);
    assert_int_equal(sb_date_days((sb_date){1969, 12, 31}), -1);
    sb_date d = sb_date_plus((sb_date){2024, 2, 28}, 2);
    assert_true(d.year == 2024 && d.month == 3 && d.day == 1);
    d = sb_date_plus((sb_date){2026, 12, 15}, 30);
    assert_true(d.year == 2027 && d.month == 1 && d.day == 14);
    d = sb_date_plus((sb_date){2026, 1, 1}, -1);
    assert_true(d.year == 2025 && d.month == 12 && d.day == 31);
}

static void every_day_of_four_centuries(void **state) {
    (void)state;
    static const int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    int64_t count = sb_date_days((sb_date){1800, 1, 1});
    for (int year = 1800; year < 2200; year++)
        for (int month = 1; month <= 12; month++) {
            bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
            int last = lengths[month - 1] + (month == 2 && leap);
            for (int day = 1; day <= last; day++, count++) {
                sb_date date = {year, month, day}, back = sb_date_plus(date, 0);
                if (sb_date_days(date) != count || back.year != year || back.month != month ||
                    back.day != day)
                    fail_msg("%d-%d-%d", year, month, day);
            }
        }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(ranges),
        cmocka_unit_test(bad_sticks),
        cmocka_unit_test(three_ways_to_round),
        cmocka_unit_test(roundings_agree),
        cmocka_unit_test(steps),
        cmocka_unit_test(areas_volumes_weights),
        cmocka_unit_test(ratios),
        cmocka_unit_test(ratios_out_of_range),
        cmocka_unit_test(ratio_laws),
        cmocka_unit_test(days),
        cmocka_unit_test(every_day_of_four_centuries),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
