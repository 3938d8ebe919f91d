/* The steps of the price, each from the ones above it. */
#include "papers/figures.h"
#include "papers/why.h"

#include <string.h>
#include <strings.h>

typedef struct total {
    const char *name, *also;
    void (*say)(why *w);
} total;

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
        why_say_money(w, line->operation->title, line->amount, how, line->operation->place);
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

/* In the order of the price, so that all of them together are the whole chain. */
static const total totals[] = {
    {"material", NULL, say_material},
    {"labour", NULL, say_labour},
    {"overhead", NULL, say_overhead},
    {"cost", NULL, say_cost},
    {"contingency", NULL, say_contingency},
    {"base", NULL, say_base},
    {"price", "markup", say_price},
    {"discount", NULL, say_discount},
    {"pieces, net", "pieces", say_pieces},
    {"supplement", "minimum", say_supplement},
    {"delivery", NULL, say_delivery},
    {"net", NULL, say_net},
    {"tax", NULL, say_tax},
    {"total", "gross", say_total},
    {"deposit", NULL, say_deposit},
    {"rest", "stages", say_stages},
    {"floor", NULL, say_floor},
    {"hours", NULL, say_hours},
    {"earned per hour", "earned", say_earned},
    {"margin left", "margin", say_margin},
    {"risk", NULL, why_risk},
    {"sensitivity", NULL, why_sensitivity},
};
enum {
    TOTAL_COUNT = sizeof totals / sizeof *totals
};

/* The same steps as the papers print them. */
static const char *const printed[][2] = {
    {"total with tax", "total"},
    {"total without tax", "net"},
    {"cost with contingency", "base"},
    {"less discount", "discount"},
    {"price points", "pieces, net"},
    {"price of the pieces, as above", "pieces, net"},
    {"delivery, net", "delivery"},
    {"supplement to the minimum, net", "supplement"},
    {"floor, net", "floor"},
    {"net above the floor", "floor"},
    {"left for the shop", "margin left"},
    {"markup left", "margin left"},
    {"margin left, of net", "margin left"},
    {"price point", "pieces, net"},
    {"price point, less", "pieces, net"},
    {"delivery, how many", "delivery"},
    {"supplement to the minimum", "supplement"},
    {"supplement to the minimum, net", "supplement"},
    {"list price of the pieces", "discount"},
    {"deposit, payable when you order", "deposit"},
    {"rest, payable on delivery", "rest"},
    {"supplement for a small order", "supplement"},
    {"work", "hours"},
    {"cost, all at its likely value", "risk"},
    {"10 % of cases cost at most", "risk"},
    {"50 % of cases cost at most", "risk"},
    {"80 % of cases cost at most", "risk"},
    {"90 % of cases cost at most", "risk"},
    {"mean cost of all cases", "risk"},
    {"cases that this price does not pay", "risk"},
    {"loses money", "risk"},
};
enum {
    PRINTED_COUNT = sizeof printed / sizeof *printed
};

static bool is_tax(const why *w, const char *figure, const sb_tax *tax) {
    const char *full = sb_pool_print(w->run->pool, "tax: %s, %s", tax->title, tax->id);
    return strcasecmp(figure, tax->title) == 0 || strcasecmp(figure, full) == 0 ||
           strcasecmp(figure, full + strlen("tax: ")) == 0;
}

/* The step's own word for what a paper prints; a tax goes by its title, a payment by when it is due. */
static const char *step_word(const why *w, const char *figure) {
    static const char sure[] = "net price that pays in "; /* and in how many cases */
    for (size_t i = 0; i < PRINTED_COUNT; i++)
        if (strcasecmp(figure, printed[i][0]) == 0)
            return printed[i][1];
    for (size_t i = 0; i < estimate(w)->taxes.count; i++)
        if (is_tax(w, figure, estimate(w)->taxes.items[i].tax))
            return "tax";
    for (size_t i = 0; i < estimate(w)->stages.count; i++)
        if (strcasecmp(figure, estimate(w)->stages.items[i].text) == 0)
            return "rest";
    if (strncasecmp(figure, sure, strlen(sure)) == 0)
        return "risk";
    return figure;
}

/* What comes before a step explains it; the net price and what follows from it need the whole chain. */
static size_t chain_start(size_t index) {
    bool line_sums = totals[index].say == say_material || totals[index].say == say_labour ||
                     totals[index].say == say_overhead;
    bool apart = totals[index].say == say_hours || totals[index].say == why_risk ||
                 totals[index].say == why_sensitivity;
    return line_sums || apart ? index : 0;
}

/* Steps on the way to the total; those of payment and outcome hang on its end. */
static bool belongs_to_chain(const why *w, size_t index) {
    void (*say)(why *) = totals[index].say;
    if (say == say_supplement)
        return estimate(w)->minimum.minor != 0;
    return say != say_deposit && say != say_stages && say != say_floor && say != say_hours &&
           say != say_earned;
}

static void say_short(why *w, size_t index) {
    if (totals[index].say == say_material)
        why_say_money(w, "material", estimate(w)->material_total, "'why material' shows its lines",
                      (sb_place){0});
    else if (totals[index].say == say_labour)
        why_say_money(w, "labour", estimate(w)->labour_total, "'why labour' shows its lines", (sb_place){0});
    else
        totals[index].say(w);
}

bool why_total(why *w, const char *figure) {
    figure = step_word(w, figure);
    for (size_t i = 0; i < TOTAL_COUNT; i++) {
        if (strcasecmp(totals[i].name, figure) != 0 &&
            (!totals[i].also || strcasecmp(totals[i].also, figure) != 0))
            continue;
        for (size_t j = chain_start(i); j < i; j++)
            if (belongs_to_chain(w, j))
                say_short(w, j);
        totals[i].say(w);
        return true;
    }
    return false;
}

/* Listed by the shorter word, which needs no quotes. */
void why_totals(const why *w, why_group *group) {
    for (size_t i = 0; i < TOTAL_COUNT; i++) {
        bool phrase = strchr(totals[i].name, ' ') != NULL;
        why_word_once(w, &group->names, phrase ? totals[i].also : totals[i].name);
        why_word_once(w, &group->titles, phrase || !totals[i].also ? totals[i].name : totals[i].also);
    }
    for (size_t i = 0; i < PRINTED_COUNT; i++)
        why_word_once(w, &group->titles, printed[i][0]);
}
