/* How time grows with the kinds of part, and with the demand for each: medians over a few jobs. */
#include "bench.h"

#include "../support/workshop_jobs.h"

#include <stdio.h>

enum {
    JOBS = 5, /* for each point of a curve */
    FEW = 20, /* kinds, where the demand grows */
    SOME = 10 /* of each kind, where kinds grow */
};

typedef struct point {
    sb_run run;
    workshop_kind kind;
    uint32_t index, kinds, each;
    bench_numbers *times, *gaps;
} point;

static void plan_job(void *context) {
    point *t = context;
    sb_problem *p = workshop_job_of(&t->run, t->kind, t->index, t->kinds, t->kinds * t->each);
    p->rules.effort = bench_effort;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, p);
    bench_add(t->times, bench_seconds() - start);
    if (plan)
        bench_add(t->gaps, bench_percent(plan->cost.milli - plan->bound.milli, plan->bound.milli));
}

static void plan_jobs(workshop_kind kind, uint32_t kinds, uint32_t each) {
    bench_numbers times = {0}, gaps = {0};
    for (uint32_t i = 0; i < JOBS; i++) {
        point t = {sb_run_new(), kind, i, kinds, each, &times, &gaps};
        if (t.run.pool)
            sb_pool_run(t.run.pool, plan_job, &t);
        sb_run_free(&t.run);
    }
    printf("  %9.3f s, gap %6.3f %%", bench_part(&times, 50), bench_part(&gaps, 50));
}

static void print_point(uint32_t kinds, uint32_t each) {
    printf("  %7u %7u", kinds, each);
    plan_jobs(WORKSHOP_LARGE, kinds, each);
    plan_jobs(WORKSHOP_HANDLING, kinds, each);
    printf("\n");
    fflush(stdout);
}

void bench_growth(void) {
    printf("growth: medians of %d jobs\n    kinds, of each,          material only,              all costs\n",
           JOBS);
    for (uint32_t kinds = 10; kinds <= 320; kinds *= 2)
        print_point(kinds, SOME);
    for (uint32_t each = 1; each <= 10000; each *= 10)
        print_point(FEW, each);
}
