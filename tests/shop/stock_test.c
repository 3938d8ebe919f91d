/* stock.csv and grades.csv: what arrives, and what is wrong in each column. */
#include "bench.h"

static const sb_stock *stock_of(bench *b, const char *id) {
    const sb_stock *stock = sb_shop_stock(bench_read_sound(b), id);
    assert_non_null(stock);
    return stock;
}

static void a_board_arrives(void **state) {
    const sb_stock *slat = stock_of(*state, "slat");
    assert_string_equal(slat->title, "Larch slat");
    assert_string_equal(slat->material, "larch");
    assert_int_equal(slat->kind, SB_STOCK_BOARD);
    assert_string_equal(slat->grade->id, "outdoor");
    assert_int_equal(slat->thickness.nm, SB_MM(20).nm);
    assert_int_equal(slat->width.nm, SB_MM(95).nm);
    assert_int_equal(slat->nominal_width.nm, 0);
    assert_false(slat->sawn);
    assert_int_equal(slat->density, 590);
    assert_int_equal(slat->minimum, 6);
}

static void rows_keep_their_order_and_place(void **state) {
    bench *b = *state;
    const sb_shop *shop = bench_read_sound(b);
    assert_int_equal(shop->stock.count, 10);
    assert_string_equal(shop->stock.items[2]->id, "oak-sawn");
    assert_true(shop->stock.items[2]->sawn);
    assert_int_equal(sb_place_position(shop->stock.items[2]->place).line, 4);
}

static void a_title_left_out_is_the_name(void **state) {
    bench *b = *state;
    bench_spoil(b, "stock.csv", "Larch slat", "");
    assert_string_equal(stock_of(b, "slat")->title, "slat");
}

static void units_of_what_is_counted(void **state) {
    static const char *const units[] = {"", "", "", "", "ml", "mg", "mm", ""};
    (void)state;
    for (int kind = SB_STOCK_BOARD; kind <= SB_STOCK_OTHER; kind++)
        assert_string_equal(sb_stock_kind_unit((sb_stock_kind)kind), units[kind]);
}

/* 1 gal = 231 in3, 1 lb = 453.59237 g, 1 ft = 0.3048 m, 1 bf = 144 in3: exact unit relations (NIST SP 811). */
static void amounts_in_words(void **state) {
    static const struct {
        const char *stock;
        int64_t amount;
        const char *metric, *imperial;
    } table[] = {
        {"oil", 2500, "2.5 l", "0.66 gal"},
        {"oil", 3785, "3.79 l", "1 gal"},
        {"glue", 750000, "0.75 kg", "1.65 lb"},
        {"glue", 4535924, "4.54 kg", "10 lb"},
        {"oil", 4, "4 ml", "0.14 fl oz"},
        {"oil", 10, "0.01 l", "0.34 fl oz"},
        {"oil", 0, "0 l", "0 gal"},
        {"glue", 2900, "2.9 g", "0.1 oz"}, /* 1 oz = 28.349523125 g */
        {"glue", 1, "under 0.01 g", "under 0.01 oz"},
        {"edging", 50000, "50 m", "164.04 ft"},
        {"edging", 2, "2 mm", "0.08 in"},
        {"screw", 1200, "1200", "1200"},
        {"oak-random", INT64_C(1000000000000), "1.000 m3", "423.8 bf"},
        {"slat", 3, "3", "3"},
    };
    const sb_style metric = {SB_UNITS_MM, {500000}, false}, imperial = {SB_UNITS_IN, {1587500}, false};
    bench *b = *state;
    const sb_shop *shop = bench_read_sound(b);
    for (size_t i = 0; i < sizeof table / sizeof *table; i++) {
        const sb_stock *stock = sb_shop_stock(shop, table[i].stock);
        assert_string_equal(sb_stock_amount_text(&b->run, stock, table[i].amount, &metric), table[i].metric);
        assert_string_equal(sb_stock_amount_text(&b->run, stock, table[i].amount, &imperial),
                            table[i].imperial);
    }
}

/* litres = area x coats / coverage: 15 m2 at 12 m2/l take 1.25 l. A paint maker's consumption page. */
static void coverage_of_a_finish(void **state) {
    bench *b = *state;
    const sb_stock *oil = stock_of(b, "oil");
    int64_t fifteen_m2 = INT64_C(15000000000000); /* um2 */
    assert_int_equal(sb_mul_div(fifteen_m2, 1, oil->coverage.um2), 1250);
    assert_int_equal(oil->minimum, 1500);
}

/* 400 ft2 a gallon, one coat on 400 ft2 takes a gallon: stated coverage is for one coat. A finish seller's
 * how-to page. */
