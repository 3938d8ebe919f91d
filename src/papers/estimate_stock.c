/* The sheets Boards and sheets, and Leftovers: what is taken of each stock, where it goes, and what the plan
 * is worth. */
#include "papers/estimate.h"
#include "papers/figures.h"

/* ---- what the plan takes of one stock ---- */

typedef struct taken {
    int64_t count;
    sb_length length, left_length, spare;
    sb_area area, left_area, strips; /* strips to keep beside ripped parts */
    sb_cost price;
} taken;

static const sb_stock *stock_of(const estimate_paper *p, size_t supply) {
    return p->way->cutlist->supplies.items[p->way->plan->problem->supplies.items[supply].tag].stock;
}

static sb_length spares_on(const estimate_paper *p, const sb_board_plan *board) {
    sb_length spare = {0};
    for (size_t i = 0; i < board->parts.count; i++) {
        const sb_need *need = &p->way->plan->problem->needs.items[board->parts.items[i].need];
        if (need->spare)
            spare = sb_length_add(spare, need->length);
    }
    return spare;
}

static void take_boards(const estimate_paper *p, const sb_stock *stock, taken *t) {
    for (size_t i = 0; i < p->way->plan->boards.count; i++) {
        const sb_board_plan *board = &p->way->plan->boards.items[i];
        const sb_supply *supply = &p->way->plan->problem->supplies.items[board->supply];
        if (stock_of(p, board->supply) != stock)
            continue;
        t->count = sb_add(t->count, board->count);
        t->length = sb_length_add(t->length, sb_length_times(supply->length, board->count));
        t->left_length = sb_length_add(t->left_length, sb_length_times(board->leftover, board->count));
        t->spare = sb_length_add(t->spare, sb_length_times(spares_on(p, board), board->count));
        t->strips.um2 = sb_add(t->strips.um2,
                               sb_mul(sb_board_strips_kept(p->way->plan->problem, board).um2, board->count));
        t->price.milli = sb_add(t->price.milli, sb_mul(supply->price.milli, board->count));
    }
}

static sb_area area_of(sb_rect rect) {
    return sb_length_area(rect.w, rect.l);
}

static void take_sheets(const estimate_paper *p, const sb_stock *stock, taken *t) {
    for (size_t i = 0; i < p->way->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &p->way->plan->sheets.items[i];
        const sb_supply *supply = &p->way->plan->problem->supplies.items[sheet->supply];
        if (stock_of(p, sheet->supply) != stock)
            continue;
        t->count = sb_add(t->count, sheet->count);
        t->area.um2 =
            sb_add(t->area.um2, sb_mul(sb_length_area(supply->length, supply->width).um2, sheet->count));
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            t->left_area.um2 =
                sb_add(t->left_area.um2, sb_mul(area_of(sheet->leftovers.items[j]).um2, sheet->count));
        t->price.milli = sb_add(t->price.milli, sb_mul(supply->price.milli, sheet->count));
    }
}

static taken taken_of(const estimate_paper *p, const sb_stock *stock) {
    taken t = {0};
    take_boards(p, stock, &t);
    take_sheets(p, stock, &t);
    return t;
}

static const sb_bound *bound_of(const estimate_paper *p, const sb_stock *stock) {
    const sb_certificate *certificate = p->way->plan->certificate;
    const sb_problem *problem = p->way->plan->problem;
    for (size_t i = 0; certificate && i < problem->supplies.count; i++)
        for (size_t j = 0; stock_of(p, i) == stock && j < certificate->bounds.count; j++)
            if (certificate->bounds.items[j].stock == problem->supplies.items[i].stock)
                return &certificate->bounds.items[j];
    return NULL;
}

/* ---- rows ---- */

enum {
    STOCK_TITLE,
    STOCK_COUNT,
    STOCK_TAKEN,
    STOCK_NET,
    STOCK_SPARE,
    STOCK_KEPT,
    STOCK_WASTE,
    STOCK_SHARE
};
enum {
    WORTH_TITLE,
    WORTH_PRICE,
    WORTH_PLAN,
    WORTH_BOUND,
    WORTH_ADDED,
    WORTH_LOST
};

