/* What to do where a cut is past the limits of the saw: its swing, its tilt, the width it cuts in one pass. */
#include "papers/cuts.h"

#include <string.h>

static const int64_t RIGHT_ANGLE = 90000000;

static int64_t size_of(sb_angle angle) {
    return angle.udeg < 0 ? -angle.udeg : angle.udeg;
}

/* ---- swing and tilt ------------------------------------------------------------------------------------------ */

/* An auxiliary fence square to the saw's own turns the piece by a right angle, so that the complement makes the cut. */
static const char *past_the_swing(sb_run *run, const sb_saw *saw, sb_angle mitre, const sb_style *style) {
    sb_angle complement = {RIGHT_ANGLE - size_of(mitre)};
    if (sb_saw_swings(saw, complement) == SB_REACHES_NOT)
        return "the saw does not swing this far: cut by hand";
    return sb_pool_print(run->pool,
                         "the saw does not swing this far: clamp the piece to an auxiliary fence square to "
                         "the saw's own and set the saw to %s, or cut by hand",
                         sb_write_angle(run, complement, style));
}

/* Rolled over its length, a piece has both its mitre and its bevel on the other hand; turned over end for end only the mitre; turned
 * end for end as it lies only the bevel. */
static const char *swing_words(sb_run *run, const sb_saw *saw, sb_cut_end end, const sb_style *style) {
    sb_reach reach = sb_saw_swings(saw, end.mitre);
    if (reach == SB_REACHES)
        return "";
    if (reach == SB_REACHES_NOT)
        return past_the_swing(run, saw, end.mitre, style);
    return sb_pool_print(
        run->pool, "the saw swings this far to the %s only: for the other hand, %s",
        reach == SB_REACHES_LEFT_ONLY ? "left" : "right",
        end.bevel.udeg == 0
            ? "lay the piece other face down"
            : "lay the piece other face down and its other end first, which leaves the tilt as it is");
}

static const char *tilt_words(sb_run *run, const sb_saw *saw, sb_cut_end end) {
    sb_reach reach = sb_saw_tilts(saw, end.bevel);
    if (reach == SB_REACHES)
        return "";
    if (reach == SB_REACHES_NOT)
        return "the blade does not tilt this far: cut by hand or on another saw";
    return sb_pool_print(
        run->pool,
        "the blade tilts this far to the %s only: for the other hand, turn the piece end for "
        "end, same face down%s",
        reach == SB_REACHES_LEFT_ONLY ? "left" : "right",
        end.mitre.udeg == 0 ? "" : ", which leaves the swing as it is");
}

/* ---- width --------------------------------------------------------------------------------------------------- */

static const char *other_hand(sb_cut_end end) {
    if (end.mitre.udeg == 0)
        return end.bevel.udeg == 0 ? "" : ", tilt to the same number on the other side";
    return end.bevel.udeg == 0 ? ", swing to the same number on the other side"
                               : ", swing and tilt to the same numbers on the other side";
}

/* Rolled over, the same end still lies to the blade, and both cuts meet in the middle. */
static const char *width_words(sb_run *run, const sb_saw *saw, sb_cut_end end, sb_length width,
                               const sb_style *style) {
    sb_length widest = sb_saw_widest(saw, end.mitre, end.bevel);
    if (widest.nm == 0 || width.nm <= widest.nm ||
        sb_saw_way(saw, end.mitre, end.bevel, (sb_length){0}) != SB_WAY_PLAIN)
        return "";
    const char *past =
        sb_pool_print(run->pool, "the piece is %s wide, and the saw cuts %s at this setting",
                      sb_write_length_unit(run, width, style), sb_write_length_unit(run, widest, style));
    if (sb_saw_way(saw, end.mitre, end.bevel, width) == SB_WAY_BY_HAND)
        return sb_pool_print(run->pool, "%s: cut or finish it by hand, the piece clamped", past);
    return sb_pool_print(run->pool,
                         "%s: cut as far as it goes, let the blade stop, roll the piece over its length%s, "
                         "clamp it, and cut to meet the first cut; or finish by hand",
                         past, other_hand(end));
}

