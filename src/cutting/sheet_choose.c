/* Whole numbers of the sheets that the columns hold: an integer program, and what its answer makes too many taken out. */
#include <float.h>

#include "cutting/integer.h"
#include "cutting/sheet_dive.h"

#define NODES   3000
#define FEWEST  10
#define ROOT    60
#define CROWDED 20   /* kinds on a sheet from which on whole numbers hardly ever come out */
#define MOST    6000 /* columns */

static sb_integer *program_of(const sb_sheet_search *s, const sb_sheet_columns *c, double unit) {
    const sb_sheet_bench *bench = s->bench;
    size_t panes = bench->panes.count;
    sb_integer *p = sb_integer_new(bench->run->pool, panes + bench->offers.count);
    for (size_t i = 0; i < panes; i++)
        p->lower[i] = (double)bench->panes.items[i].pieces;
    for (size_t o = 0; o < bench->offers.count; o++)
        if (bench->offers.items[o].available != INT64_MAX)
            p->upper[panes + o] = (double)bench->offers.items[o].available;
    for (size_t j = 0; j < c->laid.count; j++) {
        const sb_laid *laid = &c->laid.items[j];
        sb_integer_column(p, (double)laid->cost / unit, DBL_MAX);
        for (size_t i = 0; i < panes; i++)
            if (laid->made[i] > 0)
                sb_integer_enter(p, i, (double)laid->made[i]);
        sb_integer_enter(p, panes + laid->offer, 1);
    }
    return p;
}

/* Takes out of the sheet what is not wanted any more; false when nothing is left on it. */
static bool take_out(const sb_sheet_search *s, sb_laid *laid) {
    bool any = false;
    for (size_t n = 0; n < laid->tree.count; n++) {
        size_t pane = laid->tree.items[n].pane;
        if (pane == SIZE_MAX)
            continue;
        if (s->f.demand[pane] > 0) {
            s->f.demand[pane]--;
            any = true;
        } else {
            laid->tree.items[n].pane = SIZE_MAX;
            laid->made[pane]--;
        }
    }
    laid->cost = sb_tree_cost(s->bench, laid->offer, &laid->tree);
    return any;
}

static void read_answer(sb_sheet_search *s, const sb_sheet_columns *c, const sb_integer *p) {
    sb_sheets_reset(s);
    s->tried.sheets.count = 0;
    s->tried.cost = 0;
    s->tried.missing = 0;
    for (size_t j = 0; j < c->laid.count; j++)
        for (int64_t times = (int64_t)(p->x[j] + 0.5); times > 0; times--) {
            sb_laid laid = sb_laid_keep(s->bench, &c->laid.items[j]);
            if (!take_out(s, &laid))
                break;
            SB_PUSH(s->bench->run->pool, s->tried.sheets, laid);
            s->tried.cost += laid.cost;
        }
    if (sb_laying_better(&s->tried, s->best))
        sb_laying_copy(s->bench, s->best, &s->tried);
}

/* What a node costs grows with the program; the root, with its cuts, costs as much as many. */
static int64_t node_cost(const sb_integer *p) {
    return 5000 + 2 * (int64_t)p->amounts.count;
}

static int nodes_for(const sb_sheet_search *s, const sb_integer *p) {
    int64_t nodes = s->bench->work->left / 2 / node_cost(p) - ROOT;
    return (int)(nodes < NODES ? nodes : NODES);
}

void sb_sheets_choose(sb_sheet_search *s, sb_sheet_columns *c) {
    if (c->laid.count == 0 || c->laid.count > MOST || s->best->missing > 0)
        return;
    double unit = c->program->unit;
    sb_integer *p = program_of(s, c, unit);
    p->cutoff = (double)(s->best->cost - sb_sheets_grain(s->bench)) / unit + 1e-6;
    p->nodes = nodes_for(s, p);
    if (p->nodes < FEWEST || p->amounts.count > CROWDED * c->laid.count)
        return;
    p->seconds = sb_work_seconds(s->bench->work);
    sb_integer_end end = sb_integer_solve(p);
    s->bench->work->left -= node_cost(p) * (ROOT + (int64_t)p->used);
    if (end == SB_INTEGER_BEST || end == SB_INTEGER_SOME)
        read_answer(s, c, p);
}
