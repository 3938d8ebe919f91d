/* The customer's paper: right to the cent, in the customer's language, and silent about everything else. */
#include "paper.h"

static sb_document *quote_of(made *m, const sb_ways *ways, const char *language) {
    sb_document *quote = sb_paper_quote(&m->run, &m->shop, &m->job, ways, NULL, paper_wording(&m->run, language));
    if (!sb_ok(&m->run))
        fail_msg("%s", sb_notices_text(&m->run, SB_NOTE, false));
    return quote;
}

/* ---- silence --------------------------------------------------------------------------------------------------- */

typedef struct ban {
    const char *const *words;
    size_t count;
} ban;

static bool is_word(const char *text, const char *at, size_t length) {
    bool before = at == text || !isalnum((unsigned char)at[-1]);
    return before && !isalnum((unsigned char)at[length]);
}

static void check_silence(void *context, const char *text) {
    const ban *banned = context;
    char low[4096];
    snprintf(low, sizeof low, "%s", text);
    for (char *c = low; *c; c++)
        *c = (char)tolower((unsigned char)*c);
    for (size_t i = 0; i < banned->count; i++) {
        const char *word = banned->words[i];
        for (const char *at = strstr(low, word); at; at = strstr(at + 1, word))
            if (is_word(low, at, strlen(word)))
                fail_msg("the quote says '%s': %s", word, text);
    }
}

/* Words of the trade's back room, in both languages, and this shop's stock, merchants, operations and labels. */
static const char *const BACK_ROOM[] = {
    "cost",       "costs",       "margin",      "markup",        "hour",       "hours",        "labour",
    "overhead",   "contingency", "floor",       "waste",         "kerf",       "recipe",       "merchant",
    "operation",  "minutes",     "leftover",    "kosten",        "marge",      "stunde",       "stunden",
    "zuschlag",   "verschnitt",  "larch-20x95", "larch 20 x 95", "screw-5x60", "screw 5 x 60", "oil-clear",
    "fen timber", "assemble",    "office work", "take a board",  "crosscut",   "orchard",      "joiner",
    "slats",      "crane"};

static void gives_nothing_away(void **state) {
    (void)state;
    const ban banned = {BACK_ROOM, sizeof BACK_ROOM / sizeof *BACK_ROOM};
    static const char *const languages[] = {"en", "de"};
    chance c = {99};
    for (int round = 0; round < 100; round++) {
        made *m = made_by_chance(&c);
        m->job.reference = "Q-17";
        m->job.title = "Troughs for the quay";
        sb_ways *ways = paper_ways(m);
        if (round % 3 == 0) {
            paper_two_options(m, ways);
            m->job.options.items[0].title = "With rails";
            m->job.options.items[1].title = "With boards";
        }
        sb_document *quote = quote_of(m, ways, languages[round % 2]);
        paper_walk(quote, check_silence, (void *)&banned);
        for (size_t s = 0; s < quote->sheets.count; s++)
            for (size_t b = 0; b < quote->sheets.items[s]->blocks.count; b++) {
                const sb_table *table = quote->sheets.items[s]->blocks.items[b].table;
                for (size_t i = 0; table && i < table->rows.count * table->column_count; i++)
                    assert_null(
                        table->rows.items[i / table->column_count][i % table->column_count].place.source);
            }
        made_free(m);
    }
}

/* ---- figures ---------------------------------------------------------------------------------------------------- */

