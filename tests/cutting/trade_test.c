/* Facts of the trade, at the level of one or a few boards. */
#include "problems.h"

static const sb_board_plan *only_board(const sb_plan *plan) {
    assert_int_equal(plan->boards.count, 1);
    return &plan->boards.items[0];
}

static const sb_placed *part(const sb_plan *plan, size_t index) {
    assert_true(index < only_board(plan)->parts.count);
    return &only_board(plan)->parts.items[index];
}

/* ---- the blade's width --------------------------------------------------------------------------- */

/* Common practice, no source: with a 3 mm blade a 300 mm repeat stands at 0, 303, 606, ...; marking them 300
 * apart and sawing on the wrong side of the line makes every part a kerf short, through its middle half a
 * kerf. */
static void a_repeat_steps_by_part_and_kerf(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 3000, 0, 500);
    add_need(&run, &p, "rail", 300, 0, 9);
    const sb_plan *plan = planned(&run, &p);
    for (size_t i = 0; i < 9; i++)
        assert_int_equal(part(plan, i)->at.nm, mm(303.0 * (double)i).nm);
    assert_int_equal(only_board(plan)->offcut.nm, mm(3000 - 9 * 303).nm);
    assert_int_equal(only_board(plan)->cuts, 9);
    sb_run_free(&run);
}

/* Arithmetic: n p + (n-1) k <= L. Seven of 300 come out of 2400 with a 3.2 mm blade, the eighth would need
 * 2422.4. */
static void pieces_from_a_bar(void **state) {
    (void)state;
    for (int count = 7; count <= 8; count++) {
        sb_run run;
        sb_problem p;
        start(&run, &p, 3.2);
        add_stock(&run, &p, "pine", false);
        add_supply(&run, &p, 2400, 0, 500);
        add_need(&run, &p, "rail", 300, 0, count);
        assert_int_equal(planned(&run, &p)->counts.boards, count - 6);
        sb_run_free(&run);
    }
}

/* toolboxtoday.com: a 30 in blank cut once at the middle with a 1/8 in blade gives two pieces of 14 15/16 in.
 * Both come out of it with one cut and nothing left; a hair more does not. */
static void half_of_the_kerf_on_each_side(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3.175);
    add_stock(&run, &p, "blank", false);
    add_supply(&run, &p, 762, 0, 100);
    add_need(&run, &p, "half", 379.4125, 0, 2);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 1);
    assert_int_equal(plan->counts.cuts, 1);
    assert_int_equal(only_board(plan)->offcut.nm, 0);
    p.needs.items[0].length.nm++;
    assert_int_equal(planned(&run, &p)->counts.boards, 2);
    sb_run_free(&run);
}

/* A part flush with an untrimmed end needs no last cut; what is no longer than the kerf turns to dust. */
static void what_is_left_behind_the_last_part(void **state) {
    static const double boards[][3] = {
        {1000, 0, 0}, {1002, 0, 1}, {1003, 0, 1}, {1003.5, 0.5, 1}, {1100, 97, 1}};
    (void)state;
    for (size_t i = 0; i < sizeof boards / sizeof *boards; i++) {
        sb_run run;
        sb_problem p;
        start(&run, &p, 3);
        add_stock(&run, &p, "pine", false);
        add_supply(&run, &p, boards[i][0], 0, 100);
        add_need(&run, &p, "all of it", 1000, 0, 1);
        const sb_plan *plan = planned(&run, &p);
        assert_int_equal(only_board(plan)->offcut.nm, mm(boards[i][1]).nm);
        assert_int_equal(only_board(plan)->cuts, (int64_t)boards[i][2]);
        sb_run_free(&run);
    }
}

/* ---- trims --------------------------------------------------------------------------------------- */

/* The kerf of a truing cut lies inside its trim: a part of L - a - b comes out, with two cuts. */
static void trims_hold_their_own_kerf(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    sb_supply *supply = add_supply(&run, &p, 2000, 0, 100);
    supply->trim1 = mm(15);
    supply->trim2 = mm(20);
    add_need(&run, &p, "long", 1965, 0, 1);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(part(plan, 0)->at.nm, mm(15).nm);
    assert_int_equal(only_board(plan)->cuts, 2);
    assert_int_equal(only_board(plan)->offcut.nm, 0);
    p.needs.items[0].length.nm++;
    refused(&run, &p, "of which 1965 mm can be used");
    sb_run_free(&run);
}

static void a_trim_is_nothing_or_holds_the_kerf(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 2000, 0, 100)->trim1 = mm(2);
    add_need(&run, &p, "part", 500, 0, 1);
    assert_null(refused(&run, &p, "a trim is nothing or at least the kerf: 2 mm is less than 3 mm"));
    sb_run_free(&run);
}

/* ---- leftovers ----------------------------------------------------------------------------------- */

static const sb_plan *with_leftover(sb_run *run, sb_problem *p, double useful) {
    start(run, p, 3);
    add_stock(run, p, "pine", false)->useful_length = mm(useful);
    p->stock.items[0].value = 200000; /* 2.00 a metre */
    p->rules.material_only = false;
    add_supply(run, p, 2000, 0, 1000);
    add_need(run, p, "part", 1197, 0, 1);
    return planned(run, p);
}

