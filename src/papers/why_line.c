/* Parts, stock, operations and pieces: down to the recipe line and the rate row. */
#include "papers/figures.h"
#include "papers/order.h"
#include "papers/why.h"

#include <strings.h>

static bool is(const char *figure, const char *name, const char *title) {
    return strcasecmp(figure, name) == 0 || strcasecmp(figure, title) == 0;
}

static bool means(const why *w, const sb_part *part, const char *figure) {
    return why_means(w, figure, part->piece, part->path, part->name, part->title);
}

static const char *length(why *w, sb_length value) {
    return sb_write_length_unit(w->run, value, &w->shop->settings.style);
}

static const char *more(why *w, sb_length added, const char *what) {
    return added.nm > 0 ? sb_pool_print(w->run->pool, " + %s %s", length(w, added), what) : "";
}

static void say_part(why *w, const sb_part *part) {
    const sb_takeoff_piece *piece = &w->way->takeoff->pieces.items[part->piece];
    why_say(w, sb_pool_print(w->run->pool, "%s, %s", part->path, part->title),
            sb_pool_print(w->run->pool, "%lld off", (long long)part->count),
            sb_pool_print(w->run->pool, "%lld in each of %lld %s", (long long)part->per_piece,
                          (long long)piece->count, piece->title),
            part->place);
    why_say_length(w, "finished length", part->length, part->length_worked ? part->length_worked : "",
                   sb_formula_place(part->length_formula));
    if (part->allow.nm > 0 || part->over_length.nm > 0)
        why_say_length(w, "cut length", part->cut_length,
                       sb_pool_print(w->run->pool, "finished length%s%s",
                                     more(w, part->allow, "to trim to fit"),
                                     more(w, part->over_length, "over-length of the glue-up")),
                       part->place);
    why_say(w, "stock", part->stock->title, sb_pool_print(w->run->pool, "the role '%s'", part->role),
            part->stock->place);
    if (part->length_formula)
        why_names_of(w, &w->way->takeoff->makings.items[part->making], part->length_formula);
}

bool why_part(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->way->takeoff->parts.count; i++) {
        const sb_part *part = &w->way->takeoff->parts.items[i];
        if (!means(w, part, figure))
            continue;
        say_part(w, part);
        found = true;
    }
    return found;
}

/* "2 x 3000 mm, Brackwater Timber" */
static const char *bought_words(why *w, const sb_order_line *line) {
    const char *size = order_size(w->run, line, &w->shop->settings.style);
    return sb_pool_print(w->run->pool, "%lld%s%s, %s", (long long)line->count, *size ? " x " : "", size,
                         line->merchant);
}

static void say_offer(why *w, const sb_order_line *line) {
    const sb_price *price = &line->offer->price;
    const char *listed = number_words(w->run, w->shop, price->micro, 6, w->shop->settings.currency.digits);
    why_say_money(w, bought_words(w, line), line->amount,
                  sb_pool_print(w->run->pool, "%s each; listed at %s %s%s",
                                exact_cost_words(w->run, w->shop, line->each), listed,
                                price->per == SB_PER_EACH ? "" : "per ", sb_per_word(price->per)),
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
            sb_pool_print(w->run->pool, "%s from the rack, %s",
                          order_amount(w->run, line, &w->shop->settings.style), line->rack->label),
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
        if (!is(figure, line->stock->id, line->stock->title) && !is_line(w, figure, line))
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
        if (is(figure, usage->stock->id, usage->stock->title))
            why_say(w, "taken",
                    sb_stock_amount_text(w->run, usage->stock, usage->amount, &w->shop->settings.style), "",
                    usage->place);
    }
    return found;
}

/* " x 81 %: falls to 90 % with each doubling, and 4 are made" */
static const char *learnt_words(why *w, const sb_labour_line *line) {
    if (line->learned.ppm == 1000000)
        return "";
    return sb_pool_print(w->run->pool,
                         " x %s, for the average falls to %s with each doubling and %lld are made",
                         share_words(w->run, w->shop, line->learned),
                         share_words(w->run, w->shop, line->operation->learning), (long long)line->repeated);
}

bool why_work(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->way->estimate->labour.count; i++) {
        const sb_labour_line *line = &w->way->estimate->labour.items[i];
        if (!is(figure, line->operation->id, line->operation->title))
            continue;
        found = true;
        const char *quantity = number_words(w->run, w->shop, line->quantity_milli, 3, 0);
        int64_t minutes = sb_mul_div(line->operation->time.ms, 100, 6);
        why_say(w, line->operation->title, exact_hours_words(w->run, w->shop, line->time),
                sb_pool_print(w->run->pool, "%s x %s min per %s%s%s", quantity,
                              number_words(w->run, w->shop, minutes, 6, 0),
                              sb_driver_word(line->operation->driver), learnt_words(w, line),
                              line->from_plan ? ", counted from the cutting plan" : ""),
                line->operation->place);
        why_say_money(w, "amount", line->amount,
                      sb_pool_print(w->run->pool, "at %s an hour (%s)",
                                    money_words(w->run, w->shop, line->hour), line->operation->worker->id),
                      line->place);
    }
    return found;
}

static void say_price(why *w, const sb_price_line *line) {
    const sb_takeoff_piece *piece = &w->way->takeoff->pieces.items[line->piece];
    const sb_settings *s = &w->shop->settings;
    why_say_money(w, piece->title, line->unit,
                  sb_pool_print(w->run->pool, "unit price, %s; %lld off make %s",
                                s->prices_gross ? "with tax" : "net", (long long)line->count,
                                money_words(w->run, w->shop, line->line)),
                  piece->source->place);
    why_say_money(w, "its cost, for all", line->cost,
                  sb_pool_print(w->run->pool, "material %s + labour %s + overhead %s, its share of the job's",
                                money_words(w->run, w->shop, line->material),
                                money_words(w->run, w->shop, line->labour),
                                money_words(w->run, w->shop, line->overhead)),
                  (sb_place){0});
    why_say_money(w, "its price, for all", line->price,
                  sb_pool_print(w->run->pool, "cost + contingency %s, then %s of %s",
                                money_words(w->run, w->shop, line->contingency),
                                w->way->estimate->method == SB_MARGIN_ON_PRICE ? "a margin on price"
                                                                               : "a markup on cost",
                                share_words(w->run, w->shop, w->way->estimate->rate)),
                  (sb_place){0});
    why_say_money(w, "less discount", line->discount,
                  sb_pool_print(w->run->pool, "then divided by %lld and rounded up to the price point",
                                (long long)line->count),
                  (sb_place){0});
}

/* A column of prices asks for every piece. */
static bool is_column(const char *figure) {
    static const char *const columns[] = {"each, net", "each, with tax", "line, net", "line, with tax"};
    for (size_t i = 0; i < sizeof columns / sizeof *columns; i++)
        if (strcasecmp(figure, columns[i]) == 0)
            return true;
    return false;
}

bool why_piece(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->way->estimate->pieces.count; i++) {
        const sb_price_line *line = &w->way->estimate->pieces.items[i];
        const sb_takeoff_piece *piece = &w->way->takeoff->pieces.items[line->piece];
        if (!is_column(figure) && !is(figure, piece->source->name, piece->title))
            continue;
        say_price(w, line);
        found = true;
    }
    return found;
}
