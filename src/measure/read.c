/* Typed reading of cells and settings: what a bare number means, and which units fit. */
#include "measure/wide.h"

#include <string.h>

enum {
    MOST_COUNT = 1000000000,
    MOST_KM = 1,
    MICRO = 1000000
};

static bool refuse(sb_run *run, sb_place at, const char *expected, const char *why) {
    sb_error(run, at, "expected %s: %s", expected, why);
    return false;
}

/* The amount in base units; a bare number counts in `bare` of them. */
static bool read_as(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_dimension dimension,
                    const char *expected, sb_ratio bare, sb_ratio *out) {
    sb_quantity q;
    const char *why;
    if (!sb_quantity_read(run, text, decimal_comma, &q, &why))
        return refuse(run, at, expected, why);
    bool fits = !q.has_unit ||
                (sb_dimension_same(q.dimension, dimension) && !sb_dimension_same(dimension, SB_DIM_NUMBER));
    if (!fits)
        return refuse(run, at, expected,
                      sb_pool_print(run->pool, "\"%s\" is %s", text,
                                    sb_dimension_same(q.dimension, SB_DIM_NUMBER)
                                        ? "a percentage"
                                        : sb_dimension_name(run, q.dimension)));
    *out = q.has_unit ? q.amount : sb_ratio_mul(q.amount, bare);
    return true;
}

/* amount * scale, where that must be whole: no digit is lost in silence */
static bool whole(sb_run *run, sb_place at, const char *expected, sb_ratio amount, int64_t scale,
                  const char *finest, int64_t *out) {
    sb_ratio scaled = sb_ratio_mul(amount, sb_ratio_of(scale, 1));
    if (!sb_ratio_ok(scaled))
        return refuse(run, at, expected, "this is more than can be counted");
    if (scaled.den != 1)
        return refuse(run, at, expected, sb_pool_print(run->pool, "no finer than %s", finest));
    *out = scaled.num;
    return true;
}

/* ---- sizes ---------------------------------------------------------------------------------------- */

bool sb_read_length(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_length *out) {
    static const char expected[] = "a length such as 1200, 1.2 m or 47 1/4\"";
    sb_ratio mm;
    if (!read_as(run, text, at, decimal_comma, SB_DIM_LENGTH, expected, (sb_ratio){1, 1}, &mm))
        return false;
    int64_t nm = sb_ratio_whole(mm, SB_NM_PER_MM);
    const int64_t most = (int64_t)MOST_KM * 1000 * 1000 * SB_NM_PER_MM;
    if (nm == SB_BAD || nm > most || nm < -most)
        return refuse(run, at, expected, "lengths above 1 km are refused");
    out->nm = nm;
    return true;
}

bool sb_read_angle(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_angle *out) {
    static const char expected[] = "an angle such as 22.5 or 22deg30min";
    sb_ratio udeg;
    if (!read_as(run, text, at, decimal_comma, SB_DIM_ANGLE, expected, (sb_ratio){MICRO, 1}, &udeg))
        return false;
    out->udeg = sb_ratio_whole(udeg, 1);
    return out->udeg == SB_BAD ? refuse(run, at, expected, "this is more than can be counted") : true;
}

bool sb_read_duration(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_duration *out) {
    static const char expected[] = "a time such as 12, 12 min or 1 h 30 min";
    sb_ratio ms;
    if (!read_as(run, text, at, decimal_comma, SB_DIM_TIME, expected, (sb_ratio){60000, 1}, &ms))
        return false;
    out->ms = sb_ratio_whole(ms, 1);
    return out->ms == SB_BAD ? refuse(run, at, expected, "this is more than can be counted") : true;
}

/* ---- numbers -------------------------------------------------------------------------------------- */

/* What stands behind the number, for those who write the currency there. */
static const char *behind_number(const char *text) {
    text += strspn(text, "-0123456789.,");
    return text + strspn(text, " ");
}

