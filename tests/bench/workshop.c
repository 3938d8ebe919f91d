/* Random workshop jobs: how many are proved least, how far the others may be from it, and what is saved against
 * cutting by hand. */
#include "bench.h"

#include "../support/workshop_jobs.h"

#include <stdio.h>
#include <stdlib.h>

typedef struct job_tally {
    size_t proved;
    bench_numbers gaps, times, savings;
} job_tally;

typedef struct job_trial {
    sb_run run;
    workshop_kind kind;
    uint32_t index;
    job_tally *tally;
} job_trial;

static void plan_job(void *context) {
    job_trial *t = context;
    sb_problem *p = workshop_job(&t->run, t->kind, t->index);
    p->rules.effort = bench_effort;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, p);
    double time = bench_seconds() - start;
    if (!plan || plan->short_of.count > 0)
        return;
    double gap = bench_percent(plan->cost.milli - plan->bound.milli, plan->bound.milli);
    int64_t by_hand = bench_hand_cost(&t->run, p);
    bench_add(&t->tally->times, time);
    bench_add(&t->tally->gaps, gap);
    bench_add(&t->tally->savings, bench_percent(by_hand - plan->cost.milli, by_hand));
    t->tally->proved += plan->proved;
    if (!plan->proved && getenv("SHOW_OPEN"))
        printf("    job %u: %zu sizes, cost %.2f, gap %.3f %%, %.3f s\n", t->index, p->needs.count,
               (double)plan->cost.milli / 1e5, gap, time);
}

static void plan_jobs(const char *name, workshop_kind kind, job_tally *tally) {
    for (uint32_t i = 0; i < bench_jobs; i++) {
        job_trial t = {sb_run_new(), kind, i, tally};
        if (t.run.pool)
            sb_pool_run(t.run.pool, plan_job, &t);
        sb_run_free(&t.run);
    }
    printf("  %s: %zu jobs, %zu proved; gap median %.3f %%, 90th %.3f %%, worst %.3f %%;\n      time median "
           "%.3f s, "
           "90th %.3f s, longest %.3f s\n",
           name, tally->gaps.count, tally->proved, bench_part(&tally->gaps, 50), bench_part(&tally->gaps, 90),
           bench_part(&tally->gaps, 100), bench_part(&tally->times, 50), bench_part(&tally->times, 90),
           bench_part(&tally->times, 100));
}

static void print_savings(job_tally *tally, const char *costs) {
    printf("      saved against cutting by hand (%s): median %.2f %%, 90th %.2f %%\n", costs,
           bench_part(&tally->savings, 50), bench_part(&tally->savings, 90));
    fflush(stdout);
}

static void bench_small(void) {
    job_tally tally = {0};
    plan_jobs("small, material only", WORKSHOP_SMALL, &tally);
    bench_target(100 * tally.proved >= 85 * tally.gaps.count && bench_part(&tally.times, 100) <= 5 &&
                     bench_part(&tally.gaps, 90) <= 0.5,
                 "small workshop jobs", "85 % proved within 5 s each, gap at the 90th percentile 0.5 %");
    print_savings(&tally, "material only");
}

static void bench_large(void) {
    job_tally tally = {0};
    plan_jobs("large, material only", WORKSHOP_LARGE, &tally);
    bench_target(bench_part(&tally.gaps, 50) <= 0.05 && bench_part(&tally.gaps, 90) <= 0.15 &&
                     bench_part(&tally.times, 100) <= 1,
                 "large workshop jobs", "gap median 0.05 %, 90th percentile 0.15 %, within 1 s each");
    print_savings(&tally, "material only");
}

static void bench_handling(void) {
    job_tally tally = {0};
    plan_jobs("small, all costs", WORKSHOP_HANDLING, &tally);
    bench_target(bench_part(&tally.gaps, 90) <= 0.7 && bench_part(&tally.times, 100) <= 5,
                 "small workshop jobs with all costs", "gap at the 90th percentile 0.7 % within 5 s");
    print_savings(&tally, "all costs");
}

void bench_workshop(void) {
    printf("random workshop jobs\n");
    bench_small();
    bench_large();
    bench_handling();
}
