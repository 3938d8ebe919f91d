/* A job's options, each worked through from takeoff to estimate. */
#include "costing/inside.h"

static double seconds_each(const sb_job *job, const sb_tune *tune) {
    return job->options.count > 1 ? tune->seconds / (double)job->options.count : tune->seconds;
}

/* The same cutting list under the caller's limits for the search. */
static const sb_cutlist *tuned(sb_run *run, const sb_cutlist *cutlist, const sb_job *job,
                               const sb_tune *tune) {
    if (!cutlist || !tune)
        return cutlist;
    sb_cutlist *copy = SB_NEW(run->pool, sb_cutlist);
    *copy = *cutlist;
    copy->problem.rules.seconds = seconds_each(job, tune);
    copy->problem.rules.watch = tune->watch;
    copy->problem.rules.material_only = tune->material_only;
    return copy;
}

/* Errors of one option do not keep the next from telling its own. */
static void work_through(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                         const sb_tune *tune, sb_way *way) {
    size_t before = sb_notices_raised(run, SB_ERROR);
    way->takeoff = sb_takeoff_of(run, shop, book, job, way->option);
    if (!way->takeoff || sb_notices_raised(run, SB_ERROR) > before)
        return;
    way->cutlist = tuned(run, sb_cutlist_of(run, shop, &way->takeoff, 1), job, tune);
    if (!way->cutlist || sb_notices_raised(run, SB_ERROR) > before)
        return;
    way->plan = sb_cutlist_plan(run, shop, &way->takeoff, 1, &way->cutlist);
    if (!way->plan || sb_notices_raised(run, SB_ERROR) > before)
        return;
    way->order = sb_order_of(run, shop, &way->takeoff, 1, way->cutlist, way->plan, false);
    if (!way->order || sb_notices_raised(run, SB_ERROR) > before)
        return;
    way->estimate = sb_estimate_of(run, shop, way->takeoff, way->cutlist, way->plan, way->order);
    if (!way->estimate || sb_notices_raised(run, SB_ERROR) > before || (tune && tune->price_alone))
        return;
    way->risk = sb_risk_of(run, way->estimate);
    way->sensitivity = sb_sensitivity_of(run, way->estimate, way->cutlist);
}

static void add_way(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                    const sb_tune *tune, const sb_job_option *option, sb_ways *ways) {
    sb_way way = {.option = option};
    if (option)
        sb_notices_enter(run, option->place, sb_pool_print(run->pool, "option %s", option->name));
    work_through(run, shop, book, job, tune, &way);
    if (option)
        sb_notices_leave(run);
    SB_PUSH(run->pool, ways->list, way);
}

const sb_ways *sb_ways_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                          const sb_tune *tune) {
    sb_ways *ways = SB_NEW(run->pool, sb_ways);
    if (!shop || !job)
        return NULL;
    sb_job_look_over(run, shop, job);
    if (job->options.count == 0)
        add_way(run, shop, book, job, tune, NULL, ways);
    for (size_t i = 0; i < job->options.count; i++)
        add_way(run, shop, book, job, tune, &job->options.items[i], ways);
    return sb_ok(run) ? ways : NULL;
}
