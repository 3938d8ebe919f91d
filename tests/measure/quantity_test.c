/* Quantities as people write them: what is read, what is refused, and what the reason says. */
#include "bench.h"
#include "measure/units.h"

#include <math.h>

static void assert_amount(sb_run *run, const char *text, sb_dimension dimension, int64_t num, int64_t den) {
    sb_quantity q = quantity_of(run, text);
    sb_ratio expected = sb_ratio_of(num, den);
    if (!sb_dimension_same(q.dimension, dimension) || q.amount.num != expected.num ||
        q.amount.den != expected.den)
        fail_msg("%s is %s of %lld/%lld, expected %lld/%lld", text, sb_dimension_name(run, q.dimension),
                 (long long)q.amount.num, (long long)q.amount.den, (long long)num, (long long)den);
}

static void refuses(sb_run *run, const char *text, bool decimal_comma, const char *part) {
    sb_quantity q;
    const char *why;
    if (sb_quantity_read(run, text, decimal_comma, &q, &why))
        fail_msg("%s should be refused", text);
    if (!strstr(why, part))
        fail_msg("%s: \"%s\" should say \"%s\"", text, why, part);
}

/* ---- units against the outside ----------------------------------------------------------------------- */

/* International yard and pound agreement of 1959: 1 yd = 0.9144 m, 1 lb = 0.45359237 kg, both exactly (as in
 * GNU units 2.22, definitions.units; NIST Special Publication 811, appendix B, from memory). */
static void yard_and_pound(void **state) {
    sb_run *run = *state;
    assert_amount(run, "1 yd", SB_DIM_LENGTH, 9144, 10);
    assert_amount(run, "1 ft", SB_DIM_LENGTH, 3048, 10);
    assert_amount(run, "1 in", SB_DIM_LENGTH, 254, 10);
    assert_amount(run, "8 ft", SB_DIM_LENGTH, 24384, 10);
    assert_amount(run, "1 lb", SB_DIM_MASS, 45359237, 100);
    assert_amount(run, "16 oz", SB_DIM_MASS, 45359237, 100);
}

/* Squares and cubes of the above; GNU units 2.22, definitions.units: the US gallon has 231 cubic inches, the
 * board foot is 1 ft square and 1 in thick. */
static void areas_and_volumes(void **state) {
    sb_run *run = *state;
    assert_amount(run, "1 in2", SB_DIM_AREA, 64516, 100);
    assert_amount(run, "1 ft2", SB_DIM_AREA, 9290304, 100);
    assert_amount(run, "32 ft2", SB_DIM_AREA, 297289728, 100); /* a sheet of 4 x 8 ft: 2.97289728 m2 */
    assert_amount(run, "1 in3", SB_DIM_VOLUME, 16387064, 1000);
    assert_amount(run, "1 ft3", SB_DIM_VOLUME, 28316846592, 1000);
    assert_amount(run, "1 gal", SB_DIM_VOLUME, 3785411784, 1000);
    assert_amount(run, "1 bf", SB_DIM_VOLUME, 2359737216, 1000);
    assert_amount(run, "1000 bf", SB_DIM_VOLUME, 2359737216, 1);
    assert_amount(run, "12 bf", SB_DIM_VOLUME, 28316846592, 1000);
}

/* NIST Handbook 44, Appendix C, general tables of units of measurement, prints "exactly" behind these; the last two are
 * rounded there to three decimals. 16 CFR 500.19 has the inch, the foot and the square foot likewise, as exact. */
static void handbook_44(void **state) {
    sb_run *run = *state;
    static const struct {
        const char *one, *other;
    } same[] = {
        {"1 in", "2.54 cm"},     {"1 ft", "0.3048 m"},      {"1 yd", "0.9144 m"},
        {"1 yd", "36 in"},       {"1 ft2", "929.0304 cm2"}, {"1 in3", "16.387064 cm3"},
        {"1 lb", "453.59237 g"}, {"1 gal", "231 in3"},      {"1 ft2", "144 in2"},
        {"1 ft3", "1728 in3"},
    };
    for (size_t i = 0; i < sizeof same / sizeof *same; i++) {
        sb_quantity one = quantity_of(run, same[i].one), other = quantity_of(run, same[i].other);
        assert_true(sb_dimension_same(one.dimension, other.dimension));
        assert_int_equal(sb_ratio_compare(one.amount, other.amount), 0);
    }
    sb_ratio foot = quantity_of(run, "1 ft3").amount, gallon = quantity_of(run, "1 gal").amount;
    double gallons = (double)foot.num / (double)foot.den / ((double)gallon.num / (double)gallon.den);
    assert_true(fabs(gallons - 7.481) < 0.0005);
    assert_true(fabs((double)foot.num / (double)foot.den / 1e6 - 28.316) < 0.001);
}

/* NIST SP 811, from memory: litre = 1 dm3; degree, minute and second of arc in steps of 60; the rest by SI
 * prefixes. */
