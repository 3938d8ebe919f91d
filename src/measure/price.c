/* What one item costs at a price per something. */
#include "measure/wide.h"

#include <string.h>

#define NM_PER_M  1000000000
#define NM_PER_FT 304800000

static const char *const words[] = {
    [SB_PER_EACH] = "each", [SB_PER_M] = "m",   [SB_PER_FT] = "ft", [SB_PER_M2] = "m2",
    [SB_PER_FT2] = "ft2",   [SB_PER_M3] = "m3", [SB_PER_BF] = "bf", [SB_PER_L] = "l",
    [SB_PER_GAL] = "gal",   [SB_PER_KG] = "kg", [SB_PER_LB] = "lb", [SB_PER_PACK] = "pack",
};

bool sb_per_find(const char *word, sb_per *out) {
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strcmp(words[i], word) == 0) {
            *out = (sb_per)i;
            return true;
        }
    return false;
}

const char *sb_per_word(sb_per per) {
    return words[per];
}

/* How much of the unit the item is: sizes multiplied [nm each], over divisors. */
typedef struct amount {
    int64_t sizes[3];
    int64_t divisors[4];
    size_t size_count, divisor_count;
} amount;

static amount running(sb_item_size s, int64_t unit) {
    return (amount){{s.length.nm}, {unit}, 1, 1};
}

static amount flat(sb_item_size s, int64_t unit) {
    return (amount){{s.length.nm, s.width.nm}, {unit, unit}, 2, 2};
}

static amount solid(sb_item_size s, int64_t unit) {
    return (amount){{s.length.nm, s.width.nm, s.thickness.nm}, {unit, unit, unit}, 3, 3};
}

/* A board foot is 144 cubic inches (one foot square, one inch thick). */
static amount board_feet(sb_item_size s) {
    int64_t width = s.nominal_width.nm ? s.nominal_width.nm : s.width.nm;
    int64_t thickness = s.nominal_thickness.nm ? s.nominal_thickness.nm : s.thickness.nm;
    return (amount){
        {s.length.nm, width, thickness}, {SB_NM_PER_INCH, SB_NM_PER_INCH, SB_NM_PER_INCH, 144}, 3, 4};
}

static bool amount_of(sb_per per, sb_item_size size, amount *out) {
    switch (per) {
    case SB_PER_EACH:
    case SB_PER_PACK:
        *out = (amount){.size_count = 0};
        return true;
    case SB_PER_M:
        *out = running(size, NM_PER_M);
        return true;
    case SB_PER_FT:
        *out = running(size, NM_PER_FT);
        return true;
    case SB_PER_M2:
        *out = flat(size, NM_PER_M);
        return true;
    case SB_PER_FT2:
        *out = flat(size, NM_PER_FT);
        return true;
    case SB_PER_M3:
        *out = solid(size, NM_PER_M);
        return true;
    case SB_PER_BF:
        *out = board_feet(size);
        return true;
    default:
        return false;
    }
}

/* millionths of the major unit * 10^digits / 1000 = thousandths of the minor unit */
sb_cost sb_price_of_item(sb_price price, sb_item_size size, int money_digits) {
    amount a;
    if (!amount_of(price.per, size, &a))
        return (sb_cost){SB_BAD};
    int64_t factors[5] = {price.micro, wide_power_of_ten(money_digits)}, divisors[5] = {1000};
    for (size_t i = 0; i < a.size_count; i++) {
        if (a.sizes[i] <= 0)
            return (sb_cost){SB_BAD};
        factors[2 + i] = a.sizes[i];
    }
    for (size_t i = 0; i < a.divisor_count; i++)
        divisors[1 + i] = a.divisors[i];
    return (sb_cost){wide_product(factors, 2 + a.size_count, divisors, 1 + a.divisor_count)};
}

int64_t sb_board_feet_milli(sb_length thickness, sb_length width, sb_length length) {
    amount a = board_feet((sb_item_size){.length = length, .width = width, .thickness = thickness});
    int64_t factors[4] = {1000, a.sizes[0], a.sizes[1], a.sizes[2]};
    return wide_product(factors, 4, a.divisors, a.divisor_count);
}
