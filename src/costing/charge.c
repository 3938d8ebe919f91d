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

/* What the job takes of a counted stock, after what the rack gives; and what the packs bought for it hold. */
static int64_t packs_used(const costing *c, const sb_order_line *line) {
    int64_t taken = 0, held = 0, whole = sb_mul(line->count, 1000);
    for (size_t i = 0; i < c->takeoff->usages.count; i++)
        if (c->takeoff->usages.items[i].stock == line->stock)
            taken = sb_add(taken, c->takeoff->usages.items[i].amount);
    for (size_t i = 0; i < c->order->lines.count; i++) {
        const sb_order_line *other = &c->order->lines.items[i];
        if (other->stock != line->stock || other->reorder)
            continue;
        if (other->offer)
            held = sb_add(held, sb_mul(other->count, other->offer->pack));
        else
            taken = sb_sub(taken, other->count);
    }
    if (held <= 0 || taken >= held)
        return whole;
    return taken <= 0 ? 0 : sb_mul_div_up(whole, taken, held);
}

int64_t costing_charged(const costing *c, const sb_order_line *line) {
    bool as_used = c->shop->settings.charge == SB_CHARGE_USED;
    switch (line->stock->kind) {
    case SB_STOCK_BOARD:
        return as_used ? boards_used(c, line) : sb_mul(line->count, 1000);
    case SB_STOCK_SHEET:
        return as_used ? sheets_used(c, line) : sb_mul(line->count, 1000);
    case SB_STOCK_VOLUME:
        return sb_mul(line->count, 1000);
    default:
        return as_used && line->offer ? packs_used(c, line) : sb_mul(line->count, 1000);
    }
}
