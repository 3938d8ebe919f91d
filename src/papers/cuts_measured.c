/* Boards whose knots and splits are known: what is bad of them, and what is cut away for it. */
#include "papers/cuts.h"

static const sb_supply *supply_of(const cuts_paper *p, const sb_board_plan *board) {
    return &p->problem->supplies.items[board->supply];
}

static const sb_need *need_of(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    return &p->problem->needs.items[board->parts.items[part].need];
}

static sb_length end_of(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    return sb_length_add(board->parts.items[part].at, need_of(p, board, part)->length);
}

const sb_waste *cuts_waste_before(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    int64_t from = part > 0 ? end_of(p, board, part - 1).nm : 0;
    for (size_t i = 0; i < board->waste.count && !cuts_beside(p, board, part); i++)
        if (board->waste.items[i].from.nm >= from &&
            board->waste.items[i].to.nm <= board->parts.items[part].at.nm)
            return &board->waste.items[i];
    return NULL;
}

bool cuts_any_waste(const cuts_paper *p) {
    for (size_t i = 0; i < p->plan->boards.count; i++)
        if (p->plan->boards.items[i].waste.count > 0)
            return true;
    return false;
}

/* ---- marks and what is bad ---- */

static bool keeps_off(const sb_need *need, const sb_stretch *bad) {
    return need->clear || need->spare || (need->sound && bad->split);
}

bool cuts_marks_keep_off(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks) {
    const sb_supply *supply = supply_of(p, board);
    for (size_t i = 0; i < board->parts.count; i++) {
        int64_t to = marks->to[i].nm + supply->trim1.nm, from = to - need_of(p, board, i)->length.nm;
        for (size_t s = 0; s < supply->bad.count; s++)
            if (keeps_off(need_of(p, board, i), &supply->bad.items[s]) && from < supply->bad.items[s].to.nm &&
                to > supply->bad.items[s].from.nm)
                return false;
    }
    return true;
}

static const char *stretch_words(const cuts_paper *p, const sb_supply *supply, const sb_stretch *bad) {
    sb_length from = sb_length_sub(bad->from, supply->trim1), to = sb_length_sub(bad->to, supply->trim1);
    from = sb_length_down_to_step(from.nm > 0 ? from : (sb_length){0}, p->style->step);
    return sb_pool_print(p->run->pool, "%s from %s to %s", bad->split ? "split" : "knot",
                         sb_write_length(p->run, from, p->style),
                         cuts_length(p, sb_length_up_to_step(to, p->style->step)));
}

/* Of the stretches that lie within, from the factory end. */
static const char *bad_within(const cuts_paper *p, const sb_supply *supply, sb_length from, sb_length to) {
    const char *words = "";
    for (size_t i = 0; i < supply->bad.count; i++) {
        const sb_stretch *bad = &supply->bad.items[i];
        if (bad->to.nm > from.nm && bad->from.nm < to.nm)
            words = sb_pool_print(p->run->pool, "%s%s%s", words, *words ? ", " : "",
                                  stretch_words(p, supply, bad));
    }
    return words;
}

const char *cuts_bad_words(const cuts_paper *p, const sb_board_plan *board) {
    const sb_supply *supply = supply_of(p, board);
    return bad_within(p, supply, supply->trim1, sb_length_sub(supply->length, supply->trim2));
}

/* ---- rows ---- */

static const sb_length none = {-1};

/* A piece from one mark to the cut at its end. */
static sb_cell *piece_row(const cuts_paper *p, sb_table *table, const char *what, sb_length from,
                          sb_length cut, const cuts_marks *marks, const char *boards) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(what);
    row[5] = sb_cell_text(boards);
    if (marks->fit)
        row[2] = cuts_mark_cell(p, sb_length_up_to_step(from, marks->step), marks->step);
    if (cut.nm >= 0)
        row[3] = sb_cell_strong(cuts_mark_cell(p, cut, marks->step));
    row[6] = sb_cell_tick();
    return row;
}

