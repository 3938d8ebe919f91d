/* One sheet in strips: strips side by side, in each strip stacks end to end, in each stack parts side by side.
 *
 * u runs across the strips, v along them. With the kerf added to every size and to the room,
 *   strips: sum of (u + k) <= U + k;  stacks of a strip: sum of (v + k) <= V + k;  parts of a stack: sum of (u + k) <= u_strip + k.
 * All parts of a stack are equally long in v. Two stages allow only parts as wide as their strip; with trims a stack is
 * one part, wide as it may be.
 */
#include <math.h>
#include <stdlib.h>

#include "cutting/sheets.h"

#define WIDTHS  24  /* strip widths tried for one strip */
#define STEPS   400 /* nodes for the filling of one strip */
#define STACKED 8   /* parts in a stack at most */

typedef struct stack {
    int64_t v;
    double worth;
    size_t parts;
    struct {
        size_t pane;
        bool turned;
    } part[STACKED];
} stack;

typedef struct strip {
    int64_t u;
    double worth;
    SB_LIST(stack) stacks; /* in the order they are cut */
} strip;

struct sb_stripping {
    const sb_sheet_filling *f;
    const sb_sheet_bench *bench;
    bool crosscut; /* strips lie across the sheet */
    int stages;    /* 2, 3; with trims 2 lets parts be narrower than the strip */
    bool trims;
    int64_t *open; /* still to be made, without what lies on this sheet */
    int64_t *left; /* ... nor in the strip being filled */
    SB_LIST(stack) choices;
    sb_knapsack knapsack;
    strip best, tried;
    double scale;
};
typedef struct sb_stripping stripping;

/* ---- sizes ---------------------------------------------------------------------------------------------------------- */

static int64_t u_of(const stripping *s, size_t pane, bool turned) {
    const sb_pane *of = &s->bench->panes.items[pane];
    return s->crosscut ? sb_pane_l(of, turned) : sb_pane_w(of, turned);
}

static int64_t v_of(const stripping *s, size_t pane, bool turned) {
    const sb_pane *of = &s->bench->panes.items[pane];
    return s->crosscut ? sb_pane_w(of, turned) : sb_pane_l(of, turned);
}

static bool may_lie(const stripping *s, size_t pane, bool turned) {
    const sb_pane *of = &s->bench->panes.items[pane];
    return s->left[pane] > 0 && (turned ? of->sideways : of->upright);
}

/* ---- stacks for a strip of width u ---------------------------------------------------------------------------------------- */

static void add_part(const stripping *s, stack *to, size_t pane, bool turned) {
    to->part[to->parts].pane = pane;
    to->part[to->parts].turned = turned;
    to->parts++;
    to->worth += s->f->worth[pane];
}

static int64_t uses(const stack *of, size_t pane) {
    int64_t count = 0;
    for (size_t i = 0; i < of->parts; i++)
        count += of->part[i].pane == pane;
    return count;
}

/* Widest first, as long as they fit; `first` is already chosen. */
static stack stack_from(const stripping *s, int64_t u, size_t pane, bool turned) {
    stack made = {.v = v_of(s, pane, turned)};
    int64_t room = u - u_of(s, pane, turned) - s->bench->kerf;
    add_part(s, &made, pane, turned);
    while (s->stages > 2 && made.parts < STACKED && room > 0) {
        size_t best = SIZE_MAX;
        bool best_turned = false;
        double most = 0;
        for (size_t i = 0; i < s->bench->panes.count; i++)
            for (int t = 0; t < 2; t++) {
                if (!may_lie(s, i, t) || v_of(s, i, t) != made.v || u_of(s, i, t) > room ||
                    uses(&made, i) >= s->left[i])
                    continue;
                double worth = s->f->worth[i] * (room == u_of(s, i, t) ? 1.5 : 1);
                if (worth > most)
                    most = worth, best = i, best_turned = t;
            }
        if (best == SIZE_MAX)
            break;
        add_part(s, &made, best, best_turned);
        room -= u_of(s, best, best_turned) + s->bench->kerf;
    }
    return made;
}

