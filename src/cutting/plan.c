/* Planning as a whole: the problem looked over, every stock planned, costs added up, the result checked. */
#include "cutting/order.h"
#include "cutting/sheets.h"
#include "cutting/words.h"

#define SHEETS_EFFORT 26000000 /* steps for one stock of sheets, with so much more for each kind of panel */
#define EACH_PANEL    450000
#define BOARDS_EFFORT 1000000 /* steps for one stock of boards, with so much more for each kind of part */
#define EACH_KIND     80000
#define A_SECOND      20000000 /* steps done in about a second */
#define MOST_PIECES   10000000
#define LONGEST       (1000LL * 1000 * SB_NM_PER_MM)
#define DEAREST       100000000000LL
#define STEEPEST      89000000 /* [millionths of a degree] */

/* ---- is the problem well formed? ----------------------------------------------------------------- */

static bool in_range(int64_t value, int64_t least, int64_t most) {
    return value >= least && value <= most;
}

static bool end_is_sane(sb_cut_end end) {
    return in_range(end.mitre.udeg, -STEEPEST, STEEPEST) && in_range(end.bevel.udeg, -STEEPEST, STEEPEST);
}

static bool need_is_sane(sb_run *run, const sb_problem *problem, const sb_need *need) {
    bool sheet = need->stock < problem->stock.count && problem->stock.items[need->stock].sheet;
    bool sane = need->stock < problem->stock.count && in_range(need->length.nm, 1, LONGEST) &&
                in_range(need->width.nm, sheet ? 1 : 0, LONGEST) && in_range(need->count, 1, MOST_PIECES);
    if (need->count > MOST_PIECES)
        sb_error(run, need->place, "\"%s\": a plan holds at most ten million parts", need->name);
    else if (!sane)
        sb_error(run, need->place, "\"%s\": stock, sizes and count of a part must be told, and be sensible",
                 need->name);
    if (!end_is_sane(need->end1) || !end_is_sane(need->end2))
        sb_error(run, need->place, "\"%s\": an end is less than 89 degrees from square", need->name);
    return sane && end_is_sane(need->end1) && end_is_sane(need->end2);
}

static bool trim_is_sane(sb_run *run, const sb_supply *supply, int64_t trim, int64_t kerf) {
    if (trim == 0 || (trim >= kerf && trim <= LONGEST))
        return true;
    sb_error(run, supply->place, "a trim is nothing or at least the kerf: %s is less than %s",
             sb_words_length(run, trim), sb_words_length(run, kerf));
    return false;
}

static bool stretches_are_sane(sb_run *run, const sb_supply *supply, bool sheet) {
    bool sane = supply->bad.count == 0 || (!sheet && supply->available >= 0 && supply->available <= 1);
    for (size_t i = 0; i < supply->bad.count; i++) {
        const sb_stretch *bad = &supply->bad.items[i];
        sane = sane && in_range(bad->from.nm, 0, bad->to.nm - 1) && bad->to.nm <= supply->length.nm &&
               (i == 0 || bad->from.nm >= bad[-1].from.nm);
    }
    if (!sane)
        sb_error(run, supply->place, "what is bad of a measured board lies on it in order, and there is one such board");
    return sane;
}

static bool supply_is_sane(sb_run *run, const sb_problem *problem, const sb_supply *supply) {
    bool sheet = supply->stock < problem->stock.count && problem->stock.items[supply->stock].sheet;
    int64_t kerf = sheet ? problem->rules.panel_kerf.nm : problem->rules.kerf.nm;
    if (supply->stock >= problem->stock.count || !in_range(supply->length.nm, 1, LONGEST) ||
        !in_range(supply->width.nm, sheet ? 1 : 0, LONGEST) || !in_range(supply->price.milli, 0, DEAREST)) {
        sb_error(run, supply->place,
                 "stock, sizes and price of what is on offer must be told, and be sensible");
        return false;
    }
    bool first = trim_is_sane(run, supply, supply->trim1.nm, kerf);
    return trim_is_sane(run, supply, supply->trim2.nm, kerf) && stretches_are_sane(run, supply, sheet) && first;
}

static bool rules_are_sane(sb_run *run, const sb_cut_rules *rules) {
    const int64_t lengths[] = {rules->kerf.nm,          rules->rip_kerf.nm,    rules->panel_kerf.nm,
                               rules->longest_board.nm, rules->longest_rip.nm, rules->smallest_strip.nm};
    const int64_t costs[] = {rules->board.milli, rules->change.milli,   rules->stop.milli,
                             rules->cut.milli,   rules->sheet.milli,    rules->fence.milli,
                             rules->back.milli,  rules->sheet_cut.milli};
    bool sane = rules->stages == 0 || rules->stages == 2 || rules->stages == 3;
    for (size_t i = 0; i < sizeof lengths / sizeof *lengths; i++)
        sane = sane && in_range(lengths[i], 0, LONGEST);
    for (size_t i = 0; i < sizeof costs / sizeof *costs; i++)
        sane = sane && in_range(costs[i], 0, DEAREST);
    if (!sane)
        sb_error(run, (sb_place){0}, "the rules of the saw are out of range");
    return sane;
}

