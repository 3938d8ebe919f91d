/* Board by board, for whoever marks out: every mark from the trued end. */
#include "papers/cuts.h"

static const char *board_title(const cuts_paper *p, const sb_board_plan *board, int64_t first) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    const char *label = supply->leftover && *supply->label
                            ? sb_pool_print(p->run->pool, ", rack piece %s", supply->label)
                            : "";
    return sb_pool_print(p->run->pool, "%s %s: %s%s", board->count == 1 ? "Board" : "Boards",
                         cuts_number(p, first, board->count), cuts_length(p, supply->length), label);
}

/* On the tape's step; each mark is rounded by itself, so errors do not add up. */
static sb_length mark(const cuts_paper *p, const sb_supply *supply, sb_length position) {
    sb_length from = sb_length_sub(position, supply->trim1), half = {p->style->step.nm / 2};
    return sb_length_down_to_step(sb_length_add(from, half), p->style->step);
}

static void part_row(const cuts_paper *p, sb_table *table, const sb_supply *supply, const sb_placed *part) {
    const sb_need *need = &p->problem->needs.items[part->need];
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(cuts_name(p, part->need));
    row[1] = sb_cell_length(need->length);
    row[4] = sb_cell_text(cuts_ends(p->run, part->front, part->rear, p->style));
    if (part->across.nm == 0) {
        row[2] = sb_cell_length(mark(p, supply, part->at));
        row[3] = sb_cell_strong(sb_cell_length(mark(p, supply, sb_length_add(part->at, need->length))));
    } else {
        row[4] = sb_cell_text(
            sb_pool_print(p->run->pool, "strip beside it, %s wide", cuts_length(p, need->width)));
    }
    row[5] = sb_cell_tick();
}

static void rest_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board) {
    bool kept = board->leftover.nm > 0;
    sb_length rest = kept ? board->leftover : board->offcut;
    if (rest.nm <= 0)
        return;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(kept ? "left over: back into the rack" : "offcut");
    row[1] = sb_cell_length(sb_length_down_to_step(rest, p->style->step));
}

/* "True the front end: 10 mm off, then measure from there." */
static const char *true_words(const cuts_paper *p, const sb_supply *supply) {
    if (supply->trim1.nm == 0)
        return "Ends are fresh or square: measure from the front end as it is.";
    return sb_pool_print(p->run->pool, "True the front end first, %s off; all marks are measured from there.",
                         cuts_length(p, supply->trim1));
}

void cuts_boards(cuts_paper *p, sb_sheet *sheet) {
    sb_heading_add(p->run, sheet, "Boards: marks from the trued end");
    int64_t first = 1;
    size_t stock = (size_t)-1;
    for (size_t i = 0; i < p->plan->boards.count; i++) {
        const sb_board_plan *board = &p->plan->boards.items[i];
        const sb_supply *supply = &p->problem->supplies.items[board->supply];
        if (supply->stock != stock)
            sb_heading_add(p->run, sheet, cuts_stock_title(p, supply->stock));
        stock = supply->stock;
        sb_table *table =
            sb_table_add(p->run, sheet, board_title(p, board, first), "Part|Length>|From>|Cut at>|Ends|Done");
        for (size_t j = 0; j < board->parts.count; j++)
            part_row(p, table, supply, &board->parts.items[j]);
        rest_row(p, table, board);
        sb_paragraph_add(p->run, sheet, true_words(p, supply), true);
        first += board->count;
    }
}
