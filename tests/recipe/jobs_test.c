/* Jobs: what is ordered, in which ways, and what a person asks on the command line. */
#include "bench.h"

#define HEAD "job bed\ndate 2026-03-02\ncustomer Tern Lane Nursery\n"

static void a_whole_job(void **state) {
    sb_run *run = *state;
    const sb_job *job = job_of(run, "job        quay-12\n"
                                    "title      Planters # draft\n"
                                    "reference  Q-12: second\n"
                                    "revision   B\n"
                                    "rates      imperial\n"
                                    "date       2026-03-02\n"
                                    "customer   Tern Lane Nursery\n"
                                    "address    3 Tern Lane\n"
                                    "address    Saltmarsh\n"
                                    "piece      long : Long trough\n"
                                    "  recipe   trough\n"
                                    "  count    8\n"
                                    "  set      long 1400 mm\n"
                                    "  set      sides panelled\n"
                                    "  stock    slat oak-20x95\n"
                                    "  note     without feet,\n"
                                    "  note     as drawn\n"
                                    "piece      short\n"
                                    "delivery   95.50 : by van\n"
                                    "extra      12 : hire of a lift\n"
                                    "extra      3.25 : ferry\n"
                                    "discount   5 % of price\n"
                                    "deposit    40 %\n"
                                    "margin     22.5 % of price\n"
                                    "contingency 4 % of cost\n"
                                    "validity   30 days\n"
                                    "tax        reduced\n"
                                    "rack       no\n"
                                    "note       Collected; unpainted.\n");
    assert_no_notices(run);
    assert_string_equal(job->name, "quay-12");
    assert_string_equal(job->path, "a.job");
    assert_string_equal(job->title, "Planters");
    assert_string_equal(job->reference, "Q-12: second");
    assert_string_equal(job->revision, "B");
    assert_string_equal(job->rates, "imperial");
    assert_int_equal(job->date.month, 3);
    assert_string_equal(job->customer, "Tern Lane Nursery");
    assert_int_equal(job->address.count, 2);
    assert_string_equal(job->address.items[1], "Saltmarsh");
    assert_int_equal(job->pieces.count, 2);
    const sb_job_piece *piece = job->pieces.items;
    assert_string_equal(piece[0].title, "Long trough");
    assert_string_equal(piece[0].recipe, "trough");
    assert_int_equal(piece[0].count, 8);
    assert_string_equal(piece[0].sets.items[1].name, "sides");
    assert_written(run, piece[0].sets.items[1].formula, "panelled");
    assert_int_equal(line_of(piece[0].sets.items[1].place), 14);
    assert_string_equal(piece[0].stocks.items[0].stock, "oak-20x95");
    assert_string_equal(piece[0].note, "without feet, as drawn");
    assert_null(piece[1].title);
    assert_string_equal(piece[1].recipe, "short");
    assert_int_equal(piece[1].count, 1);
    assert_true(job->delivery.given);
    assert_int_equal(job->delivery.micro, 95500000);
    assert_string_equal(job->delivery.text, "by van");
    assert_int_equal(job->extras.count, 2);
    assert_string_equal(job->extras.items[1].text, "ferry");
    assert_int_equal(job->discount.share.ppm, 50000);
    assert_int_equal(job->deposit.share.ppm, 400000);
    assert_int_equal(job->margin.share.ppm, 225000);
    assert_false(job->markup.given);
    assert_int_equal(job->contingency.share.ppm, 40000);
    assert_int_equal(job->validity_days, 30);
    assert_string_equal(job->tax, "reduced");
    assert_false(job->use_rack);
    assert_int_equal(job->notes.count, 1);
}

static void the_least_a_job_needs(void **state) {
    sb_run *run = *state;
    const sb_job *job = job_of(run, HEAD "piece bed\n");
    assert_no_notices(run);
    assert_null(job->title);
    assert_null(job->reference);
    assert_null(job->rates);
    assert_null(job->tax);
    assert_true(job->use_rack);
    assert_false(job->delivery.given || job->discount.given || job->deposit.given);
    assert_int_equal(job->validity_days, 0);
    assert_int_equal(job->options.count, 0);
}