bool sb_read_money(sb_run *run, const char *text, sb_place at, bool decimal_comma, int digits,
                   sb_money *out) {
    static const char *const finest[] = {"whole units in this currency", "one decimal", "two decimals",
                                         "three decimals", "four decimals"};
    static const char expected[] = "an amount of money";
    sb_ratio amount;
    sb_currency currency;
    if (sb_currency_find(behind_number(text), &currency))
        return refuse(run, at, expected, "it is written without its currency, which the shop sets once");
    return read_as(run, text, at, decimal_comma, SB_DIM_NUMBER, expected, (sb_ratio){1, 1}, &amount) &&
           whole(run, at, expected, amount, wide_power_of_ten(digits),
                 finest[digits >= 0 && digits <= 4 ? digits : 2], &out->minor);
}

bool sb_read_micro(sb_run *run, const char *text, sb_place at, bool decimal_comma, int64_t *micro) {
    sb_ratio amount;
    return read_as(run, text, at, decimal_comma, SB_DIM_NUMBER, "a number", (sb_ratio){1, 1}, &amount) &&
           whole(run, at, "a number", amount, MICRO, "six decimals", micro);
}

bool sb_read_share(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_share *out) {
    static const char expected[] = "a percentage such as 12 or 12 %";
    sb_quantity q;
    const char *why;
    if (!sb_quantity_read(run, text, decimal_comma, &q, &why))
        return refuse(run, at, expected, why);
    if (!sb_dimension_same(q.dimension, SB_DIM_NUMBER))
        return refuse(run, at, expected,
                      sb_pool_print(run->pool, "\"%s\" is %s", text, sb_dimension_name(run, q.dimension)));
    return whole(run, at, expected, q.amount, q.has_unit ? MICRO : MICRO / 100, "four decimals", &out->ppm);
}

static bool only_digits(const char *text) {
    return *text && strspn(text, "0123456789") == strlen(text);
}

bool sb_read_count(sb_run *run, const char *text, sb_place at, int64_t *out) {
    int64_t value = 0;
    if (*text == '-' && only_digits(text + 1))
        return refuse(run, at, "a count", "it may not be negative");
    if (!only_digits(text))
        return refuse(run, at, "a count", sb_pool_print(run->pool, "\"%s\" is not a whole number", text));
    for (const char *digit = text; *digit && value <= MOST_COUNT; digit++)
        value = value * 10 + (*digit - '0');
    if (value > MOST_COUNT)
        return refuse(run, at, "a count", "it is above 1000000000");
    *out = value;
    return true;
}

/* ---- dates and answers ------------------------------------------------------------------------------ */

static int number_at(const char *text, int digits) {
    int value = 0;
    for (int i = 0; i < digits; i++)
        value = value * 10 + (text[i] - '0');
    return value;
}

static bool date_shaped(const char *text) {
    static const char shape[] = "dddd-dd-dd";
    size_t i = 0;
    for (; shape[i]; i++)
        if (shape[i] == 'd' ? text[i] < '0' || text[i] > '9' : text[i] != shape[i])
            return false;
    return text[i] == 0;
}

bool sb_read_date(sb_run *run, const char *text, sb_place at, sb_date *out) {
    static const char expected[] = "a date such as 2026-03-31";
    if (!date_shaped(text))
        return refuse(run, at, expected, sb_pool_print(run->pool, "\"%s\" is not year-month-day", text));
    sb_date d = {number_at(text, 4), number_at(text + 5, 2), number_at(text + 8, 2)};
    sb_date back = sb_date_plus(d, 0); /* a day that the calendar lacks comes back as another */
    if (d.year == 0 || d.month < 1 || d.month > 12 || d.day < 1 || back.month != d.month || back.day != d.day)
        return refuse(run, at, expected, sb_pool_print(run->pool, "\"%s\" is not in the calendar", text));
    *out = d;
    return true;
}

bool sb_read_yes(sb_run *run, const char *text, sb_place at, bool *out) {
    bool yes = strcmp(text, "yes") == 0, no = strcmp(text, "no") == 0;
    if (!yes && !no)
        return refuse(run, at, "yes or no", sb_pool_print(run->pool, "\"%s\" is neither", text));
    *out = yes;
    return true;
}
