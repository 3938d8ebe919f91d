/* CSV out: RFC 4180 (October 2005) and OWASP "CSV Injection", to the byte. */
#include "bench.h"

#include <csv.h>

static const char *csv_of(const sb_document *document, const sb_table *table) {
    size_t size = 0;
    const char *text = sb_write_csv(&run, document, table, &size);
    assert_int_equal(size, strlen(text));
    return text;
}

/* The line that one text makes in a table of one column. */
static const char *field(const char *text) {
    sb_document *document = new_document();
    sb_table *table = sb_table_add(&run, sb_sheet_add(&run, document, "Order"), "", "x");
    sb_row_add(&run, table)[0] = sb_cell_text(text);
    const char *all = csv_of(document, table);
    assert_memory_equal(all, "x\r\n", 3);
    return sb_pool_copy(run.pool, all + 3, strlen(all) - 5); /* without CRLF */
}

static void fields_are_quoted_where_rfc_4180_says(void **state) {
    (void)state;
    assert_string_equal(field("larch-20x95"), "larch-20x95");
    assert_string_equal(field("Screws, stainless"), "\"Screws, stainless\"");
    assert_string_equal(field("b\"bb"), "\"b\"\"bb\""); /* RFC 4180, section 2, rule 7 */
    assert_string_equal(field("a\rb"), "\"a\rb\"");     /* section 2, grammar: TEXTDATA has no CR */
    assert_string_equal(field("a\r\nb"), "\"a\r\nb\"");
    assert_string_equal(field(""), "");
    assert_string_equal(field(" two "), "\" two \""); /* blanks belong to the field */
    assert_string_equal(field("Bäume, 3 Stück"), "\"Bäume, 3 Stück\"");
}

static void formulas_are_disarmed_as_owasp_says(void **state) {
    (void)state;
    assert_string_equal(field("=1+2\";=1+2"), "\"'=1+2\"\";=1+2\""); /* OWASP's own example */
    assert_string_equal(field("=cmd|' /C calc'!A0"), "\"'=cmd|' /C calc'!A0\"");
    assert_string_equal(field("+44 1234"), "\"'+44 1234\"");
    assert_string_equal(field("-5"), "\"'-5\"");
    assert_string_equal(field("@SUM(A1)"), "\"'@SUM(A1)\"");
    assert_string_equal(field("\t=1"), "\"'\t=1\"");
    assert_string_equal(field("\r=1"), "\"'\r=1\"");
    assert_string_equal(field("\n=1"), "\"'\n=1\"");
    assert_string_equal(field("  =1"), "\"'  =1\"");
    assert_string_equal(field("＝1"), "\"'＝1\"");
    assert_string_equal(field("a\";=1+1"), "\"a\"\";=1+1\"");
    assert_string_equal(field("a;=1+1"), "\"a;=1+1\"");
    assert_string_equal(field("mitre -30"), "mitre -30");
}

static void numbers_stay_numbers(void **state) {
    (void)state;
    sb_document *document = new_document();
    document->style.decimal_comma = true; /* for people, not for machines */
    sb_table *t =
        sb_table_add(&run, sb_sheet_add(&run, document, "Order"), "", "a>|b>|c>|d>|e>|f>|g>|h>|i|j|k");
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_count(-14);
    row[1] = sb_cell_money((sb_money){-500});
    row[2] = sb_cell_money((sb_money){123456789});
    row[3] = sb_cell_length((sb_length){864500000});
    row[4] = sb_cell_length(SB_MM(4000));
    row[5] = sb_cell_decimal(-1250, 3);
    row[6] = sb_cell_price(3215000, 6);
    row[7] = sb_cell_share((sb_share){125000});
    row[8] = sb_cell_duration((sb_duration){5400000});
    row[9] = sb_cell_date((sb_date){2026, 3, 31});
    row[10] = sb_cell_tick();
    assert_string_equal(csv_of(document, t),
                        "a,b,c,d,e,f,g,h,i,j,k\r\n"
                        "-14,-5.00,1234567.89,864.5,4000,-1.250,3.215,12.5%,1.5,2026-03-31,\r\n");
}

static void lengths_are_millimetres_in_any_style(void **state) {
    (void)state;
    sb_document *document = new_document();
    document->style = (sb_style){.units = SB_UNITS_IN, .step = {SB_NM_PER_INCH / 16}};
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Order"), "", "length>");
    sb_row_add(&run, t)[0] = sb_cell_length((sb_length){SB_NM_PER_INCH * 3 / 4});
    assert_string_equal(csv_of(document, t), "length\r\n19.05\r\n");
}

