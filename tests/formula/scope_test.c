/* Names, words, attributes; what is added to what; chains that close. */
#include "desk.h"

static void furnish(desk *d) {
    sb_scope_set(&d->run, d->scope, "long", sb_value_length(SB_MM(1000)));
    sb_scope_set(&d->run, d->scope, "wide", sb_value_length(SB_MM(400)));
    sb_scope_set(&d->run, d->scope, "high", sb_value_length(SB_MM(450)));
    sb_scope_set(&d->run, d->scope, "top-rail", sb_value_length(SB_MM(70)));
    sb_scope_set(&d->run, d->scope, "rows", sb_value_count(3));
    sb_scope_set(&d->run, d->scope, "splay", sb_value_angle((sb_angle){12000000}));
    sb_scope_set(&d->run, d->scope, "sides", sb_value_word("slatted"));
    sb_scope_word(&d->run, d->scope, "slatted");
    sb_scope_word(&d->run, d->scope, "panelled");
    sb_scope_set_attribute(&d->run, d->scope, "slat", "width", sb_value_length(SB_MM(95)));
    sb_scope_set_attribute(&d->run, d->scope, "slat", "thickness", sb_value_length(SB_MM(20)));
}

static void what_was_added_to_what(void **state) {
    static const struct {
        const char *text, *words, *at;
    } cases[] = {
        {"high + long * wide", "cannot add an area (long * wide) to a length (high)", "high + long * wide"},
        {"long * wide - high", "cannot take a length (high) from an area (long * wide)",
         "long * wide - high"},
        {"(long * wide) + (high)", "cannot add a length (high) to an area (long * wide)",
         "(long * wide) + (high)"},
        {"high + 20", "cannot add a bare number (20) to a length (high): write a unit, for example 20 mm",
         "high + 20"},
        {"20 + high", "write a unit, for example 20 mm", "20 + high"},
        {"high + -20", "write a unit, for example -20 mm", "high + -20"},
        {"splay + 5", "write a unit, for example 5 deg", "splay + 5"},
        {"long * wide + 2", "write a unit, for example 2 m2", "long * wide + 2"},
        {"high + rows", "cannot add a bare number (rows) to a length (high)", "high + rows"},
        {"high > 0", "cannot compare a length (high) with a bare number (0): write a unit, for example 0 mm",
         "high > 0"},
        {"high + 0", "write a unit, for example 0 mm", "high + 0"},
        {"high < splay", "cannot compare a length (high) with an angle (splay)", "high < splay"},
        {"sides = 3", "cannot compare a word (sides) with a bare number (3)", "sides = 3"},
        {"sides < slatted", "only = and != can compare it", "sides < slatted"},
        {"sides + 1", "cannot add a bare number (1) to a word (sides)", "sides + 1"},
        {"-sides", "and this is a word (sides)", "-sides"},
        {"(1 < 2) * 3", "cannot multiply a yes or no (1 < 2) by a bare number (3)", "(1 < 2) * 3"},
        {"rows and true", "expected a condition such as rows > 0", "rows"},
        {"true or rows = 3 and high", "", NULL},
        {"not high", "expected a condition", "high"},
        {"if(rows, 1, 2)", "expected a condition", "rows"},
    };
    furnish(*state);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        if (cases[i].at)
            assert_error(*state, cases[i].text, cases[i].words, cases[i].at);
        else
            assert_value(*state, cases[i].text, "true"); /* settled by its left side */
}

/* Long formulas are shortened in messages, between characters. */
static void a_long_formula_is_shortened(void **state) {
    desk *d = *state;
    const char *start = "aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa"; /* 56 */
    const char *name = sb_pool_print(d->run.pool, "%säbbbbbb", start);
    sb_scope_set(&d->run, d->scope, name, sb_value_length(SB_MM(1)));
    const char *text = sb_pool_print(d->run.pool, "%s + 3", name);
    assert_error(d, text, sb_pool_print(d->run.pool, "to a length (%s...):", start), text);
}