static bool is_choice(const stripping *s, int64_t u, size_t pane, bool turned, int64_t room) {
    int64_t wide = u_of(s, pane, turned);
    bool fits = s->stages > 2 || s->trims ? wide <= u : wide == u;
    return fits && v_of(s, pane, turned) <= room;
}

static void list_choices(stripping *s, int64_t u, int64_t room) {
    s->choices.count = 0;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        for (int t = 0; t < 2; t++)
            if (may_lie(s, i, t) && is_choice(s, u, i, t, room))
                SB_PUSH(s->bench->run->pool, s->choices, stack_from(s, u, i, t));
}

/* ---- a strip ---------------------------------------------------------------------------------------------------------------- */

static int64_t times_possible(const stripping *s, const stack *of) {
    int64_t times = INT64_MAX;
    for (size_t i = 0; i < of->parts; i++) {
        int64_t can = s->left[of->part[i].pane] / uses(of, of->part[i].pane);
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
        const stack *of = &s->choices.items[i];
        sb_knap_item item = {
            .size = of->v + s->bench->kerf, .value = (int64_t)(of->worth * s->scale), .tag = i};
        item.limit = times_possible(s, of);
        SB_PUSH(s->bench->run->pool, k->items, item);
    }
}

static int64_t put_stack(stripping *s, strip *to, const stack *of) {
    for (size_t i = 0; i < of->parts; i++)
        s->left[of->part[i].pane]--;
    SB_PUSH(s->bench->run->pool, to->stacks, *of);
    to->worth += of->worth;
    return of->v + s->bench->kerf;
}

/* One knapsack over the stacks; another for what is left, since stacks share parts. */
static int64_t fill_once(stripping *s, strip *to, int64_t room) {
    int64_t taken = 0;
    list_choices(s, to->u, room);
    set_items(s, room);
    sb_knapsack_solve(&s->knapsack);
    s->bench->work->left -= STEPS - s->knapsack.steps + (int64_t)s->choices.count;
    for (size_t i = 0; s->knapsack.any && i < s->knapsack.items.count; i++) {
        const sb_knap_item *item = &s->knapsack.items.items[i];
        const stack *of = &s->choices.items[item->tag];
        for (int64_t n = 0; n < item->taken && times_possible(s, of) > 0; n++)
            taken += put_stack(s, to, of);
    }
    return taken;
}

static void fill_strip(stripping *s, strip *to, int64_t u, int64_t length) {
    to->u = u;
    to->worth = 0;
    to->stacks.count = 0;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        s->left[i] = s->open[i];
    for (int64_t room = length, taken = 1; taken > 0 && room > 0; room -= taken)
        taken = fill_once(s, to, room);
}

/* ---- which width ------------------------------------------------------------------------------------------------------------- */

typedef struct width_list {
    int64_t u[WIDTHS];
    size_t count;
} width_list;

static void add_width(stripping *s, width_list *to, int64_t u, uint64_t seen) {
    for (size_t i = 0; i < to->count; i++)
        if (to->u[i] == u)
            return;
    if (to->count < WIDTHS) {
        to->u[to->count++] = u;
        return;
    }
    uint64_t slot = sb_work_dice(s->bench->work, seen + 1); /* each of many has the same chance */
    if (slot < WIDTHS)
        to->u[slot] = u;
}

static width_list widths_for(stripping *s, int64_t room, int64_t length) {
    width_list list = {{0}, 0};
    uint64_t seen = 0;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        for (int t = 0; t < 2; t++) {
            const sb_pane *of = &s->bench->panes.items[i];
            int64_t u = u_of(s, i, t);
            if (s->open[i] == 0 || !(t ? of->sideways : of->upright) || u > room || v_of(s, i, t) > length)
                continue;
            bool narrow = u < s->bench->smallest_strip;
            if (narrow && (s->bench->smallest_strip > room || (s->stages == 2 && !s->trims)))
                continue;
            add_width(s, &list, narrow ? s->bench->smallest_strip : u, seen++);
        }
    return list;
}

