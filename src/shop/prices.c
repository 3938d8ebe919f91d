/* Reads prices.csv: who sells what, in which length, size or pack, and at what price. */
#include "shop/read.h"

#include <string.h>

enum {
    STOCK,
    MERCHANT,
    LENGTH,
    WIDTH,
    PRICE,
    PER,
    PACK,
    AVAILABLE,
    DATE,
    TRIM1,
    TRIM2,
    LEAST,
    MOST,
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {
    {"stock", true},  {"merchant", true}, {"length", true},     {"width", false}, {"price", true},
    {"per", true},    {"pack", false},    {"available", false}, {"date", false},  {"trim1", false},
    {"trim2", false}, {"least", false},   {"most", false}};

/* ---- price ---- */

static void read_price(shop_row row, sb_offer *offer) {
    if (!shop_need(row, PRICE) || !sb_read_micro(row.run, shop_text(row, PRICE), shop_at(row, PRICE),
                                                 row.csv->decimal_comma, &offer->price.micro))
        return;
    if (offer->price.micro <= 0)
        sb_error(row.run, shop_at(row, PRICE), "expected a price above zero");
}

static void read_per(shop_row row, const sb_stock *stock, sb_offer *offer) {
    const char *word = shop_text(row, PER);
    if (!shop_need(row, PER))
        return;
    if (!sb_per_find(word, &offer->price.per))
        shop_unknown_per(row.run, shop_at(row, PER), word, stock->kind);
    else if (!shop_per_fits(offer->price.per, stock->kind))
        sb_error(row.run, shop_at(row, PER), "%s stock is not sold per %s: expected %s",
                 sb_stock_kind_word(stock->kind), word, shop_per_words(row.run, stock->kind));
}

/* ---- size and pack, as the kind has them ---- */

static void read_board(shop_row row, sb_offer *offer) {
    shop_length(row, LENGTH, SHOP_NEEDED, &offer->length);
    shop_refuse(row, WIDTH, "a board's width stands in stock.csv");
    shop_refuse(row, PACK, "boards are bought one by one");
}

static void read_sheet(shop_row row, const sb_stock *stock, sb_offer *offer) {
    offer->width = stock->width;
    shop_length(row, LENGTH, SHOP_NEEDED, &offer->length);
    shop_length(row, WIDTH, stock->width.nm > 0 ? SHOP_OPTIONAL : SHOP_NEEDED, &offer->width);
    shop_refuse(row, PACK, "sheets are bought one by one");
}

static void read_volume(shop_row row) {
    static const char why[] = "timber sold by volume comes in random widths and lengths";
    shop_refuse(row, LENGTH, why);
    shop_refuse(row, WIDTH, why);
    shop_refuse(row, PACK, why);
}

static void read_pack(shop_row row, const sb_stock *stock, sb_offer *offer, sb_ratio *pack) {
    shop_refuse(row, LENGTH, "it is for boards and sheets");
    shop_refuse(row, WIDTH, "it is for boards and sheets");
    if (sb_stock_kind_unit(stock->kind)[0] == '\0' || shop_need(row, PACK))
        shop_exact_amount(row, PACK, stock, pack);
    if (sb_stock_kind_unit(stock->kind)[0] != '\0')
        offer->sold = shop_text(row, PACK);
}

static void read_size(shop_row row, const sb_stock *stock, sb_offer *offer, sb_ratio *pack) {
    *pack = sb_ratio_of(stock->kind == SB_STOCK_VOLUME ? 0 : 1, 1);
    if (stock->kind == SB_STOCK_BOARD)
        read_board(row, offer);
    else if (stock->kind == SB_STOCK_SHEET)
        read_sheet(row, stock, offer);
    else if (stock->kind == SB_STOCK_VOLUME)
        read_volume(row);
    else
        read_pack(row, stock, offer, pack);
    offer->pack = sb_ratio_whole_down(*pack, 1);
}

/* ---- terms ---- */

static void read_trim(shop_row row, size_t column, const sb_stock *stock, const sb_settings *settings,
                      sb_length *out) {
    const sb_saw *saw = stock->kind == SB_STOCK_SHEET ? &settings->panel : &settings->crosscut;
    out->nm = SB_BAD;
    if (stock->kind != SB_STOCK_BOARD && stock->kind != SB_STOCK_SHEET)
        shop_refuse(row, column, "only boards and sheets are trued");
    else if (shop_given(row, column) &&
             sb_read_length(row.run, shop_text(row, column), shop_at(row, column), row.csv->decimal_comma,
                            out) &&
             out->nm != 0 && out->nm < saw->kerf.nm)
        sb_error(row.run, shop_at(row, column),
                 "truing costs at least the blade's width: expected 0 or at least %s",
                 shop_exactly(row.run, saw->kerf, &settings->style));
}

static void read_terms(shop_row row, const sb_stock *stock, const sb_settings *settings, sb_offer *offer) {
    offer->available = -1;
    shop_count(row, AVAILABLE, 0, &offer->available);
    if (shop_given(row, DATE))
        sb_read_date(row.run, shop_text(row, DATE), shop_at(row, DATE), &offer->date);
    read_trim(row, TRIM1, stock, settings, &offer->trim1);
    read_trim(row, TRIM2, stock, settings, &offer->trim2);
}

/* ---- what one costs ---- */

static void find_each(shop_row row, const sb_stock *stock, sb_ratio pack, int digits, sb_offer *offer) {
    offer->each = shop_offer_each(stock, offer, pack, digits);
    if (offer->each.milli <= 0)
        sb_error(row.run, shop_at(row, PRICE),
                 offer->each.milli == SB_BAD ? "this price is out of range" : "this price comes to nothing");
}

/* An end of the range, in the unit of the price; one that is not told is the price itself. */
static sb_cost each_at(shop_row row, size_t column, const sb_stock *stock, sb_ratio pack, int digits,
                       const sb_offer *offer) {
    sb_offer end = *offer;
    if (!shop_given(row, column))
        return offer->each;
    if (!sb_read_micro(row.run, shop_text(row, column), shop_at(row, column), row.csv->decimal_comma,
                       &end.price.micro))
        return offer->each;
    if (column == LEAST ? end.price.micro < 0 || end.price.micro > offer->price.micro
                        : end.price.micro < offer->price.micro)
        sb_error(row.run, shop_at(row, column),
                 "the %s price lies %s the likely one: expected %s what stands under `price`",
                 column == LEAST ? "least" : "most", column == LEAST ? "below" : "above",
                 column == LEAST ? "from 0 to" : "at least");
    sb_cost each = shop_offer_each(stock, &end, pack, digits);
    if (each.milli == SB_BAD)
        sb_error(row.run, shop_at(row, column), "this price is out of range");
    return each;
}

static void find_range(shop_row row, const sb_stock *stock, sb_ratio pack, int digits, sb_offer *offer) {
    offer->least = each_at(row, LEAST, stock, pack, digits, offer);
    offer->most = each_at(row, MOST, stock, pack, digits, offer);
    offer->ranged = offer->least.milli < offer->most.milli;
}

static bool same_offer(const sb_offer *a, const sb_offer *b) {
    return strcmp(a->merchant, b->merchant) == 0 && a->length.nm == b->length.nm &&
           a->width.nm == b->width.nm && a->pack == b->pack;
}

/* The same at the same merchant's, both without limit: one of the two can never be bought. */
static void check_twice(shop_row row, const sb_stock *stock, const sb_offer *offer) {
    for (size_t i = 0; i < stock->offers.count && shop_sound(row); i++) {
        const sb_offer *other = &stock->offers.items[i];
        if (same_offer(other, offer) && other->available < 0 && offer->available < 0)
            shop_twice(row.run, row.csv->rows[row.index], "the offer of", stock->id, other->place);
    }
}

/* ---- one row ---- */

static sb_stock *find_stock(shop_reader *reader, shop_row row) {
    const char *id = shop_text(row, STOCK);
    bool given = shop_need(row, STOCK);
    for (size_t i = 0; given && i < reader->shop->stock.count; i++)
        if (strcmp(reader->shop->stock.items[i]->id, id) == 0)
            return reader->shop->stock.items[i];
    reader->offer_lost = true;
    if (given && reader->stock_known)
        sb_shop_unknown_stock(row.run, reader->shop, shop_at(row, STOCK), id);
    return NULL;
}

static void read_of_stock(shop_reader *reader, shop_row row, sb_stock *stock, sb_offer offer) {
    const sb_settings *settings = &reader->shop->settings;
    sb_ratio pack;
    read_per(row, stock, &offer);
    read_size(row, stock, &offer, &pack);
    read_terms(row, stock, settings, &offer);
    if (shop_sound(row))
        find_each(row, stock, pack, settings->currency.digits, &offer);
    if (shop_sound(row))
        find_range(row, stock, pack, settings->currency.digits, &offer);
    check_twice(row, stock, &offer);
    if (shop_sound(row))
        SB_PUSH(row.run->pool, stock->offers, offer);
    else
        SB_PUSH(row.run->pool, reader->mispriced, stock);
}

/* Of a stock that could not be read only the columns that need no stock are checked. */
static void read_offer(shop_reader *reader, shop_row row) {
    sb_offer offer = {.merchant = shop_text(row, MERCHANT), .sold = "", .place = row.csv->rows[row.index]};
    sb_stock *stock = find_stock(reader, row);
    shop_need(row, MERCHANT);
    read_price(row, &offer);
    if (stock && !shop_among(&reader->doubtful, stock))
        read_of_stock(reader, row, stock, offer);
}

static void check_sold(const shop_reader *reader) {
    for (size_t i = 0; i < reader->shop->stock.count; i++) {
        const sb_stock *stock = reader->shop->stock.items[i];
        if (stock->offers.count == 0 && !shop_among(&reader->doubtful, stock) &&
            !shop_among(&reader->mispriced, stock))
            sb_error(reader->run, stock->place, "nobody sells %s: expected a row for it in prices.csv",
                     stock->id);
    }
}

void shop_read_prices(shop_reader *reader, const char *path) {
    if (shop_each_row(reader, path, columns, COLUMN_COUNT, read_offer) && !reader->offer_lost)
        check_sold(reader);
}
