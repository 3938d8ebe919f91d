/* What is bought and what comes out of the rack: of a stock, of a merchant, of all of them. */
#include "papers/figures.h"
#include "papers/order.h"
#include "papers/why.h"

#include <strings.h>

static const sb_style *style(const why *w) {
    return &w->shop->settings.style;
}

/* ---- lines ---- */

/* "2 x 3000 mm, Brackwater Timber" */
static const char *bought_words(why *w, const sb_order_line *line) {
    const char *size = order_size(w->run, line, style(w));
    return sb_pool_print(w->run->pool, "%lld%s%s, %s", (long long)line->count, *size ? " x " : "", size,
                         line->merchant);
}

const char *why_listed(const why *w, const sb_offer *offer) {
    const sb_price *price = &offer->price;
    return sb_pool_print(w->run->pool, "listed at %s %s%s",
                         number_words(w->run, w->shop, price->micro, 6, w->shop->settings.currency.digits),
                         price->per == SB_PER_EACH ? "" : "per ", sb_per_word(price->per));
}

/* How much the jobs take of a line, where that is not the line itself. */
static const char *needed_words(const why *w, const sb_order_line *line) {
    bool cut = line->stock->kind == SB_STOCK_BOARD || line->stock->kind == SB_STOCK_SHEET;
    if (line->reorder)
        return "; the rack falls under its minimum";
    return cut ? ""
               : sb_pool_print(w->run->pool, "; of it %s are needed, and no other packs cost less",
                               sb_stock_amount_text(w->run, line->stock, line->needed, style(w)));
}

static void say_offer(why *w, const sb_order_line *line) {
    why_say_money(w, bought_words(w, line), line->amount,
                  sb_pool_print(w->run->pool, "%s each; %s%s", exact_cost_words(w->run, w->shop, line->each),
                                why_listed(w, line->offer), needed_words(w, line)),
                  line->offer->place);
}

/* Of a lot, the amount is told, not its count. */
static void say_rack(why *w, const sb_order_line *line) {
    bool cut = line->stock->kind == SB_STOCK_BOARD || line->stock->kind == SB_STOCK_SHEET;
    bool counted = *sb_stock_kind_unit(line->stock->kind) == '\0';
    const char *worth = counted && line->rack->value.minor != SB_BAD ? "the value told there"
                        : cut                                        ? "what a leftover like it is worth"
                                                                     : "what the same costs new";
    why_say(w,
            sb_pool_print(w->run->pool, "%s from the rack, %s", order_amount(w->run, line, style(w)),
                          line->rack->label),
            money_words(w->run, w->shop, line->amount),
            sb_pool_print(w->run->pool, "%s each, %s", exact_cost_words(w->run, w->shop, line->each), worth),
            line->rack->place);
}

/* A line of material as the estimate prints it: "Larch slat 20 x 95, 4200 mm, of Saltmarsh Board & Panel". */
static bool is_line(const why *w, const char *figure, const sb_order_line *line) {
    for (size_t i = 0; i < w->way->estimate->materials.count; i++)
        if (w->way->estimate->materials.items[i].order == line &&
            strcasecmp(figure, w->way->estimate->materials.items[i].what) == 0)
            return true;
    return false;
}

bool why_stock(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->way->order->lines.count; i++) {
        const sb_order_line *line = &w->way->order->lines.items[i];
        if (!why_is(figure, line->stock->id, line->stock->title) && !is_line(w, figure, line))
            continue;
        if (!found)
            why_say(w, line->stock->title, line->stock->id, "", line->stock->place);
        found = true;
        if (line->offer)
            say_offer(w, line);
        else
            say_rack(w, line);
    }
    for (size_t i = 0; found && i < w->way->takeoff->usages.count; i++) {
        const sb_usage *usage = &w->way->takeoff->usages.items[i];
        if (why_is(figure, usage->stock->id, usage->stock->title))
            why_say(w, "taken", sb_stock_amount_text(w->run, usage->stock, usage->amount, style(w)), "",
                    usage->place);
    }
    return found;
}

/* ---- merchants ---- */

static void say_lines_of(why *w, const sb_order *order, const char *merchant, bool reorder) {
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (!line->offer || line->reorder != reorder ||
            (merchant && strcasecmp(line->merchant, merchant) != 0))
            continue;
        why_say_money(
            w, sb_pool_print(w->run->pool, "%s, %s", line->stock->title, bought_words(w, line)), line->amount,
            sb_pool_print(w->run->pool, "%lld x %s; %s", (long long)line->count,
                          exact_cost_words(w->run, w->shop, line->each), why_listed(w, line->offer)),
            line->offer->place);
    }
}

static sb_money sum_of(const sb_order *order, const char *merchant, bool reorder) {
    sb_money sum = {0};
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (line->offer && line->reorder == reorder &&
            (!merchant || strcasecmp(line->merchant, merchant) == 0))
            sum = sb_money_add(sum, line->amount);
    }
    return sum;
}

static bool say_merchant(why *w, const char *figure) {
    const sb_order *order = w->way->order;
    for (size_t i = 0; i < order->lines.count; i++) {
        const char *merchant = order->lines.items[i].merchant;
        if (!order->lines.items[i].offer || strcasecmp(figure, merchant) != 0)
            continue;
        why_say_money(w, merchant, sum_of(order, merchant, false),
                      "without tax, the sum of these lines:", (sb_place){0});
        say_lines_of(w, order, merchant, false);
        return true;
    }
    return false;
}

/* Of each merchant its sum; lines stand merchant by merchant. */
static void say_merchants(why *w) {
    const sb_order *order = w->way->order;
    const char *last = "";
    why_say_money(w, "all merchants together", sum_of(order, NULL, false),
                  "for this job, without tax, the sum over the merchants:", (sb_place){0});
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (!line->offer || strcasecmp(last, line->merchant) == 0)
            continue;
        last = line->merchant;
        why_say_money(w, last, sum_of(order, last, false), "its lines, each count x price", (sb_place){0});
    }
}

/* A takeoff orders it too. */
static void say_restock(why *w) {
    const sb_order *order =
        sb_order_of(w->run, w->shop, &w->way->takeoff, 1, w->way->cutlist, w->way->plan, true);
    why_say_money(
        w, "for the rack, to its minimum", sum_of(order, NULL, true),
        "what a takeoff of this job orders besides, where the rack falls under the minimum of stock.csv",
        (sb_place){0});
    say_lines_of(w, order, NULL, true);
}

static const struct {
    const char *name;
    void (*say)(why *w);
} sums[] = {{"all merchants together", say_merchants},
            {"of all merchants together", say_merchants},
            {"all, without tax", say_merchants},
            {"for the jobs", say_merchants},
            {"order", say_merchants},
            {"for the rack, to its minimum", say_restock},
            {"for the rack", say_restock}};
enum {
    SUMS = sizeof sums / sizeof *sums
};

bool why_bought(why *w, const char *figure) {
    bool found = say_merchant(w, figure);
    for (size_t i = 0; i < SUMS; i++) {
        if (strcasecmp(figure, sums[i].name) != 0)
            continue;
        sums[i].say(w);
        found = true;
    }
    return found;
}

void why_orders(const why *w, why_group *group) {
    const sb_order *order = w->way->order;
    why_word_once(w, &group->names, "order");
    for (size_t i = 0; i < order->lines.count; i++)
        if (order->lines.items[i].offer)
            why_word_once(w, &group->names, order->lines.items[i].merchant);
    for (size_t i = 0; i < SUMS; i++)
        why_word_once(w, &group->titles, sums[i].name);
}
