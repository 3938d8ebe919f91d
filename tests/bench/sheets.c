/* Sheets: published sets where they are at hand, one instance a file:
 *     sheet W H ; rotate no ; best K ; W H DEMAND ...
 * with # comments, one of which tells the best where parts may be turned; random workshop jobs; one large batch. */
#include "bench.h"

#include "../support/sheet_jobs.h"
#include "by_hand.h"

#include <dirent.h>
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

enum {
    MOST = 512, /* instances of a set */
    JOBS = 100
};

typedef struct tally {
    int count, proved, apart, known, met, beaten, bound_known, bound_met;
    double sheets, bounds, cost, shelves, fit;
    double times[MOST], gaps[MOST];
} tally;

typedef struct setting { /* how plans are made */
    bool turn;
    int stages;
    bool trims;
} setting;

typedef struct trial {
    sb_run run;
    setting set;
    const char *path;
    uint32_t index;
    bool handling;
    tally *to;
} trial;

/* ---- figures beside their targets ----------------------------------------------------------------- */

static void keep(bool met, const char *what, const char *bounded, double target, const char *unit) {
    char words[96];
    snprintf(words, sizeof words, "%s %.3f %s", bounded, target, unit);
    bench_keep(met, what, words);
}

static void at_most(const char *what, double value, double target, const char *unit) {
    printf("    %-44s %10.3f %-6s target <= %.3f: %s\n", what, value, unit, target,
           value <= target ? "met" : "missed");
    keep(value <= target, what, "at most", target, unit);
}

static void at_least(const char *what, double value, double target, const char *unit) {
    printf("    %-44s %10.3f %-6s target >= %.3f: %s\n", what, value, unit, target,
           value >= target ? "met" : "missed");
    keep(value >= target, what, "at least", target, unit);
}

static void plain(const char *what, double value, const char *unit) {
    printf("    %-44s %10.3f %s\n", what, value, unit);
}

static int by_size(const void *a, const void *b) {
    double first = *(const double *)a, second = *(const double *)b;
    return (first > second) - (first < second);
}

static double percent(double of, double all) {
    return all > 0 ? 100.0 * of / all : 100.0;
}

static void sort_tally(tally *t) {
    qsort(t->times, (size_t)t->count, sizeof *t->times, by_size);
    qsort(t->gaps, (size_t)t->count, sizeof *t->gaps, by_size);
}

/* ---- published sets ------------------------------------------------------------------------------- */

#define ONE 100000 /* cost of a sheet */

static void read_line(sb_run *run, sb_problem *p, const char *line, bool turn, long *best) {
    long long w, h, count;
    const char *turned = strstr(line, "best with rotate yes");
    if (*line == '#' && turned && turn && !strstr(line, "not proven") && strchr(turned, ':'))
        *best = atol(strrchr(turned, ':') + 1);
    if (sscanf(line, "sheet %lld %lld", &w, &h) == 2)
        SB_PUSH(run->pool, p->supplies,
                ((sb_supply){
                    .width = SB_MM(w), .length = SB_MM(h), .price = {ONE}, .available = -1, .label = ""}));
    else if (!turn && sscanf(line, "best %lld", &w) == 1)
        *best = (long)w;
    else if (sscanf(line, "%lld %lld %lld", &w, &h, &count) == 3)
        SB_PUSH(run->pool, p->needs,
                ((sb_need){.name = "item",
                           .width = SB_MM(w),
                           .length = SB_MM(h),
                           .count = count,
                           .grain = turn ? SB_CUT_FREE : SB_CUT_ALONG}));
}

static sb_problem *read_instance(trial *t, long *best) {
    FILE *file = fopen(t->path, "r");
    sb_problem *p = SB_NEW(t->run.pool, sb_problem);
    SB_PUSH(t->run.pool, p->stock, ((sb_cut_stock){.name = "sheet", .sheet = true}));
    p->rules.material_only = true;
    p->rules.effort = bench_effort;
    p->rules.stages = t->set.stages;
    p->rules.trims = t->set.trims;
    for (char line[400]; file && fgets(line, sizeof line, file);)
        read_line(&t->run, p, line, t->set.turn, best);
    if (file)
        fclose(file);
    return p;
}

static void note_published(tally *to, long sheets, long bound, long best) {
    bool any = best > 0;
    to->sheets += (double)sheets;
    to->bounds += (double)bound;
    to->apart += sheets - bound > 1;
    to->known += any;
    to->met += any && sheets <= best;
    to->beaten += any && (sheets < best || bound > best);
    to->bound_met += any && bound >= best;
}

