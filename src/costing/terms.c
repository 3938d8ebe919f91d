/* What a job says in words, looked up in the shop: taxes, the price of a delivery, the minimum; and when what is due. */
#include "costing/inside.h"

#include <string.h>

static const int64_t WHOLE = 1000000; /* 100 % in ppm */

/* ---- taxes ---- */

static const sb_tax *named_tax(sb_run *run, const sb_shop *shop, const char *id, sb_place at) {
    const sb_tax *tax = sb_shop_tax(shop, id);
    size_t count = shop->settings.taxes.count;
    if (tax || !id)
        return tax;
    const char **known = SB_NEW_ARRAY(run->pool, const char *, count + 1);
    for (size_t i = 0; i < count; i++)
        known[i] = shop->settings.taxes.items[i].id;
    sb_error_unknown(run, at, "tax", id, known, count);
    return NULL;
}

const sb_tax *sb_job_tax(sb_run *run, const sb_shop *shop, const sb_job *job) {
    return named_tax(run, shop, job->tax, job->tax_place);
}

/* ---- delivery ---- */

static sb_money zone_price(sb_run *run, const sb_shop *shop, const sb_job *job) {
    size_t count = shop->settings.zones.count;
    const char **known = SB_NEW_ARRAY(run->pool, const char *, count + 1);
    for (size_t i = 0; i < count; i++) {
        known[i] = shop->settings.zones.items[i].id;
        if (strcmp(known[i], job->delivery_zone) == 0)
            return shop->settings.zones.items[i].price;
    }
    sb_error_unknown(run, job->delivery_zone_place, "zone", job->delivery_zone, known, count);
    return (sb_money){0};
}

static sb_money counted_price(sb_run *run, const sb_job *job, sb_money price, const char *word) {
    if (price.minor == 0)
        sb_error(run, job->delivery.place,
                 "the shop tells no price for a %s: expected a line `delivery %s ...` in shop.txt", word,
                 word);
    return price;
}

static int64_t units_of(const sb_shop *shop) {
    int64_t units = 1;
    for (int i = 0; i < shop->settings.currency.digits; i++)
        units *= 10;
    return units;
}

static sb_money in_minor(const sb_shop *shop, int64_t micro) {
    return (sb_money){sb_mul_div(micro, units_of(shop), 1000000)};
}

/* A job is read before its currency is known: half a cent is found here. */
static void look_at_amount(sb_run *run, const sb_shop *shop, const sb_job_amount *amount) {
    const sb_settings *s = &shop->settings;
    if (amount->given && amount->micro % (1000000 / units_of(shop)) != 0)
        sb_error(run, amount->place, "expected an amount of %s: no finer than %s", s->currency.code,
                 s->currency.digits ? sb_pool_print(run->pool, "%d decimals", s->currency.digits)
                                    : "whole units");
}

static sb_money delivery_each(sb_run *run, const sb_shop *shop, const sb_job *job) {
    switch (job->delivery_by) {
    case SB_DELIVERY_AMOUNT:
        return in_minor(shop, job->delivery.micro);
    case SB_DELIVERY_ZONE:
        return zone_price(run, shop, job);
    case SB_DELIVERY_TRIPS:
        return counted_price(run, job, shop->settings.delivery_trip, "trip");
    case SB_DELIVERY_KM:
        return counted_price(run, job, shop->settings.delivery_km, "km");
    case SB_DELIVERY_MILES:
        return counted_price(run, job, shop->settings.delivery_mile, "mile");
    }
    return (sb_money){0};
}

void sb_job_look_over(sb_run *run, const sb_shop *shop, const sb_job *job) {
    sb_job_tax(run, shop, job);
    for (size_t i = 0; i < job->pieces.count; i++)
        named_tax(run, shop, job->pieces.items[i].tax, job->pieces.items[i].tax_place);
    for (size_t i = 0; i < job->extras.count; i++)
        look_at_amount(run, shop, &job->extras.items[i]);
    look_at_amount(run, shop, &job->minimum);
    if (job->delivery_by == SB_DELIVERY_AMOUNT)
        look_at_amount(run, shop, &job->delivery);
    if (!job->delivery.given)
        return;
    named_tax(run, shop, job->delivery_tax, job->delivery_tax_place);
    delivery_each(run, shop, job);
}

void costing_delivery(costing *c) {
    sb_estimate *e = c->estimate;
    const sb_job *job = c->job;
    bool counted = job->delivery_by > SB_DELIVERY_ZONE;
    e->job_tax = sb_job_tax(c->run, c->shop, job);
    for (size_t i = 0; i < c->count; i++) {
        const sb_job_piece *source = c->takeoff->pieces.items[i].source;
        e->pieces.items[i].tax =
            source && source->tax ? named_tax(c->run, c->shop, source->tax, source->tax_place) : e->job_tax;
    }
    e->delivery_tax = job->delivery_tax
                          ? named_tax(c->run, c->shop, job->delivery_tax, job->delivery_tax_place)
                          : e->job_tax;
    sb_money each = delivery_each(c->run, c->shop, job);
    e->delivery_each.minor = costing_changed(c, FIGURE_DELIVERY, NULL, each.minor);
    e->delivery_milli = counted ? job->delivery.micro / 1000 : 1000;
    e->delivery.minor = sb_mul_div(e->delivery_each.minor, e->delivery_milli, 1000);
    e->minimum = job->minimum.given ? in_minor(c->shop, job->minimum.micro) : c->shop->settings.minimum;
}

/* ---- payments ---- */

static void add_stage(costing *c, sb_share share, const char *text, sb_place place) {
    SB_PUSH(c->run->pool, c->estimate->stages, ((sb_stage){.share = share, .text = text, .place = place}));
}

static void take_stages(costing *c) {
    const sb_settings *s = &c->shop->settings;
    for (size_t i = 0; i < c->job->stages.count; i++)
        add_stage(c, c->job->stages.items[i].share, c->job->stages.items[i].text,
                  c->job->stages.items[i].place);
    for (size_t i = 0; i < s->stages.count && c->job->stages.count == 0; i++)
        add_stage(c, s->stages.items[i].share, s->stages.items[i].text, s->stages.items[i].place);
}

void costing_payments(costing *c) {
    sb_estimate *e = c->estimate;
    e->deposit = sb_money_share(e->gross, e->deposit_rate);
    take_stages(c);
    int64_t share = e->deposit_rate.ppm;
    sb_money before = e->deposit;
    for (size_t i = 0; i < e->stages.count; i++) {
        sb_stage *stage = &e->stages.items[i];
        share = sb_add(share, stage->share.ppm);
        sb_money due = sb_money_share(e->gross, (sb_share){share});
        stage->amount = sb_money_sub(due, before);
        before = due;
    }
    e->rest = sb_money_sub(e->gross, before);
    if (e->stages.count && share > WHOLE)
        sb_error(c->run, e->stages.items[e->stages.count - 1].place,
                 "deposit and stages come to more than 100 %% of the total");
}