/* Every formula gives what is stored, in the four ways a shop may quote. */
static void formulas_give_the_same_cents(void **state) {
    (void)state;
    chance c = {4};
    int ways_seen[4] = {0};
    for (int round = 0; round < 300; round++) {
        made *m = made_by_chance(&c);
        sb_ways *ways = paper_ways(m);
        const sb_estimate *e = ways->list.items[0].estimate;
        sb_document *quote = quote_of(m, ways, "en");
        paper_agrees(quote);
        assert_true(sb_document_sound(&m->run, quote));
        assert_int_equal(paper_named(quote, "total")->amount, e->gross.minor);
        assert_int_equal(paper_worked(quote, "total"), e->gross.minor);
        if (e->taxes.count) {
            assert_int_equal(paper_worked(quote, "tax"), e->tax.minor);
            assert_int_equal(paper_worked(quote, "net"), e->net.minor);
            ways_seen[m->shop.settings.prices_gross * 2 + m->shop.settings.tax_per_line]++;
        }
        if (e->deposit.minor)
            assert_int_equal(paper_worked(quote, "deposit"), e->deposit.minor);
        if (e->stages.count && e->rest.minor)
            assert_int_equal(paper_worked(quote, "rest"), e->rest.minor);
        assert_int_equal(paper_says(quote, "Supplement for a small order"), e->supplement_line.minor > 0);
        assert_int_equal(paper_says(quote, "Tax is worked out once for each rate"),
                         e->taxes.count > 1 && !m->shop.settings.prices_gross &&
                             !m->shop.settings.tax_per_line);
        made_free(m);
    }
    for (int i = 0; i < 4; i++)
        assert_true(ways_seen[i] > 20);
}

static made *two_stools(void) {
    made *m = made_new(0);
    made_tax(m, 200000);
    made_piece(m, "Stool", 2);
    sb_job_amount extra = {.micro = 80000000, .given = true, .text = "All of it"};
    SB_PUSH(m->run.pool, m->job.extras, extra);
    m->shop.settings.validity_days = 30;
    m->shop.settings.deposit.ppm = 250000;
    m->job.title = "Two stools";
    return m;
}

static void says_what_a_customer_asks(void **state) {
    (void)state;
    made *m = two_stools();
    m->job.reference = "Q-9";
    m->job.delivery = (sb_job_amount){.micro = 12000000, .given = true, .text = "by van"};
    SB_PUSH(m->run.pool, m->job.notes, "Seats come oiled.");
    SB_PUSH(m->run.pool, m->job.address, "3 Quince Lane");
    sb_document *quote = quote_of(m, paper_ways(m), "en");
    static const char *const wanted[] = {"Alder Row Workshop",
                                         "Quince House",
                                         "3 Quince Lane",
                                         "Q-9",
                                         "Two stools",
                                         "Stool",
                                         "by van",
                                         "25 %",
                                         "1 April 2026",
                                         "Seats come oiled.",
                                         "Signature",
                                         "VAT"};
    for (size_t i = 0; i < sizeof wanted / sizeof *wanted; i++)
        if (!paper_says(quote, wanted[i]))
            fail_msg("the quote does not say '%s'", wanted[i]);
    assert_int_equal(paper_named(quote, "net")->amount, 9200);
    assert_int_equal(paper_named(quote, "total")->amount, 11040);
    assert_int_equal(paper_named(quote, "deposit")->amount, 2760);
    assert_string_equal(quote->author, "Alder Row Workshop");
    made_free(m);
}

static void speaks_another_language(void **state) {
    (void)state;
    made *m = two_stools();
    sb_document *quote = quote_of(m, paper_ways(m), "de");
    assert_true(paper_says(quote, "Angebot"));
    assert_true(paper_says(quote, "Summe mit Steuer"));
    assert_false(paper_says(quote, "Quote"));
    assert_string_equal(quote->page_word, "Seite");
    assert_true(paper_says(quote, "01.04.2026"));
    assert_false(paper_says(quote, "2026-0"));
    made_free(m);
}

