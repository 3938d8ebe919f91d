/* The checker refuses plans that cannot be cut or do not add up. Sound plans are broken in one place each. */
#include "problems.h"

/* ---- a copy that may be broken ------------------------------------------------------------------- */

static sb_plan *copy(sb_run *run, const sb_plan *plan) {
    sb_plan *c = SB_NEW(run->pool, sb_plan);
    *c = *plan;
    c->boards.items = SB_NEW_ARRAY(run->pool, sb_board_plan, plan->boards.count + 1);
    c->sheets.items = SB_NEW_ARRAY(run->pool, sb_sheet_plan, plan->sheets.count + 1);
    for (size_t i = 0; i < plan->boards.count; i++) {
        sb_board_plan *b = &c->boards.items[i];
        *b = plan->boards.items[i];
        b->parts.items = SB_NEW_ARRAY(run->pool, sb_placed, b->parts.count + 1);
        memcpy(b->parts.items, plan->boards.items[i].parts.items, b->parts.count * sizeof *b->parts.items);
    }
    for (size_t i = 0; i < plan->sheets.count; i++) {
        sb_sheet_plan *s = &c->sheets.items[i];
        const sb_sheet_plan *from = &plan->sheets.items[i];
        *s = *from;
        s->parts.items = SB_NEW_ARRAY(run->pool, sb_sheet_part, s->parts.count + 1);
        s->cuts.items = SB_NEW_ARRAY(run->pool, sb_sheet_cut, s->cuts.count + 1);
        s->leftovers.items = SB_NEW_ARRAY(run->pool, sb_rect, s->leftovers.count + 1);
        memcpy(s->parts.items, from->parts.items, s->parts.count * sizeof *s->parts.items);
        memcpy(s->cuts.items, from->cuts.items, s->cuts.count * sizeof *s->cuts.items);
        if (s->leftovers.count > 0)
            memcpy(s->leftovers.items, from->leftovers.items,
                   s->leftovers.count * sizeof *s->leftovers.items);
    }
    return c;
}

static bool told(const sb_run *run, const char *words) {
    for (size_t i = 0; sb_notices_message(run, i); i++)
        if (sb_notices_level(run, i) == SB_BUG && strstr(sb_notices_message(run, i), words))
            return true;
    return false;
}

static void must_refuse(const sb_plan *broken, const char *words) {
    sb_run run = sb_run_new(); /* with no notices yet: what is told twice comes once */
    bool sound = sb_plan_check(&run, broken), said = told(&run, words);
    if (sound || !said)
        print_error("expected \"%s\" in\n%s\n", words, sb_notices_text(&run, SB_NOTE, false));
    assert_false(sound);
    assert_true(said);
    assert_int_equal(sb_status(&run), 4);
    sb_run_free(&run);
}

/* ---- boards -------------------------------------------------------------------------------------- */

static void board_job(sb_run *run, sb_problem *p) {
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    stock->width = mm(95);
    stock->useful_length = mm(300);
    stock->value = 100000;
    p->rules.material_only = false;
    p->rules.board.milli = 2000;
    p->rules.change.milli = 3000;
    p->rules.stop.milli = 4000;
    p->rules.cut.milli = 500;
    sb_supply *s = add_supply(run, p, 2400, 0, 900);
    s->trim1 = s->trim2 = mm(10);
    add_supply(run, p, 1500, 0, 700)->available = 1;
    add_need(run, p, "leg", 700, 0, 4);
    add_need(run, p, "slat", 800, 45, 5);
    sb_need *brace = add_need(run, p, "brace", 500, 0, 3);
    brace->end1 = end_of(45, 0);
    brace->end2 = end_of(-30, 0);
}

#define BREAK(change, words)                                                                                 \
    do {                                                                                                     \
        sb_plan *b = copy(&run, plan);                                                                       \
        change;                                                                                              \
        must_refuse(b, words);                                                                               \
    } while (0)

