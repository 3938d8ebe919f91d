/* Does the plan make what was asked, from what is there, for what it says? */
#include "cutting/check.h"

__extension__ typedef __int128 wide;

void sb_refuse(sb_checking *c, const char *what, size_t index, const char *why) {
    c->sound = false;
    sb_bug(c->run, (sb_place){0}, "the plan does not hold: %s %zu: %s", what, index + 1, why);
}

/* ---- demand and availability --------------------------------------------------------------------- */

static bool indices_hold(sb_checking *c) {
    const sb_plan *plan = c->plan;
    const sb_problem *problem = plan->problem;
    bool hold = true;
    for (size_t i = 0; i < plan->boards.count; i++) {
        hold =
            hold && plan->boards.items[i].supply < problem->supplies.count && plan->boards.items[i].count > 0;
        for (size_t p = 0; p < plan->boards.items[i].parts.count; p++)
            hold = hold && plan->boards.items[i].parts.items[p].need < problem->needs.count;
    }
    for (size_t i = 0; i < plan->sheets.count; i++) {
        hold =
            hold && plan->sheets.items[i].supply < problem->supplies.count && plan->sheets.items[i].count > 0;
        for (size_t p = 0; p < plan->sheets.items[i].parts.count; p++)
            hold = hold && plan->sheets.items[i].parts.items[p].need < problem->needs.count;
    }
    for (size_t i = 0; i < plan->short_of.count; i++)
        hold = hold && plan->short_of.items[i].need < problem->needs.count &&
               plan->short_of.items[i].missing > 0;
    if (!hold)
        sb_refuse(c, "part", 0, "points nowhere");
    return hold;
}

static void check_demand(sb_checking *c) {
    const sb_plan *plan = c->plan;
    wide *made = SB_NEW_ARRAY(c->run->pool, wide, plan->problem->needs.count + 1);
    for (size_t i = 0; i < plan->boards.count; i++)
        for (size_t p = 0; p < plan->boards.items[i].parts.count; p++)
            made[plan->boards.items[i].parts.items[p].need] += plan->boards.items[i].count;
    for (size_t i = 0; i < plan->sheets.count; i++)
        for (size_t p = 0; p < plan->sheets.items[i].parts.count; p++)
            made[plan->sheets.items[i].parts.items[p].need] += plan->sheets.items[i].count;
    for (size_t i = 0; i < plan->short_of.count; i++)
        made[plan->short_of.items[i].need] += plan->short_of.items[i].missing;
    for (size_t i = 0; i < plan->problem->needs.count; i++)
        if (made[i] != plan->problem->needs.items[i].count)
            sb_refuse(c, "need", i,
                      made[i] < plan->problem->needs.items[i].count ? "too few are cut" : "too many are cut");
}

static void check_availability(sb_checking *c) {
    const sb_plan *plan = c->plan;
    wide *used = SB_NEW_ARRAY(c->run->pool, wide, plan->problem->supplies.count + 1);
    for (size_t i = 0; i < plan->boards.count; i++)
        used[plan->boards.items[i].supply] += plan->boards.items[i].count;
    for (size_t i = 0; i < plan->sheets.count; i++)
        used[plan->sheets.items[i].supply] += plan->sheets.items[i].count;
    for (size_t i = 0; i < plan->problem->supplies.count; i++) {
        int64_t available = plan->problem->supplies.items[i].available;
        if (available >= 0 && used[i] > available)
            sb_refuse(c, "supply", i, "more are used than there are");
    }
}

/* ---- ends of parts ------------------------------------------------------------------------------- */

static bool equal_end(sb_cut_end a, sb_cut_end b) {
    return a.mitre.udeg == b.mitre.udeg && a.bevel.udeg == b.bevel.udeg;
}

static const sb_cut_end square = {{0}, {0}};

/* Its section is crosscut square. */
static bool is_strip(const sb_problem *problem, const sb_need *need) {
    return need->width.nm > 0 && need->width.nm != problem->stock.items[need->stock].width.nm;
}

