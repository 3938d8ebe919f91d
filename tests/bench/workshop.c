/* Random workshop jobs: how many are proved least, how far the others may be from it, and what is saved against
 * cutting by hand: longest part first, leftovers first, the best single stock length. */
#include "bench.h"

#include "../support/workshop_jobs.h"

#include <stdio.h>
#include <stdlib.h>

enum {
    JOBS = 200 /* at most */
};

typedef struct job_tally {
    int jobs, proved;
    double gaps[JOBS], times[JOBS], savings[JOBS];
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
    job_tally *tally = t->tally;
    tally->times[tally->jobs] = time;
    tally->gaps[tally->jobs++] =
        100.0 * (double)(plan->cost.milli - plan->bound.milli) / (double)plan->bound.milli;
    tally->proved += plan->proved;
    if (!plan->proved && getenv("SHOW_OPEN"))
        printf("    job %u: %zu sizes, cost %.2f, gap %.3f %%, %.3f s\n", t->index, p->needs.count,
               (double)plan->cost.milli / 1e5, tally->gaps[tally->jobs - 1], time);
}

static int by_size(const void *a, const void *b) {
    double first = *(const double *)a, second = *(const double *)b;
    return (first > second) - (first < second);
}

static void bench_kind(const char *name, workshop_kind kind) {
    job_tally tally = {0};
    for (uint32_t i = 0; i < bench_jobs; i++) {
        job_trial t = {sb_run_new(), kind, i, &tally};
        if (t.run.pool)
            sb_pool_run(t.run.pool, plan_job, &t);
        sb_run_free(&t.run);
    }
    if (tally.jobs == 0)
        return;
    size_t jobs = (size_t)tally.jobs;
    qsort(tally.gaps, jobs, sizeof *tally.gaps, by_size);
    qsort(tally.times, jobs, sizeof *tally.times, by_size);
    printf(
        "  %-14s %4d jobs, %4d proved, gap median %.3f %%, 90th %.3f %%, worst %.3f %%; time median %.3f s, "
        "90th %.3f s, longest %.3f s\n",
        name, tally.jobs, tally.proved, tally.gaps[jobs / 2], tally.gaps[jobs * 9 / 10], tally.gaps[jobs - 1],
        tally.times[jobs / 2], tally.times[jobs * 9 / 10], tally.times[jobs - 1]);
    fflush(stdout);
}

void bench_workshop(void) {
    printf("random workshop jobs\n");
    bench_kind("small", WORKSHOP_SMALL);
    bench_kind("large", WORKSHOP_LARGE);
    bench_kind("with handling", WORKSHOP_HANDLING);
}
