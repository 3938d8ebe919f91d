/* Numbers of sheets, by the worth that the duals give them. */
#include "cutting/sheet_targets.h"

#include "cutting/duals.h"

#define REBUILT 0.02   /* of the worth of sheets that the best plan has in vain */
#define NODES   200000 /* looked at, at most */

typedef struct aiming {
    const sb_sheet_mix *m;
    size_t offers;
    int64_t *now, *best, *had; /* by offer */
    int64_t limit, nodes;
    double *ratio; /* by offer: the best worth for cost from it on, */
    double *free;  /* and the worth of all those from it on that cost nothing */
    double wanted, most;
    bool any;
} aiming;

static double worth_of(const aiming *a, size_t offer) {
    return (double)a->m->worths->upper[offer];
}

static void judge(aiming *a, double worth) {
    if (worth < a->wanted)
        return;
    for (size_t o = 0; o < a->offers; o++)
        if (a->had[o] > a->now[o])
            worth -= REBUILT * (double)(a->had[o] - a->now[o]) * worth_of(a, o);
    if (a->any && worth <= a->most)
        return;
    a->any = true;
    a->most = worth;
    for (size_t o = 0; o < a->offers; o++)
        a->best[o] = a->now[o];
}

static void look(aiming *a, size_t offer, int64_t cost, double worth) {
    if (offer == a->offers) {
        judge(a, worth);
        return;
    }
    double least = a->any && a->most > a->wanted ? a->most : a->wanted;
    if (--a->nodes < 0 || worth + a->free[offer] + a->ratio[offer] * (double)(a->limit - cost) < least)
        return;
    int64_t price = sb_sheet_least(a->m->bench, offer), all = a->m->available[offer];
    int64_t most = price == 0 || all < (a->limit - cost) / price ? all : (a->limit - cost) / price;
    for (int64_t n = most, fewest = price == 0 ? all : 0; n >= fewest; n--) {
        a->now[offer] = n;
        look(a, offer + 1, cost + n * price, worth + (double)n * worth_of(a, offer));
    }
}

static void rate(aiming *a, size_t offer) {
    int64_t price = sb_sheet_least(a->m->bench, offer);
    double worth = worth_of(a, offer), ratio = price > 0 ? worth / (double)price : 0;
    a->ratio[offer] = ratio > a->ratio[offer + 1] ? ratio : a->ratio[offer + 1];
    a->free[offer] = a->free[offer + 1] + (price > 0 ? 0 : worth * (double)a->m->available[offer]);
}

/* All sheets that cost nothing are taken. */
static void set_up(aiming *a) {
    const sb_sheet_bench *bench = a->m->bench;
    const sb_laying *best = a->m->s->best;
    a->now = SB_NEW_ARRAY(bench->run->pool, int64_t, a->offers);
    a->best = SB_NEW_ARRAY(bench->run->pool, int64_t, a->offers);
    a->had = SB_NEW_ARRAY(bench->run->pool, int64_t, a->offers);
    a->ratio = SB_NEW_ARRAY(bench->run->pool, double, a->offers + 1);
    a->free = SB_NEW_ARRAY(bench->run->pool, double, a->offers + 1);
    for (size_t n = 0; n < best->sheets.count; n++)
        a->had[best->sheets.items[n].offer] += best->sheets.items[n].count;
    for (size_t o = a->offers; o-- > 0;)
        rate(a, o);
    for (size_t i = 0; i < bench->panes.count; i++)
        a->wanted += (double)a->m->whole[i] * (double)bench->panes.items[i].pieces;
}

const int64_t *sb_sheet_target(const sb_sheet_mix *m, int64_t limit) {
    aiming a = {.m = m, .offers = m->bench->offers.count, .nodes = NODES};
    a.limit = limit - sb_sheet_common(m->bench);
    if (a.limit < 0)
        return NULL;
    set_up(&a);
    look(&a, 0, 0, 0);
    m->bench->work->left -= NODES - (a.nodes > 0 ? a.nodes : 0);
    return a.any ? a.best : NULL;
}
