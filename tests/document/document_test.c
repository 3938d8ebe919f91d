/* Documents as tables of typed cells, and records. */
#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "../support/relation_eval.h"
#include "sawbill/document.h"

#include <math.h>
#include <string.h>

static sb_run run;

static int start(void **state) {
    (void)state;
    run = sb_run_new();
    return 0;
}

static int finish(void **state) {
    (void)state;
    sb_run_free(&run);
    return 0;
}

static sb_currency euro(void) {
    return (sb_currency){"EUR", 2};
}

static sb_document *a_document(void) {
    return sb_document_new(&run, "Estimate", (sb_date){2026, 3, 31}, (sb_style){.step = SB_MM(1)}, euro());
}

static double number(sb_cell cell) {
    sb_style mm = {.step = SB_MM(1)};
    return sb_cell_number(&cell, &mm, euro());
}

static void cells_hold_what_a_spreadsheet_counts_in(void **state) {
    (void)state;
    assert_true(number(sb_cell_count(14)) == 14);
    assert_true(number(sb_cell_decimal(12345, 3)) == 12.345);
    assert_true(number(sb_cell_length((sb_length){864500000})) == 864.5);
    assert_true(number(sb_cell_money((sb_money){-1205})) == -12.05);
    assert_true(number(sb_cell_price(3215000, 6)) == 3.215);
    assert_true(number(sb_cell_share((sb_share){250000})) == 0.25);
    assert_true(number(sb_cell_duration((sb_duration){5400000})) == 1.5);
    assert_true(number(sb_cell_text("12")) == 0);
    assert_true(isnan(number(sb_cell_money((sb_money){SB_BAD}))));
}

/* Serial 61 is 1900-03-01 in spreadsheets that count from 1900 (from memory); 25569 days lie before 1970. */
static void dates_are_serial_days(void **state) {
    (void)state;
    assert_true(number(sb_cell_date((sb_date){1900, 3, 1})) == 61);
    assert_true(number(sb_cell_date((sb_date){1970, 1, 1})) == 25569);
    assert_true(number(sb_cell_date((sb_date){2026, 3, 31})) == 46112);
    assert_int_equal(sb_cell_date((sb_date){0}).kind, SB_CELL_EMPTY);
}

/* 1/64 in is 396 875 nm (NIST SP 811: 1 in = 25.4 mm exactly) */
static void lengths_count_in_the_documents_unit(void **state) {
    (void)state;
    sb_style inches = {.units = SB_UNITS_IN, .step = {396875}};
    sb_cell cell = sb_cell_length((sb_length){34LL * SB_NM_PER_INCH + 396875});
    assert_true(sb_cell_number(&cell, &inches, euro()) == 34.015625);
}

static void yen_and_dinar_have_other_decimals(void **state) {
    (void)state;
    sb_cell cell = sb_cell_money((sb_money){12345}); /* ISO 4217: JPY has no minor unit, KWD a thousandth */
    sb_style mm = {.step = SB_MM(1)};
    assert_true(sb_cell_number(&cell, &mm, (sb_currency){"JPY", 0}) == 12345);
    assert_true(sb_cell_number(&cell, &mm, (sb_currency){"KWD", 3}) == 12.345);
}

static void headings_mark_what_stands_to_the_right(void **state) {
    (void)state;
    sb_table *table =
        sb_table_add(&run, sb_sheet_add(&run, a_document(), "Parts"), "", "Part|Count>|Length, mm>|Ends|");
    const char *texts[] = {"Part", "Count", "Length, mm", "Ends", ""};
    bool right[] = {false, true, true, false, false};
    assert_int_equal(table->column_count, 5);
    for (size_t i = 0; i < 5; i++) {
        assert_string_equal(table->headings[i].text, texts[i]);
        assert_int_equal(table->headings[i].right, right[i]);
    }
}

