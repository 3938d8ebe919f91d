/* Tables in. Rules of RFC 4180 "Common Format and MIME Type for CSV Files", section 2, are named by number.
 */
#include "bench.h"

static const sb_column columns[] = {{"name", true}, {"length", true}, {"note", false}};

static const sb_csv *table(sb_run *run, const char *text) {
    return sb_csv_of(run, sb_source_of(run, "parts.csv", text), columns, 3);
}

static const char *text_at(const sb_csv *csv, size_t row, size_t column) {
    return sb_csv_cell(csv, row, column)->text;
}

static void assert_row(const sb_csv *csv, size_t row, const char *name, const char *length,
                       const char *note) {
    assert_true(row < csv->row_count);
    assert_string_equal(text_at(csv, row, 0), name);
    assert_string_equal(text_at(csv, row, 1), length);
    assert_string_equal(text_at(csv, row, 2), note);
}

/* ---- the format -------------------------------------------------------------------------------------- */

static void records_end_with_line_ends(void **state) { /* rules 1 and 2: the last may lack its line end */
    sb_run *run = *state;
    static const char *const ends[] = {"\r\n", "\n", "\r"};
    for (int i = 0; i < 3; i++)
        for (int last = 0; last < 2; last++) {
            const sb_csv *csv =
                table(run, sb_pool_print(run->pool, "name,length,note%saaa,bbb,ccc%szzz,yyy,xxx%s", ends[i],
                                         ends[i], last ? ends[i] : ""));
            assert_int_equal(csv->row_count, 2);
            assert_row(csv, 0, "aaa", "bbb", "ccc");
            assert_row(csv, 1, "zzz", "yyy", "xxx");
        }
    assert_true(sb_ok(run));
}

static void fields_in_quotes(void **state) { /* rules 5 to 7 */
    sb_run *run = *state;
    const sb_csv *csv = table(run, "\"name\",\"length\",\"note\"\r\n\"aaa\",\"b\r\nbb\",\"ccc\"\r\n"
                                   "\"a,b\",\"b\"\"bb\",\"\"\r\n");
    assert_row(csv, 0, "aaa", "b\r\nbb", "ccc");
    assert_row(csv, 1, "a,b", "b\"bb", "");
    assert_int_equal(csv->row_count, 2);
    assert_true(sb_ok(run));
}

/* RFC 4180 lets an unquoted field hold no quote; people write inches so, and there is one way to read it. */
static void inch_marks_need_no_quotes(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length\nleg,47 1/4\"\nrail, 3' 11-1/4\" \nslat,\"47 1/4\"\"\"\n");
    assert_row(csv, 0, "leg", "47 1/4\"", "");
    assert_row(csv, 1, "rail", "3' 11-1/4\"", "");
    assert_row(csv, 2, "slat", "47 1/4\"", "");
    assert_true(sb_ok(run));
}

static void separators(void **state) {
    sb_run *run = *state;
    const sb_csv *semicolons = table(run, "name;length;note\nleg;1,5;a, b\n");
    const sb_csv *tabs = table(run, "name\tlength\tnote\nleg\t\t a b \n");
    const sb_csv *one = sb_csv_of(run, sb_source_of(run, "x", "name\nleg\n"), columns, 1);
    assert_row(semicolons, 0, "leg", "1,5", "a, b");
    assert_row(tabs, 0, "leg", "", "a b");
    assert_true(semicolons->decimal_comma);
    assert_false(tabs->decimal_comma);
    assert_string_equal(text_at(one, 0, 0), "leg");
    assert_true(sb_ok(run));
}

static void separators_within_quotes_do_not_count(void **state) {
    sb_run *run = *state;
    sb_column odd[] = {{"name, a;b;c;d", true}, {"length", true}};
    const sb_csv *csv = sb_csv_of(run, sb_source_of(run, "x", "\"name, a;b;c;d\",length\nleg,3\n"), odd, 2);
    assert_string_equal(text_at(csv, 0, 1), "3");
    assert_true(sb_ok(run));
}

static void marks_blanks_and_case(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "\xEF\xBB\xBF Name , LENGTH\r\n  long slat , \xC2\xA0 430 \r\n");
    assert_row(csv, 0, "long slat", "430", "");
    assert_true(sb_ok(run));
}

