/* Panes and rooms in units, and the choice between the two ways to value a sheet. */
#include "cutting/sheet_worth.h"

/* ---- units ---------------------------------------------------------------------------------------- */

static int64_t divisor(int64_t a, int64_t b) {
    while (b != 0) {
        int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}

static int64_t room_of(const sb_sheet_bench *bench, size_t offer, bool along_y) {
    const sb_sheet_offer *on = &bench->offers.items[offer];
    return (along_y ? on->l : on->w) + bench->kerf;
}

int64_t sb_largest_room(const sb_sheet_bench *bench, bool along_y) {
    int64_t most = 1;
    for (size_t o = 0; o < bench->offers.count; o++)
        most = room_of(bench, o, along_y) > most ? room_of(bench, o, along_y) : most;
    return most;
}

int64_t sb_offer_room(const sb_sheet_bench *bench, size_t offer, bool along_y, const int64_t *unit) {
    return room_of(bench, offer, along_y) / unit[along_y];
}

int64_t sb_smallest_size(const sb_sheet_bench *bench, bool along_y) {
    static const int64_t in_nm[2] = {1, 1};
    sb_lying_panes lying = {0};
    int64_t least = INT64_MAX;
    sb_lying_list(bench, in_nm, &lying);
    for (size_t i = 0; i < lying.count; i++) {
        int64_t size = along_y ? lying.items[i].l : lying.items[i].w;
        least = size < least ? size : least;
    }
    return least;
}

int64_t sb_axis_step(const sb_sheet_bench *bench, bool along_y) {
    static const int64_t in_nm[2] = {1, 1};
    sb_lying_panes lying = {0};
    int64_t step = 0;
    sb_lying_list(bench, in_nm, &lying);
    for (size_t i = 0; i < lying.count; i++)
        step = divisor(step, along_y ? lying.items[i].l : lying.items[i].w);
    for (size_t o = 0; o < bench->offers.count; o++)
        step = divisor(step, room_of(bench, o, along_y));
    return step > 0 ? step : 1;
}

void sb_lying_list(const sb_sheet_bench *bench, const int64_t *unit, sb_lying_panes *to) {
    to->count = 0;
    for (size_t i = 0; i < bench->panes.count; i++)
        for (int turned = 0; turned < 2; turned++) {
            const sb_pane *pane = &bench->panes.items[i];
            int64_t w = (sb_pane_w(pane, turned) + bench->kerf) / unit[0];
            int64_t l = (sb_pane_l(pane, turned) + bench->kerf) / unit[1];
            if (turned ? pane->sideways : pane->upright)
                SB_PUSH(bench->run->pool, *to, ((sb_lying_pane){i, turned, w, l}));
        }
}

/* ---- one way or the other ------------------------------------------------------------------------- */

sb_worths *sb_worths_new(const sb_sheet_bench *bench, int64_t fineness) {
    sb_worths *w = SB_NEW(bench->run->pool, sb_worths);
    *w = (sb_worths){.bench = bench, .by_strips = bench->stages <= 3};
    w->upper = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->offers.count);
    w->once = SB_NEW_ARRAY(bench->run->pool, bool, bench->panes.count);
    if (w->by_strips)
        w->strips = sb_strip_worths_new(bench, fineness, w->unit);
    else
        w->any = sb_guillotine_new(bench, fineness, w->unit);
    if (!w->strips && !w->any)
        return NULL;
    return w;
}

void sb_worths_find(sb_worths *w, const int64_t *duals) {
    if (!w->by_strips) {
        sb_guillotine_find(w->any, duals, w->upper);
        return;
    }
    sb_strip_worths_value(w->strips, duals);
    for (size_t o = 0; o < w->bench->offers.count; o++)
        w->upper[o] = sb_strip_worths_of(w->strips, o);
}

bool sb_worths_track(sb_worths *w, size_t pane) {
    if (!w->any || !sb_guillotine_track(w->any, pane))
        return false;
    w->once[pane] = true;
    return true;
}

void sb_worths_best(sb_worths *w, size_t offer, int64_t *made) {
    for (size_t i = 0; i < w->bench->panes.count; i++)
        made[i] = 0;
    if (w->by_strips)
        sb_strip_worths_best(w->strips, offer, made);
    else
        sb_guillotine_best(w->any, offer, made);
}
