/* One sheet, piece by piece: each into the rectangle it fits best, which is then divided for good. */
#include <stdlib.h>

#include "cutting/sheets.h"

typedef struct putting {
    const sb_sheet_filling *f;
    sb_tree *tree;
    int rule;
} putting;

/* A piece in a leaf of the tree, one of two ways round, one of two first cuts. */
typedef struct spot {
    size_t node;
    bool turned, across;
    double score; /* less is better */
} spot;

/* ---- how well it fits ---------------------------------------------------------------------------- */

/* Rules 0 and 1: least area left; 2 and 3: shortest strip left; 4 and 5: longest strip left. Odd ones cut the
 * longer remainder free, even ones the shorter. */
static double misfit(const putting *p, const sb_node *node, int64_t w, int64_t l) {
    double free_w = (double)(node->w - w), free_l = (double)(node->l - l);
    double shorter = free_w < free_l ? free_w : free_l, longer = free_w < free_l ? free_l : free_w;
    if (p->rule < 2)
        return (double)node->w * (double)node->l - (double)w * (double)l;
    return p->rule < 4 ? shorter : longer;
}

static bool first_cut(const putting *p, const sb_node *node, int64_t w, int64_t l) {
    bool wider = node->w - w > node->l - l;
    return p->rule % 2 == 0 ? !wider : wider;
}

static bool is_allowed(const putting *p, size_t index, int64_t w, int64_t l, bool across) {
    const sb_node *node = &p->tree->items[index];
    if (!sb_tree_may_cut(p->f->bench, p->tree, index, across, across ? l : w))
        return false;
    bool rip_too_long = across ? w < node->w && l > p->f->bench->longest_rip : false;
    return !rip_too_long;
}

static void look_at(const putting *p, size_t index, size_t pane, bool turned, spot *best) {
    const sb_node *node = &p->tree->items[index];
    int64_t w = sb_pane_w(&p->f->bench->panes.items[pane], turned);
    int64_t l = sb_pane_l(&p->f->bench->panes.items[pane], turned);
    if (w > node->w || l > node->l || sb_tree_is_thin(p->f->bench, node))
        return;
    double score = misfit(p, node, w, l);
    if (best->node != SIZE_MAX && score >= best->score)
        return;
    bool across = first_cut(p, node, w, l);
    if (!is_allowed(p, index, w, l, across))
        across = !across;
    if (is_allowed(p, index, w, l, across))
        *best = (spot){index, turned, across, score};
}

static spot best_spot(const putting *p, size_t pane) {
    const sb_pane *of = &p->f->bench->panes.items[pane];
    spot best = {SIZE_MAX, false, false, 0};
    for (size_t i = 0; i < p->tree->count; i++) {
        const sb_node *node = &p->tree->items[i];
        if (node->first != SIZE_MAX || node->pane != SIZE_MAX)
            continue;
        if (of->upright)
            look_at(p, i, pane, false, &best);
        if (of->sideways)
            look_at(p, i, pane, true, &best);
    }
    return best;
}

/* ---- in which order ------------------------------------------------------------------------------ */

typedef struct turn_of {
    size_t pane;
    double worth;
} turn_of;

static int by_worth(const void *a, const void *b) {
    const turn_of *one = a, *other = b;
    if (one->worth != other->worth)
        return one->worth > other->worth ? -1 : 1;
    return one->pane < other->pane ? -1 : 1;
}

static turn_of *order(const sb_sheet_filling *f) {
    size_t count = f->bench->panes.count;
    turn_of *turns = SB_NEW_ARRAY(f->bench->run->pool, turn_of, count);
    for (size_t i = 0; i < count; i++)
        turns[i] = (turn_of){i, f->worth[i]};
    qsort(turns, count, sizeof *turns, by_worth);
    return turns;
}

void sb_lay_pieces(const sb_sheet_filling *f, int rule, sb_laid *out) {
    const sb_sheet_bench *bench = f->bench;
    putting p = {f, &out->tree, rule};
    const turn_of *turns = order(f);
    for (size_t t = 0; t < bench->panes.count; t++) {
        size_t pane = turns[t].pane;
        while (out->made[pane] < f->demand[pane]) {
            spot at = best_spot(&p, pane);
            bench->work->left -= (int64_t)out->tree.count;
            if (at.node == SIZE_MAX || !sb_tree_put(bench, &out->tree, at.node, pane, at.turned, at.across))
                break;
            out->made[pane]++;
        }
    }
}
