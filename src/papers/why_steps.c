/* The steps of the price, each from the ones above it. */
#include "papers/why_steps.h"
#include "papers/figures.h"
#include "papers/quote_table.h"

static const sb_estimate *estimate(const why *w) {
    return w->way->estimate;
}

static const char *money(why *w, sb_money amount) {
    return money_words(w->run, w->shop, amount);
}

static const char *share(why *w, sb_share rate) {
    return share_words(w->run, w->shop, rate);
}

static sb_place setting(const why *w, const char *keyword) {
    return sb_shop_setting(w->shop, keyword);
}

/* The job's own share goes before the shop's. */
static sb_place either(const why *w, const sb_job_share *own, const char *keyword) {
    return own->given ? own->place : setting(w, keyword);
}

static void say_material(why *w) {
    const sb_estimate *e = estimate(w);
    why_say_money(w, "material", e->material_total, "the sum of its lines:", (sb_place){0});
    for (size_t i = 0; i < e->materials.count; i++) {
        const sb_material_line *line = &e->materials.items[i];
        const char *how =
            sb_pool_print(w->run->pool, "%s x %s", number_words(w->run, w->shop, line->quantity_milli, 3, 0),
                          exact_cost_words(w->run, w->shop, line->each));
        why_say_money(w, line->what, line->amount, how, line->place);
    }
}

static void say_labour(why *w) {
    const sb_estimate *e = estimate(w);
    why_say_money(
        w, "labour", e->labour_total,
        sb_pool_print(w->run->pool, "%s, the sum of its lines:", exact_hours_words(w->run, w->shop, e->time)),
        (sb_place){0});
    for (size_t i = 0; i < e->labour.count; i++) {
        const sb_labour_line *line = &e->labour.items[i];
        const char *how =
            sb_pool_print(w->run->pool, "%s at %s an hour%s", exact_hours_words(w->run, w->shop, line->time),
                          money(w, line->hour), line->from_plan ? ", counted from the cutting plan" : "");
        why_say_money(w, why_work_words(w, line), line->amount, how, line->operation->place);
    }
}

static void say_overhead(why *w) {
    const sb_settings *s = &w->shop->settings;
    const char *how =
        s->overhead_hour.minor > 0
            ? sb_pool_print(w->run->pool, "%s x %s an hour",
                            exact_hours_words(w->run, w->shop, estimate(w)->time), money(w, s->overhead_hour))
            : sb_pool_print(w->run->pool, "%s of labour", share(w, s->overhead_labour));
    why_say_money(w, "overhead", estimate(w)->overhead, how, setting(w, "overhead"));
}

static void say_cost(why *w) {
    why_say_money(w, "cost", estimate(w)->cost, "material + labour + overhead", (sb_place){0});
}

static void say_contingency(why *w) {
    why_say_money(w, "contingency", estimate(w)->contingency,
                  sb_pool_print(w->run->pool, "%s of cost", share(w, estimate(w)->contingency_rate)),
                  either(w, &estimate(w)->job->contingency, "contingency"));
}

static void say_base(why *w) {
    why_say_money(w, "base", estimate(w)->base, "cost + contingency", (sb_place){0});
}

static void say_price(why *w) {
    const sb_estimate *e = estimate(w);
    bool margin = e->method == SB_MARGIN_ON_PRICE;
    const char *how =
        margin ? sb_pool_print(w->run->pool, "base / (1 - margin), margin %s of price", share(w, e->rate))
               : sb_pool_print(w->run->pool, "base x (1 + markup), markup %s on cost", share(w, e->rate));
    why_say_money(w, "price", e->price, how,
                  margin ? either(w, &e->job->margin, "margin") : either(w, &e->job->markup, "markup"));
}

static void say_discount(why *w) {
    const sb_estimate *e = estimate(w);
    why_say_money(w, "discount", e->discount,
                  e->discount_rate.ppm == 0
                      ? "none"
                      : sb_pool_print(w->run->pool, "%s of price", share(w, e->discount_rate)),
                  e->job->discount.place);
}

void why_quoted_discount(why *w) {
    const sb_estimate *e = estimate(w);
    if (!quote_shows_discount(e))
        return;
    sb_money left = quote_pieces_sum(e), list = quote_list_price(e);
    why_say_money(w, "list price on the quote", list,
                  sb_pool_print(w->run->pool, "%s, what the pieces come to there, / (1 - %s)", money(w, left),
                                share(w, e->discount_rate)),
                  e->job->discount.place);
    why_say_money(w, "discount on the quote", sb_money_sub(list, left),
                  sb_pool_print(w->run->pool, "list price - %s; it is %s of the list price to the cent",
                                money(w, left), share(w, e->discount_rate)),
                  e->job->discount.place);
}

static void say_pieces(why *w) {
    why_say_money(w, "pieces, net", estimate(w)->pieces_net,
                  sb_pool_print(w->run->pool, "price - discount, and %s that price points add",
                                money(w, estimate(w)->rounding)),
                  setting(w, "price-point"));
}

static const char *delivery_words(why *w) {
    static const char *const units[] = {"", "", "trips", "km", "miles"};
    const sb_estimate *e = estimate(w);
    if (!e->job->delivery.given)
        return "none";
    if (e->job->delivery_by == SB_DELIVERY_AMOUNT)
        return "as the job says";
    if (e->job->delivery_by == SB_DELIVERY_ZONE)
        return sb_pool_print(w->run->pool, "the shop's price for the zone %s", e->job->delivery_zone);
    return sb_pool_print(w->run->pool, "%s %s x %s", number_words(w->run, w->shop, e->delivery_milli, 3, 0),
                         units[e->job->delivery_by], money(w, e->delivery_each));
}