static void options_side_by_side(void **state) {
    sb_run *run = *state;
    const sb_job *job = job_of(run, HEAD "option larch : All larch\n"
                                         "option mixed-wood\n"
                                         "  set   make sheet\n"
                                         "  set   low.high 800 mm\n"
                                         "  stock tall.board oak-20x95\n"
                                         "  count low 5\n"
                                         "  drop  tall\n"
                                         "  note  without the tall ones\n"
                                         "piece tall\npiece low\n");
    assert_no_notices(run);
    assert_int_equal(job->options.count, 2);
    assert_string_equal(job->options.items[0].title, "All larch");
    const sb_job_option *option = &job->options.items[1];
    assert_string_equal(option->title, "mixed wood");
    assert_string_equal(option->sets.items[0].name, "make");
    assert_string_equal(option->sets.items[1].name, "low.high");
    assert_string_equal(option->stocks.items[0].role, "tall.board");
    assert_int_equal(option->count_count, 2);
    assert_int_equal(option->counts[0].count, 5);
    assert_string_equal(option->counts[1].piece, "tall");
    assert_int_equal(option->counts[1].count, 0);
    assert_string_equal(option->note, "without the tall ones");
}

/* The words of a choice come out of the value as words. */
static void a_bare_word_is_a_value(void **state) {
    sb_run *run = *state;
    const sb_job *job = job_of(run, HEAD "piece bed\nset lid no\n");
    sb_scope *scope = sb_scope_new(run, NULL);
    sb_scope_word(run, scope, "no");
    sb_value value = sb_formula_value(run, job->pieces.items[0].sets.items[0].formula, scope);
    assert_int_equal(value.kind, SB_VALUE_WORD);
    assert_string_equal(value.word, "no");
}

static void decimal_commas(void **state) {
    sb_run *run = *state;
    const char *text = HEAD "piece bed\nset long 1,5 m\ndelivery 95,50\ndiscount 2,5 %\n";
    const sb_job *job = sb_job_of(run, sb_source_of(run, "a.job", text), true);
    assert_no_notices(run);
    assert_int_equal(job->delivery.micro, 95500000);
    assert_int_equal(job->discount.share.ppm, 25000);
    assert_written(run, job->pieces.items[0].sets.items[0].formula, "1,5 m");
}

/* ---- before the shop is read ------------------------------------------------------------------------------ */

static void the_rates_of_a_job(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    const char *with = new_text(run, folder, "a.job", "job a\npiece x\n set a ;;\nrates imperial # inches\n");
    const char *without = new_text(run, folder, "b.job", "job a\n");
    sb_place at;
    assert_string_equal(sb_job_rates(run, with, &at), "imperial");
    assert_int_equal(line_of(at), 4);
    assert_string_equal(sb_job_rates(run, without, &at), "");
    assert_no_notices(run);
    assert_string_equal(sb_job_rates(run, folder, &at), "");
    assert_false(sb_ok(run));
}

/* ---- what if ------------------------------------------------------------------------------------------------ */

static void what_if_leaves_the_job_as_it_was(void **state) {
    sb_run *run = *state;
    const sb_job *job = job_of(run, HEAD "piece bed\npiece low\n");
    const sb_job *one = sb_job_with(run, job, "long=1200 mm", false);
    const sb_job *two = sb_job_with(run, one, "low.sides = panelled", false);
    const sb_job *other = sb_job_with(run, one, "long=900mm", false);
    assert_no_notices(run);
    assert_int_equal(job->sets.count, 0);
    assert_int_equal(one->sets.count, 1);
    assert_string_equal(one->sets.items[0].name, "long");
    assert_written(run, one->sets.items[0].formula, "1200 mm");
    assert_int_equal(two->sets.count, 2);
    assert_string_equal(two->sets.items[1].name, "low.sides");
    assert_int_equal(other->sets.count, 1);
    assert_written(run, other->sets.items[0].formula, "900mm");
    assert_int_equal(two->pieces.count, 2);
}

static void what_if_with_a_mistake(void **state) {
    static const struct {
        const char *setting, *says;
        size_t column;
    } cases[] = {
        {"long", "expected = and a value", 5},
        {"long=", "expected a value", 6},
        {"long=3 mm 4", "end of the line", 11},
        {"lwo.long=3 mm", "unknown piece \"lwo\"; did you mean \"low\"?", 1},
        {"=3", "expected the name of an input", 1},
        {"low.=3", "expected the name of an input behind the dot", 5},
        {"", "expected the name of an input", 1},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        sb_run run = sb_run_new();
        const sb_job *job = job_of(&run, HEAD "piece bed\npiece low\n");
        assert_null(sb_job_with(&run, job, cases[i].setting, false));
        assert_only_notice(&run, cases[i].setting, 1, cases[i].column, cases[i].says);
        sb_run_free(&run);
    }
    (void)state;
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(a_whole_job),
        AT_THE_BENCH(the_least_a_job_needs),
        AT_THE_BENCH(options_side_by_side),
        AT_THE_BENCH(a_bare_word_is_a_value),
        AT_THE_BENCH(decimal_commas),
        AT_THE_BENCH(the_rates_of_a_job),
        AT_THE_BENCH(what_if_leaves_the_job_as_it_was),
        cmocka_unit_test(what_if_with_a_mistake),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
