/* One sheet as the best of rectangles: for every rectangle whose sides are among chosen sums of sizes, the parts it is best
 * cut into by one cut from edge to edge, none more often than it is wanted.
 *
 *   F(p, q) = max of  one part                        that fits into p by q
 *                     F(c, q) + F(p - c, q)           p - c rounded down to a chosen sum
 *                     F(p, c) + F(p, q - c)
 * What two halves have too many of is not counted. So this is no bound (guillotine.c is), but what it finds can be cut.
 */
#include <stdlib.h>

#include "cutting/sheets.h"

#define POINTS     100 /* along an axis at most, beside the rooms on offer */
#define MOST_PANES 400

typedef struct sums { /* rising, kerf inside [nm]; 0 first */
    size_t count;
    int64_t *at;
    uint16_t *rest; /* by point p, then by point c: p - c, rounded down */
} sums;

typedef struct cell {
    double worth;
    uint16_t pane, cut; /* pane: UINT16_MAX none; cut: the first half, 0: not divided */
    bool across, turned;
} cell;

typedef struct sb_recting {
    const sb_sheet_filling *f;
    const sb_sheet_bench *bench;
    sums x, y;
    cell *cells;     /* by point of x, then of y */
    uint8_t *made;   /* by cell, then by pane */
    uint8_t *wanted; /* by pane */
    uint8_t *trial;  /* by pane */
} recting;

/* ---- the sums ---------------------------------------------------------------------------------------- */

typedef SB_LIST(int64_t) lengths;

static int by_length(const void *a, const void *b) {
    int64_t one = *(const int64_t *)a, other = *(const int64_t *)b;
    return one < other ? -1 : one > other;
}

static void sort_out(lengths *of) {
    size_t kept = 0;
    qsort(of->items, of->count, sizeof *of->items, by_length);
    for (size_t i = 0; i < of->count; i++)
        if (kept == 0 || of->items[i] != of->items[kept - 1])
            of->items[kept++] = of->items[i];
    of->count = kept;
}

static void list_sizes(const recting *r, bool along_y, lengths *to) {
    for (size_t i = 0; i < r->bench->panes.count; i++) {
        const sb_pane *pane = &r->bench->panes.items[i];
        if (pane->upright)
            SB_PUSH(r->bench->run->pool, *to, (along_y ? pane->length : pane->width) + r->bench->kerf);
        if (pane->sideways)
            SB_PUSH(r->bench->run->pool, *to, (along_y ? pane->width : pane->length) + r->bench->kerf);
    }
    sort_out(to);
}

/* Spread evenly over those there are. */
static void add_some(const recting *r, lengths *to, const lengths *from, size_t most) {
    for (size_t i = 0; i < from->count && i < most; i++)
        SB_PUSH(r->bench->run->pool, *to, from->items[from->count <= most ? i : i * from->count / most]);
    sort_out(to);
}

/* Sums of one size more than the last, as long as there is room for more points. */
static void add_sums(const recting *r, lengths *to, const lengths *sizes, int64_t room) {
    lengths last = {0}, next = {0};
    SB_PUSH(r->bench->run->pool, last, 0);
    while (to->count < POINTS && last.count > 0) {
        next.count = 0;
        for (size_t i = 0; i < last.count; i++)
            for (size_t j = 0; j < sizes->count && last.items[i] + sizes->items[j] <= room; j++)
                SB_PUSH(r->bench->run->pool, next, last.items[i] + sizes->items[j]);
        sort_out(&next);
        add_some(r, to, &next, POINTS - to->count);
        last.count = 0;
        add_some(r, &last, &next, POINTS);
    }
}

static void fill_rests(const recting *r, sums *of) {
    of->rest = SB_NEW_ARRAY(r->bench->run->pool, uint16_t, of->count * of->count);
    for (size_t p = 0; p < of->count; p++)
        for (size_t c = 0; c <= p; c++) {
            size_t rest = p;
            while (of->at[rest] > of->at[p] - of->at[c])
                rest--;
            of->rest[p * of->count + c] = (uint16_t)rest;
        }
}