static void lines_that_say_nothing(void **state) {
    sb_run *run = *state;
    const sb_csv *csv =
        table(run, "# cut list; by, hand\n\nname,length\n\n# \"open\nleg,1\n,,\n  \n\"\",\nrail,2\n#");
    assert_int_equal(csv->row_count, 2);
    assert_row(csv, 0, "leg", "1", "");
    assert_row(csv, 1, "rail", "2", "");
    assert_true(sb_ok(run));
}

static void columns_in_any_order(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "note,length,name,,\nx,1,leg,,\n");
    assert_row(csv, 0, "leg", "1", "x");
    assert_true(sb_ok(run));
}

static void short_rows_have_empty_cells(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length,note\nleg\nrail,2,\n");
    assert_row(csv, 0, "leg", "", "");
    assert_row(csv, 1, "rail", "2", "");
    assert_string_equal(sb_place_text(run, sb_csv_cell(csv, 0, 1)->place), "leg"); /* the row, to point at */
    assert_true(sb_ok(run));
}

static void every_cell_knows_its_place(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length,note\n leg , \"a \"\"b\"\"\" ,\xC3\xA4\n\"x\ny\",2,3");
    assert_string_equal(sb_place_text(run, sb_csv_cell(csv, 0, 0)->place), "leg");
    assert_string_equal(sb_place_text(run, sb_csv_cell(csv, 0, 1)->place), "\"a \"\"b\"\"\"");
    assert_int_equal(sb_place_position(sb_csv_cell(csv, 0, 1)->place).column, 8);
    assert_int_equal(sb_place_position(sb_csv_cell(csv, 0, 2)->place).line, 2);
    assert_int_equal(sb_place_position(sb_csv_cell(csv, 1, 1)->place).line, 4);
    assert_string_equal(sb_place_text(run, csv->rows[1]), "\"x\ny\",2,3");
}

/* ---- mistakes ------------------------------------------------------------------------------------------ */

static void all_mistakes_of_a_header(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "nmae,note,Note,colour\nleg,a,b,red\n");
    assert_non_null(csv);
    assert_notice(run, 0, "1:1", "unknown column \"nmae\"; did you mean \"name\"?");
    assert_notice(run, 1, "1:11", "the column \"Note\" is here twice");
    assert_notice(run, 2, "1:16", "unknown column \"colour\"; known: name, length, note");
    assert_notice(run, 3, "1:1", "the column \"name\" is missing");
    assert_notice(run, 4, "1:1", "the column \"length\" is missing");
    assert_int_equal(sb_notices_count(run, SB_NOTE), 5);
}

static void too_many_fields(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length,\nleg,1,5\nrail,2,,\nslat,3,,x\n");
    assert_notice(run, 0, "2:7", "a column without a name");
    assert_notice(run, 1, "4:9", "too many fields: the header names 3, this is number 4");
    assert_int_equal(sb_notices_count(run, SB_NOTE), 2);
    assert_int_equal(csv->row_count, 3);
}

static void quotes_never_closed(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length\nleg,1\nrail,\"open\nslat,3\npost,4");
    assert_notice(run, 0, "3:6", "this quote is never closed");
    assert_row(csv, 1, "slat", "3", ""); /* and reading goes on behind that line */
    assert_row(csv, 2, "post", "4", "");
    assert_int_equal(csv->row_count, 3);
}

static void each_quote_never_closed(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length\nleg,\"1\nrail,\"fine\"\nslat,\"3\npost,4");
    assert_notice(run, 0, "2:5", "never closed: the next one, in line 3");
    assert_notice(run, 1, "4:6", "never closed");
    assert_int_equal(sb_notices_count(run, SB_NOTE), 2);
    assert_row(csv, 0, "rail", "fine", "");
    assert_row(csv, 1, "post", "4", "");
}

static void text_behind_a_quote(void **state) {
    sb_run *run = *state;
    const sb_csv *csv = table(run, "name,length\n\"long\" slat,1\n\"a\" \"b\",2\nrail,3\n");
    assert_notice(run, 0, "2:8", "behind a closing quote");
    assert_notice(run, 1, "3:5", "behind a closing quote");
    assert_int_equal(csv->row_count, 1);
    assert_row(csv, 0, "rail", "3", "");
}

