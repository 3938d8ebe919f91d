/* How much of what is bought the job is charged for.
 *
 * As bought: whole boards, sheets and packs. As used: a board or sheet less its usable leftover in proportion
 * to length or area, packs in proportion to what the job takes out of them.
 */
#include "costing/inside.h"

/* Thousandths of boards of this line that leave the shop in pieces or as waste: whole boards less usable
 * leftovers. */
static int64_t boards_used(const costing *c, const sb_order_line *line) {
    int64_t whole = sb_mul(line->count, 1000);
    for (size_t i = 0; i < c->plan->boards.count; i++) {
        const sb_board_plan *board = &c->plan->boards.items[i];
        if (!costing_is_of(c, board->supply, line))
            continue;
        sb_length full = c->plan->problem->supplies.items[board->supply].length;
        sb_length left = sb_length_times(board->leftover, board->count);
        whole = sb_sub(whole, sb_mul_div_down(left.nm, 1000, full.nm));
    }
    return whole;
}

static int64_t sheets_used(const costing *c, const sb_order_line *line) {
    int64_t whole = sb_mul(line->count, 1000);
    for (size_t i = 0; i < c->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &c->plan->sheets.items[i];
        if (!costing_is_of(c, sheet->supply, line))
            continue;
        const sb_supply *supply = &c->plan->problem->supplies.items[sheet->supply];
        sb_area full = sb_length_area(supply->length, supply->width), left = {0};
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            left.um2 = sb_add(left.um2,
                              sb_length_area(sheet->leftovers.items[j].l, sheet->leftovers.items[j].w).um2);
        whole = sb_sub(whole, sb_mul_div_down(sb_mul(left.um2, sheet->count), 1000, full.um2));
    }
    return whole;
}

/* In proportion to what the job takes out of the packs. */
static int64_t packs_used(const sb_order_line *line) {
    return sb_mul_div_up(line->needed, 1000, line->offer->pack);
}

int64_t costing_charged(const costing *c, const sb_order_line *line) {
    if (c->shop->settings.charge == SB_CHARGE_USED) {
        if (line->stock->kind == SB_STOCK_BOARD)
            return boards_used(c, line);
        if (line->stock->kind == SB_STOCK_SHEET)
            return sheets_used(c, line);
        if (line->offer && line->offer->pack > 0)
            return packs_used(line);
    }
    return sb_mul(line->count, 1000);
}