static void choose_sums(recting *r, sums *to, bool along_y) {
    lengths sizes = {0}, chosen = {0};
    int64_t most = 0;
    SB_PUSH(r->bench->run->pool, chosen, 0);
    for (size_t o = 0; o < r->bench->offers.count; o++) {
        const sb_sheet_offer *on = &r->bench->offers.items[o];
        int64_t room = (along_y ? on->l : on->w) + r->bench->kerf;
        SB_PUSH(r->bench->run->pool, chosen, room);
        most = room > most ? room : most;
    }
    list_sizes(r, along_y, &sizes);
    sort_out(&chosen);
    add_sums(r, &chosen, &sizes, most);
    to->count = chosen.count;
    to->at = chosen.items;
    fill_rests(r, to);
}

struct sb_recting *sb_recting_new(const sb_sheet_bench *bench) {
    sb_pool *pool = bench->run->pool;
    recting *r = SB_NEW(pool, recting);
    r->bench = bench;
    if (bench->panes.count > MOST_PANES || bench->offers.count > POINTS)
        return NULL;
    choose_sums(r, &r->x, false);
    choose_sums(r, &r->y, true);
    r->cells = SB_NEW_ARRAY(pool, cell, r->x.count * r->y.count);
    r->made = SB_NEW_ARRAY(pool, uint8_t, r->x.count * r->y.count * bench->panes.count);
    r->wanted = SB_NEW_ARRAY(pool, uint8_t, bench->panes.count);
    r->trial = SB_NEW_ARRAY(pool, uint8_t, bench->panes.count);
    return r;
}

/* ---- the best of every rectangle --------------------------------------------------------------------- */

static size_t cell_of(const recting *r, size_t i, size_t j) {
    return i * r->y.count + j;
}

/* The two halves together, without what is too much; false when that is not better than `most`. */
static bool joins(const recting *r, size_t one, size_t other, double most, double *worth) {
    size_t panes = r->bench->panes.count;
    const uint8_t *a = &r->made[one * panes], *b = &r->made[other * panes];
    double sum = r->cells[one].worth + r->cells[other].worth;
    for (size_t i = 0; i < panes; i++) {
        int made = a[i] + b[i];
        if (made > r->wanted[i]) {
            sum -= r->f->worth[i] * (made - r->wanted[i]);
            made = r->wanted[i];
            if (sum <= most)
                return false;
        }
        r->trial[i] = (uint8_t)made;
    }
    *worth = sum;
    return true;
}

static void try_cut(const recting *r, size_t at, size_t one, size_t other, size_t cut, bool across) {
    cell *best = &r->cells[at];
    double sum = r->cells[one].worth + r->cells[other].worth, worth;
    if (sum <= best->worth * (1 + 1e-12) || !joins(r, one, other, best->worth * (1 + 1e-12), &worth))
        return;
    *best = (cell){worth, UINT16_MAX, (uint16_t)cut, across, false};
    for (size_t i = 0; i < r->bench->panes.count; i++)
        r->made[at * r->bench->panes.count + i] = r->trial[i];
}

static void put_part(const recting *r, size_t at, size_t i, size_t j) {
    size_t panes = r->bench->panes.count;
    cell *best = &r->cells[at];
    *best = (cell){0, UINT16_MAX, 0, false, false};
    for (size_t n = 0; n < panes; n++) {
        const sb_pane *pane = &r->bench->panes.items[n];
        r->made[at * panes + n] = 0;
        if (r->wanted[n] == 0 || r->f->worth[n] <= best->worth)
            continue;
        for (int turned = 0; turned < 2; turned++)
            if ((turned ? pane->sideways : pane->upright) &&
                sb_pane_w(pane, turned) + r->bench->kerf <= r->x.at[i] &&
                sb_pane_l(pane, turned) + r->bench->kerf <= r->y.at[j])
                *best = (cell){r->f->worth[n], (uint16_t)n, 0, false, turned};
    }
    if (best->pane != UINT16_MAX)
        r->made[at * panes + best->pane] = 1;
}

