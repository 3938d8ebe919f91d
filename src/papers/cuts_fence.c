/* Cuts of a sheet that are made with one setting of the fence. */
#include "papers/cuts_sheets.h"

sb_length fence_of(const sb_sheet_cut *cut) {
    return sb_length_sub(cut->at, cut->across_width ? cut->divides.y : cut->divides.x);
}

/* The cut behind `before` divides what that one left. */
static bool divides_rest(const sb_sheet_cut *before, const sb_sheet_cut *cut) {
    sb_rect a = before->divides, b = cut->divides;
    if (before->across_width)
        return a.x.nm == b.x.nm && a.w.nm == b.w.nm && b.y.nm > before->at.nm &&
               a.y.nm + a.l.nm == b.y.nm + b.l.nm;
    return a.y.nm == b.y.nm && a.l.nm == b.l.nm && b.x.nm > before->at.nm &&
           a.x.nm + a.w.nm == b.x.nm + b.w.nm;
}

bool fence_goes_on(const sb_sheet_cut *before, const sb_sheet_cut *cut) {
    return before->across_width == cut->across_width && before->stage == cut->stage &&
           divides_rest(before, cut);
}

static bool again(const sb_sheet_cut *before, const sb_sheet_cut *cut) {
    return fence_goes_on(before, cut) && (cut->stage == 0 || fence_of(before).nm == fence_of(cut).nm);
}

static size_t times_from(const sb_sheet_plan *plan, size_t first) {
    size_t times = 1;
    while (first + times < plan->cuts.count &&
           again(&plan->cuts.items[first + times - 1], &plan->cuts.items[first + times]))
        times++;
    return times;
}

static bool same_work(const sb_sheet_cut *a, const sb_sheet_cut *b) {
    return a->stage > 0 && a->stage == b->stage && a->across_width == b->across_width &&
           fence_of(a).nm == fence_of(b).nm && a->divides.w.nm == b->divides.w.nm &&
           a->divides.l.nm == b->divides.l.nm;
}

fence_setting fence_setting_from(const sb_sheet_plan *plan, size_t first) {
    fence_setting s = {first, times_from(plan, first), 1};
    for (size_t next = first + s.times; next < plan->cuts.count; next += s.times, s.pieces++)
        if (!same_work(&plan->cuts.items[first], &plan->cuts.items[next]) ||
            times_from(plan, next) != s.times)
            break;
    return s;
}
