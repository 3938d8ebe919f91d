/* Money: margin and markup, rounding, price points, currencies; and prices per something. */
#include "bench.h"

static sb_money cents(int64_t minor) {
    return (sb_money){minor};
}

static sb_share percent(int64_t n) {
    return (sb_share){n * 10000};
}

/* ---- margin and markup -------------------------------------------------------------------------------- */

/* Markup is profit over cost, margin is profit over price (calcmulti.com, markup against margin): cost 40 at
 * 75 % markup sells for 70; 25 % markup is 20 % margin; 50 % markup is 33.33 % margin. */
static void margin_and_markup(void **state) {
    (void)state;
    assert_int_equal(sb_money_with_markup(cents(4000), percent(75)).minor, 7000);
    assert_int_equal(sb_money_with_markup(cents(10000), percent(25)).minor, 12500);
    assert_int_equal(sb_money_with_margin(cents(10000), percent(20)).minor, 12500);
    assert_int_equal(sb_money_with_markup(cents(10000), percent(50)).minor, 15000);
    assert_int_equal(sb_money_with_margin(cents(10000), (sb_share){333333}).minor, 15000);
    assert_int_equal(sb_money_with_margin(cents(6000), percent(40)).minor, 10000); /* cost 60, price 100 */
    assert_int_equal(sb_money_with_markup(cents(6000), (sb_share){666667}).minor, 10000);
    assert_int_equal(sb_money_with_margin(cents(6000), percent(0)).minor, 6000);
}

/* The same page: a margin of 100 % or more cannot come from a cost above nothing. */
static void impossible_margins(void **state) {
    (void)state;
    assert_true(sb_money_with_margin(cents(6000), percent(100)).minor == SB_BAD);
    assert_true(sb_money_with_margin(cents(6000), percent(150)).minor == SB_BAD);
    assert_int_equal(sb_money_with_margin(cents(6000), percent(-50)).minor, 4000); /* sold at a loss */
}

/* margin = markup / (1 + markup): whichever way a price is made, the other way gives the same. */
static void margin_and_markup_agree(void **state) {
    (void)state;
    dice d = {21};
    for (int i = 0; i < 20000; i++) {
        sb_money base = cents((int64_t)roll(&d, 100000000));
        int64_t margin = (int64_t)roll(&d, 900000);
        sb_share markup = {sb_mul_div(margin, 1000000, 1000000 - margin)};
        int64_t one = sb_money_with_margin(base, (sb_share){margin}).minor,
                other = sb_money_with_markup(base, markup).minor;
        int64_t off = one > other ? one - other : other - one;
        assert_true(off <= 1 + base.minor / 1000000); /* the markup itself is kept to a millionth */
    }
}

/* ---- rounding ---- */

/* HMRC manual VAT trader records, VATREC12030: below half a penny down, half a penny or more up. */
static void half_a_penny(void **state) {
    (void)state;
    assert_int_equal(sb_cost_money((sb_cost){400}).minor, 0);
    assert_int_equal(sb_cost_money((sb_cost){499}).minor, 0);
    assert_int_equal(sb_cost_money((sb_cost){500}).minor, 1);
    assert_int_equal(sb_cost_money((sb_cost){-500}).minor, -1); /* credits round like debits */
    assert_int_equal(sb_cost_money((sb_cost){-499}).minor, 0);
}

/* EN 16931, business rules BR-CO-14, -15, -17 and the official UBL example invoices: tax once per rate. */
static void tax_of_example_invoices(void **state) {
    (void)state;
    assert_int_equal(sb_money_share(cents(18323), percent(6)).minor, 1099);   /* example 1 */
    assert_int_equal(sb_money_share(cents(4637), percent(21)).minor, 974);    /* example 1 */
    assert_int_equal(sb_money_share(cents(90000), percent(25)).minor, 22500); /* example 3 */
    assert_int_equal(sb_money_share(cents(80000), percent(10)).minor, 8000);  /* example 3 */
    assert_int_equal(sb_money_share(cents(1212), percent(25)).minor,
                     303); /* sample with a unit price of 0.1212 */
    sb_money net = sb_money_add(cents(18323), cents(4637));
    assert_int_equal(net.minor, 22960);
    assert_int_equal(sb_money_add(net, cents(1099 + 974)).minor, 25033);
}

/* 3 lines of 1.23 at 20 %: 0.75 line by line, 0.74 on the total; both are right and they differ. */
static void lines_and_totals_differ(void **state) {
    (void)state;
    assert_int_equal(3 * sb_money_share(cents(123), percent(20)).minor, 75);
    assert_int_equal(sb_money_share(sb_money_times(cents(123), 3), percent(20)).minor, 74);
}

static void price_points(void **state) {
    (void)state;
    assert_int_equal(sb_money_up_to_step(cents(12301), cents(500)).minor, 12500);
    assert_int_equal(sb_money_up_to_step(cents(12500), cents(500)).minor, 12500);
    assert_int_equal(sb_money_up_to_step(cents(12500), cents(1)).minor, 12500);
    assert_true(sb_money_up_to_step(cents(12500), cents(0)).minor == SB_BAD);
}

