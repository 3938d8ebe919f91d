/* Sheets: kerf, trims, grain, stages and the limits of the saw, on jobs that can be reckoned by hand. */
#include "problems.h"

/* ---- kerf and trims ------------------------------------------------------------------------------ */

/* Arithmetic: two halves of 1220 do not come out of 2440 with a 3.2 mm blade; 1218.4 do, 1218.401 do not. */
static void two_halves_lose_the_kerf(void **state) {
    static const double halves[] = {1220, 1218.4, 1218.401};
    static const int64_t sheets[] = {2, 1, 2};
    (void)state;
    for (int i = 0; i < 3; i++) {
        sb_run run;
        sb_problem p;
        start_sheets(&run, &p, 3.2, 2440, 1220);
        add_need(&run, &p, "half", halves[i], 1220, 2);
        const sb_plan *plan = planned(&run, &p);
        assert_int_equal(plan->counts.sheets, sheets[i]);
        assert_true(plan->proved);
        sb_run_free(&run);
    }
}

/* Both long edges lose trim1, both ends trim2; the kerf of the truing cut is inside. Positions are from the
 * factory corner. */
static void trims_at_every_factory_edge(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3.2, 2440, 1220);
    p.supplies.items[0].trim1 = mm(10);
    p.supplies.items[0].trim2 = mm(20);
    add_need(&run, &p, "panel", 2400, 1200, 1);
    const sb_plan *plan = planned(&run, &p);
    const sb_sheet_plan *sheet = only_sheet(plan);
    assert_int_equal(sheet->cuts.count, 4);
    static const double at[] = {10 - 3.2, 1220 - 10, 20 - 3.2, 2440 - 20};
    for (size_t i = 0; i < 4; i++) {
        assert_int_equal(sheet->cuts.items[i].stage, 0);
        assert_int_equal(sheet->cuts.items[i].across_width, i >= 2);
        assert_int_equal(sheet->cuts.items[i].at.nm, mm(at[i]).nm);
    }
    assert_int_equal(sheet->parts.items[0].at.x.nm, mm(10).nm);
    assert_int_equal(sheet->parts.items[0].at.y.nm, mm(20).nm);
    assert_int_equal(sheet->fences, 0);
    p.needs.items[0].length.nm++;
    refused(&run, &p,
            "\"panel\" (length 2400 mm, width 1200 mm, length along the sheet) fits no sheet; the nearest is "
            "\"ply\" of "
            "length 2440 mm, width 1220 mm, of which 2400 mm by 1200 mm can be used");
    sb_run_free(&run);
}

/* ---- grain --------------------------------------------------------------------------------------- */

/* 1500 x 1000 lies along 2440 x 1220 but not across it. */
static void grain_is_honoured(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    add_need(&run, &p, "door", 1500, 1000, 1);
    assert_false(only_sheet(planned(&run, &p))->parts.items[0].turned);
    p.needs.items[0].grain = SB_CUT_FREE;
    planned(&run, &p);
    p.needs.items[0].grain = SB_CUT_ACROSS;
    refused(&run, &p, "length across the sheet) fits no sheet");
    sb_run_free(&run);
    start_sheets(&run, &p, 3, 2440, 1220);
    add_need(&run, &p, "door", 1000, 1500, 1)->grain = SB_CUT_ACROSS;
    const sb_sheet_part part = only_sheet(planned(&run, &p))->parts.items[0];
    assert_true(part.turned);
    assert_int_equal(part.at.w.nm, mm(1000).nm);
    assert_int_equal(part.at.l.nm, mm(1500).nm);
    sb_run_free(&run);
}

/* Three of 1220 x 700 stand side by side along a sheet of 2440 x 1220 when they may be turned; one behind the
 * other only two fit. */
