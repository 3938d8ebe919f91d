/* prices.csv: what one board, sheet or pack costs, exactly; and what is wrong in each column. */
#include "bench.h"

static const sb_offer *offer_of(const sb_shop *shop, const char *id, size_t index) {
    const sb_stock *stock = sb_shop_stock(shop, id);
    assert_non_null(stock);
    assert_true(index < stock->offers.count);
    return &stock->offers.items[index];
}

/* Of the bench's shop with one price row changed: what one costs, in thousandths of a cent. */
static int64_t each_of(bench *b, const char *old, const char *fresh, const char *id, size_t index) {
    bench_again(b);
    bench_remove(b, "rack.csv");
    bench_remove(b, "measured.csv");
    bench_spoil(b, "prices.csv", old, fresh);
    return offer_of(bench_read_sound(b), id, index)->each.milli;
}

static void an_offer_arrives(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    const sb_offer *offer = offer_of(shop, "slat", 2);
    assert_string_equal(offer->merchant, "South");
    assert_int_equal(offer->length.nm, SB_MM(3000).nm);
    assert_int_equal(offer->each.milli, 745000);
    assert_int_equal(offer->pack, 1);
    assert_int_equal(offer->available, 24);
    assert_int_equal(offer->date.month, 1);
    assert_int_equal(offer->date.day, 19);
    assert_int_equal(offer->trim1.nm, SB_BAD);
    assert_int_equal(offer_of(shop, "slat", 0)->available, -1);
    assert_int_equal(offer_of(shop, "2x4-fir", 0)->date.year, 0);
    assert_int_equal(offer_of(shop, "oak-sawn", 0)->trim1.nm, SB_MM(40).nm);
    assert_int_equal(offer_of(shop, "oak-sawn", 0)->trim2.nm, 0);
    assert_int_equal(offer_of(shop, "ply-18", 1)->width.nm, SB_MM(600).nm);
}

static void packs_are_counted_in_the_unit_of_the_kind(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    assert_int_equal(offer_of(shop, "screw", 0)->pack, 200);
    assert_int_equal(offer_of(shop, "oil", 0)->pack, 2500);
    assert_int_equal(offer_of(shop, "glue", 0)->pack, 1000000);
    assert_int_equal(offer_of(shop, "glue", 1)->pack, 825000); /* 750 ml at 1100 kg/m3 */
    assert_int_equal(offer_of(shop, "edging", 0)->pack, 50000);
    assert_int_equal(offer_of(shop, "oak-random", 0)->pack, 0);
}

static void packs_cost_what_they_hold(void **state) {
    const sb_shop *shop = bench_read_sound(*state);
    assert_int_equal(offer_of(shop, "screw", 0)->each.milli, 2350000);
    assert_int_equal(offer_of(shop, "oil", 1)->each.milli, 1800000);    /* 0.75 l at 24.00 per l */
    assert_int_equal(offer_of(shop, "edging", 0)->each.milli, 4800000); /* 50 m at 0.96 per m */
    assert_int_equal(offer_of(shop, "disc", 0)->each.milli, 2400000);   /* 50 at 0.48 each */
    assert_int_equal(offer_of(shop, "oak-random", 0)->each.milli, 265000000);
}

/* Board feet go by nominal thickness and width and actual length: a 2x4 of 8 ft holds 5 1/3, a 2x8 of 16 ft
 * 21 1/3, a 1x8 of 10 ft 6 2/3 board feet (American Softwood Lumber Standard PS 20; NHLA's formula, in x in x
 * ft / 12, gives the same). */
static void board_feet(void **state) {
    bench *b = *state;
    assert_int_equal(offer_of(bench_read_sound(b), "2x4-fir", 0)->each.milli, 533333);
    bench_again(b);
    bench_spoil(b, "stock.csv", "1 1/2 in,3 1/2 in,2 in,4 in", "1 1/2 in,7 1/4 in,2 in,8 in");
    bench_spoil(b, "prices.csv", "8 ft", "16 ft");
    assert_int_equal(offer_of(bench_read_sound(b), "2x4-fir", 0)->each.milli, 2133333);
    bench_again(b);
    bench_spoil(b, "stock.csv", "1 1/2 in,3 1/2 in,2 in,4 in", "3/4 in,7 1/4 in,1 in,8 in");
    bench_spoil(b, "prices.csv", "8 ft", "10 ft");
    assert_int_equal(offer_of(bench_read_sound(b), "2x4-fir", 0)->each.milli, 666667);
}

