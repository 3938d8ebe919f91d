/* Names and measures in formulas, looked over without making anything. */
#include "bench.h"

#include <time.h>

#define HEAD                                                                                                 \
    "recipe a\n"                                                                                             \
    "input long 1 m\n"                                                                                       \
    "choice sides slatted | panelled\n"                                                                      \
    "stock slat larch-20x95\n"                                                                               \
    "let rows floor(long / slat.width)\n"                                                                    \
    "joint corner 4\n"                                                                                       \
    "part leg\n of slat\n length long\n"

static void what_is_there_is_known(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe =
        recipe_of(run, HEAD "size long, slat.thickness, rows * 1 mm\n"
                            "check sides = slatted or slat.density * 1 m3 > 300 kg : x\n"
                            "repeat row from 1 to rows\n"
                            "repeat peg from row to rows when peg < row\n"
                            "fixing screw peg + row per joint corner when row > 2\n"
                            "end\nend\n"
                            "component c\n recipe d\n set make solid\n set w long / 2\n");
    sb_recipe_look_over(run, recipe);
    assert_int_equal(sb_notices_count(run, SB_NOTE), 1);
    assert_string_equal(sb_notices_message(run, 0) ? sb_notices_message(run, 0) : "",
                        "unknown name \"peg\"; known: row, sides, long, rows, slatted, panelled");
}

typedef struct name_case {
    const char *line, *says;
    size_t column;
} name_case;

static void assert_told(const name_case *cases, size_t count) {
    for (size_t i = 0; i < count; i++) {
        sb_run run = sb_run_new();
        const char *text = sb_pool_print(run.pool, HEAD "%s", cases[i].line);
        sb_recipe_look_over(&run, recipe_of(&run, text));
        assert_only_notice(&run, text, 10, cases[i].column, cases[i].says);
        sb_run_free(&run);
    }
}

static void what_is_not_there_is_told(void **state) {
    static const name_case cases[] = {
        {"let a lnog", "unknown name \"lnog\"; did you mean \"long\"?", 7},
        {"let a long-20", "one word: write blanks around the minus: long - 20", 7},
        {"let a slat", "which measure of slat: expected slat.thickness, slat.width, slat.density", 7},
        {"let a slat.length", "slat has no 'length': expected slat.thickness, slat.width, slat.density", 7},
        {"let a slat.widht", "slat has no 'widht': expected slat.thickness, slat.width, slat.density", 7},
        {"let a salt.width", "unknown name before the dot \"salt\"; did you mean \"slat\"?", 7},
        {"let a long.width", "long is a single value", 7},
        {"let a leg.width", "unknown name before the dot \"leg\"", 7},
        {"size long, q", "unknown name \"q\"", 12},
        {"input wide 3 mm + q", "unknown name \"q\"", 19},
        {"input wide 3 mm from q", "unknown name \"q\"", 22},
        {"input wide 3 mm to q", "unknown name \"q\"", 20},
        {"check q > 3 : x", "unknown name \"q\"", 7},
        {"stock post oak when sides = slated", "unknown word for sides \"slated\"; did you mean \"slatted\"?", 29},
        {"joint b q", "unknown name \"q\"", 9},
        {"fixing screw q", "unknown name \"q\"", 14},
        {"fixing screw 3 when q = 3", "unknown name \"q\"", 21},
        {"finish oil q coats on all", "unknown name \"q\"", 12},
        {"glue pva q per piece", "unknown name \"q\"", 10},
        {"work sand max(3, q)", "unknown name \"q\"", 18},
        {"note saw when q : x", "unknown name \"q\"", 15},
    };
    assert_told(cases, sizeof cases / sizeof *cases);
    (void)state;
}

/* Whether it is used or not, whichever branch is taken, whatever the choice. */
static void measures_that_do_not_fit(void **state) {
    static const name_case cases[] = {
        {"let unused long + 3", "cannot add a bare number (3) to a length (long): write a unit", 12},
        {"let a if(long > 1 m, 2, long * long + long)", "cannot add a length (long) to an area", 25},
        {"let a if(sides = slatted, long, 3)", "if gives a length (long) or a bare number (3)", 7},
        {"let a if(sides = slatted, long, 2 m) + 1 deg", "cannot add an angle (1 deg) to a length", 7},
        {"check long > 1 m or long > 3 : x", "cannot compare a length (long) with a bare number (3)", 21},
        {"check sides > slatted : x", "a word (sides) has no order", 7},
        {"check long : x", "expected a condition", 7},
        {"joint b 2 when long", "expected a condition", 16},
        {"joint b long", "expected a number, and this is a length", 9},
        {"joint b sides", "expected a number, and this is a word", 9},
        {"size long, long * long", "expected a length, and this is an area", 12},
        {"fixing screw long / 2", "expected a number, and this is a length", 14},
        {"finish oil 2 mm coats on all", "expected a number, and this is a length", 12},
        {"glue pva long per piece", "expected an area, and this is a length", 10},
        {"input wide 3 mm from 2 to long", "the limit of wide must be of its own kind: expected a length",
         22},
        {"input wide true", "expected a measure or a number as the default of wide", 12},
        {"stock post oak when rows", "expected a condition", 21},
        {"let a sqrt(long)", "there is no measure for", 7},
        {"let a 1 m / 0", "division by zero", 13},
        {"let a (long + 1 m) ^ 2 + 1 m", "cannot add a length (1 m) to an area", 7},
    };
    assert_told(cases, sizeof cases / sizeof *cases);
    (void)state;
}

