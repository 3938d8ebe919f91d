/* Stock in packs, tins, bottles and rolls: first what the rack holds, then the cheapest packs for the rest. */
#include "takeoff/inside.h"

/* ---- packs ------------------------------------------------------------------------------------------------------- */

static size_t packs_on_offer(const takeoff_ordering *o, const sb_stock *stock, takeoff_pack *packs) {
    size_t count = 0;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        int64_t available = offer->available < 0 ? -1 : sb_sub(offer->available, takeoff_bought(o, offer));
        if (offer->pack > 0 && available != 0)
            packs[count++] = (takeoff_pack){
                .size = offer->pack, .cost = offer->each.milli, .available = available, .index = i};
    }
    return count;
}

static int64_t lesser(int64_t a, int64_t b) {
    return a < b ? a : b;
}

bool takeoff_buy_packs(takeoff_ordering *o, const sb_stock *stock, int64_t amount, bool reorder,
                       int64_t *over) {
    takeoff_pack *packs = SB_NEW_ARRAY(o->run->pool, takeoff_pack, stock->offers.count + 1);
    size_t count = packs_on_offer(o, stock, packs);
    int64_t open = amount;
    if (!takeoff_cheapest_packs(o->run, packs, count, amount))
        return false;
    for (size_t i = 0; i < stock->offers.count; i++)
        for (size_t j = 0; j < count; j++) {
            if (packs[j].index != i || packs[j].count == 0)
                continue;
            int64_t holds = sb_mul(packs[j].count, packs[j].size);
            sb_order_line line = {.stock = stock,
                                  .offer = &stock->offers.items[i],
                                  .count = packs[j].count,
                                  .needed = reorder ? 0 : lesser(open > 0 ? open : 0, holds),
                                  .each = stock->offers.items[i].each,
                                  .reorder = reorder};
            takeoff_buy(o, line);
            open = sb_sub(open, holds);
        }
    *over = -open;
    return true;
}

/* ---- the rack ------------------------------------------------------------------------------------------------------ */

/* What so much costs new, at the lowest price of a unit, whole packs aside; zero when nobody sells it. */
static sb_cost price_new(const sb_stock *stock, int64_t amount) {
    int64_t lowest = SB_BAD;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        if (offer->pack <= 0)
            continue;
        int64_t cost = sb_mul_div(amount, offer->each.milli, offer->pack);
        if (lowest == SB_BAD || cost < lowest)
            lowest = cost;
    }
    return (sb_cost){lowest == SB_BAD ? 0 : lowest};
}

/* Pieces are counted; what is measured out of a tin or off a roll is one lot. */
static void take_from(takeoff_ordering *o, const sb_rack_item *item, int64_t amount) {
    bool pieces = sb_stock_kind_unit(item->stock->kind)[0] == '\0';
    sb_order_line line = {.stock = item->stock, .rack = item, .needed = amount};
    line.count = pieces ? amount : 1;
    line.each = price_new(item->stock, pieces ? 1 : amount);
    if (pieces && item->value.minor != SB_BAD)
        line.each.milli = sb_mul(item->value.minor, 1000);
    takeoff_take(o, line);
}

static int64_t take(takeoff_ordering *o, const sb_stock *stock, int64_t needed) {
    int64_t open = needed;
    for (size_t i = 0; o->rack && i < o->shop->rack.count && open > 0; i++) {
        const sb_rack_item *item = &o->shop->rack.items[i];
        if (item->stock != stock || item->count <= 0)
            continue;
        int64_t amount = lesser(open, item->count);
        take_from(o, item, amount);
        open = sb_sub(open, amount);
    }
    return sb_sub(needed, open);
}

/* ---- both ------------------------------------------------------------------------------------------------------------- */

static void tell_short(const takeoff_ordering *o, const sb_stock *stock, int64_t amount, sb_place at) {
    sb_error(o->run, at, "nobody sells enough of %s: %s is needed, and the merchants have less", stock->id,
             takeoff_amount_text(o, stock, amount));
}

int64_t takeoff_order_packed(takeoff_ordering *o, const sb_stock *stock) {
    sb_place at = {0};
    int64_t needed = takeoff_needed(o, stock, &at), over = 0;
    int64_t taken = take(o, stock, needed), open = sb_sub(needed, taken);
    if (open > 0 && !takeoff_buy_packs(o, stock, open, false, &over))
        tell_short(o, stock, open, at);
    return sb_add(sb_sub(takeoff_held(o, stock), taken), over);
}
