/* Ends that are not square, and parts ripped from wider boards. */
#include "problems.h"

#include <stdlib.h>

static const sb_board_plan *only_board(const sb_plan *plan) {
    assert_int_equal(plan->boards.count, 1);
    return &plan->boards.items[0];
}

static const sb_placed *part(const sb_plan *plan, size_t index) {
    assert_true(index < only_board(plan)->parts.count);
    return &only_board(plan)->parts.items[index];
}

/* Ends as a part lies: turned flat, the far edge comes near; rolled over its length, the lower face comes up too. */
static void lies_as_it_is_told(const sb_need *need, const sb_placed *p) {
    sb_cut_end first = p->turned ? need->end2 : need->end1, second = p->turned ? need->end1 : need->end2;
    int mitre = p->turned != p->rolled ? -1 : 1, bevel = p->rolled ? -1 : 1;
    assert_int_equal(p->front.mitre.udeg, mitre * first.mitre.udeg);
    assert_int_equal(p->front.bevel.udeg, bevel * first.bevel.udeg);
    assert_int_equal(p->rear.mitre.udeg, mitre * second.mitre.udeg);
    assert_int_equal(p->rear.bevel.udeg, bevel * second.bevel.udeg);
}

/* ---- off square ---------------------------------------------------------------------------------- */

/* 95 wide, 45 degrees, 3 mm blade: the cut takes 4.2426 mm along the board, long point less short point
 * is 95. */
static void start_angled(sb_run *run, sb_problem *p, double length, sb_cut_end one, sb_cut_end two,
                         int64_t count) {
    start(run, p, 3);
    add_stock(run, p, "pine", false)->width = mm(95);
    add_supply(run, p, 4000, 0, 100);
    sb_need *need = add_need(run, p, "piece", length, 0, count);
    need->end1 = one;
    need->end2 = two;
}

static void check_step(const sb_plan *plan, size_t part_index, double step) {
    int64_t found = part(plan, part_index)->at.nm - part(plan, part_index - 1)->at.nm;
    assert_true(llabs(found - mm(step).nm) <= 2);
}

/* Parallel ends: edge length and kerf / cos each. */
static void parallel_ends_share_their_cuts(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 400, end_of(45, 0), end_of(-45, 0), 12);
    const sb_plan *plan = planned(&run, &p);
    for (size_t i = 1; i < 12; i++)
        check_step(plan, i, 400 - 95 + 4.242641);
    assert_false(part(plan, 1)->turned);
    assert_int_equal(only_board(plan)->cuts, 13); /* the front end is cut too, though there is no trim */
    assert_int_equal(only_board(plan)->stops, 1);
    sb_run_free(&run);
}

/* Every way a part lies is told, and no turn where none is needed. */
static void each_part_says_how_it_lies(void **state) {
    static const int ends[][4] = {
        {45, 0, 0, 0}, {30, 20, -12, 0}, {0, 20, 45, -20}, {31, 12, 31, 12}, {10, 0, -10, 0}};
    (void)state;
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++) {
        sb_run run;
        sb_problem p;
        start_angled(&run, &p, 400, end_of(ends[i][0], ends[i][1]), end_of(ends[i][2], ends[i][3]), 6);
        const sb_plan *plan = planned(&run, &p);
        for (size_t b = 0; b < plan->boards.count; b++)
            for (size_t j = 0; j < plan->boards.items[b].parts.count; j++)
                lies_as_it_is_told(&p.needs.items[0], &plan->boards.items[b].parts.items[j]);
        sb_run_free(&run);
    }
}

/* Alternating trapezoids: (long + short) / 2 and kerf / cos each. */
static void trapezoids_alternate(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 400, end_of(45, 0), end_of(45, 0), 12);
    const sb_plan *plan = planned(&run, &p);
    for (size_t i = 1; i < 12; i++) {
        check_step(plan, i, (400 + 210) / 2.0 + 4.242641);
        assert_true(part(plan, i)->turned != part(plan, i - 1)->turned);
        assert_int_equal(part(plan, i)->front.mitre.udeg, -part(plan, i - 1)->rear.mitre.udeg);
    }
    sb_run_free(&run);
}

/* A brace with one square and one mitred end: two of them make a rectangle. */
static void braces_lie_in_pairs(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 600, end_of(0, 0), end_of(45, 0), 2);
    const sb_plan *plan = planned(&run, &p);
    int64_t step = part(plan, 1)->at.nm - part(plan, 0)->at.nm;
    assert_true(llabs(step - mm(600 - 95 + 4.242641).nm) <= 2);
    assert_true(part(plan, 0)->turned != part(plan, 1)->turned);
    sb_run_free(&run);
}

/* Both ends compound and alike, as on a splayed box: the next part is rolled over; in thickness t the bevel
 * brings it nearer by t tan b / cos m. */
static void compound_sides_alternate(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 500, end_of(45, 30), end_of(45, 30), 6);
    p.stock.items[0].thickness = mm(20);
    const sb_plan *plan = planned(&run, &p);
    for (size_t i = 1; i < 6; i++)
        check_step(plan, i, 500 - 95 - 20 * 0.57735027 / 0.70710678 + 3 / (0.70710678 * 0.8660254));
    sb_run_free(&run);
}

/* Without a width the long points count and only the kerf is shared. */
static void unknown_width_keeps_long_points(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 400, end_of(45, 0), end_of(-45, 0), 5);
    p.stock.items[0].width = mm(0);
    const sb_plan *plan = planned(&run, &p);
    for (size_t i = 1; i < 5; i++)
        check_step(plan, i, 400 + 4.242641);
    sb_run_free(&run);
}