static void by_length_area_and_volume(void **state) {
    bench *b = *state;
    assert_int_equal(each_of(b, "3.6 m,,9.20,each", "3.6 m,,2.55,m", "slat", 1), 918000);
    assert_int_equal(each_of(b, "3.6 m,,9.20,each", "3.6 m,,27.00,m2", "slat", 1), 923400);   /* 0.342 m2 */
    assert_int_equal(each_of(b, "3.6 m,,9.20,each", "3.6 m,,1250.00,m3", "slat", 1), 855000); /* 0.00684 m3 */
    assert_int_equal(each_of(b, "8 ft,,1.00,bf", "8 ft,,0.98,ft", "2x4-fir", 0), 784000);
    assert_int_equal(each_of(b, "2500,1250,78.00,each", "2500,1250,24.96,m2", "ply-18", 0),
                     7800000); /* 3.125 m2 */
    /* 4 ft x 8 ft is 32 ft2: the usual North American sheet */
    assert_int_equal(each_of(b, "2500,1250,78.00,each", "8 ft,4 ft,1.68,ft2", "ply-18", 0), 5376000);
}

/* 1 gal = 231 in3 and 1 lb = 453.59237 g exactly (NIST SP 811): a gallon at so much a gallon costs just that.
 */
static void by_gallon_and_pound(void **state) {
    bench *b = *state;
    assert_int_equal(each_of(b, "24.00,l,750 ml", "52.00,gal,1 gal", "oil", 1), 5200000);
    assert_int_equal(each_of(b, "24.00,l,750 ml", "52.00,gal,1/4 gal", "oil", 1), 1300000);
    assert_int_equal(each_of(b, "12.90,pack,1 kg", "5.00,lb,1 lb", "glue", 0), 500000);
    assert_int_equal(each_of(b, "12.90,pack,1 kg", "5.00,kg,1 lb", "glue", 0), 226796); /* 0.45359237 kg */
    assert_int_equal(each_of(b, "0.96,m,50 m", "0.34,ft,250 ft", "edging", 0), 8500000);
}

/* More decimals than the currency has are kept until a line is rounded: EN 16931, where a unit price may have
 * them. */
static void prices_with_four_decimals(void **state) {
    bench *b = *state;
    assert_int_equal(each_of(b, "0.48,each,50", "0.1212,each,100", "disc", 0), 1212000);
}

/* ISO 4217 table A.1: JPY has no minor unit, KWD three digits of it. */
static void minor_units_of_the_currency(void **state) {
    bench *b = *state;
    bench_remove(b, "rack.csv");
    bench_remove(b, "measured.csv");
    bench_spoil(b, "shop.txt", "currency    EUR", "currency KWD");
    assert_int_equal(offer_of(bench_read_sound(b), "slat", 0)->each.milli, 7650000);
}

static void one_length_at_two_merchants(void **state) {
    bench *b = *state;
    bench_spoil(b, "prices.csv", "slat,South,3 m,,7.45,each,,24", "slat,South,3 m,,7.45,each,,");
    assert_int_equal(sb_shop_stock(bench_read_sound(b), "slat")->offers.count, 3);
    bench_again(b); /* the first few cheaper, the rest dearer */
    bench_spoil(b, "prices.csv", "slat,South,3 m,,7.45,each,,24", "slat,North,3 m,,7.45,each,,24");
    assert_int_equal(sb_shop_stock(bench_read_sound(b), "slat")->offers.count, 3);
}

static void put_range(bench *b, const char *range) {
    const char *text = bench_swap(b, bench_text("prices.csv"), "trim1,trim2\n", "trim1,trim2,least,most\n");
    const char *row = sb_pool_print(b->run.pool, "100.00,m2,,,,40 mm,0,%s\n", range);
    bench_put(b, "prices.csv", bench_swap(b, text, "100.00,m2,,,,40 mm,0\n", row));
}

static void a_range_of_prices(void **state) {
    bench *b = *state;
    put_range(b, "95.00,130.00");
    const sb_offer *oak = &sb_shop_stock(bench_read_sound(b), "oak-sawn")->offers.items[0];
    assert_true(oak->ranged);
    assert_int_equal(oak->each.milli, 4320000); /* 2.4 m x 0.18 m at 100.00 */
    assert_int_equal(oak->least.milli, 4104000);
    assert_int_equal(oak->most.milli, 5616000);
    assert_false(sb_shop_stock(bench_read_sound(b), "slat")->offers.items[0].ranged);
    bench_again(b);
    put_range(b, "105.00,90.00");
    bench_read(b);
    bench_told(b, "prices.csv:6:44", "below the likely one");
    bench_told(b, "prices.csv:6:51", "above the likely one");
}

