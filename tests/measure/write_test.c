/* Measures written, and read back. */
#include "bench.h"

#include <locale.h>

static const sb_style half_mm = {SB_UNITS_MM, {500000}, false};
static const sb_style whole_mm = {SB_UNITS_MM, {1000000}, false};
static const sb_style comma_mm = {SB_UNITS_MM, {100000}, true};
static const sb_style inch_64 = {SB_UNITS_IN, {396875}, false};
static const sb_style inch_16 = {SB_UNITS_IN, {1587500}, false};

static void millimetres_to_the_step(void **state) {
    sb_run *run = *state;
    assert_string_equal(sb_write_length(run, SB_MM(864), &half_mm), "864");
    assert_string_equal(sb_write_length(run, (sb_length){864500000}, &half_mm), "864.5");
    assert_string_equal(sb_write_length(run, (sb_length){864300000}, &half_mm), "~864.5");
    assert_string_equal(sb_write_length(run, (sb_length){864249999}, &half_mm), "~864");
    assert_string_equal(sb_write_length(run, (sb_length){864500000}, &whole_mm), "~865");
    assert_string_equal(sb_write_length(run, (sb_length){864500000}, &comma_mm), "864,5");
    assert_string_equal(sb_write_length(run, (sb_length){-1500000}, &half_mm), "-1.5");
    assert_string_equal(sb_write_length(run, (sb_length){0}, &half_mm), "0");
    assert_string_equal(sb_write_length(run, (sb_length){396875}, NULL),
                        "0.396875"); /* without a style: exact */
    assert_string_equal(sb_write_length_unit(run, SB_MM(864), &half_mm), "864 mm");
    assert_string_equal(sb_write_length_unit(run, (sb_length){864300000}, &whole_mm), "~864 mm");
}

static void inches_as_whole_and_fraction(void **state) {
    sb_run *run = *state;
    assert_string_equal(sb_write_length(run, length_of(run, "34 1/64\""), &inch_64), "34 1/64\"");
    assert_string_equal(sb_write_length(run, length_of(run, "34 2/64\""), &inch_64), "34 1/32\"");
    assert_string_equal(sb_write_length(run, length_of(run, "8 ft"), &inch_64), "96\"");
    assert_string_equal(sb_write_length(run, length_of(run, "1/2\""), &inch_64), "1/2\"");
    assert_string_equal(sb_write_length(run, length_of(run, "-1 1/2\""), &inch_64), "-1 1/2\"");
    assert_string_equal(sb_write_length(run, (sb_length){0}, &inch_64), "0\"");
    assert_string_equal(sb_write_length(run, length_of(run, "34 1/64\""), &inch_16), "~34\"");
    assert_string_equal(sb_write_length(run, length_of(run, "34 3/64\""), &inch_16), "~34 1/16\"");
    assert_string_equal(sb_write_length(run, SB_MM(864), &inch_64), "~34 1/64\""); /* 34.0157 in */
    assert_string_equal(sb_write_length_unit(run, length_of(run, "47 1/4\""), &inch_16), "47 1/4\"");
    sb_style metric_step = {SB_UNITS_IN, {500000}, false}; /* no step of a tape in inches: 1/64 it is */
    assert_string_equal(sb_write_length(run, length_of(run, "5/64\""), &metric_step), "5/64\"");
}

/* PS 20-20 table 3 prints inches and whole millimetres side by side: rounded to the nearest. */
static void nearest_whole_millimetres(void **state) {
    sb_run *run = *state;
    static const char *const table[][2] = {{"3/4\"", "~19"},    {"1 1/2\"", "~38"},  {"2 1/2\"", "~64"},
                                           {"3 1/2\"", "~89"},  {"5 1/2\"", "~140"}, {"7 1/4\"", "~184"},
                                           {"9 1/4\"", "~235"}, {"11 1/4\"", "~286"}};
    for (size_t i = 0; i < sizeof table / sizeof *table; i++)
        assert_string_equal(sb_write_length(run, length_of(run, table[i][0]), &whole_mm), table[i][1]);
}

/* Over all marks of a 64ths tape of 20 ft and all half millimetres of 6 m: what is written reads back as the
 * same, and carries no mark of rounding. */