/* ---- money --------------------------------------------------------------------------------------- */

typedef struct sums {
    wide material, handling, leftovers;
    wide boards, changes, cuts, ripped, sheets, fences, returns, sheet_cuts;
} sums;

static void add_boards(const sb_plan *plan, sums *s) {
    const sb_cut_rules *rules = &plan->problem->rules;
    for (size_t i = 0; i < plan->boards.count; i++) {
        const sb_board_plan *board = &plan->boards.items[i];
        const sb_supply *supply = &plan->problem->supplies.items[board->supply];
        wide n = board->count, metre = 1000 * (wide)SB_NM_PER_MM;
        s->material += n * supply->price.milli;
        s->boards += n, s->changes += n * board->stops, s->cuts += n * board->cuts,
            s->ripped += n * board->ripped.nm;
        s->handling += n * (rules->board.milli + (wide)rules->change.milli * board->stops +
                            (wide)rules->cut.milli * board->cuts);
        s->leftovers +=
            n * ((wide)board->leftover.nm * plan->problem->stock.items[supply->stock].value / metre);
    }
}

static wide leftovers_of(const sb_plan *plan, const sb_sheet_plan *sheet) {
    const sb_supply *supply = &plan->problem->supplies.items[sheet->supply];
    wide value = plan->problem->stock.items[supply->stock].value, metre = 1000 * (wide)SB_NM_PER_MM, sum = 0;
    for (size_t i = 0; i < sheet->leftovers.count; i++)
        sum +=
            (wide)sheet->leftovers.items[i].w.nm * sheet->leftovers.items[i].l.nm * value / (metre * metre);
    return sum;
}

static void add_sheets(const sb_plan *plan, sums *s) {
    const sb_cut_rules *rules = &plan->problem->rules;
    for (size_t i = 0; i < plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &plan->sheets.items[i];
        wide n = sheet->count, cuts = (wide)sheet->cuts.count;
        s->material += n * plan->problem->supplies.items[sheet->supply].price.milli;
        s->sheets += n, s->fences += n * sheet->fences, s->returns += n * sheet->returns,
            s->sheet_cuts += n * cuts;
        s->handling += n * (rules->sheet.milli + (wide)rules->fence.milli * sheet->fences +
                            (wide)rules->back.milli * sheet->returns + rules->sheet_cut.milli * cuts);
        s->leftovers += n * leftovers_of(plan, sheet);
    }
}

static void check_counts(sb_checking *c, const sums *s) {
    const sb_plan_counts *counts = &c->plan->counts;
    if (counts->boards != s->boards || counts->changes != s->changes || counts->cuts != s->cuts ||
        counts->ripped.nm != s->ripped || counts->sheets != s->sheets || counts->fences != s->fences ||
        counts->returns != s->returns || counts->sheet_cuts != s->sheet_cuts)
        sb_refuse(c, "counts", 0, "boards, cuts or settings do not add up");
}

static void check_cost(sb_checking *c) {
    const sb_plan *plan = c->plan;
    sums s = {0};
    add_boards(plan, &s);
    add_sheets(plan, &s);
    check_counts(c, &s);
    s.handling += (wide)plan->problem->rules.stop.milli * plan->counts.stops;
    if (plan->problem->rules.material_only)
        s.handling = s.leftovers = 0;
    if (s.material != plan->material.milli || s.handling != plan->handling.milli ||
        s.leftovers != plan->leftovers.milli)
        sb_refuse(c, "cost", 0, "material, handling or leftovers do not add up");
    if (s.material + s.handling - s.leftovers != plan->cost.milli)
        sb_refuse(c, "cost", 0, "the sum is wrong");
}

