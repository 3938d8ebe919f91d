/* Prints times and what plans reach. Run from the project's folder:
 *     make bench [SETS=folder] [SHEETS=folder] [ONLY=job|workshop|sheets|SET] [EFFORT=steps] [JOBS=number] */
#include "bench.h"

#include <stdbool.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

int64_t bench_effort;
uint32_t bench_jobs = 200;

double bench_seconds(void) {
    return (double)clock() / CLOCKS_PER_SEC;
}

static void print_processor(void) {
    FILE *file = fopen("/proc/cpuinfo", "r");
    char line[256];
    while (file && fgets(line, sizeof line, file))
        if (sscanf(line, "model name : %200[^\n]", line) == 1) {
            printf("processor: %s\n", line);
            break;
        }
    if (file)
        fclose(file);
}

static bool wanted(const char *only, const char *what) {
    return *only == '\0' || strcmp(only, what) == 0;
}

/* bench FOLDER ONLY EFFORT JOBS SHEETS, each may be empty */
int main(int argc, char **argv) {
    const char *folder = argc > 1 ? argv[1] : "", *only = argc > 2 ? argv[2] : "";
    bench_effort = argc > 3 ? atoll(argv[3]) : 0;
    bench_jobs = argc > 4 && atoi(argv[4]) > 0 ? (uint32_t)atoi(argv[4]) : bench_jobs;
    print_processor();
    if (wanted(only, "job"))
        bench_job();
    if (wanted(only, "workshop"))
        bench_workshop();
    if (*folder)
        bench_lengths(folder, *only ? only : NULL);
    bench_sheets(argc > 5 ? argv[5] : "", *only ? only : NULL);
    return 0;
}
