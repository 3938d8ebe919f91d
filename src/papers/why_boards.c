/* Boards of the cut sheet: what one is and costs, and where each mark on it comes from. */
#include "papers/why_cuts.h"

#include <strings.h>

typedef struct board {
    why *w;
    const cuts_paper *p;
    const sb_board_plan *plan;
    cuts_marks marks;
    const char *numbers; /* "3", "3 to 6" */
} board;

static const char *length(const board *b, sb_length value) {
    sb_style exact = sb_style_exact(b->p->style);
    return sb_write_length_unit(b->w->run, value, &exact);
}

static const char *name(const board *b, size_t part) {
    return cuts_name(b->p, b->plan->parts.items[part].need);
}

static sb_length length_of(const board *b, size_t part) {
    return b->p->problem->needs.items[b->plan->parts.items[part].need].length;
}

/* ---- marks ---- */

/* "one cut at 45°": what two neighbours share; at it long points overlap, and the blade takes more along the board. */
static const char *shared_words(const board *b, size_t part) {
    if (!cuts_shares(b->p, b->plan, part))
        return "for the kerfs of a rear and a front cut, rounded up to the tape's step";
    return sb_pool_print(b->w->run->pool,
                         "for one cut at %s, where both overlap, rounded up to the tape's step",
                         cuts_setting(b->w->run, b->plan->parts.items[part].front, b->p->style));
}

/* What lies between the mark before and where a part begins. */
static const char *begin_words(const board *b, size_t part) {
    sb_pool *pool = b->w->run->pool;
    if (cuts_waste_before(b->p, b->plan, part))
        return sb_pool_print(pool, "begins at %s, behind what is cut away", length(b, b->marks.from[part]));
    if (part == 0)
        return "from the trued end";
    sb_length before = b->marks.to[part - 1], kerf = b->p->problem->rules.kerf;
    sb_length gap = sb_length_sub(b->marks.from[part], before);
    if (gap.nm == kerf.nm)
        return sb_pool_print(pool, "mark before %s + kerf %s", length(b, before), length(b, kerf));
    return sb_pool_print(pool, "mark before %s %s %s (%s)", length(b, before), gap.nm < 0 ? "-" : "+",
                         length(b, (sb_length){gap.nm < 0 ? -gap.nm : gap.nm}), shared_words(b, part));
}

static const char *mark_words(const board *b, size_t part) {
    if (cuts_beside(b->p, b->plan, part))
        return sb_pool_print(b->w->run->pool, "beside the part before, %s: ripped off the same section",
                             name(b, part));
    return sb_pool_print(b->w->run->pool, "%s + length %s, %s", begin_words(b, part),
                         length(b, length_of(b, part)), name(b, part));
}

/* Before a part that keeps off a knot or a split. */
static void say_waste(const board *b, size_t part) {
    const char *how = sb_pool_print(
        b->w->run->pool, "cut away, for %s keeps off what is bad there; its own cut starts behind it",
        name(b, part));
    if (!cuts_waste_before(b->p, b->plan, part))
        return;
    if (b->marks.cut[part].nm >= 0)
        why_say_exact_length(b->w, "waste, cut at", b->marks.cut[part], how, (sb_place){0});
    else
        why_say(b->w, "waste", "no mark", how, (sb_place){0});
}

static void say_mark(const board *b, size_t part) {
    say_waste(b, part);
    const char *what = sb_pool_print(b->w->run->pool, "mark %zu", part + 1);
    sb_place place = why_need_place(b->p, b->plan->parts.items[part].need);
    if (b->marks.fit)
        why_say_exact_length(b->w, what, b->marks.to[part], mark_words(b, part), place);
    else
        why_say(b->w, what, "none", "no room for marks on the tape's step: cut at the stop", place);
}

static void say_kerf(const board *b) {
    why_say_exact_length(b->w, "kerf", b->p->problem->rules.kerf, "of the crosscut saw",
                         sb_shop_setting(b->w->shop, "crosscut kerf"));
}

/* ---- the board ---- */

static void say_trim(const board *b) {
    const sb_supply *supply = &b->p->problem->supplies.items[b->plan->supply];
    why_say_length(b->w, "trued end", supply->trim1,
                   supply->trim1.nm ? "comes off the front end; all marks are measured from there"
                                    : "ends as they are; all marks are measured from there",
                   why_trim_place(b->w, b->p, b->plan->supply, "crosscut"));
}

static void say_rest(const board *b) {
    const sb_supply *supply = &b->p->problem->supplies.items[b->plan->supply];
    bool kept = b->plan->leftover.nm > 0;
    const char *how =
        sb_pool_print(b->w->run->pool, "board %s - trued ends %s and %s - last mark %s - kerf %s%s",
                      length(b, supply->length), length(b, supply->trim1), length(b, supply->trim2),
                      length(b, b->marks.to[b->plan->parts.count - 1]), length(b, b->p->problem->rules.kerf),
                      supply->bad.count ? ", without what is bad of it" : "");
    if (b->marks.rest.nm > 0)
        why_say_exact_length(b->w, kept ? "left over" : "offcut", b->marks.rest,
                             sb_pool_print(b->w->run->pool, "%s%s", how,
                                           kept ? "; long enough to be kept" : "; too short to be kept"),
                             sb_shop_setting(b->w->shop, "leftover board"));
}

