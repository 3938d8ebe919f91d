/* The most a sheet is worth in strips: S by length of stack, K by width of strip, M over the sheet. */
#include <stdlib.h>
#include <string.h>

#include "cutting/sheet_worth.h"

/* A stack of panes equally long in v: S(u, v) rises here. */
typedef struct stack_step {
    int64_t u, v, worth;
    size_t pane; /* the last that was put on */
    bool turned;
    size_t below; /* the stack under it, into steps; SIZE_MAX: none */
} stack_step;

typedef struct stack_at {
    int64_t u;
    size_t step;
} stack_at;

typedef struct sb_strip_worths {
    const sb_sheet_bench *bench;
    int64_t unit[2];
    sb_lying_panes panes; /* w is u and l is v here, whichever way strips run; by falling l */
    int64_t longest, widest;
    SB_LIST(stack_step) steps;
    SB_LIST(size_t) front, merged; /* stacks of one length, each wider worth more than the last; into steps */
    SB_LIST(stack_at) order;       /* all stacks, by rising width */
    int64_t *k;                    /* K of the strip at hand, by length */
    uint32_t *k_step;              /* the step put on last; UINT32_MAX: none */
    SB_LIST(stack_at) widths;      /* where K changes, rising */
    SB_LIST(int64_t) strips;       /* K(u, V) by width, then by offer */
    SB_LIST(uint32_t *) snapshots; /* k_step by width */
    int64_t *m;                    /* M of the offer at hand */
    size_t *m_width;               /* the strip put on last, into widths */
    size_t filled;                 /* the offer at hand; SIZE_MAX: none */
} strip_worths;

/* ---- set up ---------------------------------------------------------------------------------------- */

static bool v_axis(const strip_worths *s) {
    return !s->bench->crosscut_first;
}

static int by_length(const void *a, const void *b) {
    const sb_lying_pane *one = a, *other = b;
    if (one->l != other->l)
        return one->l > other->l ? -1 : 1;
    if (one->w != other->w)
        return one->w > other->w ? -1 : 1;
    return one->pane < other->pane ? -1 : one->pane > other->pane;
}

static void list_panes(strip_worths *s) {
    sb_lying_list(s->bench, s->unit, &s->panes);
    for (size_t i = 0; i < s->panes.count; i++) {
        sb_lying_pane *lying = &s->panes.items[i];
        int64_t w = lying->w;
        if (s->bench->crosscut_first)
            lying->w = lying->l, lying->l = w;
    }
    qsort(s->panes.items, s->panes.count, sizeof *s->panes.items, by_length);
}

static bool choose_unit(strip_worths *s, bool along_y, int64_t fineness) {
    int64_t largest = sb_largest_room(s->bench, along_y), unit = sb_axis_step(s->bench, along_y);
    if (largest / unit > fineness)
        unit = largest / fineness + 1;
    s->unit[along_y] = unit;
    return unit <= sb_smallest_size(s->bench, along_y);
}

struct sb_strip_worths *sb_strip_worths_new(const sb_sheet_bench *bench, int64_t fineness, int64_t *unit) {
    sb_pool *pool = bench->run->pool;
    strip_worths *s = SB_NEW(pool, strip_worths);
    s->bench = bench;
    if (!choose_unit(s, false, fineness) || !choose_unit(s, true, fineness))
        return NULL;
    list_panes(s);
    s->longest = sb_largest_room(bench, v_axis(s)) / s->unit[v_axis(s)];
    s->widest = sb_largest_room(bench, !v_axis(s)) / s->unit[!v_axis(s)];
    s->k = SB_NEW_ARRAY(pool, int64_t, (size_t)s->longest + 1);
    s->k_step = SB_NEW_ARRAY(pool, uint32_t, (size_t)s->longest + 1);
    s->m = SB_NEW_ARRAY(pool, int64_t, (size_t)s->widest + 1);
    s->m_width = SB_NEW_ARRAY(pool, size_t, (size_t)s->widest + 1);
    unit[0] = s->unit[0];
    unit[1] = s->unit[1];
    return s;
}

/* ---- stacks ------------------------------------------------------------------------------------------ */

