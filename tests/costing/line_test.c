/* Lines of material and labour, and what a person should look at. */
#include "made.h"

#define MONEY(figure, minor_units) assert_int_equal((figure).minor, minor_units)

/* ---- what is charged ------------------------------------------------------------------------------------------------ */

/* Two boards of 4 m at 20.00, each with 1 m left; a tin of 2.5 l at 25.00, of which 0.7 l is used. */
static made *with_leftovers(sb_material_policy charge) {
    made *m = made_new(0);
    m->shop.settings.charge = charge;
    m->shop.settings.leftover_value.ppm = 500000;
    sb_stock *larch = made_stock(m, "larch-20x95", "Larch 20 x 95", SB_STOCK_BOARD);
    sb_stock *oil = made_stock(m, "oil-clear", "Clear oil", SB_STOCK_FINISH);
    made_offer(m, larch, 4000, 1, 2000000);
    larch->offers.items[0].price = (sb_price){20000000, SB_PER_EACH};
    made_offer(m, oil, 0, 2500, 2500000);
    size_t bench = made_piece(m, "Bench", 1);
    made_part(m, bench, larch, 6, 990);
    made_usage(m, bench, oil, 700);
    made_boards(m, larch, 2, 1000);
    made_order(m, larch, 2, 2);
    made_order(m, oil, 1, 700);
    return m;
}

static void charged_as_bought(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    MONEY(made_estimate(m)->material_total, 4000 + 2500);
    made_free(m);
}

/* "Charge whole boards and sheets, credit back the usable surplus": furnituremaking.us, timber calculations. A quarter of each
 * board is left, worth half of what it costs new. */
static void charged_less_leftovers(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT_LESS_LEFTOVERS);
    const sb_estimate *e = made_estimate(m);
    MONEY(e->material_total, 4000 + 2500 - 500);
    const sb_material_line *credit = &e->materials.items[e->materials.count - 1];
    assert_int_equal(credit->group, SB_MATERIAL_CREDIT);
    MONEY(credit->amount, -500);
    assert_non_null(strstr(credit->what, "2.00 m in all"));
    made_free(m);
}

static void charged_as_used(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_USED);
    const sb_estimate *e = made_estimate(m);
    assert_int_equal(e->materials.items[0].quantity_milli, 1500);
    MONEY(e->material_total, 3000 + 700);
    made_free(m);
}

/* Six parts of 990 x 95 x 20 mm out of 6 m that are not left over: 1 - 5.94 / 6 is in no part. */
static void waste_of_what_is_used_up(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    sb_stock_total total = {.stock = m->shop.stock.items[0]};
    total.net_volume.nl = INT64_C(5940) * 95 * 20 * 1000;
    SB_PUSH(m->run.pool, m->takeoff.totals, total);
    assert_int_equal(made_estimate(m)->waste.ppm, 10000);
    made_free(m);
}

/* The same 6 m with a spare of 500 mm on both boards: 1 m of spare, 4.95 m in parts, 50 mm of waste. */
static void spare_is_no_waste(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    sb_stock_total total = {.stock = m->shop.stock.items[0]};
    total.net_volume.nl = INT64_C(4950) * 95 * 20 * 1000;
    SB_PUSH(m->run.pool, m->takeoff.totals, total);
    SB_PUSH(m->run.pool, m->cutlist.problem.needs,
            ((sb_need){.length = SB_MM(500), .count = 2, .spare = true}));
    SB_PUSH(m->run.pool, m->plan.boards.items[0].parts, ((sb_placed){.need = 0}));
    const sb_estimate *e = made_estimate(m);
    assert_int_equal(e->waste.ppm, 8333);
    assert_int_equal(e->spare.ppm, 166667);
    made_free(m);
}

/* ---- labour ------------------------------------------------------------------------------------------------------------- */

