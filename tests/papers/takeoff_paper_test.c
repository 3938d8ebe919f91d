/* The takeoff as a paper and as a record: everything that the jobs take, and the order that covers it. */
#include "sample.h"

static const sb_table *table_named(const sb_document *document, const char *title) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            if (table && strcmp(table->title, title) == 0)
                return table;
        }
    fail_msg("no table '%s'", title);
    return NULL;
}

static const sb_document *paper_of(sample *s) {
    const sb_way *way = &s->ways->list.items[0];
    return sb_paper_takeoff(&s->run, s->shop, s->job->title, &way->takeoff, 1, way->plan, way->order);
}

static void a_takeoff_names_everything(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_way *way = &s.ways->list.items[0];
        const sb_document *paper = paper_of(&s);
        for (size_t t = 0; t < way->takeoff->pieces.count; t++)
            assert_true(told(paper, way->takeoff->pieces.items[t].title) > 0);
        for (size_t t = 0; t < way->takeoff->totals.count; t++)
            assert_true(told(paper, way->takeoff->totals.items[t].stock->title) > 0);
        for (size_t u = 0; u < way->takeoff->usages.count; u++)
            assert_true(told(paper, way->takeoff->usages.items[u].stock->title) > 0);
        assert_null(relation_first_wrong(paper));
        assert_true(sb_document_sound(&s.run, paper));
        fits_eighty_columns(&s.run, paper);
        sample_close(&s);
    }
}

/* 25 % added to net is 20 % of what is bought; a paper says which is which. Here 5 % added: 5 / 105 = 4.76 %. */
static void an_allowance_says_of_what(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_table *timber = table_named(paper_of(&s), "Timber and sheets");
    for (size_t r = 0; r < timber->rows.count; r++)
        assert_string_equal(timber->rows.items[r][3].text, "5 % added to net, 4.76 % lost of bought");
    sample_close(&s);
}

/* What only fills the rack up is parted from what the job needs; with nothing to fill up there is one sum. */
static void restocking_is_a_sum_of_its_own(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_way *way = &s.ways->list.items[0];
    const sb_order *plain = way->order,
                   *full = sb_order_of(&s.run, s.shop, &way->takeoff, 1, way->cutlist, way->plan, true);
    const sb_document *paper =
        sb_paper_takeoff(&s.run, s.shop, s.job->title, &way->takeoff, 1, way->plan, full);
    const sb_table *sums = table_named(paper, "All merchants together");
    assert_true(full->total.minor > plain->total.minor);
    assert_int_equal(sums->rows.items[0][4].amount, plain->total.minor);
    assert_int_equal(sums->rows.items[1][4].amount, full->total.minor - plain->total.minor);
    assert_int_equal(sums->rows.items[2][4].amount, full->total.minor);
    assert_null(relation_first_wrong(paper));
    fits_eighty_columns(&s.run, paper);
    assert_int_equal(told(paper_of(&s), "Of all merchants together"), 1);
    sample_close(&s);
}

/* ---- two jobs together ---- */

typedef struct both {
    sample s;
    const sb_takeoff *takeoffs[2];
    const sb_plan *plan;
    const sb_order *order;
} both;

/* Planned once, like the sample that they share. */
static void take_both(both *taken) {
    static both kept, *b = &kept;
    if (b->order) {
        *taken = *b;
        return;
    }
    sample_open(&b->s, "rack-bench");
    sb_run *run = &b->s.run;
    sb_recipe_book *book = sb_recipe_book_open(run, "templates", false);
    const sb_job *other = sb_job_read(run, "samples/harbour-planters.job", false);
    b->takeoffs[0] = b->s.ways->list.items[0].takeoff;
    b->takeoffs[1] = sb_takeoff_of(run, b->s.shop, book, other, &other->options.items[0]);
    const sb_cutlist *list = sb_cutlist_of(run, b->s.shop, b->takeoffs, 2);
    b->plan = sb_plan_make(run, &list->problem);
    b->order = sb_order_of(run, b->s.shop, b->takeoffs, 2, list, b->plan, false);
    if (!b->order || !sb_ok(run))
        sample_fail(&b->s, "two jobs");
    *taken = *b;
}

static int64_t usage_of(const sb_takeoff *takeoff, const sb_stock *stock) {
    int64_t sum = 0;
    for (size_t i = 0; i < takeoff->usages.count; i++)
        sum += takeoff->usages.items[i].stock == stock ? takeoff->usages.items[i].amount : 0;
    return sum;
}

