/* Reads rack.csv: leftovers and stock at hand. A shop without the file has an empty rack. */
#include "shop/read.h"

#include <string.h>
#include <unistd.h>

enum {
    LABEL,
    STOCK,
    LENGTH,
    WIDTH,
    COUNT,
    VALUE,
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {{"label", true},  {"stock", true},  {"length", true},
                                                {"width", false}, {"count", false}, {"value", false}};

/* ---- size and number, as the kind has them ---- */

static void read_board(shop_row row, sb_rack_item *item) {
    sb_length width = item->width = item->stock->width;
    shop_length(row, LENGTH, SHOP_NEEDED, &item->length);
    shop_length(row, WIDTH, SHOP_OPTIONAL, &width);
    if (width.nm != item->width.nm)
        sb_error(row.run, shop_at(row, WIDTH),
                 "%s has another width: a board ripped narrower is another stock", item->stock->id);
}

static void read_sheet(shop_row row, sb_rack_item *item) {
    item->width = item->stock->width;
    shop_length(row, LENGTH, SHOP_NEEDED, &item->length);
    shop_length(row, WIDTH, item->width.nm > 0 ? SHOP_OPTIONAL : SHOP_NEEDED, &item->width);
}

/* Told by volume, weight or length, not by the piece. */
static bool measured(const sb_stock *stock) {
    return sb_stock_kind_unit(stock->kind)[0] != '\0';
}

static void read_amount(shop_row row, sb_rack_item *item) {
    shop_refuse(row, LENGTH, "it is for boards and sheets");
    shop_refuse(row, WIDTH, "it is for boards and sheets");
    if (!measured(item->stock) || shop_need(row, COUNT))
        shop_amount(row, COUNT, item->stock, &item->count);
}

static void read_size(shop_row row, sb_rack_item *item) {
    if (item->stock->kind == SB_STOCK_BOARD)
        read_board(row, item);
    else if (item->stock->kind == SB_STOCK_SHEET)
        read_sheet(row, item);
    else if (item->stock->kind != SB_STOCK_VOLUME)
        read_amount(row, item);
    else
        sb_error(row.run, shop_at(row, STOCK),
                 "%s is sold by volume: the rack holds boards, sheets and packed stock", item->stock->id);
    if (item->stock->kind <= SB_STOCK_SHEET)
        shop_count(row, COUNT, 1, &item->count);
}

/* ---- value ---- */

static void read_value(shop_row row, const sb_settings *settings, sb_rack_item *item) {
    if (!shop_given(row, VALUE))
        return;
    if (measured(item->stock))
        shop_refuse(row, VALUE, "what a tin or roll has left is charged at the price it costs new");
    else if (sb_read_money(row.run, shop_text(row, VALUE), shop_at(row, VALUE), row.csv->decimal_comma,
                           settings->currency.digits, &item->value) &&
             item->value.minor < 0)
        sb_error(row.run, shop_at(row, VALUE), "expected a value of zero or more");
}

/* ---- one row ---- */

static const sb_rack_item *find_label(const sb_shop *shop, const char *label) {
    for (size_t i = 0; i < shop->rack.count; i++)
        if (strcmp(shop->rack.items[i].label, label) == 0)
            return &shop->rack.items[i];
    return NULL;
}

static void check_label(shop_reader *reader, shop_row row, const char *label) {
    const sb_rack_item *first = find_label(reader->shop, label);
    if (shop_need(row, LABEL) && first)
        shop_twice(row.run, shop_at(row, LABEL), "the label", label, first->place);
}

static const sb_stock *find_stock(shop_reader *reader, shop_row row) {
    const char *id = shop_text(row, STOCK);
    const sb_stock *stock = shop_stock_itself(reader->shop, id);
    if (shop_need(row, STOCK) && !stock && reader->stock_known)
        sb_shop_unknown_stock(row.run, reader->shop, shop_at(row, STOCK), id);
    return stock;
}

static void read_of_stock(shop_reader *reader, shop_row row, sb_rack_item *item) {
    read_size(row, item);
    read_value(row, &reader->shop->settings, item);
    if (shop_sound(row) && item->value.minor != SB_BAD && item->stock->offers.count > 0 &&
        !shop_among(&reader->mispriced, item->stock))
        shop_check_worth(row.run, reader->shop, shop_at(row, VALUE), item);
}

static void read_item(shop_reader *reader, shop_row row) {
    sb_rack_item item = {
        .label = shop_text(row, LABEL), .count = 1, .value = {SB_BAD}, .place = row.csv->rows[row.index]};
    check_label(reader, row, item.label);
    item.stock = find_stock(reader, row);
    if (item.stock && !shop_among(&reader->doubtful, item.stock))
        read_of_stock(reader, row, &item);
    if (item.stock && shop_sound(row))
        SB_PUSH(row.run->pool, reader->shop->rack, item);
    else
        reader->rack_lost = true;
}

void shop_read_rack(shop_reader *reader, const char *path) {
    if (access(path, F_OK) == 0 && !shop_each_row(reader, path, columns, COLUMN_COUNT, read_item))
        reader->rack_lost = true;
}
