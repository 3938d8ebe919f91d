/* From cost to what the customer pays, in the order of sawbill/costing.h. */
#include "costing/inside.h"

static const int64_t WHOLE = 1000000; /* 100 % in ppm */
static const int64_t US_PER_HOUR = 3600000000;

/* ---- rates: the job's word goes before the shop's ---- */

static sb_share chosen(sb_job_share of_job, sb_share of_shop) {
    return of_job.given ? of_job.share : of_shop;
}

static void set_rates(costing *c) {
    const sb_job *job = c->job;
    const sb_settings *s = &c->shop->settings;
    sb_estimate *e = c->estimate;
    e->method = job->margin.given ? SB_MARGIN_ON_PRICE : job->markup.given ? SB_MARKUP_ON_COST : s->method;
    e->rate = job->margin.given ? job->margin.share : job->markup.given ? job->markup.share : s->margin;
    e->rate.ppm = costing_changed(c, FIGURE_PROFIT, NULL, e->rate.ppm);
    e->contingency_rate = chosen(job->contingency, s->contingency);
    e->contingency_rate.ppm = costing_changed(c, FIGURE_CONTINGENCY, NULL, e->contingency_rate.ppm);
    e->discount_rate = chosen(job->discount, (sb_share){0});
    e->discount_rate.ppm = costing_changed(c, FIGURE_DISCOUNT, NULL, e->discount_rate.ppm);
    e->deposit_rate = chosen(job->deposit, s->deposit);
}

static void check_rates(const costing *c) {
    const sb_job *job = c->job;
    const sb_estimate *e = c->estimate;
    if (e->method == SB_MARGIN_ON_PRICE && e->rate.ppm >= WHOLE)
        sb_error(c->run, job->margin.given ? job->margin.place : sb_shop_setting(c->shop, "margin"),
                 "a margin is a share of the price and must be under 100 %%; a markup, a share of cost, may "
                 "be more");
    if (e->discount_rate.ppm > WHOLE)
        sb_error(c->run, job->discount.place, "a discount cannot be more than the whole price");
    if (job->margin.given && job->markup.given)
        sb_error(c->run, job->markup.place,
                 "the job tells a margin and a markup; only one of the two can make the price");
}

/* ---- shares of the pieces ---- */

static int64_t *shares_of(const costing *c, sb_money amount, const int64_t *weights) {
    int64_t *shares = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    costing_share(c->run, amount.minor, weights, c->count, shares);
    return shares;
}

static void set_overhead(costing *c) {
    const sb_settings *s = &c->shop->settings;
    sb_estimate *e = c->estimate;
    bool by_hour = s->overhead_hour.minor != 0;
    e->overhead_weights = by_hour ? costing_in_lowest_terms(c, c->spent) : NULL;
    int64_t *weights = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    for (size_t i = 0; i < c->count; i++)
        weights[i] = by_hour ? e->overhead_weights[i] : e->pieces.items[i].labour.minor;
    if (by_hour)
        e->overhead.minor = sb_mul_div(
            c->micros, costing_changed(c, FIGURE_OVERHEAD, NULL, s->overhead_hour.minor), US_PER_HOUR);
    else
        e->overhead = sb_money_share(
            e->labour_total, (sb_share){costing_changed(c, FIGURE_OVERHEAD, NULL, s->overhead_labour.ppm)});
    const int64_t *shares = shares_of(c, e->overhead, weights);
    for (size_t i = 0; i < c->count; i++)
        e->pieces.items[i].overhead.minor = shares[i];
}

static void set_base(costing *c) {
    sb_estimate *e = c->estimate;
    int64_t *weights = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    for (size_t i = 0; i < c->count; i++) {
        sb_price_line *p = &e->pieces.items[i];
        p->cost = sb_money_add(sb_money_add(p->material, p->labour), p->overhead);
        weights[i] = p->cost.minor;
    }
    e->cost = sb_money_add(sb_money_add(e->material_total, e->labour_total), e->overhead);
    e->contingency = sb_money_share(e->cost, e->contingency_rate);
    e->base = sb_money_add(e->cost, e->contingency);
    const int64_t *shares = shares_of(c, e->contingency, weights);
    for (size_t i = 0; i < c->count; i++) {
        e->pieces.items[i].contingency.minor = shares[i];
        e->pieces.items[i].base = sb_money_add(e->pieces.items[i].cost, e->pieces.items[i].contingency);
    }
}

/* ---- what the customer sees ---- */

static void set_lines(costing *c) {
    const sb_settings *s = &c->shop->settings;
    sb_estimate *e = c->estimate;
    for (size_t i = 0; i < c->count; i++) {
        sb_price_line *p = &e->pieces.items[i];
        sb_share tax = s->prices_gross && p->tax ? p->tax->rate : (sb_share){0};
        p->price = e->method == SB_MARGIN_ON_PRICE ? sb_money_with_margin(p->base, e->rate)
                                                   : sb_money_with_markup(p->base, e->rate);
        p->discount = sb_money_share(p->price, e->discount_rate);
        sb_money net = sb_money_sub(p->price, p->discount);
        if (p->count > 0)
            p->unit = sb_unit_price(net, p->count, tax, s->price_point, s->point_less);
        p->line = sb_money_times(p->unit, p->count);
        e->price = sb_money_add(e->price, p->price);
        e->discount = sb_money_add(e->discount, p->discount);
    }
}

/* ---- what it leaves ---- */

static sb_share share_of(sb_money part, sb_money whole) {
    int64_t ppm = whole.minor > 0 ? sb_mul_div(part.minor, WHOLE, whole.minor) : 0;
    return (sb_share){ppm};
}

static void set_outcome(costing *c) {
    sb_estimate *e = c->estimate;
    e->floor = sb_money_add(e->cost, e->delivery);
    e->rounding = sb_money_sub(e->pieces_net, sb_money_sub(e->price, e->discount));
    sb_money pieces = sb_money_add(e->pieces_net, e->supplement);
    e->left = sb_money_sub(pieces, e->base);
    e->margin_left = share_of(e->left, pieces);
    e->markup_left = share_of(e->left, e->base);
    sb_money for_work = sb_money_add(sb_money_sub(e->net, e->floor), e->labour_total);
    if (c->micros > 0)
        e->earned_hour.minor = sb_mul_div(for_work.minor, US_PER_HOUR, c->micros);
}

void costing_prices(costing *c) {
    set_rates(c);
    check_rates(c);
    set_overhead(c);
    set_base(c);
    costing_delivery(c);
    set_lines(c);
    costing_close(c);
    costing_payments(c);
    set_outcome(c);
}