static void two_jobs_are_one_takeoff(void **state) {
    (void)state;
    both b;
    take_both(&b);
    const sb_document *paper = sb_paper_takeoff(&b.s.run, b.s.shop, "2 jobs", b.takeoffs, 2, b.plan, b.order);
    assert_int_equal(table_named(paper, "Pieces of rack-bench")->rows.count, b.takeoffs[0]->pieces.count);
    assert_int_equal(table_named(paper, "Pieces of harbour-planters")->rows.count,
                     b.takeoffs[1]->pieces.count);
    const sb_table *takes = table_named(paper, "Fixings, finish, glue and the rest");
    bool oil = false;
    for (size_t r = 0; r < takes->rows.count; r++) {
        if (strcmp(takes->rows.items[r][0].text, "Deck oil") != 0)
            continue;
        oil = true;
        const sb_stock *stock = sb_shop_stock(b.s.shop, "deck-oil");
        int64_t sum = usage_of(b.takeoffs[0], stock) + usage_of(b.takeoffs[1], stock);
        assert_string_equal(takes->rows.items[r][1].text,
                            sb_stock_amount_text(&b.s.run, stock, sum, &b.s.shop->settings.style));
    }
    assert_true(oil);
    assert_null(relation_first_wrong(paper));
    fits_eighty_columns(&b.s.run, paper);
    sample_close(&b.s);
}

/* ---- for machines ---- */

static const sb_record *in(const sb_record *record, const char *key) {
    for (const sb_record *at = record->first; at; at = at->next)
        if (strcmp(at->key, key) == 0)
            return at;
    fail_msg("no key '%s'", key);
    return NULL;
}

static size_t count_in(const sb_record *array) {
    size_t count = 0;
    for (const sb_record *at = array->first; at; at = at->next)
        count++;
    return count;
}

static void the_record_has_every_line(void **state) {
    (void)state;
    both b;
    take_both(&b);
    const sb_takeoff *const *t = b.takeoffs;
    const sb_record *record = sb_record_takeoff(&b.s.run, b.s.shop, t, 2, b.plan, b.order);
    assert_int_equal(count_in(in(record, "jobs")), 2);
    assert_int_equal(in(in(record, "jobs")->first, "option")->kind, SB_RECORD_NULL);
    assert_string_equal(in(in(record, "jobs")->last, "job")->text, "harbour-planters");
    assert_int_equal(count_in(in(record, "parts")), t[0]->parts.count + t[1]->parts.count);
    assert_int_equal(count_in(in(record, "stock")), t[0]->totals.count + t[1]->totals.count);
    assert_int_equal(count_in(in(record, "usage")), t[0]->usages.count + t[1]->usages.count);
    assert_int_equal(count_in(in(record, "work")), t[0]->works.count + t[1]->works.count);
    assert_int_equal(count_in(in(record, "order")), b.order->lines.count);
    assert_string_equal(in(record, "order_total")->text,
                        sb_write_decimal(&b.s.run, b.order->total.minor, 2, false));
    assert_int_equal(in(in(record, "plan"), "proved")->kind, SB_RECORD_TRUTH);
    sample_close(&b.s);
}

/* Rack lines have a label and no merchant, bought lines the other way round; amounts are decimal strings and add up. */
static void order_lines_for_machines(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_way *way = &s.ways->list.items[0];
    const sb_record *record = sb_record_takeoff(&s.run, s.shop, &way->takeoff, 1, way->plan, way->order);
    double bought = 0;
    size_t racked = 0;
    for (const sb_record *line = in(record, "order")->first; line; line = line->next) {
        assert_int_equal(in(line, "amount")->kind, SB_RECORD_TEXT);
        assert_int_equal(in(line, "reorder")->kind, SB_RECORD_TRUTH);
        if (*in(line, "merchant")->text)
            bought += strtod(in(line, "amount")->text, NULL);
        else
            racked += *in(line, "label")->text != '\0';
    }
    assert_true(racked > 0);
    assert_true(bought * 100 > (double)way->order->total.minor - 0.5);
    assert_true(bought * 100 < (double)way->order->total.minor + 0.5);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(a_takeoff_names_everything), cmocka_unit_test(an_allowance_says_of_what),
        cmocka_unit_test(restocking_is_a_sum_of_its_own),
        cmocka_unit_test(two_jobs_are_one_takeoff),   cmocka_unit_test(the_record_has_every_line),
        cmocka_unit_test(order_lines_for_machines),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
