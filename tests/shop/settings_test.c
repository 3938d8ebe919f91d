/* shop.txt: every line, and what is wrong with it. */
#include "bench.h"

static void every_setting_arrives(void **state) {
    bench *b = *state;
    const sb_settings *s = &bench_read_sound(b)->settings;
    assert_string_equal(s->name, "Test bench");
    assert_int_equal(s->address.count, 2);
    assert_string_equal(s->address.items[1], "Nowhere");
    assert_string_equal(s->contact, "bench@test.example");
    assert_string_equal(s->language, "en");
    assert_int_equal(s->style.step.nm, 500000);
    assert_int_equal(s->crosscut.kerf.nm, SB_MM(3).nm);
    assert_int_equal(s->crosscut.trim.nm, SB_MM(10).nm);
    assert_int_equal(s->crosscut.mitre_left.udeg, 50000000);
    assert_int_equal(s->crosscut.mitre_right.udeg, 60000000);
    assert_int_equal(s->crosscut.bevel_left.udeg, 45000000);
    assert_int_equal(s->crosscut.bevel_right.udeg, 0);
    assert_int_equal(s->rip.kerf.nm, 2800000);
    assert_int_equal(s->rip.trim.nm, 0);
    assert_int_equal(s->panel_stages, 2);
    assert_true(s->panel_trims);
    assert_false(s->panel_rip_first);
    assert_int_equal(s->panel.smallest_strip.nm, SB_MM(40).nm);
    assert_int_equal(s->leftover_length.nm, SB_MM(600).nm);
    assert_int_equal(s->leftover_sheet_width.nm, SB_MM(300).nm);
    assert_int_equal(s->leftover_value.ppm, 600000);
    assert_int_equal(s->vehicle.nm, SB_MM(4800).nm);
    assert_int_equal(s->planing.nm, SB_MM(3).nm);
    assert_int_equal(s->short_part.nm, SB_MM(300).nm);
}

static void every_figure_of_the_price_arrives(void **state) {
    bench *b = *state;
    const sb_settings *s = &bench_read_sound(b)->settings;
    assert_int_equal(s->workers.count, 2);
    assert_string_equal(s->workers.items[0].id, "bench");
    assert_int_equal(s->workers.items[1].hour.minor, 3850);
    assert_int_equal(s->overhead_hour.minor, 1400);
    assert_int_equal(s->contingency.ppm, 50000);
    assert_int_equal(s->method, SB_MARGIN_ON_PRICE);
    assert_int_equal(s->margin.ppm, 250000);
    assert_int_equal(s->charge, SB_CHARGE_BOUGHT_LESS_LEFTOVERS);
    assert_int_equal(s->taxes.count, 2);
    assert_string_equal(s->taxes.items[0].title, "VAT");
    assert_int_equal(s->taxes.items[0].rate.ppm, 210000);
    assert_int_equal(s->taxes.items[1].rate.ppm, 0);
    assert_true(s->prices_gross);
    assert_true(s->tax_per_line);
    assert_true(s->discount_hidden);
    assert_int_equal(s->price_point.minor, 5);
    assert_int_equal(s->validity_days, 30);
    assert_int_equal(s->deposit.ppm, 400000);
    assert_int_equal(s->price_age_days, 180);
    assert_int_equal(s->week.ms, 30 * 3600000);
    assert_int_equal(s->lead_days, 5);
}