static void tapes_come_back(void **state) {
    sb_run *run = *state;
    for (int64_t i = 0; i <= 20 * 12 * 64; i++) {
        sb_length length = {i * 396875};
        const char *text = sb_write_length(run, length, &inch_64);
        assert_int_not_equal(*text, '~');
        assert_int_equal(length_of(run, text).nm, length.nm);
    }
    for (int64_t i = -100; i <= 12000; i++) {
        sb_length length = {i * 500000};
        assert_int_equal(length_of(run, sb_write_length(run, length, &half_mm)).nm, length.nm);
        assert_int_equal(length_of(run, sb_write_length_unit(run, length, &half_mm)).nm, length.nm);
    }
}

/* What is marked is off by half a step at most; what is not marked is exact. */
static void marks_tell_the_truth(void **state) {
    sb_run *run = *state;
    const sb_style *styles[] = {&half_mm, &whole_mm, &inch_64, &inch_16};
    dice d = {8};
    for (int i = 0; i < 20000; i++) {
        const sb_style *style = styles[roll(&d, 4)];
        sb_length length = {(int64_t)roll(&d, 3000000000)};
        if (roll(&d, 2))
            length = sb_length_down_to_step(length, style->step);
        const char *text = sb_write_length(run, length, style);
        bool marked = *text == '~';
        int64_t off = length_of(run, text + marked).nm - length.nm;
        assert_true(2 * (off < 0 ? -off : off) <= style->step.nm);
        assert_int_equal(marked, off != 0);
    }
}

static void numbers(void **state) {
    sb_run *run = *state;
    assert_string_equal(sb_write_decimal(run, 123456, 2, false), "1234.56");
    assert_string_equal(sb_write_decimal(run, -5, 2, false), "-0.05");
    assert_string_equal(sb_write_decimal(run, 5, 0, false), "5");
    assert_string_equal(sb_write_decimal(run, 1200, 3, true), "1,200");
    assert_string_equal(sb_write_decimal(run, INT64_MAX, 6, false), "9223372036854.775807");
    assert_string_equal(sb_write_decimal(run, SB_BAD, 2, false), "out of range");
    assert_string_equal(sb_write_share(run, (sb_share){210000}, 0, false), "21 %");
    assert_string_equal(sb_write_share(run, (sb_share){210000}, 1, false), "21.0 %");
    assert_string_equal(sb_write_share(run, (sb_share){99750}, 1, true), "9,975 %");
    assert_string_equal(sb_write_share(run, (sb_share){999999}, 1, false), "99.9999 %");
    assert_string_equal(sb_write_share(run, (sb_share){0}, 0, false), "0 %");
    assert_string_equal(sb_write_share(run, (sb_share){SB_BAD}, 0, false), "out of range %");
    assert_string_equal(sb_write_fixed(run, 1234567, 6, 2, false), "1.23");
    assert_string_equal(sb_write_fixed(run, 1235000, 6, 2, false), "1.24");
    assert_string_equal(sb_write_fixed(run, -1235000, 6, 2, true), "-1,24");
    assert_string_equal(sb_write_fixed(run, 5, 0, 2, false), "5.00");
    assert_string_equal(sb_write_fixed(run, 499, 3, 0, false), "0");
    assert_string_equal(sb_write_fixed(run, -499, 3, 0, false), "0"); /* no minus before nothing */
    assert_string_equal(sb_write_fixed(run, INT64_MAX, 0, 2, false), "out of range");
}

