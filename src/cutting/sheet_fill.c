/* Sheet after sheet: each time the one that is worth most for its cost. */
#include <math.h>

#include "cutting/sheet_bend.h"
#include "cutting/sheet_search.h"
#include "cutting/sheet_worth.h"

#define WAYS (4 + SB_PIECE_RULES)

/* ---- one sheet ----------------------------------------------------------------------------------- */

/* The ways this saw's rules allow. Two stages less one are left where the first stage stays uncut. */
static bool lay_out(const sb_sheet_search *s, int way, sb_laid *out) {
    const sb_sheet_bench *bench = s->bench;
    bool any = bench->stages > 3, first = bench->crosscut_first;
    if (way == 0)
        sb_lay_strips(&s->f, first, any ? 3 : bench->stages, out);
    else if (way == 1 && bench->stages >= 3)
        sb_lay_strips(&s->f, !first, any ? 3 : 2, out);
    else if (way == 2 && any && !s->few)
        return sb_lay_rects(&s->f, out);
    else if (way >= 4 && any)
        sb_lay_pieces(&s->f, way - 4, out);
    else
        return false;
    return true;
}

static void judge(const sb_sheet_search *s, sb_laid *out) {
    double worth = 0;
    bool nothing = true;
    for (size_t i = 0; i < s->bench->panes.count; i++) {
        worth += s->f.worth[i] * (double)out->made[i];
        nothing = nothing && out->made[i] == 0;
    }
    out->cost = sb_tree_cost(s->bench, out->offer, &out->tree);
    out->ratio = nothing ? -1 : out->cost > 0 ? worth / (double)out->cost : 1e30 + worth;
}

static void start_sheet(sb_sheet_search *s, size_t offer) {
    sb_laid *tried = &s->picks[1];
    tried->offer = offer;
    for (size_t i = 0; i < s->bench->panes.count; i++)
        tried->made[i] = 0;
    sb_tree_start(s->bench, offer, &tried->tree);
}

/* Into picks[1]; false when the rules leave this way out. */
static bool lay_one(sb_sheet_search *s, size_t offer, int way) {
    start_sheet(s, offer);
    if (!lay_out(s, way, &s->picks[1]))
        return false;
    judge(s, &s->picks[1]);
    return true;
}

const sb_laid *sb_sheets_lay_widths(sb_sheet_search *s, size_t offer, const int64_t *widths, size_t count) {
    start_sheet(s, offer);
    sb_lay_widths(&s->f, widths, count, &s->picks[1]);
    judge(s, &s->picks[1]);
    return &s->picks[1];
}

const sb_laid *sb_sheets_lay_best(sb_sheet_search *s, size_t offer, struct sb_guillotine *g) {
    start_sheet(s, offer);
    sb_guillotine_lay(g, s->f.demand, &s->picks[1]);
    sb_lay_pieces(&s->f, 0, &s->picks[1]);
    judge(s, &s->picks[1]);
    return &s->picks[1];
}

static void keep_if_best(void *context, const sb_laid *laid) {
    sb_sheet_search *s = context;
    if (laid->ratio <= s->picks[0].ratio)
        return;
    sb_laid old = s->picks[0];
    s->picks[0] = s->picks[1];
    s->picks[1] = old;
}

static void try_sheet(sb_sheet_search *s, size_t offer, int way) {
    if (lay_one(s, offer, way))
        keep_if_best(s, &s->picks[1]);
}

void sb_sheets_lay_all(sb_sheet_search *s, sb_sheet_visit *visit, void *context) {
    for (size_t offer = 0; offer < s->bench->offers.count; offer++)
        for (int way = 0; way < WAYS && s->f.available[offer] > 0; way++)
            if (lay_one(s, offer, way) && s->picks[1].ratio >= 0)
                visit(context, &s->picks[1]);
}

/* Once the search is broken off the first way that brings a part onto the sheet will do. */
static bool worth_trying(const sb_sheet_search *s, int way) {
    if (s->picks[0].ratio >= 0 && sb_work_is_broken_off(s->bench->work))
        return false;
    return !s->few || way < 2 || sb_work_dice(s->bench->work, 3) == 0;
}

