/* Stacks of panes side by side across a strip. */
#include <stdlib.h>

#include "cutting/strip_stacks.h"

static int by_length(const void *a, const void *b) {
    const sb_lying_pane *one = a, *other = b;
    if (one->l != other->l)
        return one->l > other->l ? -1 : 1;
    if (one->w != other->w)
        return one->w > other->w ? -1 : 1;
    return one->pane < other->pane ? -1 : one->pane > other->pane;
}

void sb_stacks_start(sb_stacks *s, const sb_sheet_bench *bench, const int64_t *unit, int64_t widest) {
    s->bench = bench;
    s->widest = widest;
    sb_lying_list(bench, unit, &s->panes);
    for (size_t i = 0; i < s->panes.count; i++) {
        sb_lying_pane *lying = &s->panes.items[i];
        int64_t w = lying->w;
        if (bench->crosscut_first)
            lying->w = lying->l, lying->l = w;
    }
    qsort(s->panes.items, s->panes.count, sizeof *s->panes.items, by_length);
}

/* ---- one length ------------------------------------------------------------------------------------ */

static size_t add_step(sb_stacks *s, const sb_lying_pane *lying, int64_t dual, size_t below) {
    sb_stack_step step = {lying->w, lying->l, dual, lying->pane, lying->turned, below, INT64_MAX};
    if (below != SIZE_MAX) {
        step.u += s->steps.items[below].u;
        step.worth += s->steps.items[below].worth;
    }
    SB_PUSH(s->bench->run->pool, s->steps, step);
    return s->steps.count - 1;
}

static int by_width(const void *a, const void *b) {
    const sb_stack_step *one = a, *other = b;
    if (one->u != other->u)
        return one->u < other->u ? -1 : 1;
    return one->worth > other->worth ? -1 : one->worth < other->worth;
}

static void merge_in(sb_stacks *s, size_t step) {
    const sb_stack_step *of = &s->steps.items[step];
    int64_t most = s->merged.count > 0 ? s->steps.items[s->merged.items[s->merged.count - 1]].worth : 0;
    if (of->worth > most)
        SB_PUSH(s->bench->run->pool, s->merged, step);
}

/* One more copy on every stack so far, and on none; only stacks worth more than every narrower one stay. */
static void put_on_all(sb_stacks *s, const sb_lying_pane *lying, int64_t dual) {
    size_t had = s->front.count, first = s->steps.count, old = 0;
    for (size_t i = 0; i <= had; i++) {
        size_t below = i == 0 ? SIZE_MAX : s->front.items[i - 1];
        int64_t u = lying->w + (below == SIZE_MAX ? 0 : s->steps.items[below].u);
        if (u <= s->widest)
            add_step(s, lying, dual, below);
    }
    s->merged.count = 0;
    for (size_t next = first; next < s->steps.count || old < had;) {
        bool take_old = next == s->steps.count || (old < had && by_width(&s->steps.items[s->front.items[old]],
                                                                         &s->steps.items[next]) <= 0);
        merge_in(s, take_old ? s->front.items[old] : next);
        old += take_old;
        next += !take_old;
    }
    s->front.count = 0;
    for (size_t i = 0; i < s->merged.count; i++)
        SB_PUSH(s->bench->run->pool, s->front, s->merged.items[i]);
}

static void order_step(sb_stacks *s, size_t step) {
    SB_PUSH(s->bench->run->pool, s->order, ((sb_stack_at){s->steps.items[step].u, step}));
}

static bool stacks_are_allowed(const sb_stacks *s) {
    return s->bench->stages >= 3;
}

static void stack_pane(sb_stacks *s, const sb_lying_pane *lying, int64_t dual) {
    int64_t wanted = s->bench->panes.items[lying->pane].pieces, copies = s->widest / lying->w;
    if (dual <= 0)
        return;
    if (!stacks_are_allowed(s) && copies > 0) {
        size_t step = add_step(s, lying, dual, SIZE_MAX);
        s->steps.items[step].limit = wanted;
        order_step(s, step);
    }
    for (int64_t n = 0; stacks_are_allowed(s) && n < copies && n < wanted; n++)
        put_on_all(s, lying, dual);
}

/* What a strip holds of one pane's stacks. Where others are as long it is not settled: their stacks may take the place of
 * these, and are not on the list. */
static void limit_stacks(sb_stacks *s, const sb_lying_pane *lying) {
    int64_t pieces = s->bench->panes.items[lying->pane].pieces;
    for (size_t n = 0; n < s->front.count; n++) {
        sb_stack_step *step = &s->steps.items[s->front.items[n]];
        step->limit = pieces / (step->u / lying->w);
    }
}

/* Panes from `first` on that are equally long; gives the next length's first. Without a third stage every pane is a
 * stack. */
static size_t stack_group(sb_stacks *s, size_t first, const int64_t *duals) {
    const sb_lying_pane *lying = &s->panes.items[first];
    size_t i = first;
    s->front.count = 0;
    for (; i < s->panes.count && s->panes.items[i].l == lying->l; i++)
        stack_pane(s, &s->panes.items[i], duals[s->panes.items[i].pane]);
    if (i == first + 1)
        limit_stacks(s, lying);
    for (size_t n = 0; n < s->front.count; n++)
        order_step(s, s->front.items[n]);
    return i;
}

static int by_rising_width(const void *a, const void *b) {
    const sb_stack_at *one = a, *other = b;
    if (one->u != other->u)
        return one->u < other->u ? -1 : 1;
    return one->step < other->step ? -1 : one->step > other->step;
}

void sb_stacks_list(sb_stacks *s, const int64_t *duals) {
    s->steps.count = s->order.count = 0;
    for (size_t i = 0; i < s->panes.count;)
        i = stack_group(s, i, duals);
    if (s->order.count > 1) /* without duals there are none */
        qsort(s->order.items, s->order.count, sizeof *s->order.items, by_rising_width);
}

int64_t sb_stack_width(const sb_stacks *s, size_t step) {
    int64_t width = -s->bench->kerf;
    for (; step != SIZE_MAX; step = s->steps.items[step].below) {
        const sb_stack_step *at = &s->steps.items[step];
        const sb_pane *pane = &s->bench->panes.items[at->pane];
        width += s->bench->kerf + (at->turned != s->bench->crosscut_first ? pane->length : pane->width);
    }
    return width;
}
