/* Spare for defects: knots and splits fall anywhere, so the spare length of a grade is planned as further needs,
 * each as long as the longest part of its stock, which is where a bad board would hurt. */
#include "takeoff/inside.h"

typedef struct span {
    sb_length shortest, longest;
} span;

static span span_of(const sb_takeoff *takeoff, const sb_stock *stock) {
    span s = {{0}, {0}};
    for (size_t i = 0; i < takeoff->parts.count; i++) {
        const sb_part *part = &takeoff->parts.items[i];
        if (part->stock != stock)
            continue;
        if (s.shortest.nm == 0 || part->cut_length.nm < s.shortest.nm)
            s.shortest = part->cut_length;
        if (part->cut_length.nm > s.longest.nm)
            s.longest = part->cut_length;
    }
    return s;
}

static void add(sb_run *run, sb_cutlist *list, const sb_takeoff *takeoff, const sb_stock_total *total,
                size_t index, sb_length length, int64_t count) {
    if (count <= 0)
        return;
    sb_need need = {.name = "spare",
                    .stock = index,
                    .length = length,
                    .count = count,
                    .tag = list->needs.count,
                    .place = total->stock->place};
    struct sb_need_source source = {takeoff, NULL};
    SB_PUSH(run->pool, list->needs, source);
    SB_PUSH(run->pool, list->problem.needs, need);
}

void takeoff_spare_needs(sb_run *run, sb_cutlist *list, const sb_takeoff *takeoff,
                         const sb_stock_total *total, size_t index) {
    if (total->spare_length.nm <= 0)
        return;
    span s = span_of(takeoff, total->stock);
    int64_t whole = total->spare_length.nm / s.longest.nm;
    sb_length rest = {total->spare_length.nm % s.longest.nm};
    add(run, list, takeoff, total, index, s.longest, whole);
    if (rest.nm > 0)
        add(run, list, takeoff, total, index, rest.nm < s.shortest.nm ? s.shortest : rest, 1);
}