/* The board and part of a kind of need. */
static size_t find(const sb_plan *plan, size_t need, size_t *part) {
    for (size_t i = 0; i < plan->boards.count; i++)
        for (size_t j = 0; j < plan->boards.items[i].parts.count; j++)
            if (plan->boards.items[i].parts.items[j].need == need) {
                *part = j;
                return i;
            }
    fail();
    return 0;
}

static void broken_positions(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    board_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    assert_true(sb_plan_check(&run, copy(&run, plan)));
    BREAK(b->boards.items[0].parts.items[0].at.nm += 1, "the first part does not start where the trim ends");
    size_t last = plan->boards.items[0].parts.count - 1;
    BREAK(b->boards.items[0].parts.items[last].at.nm -= 1000,
          "two parts stand nearer than the blade is wide");
    BREAK(b->boards.items[0].parts.items[last].at.nm += 1000, "there is a gap between two parts");
    BREAK(b->boards.items[0].parts.items[last].at.nm += mm(3000).nm, "the parts are longer than the board");
    sb_run_free(&run);
}

static void broken_strips_and_ends(void **state) {
    sb_run run;
    sb_problem p;
    size_t j = 0;
    (void)state;
    board_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    size_t i = find(plan, 1, &j);
    BREAK(b->boards.items[i].parts.items[j].across.nm += 1000,
          "a strip does not lie a kerf behind its neighbour");
    i = find(plan, 2, &j);
    BREAK(b->boards.items[i].parts.items[j].front.mitre.udeg += 1,
          "a part has other ends than were asked for");
    BREAK(b->boards.items[i].parts.items[j].turned = !plan->boards.items[i].parts.items[j].turned,
          "a part has other ends than were asked for");
    BREAK(b->boards.items[i].parts.items[j].rolled = !plan->boards.items[i].parts.items[j].rolled,
          "a part has other ends than were asked for");
    BREAK(b->boards.items[i].parts.items[j].across.nm = 1, "a part of full width does not lie at the edge");
    sb_run_free(&run);
}

static void broken_counts_of_a_board(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    board_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    BREAK(b->boards.items[0].cuts++, "its cuts, rips or stop settings are miscounted");
    BREAK(b->boards.items[0].stops++, "its cuts, rips or stop settings are miscounted");
    BREAK(b->boards.items[0].ripped.nm++, "its cuts, rips or stop settings are miscounted");
    BREAK(b->boards.items[0].leftover.nm++, "what is left over is miscounted");
    BREAK(b->boards.items[0].offcut.nm++, "what is left over is miscounted");
    BREAK(b->boards.items[0].parts.count = 0, "nothing is cut from it");
    BREAK(b->boards.items[0].supply = 99, "points nowhere");
    BREAK(b->boards.items[0].parts.items[0].need = 99, "points nowhere");
    sb_run_free(&run);
}

static void broken_demand_and_money(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    board_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    BREAK(b->boards.items[0].parts.count--, "too few are cut");
    BREAK(b->boards.items[0].count++, "too many are cut");
    BREAK(b->boards.items[0].supply = 1; b->boards.items[0].count = 2, "more are used than there are");
    BREAK(b->cost.milli--, "the sum is wrong");
    BREAK(b->handling.milli++, "material, handling or leftovers do not add up");
    BREAK(b->counts.stops++, "stop settings of the batch are miscounted");
    BREAK(b->counts.boards++, "boards, cuts or settings do not add up");
    BREAK(b->bound.milli = b->cost.milli + 1, "it is above the cost");
    BREAK(b->bound.milli--; b->proved = true, "the bounds of the stocks do not add up to it");
    sb_run_free(&run);
}

static void broken_rules_of_boards(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    board_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    p.rules.longest_board = mm(1000);
    must_refuse(plan, "the vehicle cannot carry it");
    p.rules.longest_board = mm(0);
    p.rules.kerf = mm(3.1);
    must_refuse(plan, "two parts stand nearer than the blade is wide");
    sb_run_free(&run);
}

/* ---- sheets -------------------------------------------------------------------------------------- */

