/* Parts and pieces: down to the recipe line. */
#include "papers/figures.h"
#include "papers/why.h"

#include <strings.h>

static bool means(const why *w, const sb_part *part, const char *figure) {
    return why_means(w, figure, part->piece, part->path, part->name, part->title);
}

static const sb_style *style(const why *w) {
    return &w->shop->settings.style;
}

static const char *length(const why *w, sb_length value) {
    return sb_write_length_unit(w->run, value, style(w));
}

static const char *more(why *w, sb_length added, const char *what) {
    return added.nm > 0 ? sb_pool_print(w->run->pool, " + %s %s", length(w, added), what) : "";
}

static void say_cut_length(why *w, const sb_part *part) {
    const char *how =
        sb_pool_print(w->run->pool, "finished length%s%s%s", more(w, part->allow, "to trim to fit"),
                      more(w, part->over_length, "over-length of the glue-up"),
                      part->edging ? ", less what edging adds" : "");
    if (part->cut_length.nm != part->length.nm)
        why_say_length(w, "cut length", part->cut_length, how, part->place);
}

/* A sheet part and a strip have a width of their own, other boards that of the stock. */
static void say_section(why *w, const sb_part *part) {
    bool own = part->width.nm != part->stock->width.nm || part->thickness.nm != part->stock->thickness.nm;
    const char *how = sb_pool_print(w->run->pool, "%s%s", own ? "by the recipe's line" : "as the stock is",
                                    part->planed ? ", planed" : "");
    why_say(w, "width and thickness",
            sb_pool_print(w->run->pool, "%s x %s", sb_write_length(w->run, part->width, style(w)),
                          length(w, part->thickness)),
            how, own ? part->place : part->stock->place);
    if (part->cut_width.nm > 0 && part->cut_width.nm != part->width.nm)
        why_say_length(w, "cut width", part->cut_width,
                       sb_pool_print(w->run->pool, "finished width%s%s%s",
                                     more(w, part->allow_width, "to trim to fit"),
                                     part->edging ? ", less what edging adds" : "",
                                     part->planed ? ", with what planing takes" : ""),
                       part->place);
}

const char *why_part_words(const why *w, const sb_part *part) {
    return sb_pool_print(w->run->pool, "%s, %s", part->path, part->title);
}

void why_say_part(why *w, const sb_part *part) {
    const sb_takeoff_piece *piece = &w->way->takeoff->pieces.items[part->piece];
    why_say(w, why_part_words(w, part), sb_pool_print(w->run->pool, "%lld off", (long long)part->count),
            sb_pool_print(w->run->pool, "%lld in each of %lld %s", (long long)part->per_piece,
                          (long long)piece->count, piece->title),
            part->place);
    why_say_length(w, "finished length", part->length, part->length_worked ? part->length_worked : "",
                   sb_formula_place(part->length_formula));
    say_cut_length(w, part);
    say_section(w, part);
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
        why_say_part(w, part);
        found = true;
    }
    return found;
}

static sb_place setting(const why *w, const sb_job_share *own, const char *keyword) {
    return own->given ? own->place : sb_shop_setting(w->shop, keyword);
}

static void say_cost(why *w, const sb_price_line *line) {
    why_say_money(w, "its cost, for all", line->cost,
                  sb_pool_print(w->run->pool, "material %s + labour %s + overhead %s, its share of the job's",
                                money_words(w->run, w->shop, line->material),
                                money_words(w->run, w->shop, line->labour),
                                money_words(w->run, w->shop, line->overhead)),
                  (sb_place){0});
    why_say(w, "its hours, for all", exact_hours_words(w->run, w->shop, line->time),
            "its share of the labour lines: 'why labour' shows them", (sb_place){0});
}

static void say_point(why *w) {
    const sb_settings *s = &w->shop->settings;
    const char *less = s->point_less.minor == 0 ? ""
                                                : sb_pool_print(w->run->pool, " less %s",
                                                                money_words(w->run, w->shop, s->point_less));
    if (s->price_point.minor > 0)
        why_say_money(w, "price point", s->price_point,
                      sb_pool_print(w->run->pool, "the price of one goes up to a multiple of it%s", less),
                      sb_shop_setting(w->shop, "price-point"));
}

/* Down from the price that margin or markup makes to the unit price on its price point. */
static void say_price_of(why *w, const sb_price_line *line) {
    const sb_estimate *e = w->way->estimate;
    bool margin = e->method == SB_MARGIN_ON_PRICE;
    why_say_money(w, "its price, for all", line->price,
                  sb_pool_print(w->run->pool, "cost + contingency %s, then %s of %s",
                                money_words(w->run, w->shop, line->contingency),
                                margin ? "a margin on price" : "a markup on cost",
                                share_words(w->run, w->shop, e->rate)),
                  margin ? setting(w, &e->job->margin, "margin") : setting(w, &e->job->markup, "markup"));
    why_say_money(w, "less discount", line->discount,
                  sb_pool_print(w->run->pool,
                                "%s of price; then divided by %lld and rounded up to the price point",
                                share_words(w->run, w->shop, e->discount_rate), (long long)line->count),
                  e->job->discount.place);
    say_point(w);
}

static void say_price(why *w, const sb_price_line *line) {
    const sb_takeoff_piece *piece = &w->way->takeoff->pieces.items[line->piece];
    why_say_money(w, piece->title, line->unit,
                  sb_pool_print(w->run->pool, "unit price, %s; %lld off make %s",
                                w->shop->settings.prices_gross ? "with tax" : "net", (long long)line->count,
                                money_words(w->run, w->shop, line->line)),
                  piece->source->place);
    say_cost(w, line);
    say_price_of(w, line);
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
        if (!is_column(figure) && !why_is(figure, piece->source->name, piece->title))
            continue;
        say_price(w, line);
        found = true;
    }
    return found;
}
