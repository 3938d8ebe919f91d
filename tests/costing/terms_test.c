/* Several taxes, minimum, price points, delivery, payments: by hand and by the examples of EN 16931. */
#include "made.h"

#define MONEY(figure, minor_units) assert_int_equal((figure).minor, minor_units)

/* Pieces that cost, and are sold for, just these amounts, each with a tax of its own: by work alone, a unit of it for a cent. */
static made *sold_at(const int64_t *minor, const char *const *taxes, size_t count) {
    made *m = made_new(3600); /* a cent a second */
    const sb_operation *make = made_operation(m, "make", "Make", SB_BY_EACH, 1000);
    for (size_t i = 0; i < count; i++) {
        size_t piece = made_piece(m, "Stool", 1);
        sb_job_piece *source = SB_NEW(m->run.pool, sb_job_piece);
        *source = (sb_job_piece){.name = "stool", .count = 1, .tax = taxes ? taxes[i] : NULL};
        m->takeoff.pieces.items[piece].source = source;
        made_work(m, piece, make, minor[i] * 1000, "Make");
    }
    return m;
}

static void add_tax(made *m, const char *id, int64_t ppm) {
    SB_PUSH(m->run.pool, m->shop.settings.taxes, ((sb_tax){.id = id, .title = id, .rate = {ppm}}));
}

/* ---- several taxes --------------------------------------------------------------------------------------------------- */

/* EN 16931, official example 1: 183.23 at 6 % and 46.37 at 21 % are 10.99 and 9.74 of tax; net 229.60, gross 250.33. */
static void two_rates_on_the_total(void **state) {
    (void)state;
    static const int64_t sold[] = {10000, 8323, 4637};
    static const char *const taxes[] = {"six", "six", "full"};
    made *m = sold_at(sold, taxes, 3);
    add_tax(m, "six", 60000);
    add_tax(m, "full", 210000);
    const sb_estimate *e = made_estimate(m);
    assert_int_equal(e->taxes.count, 2);
    MONEY(e->taxes.items[0].base, 18323);
    MONEY(e->taxes.items[0].amount, 1099);
    MONEY(e->taxes.items[1].base, 4637);
    MONEY(e->taxes.items[1].amount, 974);
    MONEY(e->net, 22960);
    MONEY(e->gross, 25033);
    made_free(m);
}

/* Official example 3: lines of 800 at 25 % and 800 at 10 %, a charge of 100 at 25 %: tax 225 and 80, gross 2005. */
static void a_charge_has_a_rate_too(void **state) {
    (void)state;
    static const int64_t sold[] = {80000, 80000};
    static const char *const taxes[] = {"full", "ten"};
    made *m = sold_at(sold, taxes, 2);
    add_tax(m, "ten", 100000);
    add_tax(m, "full", 250000);
    m->job.delivery = (sb_job_amount){.micro = 100000000, .given = true};
    m->job.delivery_tax = "full";
    const sb_estimate *e = made_estimate(m);
    MONEY(e->taxes.items[0].amount, 22500);
    MONEY(e->taxes.items[1].amount, 8000);
    MONEY(e->net, 170000);
    MONEY(e->gross, 200500);
    made_free(m);
}

/* Official example 5: lines of 1000 and 500 at 25 %, 2500 at 12 % (an allowance and a charge of 150 cancel out): tax 675, gross 4675; half of
 * it paid, 2337.50 are due. */
static void what_is_due_after_a_payment(void **state) {
    (void)state;
    static const int64_t sold[] = {100000, 50000, 250000};
    static const char *const taxes[] = {"full", "full", "twelve"};
    made *m = sold_at(sold, taxes, 3);
    add_tax(m, "full", 250000);
    add_tax(m, "twelve", 120000);
    m->shop.settings.deposit.ppm = 500000;
    const sb_estimate *e = made_estimate(m);
    MONEY(e->tax, 67500);
    MONEY(e->gross, 467500);
    MONEY(e->deposit, 233750);
    MONEY(e->rest, 233750);
    made_free(m);
}

/* Three lines of 1.23 at 20 % and one of 1.00 at 10 %: by line 3 x 0.25 + 0.10; with prices that contain it, what lies inside. */
static void by_line_and_inside(void **state) {
    (void)state;
    static const int64_t sold[] = {123, 123, 123, 100};
    static const char *const taxes[] = {NULL, NULL, NULL, "ten"};
    made *m = sold_at(sold, taxes, 4);
    add_tax(m, "full", 200000);
    add_tax(m, "ten", 100000);
    m->shop.settings.tax_per_line = true;
    MONEY(made_estimate(m)->tax, 85);
    m->shop.settings.prices_gross = true;
    m->shop.settings.tax_per_line = false;
    const sb_estimate *e = made_estimate(m); /* lines 1.48 (1.476 up to the cent) and 1.10 */
    MONEY(e->gross, 444 + 110);
    MONEY(e->taxes.items[0].base, 370); /* 4.44 / 1.2 */
    MONEY(e->pieces.items[0].net, 123); /* 123.3; 246.7 - 123; 370 - 247 */
    MONEY(e->pieces.items[1].net, 124);
    MONEY(e->pieces.items[2].net, 123);
    made_free(m);
}

