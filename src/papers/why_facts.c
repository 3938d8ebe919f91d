/* Lines of the risk and stages of payment, in the words of the papers. */
#include "papers/figures.h"
#include "papers/why.h"

#include <strings.h>

static const char *const risk_lines[] = {"cost, all at its likely value",     "10 % of cases cost at most",
                                         "50 % of cases cost at most",        "80 % of cases cost at most",
                                         "90 % of cases cost at most",        "mean cost of all cases",
                                         "cases that this price does not pay"};
static const char price_of_one[] = "price of a piece, net", cost_of_one[] = "cost of a piece";
enum {
    LINE_COUNT = sizeof risk_lines / sizeof *risk_lines
};

/* "Net price that pays in 90 % of cases": the share is the shop's or the job's. */
static const char *confident_words(const why *w) {
    return sb_pool_print(w->run->pool, "Net price that pays in %s of cases",
                         share_words(w->run, w->shop, w->way->risk->confidence));
}

static bool is_risk(const why *w, const char *figure) {
    for (size_t i = 0; i < LINE_COUNT; i++)
        if (strcasecmp(risk_lines[i], figure) == 0)
            return true;
    return strcasecmp(figure, confident_words(w)) == 0;
}

/* A payment by its own words, as the quote and the estimate print them. */
static bool is_stage(const why *w, const char *figure) {
    const sb_estimate *estimate = w->way->estimate;
    for (size_t i = 0; i < estimate->stages.count; i++) {
        const char *text = estimate->stages.items[i].text;
        if (strcasecmp(figure, text) == 0 ||
            strcasecmp(figure, sb_pool_print(w->run->pool, "Stage: %s", text)) == 0)
            return true;
    }
    return false;
}

/* On the average over the kinds of piece, as the estimate of several numbers has it. */
static bool say_for_one(why *w, const char *figure) {
    const sb_estimate *e = w->way->estimate;
    bool price = strcasecmp(figure, price_of_one) == 0;
    int64_t pieces = 0;
    if (!price && strcasecmp(figure, cost_of_one) != 0)
        return false;
    for (size_t i = 0; i < e->pieces.count; i++)
        pieces = sb_add(pieces, e->pieces.items[i].count);
    why_total(w, price ? "pieces, net" : "cost");
    why_say_money(w, price ? price_of_one : cost_of_one,
                  (sb_money){sb_mul_div(price ? e->pieces_net.minor : e->cost.minor, 1, pieces)},
                  sb_pool_print(w->run->pool, "%s / %lld pieces, on the average over their kinds",
                                price ? "pieces, net" : "cost", (long long)pieces),
                  (sb_place){0});
    return true;
}

bool why_fact(why *w, const char *figure) {
    if (is_stage(w, figure))
        return why_total(w, "rest");
    if (say_for_one(w, figure))
        return true;
    if (!w->way->risk || !is_risk(w, figure))
        return false;
    why_risk(w);
    return true;
}

void why_facts(const why *w, why_group *group) {
    for (size_t i = 0; i < LINE_COUNT && w->way->risk; i++)
        why_word_once(w, &group->titles, risk_lines[i]);
    if (w->way->risk)
        why_word_once(w, &group->titles, confident_words(w));
    why_word_once(w, &group->titles, price_of_one);
    why_word_once(w, &group->titles, cost_of_one);
    for (size_t i = 0; i < w->way->estimate->stages.count; i++)
        why_word_once(w, &group->titles, w->way->estimate->stages.items[i].text);
}
