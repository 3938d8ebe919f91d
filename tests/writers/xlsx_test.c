/* What stands in a spreadsheet file, seen in its unzipped parts (ECMA-376), and how writing it can fail. */
#include "bench.h"

#include <locale.h>
#include <sys/stat.h>
#include <time.h>

static const char *written(const sb_document *document, const char *name) {
    const char *path = in_folder(name);
    if (!sb_write_xlsx(&run, document, path))
        fail_msg("%s", sb_notices_text(&run, SB_NOTE, false));
    return path;
}

static const char *part_of(const char *path, const char *part) {
    return output_of(sb_pool_print(run.pool, "unzip -p '%s' '%s'", path, part));
}

static const char *part(const sb_document *document, const char *name) {
    return part_of(written(document, "x.xlsx"), name);
}

static const char *sheet1(const sb_document *document) {
    return part(document, "xl/worksheets/sheet1.xml");
}

static sb_table *a_table(sb_document *document, const char *headings) {
    return sb_table_add(&run, sb_sheet_add(&run, document, "Sheet"), "", headings);
}

static void assert_has(const char *text, const char *wanted) {
    if (!strstr(text, wanted))
        fail_msg("no %s in\n%s", wanted, text);
}

/* ---- cells --------------------------------------------------------------------------------------------- */

static void formulas_live_and_keep_their_value(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "Boards>|Price>|Cost>");
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_count(12);
    row[1] = sb_cell_money((sb_money){1890});
    const sb_relation *cost =
        sb_rel(&run, SB_REL_MUL, sb_rel_cell(&run, t, 0, 0), sb_rel_cell(&run, t, 0, 1));
    row[2] = sb_cell_related(sb_cell_money((sb_money){22680}), sb_rel_round(&run, cost, 2));
    const sb_relation *sum = sb_rel_sum(&run, t, 2, 0, 0);
    sb_total_row_add(&run, t)[2] =
        sb_cell_named(sb_cell_related(sb_cell_money((sb_money){22680}), sum), "total");
    const sb_relation *point = sb_rel(&run, SB_REL_ROUND_UP_TO, sum, sb_rel_number(&run, 50, 1));
    sb_total_row_add(&run, t)[2] = sb_cell_related(sb_cell_money((sb_money){23000}), point);
    const char *sheet = sheet1(document);
    assert_has(sheet, "<f>ROUND(ROUND(A2*B2,9),2)</f><v>226.8</v>");
    assert_has(sheet, "<f>SUM(C2:C2)</f><v>226.8</v>");
    assert_has(sheet, "<f>ROUND(ROUNDUP(ROUND(SUM(C2:C2)/5,9),0)*5,9)</f><v>230</v>");
    assert_has(part(document, "xl/workbook.xml"), "<definedName name=\"total\">'Sheet'!$C$3</definedName>");
}

static void text_never_becomes_anything_else(void **state) {
    (void)state;
    const char *texts[] = {"=1+1",         "=HYPERLINK(\"http://x\")",
                           "+1",           "-1",
                           "@SUM(A1)",     "http://example.org",
                           "mailto:a@b.c", "{=1}",
                           "0123",         "1e5",
                           "TRUE",         "'quoted",
                           "<b>&amp;</b>", "#REF!",
                           "1/2"};
    size_t count = sizeof texts / sizeof *texts;
    sb_document *document = new_document();
    document->title = "=1+1";
    document->foot = "=1+1 & more";
    sb_sheet *sheet = sb_sheet_add(&run, document, "=1+1");
    sb_heading_add(&run, sheet, "=2+2");
    sb_paragraph_add(&run, sheet, "=3+3", false);
    sb_table *t = sb_table_add(&run, sheet, "=4+4", "=5+5|=6+6>");
    for (size_t i = 0; i < count; i++)
        sb_row_add(&run, t)[0] = sb_cell_text(texts[i]);
    const char *path = written(document, "x.xlsx"), *xml = part_of(path, "xl/worksheets/sheet1.xml");
    assert_null(strstr(xml, "<f"));
    assert_null(strstr(xml, "hyperlink"));
    assert_null(strstr(xml, "<v>0123"));
    assert_int_equal(count_of(xml, "t=\"s\""), count + 5);
    assert_has(part_of(path, "xl/sharedStrings.xml"), "<t>=HYPERLINK(\"http://x\")</t>");
    assert_has(part_of(path, "xl/sharedStrings.xml"), "&lt;b&gt;&amp;amp;&lt;/b&gt;");
    assert_int_equal(count_of(output_of(sb_pool_print(run.pool, "unzip -l '%s'", path)), "sheet1.xml.rels"),
                     0);
}

