/* Board by board, for whoever marks out: every mark from the trued end. A table for each stock; above the parts of a
 * board, or of several alike, stands a row for the board itself. */
#include "papers/cuts.h"

static const char intro[] =
    "True the front end of each board: the board's row says how much comes off. All marks are measured from "
    "there, and each part begins a kerf behind the one before it.";
static const char intro_angles[] =
    "Angles here are set on the saw's scale, at the front of the part first. Far and near: the edge on which "
    "the "
    "part's long point and its mark lie; lower and upper: the face. Turn or roll the board until it lies so. "
    "Where the first part begins at an angle the board is trued at that angle. Angled neighbours share a "
    "cut, so "
    "that their numbers overlap.";

static void board_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board, int64_t first) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    const char *label = supply->leftover && *supply->label
                            ? sb_pool_print(p->run->pool, ", rack piece %s", supply->label)
                            : "";
    const char *title = sb_pool_print(p->run->pool, "%s %s%s", board->count == 1 ? "Board" : "Boards",
                                      cuts_number(p, first, board->count), label);
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text(title));
    row[1] = sb_cell_strong(sb_cell_length(supply->length));
    row[4] = sb_cell_text(supply->trim1.nm == 0
                              ? "ends as they are"
                              : sb_pool_print(p->run->pool, "true: %s off", cuts_length(p, supply->trim1)));
}

static const char *saw_words(const cuts_paper *p, const sb_placed *part) {
    const sb_need *need = &p->problem->needs.items[part->need];
    if (part->across.nm > 0)
        return sb_pool_print(p->run->pool, "beside it, %s wide", cuts_length(p, need->width));
    const char *ends = cuts_lying_ends(p->run, part->front, part->rear, p->style);
    return need->width.nm == 0
               ? ends
               : sb_pool_print(p->run->pool, "%s; rip to %s", ends, cuts_length(p, need->width));
}

static void part_row(const cuts_paper *p, sb_table *table, const sb_supply *supply, const sb_placed *part) {
    const sb_need *need = &p->problem->needs.items[part->need];
    sb_length from = sb_length_sub(part->at, supply->trim1), to = sb_length_add(from, need->length);
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(cuts_name(p, part->need));
    row[1] = sb_cell_length(need->length);
    if (part->across.nm == 0) {
        row[2] = sb_cell_length(cuts_mark(p, from));
        row[3] = sb_cell_strong(sb_cell_length(cuts_mark(p, to)));
    }
    row[4] = sb_cell_text(saw_words(p, part));
    row[5] = sb_cell_tick();
}

static void rest_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board) {
    bool kept = board->leftover.nm > 0;
    sb_length rest = sb_length_down_to_step(kept ? board->leftover : board->offcut, p->style->step);
    if (rest.nm <= 0)
        return;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(kept ? "left over: back into the rack" : "offcut");
    row[1] = sb_cell_length(rest);
    if (kept)
        row[5] = sb_cell_tick();
}

static void add_board(const cuts_paper *p, sb_table *table, const sb_board_plan *board, int64_t first) {
    if (table->rows.count > 0)
        sb_row_add(p->run, table); /* keeps boards apart */
    board_row(p, table, board, first);
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    for (size_t i = 0; i < board->parts.count; i++)
        part_row(p, table, supply, &board->parts.items[i]);
    rest_row(p, table, board);
}

static size_t stock_of(const cuts_paper *p, size_t board) {
    return p->problem->supplies.items[p->plan->boards.items[board].supply].stock;
}

/* The boards of one stock, from `start` on; where the next stock starts. */
static size_t stock_table(const cuts_paper *p, sb_sheet *sheet, size_t start, int64_t *first) {
    size_t stock = stock_of(p, start), i = start;
    sb_heading_add(p->run, sheet, cuts_stock_title(p, stock));
    sb_table *table = sb_table_add(p->run, sheet, "", "Part|Length>|From>|Cut at>|Ends|Done");
    for (; i < p->plan->boards.count && stock_of(p, i) == stock; i++) {
        add_board(p, table, &p->plan->boards.items[i], *first);
        *first += p->plan->boards.items[i].count;
    }
    return i;
}

/* About as many rows as the boards of a stock take, the heading of their table with them. */
static size_t rows_ahead(const cuts_paper *p, size_t start) {
    size_t rows = 3;
    for (size_t i = start; i < p->plan->boards.count && stock_of(p, i) == stock_of(p, start); i++)
        rows += 3 + p->plan->boards.items[i].parts.count;
    return rows;
}

/* A stock that is longer than a page stands alone there, and shows the headings of its table on each page. */
void cuts_boards(cuts_paper *p, sb_sheet *sheet) {
    sb_heading_add(p->run, sheet, "Boards");
    sb_paragraph_add(p->run, sheet, intro, false);
    if (cuts_any_angle(p))
        sb_paragraph_add(p->run, sheet, intro_angles, false);
    int64_t first = 1;
    size_t used = 0;
    for (size_t i = 0; i < p->plan->boards.count;) {
        cuts_together(p, sheet, &used, rows_ahead(p, i) + (i == 0 ? 8 : 0));
        i = stock_table(p, sheet, i, &first);
    }
}
