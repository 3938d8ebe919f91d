/* Figures beside the price: what the estimate tells of time, timber and plan, a worker's hour, a payment, a line of the risk. */
#include "papers/figures.h"
#include "papers/why.h"

#include <string.h>
#include <strings.h>

static const sb_estimate *estimate(const why *w) {
    return w->way->estimate;
}

static void say_lead(why *w) {
    const sb_settings *s = &w->shop->settings;
    if (estimate(w)->lead_days < 0) {
        why_say(w, "lead time", "not told", "the shop does not say how long its week is", s->place);
        return;
    }
    why_say(w, "before work", sb_pool_print(w->run->pool, "%d days", s->lead_days), "before work can start",
            sb_shop_setting(w->shop, "lead"));
    why_say(w, "hours", exact_hours_words(w->run, w->shop, estimate(w)->time), "the sum of the labour lines",
            (sb_place){0});
    why_say(w, "lead time", sb_pool_print(w->run->pool, "%d days", estimate(w)->lead_days),
            sb_pool_print(w->run->pool, "days before work + hours x 7 / %s a week, rounded up",
                          exact_hours_words(w->run, w->shop, s->week)),
            sb_shop_setting(w->shop, "week"));
}

static void say_waste(why *w) {
    why_say(w, "waste", share_words(w->run, w->shop, estimate(w)->waste),
            "of timber and sheets used up (taken less what is kept), by volume: in no piece and no spare",
            (sb_place){0});
    if (estimate(w)->spare.ppm > 0)
        why_say(w, "spare for defects", share_words(w->run, w->shop, estimate(w)->spare),
                "of the same, put into the plan by the grades of the stock", (sb_place){0});
}

static void say_plan(why *w) {
    why_say(w, "cutting plan", plan_words(w->run, &w->shop->settings.style, w->way->plan),
            "its cost against the bound that no plan can go under", (sb_place){0});
}

static void say_weight(why *w) {
    const sb_style *style = &w->shop->settings.style;
    sb_cell weight = weight_cell(style, estimate(w)->mass);
    const char *number = sb_write_decimal(w->run, weight.amount, weight.digits, style->decimal_comma);
    bool known = estimate(w)->mass.mg > 0;
    why_say(w, "weight",
            known ? sb_pool_print(w->run->pool, "%s %s", number, weight_unit(style)) : "not known",
            known ? "wood of all pieces: finished volume by the stock's density" : "a stock tells no density",
            (sb_place){0});
}

static const struct {
    const char *name, *printed;
    void (*say)(why *w);
} facts[] = {{"lead", "lead time", say_lead},
             {"lead", "lead time, days", say_lead},
             {"waste", "waste, of used up", say_waste},
             {"spare", "spare for defects", say_waste},
             {"plan", "cutting plan", say_plan},
             {"weight", "weight, kg", say_weight},
             {"weight", "weight, lb", say_weight},
             {"risk", "cost, all at its likely value", why_risk},
             {"risk", "10 % of cases cost at most", why_risk},
             {"risk", "50 % of cases cost at most", why_risk},
             {"risk", "80 % of cases cost at most", why_risk},
             {"risk", "90 % of cases cost at most", why_risk},
             {"risk", "mean cost of all cases", why_risk},
             {"risk", "cases that this price does not pay", why_risk}};
enum {
    FACT_COUNT = sizeof facts / sizeof *facts
};

static bool fact(why *w, const char *figure) {
    for (size_t i = 0; i < FACT_COUNT; i++) {
        bool own = facts[i].say != why_risk && strcasecmp(facts[i].name, figure) == 0;
        if (!own && strcasecmp(facts[i].printed, figure) != 0)
            continue;
        facts[i].say(w);
        return true;
    }
    return false;
}

/* "Net price that pays in 90 % of cases": the share is the shop's or the job's. */
static const char *confident_words(const why *w) {
    return w->way->risk ? sb_pool_print(w->run->pool, "Net price that pays in %s of cases",
                                        share_words(w->run, w->shop, w->way->risk->confidence))
                        : "";
}

static const char *rate_words(const why *w, size_t worker) {
    return sb_pool_print(w->run->pool, "Hourly rate: %s", w->shop->settings.workers.items[worker].id);
}

static bool rate(why *w, const char *figure) {
    for (size_t i = 0; i < w->shop->settings.workers.count; i++) {
        const sb_worker *worker = &w->shop->settings.workers.items[i];
        if (strcasecmp(rate_words(w, i), figure) != 0 && strcasecmp(worker->id, figure) != 0)
            continue;
        why_say_money(w, rate_words(w, i), worker->hour, "for an hour worked", worker->place);
        return true;
    }
    return false;
}

/* A payment by its own words, as the quote and the estimate print them. */
static bool stage(why *w, const char *figure) {
    for (size_t i = 0; i < estimate(w)->stages.count; i++) {
        const char *text = estimate(w)->stages.items[i].text;
        if (strcasecmp(figure, text) == 0 ||
            strcasecmp(figure, sb_pool_print(w->run->pool, "Stage: %s", text)) == 0)
            return why_total(w, "rest");
    }
    return false;
}

bool why_fact(why *w, const char *figure) {
    if (fact(w, figure) || rate(w, figure) || stage(w, figure))
        return true;
    if (!w->way->risk || strcasecmp(figure, confident_words(w)) != 0)
        return false;
    why_risk(w);
    return true;
}

void why_facts(const why *w, why_group *group) {
    for (size_t i = 0; i < FACT_COUNT; i++) {
        if (facts[i].say != why_risk)
            why_word_once(w, &group->names, facts[i].name);
        why_word_once(w, &group->titles, facts[i].printed);
    }
    if (w->way->risk)
        why_word_once(w, &group->titles, confident_words(w));
    for (size_t i = 0; i < w->shop->settings.workers.count; i++)
        why_word_once(w, &group->names, w->shop->settings.workers.items[i].id);
    for (size_t i = 0; i < estimate(w)->stages.count; i++)
        why_word_once(w, &group->titles, estimate(w)->stages.items[i].text);
}
