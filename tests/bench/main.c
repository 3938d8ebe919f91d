/* Prints times and what plans reach. Run from the project's folder: make bench [SETS=folder]. */
#include "bench.h"

#include <stdio.h>
#include <time.h>

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

int main(int argc, char **argv) {
    print_processor();
    bench_job();
    if (argc > 1)
        bench_lengths(argv[1]);
    return 0;
}
