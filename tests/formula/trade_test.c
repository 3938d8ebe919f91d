/* Formulas as a maker writes them, against the geometry of the piece and published tables. */
#include "desk.h"

#include <math.h>

static void set_length(desk *d, const char *name, sb_length length) {
    assert_true(sb_scope_set(&d->run, d->scope, name, sb_value_length(length)));
}

static sb_length length_of(desk *d, const char *text) {
    sb_length length = {0};
    const sb_formula *formula = read_formula(d, text);
    if (!formula || !sb_formula_length(&d->run, formula, d->scope, &length))
        fail_with_notices(d, text);
    return length;
}

static int64_t count_of(desk *d, const char *text) {
    int64_t count = -1;
    const sb_formula *formula = read_formula(d, text);
    if (!formula || !sb_formula_count(&d->run, formula, d->scope, &count))
        fail_with_notices(d, text);
    return count;
}

/* A slatted side: 450 high, 60 of it post foot and top rail, slats of 95 with gaps of 8 between.
 * Four slats and three gaps are 404, too high for the 390 there are; three and two are 301. */
static void slats_of_a_planter(void **state) {
    desk *d = *state;
    set_length(d, "high", SB_MM(450));
    set_length(d, "long", SB_MM(1000));
    sb_scope_set_attribute(&d->run, d->scope, "slat", "width", sb_value_length(SB_MM(95)));
    sb_scope_set_attribute(&d->run, d->scope, "slat", "thickness", sb_value_length(SB_MM(20)));
    let(d, "rows", "floor((high - 60 mm + 8 mm) / (slat.width + 8 mm))");
    assert_int_equal(count_of(d, "rows"), 3);
    assert_int_equal(length_of(d, "long - 2 * slat.thickness").nm, 960 * SB_NM_PER_MM);
    assert_value(d, "rows * slat.width + (rows - 1) * 8 mm", "301 mm");
    assert_value(d, "(rows + 1) * slat.width + rows * 8 mm <= high - 60 mm", "false");
}

/* When the slats fit to the hair they all count: 4 * 95 + 3 * 8 = 404. */
static void an_exact_fit_is_a_fit(void **state) {
    desk *d = *state;
    set_length(d, "high", SB_MM(464));
    assert_int_equal(count_of(d, "floor((high - 60 mm + 8 mm) / (95 mm + 8 mm))"), 4);
    assert_int_equal(count_of(d, "floor((high - 60 mm + 8 mm - 0.000001 mm) / (95 mm + 8 mm))"), 3);
}

/* The same fit when a slanted side brings a tangent in: 404 / tan a * tan a is 404 but for noise. */
static void noise_of_trigonometry_costs_no_slat(void **state) {
    desk *d = *state;
    for (int degrees = 1; degrees < 90; degrees++) {
        const char *text = sb_pool_print(d->run.pool, "(404 mm / tan(%d deg) * tan(%d deg) + 8 mm) / 103 mm",
                                         degrees, degrees);
        assert_int_equal(count_of(d, sb_pool_print(d->run.pool, "floor(%s)", text)), 4);
        assert_int_equal(count_of(d, sb_pool_print(d->run.pool, "ceil(%s)", text)), 4);
    }
}

/* A gate 900 wide and 1200 between the ledges: the brace's angle and length by Pythagoras: 3 : 4 : 5. */
static void brace_of_a_gate(void **state) {
    desk *d = *state;
    set_length(d, "wide", SB_MM(900));
    set_length(d, "rise", SB_MM(1200));
    assert_near(d, "atan2(rise, wide)", 53.130102354e6, 1e-2);
    assert_int_equal(length_of(d, "sqrt(wide ^ 2 + rise ^ 2)").nm, 1500 * SB_NM_PER_MM);
    assert_int_equal(length_of(d, "wide / cos(atan2(rise, wide))").nm, 1500 * SB_NM_PER_MM);
}

/* Long point less short point, one mitred end on a board 89 wide: w tan M (geometry): 45 degrees 89.000,
 * 30 degrees 51.384; the cut face w / cos M: 125.865 at 45 degrees. */