static void work_alike_is_one_line(void **state) {
    (void)state;
    made *m = made_new(3000);
    const sb_operation *sand = made_operation(m, "sand", "Sand", SB_BY_SQUARE_METRE, 20 * 60000);
    const sb_operation *office = made_operation(m, "office", "Office", SB_BY_BATCH, 40 * 60000);
    size_t one = made_piece(m, "Bench", 1), two = made_piece(m, "Table", 1);
    made_work(m, SB_BATCH, office, 1000, "Office");
    made_work(m, one, sand, 1500, "Sand");
    made_work(m, two, sand, 4500, "Sand");
    made_work(m, two, sand, 1000, "the top once more");
    const sb_estimate *e = made_estimate(m);
    assert_int_equal(e->labour.count, 3); /* batch last */
    assert_int_equal(e->labour.items[0].quantity_milli, 6000);
    MONEY(e->labour.items[0].amount, 6000);
    MONEY(e->labour.items[2].amount, 2000);
    assert_true(e->labour.items[2].batch);
    MONEY(e->pieces.items[0].labour, 1500 + 429); /* 30 of 140 min carry 4.29 of the office's 20.00 */
    MONEY(e->pieces.items[1].labour, 4500 + 1000 + 1571);
    made_free(m);
}

/* 19 ms at 36.00 an hour are 0.019 cent: an amount of many such is rounded once, at its end. */
static void time_is_not_rounded_in_between(void **state) {
    (void)state;
    made *m = made_new(3600);
    const sb_operation *peg = made_operation(m, "peg", "Peg", SB_BY_EACH, 19);
    made_work(m, made_piece(m, "Rail", 1), peg, 1234567, "Peg"); /* 1234.567 x 19 ms = 23.456773 s */
    const sb_estimate *e = made_estimate(m);
    MONEY(e->labour_total, 23);
    assert_int_equal(e->time.ms, 23457);
    made_free(m);
}

static void the_plan_brings_its_own_work(void **state) {
    (void)state;
    made *m = made_new(6000);
    made_operation(m, "saw", "Crosscut", SB_BY_CUT, 60000);
    made_operation(m, "rip", "Rip", SB_BY_RIP, 60000);
    made_piece(m, "Rail", 1);
    m->plan.counts.cuts = 12;
    m->plan.counts.ripped = SB_MM(2500);
    m->plan.counts.stops = 3; /* no operation for it: costs nothing */
    const sb_estimate *e = made_estimate(m);
    assert_int_equal(e->labour.count, 2);
    assert_true(e->labour.items[0].from_plan);
    MONEY(e->labour_total, 1200 + 250);
    made_free(m);
}

/* ---- shares -------------------------------------------------------------------------------------------------------------- */

/* The bench takes 4 m of boards and 30 screws, the stool 2 m and 10; the bench works twice as long, so it carries two thirds of
 * the oil for the batch. Of ten cuts, eight are for the bench's parts. */
static void each_kind_carries_what_it_causes(void **state) {
    (void)state;
    made *m = made_new(6000);
    sb_stock *larch = made_stock(m, "larch-20x95", "Larch 20 x 95", SB_STOCK_BOARD);
    sb_stock *screw = made_stock(m, "screw-5x60", "Screw 5 x 60", SB_STOCK_FIXING);
    sb_stock *oil = made_stock(m, "oil-clear", "Clear oil", SB_STOCK_FINISH);
    made_offer(m, larch, 3000, 1, 3000000);
    made_offer(m, screw, 0, 100, 800000);
    made_offer(m, oil, 0, 1000, 1200000);
    const sb_operation *assemble = made_operation(m, "assemble", "Assemble", SB_BY_PIECE, 60000);
    size_t bench = made_piece(m, "Bench", 1), stool = made_piece(m, "Stool", 1);
    made_part(m, bench, larch, 8, 500);
    made_part(m, stool, larch, 2, 1000);
    made_usage(m, bench, screw, 30);
    made_usage(m, stool, screw, 10);
    made_usage(m, SB_BATCH, oil, 300);
    made_work(m, bench, assemble, 20000, "Assemble");
    made_work(m, stool, assemble, 10000, "Assemble");
    made_boards(m, larch, 2, 0);
    made_order(m, larch, 2, 2);
    made_order(m, screw, 1, 40);
    made_order(m, oil, 1, 300);
    const sb_estimate *e = made_estimate(m);
    MONEY(e->pieces.items[0].material, 4000 + 600 + 800);
    MONEY(e->pieces.items[1].material, 2000 + 200 + 400);
    made_operation(m, "saw", "Crosscut", SB_BY_CUT, 60000);
    m->plan.counts.cuts = 10;
    e = made_estimate(m);
    MONEY(e->pieces.items[0].labour, 2000 + 800);
    MONEY(e->pieces.items[1].labour, 1000 + 200);
    made_free(m);
}

