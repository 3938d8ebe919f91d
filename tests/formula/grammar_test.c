/* How formulas group, where they end, and what is said about those that are not formulas. */
#include "desk.h"

static void what_binds_tighter(void **state) {
    static const struct {
        const char *text, *expected;
    } cases[] = {
        {"2 + 3 * 4", "14"},
        {"(2 + 3) * 4", "20"},
        {"2 * 3 + 4", "10"},
        {"20 - 5 - 3", "12"},
        {"100 / 10 / 2", "5"},
        {"100 / (10 / 2)", "20"},
        {"2 * 3 ^ 2", "18"},
        {"2 ^ 3 ^ 2", "512"},
        {"(2 ^ 3) ^ 2", "64"},
        {"-2 ^ 2", "-4"},
        {"(-2) ^ 2", "4"},
        {"2 ^ -1", "0.5"},
        {"4 * -3", "-12"},
        {"- -3", "3"},
        {"4 - -3", "7"},
        {"12 / 4 * 3", "9"},
        {"1 + 1 = 2", "true"},
        {"1 + 1 != 2", "false"},
        {"2 * 3 >= 5 + 1", "true"},
        {"not 1 = 2", "true"},
        {"not true or true", "true"},
        {"not (true or true)", "false"},
        {"true or true and false", "true"},
        {"(true or true) and false", "false"},
        {"not not true", "true"},
        {"1 < 2 and 2 < 3", "true"},
        {"1 > 2 or 3 <= 3", "true"},
        {"(1 < 2) = (3 < 4)", "true"},
        {"if(1 < 2, 10, 20) + 1", "11"},
        {"min(4, 2, 3) * 2", "4"},
        {"max(7)", "7"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_value(*state, cases[i].text, cases[i].expected);
}

static void ends_before_what_is_not_a_formula(void **state) {
    static const struct {
        const char *text, *rest;
    } cases[] = {
        {"2 * 3 of slat", "of"},
        {"6 when 1 < 2", "when"},
        {"4 per piece", "per"},
        {"400 mm to 900 mm", "to"},
        {"1 from 2", "from"},
        {"2 coats", "coats"},
        {"1 | 2", "|"},
        {"2, 3", ","},
        {"10 mm with 5 mm", "with"},
        {"45 deg scale", "scale"},
        {"3 each", "each"},
        {"(2) (3)", "("},
        {"1 bevel 30 deg", "bevel"},
        {"1 mitre 30 deg", "mitre"},
        {"7)", ")"},
    };
    desk *d = *state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const char *rest;
        assert_non_null(read_until(d, cases[i].text, false, &rest));
        assert_string_equal(rest, cases[i].rest);
    }
    assert_true(sb_ok(&d->run));
}

static void the_place_is_the_whole_formula(void **state) {
    desk *d = *state;
    const char *rest;
    const sb_formula *formula = read_until(d, "  (2 + 3) * max(1, 2)  when true", false, &rest);
    assert_string_equal(sb_place_text(&d->run, sb_formula_place(formula)), "(2 + 3) * max(1, 2)");
    formula = read_until(d, "not (1 = 2) when true", false, &rest);
    assert_string_equal(sb_place_text(&d->run, sb_formula_place(formula)), "not (1 = 2)");
    formula = read_until(d, "-slat.width", false, &rest);
    assert_string_equal(sb_place_text(&d->run, sb_formula_place(formula)), "-slat.width");
}

static void a_decimal_comma_where_the_shop_says_so(void **state) {
    desk *d = *state;
    const sb_formula *formula = read_until(d, "max(1,5, 2) * 2,5 mm", true, NULL);
    assert_non_null(formula);
    sb_length length;
    assert_true(sb_formula_length(&d->run, formula, d->scope, &length));
    assert_int_equal(length.nm, 5 * SB_NM_PER_MM);
}

static void mistakes_are_told_where_they_are(void **state) {
    static const struct {
        const char *text, *words, *at;
    } cases[] = {
        {"", "expected a measure, a number, a name or (, found the end of the line", ""},
        {"2 +", "expected a measure, a number, a name or (, found the end of the line", ""},
        {"2 + * 3", "found '*'", "*"},
        {"2 * (3 + 4", "an operator or ) for the ( in column 5", ""},
        {"2 * (3 4)", "expected an operator or )", "4"},
        {"1 < 2 < 3", "do not chain", "<"},
        {"1 = 2 = 3", "do not chain", "="},
        {"min()", "expected min(a, b, ...)", "min()"},
        {"2 + round(1, 2, 3)", "round has 3 arguments here: expected round(x) or round(x, step)",
         "round(1, 2, 3)"},
        {"atan2(1)", "atan2 has 1 argument here: expected atan2(y, x)", "atan2(1)"},
        {"if(true, 1)", "expected if(condition, a, b)", "if(true, 1)"},
        {"sine(30 deg)", "sin", "sine"},
        {"2 * sqrt", "sqrt is a function: expected sqrt(x)", "sqrt"},
        {"2 + when", "found 'when'", "when"},
        {"slat.", "a word behind 'slat.'", ""},
        {"slat.2", "a word behind 'slat.'", "2"},
        {"+ 3", "found '+'", "+"},
        {"long-20 mm", "'long-20' is one word: write blanks around the minus: long - 20 mm", "long-20 mm"},
        {"2 * (top-rail-20 mm) + 1 m", "top-rail - 20 mm", "top-rail-20 mm"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_error(*state, cases[i].text, cases[i].words, cases[i].at);
}

static void two_equals_signs_are_one_too_many(void **state) {
    desk *d = *state;
    assert_null(read_formula(d, "1 == 2"));
    assert_non_null(strstr(sb_notices_text(&d->run, SB_NOTE, false), "one = compares"));
}

/* Several mistakes in one formula come out together. */
static void reading_goes_on_after_a_bad_quantity(void **state) {
    desk *d = *state;
    assert_null(read_formula(d, "1/63\" + cosine(5 mm) + 1/61\""));
    assert_int_equal(sb_notices_count(&d->run, SB_ERROR), 3);
}

static const char *repeated(desk *d, const char *before, const char *inner, const char *after, int times) {
    const char *text = inner;
    for (int i = 0; i < times; i++)
        text = sb_pool_print(d->run.pool, "%s%s%s", before, text, after);
    return text;
}

static void depth_is_limited_and_said(void **state) {
    desk *d = *state;
    assert_value(d, repeated(d, "(", "7", ")", 150), "7");
    assert_value(d, repeated(d, "1 + ", "7", "", 400), "407");
    static const char *const openers[] = {"(", "-", "not ", "abs(", "2 ^ "};
    for (size_t i = 0; i < sizeof openers / sizeof *openers; i++) {
        size_t before = sb_notices_count(&d->run, SB_ERROR);
        assert_null(read_formula(d, repeated(d, openers[i], "7", "", 2000)));
        assert_int_equal(sb_notices_count(&d->run, SB_ERROR), before + 1);
        assert_non_null(strstr(sb_notices_message(&d->run, before), "nested more than 200 deep"));
    }
    assert_null(read_formula(d, repeated(d, "1 + ", "7", "", 2000)));
    assert_non_null(strstr(sb_notices_text(&d->run, SB_ERROR, false), "more than 500 steps in a row"));
}

static void some_words_cannot_be_names(void **state) {
    desk *d = *state;
    static const char *const reserved[] = {"and", "or",   "not", "if",  "when", "per",   "from",  "to",
                                           "of",  "with", "on",  "end", "true", "false", "floor", "atan2"};
    for (size_t i = 0; i < sizeof reserved / sizeof *reserved; i++) {
        assert_true(sb_formula_reserved(reserved[i]));
        assert_false(sb_scope_set(&d->run, d->scope, reserved[i], sb_value_count(1)));
    }
    static const char *const free_words[] = {"long", "piece", "coats", "scale",
                                             "each", "mitre", "iffy",  "top-rail"};
    for (size_t i = 0; i < sizeof free_words / sizeof *free_words; i++)
        assert_false(sb_formula_reserved(free_words[i]));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(what_binds_tighter),
        AT_DESK(ends_before_what_is_not_a_formula),
        AT_DESK(the_place_is_the_whole_formula),
        AT_DESK(a_decimal_comma_where_the_shop_says_so),
        AT_DESK(mistakes_are_told_where_they_are),
        AT_DESK(two_equals_signs_are_one_too_many),
        AT_DESK(reading_goes_on_after_a_bad_quantity),
        AT_DESK(depth_is_limited_and_said),
        AT_DESK(some_words_cannot_be_names),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