static bool stock_is_sane(sb_run *run, const sb_cut_stock *stock) {
    bool sane = in_range(stock->width.nm, 0, LONGEST) && in_range(stock->thickness.nm, 0, LONGEST) &&
                in_range(stock->useful_length.nm, 0, LONGEST) &&
                in_range(stock->useful_width.nm, 0, LONGEST) && in_range(stock->value, 0, DEAREST);
    if (!sane)
        sb_error(run, (sb_place){0}, "stock \"%s\" is out of range", stock->name);
    return sane;
}

/* What the plan could come to at worst must stay well inside 64 bits: every part on a board or sheet of its own. */
static bool sums_are_sane(sb_run *run, const sb_problem *problem) {
    const sb_cut_rules *rules = &problem->rules;
    double pieces = 0, length = 0, dearest = 0;
    for (size_t i = 0; i < problem->needs.count; i++) {
        pieces += (double)problem->needs.items[i].count;
        length += (double)problem->needs.items[i].count * (double)problem->needs.items[i].length.nm;
    }
    for (size_t i = 0; i < problem->supplies.count; i++) {
        const sb_supply *supply = &problem->supplies.items[i];
        const sb_cut_stock *stock = &problem->stock.items[supply->stock];
        double size = (double)supply->length.nm * 1e-9 * (stock->sheet ? (double)supply->width.nm * 1e-9 : 1);
        double cost = (double)supply->price.milli + size * (double)stock->value;
        dearest = cost > dearest ? cost : dearest;
    }
    dearest += (double)rules->board.milli + (double)rules->sheet.milli;
    dearest += 6.0 * (double)(rules->change.milli + rules->stop.milli + rules->cut.milli);
    dearest += 6.0 * (double)(rules->fence.milli + rules->back.milli + rules->sheet_cut.milli);
    if (pieces <= MOST_PIECES && length < 1e18 && pieces * dearest < 1e17)
        return true;
    sb_error(run, (sb_place){0},
             pieces > MOST_PIECES ? "more than ten million parts"
                                  : "the plan would go beyond what can be reckoned with");
    return false;
}

static bool is_sane(sb_run *run, const sb_problem *problem) {
    bool sane = rules_are_sane(run, &problem->rules);
    for (size_t i = 0; i < problem->stock.count; i++)
        sane = stock_is_sane(run, &problem->stock.items[i]) && sane;
    for (size_t i = 0; i < problem->needs.count; i++)
        sane = need_is_sane(run, problem, &problem->needs.items[i]) && sane;
    for (size_t i = 0; i < problem->supplies.count; i++)
        sane = supply_is_sane(run, problem, &problem->supplies.items[i]) && sane;
    return sane && sums_are_sane(run, problem);
}

/* ---- what a plan costs --------------------------------------------------------------------------- */

typedef struct costs {
    int64_t material, handling, leftovers;
} costs;

static void add(int64_t *to, int64_t each, int64_t count) {
    *to = sb_add(*to, sb_mul(each, count));
}

static costs cost_of_board(const sb_problem *problem, const sb_board_plan *board) {
    const sb_supply *supply = &problem->supplies.items[board->supply];
    const sb_cut_rules *rules = &problem->rules;
    costs c = {supply->price.milli, 0, 0};
    if (rules->material_only)
        return c;
    c.handling = rules->board.milli;
    add(&c.handling, rules->change.milli, board->stops);
    add(&c.handling, rules->cut.milli, board->cuts);
    c.leftovers = sb_mul_div_down(board->leftover.nm, problem->stock.items[supply->stock].value,
                                  1000 * (int64_t)SB_NM_PER_MM);
    return c;
}

__extension__ typedef __int128 wide;

static costs cost_of_sheet(const sb_problem *problem, const sb_sheet_plan *sheet) {
    const sb_supply *supply = &problem->supplies.items[sheet->supply];
    const sb_cut_rules *rules = &problem->rules;
    costs c = {supply->price.milli, 0, 0};
    if (rules->material_only)
        return c;
    c.handling = rules->sheet.milli;
    add(&c.handling, rules->fence.milli, sheet->fences);
    add(&c.handling, rules->back.milli, sheet->returns);
    add(&c.handling, rules->sheet_cut.milli, (int64_t)sheet->cuts.count);
    for (size_t i = 0; i < sheet->leftovers.count; i++) {
        wide area = (wide)sheet->leftovers.items[i].w.nm * sheet->leftovers.items[i].l.nm;
        c.leftovers +=
            (int64_t)(area * problem->stock.items[supply->stock].value / ((wide)1000000000 * 1000000000));
    }
    return c;
}

