/* What the customer sees of a piece: outlines with the outside measures of the piece they order. */
#include "sample.h"

#include <math.h>

static sb_document *quote_of(sample *s) {
    const sb_wording *wording = sb_wording_read(&s->run, "templates", "en");
    sb_document *document = sb_paper_quote(&s->run, s->shop, s->job, s->ways, NULL, wording);
    if (!sb_ok(&s->run))
        sample_fail(s, "a quote");
    return document;
}

static const sb_drawing *picture(const sb_document *document, size_t index) {
    const sb_sheet *sheet = document->sheets.items[0];
    for (size_t i = 0; i < sheet->blocks.count; i++)
        if (sheet->blocks.items[i].kind == SB_BLOCK_DRAWING && index-- == 0)
            return sheet->blocks.items[i].drawing;
    return NULL;
}

static int numbers(const sb_drawing *drawing, const char *number) {
    int count = 0;
    for (size_t i = 0; i < drawing->labels.count; i++)
        count += strcmp(drawing->labels.items[i].number, number) == 0;
    return count;
}

/* Staves of this width and height, to the nm. */
static int staves(const sb_drawing *drawing, double width_mm, double height_mm) {
    int count = 0;
    for (size_t i = 0; i < drawing->shapes.count; i++) {
        const sb_shape *shape = &drawing->shapes.items[i];
        if (shape->fill != SB_FILL_PAPER)
            continue;
        const sb_point *at = shape->points.items;
        count += llround(width_mm * 1e6) == at[3].x.nm - at[0].x.nm &&
                 llround(height_mm * 1e6) == at[0].y.nm - at[1].y.nm;
    }
    return count;
}

/* samples/harbour-planters.job: 1400 x 400 x 500 and 900 x 450 x 500 mm, clad with four rows of slats 95 mm wide. */
static void planters_show_their_slats(void **state) {
    sample s;
    (void)state;
    sample_open(&s, "harbour-planters");
    const sb_document *document = quote_of(&s);
    const sb_drawing *trough = picture(document, 0);
    assert_non_null(trough);
    assert_string_equal(trough->title, "Long trough");
    assert_int_equal(numbers(trough, "1400 mm"), 1);
    assert_int_equal(numbers(trough, "400 mm"), 1);
    assert_int_equal(numbers(trough, "500 mm"), 2); /* in both views */
    assert_int_equal(staves(trough, 1400, 95), 4);
    assert_int_equal(staves(trough, 400, 95), 4);
    assert_int_equal(numbers(picture(document, 1), "900 mm"), 1);
    assert_null(picture(document, 2));
    sample_close(&s);
}

/* The outside measures of the picture are those of the recipe's `size` line; the back legs lean as the job says. */
static void a_bench_leans_as_asked(void **state) {
    sample s;
    (void)state;
    sample_open(&s, "rack-bench");
    const sb_drawing *bench = picture(quote_of(&s), 0);
    assert_int_equal(numbers(bench, "1600 mm"), 1);
    assert_int_equal(numbers(bench, "623.5 mm"), 1);
    assert_int_equal(numbers(bench, "850 mm"), 2);
    int leaning = 0;
    for (size_t i = 0; i < bench->shapes.count; i++) {
        const sb_shape *shape = &bench->shapes.items[i];
        if (shape->fill != SB_FILL_PAPER || shape->points.items[0].x.nm == shape->points.items[1].x.nm)
            continue;
        double across = (double)(shape->points.items[1].x.nm - shape->points.items[0].x.nm);
        double up = (double)(shape->points.items[0].y.nm - shape->points.items[1].y.nm);
        assert_true(fabs(atan2(across, up) * 180 / acos(-1.0) - 10) < 1e-4);
        leaning++;
    }
    assert_int_equal(leaning, 1);
    sample_close(&s);
}

/* samples/boathouse-imperial.job: 7' 6" by 26 1/2", 34" high as the recipe has it. */
static void a_workbench_in_inches(void **state) {
    sample s;
    (void)state;
    sample_open(&s, "boathouse-imperial");
    const sb_drawing *bench = picture(quote_of(&s), 0);
    assert_int_equal(numbers(bench, "90\""), 1);
    assert_int_equal(numbers(bench, "26 1/2\""), 1);
    assert_int_equal(numbers(bench, "34\""), 2);
    sample_close(&s);
}

static void a_recipe_without_outlines_has_no_picture(void **state) {
    sample s;
    (void)state;
    sample_make(&s, "piece frame\n  recipe mitred-frame\n");
    assert_non_null(picture(quote_of(&s), 0));
    s.ways->list.items[0].takeoff->pieces.items[0].outlines.count = 0;
    assert_null(picture(quote_of(&s), 0));
    sample_close(&s);
}

/* What a recipe shows is as big as its `size` line says: nothing outside it, and nothing of it missing. */
static void every_recipe_shows_its_size(void **state) {
    static const struct {
        const char *recipe, *width, *depth, *height;
    } shown[] = {
        {"dining-table", "1800 mm", "900 mm", "740 mm"}, {"ledged-gate", "900 mm", "48 mm", "1200 mm"},
        {"mitred-frame", "600 mm", NULL, "400 mm"},      {"raised-bed", "2000 mm", "1000 mm", "435 mm"},
        {"shelf-unit", "900 mm", "300 mm", "1800 mm"},   {"splayed-planter", "450 mm", NULL, "400 mm"},
        {"planter-seat", "2400 mm", "500 mm", "510 mm"},
    };
    (void)state;
    for (size_t i = 0; i < sizeof shown / sizeof *shown; i++) {
        sample s;
        const char *recipe = shown[i].recipe;
        char lines[100];
        snprintf(lines, sizeof lines, "piece it\n  recipe %s\n", recipe);
        sample_make(&s, lines);
        const sb_drawing *it = picture(quote_of(&s), 0);
        if (!it || numbers(it, shown[i].width) < 1 || numbers(it, shown[i].height) < 1 ||
            (shown[i].depth && numbers(it, shown[i].depth) != 1))
            fail_msg("%s is not shown as it is", recipe);
        sample_close(&s);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(planters_show_their_slats),
        cmocka_unit_test(a_bench_leans_as_asked),
        cmocka_unit_test(every_recipe_shows_its_size),
        cmocka_unit_test(a_workbench_in_inches),
        cmocka_unit_test(a_recipe_without_outlines_has_no_picture),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