static sb_share share_of(int64_t part, int64_t whole) {
    int64_t ppm = whole > 0 ? sb_mul_div(part, 1000000, whole) : 0;
    return (sb_share){ppm};
}

static void put_worth(const estimate_paper *p, sb_table *table, const sb_stock_total *total, taken t) {
    const sb_bound *bound = bound_of(p, total->stock);
    sb_cell *row = sb_row_add(p->run, table);
    row[WORTH_TITLE] = sb_cell_text(total->stock->title);
    row[WORTH_PRICE] = sb_cell_money(sb_cost_money(t.price));
    row[WORTH_ADDED] = sb_cell_share(total->spare_added);
    row[WORTH_LOST] = sb_cell_share(total->spare_lost);
    if (!bound)
        return;
    row[WORTH_PLAN] = sb_cell_money(sb_cost_money(bound->cost));
    row[WORTH_BOUND] = sb_cell_money((sb_money){sb_mul_div_down(bound->bound.milli, 1, 1000)});
}

static sb_length as_full_width(sb_area area, const sb_stock *stock) {
    return (sb_length){area.um2 > 0 ? sb_mul_div(area.um2, SB_NM_PER_MM, stock->width.nm) : 0};
}

/* Where it goes, as lengths of full width or areas. */
typedef struct parting {
    int64_t taken, net, spare, kept;
} parting;

/* Waste is what the other figures of the row leave, as they are written; what rounding makes too much comes off the
 * parts. */
static void put_waste(const estimate_paper *p, sb_table *table, parting exact) {
    size_t at = table->rows.count - 1;
    sb_cell *row = table->rows.items[at];
    int64_t waste = row[STOCK_TAKEN].amount;
    const sb_relation *rest = sb_rel_cell(p->run, table, at, STOCK_TAKEN);
    for (size_t column = STOCK_NET; column <= STOCK_KEPT; column++) {
        waste = sb_sub(waste, row[column].amount);
        rest = rel_less(p->run, rest, sb_rel_cell(p->run, table, at, column), 2);
    }
    if (waste < 0) {
        row[STOCK_NET].amount = sb_add(row[STOCK_NET].amount, waste);
        waste = 0;
    }
    int64_t used = sb_sub(exact.taken, exact.kept), useful = sb_add(exact.net, exact.spare);
    row[STOCK_WASTE] = sb_cell_related(sb_cell_decimal(waste, 2), rest);
    row[STOCK_SHARE] = sb_cell_share(share_of(sb_sub(used, useful), used));
}

static void put_board(const estimate_paper *p, sb_table *table, const sb_stock_total *total, taken t) {
    const sb_style *style = &p->shop->settings.style;
    sb_cell *row = sb_row_add(p->run, table);
    sb_length kept = sb_length_add(t.left_length, as_full_width(t.strips, total->stock));
    row[STOCK_TITLE] = sb_cell_text(total->stock->title);
    row[STOCK_COUNT] = sb_cell_count(t.count);
    row[STOCK_TAKEN] = long_cell(style, t.length);
    row[STOCK_NET] = long_cell(style, total->net_length);
    row[STOCK_SPARE] = long_cell(style, t.spare);
    row[STOCK_KEPT] = long_cell(style, kept);
    put_waste(p, table, (parting){t.length.nm, total->net_length.nm, t.spare.nm, kept.nm});
}

static void put_sheet(const estimate_paper *p, sb_table *table, const sb_stock_total *total, taken t) {
    const sb_style *style = &p->shop->settings.style;
    sb_cell *row = sb_row_add(p->run, table);
    row[STOCK_TITLE] = sb_cell_text(total->stock->title);
    row[STOCK_COUNT] = sb_cell_count(t.count);
    row[STOCK_TAKEN] = face_cell(style, t.area);
    row[STOCK_NET] = face_cell(style, total->net_area);
    row[STOCK_KEPT] = face_cell(style, t.left_area);
    put_waste(p, table, (parting){t.area.um2, total->net_area.um2, 0, t.left_area.um2});
}

static bool has_kind(const estimate_paper *p, sb_stock_kind kind) {
    for (size_t i = 0; i < p->e->takeoff->totals.count; i++)
        if (p->e->takeoff->totals.items[i].stock->kind == kind)
            return true;
    return false;
}