static size_t add_step(strip_worths *s, const sb_lying_pane *lying, int64_t dual, size_t below) {
    stack_step step = {lying->w, lying->l, dual, lying->pane, lying->turned, below};
    if (below != SIZE_MAX) {
        step.u += s->steps.items[below].u;
        step.worth += s->steps.items[below].worth;
    }
    SB_PUSH(s->bench->run->pool, s->steps, step);
    return s->steps.count - 1;
}

static int by_width(const void *a, const void *b) {
    const stack_step *one = a, *other = b;
    if (one->u != other->u)
        return one->u < other->u ? -1 : 1;
    return one->worth > other->worth ? -1 : one->worth < other->worth;
}

static void merge_in(strip_worths *s, size_t step) {
    const stack_step *of = &s->steps.items[step];
    int64_t most = s->merged.count > 0 ? s->steps.items[s->merged.items[s->merged.count - 1]].worth : 0;
    if (of->worth > most)
        SB_PUSH(s->bench->run->pool, s->merged, step);
}

/* One more copy on every stack so far, and on none; only stacks worth more than every narrower one stay. */
static void put_on_all(strip_worths *s, const sb_lying_pane *lying, int64_t dual) {
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

static void order_step(strip_worths *s, size_t step) {
    SB_PUSH(s->bench->run->pool, s->order, ((stack_at){s->steps.items[step].u, step}));
}

static bool stacks_are_allowed(const strip_worths *s) {
    return s->bench->stages == 3;
}

/* Panes from `i` on that are equally long; gives the next length's first. Without a third stage every pane is a stack. */
static size_t stack_group(strip_worths *s, size_t i, const int64_t *duals) {
    int64_t v = s->panes.items[i].l;
    s->front.count = 0;
    for (; i < s->panes.count && s->panes.items[i].l == v; i++) {
        const sb_lying_pane *lying = &s->panes.items[i];
        int64_t copies = stacks_are_allowed(s) ? s->widest / lying->w : 1;
        int64_t wanted = s->bench->panes.items[lying->pane].pieces;
        for (int64_t n = 0; n < copies && n < wanted && duals[lying->pane] > 0; n++)
            if (stacks_are_allowed(s))
                put_on_all(s, lying, duals[lying->pane]);
            else if (lying->w <= s->widest)
                order_step(s, add_step(s, lying, duals[lying->pane], SIZE_MAX));
    }
    for (size_t n = 0; n < s->front.count; n++)
        order_step(s, s->front.items[n]);
    return i;
}

static int by_rising_width(const void *a, const void *b) {
    const stack_at *one = a, *other = b;
    if (one->u != other->u)
        return one->u < other->u ? -1 : 1;
    return one->step < other->step ? -1 : one->step > other->step;
}

static void list_stacks(strip_worths *s, const int64_t *duals) {
    s->steps.count = s->order.count = 0;
    for (size_t i = 0; i < s->panes.count;)
        i = stack_group(s, i, duals);
    qsort(s->order.items, s->order.count, sizeof *s->order.items, by_rising_width);
}

/* ---- strips ------------------------------------------------------------------------------------------ */

static void clear_strip(strip_worths *s) {
    for (int64_t l = 0; l <= s->longest; l++) {
        s->k[l] = 0;
        s->k_step[l] = UINT32_MAX;
    }
}

static void put_stack(strip_worths *s, size_t index) {
    const stack_step *step = &s->steps.items[index];
    for (int64_t l = step->v; l <= s->longest; l++) {
        int64_t sum = s->k[l - step->v] + step->worth;
        if (sum > s->k[l]) {
            s->k[l] = sum;
            s->k_step[l] = (uint32_t)index;
        }
    }
    s->bench->work->left -= s->longest / 60 + 1;
}

static bool only_full_width(const strip_worths *s) {
    return s->bench->stages == 2 && !s->bench->trims;
}

static int64_t length_of(const strip_worths *s, size_t offer) {
    return sb_offer_room(s->bench, offer, v_axis(s), s->unit);
}

/* Keeps K(u, V) of every offer, and how it came about. */
static void note_width(strip_worths *s, stack_at at) {
    sb_pool *pool = s->bench->run->pool;
    SB_PUSH(pool, s->widths, at);
    for (size_t o = 0; o < s->bench->offers.count; o++)
        SB_PUSH(pool, s->strips, s->k[length_of(s, o)]);
    if (s->widths.count > s->snapshots.count)
        SB_PUSH(pool, s->snapshots, SB_NEW_ARRAY(pool, uint32_t, (size_t)s->longest + 1));
    memcpy(s->snapshots.items[s->widths.count - 1], s->k_step, ((size_t)s->longest + 1) * sizeof *s->k_step);
}

static void list_strips(strip_worths *s) {
    s->widths.count = s->strips.count = 0;
    clear_strip(s);
    for (size_t i = 0; i < s->order.count; i++) {
        int64_t u = s->order.items[i].u;
        put_stack(s, s->order.items[i].step);
        if (i + 1 < s->order.count && s->order.items[i + 1].u == u)
            continue;
        note_width(s, s->order.items[i]);
        if (only_full_width(s))
            clear_strip(s);
    }
}

/* ---- the sheet --------------------------------------------------------------------------------------- */

static void fill_sheet(strip_worths *s, size_t offer) {
    size_t offers = s->bench->offers.count;
    int64_t most = 0;
    for (int64_t x = 0; x <= s->widest; x++) {
        s->m[x] = 0;
        s->m_width[x] = SIZE_MAX;
    }
    for (size_t w = 0; w < s->widths.count; w++) {
        int64_t u = s->widths.items[w].u, worth = s->strips.items[w * offers + offer];
        if (worth <= most && !only_full_width(s))
            continue; /* a narrower strip holds as much */
        most = worth;
        for (int64_t x = u; x <= s->widest; x++)
            if (s->m[x - u] + worth > s->m[x]) {
                s->m[x] = s->m[x - u] + worth;
                s->m_width[x] = w;
            }
        s->bench->work->left -= s->widest / 60 + 1;
    }
    s->filled = offer;
}

static int64_t width_of(const strip_worths *s, size_t offer) {
    return sb_offer_room(s->bench, offer, !v_axis(s), s->unit);
}

void sb_strip_worths_value(struct sb_strip_worths *s, const int64_t *duals) {
    list_stacks(s, duals);
    list_strips(s);
    s->filled = SIZE_MAX;
}

int64_t sb_strip_worths_of(struct sb_strip_worths *s, size_t offer) {
    if (s->filled != offer)
        fill_sheet(s, offer);
    return s->m[width_of(s, offer)];
}

/* ---- what is on the best sheet ------------------------------------------------------------------------- */

static void count_strip(const strip_worths *s, size_t width, int64_t length, int64_t *made) {
    const uint32_t *k_step = s->snapshots.items[width];
    for (int64_t l = length; k_step[l] != UINT32_MAX;) {
        const stack_step *step = &s->steps.items[k_step[l]];
        l -= step->v;
        for (; step; step = step->below == SIZE_MAX ? NULL : &s->steps.items[step->below])
            made[step->pane]++;
    }
}

void sb_strip_worths_best(struct sb_strip_worths *s, size_t offer, int64_t *made) {
    sb_strip_worths_of(s, offer);
    for (int64_t x = width_of(s, offer); s->m_width[x] != SIZE_MAX;) {
        size_t width = s->m_width[x];
        count_strip(s, width, length_of(s, offer), made);
        x -= s->widths.items[width].u;
    }
}

/* Of a stack, with its inner kerfs [nm]. */
static int64_t true_width(const strip_worths *s, size_t index) {
    int64_t width = -s->bench->kerf;
    for (; index != SIZE_MAX; index = s->steps.items[index].below) {
        const stack_step *step = &s->steps.items[index];
        const sb_pane *pane = &s->bench->panes.items[step->pane];
        width += s->bench->kerf + (step->turned != s->bench->crosscut_first ? pane->length : pane->width);
    }
    return width;
}

size_t sb_strip_worths_widths(struct sb_strip_worths *s, size_t offer, int64_t *widths, size_t most) {
    size_t count = 0;
    sb_strip_worths_of(s, offer);
    for (int64_t x = width_of(s, offer); s->m_width[x] != SIZE_MAX && count < most;) {
        const stack_at *at = &s->widths.items[s->m_width[x]];
        widths[count++] = true_width(s, at->step);
        x -= at->u;
    }
    return count;
}
