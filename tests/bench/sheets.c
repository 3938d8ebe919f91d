/* Sheets: published sets where they are at hand, one instance a file:
 *     sheet W H ; rotate no ; best K ; W H DEMAND ...
 * with # comments, one of which tells the best where parts may be turned; and what panels.c measures. */
#include "sheets.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct trial {
    sb_run run;
    sheet_way set;
    const char *path;
    sheet_tally *to;
} trial;

/* ---- tallies --------------------------------------------------------------------------------------- */

static int by_size(const void *a, const void *b) {
    double first = *(const double *)a, second = *(const double *)b;
    return (first > second) - (first < second);
}

double sheet_percent(double of, double all) {
    return all > 0 ? 100.0 * of / all : 100.0;
}

void sheet_tally_sort(sheet_tally *t) {
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

static void note_published(sheet_tally *to, long sheets, long bound, long best) {
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

static sheet_tally run_set(const char *folder, const char *set, sheet_way how) {
    sheet_tally t = {0};
    char path[4096];
    struct dirent **names;
    snprintf(path, sizeof path, "%s/%s", folder, set);
    int count = scandir(path, &names, NULL, alphasort);
    for (int i = 0; i < count; i++) {
        snprintf(path, sizeof path, "%s/%s/%s", folder, set, names[i]->d_name);
        trial one = {.run = sb_run_new(), .set = how, .path = path, .to = &t};
        if (strstr(names[i]->d_name, ".sheet") && t.count < SHEET_MOST && one.run.pool)
            sb_pool_run(one.run.pool, solve, &one);
        sb_run_free(&one.run);
        free(names[i]);
    }
    if (count >= 0)
        free(names);
    sheet_tally_sort(&t);
    return t;
}

static void print_set(const char *name, const sheet_tally *t) {
    bench_subject(name);
    printf("  %s: %d instances, %.0f sheets, bounds %.0f\n", name, t->count, t->sheets, t->bounds);
    bench_at_most("beyond the published optimum", t->beaten, 0, "");
}

/* A target of 0 is none. */
static void print_time(const char *what, double value, double target) {
    if (target > 0)
        bench_at_most(what, value, target, "s");
    else
        bench_plain(what, value, "s");
}

void sheet_print_times(const sheet_tally *t, double median, double longest) {
    print_time("processor time, median", t->times[t->count / 2], median);
    print_time("processor time, longest", t->times[t->count - 1], longest);
}

static void bench_class(const char *folder, bool turn) {
    sheet_tally t = run_set(folder, "class", (sheet_way){"any", turn, 0, false});
    if (t.count == 0)
        return;
    print_set(turn ? "classes, turned where it helps" : "classes, as they lie", &t);
    bench_at_most("more than one sheet apart", t.apart, 0, "");
    if (turn)
        bench_plain("proved", sheet_percent(t.proved, t.count), "%");
    else
        bench_at_least("proved", sheet_percent(t.proved, t.count), 85, "%");
    bench_at_least("published optimum reached", sheet_percent(t.met, t.known), turn ? 94 : 97, "%");
    sheet_print_times(&t, turn ? 0 : 0.1, turn ? 0 : 5);
}

static void bench_wood(const char *folder) {
    sheet_tally t = run_set(folder, "wood_a", (sheet_way){"any", false, 0, false});
    if (t.count == 0)
        return;
    print_set("wood industry, as it lies", &t);
    bench_plain("more than one sheet apart", t.apart, "");
    bench_plain("proved", sheet_percent(t.proved, t.count), "%");
    bench_at_least("bound meets the published optimum", sheet_percent(t.bound_met, t.known), 100, "%");
    bench_plain("plan meets the published optimum", sheet_percent(t.met, t.known), "%");
    bench_at_most("sheets above the bounds", sheet_percent(t.sheets - t.bounds, t.bounds), 2, "%");
    sheet_print_times(&t, 0, 10);
}

/* ---- the price of fewer stages --------------------------------------------------------------------- */

const sheet_way sheet_ways[SHEET_WAYS] = {{"two stages", false, 2, false},
                                          {"two with trimming", false, 2, true},
                                          {"three", false, 3, false},
                                          {"any", false, 0, false}};

void sheet_print_ways(const char *name, const char *unit, const int *planned, const double *amounts) {
    double any = amounts[SHEET_WAYS - 1];
    printf("  %s, the price of fewer stages\n", name);
    for (size_t i = 0; i < SHEET_WAYS; i++)
        printf("    %-20s %3d planned %12.2f %s, %+.2f %%\n", sheet_ways[i].name, planned[i], amounts[i],
               unit, sheet_percent(amounts[i] - any, any));
    fflush(stdout);
}

static void bench_stages(const char *folder, const char *set) {
    int planned[SHEET_WAYS];
    double sheets[SHEET_WAYS];
    for (size_t i = 0; i < SHEET_WAYS; i++) {
        sheet_tally t = run_set(folder, set, sheet_ways[i]);
        planned[i] = t.count;
        sheets[i] = t.sheets;
    }
    if (planned[0] > 0)
        sheet_print_ways(set, "sheets", planned, sheets);
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
        bench_panels();
    if (wanted(only, "sheet_handling"))
        bench_panels_handled();
    if (wanted(only, "thousand"))
        bench_panels_thousand();
    if (wanted(only, "stages")) {
        bench_stages(folder, "class");
        bench_stages(folder, "wood_a");
        bench_panels_stages();
    }
}
