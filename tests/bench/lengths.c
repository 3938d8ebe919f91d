/* Published one-dimensional cutting and packing sets, one instance a file:
 *     capacity C | stock LENGTH PRICE [AVAILABLE] ; optimum K ; LENGTH DEMAND ...
 * with # comments. How many plans meet the published optimum, how many are proved, and the times. */
#include "bench.h"

#include "sawbill/cutting.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum {
    MOST_FILES = 4096
};

typedef struct set_tally {
    int files, met, proved, beaten;
    double times[MOST_FILES];
} set_tally;

static void read_line(sb_run *run, sb_problem *problem, const char *line, double *optimum) {
    long long length, amount, available = -1;
    if (sscanf(line, "capacity %lld", &length) == 1)
        SB_PUSH(run->pool, problem->supplies,
                ((sb_supply){.length = SB_MM(length), .price = {100000}, .available = -1, .label = ""}));
    else if (sscanf(line, "stock %lld %lld %lld", &length, &amount, &available) >= 2)
        SB_PUSH(
            run->pool, problem->supplies,
            ((sb_supply){
                .length = SB_MM(length), .price = {amount * 100000}, .available = available, .label = ""}));
    else if (sscanf(line, "optimum %lf", optimum) == 1)
        return;
    else if (sscanf(line, "%lld %lld", &length, &amount) == 2)
        SB_PUSH(run->pool, problem->needs,
                ((sb_need){.name = "item", .length = SB_MM(length), .count = amount}));
}

typedef struct trial {
    sb_run run;
    const char *path;
    set_tally *tally;
} trial;

static void solve(void *context) {
    trial *t = context;
    FILE *file = fopen(t->path, "r");
    if (!file)
        return;
    sb_problem *problem = SB_NEW(t->run.pool, sb_problem);
    SB_PUSH(t->run.pool, problem->stock, ((sb_cut_stock){.name = "stock"}));
    problem->rules.material_only = true;
    problem->rules.effort = bench_effort;
    double optimum = 0;
    for (char line[256]; fgets(line, sizeof line, file);)
        if (line[0] != '#')
            read_line(&t->run, problem, line, &optimum);
    fclose(file);
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, problem);
    t->tally->times[t->tally->files++] = bench_seconds() - start;
    if (!plan)
        return;
    double cost = (double)plan->cost.milli / 100000.0;
    t->tally->met += optimum > 0 && cost <= optimum + 1e-6;
    t->tally->beaten += optimum > 0 && cost < optimum - 1e-6;
    t->tally->proved += plan->proved;
    if (!plan->proved && getenv("SHOW_OPEN"))
        printf("    %s: %.4f, bound %.4f, optimum %.0f, %.3f s\n", strrchr(t->path, '/') + 1, cost,
               (double)plan->bound.milli / 100000.0, optimum, bench_seconds() - start);
}

static int by_time(const void *a, const void *b) {
    double first = *(const double *)a, second = *(const double *)b;
    return (first > second) - (first < second);
}

static void bench_set(const char *folder, const char *set) {
    set_tally tally = {0};
    char path[4096];
    snprintf(path, sizeof path, "%s/%s", folder, set);
    struct dirent **names;
    int count = scandir(path, &names, NULL, alphasort);
    for (int i = 0; i < count; i++) {
        snprintf(path, sizeof path, "%s/%s/%s", folder, set, names[i]->d_name);
        trial t = {sb_run_new(), path, &tally};
        if (strstr(names[i]->d_name, ".csp") && tally.files < MOST_FILES && t.run.pool)
            sb_pool_run(t.run.pool, solve, &t);
        sb_run_free(&t.run);
        free(names[i]);
    }
    if (count >= 0)
        free(names);
    qsort(tally.times, (size_t)tally.files, sizeof *tally.times, by_time);
    if (tally.files > 0)
        printf("  %-16s %5d instances, %5d at the optimum, %5d proved, median %.3f s, longest %.3f s%s\n",
               set, tally.files, tally.met, tally.proved, tally.times[tally.files / 2],
               tally.times[tally.files - 1], tally.beaten ? ", SOME BELOW THE OPTIMUM" : "");
}

void bench_lengths(const char *folder, const char *set) {
    static const char *const sets[] = {"textbook", "falkenauer_u", "falkenauer_t", "scholl1", "scholl2",
                                       "scholl3",  "schwerin1",    "waescher",     "hard28"};
    if (!set)
        printf("published sets of lengths\n");
    for (size_t i = 0; i < sizeof sets / sizeof *sets; i++)
        if (!set || strcmp(set, sets[i]) == 0)
            bench_set(folder, sets[i]);
}
