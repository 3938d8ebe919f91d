/* The most a sheet is worth in strips: S by length of stack, K by width of strip, M over the sheet. */
#include <stdlib.h>
#include <string.h>

#include "cutting/strip_stacks.h"

/* A stack put into the strip at hand. */
typedef struct laying {
    size_t step;
    int64_t copies; /* put in together; 0: one, again and again */
} laying;

typedef struct strip_width { /* where K changes */
    int64_t u;
    size_t step;         /* a stack so wide */
    size_t from, behind; /* layings that made it */
} strip_width;

typedef struct sb_strip_worths {
    const sb_sheet_bench *bench;
    int64_t unit[2];
    int64_t longest, widest;
    sb_stacks stacks;
    int64_t *k;                  /* K of the strip at hand, by length */
    SB_LIST(laying) laid;        /* K is made of, one after the other */
    SB_LIST(uint64_t *) taken;   /* by laying: a bit for each length where it made K larger */
    SB_LIST(strip_width) widths; /* rising */
    SB_LIST(int64_t) strips;     /* K(u, V) by width, then by offer */
    int64_t *m;                  /* M of the offer at hand */
    size_t *m_width;             /* the strip put on last, into widths */
    size_t filled;               /* the offer at hand; SIZE_MAX: none */
} strip_worths;

/* ---- set up ---------------------------------------------------------------------------------------- */

static bool v_axis(const strip_worths *s) {
    return !s->bench->crosscut_first;
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
    s->longest = sb_largest_room(bench, v_axis(s)) / s->unit[v_axis(s)];
    s->widest = sb_largest_room(bench, !v_axis(s)) / s->unit[!v_axis(s)];
    sb_stacks_start(&s->stacks, bench, s->unit, s->widest);
    s->k = SB_NEW_ARRAY(pool, int64_t, (size_t)s->longest + 1);
    s->m = SB_NEW_ARRAY(pool, int64_t, (size_t)s->widest + 1);
    s->m_width = SB_NEW_ARRAY(pool, size_t, (size_t)s->widest + 1);
    unit[0] = s->unit[0];
    unit[1] = s->unit[1];
    return s;
}

/* ---- strips ------------------------------------------------------------------------------------------ */

static void clear_strip(strip_worths *s) {
    for (int64_t l = 0; l <= s->longest; l++)
        s->k[l] = 0;
}

static size_t words(const strip_worths *s) {
    return (size_t)s->longest / 64 + 1;
}

static uint64_t *add_laying(strip_worths *s, laying laid) {
    sb_pool *pool = s->bench->run->pool;
    SB_PUSH(pool, s->laid, laid);
    if (s->laid.count > s->taken.count)
        SB_PUSH(pool, s->taken, SB_NEW_ARRAY(pool, uint64_t, words(s)));
    uint64_t *taken = s->taken.items[s->laid.count - 1];
    memset(taken, 0, words(s) * sizeof *taken);
    s->bench->work->left -= s->longest / 60 + 1;
    return taken;
}

static void take(strip_worths *s, int64_t l, int64_t v, int64_t worth, uint64_t *taken) {
    int64_t sum = s->k[l - v] + worth;
    if (sum <= s->k[l])
        return;
    s->k[l] = sum;
    taken[l / 64] |= (uint64_t)1 << l % 64;
}

static void put_freely(strip_worths *s, size_t index) {
    int64_t v = s->stacks.steps.items[index].v, worth = s->stacks.steps.items[index].worth;
    uint64_t *taken = add_laying(s, (laying){index, 0});
    for (int64_t l = v; l <= s->longest; l++)
        take(s, l, v, worth, taken);
}

static void put_copies(strip_worths *s, size_t index, int64_t copies) {
    int64_t v = s->stacks.steps.items[index].v * copies, worth = s->stacks.steps.items[index].worth * copies;
    uint64_t *taken = add_laying(s, (laying){index, copies});
    for (int64_t l = s->longest; l >= v; l--)
        take(s, l, v, worth, taken);
}

/* Up to its limit: one, two, four, ... together make every number. */
static void put_stack(strip_worths *s, size_t index) {
    const sb_stack_step *step = &s->stacks.steps.items[index];
    if (step->limit >= s->longest / step->v) {
        put_freely(s, index);
        return;
    }
    int64_t left = step->limit;
    for (int64_t copies = 1; left > 0; left -= copies, copies *= 2)
        put_copies(s, index, copies < left ? copies : left);
}

static bool only_full_width(const strip_worths *s) {
    return s->bench->stages == 2 && !s->bench->trims;
}

static int64_t length_of(const strip_worths *s, size_t offer) {
    return sb_offer_room(s->bench, offer, v_axis(s), s->unit);
}

static void note_width(strip_worths *s, sb_stack_at at, size_t from) {
    sb_pool *pool = s->bench->run->pool;
    SB_PUSH(pool, s->widths, ((strip_width){at.u, at.step, from, s->laid.count}));
    for (size_t o = 0; o < s->bench->offers.count; o++)
        SB_PUSH(pool, s->strips, s->k[length_of(s, o)]);
}

static void list_strips(strip_worths *s) {
    size_t from = 0;
    s->widths.count = s->strips.count = s->laid.count = 0;
    clear_strip(s);
    for (size_t i = 0; i < s->stacks.order.count; i++) {
        int64_t u = s->stacks.order.items[i].u;
        put_stack(s, s->stacks.order.items[i].step);
        if (i + 1 < s->stacks.order.count && s->stacks.order.items[i + 1].u == u)
            continue;
        note_width(s, s->stacks.order.items[i], from);
        if (only_full_width(s)) {
            clear_strip(s);
            from = s->laid.count;
        }
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
    sb_stacks_list(&s->stacks, duals);
    list_strips(s);
    s->filled = SIZE_MAX;
}

int64_t sb_strip_worths_of(struct sb_strip_worths *s, size_t offer) {
    if (s->filled != offer)
        fill_sheet(s, offer);
    return s->m[width_of(s, offer)];
}

/* ---- what is on the best sheet ------------------------------------------------------------------------- */

static void count_stack(const strip_worths *s, const laying *laid, int64_t *made) {
    for (size_t at = laid->step; at != SIZE_MAX; at = s->stacks.steps.items[at].below)
        made[s->stacks.steps.items[at].pane] += laid->copies > 0 ? laid->copies : 1;
}

static void count_strip(const strip_worths *s, size_t width, int64_t length, int64_t *made) {
    const strip_width *of = &s->widths.items[width];
    for (size_t i = of->behind; i-- > of->from;) {
        const laying *laid = &s->laid.items[i];
        int64_t v = s->stacks.steps.items[laid->step].v * (laid->copies > 0 ? laid->copies : 1);
        for (bool more = true; more && s->taken.items[i][length / 64] >> length % 64 & 1;) {
            count_stack(s, laid, made);
            length -= v;
            more = laid->copies == 0;
        }
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

size_t sb_strip_worths_widths(struct sb_strip_worths *s, size_t offer, int64_t *widths, size_t most) {
    size_t count = 0;
    sb_strip_worths_of(s, offer);
    for (int64_t x = width_of(s, offer); s->m_width[x] != SIZE_MAX && count < most;) {
        const strip_width *at = &s->widths.items[s->m_width[x]];
        widths[count++] = sb_stack_width(&s->stacks, at->step);
        x -= at->u;
    }
    return count;
}
