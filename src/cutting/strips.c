/* One sheet, strip after strip: each time the width whose filling makes most of its share of the sheet. */
#include <math.h>
#include <stdlib.h>

#include "cutting/strips.h"

#define WIDTHS 24 /* strip widths tried for one strip */

typedef struct sb_stripping stripping;

/* ---- which width --------------------------------------------------------------------------------- */

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

/* A part narrower than is safe takes a strip of the least width, if it may be narrower than its strip. */
static int64_t strip_width(const stripping *s, const sb_lay *lay) {
    if (lay->u >= s->bench->smallest_strip)
        return lay->u;
    return s->stages > 2 || s->trims ? s->bench->smallest_strip : INT64_MAX;
}

static width_list widths_for(stripping *s, int64_t room, int64_t length) {
    width_list list = {{0}, 0};
    uint64_t seen = 0;
    for (size_t i = 0; i < s->listed.count; i++) {
        const sb_lay *lay = s->listed.items[i];
        int64_t u = strip_width(s, lay);
        if (s->open[lay->pane] > 0 && u <= room && lay->v <= length)
            add_width(s, &list, u, seen++);
    }
    return list;
}

/* A last strip answers for all the room it leaves unused. */
static bool best_strip(stripping *s, int64_t room, int64_t length) {
    width_list list = widths_for(s, room, length);
    double most = 0;
    for (size_t i = 0; i < list.count; i++) {
        sb_strip_fill(s, &s->tried, list.u[i], length);
        int64_t rest = room - list.u[i] - s->bench->kerf;
        double share = (double)(rest > 0 ? list.u[i] + s->bench->kerf : room);
        double ratio = s->tried.worth / share;
        if (s->tried.stacks.count == 0 || ratio <= most)
            continue;
        most = ratio;
        sb_strip old = s->best;
        s->best = s->tried;
        s->tried = old;
    }
    return most > 0;
}

/* ---- onto the sheet ------------------------------------------------------------------------------ */

static bool cut_stack(stripping *s, sb_laid *out, size_t node, const sb_stack *of) {
    for (size_t i = 0; i < of->parts && node != SIZE_MAX; i++) {
        const sb_lay *lay = of->part[i];
        if (!sb_tree_may_cut(s->bench, &out->tree, node, s->crosscut, lay->u))
            return i > 0;
        size_t piece = sb_tree_cut(s->bench, &out->tree, node, s->crosscut, lay->u);
        out->tree.items[piece].pane = lay->pane;
        out->tree.items[piece].turned = lay->turned;
        out->made[lay->pane]++;
        s->open[lay->pane]--;
        node = piece == node ? SIZE_MAX : out->tree.items[node].second;
    }
    return true;
}

/* False when the saw cannot cut the strip at all. Gives the rest of the sheet in *node. */
bool sb_strip_cut(stripping *s, sb_laid *out, size_t *node, const sb_strip *of) {
    if (!sb_tree_may_cut(s->bench, &out->tree, *node, s->crosscut, of->u))
        return false;
    size_t at = sb_tree_cut(s->bench, &out->tree, *node, s->crosscut, of->u);
    *node = at == *node ? SIZE_MAX : out->tree.items[*node].second;
    for (size_t i = 0; i < of->stacks.count && at != SIZE_MAX; i++) {
        const sb_stack *piece = &of->stacks.items[i];
        if (!sb_tree_may_cut(s->bench, &out->tree, at, !s->crosscut, piece->v))
            return i > 0;
        size_t cut = sb_tree_cut(s->bench, &out->tree, at, !s->crosscut, piece->v);
        if (!cut_stack(s, out, cut, piece))
            return i > 0;
        at = cut == at ? SIZE_MAX : out->tree.items[at].second;
    }
    return true;
}

void sb_strips_list(stripping *s) {
    s->listed.count = 0;
    for (size_t i = 0; i < s->lays[s->crosscut].count; i++)
        if (s->open[s->lays[s->crosscut].items[i].pane] > 0)
            SB_PUSH(s->bench->run->pool, s->listed, &s->lays[s->crosscut].items[i]);
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
    sb_strips_list(s);
    return s;
}

struct sb_stripping *sb_strips_start(const sb_sheet_filling *f) {
    return set_up(f, f->bench->crosscut_first, f->bench->stages < 3 ? f->bench->stages : 3);
}

static void lay_rest(stripping *s, sb_laid *out, size_t node) {
    while (node != SIZE_MAX) {
        const sb_node *rest = &out->tree.items[node];
        int64_t room = s->crosscut ? rest->l : rest->w, length = s->crosscut ? rest->w : rest->l;
        if (!best_strip(s, room, length) || !sb_strip_cut(s, out, &node, &s->best))
            break;
    }
}

void sb_lay_strips(const sb_sheet_filling *f, bool crosscut, int stages, sb_laid *out) {
    lay_rest(set_up(f, crosscut, stages), out, 0);
}

void sb_lay_widths(const sb_sheet_filling *f, const int64_t *widths, size_t count, sb_laid *out) {
    bool crosscut = f->bench->crosscut_first;
    stripping *s = sb_strips_start(f);
    size_t node = 0;
    for (size_t i = 0; i < count && node != SIZE_MAX; i++) {
        const sb_node *rest = &out->tree.items[node];
        int64_t room = crosscut ? rest->l : rest->w, length = crosscut ? rest->w : rest->l;
        if (widths[i] > room || widths[i] < f->bench->smallest_strip)
            continue;
        sb_strip_fill(s, &s->best, widths[i], length);
        if (s->best.stacks.count > 0)
            sb_strip_cut(s, out, &node, &s->best);
    }
    lay_rest(s, out, node);
}

/* ---- all panes, both ways round ------------------------------------------------------------------ */

static int by_length(const void *a, const void *b) {
    const sb_lay *one = a, *other = b;
    if (one->v != other->v)
        return one->v > other->v ? -1 : 1;
    if (one->u != other->u)
        return one->u > other->u ? -1 : 1;
    return one->pane < other->pane ? -1 : one->pane > other->pane;
}

static void list_lays(stripping *s, bool crosscut) {
    const sb_sheet_bench *bench = s->bench;
    for (size_t i = 0; i < bench->panes.count; i++)
        for (int turned = 0; turned < 2; turned++) {
            const sb_pane *pane = &bench->panes.items[i];
            int64_t w = sb_pane_w(pane, turned), l = sb_pane_l(pane, turned);
            if (turned ? pane->sideways : pane->upright)
                SB_PUSH(bench->run->pool, s->lays[crosscut],
                        ((sb_lay){i, turned, crosscut ? l : w, crosscut ? w : l, 0, 0}));
        }
    sb_lay *lays = s->lays[crosscut].items;
    size_t count = s->lays[crosscut].count;
    qsort(lays, count, sizeof *lays, by_length);
    for (size_t i = 0; i < count; i++)
        lays[i].first = i > 0 && lays[i].v == lays[i - 1].v ? lays[i - 1].first : i;
    for (size_t i = count; i-- > 0;)
        lays[i].behind = i + 1 < count && lays[i].v == lays[i + 1].v ? lays[i + 1].behind : i + 1;
}

struct sb_stripping *sb_stripping_new(const sb_sheet_bench *bench) {
    stripping *s = SB_NEW(bench->run->pool, stripping);
    s->bench = bench;
    s->open = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    s->left = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    list_lays(s, false);
    list_lays(s, true);
    return s;
}
