/* Another spreadsheet program works every formula out anew, and gets the same cents. */
#include "bench.h"

#include "../support/relation_eval.h"

#include <math.h>

enum {
    COLUMNS_MOST = 12
};

/* The sheet's cells as another program sees them after working everything out: raw numbers, by row and column. */
typedef struct grid {
    SB_LIST(char **) rows;
} grid;

static char **split(char *line) {
    char **fields = SB_NEW_ARRAY(run.pool, char *, COLUMNS_MOST);
    for (int i = 0; i < COLUMNS_MOST; i++)
        fields[i] = "";
    for (int i = 0; i < COLUMNS_MOST; i++) {
        fields[i] = line;
        line += strcspn(line, "\t");
        if (!*line)
            break;
        *line++ = '\0';
    }
    return fields;
}

static grid recalculated(const sb_document *document, const char *sheet) {
    assert_true(sb_write_xlsx(&run, document, in_folder("x.xlsx")));
    char *text = (char *)(uintptr_t)output_of(
        sb_pool_print(run.pool,
                      "cd '%s' && ssconvert --recalc -T Gnumeric_stf:stf_assistant -O \"sheet='%s' "
                      "format=raw separator='\t'\" "
                      "x.xlsx x.txt 2>/dev/null && cat x.txt",
                      folder, sheet));
    grid found = {0};
    while (*text) {
        char *line = text;
        text += strcspn(text, "\n");
        *text++ = '\0';
        SB_PUSH(run.pool, found.rows, split(line));
    }
    return found;
}

static int64_t minor_at(const grid *g, size_t row, size_t column, int digits) {
    assert_true(row < g->rows.count);
    char *end;
    double value = strtod(g->rows.items[row][column], &end);
    assert_true(end > g->rows.items[row][column] && *end == '\0');
    double minor = value * pow(10, digits);
    assert_true(fabs(minor - round(minor)) < 1e-3); /* the program holds whole cents, not just shows them */
    return llround(minor);
}

/* Every money cell with a relation, against what is stored. The table stands at the top of its sheet. */
static void compare(const sb_document *document, const sb_table *t, const char *sheet) {
    assert_true(sb_document_sound(&run, document));
    const sb_cell *wrong = relation_first_wrong(document);
    if (wrong)
        fail_msg("the test's own arithmetic: %lld", (long long)wrong->amount);
    grid found = recalculated(document, sheet);
    for (size_t row = 0; row < t->rows.count; row++)
        for (size_t column = 0; column < t->column_count; column++) {
            const sb_cell *cell = &t->rows.items[row][column];
            if (cell->kind != SB_CELL_MONEY)
                continue;
            int64_t minor = minor_at(&found, row + 1, column, document->currency.digits);
            if (minor != cell->amount)
                fail_msg("row %zu column %zu: %lld stored, %lld worked out", row, column,
                         (long long)cell->amount, (long long)minor);
        }
}

static const sb_relation *cell_at(const sb_table *t, size_t row, size_t column) {
    return sb_rel_cell(&run, t, row, column);
}

static const sb_relation *product(const sb_relation *a, const sb_relation *b) {
    return sb_rel(&run, SB_REL_MUL, a, b);
}

/* That the other program really works it out: a stored value that is wrong on purpose does not survive. */
static void stored_values_are_not_believed(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Lines"), "", "a>|b>|c>");
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_count(3);
    row[1] = sb_cell_money((sb_money){1250});
    row[2] = sb_cell_related(sb_cell_money((sb_money){99999}), product(cell_at(t, 0, 0), cell_at(t, 0, 1)));
    assert_ptr_equal(relation_first_wrong(document), &row[2]);
    grid found = recalculated(document, "Lines");
    assert_int_equal(minor_at(&found, 1, 2, 2), 3750);
}

/* ---- a price built up line by line, many times ----------------------------------------------------------- */

static const int64_t milli_shares[] = {50, 75, 125, 200, 250, 333, 5, 175};

/* count | price | cost | share | of cost | with margin | to the price point */
static void add_line(sb_table *t, size_t at, int digits) {
    int64_t minor_unit = digits == 0 ? 1 : digits == 2 ? 100 : 1000;
    int64_t micro_per_minor = 1000000 / minor_unit;
    int64_t count = 1 + dice(400);
    /* price in 1/2000 of the major unit: many products end in exactly half a cent */
    int64_t micro = (int64_t)dice(400000) * 500;
    int64_t ppm = 1000 * milli_shares[dice(8)];
    int64_t cost = sb_mul_div(count * micro, 1, micro_per_minor);
    int64_t part = sb_mul_div(cost, ppm, 1000000);
    int64_t price = sb_mul_div(cost, 1000000, 1000000 - ppm);
    int64_t point = 5 * ((price + 4) / 5);
    const sb_relation *one = sb_rel_number(&run, 1, 0);
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_count(count);
    row[1] = sb_cell_price(micro, 6);
    row[2] = sb_cell_related(sb_cell_money((sb_money){cost}),
                             sb_rel_round(&run, product(cell_at(t, at, 0), cell_at(t, at, 1)), digits));
    row[3] = sb_cell_share((sb_share){ppm});
    row[4] = sb_cell_related(sb_cell_money((sb_money){part}),
                             sb_rel_round(&run, product(cell_at(t, at, 2), cell_at(t, at, 3)), digits));
    const sb_relation *rest = sb_rel(&run, SB_REL_SUB, one, cell_at(t, at, 3));
    row[5] = sb_cell_related(sb_cell_money((sb_money){price}),
                             sb_rel_round(&run, sb_rel(&run, SB_REL_DIV, cell_at(t, at, 2), rest), digits));
    row[6] =
        sb_cell_related(sb_cell_money((sb_money){point}),
                        sb_rel(&run, SB_REL_ROUND_UP_TO, cell_at(t, at, 5), sb_rel_number(&run, 5, digits)));
}