static void rows_stay_where_they_are(void **state) {
    (void)state;
    sb_table *table = sb_table_add(&run, sb_sheet_add(&run, a_document(), "Parts"), "", "Part|Count>");
    sb_cell *first = sb_row_add(&run, table);
    for (int i = 0; i < 1000; i++)
        sb_row_add(&run, table)[1] = sb_cell_count(i);
    first[0] = sb_cell_text("post");
    assert_string_equal(table->rows.items[0][0].text, "post");
    assert_int_equal(table->rows.items[1000][1].amount, 999);
    assert_int_equal(table->rows.items[5][0].kind, SB_CELL_EMPTY);
    assert_string_equal(table->rows.items[5][0].text, "");
}

static void totals_come_last(void **state) {
    (void)state;
    sb_table *table = sb_table_add(&run, sb_sheet_add(&run, a_document(), "Parts"), "", "Part|Count>");
    sb_row_add(&run, table);
    sb_total_row_add(&run, table);
    sb_total_row_add(&run, table);
    assert_int_equal(table->total_rows, 2);
    assert_true(sb_ok(&run));
    sb_row_add(&run, table);
    assert_false(sb_ok(&run));
}

/* ---- soundness ----------------------------------------------------------------------------------------- */

static void a_figure_out_of_range_is_an_error(void **state) {
    (void)state;
    sb_document *document = a_document();
    sb_table *table = sb_table_add(&run, sb_sheet_add(&run, document, "Parts"), "", "Part|Price>");
    sb_row_add(&run, table)[1] = sb_cell_money((sb_money){1});
    assert_true(sb_document_sound(&run, document));
    sb_row_add(&run, table)[1] = sb_cell_money((sb_money){SB_BAD});
    assert_false(sb_document_sound(&run, document));
    assert_int_equal(sb_notices_level(&run, 0), SB_ERROR);
    assert_non_null(strstr(sb_notices_message(&run, 0), "Price"));
}

static void relations_stay_inside_their_document(void **state) {
    (void)state;
    sb_document *document = a_document();
    sb_table *table = sb_table_add(&run, sb_sheet_add(&run, document, "Parts"), "", "Part|Price>");
    sb_table *stranger = sb_table_add(&run, sb_sheet_add(&run, a_document(), "Other"), "", "Part|Price>");
    sb_row_add(&run, stranger);
    sb_cell *row = sb_row_add(&run, table);
    const sb_relation *wrong[] = {
        sb_rel_cell(&run, stranger, 0, 0),
        sb_rel_cell(&run, table, 1, 0),
        sb_rel_cell(&run, table, 0, 2),
        sb_rel_sum(&run, table, 1, 0, 1),
        sb_rel(&run, SB_REL_ADD, sb_rel_number(&run, 1, 0), NULL),
        sb_rel_round(&run, sb_rel_cell(&run, stranger, 0, 0), 2),
        sb_rel_number(&run, SB_BAD, 0),
    };
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        row[1] = sb_cell_related(sb_cell_money((sb_money){0}), wrong[i]);
        assert_false(sb_document_sound(&run, document));
    }
    row[1] = sb_cell_related(sb_cell_money((sb_money){0}), sb_rel_sum(&run, table, 1, 1, 0));
    assert_true(sb_document_sound(&run, document)); /* the sum of no rows */
}

/* ---- relations, by the evaluator that other tests lean on ----------------------------------------------- */

