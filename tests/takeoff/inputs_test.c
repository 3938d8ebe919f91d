/* What a job, an option and a calling recipe may change: inputs, choices, stock, counts. */
#include "desk.h"

static const char rail[] = "recipe rail\n"
                           "title Rail\n"
                           "input long 1 m from 500 mm to 2 m : over all\n"
                           "input holes 3 from 0 to holes-most\n"
                           "let holes-most floor(long / 100 mm)\n"
                           "choice finish oiled | raw\n"
                           "stock rail slat\n"
                           "stock rail-2 post when finish = raw\n"
                           "check long >= 600 mm or finish = raw : short ones stay raw\n"
                           "advise long <= 1800 mm : long ones sag\n"
                           "part rail\n  of rail\n  length long\n  width rail.width\n"
                           "finish oil 2 coats on all when finish = oiled\n";

static const char frame[] = "recipe frame\n"
                            "input wide 800 mm\n"
                            "choice look oiled | raw\n"
                            "stock bar slat\n"
                            "component side : long side\n  recipe rail\n  count 2\n  set long wide + 100 mm\n"
                            "  set finish look\n  stock rail bar\n"
                            "component tip\n  recipe rail\n  set finish raw\n  stock rail post\n"
                            "  when wide > 700 mm\n"
                            "part panel\n  of bar\n  length wide\n";

static void open_both(desk *d) {
    open_shop(d);
    add_recipe(d, rail);
    add_recipe(d, frame);
}

static const sb_part *part_at(const sb_takeoff *t, const char *path) {
    for (size_t i = 0; i < t->parts.count; i++)
        if (strcmp(t->parts.items[i].path, path) == 0)
            return &t->parts.items[i];
    fail_msg("nothing at %s", path);
    return NULL;
}

static void assert_told_in_job(desk *d, const char *job, const char *option, const char *words,
                               const char *at) {
    open_both(d);
    try_takeoff(d, job, option);
    for (size_t i = 0; i < sb_notices_count(&d->run, SB_NOTE); i++)
        if (strstr(sb_notices_message(&d->run, i), words) &&
            strstr(sb_place_text(&d->run, sb_notices_place(&d->run, i)), at))
            return;
    desk_fail(d, words);
}

/* ---- inputs and choices ---------------------------------------------------------------------------------------------- */

static void a_piece_sets_inputs_choices_and_stock(void **state) {
    desk *d = *state;
    open_both(d);
    const sb_takeoff *t =
        takeoff(d, "piece a : First\n  recipe rail\n  count 2\n  set long 750 mm\n  set finish raw\n"
                   "  stock rail post\n"
                   "piece b\n  recipe rail\n");
    assert_int_equal(t->pieces.count, 2);
    assert_string_equal(t->pieces.items[0].title, "First");
    assert_string_equal(t->pieces.items[1].title, "Rail");
    assert_mm(t->parts.items[0].length, 750);
    assert_string_equal(t->parts.items[0].stock->id, "post");
    assert_int_equal(t->parts.items[0].count, 2);
    assert_mm(t->parts.items[1].length, 1000);
    assert_int_equal(t->parts.items[1].piece, 1);
    /* only the second is oiled */
    assert_int_equal(t->usages.count, 1);
    assert_int_equal(t->usages.items[0].piece, 1);
}

static void out_of_range_is_told_where_it_is_set(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  set long 2.5 m\n", NULL,
                       "long is 2500 mm: expected 500 mm to 2000 mm", "2.5 m");
}

static void a_range_may_depend_on_other_values(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  set holes 11\n", NULL,
                       "holes is 11: expected 0 to 10", "11");
}

static void a_bare_number_is_no_length(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  set long 900\n", NULL, "long wants a length",
                       "900");
    assert_int_equal(sb_notices_count(&((desk *)*state)->run, SB_NOTE), 1);
}

static void an_unknown_input_has_a_neighbour(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  set lonq 1 m\n", NULL,
                       "unknown input \"lonq\"; did you mean \"long\"?", "lonq");
}