/* What every plan has alike: the stop settings of the batch, and the cuts at the ends of strips. */
static wide shared_by_all(const sb_plan *plan) {
    const sb_problem *problem = plan->problem;
    wide cuts = 0;
    for (size_t i = 0; i < plan->boards.count; i++)
        for (size_t p = 0; p < plan->boards.items[i].parts.count; p++) {
            const sb_need *need = &problem->needs.items[plan->boards.items[i].parts.items[p].need];
            if (is_strip(problem, need))
                cuts += plan->boards.items[i].count *
                        (!equal_end(need->end1, square) + !equal_end(need->end2, square));
        }
    return problem->rules.material_only
               ? 0
               : (wide)problem->rules.stop.milli * plan->counts.stops + problem->rules.cut.milli * cuts;
}

static void check_bound(sb_checking *c) {
    const sb_plan *plan = c->plan;
    wide sum = shared_by_all(plan);
    for (size_t i = 0; plan->certificate && i < plan->certificate->bounds.count; i++)
        sum += plan->certificate->bounds.items[i].bound.milli;
    if (sum != plan->bound.milli)
        sb_refuse(c, "bound", 0, "the bounds of the stocks do not add up to it");
    if (plan->bound.milli > plan->cost.milli)
        sb_refuse(c, "bound", 0, "it is above the cost");
    if (plan->proved && (plan->bound.milli != plan->cost.milli || plan->short_of.count > 0))
        sb_refuse(c, "bound", 0, "called proved without being met");
}

/* ---- stop settings in the batch ------------------------------------------------------------------ */

/* The same length and, end by end, the same two angles: `flat` and `tilt` are the signs a turn gives them. */
static bool same_setting(const sb_problem *problem, size_t one, size_t other) {
    const sb_need *a = &problem->needs.items[one], *b = &problem->needs.items[other];
    sb_cut_end a1 = a->end1, a2 = a->end2, b1 = b->end1, b2 = b->end2;
    if (a->length.nm != b->length.nm)
        return false;
    if (is_strip(problem, a))
        a1 = a2 = square;
    if (is_strip(problem, b))
        b1 = b2 = square;
    for (int i = 0; i < 4; i++) {
        int flat = i & 1 ? -1 : 1, tilt = i & 2 ? -1 : 1;
        bool swap =
            flat != tilt; /* half a turn about one axis swaps the ends; about the length it does not */
        sb_cut_end first = swap ? b2 : b1, second = swap ? b1 : b2;
        first.mitre.udeg *= flat, second.mitre.udeg *= flat;
        first.bevel.udeg *= tilt, second.bevel.udeg *= tilt;
        if (equal_end(a1, first) && equal_end(a2, second))
            return true;
    }
    return false;
}

static void check_stops(sb_checking *c) {
    const sb_plan *plan = c->plan;
    const sb_problem *problem = plan->problem;
    bool *cut = SB_NEW_ARRAY(c->run->pool, bool, problem->needs.count + 1);
    int64_t stops = 0;
    for (size_t i = 0; i < plan->boards.count; i++)
        for (size_t p = 0; p < plan->boards.items[i].parts.count; p++)
            cut[plan->boards.items[i].parts.items[p].need] = true;
    for (size_t i = 0; i < problem->needs.count; i++) {
        bool fresh = cut[i];
        for (size_t j = 0; j < i && fresh; j++)
            fresh = !(cut[j] && same_setting(problem, j, i));
        stops += fresh;
    }
    if (stops != plan->counts.stops)
        sb_refuse(c, "counts", 0, "stop settings of the batch are miscounted");
}

bool sb_plan_check(sb_run *run, const sb_plan *plan) {
    sb_checking c = {run, plan, true};
    if (!indices_hold(&c))
        return false;
    for (size_t i = 0; i < plan->boards.count; i++)
        sb_check_board(&c, i);
    for (size_t i = 0; i < plan->sheets.count; i++)
        sb_check_sheet(&c, i);
    check_demand(&c);
    check_availability(&c);
    check_stops(&c);
    check_cost(&c);
    check_bound(&c);
    return c.sound;
}