static const char *format_of(sb_cell cell, sb_style style, sb_currency currency) {
    sb_document *document = new_document();
    document->style = style;
    document->currency = currency;
    sb_row_add(&run, a_table(document, "x"))[0] = cell;
    const char *styles = part(document, "xl/styles.xml"), *code = strstr(styles, "formatCode=\"");
    if (!code)
        return "General";
    char *text = sb_pool_print(run.pool, "%s", code + strlen("formatCode=\""));
    text[strcspn(text, "\"")] = '\0';
    return text;
}

static void each_kind_has_its_number_format(void **state) {
    (void)state;
    sb_style mm = {.step = SB_MM(1)}, half = {.step = {500000}};
    sb_style in16 = {.units = SB_UNITS_IN, .step = {SB_NM_PER_INCH / 16}};
    sb_style in8 = {.units = SB_UNITS_IN, .step = {SB_NM_PER_INCH / 8}};
    sb_currency eur = {"EUR", 2}, jpy = {"JPY", 0}, kwd = {"KWD", 3}; /* ISO 4217 */
    sb_length on = {34LL * SB_NM_PER_INCH + SB_NM_PER_INCH / 4}, off = SB_MM(864);
    assert_string_equal(format_of(sb_cell_count(1), mm, eur), "#,##0");
    assert_string_equal(format_of(sb_cell_money((sb_money){1}), mm, eur), "#,##0.00");
    assert_string_equal(format_of(sb_cell_money((sb_money){1}), mm, jpy), "#,##0");
    assert_string_equal(format_of(sb_cell_length(off), mm, eur), "0");
    assert_string_equal(format_of(sb_cell_price(1, 6), mm, eur), "#,##0.00####");
    assert_string_equal(format_of(sb_cell_money((sb_money){1}), mm, kwd), "#,##0.000");
    assert_string_equal(format_of(sb_cell_decimal(1, 3), mm, eur), "#,##0.000");
    assert_string_equal(format_of(sb_cell_share((sb_share){1}), mm, jpy), "0.0\\ %");
    assert_string_equal(format_of(sb_cell_rate((sb_share){1}), mm, jpy), "0.0###\\ %");
    assert_string_equal(format_of(sb_cell_date((sb_date){2026, 1, 1}), mm, eur), "yyyy-mm-dd");
    assert_string_equal(format_of(sb_cell_length(on), in8, eur), "# ?/?");
    assert_string_equal(format_of(sb_cell_length(on), in16, eur), "# ?\?/?\?");
    assert_string_equal(format_of(sb_cell_length(off), in16, eur),
                        "&quot;~&quot;# ?\?/16"); /* not on the tape */
    assert_string_equal(format_of(sb_cell_length(SB_MM(864)), half, eur), "General");
    assert_string_equal(format_of(sb_cell_length((sb_length){864250000}), half, eur), "&quot;~&quot;0.0");
    assert_string_equal(format_of(sb_cell_length((sb_length){864250000}), mm, eur), "&quot;~&quot;0");
}

static void numbers_are_stored_as_numbers(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_cell *row = sb_row_add(&run, a_table(document, "a>|b>|c>|d>|e>|f>"));
    row[0] = sb_cell_count(-3);
    row[1] = sb_cell_money((sb_money){1});
    row[2] = sb_cell_length((sb_length){19050000});
    row[3] = sb_cell_duration((sb_duration){5400000});
    row[4] = sb_cell_share((sb_share){125000});
    row[5] = sb_cell_date((sb_date){2026, 3, 31});
    const char *sheet = sheet1(document), *values[] = {"-3", "0.01", "19.05", "1.5", "0.125", "46112"};
    for (size_t i = 0; i < 6; i++)
        assert_has(sheet, sb_pool_print(run.pool, "<v>%s</v>", values[i]));
}

/* ---- names --------------------------------------------------------------------------------------------- */

static const char *cleaned(const char *title) {
    sb_document *document = new_document();
    sb_sheet_add(&run, document, title);
    const char *name = strstr(part(document, "xl/workbook.xml"), "<sheet name=\"") + strlen("<sheet name=\"");
    return sb_pool_copy(run.pool, name, strcspn(name, "\""));
}

