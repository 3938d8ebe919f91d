/* Reads stock.csv: what there is to buy. */
#include "shop/read.h"

#include <string.h>

enum {
    STOCK,
    TITLE,
    KIND,
    MATERIAL,
    GRADE,
    THICKNESS,
    WIDTH,
    NOMINAL_THICKNESS,
    NOMINAL_WIDTH,
    SURFACE,
    DENSITY,
    COVERAGE,
    SPREAD,
    MINIMUM,
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {
    {"stock", true},          {"title", false},    {"kind", true},     {"material", false},
    {"grade", false},         {"thickness", true}, {"width", true},    {"nominal_thickness", false},
    {"nominal_width", false}, {"surface", false},  {"density", false}, {"coverage", false},
    {"spread", false},        {"minimum", false}};

bool shop_doubtful(const shop_reader *reader, const sb_stock *stock) {
    for (size_t i = 0; i < reader->doubtful.count; i++)
        if (reader->doubtful.items[i] == stock)
            return true;
    return false;
}

/* ---- one cell after the other ---- */

static bool read_kind(shop_row row, sb_stock *stock) {
    if (!shop_need(row, KIND))
        return false;
    if (shop_kind_find(shop_text(row, KIND), &stock->kind))
        return true;
    shop_unknown_kind(row.run, shop_at(row, KIND), shop_text(row, KIND));
    return false;
}

static bool read_grade(shop_reader *reader, shop_row row, sb_stock *stock) {
    const char *id = shop_text(row, GRADE);
    size_t count = reader->shop->grades.count;
    const char **known = SB_NEW_ARRAY(row.run->pool, const char *, count);
    if (!*id || !reader->grades_known)
        return true;
    for (size_t i = 0; i < count; i++) {
        known[i] = reader->shop->grades.items[i].id;
        if (strcmp(known[i], id) == 0)
            stock->grade = &reader->shop->grades.items[i];
    }
    if (!stock->grade)
        sb_error_unknown(row.run, shop_at(row, GRADE), "grade", id, known, count);
    return stock->grade != NULL;
}

static bool read_surface(shop_row row, sb_stock *stock) {
    static const char *const words[] = {"sawn", "planed"};
    const char *word = shop_text(row, SURFACE);
    stock->sawn = strcmp(word, "sawn") == 0;
    if (!*word || stock->sawn || strcmp(word, "planed") == 0)
        return true;
    sb_error_unknown(row.run, shop_at(row, SURFACE), "surface", word, words, 2);
    return false;
}

static bool read_density(shop_row row, sb_stock *stock) {
    if (!shop_count(row, DENSITY, 1, &stock->density))
        return false;
    if (stock->density <= 3000)
        return true;
    sb_error(row.run, shop_at(row, DENSITY), "expected a density in kg/m3, for wood between 100 and 1300");
    return false;
}

/* ---- which sizes a kind has ---- */

static bool read_nominal(shop_row row, sb_stock *stock) {
    return shop_length(row, NOMINAL_THICKNESS, SHOP_OPTIONAL, &stock->nominal_thickness) &
           shop_length(row, NOMINAL_WIDTH, SHOP_OPTIONAL, &stock->nominal_width);
}

static bool read_sizes(shop_row row, sb_stock *stock) {
    shop_demand width = stock->kind == SB_STOCK_BOARD ? SHOP_NEEDED : SHOP_OPTIONAL;
    switch (stock->kind) {
    case SB_STOCK_BOARD:
    case SB_STOCK_SHEET:
    case SB_STOCK_EDGING:
        return shop_length(row, THICKNESS, stock->kind == SB_STOCK_EDGING ? SHOP_OPTIONAL : SHOP_NEEDED,
                           &stock->thickness) &
               shop_length(row, WIDTH, width, &stock->width) & read_nominal(row, stock);
    case SB_STOCK_VOLUME:
        return shop_length(row, THICKNESS, SHOP_NEEDED, &stock->thickness) &
               shop_refuse(row, WIDTH, "timber sold by volume comes in random widths") &
               read_nominal(row, stock);
    default:
        return shop_refuse(row, THICKNESS, "it is for timber, sheets and edging") &
               shop_refuse(row, WIDTH, "it is for timber, sheets and edging");
    }
}

/* Timber is never thicker or wider than its name says. */
static bool check_nominal(shop_row row, const sb_stock *stock) {
    bool good = true;
    if (stock->nominal_thickness.nm > 0 && stock->nominal_thickness.nm < stock->thickness.nm) {
        sb_error(row.run, shop_at(row, NOMINAL_THICKNESS),
                 "the nominal thickness is below the actual one: are they swapped, or is a unit missing?");
        good = false;
    }
    if (stock->nominal_width.nm > 0 && stock->nominal_width.nm < stock->width.nm) {
        sb_error(row.run, shop_at(row, NOMINAL_WIDTH),
                 "the nominal width is below the actual one: are they swapped, or is a unit missing?");
        good = false;
    }
    return good;
}

static bool read_yield(shop_row row, sb_stock *stock) {
    bool finish = stock->kind == SB_STOCK_FINISH, glue = stock->kind == SB_STOCK_GLUE;
    return (finish ? shop_coverage(row, COVERAGE, &stock->coverage)
                   : shop_refuse(row, COVERAGE, "it is for finishes")) &
           (glue ? shop_spread(row, SPREAD, &stock->spread) : shop_refuse(row, SPREAD, "it is for glue"));
}

/* What the kind decides about. */
static bool read_by_kind(shop_row row, sb_stock *stock) {
    bool minimum = stock->kind == SB_STOCK_VOLUME
                       ? shop_refuse(row, MINIMUM, "the rack is not counted in volumes")
                       : shop_amount(row, MINIMUM, stock, &stock->minimum);
    return minimum & read_sizes(row, stock) & read_yield(row, stock);
}

/* ---- one row ---- */

static void read_stock(shop_reader *reader, shop_row row) {
    sb_stock *stock = SB_NEW(row.run->pool, sb_stock);
    *stock = (sb_stock){.id = "",
                        .title = shop_text(row, TITLE),
                        .material = shop_text(row, MATERIAL),
                        .place = row.csv->rows[row.index]};
    bool named = shop_id(row, STOCK, &stock->id);
    const sb_stock *first = sb_shop_stock(reader->shop, stock->id);
    if (!*stock->title)
        stock->title = stock->id;
    bool good = read_grade(reader, row, stock) & read_surface(row, stock) & read_density(row, stock);
    good = (read_kind(row, stock) && read_by_kind(row, stock) && check_nominal(row, stock)) & good;
    if (named && first)
        shop_twice(row.run, shop_at(row, STOCK), "the stock", stock->id, first->place);
    else if (named)
        SB_PUSH(row.run->pool, reader->shop->stock, stock);
    if (!good)
        SB_PUSH(row.run->pool, reader->doubtful, stock);
}

void shop_read_stock(shop_reader *reader, const char *path) {
    reader->stock_known = shop_each_row(reader, path, columns, COLUMN_COUNT, read_stock);
}