static void mistakes(void **state) {
    static const bench_case cases[] = {
        {"prices.csv", "disc,Iron", "disk,Iron", "prices.csv:16:1", "did you mean \"disc\""},
        {"prices.csv", "disc,Iron", ",Iron", "prices.csv:16:1", "`stock` is empty"},
        {"prices.csv", "disc,Iron", "disc,", "prices.csv:16:6", "`merchant` is empty"},
        {"prices.csv", "3.6 m,,9.20", ",,9.20", "prices.csv:3:12", "`length` is empty"},
        {"prices.csv", "3.6 m,,9.20", "0,,9.20", "prices.csv:3:12", "above zero"},
        {"prices.csv", "3.6 m,,9.20", "3.6 l,,9.20", "prices.csv:3:12", "a volume"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,95,9.20", "prices.csv:3:18", "stands in stock.csv"},
        {"prices.csv", "2500,1250,78.00", "2500,,78.00", "prices.csv:8:19", "`width` is empty"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,,", "prices.csv:3:19", "`price` is empty"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,,0", "prices.csv:3:19", "above zero"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,,-9.20", "prices.csv:3:19", "above zero"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,,cheap", "prices.csv:3:19", "not a number"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,,inf", "prices.csv:3:19", "not a number"},
        {"prices.csv", "3.6 m,,9.20", "3.6 m,,99999999999999999999", "prices.csv:3:19", ""},
        {"prices.csv", "9.20,each", "9.20,", "prices.csv:3:24", "`per` is empty"},
        {"prices.csv", "9.20,each", "9.20,eahc", "prices.csv:3:24", "did you mean \"each\""},
        {"prices.csv", "9.20,each", "9.20,l", "prices.csv:3:24", "each, m, ft, m2, ft2, m3, bf"},
        {"prices.csv", "2650.00,m3", "2650.00,m2", "prices.csv:7:28", "expected m3, bf"},
        {"prices.csv", "2650.00,m3", "0.000001,bf", "prices.csv:7:20", "comes to nothing"},
        {"prices.csv", "pack,200", "pack,0", "prices.csv:10:25", "above zero"},
        {"prices.csv", "pack,200", "pack,-200", "prices.csv:10:25", "above zero"},
        {"prices.csv", "pack,200", "pack,2.5", "prices.csv:10:25", "a whole number"},
        {"prices.csv", "pack,2.5 l", "pack,", "prices.csv:11:23", "`pack` is empty"},
        {"prices.csv", "pack,2.5 l", "pack,2.5", "prices.csv:11:23", "a volume"},
        {"prices.csv", "pack,2.5 l", "pack,2.5 kg", "prices.csv:11:23", "needs a density"},
        {"prices.csv", "pack,1 kg", "pack,1 m", "prices.csv:13:24", "a weight"},
        {"prices.csv", "m,50 m", "m,50 m2", "prices.csv:15:23", "a length"},
        {"prices.csv", "9.20,each,", "9.20,each,10", "prices.csv:3:29", "one by one"},
        {"prices.csv", "24,2026-01-19", "-1,2026-01-19", "prices.csv:4:28", ""},
        {"prices.csv", "24,2026-01-19", "2.5,2026-01-19", "prices.csv:4:28", "whole"},
        {"prices.csv", "24,2026-01-19", "24,2026-02-30", "prices.csv:4:31", "date"},
        {"prices.csv", "24,2026-01-19", "24,19.1.2026", "prices.csv:4:31", "date"},
        {"prices.csv", "40 mm,0", "2 mm,0", "prices.csv:6:36", "0 or at least 3 mm"},
        {"prices.csv", "40 mm,0", "40 mm,-1", "prices.csv:6:42", ""},
        {"prices.csv", "pack,200,,,,", "pack,200,,,5,", "prices.csv:10:31", "only boards and sheets"},
        {"prices.csv", "slat,South,3 m,,7.45,each,,24", "slat,North,3 m,,7.45,each,,", "prices.csv:4:1",
         "stands twice: first at"},
        {"prices.csv", "disc,Iron,,,0.48,each,50,,,,\n", "", "stock.csv:11:1", "nobody sells disc"},
    };
    BENCH_CASES(*state, cases);
}

static void all_mistakes_of_a_row(void **state) {
    bench *b = *state;
    bench_spoil(b, "prices.csv", "slat,South,3 m,,7.45,each,,24,2026-01-19,,",
                "slat,,0,95,-7,l,3,x,today,1,");
    bench_read(b);
    const char *places[] = {"prices.csv:4:6",  "prices.csv:4:7",  "prices.csv:4:9",
                            "prices.csv:4:12", "prices.csv:4:15", "prices.csv:4:17",
                            "prices.csv:4:19", "prices.csv:4:21", "prices.csv:4:27"};
    for (size_t i = 0; i < sizeof places / sizeof *places; i++)
        bench_told(b, places[i], "");
    assert_int_equal(sb_notices_count(&b->run, SB_NOTE), 9);
}

/* Nor does a row hide the mistakes of another of the same stock, or what the rack's value is held against. */
static void all_mistakes_of_a_stock(void **state) {
    bench *b = *state;
    const char *text = bench_swap(b, bench_text("prices.csv"), "slat,North,3 m,,7.65", "slat,North,3 m,,0");
    text = bench_swap(b, text, "3.6 m,,9.20,each", "3.6 m,,9.20,kg");
    bench_put(b, "prices.csv", bench_swap(b, text, "3 m,,7.45", ",,7.45"));
    bench_read(b);
    bench_told(b, "prices.csv:2:17", "above zero");
    bench_told(b, "prices.csv:3:24", "not sold per kg");
    bench_told(b, "prices.csv:4:12", "`length` is empty");
    assert_int_equal(sb_notices_count(&b->run, SB_NOTE), 3);
}

/* What a spreadsheet in another country writes: a byte order mark, semicolons, decimal commas, line ends of
 * two bytes. */
static char *foreign(bench *b, const char *text) {
    char *out = sb_pool_alloc(b->run.pool, 2 * strlen(text) + 4), *to = out;
    to += sprintf(to, "\xEF\xBB\xBF");
    for (const char *c = text; *c; c++) {
        if (*c == '\n')
            *to++ = '\r';
        *to++ = *c == ',' ? ';' : *c == '.' ? ',' : *c;
    }
    return out;
}

static void files_of_another_country(void **state) {
    bench *b = *state;
    for (int i = 1; i < BENCH_FILES; i++)
        bench_put(b, bench_files[i], foreign(b, bench_texts[i]));
    const sb_shop *shop = bench_read_sound(b);
    assert_int_equal(shop->stock.count, 10);
    assert_int_equal(shop->rack.count, 5);
    assert_int_equal(offer_of(shop, "slat", 1)->length.nm, SB_MM(3600).nm);
    assert_int_equal(offer_of(shop, "slat", 1)->each.milli, 920000);
    assert_int_equal(offer_of(shop, "oil", 0)->pack, 2500);
    assert_int_equal(sb_shop_operation(shop, "crosscut")->time.ms, 21000);
    assert_int_equal(shop->rack.items[1].value.minor, 200);
}

static void columns_in_any_order(void **state) {
    bench *b = *state;
    bench_remove(b, "rack.csv");
    bench_remove(b, "measured.csv");
    bench_put(b, "stock.csv", "width,kind,thickness,stock\n95,board,20,slat\n");
    bench_put(b, "prices.csv",
              "price,per,stock,merchant,length\n2.55,m,slat,\"Planks, beams & \"\"more\"\"\",3 m\n");
    const sb_offer *offer = offer_of(bench_read_sound(b), "slat", 0);
    assert_string_equal(offer->merchant, "Planks, beams & \"more\"");
    assert_int_equal(offer->each.milli, 765000);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(an_offer_arrives),
        AT_BENCH(packs_are_counted_in_the_unit_of_the_kind),
        AT_BENCH(packs_cost_what_they_hold),
        AT_BENCH(board_feet),
        AT_BENCH(by_length_area_and_volume),
        AT_BENCH(by_gallon_and_pound),
        AT_BENCH(prices_with_four_decimals),
        AT_BENCH(minor_units_of_the_currency),
        AT_BENCH(one_length_at_two_merchants),
        AT_BENCH(a_range_of_prices),
        AT_BENCH(mistakes),
        AT_BENCH(all_mistakes_of_a_row),
        AT_BENCH(all_mistakes_of_a_stock),
        AT_BENCH(files_of_another_country),
        AT_BENCH(columns_in_any_order),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