/* At most 31 characters, none of \ / * ? : [ ], not empty, not History, no single quote at either end: published
 * limits of spreadsheet programs. */
static void sheet_names_are_cleaned(void **state) {
    (void)state;
    assert_string_equal(cleaned("Kitchen 1/2"), "Kitchen 1-2");
    assert_string_equal(cleaned("[a]*?:\\b"), "-a-----b");
    assert_string_equal(cleaned("History"), "History 2");
    assert_string_equal(cleaned("hISTORY"), "hISTORY 2");
    assert_string_equal(cleaned(""), "Sheet");
    assert_string_equal(cleaned("   "), "Sheet");
    assert_string_equal(cleaned("'it's'"), "’it’s’");
    assert_string_equal(cleaned("a\nb\x01"), "a b");
    assert_string_equal(cleaned("1234567890123456789012345678901234567890"),
                        "1234567890123456789012345678901");
    assert_string_equal(cleaned("äöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöüäöü"), "äöüäöüäöüäöüäöüäöüäöüäöüäöüäöüä");
    /* beyond the basic plane a character counts twice */
    assert_string_equal(cleaned("🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚"),
                        "🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚🪚");
}

static void sheet_names_are_unique(void **state) {
    (void)state;
    sb_document *document = new_document();
    const char *titles[] = {"Parts/a", "parts?A", "Parts-a 2", "Twelve hundred and one slats of larch",
                            "Twelve hundred and one slats of fir"};
    for (size_t i = 0; i < sizeof titles / sizeof *titles; i++)
        sb_paragraph_add(&run, sb_sheet_add(&run, document, titles[i]), "x", false);
    const char *book = part(document, "xl/workbook.xml");
    assert_has(book, "name=\"Parts-a\"");
    assert_has(book, "name=\"parts-A 2\"");
    assert_has(book, "name=\"Parts-a 2 2\"");
    assert_has(book, "name=\"Twelve hundred and one slats of\"");
    assert_has(book, "name=\"Twelve hundred and one slats 2\"");
}

static void cell_names_are_no_addresses(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "x>");
    const char *names[] = {"total", "TOTAL", "a1", "R1C1", "net price", "20 off", "r", "Größe"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        sb_row_add(&run, t)[0] = sb_cell_named(sb_cell_count(1), names[i]);
    const char *book = part(document, "xl/workbook.xml");
    const char *expected[] = {"total", "TOTAL_2", "a1_", "R1C1_", "net_price", "_20_off", "r_", "Gr____e"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        assert_has(book,
                   sb_pool_print(run.pool, "<definedName name=\"%s\">'Sheet'!$A$%zu<", expected[i], i + 2));
}

/* ---- limits -------------------------------------------------------------------------------------------- */

/* 32 767 characters a cell: published limit of spreadsheet programs. */
static void long_texts_are_cut_with_advice(void **state) {
    (void)state;
    sb_document *document = new_document();
    char *text = sb_pool_alloc(run.pool, 40001);
    memset(text, 'x', 40000);
    sb_row_add(&run, a_table(document, "x"))[0] = sb_cell_text(text);
    const char *kept = strstr(part(document, "xl/sharedStrings.xml"), "<t>xx");
    assert_non_null(kept);
    assert_int_equal(strspn(kept + 3, "x"), 32767);
    assert_int_equal(sb_notices_level(&run, 0), SB_ADVICE);
    assert_true(sb_ok(&run));
}

static void what_xml_cannot_hold_becomes_harmless(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "x");
    sb_row_add(&run, t)[0] = sb_cell_text("a\x01\x1f\x0b"
                                          "b");
    sb_row_add(&run, t)[0] = sb_cell_text("c\r\nd\re");
    sb_row_add(&run, t)[0] = sb_cell_text("caf\xE9 \xEF\xBF\xBF \xED\xA0\x80");
    sb_row_add(&run, t)[0] = sb_cell_text("_x0041_ and _x41_");
    const char *strings = part(document, "xl/sharedStrings.xml");
    assert_has(strings, "<t>a   b</t>");
    assert_has(strings, "<t>c\nd\ne</t>");
    assert_has(strings, "<t>caf\xEF\xBF\xBD \xEF\xBF\xBD \xEF\xBF\xBD\xEF\xBF\xBD\xEF\xBF\xBD</t>");
    assert_has(strings, "<t>_x005F_x0041_ and _x41_</t>");
    /* another program reads it all */
    const char *read =
        output_of(sb_pool_print(run.pool, "cd '%s' && ssconvert x.xlsx x.csv 2>&1 && cat x.csv", folder));
    assert_has(read, "a   b");
    assert_has(read, "_x0041_ and _x41_");
}

