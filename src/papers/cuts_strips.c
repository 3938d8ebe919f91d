/* Strips of a sheet: pieces that one setting of the fence makes and a later one divides. They have names, so that nobody has to
 * measure which is which. */
#include "papers/cuts_sheets.h"

sb_rect sheet_near(const sb_sheet_cut *cut) {
    sb_rect near = cut->divides;
    if (cut->across_width)
        near.l = sb_length_sub(cut->at, near.y);
    else
        near.w = sb_length_sub(cut->at, near.x);
    return near;
}

static sb_length what_is_left(sb_length start, sb_length size, sb_length from) {
    int64_t left = start.nm + size.nm - from.nm;
    return (sb_length){left > 0 ? left : 0};
}

sb_rect sheet_beyond(const sb_sheet_cut *cut, sb_length kerf) {
    sb_rect beyond = cut->divides;
    sb_length from = sb_length_add(cut->at, kerf);
    if (cut->across_width) {
        beyond.l = what_is_left(beyond.y, beyond.l, from);
        beyond.y = from;
    } else {
        beyond.w = what_is_left(beyond.x, beyond.w, from);
        beyond.x = from;
    }
    return beyond;
}

static bool same(sb_rect a, sb_rect b) {
    return a.x.nm == b.x.nm && a.y.nm == b.y.nm && a.w.nm == b.w.nm && a.l.nm == b.l.nm;
}

static bool within(sb_rect inner, sb_rect outer) {
    return inner.x.nm >= outer.x.nm && inner.y.nm >= outer.y.nm &&
           inner.x.nm + inner.w.nm <= outer.x.nm + outer.w.nm &&
           inner.y.nm + inner.l.nm <= outer.y.nm + outer.l.nm;
}

static bool is_divided(const sb_sheet_plan *plan, sb_rect piece) {
    for (size_t i = 0; i < plan->cuts.count; i++)
        if (plan->cuts.items[i].stage > 0 && same(plan->cuts.items[i].divides, piece))
            return true;
    return false;
}

/* ---- each piece of a setting ----------------------------------------------------------------------------- */

typedef struct walk {
    const cuts_paper *p;
    const sb_sheet_plan *plan;
    fence_setting setting;
} walk;

static const sb_sheet_cut *cut_of(const walk *w, size_t piece, size_t time) {
    return &w->plan->cuts.items[w->setting.first + piece * w->setting.times + time];
}

/* Beyond the last cut in a piece; the next setting may go on with it while it lies at the fence. */
static sb_rect rest_of(const walk *w, size_t piece, bool *goes_on) {
    const sb_sheet_cut *last = cut_of(w, piece, w->setting.times - 1);
    size_t next = w->setting.first + w->setting.times * w->setting.pieces;
    *goes_on = piece + 1 == w->setting.pieces && next < w->plan->cuts.count &&
               fence_goes_on(last, &w->plan->cuts.items[next]);
    return sheet_beyond(last, w->p->problem->rules.panel_kerf);
}

/* ---- their names ----------------------------------------------------------------------------------------- */

static void name(const walk *w, sheet_strips *strips, sb_rect piece) {
    if (is_divided(w->plan, piece))
        SB_PUSH(w->p->run->pool, *strips, piece);
}

sheet_strips sheet_strips_of(const cuts_paper *p, const sb_sheet_plan *plan) {
    sheet_strips strips = {0};
    for (size_t i = 0; i < plan->cuts.count;) {
        walk w = {p, plan, fence_setting_from(plan, i)};
        i += w.setting.times * w.setting.pieces;
        if (plan->cuts.items[w.setting.first].stage == 0)
            continue;
        for (size_t piece = 0; piece < w.setting.pieces; piece++) {
            bool goes_on;
            for (size_t time = 0; time < w.setting.times; time++)
                name(&w, &strips, sheet_near(cut_of(&w, piece, time)));
            sb_rect rest = rest_of(&w, piece, &goes_on);
            if (!goes_on)
                name(&w, &strips, rest);
        }
    }
    return strips;
}

size_t sheet_strip_number(const sheet_strips *strips, sb_rect piece) {
    for (size_t i = 0; i < strips->count; i++)
        if (same(strips->items[i], piece))
            return i + 1;
    return 0;
}