static void put_kind(estimate_paper *p, sb_stock_kind kind, const char *title, const char *unit,
                     void (*put)(const estimate_paper *, sb_table *, const sb_stock_total *, taken)) {
    if (!has_kind(p, kind))
        return;
    sb_table *table = sb_table_add(p->run, p->stock, title,
                                   sb_pool_print(p->run->pool,
                                                 "Stock|Taken>|Taken, %s>|In parts, %s>|Spare, %s>|Kept, %s>|"
                                                 "Waste, %s>|Waste of used up>",
                                                 unit, unit, unit, unit, unit));
    for (size_t i = 0; i < p->e->takeoff->totals.count; i++) {
        const sb_stock_total *total = &p->e->takeoff->totals.items[i];
        if (total->stock->kind == kind)
            put(p, table, total, taken_of(p, total->stock));
    }
}

static bool is_cut(const sb_stock_total *total) {
    return total->stock->kind == SB_STOCK_BOARD || total->stock->kind == SB_STOCK_SHEET;
}

/* What boards and sheets cost, and what of them is for defects. */
static void put_worths(estimate_paper *p) {
    sb_table *table =
        sb_table_add(p->run, p->stock, "What it costs",
                     "Stock|Price>|Plan cost>|No plan under>|Spare added to net>|Spare lost of bought>");
    int64_t sum = 0;
    for (size_t i = 0; i < p->e->takeoff->totals.count; i++) {
        const sb_stock_total *total = &p->e->takeoff->totals.items[i];
        if (is_cut(total))
            put_worth(p, table, total, taken_of(p, total->stock));
    }
    for (size_t i = 0; i < table->rows.count; i++)
        sum = sb_add(sum, table->rows.items[i][WORTH_PRICE].amount);
    sb_cell *row = sb_total_row_add(p->run, table);
    row[WORTH_TITLE] = sb_cell_strong(sb_cell_text("All"));
    row[WORTH_PRICE] = sb_cell_strong(
        sb_cell_related(sb_cell_money((sb_money){sum}), rel_sum_of(p->run, table, WORTH_PRICE, p->digits)));
}

/* Timber in random widths is taken off by volume, with its grade's waste, and not planned. */
static void put_volumes(estimate_paper *p) {
    if (!has_kind(p, SB_STOCK_VOLUME))
        return;
    bool feet = p->shop->settings.style.units == SB_UNITS_IN;
    sb_table *table =
        sb_table_add(p->run, p->stock, "Timber by volume: taken off with its grade's waste, without a plan",
                     feet ? "Stock|Parts>|In parts, ft3>|Waste added to net>|Waste lost of bought>"
                          : "Stock|Parts>|In parts, m3>|Waste added to net>|Waste lost of bought>");
    for (size_t i = 0; i < p->e->takeoff->totals.count; i++) {
        const sb_stock_total *total = &p->e->takeoff->totals.items[i];
        if (total->stock->kind != SB_STOCK_VOLUME)
            continue;
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_text(total->stock->title);
        row[1] = sb_cell_count(total->parts);
        /* one cubic foot is 28 316 846.592 mm3 */
        row[2] = sb_cell_decimal(feet ? sb_mul_div(total->net_volume.nl, 1000, 28316846592)
                                      : sb_mul_div(total->net_volume.nl, 1, 1000000000),
                                 3);
        row[3] = sb_cell_share(total->spare_added);
        row[4] = sb_cell_share(total->spare_lost);
    }
}

