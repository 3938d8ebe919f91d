/* operations.csv and rack.csv, what leftovers and labour are worth, and settings that would earn money. */
#include "bench.h"

static void operations_arrive(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    const sb_operation *crosscut = sb_shop_operation(shop, "crosscut");
    assert_string_equal(crosscut->title, "Crosscut");
    assert_int_equal(crosscut->time.ms, 21000); /* 0.35 min */
    assert_int_equal(crosscut->driver, SB_BY_CUT);
    assert_string_equal(crosscut->worker->id, "bench"); /* the first one */
    assert_ptr_equal(sb_shop_driven(shop, SB_BY_CUT), crosscut);
    assert_null(sb_shop_driven(shop, SB_BY_RIP));
    assert_true(sb_shop_operation(shop, "office")->always);
    assert_string_equal(sb_shop_operation(shop, "office")->worker->id, "office");
    assert_null(sb_shop_operation(shop, "offices"));
}

static void every_driver_has_its_word(void **state) {
    static const char *const words[SB_DRIVER_COUNT] = {
        "board",  "change",    "stop",  "cut", "hard-cut", "rip",  "sheet", "fence",
        "return", "sheet-cut", "joint", "m",   "m2",       "part", "piece", "batch",
        "each"};
    bench *b = *state;
    for (int i = 0; i < SB_DRIVER_COUNT; i++) {
        assert_string_equal(sb_driver_word((sb_driver)i), words[i]);
        bench_again(b);
        bench_put(b, "operations.csv",
                  sb_pool_print(b->run.pool, "operation,minutes,per\na,2,%s\n", words[i]));
        assert_int_equal(sb_shop_operation(bench_read_sound(b), "a")->driver, i);
    }
}

/* 12 min at 42.00 an hour: 8.40. 20 s: 0.23333 */
static void labour(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    const sb_worker *worker = &shop->settings.workers.items[0];
    assert_int_equal(sb_labour_cost((sb_duration){12 * 60000}, worker).milli, 840000);
    assert_int_equal(sb_labour_cost((sb_duration){20000}, worker).milli, 23333);
}

static void mistakes_in_operations(void **state) {
    static const bench_case cases[] = {
        {"operations.csv", "assemble,Ass", "crosscut,Ass", "operations.csv:3:1", "stands twice"},
        {"operations.csv", "assemble,Ass", "as semble,Ass", "operations.csv:3:1", "one word"},
        {"operations.csv", "0.35,cut", ",cut", "operations.csv:2:19", "`minutes` is empty"},
        {"operations.csv", "0.35,cut", "-0.35,cut", "operations.csv:2:19", "less than no time"},
        {"operations.csv", "0.35,cut", "3 mm,cut", "operations.csv:2:19", "a length"},
        {"operations.csv", "0.35,cut", "0.35,", "operations.csv:2:24", "`per` is empty"},
        {"operations.csv", "0.35,cut", "0.35,cuts", "operations.csv:2:24", "did you mean \"cut\""},
        {"operations.csv", "1,each,bench", "1,cut,bench", "operations.csv:3:21", "stands twice: first at"},
        {"operations.csv", "1,each,bench", "1,each,bank", "operations.csv:3:26", "unknown worker"},
        {"operations.csv", "1,each,bench,", "1,each,bench,maybe", "operations.csv:3:32", "yes"},
        {"operations.csv", "1,each,bench,", "1,each,bench,yes", "operations.csv:3:32", "only work per batch"},
    };
    BENCH_CASES(*state, cases);
}

#define RANGED "operation,minutes,per,least,most,learning\n"

static void ranges_and_learning_arrive(void **state) {
    bench *b = *state;
    bench_put(b, "operations.csv",
              RANGED "sand,6,m2,5,9,\nfit,2,joint,,3,90 %\nplane,1,m,,,\nrub,1,m,1,1,\n");
    const sb_shop *shop = bench_read_sound(b);
    const sb_operation *sand = sb_shop_operation(shop, "sand"), *fit = sb_shop_operation(shop, "fit");
    assert_true(sand->ranged && fit->ranged);
    assert_int_equal(sand->least.ms, 300000);
    assert_int_equal(sand->most.ms, 540000);
    assert_int_equal(sand->learning.ppm, 0);
    assert_int_equal(fit->least.ms, 120000); /* not told: the likely time */
    assert_int_equal(fit->learning.ppm, 900000);
    assert_false(sb_shop_operation(shop, "plane")->ranged || sb_shop_operation(shop, "rub")->ranged);
}

