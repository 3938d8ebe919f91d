/* What the cost may come to: single terms and sums of them against the formulas, by hand, and the same figures every time. */
#include "made.h"

#include <math.h>
#include <stdlib.h>

enum {
    DRAWS = 20000
};

/* A worker at a cent a second of 3600 an hour, an operation told as a range of seconds, done once for a piece. */
static sb_operation *add_range(made *m, const char *id, int64_t least, int64_t likely, int64_t most) {
    sb_operation *operation = (sb_operation *)made_operation(m, id, id, SB_BY_EACH, likely * 1000);
    operation->ranged = true;
    operation->least.ms = least * 1000, operation->most.ms = most * 1000;
    return operation;
}

static made *one_range(int64_t least, int64_t likely, int64_t most) {
    made *m = made_new(3600);
    made_work(m, made_piece(m, "Stool", 1), add_range(m, "guess", least, likely, most), 1000, "Guess");
    return m;
}

typedef struct spread {
    double mean, variance;
} spread;

static spread spread_of(made *m) {
    const sb_money *costs = sb_risk_costs(&m->run, made_estimate(m), DRAWS);
    double sum = 0, squares = 0;
    for (int i = 0; i < DRAWS; i++) {
        sum += (double)costs[i].minor;
        squares += (double)costs[i].minor * (double)costs[i].minor;
    }
    double mean = sum / DRAWS;
    return (spread){mean, squares / DRAWS - mean * mean};
}

/* Within five standard deviations of what so many draws give. */
static void assert_spread(spread found, double mean, double variance) {
    if (fabs(found.mean - mean) > 5 * sqrt(variance / DRAWS) || fabs(found.variance / variance - 1) > 0.06)
        fail_msg("mean %f, variance %f; expected %f, %f", found.mean, found.variance, mean, variance);
}

static void a_single_term(void **state) {
    (void)state;
    static const int64_t ranges[][3] = {
        {20000, 40000, 90000}, {0, 0, 50000}, {10000, 50000, 50000}, {100, 30000, 60000}};
    for (size_t i = 0; i < 4; i++) {
        const int64_t *r = ranges[i];
        made *m = one_range(r[0], r[1], r[2]);
        assert_spread(spread_of(m), sb_three_point_mean(r[0], r[1], r[2]),
                      sb_three_point_variance(r[0], r[1], r[2]));
        made_free(m);
    }
}

/* Work, a price and the amount a recipe guesses at: independent, so that means and variances add up. */
static void a_sum_of_independent_terms(void **state) {
    (void)state;
    made *m = one_range(20000, 40000, 90000);
    sb_stock *larch = made_stock(m, "larch", "Larch", SB_STOCK_FIXING);
    made_offer(m, larch, 0, 1, 30000000);
    larch->offers.items[0].ranged = true;
    larch->offers.items[0].least.milli = 25000000, larch->offers.items[0].most.milli = 50000000;
    made_usage(m, 0, larch, 1);
    made_order(m, larch, 1, 1);
    const sb_operation *fit = made_operation(m, "fit", "Fit", SB_BY_EACH, 1000);
    sb_work work = {.operation = fit, .quantity_milli = 50000000, .text = "Fit", .ranged = true};
    work.least_milli = 30000000, work.most_milli = 80000000;
    SB_PUSH(m->run.pool, m->takeoff.works, work);
    double mean = sb_three_point_mean(20000, 40000, 90000) + sb_three_point_mean(25000, 30000, 50000) +
                  sb_three_point_mean(30000, 50000, 80000);
    double variance = sb_three_point_variance(20000, 40000, 90000) +
                      sb_three_point_variance(25000, 30000, 50000) +
                      sb_three_point_variance(30000, 50000, 80000);
    assert_int_equal(sb_risk_of(&m->run, made_estimate(m))->sources, 3);
    assert_spread(spread_of(m), mean, variance);
    made_free(m);
}

/* An amount and a time, both guessed: E(ab) = E(a) E(b), Var(ab) = (Va + Ea^2)(Vb + Eb^2) - (Ea Eb)^2. */
static void a_product_of_two_guesses(void **state) {
    (void)state;
    made *m = made_new(3600);
    sb_work work = {.piece = made_piece(m, "Stool", 1), .operation = add_range(m, "guess", 50, 100, 250)};
    work.quantity_milli = 400000, work.least_milli = 300000, work.most_milli = 900000;
    work.ranged = true, work.text = "Guess";
    SB_PUSH(m->run.pool, m->takeoff.works, work);
    double ea = sb_three_point_mean(300, 400, 900), va = sb_three_point_variance(300, 400, 900);
    double eb = sb_three_point_mean(50, 100, 250), vb = sb_three_point_variance(50, 100, 250);
    assert_spread(spread_of(m), ea * eb, (va + ea * ea) * (vb + eb * eb) - ea * ea * eb * eb);
    made_free(m);
}