/* The strip that makes most of its share of the sheet; a last strip that leaves nothing behind is worth a little more. */
static bool best_strip(stripping *s, int64_t room, int64_t length) {
    width_list list = widths_for(s, room, length);
    double most = 0;
    for (size_t i = 0; i < list.count; i++) {
        fill_strip(s, &s->tried, list.u[i], length);
        int64_t rest = room - list.u[i] - s->bench->kerf;
        double share = (double)(rest > 0 ? list.u[i] + s->bench->kerf : room);
        double ratio = s->tried.worth / share;
        if (s->tried.stacks.count == 0 || ratio <= most)
            continue;
        most = ratio;
        strip old = s->best;
        s->best = s->tried;
        s->tried = old;
    }
    return most > 0;
}

/* ---- onto the sheet ------------------------------------------------------------------------------------------------------------ */

static bool cut_stack(stripping *s, sb_laid *out, size_t node, const stack *of) {
    for (size_t i = 0; i < of->parts && node != SIZE_MAX; i++) {
        size_t pane = of->part[i].pane;
        int64_t u = u_of(s, pane, of->part[i].turned);
        if (!sb_tree_may_cut(s->bench, &out->tree, node, s->crosscut, u))
            return i > 0;
        size_t piece = sb_tree_cut(s->bench, &out->tree, node, s->crosscut, u);
        out->tree.items[piece].pane = pane;
        out->tree.items[piece].turned = of->part[i].turned;
        out->made[pane]++;
        s->open[pane]--;
        node = piece == node ? SIZE_MAX : out->tree.items[node].second;
    }
    return true;
}

/* False when the saw cannot cut the strip at all. Gives the rest of the sheet in *node. */
static bool cut_strip(stripping *s, sb_laid *out, size_t *node, const strip *of) {
    if (!sb_tree_may_cut(s->bench, &out->tree, *node, s->crosscut, of->u))
        return false;
    size_t at = sb_tree_cut(s->bench, &out->tree, *node, s->crosscut, of->u);
    *node = at == *node ? SIZE_MAX : out->tree.items[*node].second;
    for (size_t i = 0; i < of->stacks.count && at != SIZE_MAX; i++) {
        const stack *piece = &of->stacks.items[i];
        if (!sb_tree_may_cut(s->bench, &out->tree, at, !s->crosscut, piece->v))
            return i > 0;
        size_t cut = sb_tree_cut(s->bench, &out->tree, at, !s->crosscut, piece->v);
        if (!cut_stack(s, out, cut, piece))
            return i > 0;
        at = cut == at ? SIZE_MAX : out->tree.items[at].second;
    }
    return true;
}

static stripping *set_up(const sb_sheet_filling *f, bool crosscut, int stages) {
    stripping *s = f->bench->stripping;
    double most = 1;
    s->f = f;
    s->crosscut = crosscut;
    s->stages = stages;
    s->trims = f->bench->trims && stages == 2;
    for (size_t i = 0; i < f->bench->panes.count; i++) {
        s->open[i] = f->demand[i];
        most = fmax(most, f->worth[i]);
    }
    s->scale = 1e8 / most;
    return s;
}

struct sb_stripping *sb_stripping_new(const sb_sheet_bench *bench) {
    stripping *s = SB_NEW(bench->run->pool, stripping);
    s->bench = bench;
    s->open = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    s->left = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    return s;
}

void sb_lay_strips(const sb_sheet_filling *f, bool crosscut, int stages, sb_laid *out) {
    stripping *s = set_up(f, crosscut, stages);
    size_t node = 0;
    while (node != SIZE_MAX) {
        const sb_node *rest = &out->tree.items[node];
        int64_t room = crosscut ? rest->l : rest->w, length = crosscut ? rest->w : rest->l;
        if (!best_strip(s, room, length) || !cut_strip(s, out, &node, &s->best))
            break;
    }
}
