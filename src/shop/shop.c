/* Reads a shop's folder, file after file in the order in which they refer to each other. */
#include "shop/read.h"

/* What is taken instead must be there; it is not replaced in its turn. */
static void check_replacements(shop_reader *reader) {
    for (size_t i = 0; reader->stock_known && i < reader->shop->settings.replacements.count; i++) {
        const sb_replacement *replacement = &reader->shop->settings.replacements.items[i];
        if (!shop_stock_itself(reader->shop, replacement->taken))
            sb_shop_unknown_stock(reader->run, reader->shop, replacement->place, replacement->taken);
    }
}

sb_shop *sb_shop_read(sb_run *run, const char *rates) {
    sb_pool *pool = run->pool;
    sb_shop *shop = SB_NEW(pool, sb_shop);
    shop_reader reader = {.run = run, .shop = shop};
    size_t errors = sb_notices_raised(run, SB_ERROR);
    shop->folder = sb_pool_print(pool, "%s", rates);
    if (!shop_read_settings(&reader, sb_pool_print(pool, "%s/shop.txt", rates)))
        return NULL;
    shop->settings.own_style = shop->settings.style;
    shop_read_grades(&reader, sb_pool_print(pool, "%s/grades.csv", rates));
    shop_read_operations(&reader, sb_pool_print(pool, "%s/operations.csv", rates));
    shop_read_stock(&reader, sb_pool_print(pool, "%s/stock.csv", rates));
    shop_read_prices(&reader, sb_pool_print(pool, "%s/prices.csv", rates));
    shop_read_rack(&reader, sb_pool_print(pool, "%s/rack.csv", rates));
    shop_read_measured(&reader, sb_pool_print(pool, "%s/measured.csv", rates));
    check_replacements(&reader);
    shop->sound = sb_notices_raised(run, SB_ERROR) == errors;
    return shop;
}