static void many_small_blocks_share_a_worksheet(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_sheet *sheet = sb_sheet_add(&run, document, "Boards");
    for (int i = 0; i < 1100; i++) {
        sb_paragraph_add(&run, sheet, "A board", false);
        sb_row_add(&run, sb_table_add(&run, sheet, "", "Stop"))[0] =
            sb_cell_text(i == 1099 ? "the last" : "48");
    }
    assert_has(part(document, "xl/sharedStrings.xml"), "the last");
}

static void too_many_rows_are_an_error_before_writing(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "x");
    sb_cell *row = sb_row_add(&run, t);
    for (size_t i = 1; i < 1048576; i++) /* one more, with its heading, than a worksheet has */
        SB_PUSH(run.pool, t->rows, row);
    assert_false(sb_write_xlsx(&run, document, in_folder("x.xlsx")));
    assert_int_equal(sb_notices_level(&run, 0), SB_ERROR);
    assert_int_not_equal(access(in_folder("x.xlsx"), F_OK), 0);
}

/* ---- the page ------------------------------------------------------------------------------------------ */

static void every_sheet_is_set_up_for_print(void **state) {
    (void)state;
    sb_document *document = new_document();
    document->foot = "14 planters & more, 2026-03-31";
    document->page_word = "Seite";
    document->of_word = "von";
    sb_sheet_add(&run, document, "Portrait");
    sb_sheet_add(&run, document, "Landscape")->landscape = true;
    const char *path = written(document, "x.xlsx"), *first = part_of(path, "xl/worksheets/sheet1.xml");
    assert_has(first, "<pageSetUpPr fitToPage=\"1\"/>");
    assert_has(first, "paperSize=\"9\" fitToHeight=\"0\" orientation=\"portrait\"");
    assert_has(first,
               "&amp;L&amp;8 14 planters &amp;&amp; more, 2026-03-31&amp;R&amp;8 Seite &amp;P von &amp;N<");
    assert_has(part_of(path, "xl/worksheets/sheet2.xml"), "orientation=\"landscape\"");
    document->letter = true;
    assert_has(sheet1(document), "paperSize=\"1\"");
}

static void a_long_foot_keeps_to_what_a_footer_holds(void **state) {
    (void)state;
    sb_document *document = new_document();
    char *foot = sb_pool_alloc(run.pool, 500);
    memset(foot, '&', 499);
    document->foot = foot;
    sb_sheet_add(&run, document, "x");
    const char *footer = strstr(sheet1(document), "<oddFooter>");
    assert_non_null(footer); /* 255 characters at most, or the library leaves it out */
    assert_int_equal(count_of(footer, "&amp;&amp;&amp;&amp;"), 40);
}

/* &A in a header is the sheet's name (ECMA-376, headerFooter). A paper of one sheet has its title on the page already. */
static void pages_of_several_sheets_are_headed_by_name(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_heading_add(&run, sb_sheet_add(&run, document, "Labour"), "Labour");
    assert_null(strstr(sheet1(document), "<oddHeader>"));
    sb_heading_add(&run, sb_sheet_add(&run, document, "Material"), "Material");
    const char *path = written(document, "headed.xlsx");
    for (int i = 1; i <= 2; i++)
        assert_has(part_of(path, sb_pool_print(run.pool, "xl/worksheets/sheet%d.xml", i)),
                   "<oddHeader>&amp;L&amp;8&amp;A</oddHeader>");
}

/* Column widths count in digits of the standard font (ECMA-376 18.3.1.13); where it is missing another, wider one stands
 * in for it and the page shrinks. Arial or its equals in width are everywhere: common practice, no source. */
static void the_standard_font_is_the_one_written_with(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_sheet_add(&run, document, "x");
    const char *styles = part_of(written(document, "x.xlsx"), "xl/styles.xml"),
               *fonts = strstr(styles, "<font>");
    assert_non_null(fonts);
    assert_has(fonts, "<sz val=\"10\"/>");
    assert_has(styles, "name val=\"Arial\"");
    assert_null(strstr(styles, "Calibri"));
}

static const char *rows_on_a_page(size_t rows) {
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "x"), "", "What|n>");
    for (size_t i = 0; i < rows; i++) {
        sb_cell *row = sb_row_add(&run, t);
        row[0] = sb_cell_text("slat");
        row[1] = sb_cell_count((int64_t)i);
    }
    return sheet1(document);
}