static void angles_and_dates(void **state) {
    sb_run *run = *state;
    static const struct {
        int64_t udeg;
        const char *text;
    } cases[] = {{45000000, "45°"}, {22500000, "22.5°"},  {31619000, "31.62°"},
                 {22996000, "23°"}, {-5250000, "-5.25°"}, {33862900, "33.86°"},
                 {0, "0°"},         {4000, "0°"}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_string_equal(sb_write_angle(run, (sb_angle){cases[i].udeg}, NULL), cases[i].text);
    assert_string_equal(sb_write_angle(run, (sb_angle){22500000}, &comma_mm), "22,5°");
    assert_string_equal(sb_write_date(run, (sb_date){2026, 3, 31}), "2026-03-31");
    assert_string_equal(sb_write_date(run, (sb_date){0}), "");
}

static void money_has_its_currency_s_decimals(void **state) {
    sb_run *run = *state;
    sb_currency eur = {"EUR", 2}, jpy = {"JPY", 0}, kwd = {"KWD", 3};
    assert_string_equal(sb_write_money(run, (sb_money){123450}, eur, NULL), "1 234.50");
    assert_string_equal(sb_write_money(run, (sb_money){99999}, eur, NULL), "999.99");
    assert_string_equal(sb_write_money(run, (sb_money){-100000005}, eur, &comma_mm), "-1 000 000,05");
    assert_string_equal(sb_write_money(run, (sb_money){1234567}, jpy, NULL), "1 234 567");
    assert_string_equal(sb_write_money(run, (sb_money){1234567}, kwd, NULL), "1 234.567");
    assert_string_equal(sb_write_money(run, (sb_money){0}, eur, NULL), "0.00");
    assert_string_equal(sb_write_money(run, (sb_money){SB_BAD}, eur, NULL), "out of range");
    assert_string_equal(sb_write_money(run, (sb_money){INT64_MAX}, eur, NULL), "92 233 720 368 547 758.07");
}

static void the_locale_has_no_say(void **state) {
    sb_run *run = *state;
    if (!setlocale(LC_ALL, "de_DE.UTF-8"))
        setlocale(LC_ALL, "");
    assert_string_equal(sb_write_decimal(run, 1234567, 2, false), "12345.67");
    assert_string_equal(sb_write_length(run, (sb_length){864500000}, &half_mm), "864.5");
    assert_int_equal(length_of(run, "864.5").nm, 864500000);
    setlocale(LC_ALL, "C");
}

/* Sizes of stock are no marks: 23/32 in (PS 1, performance category) stays that on a tape of 16ths. */
static void sizes_are_exact(void **state) {
    sb_run *run = *state;
    const sb_style inches = {SB_UNITS_IN, {SB_NM_PER_INCH / 16}, false},
                   mm = {SB_UNITS_MM, {SB_NM_PER_MM}, true};
    assert_string_equal(sb_write_size(run, length_of(run, "96\""), length_of(run, "48 1/64\""), &inches),
                        "96\" x 48 1/64\"");
    assert_string_equal(sb_write_size(run, length_of(run, "23/32\""), (sb_length){0}, &inches), "23/32\"");
    assert_string_equal(sb_write_size(run, SB_MM(2440), (sb_length){1220500000}, &mm), "2440 x 1220,5 mm");
    assert_string_equal(sb_write_size(run, SB_MM(2440), (sb_length){0}, NULL), "2440 mm");
    assert_string_equal(sb_write_size(run, SB_MM(2440), (sb_length){0}, &inches), "~96 1/16\"");
}

/* 25.4 mm an inch (international yard and pound agreement, 1959): 1400 mm are 881.89 sixteenths, 400 mm 251.97, 500 mm
 * 314.96; 34 in are 863.6 mm, 26 1/2 in 673.1. */
static void sizes_of_pieces_to_the_tape(void **state) {
    sb_run *run = *state;
    const sb_style inches = {SB_UNITS_IN, {SB_NM_PER_INCH / 16}, false},
                   mm = {SB_UNITS_MM, {SB_NM_PER_MM}, false};
    const sb_length trough[] = {SB_MM(1400), SB_MM(400), SB_MM(500)},
                    bench[] = {length_of(run, "34\""), length_of(run, "26 1/2\"")};
    assert_string_equal(sb_write_sizes(run, trough, 3, &inches), "55 1/8\" x 15 3/4\" x 19 11/16\"");
    assert_string_equal(sb_write_sizes(run, trough, 3, &mm), "1400 x 400 x 500 mm");
    assert_string_equal(sb_write_sizes(run, bench, 2, &mm), "864 x 673 mm");
    assert_string_equal(sb_write_sizes(run, bench, 2, NULL), "863.6 x 673.1 mm");
    assert_string_equal(sb_write_sizes(run, bench, 0, &mm), "");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(sizes_of_pieces_to_the_tape),
        AT_THE_BENCH(sizes_are_exact),
        AT_THE_BENCH(millimetres_to_the_step),
        AT_THE_BENCH(inches_as_whole_and_fraction),
        AT_THE_BENCH(nearest_whole_millimetres),
        AT_THE_BENCH(tapes_come_back),
        AT_THE_BENCH(marks_tell_the_truth),
        AT_THE_BENCH(numbers),
        AT_THE_BENCH(angles_and_dates),
        AT_THE_BENCH(money_has_its_currency_s_decimals),
        AT_THE_BENCH(the_locale_has_no_say),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
