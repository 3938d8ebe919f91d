/* Sheets of the cut sheet: what one is and costs, and which part each setting of the fence is made for. */
#include "papers/cuts_sheets.h"
#include "papers/why_cuts.h"

#include <strings.h>

typedef struct laid {
    why *w;
    const cuts_paper *p;
    const sb_sheet_plan *plan;
    const char *numbers; /* "3", "3 to 6" */
} laid;

static const sb_supply *supply_of(const laid *l) {
    return &l->p->problem->supplies.items[l->plan->supply];
}

static const char *sheet_words(const laid *l) {
    return sb_pool_print(l->w->run->pool, "%s %s", l->plan->count == 1 ? "sheet" : "sheets", l->numbers);
}

static void say_head(const laid *l) {
    why_say_supply(l->w, l->p, l->plan->supply, sheet_words(l));
}

/* ---- a setting of the fence ---- */

static sb_length across(const sb_sheet_cut *cut, sb_rect rect) {
    return cut->across_width ? rect.l : rect.w;
}

static bool lies_in(sb_rect inner, sb_rect outer) {
    return inner.x.nm >= outer.x.nm && inner.y.nm >= outer.y.nm &&
           inner.x.nm + inner.w.nm <= outer.x.nm + outer.w.nm &&
           inner.y.nm + inner.l.nm <= outer.y.nm + outer.l.nm;
}

/* The part between fence and blade that reaches from one to the other; of several the first. */
static const sb_sheet_part *part_at(const sb_sheet_plan *plan, const sb_sheet_cut *cut) {
    sb_rect near = sheet_near(cut);
    for (size_t i = 0; i < plan->parts.count; i++)
        if (lies_in(plan->parts.items[i].at, near) &&
            across(cut, plan->parts.items[i].at).nm == fence_of(cut).nm)
            return &plan->parts.items[i];
    return NULL;
}

/* "length", or "width": a part that lies turned shows the saw its other side. */
static const char *side_word(const sb_sheet_cut *cut, const sb_sheet_part *part) {
    return cut->across_width != part->turned ? "length" : "width";
}

/* What the sheet prints of a setting: of truing its second cut, which has the trued edge against the fence. */
static sb_length shown_of(const cuts_paper *p, const sb_sheet_plan *plan, fence_setting s) {
    size_t shown = plan->cuts.items[s.first].stage == 0 ? s.first + s.times - 1 : s.first;
    return cuts_mark(p, fence_of(&plan->cuts.items[shown]));
}

static void say_truing(const laid *l, const char *what, const sb_sheet_cut *last) {
    const sb_supply *supply = supply_of(l);
    bool ends = last->across_width;
    why_say_length(l->w, what, cuts_mark(l->p, fence_of(last)),
                   sb_pool_print(l->w->run->pool, "sheet %s less %s trued off each %s",
                                 cuts_length(l->p, ends ? supply->length : supply->width),
                                 cuts_length(l->p, ends ? supply->trim2 : supply->trim1),
                                 ends ? "end" : "side"),
                   why_trim_place(l->w, l->p, l->plan->supply, "panel"));
}

static void say_setting(const laid *l, fence_setting s) {
    const sb_sheet_cut *cut = &l->plan->cuts.items[s.first];
    const sb_sheet_part *part = part_at(l->plan, cut);
    const char *what =
        sb_pool_print(l->w->run->pool, "fence at, cut %s of %s",
                      cuts_number(l->p, (int64_t)s.first + 1, (int64_t)(s.times * s.pieces)), sheet_words(l));
    if (cut->stage == 0)
        say_truing(l, what, &l->plan->cuts.items[s.first + s.times - 1]);
    else
        why_say_length(l->w, what, cuts_mark(l->p, fence_of(cut)),
                       part ? sb_pool_print(l->w->run->pool, "%s as it is cut of %s", side_word(cut, part),
                                            cuts_name(l->p, part->need))
                            : "no one part is as wide: several with their kerfs, or what is left over",
                       part ? why_need_place(l->p, part->need) : (sb_place){0});
}

/* With the part it is made for, down to the recipe. */
static void say_setting_whole(const laid *l, fence_setting s) {
    const sb_sheet_cut *cut = &l->plan->cuts.items[s.first];
    const sb_sheet_part *part = cut->stage > 0 ? part_at(l->plan, cut) : NULL;
    say_setting(l, s);
    if (part)
        why_say_need(l->w, l->p, part->need);
}

/* ---- the sheet ---- */

static size_t count_of(const sb_sheet_plan *plan, size_t need) {
    size_t count = 0;
    for (size_t i = 0; i < plan->parts.count; i++)
        count += plan->parts.items[i].need == need;
    return count;
}

static void say_parts(const laid *l) {
    for (size_t i = 0; i < l->p->problem->needs.count; i++) {
        const sb_need *need = &l->p->problem->needs.items[i];
        size_t count = count_of(l->plan, i);
        if (count > 0)
            why_say(l->w, cuts_name(l->p, i), cuts_face(l->p, need->length, need->width),
                    sb_pool_print(l->w->run->pool, "%zu off each", count), why_need_place(l->p, i));
    }
}

static void say_kept(const laid *l) {
    for (size_t i = 0; i < l->plan->leftovers.count; i++)
        why_say(l->w, "left over", cuts_kept(l->p, l->plan->leftovers.items[i]),
                "large enough to be kept: what no part lies on, beyond the last cut",
                sb_shop_setting(l->w->shop, "leftover sheet"));
}