void estimate_stock(estimate_paper *p) {
    const sb_style *style = &p->shop->settings.style;
    sb_paragraph_add(p->run, p->stock,
                     "What is taken is in parts, spare for defects, kept, and waste: kerf, trims, offcuts, "
                     "what is cut off at "
                     "angles, ripped off beside a part or trimmed to fit. Kept are usable leftovers, and "
                     "strips ripped off beside "
                     "parts where they are wide enough for others; what is used up is what is taken without "
                     "them. Lengths of "
                     "boards are of full width. Spare is put into the plan for knots and splits, in whole "
                     "lengths of parts; the "
                     "first of its shares is asked of the net, added to it, the second of what is bought, "
                     "lost from it. Plan cost "
                     "counts boards, handling and leftovers; no plan costs less than the figure behind it. "
                     "The waste of the "
                     "Summary is that of all stocks by volume, with what planing takes off and what the "
                     "grades of timber by "
                     "volume lose.",
                     true);
    put_kind(p, SB_STOCK_BOARD, "Boards", long_unit(style), put_board);
    put_kind(p, SB_STOCK_SHEET, "Sheets", face_unit(style), put_sheet);
    if (has_kind(p, SB_STOCK_BOARD) || has_kind(p, SB_STOCK_SHEET))
        put_worths(p);
    put_volumes(p);
}

/* ---- leftovers ---- */

enum {
    LEFT_STOCK,
    LEFT_LENGTH,
    LEFT_WIDTH,
    LEFT_COUNT,
    LEFT_EACH,
    LEFT_VALUE
};

static void put_left(estimate_paper *p, sb_table *table, const sb_stock *stock, sb_length length,
                     sb_length width, int64_t count) {
    sb_cost each = sb_shop_leftover_value(p->shop, stock, length, width);
    sb_cell *row = sb_row_add(p->run, table);
    size_t at = table->rows.count - 1;
    row[LEFT_STOCK] = sb_cell_text(stock->title);
    row[LEFT_LENGTH] = sb_cell_length(length);
    row[LEFT_WIDTH] = sb_cell_length(width.nm > 0 ? width : stock->width);
    row[LEFT_COUNT] = sb_cell_count(count);
    row[LEFT_EACH] = sb_cell_price(each.milli, p->digits + 3);
    row[LEFT_VALUE] = sb_cell_related(sb_cell_price(sb_mul(each.milli, count), p->digits + 3),
                                      rel_product(p->run, sb_rel_cell(p->run, table, at, LEFT_COUNT),
                                                  sb_rel_cell(p->run, table, at, LEFT_EACH), p->digits + 3));
}

static void put_all_left(estimate_paper *p, sb_table *table) {
    const sb_plan *plan = p->way->plan;
    for (size_t i = 0; i < plan->boards.count; i++)
        if (plan->boards.items[i].leftover.nm > 0)
            put_left(p, table, stock_of(p, plan->boards.items[i].supply), plan->boards.items[i].leftover,
                     (sb_length){0}, plan->boards.items[i].count);
    for (size_t i = 0; i < plan->sheets.count; i++)
        for (size_t j = 0; j < plan->sheets.items[i].leftovers.count; j++)
            put_left(p, table, stock_of(p, plan->sheets.items[i].supply),
                     plan->sheets.items[i].leftovers.items[j].l, plan->sheets.items[i].leftovers.items[j].w,
                     plan->sheets.items[i].count);
}

static bool any_left(const sb_plan *plan) {
    for (size_t i = 0; i < plan->boards.count; i++)
        if (plan->boards.items[i].leftover.nm > 0)
            return true;
    for (size_t i = 0; i < plan->sheets.count; i++)
        if (plan->sheets.items[i].leftovers.count > 0)
            return true;
    return false;
}

void estimate_leftovers(estimate_paper *p) {
    if (!any_left(p->way->plan)) {
        sb_paragraph_add(p->run, p->leftovers, "This job leaves nothing usable.", false);
        return;
    }
    sb_paragraph_add(p->run, p->leftovers,
                     "Usable leftovers of this job, at what the shop's settings say they are worth.", false);
    sb_table *table = sb_table_add(p->run, p->leftovers, "", "Stock|Length>|Width>|Count>|Each>|Value>");
    put_all_left(p, table);
    sb_cost sum = {0};
    for (size_t i = 0; i < table->rows.count; i++)
        sum.milli = sb_add(sum.milli, table->rows.items[i][LEFT_VALUE].amount);
    sb_cell *row = sb_total_row_add(p->run, table);
    row[LEFT_STOCK] = sb_cell_strong(sb_cell_text("All"));
    row[LEFT_VALUE] = sb_cell_strong(
        sb_cell_related(sb_cell_money(sb_cost_money(sum)), rel_sum_of(p->run, table, LEFT_VALUE, p->digits)));
}