/* A discount of 5 % on 32 stools at a list price of 100.00: 3 200.00 less 160.00. */
static void a_discount_is_a_line_of_its_own(void **state) {
    (void)state;
    made *m = made_new(0);
    made_piece(m, "Stool", 32);
    sb_job_amount extra = {.micro = 3200000000, .given = true, .text = "All of it"};
    SB_PUSH(m->run.pool, m->job.extras, extra);
    m->job.discount = (sb_job_share){.share = {50000}, .given = true};
    sb_document *quote = quote_of(m, paper_ways(m), "en");
    paper_agrees(quote);
    const sb_table *steps = paper_table_saying(quote, "List price of the pieces");
    static const int64_t amounts[] = {320000, -16000, 304000};
    for (size_t i = 0; i < 3; i++)
        assert_int_equal(steps->rows.items[i][4].amount, amounts[i]);
    assert_int_equal(steps->rows.items[1][3].amount, 50000);
    assert_int_equal(paper_worked(quote, "total"), 304000);
    m->shop.settings.discount_hidden = true;
    assert_false(paper_says(quote_of(m, paper_ways(m), "en"), "iscount"));
    made_free(m);
}

/* Right under the prices it is in, in their columns, whatever tax columns they have: a page has room for its words there. */
static void stands_below_the_prices(const sb_document *quote, const sb_table *steps) {
    const sb_sheet *sheet = quote->sheets.items[0];
    for (size_t i = 1; i < sheet->blocks.count; i++)
        if (sheet->blocks.items[i].kind == SB_BLOCK_TABLE && sheet->blocks.items[i].table == steps) {
            assert_int_equal(sheet->blocks.items[i - 1].kind, SB_BLOCK_TABLE);
            assert_int_equal(sheet->blocks.items[i - 1].table->column_count, steps->column_count);
            return;
        }
    fail_msg("the discount is no table of the quote");
}

/* Whatever the price points do, the told share of the list price is the discount, and what is left are the lines. */
static void the_discount_is_right_to_the_cent(void **state) {
    (void)state;
    chance c = {4711};
    int seen = 0;
    for (int round = 0; round < 200; round++) {
        made *m = made_by_chance(&c);
        sb_ways *ways = paper_ways(m);
        sb_share rate = ways->list.items[0].estimate->discount_rate;
        sb_document *quote = quote_of(m, ways, "en");
        if (rate.ppm > 0 && rate.ppm < 1000000) {
            const sb_table *steps = paper_table_saying(quote, "List price of the pieces");
            int64_t list = steps->rows.items[0][4].amount, less = -steps->rows.items[1][4].amount;
            assert_int_equal(sb_mul_div(list, rate.ppm, 1000000), less);
            assert_int_equal(list - less, steps->rows.items[2][4].amount);
            stands_below_the_prices(quote, steps);
            seen++;
        }
        paper_agrees(quote);
        made_free(m);
    }
    assert_true(seen > 20);
}

static void a_note_stands_once(void **state) {
    (void)state;
    made *m = two_stools();
    made_piece(m, "Bench", 1);
    for (size_t i = 0; i < 2; i++)
        SB_PUSH(m->run.pool, m->takeoff.pieces.items[i].notes, "seats come oiled");
    SB_PUSH(m->run.pool, m->takeoff.pieces.items[1].notes, "in two halves");
    sb_ways *ways = paper_ways(m);
    paper_two_options(m, ways);
    sb_document *quote = quote_of(m, ways, "en");
    paper_search once = {"seats come oiled", 0}, bench = {"Bench: in two halves", 0};
    paper_walk(quote, paper_look, &once);
    paper_walk(quote, paper_look, &bench);
    assert_int_equal(once.found, 1);
    assert_int_equal(bench.found, 1);
    assert_true(paper_says(quote, "Stool, Bench: seats come oiled"));
    made_free(m);
}

/* Rounding is to the currency's last figure: the cent, the yen, the fils. */
static void rounding_is_told_for_any_currency(void **state) {
    (void)state;
    made *m = two_stools();
    assert_true(paper_says(quote_of(m, paper_ways(m), "en"), "rounded to the last figure shown"));
    assert_true(paper_says(quote_of(m, paper_ways(m), "de"), "auf die letzte gezeigte Stelle gerundet"));
    made_free(m);
}