static void an_unknown_word_has_a_neighbour(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  set finish oild\n", NULL,
                       "unknown word for finish \"oild\"; did you mean \"oiled\"?", "oild");
}

static void an_unknown_role_has_a_neighbour(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  stock rial post\n", NULL, "did you mean \"rail\"?",
                       "rial");
}

static void an_unknown_stock_has_a_neighbour(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  stock rail slt\n", NULL, "did you mean \"slat\"?",
                       "slt");
}

static void a_screw_makes_no_rail(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\n  stock rail screw\n", NULL, "", "");
    desk *d = *state;
    assert_false(sb_ok(&d->run));
}

static void a_check_stops_and_advice_does_not(void **state) {
    desk *d = *state;
    open_both(d);
    const sb_takeoff *t = try_takeoff(d,
                                      "piece a\n  recipe rail\n  set long 550 mm\n"
                                      "piece b\n  recipe rail\n  set long 1900 mm\n",
                                      NULL);
    assert_int_equal(sb_notices_count(&d->run, SB_ERROR), 1);
    assert_int_equal(sb_notices_count(&d->run, SB_ADVICE), 2);
    assert_int_equal(t->parts.count, 1);
    assert_non_null(strstr(sb_notices_text(&d->run, SB_NOTE, false), "short ones stay raw"));
    assert_non_null(strstr(sb_notices_text(&d->run, SB_NOTE, false), "in piece a"));
    assert_non_null(strstr(sb_notices_text(&d->run, SB_NOTE, false), "long ones sag"));
}

/* ---- components --------------------------------------------------------------------------------------------------------- */

static void components_multiply_and_hand_down(void **state) {
    desk *d = *state;
    open_both(d);
    const sb_takeoff *t = takeoff(d, "piece f\n  recipe frame\n  count 5\n  set wide 900 mm\n");
    const sb_part *side = part_at(t, "f / side"), *tip = part_at(t, "f / tip");
    assert_int_equal(t->parts.count, 3);
    assert_string_equal(t->parts.items[0].path, "f");
    assert_int_equal(side->count, 10);
    assert_int_equal(side->per_piece, 2);
    assert_mm(side->length, 1000);
    assert_string_equal(side->stock->id, "slat");
    assert_int_equal(tip->count, 5);
    assert_string_equal(tip->stock->id, "post");
    /* sides are oiled as the frame says, the end is raw */
    assert_int_equal(t->usages.count, 1);
    assert_int_equal(t->pieces.items[0].input_count, 2);
}

static void a_component_may_be_absent(void **state) {
    desk *d = *state;
    open_both(d);
    const sb_takeoff *t = takeoff(d, "piece f\n  recipe frame\n  set wide 600 mm\n  set look raw\n");
    assert_int_equal(t->parts.count, 2);
    assert_int_equal(t->usages.count, 0);
}

static void an_error_in_a_component_shows_the_way(void **state) {
    desk *d = *state;
    open_both(d);
    try_takeoff(d, "piece f\n  recipe frame\n  set wide 3 m\n", NULL);
    const char *text = sb_notices_text(&d->run, SB_ERROR, false);
    assert_non_null(strstr(text, "long is 3100 mm"));
    assert_non_null(strstr(text, "in component side"));
    assert_non_null(strstr(text, "in piece f"));
}

/* ---- options --------------------------------------------------------------------------------------------------------------- */

#define TWO_WAYS                                                                                             \
    "piece a\n  recipe rail\n  count 4\n  set long 700 mm\n"                                                 \
    "piece b\n  recipe rail\n  count 6\n"                                                                    \
    "piece f\n  recipe frame\n"                                                                              \
    "option plain\n  set finish raw\n  set b.long 1200 mm\n  count a 7\n  drop f\n"                          \
    "option heavy\n  stock rail post\n  stock b.rail slat\n  set long 800 mm\n  set a.long 900 mm\n"

