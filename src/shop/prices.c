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
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {
    {"stock", true}, {"merchant", true},   {"length", true}, {"width", false}, {"price", true}, {"per", true},
    {"pack", false}, {"available", false}, {"date", false},  {"trim1", false}, {"trim2", false}};

/* ---- price ---- */

static bool read_price(shop_row row, sb_offer *offer) {
    if (!shop_need(row, PRICE) || !sb_read_micro(row.run, shop_text(row, PRICE), shop_at(row, PRICE),
                                                 row.csv->decimal_comma, &offer->price.micro))
        return false;
    if (offer->price.micro > 0)
        return true;
    sb_error(row.run, shop_at(row, PRICE), "expected a price above zero");
    return false;
}

static bool read_per(shop_row row, const sb_stock *stock, sb_offer *offer) {
    const char *word = shop_text(row, PER);
    if (!shop_need(row, PER))
        return false;
    if (!sb_per_find(word, &offer->price.per)) {
        shop_unknown_per(row.run, shop_at(row, PER), word, stock->kind);
        return false;
    }
    if (shop_per_fits(offer->price.per, stock->kind))
        return true;
    sb_error(row.run, shop_at(row, PER), "%s stock is not sold per %s: expected %s",
             sb_stock_kind_word(stock->kind), word, shop_per_words(row.run, stock->kind));
    return false;
}

/* ---- size and pack, as the kind has them ---- */

static bool read_board(shop_row row, sb_offer *offer) {
    offer->pack = 1;
    return shop_length(row, LENGTH, SHOP_NEEDED, &offer->length) &
           shop_refuse(row, WIDTH, "a board's width stands in stock.csv") &
           shop_refuse(row, PACK, "boards are bought one by one");
}

static bool read_sheet(shop_row row, const sb_stock *stock, sb_offer *offer) {
    offer->pack = 1;
    offer->width = stock->width;
    return shop_length(row, LENGTH, SHOP_NEEDED, &offer->length) &
           shop_length(row, WIDTH, stock->width.nm > 0 ? SHOP_OPTIONAL : SHOP_NEEDED, &offer->width) &
           shop_refuse(row, PACK, "sheets are bought one by one");
}

static bool read_pack(shop_row row, const sb_stock *stock, sb_offer *offer, sb_ratio *pack) {
    bool pieces = sb_stock_kind_unit(stock->kind)[0] == '\0';
    if (!shop_refuse(row, LENGTH, "it is for boards and sheets") |
        !shop_refuse(row, WIDTH, "it is for boards and sheets") | !(pieces || shop_need(row, PACK)) |
        !shop_exact_amount(row, PACK, stock, pack))
        return false;
    offer->pack = sb_ratio_whole_down(*pack, 1);
    return true;
}

static bool read_volume(shop_row row) {
    static const char why[] = "timber sold by volume comes in random widths and lengths";
    return shop_refuse(row, LENGTH, why) & shop_refuse(row, WIDTH, why) & shop_refuse(row, PACK, why);
}

static bool read_size(shop_row row, const sb_stock *stock, sb_offer *offer, sb_ratio *pack) {
    switch (stock->kind) {
    case SB_STOCK_BOARD:
        return read_board(row, offer);
    case SB_STOCK_SHEET:
        return read_sheet(row, stock, offer);
    case SB_STOCK_VOLUME:
        return read_volume(row);
    default:
        return read_pack(row, stock, offer, pack);
    }
}

/* ---- the rest ---- */

static bool read_trim(shop_row row, size_t column, const sb_stock *stock, const sb_settings *settings,
                      sb_length *out) {
    const sb_saw *saw = stock->kind == SB_STOCK_SHEET ? &settings->panel : &settings->crosscut;
    out->nm = SB_BAD;
    if (stock->kind != SB_STOCK_BOARD && stock->kind != SB_STOCK_SHEET)
        return shop_refuse(row, column, "only boards and sheets are trued");
    if (!shop_given(row, column))
        return true;
    if (!sb_read_length(row.run, shop_text(row, column), shop_at(row, column), row.csv->decimal_comma, out))
        return false;
    if (out->nm == 0 || out->nm >= saw->kerf.nm)
        return true;
    sb_error(row.run, shop_at(row, column),
             "truing costs at least the blade's width: expected 0 or at least %s",
             shop_exactly(row.run, saw->kerf, &settings->style));
    return false;
}

