/* Bare lists: what the two files may say, and every mistake of both told at its place. */
#include "problems.h"

#include <stdio.h>
#include <stdlib.h>
#include <unistd.h>

static char folder[200], parts_path[240], stock_path[240], measured_path[240];

static int make_folder(void **state) {
    const char *tmp = getenv("TMPDIR");
    (void)state;
    snprintf(folder, sizeof folder, "%s/bare-XXXXXX", tmp ? tmp : "/tmp");
    if (!mkdtemp(folder))
        return 1;
    snprintf(parts_path, sizeof parts_path, "%s/parts.csv", folder);
    snprintf(stock_path, sizeof stock_path, "%s/stock.csv", folder);
    snprintf(measured_path, sizeof measured_path, "%s/measured.csv", folder);
    return 0;
}

static int drop_folder(void **state) {
    (void)state;
    unlink(parts_path);
    unlink(stock_path);
    unlink(measured_path);
    return rmdir(folder);
}

static void write_file(const char *path, const char *text) {
    FILE *f = fopen(path, "wb");
    assert_non_null(f);
    fputs(text, f);
    assert_int_equal(fclose(f), 0);
}

static bool read_lists(sb_run *run, sb_problem *p, const char *parts, const char *stock) {
    start(run, p, 3);
    write_file(parts_path, parts);
    write_file(stock_path, stock);
    return sb_problem_read(run, p, parts_path, stock_path, mm(10), 2);
}

static void read_well(sb_run *run, sb_problem *p, const char *parts, const char *stock) {
    bool read = read_lists(run, p, parts, stock);
    if (!read)
        print_error("%s\n", sb_notices_text(run, SB_NOTE, false));
    assert_true(read);
}

/* ---- boards -------------------------------------------------------------------------------------- */

static void boards_in_any_order_of_columns(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    read_well(&run, &p,
              "count,length,name,stock,clear,end2,end1,sound\n"
              "4,700,leg,larch,yes,,,\n"
              "2,1.2 m,\"rail, long\",larch,no,mitre -45,mitre 45,yes\n"
              "1,47 1/4\",brace,larch,,mitre 30 bevel 10.5,square,no\n",
              "price,stock,length\n9.95,larch,2400\n12,larch,3000\n");
    assert_int_equal(p.stock.count, 1);
    assert_false(p.stock.items[0].sheet);
    assert_int_equal(p.needs.count, 3);
    assert_string_equal(p.needs.items[1].name, "rail, long");
    assert_int_equal(p.needs.items[0].count, 4);
    assert_true(p.needs.items[0].clear && !p.needs.items[0].sound);
    assert_true(p.needs.items[1].sound && !p.needs.items[1].clear);
    assert_false(p.needs.items[2].sound);
    assert_int_equal(p.needs.items[1].length.nm, mm(1200).nm);
    assert_int_equal(p.needs.items[1].end1.mitre.udeg, 45000000);
    assert_int_equal(p.needs.items[1].end2.mitre.udeg, -45000000);
    assert_int_equal(p.needs.items[2].length.nm, 1200150000);
    assert_int_equal(p.needs.items[2].end2.mitre.udeg, 30000000);
    assert_int_equal(p.needs.items[2].end2.bevel.udeg, 10500000);
    assert_int_equal(p.supplies.count, 2);
    assert_int_equal(p.supplies.items[0].price.milli, 995000);
    assert_int_equal(p.supplies.items[0].available, -1);
    assert_int_equal(p.supplies.items[0].trim1.nm, mm(10).nm);
    assert_int_equal(p.supplies.items[0].row, 1);
    assert_int_equal(p.supplies.items[1].row, 2);
    sb_run_free(&run);
}

/* The same length twice; a price of nothing for a leftover; trims and numbers of a row's own. */
static void leftovers_and_limits(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    read_well(&run, &p, "name,stock,length,count\nleg,larch,700,4\n",
              "stock,length,price,available,kind,trim1,trim2,width\n"
              "larch,2400,9.95,3,board,0,5,95\n"
              "larch,2400,10.50,,board,,,\n"
              "larch,810,0,,leftover,0,0,\n"
              "larch,900,,2,leftover,,,\n");
    assert_int_equal(p.supplies.count, 4);
    assert_int_equal(p.stock.items[0].width.nm, mm(95).nm);
    assert_int_equal(p.supplies.items[0].available, 3);
    assert_int_equal(p.supplies.items[0].trim1.nm, 0);
    assert_int_equal(p.supplies.items[0].trim2.nm, mm(5).nm);
    assert_false(p.supplies.items[1].leftover);
    assert_true(p.supplies.items[2].leftover);
    assert_int_equal(p.supplies.items[2].available, 1);
    assert_int_equal(p.supplies.items[2].price.milli, 0);
    assert_int_equal(p.supplies.items[3].available, 2);
    assert_int_equal(p.supplies.items[3].trim1.nm, mm(10).nm);
    sb_run_free(&run);
}