static void an_option_changes_pieces(void **state) {
    desk *d = *state;
    open_both(d);
    const sb_takeoff *t = takeoff_option(d, TWO_WAYS, "plain");
    assert_int_equal(t->pieces.count, 2);
    assert_int_equal(t->pieces.items[0].count, 7);
    assert_mm(t->parts.items[0].length, 700);
    assert_mm(t->parts.items[1].length, 1200);
    assert_int_equal(t->usages.count, 0);
    assert_ptr_equal(t->option, option_named(d, "plain"));
}

static void an_option_must_leave_something(void **state) {
    desk *d = *state;
    open_both(d);
    try_takeoff(d, "piece a\n  recipe rail\noption none\n  drop a\n", "none");
    assert_int_equal(sb_status(&d->run), 1);
    assert_non_null(strstr(sb_notices_message(&d->run, 0), "nothing is left to make"));
}

static void a_line_for_one_piece_goes_first(void **state) {
    desk *d = *state;
    open_both(d);
    const sb_takeoff *t = takeoff_option(d, TWO_WAYS, "heavy");
    assert_int_equal(t->pieces.count, 3);
    assert_mm(part_at(t, "a")->length, 900);
    assert_string_equal(part_at(t, "a")->stock->id, "post");
    assert_mm(part_at(t, "b")->length, 800);
    assert_string_equal(part_at(t, "b")->stock->id, "slat");
}

static void what_if_goes_before_all(void **state) {
    desk *d = *state;
    open_both(d);
    read_job(d, TWO_WAYS);
    const sb_job *job = sb_job_with(&d->run, d->job, "long=1100mm", false);
    job = sb_job_with(&d->run, job, "a.long=650mm", false);
    assert_non_null(job);
    const sb_takeoff *t = sb_takeoff_of(&d->run, d->shop, d->book, job, &job->options.items[1]);
    assert_true(sb_ok(&d->run));
    assert_mm(part_at(t, "a")->length, 650);
    assert_mm(part_at(t, "b")->length, 1100);
    assert_mm(part_at(t, "f")->length, 800);
}

static void what_if_about_nothing_is_told(void **state) {
    desk *d = *state;
    open_both(d);
    read_job(d, TWO_WAYS);
    const sb_job *job = sb_job_with(&d->run, d->job, "lomg=1100mm", false);
    sb_takeoff_of(&d->run, d->shop, d->book, job, NULL);
    assert_non_null(strstr(sb_notices_message(&d->run, 0), "unknown input \"lomg\"; did you mean \"long\"?"));
}

static void an_option_about_nothing_is_told(void **state) {
    assert_told_in_job(*state, "piece a\n  recipe rail\noption o\n  set longg 1 m\n", "o",
                       "did you mean \"long\"?", "longg");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(a_piece_sets_inputs_choices_and_stock),
        AT_DESK(out_of_range_is_told_where_it_is_set),
        AT_DESK(a_range_may_depend_on_other_values),
        AT_DESK(a_bare_number_is_no_length),
        AT_DESK(an_unknown_input_has_a_neighbour),
        AT_DESK(an_unknown_word_has_a_neighbour),
        AT_DESK(an_unknown_role_has_a_neighbour),
        AT_DESK(an_unknown_stock_has_a_neighbour),
        AT_DESK(a_screw_makes_no_rail),
        AT_DESK(a_check_stops_and_advice_does_not),
        AT_DESK(components_multiply_and_hand_down),
        AT_DESK(a_component_may_be_absent),
        AT_DESK(an_error_in_a_component_shows_the_way),
        AT_DESK(an_option_changes_pieces),
        AT_DESK(an_option_must_leave_something),
        AT_DESK(a_line_for_one_piece_goes_first),
        AT_DESK(what_if_goes_before_all),
        AT_DESK(what_if_about_nothing_is_told),
        AT_DESK(an_option_about_nothing_is_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