static void fill_cell(const recting *r, size_t i, size_t j) {
    size_t at = cell_of(r, i, j);
    put_part(r, at, i, j);
    for (size_t c = 1; 2 * r->x.at[c] <= r->x.at[i]; c++)
        try_cut(r, at, cell_of(r, c, j), cell_of(r, r->x.rest[i * r->x.count + c], j), c, false);
    for (size_t c = 1; 2 * r->y.at[c] <= r->y.at[j]; c++)
        try_cut(r, at, cell_of(r, i, c), cell_of(r, i, r->y.rest[j * r->y.count + c]), c, true);
}

static size_t point_of(const sums *of, int64_t room) {
    size_t i = of->count - 1;
    while (of->at[i] > room)
        i--;
    return i;
}

static void fill_cells(const recting *r, size_t i_most, size_t j_most) {
    size_t panes = r->bench->panes.count;
    for (size_t n = 0; n < panes; n++)
        r->wanted[n] = (uint8_t)(r->f->demand[n] > 120 ? 120 : r->f->demand[n]);
    for (size_t i = 0; i <= i_most; i++)
        for (size_t j = 0; j <= j_most; j++)
            if (i > 0 && j > 0) {
                fill_cell(r, i, j);
            } else {
                r->cells[cell_of(r, i, j)] = (cell){0, UINT16_MAX, 0, false, false};
                for (size_t n = 0; n < panes; n++)
                    r->made[cell_of(r, i, j) * panes + n] = 0;
            }
    r->bench->work->left -= (int64_t)((i_most + 1) * (j_most + 1) * (i_most + j_most + panes) / 18);
}

/* ---- onto the sheet ----------------------------------------------------------------------------------- */

static void put_down(const recting *r, sb_laid *out, size_t node, const cell *at) {
    const sb_node *on = &out->tree.items[node];
    const sb_pane *pane = &r->bench->panes.items[at->pane];
    bool wider = on->w - sb_pane_w(pane, at->turned) > on->l - sb_pane_l(pane, at->turned);
    if (out->made[at->pane] >= r->f->demand[at->pane])
        return;
    if (sb_tree_put(r->bench, &out->tree, node, at->pane, at->turned, !wider) ||
        sb_tree_put(r->bench, &out->tree, node, at->pane, at->turned, wider))
        out->made[at->pane]++;
}

/* What the rules of the saw forbid stays waste. */
static void cut_out(const recting *r, sb_laid *out, size_t node, size_t i, size_t j) {
    const cell *at = &r->cells[cell_of(r, i, j)];
    if (at->pane != UINT16_MAX) {
        put_down(r, out, node, at);
        return;
    }
    int64_t size = (at->across ? r->y.at[at->cut] : r->x.at[at->cut]) - r->bench->kerf;
    if (at->cut == 0 || !sb_tree_may_cut(r->bench, &out->tree, node, at->across, size))
        return;
    size_t first = sb_tree_cut(r->bench, &out->tree, node, at->across, size);
    size_t second = first == node ? SIZE_MAX : out->tree.items[node].second;
    cut_out(r, out, first, at->across ? i : at->cut, at->across ? at->cut : j);
    if (second != SIZE_MAX && at->across)
        cut_out(r, out, second, i, r->y.rest[j * r->y.count + at->cut]);
    else if (second != SIZE_MAX)
        cut_out(r, out, second, r->x.rest[i * r->x.count + at->cut], j);
}

bool sb_lay_rects(const sb_sheet_filling *f, sb_laid *out) {
    recting *r = f->bench->recting;
    if (!r)
        return false;
    const sb_sheet_offer *on = &f->bench->offers.items[out->offer];
    size_t i = point_of(&r->x, on->w + f->bench->kerf), j = point_of(&r->y, on->l + f->bench->kerf);
    r->f = f;
    fill_cells(r, i, j);
    cut_out(r, out, 0, i, j);
    sb_lay_pieces(f, 0, out);
    return true;
}
