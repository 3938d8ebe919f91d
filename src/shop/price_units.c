/* By what a kind of stock is sold, and what one board, sheet or pack of it costs then. */
#include "shop/read.h"

#include <string.h>

#define FIT(per) (1u << (per))

/* Which units fit which kind. */
static unsigned fitting(sb_stock_kind kind) {
    switch (kind) {
    case SB_STOCK_BOARD:
        return FIT(SB_PER_EACH) | FIT(SB_PER_M) | FIT(SB_PER_FT) | FIT(SB_PER_M2) | FIT(SB_PER_FT2) |
               FIT(SB_PER_M3) | FIT(SB_PER_BF);
    case SB_STOCK_SHEET:
        return FIT(SB_PER_EACH) | FIT(SB_PER_M2) | FIT(SB_PER_FT2);
    case SB_STOCK_VOLUME:
        return FIT(SB_PER_M3) | FIT(SB_PER_BF);
    case SB_STOCK_FINISH:
        return FIT(SB_PER_L) | FIT(SB_PER_GAL) | FIT(SB_PER_PACK);
    case SB_STOCK_GLUE:
        return FIT(SB_PER_KG) | FIT(SB_PER_LB) | FIT(SB_PER_PACK);
    case SB_STOCK_EDGING:
        return FIT(SB_PER_M) | FIT(SB_PER_FT) | FIT(SB_PER_PACK);
    default:
        return FIT(SB_PER_EACH) | FIT(SB_PER_PACK);
    }
}

bool shop_per_fits(sb_per per, sb_stock_kind kind) {
    return (fitting(kind) & FIT(per)) != 0;
}

const char *shop_per_words(sb_run *run, sb_stock_kind kind) {
    const char *words = "";
    for (int per = SB_PER_EACH; per <= SB_PER_PACK; per++)
        if (fitting(kind) & FIT(per))
            words = sb_pool_print(run->pool, "%s%s%s", words, *words ? ", " : "", sb_per_word((sb_per)per));
    return words;
}

void shop_unknown_per(sb_run *run, sb_place at, const char *word, sb_stock_kind kind) {
    const char *known[SB_PER_PACK + 1];
    size_t count = 0;
    for (int per = SB_PER_EACH; per <= SB_PER_PACK; per++)
        if (fitting(kind) & FIT(per))
            known[count++] = sb_per_word((sb_per)per);
    sb_error_unknown(run, at, "unit of a price", word, known, count);
}

/* ---- what one costs ---- */

/* How many of the kind's own unit (ml, mg, mm, pieces) one unit of the price is, as a ratio. 1 gal = 231 in3
 * and 1 lb = 453.59237 g exactly. */
static sb_ratio unit_size(sb_per per) {
    switch (per) {
    case SB_PER_M:
        return sb_ratio_of(1000, 1);
    case SB_PER_FT:
        return sb_ratio_of(3048, 10);
    case SB_PER_L:
        return sb_ratio_of(1000, 1);
    case SB_PER_GAL:
        return sb_ratio_of(3785411784, 1000000);
    case SB_PER_KG:
        return sb_ratio_of(1000000, 1);
    case SB_PER_LB:
        return sb_ratio_of(45359237, 100);
    default:
        return sb_ratio_of(1, 1);
    }
}

/* Millionths of the major unit to thousandths of the minor one: times 10^(digits + 3) / 10^6. */
static sb_ratio milli_per_micro(int digits) {
    sb_ratio ratio = sb_ratio_of(1, 1000);
    for (int i = 0; i < digits; i++)
        ratio = sb_ratio_mul(ratio, sb_ratio_of(10, 1));
    return ratio;
}

sb_cost shop_offer_each(const sb_stock *stock, const sb_offer *offer, sb_ratio pack, int digits) {
    sb_item_size size = {offer->length, offer->width, stock->thickness, stock->nominal_width,
                         stock->nominal_thickness};
    if (stock->kind == SB_STOCK_BOARD)
        size.width = stock->width;
    if (stock->kind == SB_STOCK_BOARD || stock->kind == SB_STOCK_SHEET)
        return sb_price_of_item(offer->price, size, digits);
    bool whole = offer->price.per == SB_PER_PACK || stock->kind == SB_STOCK_VOLUME;
    sb_ratio units = whole ? sb_ratio_of(1, 1) : sb_ratio_div(pack, unit_size(offer->price.per));
    sb_ratio factor = sb_ratio_mul(units, milli_per_micro(digits));
    if (!sb_ratio_ok(factor))
        return (sb_cost){SB_BAD};
    return (sb_cost){sb_mul_div(offer->price.micro, factor.num, factor.den)};
}