static void other_ways_to_put_it(void **state) {
    static const struct {
        const char *old, *fresh;
    } other[] = {
        {"overhead    14.00 per hour", "overhead 30 % of labour"},
        {"margin      25 % of price", "markup 33 % on cost"},
        {"charge      bought less leftovers", "charge used"},
        {"stages    2 with trimming", "stages any"},
        {"mitre     50 deg left 60 deg right", "mitre 45 deg"},
        {"units       mm step 0.5 mm", "units in"},
        {"lead        5 days", "lead 1 day"},
        {"leftover    board 600 mm", "leftover board 23 5/8\""},
        {"trim      10 mm", "trim 0"},
    };
    bench *b = *state;
    const char *text = bench_text("shop.txt");
    for (size_t i = 0; i < sizeof other / sizeof *other; i++)
        text = bench_swap(b, text, other[i].old, other[i].fresh);
    bench_put(b, "shop.txt", text);
    bench_spoil(b, "prices.csv", "40 mm,0", ",");
    const sb_settings *s = &bench_read_sound(b)->settings;
    assert_int_equal(s->overhead_hour.minor, 0);
    assert_int_equal(s->overhead_labour.ppm, 300000);
    assert_int_equal(s->method, SB_MARKUP_ON_COST);
    assert_int_equal(s->margin.ppm, 330000);
    assert_int_equal(s->charge, SB_CHARGE_USED);
    assert_int_equal(s->panel_stages, 0);
    assert_false(s->panel_trims);
    assert_int_equal(s->crosscut.mitre_left.udeg, 45000000);
    assert_int_equal(s->crosscut.mitre_right.udeg, 45000000);
    assert_int_equal(s->style.units, SB_UNITS_IN);
    assert_int_equal(s->style.step.nm, 1587500); /* 1/16 in */
    assert_int_equal(s->lead_days, 1);
    assert_int_equal(s->leftover_length.nm, 600075000);
    assert_int_equal(s->crosscut.trim.nm, 0);
}

static void labels_have_the_grid_of_the_shop(void **state) {
    bench *b = *state;
    const struct sb_label_grid *grid = &bench_read_sound(b)->settings.labels;
    assert_int_equal(grid->columns, 3); /* where nothing is told */
    assert_int_equal(grid->rows, 8);
    bench_again(b);
    bench_spoil(b, "shop.txt", "vehicle     4.8 m",
                "labels grid 2 by 7\nlabels margin 5 mm by 15 mm\nlabels gap 2.5 mm by 0 mm");
    grid = &bench_read_sound(b)->settings.labels;
    assert_int_equal(grid->columns, 2);
    assert_int_equal(grid->rows, 7);
    assert_int_equal(grid->side.nm, SB_MM(5).nm);
    assert_int_equal(grid->top.nm, SB_MM(15).nm);
    assert_int_equal(grid->across.nm, 2500000);
    assert_int_equal(grid->down.nm, 0);
}

static void decimal_comma_holds_for_lines_above_it(void **state) {
    bench *b = *state;
    const char *text = bench_swap(b, bench_text("shop.txt"), "42.00", "42,50");
    const char *points[][2] = {{"0.5 mm", "0,5 mm"},
                               {"rip\n  kerf      2.8", "rip\n  kerf 2,8"},
                               {"panel\n  kerf      2.8", "panel\n  kerf 2,8"},
                               {"4.8 m", "4,8 m"},
                               {"38.50", "38,50"},
                               {"14.00", "14,00"},
                               {"0.05", "0,05"}};
    for (size_t i = 0; i < sizeof points / sizeof *points; i++)
        text = bench_swap(b, text, points[i][0], points[i][1]);
    bench_put(b, "shop.txt", sb_pool_print(b->run.pool, "%sdecimal comma\n", text));
    const sb_settings *s = &bench_read_sound(b)->settings;
    assert_true(s->style.decimal_comma);
    assert_int_equal(s->workers.items[0].hour.minor, 4250);
    assert_int_equal(s->vehicle.nm, SB_MM(4800).nm);
}

/* ISO 4217 table A.1: minor units of JPY 0, EUR 2, KWD 3. */
static void money_has_the_digits_of_its_currency(void **state) {
    bench *b = *state;
    bench_spoil(b, "shop.txt", "currency    EUR", "currency KWD");
    assert_int_equal(bench_read_sound(b)->settings.workers.items[0].hour.minor, 42000);
    bench_again(b);
    bench_spoil(b, "shop.txt", "currency    EUR", "currency JPY");
    assert_non_null(bench_read(b)); /* 38.50 yen are not to be had */
    bench_told(b, "shop.txt:27:20", "money");
}