static void metric_angles_and_time(void **state) {
    sb_run *run = *state;
    assert_amount(run, "1 m", SB_DIM_LENGTH, 1000, 1);
    assert_amount(run, "1 cm", SB_DIM_LENGTH, 10, 1);
    assert_amount(run, "1 m2", SB_DIM_AREA, 1000000, 1);
    assert_amount(run, "1 m3", SB_DIM_VOLUME, 1000000000, 1);
    assert_amount(run, "1 l", SB_DIM_VOLUME, 1000000, 1);
    assert_amount(run, "2.5 ml", SB_DIM_VOLUME, 2500, 1);
    assert_amount(run, "1 kg", SB_DIM_MASS, 1000000, 1);
    assert_amount(run, "22 deg 30 min", SB_DIM_ANGLE, 22500000, 1);
    assert_amount(run, "1°1′1″", SB_DIM_ANGLE, 3661000000, 3600);
    assert_amount(run, "1 h 30 min", SB_DIM_TIME, 5400000, 1);
    assert_amount(run, "1 h 1 min 1 s", SB_DIM_TIME, 3661000, 1);
    assert_amount(run, "40 min", SB_DIM_TIME, 2400000, 1);
    assert_amount(run, "12 %", SB_DIM_NUMBER, 12, 100);
}