static void sheet_job(sb_run *run, sb_problem *p) {
    start(run, p, 3.2);
    sb_cut_stock *stock = add_stock(run, p, "ply", true);
    stock->useful_length = mm(400);
    stock->useful_width = mm(200);
    stock->value = 500000;
    p->rules.material_only = false;
    p->rules.stages = 2;
    p->rules.trims = true;
    p->rules.fence.milli = 2000;
    p->rules.back.milli = 700;
    p->rules.sheet_cut.milli = 300;
    sb_supply *s = add_supply(run, p, 2440, 1220, 4500);
    s->trim1 = s->trim2 = mm(10);
    add_need(run, p, "side", 720, 300, 7);
    add_need(run, p, "shelf", 564, 280, 5);
    add_need(run, p, "rail", 564, 100, 4)->grain = SB_CUT_FREE;
}

static size_t a_cut_of(const sb_sheet_plan *sheet, int stage) {
    for (size_t i = 0; i < sheet->cuts.count; i++)
        if (sheet->cuts.items[i].stage == stage)
            return i;
    fail();
    return 0;
}

static void broken_cuts(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    sheet_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    assert_true(sb_plan_check(&run, copy(&run, plan)));
    size_t first = a_cut_of(&plan->sheets.items[0], 1), second = a_cut_of(&plan->sheets.items[0], 2);
    BREAK(b->sheets.items[0].cuts.items[0].at.nm++, "a factory edge is not trued as it should be");
    BREAK(b->sheets.items[0].cuts.items[first].at.nm++, "a part does not come out of the cuts");
    BREAK(b->sheets.items[0].cuts.items[first].divides.w.nm--, "a cut divides a rectangle that is not there");
    BREAK(b->sheets.items[0].cuts.items[first].at.nm += mm(5000).nm, "a cut lies outside its rectangle");
    BREAK(b->sheets.items[0].cuts.items[second].stage = 4, "more stages than the saw's rules allow");
    BREAK(b->sheets.items[0].cuts.items[second].stage = 1, "a cut runs in the wrong direction for its stage");
    BREAK(b->sheets.items[0].cuts.count--, "a part does not come out of the cuts");
    BREAK(b->sheets.items[0].fences++, "fence settings are miscounted");
    BREAK(b->sheets.items[0].returns++, "pieces that go back over the saw are miscounted");
    BREAK(b->counts.returns++, "boards, cuts or settings do not add up");
    sb_run_free(&run);
}

static void broken_sheet_parts(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    sheet_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    BREAK(b->sheets.items[0].parts.items[0].at.x.nm++, "a part does not come out of the cuts");
    BREAK(b->sheets.items[0].parts.items[0].turned = true,
          "a part has the wrong size or lies against its grain");
    BREAK(b->sheets.items[0].parts.items[1] = b->sheets.items[0].parts.items[0],
          "a part does not come out of the cuts");
    BREAK(b->sheets.items[0].parts.count--, "too few are cut");
    BREAK(b->sheets.items[0].leftovers.count = 0;
          b->sheets.items[1].leftovers.count = 0, "usable leftovers are not what the cuts leave");
    sb_run_free(&run);
}

static void broken_rules_of_sheets(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    sheet_job(&run, &p);
    const sb_plan *plan = planned(&run, &p);
    p.rules.longest_rip = mm(500);
    must_refuse(plan, "a rip is longer than the saw reaches");
    p.rules.longest_rip = mm(0);
    p.rules.smallest_strip = mm(900);
    must_refuse(plan, "a strip is narrower than is safe to hold");
    p.rules.smallest_strip = mm(0);
    p.rules.crosscut_first = true;
    must_refuse(plan, "a cut runs in the wrong direction for its stage");
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(broken_positions),         cmocka_unit_test(broken_strips_and_ends),
        cmocka_unit_test(broken_counts_of_a_board), cmocka_unit_test(broken_demand_and_money),
        cmocka_unit_test(broken_rules_of_boards),   cmocka_unit_test(broken_cuts),
        cmocka_unit_test(broken_sheet_parts),       cmocka_unit_test(broken_rules_of_sheets),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
