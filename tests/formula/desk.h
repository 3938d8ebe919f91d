/* What every formula test sits at: a run, a scope, and short ways to ask. */
#ifndef TESTS_FORMULA_DESK_H
#define TESTS_FORMULA_DESK_H

#include "sawbill/formula.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include <cmocka.h>

typedef struct desk {
    sb_run run;
    sb_scope *scope;
} desk;

static const sb_style millimetres = {.units = SB_UNITS_MM, .step = {1}};

static inline int sit_down(void **state) {
    static desk the_desk;
    the_desk.run = sb_run_new();
    the_desk.scope = sb_scope_new(&the_desk.run, NULL);
    *state = &the_desk;
    return 0;
}

static inline int get_up(void **state) {
    desk *d = *state;
    sb_run_free(&d->run);
    return 0;
}

#define AT_DESK(test) cmocka_unit_test_setup_teardown(test, sit_down, get_up)

/* Reads a formula; what stands behind it goes to `rest`, which may be NULL when nothing may. */
static inline const sb_formula *read_until(desk *d, const char *text, bool decimal_comma, const char **rest) {
    const sb_source *source = sb_source_of(&d->run, "test", text);
    sb_place all = {source, 0, sb_source_size(source)};
    sb_cursor cursor = sb_tokens_of(&d->run, sb_line_lexer(&d->run, decimal_comma), all);
    const sb_formula *formula = sb_formula_parse(&d->run, &cursor, decimal_comma);
    if (rest)
        *rest = cursor.at->text;
    else if (formula)
        sb_expect_end(&d->run, &cursor);
    return formula;
}

static inline const sb_formula *read_formula(desk *d, const char *text) {
    return read_until(d, text, false, NULL);
}

static inline void fail_with_notices(desk *d, const char *text) {
    fail_msg("%s: %s", text, sb_notices_text(&d->run, SB_NOTE, false));
}

static inline sb_value value_of(desk *d, const char *text) {
    size_t before = sb_notices_count(&d->run, SB_NOTE);
    const sb_formula *formula = read_formula(d, text);
    if (!formula)
        fail_with_notices(d, text);
    sb_value value = sb_formula_value(&d->run, formula, d->scope);
    if (sb_notices_count(&d->run, SB_NOTE) != before)
        fail_with_notices(d, text);
    return value;
}

/* Defines a name by a formula, as `let` does. */
static inline void let(desk *d, const char *name, const char *text) {
    const sb_formula *formula = read_formula(d, text);
    if (!formula)
        fail_with_notices(d, text);
    assert_true(sb_scope_set_formula(&d->run, d->scope, name, formula));
}

static inline void assert_value(desk *d, const char *text, const char *expected) {
    const char *got = sb_value_text(&d->run, value_of(d, text), &millimetres);
    if (strcmp(got, expected) != 0)
        fail_msg("%s: expected %s, got %s", text, expected, got);
}

static inline void assert_ratio(desk *d, const char *text, int64_t num, int64_t den) {
    sb_value value = value_of(d, text);
    if (!value.exact || value.ratio.num != num || value.ratio.den != den)
        fail_msg("%s: expected exactly %lld/%lld, got %s %lld/%lld (%.12g)", text, (long long)num,
                 (long long)den, value.exact ? "exactly" : "inexactly", (long long)value.ratio.num,
                 (long long)value.ratio.den, value.real);
}

static inline void assert_near(desk *d, const char *text, double expected, double tolerance) {
    double real = value_of(d, text).real;
    if (!(real >= expected - tolerance && real <= expected + tolerance))
        fail_msg("%s: expected %.9g, got %.9g", text, expected, real);
}

/* The text gives exactly one error, with these words in it, about these characters of the text. */
static inline void assert_error(desk *d, const char *text, const char *words, const char *at) {
    size_t before = sb_notices_count(&d->run, SB_NOTE);
    const sb_formula *formula = read_formula(d, text);
    if (formula)
        assert_int_equal(sb_formula_value(&d->run, formula, d->scope).kind, SB_VALUE_NONE);
    if (sb_notices_count(&d->run, SB_NOTE) != before + 1)
        fail_msg("%s: expected one error, got %zu: %s", text, sb_notices_count(&d->run, SB_NOTE) - before,
                 sb_notices_text(&d->run, SB_NOTE, false));
    const char *message = sb_notices_message(&d->run, before);
    const char *place = sb_place_text(&d->run, sb_notices_place(&d->run, before));
    assert_int_equal(sb_notices_level(&d->run, before), SB_ERROR);
    if (!strstr(message, words))
        fail_msg("%s: expected \"%s\" in: %s", text, words, message);
    if (strcmp(place, at) != 0)
        fail_msg("%s: expected the caret at '%s', got '%s'", text, at, place);
}

#endif
