/* What a recipe says besides its parts. */
#include "bench.h"

static void head_of_a_recipe(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "# a remark\n"
                                             "recipe   step-stool\n"
                                             "title    Step stool   # for the shelf\n"
                                             "about    Two sides and two treads;\n"
                                             "about    the treads are housed.\n"
                                             "size     long, deep, high + 3 mm\n"
                                             "input    long 400 mm\n"
                                             "input deep 1 ft\n"
                                             "input high 300 mm");
    assert_no_notices(run);
    assert_string_equal(recipe->name, "step-stool");
    assert_string_equal(recipe->title, "Step stool");
    assert_string_equal(recipe->about, "Two sides and two treads; the treads are housed.");
    assert_written(run, recipe->size[0], "long");
    assert_written(run, recipe->size[2], "high + 3 mm");
    assert_int_equal(line_of(recipe->place), 2);
}

static void a_recipe_without_title_is_called_by_its_name(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe step-stool\nsize 1 m, 2 m");
    assert_no_notices(run);
    assert_string_equal(recipe->title, "step stool");
    assert_non_null(recipe->size[1]);
    assert_null(recipe->size[2]);
}

static void inputs_choices_and_derived_values(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe a\n"
                                             "input  long 1000 mm from 400 mm to 2400 mm : outside\n"
                                             "input  rows 3 from 1\n"
                                             "input  gap  1/4\" to 3/8\"\n"
                                             "choice sides slatted | panelled : slats, or plywood\n"
                                             "choice lid yes | no\n"
                                             "choice floor-in yes | no\n"
                                             "let    inner long - 2 * gap : between the posts\n");
    assert_no_notices(run);
    assert_int_equal(recipe->inputs.count, 3);
    const sb_recipe_input *input = recipe->inputs.items;
    assert_string_equal(input[0].name, "long");
    assert_string_equal(input[0].text, "outside");
    assert_written(run, input[0].standard, "1000 mm");
    assert_written(run, input[0].least, "400 mm");
    assert_written(run, input[0].most, "2400 mm");
    assert_written(run, input[1].least, "1");
    assert_null(input[1].most);
    assert_null(input[2].least);
    assert_written(run, input[2].most, "3/8\"");
    assert_int_equal(recipe->choices.count, 3);
    assert_int_equal(recipe->choices.items[0].words.count, 2);
    assert_string_equal(recipe->choices.items[0].words.items[1], "panelled");
    assert_string_equal(recipe->choices.items[0].text, "slats, or plywood");
    assert_written(run, recipe->lets.items[0].formula, "long - 2 * gap");
}

static void checks_stop_and_advice_tells(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe a\ninput long 1 m\nchoice s x | y\n"
                                             "check long >= 2 m : too short: it tips over\n"
                                             "advise long <= 3 m when s = x : sags\n");
    assert_no_notices(run);
    assert_false(recipe->checks.items[0].advice);
    assert_string_equal(recipe->checks.items[0].text, "too short: it tips over");
    assert_written(run, recipe->checks.items[0].condition, "long >= 2 m");
    assert_true(recipe->checks.items[1].advice);
    assert_written(run, recipe->checks.items[1].guard.when, "s = x");
}

static void a_role_may_have_several_lines(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe a\nchoice make sheet | solid\n"
                                             "stock board pine-18x145 when make = solid\n"
                                             "stock board birch-ply-18\n"
                                             "stock floor 2x4-fir\n");
    assert_no_notices(run);
    assert_int_equal(recipe->roles.count, 3);
    assert_string_equal(recipe->roles.items[0].stock, "pine-18x145");
    assert_written(run, recipe->roles.items[0].guard.when, "make = solid");
    assert_string_equal(recipe->roles.items[2].role, "floor");
    assert_string_equal(recipe->roles.items[2].stock, "2x4-fir");
}

#define PARTS                                                                                                \
    "recipe a\nstock leg oak\nstock oil deck-oil\npart leg\nof leg\nlength 1 m\npart rail\nof leg\nlength "  \
    "1 m\n"

