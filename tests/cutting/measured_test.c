/* Measured boards: parts beside knots and splits, what is cut away, and a judge of its own for plans by chance. */
#include "problems.h"

#include <stdlib.h>

static void bad(sb_run *run, sb_supply *supply, double from, double to, bool split) {
    supply->measured = true;
    supply->available = 1;
    SB_PUSH(run->pool, supply->bad, ((sb_stretch){mm(from), mm(to), split, {0}}));
}

static void assert_at(const sb_board_plan *board, size_t part, size_t need, double at) {
    assert_true(part < board->parts.count);
    assert_int_equal(board->parts.items[part].need, need);
    assert_int_equal(board->parts.items[part].at.nm, mm(at).nm);
}

static void assert_waste(const sb_board_plan *board, size_t index, double from, double to) {
    assert_true(index < board->waste.count);
    assert_int_equal(board->waste.items[index].from.nm, mm(from).nm);
    assert_int_equal(board->waste.items[index].to.nm, mm(to).nm);
}

/* ---- at the bench -------------------------------------------------------------------------------- */

/* A knot at 900 to 940 of 2010 mm. The clear part goes in front of it or behind, the other over it: 1000 + 3 + 1000.
 * In front there is no room for the clear part, so that the other begins. */
static void a_knot_in_the_middle(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    bad(&run, add_supply(&run, &p, 2010, 0, 500), 900, 940, false);
    add_supply(&run, &p, 2010, 0, 900);
    add_need(&run, &p, "rail", 1000, 0, 1)->clear = true;
    add_need(&run, &p, "slat", 1000, 0, 1);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->cost.milli, 500000);
    assert_true(plan->proved);
    assert_at(&plan->boards.items[0], 0, 1, 0);
    assert_at(&plan->boards.items[0], 1, 0, 1003);
    assert_int_equal(plan->boards.items[0].waste.count, 0);
    sb_run_free(&run);
}

/* With two clear parts the board carries one, and the other is bought: the bound knows of it. */
static void no_room_for_two_clear_parts(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    bad(&run, add_supply(&run, &p, 2010, 0, 500), 900, 940, false);
    add_supply(&run, &p, 1200, 0, 900);
    add_need(&run, &p, "rail", 1000, 0, 2)->clear = true;
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->cost.milli, 1400000);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* A knot is no harm to a sound part, a split is; where the split is cut away that is one cut more, and the part begins
 * at the split's end: [0, 297] falls off, the blade runs from 297 to 300. */
static void a_split_at_the_front(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    sb_supply *board = add_supply(&run, &p, 1400, 0, 500);
    bad(&run, board, 0, 300, true);
    bad(&run, board, 700, 720, false);
    add_need(&run, &p, "cleat", 1000, 0, 1)->sound = true;
    const sb_plan *plan = planned(&run, &p);
    const sb_board_plan *cut = &plan->boards.items[0];
    assert_at(cut, 0, 0, 300);
    assert_int_equal(cut->waste.count, 1);
    assert_waste(cut, 0, 0, 297);
    assert_int_equal(cut->cuts, 2); /* the split's end and the part's */
    assert_int_equal(cut->offcut.nm, mm(297 + 1400 - 1300 - 3).nm);
    sb_run_free(&run);
}

/* Between two parts the waste takes two kerfs: 500 | 503 to 597 | 600. Without a trim at the ends, three cuts. */
static void kerfs_around_what_is_cut_away(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    p.rules.material_only = false;
    p.rules.cut.milli = 1000;
    add_stock(&run, &p, "pine", false);
    bad(&run, add_supply(&run, &p, 1100, 0, 500), 550, 600, false);
    add_need(&run, &p, "rail", 500, 0, 2)->clear = true;
    const sb_plan *plan = planned(&run, &p);
    const sb_board_plan *cut = &plan->boards.items[0];
    assert_at(cut, 0, 0, 0);
    assert_at(cut, 1, 0, 600);
    assert_waste(cut, 0, 503, 597);
    assert_int_equal(cut->cuts, 2); /* flush with the far end */
    assert_int_equal(cut->offcut.nm, mm(94).nm);
    assert_int_equal(plan->cost.milli, 502000);
    sb_run_free(&run);
}