static void files_without_a_header(void **state) {
    sb_run *run = *state;
    static const char *const empty[] = {"", "\n\n", "# only a remark\n", "\xEF\xBB\xBF", ",,\n"};
    for (size_t i = 0; i < sizeof empty / sizeof *empty; i++) {
        const sb_csv *csv = table(run, empty[i]);
        assert_int_equal(csv->row_count, 0);
        assert_notice(run, i, "1:1", "a header");
    }
    assert_int_equal(table(run, "name,length")->row_count, 0);
    assert_int_equal(sb_notices_count(run, SB_NOTE), 5);
}

static void files_that_are_none(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    assert_null(sb_csv_read(run, folder, columns, 3));
    assert_notice(run, 0, "", "it is a folder");
    assert_null(
        sb_csv_read(run, new_file(run, folder, "x.csv", "name,length\nl\xE4rche,1\n", 21), columns, 3));
    assert_notice(run, 1, "2:2", "not UTF-8");
}

/* ---- any table written by RFC 4180 comes back ---- */

static const char *quoted(sb_run *run, const char *text) {
    const char *all = "\"";
    for (; *text; text++)
        all = sb_pool_print(run->pool, *text == '"' ? "%s\"\"" : "%s%c", all, *text);
    return sb_pool_print(run->pool, "%s\"", all);
}

static void tables_come_back(void **state) {
    sb_run *run = *state;
    static const char letters[] = "ab,;\"\n\r \t#=1";
    dice d = {11};
    for (int round = 0; round < 300; round++) {
        enum {
            ROWS = 4
        };
        char cells[ROWS][3][8];
        const char *text = "name,length,note\r\n";
        for (int row = 0; row < ROWS; row++)
            for (int column = 0; column < 3; column++) {
                size_t size = 1 + (size_t)roll(&d, 6);
                for (size_t i = 0; i < size; i++) /* letters at both ends, since cells come trimmed */
                    cells[row][column][i] =
                        i == 0 || i == size - 1 ? 'x' : letters[roll(&d, sizeof letters - 1)];
                cells[row][column][size] = 0;
                text = sb_pool_print(run->pool, "%s%s%s", text, quoted(run, cells[row][column]),
                                     column < 2 ? "," : "\r\n");
            }
        const sb_csv *csv = table(run, text);
        assert_int_equal(csv->row_count, ROWS);
        for (size_t row = 0; row < ROWS; row++)
            assert_row(csv, row, cells[row][0], cells[row][1], cells[row][2]);
    }
    assert_true(sb_ok(run));
}

static void noise_is_read_to_its_end(void **state) {
    sb_run *run = *state;
    static const char letters[] = "a,;\"\"\n\r #\t";
    dice d = {5};
    for (int round = 0; round < 5000; round++) {
        char text[48];
        size_t size = (size_t)roll(&d, sizeof text - 1);
        for (size_t i = 0; i < size; i++)
            text[i] = letters[roll(&d, sizeof letters - 1)];
        text[size] = 0;
        const sb_csv *csv = table(run, text);
        for (size_t row = 0; row < csv->row_count; row++)
            assert_true(csv->rows[row].offset + csv->rows[row].length <= size);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(records_end_with_line_ends),
        AT_THE_BENCH(fields_in_quotes),
        AT_THE_BENCH(inch_marks_need_no_quotes),
        AT_THE_BENCH(separators),
        AT_THE_BENCH(separators_within_quotes_do_not_count),
        AT_THE_BENCH(marks_blanks_and_case),
        AT_THE_BENCH(lines_that_say_nothing),
        AT_THE_BENCH(columns_in_any_order),
        AT_THE_BENCH(short_rows_have_empty_cells),
        AT_THE_BENCH(every_cell_knows_its_place),
        AT_THE_BENCH(all_mistakes_of_a_header),
        AT_THE_BENCH(too_many_fields),
        AT_THE_BENCH(quotes_never_closed),
        AT_THE_BENCH(each_quote_never_closed),
        AT_THE_BENCH(text_behind_a_quote),
        AT_THE_BENCH(files_without_a_header),
        AT_THE_BENCH(files_that_are_none),
        AT_THE_BENCH(tables_come_back),
        AT_THE_BENCH(noise_is_read_to_its_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