static void totals_are_left_to_the_reader(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Order"), "", "=item|cost>");
    sb_row_add(&run, t)[1] = sb_cell_money((sb_money){100});
    sb_total_row_add(&run, t)[1] = sb_cell_money((sb_money){100});
    assert_string_equal(csv_of(document, t), "\"'=item\",cost\r\n,1.00\r\n");
}

/* ---- read back by libcsv ------------------------------------------------------------------------------- */

enum {
    COLUMNS = 3,
    ROWS = 200
};

typedef struct reading {
    const char *texts[(ROWS + 1) * COLUMNS];
    size_t count, rows;
} reading;

static void take_field(void *field_text, size_t size, void *into) {
    reading *r = into;
    assert_true(r->count < (ROWS + 1) * COLUMNS);
    r->texts[r->count++] = sb_pool_copy(run.pool, field_text, size);
}

static void take_row(int end, void *into) {
    (void)end;
    ((reading *)into)->rows++;
}

static const char *nasty(void) {
    static const char *const bits[] = {"\"", ",", ";", "\r", "\n", "\r\n", "=", "+",    "-", "@",
                                       "\t", " ", "'", "a",  "Ö",  "1",    "",  "\"\"", "|", "木"};
    char *text = sb_pool_print(run.pool, "%s", "");
    for (uint32_t i = dice(7); i > 0; i--)
        text = sb_pool_print(run.pool, "%s%s", text, bits[dice(sizeof bits / sizeof *bits)]);
    return text;
}

static void another_reader_finds_every_text_again(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Order"), "", "a|b|c");
    for (int i = 0; i < ROWS; i++) {
        sb_cell *row = sb_row_add(&run, t);
        for (int column = 0; column < COLUMNS; column++)
            row[column] = sb_cell_text(nasty());
    }
    const char *text = csv_of(document, t);
    reading found = {0};
    struct csv_parser parser;
    assert_int_equal(csv_init(&parser, CSV_STRICT | CSV_STRICT_FINI), 0);
    assert_int_equal(csv_parse(&parser, text, strlen(text), take_field, take_row, &found), strlen(text));
    assert_int_equal(csv_fini(&parser, take_field, take_row, &found), 0);
    csv_free(&parser);
    assert_int_equal(found.rows, ROWS + 1);
    for (size_t i = 0; i < ROWS * COLUMNS; i++) {
        const char *meant = t->rows.items[i / COLUMNS][i % COLUMNS].text, *read = found.texts[COLUMNS + i];
        assert_null(strchr("=+-@\t\r\n", read[0] ? read[0] : 'x')); /* no field starts a formula */
        assert_string_equal(read + (read[0] == '\'' && meant[0] != '\''), meant);
    }
}

/* A spreadsheet program opens the file: texts are texts, figures are figures. */
static void a_spreadsheet_reads_it(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Order"), "", "item|count>|cost>");
    const char *items[] = {"=1+1", "Screws, \"stainless\"", "larch", "Glue"};
    for (int i = 0; i < 4; i++) {
        sb_cell *row = sb_row_add(&run, t);
        row[0] = sb_cell_text(items[i]);
        row[1] = sb_cell_count(i + 1);
        row[2] = sb_cell_money((sb_money){i ? 950 : -1250});
    }
    size_t size;
    const char *text = sb_write_csv(&run, document, t, &size);
    FILE *file = fopen(in_folder("order.csv"), "wb");
    assert_int_equal(fwrite(text, 1, size, file), size);
    fclose(file);
    assert_string_equal(
        output_of(sb_pool_print(
            run.pool, "cd '%s' && ssconvert order.csv again.csv 2>/dev/null && cat again.csv", folder)),
        "item,count,cost\n"
        "=1+1,1,-12.5\n" /* the text, not 2 */
        "\"Screws, \"\"stainless\"\"\",2,9.5\n"
        "larch,3,9.5\n"
        "Glue,4,9.5\n");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        TEST(fields_are_quoted_where_rfc_4180_says),
        TEST(formulas_are_disarmed_as_owasp_says),
        TEST(numbers_stay_numbers),
        TEST(lengths_are_millimetres_in_any_style),
        TEST(totals_are_left_to_the_reader),
        TEST(another_reader_finds_every_text_again),
        TEST(a_spreadsheet_reads_it),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