static void turning_where_the_grain_allows(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 0, 2440, 1220);
    add_need(&run, &p, "shelf", 1220, 700, 3)->grain = SB_CUT_FREE;
    assert_int_equal(planned(&run, &p)->counts.sheets, 1);
    p.needs.items[0].grain = SB_CUT_ALONG;
    assert_int_equal(planned(&run, &p)->counts.sheets, 2);
    sb_run_free(&run);
}

/* ---- stages -------------------------------------------------------------------------------------- */

/* A pinwheel of four 700 x 500 round a hole in 1200 x 1200 cannot be cut from edge to edge. */
static void a_pinwheel_is_no_guillotine_cut(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 0, 1200, 1200);
    add_need(&run, &p, "tile", 700, 500, 4)->grain = SB_CUT_FREE;
    assert_int_equal(planned(&run, &p)->counts.sheets, 2);
    sb_run_free(&run);
}

static int64_t sheets_with(sb_run *run, sb_problem *p, int stages, bool trims) {
    p->rules.stages = stages;
    p->rules.trims = trims;
    return planned(run, p)->counts.sheets;
}

/* Sheets of 1000 x 1000, strips along them. A part of 900 in a strip of 1000 needs the third cut that takes
 * waste off; two halves side by side in one need a whole third stage. */
static void fewer_stages_need_more_sheets(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 0, 1000, 1000);
    add_need(&run, &p, "wide", 500, 1000, 1);
    add_need(&run, &p, "narrow", 500, 900, 1);
    assert_int_equal(sheets_with(&run, &p, 2, false), 2);
    assert_int_equal(sheets_with(&run, &p, 2, true), 1);
    assert_int_equal(sheets_with(&run, &p, 3, false), 1);
    sb_run_free(&run);
    start_sheets(&run, &p, 0, 1000, 1000);
    add_need(&run, &p, "wide", 500, 1000, 1);
    add_need(&run, &p, "half", 500, 500, 2);
    assert_int_equal(sheets_with(&run, &p, 2, false), 2);
    assert_int_equal(sheets_with(&run, &p, 2, true), 2);
    assert_int_equal(sheets_with(&run, &p, 3, false), 1);
    assert_int_equal(sheets_with(&run, &p, 0, false), 1);
    sb_run_free(&run);
}

static int first_stage_direction(const sb_plan *plan) {
    const sb_sheet_plan *sheet = only_sheet(plan);
    for (size_t i = 0; i < sheet->cuts.count; i++)
        if (sheet->cuts.items[i].stage == 1)
            return sheet->cuts.items[i].across_width;
    return -1;
}

/* Six panels in a regular grid can be cut either way; the rules say which. */
static void rips_or_crosscuts_first(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.rules.stages = 2;
    add_need(&run, &p, "panel", 800, 600, 6);
    assert_int_equal(first_stage_direction(planned(&run, &p)), 0);
    p.rules.crosscut_first = true;
    assert_int_equal(first_stage_direction(planned(&run, &p)), 1);
    sb_run_free(&run);
}

/* ---- limits of the saw --------------------------------------------------------------------------- */

static void no_rip_longer_than_the_saw_reaches(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.rules.longest_rip = mm(1400);
    add_need(&run, &p, "panel", 800, 600, 6);
    const sb_sheet_plan *sheet = only_sheet(planned(&run, &p));
    for (size_t i = 0; i < sheet->cuts.count; i++)
        assert_true(sheet->cuts.items[i].across_width || sheet->cuts.items[i].divides.l.nm <= mm(1400).nm);
    sb_run_free(&run);
}

/* A rip along a part of 2000 is longer than the saw reaches however the sheet is cut first. */
static void what_the_saw_cannot_reach_is_told(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.rules.longest_rip = mm(1400);
    add_need(&run, &p, "board", 2000, 600, 1);
    const sb_plan *plan = refused(&run, &p,
                                  "1 of 1 \"board\" (2000 mm by 600 mm) cannot be cut from what is on offer, "
                                  "within the rules of the saw");
    assert_int_equal(plan->short_of.items[0].missing, 1);
    sb_run_free(&run);
}

