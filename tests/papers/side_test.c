/* Options side by side, the terminal's summary, and the record for machines. */
#include "paper.h"
#include "sawbill/writers.h"

static made *two_ways(sb_ways **ways) {
    chance c = {8};
    made *m = made_by_chance(&c);
    m->job.title = "Troughs for the quay";
    *ways = paper_ways(m);
    paper_two_options(m, *ways);
    return m;
}

static void fits_eighty_columns(sb_run *run, const sb_document *document) {
    const char *text = sb_write_text(run, document, 80);
    for (const char *line = text; line && *line; line = strchr(line, '\n') ? strchr(line, '\n') + 1 : NULL)
        if (strcspn(line, "\n") > 80)
            fail_msg("wider than 80: %.100s", line);
}

static void side_by_side(void **state) {
    (void)state;
    sb_ways *ways;
    made *m = two_ways(&ways);
    sb_document *document = sb_paper_comparison(&m->run, &m->shop, &m->job, ways);
    static const char *const wanted[] = {"Larch slats",     "Total with tax",    "Each: Trough",
                                         "Hours",           "Waste, of used up", "Weight, kg",
                                         "Lead time, days", "Floor, net"};
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
        assert_true(paper_says(document, wanted[i]));
    fits_eighty_columns(&m->run, document);
    made_free(m);
}

static void the_terminal_shows_the_job(void **state) {
    (void)state;
    sb_ways *ways;
    made *m = two_ways(&ways);
    sb_document *document = sb_paper_summary(&m->run, &m->shop, &m->job, ways, NULL);
    assert_true(paper_says(document, "Troughs for the quay"));
    assert_true(paper_says(document, "Floor"));
    fits_eighty_columns(&m->run, document);
    made_free(m);
}

/* ---- how good the plan is, in words -------------------------------------------------------------------------------- */

static void plan_says(int64_t cost, int64_t bound, bool proved, const char *words) {
    chance c = {8};
    made *m = made_by_chance(&c);
    m->plan.cost.milli = cost;
    m->plan.bound.milli = bound;
    m->plan.proved = proved;
    sb_document *document = sb_paper_summary(&m->run, &m->shop, &m->job, paper_ways(m), NULL);
    if (!paper_says(document, words))
        fail_msg("nothing says '%s'", words);
    made_free(m);
}

static void the_plan_in_words(void **state) {
    (void)state;
    plan_says(100000, 100000, true, "proved least;");
    plan_says(100400, 100000, false, "at most 0.4 % above least;");
    plan_says(100401, 100000, false, "at most 0.5 % above least;"); /* rounded up: never better than it is */
    plan_says(100400, 0, false, "not proved least;");
}

static void a_decimal_comma_everywhere(void **state) {
    (void)state;
    chance c = {8};
    made *m = made_by_chance(&c);
    m->shop.settings.style.decimal_comma = true;
    m->plan.cost.milli = 100400;
    m->plan.bound.milli = 100000;
    sb_document *document = sb_paper_summary(&m->run, &m->shop, &m->job, paper_ways(m), NULL);
    assert_true(paper_says(document, "at most 0,4 % above least;"));
    made_free(m);
}

/* ---- for machines --------------------------------------------------------------------------------------------------- */

static const sb_record *in(const sb_record *record, const char *key) {
    for (const sb_record *at = record->first; at; at = at->next)
        if (strcmp(at->key, key) == 0)
            return at;
    fail_msg("no key '%s'", key);
    return NULL;
}

static void figures_for_machines(void **state) {
    (void)state;
    made *m = made_new(0);
    made_tax(m, 200000);
    made_piece(m, "Stool", 2);
    sb_job_amount extra = {.micro = 80000000, .given = true, .text = "All of it"};
    SB_PUSH(m->run.pool, m->job.extras, extra);
    m->plan.bound.milli = 123999; /* rounded down */
    const sb_record *record = sb_record_quote(&m->run, &m->shop, &m->job, paper_ways(m));
    assert_string_equal(in(record, "customer")->text, "Quince House");
    assert_int_equal(in(record, "reference")->kind, SB_RECORD_NULL);
    const sb_record *option = in(record, "options")->first;
    assert_null(option->next);
    assert_string_equal(in(option, "net")->text, "80.00");
    assert_string_equal(in(option, "gross")->text, "96.00");
    assert_string_equal(in(in(option, "tax")->first, "amount")->text, "16.00");
    assert_string_equal(in(in(option, "pieces")->first, "unit")->text, "40.00");
    assert_int_equal(in(in(option, "pieces")->first, "mass_kg")->integer, 4);
    assert_string_equal(in(in(option, "plan"), "bound")->text, "1.23");
    assert_int_equal(in(option, "lead_days")->kind, SB_RECORD_NULL);
    assert_non_null(in(option, "materials"));
    assert_non_null(in(option, "work"));
    made_free(m);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(side_by_side),
        cmocka_unit_test(the_terminal_shows_the_job),
        cmocka_unit_test(the_plan_in_words),
        cmocka_unit_test(a_decimal_comma_everywhere),
        cmocka_unit_test(figures_for_machines),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