static void add_costs(sb_plan *plan, sb_bound *bound, costs c, int64_t count) {
    add(&plan->material.milli, c.material, count);
    add(&plan->handling.milli, c.handling, count);
    add(&plan->leftovers.milli, c.leftovers, count);
    add(&bound->cost.milli, c.material + c.handling - c.leftovers, count);
}

static void count_board(sb_plan *plan, const sb_board_plan *board) {
    sb_plan_counts *counts = &plan->counts;
    add(&counts->boards, 1, board->count);
    add(&counts->changes, board->stops, board->count);
    add(&counts->cuts, board->cuts, board->count);
    add(&counts->ripped.nm, board->ripped.nm, board->count);
}

static void count_sheet(sb_plan *plan, const sb_sheet_plan *sheet) {
    sb_plan_counts *counts = &plan->counts;
    add(&counts->sheets, 1, sheet->count);
    add(&counts->fences, sheet->fences, sheet->count);
    add(&counts->returns, sheet->returns, sheet->count);
    add(&counts->sheet_cuts, (int64_t)sheet->cuts.count, sheet->count);
}

/* ---- one stock ----------------------------------------------------------------------------------- */

/* A plan that lacks parts proves nothing about those that do not. */
static void close_bound(sb_run *run, sb_plan *plan, sb_certificate *certificate, sb_bound *bound,
                        size_t short_before) {
    if (plan->short_of.count > short_before && bound->bound.milli > bound->cost.milli)
        bound->bound.milli = bound->cost.milli;
    plan->bound.milli = sb_add(plan->bound.milli, bound->bound.milli);
    SB_PUSH(run->pool, certificate->bounds, *bound);
}

static bool is_ripped(const sb_problem *problem, const sb_need *need) {
    return need->width.nm > 0 && need->width.nm != problem->stock.items[need->stock].width.nm;
}

static bool is_angled(sb_cut_end end) {
    return end.mitre.udeg != 0 || end.bevel.udeg != 0;
}

/* Cuts at the ends of strips, once they are ripped: every plan has as many of them, wherever the strips lie. */
static int64_t strip_end_cuts(const sb_problem *problem, const sb_board_plan *board) {
    int64_t cuts = 0;
    for (size_t i = 0; i < board->parts.count; i++) {
        const sb_need *need = &problem->needs.items[board->parts.items[i].need];
        if (is_ripped(problem, need))
            cuts += is_angled(need->end1) + is_angled(need->end2);
    }
    return cuts;
}

/* Shared by all plans: neither in the cost nor in the bound that the certificate shows. */
static void share_strip_ends(sb_plan *plan, sb_bound *bound, const sb_board_plan *board) {
    const sb_cut_rules *rules = &plan->problem->rules;
    int64_t cuts = rules->material_only ? 0 : sb_mul(strip_end_cuts(plan->problem, board), board->count);
    add(&plan->bound.milli, rules->cut.milli, cuts);
    add(&bound->cost.milli, -rules->cut.milli, cuts);
}

static void plan_boards(sb_run *run, sb_plan *plan, sb_certificate *certificate, size_t stock,
                        sb_work *work) {
    size_t short_before = plan->short_of.count, before = plan->boards.count;
    sb_bench *bench = sb_bench_make(run, plan, stock, work);
    sb_cutting best = {0};
    sb_bound bound = {.stock = stock, .how = "duals", .duals_scale = 1};
    if (!bench)
        return;
    sb_boards_search(bench, &best, &bound);
    sb_boards_record(bench, &best, plan);
    for (size_t i = before; i < plan->boards.count; i++) {
        add_costs(plan, &bound, cost_of_board(plan->problem, &plan->boards.items[i]),
                  plan->boards.items[i].count);
        share_strip_ends(plan, &bound, &plan->boards.items[i]);
        count_board(plan, &plan->boards.items[i]);
    }
    close_bound(run, plan, certificate, &bound, short_before);
}

