/* A cutting plan for machines. Keys stay; money is a decimal string, lengths are numbers in mm.
 *
 * | key | holds |
 * | --- | --- |
 * | `cost`, `bound` | money; `cost` rounded half away from zero, `bound` rounded down |
 * | `proved` | true where the unrounded cost meets the unrounded bound |
 * | `cut_short` | true where time or a signal ended the search |
 * | `material`, `handling`, `leftovers` | money; `cost` = material + handling - leftovers, before rounding |
 * | `counts` | `boards`, `changes`, `stops`, `cuts`, `ripped_mm`, `sheets`, `fences`, `returns`, `sheet_cuts` |
 * | `boards` | array: `row` (line of STOCK.csv), `stock`, `label` (of a rack piece or a measured board), `length_mm`, `price`, `count` (identical
 *   ones), `trim1_mm`, `trim2_mm`, `measured` (of such a board: what is bad of it, `from_mm`, `to_mm`, `kind` "knot" or "split"), `waste` (of such
 *   a board: pieces cut away, `from_mm`, `to_mm`), `parts` (`name`, `length_mm`, `at_mm` from the factory end, `across_mm` of a ripped strip, `width_mm`, `turned`, `rolled`, `front`,
 *   `rear`: ends as they lie, degrees from square), `leftover_mm`, `leftover_at_mm` (of a measured board with a leftover), `offcut_mm`, `cuts`, `stops` |
 * | `sheets` | array: `row`, `stock`, `label`, `width_mm`, `length_mm`, `price`, `count`, `trim1_mm` (at the edges along the length), `trim2_mm`,
 *   `parts` (`name`, `x_mm`, `y_mm`, `w_mm`, `l_mm`, `turned`), `cuts` (`stage`, `across`: "width" or "length", `at_mm`, and the rectangle it
 *   divides: `x_mm`, `y_mm`, `w_mm`, `l_mm`), `leftovers` (rectangles), `fences`, `returns` |
 * | `certificate` | array, one for each stock: `stock`, `how`, `cost`, `bound`, `scale`, `duals`, `counted` and (sheets) `scales` by need,
 *   `worth` and `least` by supply, `common`, `lack`, `threshold`, `unit_x_mm`, `unit_y_mm` and, by need, `once` (sheets), and (by
 *   branching, by numbers) `branches` with the same and `numbers` by supply; what they mean and how to check them stands with `sb_bound`
 *   in sawbill/cutting.h. Amounts
 *   in thousandths of the minor unit |
 *
 * Positions are from the factory corner or end: x across the sheet's width, y along its length, grain along the length.
 */
#include "sawbill/papers.h"

static void put_cost(sb_run *run, sb_record *in, const char *key, sb_cost cost, int digits) {
    sb_put_money(run, in, key, sb_cost_money(cost), digits);
}

static void put_down(sb_run *run, sb_record *in, const char *key, sb_cost cost, int digits) {
    sb_put_money(run, in, key, (sb_money){sb_mul_div_down(cost.milli, 1, 1000)}, digits);
}

static void put_end(sb_run *run, sb_record *in, const char *key, sb_cut_end end) {
    if (end.mitre.udeg == 0 && end.bevel.udeg == 0)
        return;
    sb_record *record = sb_put_object(run, in, key);
    sb_put_decimal(run, record, "mitre", end.mitre.udeg, 6);
    sb_put_decimal(run, record, "bevel", end.bevel.udeg, 6);
}

static void put_rect(sb_run *run, sb_record *in, sb_rect rect) {
    sb_put_length(run, in, "x_mm", rect.x);
    sb_put_length(run, in, "y_mm", rect.y);
    sb_put_length(run, in, "w_mm", rect.w);
    sb_put_length(run, in, "l_mm", rect.l);
}

static void put_supply(sb_run *run, sb_record *in, const sb_plan *plan, size_t index, int64_t count,
                       int digits) {
    const sb_supply *supply = &plan->problem->supplies.items[index];
    const sb_cut_stock *stock = &plan->problem->stock.items[supply->stock];
    sb_put_integer(run, in, "row", (int64_t)supply->row);
    sb_put_text(run, in, "stock", stock->name);
    if (supply->label && *supply->label)
        sb_put_text(run, in, "label", supply->label);
    if (stock->sheet)
        sb_put_length(run, in, "width_mm", supply->width);
    sb_put_length(run, in, "length_mm", supply->length);
    put_cost(run, in, "price", supply->price, digits);
    sb_put_integer(run, in, "count", count);
    sb_put_length(run, in, "trim1_mm", supply->trim1);
    sb_put_length(run, in, "trim2_mm", supply->trim2);
}

static sb_record *put_piece(sb_run *run, sb_record *pieces, sb_length from, sb_length to) {
    sb_record *record = sb_put_object(run, pieces, NULL);
    sb_put_length(run, record, "from_mm", from);
    sb_put_length(run, record, "to_mm", to);
    return record;
}

