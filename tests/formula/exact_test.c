/* What stays exact, what does not, and what is refused. */
#include "desk.h"

/* By Niven's theorem these are all the rational sines and tangents at whole degrees. */
static void trigonometry_is_exact_where_it_can_be(void **state) {
    static const int halves[] = {0, 1, 0, 2, 0, 1, 0, -1, 0, -2, 0, -1}; /* at 0, 30, 60 ... */
    desk *d = *state;
    for (int turn = -720; turn <= 720; turn += 360) {
        for (int i = 0; i < 12; i++) {
            if (i % 3 != 0 && i % 2 == 0)
                continue; /* 60, 120, 240, 300: roots of three */
            const char *sine = sb_pool_print(d->run.pool, "2 * sin(%d deg)", turn + 30 * i);
            const char *cosine = sb_pool_print(d->run.pool, "2 * cos(%d deg)", turn + 30 * i - 90);
            assert_ratio(d, sine, halves[i], 1);
            assert_ratio(d, cosine, halves[i], 1);
        }
        assert_ratio(d, sb_pool_print(d->run.pool, "tan(%d deg)", turn + 45), 1, 1);
        assert_ratio(d, sb_pool_print(d->run.pool, "tan(%d deg)", turn + 135), -1, 1);
        assert_ratio(d, sb_pool_print(d->run.pool, "tan(%d deg)", turn + 180), 0, 1);
    }
    assert_ratio(d, "sin(30 deg)", 1, 2);
    assert_ratio(d, "cos(60 deg)", 1, 2);
    assert_false(value_of(d, "sin(60 deg)").exact);
    assert_false(value_of(d, "cos(30 deg)").exact);
    assert_false(value_of(d, "sin(30.5 deg)").exact);
}