/* Semicolons, decimal commas, a byte order mark, CRLF. */
static void as_a_spreadsheet_saves_it(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    read_well(&run, &p, "\xEF\xBB\xBFname;stock;length;count;end1\r\nleg;larch;700,5;4;mitre 22,5\r\n",
              "stock;length;price\r\nlarch;2400;9,95\r\n");
    assert_int_equal(p.needs.items[0].length.nm, mm(700.5).nm);
    assert_int_equal(p.needs.items[0].end1.mitre.udeg, 22500000);
    assert_int_equal(p.supplies.items[0].price.milli, 995000);
    sb_run_free(&run);
}

/* ---- sheets -------------------------------------------------------------------------------------- */

static void sheets_with_grain_and_turning(void **state) {
    static const sb_cut_grain grains[] = {SB_CUT_ALONG, SB_CUT_FREE,  SB_CUT_ALONG, SB_CUT_ACROSS,
                                          SB_CUT_FREE,  SB_CUT_ALONG, SB_CUT_ACROSS};
    sb_run run;
    sb_problem p;
    (void)state;
    read_well(&run, &p,
              "name,stock,length,width,count,grain,rotate\n"
              "a,ply,700,300,1,,\n"
              "b,ply,700,300,1,,yes\n"
              "c,ply,700,300,1,along,\n"
              "d,ply,700,300,1,across,\n"
              "e,ply,700,300,1,free,\n"
              "f,ply,700,300,1,free,no\n"
              "g,ply,700,300,1,across,yes\n",
              "stock,length,width,price,kind,trim1,trim2\nply,2440,1220,48.50,sheet,,\nply,1000,400,2,"
              "leftover,0,3\n");
    for (size_t i = 0; i < 7; i++)
        assert_int_equal(p.needs.items[i].grain, grains[i]);
    assert_true(p.stock.items[0].sheet);
    assert_int_equal(p.supplies.items[0].width.nm, mm(1220).nm);
    assert_true(p.supplies.items[1].leftover);
    assert_int_equal(p.supplies.items[1].trim1.nm, 0);
    assert_int_equal(p.supplies.items[1].trim2.nm, mm(3).nm);
    assert_int_equal(sb_notices_count(&run, SB_NOTE), 1); /* across holds against `rotate` */
    sb_run_free(&run);
}

/* A stock of which there are only leftovers: with a width they are sheets, without one boards. */
static void leftovers_alone(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    read_well(&run, &p, "name,stock,length,width,count\na,ply,300,200,1\nb,larch,300,,1\n",
              "stock,length,width,price,kind\nply,1000,400,2,leftover\nlarch,900,,1,leftover\n");
    assert_true(p.stock.items[0].sheet);
    assert_false(p.stock.items[1].sheet);
    sb_run_free(&run);
}

/* ---- measured boards ----------------------------------------------------------------------------- */

#define LABELLED                                                                                             \
    "stock,length,price,kind,available,width,label\n"                                                        \
    "larch,2400,9.95,board,,,\nlarch,2400,9.95,board,,,B1\nlarch,900,1,leftover,2,,B2\n"                     \
    "ply,2000,20,sheet,,1000,S1\n"

static bool read_measured(sb_run *run, sb_problem *p, const char *measured) {
    read_well(run, p, "name,stock,length,count\nleg,larch,700,4\n", LABELLED);
    write_file(measured_path, measured);
    return sb_problem_measured(run, p, measured_path);
}

/* In any order; a stretch may lie inside another. A bought board that was measured is one board. */
static void boards_that_were_measured(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    assert_true(read_measured(&run, &p, "kind;to;board;from\nsplit;2,4 m;B1;2380\nknot;640,5;B1;600\nknot;40;B1;0\n"));
    const sb_supply *board = &p.supplies.items[1];
    assert_true(board->measured);
    assert_int_equal(board->available, 1);
    assert_int_equal(board->bad.count, 3);
    assert_int_equal(board->bad.items[0].from.nm, 0);
    assert_int_equal(board->bad.items[1].to.nm, mm(640.5).nm);
    assert_false(board->bad.items[1].split);
    assert_true(board->bad.items[2].split);
    assert_false(p.supplies.items[0].measured);
    assert_int_equal(p.supplies.items[0].available, -1);
    sb_run_free(&run);
}

