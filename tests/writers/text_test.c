/* Papers on the terminal. */
#include "bench.h"

/* Characters of the widest line: bytes that do not continue one. */
static int widest(const char *text) {
    int most = 0, here = 0;
    for (; *text; text++) {
        here = *text == '\n' ? 0 : here + ((*text & 0xC0) != 0x80);
        most = here > most ? here : most;
    }
    return most;
}

static sb_table *order(sb_document *document) {
    sb_sheet *sheet = sb_sheet_add(&run, document, "Order");
    sb_heading_add(&run, sheet, "Order list");
    sb_table *t = sb_table_add(&run, sheet, "Timber", "Stock|Boards>|Length>|Cost>|Merchant");
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_text("larch-20x95");
    row[1] = sb_cell_count(41);
    row[2] = sb_cell_length(SB_MM(4000));
    row[3] = sb_cell_money((sb_money){51045});
    row[4] = sb_cell_text("yard");
    row = sb_row_add(&run, t);
    row[0] = sb_cell_text("fir");
    row[1] = sb_cell_count(3);
    row[2] = sb_cell_length(SB_MM(900));
    row[3] = sb_cell_money((sb_money){950});
    row = sb_total_row_add(&run, t);
    row[0] = sb_cell_text("Total");
    row[3] = sb_cell_money((sb_money){51995});
    return t;
}

static void a_table_stands_in_columns(void **state) {
    (void)state;
    sb_document *document = new_document();
    order(document);
    assert_string_equal(sb_write_text(&run, document, 80), "Order list\n"
                                                           "----------\n"
                                                           "\n"
                                                           "Timber\n"
                                                           "Stock        Boards  Length    Cost  Merchant\n"
                                                           "-----------  ------  ------  ------  --------\n"
                                                           "larch-20x95      41    4000  510.45  yard\n"
                                                           "fir               3     900    9.50\n"
                                                           "-----------  ------  ------  ------  --------\n"
                                                           "Total                        519.95\n");
}

static void long_texts_wrap_and_figures_do_not(void **state) {
    (void)state;
    sb_document *document = new_document();
    order(document)->rows.items[0][4] = sb_cell_text("the timber yard at the old station, back gate");
    const char *text = sb_write_text(&run, document, 50);
    assert_int_equal(widest(text), 50);
    assert_non_null(strstr(text, "larch-20x95      41    4000  510.45  the timber\n"
                                 "                                     yard at the\n"
                                 "                                     old station,\n"
                                 "                                     back gate\n"));
}

/* An amount of thousands in a text is one figure, whatever stands before it. */
static void an_amount_in_a_text_stays_on_its_line(void **state) {
    (void)state;
    sb_document *document = new_document();
    order(document)->rows.items[0][4] = sb_cell_text("4 off make 1 516.00 EUR and 12 345 678.90");
    const char *text = sb_write_text(&run, document, 52);
    assert_non_null(strstr(text, "4 off make\n"));
    assert_non_null(strstr(text, " 1 516.00 EUR\n"));
    assert_non_null(strstr(text, " 12 345 678.90\n"));
    order(document)->rows.items[0][4] = sb_cell_text("waste 11 % of 6.4 % of it");
    text = sb_write_text(&run, document, 46);
    assert_non_null(strstr(text, " waste\n"));
    assert_non_null(strstr(text, " 11 % of\n"));
}

static void a_table_too_wide_becomes_a_list(void **state) {
    (void)state;
    sb_document *document = new_document();
    order(document);
    const char *text = sb_write_text(&run, document, 24);
    assert_true(widest(text) <= 24);
    assert_non_null(
        strstr(text, "Stock: larch-20x95\nBoards: 41\nLength: 4000\nCost: 510.45\nMerchant: yard\n\n"));
}

static void pairs_have_no_headings(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Job"), "", "|");
    t->no_heading = true;
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_text("Customer");
    row[1] = sb_cell_text("Harbour Lane");
    row = sb_row_add(&run, t);
    row[0] = sb_cell_text("Price");
    row[1] = sb_cell_money((sb_money){12345});
    row = sb_row_add(&run, t);
    row[0] = sb_cell_text("Checked");
    row[1] = sb_cell_tick();
    assert_string_equal(sb_write_text(&run, document, 80), "Customer  Harbour Lane\n"
                                                           "Price     123.45\n"
                                                           "Checked   [ ]\n");
}

static void each_kind_is_written_for_people(void **state) {
    (void)state;
    sb_document *document = new_document();
    document->style.decimal_comma = true;
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Job"), "", ">");
    t->no_heading = true;
    sb_row_add(&run, t)[0] = sb_cell_share((sb_share){125000});
    sb_row_add(&run, t)[0] = sb_cell_duration((sb_duration){9540000});
    sb_row_add(&run, t)[0] = sb_cell_price(3215000, 6);
    sb_row_add(&run, t)[0] = sb_cell_price(3000000, 6);
    sb_row_add(&run, t)[0] = sb_cell_decimal(-1250, 3);
    sb_row_add(&run, t)[0] = sb_cell_date((sb_date){2026, 3, 31});
    assert_string_equal(sb_write_text(&run, document, 80), "    12,5 %\n"
                                                           "      2,65\n"
                                                           "     3,215\n"
                                                           "      3,00\n"
                                                           "    -1,250\n"
                                                           "2026-03-31\n");
}

