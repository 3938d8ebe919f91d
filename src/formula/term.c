/* Values: making them, and writing them for people. */
#include "formula/term.h"

#include <inttypes.h>
#include <math.h>
#include <string.h>

/* ---- terms ---- */

sb_term sb_term_none(void) {
    return (sb_term){.kind = SB_VALUE_NONE};
}

sb_term sb_term_quantity(sb_number number, sb_dimension dimension) {
    return (sb_term){.kind = SB_VALUE_QUANTITY, .number = number, .dimension = dimension};
}

sb_term sb_term_truth(bool truth) {
    return (sb_term){.kind = SB_VALUE_TRUTH, .truth = truth};
}

sb_term sb_term_word(const char *word) {
    return (sb_term){.kind = SB_VALUE_WORD, .word = word};
}

sb_term sb_term_open(sb_term term) {
    term.open = true;
    term.number = sb_number_whole(1);
    return term;
}

sb_term sb_term_of(sb_value value) {
    sb_number number = value.exact ? sb_number_of(value.ratio) : sb_number_real(value.real);
    return (sb_term){value.kind, value.dimension, number, value.truth, value.word, value.open};
}

sb_value sb_term_value(sb_term term) {
    bool exact = term.kind == SB_VALUE_QUANTITY && sb_number_exact(term.number);
    return (sb_value){term.kind,        term.dimension, exact,     term.number.ratio,
                      term.number.real, term.truth,     term.word, term.open};
}

/* ---- public values ---- */

static sb_value exact_value(sb_ratio ratio, sb_dimension dimension) {
    sb_number number = sb_number_of(ratio);
    return sb_ratio_ok(ratio) ? sb_term_value(sb_term_quantity(number, dimension))
                              : (sb_value){.kind = SB_VALUE_NONE};
}

sb_value sb_value_length(sb_length length) {
    return exact_value(sb_ratio_of(length.nm, SB_NM_PER_MM), SB_DIM_LENGTH);
}

sb_value sb_value_angle(sb_angle angle) {
    return exact_value(sb_ratio_of(angle.udeg, 1), SB_DIM_ANGLE);
}

sb_value sb_value_count(int64_t number) {
    return exact_value(sb_ratio_of(number, 1), SB_DIM_NUMBER);
}

sb_value sb_value_truth(bool truth) {
    return sb_term_value(sb_term_truth(truth));
}

sb_value sb_value_word(const char *word) {
    return sb_term_value(sb_term_word(word));
}

sb_value sb_value_quantity(sb_quantity quantity) {
    return exact_value(quantity.amount, quantity.dimension);
}

sb_value sb_value_open(sb_value value) {
    return sb_term_value(sb_term_open(sb_term_of(value)));
}

/* ---- writing ---- */

/* Six decimals at most, no more than needed. */
static const char *decimal_text(sb_run *run, sb_number number, bool comma) {
    int64_t millionths;
    if (!sb_number_nearest(number, 1000000, &millionths))
        return sb_pool_print(run->pool, "%.0f", number.real);
    int64_t size = millionths < 0 ? -millionths : millionths;
    const char *sign = millionths < 0 ? "-" : "";
    char *text = sb_pool_print(run->pool, "%s%" PRId64 "%c%06" PRId64, sign, size / 1000000,
                               comma ? ',' : '.', size % 1000000);
    size_t end = strlen(text);
    while (text[end - 1] == '0')
        end--;
    if (text[end - 1] == '.' || text[end - 1] == ',')
        end--;
    text[end] = '\0';
    return text;
}

/* Any dimension but a plain length or angle, which have writers of their own: "1.5 m2", "12.5 per m". */
static const struct base {
    const char *metric, *imperial;
    sb_ratio metric_size, imperial_size; /* base units of sb_quantity in one */
} bases[] = {
    {"m", "ft", {1000, 1}, {3048, 10}},       {"deg", "deg", {1000000, 1}, {1000000, 1}},
    {"kg", "kg", {1000000, 1}, {1000000, 1}}, {"min", "min", {60000, 1}, {60000, 1}},
    {"", "", {1000000, 1}, {1000000, 1}},
};

static const char *with_unit(sb_run *run, const char *units, const char *glue, const char *name,
                             int exponent) {
    if (!*name)
        return units;
    if (exponent == 1)
        return sb_pool_print(run->pool, "%s%s%s", units, glue, name);
    return sb_pool_print(run->pool, "%s%s%s%d", units, glue, name, exponent);
}

static const char *composed_text(sb_run *run, sb_term term, const sb_style *style) {
    sb_dimension d = term.dimension;
    int exponents[] = {d.length, d.angle, d.mass, d.time, d.money};
    bool imperial = style->units == SB_UNITS_IN;
    const char *above = "", *below = "";
    for (size_t i = 0; i < sizeof bases / sizeof *bases; i++) {
        int e = exponents[i];
        const char *name = imperial ? bases[i].imperial : bases[i].metric;
        sb_number size = sb_number_of(imperial ? bases[i].imperial_size : bases[i].metric_size);
        term.number = sb_number_div(term.number, sb_number_power(size, e, 1));
        if (e > 0)
            above = with_unit(run, above, " ", name, e);
        if (e < 0)
            below = with_unit(run, below, " per ", name, -e);
    }
    return sb_pool_print(run->pool, "%s%s%s", decimal_text(run, term.number, style->decimal_comma), above,
                         below);
}

/* A length, or an angle, as its writer wants it: a whole number of base units. */
static const char *measure_text(sb_run *run, sb_term term, const sb_style *style) {
    bool angle = term.dimension.angle == 1;
    int64_t amount;
    if (!sb_number_nearest(term.number, angle ? 1 : SB_NM_PER_MM, &amount))
        return "out of range";
    return angle ? sb_write_angle(run, (sb_angle){amount}, style)
                 : sb_write_length_unit(run, (sb_length){amount}, style);
}

static const char *quantity_text(sb_run *run, sb_term term, const sb_style *style) {
    if (sb_dimension_same(term.dimension, SB_DIM_LENGTH) || sb_dimension_same(term.dimension, SB_DIM_ANGLE))
        return measure_text(run, term, style);
    return composed_text(run, term, style);
}

const char *sb_term_text(sb_run *run, sb_term term, const sb_style *style) {
    static const sb_style plain = {.units = SB_UNITS_MM};
    switch (term.kind) {
    case SB_VALUE_QUANTITY:
        return quantity_text(run, term, style ? style : &plain);
    case SB_VALUE_TRUTH:
        return term.truth ? "true" : "false";
    case SB_VALUE_WORD:
        return term.word;
    case SB_VALUE_NONE:
        break;
    }
    return "unknown";
}

const char *sb_value_text(sb_run *run, sb_value value, const sb_style *style) {
    return sb_term_text(run, sb_term_of(value), style);
}

const char *sb_term_kind(sb_run *run, sb_term term) {
    switch (term.kind) {
    case SB_VALUE_QUANTITY:
        return sb_dimension_name(run, term.dimension);
    case SB_VALUE_TRUTH:
        return "a yes or no";
    case SB_VALUE_WORD:
        return "a word";
    case SB_VALUE_NONE:
        break;
    }
    return "nothing known";
}