static void coverage_in_feet_and_gallons(void **state) {
    bench *b = *state;
    bench_spoil(b, "stock.csv", "12 m2/l", "400 ft2/gal");
    const sb_stock *oil = stock_of(b, "oil");
    int64_t four_hundred_ft2 = INT64_C(400) * 92903040000; /* 1 ft2 = 0.09290304 m2 */
    assert_int_equal(sb_mul_div(four_hundred_ft2, 1, oil->coverage.um2), 3785);
}

/* 40 lb per 1000 ft2 are 195.30 g/m2: unit relations of the pound and the foot (1959 agreement). */
static void spread_of_glue(void **state) {
    bench *b = *state;
    assert_int_equal(stock_of(b, "glue")->spread.mg, 180000);
    bench_again(b);
    bench_spoil(b, "stock.csv", "180 g/m2", "40 lb/1000 ft2");
    assert_int_equal(stock_of(b, "glue")->spread.mg, 195297);
}

static void grades_say_of_what(void **state) {
    bench *b = *state;
    const sb_shop *shop = bench_read_sound(b);
    assert_int_equal(shop->grades.count, 3);
    assert_int_equal(shop->grades.items[0].basis, SB_ADDED_TO_NET);
    assert_int_equal(shop->grades.items[0].defect.ppm, 50000);
    assert_int_equal(shop->grades.items[1].basis, SB_LOST_OF_BOUGHT);
    assert_int_equal(shop->grades.items[2].defect.ppm, 0);
}

static void mistakes_in_stock(void **state) {
    static const bench_case cases[] = {
        {"stock.csv", "disc,other", "disc,othre", "stock.csv:11:20", "other"},
        {"stock.csv", "disc,other", "disc,", "stock.csv:11:20", "`kind` is empty"},
        {"stock.csv", "larch,outdoor", "larch,outdor", "stock.csv:2:29", "outdoor"},
        {"stock.csv", "outdoor,20,95", "outdoor,0,95", "stock.csv:2:37", "above zero"},
        {"stock.csv", "outdoor,20,95", "outdoor,-20,95", "stock.csv:2:37", "length"},
        {"stock.csv", "outdoor,20,95", "outdoor,,95", "stock.csv:2:37", "`thickness` is empty"},
        {"stock.csv", "outdoor,20,95", "outdoor,20,", "stock.csv:2:40", "`width` is empty"},
        {"stock.csv", "outdoor,20,95", "outdoor,20,95 kg", "stock.csv:2:40", "a mass"},
        {"stock.csv", "outdoor,20,95", "outdoor,twenty,95", "stock.csv:2:37", "length"},
        {"stock.csv", "outdoor,20,95", "outdoor,nan,95", "stock.csv:2:37", "length"},
        {"stock.csv", "outdoor,20,95", "outdoor,2e9,95", "stock.csv:2:37", "length"},
        {"stock.csv", "outdoor,20,95", "outdoor,20,2000000", "stock.csv:2:40", "1 km"},
        {"stock.csv", ",2 in,4 in", ",1 in,4 in", "stock.csv:3:42", "below the actual"},
        {"stock.csv", ",2 in,4 in", ",2 in,3 in", "stock.csv:3:47", "below the actual"},
        {"stock.csv", "95,,,planed", "95,,,plained", "stock.csv:2:45", "planed"},
        {"stock.csv", ",590,", ",0.59,", "stock.csv:2:52", "whole"},
        {"stock.csv", ",590,", ",5900,", "stock.csv:2:52", "kg/m3"},
        {"stock.csv", ",590,", ",0,", "stock.csv:2:52", "between 100 and 1300"},
        {"stock.csv", "12 m2/l", "", "stock.csv:8:29", "`coverage` is empty"},
        {"stock.csv", "12 m2/l", "12 l/m2", "stock.csv:8:29", "12 m2/l"},
        {"stock.csv", "12 m2/l", "12", "stock.csv:8:29", "12 m2/l"},
        {"stock.csv", "12 m2/l", "0 m2/l", "stock.csv:8:29", "12 m2/l"},
        {"stock.csv", "180 g/m2", "180 ml/m2", "stock.csv:9:34", "180 g/m2"},
        {"stock.csv", "oak,,0.5,22,,,,,,,", "oak,,0.5,22,,,,,12 m2/l,,", "stock.csv:10:42",
         "it is for finishes"},
        {"stock.csv", "fixing,,,,,", "fixing,,,20,,", "stock.csv:7:29", "timber, sheets and edging"},
        {"stock.csv", "oak,rough,27,", "oak,rough,27,150", "stock.csv:5:43", "random widths"},
        {"stock.csv", ",,,200", ",,,many", "stock.csv:7:37", "not a number"},
        {"stock.csv", ",,,200", ",,,2.5", "stock.csv:7:37", "a whole number"},
        {"stock.csv", ",,1.5 l", ",,1.5 m", "stock.csv:8:38", "a volume"},
        {"stock.csv", ",,1.5 l", ",,1.5 kg", "stock.csv:8:38", "density"},
    };
    BENCH_CASES(*state, cases);
}