static void put_measured(sb_run *run, sb_record *in, const sb_supply *supply, const sb_board_plan *board) {
    if (!supply->measured)
        return;
    sb_record *measured = sb_put_array(run, in, "measured"), *waste = sb_put_array(run, in, "waste");
    for (size_t i = 0; i < supply->bad.count; i++) {
        const sb_stretch *bad = &supply->bad.items[i];
        sb_put_text(run, put_piece(run, measured, bad->from, bad->to), "kind", bad->split ? "split" : "knot");
    }
    for (size_t i = 0; i < board->waste.count; i++)
        put_piece(run, waste, board->waste.items[i].from, board->waste.items[i].to);
}

static void put_placed(sb_run *run, sb_record *parts, const sb_plan *plan, const sb_placed *placed) {
    const sb_need *need = &plan->problem->needs.items[placed->need];
    sb_record *part = sb_put_object(run, parts, NULL);
    sb_put_text(run, part, "name", need->name);
    sb_put_length(run, part, "length_mm", need->length);
    sb_put_length(run, part, "at_mm", placed->at);
    if (need->width.nm > 0) {
        sb_put_length(run, part, "across_mm", placed->across);
        sb_put_length(run, part, "width_mm", need->width);
    }
    if (placed->turned)
        sb_put_truth(run, part, "turned", true);
    if (placed->rolled)
        sb_put_truth(run, part, "rolled", true);
    put_end(run, part, "front", placed->front);
    put_end(run, part, "rear", placed->rear);
}

/* Where nobody said what is useful, whatever is left is left over. */
static sb_length left_of(const sb_plan *plan, const sb_board_plan *board) {
    const sb_cut_stock *stock =
        &plan->problem->stock.items[plan->problem->supplies.items[board->supply].stock];
    sb_length rest = board->offcut;
    for (size_t i = 0; i < board->waste.count; i++)
        rest = sb_length_sub(rest, sb_length_sub(board->waste.items[i].to, board->waste.items[i].from));
    return stock->useful_length.nm == 0 ? rest : board->leftover;
}

static void put_board(sb_run *run, sb_record *boards, const sb_plan *plan, const sb_board_plan *board,
                      int digits) {
    sb_record *record = sb_put_object(run, boards, NULL);
    put_supply(run, record, plan, board->supply, board->count, digits);
    put_measured(run, record, &plan->problem->supplies.items[board->supply], board);
    sb_record *parts = sb_put_array(run, record, "parts");
    for (size_t i = 0; i < board->parts.count; i++)
        put_placed(run, parts, plan, &board->parts.items[i]);
    sb_put_length(run, record, "leftover_mm", left_of(plan, board));
    if (board->leftover_at.nm > 0)
        sb_put_length(run, record, "leftover_at_mm", board->leftover_at);
    sb_put_length(run, record, "offcut_mm", board->offcut);
    sb_put_integer(run, record, "cuts", board->cuts);
    sb_put_integer(run, record, "stops", board->stops);
}

static void put_sheet_part(sb_run *run, sb_record *parts, const sb_plan *plan, const sb_sheet_part *placed) {
    sb_record *part = sb_put_object(run, parts, NULL);
    sb_put_text(run, part, "name", plan->problem->needs.items[placed->need].name);
    put_rect(run, part, placed->at);
    if (placed->turned)
        sb_put_truth(run, part, "turned", true);
}

static void put_sheet_cut(sb_run *run, sb_record *cuts, const sb_sheet_cut *cut) {
    sb_record *record = sb_put_object(run, cuts, NULL);
    sb_put_integer(run, record, "stage", cut->stage);
    sb_put_text(run, record, "across", cut->across_width ? "width" : "length");
    sb_put_length(run, record, "at_mm", cut->at);
    put_rect(run, record, cut->divides);
}

static void put_sheet(sb_run *run, sb_record *sheets, const sb_plan *plan, const sb_sheet_plan *sheet,
                      int digits) {
    sb_record *record = sb_put_object(run, sheets, NULL);
    put_supply(run, record, plan, sheet->supply, sheet->count, digits);
    sb_record *parts = sb_put_array(run, record, "parts");
    for (size_t i = 0; i < sheet->parts.count; i++)
        put_sheet_part(run, parts, plan, &sheet->parts.items[i]);
    sb_record *cuts = sb_put_array(run, record, "cuts");
    for (size_t i = 0; i < sheet->cuts.count; i++)
        put_sheet_cut(run, cuts, &sheet->cuts.items[i]);
    sb_record *leftovers = sb_put_array(run, record, "leftovers");
    for (size_t i = 0; i < sheet->leftovers.count; i++)
        put_rect(run, sb_put_object(run, leftovers, NULL), sheet->leftovers.items[i]);
    sb_put_integer(run, record, "fences", sheet->fences);
    sb_put_integer(run, record, "returns", sheet->returns);
}

static void put_integers(sb_run *run, sb_record *in, const char *key, const int64_t *items, size_t count) {
    sb_record *array = sb_put_array(run, in, key);
    for (size_t i = 0; i < count; i++)
        sb_put_integer(run, array, NULL, items[i]);
}