/* Margin and markup (the arithmetic of the trade): 25 % on cost is 20 % of price. */
static void relations_say_how_a_price_follows(void **state) {
    (void)state;
    sb_document *document = a_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Build-up"), "", "Line|Amount>");
    sb_row_add(&run, t)[1] = sb_cell_money((sb_money){8000});
    sb_row_add(&run, t)[1] = sb_cell_share((sb_share){200000});
    const sb_relation *one_less =
        sb_rel(&run, SB_REL_SUB, sb_rel_number(&run, 1, 0), sb_rel_cell(&run, t, 1, 1));
    const sb_relation *price =
        sb_rel_round(&run, sb_rel(&run, SB_REL_DIV, sb_rel_cell(&run, t, 0, 1), one_less), 2);
    sb_row_add(&run, t)[1] = sb_cell_related(sb_cell_money((sb_money){10000}), price);
    const sb_relation *point =
        sb_rel(&run, SB_REL_ROUND_UP_TO, sb_rel_cell(&run, t, 2, 1), sb_rel_number(&run, 95, 1));
    sb_row_add(&run, t)[1] = sb_cell_related(sb_cell_money((sb_money){10450}), point); /* 11 times 9.50 */
    sb_total_row_add(&run, t)[1] =
        sb_cell_related(sb_cell_money((sb_money){20450}), sb_rel_sum(&run, t, 1, 2, 3));
    assert_true(sb_document_sound(&run, document));
    assert_null(relation_first_wrong(document));
    t->rows.items[2][1].amount++;
    assert_ptr_equal(relation_first_wrong(document), &t->rows.items[2][1]);
}

static void a_circle_is_no_value(void **state) {
    (void)state;
    sb_document *document = a_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Parts"), "", "Amount>");
    sb_row_add(&run, t)[0] = sb_cell_related(sb_cell_count(1), sb_rel_cell(&run, t, 0, 0));
    assert_true(isnan((double)relation_value(document, sb_rel_cell(&run, t, 0, 0))));
    assert_non_null(relation_first_wrong(document));
}

/* ---- records ------------------------------------------------------------------------------------------- */

static const sb_record *child(const sb_record *in, size_t index) {
    const sb_record *found = in->first;
    while (index--)
        found = found->next;
    return found;
}

static void records_keep_order_and_kind(void **state) {
    (void)state;
    sb_record *plan = sb_record_object(&run);
    sb_put_money(&run, plan, "cost", (sb_money){123450}, 2);
    sb_put_truth(&run, plan, "proved", true);
    sb_record *boards = sb_put_array(&run, plan, "boards");
    sb_put_length(&run, sb_put_object(&run, boards, NULL), "length_mm", (sb_length){864000000});
    sb_put_length(&run, sb_put_object(&run, boards, NULL), "length_mm", (sb_length){19050000});
    assert_string_equal(child(plan, 0)->key, "cost");
    assert_string_equal(child(plan, 0)->text, "1234.50");
    assert_true(child(plan, 1)->truth);
    assert_int_equal(child(child(boards, 0), 0)->kind, SB_RECORD_INTEGER);
    assert_int_equal(child(child(boards, 0), 0)->integer, 864);
    assert_int_equal(child(child(boards, 1), 0)->kind, SB_RECORD_NUMBER);
    assert_true(child(child(boards, 1), 0)->number == 19.05);
}

static void what_is_out_of_range_is_null(void **state) {
    (void)state;
    sb_record *record = sb_record_object(&run);
    sb_put_money(&run, record, "a", (sb_money){SB_BAD}, 2);
    sb_put_length(&run, record, "b", (sb_length){SB_BAD});
    sb_put_integer(&run, record, "c", SB_BAD);
    sb_put_decimal(&run, record, "d", SB_BAD, 3);
    for (size_t i = 0; i < 4; i++)
        assert_int_equal(child(record, i)->kind, SB_RECORD_NULL);
}

#define TEST(name) cmocka_unit_test_setup_teardown(name, start, finish)

int main(void) {
    const struct CMUnitTest tests[] = {
        TEST(cells_hold_what_a_spreadsheet_counts_in),
        TEST(dates_are_serial_days),
        TEST(lengths_count_in_the_documents_unit),
        TEST(yen_and_dinar_have_other_decimals),
        TEST(headings_mark_what_stands_to_the_right),
        TEST(rows_stay_where_they_are),
        TEST(totals_come_last),
        TEST(a_figure_out_of_range_is_an_error),
        TEST(relations_stay_inside_their_document),
        TEST(relations_say_how_a_price_follows),
        TEST(a_circle_is_no_value),
        TEST(records_keep_order_and_kind),
        TEST(what_is_out_of_range_is_null),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
