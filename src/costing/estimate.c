/* One estimate: labour first, for the batch's lines are shared by it, then material, prices and what they
 * leave. */
#include "costing/inside.h"

static void start_pieces(costing *c) {
    c->spent = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    c->busy = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    for (size_t i = 0; i < c->count; i++) {
        sb_price_line line = {.piece = i, .count = c->takeoff->pieces.items[i].count};
        SB_PUSH(c->run->pool, c->estimate->pieces, line);
    }
}

/* What is out of range stays so through every sum, so that the last ones tell. */
static bool in_range(const sb_estimate *e) {
    return e->gross.minor != SB_BAD && e->deposit.minor != SB_BAD && e->floor.minor != SB_BAD &&
           e->left.minor != SB_BAD && e->rest.minor != SB_BAD && e->rounding.minor != SB_BAD &&
           e->time.ms != SB_BAD && e->earned_hour.minor != SB_BAD && e->mass.mg != SB_BAD &&
           e->waste.ppm != SB_BAD && e->spare.ppm != SB_BAD && e->boards_length.nm != SB_BAD &&
           e->sheets_area.um2 != SB_BAD;
}

int64_t costing_changed(const costing *c, costing_figure figure, const void *of, int64_t value) {
    bool meant = c->change.figure == figure && (c->change.of == of || !of);
    return meant ? sb_mul_div(value, c->change.ppm, 1000000) : value;
}

static void work_out(costing *c) {
    c->count = c->takeoff->pieces.count;
    start_pieces(c);
    costing_labour(c);
    costing_materials(c);
    costing_prices(c);
    costing_measures(c);
}

const sb_estimate *costing_estimate_with(sb_run *run, const sb_estimate *as_it_is, const sb_cutlist *cutlist,
                                         costing_change change) {
    sb_estimate *e = SB_NEW(run->pool, sb_estimate);
    *e = (sb_estimate){.shop = as_it_is->shop,
                       .job = as_it_is->job,
                       .takeoff = as_it_is->takeoff,
                       .plan = as_it_is->plan,
                       .order = as_it_is->order};
    costing c = {.run = run, .shop = e->shop, .job = e->job, .takeoff = e->takeoff, .plan = e->plan};
    c.cutlist = cutlist;
    c.order = e->order;
    c.estimate = e;
    c.change = change;
    work_out(&c);
    return e;
}

const sb_estimate *sb_estimate_of(sb_run *run, const sb_shop *shop, const sb_takeoff *takeoff,
                                  const sb_cutlist *cutlist, const sb_plan *plan, const sb_order *order) {
    if (!shop || !takeoff || !cutlist || !plan || !order)
        return NULL;
    sb_estimate *e = SB_NEW(run->pool, sb_estimate);
    *e = (sb_estimate){.shop = shop, .job = takeoff->job, .takeoff = takeoff, .plan = plan, .order = order};
    costing c = {
        .run = run, .shop = shop, .job = takeoff->job, .takeoff = takeoff, .cutlist = cutlist, .plan = plan};
    c.order = order;
    c.estimate = e;
    work_out(&c);
    if (!sb_ok(run))
        return e;
    if (in_range(e))
        costing_advise(&c);
    else
        sb_error(run, takeoff->job->place,
                 "amounts of this job are out of range: money, time or timber too large to count");
    return e;
}
