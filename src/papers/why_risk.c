/* What the cost may come to, what that rests on, and which figures move the price most. */
#include "papers/figures.h"
#include "papers/why.h"

static const char *value_words(const why *w, const sb_risk_input *input, int64_t value) {
    if (input->kind == SB_RISK_PRICE)
        return exact_cost_words(w->run, w->shop, (sb_cost){value});
    int64_t thousandths = input->kind == SB_RISK_TIME ? sb_mul_div(value, 1, 60) : value;
    return number_words(w->run, w->shop, thousandths, 3, 0);
}

static const char *range_words(const why *w, const sb_risk_input *input) {
    const char *unit = input->kind == SB_RISK_PRICE ? " each" : sb_driver_word(input->operation->driver);
    unit = input->kind == SB_RISK_PRICE ? unit
           : input->kind == SB_RISK_TIME
               ? sb_pool_print(w->run->pool,
                               input->operation->driver == SB_BY_EACH ? " minutes %s" : " minutes a %s", unit)
               : sb_pool_print(w->run->pool, " (%s)", unit);
    return sb_pool_print(w->run->pool, "least %s, likely %s, most %s%s", value_words(w, input, input->least),
                         value_words(w, input, input->likely), value_words(w, input, input->most), unit);
}

static sb_place confidence_place(const why *w) {
    const sb_job_share *own = &w->way->estimate->job->confidence;
    return own->given ? own->place : sb_shop_setting(w->shop, "confidence");
}

static void say_draws(why *w, const sb_risk *risk) {
    const struct {
        const char *what, *how;
        sb_money value;
    } rows[] = {{"cost, 10 %", "one case in ten stays at or under this", risk->cost10},
                {"cost, 50 %", "half of all cases", risk->cost50},
                {"cost, 80 %", "four cases in five", risk->cost80},
                {"cost, 90 %", "nine cases in ten", risk->cost90},
                {"cost, mean", "over all cases", risk->mean}};
    why_say_money(w, "cost, most likely", w->way->estimate->cost, "every time and price at its likely value",
                  (sb_place){0});
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++)
        why_say_money(
            w, rows[i].what, rows[i].value,
            sb_pool_print(w->run->pool, "%s, out of %lld draws", rows[i].how, (long long)risk->draws),
            (sb_place){0});
    why_say(w, "loses money", share_words(w->run, w->shop, risk->loses),
            sb_pool_print(w->run->pool, "of the draws cost more, with delivery, than %s net",
                          money_words(w->run, w->shop, w->way->estimate->net)),
            (sb_place){0});
    why_say_money(
        w, sb_pool_print(w->run->pool, "net price for %s", share_words(w->run, w->shop, risk->confidence)),
        risk->price, "cost at that share of draws, and delivery", confidence_place(w));
}

void why_risk(why *w) {
    const sb_risk *risk = w->way->risk;
    if (!risk) {
        why_say(w, "risk", "none told", "no time and no price of this job is told as a range", (sb_place){0});
        return;
    }
    say_draws(w, risk);
    for (size_t i = 0; i < risk->inputs.count; i++)
        why_say(w, risk->inputs.items[i].what,
                sb_pool_print(w->run->pool, "%s to %s of cost",
                              money_words(w->run, w->shop, risk->inputs.items[i].low),
                              money_words(w->run, w->shop, risk->inputs.items[i].high)),
                range_words(w, &risk->inputs.items[i]), risk->inputs.items[i].place);
}

void why_sensitivity(why *w) {
    const sb_sensitivity *s = w->way->sensitivity;
    if (!s)
        return;
    why_say_money(w, "price moved", s->price,
                  "net with discount and delivery, before price points and minimum; the cutting plan is held",
                  (sb_place){0});
    for (size_t i = 0; i < s->movers.count; i++) {
        const sb_mover *mover = &s->movers.items[i];
        const char *how = mover->less.minor == SB_BAD
                              ? "at a tenth more of it"
                              : sb_pool_print(w->run->pool, "at a tenth more of it; %s at a tenth less",
                                              money_words(w->run, w->shop, mover->less));
        why_say_money(w, mover->what, mover->more, how, mover->place);
    }
}
