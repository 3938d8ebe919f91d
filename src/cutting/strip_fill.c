/* What goes into one strip: stacks of parts, chosen by a knapsack over their lengths. */
#include "cutting/strips.h"

#define STEPS 400 /* nodes for the filling of one strip */

typedef struct sb_stripping stripping;

/* ---- stacks for a strip of width u --------------------------------------------------------------- */

static int64_t uses(const sb_stack *of, size_t pane) {
    int64_t count = 0;
    for (size_t i = 0; i < of->parts; i++)
        count += of->part[i]->pane == pane;
    return count;
}

static void add_part(const stripping *s, sb_stack *to, const sb_lay *lay) {
    to->part[to->parts++] = lay;
    to->worth += s->f->worth[lay->pane];
}

/* The part worth most that still fits beside the others; one that fills the width is worth more. */
static const sb_lay *beside(const stripping *s, const sb_stack *in, const sb_lay *first, int64_t room) {
    const sb_lay *lays = s->lays[s->crosscut].items, *best = NULL;
    double most = 0;
    for (size_t i = first->first; i < first->behind; i++) {
        const sb_lay *lay = &lays[i];
        if (lay->u > room || uses(in, lay->pane) >= s->left[lay->pane])
            continue;
        double worth = s->f->worth[lay->pane] * (room == lay->u ? 1.5 : 1);
        if (worth > most)
            most = worth, best = lay;
    }
    return best;
}

static sb_stack stack_from(const stripping *s, int64_t u, const sb_lay *first) {
    sb_stack made = {.v = first->v};
    int64_t room = u - first->u - s->bench->kerf;
    add_part(s, &made, first);
    while (s->stages > 2 && made.parts < SB_STACKED && room > 0) {
        const sb_lay *next = beside(s, &made, first, room);
        if (!next)
            break;
        add_part(s, &made, next);
        room -= next->u + s->bench->kerf;
    }
    return made;
}

static bool is_choice(const stripping *s, const sb_lay *lay, int64_t u, int64_t room) {
    bool fits = s->stages > 2 || s->trims ? lay->u <= u : lay->u == u;
    return s->left[lay->pane] > 0 && fits && lay->v <= room;
}

static void list_choices(stripping *s, int64_t u, int64_t room) {
    s->choices.count = 0;
    for (size_t i = 0; i < s->listed.count; i++)
        if (is_choice(s, s->listed.items[i], u, room))
            SB_PUSH(s->bench->run->pool, s->choices, stack_from(s, u, s->listed.items[i]));
}

/* ---- the strip ----------------------------------------------------------------------------------- */

static int64_t times_possible(const stripping *s, const sb_stack *of) {
    int64_t times = INT64_MAX;
    for (size_t i = 0; i < of->parts; i++) {
        int64_t used = uses(of, of->part[i]->pane), can = s->left[of->part[i]->pane];
        can = used == 1 ? can : can / used;
        times = can < times ? can : times;
    }
    return times;
}

static void set_items(stripping *s, int64_t room) {
    sb_knapsack *k = &s->knapsack;
    k->items.count = 0;
    k->capacity = room + s->bench->kerf;
    k->steps = STEPS;
    for (size_t i = 0; i < s->choices.count; i++) {
        const sb_stack *of = &s->choices.items[i];
        sb_knap_item item = {
            .size = of->v + s->bench->kerf, .value = (int64_t)(of->worth * s->scale), .tag = i};
        item.limit = times_possible(s, of);
        SB_PUSH(s->bench->run->pool, k->items, item);
    }
}

static int64_t put_stack(stripping *s, sb_strip *to, const sb_stack *of) {
    for (size_t i = 0; i < of->parts; i++)
        s->left[of->part[i]->pane]--;
    SB_PUSH(s->bench->run->pool, to->stacks, *of);
    to->worth += of->worth;
    return of->v + s->bench->kerf;
}

/* One knapsack over the stacks; another for what is left, since stacks share parts. */
static int64_t fill_once(stripping *s, sb_strip *to, int64_t room) {
    int64_t taken = 0;
    list_choices(s, to->u, room);
    if (s->choices.count == 0)
        return 0;
    set_items(s, room);
    sb_knapsack_solve(s->bench->run->pool, &s->knapsack);
    s->bench->work->left -= STEPS - s->knapsack.steps + 3 * (int64_t)s->choices.count;
    for (size_t i = 0; s->knapsack.any && i < s->knapsack.items.count; i++) {
        const sb_knap_item *item = &s->knapsack.items.items[i];
        const sb_stack *of = &s->choices.items[item->tag];
        for (int64_t n = 0; n < item->taken && times_possible(s, of) > 0; n++)
            taken += put_stack(s, to, of);
    }
    return taken;
}

void sb_strip_fill(stripping *s, sb_strip *to, int64_t u, int64_t length) {
    to->u = u;
    to->worth = 0;
    to->stacks.count = 0;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        s->left[i] = s->open[i];
    for (int64_t room = length, taken = 1; taken > 0 && room > 0; room -= taken)
        taken = fill_once(s, to, room);
}