static void say_head(const board *b) {
    why_say_supply(
        b->w, b->p, b->plan->supply,
        sb_pool_print(b->w->run->pool, "%s %s", b->plan->count == 1 ? "board" : "boards", b->numbers));
}

/* What is bad of a measured board. */
static void say_bad(const board *b) {
    const sb_supply *supply = &b->p->problem->supplies.items[b->plan->supply];
    for (size_t i = 0; i < supply->bad.count; i++) {
        const sb_stretch *bad = &supply->bad.items[i];
        why_say(b->w, bad->split ? "split" : "knot",
                sb_pool_print(b->w->run->pool, "%s to %s", length(b, bad->from), length(b, bad->to)),
                "from the front end of the board, as it was measured", bad->place);
    }
}

static void say_board(const board *b) {
    say_head(b);
    say_bad(b);
    say_trim(b);
    for (size_t i = 0; i < b->plan->parts.count; i++)
        say_mark(b, i);
    say_kerf(b);
    say_rest(b);
}

/* A mark with those before it, and its part down to the recipe. */
static bool say_one_mark(const board *b, int64_t number) {
    if (number < 1 || (size_t)number > b->plan->parts.count)
        return false;
    say_head(b);
    say_bad(b);
    say_trim(b);
    for (size_t i = 0; i < (size_t)number; i++)
        say_mark(b, i);
    say_kerf(b);
    why_say_need(b->w, b->p, b->plan->parts.items[number - 1].need);
    return true;
}

/* ---- which ---- */

typedef struct ask {
    int64_t number, mark; /* mark 0: the whole board */
    bool rest;            /* what falls off it */
} ask;

static bool is_rest(const char **figure) {
    return why_skip(figure, "offcut of ") || why_skip(figure, "left over of ") ||
           why_skip(figure, "leftover of ");
}

static bool read(const char *figure, ask *out) {
    out->rest = is_rest(&figure);
    why_skip(&figure, "waste of "); /* stands among the marks of its board */
    if (!out->rest && why_skip(&figure, "mark ") &&
        (!why_number(&figure, &out->mark) || !why_skip(&figure, " of ")))
        return false;
    return (why_skip(&figure, "board ") || why_skip(&figure, "boards ")) && why_numbers(figure, &out->number);
}

static bool say_asked(why *w, const cuts_paper *p, const ask *asked) {
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->boards.count; first += p->plan->boards.items[i++].count) {
        const sb_board_plan *plan = &p->plan->boards.items[i];
        if (asked->number < first || asked->number >= first + plan->count)
            continue;
        const board b = {w, p, plan, cuts_marks_of(p, plan), cuts_number(p, first, plan->count)};
        if (asked->mark)
            return say_one_mark(&b, asked->mark);
        if (asked->rest)
            say_head(&b), say_rest(&b), say_kerf(&b);
        else
            say_board(&b);
        return true;
    }
    return false;
}

/* Off every board, where none is named. */
static bool say_rests(why *w, const cuts_paper *p, bool kept) {
    int64_t first = 1;
    bool found = false;
    for (size_t i = 0; i < p->plan->boards.count; first += p->plan->boards.items[i++].count) {
        const sb_board_plan *plan = &p->plan->boards.items[i];
        const board b = {w, p, plan, cuts_marks_of(p, plan), cuts_number(p, first, plan->count)};
        if ((plan->leftover.nm > 0) != kept || b.marks.rest.nm <= 0)
            continue;
        say_head(&b);
        say_rest(&b);
        found = true;
    }
    return found;
}

/* Off every board of which something is cut away before its parts. */
static bool say_wastes(why *w, const cuts_paper *p) {
    int64_t first = 1;
    bool found = false;
    for (size_t i = 0; i < p->plan->boards.count; first += p->plan->boards.items[i++].count) {
        const sb_board_plan *plan = &p->plan->boards.items[i];
        const board b = {w, p, plan, cuts_marks_of(p, plan), cuts_number(p, first, plan->count)};
        if (plan->waste.count == 0)
            continue;
        say_head(&b);
        say_bad(&b);
        for (size_t part = 0; part < plan->parts.count; part++)
            say_waste(&b, part);
        found = true;
    }
    return found;
}

bool why_board(why *w, const char *figure) {
    const cuts_paper p = why_cuts_paper(w);
    ask asked = {0};
    if (strcasecmp(figure, "offcut") == 0)
        return say_rests(w, &p, false);
    if (strcasecmp(figure, "waste") == 0)
        return say_wastes(w, &p);
    return read(figure, &asked) && say_asked(w, &p, &asked);
}

bool why_kept_boards(why *w, const cuts_paper *p) {
    return say_rests(w, p, true);
}
