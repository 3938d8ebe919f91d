/* "Where does this figure come from." */
#include "desk.h"

static void assert_worked(desk *d, const char *text, const char *expected) {
    const sb_formula *formula = read_formula(d, text);
    if (!formula)
        fail_with_notices(d, text);
    assert_string_equal(sb_formula_worked(&d->run, formula, d->scope, &millimetres), expected);
}

static void figures_are_worked_out(void **state) {
    static const char *const cases[][2] = {
        {"high - 20 mm", "high - 20 mm = 450 mm - 20 mm = 430 mm"},
        {"20 mm", "20 mm"},
        {"2 cm", "2 cm = 20 mm"},
        {"high", "high = 450 mm"},
        {"2 * (high - slat.width)", "2 * (high - slat.width) = 2 * (450 mm - 95 mm) = 710 mm"},
        {"high ^ 2 / 3 m", "high ^ 2 / 3 m = (450 mm) ^ 2 / 3 m = 67.5 mm"},
        {"(high) ^ 2 / 3 m", "(high) ^ 2 / 3 m = (450 mm) ^ 2 / 3 m = 67.5 mm"},
        {"high - lift", "high - lift = 450 mm - (-5 mm) = 455 mm"},
        {"abs(lift)", "abs(lift) = abs(-5 mm) = 5 mm"},
        {"-lift", "-lift = -(-5 mm) = 5 mm"},
        {"rows >= 2", "rows >= 2 = 3 >= 2 = true"},
        {"sides = slatted", "sides = slatted = slatted = slatted = true"},
        {"if(rows > 2, high, nonsense)",
         "if(rows > 2, high, nonsense) = if(3 > 2, 450 mm, nonsense) = 450 mm"},
        {"rows = 3 or nonsense", "rows = 3 or nonsense = 3 = 3 or nonsense = true"},
        {"rows / pitch", "rows / pitch = 3 / (4 per m) = 750 mm"},
        {"rows / 7", "rows / 7 = 3 / 7 = 0.428571"},
        {"high * 2 m", "high * 2 m = 450 mm * 2 m = 0.9 m2"},
    };
    desk *d = *state;
    sb_scope_set(&d->run, d->scope, "high", sb_value_length(SB_MM(450)));
    sb_scope_set(&d->run, d->scope, "lift", sb_value_length(SB_MM(-5)));
    sb_scope_set(&d->run, d->scope, "rows", sb_value_count(3));
    let(d, "pitch", "1 / (250 mm)");
    sb_scope_set(&d->run, d->scope, "sides", sb_value_word("slatted"));
    sb_scope_word(&d->run, d->scope, "slatted");
    sb_scope_set_attribute(&d->run, d->scope, "slat", "width", sb_value_length(SB_MM(95)));
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_worked(d, cases[i][0], cases[i][1]);
    assert_true(sb_ok(&d->run));
    assert_worked(d, "high - lwo", "high - lwo");
    assert_false(sb_ok(&d->run));
}

static void values_are_written_for_people(void **state) {
    desk *d = *state;
    const sb_style inches = {.units = SB_UNITS_IN, .step = {SB_NM_PER_INCH / 16}, .decimal_comma = false};
    const sb_style comma = {.units = SB_UNITS_MM, .step = {1}, .decimal_comma = true};
    assert_string_equal(sb_value_text(&d->run, value_of(d, "7 / 2"), &comma), "3,5");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "4 ft * 8 ft"), &inches), "32 ft2");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "-1 / 3"), &millimetres), "-0.333333");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "10 ^ 20"), &millimetres),
                        "100000000000000000000");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "1 / (250 mm)"), &millimetres), "4 per m");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "6 kg / (2 m * 1.5 m)"), &millimetres),
                        "2 kg per m2");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "1.5 h"), &millimetres), "90 min");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "2 * 500"), &millimetres), "1000");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "1 m * 1.5 m"), NULL), "1.5 m2");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "2.5 m"), NULL), "2500 mm");
    assert_string_equal(sb_value_text(&d->run, value_of(d, "22.5 deg"), NULL), "22.5°");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(figures_are_worked_out),
        AT_DESK(values_are_written_for_people),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