const char *cuts_reach(sb_run *run, const sb_saw *saw, sb_cut_end end, sb_length width,
                       const sb_style *style) {
    const char *const words[] = {swing_words(run, saw, end, style), tilt_words(run, saw, end),
                                 width_words(run, saw, end, width, style)};
    const char *all = "";
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (*words[i])
            all = *all ? sb_pool_print(run->pool, "%s; %s", all, words[i]) : words[i];
    return all;
}

/* ---- which cuts ---------------------------------------------------------------------------------------------- */

/* Parts that want the same words share a line. */
typedef struct limit_line {
    const char *words, *parts;
    int64_t hard; /* cuts past the limits; the others only want the piece laid otherwise */
} limit_line;
typedef SB_LIST(limit_line) limit_lines;

static void add_line(const cuts_paper *p, limit_lines *lines, const char *words, const char *part,
                     int64_t hard) {
    size_t i = 0;
    if (!*words)
        return;
    while (i < lines->count && strcmp(lines->items[i].words, words) != 0)
        i++;
    if (i == lines->count)
        SB_PUSH(p->run->pool, *lines, ((limit_line){words, "", 0}));
    limit_line *line = &lines->items[i];
    line->parts = *line->parts ? sb_pool_print(p->run->pool, "%s; %s", line->parts, part) : part;
    line->hard += hard;
}

static void put_line(const cuts_paper *p, sb_sheet *sheet, const limit_line *line) {
    const char *count =
        line->hard == 0 ? "" : sb_pool_print(p->run->pool, " (hard cuts: %lld)", (long long)line->hard);
    sb_paragraph_add(p->run, sheet, sb_pool_print(p->run->pool, "%s%s: %s.", line->parts, count, line->words),
                     false);
}

static const char *reach_of(const cuts_paper *p, sb_cut_end end, sb_length width) {
    return cuts_reach(p->run, &p->shop->settings.crosscut, end, width, p->style);
}

/* Both ends of a part; where they want different words, both. */
static const char *ends_reach(const cuts_paper *p, sb_cut_end end1, sb_cut_end end2, sb_length width) {
    const char *first = cuts_end_square(end1) ? "" : reach_of(p, end1, width);
    const char *second = cuts_end_square(end2) ? "" : reach_of(p, end2, width);
    if (!*first || !*second || strcmp(first, second) == 0)
        return *first ? first : second;
    return sb_pool_print(p->run->pool, "front end: %s; rear end: %s", first, second);
}

static int64_t hard_cuts(const sb_hard_cuts *cuts, size_t need, bool square) {
    for (size_t i = 0; i < cuts->count; i++)
        if (cuts->items[i].need == need && !cuts->items[i].part && cuts->items[i].square == square)
            return cuts->items[i].count;
    return 0;
}

static void add_need(const cuts_paper *p, limit_lines *lines, const sb_hard_cuts *cuts, size_t index) {
    const sb_need *need = &p->problem->needs.items[index];
    sb_length wide = cuts_stock(p, index)->width, width = cuts_is_strip(p, index) ? need->width : wide;
    int64_t squares = hard_cuts(cuts, index, true);
    if (squares > 0)
        add_line(p, lines, reach_of(p, (sb_cut_end){{0}, {0}}, wide), "all square cuts", squares);
    add_line(p, lines, ends_reach(p, need->end1, need->end2, width),
             sb_pool_print(p->run->pool, "%s, %s", cuts_length(p, need->length), cuts_name(p, index)),
             hard_cuts(cuts, index, false));
}

void cuts_stock_limits(const cuts_paper *p, sb_sheet *sheet, size_t stock) {
    limit_lines lines = {0};
    if (!p->shop)
        return;
    sb_hard_cuts cuts = sb_hard_cuts_of(p->run, p->shop, p->takeoff, p->plan);
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (p->problem->needs.items[i].stock == stock)
            add_need(p, &lines, &cuts, i);
    for (size_t i = 0; i < lines.count; i++)
        put_line(p, sheet, &lines.items[i]);
}

const char *cuts_later_limits(const cuts_paper *p, const sb_part *part) {
    const char *words = ends_reach(p, part->end1, part->end2, part->width);
    sb_hard_cuts cuts = sb_hard_cuts_of(p->run, p->shop, p->takeoff, p->plan);
    for (size_t i = 0; i < cuts.count; i++)
        if (cuts.items[i].part == part)
            return sb_pool_print(p->run->pool, "hard cuts: %lld; %s", (long long)cuts.items[i].count, words);
    return words;
}
