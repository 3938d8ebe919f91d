/* Boards and sheets: as many of each offer, and of each piece in the rack, as the plan cuts. */
#include "takeoff/inside.h"

static int64_t planned(const takeoff_ordering *o, size_t supply) {
    int64_t count = 0;
    for (size_t i = 0; i < o->plan->boards.count; i++)
        if (o->plan->boards.items[i].supply == supply)
            count = sb_add(count, o->plan->boards.items[i].count);
    for (size_t i = 0; i < o->plan->sheets.count; i++)
        if (o->plan->sheets.items[i].supply == supply)
            count = sb_add(count, o->plan->sheets.items[i].count);
    return count;
}

int64_t takeoff_order_cut(takeoff_ordering *o, const sb_stock *stock) {
    int64_t left = takeoff_held(o, stock);
    for (size_t i = 0; o->plan && o->cutlist && i < o->cutlist->problem.supplies.count; i++) {
        const sb_supply *supply = &o->cutlist->problem.supplies.items[i];
        const struct sb_supply_source *source = &o->cutlist->supplies.items[supply->tag];
        int64_t count = source->stock == stock ? planned(o, i) : 0;
        sb_order_line line = {.stock = stock,
                              .offer = source->offer,
                              .rack = source->rack,
                              .count = count,
                              .needed = count,
                              .each = supply->price};
        if (count == 0)
            continue;
        if (source->offer) {
            takeoff_buy(o, line);
        } else {
            takeoff_take(o, line);
            left = sb_sub(left, count);
        }
    }
    return left;
}