static void mitred_ends(void **state) {
    desk *d = *state;
    assert_int_equal(length_of(d, "89 mm * tan(45 deg)").nm, 89 * SB_NM_PER_MM);
    assert_near(d, "89 mm * tan(30 deg)", 51.384, 1e-3);
    assert_near(d, "89 mm / cos(45 deg)", 125.865, 1e-3);
}

/* Stock used up by one angled cut of a 3.2 mm blade, kerf / cos M (geometry). */
static void kerf_of_an_angled_cut(void **state) {
    desk *d = *state;
    assert_near(d, "3.2 mm / cos(0 deg)", 3.2, 1e-4);
    assert_near(d, "3.2 mm / cos(30 deg)", 3.6950, 1e-4);
    assert_near(d, "3.2 mm / cos(45 deg)", 4.5255, 1e-4);
    assert_int_equal(length_of(d, "3.2 mm / cos(60 deg)").nm, 6400000);
}

/* Sides that lean out by 12 degrees, 400 high (geometry): they come out by 400 tan 12 = 85.0226, and are
 * 400 / cos 12 long. */
static void splayed_sides(void **state) {
    desk *d = *state;
    let(d, "splay", "12 deg");
    set_length(d, "high", SB_MM(400));
    assert_near(d, "high * tan(splay)", 85.0226, 1e-4);
    assert_near(d, "high / cos(splay)", 408.9362, 1e-4);
}

/* Compound-angle chart of the operator's manual of a 12-inch compound mitre saw: table M and tilt B for a
 * box of N sides whose sides stand at pitch P; the manual says 0.005 degrees is as close as it gets. */
static void compound_angles_of_the_chart(void **state) {
    static const struct {
        int pitch, sides;
        double mitre, bevel;
    } chart[] = {
        {0, 4, 45.00, 0.00},   {5, 4, 44.89, 3.53},   {10, 6, 29.62, 4.98},  {15, 8, 21.81, 5.68},
        {20, 4, 43.22, 14.00}, {30, 4, 40.89, 20.70}, {40, 6, 23.86, 18.75}, {45, 4, 35.26, 30.00},
        {45, 8, 16.32, 15.70}, {50, 8, 14.91, 17.05}, {60, 4, 26.57, 37.76}, {70, 6, 11.17, 28.02},
        {90, 4, 0.00, 45.00},  {90, 6, 0.00, 30.00},
    };
    desk *d = *state;
    for (size_t i = 0; i < sizeof chart / sizeof *chart; i++) {
        int p = chart[i].pitch, n = chart[i].sides;
        const char *mitre = sb_pool_print(d->run.pool, "atan(cos(%d deg) * tan(180 deg / %d))", p, n);
        const char *bevel = sb_pool_print(d->run.pool, "asin(sin(%d deg) * sin(180 deg / %d))", p, n);
        assert_near(d, mitre, chart[i].mitre * 1e6, 5.001e3);
        assert_near(d, bevel, chart[i].bevel * 1e6, 5.001e3);
        /* cos M cos B = cos(180 / N) at any pitch (geometry) */
        assert_value(d, sb_pool_print(d->run.pool, "cos(%s) * cos(%s) = cos(180 deg / %d)", mitre, bevel, n),
                     "true");
    }
}

/* Frame mitres, half of 360 / N (operator's manual of a compound mitre saw, page 13). */
static void frame_mitres(void **state) {
    assert_ratio(*state, "360 deg / 4 / 2", 45000000, 1);
    assert_ratio(*state, "360 deg / 5 / 2", 36000000, 1);
    assert_ratio(*state, "360 deg / 8 / 2", 22500000, 1);
    assert_ratio(*state, "360 deg / 10 / 2", 18000000, 1);
}

/* Pitch, rise in 12 (geometry). */
static void roof_pitches(void **state) {
    assert_near(*state, "atan(4 / 12)", 18.4349e6, 1e2);
    assert_near(*state, "atan(6 / 12)", 26.5651e6, 1e2);
    assert_near(*state, "atan2(8 in, 12 in)", 33.6901e6, 1e2);
    assert_ratio(*state, "atan2(12 in, 12 in)", 45000000, 1);
    assert_near(*state, "100 * tan(30 deg)", 57.735, 1e-3);
}

