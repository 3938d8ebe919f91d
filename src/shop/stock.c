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
    DRYING,
    SPREAD,
    MINIMUM,
    COLUMN_COUNT
};
static const sb_column columns[COLUMN_COUNT] = {
    {"stock", true},          {"title", false},    {"kind", true},     {"material", false},
    {"grade", false},         {"thickness", true}, {"width", true},    {"nominal_thickness", false},
    {"nominal_width", false}, {"surface", false},  {"density", false}, {"coverage", false},
    {"drying", false},        {"spread", false},   {"minimum", false}};

bool shop_among(const shop_stocks *stocks, const sb_stock *stock) {
    for (size_t i = 0; i < stocks->count; i++)
        if (stocks->items[i] == stock)
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

static void read_grade(shop_reader *reader, shop_row row, sb_stock *stock) {
    const char *id = shop_text(row, GRADE);
    size_t count = reader->shop->grades.count;
    const char **known = SB_NEW_ARRAY(row.run->pool, const char *, count);
    for (size_t i = 0; i < count; i++) {
        known[i] = reader->shop->grades.items[i].id;
        if (strcmp(known[i], id) == 0)
            stock->grade = &reader->shop->grades.items[i];
    }
    if (*id && !stock->grade && reader->grades_known)
        sb_error_unknown(row.run, shop_at(row, GRADE), "grade", id, known, count);
}

static void read_surface(shop_row row, sb_stock *stock) {
    static const char *const words[] = {"sawn", "planed"};
    const char *word = shop_text(row, SURFACE);
    stock->sawn = strcmp(word, "sawn") == 0;
    if (*word && !stock->sawn && strcmp(word, "planed") != 0)
        sb_error_unknown(row.run, shop_at(row, SURFACE), "surface", word, words, 2);
}

static void read_density(shop_row row, sb_stock *stock) {
    int64_t micro, whole = 1000000;
    if (!shop_given(row, DENSITY) || !sb_read_micro(row.run, shop_text(row, DENSITY), shop_at(row, DENSITY),
                                                    row.csv->decimal_comma, &micro))
        return;
    stock->density = micro / whole;
    if (micro < whole || micro > 3000 * whole || micro % whole != 0)
        sb_error(row.run, shop_at(row, DENSITY),
                 "expected a density in whole kg/m3, for wood between 100 and 1300");
}

/* ---- which columns a kind has ---- */

static void read_sizes(shop_row row, sb_stock *stock) {
    bool board = stock->kind == SB_STOCK_BOARD, edging = stock->kind == SB_STOCK_EDGING;
    shop_length(row, THICKNESS, edging ? SHOP_OPTIONAL : SHOP_NEEDED, &stock->thickness);
    if (stock->kind == SB_STOCK_VOLUME)
        shop_refuse(row, WIDTH, "timber sold by volume comes in random widths");
    else
        shop_length(row, WIDTH, board ? SHOP_NEEDED : SHOP_OPTIONAL, &stock->width);
    shop_length(row, NOMINAL_THICKNESS, SHOP_OPTIONAL, &stock->nominal_thickness);
    shop_length(row, NOMINAL_WIDTH, SHOP_OPTIONAL, &stock->nominal_width);
}

/* Timber is never thicker or wider than its name says. */
static void check_nominal(shop_row row, size_t column, sb_length nominal, sb_length actual) {
    if (nominal.nm > 0 && nominal.nm < actual.nm)
        sb_error(row.run, shop_at(row, column),
                 "the nominal size is below the actual one: are they swapped, or is a unit missing?");
}

static void read_solid(shop_row row, sb_stock *stock) {
    read_sizes(row, stock);
    check_nominal(row, NOMINAL_THICKNESS, stock->nominal_thickness, stock->thickness);
    check_nominal(row, NOMINAL_WIDTH, stock->nominal_width, stock->width);
}

static void refuse_sizes(shop_row row) {
    for (size_t column = THICKNESS; column <= NOMINAL_WIDTH; column++)
        shop_refuse(row, column, "it is for timber, sheets and edging");
}

/* A bare number would be minutes, and coats dry in hours. */
static bool says_unit(const char *text) {
    return strpbrk(text, "hms") != NULL;
}

static void read_drying(shop_row row, sb_stock *stock) {
    if (!shop_given(row, DRYING) || !sb_read_duration(row.run, shop_text(row, DRYING), shop_at(row, DRYING),
                                                      row.csv->decimal_comma, &stock->drying))
        return;
    if (stock->drying.ms > 0 && !says_unit(shop_text(row, DRYING)))
        sb_error(row.run, shop_at(row, DRYING), "how long a coat dries has a unit: 12 h, 30 min");
    if (stock->drying.ms < 0)
        sb_error(row.run, shop_at(row, DRYING),
                 "a coat does not dry in less than no time: expected zero or more");
}

static void read_yield(shop_row row, sb_stock *stock) {
    if (stock->kind == SB_STOCK_FINISH)
        shop_coverage(row, COVERAGE, &stock->coverage);
    else
        shop_refuse(row, COVERAGE, "it is for finishes");
    if (stock->kind == SB_STOCK_FINISH)
        read_drying(row, stock);
    else
        shop_refuse(row, DRYING, "it is for finishes");
    if (stock->kind == SB_STOCK_GLUE)
        shop_spread(row, SPREAD, &stock->spread);
    else
        shop_refuse(row, SPREAD, "it is for glue");
}

static void read_by_kind(shop_row row, sb_stock *stock) {
    bool solid = stock->kind <= SB_STOCK_VOLUME || stock->kind == SB_STOCK_EDGING;
    if (solid)
        read_solid(row, stock);
    else
        refuse_sizes(row);
    read_yield(row, stock);
    if (stock->kind == SB_STOCK_VOLUME)
        shop_refuse(row, MINIMUM, "the rack is not counted in volumes");
    else
        shop_amount(row, MINIMUM, stock, &stock->minimum);
}

/* ---- one row ---- */

static void keep(shop_reader *reader, shop_row row, sb_stock *stock) {
    const sb_stock *first = shop_stock_itself(reader->shop, stock->id);
    if (first)
        shop_twice(row.run, shop_at(row, STOCK), "the stock", stock->id, first->place);
    else
        SB_PUSH(row.run->pool, reader->shop->stock, stock);
}

static void read_stock(shop_reader *reader, shop_row row) {
    sb_stock *stock = SB_NEW(row.run->pool, sb_stock);
    *stock = (sb_stock){.title = shop_text(row, TITLE),
                        .material = shop_text(row, MATERIAL),
                        .place = row.csv->rows[row.index]};
    bool named = shop_id(row, STOCK, &stock->id);
    if (!*stock->title)
        stock->title = shop_text(row, STOCK);
    bool kind_known = read_kind(row, stock);
    read_grade(reader, row, stock);
    read_surface(row, stock);
    read_density(row, stock);
    if (kind_known)
        read_by_kind(row, stock);
    if (!shop_sound(row))
        SB_PUSH(row.run->pool, reader->doubtful, stock);
    if (named)
        keep(reader, row, stock);
}

void shop_read_stock(shop_reader *reader, const char *path) {
    reader->stock_known = shop_each_row(reader, path, columns, COLUMN_COUNT, read_stock);
}