static void joints_fixings_and_glue(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe =
        recipe_of(run, PARTS "joint  corner 2 * 2 : mitred\n"
                             "fixing screw-5x60 4 per part leg\n"
                             "fixing hinge 2\n"
                             "fixing bolt 1 per joint corner when 1 < 2\n"
                             "fixing blade 1 per batch\n"
                             "glue   glue-wood leg.width * leg.thickness per joint corner\n");
    assert_no_notices(run);
    assert_written(run, recipe->joints.items[0].count, "2 * 2");
    assert_string_equal(recipe->joints.items[0].text, "mitred");
    const sb_recipe_fixing *fixing = recipe->fixings.items;
    assert_int_equal(fixing[0].basis, SB_PER_THE_PART);
    assert_string_equal(fixing[0].of, "leg");
    assert_string_equal(fixing[0].stock, "screw-5x60");
    assert_int_equal(fixing[1].basis, SB_PER_THE_PIECE);
    assert_null(fixing[1].of);
    assert_int_equal(fixing[2].basis, SB_PER_THE_JOINT);
    assert_written(run, fixing[2].guard.when, "1 < 2");
    assert_int_equal(fixing[3].basis, SB_PER_THE_BATCH);
    assert_written(run, recipe->glues.items[0].area, "leg.width * leg.thickness");
    assert_string_equal(recipe->glues.items[0].of, "corner");
}

static void finish_and_work(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe =
        recipe_of(run, PARTS "joint  corner 4\n"
                             "finish oil 2 coats on outside of leg, rail\n"
                             "finish oil 1 coat on ends\n"
                             "work   mortise-tenon per joint corner\n"
                             "work   assemble 12 + 3 per piece when 1 < 2 : on the flat\n"
                             "work   sand on all of rail\n"
                             "work   plane 4 * 3 m per part leg\n"
                             "work   set-up per batch\n");
    assert_no_notices(run);
    assert_int_equal(recipe->finishes.items[0].surface, SB_SURFACE_OUTSIDE);
    assert_int_equal(recipe->finishes.items[0].parts.count, 2);
    assert_string_equal(recipe->finishes.items[0].parts.items[1], "rail");
    assert_int_equal(recipe->finishes.items[1].surface, SB_SURFACE_ENDS);
    assert_int_equal(recipe->finishes.items[1].parts.count, 0);
    const sb_recipe_work *work = recipe->works.items;
    assert_null(work[0].quantity);
    assert_int_equal(work[0].basis, SB_PER_THE_JOINT);
    assert_written(run, work[1].quantity, "12 + 3");
    assert_string_equal(work[1].text, "on the flat");
    assert_non_null(work[1].guard.when);
    assert_true(work[2].on_surface);
    assert_string_equal(work[2].parts.items[0], "rail");
    assert_string_equal(work[3].of, "leg");
    assert_int_equal(work[4].basis, SB_PER_THE_BATCH);
    assert_false(work[4].on_surface);
}

/* A part may be named before its block comes. */
static void the_order_of_lines_does_not_matter(void **state) {
    sb_run *run = *state;
    recipe_of(run,
              "fixing screw 4 per part leg\nwork x per joint j\npart leg\nof leg\nlength 1 m\njoint j 4\n"
              "stock leg oak\nrecipe a\n");
    assert_no_notices(run);
}

/* ---- notes ---------------------------------------------------------------------------------------------- */

static void notes_for_the_saw_and_for_the_quote(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, PARTS "  note fit it last\n"
                                                   "note saw : cut in pairs\n"
                                                   "note quote when 1 < 2 : delivered oiled\n");
    assert_no_notices(run);
    assert_string_equal(recipe->parts.items[1].note, "fit it last");
    assert_int_equal(recipe->notes.count, 2);
    assert_false(recipe->notes.items[0].for_quote);
    assert_string_equal(recipe->notes.items[0].text, "cut in pairs");
    assert_true(recipe->notes.items[1].for_quote);
    assert_non_null(recipe->notes.items[1].guard.when);
}

/* ---- repeat ----------------------------------------------------------------------------------------------- */

