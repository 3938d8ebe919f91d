/* Facts of the trade, followed with the marks that the sheet prints: which side of a mark the blade runs on. */
#include "sample.h"

#include <math.h>

enum {
    MOST = 8
};

/* Parts of one board: where the blade should begin, by the sheet. */
typedef struct board_marks {
    double cut_at[MOST], from[MOST];
    size_t count;
} board_marks;

static double in_mm(const sb_cell *cell) {
    assert_int_equal(cell->kind, SB_CELL_LENGTH);
    return (double)cell->amount / 1e6;
}

static board_marks marks_on(const sb_document *cuts) {
    board_marks m = {.count = 0};
    const sb_sheet *sheet = sheet_named(cuts, "Boards");
    for (size_t b = 0; b < sheet->blocks.count; b++) {
        const sb_table *table = sheet->blocks.items[b].table;
        for (size_t r = 0; table && r < table->rows.count; r++) {
            const sb_cell *row = table->rows.items[r];
            if (row[3].kind != SB_CELL_LENGTH || m.count == MOST)
                continue;
            m.from[m.count] = in_mm(&row[2]);
            m.cut_at[m.count++] = in_mm(&row[3]);
        }
    }
    return m;
}

static const sb_document *cuts_of(sb_run *run, sb_length part, int64_t count, sb_length board, sb_length kerf,
                                  sb_style style) {
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules =
        (sb_cut_rules){.kerf = kerf, .rip_kerf = kerf, .panel_kerf = kerf, .material_only = true};
    SB_PUSH(run->pool, problem->stock, ((sb_cut_stock){.name = "batten"}));
    SB_PUSH(run->pool, problem->needs, ((sb_need){.name = "part", .count = count, .length = part}));
    SB_PUSH(run->pool, problem->supplies,
            ((sb_supply){.length = board, .price = {1000}, .available = -1, .label = "", .row = 1}));
    const sb_plan *plan = sb_plan_make(run, problem);
    if (!plan || !sb_ok(run))
        fail_msg("%s", sb_notices_text(run, SB_NOTE, false));
    return sb_paper_bare_cuts(run, plan, style, (sb_currency){"", 2});
}

/* What one gets whose blade begins so far from each mark: nothing is right, a kerf is the wrong side, half of one the middle. */
static void saw_along(const board_marks *m, double kerf, const double *before_mark, double *parts) {
    double starts = 0;
    for (size_t i = 0; i < m->count; i++) {
        double blade = m->cut_at[i] - before_mark[i];
        parts[i] = blade - starts;
        starts = blade + kerf;
    }
}

static void assert_parts(const double *parts, const double *wanted, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (fabs(parts[i] - wanted[i]) > 1e-9)
            fail_msg("part %zu is %g, not %g", i + 1, parts[i], wanted[i]);
}

static const sb_style in_half_mm = {SB_UNITS_MM, {SB_NM_PER_MM / 2}, false};

/* Common practice, no source: 300 mm from the trued end and a blade of 3 mm; the next part begins behind the blade. */
static void three_hundred_from_the_trued_end(void **state) {
    (void)state;
    static const double right[3] = {0}, wrong_side[3] = {3, 0, 0}, middle[3] = {1.5, 0, 0};
    static const double all_wrong[3] = {3, 3, 3};
    sb_run run = sb_run_new();
    const sb_document *cuts = cuts_of(&run, SB_MM(300), 3, SB_MM(1000), SB_MM(3), in_half_mm);
    board_marks m = marks_on(cuts);
    double parts[MOST] = {0};
    assert_int_equal(m.count, 3);
    assert_parts(m.cut_at, (double[]){300, 603, 906}, 3);
    assert_parts(m.from, (double[]){0, 303, 606}, 3);
    saw_along(&m, 3, right, parts);
    assert_parts(parts, (double[]){300, 300, 300}, 3);
    saw_along(&m, 3, wrong_side, parts); /* a kerf short, and the neighbour has it */
    assert_parts(parts, (double[]){297, 303, 300}, 3);
    saw_along(&m, 3, middle, parts); /* half a kerf */
    assert_parts(parts, (double[]){298.5, 301.5, 300}, 3);
    saw_along(&m, 3, all_wrong, parts);
    assert_parts(parts, (double[]){297, 300, 300}, 3);
    assert_int_equal(told(cuts, "makes the part 3 mm short, one through its middle 1.5 mm"), 1);
    sb_run_free(&run);
}

/* Marks made without the blade's width, one length after another: all but the first are a kerf short. */
static void marks_without_kerfs(void **state) {
    (void)state;
    const board_marks m = {.cut_at = {300, 600, 900}, .count = 3};
    static const double right[3] = {0};
    double parts[MOST] = {0};
    saw_along(&m, 3, right, parts);
    assert_parts(parts, (double[]){300, 297, 297}, 3);
}

/* toolboxtoday.com, tag "advantages": a blank of 30 in cut once, with a kerf of 1/8 in, into two equal pieces of 14 15/16 in. */
static void a_blank_of_thirty_inches(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    sb_length part = {14 * SB_NM_PER_INCH + 15 * SB_NM_PER_INCH / 16}, kerf = {SB_NM_PER_INCH / 8};
    sb_style style = {SB_UNITS_IN, {SB_NM_PER_INCH / 16}, false};
    board_marks m = marks_on(cuts_of(&run, part, 2, (sb_length){30 * SB_NM_PER_INCH}, kerf, style));
    assert_int_equal(m.count, 2);
    assert_true(fabs(m.cut_at[0] - 14.9375 * 25.4) < 1e-9);
    assert_true(fabs(m.from[1] - 15.0625 * 25.4) < 1e-9);
    assert_true(fabs(m.cut_at[1] - 30 * 25.4) < 1e-9);
    sb_run_free(&run);
}

/* A blade that takes nothing makes no such mistake, and nothing is said of it. */
static void no_kerf_no_words(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    assert_int_equal(
        told(cuts_of(&run, SB_MM(300), 3, SB_MM(1000), SB_MM(0), in_half_mm), "short, one through"), 0);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(three_hundred_from_the_trued_end),
        cmocka_unit_test(marks_without_kerfs),
        cmocka_unit_test(a_blank_of_thirty_inches),
        cmocka_unit_test(no_kerf_no_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
