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

static bool read_board(shop_row row, sb_rack_item *item) {
    sb_length width = item->width = item->stock->width;
    if (!(shop_length(row, LENGTH, SHOP_NEEDED, &item->length) &
          shop_length(row, WIDTH, SHOP_OPTIONAL, &width)))
        return false;
    if (width.nm == item->width.nm)
        return true;
    sb_error(row.run, shop_at(row, WIDTH), "%s has another width: a board ripped narrower is another stock",
             item->stock->id);
    return false;
}

static bool read_sheet(shop_row row, sb_rack_item *item) {
    item->width = item->stock->width;
    return shop_length(row, LENGTH, SHOP_NEEDED, &item->length) &
           shop_length(row, WIDTH, item->width.nm > 0 ? SHOP_OPTIONAL : SHOP_NEEDED, &item->width);
}

static bool read_pieces(shop_row row, sb_rack_item *item) {
    item->count = 1;
    return shop_count(row, COUNT, 1, &item->count);
}

static bool read_amount(shop_row row, sb_rack_item *item) {
    return shop_refuse(row, LENGTH, "it is for boards and sheets") &
           shop_refuse(row, WIDTH, "it is for boards and sheets") &
           (shop_need(row, COUNT) && shop_amount(row, COUNT, item->stock, &item->count));
}

static bool read_size(shop_row row, sb_rack_item *item) {
    switch (item->stock->kind) {
    case SB_STOCK_BOARD:
        return read_board(row, item) & read_pieces(row, item);
    case SB_STOCK_SHEET:
        return read_sheet(row, item) & read_pieces(row, item);
    case SB_STOCK_VOLUME:
        sb_error(row.run, shop_at(row, STOCK),
                 "%s is sold by volume: the rack holds boards, sheets and packed stock", item->stock->id);
        return false;
    default:
        return read_amount(row, item);
    }
}

static bool read_value(shop_row row, const sb_shop *shop, sb_rack_item *item) {
    item->value.minor = SB_BAD;
    if (!shop_given(row, VALUE))
        return true;
    if (sb_stock_kind_unit(item->stock->kind)[0])
        return shop_refuse(row, VALUE, "what a tin or roll has left is charged at the price it costs new");
    if (!sb_read_money(row.run, shop_text(row, VALUE), shop_at(row, VALUE), row.csv->decimal_comma,
                       shop->settings.currency.digits, &item->value))
        return false;
    if (item->value.minor < 0) {
        sb_error(row.run, shop_at(row, VALUE), "expected a value of zero or more");
        return false;
    }
    return item->stock->offers.count == 0 || shop_worth_fits(row.run, shop, shop_at(row, VALUE), item);
}

static const sb_rack_item *find_label(const sb_shop *shop, const char *label) {
    for (size_t i = 0; i < shop->rack.count; i++)
        if (strcmp(shop->rack.items[i].label, label) == 0)
            return &shop->rack.items[i];
    return NULL;
}

static bool read_label(shop_reader *reader, shop_row row, sb_rack_item *item) {
    item->label = shop_text(row, LABEL);
    if (!shop_need(row, LABEL))
        return false;
    const sb_rack_item *first = find_label(reader->shop, item->label);
    if (first)
        shop_twice(row.run, shop_at(row, LABEL), "the label", item->label, first->place);
    return !first;
}

static void read_item(shop_reader *reader, shop_row row) {
    sb_rack_item item = {.place = row.csv->rows[row.index]};
    bool good = read_label(reader, row, &item);
    if (!shop_need(row, STOCK))
        return;
    item.stock = sb_shop_stock(reader->shop, shop_text(row, STOCK));
    if (!item.stock) {
        if (reader->stock_known)
            sb_shop_unknown_stock(row.run, reader->shop, shop_at(row, STOCK), shop_text(row, STOCK));
        return;
    }
    if (!shop_doubtful(reader, item.stock))
        good = read_size(row, &item) && read_value(row, reader->shop, &item) && good;
    if (good)
        SB_PUSH(row.run->pool, reader->shop->rack, item);
}

void shop_read_rack(shop_reader *reader, const char *path) {
    if (access(path, F_OK) == 0)
        shop_each_row(reader, path, columns, COLUMN_COUNT, read_item);
}