static void repeats_nest(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe a\nstock leg oak\n"
                                             "repeat row from 1 to 3\n"
                                             "  repeat side from 1 to row when row > 1\n"
                                             "    part peg\n"
                                             "      of leg\n"
                                             "      length row * 10 mm\n"
                                             "  end\n"
                                             "  fixing screw row\n"
                                             "end\n"
                                             "repeat row from 2 to 4\n"
                                             "check row < 5 : never\n"
                                             "end\n"
                                             "work pack\n");
    assert_no_notices(run);
    const sb_recipe_loop *inner = recipe->parts.items[0].guard.loop, *outer = inner->guard.loop;
    assert_string_equal(inner->name, "side");
    assert_written(run, inner->to, "row");
    assert_written(run, inner->guard.when, "row > 1");
    assert_string_equal(outer->name, "row");
    assert_null(outer->guard.loop);
    assert_ptr_equal(recipe->fixings.items[0].guard.loop, outer);
    assert_ptr_not_equal(recipe->checks.items[0].guard.loop, outer);
    assert_written(run, recipe->checks.items[0].guard.loop->from, "2");
    assert_null(recipe->works.items[0].guard.loop);
}

/* ---- components --------------------------------------------------------------------------------------------- */

static void recipes_inside_a_recipe(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe = recipe_of(run, "recipe a\ninput long 1 m\n"
                                             "component left-trough : the left one\n"
                                             "  recipe trough-planter\n"
                                             "  count  2\n"
                                             "  set    long long / 2\n"
                                             "  set    sides panelled\n"
                                             "  stock  slat larch-20x95\n"
                                             "  when   long > 1 m\n"
                                             "component drawer when long > 2 m\n");
    assert_no_notices(run);
    assert_int_equal(recipe->components.count, 2);
    const sb_recipe_component *c = recipe->components.items;
    assert_string_equal(c[0].title, "the left one");
    assert_string_equal(c[0].recipe, "trough-planter");
    assert_int_equal(line_of(c[0].recipe_place), 4);
    assert_written(run, c[0].count, "2");
    assert_written(run, c[0].sets.items[0].formula, "long / 2");
    assert_string_equal(c[0].sets.items[1].name, "sides");
    assert_string_equal(c[0].stocks.items[0].stock, "larch-20x95");
    assert_written(run, c[0].guard.when, "long > 1 m");
    assert_string_equal(c[1].recipe, "drawer");
    assert_written(run, c[1].guard.when, "long > 2 m");
}

static void decimal_commas(void **state) {
    sb_run *run = *state;
    const char *text = "recipe a\nsize 1,5 m, 0,5 m\ninput thick 2,5 mm from 1,5 mm to 3,5 mm\n";
    const sb_recipe *recipe = sb_recipe_of(run, sb_source_of(run, "a.recipe", text), true);
    assert_no_notices(run);
    assert_written(run, recipe->size[1], "0,5 m");
    assert_written(run, recipe->inputs.items[0].most, "3,5 mm");
}

static void a_file_of_any_kind_of_line_ends(void **state) {
    sb_run *run = *state;
    const sb_recipe *recipe =
        recipe_of(run, "\xEF\xBB\xBFrecipe a\r\nstock leg oak\r\npart leg\r\n\tof\tleg\r\n"
                       "\tlength\t3' 11-1/4\"\r\n");
    assert_no_notices(run);
    assert_written(run, recipe->parts.items[0].length, "3' 11-1/4\"");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(head_of_a_recipe),
        AT_THE_BENCH(a_recipe_without_title_is_called_by_its_name),
        AT_THE_BENCH(inputs_choices_and_derived_values),
        AT_THE_BENCH(checks_stop_and_advice_tells),
        AT_THE_BENCH(a_role_may_have_several_lines),
        AT_THE_BENCH(joints_fixings_and_glue),
        AT_THE_BENCH(finish_and_work),
        AT_THE_BENCH(the_order_of_lines_does_not_matter),
        AT_THE_BENCH(notes_for_the_saw_and_for_the_quote),
        AT_THE_BENCH(repeats_nest),
        AT_THE_BENCH(recipes_inside_a_recipe),
        AT_THE_BENCH(decimal_commas),
        AT_THE_BENCH(a_file_of_any_kind_of_line_ends),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
