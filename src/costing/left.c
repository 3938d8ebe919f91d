/* What a plan leaves over that is worth keeping. */
#include "costing/inside.h"

static const struct sb_supply_source *source_of(const costing *c, size_t supply) {
    return &c->cutlist->supplies.items[c->plan->problem->supplies.items[supply].tag];
}

bool costing_is_of(const costing *c, size_t supply, const sb_order_line *line) {
    const struct sb_supply_source *source = source_of(c, supply);
    return line->offer ? source->offer == line->offer : line->rack && source->rack == line->rack;
}

static void add_boards(const costing *c, const sb_stock *stock, costing_left *left) {
    for (size_t i = 0; i < c->plan->boards.count; i++) {
        const sb_board_plan *board = &c->plan->boards.items[i];
        if (board->leftover.nm <= 0 || source_of(c, board->supply)->stock != stock)
            continue;
        sb_cost value = sb_shop_leftover_value(c->shop, stock, board->leftover, (sb_length){0});
        left->count = sb_add(left->count, board->count);
        left->length = sb_length_add(left->length, sb_length_times(board->leftover, board->count));
        left->value.milli = sb_add(left->value.milli, sb_mul(value.milli, board->count));
    }
}

static void add_sheets(const costing *c, const sb_stock *stock, costing_left *left) {
    for (size_t i = 0; i < c->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &c->plan->sheets.items[i];
        if (source_of(c, sheet->supply)->stock != stock)
            continue;
        for (size_t j = 0; j < sheet->leftovers.count; j++) {
            const sb_rect *piece = &sheet->leftovers.items[j];
            sb_cost value = sb_shop_leftover_value(c->shop, stock, piece->l, piece->w);
            left->count = sb_add(left->count, sheet->count);
            left->area.um2 =
                sb_add(left->area.um2, sb_mul(sb_length_area(piece->l, piece->w).um2, sheet->count));
            left->value.milli = sb_add(left->value.milli, sb_mul(value.milli, sheet->count));
        }
    }
}

costing_left costing_left_of(const costing *c, const sb_stock *stock) {
    costing_left left = {0};
    add_boards(c, stock, &left);
    add_sheets(c, stock, &left);
    return left;
}