/* The line of shop.txt it goes by. */
static void delivery_rate(why *w) {
    static const char *const rows[] = {"", "", "delivery trip", "delivery km", "delivery mile"};
    const sb_job *job = estimate(w)->job;
    if (!job->delivery.given || job->delivery_by == SB_DELIVERY_AMOUNT)
        return;
    const char *row = job->delivery_by == SB_DELIVERY_ZONE
                          ? sb_pool_print(w->run->pool, "zone %s", job->delivery_zone)
                          : rows[job->delivery_by];
    why_say_money(w, "delivery, each", estimate(w)->delivery_each, row, setting(w, row));
}

static void say_delivery(why *w) {
    why_say_money(w, "delivery", estimate(w)->delivery, delivery_words(w), estimate(w)->job->delivery.place);
    delivery_rate(w);
}

static void say_supplement(why *w) {
    const sb_estimate *e = estimate(w);
    const char *how =
        e->minimum.minor == 0
            ? "no minimum is set"
            : sb_pool_print(w->run->pool, "what the pieces lack to %s, the minimum for a job%s",
                            money(w, e->minimum), w->shop->settings.prices_gross ? ", with tax" : "");
    why_say_money(w, "supplement", e->supplement, how,
                  e->job->minimum.given ? e->job->minimum.place : setting(w, "minimum"));
}

static void say_net(why *w) {
    why_say_money(w, "net", estimate(w)->net,
                  estimate(w)->minimum.minor ? "pieces + supplement + delivery" : "pieces + delivery",
                  (sb_place){0});
}

static void say_tax(why *w) {
    const sb_estimate *e = estimate(w);
    for (size_t i = 0; i < e->taxes.count; i++)
        why_say_money(w, "tax", e->taxes.items[i].amount,
                      sb_pool_print(w->run->pool, "%s of %s", share(w, e->taxes.items[i].tax->rate),
                                    money(w, e->taxes.items[i].base)),
                      e->taxes.items[i].tax->place);
    if (e->taxes.count == 0)
        why_say_money(w, "tax", e->tax, "the shop sets none", w->shop->settings.place);
}

static void say_total(why *w) {
    why_say_money(w, "total", estimate(w)->gross, "net + tax", (sb_place){0});
}

static void say_deposit(why *w) {
    why_say_money(
        w, "deposit", estimate(w)->deposit,
        sb_pool_print(w->run->pool, "%s of the total with tax", share(w, estimate(w)->deposit_rate)),
        either(w, &estimate(w)->job->deposit, "deposit"));
}

static void say_stages(why *w) {
    const sb_estimate *e = estimate(w);
    for (size_t i = 0; i < e->stages.count; i++)
        why_say_money(
            w, sb_pool_print(w->run->pool, "stage: %s", e->stages.items[i].text), e->stages.items[i].amount,
            sb_pool_print(
                w->run->pool,
                "%s of the total with tax; what is due up to here is rounded, less what was due before",
                share(w, e->stages.items[i].share)),
            e->stages.items[i].place);
    why_say_money(w, "rest", e->rest, "total - deposit - stages", (sb_place){0});
}

static void say_floor(why *w) {
    why_say_money(w, "floor", estimate(w)->floor, "cost + delivery: below this net price the job loses money",
                  (sb_place){0});
}

static void say_hours(why *w) {
    why_say(w, "hours", hours_words(w->run, w->shop, estimate(w)->time), "the sum of the labour lines",
            (sb_place){0});
}

static void say_earned(why *w) {
    why_say_money(w, "earned per hour", estimate(w)->earned_hour,
                  "(net - material - overhead - delivery) / hours", (sb_place){0});
}

static void say_margin(why *w) {
    why_say(w, "margin left", share(w, estimate(w)->margin_left),
            sb_pool_print(w->run->pool, "%s left of the pieces' net price, after discount and rounding",
                          money(w, estimate(w)->left)),
            (sb_place){0});
}

const why_total_row why_price_steps[] = {
    {"material", NULL, say_material, WHY_SUM},
    {"labour", NULL, say_labour, WHY_SUM},
    {"overhead", NULL, say_overhead, WHY_SUM},
    {"cost", NULL, say_cost, WHY_STEP},
    {"contingency", NULL, say_contingency, WHY_STEP},
    {"base", NULL, say_base, WHY_STEP},
    {"price", "markup", say_price, WHY_STEP},
    {"discount", NULL, say_discount, WHY_STEP},
    {"pieces, net", "pieces", say_pieces, WHY_STEP},
    {"supplement", "minimum", say_supplement, WHY_STEP},
    {"delivery", NULL, say_delivery, WHY_STEP},
    {"net", NULL, say_net, WHY_STEP},
    {"tax", NULL, say_tax, WHY_STEP},
    {"total", "gross", say_total, WHY_STEP},
    {"deposit", NULL, say_deposit, WHY_END},
    {"rest", "stages", say_stages, WHY_END},
    {"floor", NULL, say_floor, WHY_END},
    {"hours", NULL, say_hours, WHY_APART},
    {"earned per hour", "earned", say_earned, WHY_END},
    {"margin left", "margin", say_margin, WHY_END},
    {"risk", NULL, why_risk, WHY_APART},
    {"sensitivity", NULL, why_sensitivity, WHY_APART},
    {0},
};

void why_say_sum(why *w, const why_total_row *row) {
    const char *how = sb_pool_print(w->run->pool, "'why %s' shows its lines", row->name);
    if (row->say == say_overhead)
        say_overhead(w);
    else
        why_say_money(w, row->name,
                      row->say == say_material ? estimate(w)->material_total : estimate(w)->labour_total, how,
                      (sb_place){0});
}
