/* Work in a process of its own: its memory can be measured, and what goes wrong there ends there. */
#include "bench.h"

#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#define GRACE 10 /* seconds for a solver to notice that its time is over */

static void limit(int what, rlim_t most) {
    struct rlimit to = {most, most};
    setrlimit(what, &to);
}

/* Solvers talk, and complain where they run out of memory. */
static void be_silent(void) {
    int nowhere = open("/dev/null", O_WRONLY);
    if (nowhere < 0)
        return;
    dup2(nowhere, STDOUT_FILENO);
    dup2(nowhere, STDERR_FILENO);
}

static double peak_of_this_process(void) {
    struct rusage used;
    getrusage(RUSAGE_SELF, &used);
    return (double)used.ru_maxrss / 1024;
}

static bool write_all(int to, const void *bytes, size_t size) {
    return write(to, bytes, size) == (ssize_t)size;
}

static bool read_all(int from, void *bytes, size_t size) {
    return read(from, bytes, size) == (ssize_t)size;
}

static void be_child(bench_work *work, void *context, void *result, size_t size, int out) {
    work(context, result);
    double peak = peak_of_this_process();
    _exit(!write_all(out, &peak, sizeof peak) || !write_all(out, result, size));
}

bench_end bench_in_child(bench_work *work, void *context, void *result, size_t size, unsigned seconds,
                         unsigned megabytes, double *peak) {
    int ends[2], status;
    double held = 0;
    if (pipe(ends))
        return BENCH_NO_MEMORY;
    fflush(stdout);
    pid_t child = fork();
    if (child == 0) {
        limit(RLIMIT_CPU, seconds + GRACE);
        limit(RLIMIT_AS, (rlim_t)megabytes << 20);
        be_silent();
        be_child(work, context, result, size, ends[1]);
    }
    close(ends[1]);
    bool done = child > 0 && read_all(ends[0], &held, sizeof held) && read_all(ends[0], result, size);
    close(ends[0]);
    if (child > 0)
        waitpid(child, &status, 0);
    if (peak)
        *peak = held;
    if (done)
        return BENCH_DONE;
    bool timed_out =
        child > 0 && WIFSIGNALED(status) && (WTERMSIG(status) == SIGXCPU || WTERMSIG(status) == SIGKILL);
    return timed_out ? BENCH_NO_TIME : BENCH_NO_MEMORY;
}