/* A 30 in blank cut once in the middle by a 1/8 in kerf gives two pieces of 14 15/16 in: a worked example
 * of a saw blade maker's guide. 25.4 mm to the inch, 1959 yard and pound agreement. */
static void half_a_blank(void **state) {
    assert_int_equal(length_of(*state, "(30\" - 1/8\") / 2").nm, 379412500);
    assert_value(*state, "(30\" - 1/8\") / 2 = 14 15/16\"", "true");
    assert_value(*state, "1\" = 25.4 mm and 8 ft = 2438.4 mm", "true");
}

/* n pieces fit when n p + (n - 1) k <= L (arithmetic): 300 from 2400 with a 3.2 blade goes 7 times; 8 would
 * need 2422.4. */
static void pieces_from_a_bar(void **state) {
    assert_int_equal(count_of(*state, "floor((2400 mm + 3.2 mm) / (300 mm + 3.2 mm))"), 7);
    assert_value(*state, "8 * 300 mm + 7 * 3.2 mm = 2422.4 mm", "true");
}

/* One third of a metre, three times, is a metre; a part of it is never short, not by a nanometre. */
static void thirds_are_kept_and_rounded_up(void **state) {
    assert_int_equal(length_of(*state, "3 * (1 m / 3)").nm, 1000000000);
    assert_int_equal(length_of(*state, "1 m / 3").nm, 333333334);
    assert_int_equal(length_of(*state, "200 mm / 3").nm, 66666667);
}

static void faces_and_volumes(void **state) {
    desk *d = *state;
    sb_area area;
    assert_true(sb_formula_area(&d->run, read_formula(d, "2 * (1.2 m + 0.4 m) * 450 mm"), d->scope, &area));
    assert_int_equal(area.um2, 1440000000000);
    assert_value(d, "12 m * 1 m", "12 m2");
    assert_value(d, "12 m * 1 m / 1 m", "12000 mm");
    assert_value(d, "1 m * 2 m * 3 m / 6", "1 m3");
    /* one board foot is 144 cubic inches */
    assert_value(d, "12\" * 12\" * 1\" / (1 bf)", "1");
}

/* A shelf's spacing put on the shop's step, whichever way is safe. */
static void steps(void **state) {
    assert_value(*state, "round(433.2 mm, 1 mm)", "433 mm");
    assert_value(*state, "round_up(433.2 mm, 0.5 mm)", "433.5 mm");
    assert_value(*state, "round_down(433.7 mm, 0.5 mm)", "433.5 mm");
    assert_value(*state, "ceil(433.2 mm, 10 mm)", "440 mm");
    assert_value(*state, "floor(22.7 deg, 0.5 deg) = 22.5 deg", "true");
    assert_int_equal(length_of(*state, "round_up(1000 mm / 3, 1/16\")").nm, 333375000); /* 13 1/8 in */
}

static void percent_of_a_length(void **state) {
    assert_value(*state, "200 mm * 12 %", "24 mm");
    assert_ratio(*state, "12 %", 3, 25);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(slats_of_a_planter),
        AT_DESK(an_exact_fit_is_a_fit),
        AT_DESK(noise_of_trigonometry_costs_no_slat),
        AT_DESK(brace_of_a_gate),
        AT_DESK(mitred_ends),
        AT_DESK(kerf_of_an_angled_cut),
        AT_DESK(splayed_sides),
        AT_DESK(compound_angles_of_the_chart),
        AT_DESK(frame_mitres),
        AT_DESK(roof_pitches),
        AT_DESK(half_a_blank),
        AT_DESK(pieces_from_a_bar),
        AT_DESK(thirds_are_kept_and_rounded_up),
        AT_DESK(faces_and_volumes),
        AT_DESK(steps),
        AT_DESK(percent_of_a_length),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