static void mistakes_in_ranges_and_learning(void **state) {
    static const struct {
        const char *row, *place, *words;
    } cases[] = {
        {"sand,6,m2,7,9,\n", "operations.csv:2:11", "below the likely one"},
        {"sand,6,m2,-1,9,\n", "operations.csv:2:11", "from 0"},
        {"sand,6,m2,5,5.9,\n", "operations.csv:2:13", "above the likely one"},
        {"sand,6,m2,5,soon,\n", "operations.csv:2:13", "soon"},
        {"sand,6,m2,,,40 %\n", "operations.csv:2:13", "from 50 %"},
        {"sand,6,m2,,,101 %\n", "operations.csv:2:13", "to 100 %"},
        {"office,6,batch,,,90 %\n", "operations.csv:2:18", "work per batch"},
        {"saw,6,cut,,,90 %\n", "operations.csv:2:13", "work per cut"},
    };
    bench *b = *state;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        bench_again(b);
        bench_put(b, "operations.csv", sb_pool_print(b->run.pool, RANGED "%s", cases[i].row));
        bench_read(b);
        bench_told(b, cases[i].place, cases[i].words);
        assert_int_equal(sb_notices_count(&b->run, SB_ERROR), 1);
    }
}

/* ---- the rack ---- */

static void the_rack_arrives(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    assert_int_equal(shop->rack.count, 5);
    const sb_rack_item *board = &shop->rack.items[0], *oil = &shop->rack.items[4];
    assert_string_equal(board->label, "L1");
    assert_string_equal(board->stock->id, "slat");
    assert_int_equal(board->length.nm, SB_MM(2280).nm);
    assert_int_equal(board->width.nm, SB_MM(95).nm);
    assert_int_equal(board->count, 2);
    assert_int_equal(board->value.minor, SB_BAD);
    assert_int_equal(shop->rack.items[1].value.minor, 200);
    assert_int_equal(shop->rack.items[2].width.nm, SB_MM(600).nm);
    assert_int_equal(shop->rack.items[3].count, 140);
    assert_int_equal(oil->count, 600); /* ml */
    assert_int_equal(oil->length.nm, 0);
}

static void one_piece_needs_no_count(void **state) {
    bench *b = *state;
    bench_remove(b, "measured.csv");
    bench_put(b, "rack.csv", "label,stock,length\nL1,slat,1 m\nB1,screw,\n");
    const sb_shop *shop = bench_read_sound(b);
    assert_int_equal(shop->rack.items[0].count, 1);
    assert_int_equal(shop->rack.items[1].count, 1);
}

static void no_rack_is_an_empty_rack(void **state) {
    bench *b = *state;
    bench_remove(b, "rack.csv");
    bench_remove(b, "measured.csv");
    assert_int_equal(bench_read_sound(b)->rack.count, 0);
}

static void any_other_file_is_needed(void **state) {
    bench *b = *state;
    for (int i = 0; i < BENCH_FILES - 2; i++) { /* but rack.csv and measured.csv */
        bench_again(b);
        bench_remove(b, bench_files[i]);
        bench_read(b);
        assert_false(sb_ok(&b->run));
        assert_non_null(strstr(sb_notices_text(&b->run, SB_ERROR, false), bench_files[i]));
        assert_int_equal(sb_notices_count(&b->run, SB_ERROR), 1);
    }
}

/* The slat costs least at South's, 7.45 for 3 m = 2.48333 a metre; 60 % of that is 1.49 a metre. */
static void leftovers_of_boards(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    const sb_stock *slat = sb_shop_stock(shop, "slat");
    assert_int_equal(sb_shop_leftover_rate(shop, slat).milli, 148999); /* rounded down, twice */
    assert_int_equal(sb_shop_leftover_value(shop, slat, SB_MM(2000), SB_MM(95)).milli, 297998);
    assert_int_equal(sb_shop_leftover_value(shop, slat, SB_MM(600), SB_MM(95)).milli, 89399);
    assert_int_equal(sb_shop_leftover_value(shop, slat, (sb_length){SB_MM(600).nm - 1}, SB_MM(95)).milli, 0);
}