/* What follows from a name that cannot be used: its prices belong to nothing. */
static void mistakes_in_names(void **state) {
    static const struct {
        const char *fresh, *words;
    } names[] = {{"two words,Abr", "one word"},
                 {"4 mm,Abr", "one word"},
                 {",Abr", "`stock` is empty"},
                 {"screw,Abr", "stands twice: first at"}};
    bench *b = *state;
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        bench_again(b);
        bench_spoil(b, "stock.csv", "disc,Abr", names[i].fresh);
        bench_read(b);
        bench_told(b, "stock.csv:11:1", names[i].words);
        bench_told(b, "prices.csv:16:1", "unknown stock \"disc\"");
        assert_int_equal(sb_notices_count(&b->run, SB_NOTE), 2);
    }
}

/* A faulty header is told, and not every row that follows from it. */
static void mistakes_in_headers(void **state) {
    bench *b = *state;
    bench_spoil(b, "stock.csv", "grade,thickness", "grade,thicknes");
    bench_spoil(b, "grades.csv", "defect", "defekt");
    bench_put(b, "shop.txt", sb_pool_print(b->run.pool, "%sreplace plank by slat\n", bench_texts[0]));
    bench_read(b);
    bench_told(b, "stock.csv:1:1", "\"thickness\" is missing");
    bench_told(b, "stock.csv:1:33", "\"thickness\"");
    bench_told(b, "grades.csv:1:1", "\"defect\" is missing");
    bench_told(b, "grades.csv:1:13", "\"defect\"");
    assert_int_equal(sb_notices_count(&b->run, SB_NOTE), 4);
}

static void mistakes_in_grades(void **state) {
    static const bench_case cases[] = {
        {"grades.csv", "clear,Clear", "rough,Clear", "grades.csv:4:1", "stands twice"},
        {"grades.csv", "clear,Clear", ",Clear", "grades.csv:4:1", "`grade` is empty"},
        {"grades.csv", "5 %,added-to-net", "5 %,", "grades.csv:2:27", "`basis` is empty"},
        {"grades.csv", "5 %,added-to-net", "5 %,added-to-gross", "grades.csv:2:27", "added-to-net"},
        {"grades.csv", "5 %,added-to-net", "5 mm,added-to-net", "grades.csv:2:23", "a length"},
        {"grades.csv", "5 %,added-to-net", "-5 %,added-to-net", "grades.csv:2:23", "not below zero"},
        {"grades.csv", "5 %,added-to-net", "2000 %,added-to-net", "grades.csv:2:23", "1000 %"},
        {"grades.csv", "30 %,lost", "100 %,lost", "grades.csv:3:17", "leaves no wood"},
    };
    BENCH_CASES(*state, cases);
}

/* One mistake in a row does not hide another, and prices of the row are not held against it. */
static void all_mistakes_of_a_row(void **state) {
    bench *b = *state;
    bench_spoil(b, "stock.csv", "slat,Larch slat,board,larch,outdoor,20,95,,,planed,590,,,6",
                "slat,Larch slat,board,larch,indoor,0,,,,shiny,many,,,-1");
    bench_read(b);
    bench_told(b, "stock.csv:2:29", "indoor");
    bench_told(b, "stock.csv:2:36", "above zero");
    bench_told(b, "stock.csv:2:38", "`width` is empty");
    bench_told(b, "stock.csv:2:41", "shiny");
    bench_told(b, "stock.csv:2:47", "not a number");
    bench_told(b, "stock.csv:2:54", "");
    assert_int_equal(sb_notices_count(&b->run, SB_NOTE), 6);
}

static void a_header_alone_has_no_stock(void **state) {
    bench *b = *state;
    bench_put(b, "stock.csv", "stock,kind,thickness,width\n\n,,,\n");
    bench_put(b, "prices.csv", "stock,merchant,length,price,per\n");
    bench_remove(b, "rack.csv");
    bench_remove(b, "measured.csv");
    assert_int_equal(bench_read_sound(b)->stock.count, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(a_board_arrives),
        AT_BENCH(rows_keep_their_order_and_place),
        AT_BENCH(a_title_left_out_is_the_name),
        AT_BENCH(units_of_what_is_counted),
        AT_BENCH(amounts_in_words),
        AT_BENCH(coverage_of_a_finish),
        AT_BENCH(coverage_in_feet_and_gallons),
        AT_BENCH(spread_of_glue),
        AT_BENCH(grades_say_of_what),
        AT_BENCH(mistakes_in_stock),
        AT_BENCH(mistakes_in_names),
        AT_BENCH(mistakes_in_headers),
        AT_BENCH(mistakes_in_grades),
        AT_BENCH(all_mistakes_of_a_row),
        AT_BENCH(a_header_alone_has_no_stock),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
