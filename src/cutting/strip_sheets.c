/* Sheets as rows of strips: out of a laying, and into one. */
#include "cutting/strip_sheets.h"

int64_t sb_strip_sheets_across(const sb_strip_sheets *q, size_t offer) {
    const sb_sheet_offer *on = &q->bench->offers.items[offer];
    return q->room->crosscut ? on->l : on->w;
}

int64_t sb_strip_sheets_along(const sb_strip_sheets *q, size_t offer) {
    const sb_sheet_offer *on = &q->bench->offers.items[offer];
    return q->room->crosscut ? on->w : on->l;
}

int64_t sb_strip_sheets_width(const sb_strip_sheets *q, const sb_strip *strip) {
    int64_t most = q->bench->smallest_strip;
    for (size_t i = 0; i < strip->stacks.count; i++) {
        int64_t u = -q->bench->kerf;
        for (size_t n = 0; n < strip->stacks.items[i].parts; n++)
            u += strip->stacks.items[i].part[n]->u + q->bench->kerf;
        most = u > most ? u : most;
    }
    return most;
}

void sb_strip_sheets_count(sb_strip_sheets *q, const sb_strip *strip, int64_t by) {
    for (size_t i = 0; i < strip->stacks.count; i++)
        for (size_t n = 0; n < strip->stacks.items[i].parts; n++) {
            size_t pane = strip->stacks.items[i].part[n]->pane;
            q->room->open[pane] += by;
            q->over += (double)by * q->worth[pane];
        }
}

size_t sb_strip_sheets_slot(sb_strip_sheets *q) {
    if (q->unused.count > 0)
        return q->unused.items[--q->unused.count];
    SB_PUSH(q->bench->run->pool, q->strips, (sb_strip){0});
    return q->strips.count - 1;
}

/* ---- out of a laying ------------------------------------------------------------------------------- */

static const sb_lay *lay_of(const sb_strip_sheets *q, const sb_node *node) {
    const sb_lay *lays = q->room->lays[q->room->crosscut].items;
    for (size_t i = 0; i < q->room->lays[q->room->crosscut].count; i++)
        if (lays[i].pane == node->pane && lays[i].turned == node->turned)
            return &lays[i];
    return NULL;
}

/* Parts behind one another in this node; what does not lie in a stack with the first is left over. */
static void read_stack(sb_strip_sheets *q, const sb_tree *tree, size_t node, sb_strip *to) {
    sb_stack stack = {0};
    while (node != SIZE_MAX && stack.parts < SB_STACKED) {
        const sb_node *at = &tree->items[node];
        bool cut = at->first != SIZE_MAX;
        const sb_lay *lay = lay_of(q, cut ? &tree->items[at->first] : at);
        if (lay && (stack.parts == 0 || lay->v == stack.v)) {
            stack.v = lay->v;
            stack.part[stack.parts++] = lay;
        }
        node = cut ? at->second : SIZE_MAX;
    }
    if (stack.parts > 0)
        SB_PUSH(q->bench->run->pool, to->stacks, stack);
}

static void read_strip(sb_strip_sheets *q, const sb_tree *tree, size_t node, sb_strip_sheet *sheet) {
    size_t slot = sb_strip_sheets_slot(q);
    sb_strip *to = &q->strips.items[slot];
    to->stacks.count = 0;
    while (node != SIZE_MAX) {
        const sb_node *at = &tree->items[node];
        bool cut = at->first != SIZE_MAX && at->across != q->room->crosscut;
        read_stack(q, tree, cut ? at->first : node, to);
        node = cut ? at->second : SIZE_MAX;
    }
    if (to->stacks.count == 0 || sheet->count == SB_ROW) {
        SB_PUSH(q->bench->run->pool, q->unused, slot);
        return;
    }
    double over = q->over;
    to->u = sb_strip_sheets_width(q, to);
    sb_strip_sheets_count(q, to, -1);
    to->worth = over - q->over;
    sheet->strips[sheet->count++] = slot;
}

static void read_sheet(sb_strip_sheets *q, const sb_laid *laid) {
    sb_strip_sheet sheet = {.offer = laid->offer};
    for (size_t node = 0; node != SIZE_MAX;) {
        const sb_node *at = &laid->tree.items[node];
        bool cut = at->first != SIZE_MAX && at->across == q->room->crosscut;
        read_strip(q, &laid->tree, cut ? at->first : node, &sheet);
        node = cut ? at->second : SIZE_MAX;
    }
    SB_PUSH(q->bench->run->pool, q->sheets, sheet);
}

static void clear(sb_strip_sheets *q) {
    q->sheets.count = q->unused.count = 0;
    q->over = 0;
    for (size_t i = 0; i < q->strips.count; i++)
        SB_PUSH(q->bench->run->pool, q->unused, i);
    for (size_t i = 0; i < q->bench->panes.count; i++) {
        q->room->open[i] = q->bench->panes.items[i].pieces;
        q->over += q->worth[i] * (double)q->room->open[i];
    }
}

void sb_strip_sheets_start(sb_strip_sheets *q, const sb_laying *from, const int64_t *numbers) {
    sb_pool *pool = q->bench->run->pool;
    clear(q);
    for (size_t o = 0; o < q->bench->offers.count; o++) {
        int64_t left = numbers[o];
        for (size_t n = 0; n < from->sheets.count; n++)
            for (int64_t i = 0;
                 from->sheets.items[n].offer == o && i < from->sheets.items[n].count && left > 0; i++, left--)
                read_sheet(q, &from->sheets.items[n]);
        for (; left > 0; left--)
            SB_PUSH(pool, q->sheets, (sb_strip_sheet){.offer = o});
    }
}

/* ---- into one -------------------------------------------------------------------------------------- */

bool sb_strip_sheets_are_done(const sb_strip_sheets *q) {
    for (size_t i = 0; i < q->bench->panes.count; i++)
        if (q->room->open[i] > 0)
            return false;
    return true;
}

static bool lay_sheet(sb_strip_sheets *q, const sb_strip_sheet *sheet, sb_laid *laid) {
    size_t node = 0;
    laid->offer = sheet->offer;
    for (size_t i = 0; i < q->bench->panes.count; i++)
        laid->made[i] = 0;
    sb_tree_start(q->bench, sheet->offer, &laid->tree);
    for (size_t i = 0; i < sheet->count; i++)
        if (node == SIZE_MAX || !sb_strip_cut(q->room, laid, &node, &q->strips.items[sheet->strips[i]]))
            return false;
    laid->cost = sb_tree_cost(q->bench, laid->offer, &laid->tree);
    return true;
}

/* The saw's rules may have left parts of a strip out. */
static bool makes_all(const sb_sheet_bench *bench, const sb_laying *laying) {
    for (size_t i = 0; i < bench->panes.count; i++) {
        int64_t made = 0;
        for (size_t n = 0; n < laying->sheets.count; n++)
            made += laying->sheets.items[n].count * laying->sheets.items[n].made[i];
        if (made != bench->panes.items[i].pieces)
            return false;
    }
    return true;
}

bool sb_strip_sheets_lay(sb_strip_sheets *q, sb_laid *spare, sb_laying *out) {
    out->sheets.count = 0;
    out->cost = 0;
    out->missing = 0;
    for (size_t n = 0; n < q->sheets.count; n++) {
        if (q->sheets.items[n].count == 0)
            continue;
        if (!lay_sheet(q, &q->sheets.items[n], spare))
            return false;
        sb_laying_add(q->bench, out, spare, 1);
    }
    return makes_all(q->bench, out);
}
