/* The search over one stock of sheets: sheet after sheet, then a few taken apart and laid out anew. */
#include <math.h>

#include "cutting/sheet_mix.h"

#define GROUP 3
#define WAYS  (4 + SB_PIECE_RULES)

typedef struct searching {
    sb_sheet_bench *bench;
    sb_sheet_filling f;
    sb_laying *best;
    sb_bound *bound;
    double *worth; /* what the best laying taught */
    sb_laid picks[2];
    sb_laying tried;
    bool few; /* draw the ways of laying out instead of trying all */
} searching;

/* ---- one sheet ----------------------------------------------------------------------------------- */

/* The ways this saw's rules allow. Two stages less one are left where the first stage stays uncut. */
static bool lay_out(const searching *s, int way, sb_laid *out) {
    const sb_sheet_bench *bench = s->bench;
    bool any = bench->stages > 3, first = bench->crosscut_first;
    if (way == 0)
        sb_lay_strips(&s->f, first, any ? 3 : bench->stages, out);
    else if (way == 1 && bench->stages >= 3)
        sb_lay_strips(&s->f, !first, any ? 3 : 2, out);
    else if (way >= 4 && any)
        sb_lay_pieces(&s->f, way - 4, out);
    else
        return false;
    return true;
}

static void judge(const searching *s, sb_laid *out) {
    double worth = 0;
    bool nothing = true;
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        worth += s->f.worth[i] * (double)out->made[i];
        nothing = nothing && out->made[i] == 0;
    }
    out->cost = sb_tree_cost(s->bench, out->offer, &out->tree);
    out->ratio = nothing ? -1 : out->cost > 0 ? worth / (double)out->cost : 1e30 + worth;
}

static void try_sheet(searching *s, size_t offer, int way) {
    sb_laid *tried = &s->picks[1];
    tried->offer = offer;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        tried->made[i] = 0;
    sb_tree_start(s->bench, offer, &tried->tree);
    if (!lay_out(s, way, tried))
        return;
    judge(s, tried);
    if (tried->ratio <= s->picks[0].ratio)
        return;
    sb_laid old = s->picks[0];
    s->picks[0] = *tried;
    s->picks[1] = old;
}

/* Once the search is broken off the first way that brings a part onto the sheet will do. */
static bool worth_trying(const searching *s, int way) {
    if (s->picks[0].ratio >= 0 && sb_work_is_broken_off(s->bench->work))
        return false;
    return !s->few || way < 2 || sb_work_dice(s->bench->work, 3) == 0;
}

static void find_best_sheet(searching *s) {
    s->picks[0].ratio = -1;
    for (size_t offer = 0; offer < s->bench->offers.count; offer++)
        for (int way = 0; way < WAYS && s->f.available[offer] > 0; way++)
            if (worth_trying(s, way))
                try_sheet(s, offer, way);
}

/* ---- sheet after sheet --------------------------------------------------------------------------- */

static void add_laid(const sb_sheet_bench *bench, sb_laying *to, const sb_laid *laid, int64_t count) {
    sb_laid kept = {laid->offer, count, {0}, NULL, laid->cost, 0};
    kept.made = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    for (size_t i = 0; i < bench->panes.count; i++)
        kept.made[i] = laid->made[i];
    for (size_t i = 0; i < laid->tree.count; i++)
        SB_PUSH(bench->run->pool, kept.tree, laid->tree.items[i]);
    SB_PUSH(bench->run->pool, to->sheets, kept);
    to->cost += count * laid->cost;
}

static int64_t times_possible(const searching *s, const sb_laid *laid) {
    int64_t times = s->f.available[laid->offer];
    for (size_t i = 0; i < s->bench->panes.count; i++)
        if (laid->made[i] > 0 && s->f.demand[i] / laid->made[i] < times)
            times = s->f.demand[i] / laid->made[i];
    return times;
}

/* What the sheet really cost, shared out by area, a little more to the large ones. */
static void learn_from(searching *s, const sb_laid *laid, int64_t times) {
    double area = 0;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        area += pow(s->bench->panes.items[i].area, 1.03) * (double)laid->made[i];
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        if (laid->made[i] == 0 || laid->cost <= 0)
            continue;
        double cost = (double)laid->cost * pow(s->bench->panes.items[i].area, 1.03) / area;
        double made = (double)(laid->made[i] * times), share = made / (made + (double)s->f.demand[i] + 1);
        s->f.worth[i] += 0.5 * share * (cost - s->f.worth[i]);
    }
}

static bool all_made(const searching *s) {
    for (size_t i = 0; i < s->bench->panes.count; i++)
        if (s->f.demand[i] > 0)
            return false;
    return true;
}