/* 2000 - 1197 - 3 leaves 800: a leftover where 800 is useful, offcut where 801 is the least. */
static void leftovers_begin_at_the_useful_length(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    const sb_plan *plan = with_leftover(&run, &p, 800);
    assert_int_equal(only_board(plan)->leftover.nm, mm(800).nm);
    assert_int_equal(only_board(plan)->offcut.nm, 0);
    assert_int_equal(plan->leftovers.milli, 160000);
    assert_int_equal(plan->cost.milli, 1000000 - 160000);
    assert_true(plan->proved);
    sb_run_free(&run);
    plan = with_leftover(&run, &p, 801);
    assert_int_equal(only_board(plan)->leftover.nm, 0);
    assert_int_equal(only_board(plan)->offcut.nm, mm(800).nm);
    assert_int_equal(plan->cost.milli, 1000000);
    sb_run_free(&run);
}

/* A leftover from the rack is used once, at its own price, and needs no trim where its ends are fresh. */
static void rack_pieces_are_used_once(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    sb_supply *board = add_supply(&run, &p, 2400, 0, 900);
    board->trim1 = board->trim2 = mm(10);
    sb_supply *rack = add_supply(&run, &p, 700, 0, 100);
    rack->leftover = true;
    rack->available = 1;
    add_need(&run, &p, "leg", 700, 0, 4);
    const sb_plan *plan = planned(&run, &p);
    int64_t from_rack = 0;
    for (size_t i = 0; i < plan->boards.count; i++)
        from_rack += plan->boards.items[i].supply == 1 ? plan->boards.items[i].count : 0;
    assert_int_equal(from_rack, 1);
    assert_int_equal(plan->counts.boards, 2);
    assert_int_equal(plan->cost.milli, 1000000);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* ---- what there is and what can be carried ------------------------------------------------------- */

static void the_vehicle_limits_what_is_bought(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 4800, 0, 1500);
    add_supply(&run, &p, 2400, 0, 900);
    p.rules.longest_board = mm(3000);
    add_need(&run, &p, "post", 2300, 0, 2);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->cost.milli, 1800000);
    p.rules.longest_board = mm(0);
    assert_int_equal(planned(&run, &p)->cost.milli, 1500000);
    p.rules.longest_board = mm(3000); /* what lies in the rack is there already */
    p.supplies.items[0].leftover = true;
    p.supplies.items[0].available = 1;
    assert_int_equal(planned(&run, &p)->cost.milli, 1500000);
    sb_run_free(&run);
}

static void a_part_longer_than_any_stock(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "larch", false);
    sb_supply *supply = add_supply(&run, &p, 3000, 0, 900);
    supply->trim1 = supply->trim2 = mm(10);
    add_supply(&run, &p, 2400, 0, 700);
    add_need(&run, &p, "handrail", 2985, 0, 1);
    add_need(&run, &p, "post", 900, 0, 2);
    const sb_plan *plan = refused(
        &run, &p,
        "\"handrail\" is 2985 mm long; the nearest is \"larch\" of 3000 mm, of which 2980 mm can be used");
    assert_int_equal(plan->short_of.count, 1);
    assert_int_equal(plan->short_of.items[0].need, 0);
    assert_int_equal(plan->short_of.items[0].missing, 1);
    assert_int_equal(sb_notices_count(&run, SB_ERROR), 1);
    assert_false(plan->proved);
    sb_run_free(&run);
}

static void a_part_the_vehicle_cannot_fetch(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "larch", false);
    add_supply(&run, &p, 4800, 0, 900);
    add_supply(&run, &p, 2400, 0, 700);
    p.rules.longest_board = mm(3000);
    add_need(&run, &p, "handrail", 4000, 0, 1);
    refused(
        &run, &p,
        "the nearest is \"larch\" of 2400 mm, of which 2400 mm can be used; one of 4800 mm would do, but the "
        "vehicle carries 3000 mm");
    sb_run_free(&run);
}

static void a_short_supply_names_what_is_missing(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "oak", false);
    add_supply(&run, &p, 2000, 0, 900)->available = 2;
    add_need(&run, &p, "leg", 700, 0, 7);
    const sb_plan *plan = refused(&run, &p, "not enough \"oak\": 3 of 7 \"leg\" (700 mm) cannot be cut");
    assert_int_equal(plan->short_of.count, 1);
    assert_int_equal(plan->short_of.items[0].missing, 3);
    sb_run_free(&run);
}

static void no_stock_at_all(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "oak", false);
    add_need(&run, &p, "leg", 700, 0, 7);
    refused(&run, &p, "\"leg\": there is no \"oak\" on offer");
    sb_run_free(&run);
}

static void nothing_to_cut_costs_nothing(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "oak", false);
    add_supply(&run, &p, 2000, 0, 900);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->cost.milli, 0);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* ---- stops and handling -------------------------------------------------------------------------- */

