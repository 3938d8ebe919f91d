/* Spare for defects: knots and splits fall anywhere, so the spare length of a grade is planned as further needs,
 * each as long as the longest part of its stock, which is where a bad board would hurt. What remains is made up to the
 * next longer part: a spare that is shorter than every part it could replace is of no use, and one of an odd length
 * takes a stop of its own. */
#include "takeoff/inside.h"

static sb_length longest_part(const sb_takeoff *takeoff, const sb_stock *stock) {
    sb_length longest = {0};
    for (size_t i = 0; i < takeoff->parts.count; i++) {
        const sb_part *part = &takeoff->parts.items[i];
        if (part->stock == stock && part->cut_length.nm > longest.nm)
            longest = part->cut_length;
    }
    return longest;
}

/* The shortest part that is not shorter than `length`; the longest part never is. */
static sb_length next_part(const sb_takeoff *takeoff, const sb_stock *stock, sb_length length,
                           sb_length longest) {
    sb_length next = longest;
    for (size_t i = 0; i < takeoff->parts.count; i++) {
        const sb_part *part = &takeoff->parts.items[i];
        if (part->stock == stock && part->cut_length.nm >= length.nm && part->cut_length.nm < next.nm)
            next = part->cut_length;
    }
    return next;
}

static void add(sb_run *run, sb_cutlist *list, const sb_takeoff *takeoff, const sb_stock_total *total,
                size_t index, sb_length length, int64_t count) {
    if (count <= 0)
        return;
    sb_need need = {.name = "spare",
                    .stock = index,
                    .length = length,
                    .count = count,
                    .spare = true,
                    .tag = list->needs.count,
                    .place = total->stock->place};
    struct sb_need_source source = {takeoff, NULL};
    SB_PUSH(run->pool, list->needs, source);
    SB_PUSH(run->pool, list->problem.needs, need);
}

void takeoff_spare_needs(sb_run *run, sb_cutlist *list, const sb_takeoff *takeoff,
                         const sb_stock_total *total, sb_length spare, size_t index) {
    if (spare.nm <= 0)
        return;
    sb_length longest = longest_part(takeoff, total->stock);
    sb_length rest = {spare.nm % longest.nm};
    int64_t whole = spare.nm / longest.nm;
    sb_length last = next_part(takeoff, total->stock, rest, longest);
    bool like_whole = rest.nm > 0 && last.nm == longest.nm;
    add(run, list, takeoff, total, index, longest, whole + like_whole);
    add(run, list, takeoff, total, index, last, rest.nm > 0 && !like_whole);
}