/* ---- currencies ---- */

/* ISO 4217, list one (table A.1): digits of the minor unit. */
static void decimals_of_currencies(void **state) {
    (void)state;
    static const struct {
        const char *code;
        int digits;
    } table[] = {{"EUR", 2}, {"GBP", 2}, {"USD", 2}, {"CAD", 2}, {"AUD", 2}, {"NZD", 2},
                 {"JPY", 0}, {"KWD", 3}, {"CHF", 2}, {"SEK", 2}, {"NOK", 2}, {"ZAR", 2},
                 {"BHD", 3}, {"BIF", 0}, {"CLP", 0}, {"XOF", 0}, {"KMF", 0}, {"DJF", 0},
                 {"XPF", 0}, {"AFN", 2}, {"DKK", 2}, {"CZK", 2}};
    sb_currency found;
    for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
        assert_true(sb_currency_find(table[i].code, &found));
        assert_string_equal(found.code, table[i].code);
        assert_int_equal(found.digits, table[i].digits);
    }
    assert_false(sb_currency_find("eur", &found));
    assert_false(sb_currency_find("EU", &found));
    assert_false(sb_currency_find("XAU", &found)); /* gold by the ounce is no shop's currency */
    assert_false(sb_currency_find("", &found));
}

/* ---- prices per something ---- */

static sb_price price(int64_t micro, sb_per per) {
    return (sb_price){micro, per};
}

static sb_item_size board(sb_run *run, const char *thickness, const char *width, const char *length) {
    return (sb_item_size){.length = length_of(run, length),
                          .width = length_of(run, width),
                          .thickness = length_of(run, thickness)};
}

static void words_for_per(void **state) {
    (void)state;
    for (int per = SB_PER_EACH; per <= SB_PER_PACK; per++) {
        sb_per found;
        assert_true(sb_per_find(sb_per_word((sb_per)per), &found));
        assert_int_equal(found, per);
    }
    sb_per found;
    assert_false(sb_per_find("yard", &found));
}

/* American Softwood Lumber Standard PS 20-20: board measure goes by nominal thickness and width and actual
 * length. A 2x4 of 8 ft holds 5 1/3 board feet, a 2x8 of 16 ft 21 1/3, a 1x8 of 10 ft 6 2/3. */
