/* The order and the takeoff as papers: what is bought adds up, per merchant, to the cent. */
#include "sample.h"

static const sb_table *table_named(const sb_document *document, const char *title) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[s]->blocks.items[b].table;
            if (table && strcmp(table->title, title) == 0)
                return table;
        }
    return NULL;
}

/* Every merchant's own table adds up, all of them to the order, and the list for other programs has the same lines. */
static void an_order_adds_up(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_order *order = s.ways->list.items[0].order;
        const sb_document *paper = sb_paper_order(&s.run, s.shop, "Test", s.job->date, order);
        const sb_document *list = sb_paper_order_list(&s.run, s.shop, "Test", s.job->date, order);
        const sb_table *all = table_named(list, "");
        int64_t lines = 0, totals = 0;
        size_t rows = 0;
        for (size_t r = 0; r < all->rows.count; r++)
            lines += all->rows.items[r][5].amount;
        for (size_t b = 0; b < paper->sheets.items[0]->blocks.count; b++) {
            const sb_table *table = paper->sheets.items[0]->blocks.items[b].table;
            if (!table || strcmp(table->title, "From the rack") == 0)
                continue;
            rows += table->rows.count - 1;
            totals += table->rows.items[table->rows.count - 1][4].amount;
        }
        assert_int_equal(rows, all->rows.count);
        assert_int_equal(lines, order->total.minor);
        assert_int_equal(totals, order->total.minor);
        assert_null(relation_first_wrong(paper));
        assert_null(relation_first_wrong(list));
        sample_close(&s);
    }
}

static void the_rack_is_named_by_label(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *paper =
        sb_paper_order(&s.run, s.shop, "Test", s.job->date, s.ways->list.items[0].order);
    const sb_table *rack = table_named(paper, "From the rack");
    assert_non_null(rack);
    for (size_t r = 0; r < rack->rows.count; r++) {
        assert_true(*rack->rows.items[r][0].text != '\0');
        assert_true(*rack->rows.items[r][3].text != '\0');
    }
    assert_true(told(paper, "L4") == 1);
    sample_close(&s);
}

/* Oil left in a tin is taken by the litre, not by the lot. */
static void tins_are_measured(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *paper =
        sb_paper_order(&s.run, s.shop, "Test", s.job->date, s.ways->list.items[0].order);
    const sb_table *rack = table_named(paper, "From the rack");
    bool oil = false;
    for (size_t r = 0; r < rack->rows.count; r++)
        if (strcmp(rack->rows.items[r][0].text, "F1") == 0) {
            oil = true;
            assert_string_equal(rack->rows.items[r][3].text, "0.6 l");
        }
    assert_true(oil);
    sample_close(&s);
}

/* Timber in random widths is bought by the cubic metre, and the amount stands on the paper. */
static void timber_by_volume(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece table\n  recipe dining-table\n  stock leg oak-random-27\n");
    const sb_document *paper =
        sb_paper_order(&s.run, s.shop, "Test", s.job->date, s.ways->list.items[0].order);
    bool found = false;
    for (size_t b = 0; b < paper->sheets.items[0]->blocks.count; b++) {
        const sb_table *table = paper->sheets.items[0]->blocks.items[b].table;
        for (size_t r = 0; table && r < table->rows.count; r++)
            if (table->column_count > 5 && strcmp(table->rows.items[r][5].text, "oak-random-27") == 0) {
                found = true;
                assert_non_null(strstr(table->rows.items[r][1].text, "m3"));
            }
    }
    assert_true(found);
    assert_null(relation_first_wrong(paper));
    sample_close(&s);
}

static void a_takeoff_names_everything(void **state) {
    (void)state;
    for (size_t i = 0; i < SAMPLES; i++) {
        sample s;
        sample_open(&s, sample_names[i]);
        const sb_way *way = &s.ways->list.items[0];
        const sb_document *paper =
            sb_paper_takeoff(&s.run, s.shop, s.job->title, &way->takeoff, 1, way->plan, way->order);
        for (size_t t = 0; t < way->takeoff->totals.count; t++)
            assert_true(told(paper, way->takeoff->totals.items[t].stock->title) > 0);
        for (size_t u = 0; u < way->takeoff->usages.count; u++)
            assert_true(told(paper, way->takeoff->usages.items[u].stock->title) > 0);
        assert_null(relation_first_wrong(paper));
        sample_close(&s);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_order_adds_up),           cmocka_unit_test(the_rack_is_named_by_label),
        cmocka_unit_test(tins_are_measured),          cmocka_unit_test(timber_by_volume),
        cmocka_unit_test(a_takeoff_names_everything),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