/* Of a sheet's needs. */
static void put_scales(sb_run *run, sb_record *in, const sb_bound *bound) {
    if (bound->scales.count == 0)
        return;
    sb_record *scales = sb_put_array(run, in, "scales");
    for (size_t i = 0; i < bound->scales.count; i++) {
        const sb_scales *scale = &bound->scales.items[i];
        sb_record *record = sb_put_object(run, scales, NULL);
        sb_put_integer(run, record, "x_width", scale->x_width);
        sb_put_integer(run, record, "x_length", scale->x_length);
        sb_put_integer(run, record, "y_width", scale->y_width);
        sb_put_integer(run, record, "y_length", scale->y_length);
    }
}

static void put_proof(sb_run *run, sb_record *record, const sb_bound *bound) {
    sb_put_text(run, record, "how", bound->how);
    sb_put_integer(run, record, "scale", bound->duals_scale);
    put_integers(run, record, "duals", bound->duals.items, bound->duals.count);
    put_integers(run, record, "counted", bound->counted.items, bound->counted.count);
    put_integers(run, record, "worth", bound->worth.items, bound->worth.count);
    put_integers(run, record, "least", bound->least.items, bound->least.count);
    sb_put_integer(run, record, "common", bound->common);
    sb_put_truth(run, record, "lack", bound->lack);
    sb_put_integer(run, record, "threshold", bound->threshold);
    if (bound->unit_x.nm > 0) {
        sb_put_length(run, record, "unit_x_mm", bound->unit_x);
        sb_put_length(run, record, "unit_y_mm", bound->unit_y);
    }
    if (bound->once.count > 0) {
        sb_record *once = sb_put_array(run, record, "once");
        for (size_t i = 0; i < bound->once.count; i++)
            sb_put_truth(run, once, NULL, bound->once.items[i]);
    }
    put_scales(run, record, bound);
}

static void put_branches(sb_run *run, sb_record *in, const sb_bound *bound) {
    if (bound->branches.count == 0)
        return;
    sb_record *branches = sb_put_array(run, in, "branches");
    for (size_t i = 0; i < bound->branches.count; i++) {
        const sb_branch *branch = bound->branches.items[i];
        sb_record *record = sb_put_object(run, branches, NULL);
        put_integers(run, record, "numbers", branch->numbers.items, branch->numbers.count);
        put_proof(run, record, &branch->proof);
    }
}

static void put_bound(sb_run *run, sb_record *certificate, const sb_plan *plan, const sb_bound *bound) {
    sb_record *record = sb_put_object(run, certificate, NULL);
    sb_put_text(run, record, "stock", plan->problem->stock.items[bound->stock].name);
    sb_put_integer(run, record, "cost", bound->cost.milli);
    sb_put_integer(run, record, "bound", bound->bound.milli);
    put_proof(run, record, bound);
    put_branches(run, record, bound);
}

static void put_counts(sb_run *run, sb_record *in, const sb_plan_counts *counts) {
    sb_record *record = sb_put_object(run, in, "counts");
    sb_put_integer(run, record, "boards", counts->boards);
    sb_put_integer(run, record, "changes", counts->changes);
    sb_put_integer(run, record, "stops", counts->stops);
    sb_put_integer(run, record, "cuts", counts->cuts);
    sb_put_length(run, record, "ripped_mm", counts->ripped);
    sb_put_integer(run, record, "sheets", counts->sheets);
    sb_put_integer(run, record, "fences", counts->fences);
    sb_put_integer(run, record, "returns", counts->returns);
    sb_put_integer(run, record, "sheet_cuts", counts->sheet_cuts);
}

sb_record *sb_record_plan(sb_run *run, const sb_plan *plan, int money_digits) {
    sb_record *record = sb_record_object(run);
    put_cost(run, record, "cost", plan->cost, money_digits);
    put_down(run, record, "bound", plan->bound, money_digits);
    sb_put_truth(run, record, "proved", plan->proved);
    sb_put_truth(run, record, "cut_short", plan->cut_short);
    put_cost(run, record, "material", plan->material, money_digits);
    put_cost(run, record, "handling", plan->handling, money_digits);
    put_cost(run, record, "leftovers", plan->leftovers, money_digits);
    put_counts(run, record, &plan->counts);
    sb_record *boards = sb_put_array(run, record, "boards");
    for (size_t i = 0; i < plan->boards.count; i++)
        put_board(run, boards, plan, &plan->boards.items[i], money_digits);
    sb_record *sheets = sb_put_array(run, record, "sheets");
    for (size_t i = 0; i < plan->sheets.count; i++)
        put_sheet(run, sheets, plan, &plan->sheets.items[i], money_digits);
    sb_record *certificate = sb_put_array(run, record, "certificate");
    for (size_t i = 0; plan->certificate && i < plan->certificate->bounds.count; i++)
        put_bound(run, certificate, plan, &plan->certificate->bounds.items[i]);
    return record;
}