static void a_piece_with_a_tax_nobody_knows(void **state) {
    (void)state;
    static const int64_t sold[] = {100};
    static const char *const taxes[] = {"reduecd"};
    made *m = sold_at(sold, taxes, 1);
    add_tax(m, "full", 200000);
    add_tax(m, "reduced", 90000);
    made_estimate(m);
    assert_int_equal(sb_status(&m->run), 1);
    assert_non_null(strstr(sb_notices_message(&m->run, 0), "reduced"));
    made_free(m);
}

/* ---- points, minimum, delivery ------------------------------------------------------------------------------------------ */

static int64_t unit(int64_t minor, int64_t count, int64_t point, int64_t less) {
    return sb_unit_price((sb_money){minor}, count, (sb_share){0}, (sb_money){point}, (sb_money){less}).minor;
}

/* Up to 5, up to 9.95: common practice, no source. */
static void price_points(void **state) {
    (void)state;
    assert_int_equal(unit(4101, 1, 500, 0), 4500);
    assert_int_equal(unit(4500, 1, 500, 0), 4500);
    assert_int_equal(unit(4501, 1, 1000, 5), 4995);
    assert_int_equal(unit(4995, 1, 1000, 5), 4995);
    assert_int_equal(unit(4996, 1, 1000, 5), 5995);
    assert_int_equal(unit(9991, 2, 1000, 5), 5995); /* 49.955 each */
    assert_int_equal(unit(9990, 2, 1000, 5), 4995);
    assert_int_equal(unit(INT64_MAX, 1, 1000, 5), SB_BAD);
}

static void a_small_job_is_brought_to_the_minimum(void **state) {
    (void)state;
    static const int64_t sold[] = {4000, 3000};
    made *m = sold_at(sold, NULL, 2);
    add_tax(m, "full", 200000);
    m->shop.settings.minimum.minor = 12000;
    m->job.delivery = (sb_job_amount){.micro = 10000000, .given = true};
    const sb_estimate *e = made_estimate(m);
    MONEY(e->supplement, 5000);
    MONEY(e->pieces_net, 7000);
    MONEY(e->net, 13000); /* the minimum, and delivery */
    MONEY(e->left, 5000);
    assert_int_equal(e->margin_left.ppm, 416667);                       /* 50 of 120 */
    m->job.minimum = (sb_job_amount){.micro = 70000000, .given = true}; /* the job's goes before the shop's */
    MONEY(made_estimate(m)->supplement, 0);
    m->job.minimum.micro = 100000000;
    m->shop.settings.prices_gross = true; /* then the minimum is one of prices with tax: 84.00 lack 16.00 */
    e = made_estimate(m);
    MONEY(e->supplement_line, 1600);
    MONEY(e->supplement, 1333);
    MONEY(e->gross, 10000 + 1200);
    made_free(m);
}

static const sb_estimate *delivered(made *m, sb_job_delivery by, int64_t micro) {
    m->job.delivery = (sb_job_amount){.micro = micro, .given = true};
    m->job.delivery_by = by;
    return made_estimate(m);
}

static void delivery_by_zone_trip_and_distance(void **state) {
    (void)state;
    static const int64_t sold[] = {1000};
    made *m = sold_at(sold, NULL, 1);
    sb_settings *s = &m->shop.settings;
    SB_PUSH(m->run.pool, s->zones, ((sb_zone){.id = "town", .price = {4500}}));
    SB_PUSH(m->run.pool, s->zones, ((sb_zone){.id = "coast", .price = {9500}}));
    s->delivery_trip.minor = 6000, s->delivery_km.minor = 125;
    m->job.delivery_zone = "coast";
    MONEY(delivered(m, SB_DELIVERY_ZONE, 0)->delivery, 9500);
    MONEY(delivered(m, SB_DELIVERY_TRIPS, 2000000)->delivery, 12000);
    MONEY(delivered(m, SB_DELIVERY_KM, 34500000)->delivery, 4313); /* 43.125 */
    assert_int_equal(sb_status(&m->run), 0);
    delivered(m, SB_DELIVERY_MILES, 1000000); /* the shop has no price for one */
    assert_int_equal(sb_status(&m->run), 1);
    assert_non_null(strstr(sb_notices_message(&m->run, 0), "no price for a mile"));
    made_free(m);
    m = sold_at(sold, NULL, 1);
    SB_PUSH(m->run.pool, m->shop.settings.zones, ((sb_zone){.id = "town", .price = {4500}}));
    m->job.delivery_zone = "twon";
    delivered(m, SB_DELIVERY_ZONE, 0);
    assert_non_null(strstr(sb_notices_message(&m->run, 0), "town"));
    made_free(m);
}