/* An A4 page less its margins is 297 mm - 1.5 in = 734 points high: 44 rows of 16.5 points. */
static void a_few_rows_over_are_drawn_onto_the_page(void **state) {
    (void)state;
    assert_has(rows_on_a_page(40), "fitToHeight=\"0\"");
    assert_null(strstr(rows_on_a_page(46), "fitToHeight=\"0\""));
    assert_has(rows_on_a_page(60), "fitToHeight=\"0\"");
    assert_has(rows_on_a_page(90), "fitToHeight=\"2\"");
}

/* Of a sheet for looking things up its first page alone is printed; a dense one is wider than its page, so that its texts do not wrap. */
static void a_first_page_and_a_dense_one(void **state) {
    (void)state;
    sb_document *document = new_document();
    for (int i = 0; i < 2; i++) {
        sb_sheet *sheet = sb_sheet_add(&run, document, i == 0 ? "x" : "y");
        sheet->first_page = sheet->dense = i == 1;
        sb_table *t = sb_table_add(&run, sheet, "", "What|Of|n>");
        for (int64_t row = 0; row < 100; row++) {
            sb_cell *cells = sb_row_add(&run, t);
            cells[0] = sb_cell_text("slats of the long side, planed and sanded before they are cut");
            cells[1] = sb_cell_text("boards of the merchant that are fetched on Mondays");
            cells[2] = sb_cell_count(row);
        }
    }
    const char *path = written(document, "x.xlsx"), *book = part_of(path, "xl/workbook.xml");
    assert_has(book, "<definedName name=\"_xlnm.Print_Area\" localSheetId=\"1\">y!$A$1:$");
    assert_null(strstr(book, "localSheetId=\"0\">x!$A$1"));
    assert_has(part_of(path, "xl/worksheets/sheet1.xml"), "ht=\"29\"");
    assert_null(strstr(part_of(path, "xl/worksheets/sheet2.xml"), "ht=\"29\""));
}

static void add_counts(sb_table *table, size_t rows, bool group) {
    for (size_t i = 0; i < rows; i++)
        (i == 0 && group ? sb_group_add(&run, table) : sb_row_add(&run, table))[0] =
            sb_cell_count((int64_t)i);
}

/* Rows of the worksheets, the empty one below the table not counted, as "41 41 21 ". No break is set by hand: some programs
 * misread those. */
static const char *rows_of_sheets(const sb_document *document) {
    const char *path = written(document, "x.xlsx"), *book = part_of(path, "xl/workbook.xml"), *rows = "";
    for (size_t i = 1; i <= count_of(book, "<sheet "); i++) {
        const char *xml = part_of(path, sb_pool_print(run.pool, "xl/worksheets/sheet%zu.xml", i));
        assert_null(strstr(xml, "rowBreaks"));
        rows = sb_pool_print(run.pool, "%s%zu ", rows, count_of(xml, "<row ") - 1);
    }
    return rows;
}

/* Headings and 42 rows fill a page. */
static void groups_stand_on_one_page(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "n>");
    for (int i = 0; i < 10; i++)
        add_counts(t, 10, true);
    assert_string_equal(rows_of_sheets(document), "41 41 21 ");
    sb_table *other = a_table(document, "n>");
    sb_row_add(&run, other)[0] = sb_cell_related(sb_cell_count(5), sb_rel_cell(&run, t, 85, 0));
    const char *path = written(document, "x.xlsx");
    assert_has(part_of(path, "xl/workbook.xml"), "name=\"Sheet 3\"");
    assert_has(part_of(path, "xl/worksheets/sheet4.xml"), "<f>'Sheet 3'!A7</f><v>5</v>");
    assert_has(part_of(path, "xl/worksheets/sheet3.xml"), "<c r=\"A7\" s=\"2\"><v>5</v>");
}

/* One that is longer than a page begins where it stands; the next one is whole again. */
static void long_groups_are_parted(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "n>");
    add_counts(t, 10, true);
    add_counts(t, 60, true);
    add_counts(t, 20, true);
    assert_string_equal(rows_of_sheets(document), "71 21 ");
}

/* A row for the eye between two groups neither begins a page nor pushes its group off one. */
static void empty_rows_hang_over(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "n>");
    for (int i = 0; i < 3; i++) {
        if (i > 0)
            sb_row_add(&run, t);
        add_counts(t, 42, true);
    }
    assert_string_equal(rows_of_sheets(document), "43 43 43 ");
}

