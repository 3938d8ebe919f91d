/* Timber by volume: one lot of each merchant, measured in thousandths of the unit it is priced by, rounded up. */
#include "takeoff/inside.h"

static const int64_t NL_PER_M3 = 1000000000000;
static const int64_t NL_PER_BOARD_FOOT = 2359737216; /* 144 cubic inches, exactly */

/* Board feet go by nominal thickness: a board foot holds less than its name when the board is thinner. */
static int64_t unit_of(const sb_stock *stock, const sb_offer *offer) {
    if (offer->price.per != SB_PER_BF)
        return NL_PER_M3;
    if (stock->nominal_thickness.nm == 0)
        return NL_PER_BOARD_FOOT;
    return sb_mul_div(NL_PER_BOARD_FOOT, stock->thickness.nm, stock->nominal_thickness.nm);
}

/* The offer of which a litre costs least, leaving out those marked. */
static size_t cheapest(const sb_stock *stock, const bool *spent) {
    size_t best = stock->offers.count;
    sb_ratio best_rate = {0, 1};
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        sb_ratio rate = sb_ratio_of(offer->each.milli, unit_of(stock, offer));
        if (spent[i] || (best < stock->offers.count && sb_ratio_compare(rate, best_rate) >= 0))
            continue;
        best = i, best_rate = rate;
    }
    return best;
}

/* Buys as much as the offer has; returns what is still open. */
static int64_t buy_lot(takeoff_ordering *o, const sb_stock *stock, const sb_offer *offer, int64_t open) {
    int64_t unit = unit_of(stock, offer), lot = open;
    if (offer->available >= 0 && sb_mul(offer->available, unit) < lot)
        lot = sb_mul(offer->available, unit);
    int64_t milli = sb_mul_div_up(lot, 1000, unit);
    sb_order_line line = {.stock = stock, .offer = offer, .count = 1, .needed = lot};
    line.each.milli = sb_mul_div(offer->each.milli, milli, 1000);
    if (lot > 0)
        takeoff_buy(o, line);
    return sb_sub(open, lot);
}

void takeoff_order_volume(takeoff_ordering *o, const sb_stock *stock) {
    sb_place at = {0};
    int64_t open = takeoff_needed(o, stock, &at);
    bool *spent = SB_NEW_ARRAY(o->run->pool, bool, stock->offers.count + 1);
    while (open > 0) {
        size_t index = cheapest(stock, spent);
        if (index == stock->offers.count) {
            sb_error(o->run, at, "nobody sells enough of %s", stock->id);
            return;
        }
        spent[index] = true;
        open = buy_lot(o, stock, &stock->offers.items[index], open);
    }
}
