/* Published one-dimensional cutting and packing sets, one instance a file:
 *     capacity C | stock LENGTH PRICE [AVAILABLE] ; optimum K ; LENGTH DEMAND ...
 * with # comments. How many plans meet the published optimum, how many are proved, and the times. */
#include "bench.h"

#include "sawbill/cutting.h"

#include <dirent.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

typedef struct set_tally {
    size_t met, beaten, proved;
    bench_numbers times, proved_in; /* of all; of those proved */
} set_tally;

/* Of the instances of some sets together: so many at the optimum, so many proved, 0 for all of them; times of each and in
 * the middle [s]. */
typedef struct set_target {
    const char *sets[5];
    size_t met, proved;
    double each, middle;
    size_t soon; /* so many of them proved within 5 s */
    const char *words;
    int64_t effort; /* what one may use unless EFFORT says otherwise; 0: the standard amount */
} set_target;

static const set_target targets[] = {
    {{"textbook"}, 0, 0, 0.01, 0.01, 0, "all proved, each within 0.01 s", 0},
    {{"falkenauer_u", "falkenauer_t"},
     0,
     0,
     1,
     0.05,
     0,
     "all proved, each within 1 s, median within 0.05 s",
     0},
    {{"scholl1", "scholl2", "schwerin1", "waescher"},
     0,
     0,
     2,
     0.02,
     0,
     "all proved, each within 2 s, median within 0.02 s",
     0},
    {{"scholl3"}, 0, 0, 2, 2, 0, "all proved, each within 2 s", 0},
    {{"hard28"},
     28,
     26,
     60,
     60,
     20,
     "28 at the optimum, 26 proved within 60 s each, 20 of them within 5 s",
     1200000000},
};

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
    int64_t effort;
} trial;

static void solve(void *context) {
    trial *t = context;
    FILE *file = fopen(t->path, "r");
    if (!file)
        return;
    sb_problem *problem = SB_NEW(t->run.pool, sb_problem);
    SB_PUSH(t->run.pool, problem->stock, ((sb_cut_stock){.name = "stock"}));
    problem->rules.material_only = true;
    problem->rules.effort = bench_effort ? bench_effort : t->effort;
    double optimum = 0;
    for (char line[256]; fgets(line, sizeof line, file);)
        if (line[0] != '#')
            read_line(&t->run, problem, line, &optimum);
    fclose(file);
    double start = bench_seconds();
    const sb_plan *plan = sb_plan_make(&t->run, problem);
    double time = bench_seconds() - start;
    bench_add(&t->tally->times, time);
    if (!plan)
        return;
    double cost = (double)plan->cost.milli / 100000.0;
    t->tally->met += optimum > 0 && cost <= optimum + 1e-6;
    t->tally->beaten += optimum > 0 && cost < optimum - 1e-6;
    t->tally->proved += plan->proved;
    if (plan->proved)
        bench_add(&t->tally->proved_in, time);
    if (!plan->proved && getenv("SHOW_OPEN"))
        printf("    %s: %.4f, bound %.4f, optimum %.0f, %.3f s\n", strrchr(t->path, '/') + 1, cost,
               (double)plan->bound.milli / 100000.0, optimum, time);
}

static size_t within(const bench_numbers *times, double seconds) {
    size_t count = 0;
    for (size_t i = 0; i < times->count; i++)
        count += times->items[i] <= seconds;
    return count;
}

static bool is_met(const set_target *target, set_tally *tally) {
    size_t met = target->met ? target->met : tally->times.count,
           proved = target->proved ? target->proved : tally->times.count;
    return tally->beaten == 0 && tally->met >= met && within(&tally->proved_in, target->each) >= proved &&
           within(&tally->proved_in, 5) >= target->soon && bench_part(&tally->times, 50) <= target->middle;
}

static void print_set(const char *name, set_tally *tally) {
    printf("  %s: %zu instances, %zu at the optimum, %zu proved, %zu of them within 5 s; time median %.3f s, "
           "longest "
           "%.3f s%s\n",
           name, tally->times.count, tally->met, tally->proved, within(&tally->proved_in, 5),
           bench_part(&tally->times, 50), bench_part(&tally->times, 100),
           tally->beaten ? ", SOME BELOW THE OPTIMUM" : "");
}

static void add_up(set_tally *all, const set_tally *one) {
    all->met += one->met;
    all->beaten += one->beaten;
    all->proved += one->proved;
    for (size_t i = 0; i < one->times.count; i++)
        bench_add(&all->times, one->times.items[i]);
    for (size_t i = 0; i < one->proved_in.count; i++)
        bench_add(&all->proved_in, one->proved_in.items[i]);
}

static void bench_set(const char *folder, const char *set, int64_t effort, set_tally *all) {
    set_tally tally = {0};
    char path[4096];
    snprintf(path, sizeof path, "%s/%s", folder, set);
    struct dirent **names;
    int count = scandir(path, &names, NULL, alphasort);
    for (int i = 0; i < count; i++) {
        snprintf(path, sizeof path, "%s/%s/%s", folder, set, names[i]->d_name);
        trial t = {sb_run_new(), path, &tally, effort};
        if (strstr(names[i]->d_name, ".csp") && t.run.pool)
            sb_pool_run(t.run.pool, solve, &t);
        sb_run_free(&t.run);
        free(names[i]);
    }
    if (count >= 0)
        free(names);
    if (tally.times.count > 0)
        print_set(set, &tally);
    add_up(all, &tally);
}

/* Sets that share a target are judged together; one that was asked for alone, by itself. */
static void bench_sets(const char *folder, const set_target *target, const char *only) {
    set_tally all = {0};
    char names[64] = "";
    for (size_t i = 0; target->sets[i]; i++) {
        if (only && strcmp(only, target->sets[i]) != 0)
            continue;
        bench_set(folder, target->sets[i], target->effort, &all);
        snprintf(names + strlen(names), sizeof names - strlen(names), "%s%s", *names ? " and " : "",
                 target->sets[i]);
    }
    if (all.times.count > 0)
        bench_target(is_met(target, &all), names, target->words);
}

void bench_lengths(const char *folder, const char *only) {
    if (!only)
        printf("published sets of lengths\n");
    for (size_t i = 0; i < sizeof targets / sizeof *targets; i++)
        bench_sets(folder, &targets[i], only);
}