/* ---- advice --------------------------------------------------------------------------------------------------------------- */

static void expect_advice(made *m, const char *words) {
    made_estimate(m);
    assert_int_equal(sb_status(&m->run), 3);
    assert_int_equal(sb_notices_count(&m->run, SB_NOTE), 1);
    if (!strstr(sb_notices_message(&m->run, 0), words))
        fail_msg("'%s' does not say '%s'", sb_notices_message(&m->run, 0), words);
    made_free(m);
}

static made *dated(int year, int month, int day) {
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    m->shop.settings.price_age_days = 90;
    for (size_t i = 0; i < m->shop.stock.count; i++)
        m->shop.stock.items[i]->offers.items[0].date = (sb_date){year, month, day};
    return m;
}

static void under_the_floor(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    m->shop.settings.margin.ppm = 100000;
    m->job.discount = (sb_job_share){.share = {200000}, .given = true};
    expect_advice(m, "under the floor of 65.00 EUR");
}

static void a_discount_into_the_contingency(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    m->shop.settings.contingency.ppm = 200000;
    m->job.discount = (sb_job_share){.share = {100000}, .given = true};
    expect_advice(m, "a discount of 10 % of the price leaves");
}

/* 90 days before 2 March 2026 is 2 December 2025. */
static void old_prices_and_prices_of_tomorrow(void **state) {
    (void)state;
    made *m = dated(2025, 12, 2);
    made_estimate(m);
    assert_int_equal(sb_status(&m->run), 0);
    made_free(m);
    expect_advice(dated(2025, 12, 1), "more than 90 days before");
    expect_advice(dated(2026, 3, 3), "after the job's date");
    expect_advice(dated(2025, 12, 1), "one price more");
    m = dated(2025, 12, 1);
    m->shop.settings.price_age_days = 0;
    made_estimate(m);
    assert_int_equal(sb_status(&m->run), 0);
    made_free(m);
}

static void out_of_range_is_an_error(void **state) {
    (void)state;
    made *m = with_leftovers(SB_CHARGE_BOUGHT);
    m->order.lines.items[0].count = INT64_MAX / 2;
    made_estimate(m);
    assert_int_equal(sb_status(&m->run), 1);
    assert_non_null(strstr(sb_notices_message(&m->run, 0), "out of range"));
    made_free(m);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(charged_as_bought),
        cmocka_unit_test(charged_less_leftovers),
        cmocka_unit_test(charged_as_used),
        cmocka_unit_test(waste_of_what_is_used_up),
        cmocka_unit_test(spare_is_no_waste),
        cmocka_unit_test(work_alike_is_one_line),
        cmocka_unit_test(time_is_not_rounded_in_between),
        cmocka_unit_test(the_plan_brings_its_own_work),
        cmocka_unit_test(each_kind_carries_what_it_causes),
        cmocka_unit_test(under_the_floor),
        cmocka_unit_test(a_discount_into_the_contingency),
        cmocka_unit_test(old_prices_and_prices_of_tomorrow),
        cmocka_unit_test(out_of_range_is_an_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
