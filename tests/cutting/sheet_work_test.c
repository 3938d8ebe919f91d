/* Sheets at the saw: what goes back over it, in which order pieces are cut, sheets that are cut alike. */
#include "problems.h"

/* ---- going back over the saw --------------------------------------------------------------------- */

static void price_handling(sb_problem *p, int64_t fence, int64_t back, int64_t cut) {
    p->rules.material_only = false;
    p->rules.sheet.milli = 5000;
    p->rules.fence.milli = fence;
    p->rules.back.milli = back;
    p->rules.sheet_cut.milli = cut;
}

/* Six panels of 800 x 600 in two rows. Rips first: two rips leave two strips, each goes back for three crosscuts. Crosscuts
 * first: three pieces, each goes back for two rips. Settings 600 and 800 either way. */
static void what_goes_back_over_the_saw(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    add_need(&run, &p, "panel", 800, 600, 6);
    price_handling(&p, 2000, 700, 300);
    p.rules.stages = 2;
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(only_sheet(plan)->returns, 2);
    assert_int_equal(plan->counts.sheet_cuts, 2 + 2 * 3);
    assert_int_equal(plan->handling.milli, 5000 + 2 * 2000 + 2 * 700 + 8 * 300);
    p.rules.crosscut_first = true;
    plan = planned(&run, &p);
    assert_int_equal(plan->counts.returns, 3);
    assert_int_equal(plan->counts.sheet_cuts, 3 + 3 * 2);
    assert_int_equal(plan->handling.milli, 5000 + 2 * 2000 + 3 * 700 + 9 * 300);
    sb_run_free(&run);
}

/* What one stage leaves for its next cut lies at the saw still: three full-length strips go back nowhere. A part narrower
 * than its strip goes back for the cut that trims it. */
static void what_does_not_go_back(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2440, 1220);
    add_need(&run, &p, "strip", 2440, 400, 3);
    price_handling(&p, 0, 700, 300);
    assert_int_equal(planned(&run, &p)->handling.milli, 5000 + 3 * 300);
    sb_run_free(&run);
    start_sheets(&run, &p, 0, 1000, 1000);
    add_need(&run, &p, "wide", 500, 1000, 1);
    add_need(&run, &p, "narrow", 500, 900, 1);
    price_handling(&p, 0, 700, 300);
    p.rules.stages = 2;
    p.rules.trims = true;
    assert_int_equal(planned(&run, &p)->handling.milli, 5000 + 700 + 2 * 300);
    sb_run_free(&run);
}

/* Two of 600 x 600: out of a piece as wide as they are, or out of a cheaper one that must be ripped before and then goes
 * back. At 0.50 that pays, at 2.00 it does not; material alone never asks. */
static void going_back_may_cost_more_than_material(void **state) {
    static const int64_t back[] = {50000, 200000}, cost[] = {900000 + 50000, 1000000};
    (void)state;
    for (int i = 0; i < 2; i++) {
        sb_run run;
        sb_problem p;
        start(&run, &p, 3);
        add_stock(&run, &p, "ply", true);
        add_supply(&run, &p, 1203, 600, 1000);
        add_supply(&run, &p, 1203, 610, 900);
        add_need(&run, &p, "door", 600, 600, 2);
        p.rules.back.milli = back[i];
        assert_int_equal(planned(&run, &p)->cost.milli, 900000);
        p.rules.material_only = false;
        const sb_plan *plan = planned(&run, &p);
        assert_int_equal(plan->cost.milli, cost[i]);
        assert_int_equal(plan->counts.returns, 1 - i);
        sb_run_free(&run);
    }
}

/* ---- order ---------------------------------------------------------------------------------------- */

static bool cut_alike(const sb_sheet_plan *a, const sb_sheet_plan *b) {
    bool same = a->supply == b->supply && a->parts.count == b->parts.count && a->cuts.count == b->cuts.count;
    for (size_t n = 0; same && n < a->parts.count; n++)
        same = a->parts.items[n].need == b->parts.items[n].need &&
               memcmp(&a->parts.items[n].at, &b->parts.items[n].at, sizeof(sb_rect)) == 0;
    for (size_t n = 0; same && n < a->cuts.count; n++)
        same = a->cuts.items[n].at.nm == b->cuts.items[n].at.nm;
    return same;
}

/* Six bookcases: sheets cut alike are told once, also where others come between them. */
static void sheets_alike_are_one(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start_sheets(&run, &p, 3, 2500, 1250);
    add_supply(&run, &p, 1250, 1250, 2600);
    add_need(&run, &p, "side", 2000, 299.5, 8);
    add_need(&run, &p, "shelf", 826, 299.5, 28);
    add_need(&run, &p, "low side", 800, 299.5, 4);
    add_need(&run, &p, "low shelf", 876, 299.5, 6);
    p.rules.material_only = false;
    p.rules.sheet.milli = 300000;
    p.rules.fence.milli = 50000;
    p.rules.stages = 3;
    p.stock.items[0].useful_length = mm(600);
    p.stock.items[0].useful_width = mm(300);
    p.stock.items[0].value = 10000;
    p.rules.sheet_cut.milli = 30000;
    for (int i = 0; i < 2; i++)
        p.supplies.items[i].trim1 = p.supplies.items[i].trim2 = mm(8);
    const sb_plan *plan = planned(&run, &p);
    int64_t sheets = 0;
    for (size_t i = 0; i < plan->sheets.count; i++) {
        sheets += plan->sheets.items[i].count;
        for (size_t j = 0; j < i; j++)
            assert_false(cut_alike(&plan->sheets.items[i], &plan->sheets.items[j]));
    }
    assert_int_equal(sheets, plan->counts.sheets);
    assert_true(sheets > (int64_t)plan->sheets.count);
    sb_run_free(&run);
}