static bool read_terms(shop_row row, const sb_stock *stock, const sb_settings *settings, sb_offer *offer) {
    offer->available = -1;
    return shop_count(row, AVAILABLE, 0, &offer->available) &
           (!shop_given(row, DATE) ||
            sb_read_date(row.run, shop_text(row, DATE), shop_at(row, DATE), &offer->date)) &
           read_trim(row, TRIM1, stock, settings, &offer->trim1) &
           read_trim(row, TRIM2, stock, settings, &offer->trim2);
}

/* ---- what one costs ---- */

static bool find_each(shop_row row, const sb_stock *stock, sb_ratio pack, int digits, sb_offer *offer) {
    offer->each = shop_offer_each(stock, offer, pack, digits);
    if (offer->each.milli > 0)
        return true;
    sb_error(row.run, shop_at(row, PRICE),
             offer->each.milli == SB_BAD ? "this price is out of range" : "this price comes to nothing");
    return false;
}

/* The same at the same merchant's, both without limit: one of the two can never be bought. */
static bool offer_twice(shop_row row, const sb_stock *stock, const sb_offer *offer) {
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *other = &stock->offers.items[i];
        if (strcmp(other->merchant, offer->merchant) == 0 && other->length.nm == offer->length.nm &&
            other->width.nm == offer->width.nm && other->pack == offer->pack && other->available < 0 &&
            offer->available < 0) {
            shop_twice(row.run, row.csv->rows[row.index], "the offer of", stock->id, other->place);
            return true;
        }
    }
    return false;
}

static sb_stock *find_stock(shop_reader *reader, shop_row row) {
    const char *id = shop_text(row, STOCK);
    if (!shop_need(row, STOCK)) {
        reader->offer_lost = true;
        return NULL;
    }
    for (size_t i = 0; i < reader->shop->stock.count; i++)
        if (strcmp(reader->shop->stock.items[i]->id, id) == 0)
            return reader->shop->stock.items[i];
    reader->offer_lost = true;
    if (reader->stock_known)
        sb_shop_unknown_stock(row.run, reader->shop, shop_at(row, STOCK), id);
    return NULL;
}

/* Of a stock that could not be read only the columns that need no stock are checked. */
static void read_offer(shop_reader *reader, shop_row row) {
    const sb_settings *settings = &reader->shop->settings;
    sb_offer offer = {.merchant = shop_text(row, MERCHANT), .place = row.csv->rows[row.index]};
    sb_ratio pack = sb_ratio_of(1, 1);
    sb_stock *stock = find_stock(reader, row);
    bool good = shop_need(row, MERCHANT) & read_price(row, &offer);
    if (stock && shop_doubtful(reader, stock)) {
        SB_PUSH(row.run->pool, stock->offers, offer);
        return;
    }
    good = stock && (read_per(row, stock, &offer) & read_size(row, stock, &offer, &pack) &
                     read_terms(row, stock, settings, &offer) & good);
    if (good && find_each(row, stock, pack, settings->currency.digits, &offer) &&
        !offer_twice(row, stock, &offer))
        SB_PUSH(row.run->pool, stock->offers, offer);
    else if (stock)
        SB_PUSH(row.run->pool, reader->doubtful, stock);
}

static void check_sold(const shop_reader *reader) {
    for (size_t i = 0; i < reader->shop->stock.count; i++) {
        const sb_stock *stock = reader->shop->stock.items[i];
        if (stock->offers.count == 0 && !shop_doubtful(reader, stock))
            sb_error(reader->run, stock->place, "nobody sells %s: expected a row for it in prices.csv",
                     stock->id);
    }
}

void shop_read_prices(shop_reader *reader, const char *path) {
    if (shop_each_row(reader, path, columns, COLUMN_COUNT, read_offer) && !reader->offer_lost)
        check_sold(reader);
}