static void plan_sheets(sb_run *run, sb_plan *plan, sb_certificate *certificate, size_t stock,
                        sb_work *work) {
    size_t short_before = plan->short_of.count, before = plan->sheets.count;
    sb_sheet_bench *bench = sb_sheet_bench_make(run, plan, stock, work);
    sb_laying best = {0};
    sb_bound bound = {.stock = stock, .how = "cover", .duals_scale = 1};
    if (!bench)
        return;
    sb_sheets_search(bench, &best, &bound);
    sb_sheets_record(bench, &best, plan);
    for (size_t i = before; i < plan->sheets.count; i++) {
        add_costs(plan, &bound, cost_of_sheet(plan->problem, &plan->sheets.items[i]),
                  plan->sheets.items[i].count);
        count_sheet(plan, &plan->sheets.items[i]);
    }
    close_bound(run, plan, certificate, &bound, short_before);
}

/* Each stock gets its share by the kinds of parts it has; a lone stock gets all. Who gives the search more time
 * than it would need gives it more work. */
static int64_t share_of_work(const sb_problem *problem, size_t stock, const int64_t *kinds) {
    const sb_cut_rules *rules = &problem->rules;
    int64_t of_stock = kinds[stock], all = 0;
    for (size_t i = 0; i < problem->stock.count; i++)
        all += kinds[i];
    if (all == 0)
        return 0;
    if (rules->effort > 0)
        return sb_mul_div(rules->effort, of_stock, all);
    int64_t standard = problem->stock.items[stock].sheet ? SHEETS_EFFORT + EACH_PANEL * of_stock
                                                         : BOARDS_EFFORT + EACH_KIND * of_stock;
    double allowed = rules->seconds * A_SECOND * (double)of_stock / (double)all;
    return allowed < 1e15 && (int64_t)allowed > standard ? (int64_t)allowed : standard;
}

/* ---- stop settings of the batch ------------------------------------------------------------------ */

/* As it is crosscut: the section of a ripped part is cut square. */
static sb_need as_crosscut(const sb_problem *problem, size_t index) {
    sb_need need = problem->needs.items[index];
    if (is_ripped(problem, &need))
        need.end1 = need.end2 = (sb_cut_end){{0}, {0}};
    return need;
}

/* Every plan cuts every part, so that this number is the same for all of them. Needs alike up to the way they
 * lie on the board share a setting. */
static bool setting_seen(const sb_problem *problem, const bool *cut, size_t index) {
    const sb_need need = as_crosscut(problem, index);
    for (size_t i = 0; i < index; i++) {
        const sb_need other = as_crosscut(problem, i);
        if (cut[i] && other.length.nm == need.length.nm && sb_need_same_shape(&other, &need))
            return true;
    }
    return false;
}

static void count_stops(sb_run *run, sb_plan *plan) {
    const sb_problem *problem = plan->problem;
    bool *cut = SB_NEW_ARRAY(run->pool, bool, problem->needs.count + 1);
    for (size_t i = 0; i < plan->boards.count; i++)
        for (size_t p = 0; p < plan->boards.items[i].parts.count; p++)
            cut[plan->boards.items[i].parts.items[p].need] = true;
    for (size_t i = 0; i < problem->needs.count; i++)
        plan->counts.stops += cut[i] && !setting_seen(problem, cut, i);
    if (!problem->rules.material_only)
        add(&plan->handling.milli, problem->rules.stop.milli, plan->counts.stops);
}

/* ---- all of it ----------------------------------------------------------------------------------- */

static void finish(sb_run *run, sb_plan *plan, const sb_certificate *certificate) {
    plan->certificate = certificate;
    count_stops(run, plan);
    int64_t stops =
        plan->problem->rules.material_only ? 0 : sb_mul(plan->problem->rules.stop.milli, plan->counts.stops);
    plan->bound.milli = sb_add(plan->bound.milli, stops);
    plan->cost.milli = sb_sub(sb_add(plan->material.milli, plan->handling.milli), plan->leftovers.milli);
    plan->proved = plan->short_of.count == 0 && plan->cost.milli == plan->bound.milli;
}

const sb_plan *sb_plan_make(sb_run *run, const sb_problem *problem) {
    if (!is_sane(run, problem))
        return NULL;
    sb_plan *plan = SB_NEW(run->pool, sb_plan);
    sb_certificate *certificate = SB_NEW(run->pool, sb_certificate);
    sb_work work = sb_work_start(&problem->rules);
    plan->problem = problem;
    const int64_t *kinds = sb_kinds_by_stock(run->pool, problem);
    for (size_t stock = 0; stock < problem->stock.count; stock++) {
        work.left = share_of_work(problem, stock, kinds);
        work.stock = NULL;
        if (problem->stock.items[stock].sheet)
            plan_sheets(run, plan, certificate, stock, &work);
        else
            plan_boards(run, plan, certificate, stock, &work);
    }
    sb_work_end(&work);
    finish(run, plan, certificate);
    plan->cut_short = work.broken_off;
    sb_plan_check(run, plan);
    return plan;
}
