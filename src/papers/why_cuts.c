/* What the figures of the cut sheet have in common: how they are asked, boards and parts behind them. */
#include "papers/why_cuts.h"
#include "papers/figures.h"

#include <ctype.h>
#include <string.h>
#include <strings.h>

/* ---- how they are asked ---- */

bool why_skip(const char **text, const char *word) {
    size_t size = strlen(word);
    if (strncasecmp(*text, word, size) != 0)
        return false;
    *text += size;
    return true;
}

bool why_number(const char **text, int64_t *number) {
    const char *digit = *text;
    for (*number = 0; isdigit((unsigned char)*digit) && *number < 1000000000; digit++)
        *number = 10 * *number + (*digit - '0');
    bool any = digit > *text;
    *text = digit;
    return any;
}

bool why_numbers(const char *text, int64_t *first) {
    int64_t last;
    if (!why_number(&text, first) || (why_skip(&text, " to ") && !why_number(&text, &last)))
        return false;
    return *text == '\0' || *text == ',' || *text == ':';
}

/* Cells of a workbook leave the inches' mark out. */
bool why_is_length(const cuts_paper *p, const char *text, sb_length length) {
    const char *written = sb_write_length(p->run, length, p->style);
    size_t size = strlen(written), bare = size > 0 && written[size - 1] == '"' ? size - 1 : size;
    return strcasecmp(text, written) == 0 || strcasecmp(text, cuts_length(p, length)) == 0 ||
           (strlen(text) == bare && strncmp(text, written, bare) == 0);
}

cuts_paper why_cuts_paper(const why *w) {
    return cuts_paper_of(w->run, NULL, w->shop, w->way);
}

/* ---- parts ---- */

const sb_part *why_need_part(const cuts_paper *p, size_t need) {
    return p->cutlist->needs.items[p->problem->needs.items[need].tag].part;
}

static const sb_stock *stock_of(const cuts_paper *p, size_t stock) {
    for (size_t i = 0; i < p->problem->supplies.count; i++)
        if (p->problem->supplies.items[i].stock == stock)
            return p->cutlist->supplies.items[p->problem->supplies.items[i].tag].stock;
    return NULL;
}

sb_place why_need_place(const cuts_paper *p, size_t need) {
    const sb_part *part = why_need_part(p, need);
    const sb_stock *stock = stock_of(p, p->problem->needs.items[need].stock);
    return part ? part->place : stock && stock->grade ? stock->grade->place : (sb_place){0};
}

/* Of its stock so much spare is asked for, as long as parts of it are. */
static void say_spare(why *w, const cuts_paper *p, size_t need) {
    const sb_need *n = &p->problem->needs.items[need];
    const sb_stock *stock = stock_of(p, n->stock);
    why_say(w, cuts_spare_name(p, need), sb_pool_print(w->run->pool, "%lld off", (long long)n->count),
            sb_pool_print(w->run->pool, "for knots and splits in %s: 'why spare' shows how much",
                          stock ? stock->title : ""),
            why_need_place(p, need));
    why_say_length(w, "its length", n->length, "that of a part of this stock", (sb_place){0});
}

/* By its line: no two kinds of part of one piece stand on the same. */
static bool is_told(const why *w, const char *what, sb_place place) {
    for (size_t i = 0; i < w->steps.count; i++)
        if (strcmp(w->steps.items[i].what, what) == 0 && w->steps.items[i].place.offset == place.offset)
            return true;
    return false;
}

void why_say_need(why *w, const cuts_paper *p, size_t need) {
    const sb_part *part = why_need_part(p, need);
    const char *what = part ? why_part_words(w, part) : cuts_spare_name(p, need);
    if (is_told(w, what, why_need_place(p, need)))
        return;
    if (part)
        why_say_part(w, part);
    else
        say_spare(w, p, need);
}

bool why_spare(why *w, const char *figure) {
    const cuts_paper p = why_cuts_paper(w);
    bool found = false;
    for (size_t i = 0; i < p.problem->needs.count; i++) {
        if (why_need_part(&p, i) || strcasecmp(figure, cuts_spare_name(&p, i)) != 0)
            continue;
        say_spare(w, &p, i);
        found = true;
    }
    return found;
}

/* ---- boards and sheets ---- */

static const struct sb_supply_source *source_of(const cuts_paper *p, size_t supply) {
    return &p->cutlist->supplies.items[p->problem->supplies.items[supply].tag];
}

void why_say_supply(why *w, const cuts_paper *p, size_t supply, const char *what) {
    const struct sb_supply_source *source = source_of(p, supply);
    const sb_supply *s = &p->problem->supplies.items[supply];
    why_say(w, what, cuts_size(p, s),
            source->offer
                ? sb_pool_print(w->run->pool, "%s, of %s", source->stock->title, source->offer->merchant)
                : sb_pool_print(w->run->pool, "%s, from the rack (%s)", source->stock->title,
                                source->rack->label),
            source->stock->place);
    why_say_cost(w, "its price", s->price,
                 source->offer                         ? why_listed(w, source->offer)
                 : source->rack->value.minor != SB_BAD ? "the value told in the rack"
                                                       : "what a leftover like it is worth",
                 source->offer ? source->offer->place : source->rack->place);
}

sb_place why_trim_place(const why *w, const cuts_paper *p, size_t supply, const char *saw) {
    const struct sb_supply_source *source = source_of(p, supply);
    if (source->rack)
        return source->rack->place;
    return source->offer->trim1.nm != SB_BAD
               ? source->offer->place
               : sb_shop_setting(w->shop, sb_pool_print(w->run->pool, "%s trim", saw));
}
