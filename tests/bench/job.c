/* A batch of 500 pieces with 40 kinds of part, from text to estimate, station by station. */
#include "bench.h"

#include "sawbill/costing.h"

#include <stdio.h>
#include <string.h>

enum {
    KINDS = 40
};

const char *bench_recipe(sb_run *run) {
    const char *text = "recipe rack\ninput long 1200 mm from 400 mm to 2400 mm\nstock slat "
                       "larch-20x95\nstock skin ply-exterior-18\n";
    for (int i = 0; i < KINDS; i++) {
        bool sheet = i % 8 == 7;
        text = sb_pool_print(run->pool, "%spart p%d\n  count %d\n  of %s\n  length long / %d - %d mm\n%s",
                             text, i, 1 + i % 4, sheet ? "skin" : "slat", 1 + i % 3, 7 * i,
                             sheet ? "  width 300 mm\n" : "");
    }
    return text;
}

typedef struct clock_line {
    double since;
} clock_line;

static void lap(clock_line *line, const char *what) {
    double now = bench_seconds();
    printf("  %-28s %9.3f ms\n", what, (now - line->since) * 1e3);
    line->since = bench_seconds();
}

static void work(void *context) {
    sb_run *run = context;
    clock_line line = {bench_seconds()};
    printf("%d pieces with %d kinds of part\n", BENCH_PIECES, KINDS);
    sb_shop *shop = sb_shop_read(run, "rates");
    lap(&line, "read the rates");
    sb_recipe_book *book = sb_recipe_book_open(run, "templates", false);
    const sb_recipe *recipe = sb_recipe_of(run, sb_source_of(run, "rack.recipe", bench_recipe(run)), false);
    sb_recipe_book_add(run, book, recipe);
    const char *text = sb_pool_print(
        run->pool, "job bench\ndate 2026-02-02\ncustomer x\npiece rack\n  count %d\n", BENCH_PIECES);
    const sb_job *job = sb_job_of(run, sb_source_of(run, "bench.job", text), false);
    lap(&line, "read recipe and job");
    const sb_takeoff *takeoff = sb_takeoff_of(run, shop, book, job, NULL);
    lap(&line, "expand");
    const sb_cutlist *cutlist = takeoff ? sb_cutlist_of(run, shop, &takeoff, 1) : NULL;
    const sb_plan *plan = cutlist ? sb_plan_make(run, &cutlist->problem) : NULL;
    lap(&line, "plan the cuts");
    const sb_order *order = plan ? sb_order_of(run, shop, &takeoff, 1, cutlist, plan, false) : NULL;
    const sb_estimate *estimate = order ? sb_estimate_of(run, shop, takeoff, cutlist, plan, order) : NULL;
    lap(&line, "order and price");
    if (estimate)
        printf("  plan %.2f, bound %.2f: %.2f %% apart\n", (double)plan->cost.milli / 1e5,
               (double)plan->bound.milli / 1e5,
               100.0 * (double)(plan->cost.milli - plan->bound.milli) / (double)plan->bound.milli);
    fputs(sb_notices_text(run, SB_ERROR, false), stdout);
}

void bench_job(void) {
    sb_run run = sb_run_new();
    if (run.pool)
        sb_pool_run(run.pool, work, &run);
    sb_run_free(&run);
}