/* A knot that ends 2 mm behind the first part: the blade needs 6 mm for two cuts, so the next part begins there. */
static void a_knot_narrower_than_the_blade(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    bad(&run, add_supply(&run, &p, 1006, 0, 500), 500, 504, false);
    add_need(&run, &p, "rail", 500, 0, 2)->clear = true;
    const sb_plan *plan = planned(&run, &p);
    assert_at(&plan->boards.items[0], 1, 0, 506);
    assert_waste(&plan->boards.items[0], 0, 503, 503);
    p.supplies.items[0].length = mm(1005.9);
    sb_run second = sb_run_new();
    refused(&second, &p, "not enough \"pine\"");
    sb_run_free(&second);
    sb_run_free(&run);
}

/* Stretches are from the factory end; the trim is cut off before. */
static void stretches_and_trims(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    sb_supply *board = add_supply(&run, &p, 1100, 0, 500);
    board->trim1 = board->trim2 = mm(20);
    bad(&run, board, 0, 19, true);
    bad(&run, board, 1080, 1100, true);
    add_need(&run, &p, "rail", 1060, 0, 1)->clear = true;
    const sb_plan *plan = planned(&run, &p);
    assert_at(&plan->boards.items[0], 0, 0, 20);
    assert_int_equal(plan->boards.items[0].waste.count, 0);
    sb_run_free(&run);
}

/* A rest with a split is kept up to the split, or behind it, whichever is longer; the cut there is one more. */
static void leftovers_have_no_split(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    p.rules.material_only = false;
    p.rules.cut.milli = 1000;
    sb_cut_stock *stock = add_stock(&run, &p, "pine", false);
    stock->useful_length = mm(500);
    stock->value = 100000;
    sb_supply *board = add_supply(&run, &p, 3000, 0, 900);
    bad(&run, board, 1500, 1520, false);
    bad(&run, board, 2500, 2600, true);
    add_need(&run, &p, "slat", 1000, 0, 1);
    const sb_plan *plan = planned(&run, &p);
    const sb_board_plan *cut = &plan->boards.items[0];
    assert_int_equal(cut->leftover.nm, mm(1497).nm); /* from 1003 to 2500, the knot in it */
    assert_waste(cut, 0, 2503, 3000);
    assert_int_equal(cut->offcut.nm, mm(497).nm);
    assert_int_equal(cut->cuts, 2);
    assert_int_equal(plan->leftovers.milli, 149700);
    sb_run_free(&run);
}

/* 897 mm are left, but neither piece beside the split is useful. */
static void a_rest_that_a_split_breaks(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->useful_length = mm(500);
    bad(&run, add_supply(&run, &p, 1900, 0, 900), 1450, 1460, true);
    add_need(&run, &p, "slat", 1000, 0, 1);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->boards.items[0].leftover.nm, 0);
    assert_int_equal(plan->boards.items[0].offcut.nm, mm(897).nm);
    assert_int_equal(plan->boards.items[0].cuts, 1);
    sb_run_free(&run);
}

/* Strips of a clear part count over the whole width of their section. */
static void clear_strips(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(100);
    bad(&run, add_supply(&run, &p, 1000, 0, 500), 100, 140, false);
    add_need(&run, &p, "batten", 600, 45, 2)->clear = true;
    const sb_plan *plan = planned(&run, &p);
    assert_at(&plan->boards.items[0], 0, 0, 140);
    assert_at(&plan->boards.items[0], 1, 0, 140);
    assert_waste(&plan->boards.items[0], 0, 0, 137);
    sb_run_free(&run);
}

/* The long points of an angled part stay off as well, and its front cut takes its own kerf. */
static void clear_parts_with_angles(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false)->width = mm(50);
    bad(&run, add_supply(&run, &p, 1400, 0, 500), 500, 530, false);
    sb_need *need = add_need(&run, &p, "brace", 450, 0, 2);
    need->clear = true;
    need->end1 = end_of(45, 0);
    need->end2 = end_of(-45, 0);
    const sb_plan *plan = planned(&run, &p);
    assert_at(&plan->boards.items[0], 0, 0, 0);
    assert_at(&plan->boards.items[0], 1, 0, 530);
    assert_int_equal(plan->boards.items[0].waste.count, 1);
    sb_run_free(&run);
}

