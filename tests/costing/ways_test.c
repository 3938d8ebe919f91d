/* A job's options from recipe to money, with the shop, recipes and jobs of the checkout. */
#include "made.h"

typedef struct worked {
    sb_run run;
    sb_shop *shop;
    const sb_job *job;
    const sb_ways *ways;
} worked;

/* Below the folder that holds this file's tests/. */
static const char *home(sb_run *run, const char *name) {
    const char *file = __FILE__, *tests = strstr(file, "tests/costing/");
    const char *here = tests && tests != file ? sb_pool_copy(run->pool, file, (size_t)(tests - file)) : "";
    return sb_pool_print(run->pool, "%s%s", here, name);
}

static worked work(const char *text, const char *path, const sb_tune *tune) {
    worked w = {.run = sb_run_new()};
    w.shop = sb_shop_read(&w.run, home(&w.run, "rates"));
    sb_recipe_book *book = sb_recipe_book_open(&w.run, home(&w.run, "templates"), false);
    w.job = text ? sb_job_of(&w.run, sb_source_of(&w.run, "test.job", text), false)
                 : sb_job_read(&w.run, home(&w.run, path), false);
    w.ways = sb_ways_of(&w.run, w.shop, book, w.job, tune);
    return w;
}

static void must_work(worked *w) {
    if (!w->ways)
        fail_msg("%s", sb_notices_text(&w->run, SB_NOTE, false));
}

/* What is bought and taken from the rack is what is charged; what the plan counts is what is paid for. */
static void check_way(const worked *w, const sb_way *way) {
    const sb_estimate *e = way->estimate;
    int64_t ordered = 0, boards = 0;
    for (size_t i = 0; i < way->order->lines.count; i++)
        ordered += way->order->lines.items[i].amount.minor;
    for (size_t i = 0; i < e->labour.count; i++)
        if (e->labour.items[i].operation->driver == SB_BY_BOARD)
            boards += e->labour.items[i].quantity_milli;
    if (w->shop->settings.charge == SB_CHARGE_BOUGHT && w->job->extras.count == 0)
        assert_int_equal(e->material_total.minor, ordered);
    assert_int_equal(boards, way->plan->counts.boards * 1000);
    assert_true(e->net.minor >= e->floor.minor);
    assert_true(e->waste.ppm > 0 && e->waste.ppm < 600000);
    assert_true(e->mass.mg > 0);
}

static void the_samples_work(void **state) {
    (void)state;
    worked w = work(NULL, "samples/harbour-planters.job", NULL);
    must_work(&w);
    assert_int_equal(w.ways->list.count, 2);
    for (size_t i = 0; i < 2; i++) {
        check_way(&w, &w.ways->list.items[i]);
        assert_ptr_equal(w.ways->list.items[i].option, &w.job->options.items[i]);
    }
    assert_int_not_equal(w.ways->list.items[0].estimate->gross.minor,
                         w.ways->list.items[1].estimate->gross.minor);
    sb_run_free(&w.run);
}

#define GATE                                                                                                 \
    "job gate\ndate 2026-03-12\ncustomer A. Lender\npiece gate\n  recipe ledged-gate\n  count %d\n  set "    \
    "wide 950 mm\n"

static int64_t unit_for(int count) {
    sb_run run = sb_run_new();
    worked w = work(sb_pool_print(run.pool, GATE, count), NULL, NULL);
    must_work(&w);
    assert_null(w.ways->list.items[0].option);
    int64_t unit = w.ways->list.items[0].estimate->pieces.items[0].unit.minor;
    sb_run_free(&w.run);
    sb_run_free(&run);
    return unit;
}

/* Setting-up is paid once for the batch: common practice, no source. */
static void a_batch_is_cheaper_by_the_piece(void **state) {
    (void)state;
    int64_t one = unit_for(1), five = unit_for(5), twenty = unit_for(20);
    assert_true(five < one);
    assert_true(twenty <= five);
}

/* Nothing for handling and leftovers in the plan; the labour of cutting stays in the price. */
static void search_limits_reach_the_planner(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const sb_tune tune = {.seconds = 20, .material_only = true};
    worked w = work(sb_pool_print(run.pool, GATE, 3), NULL, &tune);
    must_work(&w);
    const sb_plan *plan = w.ways->list.items[0].plan;
    assert_int_equal(plan->handling.milli, 0);
    assert_int_equal(plan->leftovers.milli, 0);
    assert_true(plan->problem->rules.material_only);
    check_way(&w, &w.ways->list.items[0]);
    sb_run_free(&w.run);
    sb_run_free(&run);
}

static void every_option_tells_its_errors(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const char *text = sb_pool_print(
        run.pool, GATE "option high : High\n  set gate.high 9 m\noption wide : Wide\n  set gate.wide 9 m\n",
        1);
    worked w = work(text, NULL, NULL);
    assert_null(w.ways);
    const char *told = sb_notices_text(&w.run, SB_ERROR, false);
    assert_non_null(strstr(told, "in option high"));
    assert_non_null(strstr(told, "in option wide"));
    sb_run_free(&w.run);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_samples_work),
        cmocka_unit_test(a_batch_is_cheaper_by_the_piece),
        cmocka_unit_test(search_limits_reach_the_planner),
        cmocka_unit_test(every_option_tells_its_errors),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