/* The cut right behind this one in its row: it divides what this one leaves. */
static const sb_sheet_cut *next_in_row(const sb_problem *p, const sb_sheet_plan *sheet,
                                       const sb_sheet_cut *cut) {
    for (const sb_sheet_cut *next = cut + 1; next < sheet->cuts.items + sheet->cuts.count; next++) {
        int64_t from = next->across_width ? next->divides.y.nm : next->divides.x.nm;
        bool beside = next->across_width ? next->divides.x.nm == cut->divides.x.nm
                                         : next->divides.y.nm == cut->divides.y.nm;
        if (next->stage == cut->stage && beside && from == cut->at.nm + p->rules.panel_kerf.nm)
            return next;
    }
    return NULL;
}

static int64_t slice_of(const sb_sheet_cut *cut) {
    return cut->at.nm - (cut->across_width ? cut->divides.y.nm : cut->divides.x.nm);
}

/* As one would cut it: the widest slice of a row first, so that those of one setting follow each other. */
static void slices_are_cut_in_order(void **state) {
    uint32_t seed = 91;
    int rows = 0;
    (void)state;
    for (int job = 0; job < 20; job++) {
        sb_run run;
        sb_problem p;
        start_sheets(&run, &p, 3.2, 2440, 1220);
        p.rules.stages = job % 2 ? 3 : 0;
        for (int i = 0; i < 5; i++)
            add_need(&run, &p, "panel", 200 + roll(&seed, 900), 100 + roll(&seed, 400), 1 + roll(&seed, 5))
                ->grain = SB_CUT_FREE;
        const sb_plan *plan = planned(&run, &p);
        for (size_t i = 0; i < plan->sheets.count; i++)
            for (size_t c = 0; c < plan->sheets.items[i].cuts.count; c++) {
                const sb_sheet_cut *cut = &plan->sheets.items[i].cuts.items[c];
                const sb_sheet_cut *next = next_in_row(&p, &plan->sheets.items[i], cut);
                assert_true(!next || slice_of(cut) >= slice_of(next));
                rows += next != NULL;
            }
        sb_run_free(&run);
    }
    assert_true(rows > 20);
}

/* So many slices of this size does the sheet give in this stage and direction. */
static int64_t cuts_like(const sb_sheet_plan *sheet, const sb_sheet_cut *like) {
    int64_t count = 0;
    for (size_t i = 0; i < sheet->cuts.count; i++) {
        const sb_sheet_cut *cut = &sheet->cuts.items[i];
        count += cut->stage == like->stage && cut->across_width == like->across_width &&
                 slice_of(cut) == slice_of(like);
    }
    return count;
}

/* The same cuts in whatever order. */
static bool cut_out_alike(const sb_sheet_plan *a, const sb_sheet_plan *b) {
    bool same = a->supply == b->supply && a->cuts.count == b->cuts.count && a->parts.count == b->parts.count;
    for (size_t i = 0; same && i < a->cuts.count; i++)
        same = cuts_like(a, &a->cuts.items[i]) == cuts_like(b, &a->cuts.items[i]);
    return same;
}

/* Sheets that differ only in what is cut first are one. */
static void sheets_that_differ_in_order_are_one(void **state) {
    uint32_t seed = 17;
    int sheets = 0;
    (void)state;
    for (int job = 0; job < 20; job++) {
        sb_run run;
        sb_problem p;
        start_sheets(&run, &p, 2.8, 2500, 1250);
        p.supplies.items[0].trim1 = p.supplies.items[0].trim2 = mm(8);
        price_handling(&p, 105000, 0, 56000);
        p.rules.stages = 3;
        for (uint32_t i = 0; i < 4; i++)
            add_need(&run, &p, "panel", 350 + 250 * i + 50 * roll(&seed, 5), 460, 8 + roll(&seed, 12));
        const sb_plan *plan = planned(&run, &p);
        for (size_t i = 0; i < plan->sheets.count; i++, sheets++)
            for (size_t j = 0; j < i; j++)
                assert_false(cut_out_alike(&plan->sheets.items[i], &plan->sheets.items[j]));
        sb_run_free(&run);
    }
    assert_true(sheets > 20);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(what_goes_back_over_the_saw),
        cmocka_unit_test(what_does_not_go_back),
        cmocka_unit_test(going_back_may_cost_more_than_material),
        cmocka_unit_test(sheets_alike_are_one),
        cmocka_unit_test(slices_are_cut_in_order),
        cmocka_unit_test(sheets_that_differ_in_order_are_one),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
