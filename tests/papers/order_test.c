/* The order as a paper: what is bought adds up, per merchant, to the cent. */
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
        assert_true(*rack->rows.items[r][2].text != '\0');
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
        if (strcmp(rack->rows.items[r][3].text, "F1") == 0) {
            oil = true;
            assert_string_equal(rack->rows.items[r][2].text, "0.6 l");
        }
    assert_true(oil);
    sample_close(&s);
}

/* Timber in random widths is bought by the cubic metre, and the amount stands on the paper. */
static void timber_by_volume(void **state) {
    (void)state;
    sample s;
    sample_make(&s, "piece table\n  recipe dining-table\n  stock leg oak-random-27\n");
    const sb_order *order = s.ways->list.items[0].order;
    const sb_document *paper = sb_paper_order(&s.run, s.shop, "Test", s.job->date, order);
    const sb_table *list = table_named(sb_paper_order_list(&s.run, s.shop, "Test", s.job->date, order), "");
    bool found = false;
    for (size_t r = 0; r < list->rows.count; r++)
        if (strcmp(list->rows.items[r][7].text, "oak-random-27") == 0) {
            found = true;
            assert_non_null(strstr(list->rows.items[r][2].text, " m3"));
            assert_true(told(paper, list->rows.items[r][2].text) > 0);
        }
    assert_true(found);
    assert_null(relation_first_wrong(paper));
    sample_close(&s);
}

/* Six of a size of 200 could be six screws or six packs: packs say so, single things say nothing. */
static void packs_are_called_packs(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_order *order = s.ways->list.items[0].order;
    const sb_table *list = table_named(sb_paper_order_list(&s.run, s.shop, "Test", s.job->date, order), "");
    for (size_t r = 0; r < list->rows.count; r++) {
        const sb_offer *offer = order->lines.items[r].offer;
        const char *size = list->rows.items[r][2].text;
        if (order->lines.items[r].stock->kind == SB_STOCK_FIXING)
            assert_string_equal(
                size, offer->pack == 1 ? "" : sb_pool_print(s.run.pool, "pack of %d", (int)offer->pack));
        else
            assert_true(*size != '\0');
    }
    sample_close(&s);
}

/* Only a list that also fills the rack up says which lines do. */
static void low_racks_are_told(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_way *way = &s.ways->list.items[0];
    const sb_order *more = sb_order_of(&s.run, s.shop, &way->takeoff, 1, way->cutlist, way->plan, true);
    int low = 0;
    for (size_t i = 0; i < more->lines.count; i++)
        low += more->lines.items[i].reorder;
    assert_true(low > 0);
    const sb_document *paper = sb_paper_order(&s.run, s.shop, "Test", s.job->date, more);
    assert_int_equal(told(paper, "rack is low"), low);
    assert_int_equal(paper->sheets.items[0]->blocks.items[1].table->column_count, 6);
    paper = sb_paper_order(&s.run, s.shop, "Test", s.job->date, way->order);
    assert_int_equal(paper->sheets.items[0]->blocks.items[1].table->column_count, 5);
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(an_order_adds_up),       cmocka_unit_test(the_rack_is_named_by_label),
        cmocka_unit_test(tins_are_measured),      cmocka_unit_test(timber_by_volume),
        cmocka_unit_test(packs_are_called_packs), cmocka_unit_test(low_racks_are_told),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