typedef struct measured_mistake {
    const char *measured, *words;
    size_t line, column;
} measured_mistake;

#define MEASURED "board,from,to,kind\n"

static const measured_mistake measured_mistakes[] = {
    {MEASURED "B3,0,5,knot\n", "unknown board \"B3\"", 2, 1},
    {MEASURED "B1,0,5,knot\nB2,0,5,knot\n", "there are 2 of \"B2\"", 3, 1},
    {MEASURED "S1,0,5,knot\n", "only boards are measured", 2, 1},
    {MEASURED ",0,5,knot\n", "expected the label of a board here", 2, 1},
    {MEASURED "B1,5,5,knot\n", "more than `from`", 2, 6},
    {MEASURED "B1,50,5,knot\n", "more than `from`", 2, 7},
    {MEASURED "B1,-1,5,knot\n", "none is below nothing", 2, 4},
    {MEASURED "B1,0,2400.5,split\n", "only 2400 mm long", 2, 6},
    {MEASURED "B1,0,five,split\n", "", 2, 6},
    {MEASURED "B1,,5,split\n", "expected where the stretch begins here", 2, 4},
    {MEASURED "B1,0,,split\n", "expected where the stretch ends here", 2, 6},
    {MEASURED "B1,0,5,\n", "expected knot or split here", 2, 8},
    {MEASURED "B1,0,5,splt\n", "did you mean \"split\"", 2, 8},
};

static void mistakes_in_measured_boards(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof measured_mistakes / sizeof *measured_mistakes; i++) {
        sb_run run;
        sb_problem p;
        const measured_mistake *m = &measured_mistakes[i];
        assert_false(read_measured(&run, &p, m->measured));
        assert_int_equal(sb_notices_count(&run, SB_ERROR), 1);
        sb_position at = sb_place_position(sb_notices_place(&run, 0));
        if (!strstr(sb_notices_message(&run, 0), m->words) || at.line != m->line || at.column != m->column)
            print_error("mistake %zu: %s\n", i, sb_notices_text(&run, SB_NOTE, false));
        assert_non_null(strstr(sb_notices_message(&run, 0), m->words));
        assert_int_equal(at.line, m->line);
        assert_int_equal(at.column, m->column);
        sb_run_free(&run);
    }
}

/* A label names one row. */
static void a_label_stands_once(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    assert_false(read_lists(&run, &p, "name,stock,length,count\nleg,larch,700,4\n",
                            "stock,length,price,label\nlarch,2400,9.95,B1\nlarch,3000,12,B1\n"));
    assert_int_equal(sb_place_position(sb_notices_place(&run, 0)).line, 3);
    assert_int_equal(sb_place_position(sb_notices_place(&run, 0)).column, 15);
    sb_run_free(&run);
}

/* ---- mistakes ------------------------------------------------------------------------------------ */

typedef struct mistake {
    const char *parts, *stock, *words;
    size_t line, column;
} mistake;

#define PARTS "name,stock,length,count,width,end1,clear,grain\n"
#define LEG   "leg,larch,700,4,,,,\n"
#define STOCK "stock,length,price,width,available,kind,trim1\n"
#define BOARD "larch,2400,9.95,,,,\n"

