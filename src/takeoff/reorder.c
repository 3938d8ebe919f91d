/* Stock that falls under its minimum once the jobs have taken theirs. Boards and sheets are bought where a metre or
 * square metre costs least; everything else in the cheapest packs. */
#include "takeoff/inside.h"

static sb_ratio rate_of(const sb_stock *stock, const sb_offer *offer) {
    int64_t size =
        stock->kind == SB_STOCK_SHEET ? sb_length_area(offer->length, offer->width).um2 : offer->length.nm;
    return sb_ratio_of(offer->each.milli, size);
}

static bool within_reach(const takeoff_ordering *o, const sb_stock *stock, const sb_offer *offer,
                         int64_t count) {
    sb_length vehicle = o->shop->settings.vehicle;
    bool fits = stock->kind == SB_STOCK_SHEET || vehicle.nm == 0 || offer->length.nm <= vehicle.nm;
    return fits && (offer->available < 0 || sb_sub(offer->available, takeoff_bought(o, offer)) >= count);
}

static bool buy_cut(takeoff_ordering *o, const sb_stock *stock, int64_t count) {
    const sb_offer *best = NULL;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        if (within_reach(o, stock, offer, count) &&
            (!best || sb_ratio_compare(rate_of(stock, offer), rate_of(stock, best)) < 0))
            best = offer;
    }
    if (best)
        takeoff_buy(o,
                    (sb_order_line){
                        .stock = stock, .offer = best, .count = count, .each = best->each, .reorder = true});
    return best != NULL;
}

void takeoff_reorder(takeoff_ordering *o, const sb_stock *stock, int64_t left) {
    int64_t missing = sb_sub(stock->minimum, left > 0 ? left : 0), over;
    bool cut = stock->kind == SB_STOCK_BOARD || stock->kind == SB_STOCK_SHEET;
    if (cut ? buy_cut(o, stock, missing) : takeoff_buy_packs(o, stock, missing, true, &over))
        return;
    sb_advise(o->run, stock->place, "%s falls under its minimum, and nobody sells the %s that are missing",
              stock->id, takeoff_amount_text(o, stock, missing));
}
