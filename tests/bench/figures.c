/* Numbers in order, targets met and missed. */
#include "bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

enum {
    MOST_TARGETS = 128
};

static struct {
    bool met;
    char figure[64], target[96];
} targets[MOST_TARGETS];
static size_t target_count;

double bench_seconds(void) {
    return (double)clock() / CLOCKS_PER_SEC;
}

void bench_add(bench_numbers *numbers, double number) {
    if (numbers->count < sizeof numbers->items / sizeof *numbers->items)
        numbers->items[numbers->count++] = number;
}

static int by_size(const void *a, const void *b) {
    double first = *(const double *)a, second = *(const double *)b;
    return (first > second) - (first < second);
}

double bench_part(bench_numbers *numbers, size_t percent) {
    if (numbers->count == 0)
        return 0;
    qsort(numbers->items, numbers->count, sizeof *numbers->items, by_size);
    size_t at = numbers->count * percent / 100;
    return numbers->items[at < numbers->count ? at : numbers->count - 1];
}

double bench_percent(int64_t amount, int64_t of) {
    return of == 0 ? 0 : 100.0 * (double)amount / (double)of;
}

void bench_keep(bool met, const char *figure, const char *target) {
    fflush(stdout);
    if (target_count == MOST_TARGETS)
        return;
    snprintf(targets[target_count].figure, sizeof targets->figure, "%s", figure);
    snprintf(targets[target_count].target, sizeof targets->target, "%s", target);
    targets[target_count++].met = met;
}

void bench_target(bool met, const char *figure, const char *target) {
    printf("      target: %s: %s\n", target, met ? "met" : "missed");
    bench_keep(met, figure, target);
}

/* ---- figures with a target each ------------------------------------------------------------------- */

static const char *subject = "";

void bench_subject(const char *of) {
    subject = of;
}

static void keep_figure(bool met, const char *what, double value, const char *unit, const char *target) {
    char figure[64];
    printf("    %-44s %10.3f %-6s target %s: %s\n", what, value, unit, target, met ? "met" : "missed");
    snprintf(figure, sizeof figure, "%s, %s", subject, what);
    bench_keep(met, figure, target);
}

void bench_at_most(const char *what, double value, double most, const char *unit) {
    char target[96];
    snprintf(target, sizeof target, "at most %.3f", most);
    keep_figure(value <= most, what, value, unit, target);
}

void bench_at_least(const char *what, double value, double least, const char *unit) {
    char target[96];
    snprintf(target, sizeof target, "at least %.3f", least);
    keep_figure(value >= least, what, value, unit, target);
}

void bench_plain(const char *what, double value, const char *unit) {
    printf("    %-44s %10.3f %s\n", what, value, unit);
}

/* ---- the end ---------------------------------------------------------------------------------------- */

static void print_processor(void) {
    FILE *file = fopen("/proc/cpuinfo", "r");
    char line[256], name[256] = "not known";
    while (file && fgets(line, sizeof line, file))
        if (sscanf(line, "model name : %250[^\n]", name) == 1)
            break;
    if (file)
        fclose(file);
    printf("processor: %s; times are seconds of one core\n", name);
}

void bench_summary(void) {
    size_t met = 0;
    for (size_t i = 0; i < target_count; i++)
        met += targets[i].met;
    printf("%zu of %zu targets met\n", met, target_count);
    for (size_t i = 0; i < target_count; i++)
        if (!targets[i].met)
            printf("  missed: %s: %s\n", targets[i].figure, targets[i].target);
    print_processor();
}