static void a_heading_is_never_the_last_of_a_page(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_sheet *sheet = sb_sheet_add(&run, document, "x");
    add_counts(sb_table_add(&run, sheet, "", "n>"), 40, false);
    sb_heading_add(&run, sheet, "Below");
    add_counts(sb_table_add(&run, sheet, "", "n>"), 40, false);
    assert_string_equal(rows_of_sheets(document), "41 43 "); /* the heading and the empty row below it */
    assert_has(part(document, "xl/workbook.xml"), "name=\"Below\"");
    document = new_document();
    add_counts(a_table(document, "n>"), 60, false); /* rows without groups may part anywhere */
    assert_string_equal(rows_of_sheets(document), "61 ");
}

/* A table with groups may be parted between two of them, so a sum over it has nowhere to stand. */
static void sums_over_groups_are_a_bug(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "n>");
    add_counts(t, 2, true);
    sb_total_row_add(&run, t)[0] = sb_cell_related(sb_cell_count(1), sb_rel_sum(&run, t, 0, 0, 1));
    assert_false(sb_document_sound(&run, document));
    assert_int_equal(sb_notices_level(&run, 0), SB_BUG);
}

static void a_room_break_begins_a_page_where_the_last_is_full(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_sheet *sheet = sb_sheet_add(&run, document, "Cuts");
    size_t rows[] = {10, 10, 30, 60, 5};
    for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
        sb_room_break_add(&run, sheet);
        sb_heading_add(&run, sheet, sb_pool_print(run.pool, "stock %zu", i));
        add_counts(sb_table_add(&run, sheet, "", "n>"), rows[i], false);
    }
    const char *book = part(document, "xl/workbook.xml");
    assert_int_equal(count_of(book, "<sheet "), 4);
    assert_has(book, "name=\"stock 0\"");
    assert_has(book, "name=\"stock 2\"");
    assert_has(book, "name=\"stock 3\"");
    assert_has(book, "name=\"stock 4\"");
}

static void a_page_break_begins_a_worksheet(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_sheet *sheet = sb_sheet_add(&run, document, "Cuts");
    sb_page_break_add(&run, sheet); /* nothing before it: no empty page */
    sb_heading_add(&run, sheet, "Cut sheet");
    sb_page_break_add(&run, sheet);
    sb_heading_add(&run, sheet, "larch 20x95");
    sb_table *t = sb_table_add(&run, sheet, "", "n>");
    sb_row_add(&run, t)[0] = sb_cell_count(7);
    sb_page_break_add(&run, sheet);
    sb_table *last = sb_table_add(&run, sheet, "", "n>");
    sb_row_add(&run, last)[0] = sb_cell_related(sb_cell_count(7), sb_rel_cell(&run, t, 0, 0));
    sb_page_break_add(&run, sheet);
    const char *path = written(document, "x.xlsx"), *book = part_of(path, "xl/workbook.xml");
    assert_int_equal(count_of(book, "<sheet "), 3);
    assert_has(book, "name=\"Cut sheet\"");
    assert_has(book, "name=\"larch 20x95\"");
    assert_has(book, "name=\"Cuts\"");
    assert_has(part_of(path, "xl/worksheets/sheet3.xml"), "<f>'larch 20x95'!A4</f><v>7</v>");
}

static void long_paragraphs_have_room(void **state) {
    (void)state;
    sb_document *document = new_document();
    SB_LIST(char) text = {0};
    for (int i = 0; i < 12000; i++)
        SB_PUSH(run.pool, text, i % 6 == 5 ? ' ' : 'a');
    SB_PUSH(run.pool, text, '\0');
    sb_paragraph_add(&run, sb_sheet_add(&run, document, "x"), text.items, false);
    const char *sheet = sheet1(document);
    double height = 0;
    for (const char *at = sheet; (at = strstr(at, " ht=\""));) {
        double one = strtod(at += 5, NULL);
        assert_true(one <= 409); /* points, the greatest height of a row */
        height += one;
    }
    assert_true(height > 100 * 12); /* at least a hundred lines */
    assert_has(sheet, "<mergeCell ref=\"A1:A");
}

