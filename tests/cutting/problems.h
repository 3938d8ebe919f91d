/* Problems for the tests of the cutting room, put together with a few words each. Lengths in mm, prices in
 * the minor unit. */
#ifndef TESTS_CUTTING_PROBLEMS_H
#define TESTS_CUTTING_PROBLEMS_H

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

#include "sawbill/cutting.h"

#define UNUSED __attribute__((unused))

static UNUSED sb_length mm(double millimetres) {
    double nm = millimetres * 1e6;
    return (sb_length){(int64_t)(nm + (nm < 0 ? -0.5 : 0.5))};
}

static UNUSED sb_angle degrees(double d) {
    return (sb_angle){(int64_t)(d * 1e6 + (d < 0 ? -0.5 : 0.5))};
}

static UNUSED sb_cut_end end_of(double mitre, double bevel) {
    return (sb_cut_end){degrees(mitre), degrees(bevel)};
}

/* One kerf for all saws, material only, until a test says otherwise. */
static UNUSED void start(sb_run *run, sb_problem *p, double kerf) {
    *run = sb_run_new();
    *p = (sb_problem){0};
    p->rules.kerf = p->rules.rip_kerf = p->rules.panel_kerf = mm(kerf);
    p->rules.material_only = true;
}

static UNUSED sb_cut_stock *add_stock(sb_run *run, sb_problem *p, const char *name, bool sheet) {
    sb_cut_stock stock = {.name = name, .sheet = sheet};
    SB_PUSH(run->pool, p->stock, stock);
    return &p->stock.items[p->stock.count - 1];
}

/* Supplies and parts are of the stock added last. */
static UNUSED sb_supply *add_supply(sb_run *run, sb_problem *p, double length, double width, int64_t price) {
    sb_supply supply = {
        .stock = p->stock.count - 1, .length = mm(length), .width = mm(width), .price = {price * 1000}};
    supply.available = -1;
    supply.label = "";
    SB_PUSH(run->pool, p->supplies, supply);
    return &p->supplies.items[p->supplies.count - 1];
}

/* One stock of sheets of one size. */
static UNUSED void start_sheets(sb_run *run, sb_problem *p, double kerf, double length, double width) {
    start(run, p, kerf);
    add_stock(run, p, "ply", true);
    add_supply(run, p, length, width, 4800);
}

static UNUSED sb_need *add_need(sb_run *run, sb_problem *p, const char *name, double length, double width,
                                int64_t count) {
    sb_need need = {
        .name = name, .stock = p->stock.count - 1, .length = mm(length), .width = mm(width), .count = count};
    SB_PUSH(run->pool, p->needs, need);
    return &p->needs.items[p->needs.count - 1];
}

/* For what holds of any plan: all the work in one job of six, so that every step of the search is met, and little in the others. */
static UNUSED void search_briefly(sb_problem *p, int job) {
    bool sheet = p->stock.items[0].sheet;
    p->rules.effort = job % 6 == 0 ? 0 : sheet ? 3000000 : 150000;
}

static UNUSED const sb_plan *planned(sb_run *run, const sb_problem *p) {
    const sb_plan *plan = sb_plan_make(run, p);
    if (!sb_ok(run))
        print_error("%s\n", sb_notices_text(run, SB_NOTE, false));
    assert_non_null(plan);
    if (plan->bound.milli > plan->cost.milli)
        print_error("cost %lld, bound %lld\n", (long long)plan->cost.milli, (long long)plan->bound.milli);
    assert_true(sb_ok(run));
    assert_true(sb_plan_check(run, plan)); /* whatever the planner itself has checked */
    assert_true(plan->bound.milli <= plan->cost.milli);
    return plan;
}

static UNUSED const sb_sheet_plan *only_sheet(const sb_plan *plan) {
    assert_int_equal(plan->sheets.count, 1);
    return &plan->sheets.items[0];
}

/* Plans what cannot be met: the first notice must hold these words. */
static UNUSED const sb_plan *refused(sb_run *run, const sb_problem *p, const char *words) {
    const sb_plan *plan = sb_plan_make(run, p);
    assert_false(sb_ok(run));
    assert_int_equal(sb_status(run), 1);
    const char *message = sb_notices_message(run, 0);
    if (!strstr(message, words))
        print_error("told: %s\nexpected: %s\n", message, words);
    assert_non_null(strstr(message, words));
    return plan;
}

/* The same numbers on every machine (Park and Miller's minimal standard generator). */
static UNUSED uint32_t roll(uint32_t *seed, uint32_t sides) {
    *seed = (uint32_t)((uint64_t)*seed * 48271u % 2147483647u);
    return *seed % sides;
}

#endif
