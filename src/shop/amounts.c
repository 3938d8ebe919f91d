/* Amounts of stock in the unit of its kind: packs of pieces, tins, bottles and rolls; coverage and spread. */
#include "shop/read.h"

#include <string.h>

static const char *expected_amount(sb_stock_kind kind) {
    switch (kind) {
    case SB_STOCK_FINISH:
        return "a volume, as 2.5 l";
    case SB_STOCK_GLUE:
        return "a weight, as 1 kg";
    case SB_STOCK_EDGING:
        return "a length, as 50 m";
    default:
        return "a whole number";
    }
}

static sb_ratio times(sb_ratio ratio, int64_t num, int64_t den) {
    return sb_ratio_mul(ratio, sb_ratio_of(num, den));
}

/* Millilitres of a volume, or of a weight when the density is known: kg/m3 is mg/ml. */
static bool millilitres(sb_quantity quantity, int64_t density, sb_ratio *out) {
    if (sb_dimension_same(quantity.dimension, SB_DIM_VOLUME))
        *out = times(quantity.amount, 1, 1000);
    else if (density > 0 && sb_dimension_same(quantity.dimension, SB_DIM_MASS))
        *out = times(quantity.amount, 1, density);
    else
        return false;
    return true;
}

static bool milligrams(sb_quantity quantity, int64_t density, sb_ratio *out) {
    if (sb_dimension_same(quantity.dimension, SB_DIM_MASS))
        *out = quantity.amount;
    else if (density > 0 && sb_dimension_same(quantity.dimension, SB_DIM_VOLUME))
        *out = times(quantity.amount, density, 1000);
    else
        return false;
    return true;
}

static bool in_unit_of(const sb_stock *stock, sb_quantity quantity, sb_ratio *out) {
    *out = quantity.amount;
    switch (stock->kind) {
    case SB_STOCK_FINISH:
        return millilitres(quantity, stock->density, out);
    case SB_STOCK_GLUE:
        return milligrams(quantity, stock->density, out);
    case SB_STOCK_EDGING:
        return sb_dimension_same(quantity.dimension, SB_DIM_LENGTH);
    default:
        return !quantity.has_unit && quantity.amount.den == 1;
    }
}

/* Says what is wrong with an amount: a weight of a liquid can be told when its density is known. */
static void refuse_amount(shop_row row, size_t column, const sb_stock *stock, sb_quantity quantity) {
    bool liquid = stock->kind == SB_STOCK_FINISH || stock->kind == SB_STOCK_GLUE;
    bool weighed = sb_dimension_same(quantity.dimension, SB_DIM_VOLUME) ||
                   sb_dimension_same(quantity.dimension, SB_DIM_MASS);
    sb_error(row.run, shop_at(row, column), "expected %s in the column `%s`%s", expected_amount(stock->kind),
             row.columns[column].name,
             liquid && weighed ? "; between weight and volume the stock needs a density" : "");
}

void shop_exact_amount(shop_row row, size_t column, const sb_stock *stock, sb_ratio *out) {
    sb_quantity quantity;
    sb_ratio amount;
    const char *why;
    if (!shop_given(row, column))
        return;
    if (!sb_quantity_read(row.run, shop_text(row, column), row.csv->decimal_comma, &quantity, &why))
        sb_error(row.run, shop_at(row, column), "%s", why);
    else if (!in_unit_of(stock, quantity, &amount))
        refuse_amount(row, column, stock, quantity);
    else if (sb_ratio_whole_down(amount, 1) < 1)
        sb_error(row.run, shop_at(row, column), "expected an amount above zero in the column `%s`",
                 row.columns[column].name);
    else
        *out = amount;
}

void shop_amount(shop_row row, size_t column, const sb_stock *stock, int64_t *out) {
    sb_ratio amount = sb_ratio_of(*out, 1);
    shop_exact_amount(row, column, stock, &amount);
    *out = sb_ratio_whole_down(amount, 1);
}

/* ---- so much of one per so much of the other ---- */

/* Reads "12 m2/l": what stands before the slash, and after it, where a bare unit means one of it. */
static bool read_quotient(shop_row row, size_t column, sb_quantity *over, sb_quantity *under) {
    sb_pool *pool = row.run->pool;
    const char *text = shop_text(row, column), *why;
    const char *slash = strchr(text, '/');
    if (!slash)
        return false;
    const char *below = slash + 1 + strspn(slash + 1, " ");
    if (*below < '0' || *below > '9')
        below = sb_pool_print(pool, "1 %s", below);
    return sb_quantity_read(row.run, sb_pool_copy(pool, text, (size_t)(slash - text)), row.csv->decimal_comma,
                            over, &why) &&
           sb_quantity_read(row.run, below, row.csv->decimal_comma, under, &why);
}

typedef struct quotient {
    sb_dimension over, under;
    int64_t scale; /* from base units to those of the stock */
    const char *example;
} quotient;

/* mm2 per mm3 to um2 per ml: a million um2 in a mm2, a thousand mm3 in a ml */
static const quotient coverage = {{.length = 2}, {.length = 3}, 1000000000, "12 m2/l or 400 ft2/gal"};
/* mg per mm2 to mg per m2: a million mm2 in a m2 */
static const quotient spread = {{.mass = 1}, {.length = 2}, 1000000, "180 g/m2 or 40 lb/1000 ft2"};

/* To the nearest; 0 after an error. */
static int64_t take_quotient(shop_row row, size_t column, const quotient *form) {
    sb_quantity over, under;
    int64_t value = 0;
    if (!shop_need(row, column))
        return 0;
    if (read_quotient(row, column, &over, &under) && sb_dimension_same(over.dimension, form->over) &&
        sb_dimension_same(under.dimension, form->under))
        value = sb_ratio_whole(sb_ratio_div(over.amount, under.amount), form->scale);
    if (value > 0)
        return value;
    sb_error(row.run, shop_at(row, column), "expected something like %s in the column `%s`", form->example,
             row.columns[column].name);
    return 0;
}

void shop_coverage(shop_row row, size_t column, sb_area *out) {
    out->um2 = take_quotient(row, column, &coverage);
}

void shop_spread(shop_row row, size_t column, sb_mass *out) {
    out->mg = take_quotient(row, column, &spread);
}
