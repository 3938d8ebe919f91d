/* What to buy, of whom, and what to take from the rack: boards and sheets as the plan has them, everything else in
 * the cheapest packs. */
#include "takeoff/inside.h"

#include <string.h>

/* ---- lines ---------------------------------------------------------------------------------------------------- */

static sb_order_line priced(sb_order_line line) {
    line.amount = sb_cost_money((sb_cost){sb_mul(line.each.milli, line.count)});
    return line;
}

void takeoff_buy(takeoff_ordering *o, sb_order_line line) {
    line.merchant = line.offer->merchant;
    line = priced(line);
    o->order->total = sb_money_add(o->order->total, line.amount);
    SB_PUSH(o->run->pool, o->order->lines, line);
}

void takeoff_take(takeoff_ordering *o, sb_order_line line) {
    line.merchant = "";
    SB_PUSH(o->run->pool, o->from_rack, priced(line));
}

/* By merchant, and as they came within one: insertion keeps that order. */
static void sort_by_merchant(sb_order *order) {
    for (size_t i = 1; i < order->lines.count; i++) {
        sb_order_line line = order->lines.items[i];
        size_t j = i;
        for (; j > 0 && strcmp(order->lines.items[j - 1].merchant, line.merchant) > 0; j--)
            order->lines.items[j] = order->lines.items[j - 1];
        order->lines.items[j] = line;
    }
}

/* ---- asking ------------------------------------------------------------------------------------------------------ */

int64_t takeoff_needed(const takeoff_ordering *o, const sb_stock *stock, sb_place *first) {
    int64_t needed = 0;
    for (size_t i = 0; i < o->count; i++)
        for (size_t j = 0; j < o->takeoffs[i]->usages.count; j++) {
            const sb_usage *usage = &o->takeoffs[i]->usages.items[j];
            if (usage->stock != stock)
                continue;
            if (needed == 0)
                *first = usage->place;
            needed = sb_add(needed, usage->amount);
        }
    return needed;
}

int64_t takeoff_held(const takeoff_ordering *o, const sb_stock *stock) {
    int64_t held = 0;
    for (size_t i = 0; i < o->shop->rack.count; i++)
        if (o->shop->rack.items[i].stock == stock)
            held = sb_add(held, o->shop->rack.items[i].count);
    return held;
}

int64_t takeoff_bought(const takeoff_ordering *o, const sb_offer *offer) {
    int64_t count = 0;
    for (size_t i = 0; i < o->order->lines.count; i++)
        if (o->order->lines.items[i].offer == offer)
            count = sb_add(count, o->order->lines.items[i].count);
    return count;
}

const char *takeoff_amount_text(const takeoff_ordering *o, const sb_stock *stock, int64_t amount) {
    return sb_stock_amount_text(o->run, stock, amount, &o->shop->settings.style);
}

/* ---- all of it ------------------------------------------------------------------------------------------------------ */

static int64_t order_one(takeoff_ordering *o, const sb_stock *stock) {
    switch (stock->kind) {
    case SB_STOCK_BOARD:
    case SB_STOCK_SHEET:
        return takeoff_order_cut(o, stock);
    case SB_STOCK_VOLUME:
        takeoff_order_volume(o, stock);
        return 0;
    default:
        return takeoff_order_packed(o, stock);
    }
}

const sb_order *sb_order_of(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs, size_t count,
                            const sb_cutlist *cutlist, const sb_plan *plan, bool reorder) {
    takeoff_ordering o = {.run = run,
                          .shop = shop,
                          .takeoffs = takeoffs,
                          .count = count,
                          .cutlist = cutlist,
                          .plan = plan,
                          .rack = takeoff_rack_used(takeoffs, count),
                          .order = SB_NEW(run->pool, sb_order)};
    for (size_t i = 0; i < shop->stock.count; i++) {
        const sb_stock *stock = shop->stock.items[i];
        int64_t left = order_one(&o, stock);
        if (reorder && stock->minimum > 0 && left < stock->minimum)
            takeoff_reorder(&o, stock, left);
    }
    sort_by_merchant(o.order);
    for (size_t i = 0; i < o.from_rack.count; i++)
        SB_PUSH(run->pool, o.order->lines, o.from_rack.items[i]);
    return o.order;
}