/* ---- payments ------------------------------------------------------------------------------------------------------------ */

static made *paid_in(int64_t deposit, const int64_t *stages, size_t count) {
    static const int64_t sold[] = {10000};
    made *m = sold_at(sold, NULL, 1);
    m->shop.settings.deposit.ppm = deposit;
    for (size_t i = 0; i < count; i++)
        SB_PUSH(m->run.pool, m->shop.settings.stages, ((sb_stage_share){{stages[i]}, "then", {0}}));
    return m;
}

/* Thirds of 100.00: 33.33, 33.34, 33.33, and nothing is left; each alone would be 33.33. */
static void stages_add_up_to_the_cent(void **state) {
    (void)state;
    static const int64_t thirds[] = {333333, 333334};
    made *m = paid_in(333333, thirds, 2);
    const sb_estimate *e = made_estimate(m);
    MONEY(e->deposit, 3333);
    MONEY(e->stages.items[0].amount, 3334); /* 66.6666 - 33.33 */
    MONEY(e->stages.items[1].amount, 3333);
    MONEY(e->rest, 0);
    SB_PUSH(m->run.pool, m->job.stages, ((sb_job_stage){{500000}, "half-way", {0}}));
    e = made_estimate(m); /* the job's stages take the place of the shop's */
    assert_int_equal(e->stages.count, 1);
    MONEY(e->rest, 1667);
    made_free(m);
}

static void more_than_the_total_is_refused(void **state) {
    (void)state;
    static const int64_t much[] = {400000, 300000};
    made *m = paid_in(400000, much, 2);
    made_estimate(m);
    assert_int_equal(sb_status(&m->run), 1);
    assert_non_null(strstr(sb_notices_message(&m->run, 0), "more than 100 %"));
    made_free(m);
}

/* ---- learning ------------------------------------------------------------------------------------------------------------ */

/* USC thesis quoting Wright 1936: the factor is one of the average. Four pieces, the first 20 min, 90 %: 4 x 16.2 min. */
static void repeated_work_is_learnt(void **state) {
    (void)state;
    made *m = made_new(6000); /* 1.00 a minute */
    sb_operation *fit = (sb_operation *)made_operation(m, "fit", "Fit", SB_BY_PIECE, 20 * 60000);
    fit->learning.ppm = 900000;
    size_t bench = made_piece(m, "Bench", 4), stool = made_piece(m, "Stool", 1);
    made_work(m, bench, fit, 4000, "Fit");
    made_work(m, stool, fit, 1000, "Fit");
    made_work(m, SB_BATCH, fit, 1000, "Fit up the jig");
    const sb_estimate *e = made_estimate(m);
    assert_int_equal(e->labour.count, 3); /* each kind is learnt for itself, the batch not at all */
    MONEY(e->labour.items[0].amount, 6480);
    assert_int_equal(e->labour.items[0].learned.ppm, 810000);
    assert_int_equal(e->labour.items[0].repeated, 4);
    assert_string_equal(e->labour.items[0].text, "Bench"); /* or two lines would read alike */
    assert_string_equal(e->labour.items[1].text, "Stool");
    assert_string_equal(e->labour.items[2].text, "Fit up the jig");
    MONEY(e->labour.items[1].amount, 2000);
    MONEY(e->labour.items[2].amount, 2000);
    assert_int_equal(e->time.ms, (int64_t)(64.8 * 60000 + 0.5) + 40 * 60000);
    made_free(m);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_rates_on_the_total),
        cmocka_unit_test(a_charge_has_a_rate_too),
        cmocka_unit_test(what_is_due_after_a_payment),
        cmocka_unit_test(by_line_and_inside),
        cmocka_unit_test(a_piece_with_a_tax_nobody_knows),
        cmocka_unit_test(price_points),
        cmocka_unit_test(a_small_job_is_brought_to_the_minimum),
        cmocka_unit_test(delivery_by_zone_trip_and_distance),
        cmocka_unit_test(stages_add_up_to_the_cent),
        cmocka_unit_test(more_than_the_total_is_refused),
        cmocka_unit_test(repeated_work_is_learnt),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
