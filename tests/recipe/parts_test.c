/* Parts: from boards, from sheets, glued up, with their ends. */
#include "bench.h"

#define HEAD                                                                                                 \
    "recipe stand\n"                                                                                         \
    "input high 450 mm\n"                                                                                    \
    "input rake 10 deg\n"                                                                                    \
    "stock leg larch-45x70\n"                                                                                \
    "stock panel birch-ply-18\n"                                                                             \
    "stock tape edging-birch-22\n"

static const sb_recipe_part *part_of(sb_run *run, const char *lines) {
    const sb_recipe *recipe = recipe_of(run, sb_pool_print(run->pool, HEAD "%s", lines));
    assert_no_notices(run);
    assert_int_equal(recipe->parts.count, 1);
    return &recipe->parts.items[0];
}

static void a_part_from_a_board(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part = part_of(run, "part back-leg\n"
                                              "  count  2 * 2\n"
                                              "  of     leg\n"
                                              "  length high - 20 mm  : over the long points\n"
                                              "  allow  3 mm\n"
                                              "  clear\n"
                                              "  note   fit when dry; mark the top\n");
    assert_string_equal(part->name, "back-leg");
    assert_string_equal(part->title, "back leg");
    assert_string_equal(part->role, "leg");
    assert_written(run, part->count, "2 * 2");
    assert_written(run, part->length, "high - 20 mm");
    assert_written(run, part->allow, "3 mm");
    assert_null(part->width);
    assert_null(part->end1.mitre.formula);
    assert_true(part->clear);
    assert_false(part->outside_given);
    assert_string_equal(part->note, "fit when dry; mark the top");
    assert_null(part->guard.when);
    assert_int_equal(line_of(part->guard.place), 7);
}

static void a_part_with_nothing_but_the_needed(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part = part_of(run, "part rail : the lower rail\nof leg\nlength 1 m");
    assert_string_equal(part->title, "the lower rail");
    assert_null(part->count);
    assert_null(part->note);
    assert_false(part->clear || part->sound || part->glued);
}

static void a_part_of_sound_wood(void **state) {
    const sb_recipe_part *part = part_of(*state, "part cleat\nof leg\nlength 300 mm\nsound\n");
    assert_true(part->sound);
    assert_false(part->clear);
}

static void a_panel(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part =
        part_of(run, "part shelf\n of panel\n length 800 mm\n width 300 mm\n grain across\n"
                     " edging tape front left\n allow 2 mm by 1 mm\n");
    assert_int_equal(part->grain, SB_GRAIN_ACROSS);
    assert_string_equal(part->edging_role, "tape");
    assert_int_equal(part->edging_edges, SB_EDGE_FRONT | SB_EDGE_LEFT);
    assert_written(run, part->width, "300 mm");
    assert_written(run, part->allow_width, "1 mm");
}

static void edging_all_round(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part =
        part_of(run, "part shelf\n of panel\n length 800 mm\n width 300 mm\n edging edging-birch-22 all\n");
    assert_int_equal(part->edging_edges, SB_EDGE_FRONT | SB_EDGE_BACK | SB_EDGE_LEFT | SB_EDGE_RIGHT);
}

static void a_glued_panel(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part =
        part_of(run, "part top\n of leg\n length 1.8 m\n width 900 mm\n planed 26 mm\n"
                     " glued 0 loss 2 mm over 40 mm with glue-wood\n");
    assert_true(part->glued);
    assert_written(run, part->staves, "0");
    assert_written(run, part->edge_loss, "2 mm");
    assert_written(run, part->over_length, "40 mm");
    assert_string_equal(part->glue_role, "glue-wood");
    assert_written(run, part->thickness, "26 mm");
    assert_null(part->planed_width);
    assert_null(part->layers);
}

static void a_laminated_leg(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part = part_of(
        run, "part leg\n of leg\n length high\n planed 23 mm by 69 mm\n laminated 3 with glue-wood\n");
    assert_false(part->glued);
    assert_written(run, part->layers, "3");
    assert_written(run, part->planed_width, "69 mm");
    assert_string_equal(part->glue_role, "glue-wood");
}