static void angles_come_back_exact(void **state) {
    static const struct {
        const char *text;
        int degrees;
    } cases[] = {
        {"asin(0)", 0},
        {"asin(1/2)", 30},
        {"asin(1)", 90},
        {"asin(-1)", -90},
        {"asin(-0.5)", -30},
        {"acos(1)", 0},
        {"acos(0.5)", 60},
        {"acos(0)", 90},
        {"acos(-1)", 180},
        {"acos(-1/2)", 120},
        {"atan(1)", 45},
        {"atan(-1)", -45},
        {"atan(0)", 0},
        {"atan2(1, 1)", 45},
        {"atan2(1, 0)", 90},
        {"atan2(1, -1)", 135},
        {"atan2(0, -1)", 180},
        {"atan2(-1, -1)", -135},
        {"atan2(-1, 0)", -90},
        {"atan2(-1, 1)", -45},
        {"atan2(0 mm, 1 mm)", 0},
        {"atan2(5 mm, 5 mm)", 45},
        {"asin(sin(30 deg))", 30},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_ratio(*state, cases[i].text, (int64_t)cases[i].degrees * 1000000, 1);
}

static void powers_and_roots(void **state) {
    assert_ratio(*state, "sqrt(2.25)", 3, 2);
    assert_ratio(*state, "sqrt(4 / 9)", 2, 3);
    assert_ratio(*state, "sqrt(0)", 0, 1);
    assert_ratio(*state, "sqrt(2.25 m2)", 1500, 1);
    assert_ratio(*state, "27 ^ (1/3)", 3, 1);
    assert_ratio(*state, "(8/27) ^ (-2/3)", 9, 4);
    assert_ratio(*state, "(1 m * 1 m * 1 m) ^ (1/3)", 1000, 1);
    assert_ratio(*state, "2 ^ 62", INT64_C(1) << 62, 1);
    assert_ratio(*state, "2 ^ -62", 1, INT64_C(1) << 62);
    assert_ratio(*state, "0 ^ 0", 1, 1);
    assert_false(value_of(*state, "sqrt(2)").exact);
    assert_near(*state, "sqrt(2)", 1.41421356237309505, 1e-16);
    assert_near(*state, "2 ^ 0.1", 1.07177346253629316, 1e-15);     /* tenth root of two */
    assert_near(*state, "2 ^ sqrt(2)", 2.66514414269022519, 1e-14); /* Gelfond and Schneider's number */
}

static void volumes_stay_exact_on_the_way(void **state) {
    assert_ratio(*state, "100 m * 100 m / (7 m)", 10000000, 7);
    assert_ratio(*state, "(100 m * 100 m * 100 m) / (30 m * 30 m * 30 m)", 1000, 27);
    assert_value(*state, "(1 m / 7) * (1 m / 11) * 77 = 1 m2", "true");
}

static void numbers_beyond_reach_go_on_inexactly(void **state) {
    assert_false(value_of(*state, "10 ^ 40").exact);
    assert_near(*state, "10 ^ 40 / 10 ^ 38", 100, 1e-9);
    assert_value(*state, "10 ^ 40 > 10 ^ 39", "true");
    assert_near(*state, "floor(10 ^ 40) / 10 ^ 40", 1, 1e-12);
}

static void rounding(void **state) {
    static const struct {
        const char *text;
        int expected;
    } cases[] = {
        {"floor(7 / 2)", 3},
        {"floor(-7 / 2)", -4},
        {"ceil(7 / 2)", 4},
        {"ceil(-7 / 2)", -3},
        {"round(5 / 2)", 3},
        {"round(-5 / 2)", -3},
        {"round(2.49)", 2},
        {"round(-2.49)", -2},
        {"floor(4)", 4},
        {"ceil(4)", 4},
        {"floor(2.999999999999)", 2},
        {"ceil(3.000000000001)", 4},
        {"floor(sqrt(2) ^ 2)", 2},
        {"ceil(sqrt(2) ^ 2)", 2},
        {"floor(sqrt(8) / sqrt(2))", 2},
        {"ceil(sqrt(5))", 3},
        {"floor(-sqrt(2))", -2},
        {"abs(-3)", 3},
        {"abs(3)", 3},
        {"round(sqrt(6.25) * sqrt(1.0))", 3},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_ratio(*state, cases[i].text, cases[i].expected, 1);
}

static void noise_is_no_difference(void **state) {
    assert_value(*state, "sqrt(2) * sqrt(2) = 2", "true");
    assert_value(*state, "sqrt(2) * sqrt(2) > 2 or sqrt(2) * sqrt(2) < 2", "false");
    assert_value(*state, "sqrt(2) * sqrt(2) <= 2 and sqrt(2) * sqrt(2) >= 2", "true");
    assert_value(*state, "sqrt(2) > 1.41421 and sqrt(2) < 1.41422", "true");
    assert_value(*state, "1/3 = 0.333333333333", "false"); /* both exact: no tolerance */
    /* where all but noise cancels: tan = sin / cos (geometry) */
    for (int i = 1; i < 90; i++) {
        const char *rest = sb_pool_print(((desk *)*state)->run.pool,
                                         "450 mm * (tan(%d deg) - sin(%d deg) / cos(%d deg))", i, i, i);
        const char *text = "%s >= 0 mm and %s <= 0 mm and %s = 0 mm";
        assert_value(*state, sb_pool_print(((desk *)*state)->run.pool, text, rest, rest, rest), "true");
    }
    assert_value(*state, "sqrt(2 m2) * sqrt(2 m2) - 2 m2 = 0 m2", "true");
    assert_value(*state, "asin(sqrt(2) / 2) - 45 deg = 0 deg", "true");
    assert_value(*state, "sqrt(2 m2) - 1414.213562 mm > 0 mm", "true"); /* 0.37 nm is a difference */
    assert_value(*state, "0.000000001 mm > 0 mm", "true");              /* exact: any is */
}

/* A sine that floating point took past 1 by a hair is 1. */
static void a_hair_past_one(void **state) {
    assert_near(*state, "asin(sqrt(2) * sqrt(2) / 2)", 90e6, 1);
    assert_near(*state, "acos(-sqrt(2) * sqrt(2) / 2)", 180e6, 1);
}

static void dimensions_cancel(void **state) {
    assert_ratio(*state, "900 mm / 0.3 m", 3, 1);
    assert_ratio(*state, "3 m2 / 1.5 m", 2000, 1);
    assert_ratio(*state, "90 deg / 30 deg", 3, 1);
    assert_ratio(*state, "0.5 * 90 deg - 15 deg", 30000000, 1);
    assert_ratio(*state, "(2 m) ^ 0", 1, 1);
    assert_ratio(*state, "1 / (1 / (250 mm))", 250, 1);
}

static void what_cannot_be(void **state) {
    static const struct {
        const char *text, *words, *at;
    } cases[] = {
        {"5 / 0", "division by zero: 0 is 0", "0"},
        {"1 m / (3 mm - 0.3 cm)", "division by zero: 3 mm - 0.3 cm is 0", "(3 mm - 0.3 cm)"},
        {"0 ^ -1", "a negative power of 0", "0"},
        {"0 ^ -sqrt(2)", "a negative power of 0", "0"},
        {"sqrt(-4)", "no root of a negative number: -4", "-4"},
        {"(-8) ^ (1/3)", "no root of a negative number: -8", "(-8)"},
        {"asin(1.01)", "no angle has the sine 1.01", "1.01"},
        {"acos(-2)", "no angle has the cosine -2", "-2"},
        {"tan(90 deg)", "no tangent of a right angle: 90 deg", "tan(90 deg)"},
        {"tan(-270 deg)", "no tangent", "tan(-270 deg)"},
        {"atan2(0 mm, 0 mm)", "no direction", "atan2(0 mm, 0 mm)"},
        {"10 ^ 400", "too large to count with", "10 ^ 400"},
        {"2 * 10 ^ 200 * 10 ^ 200", "too large to count with", "2 * 10 ^ 200 * 10 ^ 200"},
        {"sqrt(2 m)", "there is no measure for sqrt(2 m)", "sqrt(2 m)"},
        {"(1 m) ^ (1/2)", "a length (1 m) does not go into it", "(1 m) ^ (1/2)"},
        {"(1 m) ^ 10", "there is no measure for (1 m) ^ 10", "(1 m) ^ 10"},
        {"(1 m) ^ 9 * 1 m", "its power is too high", "(1 m) ^ 9 * 1 m"},
        {"(1 m) ^ sqrt(2)", "must be an exact fraction", "sqrt(2)"},
        {"2 ^ (1 m)", "the exponent of ^ wants a number, and this is a length (1 m)", "(1 m)"},
        {"floor(5 mm)", "needs a step: floor(5 mm, 1 mm)", "5 mm"},
        {"round(5 mm, 0 mm)", "the step of round must be more than 0", "0 mm"},
        {"round_up(5 mm, -1 mm)", "must be more than 0", "-1 mm"},
        {"round(5 mm, 2)", "write a unit, for example 2 mm", "5 mm, 2"},
        {"sin(30)", "sin wants an angle, and this is a bare number (30): write a unit, for example 30 deg",
         "30"},
        {"sin(5 mm)", "sin wants an angle, and this is a length (5 mm)", "5 mm"},
        {"atan(45 deg)", "atan wants a number, and this is an angle (45 deg)", "45 deg"},
        {"atan2(1 m, 2)", "atan2 wants measures of one kind", "1 m, 2"},
        {"min(1 m, 2 m, 3 m2)", "a length (1 m) and an area (3 m2)", "1 m, 2 m, 3 m2"},
        {"abs(true)", "abs wants a measure or a number", "true"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_error(*state, cases[i].text, cases[i].words, cases[i].at);
}

/* ---- typed results ---- */

static const char *last_message(desk *d) {
    return sb_notices_message(&d->run, sb_notices_count(&d->run, SB_NOTE) - 1);
}

static void lengths_have_an_end(void **state) {
    desk *d = *state;
    sb_length length;
    assert_true(sb_formula_length(&d->run, read_formula(d, "500 m * 2"), d->scope, &length));
    assert_int_equal(length.nm, INT64_C(1000000000000));
    assert_true(sb_formula_length(&d->run, read_formula(d, "400 m * 3 / 100"), d->scope, &length));
    assert_int_equal(length.nm, INT64_C(12000000000)); /* on the way it may be longer */
    assert_false(sb_formula_length(&d->run, read_formula(d, "500 m * 2.1"), d->scope, &length));
    assert_string_equal(last_message(d), "500 m * 2.1 comes to more than 1 km");
}

/* The root of two square metres is 1414.213562373 mm: up, and never for noise alone. */
static void inexact_lengths_round_up(void **state) {
    desk *d = *state;
    sb_length length;
    assert_true(sb_formula_length(&d->run, read_formula(d, "sqrt(2 m2)"), d->scope, &length));
    assert_int_equal(length.nm, 1414213563);
    assert_true(sb_formula_length(&d->run, read_formula(d, "1 m * sqrt(3) * sqrt(3)"), d->scope, &length));
    assert_int_equal(length.nm, 3000000000);
    assert_true(sb_formula_length(&d->run, read_formula(d, "1 m * (sqrt(2) * sqrt(2))"), d->scope, &length));
    assert_int_equal(length.nm, 2000000000);
}

static void counts_are_whole(void **state) {
    desk *d = *state;
    int64_t count;
    assert_true(sb_formula_count(&d->run, read_formula(d, "sqrt(2) * sqrt(8)"), d->scope, &count));
    assert_int_equal(count, 4);
    assert_true(sb_formula_count(&d->run, read_formula(d, "0"), d->scope, &count));
    assert_int_equal(count, 0);
    assert_false(sb_formula_count(&d->run, read_formula(d, "5 / 2"), d->scope, &count));
    assert_non_null(strstr(last_message(d), "expected a whole number, and 5 / 2 is 2.5"));
    assert_false(sb_formula_count(&d->run, read_formula(d, "-1"), d->scope, &count));
    assert_non_null(strstr(last_message(d), "expected a count from 0 to ten million, and this is -1"));
    assert_false(sb_formula_count(&d->run, read_formula(d, "2.5"), d->scope, &count));
    assert_non_null(strstr(last_message(d), "expected a whole number, and this is 2.5:"));
    assert_false(sb_formula_count(&d->run, read_formula(d, "10 ^ 7 + 1"), d->scope, &count));
    assert_non_null(strstr(last_message(d), "ten million"));
    assert_false(sb_formula_count(&d->run, read_formula(d, "3 mm"), d->scope, &count));
    assert_string_equal(last_message(d), "expected a number, and this is a length (3 mm)");
}

static void kinds_are_named(void **state) {
    desk *d = *state;
    sb_length length;
    sb_area area;
    sb_angle angle;
    bool truth;
    int64_t micro;
    assert_false(sb_formula_length(&d->run, read_formula(d, "20"), d->scope, &length));
    assert_string_equal(last_message(d),
                        "expected a length, and this is a bare number (20): write a unit, for example 20 mm");
    assert_false(sb_formula_length(&d->run, read_formula(d, "1 m * 2 m"), d->scope, &length));
    assert_string_equal(last_message(d), "expected a length, and this is an area (1 m * 2 m)");
    assert_false(sb_formula_area(&d->run, read_formula(d, "1 m"), d->scope, &area));
    assert_string_equal(last_message(d), "expected an area, and this is a length (1 m)");
    assert_false(sb_formula_angle(&d->run, read_formula(d, "45"), d->scope, &angle));
    assert_string_equal(
        last_message(d),
        "expected an angle, and this is a bare number (45): write a unit, for example 45 deg");
    assert_true(sb_formula_angle(&d->run, read_formula(d, "45 deg / 2"), d->scope, &angle));
    assert_int_equal(angle.udeg, 22500000);
    assert_false(sb_formula_truth(&d->run, read_formula(d, "3 mm"), d->scope, &truth));
    assert_non_null(strstr(last_message(d), "expected a condition"));
    assert_true(sb_formula_truth(&d->run, read_formula(d, "3 mm < 4 mm"), d->scope, &truth));
    assert_true(truth);
    assert_true(sb_formula_micro(&d->run, read_formula(d, "2 / 3"), d->scope, &micro));
    assert_int_equal(micro, 666667);
    assert_int_equal(sb_notices_count(&d->run, SB_NOTE), 5);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(trigonometry_is_exact_where_it_can_be),
        AT_DESK(angles_come_back_exact),
        AT_DESK(powers_and_roots),
        AT_DESK(volumes_stay_exact_on_the_way),
        AT_DESK(numbers_beyond_reach_go_on_inexactly),
        AT_DESK(rounding),
        AT_DESK(noise_is_no_difference),
        AT_DESK(a_hair_past_one),
        AT_DESK(dimensions_cancel),
        AT_DESK(what_cannot_be),
        AT_DESK(lengths_have_an_end),
        AT_DESK(inexact_lengths_round_up),
        AT_DESK(counts_are_whole),
        AT_DESK(kinds_are_named),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
