/* Tax and rounding against published examples. */
#include "made.h"

static int64_t tax_of(int64_t net, int64_t ppm) {
    return sb_tax_of((sb_money){net}, (sb_share){ppm}).minor;
}

static int64_t inside(int64_t gross, int64_t ppm) {
    return sb_tax_inside((sb_money){gross}, (sb_share){ppm}).minor;
}

/* EN 16931, the official UBL example 1: taxable 183.23 at 6 % and 46.37 at 21 %. BR-CO-17: tax of a category is taxable x rate,
 * rounded to two decimals. */
static void en_16931_example_1(void **state) {
    (void)state;
    assert_int_equal(tax_of(18323, 60000), 1099);
    assert_int_equal(tax_of(4637, 210000), 974);
    assert_int_equal(tax_of(18323, 60000) + tax_of(4637, 210000), 2073);
    assert_int_equal(18323 + 4637 + 2073, 25033);
}

/* EN 16931, example 3: lines 800 at 25 % and 800 at 10 %, a charge of 100 at 25 %. */
static void en_16931_example_3(void **state) {
    (void)state;
    assert_int_equal(tax_of(80000 + 10000, 250000), 22500);
    assert_int_equal(tax_of(80000, 100000), 8000);
}

/* EN 16931, example 5: 1000 and 500 at 25 %, 2500 at 12 %, an allowance and a charge of 150 at 25 %. */
static void en_16931_example_5(void **state) {
    (void)state;
    assert_int_equal(tax_of(100000 + 50000 - 15000 + 15000, 250000) + tax_of(250000, 120000), 67500);
}

/* HMRC manual VATREC12030: under half a penny down, half a penny or more up. 20 % of 0.02 is 0.4 p, 5 % of 0.10 is 0.5 p. */
static void half_a_penny(void **state) {
    (void)state;
    assert_int_equal(tax_of(2, 200000), 0);
    assert_int_equal(tax_of(10, 50000), 1);
    assert_int_equal(tax_of(-10, 50000), -1);
    assert_int_equal(sb_cost_money((sb_cost){400}).minor, 0);
    assert_int_equal(sb_cost_money((sb_cost){500}).minor, 1);
}

/* Tax calculation rounding rules (Microsoft Learn, general accounting documentation): 987.345 to the nearest step. */
static void steps_of_rounding(void **state) {
    (void)state;
    const struct {
        int64_t step, rounded; /* thousandths */
    } rows[] = {{10, 987350}, {100, 987300}, {1000, 987000}, {10000, 990000}, {50, 987350}, {250, 987250}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        assert_int_equal(sb_mul_div(987345, 1, rows[i].step) * rows[i].step, rows[i].rounded);
    assert_int_equal(sb_cost_money((sb_cost){98734500}).minor, 98735);
}

/* Cash rounding to 0.05, which currencyData.json of Unicode CLDR 48 has for CHF and CAD: 20.42 to 20.40, 20.43 to 20.45 (an encyclopaedia's article
 * on Swedish rounding); 51 and 52 cents to 50, 53 and 54 to 55 (bestmaths.net, year 8). It is to the nearest; a price point is one to go up to. */
static void cash_goes_to_the_nearest_and_prices_go_up(void **state) {
    (void)state;
    const struct {
        int64_t cents, cash, price;
    } rows[] = {{2042, 2040, 2045}, {2043, 2045, 2045}, {51, 50, 55}, {52, 50, 55},
                {53, 55, 55},       {54, 55, 55},       {55, 55, 55}};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        assert_int_equal(sb_mul_div(rows[i].cents, 1, 5) * 5, rows[i].cash);
        assert_int_equal(
            sb_unit_price((sb_money){rows[i].cents}, 1, (sb_share){0}, (sb_money){5}, (sb_money){0}).minor,
            rows[i].price);
    }
}

static void tax_inside_a_gross_price(void **state) {
    (void)state;
    assert_int_equal(inside(12000, 200000),
                     2000); /* 120 at 20 % holds 20: HMRC's fraction of one sixth, from memory */
    assert_int_equal(inside(11900, 190000), 1900);
    assert_int_equal(inside(0, 200000), 0);
    assert_int_equal(inside(1, 0), 0);
}

/* Tax on a net amount, then taken out of the gross again, gives the net back. */
static void in_and_out_again(void **state) {
    (void)state;
    chance c = {7};
    for (int round = 0; round < 5000; round++) {
        int64_t net = chance_from(&c, 0, 10000000), ppm = chance_from(&c, 0, 300) * 1000;
        int64_t gross = net + tax_of(net, ppm);
        assert_int_equal(gross - inside(gross, ppm), net);
    }
}

static void price_points(void **state) {
    (void)state;
    assert_int_equal(sb_unit_price((sb_money){10000}, 3, (sb_share){0}, (sb_money){0}, (sb_money){0}).minor,
                     3334);
    assert_int_equal(sb_unit_price((sb_money){10000}, 4, (sb_share){0}, (sb_money){0}, (sb_money){0}).minor,
                     2500);
    assert_int_equal(sb_unit_price((sb_money){10000}, 3, (sb_share){0}, (sb_money){500}, (sb_money){0}).minor,
                     3500);
    assert_int_equal(
        sb_unit_price((sb_money){10000}, 1, (sb_share){200000}, (sb_money){500}, (sb_money){0}).minor, 12000);
    assert_int_equal(
        sb_unit_price((sb_money){10001}, 1, (sb_share){200000}, (sb_money){500}, (sb_money){0}).minor, 12500);
    assert_int_equal(
        sb_unit_price((sb_money){0}, 3, (sb_share){200000}, (sb_money){100}, (sb_money){5}).minor, 0);
    assert_int_equal(
        sb_unit_price((sb_money){INT64_MAX}, 1, (sb_share){200000}, (sb_money){1}, (sb_money){0}).minor,
        SB_BAD);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(en_16931_example_1),
        cmocka_unit_test(en_16931_example_3),
        cmocka_unit_test(en_16931_example_5),
        cmocka_unit_test(half_a_penny),
        cmocka_unit_test(steps_of_rounding),
        cmocka_unit_test(cash_goes_to_the_nearest_and_prices_go_up),
        cmocka_unit_test(tax_inside_a_gross_price),
        cmocka_unit_test(in_and_out_again),
        cmocka_unit_test(price_points),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
