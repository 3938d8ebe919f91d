/* Ten thousand parts of three hundred kinds in one job: time, and memory of a process that does nothing else. */
#include "bench.h"

#include "../support/workshop_jobs.h"

#include <stdio.h>

enum {
    PARTS = 10000,
    KINDS = 300,
    SECONDS = 5,
    MEGABYTES = 500
};

typedef struct outcome {
    bool planned;
    double seconds, gap;
    int64_t parts;
} outcome;

static void plan_many(sb_run *run, bool material_only, outcome *out) {
    sb_problem *p = workshop_job_of(run, material_only ? WORKSHOP_LARGE : WORKSHOP_HANDLING, 0, KINDS, PARTS);
    p->rules.effort = bench_effort;
    for (size_t i = 0; i < p->needs.count; i++)
        out->parts += p->needs.items[i].count;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(run, p);
    out->seconds = bench_seconds() - start;
    out->planned = plan && plan->short_of.count == 0;
    if (out->planned)
        out->gap = bench_percent(plan->cost.milli - plan->bound.milli, plan->bound.milli);
}

typedef struct trial {
    sb_run run;
    bool material_only;
    outcome *out;
} trial;

static void in_pool(void *context) {
    trial *t = context;
    plan_many(&t->run, t->material_only, t->out);
}

static void in_child(void *material_only, void *result) {
    trial t = {sb_run_new(), *(bool *)material_only, result};
    if (t.run.pool)
        sb_pool_run(t.run.pool, in_pool, &t);
    sb_run_free(&t.run);
}

static void measure(const char *costs, bool material_only) {
    outcome out = {0};
    double peak;
    bench_end end = bench_in_child(in_child, &material_only, &out, sizeof out, 600, 16000, &peak);
    if (end != BENCH_DONE || !out.planned) {
        printf("  %s: no plan\n", costs);
        bench_target(false, "10 000 parts", "under 5 s, under 500 MB");
        return;
    }
    printf("  %lld parts, %s: %.3f s, %.0f MB, gap %.3f %%\n", (long long)out.parts, costs, out.seconds, peak,
           out.gap);
    bench_target(out.seconds < SECONDS && peak < MEGABYTES, "10 000 parts", "under 5 s, under 500 MB");
}

void bench_many(void) {
    printf("10 000 parts of 300 kinds in one job\n");
    measure("material only", true);
    measure("all costs", false);
}