static void mistakes(void **state) {
    static const bench_case cases[] = {
        {"shop.txt", "currency    EUR", "currency    EUX", "shop.txt:5:13", "ISO 4217"},
        {"shop.txt", "vehicle     4.8 m", "vehicel     4.8 m", "shop.txt:23:1", "vehicle"},
        {"shop.txt", "vehicle     4.8 m", "vehicle     4.8 m3", "shop.txt:23:13", "a volume"},
        {"shop.txt", "vehicle     4.8 m", "vehicle     0 m", "shop.txt:23:13", "more than zero"},
        {"shop.txt", "vehicle     4.8 m", "vehicle     -4.8 m", "shop.txt:23:13", "expected a length"},
        {"shop.txt", "vehicle     4.8 m", "vehicle     4.8 m wide", "shop.txt:23:19", "wide"},
        {"shop.txt", "vehicle     4.8 m", "vehicle", "shop.txt:23:1", "expected something behind `vehicle`"},
        {"shop.txt", "vehicle     4.8 m", "labels grid 3", "shop.txt:23:14", "expected the word `by`"},
        {"shop.txt", "vehicle     4.8 m", "labels grid 0 by 3", "shop.txt:23:13", "1 to 50"},
        {"shop.txt", "vehicle     4.8 m", "labels grit 3 by 8", "shop.txt:23:8", "grid"},
        {"shop.txt", "vehicle     4.8 m", "labels grid 9 by 8", "shop.txt:23:1", "25 mm by 12 mm"},
        {"shop.txt", "vehicle     4.8 m", "labels margin 90 mm by 10 mm", "shop.txt:23:1", "25 mm by 12 mm"},
        {"shop.txt", "units       mm step 0.5 mm", "units       cm", "shop.txt:6:13", "mm"},
        {"shop.txt", "units       mm step 0.5 mm", "units       mm step 20 mm", "shop.txt:6:1",
         "a step between"},
        {"shop.txt", "saw rip", "saw rib", "shop.txt:12:5", "rip"},
        {"shop.txt", "saw crosscut\n", "kerf 2 mm\nsaw crosscut\n", "shop.txt:7:1", "saw crosscut"},
        {"shop.txt", "saw rip\n  kerf      2.8 mm\n", "saw rip\n  stages 3\n  kerf 2.8 mm\n", "shop.txt:13:3",
         "saw panel"},
        {"shop.txt", "saw rip\n  kerf      2.8 mm\n", "saw rip\n", "shop.txt:12:1", "below `saw rip`"},
        {"shop.txt", "kerf      3 mm", "kerf      0 mm", "shop.txt:8:13", "more than zero"},
        {"shop.txt", "trim      8 mm", "trim      2 mm", "shop.txt:16:3", "0 or at least 2.8"},
        {"shop.txt", "60 deg right", "95 deg right", "shop.txt:10:25", "less than 90"},
        {"shop.txt", "stages    2 with trimming", "stages    4", "shop.txt:17:13", "`2`, `2 with trimming`"},
        {"shop.txt", "first     crosscut", "first     across", "shop.txt:18:13", "crosscut"},
        {"shop.txt", "leftover    board 600 mm", "leftover    bord 600 mm", "shop.txt:20:13", "board"},
        {"shop.txt", "600 mm by 300 mm", "600 mm x 300 mm", "shop.txt:21:26", "`by`"},
        {"shop.txt", "60 % of new", "60 % of used", "shop.txt:22:27", "one of new"},
        {"shop.txt", "60 % of new", "60 of new", "shop.txt:22:19", "percentage"},
        {"shop.txt", "60 % of new", "110 % of new", "shop.txt:22:1", "earn money"},
        {"shop.txt", "42.00 per hour", "42.00", "shop.txt:26:24", "per"},
        {"shop.txt", "42.00 per hour", "-42.00 per hour", "shop.txt:26:19", "amount of money"}, /* no rate is below zero */
        {"shop.txt", "overhead    14.00 per hour", "overhead    -14.00 per hour", "shop.txt:28:13", "amount of money"},
        {"shop.txt", "contingency 5 % of cost", "contingency -5 % of cost", "shop.txt:29:13", "a percentage"},
        {"shop.txt", "25 % of price", "-25 % of price", "shop.txt:30:13", "a percentage"},
        {"shop.txt", "25 % of price", "120 % of price", "shop.txt:30:1", "100 % or more"},
        {"shop.txt", "42.00 per hour", "per hour", "shop.txt:26:19", "amount of money"},
        {"shop.txt", "overhead    14.00 per hour", "overhead    14 % of cost", "shop.txt:28:21",
         "one of labour"},
        {"shop.txt", "contingency 5 % of cost", "contingency 5 % of price", "shop.txt:29:20", "one of cost"},
        {"shop.txt", "contingency 5 % of cost", "contingency 5 %", "shop.txt:29:16", "one of cost"},
        {"shop.txt", "margin      25 % of price", "margin      25 % of cost", "shop.txt:30:21",
         "`25 % of price`; a share of cost is a `markup`"},
        {"shop.txt", "margin      25 % of price", "margin      100 % of price", "shop.txt:30:1",
         "100 % or more"},
        {"shop.txt", "margin      25 % of price", "markup      25 % on price", "shop.txt:30:21",
         "`25 % of cost`; a share of price is a `margin`"},
        {"shop.txt", "margin      25 % of price", "margin      25 % of price\nmarkup      33 % on cost",
         "shop.txt:31:1", "one of the two"},
        {"shop.txt", "charge      bought less leftovers", "charge      sold", "shop.txt:31:13", "bought"},
        {"shop.txt", "21 % of net", "21 % of gross", "shop.txt:32:30", "one of net"},
        {"shop.txt", "tax         none 0", "tax         standard 0", "shop.txt:33:1", "first at"},
        {"shop.txt", "prices      gross", "prices      nett", "shop.txt:34:13", "net"},
        {"shop.txt", "price-point 0.05", "price-point 0", "shop.txt:36:13", "more than zero"},
        {"shop.txt", "price-point 0.05", "price-point 0.005", "shop.txt:36:13", "money"},
        {"shop.txt", "price-point 0.05", "price-point 10.00 less", "shop.txt:36:23", "money"},
        {"shop.txt", "price-point 0.05", "price-point 10.00 less 10.00", "shop.txt:36:24",
         "below the price point"},
        {"shop.txt", "price-point 0.05", "price-point 10.00 less -0.05", "shop.txt:36:24", "money"},
        {"shop.txt", "price-point 0.05", "minimum 0", "shop.txt:36:9", "more than zero"},
        {"shop.txt", "price-point 0.05", "zone 45.00", "shop.txt:36:6", "a name for the zone"},
        {"shop.txt", "price-point 0.05", "zone coast", "shop.txt:36:11", "money"},
        {"shop.txt", "price-point 0.05", "zone coast 1.00\nzone coast 2.00", "shop.txt:37:1", "twice"},
        {"shop.txt", "price-point 0.05", "delivery kn 1.20", "shop.txt:36:10", "did you mean \"km\""},
        {"shop.txt", "price-point 0.05", "delivery km -1.20", "shop.txt:36:13", "money"},
        {"shop.txt", "price-point 0.05", "stage 30 % of total", "shop.txt:36:20", "when this is due"},
        {"shop.txt", "price-point 0.05", "stage 130 % of total : late", "shop.txt:36:7", "at most 100 %"},
        {"shop.txt", "price-point 0.05", "stage 30 % of cost : late", "shop.txt:36:15", "one of total"},
        {"shop.txt", "price-point 0.05", "confidence 90 %", "shop.txt:36:16", "one of cases"},
        {"shop.txt", "price-point 0.05", "confidence 100 % of cases", "shop.txt:36:1", "at most 99.9 %"},
        {"shop.txt", "price-point 0.05", "tax late of net : VAT", "shop.txt:36:10", "a percentage"},
        {"shop.txt", "validity    30 days", "validity    30 weeks", "shop.txt:37:16", "`days`"},
        {"shop.txt", "validity    30 days", "validity    2.5 days", "shop.txt:37:13", "whole"},
        {"shop.txt", "40 % of total", "140 % of total", "shop.txt:38:1", "at most 100 %"},
        {"shop.txt", "week        30 h", "week        30 m", "shop.txt:40:13", "a time"},
        {"shop.txt", "lead        5 days", "lead        5 days\nweek 20 h", "shop.txt:42:1", "twice"},
        {"shop.txt", "38.50 per hour", "38.50 per hour\nworker bench 1.00 per hour", "shop.txt:28:1",
         "twice"},
        {"shop.txt", "shop        Test bench\n", "", "shop.txt:1:1", "`shop Bench and Bough`"},
        {"shop.txt", "currency    EUR\n", "", "shop.txt:1:1", "`currency EUR`"},
        {"shop.txt", "margin      25 % of price\n", "", "shop.txt:1:1", "`margin 25 % of price`"},
        {"shop.txt", "overhead    14.00 per hour\n", "", "shop.txt:1:1", "`overhead 14.00 per hour`"},
    };
    BENCH_CASES(*state, cases);
}

