/* Board by board, for whoever marks out: every mark from the trued end. A table for each stock; above the parts of a
 * board, or of several alike, stands a row for the board itself. */
#include "papers/draw.h"

#include <string.h>

static const char intro[] =
    "The cuts of the page Stops once more, board by board, for whoever marks out instead of setting stops. "
    "True the front end of each board: the board's row says how much comes off. All marks are measured from "
    "there, and each part begins a kerf behind the one before it.";
static const char intro_angles[] = "Angles here are set on the saw's scale, at the front of the part first. "
                                   "A mark of an angled end stands at its "
                                   "long point: behind the angle stands the edge, far from you or near, or "
                                   "the face, lower or upper, on which that is. "
                                   "A part said to be turned end for end, or rolled over its length, lies "
                                   "that way as against its row on the page "
                                   "Stops. Where the first part begins at an angle the board is trued at "
                                   "that angle. Angled neighbours share a cut, so "
                                   "that their numbers overlap; where a front needs a cut of its own its row "
                                   "says so, and there the blade runs before "
                                   "the From mark.";

static const char intro_waste[] = "A row that says waste is a piece with a knot or a split that the part "
                                  "behind it must not have: it is cut off at "
                                  "its mark and laid aside. Where boards were measured their rows say what "
                                  "is bad, from the trued end: before the "
                                  "first cut, see that it lies there.";

static const char *also(const cuts_paper *p, const char *words, const char *more) {
    return *more ? sb_pool_print(p->run->pool, "%s; %s", words, more) : words;
}

/* "true: 10 mm off; marks finer than the tape" */
const char *cuts_truing(const cuts_paper *p, const sb_supply *supply, const cuts_marks *marks) {
    const char *words = supply->trim1.nm == 0
                            ? "ends as they are"
                            : sb_pool_print(p->run->pool, "true: %s off", cuts_length(p, supply->trim1));
    const char *tight = !marks->fit                           ? "; no room for marks, cut each at its stop"
                        : marks->step.nm != p->style->step.nm ? "; no room to spare, finer marks"
                                                              : "";
    return sb_pool_print(p->run->pool, "%s%s", words, tight);
}

static void board_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board,
                      const cuts_marks *marks, int64_t first) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    const char *label =
        *supply->label
            ? sb_pool_print(p->run->pool, supply->leftover ? ", rack piece %s" : ", %s", supply->label)
            : "";
    const char *title = sb_pool_print(p->run->pool, "%s %s%s", board->count == 1 ? "Board" : "Boards",
                                      cuts_number(p, first, board->count), label);
    sb_cell *row = sb_group_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text(title));
    row[1] = sb_cell_strong(sb_cell_size(supply->length));
    row[4] = sb_cell_text(also(p, cuts_truing(p, supply, marks), cuts_bad_words(p, board)));
}

/* ---- a part ---- */

/* What follows the rip: ", then mitre each strip; beside it 32 mm are left, offcut" */
static const char *rip_words(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    const char *then = cuts_after_rip(&p->problem->needs.items[board->parts.items[part].need]);
    sb_length left = cuts_strip_left(p, board, part);
    const char *kept = cuts_strip_kept(p, board, part) ? "keep it" : "offcut";
    return left.nm == 0 ? then
                        : sb_pool_print(p->run->pool, "%s; beside it %s are left, %s", then,
                                        cuts_length(p, left), kept);
}

/* A strip further up on the board that is ripped just so. */
static bool ripped_before(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    for (size_t i = 0; i < part; i++)
        if (board->parts.items[i].need == board->parts.items[part].need &&
            cuts_beside(p, board, i) == cuts_beside(p, board, part) &&
            strcmp(rip_words(p, board, i), rip_words(p, board, part)) == 0)
            return true;
    return false;
}

/* Strips alike tell what follows the rip once a board. */
static const char *strip_words(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    const char *width = cuts_length(p, p->problem->needs.items[board->parts.items[part].need].width);
    const char *first = cuts_beside(p, board, part) ? "beside it, %s wide%s" : "cut square, rip to %s%s";
    const char *again = cuts_beside(p, board, part) ? "beside it, %s wide%s" : "rip to %s%s";
    const char *words = rip_words(p, board, part);
    return *words && ripped_before(p, board, part) ? sb_pool_print(p->run->pool, again, width, ", as above")
                                                   : sb_pool_print(p->run->pool, first, width, words);
}

