/* What leftovers and the rack are worth, and that nothing at hand is worth more than it costs new: else a
 * plan could earn money by buying boards and cutting nothing. */
#include "shop/read.h"

#define UM2_PER_M2 INT64_C(1000000000000)
#define NM_PER_M   INT64_C(1000000000)
#define WHOLE_PPM  1000000

/* The lowest price of a metre, a square metre or a piece of this stock, rounded down; SB_BAD when nobody
 * sells it. */
static int64_t lowest_rate(const sb_stock *stock) {
    int64_t lowest = SB_BAD;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        int64_t rate = offer->each.milli;
        if (stock->kind == SB_STOCK_BOARD)
            rate = sb_mul_div_down(rate, NM_PER_M, offer->length.nm);
        else if (stock->kind == SB_STOCK_SHEET)
            rate = sb_mul_div_down(rate, UM2_PER_M2, sb_length_area(offer->length, offer->width).um2);
        else
            rate = sb_mul_div_down(rate, 1, offer->pack);
        if (lowest == SB_BAD || rate < lowest)
            lowest = rate;
    }
    return lowest;
}

static int64_t at_rate(int64_t rate, sb_stock_kind kind, sb_length length, sb_length width) {
    if (kind == SB_STOCK_BOARD)
        return sb_mul_div_down(rate, length.nm, NM_PER_M);
    if (kind == SB_STOCK_SHEET)
        return sb_mul_div_down(rate, sb_length_area(length, width).um2, UM2_PER_M2);
    return rate;
}

static bool cut_to_size(sb_stock_kind kind) {
    return kind == SB_STOCK_BOARD || kind == SB_STOCK_SHEET;
}

sb_cost sb_shop_leftover_rate(const sb_shop *shop, const sb_stock *stock) {
    if (!cut_to_size(stock->kind) || stock->offers.count == 0)
        return (sb_cost){0};
    return (sb_cost){sb_mul_div_down(lowest_rate(stock), shop->settings.leftover_value.ppm, WHOLE_PPM)};
}

/* ---- leftovers
 * ------------------------------------------------------------------------------------------------ */

static bool holds(sb_length length, sb_length width, sb_length least_length, sb_length least_width) {
    return length.nm >= least_length.nm && width.nm >= least_width.nm;
}

static bool useful(const sb_settings *settings, sb_stock_kind kind, sb_length length, sb_length width) {
    if (kind == SB_STOCK_BOARD)
        return settings->leftover_length.nm > 0 && length.nm >= settings->leftover_length.nm;
    sb_length least_length = settings->leftover_sheet_length, least_width = settings->leftover_sheet_width;
    return kind == SB_STOCK_SHEET && least_length.nm > 0 && least_width.nm > 0 &&
           (holds(length, width, least_length, least_width) ||
            holds(width, length, least_length, least_width));
}

sb_cost sb_shop_leftover_value(const sb_shop *shop, const sb_stock *stock, sb_length length,
                               sb_length width) {
    if (!useful(&shop->settings, stock->kind, length, width))
        return (sb_cost){0};
    return (sb_cost){at_rate(sb_shop_leftover_rate(shop, stock).milli, stock->kind, length, width)};
}

sb_cost sb_labour_cost(sb_duration time, const sb_worker *worker) {
    /* ms * minor/h = minor * ms / 3 600 000; in thousandths of the minor unit */
    return (sb_cost){sb_mul_div(time.ms, worker->hour.minor, 3600)};
}

/* ---- the rack
 * --------------------------------------------------------------------------------------------------- */

static const char *amount(const shop_reader *reader, int64_t milli) {
    const sb_settings *settings = &reader->shop->settings;
    return sb_write_money(reader->run, sb_cost_money((sb_cost){milli}), settings->currency, &settings->style);
}

static void check_item(const shop_reader *reader, const sb_rack_item *item) {
    int64_t value = sb_mul(item->value.minor, 1000);
    int64_t new_price = at_rate(lowest_rate(item->stock), item->stock->kind, item->length, item->width);
    int64_t credit = sb_shop_leftover_value(reader->shop, item->stock, item->length, item->width).milli;
    if (value > new_price)
        sb_error(reader->run, item->place, "%s cannot be worth %s: the same costs %s new", item->label,
                 amount(reader, value), amount(reader, new_price));
    /* what is credited is rounded down, a value is whole: a minor unit of play */
    else if (sb_add(value, 1000) <= credit)
        sb_error(reader->run, item->place,
                 "%s is worth %s here, but as a leftover a job is credited %s for it: cutting a bit off "
                 "would earn "
                 "money; expected at least that, or no value",
                 item->label, amount(reader, value), amount(reader, credit));
}

void shop_check_worth(shop_reader *reader) {
    for (size_t i = 0; i < reader->shop->rack.count; i++) {
        const sb_rack_item *item = &reader->shop->rack.items[i];
        if (item->value.minor != SB_BAD && !shop_doubtful(reader, item->stock) &&
            item->stock->offers.count > 0)
            check_item(reader, item);
    }
}
