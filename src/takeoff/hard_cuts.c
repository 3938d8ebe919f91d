/* Cuts past the limits of the shop's crosscut saw, counted from the plan: the cut sheet tells what to do about each, and the
 * estimate has its time from the same list. */
#include "takeoff/inside.h"

typedef struct counting {
    sb_run *run;
    const sb_saw *saw;
    const sb_takeoff *takeoff;
    const sb_plan *plan;
    sb_hard_cuts found;
} counting;

static bool square(sb_cut_end end) {
    return end.mitre.udeg == 0 && end.bevel.udeg == 0;
}

static void add(counting *c, size_t need, const sb_part *part, bool at_square, int64_t count) {
    for (size_t i = 0; i < c->found.count; i++) {
        sb_hard_cut *cut = &c->found.items[i];
        if (cut->need == need && cut->part == part && cut->square == at_square) {
            cut->count = sb_add(cut->count, count);
            return;
        }
    }
    SB_PUSH(c->run->pool, c->found, ((sb_hard_cut){need, part, at_square, count}));
}

static bool is_hard(const counting *c, sb_cut_end end, sb_length width) {
    return sb_saw_way(c->saw, end.mitre, end.bevel, width) != SB_WAY_PLAIN;
}

/* ---- on boards ---------------------------------------------------------------------------------------------- */

static const sb_need *need_of(const counting *c, const sb_placed *part) {
    return &c->plan->problem->needs.items[part->need];
}

static sb_length board_width(const counting *c, const sb_need *need) {
    return c->plan->problem->stock.items[need->stock].width;
}

static bool is_strip(const counting *c, const sb_placed *part) {
    const sb_need *need = need_of(c, part);
    return need->width.nm > 0 && need->width.nm != board_width(c, need).nm;
}

/* A front that lies along the rear before it is cut with that; where waste lies between, both are cut. */
static bool has_front_cut(const counting *c, const sb_board_plan *board, size_t index) {
    const sb_placed *part = &board->parts.items[index], *before = part - 1;
    if (index == 0 || is_strip(c, part) || is_strip(c, before))
        return true;
    if (part->front.mitre.udeg != -before->rear.mitre.udeg ||
        part->front.bevel.udeg != -before->rear.bevel.udeg)
        return true;
    int64_t behind = sb_length_add(before->at, need_of(c, before)->length).nm;
    for (size_t i = 0; i < board->waste.count; i++)
        if (board->waste.items[i].from.nm >= behind && board->waste.items[i].to.nm <= part->at.nm)
            return true;
    return false;
}

/* One end off square; how many cuts of the board that is. */
static int64_t count_end(counting *c, const sb_board_plan *board, const sb_placed *part, sb_cut_end end,
                         sb_length width) {
    if (square(end))
        return 0;
    if (is_hard(c, end, width))
        add(c, part->need, NULL, false, board->count);
    return 1;
}

static int64_t count_part(counting *c, const sb_board_plan *board, size_t index) {
    const sb_placed *part = &board->parts.items[index];
    const sb_need *need = need_of(c, part);
    bool strip = is_strip(c, part);
    sb_length width = strip ? need->width : board_width(c, need);
    int64_t cuts = count_end(c, board, part, part->rear, width);
    if (strip || has_front_cut(c, board, index))
        cuts += count_end(c, board, part, part->front, width);
    return cuts;
}

/* The others of its cuts are square. A board too wide for those is one for all of them. */
static void count_board(counting *c, const sb_board_plan *board) {
    const sb_placed *first = &board->parts.items[0];
    int64_t angled = 0;
    for (size_t i = 0; i < board->parts.count; i++)
        angled += count_part(c, board, i);
    if (board->cuts > angled && is_hard(c, (sb_cut_end){{0}, {0}}, board_width(c, need_of(c, first))))
        add(c, first->need, NULL, true, sb_mul(board->count, board->cuts - angled));
}

/* ---- of parts that are whole only later --------------------------------------------------------------------- */

static void count_later(counting *c, const sb_part *part) {
    const sb_cut_end ends[] = {part->end1, part->end2};
    for (size_t i = 0; i < 2; i++)
        if (!square(ends[i]) && is_hard(c, ends[i], part->width))
            add(c, SIZE_MAX, part, false, part->count);
}

bool sb_part_ends_later(const sb_part *part) {
    return part->staves > 1 || part->layers > 1 || part->over_length.nm > 0 ||
           part->stock->kind == SB_STOCK_SHEET;
}

sb_hard_cuts sb_hard_cuts_of(sb_run *run, const sb_shop *shop, const sb_takeoff *takeoff,
                             const sb_plan *plan) {
    counting c = {run, &shop->settings.crosscut, takeoff, plan, {0}};
    for (size_t i = 0; i < plan->boards.count; i++)
        count_board(&c, &plan->boards.items[i]);
    for (size_t i = 0; i < takeoff->parts.count; i++)
        if (sb_part_ends_later(&takeoff->parts.items[i]))
            count_later(&c, &takeoff->parts.items[i]);
    return c.found;
}