static const char *saw_words(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    const sb_placed *placed = &board->parts.items[part];
    bool strip = cuts_is_strip(p, placed->need);
    const char *words =
        strip ? strip_words(p, board, part) : cuts_lying_ends(p->run, placed->front, placed->rear, p->style);
    if (!strip)
        words = also(p, words, cuts_turned(placed->turned, placed->rolled));
    bool own = !cuts_beside(p, board, part) && !cuts_shares(p, board, part);
    return also(p, words, own ? "cut its front too, before From" : "");
}

sb_cell cuts_mark_cell(const cuts_paper *p, sb_length mark, sb_length step) {
    sb_style style = *p->style;
    style.step = step;
    return step.nm == p->style->step.nm ? sb_cell_length(mark)
                                        : sb_cell_text(sb_write_length(p->run, mark, &style));
}

/* Each row names its boards: a page may begin among their parts. */
static void part_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board,
                     const cuts_marks *marks, size_t part, const char *boards) {
    size_t need = board->parts.items[part].need;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(cuts_name(p, need));
    row[1] = sb_cell_length(p->problem->needs.items[need].length);
    row[5] = sb_cell_text(boards);
    if (!cuts_beside(p, board, part) && marks->fit) {
        row[2] = cuts_mark_cell(p, marks->from[part], marks->step);
        row[3] = sb_cell_strong(cuts_mark_cell(p, marks->to[part], marks->step));
    }
    row[4] = sb_cell_text(saw_words(p, board, part));
    row[6] = sb_cell_tick();
}

/* ---- a board ---- */

static void rest_row(const cuts_paper *p, sb_table *table, bool kept, sb_length rest) {
    if (rest.nm <= 0)
        return;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(kept ? "left over: back into the rack" : "offcut");
    row[1] = sb_cell_length(rest);
    if (kept)
        row[6] = sb_cell_tick();
}

static void add_board(const cuts_paper *p, sb_table *table, const sb_board_plan *board, int64_t first) {
    cuts_marks marks = cuts_marks_of(p, board);
    if (table->rows.count > 0)
        sb_row_add(p->run, table); /* keeps boards apart */
    board_row(p, table, board, &marks, first);
    const char *boards = cuts_number(p, first, board->count);
    for (size_t i = 0; i < board->parts.count; i++) {
        cuts_waste_row(p, table, board, &marks, i, boards);
        part_row(p, table, board, &marks, i, boards);
    }
    if (p->problem->supplies.items[board->supply].bad.count > 0)
        cuts_rest_rows(p, table, board, &marks, boards);
    else
        rest_row(p, table, board->leftover.nm > 0, marks.rest);
}

/* ---- all of them ---- */

static size_t stock_of(const cuts_paper *p, size_t board) {
    return p->problem->supplies.items[p->plan->boards.items[board].supply].stock;
}

/* The boards of one stock, from `start` on; where the next stock starts. */
static size_t stock_table(const cuts_paper *p, sb_sheet *sheet, size_t start, int64_t *first) {
    size_t stock = stock_of(p, start), i = start;
    sb_heading_add(p->run, sheet, cuts_stock_title(p, stock));
    int64_t number = *first;
    for (size_t b = start; b < p->plan->boards.count && stock_of(p, b) == stock; b++) {
        draw_board(p, sheet, &p->plan->boards.items[b], number);
        number += p->plan->boards.items[b].count;
    }
    sb_table *table = sb_table_add(p->run, sheet, "", "Part|Length>|From>|Cut at>|Ends|Board|Done");
    table->headings[0].text = sb_pool_print(p->run->pool, "Part of %s", cuts_stock_title(p, stock));
    for (; i < p->plan->boards.count && stock_of(p, i) == stock; i++) {
        add_board(p, table, &p->plan->boards.items[i], *first);
        *first += p->plan->boards.items[i].count;
    }
    return i;
}

/* A stock that is longer than a page stands alone there, and shows the headings of its table on each page. */
void cuts_boards(cuts_paper *p, sb_sheet *sheet) {
    sb_heading_add(p->run, sheet, "Boards");
    sb_paragraph_add(p->run, sheet, intro, false);
    if (cuts_any_angle(p))
        sb_paragraph_add(p->run, sheet, intro_angles, false);
    if (cuts_any_waste(p))
        sb_paragraph_add(p->run, sheet, intro_waste, false);
    draw_legend(p, sheet, "trued end at the left; above: lengths, below: cut at");
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->boards.count;) {
        if (i > 0)
            sb_room_break_add(p->run, sheet);
        i = stock_table(p, sheet, i, &first);
    }
}
