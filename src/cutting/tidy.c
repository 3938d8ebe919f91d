/* A cut tree put in the order in which one would cut it: what falls off one rectangle in one stage is one row of slices, the
 * widest first and those alike together; between waste and waste there is no cut. So sheets that differ in order alone
 * become the same. */
#include "cutting/sheets.h"

typedef struct slab {
    int64_t w, l;
    size_t pane; /* SIZE_MAX: no part */
    bool turned;
    bool across;                 /* of its cuts */
    SB_LIST(struct slab *) rows; /* its slices, a cut behind each; */
    struct slab *rest;           /* and what is behind the last of them that is no waste; NULL: nothing */
} slab;

typedef struct tidying {
    const sb_sheet_bench *bench;
    const sb_tree *from;
    sb_tree *to;
} tidying;

static bool is_waste(const slab *s) {
    return s->pane == SIZE_MAX && s->rows.count == 0;
}

static int64_t size_of(const slab *s, bool across) {
    return across ? s->l : s->w;
}

/* ---- the order of slices --------------------------------------------------------------------------- */

static int by_number(int64_t one, int64_t other) {
    return (one > other) - (one < other);
}

static int by_look(const slab *one, const slab *other) {
    int sign = by_number(other->w, one->w);
    sign = sign ? sign : by_number(other->l, one->l);
    sign = sign ? sign : by_number(one->rows.count > 0, other->rows.count > 0);
    sign = sign ? sign : by_number((int64_t)one->pane, (int64_t)other->pane);
    sign = sign ? sign : by_number(one->turned, other->turned);
    sign = sign ? sign : by_number(one->across, other->across);
    sign = sign ? sign : by_number((int64_t)other->rows.count, (int64_t)one->rows.count);
    for (size_t i = 0; sign == 0 && i < one->rows.count; i++)
        sign = by_look(one->rows.items[i], other->rows.items[i]);
    sign = sign ? sign : by_number(!one->rest, !other->rest);
    return sign || !one->rest ? sign : by_look(one->rest, other->rest);
}

static void sort_rows(slab *s) {
    for (size_t i = 1; i < s->rows.count; i++)
        for (size_t j = i; j > 0 && by_look(s->rows.items[j - 1], s->rows.items[j]) > 0; j--) {
            slab *swapped = s->rows.items[j];
            s->rows.items[j] = s->rows.items[j - 1];
            s->rows.items[j - 1] = swapped;
        }
}

/* ---- from the tree --------------------------------------------------------------------------------- */

static slab *read_node(tidying *t, size_t index);

/* All that the cuts of one direction make of a node, from the corner on; what is behind the last of them, if anything is,
 * becomes the rest. A first piece that is cut on in the same direction is more of the same row. */
static void read_row(tidying *t, size_t index, bool last, slab *into) {
    const sb_node *node = &t->from->items[index];
    if (node->first == SIZE_MAX || node->across != into->across) {
        slab *piece = read_node(t, index);
        if (is_waste(piece))
            return;
        if (last)
            into->rest = piece;
        else
            SB_PUSH(t->bench->run->pool, into->rows, piece);
        return;
    }
    read_row(t, node->first, false, into);
    if (node->second != SIZE_MAX)
        read_row(t, node->second, last, into);
}

/* What a cut behind every slice leaves. */
static int64_t behind_rows(const tidying *t, const slab *s) {
    int64_t left = size_of(s, s->across);
    for (size_t i = 0; i < s->rows.count; i++)
        left -= size_of(s->rows.items[i], s->across) + t->bench->kerf;
    return left;
}

static slab *read_node(tidying *t, size_t index) {
    const sb_node *node = &t->from->items[index];
    slab *s = SB_NEW(t->bench->run->pool, slab);
    *s = (slab){
        .w = node->w, .l = node->l, .pane = node->pane, .turned = node->turned, .across = node->across};
    if (node->first == SIZE_MAX)
        return s;
    read_row(t, index, true, s);
    if (s->rest && behind_rows(t, s) !=
                       size_of(s->rest, s->across)) { /* waste before it is dropped: it is cut off too */
        SB_PUSH(t->bench->run->pool, s->rows, s->rest);
        s->rest = NULL;
    }
    sort_rows(s);
    return s;
}

/* ---- to a tree ------------------------------------------------------------------------------------- */

static void write_slab(tidying *t, size_t node, const slab *s) {
    t->to->items[node].pane = s->pane;
    t->to->items[node].turned = s->turned;
    for (size_t i = 0; i < s->rows.count; i++) {
        size_t piece = sb_tree_cut(t->bench, t->to, node, s->across, size_of(s->rows.items[i], s->across));
        size_t behind = t->to->items[node].second;
        write_slab(t, piece, s->rows.items[i]);
        node = behind;
    }
    if (s->rest)
        write_slab(t, node, s->rest);
}

void sb_tree_tidy(const sb_sheet_bench *bench, sb_laid *laid) {
    sb_tree tidy = {0};
    tidying t = {bench, &laid->tree, &tidy};
    const slab *s = read_node(&t, 0);
    sb_tree_start(bench, laid->offer, &tidy);
    write_slab(&t, 0, s);
    int64_t cost = sb_tree_cost(bench, laid->offer, &tidy);
    if (cost > laid->cost)
        return;
    laid->tree = tidy;
    laid->cost = cost;
}