static void fill(searching *s, bool learn, sb_laying *out) {
    out->sheets.count = 0;
    out->cost = 0;
    out->missing = 0;
    while (!all_made(s)) {
        find_best_sheet(s);
        const sb_laid *laid = &s->picks[0];
        if (laid->ratio < 0)
            break;
        int64_t times = times_possible(s, laid);
        for (size_t i = 0; i < s->bench->panes.count; i++)
            s->f.demand[i] -= times * laid->made[i];
        if (s->f.available[laid->offer] != INT64_MAX)
            s->f.available[laid->offer] -= times;
        add_laid(s->bench, out, laid, times);
        if (learn)
            learn_from(s, laid, times);
    }
    for (size_t i = 0; i < s->bench->panes.count; i++)
        out->missing += (double)s->f.demand[i] * s->bench->panes.items[i].area;
}

static bool is_better(const sb_laying *one, const sb_laying *other) {
    double slack = 1e-9 * (1 + other->missing);
    return one->missing < other->missing - slack ||
           (one->missing <= other->missing + slack && one->cost < other->cost);
}

static void copy_laying(const sb_sheet_bench *bench, sb_laying *to, const sb_laying *from) {
    to->sheets.count = 0;
    for (size_t i = 0; i < from->sheets.count; i++)
        SB_PUSH(bench->run->pool, to->sheets, from->sheets.items[i]);
    to->cost = from->cost;
    to->missing = from->missing;
}

/* ---- whole plans --------------------------------------------------------------------------------- */

static void reset(searching *s) {
    for (size_t i = 0; i < s->bench->panes.count; i++)
        s->f.demand[i] = s->bench->panes.items[i].pieces;
    for (size_t i = 0; i < s->bench->offers.count; i++)
        s->f.available[i] = s->bench->offers.items[i].available;
}

static void worth_by_area(searching *s) {
    double price = INFINITY, largest = 1;
    for (size_t i = 0; i < s->bench->offers.count; i++) {
        const sb_sheet_offer *on = &s->bench->offers.items[i];
        if (on->fixed > 0)
            price = fmin(price, (double)on->fixed / ((double)on->w * (double)on->l));
    }
    for (size_t i = 0; i < s->bench->panes.count; i++)
        largest = fmax(largest, s->bench->panes.items[i].area);
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        double area = s->bench->panes.items[i].area;
        s->f.worth[i] = (isinf(price) ? 1e-12 : price) * area * (1 + 0.05 * area / largest);
    }
}

static bool is_least(const searching *s) {
    return s->best->missing <= 0 && s->best->cost <= s->bound->bound.milli;
}

static void keep_worths(searching *s) {
    for (size_t i = 0; i < s->bench->panes.count; i++)
        s->worth[i] = s->f.worth[i];
}

/* Leaves only one size of sheet on offer, beside what is there in numbers anyway. */
static void offer_only(searching *s, size_t only) {
    for (size_t i = 0; i < s->bench->offers.count; i++)
        if (i != only && s->bench->offers.items[i].available == INT64_MAX)
            s->f.available[i] = 0;
}

/* Once with all sizes on offer, once with each alone, and then again with what was learnt. */
static void try_whole(searching *s, size_t rounds) {
    size_t offers = s->bench->offers.count;
    for (size_t i = 0; i < rounds + offers && !is_least(s) && sb_work_goes_on(s->bench->work); i++) {
        reset(s);
        s->few = i > offers;
        if (i > 0 && i <= offers && offers > 1)
            offer_only(s, i - 1);
        fill(s, true, &s->tried);
        if (!is_better(&s->tried, s->best))
            continue;
        copy_laying(s->bench, s->best, &s->tried);
        keep_worths(s);
    }
}

/* ---- a few sheets taken apart -------------------------------------------------------------------- */

static size_t draw_sheet(const searching *s) {
    size_t best = SIZE_MAX;
    double most = 0;
    for (size_t draws = 1 + sb_work_dice(s->bench->work, 3); draws > 0; draws--) {
        size_t drawn = sb_work_dice(s->bench->work, s->best->sheets.count);
        const sb_laid *laid = &s->best->sheets.items[drawn];
        double worth = 0;
        for (size_t i = 0; i < s->bench->panes.count; i++)
            worth += s->worth[i] * (double)laid->made[i];
        double loss = (double)laid->cost - worth;
        if (best == SIZE_MAX || loss > most)
            best = drawn, most = loss;
    }
    return best;
}