/* Ends that do not meet parallel: long points and the larger kerf; both ends are sawn. A mitre beside a
 * square end shows it plainly. */
static void ends_that_do_not_meet(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(95);
    add_supply(&run, &p, 4000, 0, 100);
    add_need(&run, &p, "square", 1000, 0, 1);
    sb_need *need = add_need(&run, &p, "frame side", 800, 0, 1);
    need->end1 = need->end2 = end_of(45, 0);
    const sb_plan *plan = planned(&run, &p);
    int64_t first = p.needs.items[part(plan, 0)->need].length.nm;
    assert_true(llabs(part(plan, 1)->at.nm - first - mm(4.242641).nm) <= 1);
    bool mitre_in_front =
        part(plan, 0)->front.mitre.udeg != 0; /* then it is cut where a square end needs no cut */
    assert_int_equal(only_board(plan)->cuts, mitre_in_front ? 4 : 3);
    sb_run_free(&run);
}

static void a_part_with_no_length_left(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 150, end_of(45, 0), end_of(45, 0), 1);
    refused(&run, &p, "\"piece\" is 150 mm over its long points, but its ends take all of that");
    sb_run_free(&run);
}

/* The saw is not to be asked for what no saw does. */
static void an_end_too_steep(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_angled(&run, &p, 150, end_of(89.5, 0), end_of(0, 0), 1);
    assert_null(refused(&run, &p, "an end is less than 89 degrees from square"));
    sb_run_free(&run);
}

/* ---- ripped -------------------------------------------------------------------------------------- */

/* 145 wide, 3 mm blade: three strips of 45 (3 * 45 + 2 * 3 = 141). Seven strips of 900 take three sections. */
static void strips_come_out_of_sections(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(145);
    add_supply(&run, &p, 3000, 0, 100);
    add_need(&run, &p, "slat", 900, 45, 7);
    const sb_plan *plan = planned(&run, &p);
    static const double at[] = {0, 0, 0, 903, 903, 903, 1806}, across[] = {0, 48, 96, 0, 48, 96, 0};
    assert_int_equal(only_board(plan)->parts.count, 7);
    for (size_t i = 0; i < 7; i++) {
        assert_int_equal(part(plan, i)->at.nm, mm(at[i]).nm);
        assert_int_equal(part(plan, i)->across.nm, mm(across[i]).nm);
    }
    assert_int_equal(only_board(plan)->cuts, 3);
    assert_int_equal(only_board(plan)->ripped.nm,
                     mm(7 * 900).nm); /* a rip behind every strip: none is flush */
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* 93 = 45 + 3 + 45: the second strip is flush with the far edge and needs no rip of its own. */
static void the_last_strip_may_be_flush(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(93);
    add_supply(&run, &p, 3000, 0, 100);
    add_need(&run, &p, "slat", 900, 45, 4);
    add_need(&run, &p, "slat of another", 900, 45, 2); /* needs alike share sections */
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(only_board(plan)->parts.count, 6);
    assert_int_equal(only_board(plan)->ripped.nm, mm(3 * 900).nm);
    sb_run_free(&run);
}

/* A section is crosscut square, whatever ends its strips get: 331 + 3 + 331 + 3 + 331 = 999 mm. It is set at the stop
 * of a square part of its length, and each of its six ends is a cut of its own. */
static void a_section_is_cut_square(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(95);
    add_supply(&run, &p, 1000, 0, 1000);
    sb_need *foot = add_need(&run, &p, "foot", 331, 60, 2);
    foot->end1 = foot->end2 = end_of(45, 0);
    add_need(&run, &p, "rail", 331, 0, 1);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 1);
    assert_true(plan->proved);
    assert_int_equal(plan->counts.stops, 1);
    assert_int_equal(plan->counts.cuts, 3 + 2 * 2);
    for (size_t i = 0; i < 3; i++) {
        assert_int_equal(part(plan, i)->at.nm % mm(334).nm, 0);
        assert_false(part(plan, i)->turned || part(plan, i)->rolled);
    }
    assert_int_equal(only_board(plan)->offcut.nm + only_board(plan)->leftover.nm, 0);
    sb_run_free(&run);
}

static void a_part_wider_than_its_board(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(93);
    add_supply(&run, &p, 3000, 0, 100);
    add_need(&run, &p, "shelf", 900, 200, 4);
    refused(&run, &p, "\"shelf\" is 200 mm wide; \"pine\" is 93 mm wide");
    sb_run_free(&run);
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 3000, 0, 100);
    add_need(&run, &p, "shelf", 900, 200, 4);
    refused(&run, &p, "the width of \"pine\" is not told");
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(parallel_ends_share_their_cuts),
        cmocka_unit_test(each_part_says_how_it_lies),
        cmocka_unit_test(trapezoids_alternate),
        cmocka_unit_test(braces_lie_in_pairs),
        cmocka_unit_test(compound_sides_alternate),
        cmocka_unit_test(unknown_width_keeps_long_points),
        cmocka_unit_test(ends_that_do_not_meet),
        cmocka_unit_test(a_part_with_no_length_left),
        cmocka_unit_test(an_end_too_steep),
        cmocka_unit_test(strips_come_out_of_sections),
        cmocka_unit_test(the_last_strip_may_be_flush),
        cmocka_unit_test(a_section_is_cut_square),
        cmocka_unit_test(a_part_wider_than_its_board),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
