/* main/watch.c -- how far long work is: one line on the terminal, written over again and again. */
#include <stdio.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

#include "main/command.h"

#define FIRST_AFTER 1.0 /* seconds; what is quicker needs no telling */
#define EVERY       0.3
#define COLUMNS     79

typedef struct watching {
    double started, told;
    int digits;   /* of money */
    int standing; /* characters of the line on the terminal */
} watching;

static double seconds_now(void) {
    struct timespec now;
    return clock_gettime(CLOCK_MONOTONIC, &now) ? 0 : (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

static void take_away(watching *w) {
    if (w->standing > 0)
        fprintf(stderr, "\r%*s\r", w->standing, "");
    w->standing = 0;
}

static double amount(const watching *w, sb_cost cost) {
    double unit = 1000;
    for (int i = 0; i < w->digits; i++)
        unit *= 10;
    return (double)cost.milli / unit;
}

static void put_line(watching *w, const char *line) {
    int width = (int)strlen(line);
    take_away(w);
    w->standing = width < COLUMNS ? width : COLUMNS;
    fprintf(stderr, "%.*s", w->standing, line);
    fflush(stderr);
}

static void tell(void *context, const char *stock, sb_cost cost, sb_cost bound) {
    watching *w = context;
    double now = seconds_now(), best = amount(w, cost), least = amount(w, bound);
    char line[200];
    if (!stock)
        take_away(w);
    if (!stock || now - w->started < FIRST_AFTER || now - w->told < EVERY)
        return;
    w->told = now;
    double gap = least > 0 ? 100 * (best - least) / least : 100;
    snprintf(line, sizeof line,
             "planning %.30s: %.*f, at least %.*f, gap %.2f %%, %.0f s (Ctrl-C: take this)", stock, w->digits,
             best, w->digits, least, gap, now - w->started);
    put_line(w, line);
}

const sb_watch *watch_new(sb_run *run, const sb_options *options, int digits) {
    sb_watch *watch = SB_NEW(run->pool, sb_watch);
    watch->stop_asked = stop_flag();
    if (options->quiet || !isatty(STDERR_FILENO))
        return watch;
    watching *w = SB_NEW(run->pool, watching);
    *w = (watching){.started = seconds_now(), .digits = digits};
    watch->context = w;
    watch->tell = tell;
    return watch;
}
