/* Worths bent until the best strips hold no more than is wanted. */
#include "cutting/sheet_bend.h"
#include "cutting/sheet_worth.h"

#define UNITS  512 /* along an axis */
#define BENDS  5
#define STRIPS 64
#define FIRST  0.5 /* share of its worth that a piece too many takes */
#define SCALE  1000

typedef struct sb_bending {
    const sb_sheet_bench *bench;
    struct sb_strip_worths *worths;
    int64_t *bent, *made;
    double *less;  /* t by pane */
    double *first; /* t after the first choice, by offer, then by pane */
    bool *on;      /* by offer: worth bending for */
} bending;

struct sb_bending *sb_bending_new(const sb_sheet_bench *bench) {
    bending *b = SB_NEW(bench->run->pool, bending);
    b->bench = bench;
    int64_t unit[2];
    b->worths = sb_strip_worths_new(bench, UNITS, unit);
    b->bent = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    b->made = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    b->first = SB_NEW_ARRAY(bench->run->pool, double, bench->panes.count * bench->offers.count);
    b->on = SB_NEW_ARRAY(bench->run->pool, bool, bench->offers.count);
    b->less = SB_NEW_ARRAY(bench->run->pool, double, bench->panes.count);
    return b->worths ? b : NULL;
}

static void value(bending *b, const sb_sheet_search *s) {
    for (size_t i = 0; i < b->bench->panes.count; i++) {
        double worth = s->f.demand[i] > 0 ? s->f.worth[i] - b->less[i] : 0;
        b->bent[i] = (int64_t)(worth > 0 ? worth * SCALE : 0);
    }
    sb_strip_worths_value(b->worths, b->bent);
}

/* False when no pane is on the sheet too often. */
static bool bend(bending *b, const sb_sheet_search *s, size_t offer, double by) {
    bool any = false;
    for (size_t i = 0; i < b->bench->panes.count; i++)
        b->made[i] = 0;
    sb_strip_worths_best(b->worths, offer, b->made);
    for (size_t i = 0; i < b->bench->panes.count; i++) {
        double over = (double)(b->made[i] - s->f.demand[i]);
        any = any || (over > 0 && s->f.demand[i] > 0);
        if (over > 0)
            b->less[i] += by * s->f.worth[i] * over / (double)b->made[i];
        else
            b->less[i] *= 1 - by;
    }
    return any;
}

static bool lay(bending *b, sb_sheet_search *s, size_t offer, sb_sheet_visit *visit, void *context,
                double by) {
    int64_t widths[STRIPS];
    size_t count = sb_strip_worths_widths(b->worths, offer, widths, STRIPS);
    const sb_laid *laid = sb_sheets_lay_widths(s, offer, widths, count);
    if (laid->ratio >= 0)
        visit(context, laid);
    return bend(b, s, offer, by);
}

static void straighten(bending *b) {
    for (size_t i = 0; i < b->bench->panes.count; i++)
        b->less[i] = 0;
}

/* The first choice, at the duals themselves, is the same for all offers; false: no need to go on with this one. */
static bool lay_straight(bending *b, sb_sheet_search *s, size_t offer, const double *cost,
                         sb_sheet_visit *visit, void *context) {
    straighten(b);
    double most = (double)sb_strip_worths_of(b->worths, offer) / SCALE;
    if (s->f.available[offer] == 0 || most <= (cost ? cost[offer] : 0))
        return false;
    return lay(b, s, offer, visit, context, FIRST);
}

static void lay_bent(bending *b, sb_sheet_search *s, size_t offer, sb_sheet_visit *visit, void *context) {
    double by = FIRST;
    for (size_t i = 0; i < b->bench->panes.count; i++)
        b->less[i] = b->first[offer * b->bench->panes.count + i];
    for (int n = 1; n < BENDS; n++) {
        by *= 0.8;
        value(b, s);
        if (!lay(b, s, offer, visit, context, by))
            return;
    }
}

void sb_sheets_bend(struct sb_bending *b, sb_sheet_search *s, const double *cost, sb_sheet_visit *visit,
                    void *context) {
    size_t panes = b->bench->panes.count;
    straighten(b);
    value(b, s);
    for (size_t o = 0; o < b->bench->offers.count; o++) {
        b->on[o] = lay_straight(b, s, o, cost, visit, context);
        for (size_t i = 0; i < panes; i++)
            b->first[o * panes + i] = b->less[i];
    }
    for (size_t o = 0; o < b->bench->offers.count; o++)
        if (b->on[o])
            lay_bent(b, s, o, visit, context);
}