static void what_shows(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part = part_of(run, "part a\n of leg\n length high\n outside face edge edge end\n");
    assert_true(part->outside_given);
    assert_int_equal(part->outside_faces, 1);
    assert_int_equal(part->outside_edges, 2);
    assert_int_equal(part->outside_ends, 1);
    part = part_of(run, "part a\n of leg\n length high\n outside none\n");
    assert_true(part->outside_given);
    assert_int_equal(part->outside_faces + part->outside_edges + part->outside_ends, 0);
    part = part_of(run, "part a\n of leg\n length high\n outside all\n");
    assert_int_equal(part->outside_faces + part->outside_edges + part->outside_ends, 6);
}

/* ---- conditions --------------------------------------------------------------------------------------- */

static void a_condition_behind_the_heading_or_on_a_line_of_its_own(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part =
        part_of(run, "part a when high > 300 mm : tall post\n of leg\n length high\n");
    assert_written(run, part->guard.when, "high > 300 mm");
    assert_string_equal(part->title, "tall post");
    part = part_of(run, "part a\n of leg\n length high\n when high > 300 mm : only then\n");
    assert_written(run, part->guard.when, "high > 300 mm");
    assert_string_equal(part->title, "a");
    assert_int_equal(line_of(part->guard.place), 7);
}

/* ---- ends ------------------------------------------------------------------------------------------------ */

static double degrees(sb_run *run, const sb_recipe_angle *angle) {
    sb_scope *scope = sb_scope_new(run, NULL);
    sb_scope_set(run, scope, "rake", sb_value_angle((sb_angle){10000000}));
    sb_angle value = {0};
    assert_true(sb_formula_angle(run, angle->formula, scope, &value));
    return (double)value.udeg / 1e6;
}

static const sb_recipe_part *with_ends(sb_run *run, const char *lines) {
    return part_of(run, sb_pool_print(run->pool, "part a\n of leg\n length high\n %s\n", lines));
}

static void each_angle_says_how_it_is_read(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part =
        with_ends(run, "end1 mitre 45 deg scale bevel -5 deg piece\n end2 bevel rake scale");
    assert_float_equal(degrees(run, &part->end1.mitre), 45, 1e-9);
    assert_false(part->end1.mitre.on_piece);
    assert_float_equal(degrees(run, &part->end1.bevel), -5, 1e-9);
    assert_true(part->end1.bevel.on_piece);
    assert_null(part->end2.mitre.formula);
    assert_float_equal(degrees(run, &part->end2.bevel), 10, 1e-9);
}

/* As in a frame: both long points on the same edge. */
static void both_ends_alike(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part = with_ends(run, "ends mitre 45 deg scale");
    assert_float_equal(degrees(run, &part->end1.mitre), 45, 1e-9);
    assert_float_equal(degrees(run, &part->end2.mitre), 45, 1e-9);
    part = with_ends(run, "ends square");
    assert_null(part->end1.mitre.formula);
}

/* As in a brace or a raked leg: the ends are parallel cuts, so one leans the other way. */
static void ends_parallel(void **state) {
    sb_run *run = *state;
    const sb_recipe_part *part =
        with_ends(run, "ends bevel 2 * rake + 1 deg piece mitre rake scale parallel");
    assert_float_equal(degrees(run, &part->end1.bevel), 21, 1e-9);
    assert_float_equal(degrees(run, &part->end2.bevel), -21, 1e-9);
    assert_true(part->end2.bevel.on_piece);
    assert_float_equal(degrees(run, &part->end1.mitre), 10, 1e-9);
    assert_float_equal(degrees(run, &part->end2.mitre), -10, 1e-9);
    assert_false(part->end2.mitre.on_piece);
    part = with_ends(run, "ends mitre -rake scale parallel");
    assert_float_equal(degrees(run, &part->end2.mitre), 10, 1e-9);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(a_part_from_a_board),
        AT_THE_BENCH(a_part_with_nothing_but_the_needed),
        AT_THE_BENCH(a_part_of_sound_wood),
        AT_THE_BENCH(a_panel),
        AT_THE_BENCH(edging_all_round),
        AT_THE_BENCH(a_glued_panel),
        AT_THE_BENCH(a_laminated_leg),
        AT_THE_BENCH(what_shows),
        AT_THE_BENCH(a_condition_behind_the_heading_or_on_a_line_of_its_own),
        AT_THE_BENCH(each_angle_says_how_it_is_read),
        AT_THE_BENCH(both_ends_alike),
        AT_THE_BENCH(ends_parallel),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