/* A column of w digits is 7 w + 5 pixels wide (ECMA-376 18.3.1.13); A4 less two margins of 0.6 in is 678. */
static void columns_fit_the_page(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = a_table(document, "Part|Notes|Price>|Where it comes from");
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_text("long slat of the trough, planed on the outside face");
    row[1] = sb_cell_text(
        "best faces outwards; clear wood within a hand's breadth of either end; no split at all");
    row[2] = sb_cell_money((sb_money){123456789012});
    row[3] = sb_cell_text("recipe trough, line 14, called by the job harbour, line 3");
    const char *sheet = sheet1(document);
    double pixels = 0, widths[8] = {0};
    size_t count = 0;
    for (const char *at = sheet; (at = strstr(at, " width=\""));) {
        widths[count] = strtod(at += 8, NULL);
        pixels += 7 * widths[count++]; /* the file's widths include the 5 pixels */
    }
    assert_int_equal(count, 4);
    assert_true(pixels < 678 + 8 && pixels > 500);
    assert_true(widths[2] > strlen("1,234,567,890.12")); /* figures are never ##### */
    assert_true(strtod(strstr(sheet, "<row r=\"2\"") + strlen("<row r=\"2\" spans=\"1:4\" ht=\""), NULL) >
                2 * 12);
}

static void an_empty_document_is_a_file(void **state) {
    (void)state;
    assert_has(part(new_document(), "xl/workbook.xml"), "<sheet ");
}

/* ---- same document, same bytes ------------------------------------------------------------------------- */

static sb_document *a_full_document(void) {
    sb_document *document = new_document();
    document->author = "Harbour Lane Joinery";
    for (int s = 0; s < 3; s++) {
        sb_table *t = a_table(document, "Part|Length>|Price>");
        for (int i = 0; i < 20; i++) {
            sb_cell *row = sb_row_add(&run, t);
            row[0] = sb_cell_text(sb_pool_print(run.pool, "part %d", i));
            row[1] = sb_cell_length((sb_length){1234567 * (int64_t)i});
            row[2] = sb_cell_money((sb_money){i * 7 + 1});
        }
        sb_total_row_add(&run, t)[2] = sb_cell_named(
            sb_cell_related(sb_cell_money((sb_money){1350}), sb_rel_sum(&run, t, 2, 0, 19)), "total");
    }
    return document;
}

static void same_document_same_bytes(void **state) {
    (void)state;
    written(a_full_document(), "a.xlsx");
    sleep(3); /* zip files count in steps of two seconds */
    setenv("TZ", "Pacific/Auckland", 1);
    tzset();
    written(a_full_document(), "b.xlsx");
    unsetenv("TZ");
    tzset();
    output_of(sb_pool_print(run.pool, "cd '%s' && cmp a.xlsx b.xlsx", folder));
    const char *core = part_of(in_folder("a.xlsx"), "docProps/core.xml");
    assert_int_equal(count_of(core, "2026-03-31T00:00:00Z"), 2); /* created and modified */
    assert_has(core, "<dc:creator>Harbour Lane Joinery</dc:creator>");
}

static void a_document_without_date_has_one_all_the_same(void **state) {
    (void)state;
    sb_document *document = new_document();
    document->date = (sb_date){0};
    assert_has(part(document, "docProps/core.xml"), "1980-01-01T00:00:00Z");
    document->date = (sb_date){1970, 1, 1};
    assert_has(part(document, "docProps/core.xml"), "1970-01-01T00:00:01Z");
}

/* A program that uses the library may have set its user's locale. */
static void a_decimal_comma_in_the_locale_does_no_harm(void **state) {
    (void)state;
    setenv("LOCPATH", folder, 1);
    if (system(sb_pool_print(run.pool, "localedef -i de_DE -f UTF-8 '%s/comma.UTF-8' >/dev/null 2>&1",
                             folder)) != 0 ||
        !setlocale(LC_ALL, "comma.UTF-8"))
        skip(); /* a system without locale sources */
    assert_string_equal(localeconv()->decimal_point, ",");
    written(a_full_document(), "comma.xlsx");
    assert_string_equal(localeconv()->decimal_point, ",");
    setlocale(LC_ALL, "C");
    unsetenv("LOCPATH");
    written(a_full_document(), "point.xlsx");
    output_of(sb_pool_print(run.pool, "cd '%s' && cmp comma.xlsx point.xlsx", folder));
}

/* ---- failures ------------------------------------------------------------------------------------------ */