static void options_are_alternatives(void **state) {
    (void)state;
    made *m = two_stools();
    sb_ways *ways = paper_ways(m);
    paper_two_options(m, ways);
    sb_document *quote = quote_of(m, ways, "en");
    paper_agrees(quote);
    assert_true(sb_document_sound(&m->run, quote));
    assert_true(paper_says(quote, "Option 1: Larch slats"));
    assert_true(paper_says(quote, "Option 2: Larch | panels"));
    assert_true(paper_says(quote, "Oiled."));
    made_free(m);
}

static void without_tax_deposit_and_limit(void **state) {
    (void)state;
    made *m = two_stools();
    m->shop.settings.taxes.count = 0;
    m->shop.settings.deposit.ppm = 0;
    m->shop.settings.validity_days = 0;
    sb_document *quote = quote_of(m, paper_ways(m), "en");
    assert_false(paper_says(quote, "tax"));
    assert_false(paper_says(quote, "Valid until"));
    assert_false(paper_says(quote, "eposit"));
    assert_int_equal(paper_worked(quote, "total"), 8000);
    made_free(m);
}

/* ---- wording ------------------------------------------------------------------------------------------------------ */

static void a_wording_with_mistakes_tells_them_all(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const char *tmp = getenv("TMPDIR");
    char *folder = sb_pool_print(run.pool, "%s/sawbill-wording-XXXXXX", tmp ? tmp : "/tmp");
    assert_non_null(mkdtemp(folder));
    const char *path = sb_pool_print(run.pool, "%s/wording-xx.txt", folder);
    FILE *file = fopen(path, "w");
    assert_non_null(file);
    fputs("qoute : Q\ntotal : T\ntotal : U\n", file);
    fclose(file);
    sb_wording_read(&run, folder, "xx");
    const char *text = sb_notices_text(&run, SB_NOTE, false);
    assert_non_null(strstr(text, "wording-xx.txt:1:1"));
    assert_non_null(strstr(text, "quote"));
    assert_non_null(strstr(text, "second time"));
    assert_non_null(strstr(text, "\"deposit : ...\""));
    assert_int_equal(sb_status(&run), 1);
    assert_null(sb_wording_read(&run, folder, "yy"));
    unlink(path);
    rmdir(folder);
    sb_run_free(&run);
}

/* A shop's own wording, written before quotes had pictures: told, and nothing stops. */
static void a_wording_without_words_for_pictures(void **state) {
    (void)state;
    sb_run run = sb_run_new();
    const char *tmp = getenv("TMPDIR");
    char *folder = sb_pool_print(run.pool, "%s/sawbill-wording-XXXXXX", tmp ? tmp : "/tmp");
    assert_non_null(mkdtemp(folder));
    const char *path = sb_pool_print(run.pool, "%s/wording-xx.txt", folder);
    FILE *from = fopen("templates/wording-en.txt", "r"), *file = fopen(path, "w");
    char line[1000];
    assert_true(from && file);
    while (fgets(line, sizeof line, from))
        if (strncmp(line, "view", 4) != 0)
            fputs(line, file);
    fclose(from);
    fclose(file);
    const sb_wording *wording = sb_wording_read(&run, folder, "xx");
    assert_int_equal(sb_status(&run), 0);
    assert_string_equal(sb_wording_text(&run, wording, "view-side"), "");
    assert_non_null(strstr(sb_notices_text(&run, SB_NOTE, false), "\"view-front : ...\""));
    unlink(path);
    rmdir(folder);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(gives_nothing_away),
        cmocka_unit_test(formulas_give_the_same_cents),
        cmocka_unit_test(says_what_a_customer_asks),
        cmocka_unit_test(speaks_another_language),
        cmocka_unit_test(options_are_alternatives),
        cmocka_unit_test(a_discount_is_a_line_of_its_own),
        cmocka_unit_test(the_discount_is_right_to_the_cent),
        cmocka_unit_test(a_note_stands_once),
        cmocka_unit_test(rounding_is_told_for_any_currency),
        cmocka_unit_test(without_tax_deposit_and_limit),
        cmocka_unit_test(a_wording_with_mistakes_tells_them_all),
        cmocka_unit_test(a_wording_without_words_for_pictures),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