static const mistake mistakes[] = {
    {PARTS "leg,lrch,700,4,,,,\n", STOCK BOARD, "larch", 2, 5},
    {PARTS "leg,larch,0,4,,,,\n", STOCK BOARD, "the length must be more than nothing", 2, 11},
    {PARTS "leg,larch,-5,4,,,,\n", STOCK BOARD, "", 2, 11},
    {PARTS "leg,larch,,4,,,,\n", STOCK BOARD, "expected the length here", 2, 11},
    {PARTS "leg,larch,nan,4,,,,\n", STOCK BOARD, "", 2, 11},
    {PARTS "leg,larch,1e9,4,,,,\n", STOCK BOARD, "", 2, 11},
    {PARTS "leg,larch,700,0,,,,\n", STOCK BOARD, "the count must be 1 or more", 2, 15},
    {PARTS "leg,larch,700,2.5,,,,\n", STOCK BOARD, "", 2, 15},
    {PARTS "leg,larch,700,4,,miter 45,,\n", STOCK BOARD, "mitre", 2, 18},
    {PARTS "leg,larch,700,4,,mitre,,\n", STOCK BOARD, "expected an angle after \"mitre\"", 2, 18},
    {PARTS "leg,larch,700,4,,mitre 95,,\n", STOCK BOARD, "less than 89 degrees", 2, 18},
    {PARTS "leg,larch,700,4,,mitre 30 mitre 20,,\n", STOCK BOARD, "\"mitre\" stands twice", 2, 18},
    {PARTS "leg,larch,700,4,,square 5,,\n", STOCK BOARD, "", 2, 18},
    {PARTS "leg,larch,700,4,,,perhaps,\n", STOCK BOARD, "", 2, 19},
    {PARTS "leg,larch,700,4,,,,up\n", STOCK BOARD, "", 2, 20},
    {PARTS LEG, STOCK "larch,2400,0,,,,\n", "only a leftover may cost nothing", 2, 12},
    {PARTS LEG, STOCK "larch,2400,,,,,\n", "expected the price of one here", 2, 12},
    {PARTS LEG, STOCK "larch,2400,9.95,,,plank,\n", "", 2, 19},
    {PARTS LEG, STOCK "larch,2400,9.95,,-1,,\n", "", 2, 18},
    {PARTS LEG, STOCK ",2400,9.95,,,,\n", "expected the name of the stock here", 2, 1},
    {PARTS LEG, STOCK BOARD "larch,2400,9.95,1220,,sheet,\n", "cannot be a board in this one", 2, 1},
    {PARTS LEG, STOCK "larch,2400,9.95,95,,,\nlarch,2400,9.95,120,,,\n", "another width in a row above", 3,
     17},
    {PARTS LEG, STOCK "ply,2440,48,,,sheet,\n" BOARD, "a sheet needs a width", 2, 13},
    {PARTS "a,ply,700,1,,,,\n", STOCK "ply,2440,48,1220,,sheet,\n", "a part from a sheet needs a width", 2,
     13},
    {PARTS "a,ply,700,1,300,mitre 45,,\n", STOCK "ply,2440,48,1220,,sheet,\n",
     "parts from sheets are cut square", 2, 17},
};

static void each_mistake_at_its_place(void **state) {
    (void)state;
    for (size_t i = 0; i < sizeof mistakes / sizeof *mistakes; i++) {
        sb_run run;
        sb_problem p;
        const mistake *m = &mistakes[i];
        assert_false(read_lists(&run, &p, m->parts, m->stock));
        assert_int_equal(sb_status(&run), 1);
        sb_position at = sb_place_position(sb_notices_place(&run, 0));
        if (!strstr(sb_notices_message(&run, 0), m->words) || at.line != m->line || at.column != m->column)
            print_error("mistake %zu: %s\n", i, sb_notices_text(&run, SB_NOTE, false));
        assert_non_null(strstr(sb_notices_message(&run, 0), m->words));
        assert_int_equal(at.line, m->line);
        assert_int_equal(at.column, m->column);
        sb_run_free(&run);
    }
}

static void all_mistakes_in_one_go(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    assert_false(
        read_lists(&run, &p, PARTS "leg,oak,700,4,,,,\nrail,larch,0,x,,,,\n", STOCK "larch,2400,free,,,,\n"));
    assert_int_equal(sb_notices_count(&run, SB_ERROR), 4);
    sb_run_free(&run);
}

static void a_file_that_is_not_there(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    write_file(parts_path, PARTS LEG);
    assert_false(sb_problem_read(&run, &p, parts_path, "/nowhere/stock.csv", mm(0), 2));
    assert_int_equal(sb_notices_count(&run, SB_ERROR),
                     1); /* the part is not blamed for a stock nobody could read */
    assert_false(sb_problem_read(&run, &p, folder, "/nowhere/stock.csv", mm(0), 2));
    sb_run_free(&run);
}

/* Read and planned: the whole way once. */
static void from_files_to_a_plan(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    read_well(&run, &p, "name,stock,length,count\npicket,larch,300,9\n",
              "stock,length,price,trim1,trim2\nlarch,2727,5,0,0\n");
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->cost.milli, 500000);
    assert_true(plan->proved);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(boards_in_any_order_of_columns),
        cmocka_unit_test(leftovers_and_limits),
        cmocka_unit_test(as_a_spreadsheet_saves_it),
        cmocka_unit_test(sheets_with_grain_and_turning),
        cmocka_unit_test(leftovers_alone),
        cmocka_unit_test(boards_that_were_measured),
        cmocka_unit_test(mistakes_in_measured_boards),
        cmocka_unit_test(a_label_stands_once),
        cmocka_unit_test(each_mistake_at_its_place),
        cmocka_unit_test(all_mistakes_in_one_go),
        cmocka_unit_test(a_file_that_is_not_there),
        cmocka_unit_test(from_files_to_a_plan),
    };
    return cmocka_run_group_tests(tests, make_folder, drop_folder);
}