static void only_what_is_needed_is_evaluated(void **state) {
    furnish(*state);
    assert_value(*state, "if(rows = 0, long / rows, long / (rows + 1))", "250 mm");
    assert_value(*state, "if(rows > 0, 1, 1 / 0)", "1");
    assert_value(*state, "rows = 0 and long / 0 > 1 mm", "false");
    assert_value(*state, "rows = 3 or long / 0 > 1 mm", "true");
}

static void words_are_choices(void **state) {
    furnish(*state);
    assert_value(*state, "sides = slatted", "true");
    assert_value(*state, "sides = panelled", "false");
    assert_value(*state, "sides != panelled", "true");
    assert_value(*state, "if(sides = slatted, panelled, sides)", "panelled");
    assert_error(*state, "sides = slated", "slatted", "slated");
}

static void unknown_names(void **state) {
    furnish(*state);
    assert_error(*state, "2 * logn", "long", "logn");
    assert_error(*state, "long-20", "write blanks around the minus: long - 20", "long-20");
    assert_error(*state, "top-rail-wide", "write blanks around the minus: top-rail - wide", "top-rail-wide");
    assert_error(*state, "20-long", "write blanks around the minus: 20 - long", "20-long");
    assert_value(*state, "high - top-rail", "380 mm");
    assert_error(*state, "slat.widht", "slat has no 'widht': expected slat.width, slat.thickness",
                 "slat.widht");
    assert_error(*state, "slta.width", "slat", "slta.width");
    assert_error(*state, "long.width", "long is a single value", "long.width");
    assert_error(*state, "2 * slat", "which measure of slat: expected slat.width, slat.thickness", "slat");
}

typedef struct notebook {
    sb_pool *pool;
    const char *seen;
} notebook;

static void note_name(void *context, const char *owner, const char *attribute, sb_place at) {
    notebook *notes = context;
    assert_true(at.length > 0);
    notes->seen = sb_pool_print(notes->pool, "%s%s%s%s;", notes->seen, owner, attribute ? "." : "",
                                attribute ? attribute : "");
}

/* From left to right, branches not taken included. */
static void a_formula_tells_its_names(void **state) {
    desk *d = *state;
    notebook notes = {d->run.pool, ""};
    sb_formula_names(read_formula(d, "if(a < 2, -b.c ^ d, max(a, 3 mm, (e)))"), note_name, &notes);
    assert_string_equal(notes.seen, "a;b.c;d;a;e;");
}

static void both_sides_are_told(void **state) {
    desk *d = *state;
    furnish(d);
    const sb_formula *formula = read_formula(d, "(lonf + high * splat) / hihg + (long + 3)");
    assert_int_equal(sb_formula_value(&d->run, formula, d->scope).kind, SB_VALUE_NONE);
    assert_int_equal(sb_notices_count(&d->run, SB_ERROR), 4);
}

static void a_mistake_in_a_let_is_told_once(void **state) {
    desk *d = *state;
    furnish(d);
    let(d, "bad", "long + 3");
    let(d, "worse", "bad * 2 + bad");
    assert_error(d, "worse + bad + worse", "cannot add a bare number (3)", "long + 3");
    size_t told = sb_notices_count(&d->run, SB_NOTE);
    sb_length length;
    assert_false(sb_formula_length(&d->run, read_formula(d, "bad - long"), d->scope, &length));
    assert_int_equal(sb_notices_count(&d->run, SB_NOTE), told);
}

/* ---- scopes ---- */

static void order_of_lines_does_not_matter(void **state) {
    desk *d = *state;
    let(d, "area", "inner * wide");
    let(d, "inner", "long - 2 * wall");
    let(d, "wall", "20 mm");
    furnish(d);
    assert_value(d, "area", "0.384 m2");
}

