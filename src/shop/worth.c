/* What leftovers and the rack are worth, and that nothing at hand is worth more than it costs new: else a
 * plan could earn money by buying boards and cutting nothing. */
#include "shop/read.h"

#define METRE ((sb_length){INT64_C(1000000000)})

static bool cut_to_size(sb_stock_kind kind) {
    return kind == SB_STOCK_BOARD || kind == SB_STOCK_SHEET;
}

/* How much there is of a size: nm of a board, um2 of a sheet, else one piece. */
static int64_t extent(sb_stock_kind kind, sb_length length, sb_length width) {
    if (kind == SB_STOCK_SHEET)
        return sb_length_area(length, width).um2;
    return kind == SB_STOCK_BOARD ? length.nm : 1;
}

/* What this size, or one piece, costs new at the least, in proportion to the offer and rounded down. */
static int64_t lowest_price(const sb_stock *stock, sb_length length, sb_length width) {
    int64_t lowest = SB_BAD;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        int64_t whole = sb_mul(offer->pack, extent(stock->kind, offer->length, offer->width));
        int64_t price = sb_mul_div_down(offer->each.milli, extent(stock->kind, length, width), whole);
        if (lowest == SB_BAD || price < lowest)
            lowest = price;
    }
    return lowest;
}

/* ---- leftovers ---- */

sb_cost sb_shop_leftover_rate(const sb_shop *shop, const sb_stock *stock) {
    if (!cut_to_size(stock->kind) || stock->offers.count == 0)
        return (sb_cost){0};
    return (sb_cost){
        sb_mul_div_down(lowest_price(stock, METRE, METRE), shop->settings.leftover_value.ppm, 1000000)};
}

static bool covers(sb_length length, sb_length width, sb_length least_length, sb_length least_width) {
    return length.nm >= least_length.nm && width.nm >= least_width.nm;
}

static bool useful(const sb_settings *settings, sb_stock_kind kind, sb_length length, sb_length width) {
    sb_length least_length = settings->leftover_sheet_length, least_width = settings->leftover_sheet_width;
    if (kind == SB_STOCK_BOARD)
        return settings->leftover_length.nm > 0 && length.nm >= settings->leftover_length.nm;
    return kind == SB_STOCK_SHEET && least_length.nm > 0 && least_width.nm > 0 &&
           (covers(length, width, least_length, least_width) ||
            covers(width, length, least_length, least_width));
}

sb_cost sb_shop_leftover_value(const sb_shop *shop, const sb_stock *stock, sb_length length,
                               sb_length width) {
    if (!useful(&shop->settings, stock->kind, length, width))
        return (sb_cost){0};
    return (sb_cost){sb_mul_div_down(sb_shop_leftover_rate(shop, stock).milli,
                                     extent(stock->kind, length, width), extent(stock->kind, METRE, METRE))};
}

/* ---- the rack ---- */

static const char *whole_minor(sb_run *run, const sb_shop *shop, int64_t minor) {
    return sb_write_money(run, (sb_money){minor}, shop->settings.currency, &shop->settings.style);
}

void shop_check_worth(sb_run *run, const sb_shop *shop, sb_place at, const sb_rack_item *item) {
    int64_t value = sb_mul(item->value.minor, 1000);
    int64_t highest = lowest_price(item->stock, item->length, item->width);
    int64_t credit = sb_shop_leftover_value(shop, item->stock, item->length, item->width).milli;
    if (value > highest)
        sb_error(run, at, "%s cannot be worth %s: that much of it costs %s new", item->label,
                 whole_minor(run, shop, item->value.minor),
                 whole_minor(run, shop, sb_mul_div_down(highest, 1, 1000)));
    else if (value < credit)
        sb_error(run, at,
                 "%s cannot be worth %s: a leftover of its size is credited %s, so cutting a bit off would "
                 "earn money",
                 item->label, whole_minor(run, shop, item->value.minor),
                 whole_minor(run, shop, sb_mul_div_up(credit, 1, 1000)));
}

/* ---- labour ---- */

sb_cost sb_labour_cost(sb_duration time, const sb_worker *worker) {
    /* ms * minor/h = minor * ms / 3 600 000; in thousandths of the minor unit */
    return (sb_cost){sb_mul_div(time.ms, worker->hour.minor, 3600)};
}
