/* One sheet, piece by piece: each into the rectangle it fits best, which is then divided for good. */
#include <stdlib.h>

#include "cutting/sheets.h"

typedef struct turn_of {
    size_t pane;
    double worth;
} turn_of;

typedef struct sb_putting {
    const sb_sheet_filling *f;
    sb_tree *tree;
    int rule;
    turn_of *turns;
    SB_LIST(size_t) open; /* leaves that may still take a part, in the order of the tree */
    int64_t narrowest;    /* no part that is still wanted has a shorter side */
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
    for (size_t i = 0; i < p->open.count; i++) {
        if (of->upright)
            look_at(p, p->open.items[i], pane, false, &best);
        if (of->sideways)
            look_at(p, p->open.items[i], pane, true, &best);
    }
    return best;
}

static void open_leaf(putting *p, size_t index) {
    const sb_node *node = &p->tree->items[index];
    bool leaf = node->first == SIZE_MAX && node->pane == SIZE_MAX;
    if (leaf && node->w >= p->narrowest && node->l >= p->narrowest)
        SB_PUSH(p->f->bench->run->pool, p->open, index);
}

/* False when the rules forbid it. */
static bool put(putting *p, const spot *at, size_t pane) {
    size_t before = p->tree->count, kept = 0;
    if (!sb_tree_put(p->f->bench, p->tree, at->node, pane, at->turned, at->across))
        return false;
    for (size_t i = 0; i < p->open.count; i++)
        if (p->open.items[i] != at->node)
            p->open.items[kept++] = p->open.items[i];
    p->open.count = kept;
    for (size_t i = before; i < p->tree->count; i++)
        open_leaf(p, i);
    return true;
}

/* ---- in which order ------------------------------------------------------------------------------ */

static int by_worth(const void *a, const void *b) {
    const turn_of *one = a, *other = b;
    if (one->worth != other->worth)
        return one->worth > other->worth ? -1 : 1;
    return one->pane < other->pane ? -1 : 1;
}

static void order(putting *p) {
    size_t count = p->f->bench->panes.count;
    for (size_t i = 0; i < count; i++)
        p->turns[i] = (turn_of){i, p->f->worth[i]};
    qsort(p->turns, count, sizeof *p->turns, by_worth);
}

struct sb_putting *sb_putting_new(const sb_sheet_bench *bench) {
    putting *p = SB_NEW(bench->run->pool, putting);
    p->turns = SB_NEW_ARRAY(bench->run->pool, turn_of, bench->panes.count);
    return p;
}

static int64_t narrowest_wanted(const sb_sheet_filling *f) {
    int64_t least = INT64_MAX;
    for (size_t i = 0; i < f->bench->panes.count; i++) {
        const sb_pane *pane = &f->bench->panes.items[i];
        int64_t side = pane->width < pane->length ? pane->width : pane->length;
        if (f->demand[i] > 0 && side < least)
            least = side;
    }
    return least;
}

static putting *set_up(const sb_sheet_filling *f, int rule, sb_laid *out) {
    putting *p = f->bench->putting;
    p->f = f;
    p->tree = &out->tree;
    p->rule = rule;
    p->narrowest = narrowest_wanted(f);
    p->open.count = 0;
    for (size_t i = 0; i < out->tree.count; i++)
        open_leaf(p, i);
    order(p);
    return p;
}

/* Broken off, the sheet keeps what lies on it. */
void sb_lay_pieces(const sb_sheet_filling *f, int rule, sb_laid *out) {
    const sb_sheet_bench *bench = f->bench;
    putting *p = set_up(f, rule, out);
    for (size_t t = 0; t < bench->panes.count; t++) {
        size_t pane = p->turns[t].pane;
        while (out->made[pane] < f->demand[pane]) {
            spot at = best_spot(p, pane);
            bench->work->left -= (int64_t)out->tree.count;
            if (at.node == SIZE_MAX || !put(p, &at, pane))
                break;
            out->made[pane]++;
            if (sb_work_is_broken_off(bench->work))
                return;
        }
    }
}