static void say_sheet(const laid *l) {
    say_head(l);
    for (size_t i = 0; i < l->plan->cuts.count;) {
        fence_setting s = fence_setting_from(l->plan, i);
        say_setting(l, s);
        i += s.times * s.pieces;
    }
    say_parts(l);
    say_kept(l);
    why_say_exact_length(l->w, "kerf", l->p->problem->rules.panel_kerf, "of the panel saw",
                         sb_shop_setting(l->w->shop, "panel kerf"));
}

static bool say_cut(const laid *l, int64_t number) {
    for (size_t i = 0; i < l->plan->cuts.count;) {
        fence_setting s = fence_setting_from(l->plan, i);
        i += s.times * s.pieces;
        if (number < 1 || (size_t)number > i)
            continue;
        say_head(l);
        say_setting_whole(l, s);
        return true;
    }
    return false;
}

/* A strip is as wide as the fence stood when it was cut off, or what was left. */
static bool say_strip(const laid *l, int64_t number) {
    const sheet_strips strips = sheet_strips_of(l->p, l->plan);
    if (number < 1 || (size_t)number > strips.count)
        return false;
    sb_rect strip = strips.items[number - 1];
    say_head(l);
    why_say(l->w, sb_pool_print(l->w->run->pool, "strip S%lld", (long long)number),
            cuts_face(l->p, strip.l, strip.w), "as the cuts before leave it:", (sb_place){0});
    for (size_t i = 0; i < l->plan->cuts.count;) {
        fence_setting s = fence_setting_from(l->plan, i);
        i += s.times * s.pieces;
        if (lies_in(strip, l->plan->cuts.items[s.first].divides))
            say_setting_whole(l, s);
    }
    return true;
}

/* ---- which ---- */

typedef struct ask {
    int64_t number, cut, strip; /* 0: the whole sheet */
    bool kept;
} ask;

static bool read(const char *figure, ask *out) {
    int64_t last;
    out->kept = why_skip(&figure, "left over of ") || why_skip(&figure, "leftover of ");
    if (why_skip(&figure, "cut ") || why_skip(&figure, "cuts ")) {
        if (!why_number(&figure, &out->cut) || (why_skip(&figure, " to ") && !why_number(&figure, &last)) ||
            !why_skip(&figure, " of "))
            return false;
    } else if (why_skip(&figure, "strip s")) {
        if (!why_number(&figure, &out->strip) || !why_skip(&figure, " of "))
            return false;
    }
    return (why_skip(&figure, "sheet ") || why_skip(&figure, "sheets ")) && why_numbers(figure, &out->number);
}

static bool say_asked(const laid *l, const ask *asked) {
    if (asked->cut)
        return say_cut(l, asked->cut);
    if (asked->strip)
        return say_strip(l, asked->strip);
    if (asked->kept)
        say_head(l), say_kept(l);
    else
        say_sheet(l);
    return true;
}

static laid laid_at(why *w, const cuts_paper *p, size_t index, int64_t first) {
    const sb_sheet_plan *plan = &p->plan->sheets.items[index];
    return (laid){w, p, plan, cuts_number(p, first, plan->count)};
}

static bool say_numbered(why *w, const cuts_paper *p, const ask *asked) {
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; first += p->plan->sheets.items[i++].count) {
        const laid l = laid_at(w, p, i, first);
        if (asked->number >= first && asked->number < first + l.plan->count)
            return say_asked(&l, asked);
    }
    return false;
}

/* Wherever the fence stands so far off. */
static bool say_fences(why *w, const cuts_paper *p, const char *text) {
    int64_t first = 1;
    bool found = false;
    for (size_t i = 0; i < p->plan->sheets.count; first += p->plan->sheets.items[i++].count) {
        const laid l = laid_at(w, p, i, first);
        for (size_t at = 0; at < l.plan->cuts.count;) {
            fence_setting s = fence_setting_from(l.plan, at);
            at += s.times * s.pieces;
            if (!why_is_length(p, text, shown_of(p, l.plan, s)))
                continue;
            say_setting_whole(&l, s);
            found = true;
        }
    }
    return found;
}

/* All that goes back into the rack, boards first. */
static bool say_leftovers(why *w, const cuts_paper *p) {
    int64_t first = 1;
    bool found = why_kept_boards(w, p);
    for (size_t i = 0; i < p->plan->sheets.count; first += p->plan->sheets.items[i++].count) {
        const laid l = laid_at(w, p, i, first);
        if (l.plan->leftovers.count == 0)
            continue;
        say_head(&l);
        say_kept(&l);
        found = true;
    }
    return found;
}

bool why_sheet(why *w, const char *figure) {
    const cuts_paper p = why_cuts_paper(w);
    ask asked = {0};
    if (strcasecmp(figure, "left over: back into the rack") == 0 || strcasecmp(figure, "left over") == 0)
        return say_leftovers(w, &p);
    if (why_skip(&figure, "fence at ") || why_skip(&figure, "fence "))
        return say_fences(w, &p, figure);
    return read(figure, &asked) && say_numbered(w, &p, &asked);
}

void why_fences(const why *w, const cuts_paper *p, why_words *words) {
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        const sb_sheet_plan *plan = &p->plan->sheets.items[i];
        for (size_t at = 0; at < plan->cuts.count;) {
            fence_setting s = fence_setting_from(plan, at);
            at += s.times * s.pieces;
            why_word_once(w, words,
                          sb_pool_print(w->run->pool, "fence at %s",
                                        sb_write_length(w->run, shown_of(p, plan, s), p->style)));
        }
    }
}