static void no_strip_narrower_than_is_safe(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.rules.smallest_strip = mm(150);
    p.rules.stages = 3;
    add_need(&run, &p, "lath", 600, 40, 10);
    const sb_sheet_plan *sheet = only_sheet(planned(&run, &p));
    for (size_t i = 0; i < sheet->cuts.count; i++)
        if (sheet->cuts.items[i].stage == 1)
            assert_true(sheet->cuts.items[i].at.nm - sheet->cuts.items[i].divides.x.nm >= mm(150).nm);
    p.rules.stages = 2; /* without a third stage the lath is as narrow as its strip */
    refused(&run, &p, "10 of 10 \"lath\"");
    sb_run_free(&run);
}

/* ---- money --------------------------------------------------------------------------------------- */

/* A half sheet is cheaper than a whole one, and a rack piece than both; each rack piece is there once. */
static void part_sheets_and_rack_pieces(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    add_supply(&run, &p, 1220, 1220, 2600);
    sb_supply *rack = add_supply(&run, &p, 800, 700, 300);
    rack->leftover = true;
    rack->available = 1;
    add_need(&run, &p, "panel", 780, 680, 2);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.sheets, 2);
    assert_int_equal(plan->material.milli, (300 + 2600) * 1000);
    sb_run_free(&run);
}

/* 2440 x 1220 with one panel of 1217 x 1220: the rest, 1220 x 1220, is worth 1.4884 m2 at 6.00. */
static void usable_leftovers_are_credited(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.stock.items[0].useful_length = mm(600);
    p.stock.items[0].useful_width = mm(300);
    p.stock.items[0].value = 600000;
    p.rules.material_only = false;
    p.rules.sheet.milli = 5000;
    p.rules.fence.milli = 2000;
    p.rules.sheet_cut.milli = 1000;
    add_need(&run, &p, "panel", 1217, 1220, 1);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(only_sheet(plan)->leftovers.count, 1);
    assert_int_equal(only_sheet(plan)->leftovers.items[0].l.nm, mm(1220).nm);
    assert_int_equal(plan->leftovers.milli, 893040);
    assert_int_equal(plan->handling.milli, 5000 + 2000 + 1000);
    assert_int_equal(plan->cost.milli, 4800000 + 8000 - 893040);
    sb_run_free(&run);
}

static void a_short_supply_of_sheets(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.supplies.items[0].available = 1;
    add_need(&run, &p, "panel", 1000, 1000, 3);
    const sb_plan *plan = refused(&run, &p, "not enough \"ply\": 1 of 3 \"panel\"");
    assert_int_equal(plan->counts.sheets, 1);
    sb_run_free(&run);
}

static void a_truing_cut_needs_its_kerf(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    p.supplies.items[0].trim2 = mm(1);
    add_need(&run, &p, "panel", 1000, 1000, 3);
    assert_null(refused(&run, &p, "1 mm is less than 3 mm"));
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(two_halves_lose_the_kerf),
        cmocka_unit_test(trims_at_every_factory_edge),
        cmocka_unit_test(grain_is_honoured),
        cmocka_unit_test(turning_where_the_grain_allows),
        cmocka_unit_test(a_pinwheel_is_no_guillotine_cut),
        cmocka_unit_test(fewer_stages_need_more_sheets),
        cmocka_unit_test(rips_or_crosscuts_first),
        cmocka_unit_test(no_rip_longer_than_the_saw_reaches),
        cmocka_unit_test(what_the_saw_cannot_reach_is_told),
        cmocka_unit_test(no_strip_narrower_than_is_safe),
        cmocka_unit_test(part_sheets_and_rack_pieces),
        cmocka_unit_test(usable_leftovers_are_credited),
        cmocka_unit_test(a_short_supply_of_sheets),
        cmocka_unit_test(a_truing_cut_needs_its_kerf),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