static void solve(void *context) {
    trial *t = context;
    long best = 0;
    sb_problem *p = read_instance(t, &best);
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, p);
    double time = bench_seconds() - start;
    if (!plan || !sb_ok(&t->run) || plan->short_of.count > 0)
        return;
    long sheets = (long)(plan->cost.milli / ONE), bound = (long)((plan->bound.milli + ONE - 1) / ONE);
    t->to->times[t->to->count++] = time;
    t->to->proved += plan->proved;
    note_published(t->to, sheets, bound, t->set.stages ? 0 : best);
    if (getenv("SHOW_OPEN") && (!plan->proved || (best > 0 && sheets > best)))
        printf("      %s: %ld, bound %ld, best %ld, by %s, %.3f s\n", strrchr(t->path, '/') + 1, sheets,
               bound, best, plan->certificate->bounds.items[0].how, time);
}

static tally run_set(const char *folder, const char *set, setting how) {
    tally t = {0};
    char path[4096];
    struct dirent **names;
    snprintf(path, sizeof path, "%s/%s", folder, set);
    int count = scandir(path, &names, NULL, alphasort);
    for (int i = 0; i < count; i++) {
        snprintf(path, sizeof path, "%s/%s/%s", folder, set, names[i]->d_name);
        trial one = {.run = sb_run_new(), .set = how, .path = path, .to = &t};
        if (strstr(names[i]->d_name, ".sheet") && t.count < MOST && one.run.pool)
            sb_pool_run(one.run.pool, solve, &one);
        sb_run_free(&one.run);
        free(names[i]);
    }
    if (count >= 0)
        free(names);
    sort_tally(&t);
    return t;
}

static void print_set(const char *name, const tally *t) {
    printf("  %s: %d instances, %.0f sheets, bounds %.0f%s\n", name, t->count, t->sheets, t->bounds,
           t->beaten ? ", SOME BEYOND THE PUBLISHED OPTIMUM" : "");
    at_most("more than one sheet apart", t->apart, 0, "");
}

static void print_times(const tally *t, double median, double longest) {
    if (median > 0)
        at_most("processor time, median", t->times[t->count / 2], median, "s");
    else
        plain("processor time, median", t->times[t->count / 2], "s");
    at_most("processor time, longest", t->times[t->count - 1], longest, "s");
}

static void bench_class(const char *folder, bool turn) {
    tally t = run_set(folder, "class", (setting){turn, 0, false});
    if (t.count == 0)
        return;
    print_set(turn ? "classes, turned where it helps" : "classes, as they lie", &t);
    if (turn)
        plain("proved", percent(t.proved, t.count), "%");
    else
        at_least("proved", percent(t.proved, t.count), 85, "%");
    at_least("published optimum reached", percent(t.met, t.known), turn ? 94 : 97, "%");
    print_times(&t, turn ? 0 : 0.1, 5);
}

static void bench_wood(const char *folder) {
    tally t = run_set(folder, "wood_a", (setting){false, 0, false});
    if (t.count == 0)
        return;
    print_set("wood industry, as it lies", &t);
    plain("proved", percent(t.proved, t.count), "%");
    at_least("bound meets the published optimum", percent(t.bound_met, t.known), 100, "%");
    plain("plan meets the published optimum", percent(t.met, t.known), "%");
    at_most("sheets above the bounds", percent(t.sheets - t.bounds, t.bounds), 2, "%");
    print_times(&t, 0, 10);
}

/* ---- the price of fewer stages --------------------------------------------------------------------- */

static const struct {
    const char *name;
    setting set;
} stages[] = {{"two", {false, 2, false}},
              {"two with trimming", {false, 2, true}},
              {"three", {false, 3, false}},
              {"any", {false, 0, false}}};

static void bench_stages(const char *folder, const char *set) {
    printf("  %s, sheets by stages:", set);
    for (size_t i = 0; i < sizeof stages / sizeof *stages; i++) {
        tally t = run_set(folder, set, stages[i].set);
        printf("%s %s %.0f (bounds %.0f)", i ? "," : "", stages[i].name, t.sheets, t.bounds);
        fflush(stdout);
    }
    printf("\n");
}

/* ---- workshop jobs --------------------------------------------------------------------------------- */

