/* What is left of a section's width beside the last of its strips. */
#include "sawbill/cutting.h"

static const sb_need *need_of(const sb_problem *problem, const sb_board_plan *board, size_t part) {
    return &problem->needs.items[board->parts.items[part].need];
}

static bool is_strip(const sb_problem *problem, const sb_need *need) {
    return need->width.nm > 0 && need->width.nm != problem->stock.items[need->stock].width.nm;
}

/* Strips of one section follow each other and lie at one place. */
static bool is_last(const sb_problem *problem, const sb_board_plan *board, size_t part) {
    const sb_placed *placed = &board->parts.items[part], *next = placed + 1;
    return part + 1 == board->parts.count || next->at.nm != placed->at.nm ||
           !is_strip(problem, need_of(problem, board, part + 1));
}

sb_length sb_board_strip_left(const sb_problem *problem, const sb_board_plan *board, size_t part) {
    const sb_need *need = need_of(problem, board, part);
    if (!is_strip(problem, need) || !is_last(problem, board, part))
        return (sb_length){0};
    int64_t kerf = problem->rules.rip_kerf.nm, taken = board->parts.items[part].across.nm + need->width.nm;
    int64_t left = problem->stock.items[need->stock].width.nm - taken - kerf;
    return (sb_length){left > kerf ? left : 0};
}

sb_length sb_board_strip_kept(const sb_problem *problem, const sb_board_plan *board, size_t part) {
    const sb_need *need = need_of(problem, board, part);
    const sb_cut_stock *stock = &problem->stock.items[need->stock];
    sb_length left = sb_board_strip_left(problem, board, part);
    bool kept = left.nm >= stock->thickness.nm && stock->useful_length.nm > 0 &&
                need->length.nm >= stock->useful_length.nm;
    return kept ? left : (sb_length){0};
}

sb_area sb_board_strips_kept(const sb_problem *problem, const sb_board_plan *board) {
    sb_area kept = {0};
    for (size_t i = 0; i < board->parts.count; i++) {
        sb_length width = sb_board_strip_kept(problem, board, i);
        kept.um2 = sb_add(kept.um2, sb_length_area(need_of(problem, board, i)->length, width).um2);
    }
    return kept;
}