static void free_unused(searching *s) {
    reset(s);
    for (size_t l = 0; l < s->best->sheets.count; l++) {
        const sb_laid *laid = &s->best->sheets.items[l];
        for (size_t i = 0; i < s->bench->panes.count; i++)
            s->f.demand[i] -= laid->count * laid->made[i];
        if (s->f.available[laid->offer] != INT64_MAX)
            s->f.available[laid->offer] -= laid->count;
    }
}

/* Takes up to `members` sheets apart; their cost. */
static int64_t take_apart(searching *s, const size_t *group, size_t members) {
    int64_t cost = 0;
    free_unused(s);
    for (size_t m = 0; m < members; m++) {
        const sb_laid *laid = &s->best->sheets.items[group[m]];
        for (size_t i = 0; i < s->bench->panes.count; i++)
            s->f.demand[i] += laid->made[i];
        if (s->f.available[laid->offer] != INT64_MAX)
            s->f.available[laid->offer]++;
        cost += laid->cost;
    }
    return cost;
}

static size_t draw_group(const searching *s, size_t *group) {
    size_t members = 0, wanted = 1 + sb_work_dice(s->bench->work, GROUP);
    while (wanted-- > 0) {
        size_t drawn = draw_sheet(s), same = 0;
        for (size_t i = 0; i < members; i++)
            same += group[i] == drawn;
        if ((int64_t)same < s->best->sheets.items[drawn].count)
            group[members++] = drawn;
    }
    return members;
}

static void shake(searching *s) {
    double strength = 0.02 + 0.1 * (double)sb_work_dice(s->bench->work, 5);
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        double by = (double)sb_work_dice(s->bench->work, 2001) / 1000 - 1;
        s->f.worth[i] = s->worth[i] * (1 + strength * by);
    }
}

static void replace_group(searching *s, const size_t *group, size_t members) {
    sb_laying *best = s->best;
    for (size_t m = 0; m < members; m++)
        best->sheets.items[group[m]].count--;
    size_t kept = 0;
    for (size_t l = 0; l < best->sheets.count; l++)
        if (best->sheets.items[l].count > 0)
            best->sheets.items[kept++] = best->sheets.items[l];
    best->sheets.count = kept;
    for (size_t l = 0; l < s->tried.sheets.count; l++)
        SB_PUSH(s->bench->run->pool, best->sheets, s->tried.sheets.items[l]);
    best->missing = s->tried.missing;
    best->cost = 0;
    for (size_t l = 0; l < best->sheets.count; l++)
        best->cost += best->sheets.items[l].count * best->sheets.items[l].cost;
}

static bool improve_group(searching *s) {
    size_t group[GROUP];
    size_t members = draw_group(s, group);
    sb_laying before = {.cost = take_apart(s, group, members), .missing = s->best->missing};
    shake(s);
    if (sb_work_dice(s->bench->work, 2) == 0)
        offer_only(s, sb_work_dice(s->bench->work, s->bench->offers.count));
    fill(s, false, &s->tried);
    if (is_better(&before, &s->tried))
        return false;
    bool better = is_better(&s->tried, &before);
    replace_group(s, group, members);
    return better;
}

static void improve(searching *s) {
    size_t idle = 0, patience = 400 + 40 * s->best->sheets.count;
    s->few = true;
    while (idle < patience && !is_least(s) && s->best->sheets.count > 0 && sb_work_goes_on(s->bench->work))
        idle = improve_group(s) ? 0 : idle + 1;
}

/* ---- all of it ----------------------------------------------------------------------------------- */

void sb_sheets_search(sb_sheet_bench *bench, sb_laying *best, sb_bound *bound) {
    sb_pool *pool = bench->run->pool;
    searching s = {.bench = bench, .best = best, .bound = bound, .f = {.bench = bench}};
    int64_t budget = bench->work->left;
    s.f.worth = SB_NEW_ARRAY(pool, double, bench->panes.count);
    s.f.demand = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    s.f.available = SB_NEW_ARRAY(pool, int64_t, bench->offers.count + 1);
    s.worth = SB_NEW_ARRAY(pool, double, bench->panes.count);
    s.picks[0].made = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    s.picks[1].made = SB_NEW_ARRAY(pool, int64_t, bench->panes.count);
    sb_sheet_bound(bench, bound);
    worth_by_area(&s);
    reset(&s);
    keep_worths(&s);
    fill(&s, true, best);
    if (best->missing == 0)
        sb_work_show(bench->work, bench->problem->stock.items[bench->stock].name, &best->cost, &bound->bound);
    bench->work->left = budget / 2;
    try_whole(&s, 12);
    bench->work->left = budget / 2;
    improve(&s);
    bench->work->left = 20 * budget;
    if (!is_least(&s))
        sb_sheet_mix(bench, best, bound, s.worth);
}
