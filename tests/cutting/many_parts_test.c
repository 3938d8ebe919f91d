/* Tens of thousands of tiny parts from sheets: the search ends when it is told to, with a plan that makes them all. */
#include <time.h>

#include "problems.h"

#define PATIENCE 20 /* [s] of the processor; a search that looks at every leaf for every part takes minutes */

static int64_t parts_of(const sb_plan *plan) {
    int64_t parts = 0;
    for (size_t i = 0; i < plan->sheets.count; i++)
        parts += plan->sheets.items[i].count * (int64_t)plan->sheets.items[i].parts.count;
    return parts;
}

static void ply(sb_run *run, sb_problem *p) {
    start(run, p, 1);
    add_stock(run, p, "ply", true);
    add_supply(run, p, 2440, 1220, 5000);
}

static const sb_plan *plan_in_time(sb_run *run, const sb_problem *p) {
    clock_t before = clock();
    const sb_plan *plan = sb_plan_make(run, p);
    assert_true((double)(clock() - before) / CLOCKS_PER_SEC < PATIENCE);
    assert_non_null(plan);
    assert_true(sb_ok(run));
    assert_true(plan->short_of.count == 0);
    return plan;
}

static void one_kind_in_time(void **state) {
    (void)state;
    sb_run run;
    sb_problem p;
    ply(&run, &p);
    add_need(&run, &p, "chip", 5, 4, 90000)->grain = SB_CUT_FREE;
    const sb_plan *plan = plan_in_time(&run, &p);
    assert_int_equal(parts_of(plan), 90000);
    sb_run_free(&run);
}

/* A stop that was asked for before anything was laid still gives every part. */
static void stopped_with_all_parts(void **state) {
    (void)state;
    static const volatile int stop = 1;
    const sb_watch watch = {.stop_asked = &stop};
    sb_run run;
    sb_problem p;
    ply(&run, &p);
    add_need(&run, &p, "chip", 5, 4, 30000)->grain = SB_CUT_FREE;
    add_need(&run, &p, "tile", 9, 7, 20000)->grain = SB_CUT_FREE;
    add_need(&run, &p, "lid", 300, 200, 3);
    p.rules.watch = &watch;
    const sb_plan *plan = plan_in_time(&run, &p);
    assert_true(plan->cut_short);
    assert_int_equal(parts_of(plan), 50003);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(one_kind_in_time),
        cmocka_unit_test(stopped_with_all_parts),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