/* The same operation in two pieces, the same recipe line in two: one guess each, so that the ranges add up and not the variances. */
static void what_is_one_guess_is_drawn_once(void **state) {
    (void)state;
    made *m = one_range(20000, 40000, 90000);
    made_work(m, made_piece(m, "Bench", 1), &m->shop.operations.items[0], 2000, "Guess");
    assert_spread(spread_of(m), 3 * sb_three_point_mean(20000, 40000, 90000),
                  9 * sb_three_point_variance(20000, 40000, 90000));
    made_free(m);
    m = made_new(3600);
    const sb_operation *fit = made_operation(m, "fit", "Fit", SB_BY_EACH, 1000);
    sb_work work = {.operation = fit, .quantity_milli = 40000000, .text = "Fit", .ranged = true};
    work.least_milli = 20000000, work.most_milli = 90000000;
    for (work.piece = 0; work.piece < 2; work.piece++) {
        made_piece(m, "Stool", 1);
        SB_PUSH(m->run.pool, m->takeoff.works, work);
    }
    assert_int_equal(sb_risk_of(&m->run, made_estimate(m))->inputs.count, 2);
    assert_spread(spread_of(m), 2 * sb_three_point_mean(20000, 40000, 90000),
                  4 * sb_three_point_variance(20000, 40000, 90000));
    made_free(m);
}

/* Overhead goes with the hours, or with what they cost; learning lessens both. */
static void overhead_and_learning_go_with_it(void **state) {
    (void)state;
    made *m = one_range(20000, 40000, 90000);
    m->shop.settings.overhead_hour.minor = 1800;
    double mean = sb_three_point_mean(20000, 40000, 90000),
           variance = sb_three_point_variance(20000, 40000, 90000);
    assert_spread(spread_of(m), 1.5 * mean, 2.25 * variance);
    m->shop.settings.overhead_hour.minor = 0;
    m->shop.settings.overhead_labour.ppm = 1000000;
    assert_spread(spread_of(m), 2 * mean, 4 * variance);
    m->shop.operations.items[0].learning.ppm = 500000;
    m->takeoff.pieces.items[0].count = 2;
    assert_spread(spread_of(m), mean, variance);
    made_free(m);
}

/* ---- what is told ------------------------------------------------------------------------------------------------------ */

/* From 0, likely 0, to 1000.00: alpha 1, beta 5, so that a share q of all cases stays under 1 - (1 - q)^(1/5) of it. */
static void shares_of_cases_by_the_formula(void **state) {
    (void)state;
    made *m = one_range(0, 0, 100000);
    const sb_risk *risk = sb_risk_of(&m->run, made_estimate(m));
    const struct {
        double share;
        sb_money cost;
    } rows[] = {{0.1, risk->cost10}, {0.5, risk->cost50}, {0.8, risk->cost80}, {0.9, risk->cost90}};
    for (size_t i = 0; i < 4; i++) {
        double q = rows[i].share, x = 1 - pow(1 - q, 0.2), density = 5 * pow(1 - x, 4);
        double deviation = sqrt(q * (1 - q) / DRAWS) / density;
        assert_true(fabs((double)rows[i].cost.minor / 100000 - x) < 4 * deviation);
    }
    assert_int_equal(risk->price.minor, risk->cost90.minor); /* without a word of shop or job: 90 % */
    assert_int_equal(risk->confidence.ppm, 900000);
    m->shop.settings.confidence.ppm = 500000;
    m->job.delivery = (sb_job_amount){.micro = 10000000, .given = true};
    assert_int_equal(sb_risk_of(&m->run, made_estimate(m))->price.minor, risk->cost50.minor + 1000);
    m->job.confidence = (sb_job_share){.share = {800000}, .given = true};
    assert_int_equal(sb_risk_of(&m->run, made_estimate(m))->price.minor, risk->cost80.minor + 1000);
    made_free(m);
}

static sb_share losing_at(made *m, int64_t markup_ppm) {
    m->shop.settings.method = SB_MARKUP_ON_COST;
    m->shop.settings.margin.ppm = markup_ppm;
    return sb_risk_of(&m->run, made_estimate(m))->loses;
}