/* A stop is set once for a length over all boards; a board is handled anew for every length on it. */
static void settings_are_counted(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 2000, 0, 1000)->trim2 = mm(4);
    p.rules.material_only = false;
    p.rules.board.milli = 7000;
    p.rules.change.milli = 4000;
    p.rules.stop.milli = 20000;
    p.rules.cut.milli = 500;
    add_need(&run, &p, "a", 900, 0, 2);
    add_need(&run, &p, "b", 900, 0, 2);
    add_need(&run, &p, "c", 90, 0, 2);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 2);
    assert_int_equal(plan->counts.stops, 2);
    assert_int_equal(plan->counts.cuts, 6);
    assert_int_equal(plan->handling.milli, 2 * 7000 + 4000 * plan->counts.changes + 2 * 20000 + 6 * 500);
    assert_int_equal(plan->counts.changes, 3); /* both short parts on one board */
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* `clear` and the caller's tag are the caller's own. */
static void what_is_carried_through(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 2000, 0, 1000);
    sb_need *need = add_need(&run, &p, "leg", 700, 0, 2);
    need->clear = true;
    need->tag = 17;
    const sb_plan *plan = planned(&run, &p);
    assert_ptr_equal(plan->problem, &p);
    assert_true(plan->problem->needs.items[part(plan, 0)->need].clear);
    assert_int_equal(plan->problem->needs.items[part(plan, 1)->need].tag, 17);
    sb_run_free(&run);
}

/* ---- nonsense ------------------------------------------------------------------------------------ */

typedef void (*spoil)(sb_problem *p);

static void no_stock_named(sb_problem *p) {
    p->needs.items[0].stock = 9;
}
static void no_length(sb_problem *p) {
    p->needs.items[0].length = mm(0);
}
static void no_count(sb_problem *p) {
    p->needs.items[0].count = 0;
}
static void out_of_range_length(sb_problem *p) {
    p->needs.items[0].length.nm = SB_BAD;
}
static void a_price_below_nothing(sb_problem *p) {
    p->supplies.items[0].price.milli = -1;
}
static void a_board_of_no_length(sb_problem *p) {
    p->supplies.items[0].length = mm(0);
}
static void a_kerf_below_nothing(sb_problem *p) {
    p->rules.kerf = mm(-3);
}
static void five_stages(sb_problem *p) {
    p->rules.stages = 5;
}
static void a_stock_out_of_range(sb_problem *p) {
    p->stock.items[0].value = -1;
}
static void a_hundred_million_parts(sb_problem *p) {
    p->needs.items[0].count = 100000000;
}
static void sums_beyond_64_bits(sb_problem *p) {
    p->needs.items[0].count = 9000000;
    p->supplies.items[0].price.milli = 90000000000;
}

/* Each is refused in words, with no plan and no crash. */
static void nonsense_is_refused(void **state) {
    static const spoil spoils[] = {no_stock_named,
                                   no_length,
                                   no_count,
                                   out_of_range_length,
                                   a_price_below_nothing,
                                   a_board_of_no_length,
                                   a_kerf_below_nothing,
                                   five_stages,
                                   a_stock_out_of_range,
                                   a_hundred_million_parts,
                                   sums_beyond_64_bits};
    (void)state;
    for (size_t i = 0; i < sizeof spoils / sizeof *spoils; i++) {
        sb_run run;
        sb_problem p;
        start(&run, &p, 3);
        add_stock(&run, &p, "pine", false);
        add_supply(&run, &p, 2000, 0, 1000);
        add_need(&run, &p, "leg", 700, 0, 2);
        spoils[i](&p);
        assert_null(refused(&run, &p, ""));
        sb_run_free(&run);
    }
}

/* The longest board, the dearest price: still a plan. */
static void the_largest_that_is_taken(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "mast", false);
    add_supply(&run, &p, 1000000, 0, 90000000);
    add_need(&run, &p, "pole", 999900, 0, 5);
    add_need(&run, &p, "peg", 0.001, 0, 5);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 5);
    assert_true(plan->proved);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_repeat_steps_by_part_and_kerf),
        cmocka_unit_test(pieces_from_a_bar),
        cmocka_unit_test(half_of_the_kerf_on_each_side),
        cmocka_unit_test(what_is_left_behind_the_last_part),
        cmocka_unit_test(trims_hold_their_own_kerf),
        cmocka_unit_test(a_trim_is_nothing_or_holds_the_kerf),
        cmocka_unit_test(leftovers_begin_at_the_useful_length),
        cmocka_unit_test(rack_pieces_are_used_once),
        cmocka_unit_test(the_vehicle_limits_what_is_bought),
        cmocka_unit_test(a_part_longer_than_any_stock),
        cmocka_unit_test(a_part_the_vehicle_cannot_fetch),
        cmocka_unit_test(a_short_supply_names_what_is_missing),
        cmocka_unit_test(no_stock_at_all),
        cmocka_unit_test(nothing_to_cut_costs_nothing),
        cmocka_unit_test(settings_are_counted),
        cmocka_unit_test(what_is_carried_through),
        cmocka_unit_test(nonsense_is_refused),
        cmocka_unit_test(the_largest_that_is_taken),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