/* Where the board has no room for marks its pieces follow the stops, but waste has none: its cut is told as planned. */
void cuts_waste_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board, const cuts_marks *marks,
                    size_t part, const char *boards) {
    const sb_waste *waste = cuts_waste_before(p, board, part);
    if (!waste)
        return;
    const sb_supply *supply = supply_of(p, board);
    sb_length from = {0}, at = board->parts.items[part].at;
    if (part > 0)
        from = sb_length_add(marks->to[part - 1], sb_length_sub(waste->from, end_of(p, board, part - 1)));
    sb_length cut = marks->cut[part];
    if (!marks->fit && cut.nm >= 0)
        cut = sb_length_sub(waste->to, supply->trim1);
    sb_cell *row = piece_row(p, table, "waste", from, cut, marks, boards);
    row[4] = sb_cell_text(bad_within(p, supply, waste->from, at));
}

/* ---- behind the last part ---- */

static sb_length kerf_behind(const cuts_paper *p, const sb_board_plan *board) {
    const sb_placed *last = &board->parts.items[board->parts.count - 1];
    bool strip = cuts_is_strip(p, last->need);
    return strip ? p->problem->rules.kerf : sb_kerf_along(p->problem->rules.kerf, last->rear);
}

static sb_length room_of(const sb_supply *supply) {
    return sb_length_sub(sb_length_sub(supply->length, supply->trim1), supply->trim2);
}

static sb_length between(const cuts_paper *p, sb_length from, sb_length to) {
    sb_length length = sb_length_sub(to, from);
    return sb_length_down_to_step(length.nm > 0 ? length : (sb_length){0}, p->style->step);
}

cuts_rest cuts_rest_of(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks) {
    const sb_supply *supply = supply_of(p, board);
    size_t last = board->parts.count - 1;
    sb_length kerf = p->problem->rules.kerf, behind = kerf_behind(p, board), room = room_of(supply);
    cuts_rest rest = {sb_length_add(marks->to[last], behind), none, none, {0}};
    sb_length starts = rest.from, ends = room;
    if (board->leftover.nm > 0 && board->leftover_at.nm > end_of(p, board, last).nm + behind.nm) {
        sb_length cut = sb_length_sub(sb_length_sub(board->leftover_at, supply->trim1), kerf);
        rest.before = sb_length_up_to_step(cut.nm > rest.from.nm ? cut : rest.from, marks->step);
        starts = sb_length_add(rest.before, kerf);
    }
    sb_length end = sb_length_sub(sb_length_add(board->leftover_at, board->leftover), supply->trim1);
    if (board->leftover.nm > 0 && end.nm < room.nm)
        ends = rest.behind = sb_length_down_to_step(end, marks->step);
    rest.length = between(p, starts, ends);
    return rest;
}

static void offcut_row(const cuts_paper *p, sb_table *table, sb_length length, const char *bad) {
    if (length.nm <= 0)
        return;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text("offcut");
    row[1] = sb_cell_length(length);
    row[4] = sb_cell_text(bad);
}

void cuts_rest_rows(const cuts_paper *p, sb_table *table, const sb_board_plan *board, const cuts_marks *marks,
                    const char *boards) {
    const sb_supply *supply = supply_of(p, board);
    cuts_rest rest = cuts_rest_of(p, board, marks);
    sb_length kerf = p->problem->rules.kerf, from = sb_length_add(rest.from, supply->trim1);
    sb_length far = sb_length_sub(supply->length, supply->trim2);
    if (board->leftover.nm == 0) {
        offcut_row(p, table, rest.length, bad_within(p, supply, from, far));
        return;
    }
    if (rest.before.nm >= 0)
        piece_row(p, table, "waste", rest.from, rest.before, marks, boards)[4] =
            sb_cell_text(bad_within(p, supply, from, board->leftover_at));
    sb_length starts = rest.before.nm >= 0 ? sb_length_add(rest.before, kerf) : rest.from;
    sb_cell *row = piece_row(p, table, "left over: back into the rack", starts, rest.behind, marks, boards);
    row[1] = sb_cell_length(rest.length);
    row[4] = sb_cell_text(
        bad_within(p, supply, board->leftover_at, sb_length_add(board->leftover_at, board->leftover)));
    if (rest.behind.nm >= 0)
        offcut_row(p, table, between(p, sb_length_add(rest.behind, kerf), room_of(supply)),
                   bad_within(p, supply, sb_length_add(board->leftover_at, board->leftover), far));
}