/* Common fractions in millimetres: products with 25.4, as printed in conversion tables. */
static void fractions_of_an_inch(void **state) {
    sb_run *run = *state;
    static const struct {
        const char *text;
        int64_t nm;
    } cases[] = {
        {"1/64 in", 396875},    {"1/32\"", 793750},     {"1/16\"", 1587500},    {"3/32\"", 2381250},
        {"1/8\"", 3175000},     {"3/16 in", 4762500},   {"1/4\"", 6350000},     {"3/8\"", 9525000},
        {"1/2\"", 12700000},    {"5/8\"", 15875000},    {"3/4\"", 19050000},    {"7/8\"", 22225000},
        {"7 1/4\"", 184150000}, {"9-1/4\"", 234950000}, {"3 1/2 in", 88900000},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_int_equal(length_of(run, cases[i].text).nm, cases[i].nm);
}

/* ---- one length, many hands ---- */

static void feet_and_inches(void **state) {
    sb_run *run = *state;
    static const char *const same[] = {
        "47 1/4\"",      "47-1/4\"",
        "47.25\"",       "47.25 in",
        "47 1/4in",      "47 1/4 INCHES",
        "3' 11 1/4\"",   "3' 11-1/4\"",
        "3'11-1/4\"",    "3'-11-1/4\"",
        "3'-11 1/4\"",   "3ft 11 1/4in",
        "3 ft 11.25 in", "3 feet 11 1/4\"",
        "3′ 11 1/4″",    "3’ 11 1/4”",
        "3' 11 1/4''",   "1200.15",
        "1200.15 mm",    "120.015 cm",
        "1.20015 m",     " \t1.20015\xC2\xA0m ",
    };
    for (size_t i = 0; i < sizeof same / sizeof *same; i++)
        assert_int_equal(length_of(run, same[i]).nm, INT64_C(1200150000));
    refuses(run, "1 foot 35 1/4\"", false, "as much as a whole");
    assert_int_equal(length_of(run, "-5 mm").nm, -5000000);
    assert_int_equal(length_of(run, "\xE2\x88\x92"
                                    "1/2\"")
                         .nm,
                     -12700000);
}

static void decimal_commas(void **state) {
    sb_run *run = *state;
    sb_quantity q;
    const char *why;
    assert_true(sb_quantity_read(run, "1,5 m", true, &q, &why));
    assert_int_equal(q.amount.num, 1500);
    assert_true(sb_quantity_read(run, "1.5", true, &q, &why)); /* can only be one and a half */
    assert_int_equal(q.amount.num, 3);
    refuses(run, "1,5 m", false, "comma where a decimal point");
    refuses(run, "1.200", true, "two ways"); /* twelve hundred or one and a fifth */
    refuses(run, "1.200,50", true, "more than one decimal mark");
    refuses(run, "1,200.50", false, "more than one decimal mark");
}

static void fractions_that_are_on_no_tape(void **state) {
    sb_run *run = *state;
    refuses(run, "1/3 in", false, "1/3 inch is not on any tape");
    refuses(run, "1/63\"", false, "on any tape");
    refuses(run, "1/128\"", false, "on any tape");
    refuses(run, "5/1\"", false, "on any tape");
    refuses(run, "1/0 in", false, "zero below the line");
    refuses(run, "11 5/4\"", false, "less than one");
    refuses(run, "47 1/4", false, "needs its unit");
    refuses(run, "1/2", false, "needs its unit");
    assert_amount(run, "1/3 ft", SB_DIM_LENGTH, 1016, 10); /* four inches */
}

static void what_is_no_quantity(void **state) {
    sb_run *run = *state;
    refuses(run, "", false, "nothing");
    refuses(run, "  ", false, "nothing");
    refuses(run, "nan", false, "\"nan\" is not a number");
    refuses(run, "inf", false, "\"inf\" is not a number");
    refuses(run, "-", false, "nothing");
    refuses(run, "--5", false, "not a number");
    refuses(run, "+5", false, "not a number");
    refuses(run, "1e9", false, "exponent");
    refuses(run, "1e400", false, "exponent");
    refuses(run, "1E-3 m", false, "exponent");
    refuses(run, "0x10", false, "\"x10\" is not a unit");
    refuses(run, "99999999999999999999 mm", false, "more than 18 digits");
    refuses(run, "0.0000000000000000001", false, "more than 18 digits");
    refuses(run, "1/99999999999999999999 in", false, "more than 18 digits");
    refuses(run, "100000000000000000 m3", false, "more than can be counted");
    refuses(run, "1 200 mm", false, "blank stands between digits");
    refuses(run, "5 mmm", false, "did you mean \"mm\"");
    refuses(run, "5 parsec", false, "is not a unit; known: mm");
    refuses(run, "20mm 3", false, "does not belong");
    refuses(run, "20mm x 30mm", false, "does not belong");
    refuses(run, "3' 11", false, "needs a unit smaller");
    refuses(run, "3' 11 mm", false, "needs a unit smaller");
    refuses(run, "3' 14\"", false, "as much as a whole");
    refuses(run, "22deg 75min", false, "as much as a whole");
    refuses(run, "1. mm", false, "not a unit");
    refuses(run, ".5", false, "not a number");
}

static void a_kilometre_is_enough(void **state) {
    sb_run *run = *state;
    assert_int_equal(length_of(run, "1000 m").nm, INT64_C(1000000000000));
    refuses(run, "1000.001 m", false, "above 1 km");
    refuses(run, "4000 ft", false, "above 1 km");
}

static void the_whole_number_of_digits(void **state) {
    sb_run *run = *state;
    assert_amount(run, "999999999999999999", SB_DIM_NUMBER, 999999999999999999, 1);
    assert_amount(run, "0.000000001", SB_DIM_NUMBER, 1, 1000000000);
    assert_amount(run, "0000000000001.50", SB_DIM_NUMBER, 3, 2);
}

/* Every spelling of the table is read, in capitals too, and alone or with a blank. */
static void every_spelling(void **state) {
    sb_run *run = *state;
    for (size_t i = 0; i < spelling_count; i++) {
        const spelling *s = &spelling_table[i];
        const unit *u = &unit_table[s->kind];
        if (s->kind == UNIT_ARC_MINUTE || s->kind == UNIT_ARC_SECOND)
            continue;
        assert_amount(run, sb_pool_print(run->pool, "3%s", s->text), u->dimension, 3 * u->num, u->den);
        assert_amount(run, sb_pool_print(run->pool, "3 %s", s->text), u->dimension, 3 * u->num, u->den);
        for (size_t j = i + 1; j < spelling_count; j++) /* the longer must come first among equals in form */
            if (s->form == SPELLING_TIGHT && spelling_table[j].form == SPELLING_TIGHT &&
                spelling_table[j].kind != UNIT_ARC_MINUTE && spelling_table[j].kind != UNIT_ARC_SECOND)
                assert_false(strlen(spelling_table[j].text) > strlen(s->text) &&
                             strncmp(spelling_table[j].text, s->text, strlen(s->text)) == 0);
    }
    assert_amount(run, "3 MM", SB_DIM_LENGTH, 3, 1);
    assert_amount(run, "3 Kg", SB_DIM_MASS, 3000000, 1);
}

static void names_of_dimensions(void **state) {
    sb_run *run = *state;
    assert_string_equal(sb_dimension_name(run, SB_DIM_NUMBER), "a number");
    assert_string_equal(sb_dimension_name(run, SB_DIM_AREA), "an area");
    assert_string_equal(sb_dimension_name(run, SB_DIM_MONEY), "money");
    assert_string_equal(sb_dimension_name(run, (sb_dimension){.length = 4}), "length^4");
    assert_string_equal(sb_dimension_name(run, (sb_dimension){.length = -1}), "1 / length");
    assert_string_equal(sb_dimension_name(run, (sb_dimension){.mass = 1, .length = -3}), "mass / length^3");
    assert_string_equal(sb_dimension_name(run, (sb_dimension){.length = 1, .money = 1}), "length * money");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(yard_and_pound),
        AT_THE_BENCH(handbook_44),
        AT_THE_BENCH(areas_and_volumes),
        AT_THE_BENCH(metric_angles_and_time),
        AT_THE_BENCH(fractions_of_an_inch),
        AT_THE_BENCH(feet_and_inches),
        AT_THE_BENCH(decimal_commas),
        AT_THE_BENCH(fractions_that_are_on_no_tape),
        AT_THE_BENCH(what_is_no_quantity),
        AT_THE_BENCH(a_kilometre_is_enough),
        AT_THE_BENCH(the_whole_number_of_digits),
        AT_THE_BENCH(every_spelling),
        AT_THE_BENCH(names_of_dimensions),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
