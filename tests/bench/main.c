/* Prints what plans reach, in money and time, beside what they should reach. Run from the project's folder:
 *     make bench [SETS=folder] [SHEETS=folder] [ONLY=many|papers|job|growth|workshop|solvers|sheets|SET]
 *         [EFFORT=steps] [JOBS=number] [MODELS=number] */
#include "bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

int64_t bench_effort;
uint32_t bench_jobs = 200;
uint32_t bench_models = 5;

static bool wanted(const char *only, const char *what) {
    return *only == '\0' || strcmp(only, what) == 0;
}

static uint32_t number_or(const char *text, uint32_t otherwise) {
    return *text ? (uint32_t)strtoul(text, NULL, 10) : otherwise;
}

/* bench FOLDER ONLY EFFORT JOBS SHEETS MODELS, each may be empty */
int main(int argc, char **argv) {
    static const struct {
        const char *name;
        void (*run)(void);
    } parts[] = {{"many", bench_many}, /* first: memory is measured while little is in use */
                 {"papers", bench_papers},     {"job", bench_job},        {"growth", bench_growth},
                 {"workshop", bench_workshop}, {"solvers", bench_solvers}};
    const char *said[] = {"", "", "", "", "", "", ""};
    for (int i = 1; i < argc && i < 7; i++)
        said[i] = argv[i];
    bench_effort = atoll(said[3]);
    bench_jobs = number_or(said[4], bench_jobs);
    bench_models = number_or(said[6], bench_models);
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        if (wanted(said[2], parts[i].name))
            parts[i].run();
    if (*said[1])
        bench_lengths(said[1], *said[2] ? said[2] : NULL);
    bench_sheets(said[5], *said[2] ? said[2] : NULL);
    bench_summary();
    return 0;
}