/* Sold at the likely cost 400.00 out of 200.00 to 600.00, half of all cases lose; at the most, none; at the least, all. */
static void the_chance_of_losing_money(void **state) {
    (void)state;
    made *m = one_range(20000, 40000, 60000);
    assert_true(labs((long)losing_at(m, 0).ppm - 500000) <
                5 * 3536); /* a deviation is 0.5 / root of 20 000 */
    assert_int_equal(losing_at(m, 500000).ppm, 0);
    m->job.discount = (sb_job_share){.share = {500000}, .given = true};
    assert_int_equal(losing_at(m, 0).ppm, 1000000);
    made_free(m);
}

static void what_each_range_does_alone(void **state) {
    (void)state;
    made *m = one_range(20000, 40000, 90000);
    const sb_risk *risk = sb_risk_of(&m->run, made_estimate(m));
    assert_int_equal(risk->inputs.count, 1);
    assert_int_equal(risk->inputs.items[0].low.minor, -20000);
    assert_int_equal(risk->inputs.items[0].high.minor, 50000);
    m->shop.operations.items[0].ranged = false;
    assert_null(sb_risk_of(&m->run, made_estimate(m)));
    assert_int_equal(sb_risk_costs(&m->run, made_estimate(m), 5)[4].minor,
                     40000); /* what is sure stays as it is */
    made_free(m);
}

/* Once and for all: on another machine, with another compiler, these very cents. */
static void the_same_figures_everywhere(void **state) {
    (void)state;
    made *m = one_range(20000, 41234, 90000);
    const sb_risk *risk = sb_risk_of(&m->run, made_estimate(m));
    const sb_money *costs = sb_risk_costs(&m->run, made_estimate(m), 3);
    const int64_t found[] = {costs[0].minor,     costs[1].minor,     costs[2].minor,     risk->cost10.minor,
                             risk->cost50.minor, risk->cost80.minor, risk->cost90.minor, risk->mean.minor};
    static const int64_t wanted[] = {52576, 45476, 47439, 29661, 44689, 57194, 63311, 45708};
    for (size_t i = 0; i < 8; i++)
        assert_int_equal(found[i], wanted[i]);
    made_free(m);
}

/* ---- any job -------------------------------------------------------------------------------------------------------- */

static made *ranged_by_chance(chance *c) {
    made *m = made_by_chance(c);
    for (size_t i = 0; i < m->shop.operations.count; i++) {
        sb_operation *operation = &m->shop.operations.items[i];
        operation->least.ms = operation->time.ms * chance_from(c, 5, 10) / 10;
        operation->most.ms = operation->time.ms * chance_from(c, 10, 25) / 10;
        operation->ranged = operation->least.ms < operation->most.ms;
    }
    for (size_t i = 0; i < m->shop.stock.count; i++) {
        sb_offer *offer = &m->shop.stock.items[i]->offers.items[0];
        offer->least.milli = offer->each.milli * chance_from(c, 7, 10) / 10;
        offer->most.milli = offer->each.milli * chance_from(c, 10, 15) / 10;
        offer->ranged = offer->least.milli < offer->most.milli;
    }
    return m;
}

static void any_job(void **state) {
    (void)state;
    chance c = {606};
    for (int round = 0; round < 60; round++) {
        made *m = ranged_by_chance(&c);
        const sb_estimate *e = made_estimate(m);
        const sb_risk *risk = sb_risk_of(&m->run, e);
        int64_t low = e->cost.minor, high = e->cost.minor;
        for (size_t i = 0; risk && i < risk->inputs.count; i++) {
            assert_true(risk->inputs.items[i].low.minor <= 0 && risk->inputs.items[i].high.minor >= 0);
            low += risk->inputs.items[i].low.minor - 1;
            high += risk->inputs.items[i].high.minor + 1;
        }
        if (risk) {
            assert_true(low <= risk->cost10.minor && risk->cost10.minor <= risk->cost50.minor);
            assert_true(risk->cost50.minor <= risk->cost80.minor && risk->cost80.minor <= risk->cost90.minor);
            assert_true(risk->cost90.minor <= high && risk->mean.minor > low && risk->mean.minor < high);
            assert_true(risk->loses.ppm >= 0 && risk->loses.ppm <= 1000000);
            assert_true((e->net.minor >= risk->price.minor) ==
                        (risk->loses.ppm <= 1000000 - risk->confidence.ppm));
        }
        made_free(m);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_single_term),
        cmocka_unit_test(a_sum_of_independent_terms),
        cmocka_unit_test(a_product_of_two_guesses),
        cmocka_unit_test(what_is_one_guess_is_drawn_once),
        cmocka_unit_test(overhead_and_learning_go_with_it),
        cmocka_unit_test(shares_of_cases_by_the_formula),
        cmocka_unit_test(the_chance_of_losing_money),
        cmocka_unit_test(what_each_range_does_alone),
        cmocka_unit_test(the_same_figures_everywhere),
        cmocka_unit_test(any_job),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