/* A text from a price list must not steer the terminal. */
static void control_characters_do_not_get_through(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_sheet *sheet = sb_sheet_add(&run, document, "x");
    sb_paragraph_add(&run, sheet,
                     "red \x1b[31m, bell \x07, back\b, next line \xC2\x85, csi \xC2\x9B"
                     "1m",
                     false);
    sb_row_add(&run, sb_table_add(&run, sheet, "t\x1b", "h\x1b"))[0] = sb_cell_text("c\x1b\rx");
    for (const char *at = sb_write_text(&run, document, 80); *at; at++) {
        assert_true((unsigned char)*at >= 0x20 || *at == '\n');
        assert_false((unsigned char)*at == 0xC2 && (unsigned char)at[1] < 0xA0);
    }
}

static void wide_and_combining_characters_take_their_room(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "x"), "", "Wood|N>");
    t->no_heading = true;
    const char *woods[] = {"e\xCC\x81rable", "木材", "Lärche"};
    for (int i = 0; i < 3; i++) {
        sb_cell *row = sb_row_add(&run, t);
        row[0] = sb_cell_text(woods[i]);
        row[1] = sb_cell_count(i);
    }
    assert_string_equal(sb_write_text(&run, document, 80), "e\xCC\x81rable  0\n木材    1\nLärche  2\n");
}

/* ---- never wider than asked ---------------------------------------------------------------------------- */

static const char *some_text(void) {
    static const char *const words[] = {
        "larch",   "x",     "Unterkonstruktionsholz",
        "planed,", "20x95", "é",
        "\n",      " ",     "aReallyLongWordThatNobodyWouldWriteButAPriceListMight",
        "-",       "für"};
    const char *text = "";
    for (uint32_t i = dice(9); i > 0; i--)
        text = sb_pool_print(run.pool, "%s%s%s", text, words[dice(sizeof words / sizeof *words)],
                             dice(4) ? " " : "");
    return text;
}

static sb_cell some_cell(void) {
    switch (dice(7)) {
    case 0:
        return sb_cell_count(dice(100000));
    case 1:
        return sb_cell_money((sb_money){(int64_t)dice(1u << 24) * (dice(2) ? 1 : -1)});
    case 2:
        return sb_cell_length((sb_length){(int64_t)dice(1u << 24) * 1000});
    case 3:
        return sb_cell_tick();
    case 4:
        return (sb_cell){.kind = SB_CELL_EMPTY, .text = ""};
    default:
        return sb_cell_text(some_text());
    }
}

static void no_line_is_wider_than_the_terminal(void **state) {
    (void)state;
    for (int round = 0; round < 300; round++) {
        sb_document *document = new_document();
        for (uint32_t sheets = 1 + dice(2); sheets > 0; sheets--) {
            sb_sheet *sheet = sb_sheet_add(&run, document, some_text());
            sb_heading_add(&run, sheet, some_text());
            sb_paragraph_add(&run, sheet, some_text(), dice(2));
            sb_table *t = sb_table_add(&run, sheet, some_text(),
                                       dice(2) ? "Part|Count>|Length>|Notes" : "A|B|C|D|E|F|G|H");
            for (uint32_t rows = dice(6); rows > 0; rows--) {
                sb_cell *row = sb_row_add(&run, t);
                for (size_t i = 0; i < t->column_count; i++)
                    row[i] = some_cell();
            }
        }
        int columns = 20 + (int)dice(100);
        const char *text = sb_write_text(&run, document, columns);
        if (widest(text) > columns)
            fail_msg("%d > %d columns:\n%s", widest(text), columns, text);
        assert_null(strstr(text, " \n")); /* and none ends in a blank */
    }
}

static void several_sheets_show_their_titles(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_paragraph_add(&run, sb_sheet_add(&run, document, "Parts"), "None.", false);
    sb_heading_add(&run, sb_sheet_add(&run, document, "Cuts"), "Cuts");
    assert_string_equal(sb_write_text(&run, document, 80), "Parts\n=====\n\nNone.\n\nCuts\n----\n");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        TEST(a_table_stands_in_columns),
        TEST(long_texts_wrap_and_figures_do_not),
        TEST(an_amount_in_a_text_stays_on_its_line),
        TEST(a_table_too_wide_becomes_a_list),
        TEST(pairs_have_no_headings),
        TEST(each_kind_is_written_for_people),
        TEST(control_characters_do_not_get_through),
        TEST(wide_and_combining_characters_take_their_room),
        TEST(no_line_is_wider_than_the_terminal),
        TEST(several_sheets_show_their_titles),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