/* Where a part fits no board beside what is bad, it is told as missing. */
static void a_part_that_nothing_carries(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    bad(&run, add_supply(&run, &p, 2000, 0, 500), 990, 1010, true);
    add_need(&run, &p, "rail", 1000, 0, 1)->sound = true;
    refused(&run, &p, "1 of 1 \"rail\"");
    sb_run_free(&run);
}

static void what_is_no_stretch(void **state) {
    static const double stretches[][2] = {{500, 500}, {600, 500}, {-1, 5}, {1990, 2001}};
    (void)state;
    for (size_t i = 0; i < 4; i++) {
        sb_run run;
        sb_problem p;
        start(&run, &p, 3);
        add_stock(&run, &p, "pine", false);
        bad(&run, add_supply(&run, &p, 2000, 0, 500), stretches[i][0], stretches[i][1], true);
        add_need(&run, &p, "rail", 1000, 0, 1);
        assert_null(refused(&run, &p, "measured board"));
        sb_run_free(&run);
    }
}

/* ---- by chance ----------------------------------------------------------------------------------- */

typedef struct judged {
    int64_t cuts, offcut;
} judged;

static bool keeps_off(const sb_need *need, const sb_stretch *s) {
    return need->clear || (need->sound && s->split);
}

/* Square parts of full width: walks along the board with a blade of its own. */
static void judge(const sb_problem *p, const sb_board_plan *board) {
    const sb_supply *supply = &p->supplies.items[board->supply];
    int64_t kerf = p->rules.kerf.nm, free_from = supply->trim1.nm, end = supply->length.nm - supply->trim2.nm;
    int64_t cuts = supply->trim1.nm > 0, away = 0;
    for (size_t i = 0; i < board->parts.count; i++) {
        const sb_placed *part = &board->parts.items[i];
        const sb_need *need = &p->needs.items[part->need];
        for (size_t s = 0; s < supply->bad.count; s++)
            if (keeps_off(need, &supply->bad.items[s]))
                assert_true(part->at.nm >= supply->bad.items[s].to.nm ||
                            part->at.nm + need->length.nm <= supply->bad.items[s].from.nm);
        assert_true(part->at.nm == free_from || (supply->bad.count > 0 && part->at.nm >= free_from + kerf));
        if (part->at.nm > free_from) {
            cuts++;
            away += part->at.nm - kerf - free_from;
        }
        free_from = part->at.nm + need->length.nm;
        assert_true(free_from <= end);
        if (i + 1 < board->parts.count)
            free_from += kerf, cuts++;
    }
    cuts += free_from < end || supply->trim2.nm > 0;
    if (board->leftover.nm == 0) {
        away += free_from + kerf < end ? end - free_from - kerf : 0;
        assert_int_equal(board->offcut.nm, away);
        assert_int_equal(board->cuts, cuts);
    } else {
        assert_true(board->cuts >= cuts && board->cuts <= cuts + 2);
        assert_true(board->offcut.nm + board->leftover.nm <= away + end - free_from - kerf);
    }
}

static void make_board(sb_run *run, sb_problem *p, uint32_t *seed) {
    double length = 1200 + 50 * roll(seed, 60), at = 0;
    sb_supply *board = add_supply(run, p, length, 0, 100 + roll(seed, 700));
    board->leftover = roll(seed, 2) == 0;
    board->trim1 = mm(roll(seed, 3) ? 0 : 10);
    board->trim2 = mm(roll(seed, 3) ? 0 : 10);
    for (size_t i = roll(seed, 4); i > 0; i--) {
        double from = at + roll(seed, 700), to = from + 2 + roll(seed, 90);
        if (to <= length)
            bad(run, board, from, to, roll(seed, 3) == 0);
        at = from;
    }
    board->available = 1;
    board->measured = true;
}

static void make_job(sb_run *run, sb_problem *p, uint32_t *seed) {
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    p->rules.material_only = roll(seed, 2) == 0;
    p->rules.change.milli = 5000;
    p->rules.cut.milli = 1500;
    if (roll(seed, 2)) {
        stock->useful_length = mm(400);
        stock->value = 60000;
    }
    add_supply(run, p, 3000, 0, 1200);
    for (size_t i = 1 + roll(seed, 3); i > 0; i--)
        make_board(run, p, seed);
    for (size_t i = 2 + roll(seed, 4); i > 0; i--) {
        sb_need *need = add_need(run, p, "part", 200 + 25 * roll(seed, 40), 0, 1 + roll(seed, 4));
        need->clear = roll(seed, 3) == 0;
        need->sound = roll(seed, 3) == 0;
    }
}

