/* Cut trees: dividing a sheet from edge to edge, within the rules of the saw. */
#include "cutting/sheets.h"

__extension__ typedef __int128 wide;

int64_t sb_pane_w(const sb_pane *pane, bool turned) {
    return turned ? pane->length : pane->width;
}

int64_t sb_pane_l(const sb_pane *pane, bool turned) {
    return turned ? pane->width : pane->length;
}

static size_t add_node(const sb_sheet_bench *bench, sb_tree *tree, int64_t x, int64_t y, int64_t w, int64_t l,
                       int level) {
    sb_node node = {x, y, w, l, SIZE_MAX, false, SIZE_MAX, SIZE_MAX, false, 0, level, 0};
    SB_PUSH(bench->run->pool, *tree, node);
    return tree->count - 1;
}

void sb_tree_start(const sb_sheet_bench *bench, size_t offer, sb_tree *tree) {
    const sb_sheet_offer *on = &bench->offers.items[offer];
    tree->count = 0;
    add_node(bench, tree, on->x, on->y, on->w, on->l, 0);
}

/* ---- rules of the saw ---------------------------------------------------------------------------- */

/* Odd stages run in the first direction. */
static int stage_of(const sb_sheet_bench *bench, int level, bool across) {
    bool odd = across == bench->crosscut_first;
    int stage = level < 1 ? 1 : level;
    return stage + ((stage % 2 == 1) != odd);
}

bool sb_tree_is_thin(const sb_sheet_bench *bench, const sb_node *node) {
    int64_t strip = bench->crosscut_first ? node->l : node->w;
    return node->level == 1 && strip < bench->smallest_strip;
}

bool sb_tree_may_cut(const sb_sheet_bench *bench, const sb_tree *tree, size_t index, bool across,
                     int64_t size) {
    const sb_node *node = &tree->items[index];
    if (size == (across ? node->l : node->w))
        return true;
    if (!across && node->l > bench->longest_rip)
        return false;
    int stage = stage_of(bench, node->level, across);
    if (stage == 1)
        return size >= bench->smallest_strip;
    return stage <= bench->stages + bench->trims && !sb_tree_is_thin(bench, node);
}

/* ---- cutting ------------------------------------------------------------------------------------- */

size_t sb_tree_cut(const sb_sheet_bench *bench, sb_tree *tree, size_t index, bool across, int64_t size) {
    sb_node node = tree->items[index];
    int64_t whole = across ? node.l : node.w, rest = whole - size - bench->kerf;
    if (size == whole)
        return index;
    node.across = across;
    node.stage = stage_of(bench, node.level, across);
    node.at = (across ? node.y : node.x) + size;
    node.first = across ? add_node(bench, tree, node.x, node.y, node.w, size, node.stage)
                        : add_node(bench, tree, node.x, node.y, size, node.l, node.stage);
    if (rest > 0)
        node.second = across ? add_node(bench, tree, node.x, node.at + bench->kerf, node.w, rest, node.stage)
                             : add_node(bench, tree, node.at + bench->kerf, node.y, rest, node.l, node.stage);
    tree->items[index] = node;
    return node.first;
}

bool sb_tree_put(const sb_sheet_bench *bench, sb_tree *tree, size_t index, size_t pane, bool turned,
                 bool across) {
    int64_t w = sb_pane_w(&bench->panes.items[pane], turned),
            l = sb_pane_l(&bench->panes.items[pane], turned);
    if (!sb_tree_may_cut(bench, tree, index, across, across ? l : w) ||
        sb_tree_is_thin(bench, &tree->items[index]))
        return false;
    size_t before = tree->count;
    sb_node old = tree->items[index];
    size_t piece = sb_tree_cut(bench, tree, index, across, across ? l : w);
    if (!sb_tree_may_cut(bench, tree, piece, !across, across ? w : l)) {
        tree->count = before;
        tree->items[index] = old;
        return false;
    }
    piece = sb_tree_cut(bench, tree, piece, !across, across ? w : l);
    tree->items[piece].pane = pane;
    tree->items[piece].turned = turned;
    return true;
}

/* ---- what it comes to ---------------------------------------------------------------------------- */

bool sb_leftover_is_useful(const sb_cut_stock *stock, int64_t w, int64_t l) {
    int64_t length = stock->useful_length.nm, width = stock->useful_width.nm;
    if (length <= 0 || width <= 0)
        return false;
    return (l >= length && w >= width) || (w >= length && l >= width);
}

static int64_t setting_of(const sb_node *node) {
    return node->at - (node->across ? node->y : node->x);
}

int64_t sb_tree_fences(const sb_tree *tree) {
    int64_t fences = 0;
    for (size_t i = 0; i < tree->count; i++) {
        if (tree->items[i].first == SIZE_MAX)
            continue;
        bool seen = false;
        for (size_t j = 0; j < i && !seen; j++)
            seen = tree->items[j].first != SIZE_MAX &&
                   setting_of(&tree->items[j]) == setting_of(&tree->items[i]);
        fences += !seen;
    }
    return fences;
}

int64_t sb_tree_returns(const sb_tree *tree) {
    int64_t returns = 0;
    for (size_t i = 0; i < tree->count; i++)
        returns += tree->items[i].level > 0 && tree->items[i].stage > tree->items[i].level;
    return returns;
}

static int64_t leftover_value(const sb_sheet_bench *bench, const sb_node *node) {
    if (!sb_leftover_is_useful(&bench->problem->stock.items[bench->stock], node->w, node->l))
        return 0;
    return (int64_t)((wide)node->w * node->l * bench->value / ((wide)1000000000 * 1000000000));
}

int64_t sb_tree_cost(const sb_sheet_bench *bench, size_t offer, const sb_tree *tree) {
    int64_t cuts = bench->offers.items[offer].truing, cost = bench->offers.items[offer].fixed;
    for (size_t i = 0; i < tree->count; i++) {
        const sb_node *node = &tree->items[i];
        bool waste = node->first == SIZE_MAX && node->pane == SIZE_MAX;
        cuts += node->first != SIZE_MAX;
        if (waste && bench->value > 0)
            cost -= leftover_value(bench, node);
    }
    cost += cuts * bench->cut + bench->back * sb_tree_returns(tree);
    return bench->fence > 0 ? cost + bench->fence * sb_tree_fences(tree) : cost;
}