/* What goes to standard error meanwhile, which should be nothing: the library's messages are not ours. */
static const char *refused(const sb_document *document, const char *path) {
    fflush(stderr);
    int keep = dup(STDERR_FILENO);
    FILE *log = fopen(in_folder("stderr"), "w+");
    dup2(fileno(log), STDERR_FILENO);
    bool written_anyway = sb_write_xlsx(&run, document, path);
    fflush(stderr);
    dup2(keep, STDERR_FILENO);
    close(keep);
    fclose(log);
    struct stat info;
    assert_int_equal(stat(in_folder("stderr"), &info), 0);
    assert_int_equal(info.st_size, 0);
    assert_false(written_anyway);
    return sb_notices_message(&run, 0);
}

static void a_full_disk_is_a_failure(void **state) {
    (void)state;
    assert_has(refused(a_full_document(), "/dev/full"), "/dev/full: No space left on device");
    assert_int_equal(sb_status(&run), 4);
}

static void a_missing_folder_is_a_failure(void **state) {
    (void)state;
    assert_has(refused(a_full_document(), in_folder("none/x.xlsx")), "No such file or directory");
    assert_int_equal(sb_status(&run), 4);
}

static void a_folder_in_its_place_is_a_failure(void **state) {
    (void)state;
    assert_has(refused(a_full_document(), folder), "Is a directory");
}

static void a_figure_out_of_range_is_never_written(void **state) {
    (void)state;
    sb_document *document = a_full_document();
    document->sheets.items[1]->blocks.items[0].table->rows.items[3][2].amount = SB_BAD;
    assert_has(refused(document, in_folder("x.xlsx")), "too large");
    assert_int_not_equal(access(in_folder("x.xlsx"), F_OK), 0);
}

typedef struct attempt {
    const sb_document *document;
    const char *path;
    bool done;
} attempt;

static void try_writing(void *context) {
    attempt *a = context;
    a->done = sb_write_xlsx(&run, a->document, a->path);
}

/* Memory may run out at any point; nothing is leaked then, which the address sanitizer watches. */
static void running_out_of_memory_leaks_nothing(void **state) {
    (void)state;
    sb_run outer = run;
    bool done = false;
    int failures = 0;
    for (size_t limit = 1; !done; limit += 20000) {
        attempt a = {.path = sb_pool_print(outer.pool, "%s/small.xlsx", folder)};
        run = sb_run_new();
        a.document = a_full_document();
        sb_pool_limit(run.pool, limit);
        done = sb_pool_run(run.pool, try_writing, &a) && a.done;
        failures += !done;
        sb_run_free(&run);
    }
    run = outer;
    assert_true(failures > 5);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        TEST(formulas_live_and_keep_their_value),
        TEST(text_never_becomes_anything_else),
        TEST(each_kind_has_its_number_format),
        TEST(numbers_are_stored_as_numbers),
        TEST(sheet_names_are_cleaned),
        TEST(sheet_names_are_unique),
        TEST(cell_names_are_no_addresses),
        TEST(long_texts_are_cut_with_advice),
        TEST(what_xml_cannot_hold_becomes_harmless),
        TEST(many_small_blocks_share_a_worksheet),
        TEST(too_many_rows_are_an_error_before_writing),
        TEST(every_sheet_is_set_up_for_print),
        TEST(pages_of_several_sheets_are_headed_by_name),
        TEST(a_long_foot_keeps_to_what_a_footer_holds),
        TEST(a_page_break_begins_a_worksheet),
        TEST(a_room_break_begins_a_page_where_the_last_is_full),
        TEST(groups_stand_on_one_page),
        TEST(long_groups_are_parted),
        TEST(empty_rows_hang_over),
        TEST(a_heading_is_never_the_last_of_a_page),
        TEST(sums_over_groups_are_a_bug),
        TEST(the_standard_font_is_the_one_written_with),
        TEST(a_few_rows_over_are_drawn_onto_the_page),
        TEST(a_first_page_and_a_dense_one),
        TEST(long_paragraphs_have_room),
        TEST(columns_fit_the_page),
        TEST(an_empty_document_is_a_file),
        TEST(same_document_same_bytes),
        TEST(a_document_without_date_has_one_all_the_same),
        TEST(a_decimal_comma_in_the_locale_does_no_harm),
        TEST(a_full_disk_is_a_failure),
        TEST(a_missing_folder_is_a_failure),
        TEST(a_folder_in_its_place_is_a_failure),
        TEST(a_figure_out_of_range_is_never_written),
        TEST(running_out_of_memory_leaks_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
