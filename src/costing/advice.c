/* What a person should look at before the quote goes out. */
#include "costing/inside.h"

#include <string.h>

enum {
    WHOLE = 1000000, /* 100 % in ppm */
    MOST_TIMES = 10  /* the cost: more is asked about */
};

static const char *money(const costing *c, sb_money amount) {
    const sb_settings *s = &c->shop->settings;
    return sb_pool_print(c->run->pool, "%s %s", sb_write_money(c->run, amount, s->currency, &s->style),
                         s->currency.code);
}

static const char *share(const costing *c, sb_share part) {
    return sb_write_share(c->run, part, 0, c->shop->settings.style.decimal_comma);
}

static void advise_price(const costing *c) {
    const sb_estimate *e = c->estimate;
    sb_place place = e->discount_rate.ppm > 0 ? c->job->discount.place : c->job->place;
    if (e->net.minor < e->floor.minor)
        sb_advise(
            c->run, place,
            "the net price of %s is under the floor of %s: it does not pay for material, labour, overhead "
            "and delivery",
            money(c, e->net), money(c, e->floor));
    else if (e->discount_rate.ppm > 0 && e->left.minor < 0)
        sb_advise(c->run, place,
                  "a discount of %s of the price leaves %s for the pieces; cost with contingency is %s",
                  share(c, e->discount_rate), money(c, e->pieces_net), money(c, e->base));
}

/* A rate that makes the price ten times the cost is rather a slip of the pen. */
static void advise_rate(const costing *c) {
    const sb_estimate *e = c->estimate;
    bool margin = e->method == SB_MARGIN_ON_PRICE;
    sb_job_share told = margin ? c->job->margin : c->job->markup;
    int64_t times = (margin ? sb_money_with_margin : sb_money_with_markup)((sb_money){WHOLE}, e->rate).minor;
    if (times < MOST_TIMES * WHOLE)
        return;
    sb_advise(c->run, told.given ? told.place : sb_shop_setting(c->shop, margin ? "margin" : "markup"),
              "a %s of %s of %s makes the price %lld times the cost with contingency; is that meant?",
              margin ? "margin" : "markup", share(c, e->rate), margin ? "price" : "cost",
              (long long)(times / WHOLE));
}

/* ---- dates of prices ---- */

typedef bool (*suspect)(const costing *c, sb_date date);

static bool old(const costing *c, sb_date date) {
    int limit = c->shop->settings.price_age_days;
    return limit > 0 && sb_date_days(c->job->date) - sb_date_days(date) > limit;
}

static bool ahead(const costing *c, sb_date date) {
    return sb_date_days(date) > sb_date_days(c->job->date);
}

static bool dated(const sb_order_line *line, const char *merchant) {
    return line->offer && !line->reorder && line->offer->date.year != 0 &&
           (!merchant || strcmp(line->offer->merchant, merchant) == 0);
}

/* One word for each merchant: a price list grows old as a whole. Names the first such row. */
static void advise_dates(const costing *c, const char *merchant, suspect is_suspect, const char *what) {
    const sb_order_line *first = NULL;
    size_t more = 0;
    for (size_t i = 0; i < c->order->lines.count; i++) {
        const sb_order_line *line = &c->order->lines.items[i];
        if (!dated(line, merchant) || !is_suspect(c, line->offer->date))
            continue;
        if (first)
            more++;
        else
            first = line;
    }
    if (!first)
        return;
    const char *others = more == 0   ? ""
                         : more == 1 ? " (and one price more of theirs)"
                                     : sb_pool_print(c->run->pool, " (and %zu prices more of theirs)", more);
    sb_advise(c->run, first->offer->place, "the price of %s of %s is dated %s, %s%s", first->stock->id,
              merchant, sb_write_date(c->run, first->offer->date), what, others);
}

static bool merchant_seen(const sb_order *order, size_t at) {
    for (size_t i = 0; i < at; i++)
        if (dated(&order->lines.items[i], order->lines.items[at].offer->merchant))
            return true;
    return false;
}

static void advise_prices(const costing *c) {
    const char *date = sb_write_date(c->run, c->job->date);
    const char *aged = sb_pool_print(c->run->pool, "more than %d days before the job's date, %s",
                                     c->shop->settings.price_age_days, date);
    const char *future = sb_pool_print(c->run->pool, "after the job's date, %s", date);
    for (size_t i = 0; i < c->order->lines.count; i++) {
        const sb_order_line *line = &c->order->lines.items[i];
        if (!dated(line, NULL) || merchant_seen(c->order, i))
            continue;
        advise_dates(c, line->offer->merchant, old, aged);
        advise_dates(c, line->offer->merchant, ahead, future);
    }
}

void costing_advise(const costing *c) {
    advise_price(c);
    advise_rate(c);
    if (c->job->date.year != 0)
        advise_prices(c);
}
