/* Budget of a search, counted in steps. */
#include <time.h>

#include "cutting/work.h"

static double seconds_now(void) {
    struct timespec now;
    if (clock_gettime(CLOCK_MONOTONIC, &now))
        return 0;
    return (double)now.tv_sec + (double)now.tv_nsec * 1e-9;
}

sb_work sb_work_start(const sb_cut_rules *rules) {
    return (sb_work){.rules = rules, .started = seconds_now(), .dice = 20240229};
}

static bool must_stop(const sb_work *work) {
    const sb_cut_rules *rules = work->rules;
    if (rules->watch && rules->watch->stop_asked && *rules->watch->stop_asked)
        return true;
    return rules->seconds > 0 && seconds_now() - work->started > rules->seconds;
}

bool sb_work_is_broken_off(sb_work *work) {
    work->broken_off = work->broken_off || must_stop(work);
    return work->broken_off;
}

double sb_work_seconds(const sb_work *work) {
    if (work->rules->seconds <= 0)
        return 0;
    double left = work->started + work->rules->seconds - seconds_now();
    return left > 0.001 ? left : 0.001;
}

void sb_work_show(sb_work *work, const char *stock, const int64_t *cost, const sb_cost *bound) {
    work->stock = stock;
    work->cost = cost;
    work->bound = bound;
}

static void tell(const sb_work *work) {
    const sb_watch *watch = work->rules->watch;
    if (watch && watch->tell && work->stock)
        watch->tell(watch->context, work->stock, (sb_cost){*work->cost}, *work->bound);
}

void sb_work_end(const sb_work *work) {
    const sb_watch *watch = work->rules->watch;
    if (watch && watch->tell)
        watch->tell(watch->context, NULL, (sb_cost){0}, (sb_cost){0});
}

bool sb_work_goes_on(sb_work *work) {
    tell(work);
    return !sb_work_is_broken_off(work) && work->left > 0;
}

/* Knuth's linear congruential generator (The Art of Computer Programming, MMIX); the high bits are the good
 * ones. */
uint64_t sb_work_dice(sb_work *work, uint64_t sides) {
    work->dice = work->dice * 6364136223846793005u + 1442695040888963407u;
    return (work->dice >> 33) % sides;
}