/* What depends on the size of an input is nobody's mistake yet. */
static void amounts_are_not_judged(void **state) {
    static const char *const lines[] = {
        "let a 1 / (rows - 8)",
        "let a sqrt(rows - 1000)",
        "let a asin(rows)",
        "let a long ^ rows",
        "let a 100 m * rows ^ 9",
        "joint b rows / 2",
        "joint b rows - 100",
        "input wide long / 2 from long / 3 to long",
        "let a round_up(long, slat.width - slat.thickness)",
        "let a atan2(long - long, rows * 1 mm)",
        "let a -(long - 2 m) + 3 mm",
        "let a not (rows > 3 and sides = slatted)\ncheck a : x",
        "let a min(long, slat.width, 2 m)",
    };
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        sb_run run = sb_run_new();
        sb_recipe_look_over(&run, recipe_of(&run, sb_pool_print(run.pool, HEAD "%s", lines[i])));
        assert_no_notices(&run);
        sb_run_free(&run);
    }
    (void)state;
}

/* Every formula of a part, a component and a repeat is looked at. */
static void formulas_of_blocks(void **state) {
    static const char *const lines[] = {
        "count q",
        "length q",
        "width q",
        "planed q",
        "planed 3 mm by q",
        "allow q",
        "allow 3 mm by q",
        "glued q",
        "glued 0 loss q",
        "glued 0 over q",
        "laminated q",
        "end1 mitre q scale",
        "end2 bevel q scale",
        "ends bevel q piece parallel",
        "when q",
    };
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        sb_run run = sb_run_new();
        const char *text =
            sb_pool_print(run.pool, "recipe a\nstock s oak\npart p\n of s\n %s\n%s%s", lines[i],
                          strncmp(lines[i], "length", 6) == 0 ? "" : " length 1 m\n",
                          strstr(lines[i], "width") || strstr(lines[i], "by") ? "" : " width 3 mm\n");
        if (strstr(lines[i], "allow 3 mm by"))
            text = sb_pool_print(run.pool, "%s width 3 mm\n", text);
        sb_recipe_look_over(&run, recipe_of(&run, text));
        assert_only_notice(&run, text, 5, 1 + strlen(lines[i]) - strlen(strrchr(lines[i], 'q')) + 1,
                           "unknown name \"q\"");
        sb_run_free(&run);
    }
    (void)state;
}

static void formulas_of_components_and_repeats(void **state) {
    static const name_case cases[] = {
        {"component c\nrecipe d\ncount q", "\"q\"", 7},
        {"component c\nrecipe d\nset x 2 * q", "\"q\"", 11},
        {"component c when 1 < 2\n\nset x q / 2", "\"q\"", 7},
        {"repeat i from 1 to 2\n\nfixing x q\nend", "\"q\"", 10},
        {"\n\nrepeat i from q to 2\nfixing x i\nend", "\"q\"", 15},
        {"repeat i from 1 to 2\nend\nfixing x i", "\"i\"", 10},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        sb_run run = sb_run_new();
        const char *text = sb_pool_print(run.pool, "recipe a\n%s", cases[i].line);
        sb_recipe_look_over(&run, recipe_of(&run, text));
        assert_only_notice(&run, text, 4, cases[i].column, cases[i].says);
        sb_run_free(&run);
    }
    (void)state;
}

/* A line that cannot be read still gives its name, so that one mistake is told once. */
static void one_mistake_is_told_once(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe a\ninput long\nlet x long * 2\nlet y x + z)\nlet w y\n");
    sb_recipe_look_over(run, recipe);
    assert_int_equal(sb_notices_count(run, SB_NOTE), 3);
    assert_non_null(strstr(sb_notices_message(run, 0), "expected the default"));
    assert_non_null(strstr(sb_notices_message(run, 1), "expected the end of the line, found \")\""));
    assert_non_null(strstr(sb_notices_message(run, 2), "unknown name \"z\""));
}

/* A generated recipe may be long: time goes with its lines, not with their square. */
static void many_names_in_time(void **state) {
    sb_run *run = *state;
    enum {
        LINES = 100000,
        ROOM = 32
    };
    char *text = sb_pool_alloc(run->pool, (size_t)LINES * ROOM), *at = text;
    at += sprintf(at, "recipe a\nlet v0 1 mm\n");
    for (int i = 1; i < LINES; i++)
        at += sprintf(at, "let v%d v%d + 1 mm\n", i, i - 1);
    clock_t before = clock();
    recipe_of(run, text);
    assert_true((double)(clock() - before) / CLOCKS_PER_SEC < 20);
    assert_no_notices(run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(what_is_there_is_known),       cmocka_unit_test(what_is_not_there_is_told),
        cmocka_unit_test(formulas_of_blocks),       cmocka_unit_test(formulas_of_components_and_repeats),
        cmocka_unit_test(measures_that_do_not_fit), cmocka_unit_test(amounts_are_not_judged),
        AT_THE_BENCH(one_mistake_is_told_once),     AT_THE_BENCH(many_names_in_time),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