static int64_t without_stretches(const sb_problem *p, bool *proved) {
    sb_problem faultless = *p;
    sb_run run = sb_run_new();
    faultless.supplies.items = SB_NEW_ARRAY(run.pool, sb_supply, p->supplies.count);
    for (size_t i = 0; i < p->supplies.count; i++) {
        faultless.supplies.items[i] = p->supplies.items[i];
        faultless.supplies.items[i].bad.count = 0;
    }
    const sb_plan *plan = planned(&run, &faultless);
    int64_t cost = plan->cost.milli;
    *proved = plan->proved;
    assert_true(plan->bound.milli <= cost);
    sb_run_free(&run);
    return cost;
}

static void plans_by_chance(void **state) {
    uint32_t seed = 4711;
    int proved = 0, measured = 0, wasted = 0;
    (void)state;
    for (int i = 0; i < 150; i++) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed);
        search_briefly(&p, i);
        const sb_plan *plan = planned(&run, &p);
        bool faultless_proved;
        for (size_t b = 0; b < plan->boards.count; b++) {
            judge(&p, &plan->boards.items[b]);
            measured += p.supplies.items[plan->boards.items[b].supply].bad.count > 0;
            wasted += plan->boards.items[b].waste.count > 0;
        }
        int64_t cost = without_stretches(&p, &faultless_proved);
        if (faultless_proved)
            assert_true(cost <= plan->cost.milli);
        proved += plan->proved;
        sb_run_free(&run);
    }
    print_message("%d of 150 proved; %d measured boards, %d with waste\n", proved, measured, wasted);
    assert_true(measured > 100 && wasted > 20 && proved > 50);
}

/* Angled parts and strips: no long point lies over what the part keeps off, and the checker finds no other fault. */
static void angled_and_ripped_by_chance(void **state) {
    static const double angles[] = {0, 0, 30, -30, 45, -12.5}, widths[] = {0, 0, 30, 45};
    uint32_t seed = 1234;
    int wasted = 0, angled = 0;
    (void)state;
    for (int i = 0; i < 100; i++) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed);
        search_briefly(&p, i);
        p.stock.items[0].width = mm(95);
        for (size_t n = 0; n < p.needs.count; n++) {
            p.needs.items[n].width = mm(widths[roll(&seed, 4)]);
            p.needs.items[n].end1 = end_of(angles[roll(&seed, 6)], 0);
            p.needs.items[n].end2 = end_of(angles[roll(&seed, 6)], 0);
        }
        const sb_plan *plan = planned(&run, &p);
        for (size_t b = 0; b < plan->boards.count; b++) {
            const sb_board_plan *board = &plan->boards.items[b];
            const sb_supply *supply = &p.supplies.items[board->supply];
            wasted += board->waste.count > 0;
            for (size_t k = 0; k < board->parts.count; k++) {
                const sb_need *need = &p.needs.items[board->parts.items[k].need];
                int64_t from = board->parts.items[k].at.nm, to = from + need->length.nm;
                angled += board->waste.count > 0 && need->width.nm == 0 && need->end1.mitre.udeg != 0;
                for (size_t s = 0; s < supply->bad.count; s++)
                    if (keeps_off(need, &supply->bad.items[s]))
                        assert_true(from >= supply->bad.items[s].to.nm || to <= supply->bad.items[s].from.nm);
            }
        }
        sb_run_free(&run);
    }
    assert_true(wasted > 10 && angled > 10);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_knot_in_the_middle),
        cmocka_unit_test(no_room_for_two_clear_parts),
        cmocka_unit_test(a_split_at_the_front),
        cmocka_unit_test(kerfs_around_what_is_cut_away),
        cmocka_unit_test(a_knot_narrower_than_the_blade),
        cmocka_unit_test(stretches_and_trims),
        cmocka_unit_test(leftovers_have_no_split),
        cmocka_unit_test(a_rest_that_a_split_breaks),
        cmocka_unit_test(clear_strips),
        cmocka_unit_test(clear_parts_with_angles),
        cmocka_unit_test(a_part_that_nothing_carries),
        cmocka_unit_test(what_is_no_stretch),
        cmocka_unit_test(plans_by_chance),
        cmocka_unit_test(angled_and_ripped_by_chance),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