static void board_feet(void **state) {
    sb_run *run = *state;
    static const struct {
        const char *thickness, *width, *length;
        int64_t milli;
    } cases[] = {
        {"2 in", "4 in", "8 ft", 5333},
        {"2 in", "8 in", "16 ft", 21333},
        {"1 in", "8 in", "10 ft", 6667},
        {"1 in", "6 in", "96 in", 4000},
        {"1 in", "12 in", "12 in", 1000},
        {"1 1/2 in", "3 1/2 in", "8 ft", 3500}, /* the same 2x4 at its dressed size */
        {"1 in", "6 1/2 in", "8 ft", 4333},     /* NHLA rules as taught by AHEC: 6 1/2 * 8 / 12 = 4 1/3 */
        {"6/4 in", "8 in", "12 ft", 12000},     /* six quarters, 8 * 12 / 12 * 1.5 */
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        assert_int_equal(sb_board_feet_milli(length_of(run, cases[i].thickness),
                                             length_of(run, cases[i].width), length_of(run, cases[i].length)),
                         cases[i].milli);
}

/* International Correspondence Schools, Building Construction vol. 4, art. 67, list of joists: 3 x 10 in
 * joists, 2 1/2 board feet per foot, 1063.91 ft: 2659.78. */
static void joists(void **state) {
    sb_run *run = *state;
    sb_length length = length_of(run, "1063.91 ft");
    assert_int_equal(sb_board_feet_milli(length_of(run, "3 in"), length_of(run, "10 in"), length), 2659775);
}

/* GNU units 2.22, definitions.units: a board foot is 1 ft2 inch, so 1 m3 holds 423.776 of them. */
static void cubic_metre_in_board_feet(void **state) {
    (void)state;
    assert_int_equal(sb_board_feet_milli(SB_MM(1000), SB_MM(1000), SB_MM(1000)), 423776);
}

static void one_board_priced_every_way(void **state) {
    sb_run *run = *state;
    sb_item_size size = board(run, "50 mm", "200 mm", "4 m");
    assert_int_equal(sb_price_of_item(price(7500000, SB_PER_EACH), size, 2).milli, 750000);
    assert_int_equal(sb_price_of_item(price(7500000, SB_PER_PACK), size, 2).milli, 750000);
    assert_int_equal(sb_price_of_item(price(2500000, SB_PER_M), size, 2).milli, 1000000);   /* 4 m at 2.50 */
    assert_int_equal(sb_price_of_item(price(20000000, SB_PER_M2), size, 2).milli, 1600000); /* 0.8 m2 at 20 */
    assert_int_equal(sb_price_of_item(price(600000000, SB_PER_M3), size, 2).milli,
                     2400000); /* 0.04 m3 at 600 */
    sb_item_size imperial = board(run, "1 in", "6 in", "8 ft");
    assert_int_equal(sb_price_of_item(price(1250000, SB_PER_FT), imperial, 2).milli,
                     1000000); /* 8 ft at 1.25 */
    assert_int_equal(sb_price_of_item(price(2500000, SB_PER_FT2), imperial, 2).milli,
                     1000000); /* 4 ft2 at 2.50 */
    assert_int_equal(sb_price_of_item(price(3000000, SB_PER_BF), imperial, 2).milli, 1200000); /* 4 bf at 3 */
}

static void nominal_sizes_price_board_feet(void **state) {
    sb_run *run = *state;
    sb_item_size size = board(run, "1 1/2 in", "3 1/2 in", "8 ft");
    assert_int_equal(sb_price_of_item(price(3000000, SB_PER_BF), size, 2).milli, 1050000); /* 3.5 bf */
    size.nominal_thickness = length_of(run, "2 in");
    size.nominal_width = length_of(run, "4 in");
    assert_int_equal(sb_price_of_item(price(3000000, SB_PER_BF), size, 2).milli, 1600000); /* 5 1/3 bf */
    assert_int_equal(sb_price_of_item(price(1000000, SB_PER_FT), size, 2).milli,
                     800000); /* a length stays one */
}

static void decimals_follow_the_currency(void **state) {
    sb_run *run = *state;
    sb_item_size size = board(run, "50 mm", "200 mm", "4 m");
    assert_int_equal(sb_price_of_item(price(INT64_C(1234567890), SB_PER_EACH), size, 0).milli,
                     1234568); /* yen: 1234.56789 */
    assert_int_equal(sb_price_of_item(price(1234567, SB_PER_EACH), size, 3).milli,
                     1234567); /* dinar in fils: 1.234567 */
    assert_int_equal(sb_price_of_item(price(1234567, SB_PER_EACH), size, 2).milli, 123457);
    assert_int_equal(sb_price_of_item(price(-1234565, SB_PER_EACH), size, 2).milli, -123457);
}

static void units_that_do_not_fit(void **state) {
    sb_run *run = *state;
    sb_item_size size = board(run, "50 mm", "200 mm", "4 m"), bare = {.length = SB_MM(4000)};
    static const sb_per liquid[] = {SB_PER_L, SB_PER_GAL, SB_PER_KG, SB_PER_LB};
    for (size_t i = 0; i < 4; i++)
        assert_true(sb_price_of_item(price(1000000, liquid[i]), size, 2).milli == SB_BAD);
    assert_true(sb_price_of_item(price(1000000, SB_PER_M2), bare, 2).milli == SB_BAD);
    assert_true(sb_price_of_item(price(1000000, SB_PER_BF), bare, 2).milli == SB_BAD);
    assert_int_equal(sb_price_of_item(price(1000000, SB_PER_M), bare, 2).milli, 400000);
    assert_true(
        sb_price_of_item(price(INT64_MAX, SB_PER_M3), board(run, "1000 m", "1000 m", "1000 m"), 3).milli ==
        SB_BAD);
    size.length.nm = SB_BAD;
    assert_true(sb_price_of_item(price(1000000, SB_PER_M), size, 2).milli == SB_BAD);
}

__extension__ typedef unsigned __int128 wide;

/* Whole cubic sizes against 128-bit arithmetic, with sizes in um so that the product fits there. */
static void volumes_are_exact(void **state) {
    (void)state;
    dice d = {1959};
    for (int i = 0; i < 20000; i++) {
        uint64_t t = roll(&d, 200000) + 1, w = roll(&d, 2000000) + 1, l = roll(&d, 8000000) + 1;
        uint64_t micro = roll(&d, 3000000000);
        sb_item_size size = {
            .length = {(int64_t)l * 1000}, .width = {(int64_t)w * 1000}, .thickness = {(int64_t)t * 1000}};
        wide product = (wide)t * w * l * micro,
             unit = (wide)1000000000000000000 * 10; /* 10^18 um3, and 10^6 / 10^5 */
        wide expected = (2 * product + unit) / (2 * unit);
        assert_int_equal(sb_price_of_item(price((int64_t)micro, SB_PER_M3), size, 2).milli,
                         (int64_t)expected);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(margin_and_markup),
        cmocka_unit_test(impossible_margins),
        cmocka_unit_test(margin_and_markup_agree),
        cmocka_unit_test(half_a_penny),
        cmocka_unit_test(tax_of_example_invoices),
        cmocka_unit_test(lines_and_totals_differ),
        cmocka_unit_test(price_points),
        cmocka_unit_test(decimals_of_currencies),
        cmocka_unit_test(words_for_per),
        AT_THE_BENCH(board_feet),
        AT_THE_BENCH(joists),
        cmocka_unit_test(cubic_metre_in_board_feet),
        AT_THE_BENCH(one_board_priced_every_way),
        AT_THE_BENCH(nominal_sizes_price_board_feet),
        AT_THE_BENCH(decimals_follow_the_currency),
        AT_THE_BENCH(units_that_do_not_fit),
        cmocka_unit_test(volumes_are_exact),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