/* The whole sheet costs least by area, 78.00 for 3.125 m2 = 24.96 a square metre; 60 % of that is 14.976. */
static void leftovers_of_sheets(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    const sb_stock *ply = sb_shop_stock(shop, "ply-18");
    assert_int_equal(sb_shop_leftover_rate(shop, ply).milli, 1497600);
    assert_int_equal(sb_shop_leftover_value(shop, ply, SB_MM(1000), SB_MM(500)).milli, 748800);
    assert_int_equal(sb_shop_leftover_value(shop, ply, SB_MM(300), SB_MM(600)).milli, 269568); /* turned */
    assert_int_equal(sb_shop_leftover_value(shop, ply, SB_MM(2000), SB_MM(299)).milli, 0);
    assert_int_equal(
        sb_shop_leftover_value(shop, sb_shop_stock(shop, "screw"), SB_MM(1000), SB_MM(1000)).milli, 0);
}

/* No offer can be cut into leftovers that are worth more than it costs. */
static void leftovers_never_pay_for_a_board(void **state) {
    bench *b = *state;
    bench_remove(b, "rack.csv");
    bench_remove(b, "measured.csv");
    bench_spoil(b, "shop.txt", "60 % of new", "100 % of new");
    const sb_shop *shop = bench_read_sound(b);
    for (size_t i = 0; i < shop->stock.count; i++)
        for (size_t j = 0; j < shop->stock.items[i]->offers.count; j++) {
            const sb_offer *offer = &shop->stock.items[i]->offers.items[j];
            assert_true(
                sb_shop_leftover_value(shop, shop->stock.items[i], offer->length, offer->width).milli <=
                offer->each.milli);
        }
}

static void mistakes_in_the_rack(void **state) {
    static const bench_case cases[] = {
        {"rack.csv", "L2,slat", "L1,slat", "rack.csv:3:1", "stands twice: first at"},
        {"rack.csv", "L2,slat", ",slat", "rack.csv:3:1", "`label` is empty"},
        {"rack.csv", "L2,slat", "L2,slatt", "rack.csv:3:4", "did you mean \"slat\""},
        {"rack.csv", "L2,slat", "L2,", "rack.csv:3:4", "`stock` is empty"},
        {"rack.csv", "2280 mm", "", "rack.csv:2:9", "`length` is empty"},
        {"rack.csv", "2280 mm", "0 mm", "rack.csv:2:9", "above zero"},
        {"rack.csv", "2280 mm,", "2280 mm,60", "rack.csv:2:17", "another stock"},
        {"rack.csv", "1250,600,1,", "1250,,1,", "rack.csv:4:16", "`width` is empty"},
        {"rack.csv", "2280 mm,,2", "2280 mm,,0", "rack.csv:2:18", "at least 1"},
        {"rack.csv", "2280 mm,,2", "2280 mm,,two", "rack.csv:2:18", ""},
        {"rack.csv", "screw,,,140", "screw,1 m,,140", "rack.csv:5:10", "boards and sheets"},
        {"rack.csv", "0.6 l", "", "rack.csv:6:10", "`count` is empty"},
        {"rack.csv", "0.6 l", "0.6 m", "rack.csv:6:10", "a volume"},
        {"rack.csv", "0.6 l,", "0.6 l,3.00", "rack.csv:6:16", "at the price it costs new"},
        {"rack.csv", "1,2.00", "1,-2.00", "rack.csv:3:16", ""},
        {"rack.csv", "1,2.00", "1,2.001", "rack.csv:3:16", "money"},
        /* a metre costs 2.48 new and is credited 1.49 */
        {"rack.csv", "1,2.00", "1,2.49", "rack.csv:3:16", "costs 2.48 new"},
        {"rack.csv", "1,2.00", "1,1.48", "rack.csv:3:16", "credited 1.49"},
        {"rack.csv", "1,18.00", "1,18.73", "rack.csv:4:22", "costs 18.72 new"},
        {"rack.csv", "140,0.10", "140,0.12", "rack.csv:5:16", "costs 0.11 new"},
        {"rack.csv", "B1,screw,,,140,0.10", "B1,oak-random,,,1,", "rack.csv:5:4", "sold by volume"},
    };
    BENCH_CASES(*state, cases);
}

