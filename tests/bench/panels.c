/* Panels as a workshop cuts them: random jobs, and the same cut by hand; one large batch. */
#include "sheets.h"

#include "../support/sheet_jobs.h"
#include "by_hand.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum {
    JOBS = 100,
    CENT = 1000 /* prices are in cents, costs in thousandths of them */
};

/* ---- random jobs ------------------------------------------------------------------------------------ */

typedef struct trial {
    sb_run run;
    sheet_way way;
    uint32_t index;
    bool handling;
    sheet_tally *to;
} trial;

static void note(trial *t, const sb_problem *p, const sb_plan *plan, double time) {
    sheet_tally *to = t->to;
    double gap = bench_percent(plan->cost.milli - plan->bound.milli, plan->bound.milli);
    to->times[to->count] = time;
    to->gaps[to->count++] = gap;
    to->proved += plan->proved;
    to->cost += (double)plan->cost.milli;
    to->shelves += (double)by_hand_shelves(&t->run, p);
    to->fit += (double)by_hand_best_fit(&t->run, p);
    if (getenv("SHOW_OPEN"))
        printf("      job %u: %zu kinds, %lld sheets, cost %.2f, gap %.3f %%, %.3f s\n", t->index,
               p->needs.count, (long long)plan->counts.sheets, (double)plan->cost.milli / CENT / 100, gap,
               time);
}

static void plan_job(void *context) {
    trial *t = context;
    sb_problem *p = sheet_job(&t->run, t->index, t->handling);
    p->rules.effort = bench_effort;
    p->rules.stages = t->way.stages;
    p->rules.trims = t->way.trims;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, p);
    double time = bench_seconds() - start;
    if (plan && sb_ok(&t->run) && plan->short_of.count == 0)
        note(t, p, plan, time);
}

static sheet_tally run_jobs(sheet_way way, bool handling) {
    sheet_tally t = {0};
    for (uint32_t i = 0; i < JOBS && i < bench_jobs; i++) {
        trial one = {.run = sb_run_new(), .way = way, .index = i, .handling = handling, .to = &t};
        if (one.run.pool)
            sb_pool_run(one.run.pool, plan_job, &one);
        sb_run_free(&one.run);
    }
    sheet_tally_sort(&t);
    return t;
}

static const sheet_way three = {"three", false, 3, false};

void bench_panels(void) {
    sheet_tally t = run_jobs(three, false);
    if (t.count == 0)
        return;
    bench_subject("random workshop jobs");
    printf("  random workshop jobs, three stages: %d jobs, %d proved\n", t.count, t.proved);
    bench_at_most("gap, median", t.gaps[t.count / 2], 1, "%");
    bench_at_most("gap, 90th percentile", t.gaps[t.count * 9 / 10], 4, "%");
    bench_plain("gap, worst", t.gaps[t.count - 1], "%");
    sheet_print_times(&t, 0, 2);
    bench_plain("saved against shelves", sheet_percent(t.shelves - t.cost, t.shelves), "% of the money");
    bench_plain("saved against a best fit (any stages)", sheet_percent(t.fit - t.cost, t.fit),
                "% of the money");
}

void bench_panels_handled(void) {
    sheet_tally t = run_jobs(three, true);
    if (t.count == 0)
        return;
    bench_subject("workshop jobs with handling");
    printf("  the same with handling and leftovers priced: %d jobs, %d proved\n", t.count, t.proved);
    bench_plain("gap, median", t.gaps[t.count / 2], "%");
    bench_plain("gap, 90th percentile", t.gaps[t.count * 9 / 10], "%");
    sheet_print_times(&t, 0, 2);
}

void bench_panels_stages(void) {
    int planned[SHEET_WAYS];
    double money[SHEET_WAYS];
    for (size_t i = 0; i < SHEET_WAYS; i++) {
        sheet_tally t = run_jobs(sheet_ways[i], false);
        planned[i] = t.count;
        money[i] = t.cost / CENT / 100;
    }
    if (planned[0] > 0)
        sheet_print_ways("random workshop jobs", "of money", planned, money);
}

/* ---- one large batch: in a process of its own, so that its memory can be told ----------------------- */

typedef struct batch {
    sb_run run;
    int64_t sheets;
    double gap, seconds;
} batch;

static void plan_batch(void *context) {
    batch *b = context;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&b->run, sheet_batch(&b->run, 120, 1000));
    b->seconds = bench_seconds() - start;
    if (!plan || plan->short_of.count > 0)
        return;
    b->sheets = plan->counts.sheets;
    b->gap = bench_percent(plan->cost.milli - plan->bound.milli, plan->bound.milli);
}

static void in_child(void *context, void *result) {
    batch *b = result;
    (void)context;
    b->run = sb_run_new();
    if (b->run.pool)
        sb_pool_run(b->run.pool, plan_batch, b);
    sb_run_free(&b->run);
}

void bench_panels_thousand(void) {
    batch b = {.sheets = 0};
    double peak;
    bench_end end = bench_in_child(in_child, NULL, &b, sizeof b, 600, 16000, &peak);
    bool done = end == BENCH_DONE && b.sheets > 0;
    bench_subject("1000 panels");
    printf("  1000 panels of 120 kinds: %lld sheets, gap %.3f %%\n", (long long)b.sheets, b.gap);
    bench_at_most("processor time", done ? b.seconds : INFINITY, 10, "s");
    bench_at_most("peak memory", done ? peak : INFINITY, 500, "MB");
}