static void plan_job(void *context) {
    trial *t = context;
    sb_problem *p = sheet_job(&t->run, t->index, t->handling);
    p->rules.effort = bench_effort;
    p->rules.stages = t->set.stages;
    p->rules.trims = t->set.trims;
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, p);
    double time = bench_seconds() - start;
    if (!plan || !sb_ok(&t->run) || plan->short_of.count > 0)
        return;
    t->to->times[t->to->count] = time;
    t->to->gaps[t->to->count++] =
        percent((double)(plan->cost.milli - plan->bound.milli), (double)plan->bound.milli);
    t->to->proved += plan->proved;
    t->to->cost += (double)plan->cost.milli;
    t->to->shelves += (double)by_hand_shelves(&t->run, p);
    t->to->fit += (double)by_hand_best_fit(&t->run, p);
    if (getenv("SHOW_OPEN"))
        printf("      job %u: %zu kinds, %lld sheets, cost %.2f, gap %.3f %%, %.3f s\n", t->index,
               p->needs.count, (long long)plan->counts.sheets, (double)plan->cost.milli / ONE,
               t->to->gaps[t->to->count - 1], time);
}

static tally run_jobs(setting how, bool handling) {
    tally t = {0};
    for (uint32_t i = 0; i < JOBS && i < bench_jobs; i++) {
        trial one = {.run = sb_run_new(), .set = how, .index = i, .handling = handling, .to = &t};
        if (one.run.pool)
            sb_pool_run(one.run.pool, plan_job, &one);
        sb_run_free(&one.run);
    }
    sort_tally(&t);
    return t;
}

static void bench_sheet_jobs(void) {
    tally t = run_jobs((setting){false, 3, false}, false);
    if (t.count == 0)
        return;
    printf("  random workshop jobs, three stages: %d jobs, %d proved\n", t.count, t.proved);
    at_most("gap, median", t.gaps[t.count / 2], 1, "%");
    at_most("gap, 90th percentile", t.gaps[t.count * 9 / 10], 4, "%");
    plain("gap, worst", t.gaps[t.count - 1], "%");
    print_times(&t, 0, 2);
    plain("saved against shelves", percent(t.shelves - t.cost, t.shelves), "% of the money");
    plain("saved against a best fit (any stages)", percent(t.fit - t.cost, t.fit), "% of the money");
}

static void bench_handling(void) {
    tally t = run_jobs((setting){false, 3, false}, true);
    if (t.count == 0)
        return;
    printf("  the same with handling and leftovers priced: %d jobs, %d proved\n", t.count, t.proved);
    plain("gap, median", t.gaps[t.count / 2], "%");
    plain("gap, 90th percentile", t.gaps[t.count * 9 / 10], "%");
    print_times(&t, 0, 2);
}

static void bench_job_stages(void) {
    printf("  random workshop jobs, money by stages:");
    for (size_t i = 0; i < sizeof stages / sizeof *stages; i++) {
        tally t = run_jobs(stages[i].set, false);
        printf("%s %s %.0f", i ? "," : "", stages[i].name, t.cost / ONE);
        fflush(stdout);
    }
    printf("\n");
}

/* ---- one large batch: in a process of its own, so that its memory can be told ------------------------ */

static void plan_batch(void *context) {
    trial *t = context;
    sb_problem *p = sheet_batch(&t->run, 120, 1000);
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, p);
    struct rusage usage;
    getrusage(RUSAGE_SELF, &usage);
    if (!plan)
        return;
    printf("  1000 panels of 120 kinds: %lld sheets, gap %.3f %%\n", (long long)plan->counts.sheets,
           percent((double)(plan->cost.milli - plan->bound.milli), (double)plan->bound.milli));
    at_most("processor time", bench_seconds() - start, 10, "s");
    at_most("peak memory", (double)usage.ru_maxrss / 1024, 500, "MB");
}

static void bench_thousand(void) {
    fflush(stdout);
    pid_t child = fork();
    if (child == 0) {
        trial t = {.run = sb_run_new()};
        if (t.run.pool)
            sb_pool_run(t.run.pool, plan_batch, &t);
        fflush(stdout);
        _exit(0);
    }
    if (child > 0)
        waitpid(child, NULL, 0);
}

/* ---- all of it --------------------------------------------------------------------------------------- */

static bool wanted(const char *only, const char *what) {
    return !only || strcmp(only, "sheets") == 0 || strcmp(only, what) == 0;
}

void bench_sheets(const char *folder, const char *only) {
    if (wanted(only, "class"))
        bench_class(folder, false);
    if (wanted(only, "class_turned"))
        bench_class(folder, true);
    if (wanted(only, "wood_a"))
        bench_wood(folder);
    if (wanted(only, "sheet_jobs"))
        bench_sheet_jobs();
    if (wanted(only, "sheet_handling"))
        bench_handling();
    if (wanted(only, "thousand"))
        bench_thousand();
    if (wanted(only, "stages")) {
        bench_stages(folder, "class");
        bench_stages(folder, "wood_a");
        bench_job_stages();
    }
}
