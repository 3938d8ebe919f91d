/* Amounts of stock as people speak of them: 2.5 l, 0.75 kg, 50 m, 200. */
#include "sawbill/shop.h"

/* amount * `num` / `den` is in hundredths of the unit. Of a kind, the larger unit stands first. */
typedef struct spoken {
    sb_stock_kind kind;
    sb_units units;
    int64_t num, den;
    const char *unit;
} spoken;

static const spoken table[] = {
    {SB_STOCK_FINISH, SB_UNITS_MM, 1, 10, "l"},
    {SB_STOCK_FINISH, SB_UNITS_MM, 100, 1, "ml"},
    {SB_STOCK_FINISH, SB_UNITS_IN, 100000000, 3785411784, "gal"}, /* 231 cubic inches */
    {SB_STOCK_FINISH, SB_UNITS_IN, 12800000000, 3785411784, "fl oz"},
    {SB_STOCK_GLUE, SB_UNITS_MM, 1, 10000, "kg"},
    {SB_STOCK_GLUE, SB_UNITS_MM, 1, 10, "g"},
    {SB_STOCK_GLUE, SB_UNITS_IN, 10000, 45359237, "lb"},
    {SB_STOCK_GLUE, SB_UNITS_IN, 160000, 45359237, "oz"},
    {SB_STOCK_EDGING, SB_UNITS_MM, 1, 10, "m"},
    {SB_STOCK_EDGING, SB_UNITS_MM, 100, 1, "mm"},
    {SB_STOCK_EDGING, SB_UNITS_IN, 1000, 3048, "ft"},
    {SB_STOCK_EDGING, SB_UNITS_IN, 1000, 254, "in"},
};

static const char *volume_text(sb_run *run, int64_t nl, const sb_style *style) {
    if (style->units == SB_UNITS_IN) /* a board foot is 2 359 737 216 nl exactly */
        return sb_pool_print(run->pool, "%s bf",
                             sb_write_decimal(run, sb_mul_div(nl, 10, 2359737216), 1, style->decimal_comma));
    return sb_pool_print(run->pool, "%s m3",
                         sb_write_decimal(run, sb_mul_div(nl, 1, 1000000000), 3, style->decimal_comma));
}

/* The largest unit of which the amount is a hundredth; the smallest where it is less; NULL: it is counted. */
static const spoken *unit_for(sb_stock_kind kind, sb_units units, int64_t amount) {
    const spoken *best = NULL;
    for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
        const spoken *s = &table[i];
        bool speaks = s->kind == kind && s->units == units;
        if (speaks && (!best || (amount > 0 && sb_mul_div_down(amount, best->num, best->den) == 0)))
            best = s;
    }
    return best;
}

const char *sb_stock_amount_text(sb_run *run, const sb_stock *stock, int64_t amount, const sb_style *style) {
    if (stock->kind == SB_STOCK_VOLUME)
        return volume_text(run, amount, style);
    const spoken *s = unit_for(stock->kind, style->units, amount);
    if (!s)
        return sb_pool_print(run->pool, "%lld", (long long)amount);
    int64_t hundredths = sb_mul_div(amount, s->num, s->den);
    if (hundredths == 0 && amount > 0)
        return sb_pool_print(run->pool, "under %s %s", sb_write_fixed(run, 1, 2, 2, style->decimal_comma),
                             s->unit);
    int digits = hundredths % 10 != 0 ? 2 : hundredths % 100 != 0 ? 1 : 0;
    return sb_pool_print(run->pool, "%s %s", sb_write_fixed(run, hundredths, 2, digits, style->decimal_comma),
                         s->unit);
}
