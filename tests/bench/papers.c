/* From a job file to all its papers, as a person waits for them: the program run by itself, its time and its memory. */
#include "bench.h"

#include <stdio.h>
#include <stdlib.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct errand {
    const char *job, *out;
} errand;

typedef struct effort {
    int status;
    double seconds, megabytes;
} effort;

static double seconds_of(struct timeval time) {
    return (double)time.tv_sec + (double)time.tv_usec / 1e6;
}

static void run_quote(void *context, void *result) {
    const errand *e = context;
    effort *out = result;
    struct rusage used;
    out->status = -1;
    pid_t child = fork();
    if (child == 0) {
        const char *program = getenv("SAWBILL");
        execl(program ? program : "build/sawbill", "sawbill", "quote", "-q", e->job, "--out", e->out,
              (char *)NULL);
        _exit(127);
    }
    if (child < 0 || waitpid(child, &out->status, 0) != child)
        return;
    getrusage(RUSAGE_CHILDREN, &used);
    out->seconds = seconds_of(used.ru_utime) + seconds_of(used.ru_stime);
    out->megabytes = (double)used.ru_maxrss / 1024;
}

static void measure(sb_run *run, const char *what, errand e, double most_seconds) {
    effort used = {.status = -1};
    bench_subject(what);
    printf("  %s\n", what);
    bench_end end = bench_in_child(run_quote, &e, &used, sizeof used, 300, 4000, NULL);
    int status = WIFEXITED(used.status) ? WEXITSTATUS(used.status) : -1;
    if (end != BENCH_DONE || (status != 0 && status != 3)) {
        printf("  %s: no papers\n", what);
        bench_target(false, what, sb_pool_print(run->pool, "papers in %.0f s", most_seconds));
        return;
    }
    bench_at_most("job file to all papers", used.seconds, most_seconds, "s");
    bench_at_most("memory", used.megabytes, 200, "MB");
}

static void put_file(const char *path, const char *text) {
    FILE *file = fopen(path, "w");
    if (file) {
        fputs(text, file);
        fclose(file);
    }
}

/* A shop of its own, with the recipe of the large batch. */
static const char *large_batch(sb_run *run, const char *folder) {
    const char *copy = sb_pool_print(run->pool, "cp -R rates templates '%s'", folder);
    const char *job = sb_pool_print(run->pool, "%s/bench.job", folder);
    if (system(copy) != 0)
        return job;
    put_file(sb_pool_print(run->pool, "%s/templates/rack.recipe", folder), bench_recipe(run));
    put_file(job, sb_pool_print(run->pool, "job bench\ndate 2026-02-02\ncustomer x\npiece rack\n  count %d\n",
                                BENCH_PIECES));
    return job;
}

static void work(void *context) {
    sb_run *run = context;
    const char *base = getenv("TMPDIR");
    char *folder = sb_pool_print(run->pool, "%s/sawbill-bench-XXXXXX", base && *base ? base : "/tmp");
    if (!mkdtemp(folder))
        return;
    printf("job file to all papers, with the processor's time\n");
    const char *out = sb_pool_print(run->pool, "%s/papers", folder);
    measure(run, "planters", (errand){"samples/harbour-planters.job", out}, 1);
    measure(run, "500 pieces, 40 kinds of part", (errand){large_batch(run, folder), out}, 3);
    if (system(sb_pool_print(run->pool, "rm -rf '%s'", folder)) != 0)
        printf("  %s is left behind\n", folder);
}

void bench_papers(void) {
    sb_run run = sb_run_new();
    if (run.pool)
        sb_pool_run(run.pool, work, &run);
    sb_run_free(&run);
}