static void all_mistakes_come_at_once(void **state) {
    bench *b = *state;
    const char *text = bench_text("shop.txt");
    text = bench_swap(b, text, "currency    EUR", "currency    EUX");
    text = bench_swap(b, text, "planing", "plaining");
    text = bench_swap(b, text, "25 % of price", "25 % of cost");
    bench_put(b, "shop.txt", text);
    bench_spoil(b, "stock.csv", "slat,Larch slat,board", "slat,Larch slat,baord");
    bench_spoil(b, "prices.csv", "23.50", "-23.50");
    bench_spoil(b, "rack.csv", "S1,ply-18", "S1,ply-81");
    bench_read(b);
    bench_told(b, "shop.txt:5:13", "EUX");
    bench_told(b, "shop.txt:24:1", "planing");
    bench_told(b, "shop.txt:30:21", "one of price");
    bench_told(b, "stock.csv:2:17", "board");
    bench_told(b, "prices.csv:10:14", "price");
    bench_told(b, "rack.csv:4:4", "ply-18");
    assert_int_equal(sb_notices_count(&b->run, SB_ERROR), 6);
}

static void settings_know_their_lines(void **state) {
    bench *b = *state;
    const sb_shop *shop = bench_read_sound(b);
    assert_string_equal(sb_place_text(&b->run, sb_shop_setting(shop, "margin")), "margin      25 % of price");
    assert_string_equal(sb_place_text(&b->run, sb_shop_setting(shop, "panel kerf")), "kerf      2.8 mm");
    assert_string_equal(sb_place_text(&b->run, sb_shop_setting(shop, "leftover value")),
                        "leftover    value 60 % of new");
    assert_null(sb_shop_setting(shop, "markup").source);
}

static void no_folder_is_one_error(void **state) {
    bench *b = *state;
    assert_null(sb_shop_read(&b->run, "/nowhere/at/all"));
    assert_int_equal(sb_notices_count(&b->run, SB_ERROR), 1);
    assert_non_null(strstr(sb_notices_text(&b->run, SB_ERROR, false), "/nowhere/at/all/shop.txt"));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_BENCH(every_setting_arrives),
        AT_BENCH(every_figure_of_the_price_arrives),
        AT_BENCH(other_ways_to_put_it),
        AT_BENCH(labels_have_the_grid_of_the_shop),
        AT_BENCH(decimal_comma_holds_for_lines_above_it),
        AT_BENCH(money_has_the_digits_of_its_currency),
        AT_BENCH(mistakes),
        AT_BENCH(all_mistakes_come_at_once),
        AT_BENCH(settings_know_their_lines),
        AT_BENCH(no_folder_is_one_error),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