static int64_t total_of(const sb_table *t, size_t column, size_t rows) {
    int64_t total = 0;
    for (size_t row = 0; row < rows; row++)
        total += t->rows.items[row][column].amount;
    return total;
}

static void build_up(const char *currency, int digits) {
    enum {
        LINES = 400
    };
    sb_document *document = new_document();
    document->currency = (sb_currency){currency, digits};
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Lines"), "",
                               "Count>|Price>|Cost>|Share>|Of cost>|With margin>|Price point>");
    for (size_t i = 0; i < LINES; i++)
        add_line(t, i, digits);
    sb_cell *total = sb_total_row_add(&run, t);
    for (size_t column = 2; column < 7; column++)
        if (column != 3)
            total[column] = sb_cell_related(sb_cell_money((sb_money){total_of(t, column, LINES)}),
                                            sb_rel_sum(&run, t, column, 0, LINES - 1));
    compare(document, t, "Lines");
}

static void lines_and_totals_agree_in_euro(void **state) {
    (void)state;
    build_up("EUR", 2);
}

static void lines_and_totals_agree_in_yen(void **state) {
    (void)state;
    build_up("JPY", 0);
}

static void lines_and_totals_agree_in_dinar(void **state) {
    (void)state;
    build_up("KWD", 3);
}

/* ---- signs, brackets, other sheets ------------------------------------------------------------------------ */

static void halves_go_away_from_zero(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Lines"), "", "a>|b>");
    const int64_t milli[] = {5,     -5,      15,       -15,  1005,  -1005, 2675,
                             -2675, 1994995, -1994995, 8125, 49995, -49995};
    for (size_t i = 0; i < sizeof milli / sizeof *milli; i++) {
        sb_cell *row = sb_row_add(&run, t);
        row[0] = sb_cell_price(milli[i], 3);
        row[1] = sb_cell_related(sb_cell_money((sb_money){sb_mul_div(milli[i], 1, 10)}),
                                 sb_rel_round(&run, cell_at(t, i, 0), 2));
    }
    compare(document, t, "Lines");
}

static void brackets_stand_where_they_must(void **state) {
    (void)state;
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Lines"), "", "a>|b>|c>");
    sb_cell *row = sb_row_add(&run, t);
    row[0] = sb_cell_money((sb_money){10000});
    row[1] = sb_cell_money((sb_money){3000});
    row[2] = sb_cell_money((sb_money){-1000});
    const sb_relation *a = cell_at(t, 0, 0), *b = cell_at(t, 0, 1), *c = cell_at(t, 0, 2);
    const sb_relation *minus = sb_rel_number(&run, -2, 0);
    const struct {
        const sb_relation *relation;
        int64_t minor;
    } cases[] = {
        {sb_rel(&run, SB_REL_SUB, a, sb_rel(&run, SB_REL_SUB, b, c)), 6000},
        {sb_rel(&run, SB_REL_SUB, sb_rel(&run, SB_REL_SUB, a, b), c), 8000},
        {sb_rel(&run, SB_REL_SUB, a, sb_rel(&run, SB_REL_ADD, b, c)), 8000},
        {product(sb_rel(&run, SB_REL_ADD, a, b), minus), -26000},
        {product(minus, sb_rel(&run, SB_REL_SUB, a, b)), -14000},
        {sb_rel(&run, SB_REL_SUB, a, minus), 10200},
        {sb_rel(&run, SB_REL_DIV, a, sb_rel(&run, SB_REL_DIV, b, c)), -3333},
        {sb_rel(&run, SB_REL_DIV, a, product(minus, sb_rel_number(&run, 25, 1))), -2000},
        {sb_rel(&run, SB_REL_SUB, sb_rel_number(&run, 0, 0), c), 1000},
        {sb_rel_sum(&run, t, 0, 1, 0), 0},
    };
    size_t count = sizeof cases / sizeof *cases;
    for (size_t i = 0; i < count; i++)
        sb_row_add(&run, t)[0] = sb_cell_related(sb_cell_money((sb_money){cases[i].minor}),
                                                 sb_rel_round(&run, cases[i].relation, 2));
    compare(document, t, "Lines");
}

static void other_sheets_are_found_by_any_name(void **state) {
    (void)state;
    const char *names[] = {"Fixings, glue & \"oil\"", "It's dear", "A1", "2026", "Bänke", "History", "Sum"};
    sb_document *document = new_document();
    sb_table *t = sb_table_add(&run, sb_sheet_add(&run, document, "Lines"), "", "a>");
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        sb_sheet *sheet = sb_sheet_add(&run, document, names[i]);
        sb_heading_add(&run, sheet, names[i]);
        sb_table *other = sb_table_add(&run, sheet, "With a title", "what|a>|b>");
        for (int row = 0; row < 3; row++) {
            sb_row_add(&run, other)[1] = sb_cell_money((sb_money){100 * row + 1});
            other->rows.items[row][2] = sb_cell_money((sb_money){1000});
        }
        sb_row_add(&run, t)[0] = sb_cell_related(
            sb_cell_money((sb_money){1303}),
            sb_rel(&run, SB_REL_ADD, sb_rel_sum(&run, other, 1, 0, 2), sb_rel_cell(&run, other, 0, 2)));
    }
    compare(document, t, "Lines");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        TEST(stored_values_are_not_believed),     TEST(lines_and_totals_agree_in_euro),
        TEST(lines_and_totals_agree_in_yen),      TEST(lines_and_totals_agree_in_dinar),
        TEST(halves_go_away_from_zero),           TEST(brackets_stand_where_they_must),
        TEST(other_sheets_are_found_by_any_name),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