static void inner_scopes_hide_outer_names(void **state) {
    desk *d = *state;
    furnish(d);
    let(d, "half", "long / 2");
    sb_scope *inner = sb_scope_new(&d->run, d->scope), *outer = d->scope;
    d->scope = inner;
    assert_true(sb_scope_set(&d->run, inner, "long", sb_value_length(SB_MM(600))));
    assert_false(sb_scope_set(&d->run, inner, "long", sb_value_length(SB_MM(700))));
    assert_value(d, "long", "600 mm");
    assert_value(d, "wide", "400 mm");
    assert_value(d, "slat.width", "95 mm");
    assert_value(d, "sides = slatted", "true");
    assert_value(d, "half", "500 mm"); /* a name means what it means where it stands */
    let(d, "third", "long / 3");
    assert_value(d, "third", "200 mm");
    assert_true(sb_scope_has(inner, "wide"));
    assert_true(sb_scope_has(inner, "third"));
    assert_false(sb_scope_has(outer, "third"));
    assert_false(sb_scope_has(inner, "slatted"));
    assert_error(d, "thrid", "third", "thrid");
    assert_error(d, "lonng", "long", "lonng");
}

static void names_win_over_words(void **state) {
    desk *d = *state;
    sb_scope_word(&d->run, d->scope, "oak");
    assert_value(d, "oak", "oak");
    assert_true(sb_scope_set(&d->run, d->scope, "oak", sb_value_count(5)));
    assert_value(d, "oak", "5");
}

/* ---- circles ---- */

static void a_circle_is_shown_once(void **state) {
    desk *d = *state;
    let(d, "c", "a * 2");
    let(d, "a", "b + 1 mm");
    let(d, "b", "a - 1 mm");
    assert_error(d, "c + a + b", "a depends on itself: a -> b -> a", "a");
    size_t told = sb_notices_count(&d->run, SB_NOTE);
    static const char *const names[] = {"a", "b", "c"};
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(sb_formula_value(&d->run, read_formula(d, names[i]), d->scope).kind, SB_VALUE_NONE);
    assert_int_equal(sb_notices_count(&d->run, SB_NOTE), told);
}

static void the_shortest_circle(void **state) {
    let(*state, "rows", "rows + 1");
    assert_error(*state, "rows", "rows depends on itself: rows -> rows", "rows");
}

static void a_long_circle(void **state) {
    let(*state, "one", "two");
    let(*state, "two", "max(three, 1)");
    let(*state, "three", "if(true, four, 0)");
    let(*state, "four", "-two");
    assert_error(*state, "one", "two -> three -> four -> two", "two");
}

static void a_branch_not_taken_closes_no_circle(void **state) {
    let(*state, "a", "if(true, 1, b)");
    let(*state, "b", "a + 1");
    assert_value(*state, "b", "2");
}

/* A thousand names, each standing on the next: no stack runs out, and what is too deep is said, once. */
static void long_chains(void **state) {
    desk *d = *state;
    for (int i = 0; i < 5000; i++)
        let(d, sb_pool_print(d->run.pool, "n%d", i), sb_pool_print(d->run.pool, "n%d + 1", i + 1));
    let(d, "n5000", "0");
    assert_value(d, "n4500", "500");
    assert_error(d, "n0", "names stand for names more than 2000 steps deep here", "n1000");
    assert_value(d, "n4200", "800");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(what_was_added_to_what),
        AT_DESK(a_long_formula_is_shortened),
        AT_DESK(only_what_is_needed_is_evaluated),
        AT_DESK(words_are_choices),
        AT_DESK(unknown_names),
        AT_DESK(a_formula_tells_its_names),
        AT_DESK(both_sides_are_told),
        AT_DESK(a_mistake_in_a_let_is_told_once),
        AT_DESK(order_of_lines_does_not_matter),
        AT_DESK(inner_scopes_hide_outer_names),
        AT_DESK(names_win_over_words),
        AT_DESK(a_circle_is_shown_once),
        AT_DESK(the_shortest_circle),
        AT_DESK(a_long_circle),
        AT_DESK(a_branch_not_taken_closes_no_circle),
        AT_DESK(long_chains),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