static void find_best_sheet(sb_sheet_search *s) {
    s->picks[0].ratio = -1;
    for (size_t offer = 0; offer < s->bench->offers.count; offer++)
        for (int way = 0; way < WAYS && s->f.available[offer] > 0; way++)
            if (worth_trying(s, way))
                try_sheet(s, offer, way);
    if (s->bending && !s->few)
        sb_sheets_bend(s->bending, s, NULL, keep_if_best, s);
}

/* ---- sheet after sheet --------------------------------------------------------------------------- */

sb_laid sb_laid_keep(const sb_sheet_bench *bench, const sb_laid *laid) {
    sb_laid kept = {laid->offer, 1, {0}, NULL, laid->cost, 0};
    kept.made = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->panes.count);
    for (size_t i = 0; i < bench->panes.count; i++)
        kept.made[i] = laid->made[i];
    for (size_t i = 0; i < laid->tree.count; i++)
        SB_PUSH(bench->run->pool, kept.tree, laid->tree.items[i]);
    return kept;
}

void sb_laying_add(const sb_sheet_bench *bench, sb_laying *to, const sb_laid *laid, int64_t count) {
    sb_laid kept = sb_laid_keep(bench, laid);
    kept.count = count;
    SB_PUSH(bench->run->pool, to->sheets, kept);
    to->cost += count * laid->cost;
}

static int64_t times_possible(const sb_sheet_search *s, const sb_laid *laid) {
    int64_t times = s->f.available[laid->offer];
    for (size_t i = 0; i < s->bench->panes.count; i++)
        if (laid->made[i] > 0 && s->f.demand[i] / laid->made[i] < times)
            times = s->f.demand[i] / laid->made[i];
    return times;
}

/* What the sheet really cost, shared out by area, a little more to the large ones. */
static void learn_from(sb_sheet_search *s, const sb_laid *laid, int64_t times) {
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

static bool all_made(const sb_sheet_search *s) {
    for (size_t i = 0; i < s->bench->panes.count; i++)
        if (s->f.demand[i] > 0)
            return false;
    return true;
}

void sb_sheets_fill(sb_sheet_search *s, bool learn, sb_laying *out) {
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
        sb_laying_add(s->bench, out, laid, times);
        if (learn)
            learn_from(s, laid, times);
    }
    for (size_t i = 0; i < s->bench->panes.count; i++)
        out->missing += (double)s->f.demand[i] * s->bench->panes.items[i].area;
}

bool sb_laying_better(const sb_laying *one, const sb_laying *other) {
    double slack = 1e-9 * (1 + other->missing);
    return one->missing < other->missing - slack ||
           (one->missing <= other->missing + slack && one->cost < other->cost);
}

void sb_laying_copy(const sb_sheet_bench *bench, sb_laying *to, const sb_laying *from) {
    to->sheets.count = 0;
    for (size_t i = 0; i < from->sheets.count; i++)
        SB_PUSH(bench->run->pool, to->sheets, from->sheets.items[i]);
    to->cost = from->cost;
    to->missing = from->missing;
}

/* ---- where the search stands ---------------------------------------------------------------------- */

void sb_sheets_reset(sb_sheet_search *s) {
    for (size_t i = 0; i < s->bench->panes.count; i++)
        s->f.demand[i] = s->bench->panes.items[i].pieces;
    for (size_t i = 0; i < s->bench->offers.count; i++)
        s->f.available[i] = s->bench->offers.items[i].available;
}

bool sb_sheets_are_least(const sb_sheet_search *s) {
    return s->best->missing <= 0 && s->best->cost <= s->bound->bound.milli;
}

void sb_sheets_offer_only(sb_sheet_search *s, size_t only) {
    for (size_t i = 0; i < s->bench->offers.count; i++)
        if (i != only && s->bench->offers.items[i].available == INT64_MAX)
            s->f.available[i] = 0;
}
