/* The same small jobs given to general solvers, so long as boards alone cost: is ever a plan of theirs cheaper, and how
 * much longer do they take? */
#include "bench.h"
#include "models.h"

#include "../support/workshop_jobs.h"

#include <stdio.h>

enum {
    SECONDS = 60,
    MEGABYTES = 4000
};

typedef struct way {
    const char *name;
    bool by_arcs;
    bench_solver *solver;
    int jobs, proved, none, dearer; /* theirs: proved, without a plan; ours that were dearer */
    double cheaper;                 /* ours, at the most [%] */
    bench_numbers ratios;           /* their time to ours */
} way;

typedef struct duel {
    sb_run run;
    way *by;
    uint32_t index;
} duel;

static void solve(void *context, void *result) {
    duel *d = context;
    const sb_problem *p = workshop_job(&d->run, WORKSHOP_SMALL, d->index);
    bench_program program = {.pool = d->run.pool};
    if (d->by->by_arcs)
        bench_arc_flow(p, &program);
    else
        bench_assignment(p, bench_hand_cost(&d->run, p), &program);
    SB_PUSH(program.pool, program.starts, (int)program.amounts.count);
    d->by->solver(&program, SECONDS, result);
}

static void compare(way *by, double cost, double seconds, bench_end end, const bench_solution *theirs) {
    by->jobs++;
    by->none += end != BENCH_DONE || !theirs->found;
    by->proved += theirs->proved;
    bench_add(&by->ratios, (end == BENCH_DONE ? theirs->seconds : SECONDS) / seconds);
    if (!theirs->found)
        return;
    by->dearer += cost > theirs->cost + 1e-6;
    double more = 100 * (theirs->cost - cost) / cost;
    by->cheaper = more > by->cheaper ? more : by->cheaper;
}

static void plan_and_solve(void *context) {
    duel *d = context;
    sb_problem *p = workshop_job(&d->run, WORKSHOP_SMALL, d->index);
    p->rules.effort = bench_effort;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&d->run, p);
    double seconds = bench_seconds() - start;
    bench_solution theirs = {0};
    bench_end end = bench_in_child(solve, d, &theirs, sizeof theirs, SECONDS, MEGABYTES, NULL);
    if (end == BENCH_NO_MEMORY)
        printf("    job %u, %s: more than %d MB\n", d->index, d->by->name, MEGABYTES);
    compare(d->by, (double)plan->cost.milli / 1e5, seconds > 1e-6 ? seconds : 1e-6, end, &theirs);
}

static void print_way(way *by) {
    printf("  %s: %d jobs, %d proved, %d without a plan; ours dearer in %d, cheaper by up to %.2f %%; time "
           "to ours: "
           "median %.0f, least %.1f, greatest %.0f\n",
           by->name, by->jobs, by->proved, by->none, by->dearer, by->cheaper, bench_part(&by->ratios, 50),
           bench_part(&by->ratios, 0), bench_part(&by->ratios, 100));
    bench_target(by->dearer == 0, by->name, "never a worse plan");
}

static void run_way(way *by) {
    uint32_t jobs = bench_models < bench_jobs ? bench_models : bench_jobs;
    for (uint32_t i = 0; i < jobs; i++) {
        duel d = {sb_run_new(), by, i * bench_jobs / jobs};
        if (d.run.pool)
            sb_pool_run(d.run.pool, plan_and_solve, &d);
        sb_run_free(&d.run);
    }
    if (by->jobs > 0)
        print_way(by);
}

void bench_solvers(void) {
    way ways[] = {{.name = "arc flow by CBC", .by_arcs = true, .solver = bench_cbc},
                  {.name = "arc flow by GLPK", .by_arcs = true, .solver = bench_glpk},
                  {.name = "assignment by CBC", .solver = bench_cbc},
                  {.name = "assignment by GLPK", .solver = bench_glpk}};
    printf("general solvers on every %u. of the small workshop jobs, material only, %d s each (MODELS=%u for "
           "all)\n",
           bench_models ? bench_jobs / bench_models : 0, SECONDS, bench_jobs);
    for (size_t i = 0; i < sizeof ways / sizeof *ways; i++)
        run_way(&ways[i]);
}