const char *sheet_strips_words(sb_run *run, const size_t *numbers, size_t count) {
    const char *words = "";
    for (size_t i = 0; i < count;) {
        size_t last = i;
        while (last + 1 < count && numbers[last + 1] == numbers[last] + 1)
            last++;
        const char *some = last == i ? sb_pool_print(run->pool, "S%zu", numbers[i])
                                     : sb_pool_print(run->pool, last == i + 1 ? "S%zu, S%zu" : "S%zu to S%zu",
                                                     numbers[i], numbers[last]);
        words = *words ? sb_pool_print(run->pool, "%s, %s", words, some) : some;
        i = last + 1;
    }
    return words;
}

/* ---- what becomes of the pieces -------------------------------------------------------------------------- */

typedef struct result {
    size_t *near, *rests; /* numbers of strips */
    size_t near_count, rest_count;
    size_t parts;             /* of the pieces at the fence */
    bool back, goes_on, last; /* of the rests: some go back; one is cut on at once; some are parts */
    bool offcut;
} result;

static bool holds_leftover(const sb_sheet_plan *plan, sb_rect piece) {
    for (size_t i = 0; i < plan->leftovers.count; i++)
        if (within(plan->leftovers.items[i], piece))
            return true;
    return false;
}

static bool holds_part(const sb_sheet_plan *plan, sb_rect piece) {
    for (size_t i = 0; i < plan->parts.count; i++)
        if (within(plan->parts.items[i].at, piece))
            return true;
    return false;
}

static void take_near(const walk *w, const sheet_strips *strips, result *r, sb_rect piece) {
    size_t number = sheet_strip_number(strips, piece);
    if (number > 0)
        r->near[r->near_count++] = number;
    else if (holds_part(w->plan, piece))
        r->parts++;
    else if (holds_leftover(w->plan, piece))
        r->back = true;
    else
        r->offcut = true;
}

static void take_rest(const walk *w, const sheet_strips *strips, result *r, size_t piece) {
    bool goes_on;
    sb_rect rest = rest_of(w, piece, &goes_on);
    size_t number = sheet_strip_number(strips, rest);
    if (rest.w.nm <= 0 || rest.l.nm <= 0)
        return;
    if (goes_on)
        r->goes_on = true;
    else if (number > 0)
        r->rests[r->rest_count++] = number;
    else if (holds_part(w->plan, rest))
        r->last = true;
    else if (holds_leftover(w->plan, rest))
        r->back = true;
    else
        r->offcut = true;
}

static const char *with(sb_run *run, const char *words, const char *more) {
    return *words ? sb_pool_print(run->pool, "%s; %s", words, more) : more;
}

static const char *result_words(sb_run *run, const result *r) {
    const char *words = r->parts == 0 ? "" : r->parts == 1 ? "into a part" : "into parts";
    if (r->near_count > 0)
        words = sb_pool_print(run->pool, "%s%s %s%s %s", words, r->parts ? " and" : "into", "strip",
                              r->near_count > 1 ? "s" : "", sheet_strips_words(run, r->near, r->near_count));
    if (r->rest_count > 0)
        words = with(run, words,
                     sb_pool_print(run->pool, "the rest: %s, waits",
                                   sheet_strips_words(run, r->rests, r->rest_count)));
    if (r->last)
        words = with(run, words, "the rest is a part too");
    if (r->goes_on)
        words = with(run, words, "go on with the rest");
    if (r->back)
        words = with(run, words, "what is left goes back");
    return r->offcut && !r->back ? with(run, words, "what is left is offcut") : words;
}

const char *sheet_result_words(const cuts_paper *p, const sb_sheet_plan *plan, const sheet_strips *strips,
                               fence_setting setting) {
    const walk w = {p, plan, setting};
    size_t most = setting.times * setting.pieces;
    result r = {.near = SB_NEW_ARRAY(p->run->pool, size_t, most + 1),
                .rests = SB_NEW_ARRAY(p->run->pool, size_t, most + 1)};
    for (size_t piece = 0; piece < setting.pieces; piece++) {
        for (size_t time = 0; time < setting.times; time++)
            take_near(&w, strips, &r, sheet_near(cut_of(&w, piece, time)));
        take_rest(&w, strips, &r, piece);
    }
    return result_words(p->run, &r);
}
