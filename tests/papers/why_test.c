/* Where a figure comes from: every figure on the papers has an answer, down to its line. */
#include "sample.h"

static const sb_way *first(const sample *s) {
    return &s->ways->list.items[0];
}

static const sb_document *why(sample *s, const char *figure) {
    const sb_document *paper = sb_paper_why(&s->run, s->shop, s->job, first(s), figure);
    if (!paper || !sb_ok(&s->run))
        sample_fail(s, figure);
    return paper;
}

static void every_step_of_the_price(void **state) {
    (void)state;
    static const char *const figures[] = {
        "material",    "labour",   "overhead", "cost",  "contingency", "base",  "price", "discount",
        "pieces",      "delivery", "net",      "tax",   "total",       "gross", "floor", "earned per hour",
        "margin left", "deposit",  "hours",    "TOTAL", "margin",      "markup"};
    sample s;
    sample_open(&s, "harbour-planters");
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        why(&s, figures[i]);
    sample_close(&s);
}

static void the_total_is_the_whole_chain(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_document *paper = why(&s, "total");
    static const char *const steps[] = {"material", "labour",   "overhead", "cost", "contingency", "base",
                                        "price",    "discount", "delivery", "net",  "tax"};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        assert_true(told(paper, steps[i]) > 0);
    const char *gross = sb_write_money(&s.run, first(&s)->estimate->gross, s.shop->settings.currency,
                                       &s.shop->settings.style);
    assert_true(told(paper, gross) > 0);
    assert_true(told(paper, "rates/shop.txt:") > 0);
    sample_close(&s);
}

static void parts_stock_work_and_pieces(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_way *way = first(&s);
    for (size_t i = 0; i < way->takeoff->parts.count; i++) {
        const sb_document *paper = why(&s, way->takeoff->parts.items[i].title);
        assert_true(told(paper, ".recipe:") > 0);
    }
    for (size_t i = 0; i < way->order->lines.count; i++)
        assert_true(told(why(&s, way->order->lines.items[i].stock->id), ".csv:") > 0);
    for (size_t i = 0; i < way->estimate->labour.count; i++)
        assert_true(told(why(&s, way->estimate->labour.items[i].operation->id), "operations.csv:") > 0);
    for (size_t i = 0; i < way->takeoff->pieces.count; i++)
        assert_true(told(why(&s, way->takeoff->pieces.items[i].title), "unit price") > 0);
    sample_close(&s);
}

static void a_length_shows_its_formula(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_document *paper = why(&s, "short slat");
    assert_true(told(paper, "wide - 2 * slat.thickness = 400 mm - 2 * 20 mm = 360 mm") == 1);
    sample_close(&s);
}

/* What is cut longer than it ends up says by how much and what for; what was bought, in which size and of whom. */
static void lengths_and_sizes_are_told(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    assert_int_equal(told(why(&s, "brace"), "finished length + 2 mm to trim to fit"), 1);
    assert_int_equal(told(why(&s, "brace"), "over-length"), 0);
    const sb_order *order = first(&s)->order;
    for (size_t i = 0; i < order->lines.count && order->lines.items[i].offer; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (line->stock->kind != SB_STOCK_BOARD)
            continue;
        const char *bought = sb_pool_print(
            s.run.pool, "%d x %s, %s", (int)line->count,
            sb_write_length_unit(&s.run, line->offer->length, &s.shop->settings.style), line->merchant);
        assert_int_equal(told(why(&s, line->stock->id), bought), 1);
    }
    sample_close(&s);
}

static void near_misses(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    assert_null(sb_paper_why(&s.run, s.shop, s.job, first(&s), "totl"));
    assert_non_null(strstr(sb_notices_message(&s.run, 0), "\"total\""));
    assert_null(sb_record_why(&s.run, s.shop, s.job, first(&s), "larch-45x59"));
    assert_non_null(strstr(sb_notices_message(&s.run, 1), "\"larch-45x95\""));
    sample_close(&s);
}

static void the_record_says_the_same(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_record *record = sb_record_why(&s.run, s.shop, s.job, first(&s), "net");
    const sb_record *steps = record->first->next;
    assert_string_equal(record->first->text, "net");
    size_t count = 0;
    for (const sb_record *step = steps->first; step; step = step->next)
        count++;
    assert_true(count >= 8);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_step_of_the_price),     cmocka_unit_test(the_total_is_the_whole_chain),
        cmocka_unit_test(parts_stock_work_and_pieces), cmocka_unit_test(a_length_shows_its_formula),
        cmocka_unit_test(lengths_and_sizes_are_told),  cmocka_unit_test(near_misses),
        cmocka_unit_test(the_record_says_the_same),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
