/* Measures as people read them. The user's locale has no say. */
#include "measure/wide.h"

static const char out_of_range[] = "out of range";

enum {
    NM_PER_64TH = SB_NM_PER_INCH / 64
};

/* ---- decimals ------------------------------------------------------------------------------------- */

/* |amount|, so that the most negative number has one too */
static uint64_t size_of(int64_t amount) {
    return amount < 0 ? (uint64_t)0 - (uint64_t)amount : (uint64_t)amount;
}

/* 1 234 567 */
static const char *grouped(sb_run *run, uint64_t whole) {
    if (whole < 1000)
        return sb_pool_print(run->pool, "%llu", (unsigned long long)whole);
    return sb_pool_print(run->pool, "%s %03llu", grouped(run, whole / 1000),
                         (unsigned long long)(whole % 1000));
}

static const char *decimal(sb_run *run, int64_t amount, int digits, bool comma, bool group) {
    if (amount == SB_BAD)
        return out_of_range;
    uint64_t size = size_of(amount), unit = (uint64_t)wide_power_of_ten(digits);
    const char *sign = amount < 0 ? "-" : "";
    const char *whole = group ? grouped(run, size / unit)
                              : sb_pool_print(run->pool, "%llu", (unsigned long long)(size / unit));
    if (digits == 0)
        return sb_pool_print(run->pool, "%s%s", sign, whole);
    return sb_pool_print(run->pool, "%s%s%c%0*llu", sign, whole, comma ? ',' : '.', digits,
                         (unsigned long long)(size % unit));
}

const char *sb_write_decimal(sb_run *run, int64_t amount, int digits, bool decimal_comma) {
    return decimal(run, amount, digits, decimal_comma, false);
}

static int64_t rescale(int64_t amount, int digits_in, int digits_out) {
    if (digits_out >= digits_in)
        return sb_mul(amount, wide_power_of_ten(digits_out - digits_in));
    return sb_mul_div(amount, 1, wide_power_of_ten(digits_in - digits_out));
}

const char *sb_write_fixed(sb_run *run, int64_t amount, int digits_in, int digits_out, bool decimal_comma) {
    return decimal(run, rescale(amount, digits_in, digits_out), digits_out, decimal_comma, false);
}

/* As decimal, without zeros at the end. */
static const char *shortest(sb_run *run, int64_t amount, int digits, bool comma) {
    while (digits > 0 && amount % 10 == 0) {
        amount /= 10;
        digits--;
    }
    return decimal(run, amount, digits, comma, false);
}

const char *sb_write_share(sb_run *run, sb_share share, int least, bool decimal_comma) {
    int64_t amount = share.ppm;
    int digits = 4;
    for (; digits > least && amount % 10 == 0; digits--)
        amount /= 10;
    return sb_pool_print(run->pool, "%s %%", decimal(run, amount, digits, decimal_comma, false));
}

const char *sb_write_money(sb_run *run, sb_money money, sb_currency currency, const sb_style *style) {
    return decimal(run, money.minor, currency.digits, style && style->decimal_comma, true);
}

/* ---- lengths -------------------------------------------------------------------------------------- */

/* Inches are written in 64ths; a step that is none of those gives way to 1/64 inch. */
static int64_t inch_step(const sb_style *style) {
    bool usable = style->step.nm > 0 && style->step.nm % NM_PER_64TH == 0;
    return usable ? style->step.nm : NM_PER_64TH;
}

static const char *inches(sb_run *run, int64_t nm) {
    uint64_t size = size_of(nm) / NM_PER_64TH, whole = size / 64, above = size % 64, below = 64;
    const char *sign = nm < 0 ? "-" : "";
    while (above && above % 2 == 0) {
        above /= 2;
        below /= 2;
    }
    if (above == 0)
        return sb_pool_print(run->pool, "%s%llu\"", sign, (unsigned long long)whole);
    if (whole == 0)
        return sb_pool_print(run->pool, "%s%llu/%llu\"", sign, (unsigned long long)above,
                             (unsigned long long)below);
    return sb_pool_print(run->pool, "%s%llu %llu/%llu\"", sign, (unsigned long long)whole,
                         (unsigned long long)above, (unsigned long long)below);
}

static const sb_style plain = {.units = SB_UNITS_MM};

const char *sb_write_length(sb_run *run, sb_length length, const sb_style *style) {
    if (!style)
        style = &plain;
    bool imperial = style->units == SB_UNITS_IN;
    int64_t step = imperial ? inch_step(style) : style->step.nm > 0 ? style->step.nm : 1;
    int64_t nearest = sb_mul(sb_mul_div(length.nm, 1, step), step);
    if (nearest == SB_BAD)
        return out_of_range;
    const char *text = imperial ? inches(run, nearest) : shortest(run, nearest, 6, style->decimal_comma);
    return nearest == length.nm ? text : sb_pool_print(run->pool, "~%s", text);
}

const char *sb_write_length_unit(sb_run *run, sb_length length, const sb_style *style) {
    const char *text = sb_write_length(run, length, style);
    bool bare = length.nm != SB_BAD && (!style || style->units == SB_UNITS_MM);
    return bare ? sb_pool_print(run->pool, "%s mm", text) : text;
}

sb_style sb_style_exact(const sb_style *style) {
    sb_style exact = style ? *style : plain;
    exact.step.nm = exact.units == SB_UNITS_MM ? SB_NM_PER_MM / 1000 : NM_PER_64TH;
    return exact;
}

const char *sb_write_size(sb_run *run, sb_length length, sb_length width, const sb_style *style) {
    sb_style exact = sb_style_exact(style);
    if (width.nm == 0)
        return sb_write_length_unit(run, length, &exact);
    return sb_pool_print(run->pool, "%s x %s", sb_write_length(run, length, &exact),
                         sb_write_length_unit(run, width, &exact));
}

const char *sb_write_sizes(sb_run *run, const sb_length *sizes, size_t count, const sb_style *style) {
    const char *text = "";
    if (!style)
        style = &plain;
    for (size_t i = 0; i < count; i++) {
        sb_length to_tape = sizes[i];
        if (style->step.nm > 0)
            to_tape =
                sb_length_down_to_step(sb_length_add(sizes[i], (sb_length){style->step.nm / 2}), style->step);
        text = sb_pool_print(run->pool, "%s%s%s", text, i ? " x " : "", sb_write_length(run, to_tape, style));
    }
    return *text && style->units == SB_UNITS_MM ? sb_pool_print(run->pool, "%s mm", text) : text;
}

/* ---- the rest ------------------------------------------------------------------------------------- */

const char *sb_write_angle(sb_run *run, sb_angle angle, const sb_style *style) {
    if (angle.udeg == SB_BAD)
        return out_of_range;
    const char *text = shortest(run, rescale(angle.udeg, 6, 2), 2, style && style->decimal_comma);
    return sb_pool_print(run->pool, "%s°", text);
}

const char *sb_write_date(sb_run *run, sb_date date) {
    if (date.month == 0)
        return "";
    return sb_pool_print(run->pool, "%04d-%02d-%02d", date.year, date.month, date.day);
}
