/* Risk and sensitivity on the papers: in the estimate, on the terminal, for machines, and behind `why`. */
#include "sample.h"

static const sb_way *first(const sample *s) {
    return &s->ways->list.items[0];
}

static const sb_cell *named(const sb_document *document, const char *name) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            for (size_t i = 0; table && i < table->rows.count * table->column_count; i++) {
                const sb_cell *cell = &table->rows.items[i / table->column_count][i % table->column_count];
                if (cell->name && strcmp(cell->name, name) == 0)
                    return cell;
            }
        }
    fail_msg("no cell is named %s", name);
    return NULL;
}

static void the_estimate_tells_both(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_risk *risk = first(&s)->risk;
    const sb_document *estimate = sb_paper_estimate(&s.run, s.shop, s.job, s.ways, NULL);
    assert_non_null(sheet_named(estimate, "Risk"));
    assert_non_null(sheet_named(estimate, "Sensitivity"));
    assert_int_equal(named(estimate, "cost_10")->amount, risk->cost10.minor);
    assert_int_equal(named(estimate, "cost_90")->amount, risk->cost90.minor);
    assert_int_equal(named(estimate, "loses")->amount, risk->loses.ppm);
    assert_int_equal(named(estimate, "confident_price")->amount, risk->price.minor);
    assert_true(told(estimate, "Hourly rate of bench") == 1);
    assert_true(told(estimate, "The cutting plan is held") >= 2); /* for the rates, and here */
    for (size_t i = 0; i < risk->inputs.count; i++)
        assert_true(told(estimate, risk->inputs.items[i].what) >= 1);
    assert_null(relation_first_wrong(estimate));
    sample_close(&s);
}

static void one_line_on_the_terminal(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_document *summary = sb_paper_summary(&s.run, s.shop, s.job, s.ways, NULL);
    const char *cost =
        sb_write_money(&s.run, first(&s)->risk->cost80, s.shop->settings.currency, &s.shop->settings.style);
    assert_true(told(summary, sb_pool_print(s.run.pool, "%s EUR or less in 80 %% of cases", cost)) == 1);
    fits_eighty_columns(&s.run, summary);
    sample_close(&s);
}

static const sb_record *in(const sb_record *record, const char *key) {
    for (const sb_record *r = record->first; r; r = r->next)
        if (r->key && strcmp(r->key, key) == 0)
            return r;
    fail_msg("no key %s", key);
    return NULL;
}

static void for_machines(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_record *option = in(sb_record_quote(&s.run, s.shop, s.job, s.ways), "options")->first,
                    *risk = in(option, "risk");
    static const char *const keys[] = {"draws",   "cost_10",   "cost_50",       "cost_80",
                                       "cost_90", "cost_mean", "loses_percent", "confidence_percent",
                                       "price",   "inputs"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        in(risk, keys[i]);
    assert_int_equal(in(risk, "draws")->integer, 20000);
    assert_string_equal(in(in(risk, "inputs")->first, "range_of")->text, "price");
    const sb_record *movers = in(in(option, "sensitivity"), "movers");
    size_t count = 0;
    for (const sb_record *mover = movers->first; mover; mover = mover->next, count++)
        assert_true(in(mover, "tenth_more")->text != NULL && in(mover, "what")->text != NULL);
    assert_int_equal(count, 10);
    sample_close(&s);
}

static void why_reaches_the_rows(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_document *risk = sample_why(&s, "risk");
    assert_true(told(risk, "rates/operations.csv:") > 3);
    assert_true(told(risk, "rates/prices.csv:") > 0);
    assert_true(told(risk, "least 5, likely 6, most 9") == 1);
    const sb_document *moves = sample_why(&s, "sensitivity");
    assert_true(told(moves, "rates/shop.txt:") >= 3);
    sample_close(&s);
}

static void without_ranges_there_is_no_risk(void **state) {
    (void)state;
    sample s;
    sample_own(&s, "rack-bench");
    sb_ways *sure = (sb_ways *)s.ways;
    sure->list.items[0].risk = NULL;
    assert_true(
        told(sb_paper_estimate(&s.run, s.shop, s.job, s.ways, NULL), "nothing can be said of its risk") == 1);
    assert_true(told(sb_paper_summary(&s.run, s.shop, s.job, s.ways, NULL), "of cases") == 0);
    assert_true(told(sample_why(&s, "risk"), "told as a range") == 1);
    assert_int_equal(in(in(sb_record_quote(&s.run, s.shop, s.job, s.ways), "options")->first, "risk")->kind,
                     SB_RECORD_NULL);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(the_estimate_tells_both),
        cmocka_unit_test(one_line_on_the_terminal),
        cmocka_unit_test(for_machines),
        cmocka_unit_test(why_reaches_the_rows),
        cmocka_unit_test(without_ranges_there_is_no_risk),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