/* ---- measured boards ---- */

static void measured_boards_arrive(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    const sb_rack_item *board = &shop->rack.items[1];
    assert_string_equal(board->label, "L2");
    assert_true(board->measured);
    assert_int_equal(board->bad.count, 2);
    assert_int_equal(board->bad.items[0].from.nm, SB_MM(300).nm);
    assert_int_equal(board->bad.items[0].to.nm, SB_MM(340).nm);
    assert_false(board->bad.items[0].split);
    assert_int_equal(board->bad.items[1].from.nm, SB_MM(940).nm);
    assert_true(board->bad.items[1].split);
    assert_false(shop->rack.items[0].measured);
}

/* A line with its label alone. */
static void a_board_without_a_fault(void **state) {
    bench *b = *state;
    bench_put(b, "measured.csv", "board,from,to,kind\nL2\n");
    const sb_shop *shop = bench_read_sound(b);
    assert_true(shop->rack.items[1].measured);
    assert_int_equal(shop->rack.items[1].bad.count, 0);
}

static void mistakes_in_measured_boards(void **state) {
    static const bench_case cases[] = {
        {"measured.csv", "L2,940", "L3,940", "measured.csv:2:1", "did you mean"},
        {"measured.csv", "L2,940", ",940", "measured.csv:2:1", "expected the label of a board"},
        {"measured.csv", "L2,940", "L1,940", "measured.csv:2:1", "there are 2 of \"L1\""},
        {"measured.csv", "L2,940", "S1,940", "measured.csv:2:1", "only boards are measured"},
        {"measured.csv", "L2,940", "L2,-940", "measured.csv:2:4", "none is below nothing"},
        {"measured.csv", "L2,940", "L2,", "measured.csv:2:4", "where the stretch begins"},
        {"measured.csv", "940,1000 mm", "940,940", "measured.csv:2:8", "ends behind its beginning"},
        {"measured.csv", "940,1000 mm", "940,930", "measured.csv:2:8", "ends behind its beginning"},
        {"measured.csv", "940,1000 mm", "940,1000.1", "measured.csv:2:8", "only 1000 mm long"},
        {"measured.csv", "940,1000 mm", "940,", "measured.csv:2:8", "where the stretch ends"},
        {"measured.csv", "mm,split", "mm,crack", "measured.csv:2:16", "crack"},
        {"measured.csv", "mm,split", "mm,", "measured.csv:2:16", "knot or split"},
    };
    BENCH_CASES(*state, cases);
}

/* A row of the rack that could not be read may be the one that a line means. */
static void a_mistake_in_the_rack_is_told_once(void **state) {
    bench *b = *state;
    bench_spoil(b, "rack.csv", "L2,slat", "L2,slatt");
    bench_read(b);
    assert_int_equal(sb_notices_count(&b->run, SB_ERROR), 1);
}

static void the_limits_of_a_value_are_allowed(void **state) {
    static const char *const values[] = {"1,2.48", "1,1.49"};
    bench *b = *state;
    for (size_t i = 0; i < 2; i++) {
        bench_again(b);
        bench_spoil(b, "rack.csv", "1,2.00", values[i]);
        bench_read_sound(b);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(operations_arrive),
        AT_BENCH(every_driver_has_its_word),
        AT_BENCH(labour),
        AT_BENCH(mistakes_in_operations),
        AT_BENCH(ranges_and_learning_arrive),
        AT_BENCH(mistakes_in_ranges_and_learning),
        AT_BENCH(the_rack_arrives),
        AT_BENCH(one_piece_needs_no_count),
        AT_BENCH(no_rack_is_an_empty_rack),
        AT_BENCH(any_other_file_is_needed),
        AT_BENCH(leftovers_of_boards),
        AT_BENCH(leftovers_of_sheets),
        AT_BENCH(leftovers_never_pay_for_a_board),
        AT_BENCH(mistakes_in_the_rack),
        AT_BENCH(the_limits_of_a_value_are_allowed),
        AT_BENCH(measured_boards_arrive),
        AT_BENCH(a_board_without_a_fault),
        AT_BENCH(mistakes_in_measured_boards),
        AT_BENCH(a_mistake_in_the_rack_is_told_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
