/* Marks of a board on the tape's step. A mark is never nearer than the cut before it, its kerf and the part's length
 * ask for, so that whoever follows the marks makes no part short; what rounding adds, less than a step a part, comes
 * out of the board's rest. */
#include "papers/cuts.h"

enum {
    HAIR = 2 /* nm: what rounding a trigonometric amount up may come to */
};

bool cuts_is_strip(const cuts_paper *p, size_t need) {
    int64_t width = p->problem->needs.items[need].width.nm;
    return width > 0 && width != cuts_stock(p, need)->width.nm;
}

bool cuts_beside(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    const sb_placed *placed = &board->parts.items[part];
    return part > 0 && cuts_is_strip(p, placed->need) && placed->at.nm == board->parts.items[part - 1].at.nm;
}

/* The ends as they are sawn across the board: a section to be ripped is cut square. */
static sb_cut_end sawn(const cuts_paper *p, const sb_placed *part, sb_cut_end end) {
    return cuts_is_strip(p, part->need) ? (sb_cut_end){{0}, {0}} : end;
}

bool cuts_shares(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    const sb_placed *placed = &board->parts.items[part];
    sb_cut_end front = sawn(p, placed, placed->front);
    if (cuts_waste_before(p, board, part))
        return cuts_end_square(front);
    if (part == 0)
        return true;
    sb_cut_end rear = sawn(p, placed - 1, placed[-1].rear);
    return front.mitre.udeg == -rear.mitre.udeg && front.bevel.udeg == -rear.bevel.udeg;
}

static sb_length length_of(const cuts_paper *p, const sb_placed *part) {
    return p->problem->needs.items[part->need].length;
}

/* From the long point of the part before to this one's. A square cut takes its kerf, whatever the plan left. */
static sb_length gap_of(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    const sb_placed *placed = &board->parts.items[part], *before = placed - 1;
    if (cuts_shares(p, board, part) && cuts_end_square(sawn(p, placed, placed->front)))
        return p->problem->rules.kerf;
    return sb_length_sub(sb_length_sub(placed->at, before->at), length_of(p, before));
}

static sb_length up(sb_length position, sb_length step) {
    return sb_length_up_to_step(sb_length_sub(position, (sb_length){HAIR}), step);
}

static sb_length later_of(sb_length a, sb_length b) {
    return a.nm > b.nm ? a : b;
}

/* Behind what is cut away a part starts where the plan has it or later: the blade of a square cut runs from the mark. */
static sb_length behind_waste(const cuts_paper *p, const sb_board_plan *board, size_t part,
                              cuts_marks *marks) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    const sb_placed *placed = &board->parts.items[part];
    const sb_waste *waste = cuts_waste_before(p, board, part);
    sb_length at = sb_length_sub(placed->at, supply->trim1), kerf = p->problem->rules.kerf, from = {0};
    if (part > 0) { /* with the kerf of the cut before it, wherever its mark has come to lie */
        sb_length before = sb_length_add(placed[-1].at, length_of(p, placed - 1));
        from = sb_length_add(marks->to[part - 1], sb_length_sub(waste->from, before));
    }
    if (!cuts_shares(p, board, part))
        return later_of(at, sb_length_add(from, sb_length_sub(placed->at, waste->to)));
    marks->cut[part] = up(later_of(sb_length_sub(at, kerf), from), marks->step);
    return sb_length_add(marks->cut[part], kerf);
}

/* A part with a front cut of its own starts at its mark; one that shares its neighbour's where that cut leaves it. */
static void mark(const cuts_paper *p, const sb_board_plan *board, size_t part, cuts_marks *marks) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    const sb_placed *placed = &board->parts.items[part];
    bool waste = cuts_waste_before(p, board, part) != NULL;
    sb_length starts = waste       ? behind_waste(p, board, part, marks)
                       : part == 0 ? sb_length_sub(placed->at, supply->trim1)
                                   : sb_length_add(marks->to[part - 1], gap_of(p, board, part));
    marks->from[part] = up(starts, marks->step);
    if (!cuts_shares(p, board, part))
        starts = marks->from[part];
    marks->to[part] = up(sb_length_add(starts, length_of(p, placed)), marks->step);
}

static void lay(const cuts_paper *p, const sb_board_plan *board, cuts_marks *marks) {
    for (size_t i = 0; i < board->parts.count; i++) {
        marks->cut[i] = (sb_length){-1};
        bool beside = cuts_beside(p, board, i);
        if (beside)
            marks->from[i] = marks->from[i - 1], marks->to[i] = marks->to[i - 1];
        else
            mark(p, board, i, marks);
    }
}

static bool fits(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks) {
    const sb_supply *supply = &p->problem->supplies.items[board->supply];
    sb_length room = sb_length_sub(sb_length_sub(supply->length, supply->trim1), supply->trim2);
    return marks->to[board->parts.count - 1].nm <= room.nm && cuts_marks_keep_off(p, board, marks);
}

/* What rounding the marks takes of what the plan leaves. */
static sb_length rest_of(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks) {
    const sb_placed *last = &board->parts.items[board->parts.count - 1];
    sb_length trim = p->problem->supplies.items[board->supply].trim1;
    if (p->problem->supplies.items[board->supply].bad.count > 0)
        return cuts_rest_of(p, board, marks).length;
    sb_length planned = sb_length_add(sb_length_sub(last->at, trim), length_of(p, last));
    sb_length later = sb_length_sub(marks->to[board->parts.count - 1], planned);
    sb_length rest = board->leftover.nm > 0 ? board->leftover : board->offcut;
    if (later.nm > 0)
        rest = later.nm < rest.nm ? sb_length_sub(rest, later) : (sb_length){0};
    return sb_length_down_to_step(rest, p->style->step);
}

/* On the shop's step; where the board has no room for that, as fine as an eye can read. */
cuts_marks cuts_marks_of(const cuts_paper *p, const sb_board_plan *board) {
    sb_length fine = {p->style->units == SB_UNITS_IN ? SB_NM_PER_INCH / 64 : SB_NM_PER_MM / 10};
    sb_length steps[] = {p->style->step, fine};
    cuts_marks marks = {.from = SB_NEW_ARRAY(p->run->pool, sb_length, board->parts.count),
                        .to = SB_NEW_ARRAY(p->run->pool, sb_length, board->parts.count),
                        .cut = SB_NEW_ARRAY(p->run->pool, sb_length, board->parts.count)};
    for (size_t i = 0; i < sizeof steps / sizeof *steps && !marks.fit; i++) {
        marks.step = steps[i];
        lay(p, board, &marks);
        marks.fit = fits(p, board, &marks);
    }
    marks.rest = rest_of(p, board, &marks);
    return marks;
}

/* ---- beside ripped parts ---- */

sb_length cuts_strip_left(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    return sb_length_down_to_step(sb_board_strip_left(p->problem, board, part), p->style->step);
}

bool cuts_strip_kept(const cuts_paper *p, const sb_board_plan *board, size_t part) {
    return sb_board_strip_kept(p->problem, board, part).nm > 0;
}
