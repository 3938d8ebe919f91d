/* Published cutting-stock instances: their optima are upper marks that no plan may pass and no bound may
 * exceed. */
#include "problems.h"

#include <stdlib.h>

static int by_falling(const void *a, const void *b) {
    return *(const int *)b - *(const int *)a;
}

/* Items of whole millimetres, equal ones counted. */
static void add_items(sb_run *run, sb_problem *p, const int *items, size_t count, double less) {
    int *sorted = SB_NEW_ARRAY(run->pool, int, count);
    memcpy(sorted, items, count * sizeof *items);
    qsort(sorted, count, sizeof *sorted, by_falling);
    for (size_t i = 0, next; i < count; i = next) {
        for (next = i; next < count && sorted[next] == sorted[i];)
            next++;
        add_need(run, p, "item", sorted[i] - less, 0, (int64_t)(next - i));
    }
}

/* Cutting stock problem, encyclopaedia article (graphsearch.epfl.ch/en/concept/826868): rolls of 5600, total
 * 407160, so at least 72.7; the optimum is 73. */
static void master_rolls(void **state) {
    static const int table[][2] = {{1380, 22}, {1520, 25}, {1560, 12}, {1710, 14}, {1820, 18},
                                   {1880, 18}, {1930, 20}, {2000, 10}, {2050, 12}, {2100, 14},
                                   {2140, 16}, {2150, 18}, {2200, 20}};
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 0);
    add_stock(&run, &p, "paper", false);
    add_supply(&run, &p, 5600, 0, 100);
    for (size_t i = 0; i < sizeof table / sizeof *table; i++)
        add_need(&run, &p, "roll", table[i][0], 0, table[i][1]);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 73);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* Falkenauer 1996, u120_00 and u120_02 (OR-Library binpack1): stock 150, optima 48 and 46; the longest-first
 * hand method gives 49 and 47. */
static const int u120_00[] = {
    42, 69, 67, 57, 93, 90, 38, 36, 45, 42, 33, 79, 27, 57, 44, 84, 86, 92, 46, 38, 85, 33, 82, 73,
    49, 70, 59, 23, 57, 72, 74, 69, 33, 42, 28, 46, 30, 64, 29, 74, 41, 49, 55, 98, 80, 32, 25, 38,
    82, 30, 35, 39, 57, 84, 62, 50, 55, 27, 30, 36, 20, 78, 47, 26, 45, 41, 58, 98, 91, 96, 73, 84,
    37, 93, 91, 43, 73, 85, 81, 79, 71, 80, 76, 83, 41, 78, 70, 23, 42, 87, 43, 84, 60, 55, 49, 78,
    73, 62, 36, 44, 94, 69, 32, 96, 70, 84, 58, 78, 25, 80, 58, 66, 83, 24, 98, 60, 42, 43, 43, 39,
};
static const int u120_02[] = {
    38, 100, 60, 42, 20, 69, 24, 23, 92, 32, 84, 36, 65, 84, 34, 68, 64, 33, 69, 27, 47,  21, 85, 88,
    59, 61,  50, 53, 37, 75, 64, 84, 74, 57, 83, 28, 31, 97, 61, 36, 46, 37, 96, 80, 53,  51, 68, 90,
    64, 81,  66, 67, 80, 37, 92, 67, 64, 31, 94, 45, 80, 28, 76, 29, 64, 38, 48, 40, 29,  44, 81, 35,
    51, 48,  67, 24, 46, 38, 76, 22, 30, 67, 45, 41, 29, 41, 79, 21, 25, 90, 62, 34, 73,  50, 79, 66,
    59, 42,  90, 79, 70, 66, 80, 35, 62, 98, 97, 37, 32, 75, 91, 91, 48, 26, 23, 32, 100, 46, 29, 26,
};

static const sb_plan *bins(sb_run *run, sb_problem *p, const int *items, double kerf) {
    start(run, p, kerf);
    add_stock(run, p, "bin", false);
    add_supply(run, p, 150 - kerf, 0, 100);
    add_items(run, p, items, 120, kerf);
    return planned(run, p);
}

/* What is reached: both optima, with proof. */
static void falkenauer(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    const sb_plan *plan = bins(&run, &p, u120_00, 0);
    assert_int_equal(plan->counts.boards, 48);
    assert_true(plan->proved);
    sb_run_free(&run);
    plan = bins(&run, &p, u120_02, 0);
    assert_int_equal(plan->counts.boards, 46);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* With kerf k, stock L and parts l stand for stock L + k and parts l + k without a kerf, since the last cut
 * may run out of the board. */
static void kerf_folded_into_the_lengths(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    const sb_plan *plan = bins(&run, &p, u120_00, 3);
    assert_int_equal(plan->counts.boards, 48);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* Textbook exercises with one stock length: stock, optimum, then length and demand. From Chvatal, Linear
 * Programming (1983), cutting-stock chapter; Fourer, Gay, Kernighan, AMPL, cutting-stock example. */
static void textbook_rolls(void **state) {
    static const int chvatal[][2] = {{45, 97}, {36, 610}, {31, 395}, {14, 211}};
    static const int ampl[][2] = {{75, 8}, {55, 10}, {50, 24}, {45, 35}, {20, 48}};
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 0);
    add_stock(&run, &p, "chvatal", false);
    add_supply(&run, &p, 100, 0, 100);
    for (size_t i = 0; i < 4; i++)
        add_need(&run, &p, "roll", chvatal[i][0], 0, chvatal[i][1]);
    add_stock(&run, &p, "ampl", false);
    add_supply(&run, &p, 110, 0, 100);
    for (size_t i = 0; i < 5; i++)
        add_need(&run, &p, "roll", ampl[i][0], 0, ampl[i][1]);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.boards, 453 + 47);
    assert_true(plan->proved);
    sb_run_free(&run);
}

/* Macedo, Alves, Valerio de Carvalho 2010, wood-industry set, instance A1: sheets 2750 x 1220, 3 needed,
 * guillotine cuts, parts not turned. */
static void wood_industry_sheets(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 0);
    add_stock(&run, &p, "board", true);
    add_supply(&run, &p, 1220, 2750, 100);
    add_need(&run, &p, "large", 420, 1680, 6);
    add_need(&run, &p, "small", 386, 463, 18);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->counts.sheets, 3);
    assert_true(plan->proved);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(master_rolls),
        cmocka_unit_test(falkenauer),
        cmocka_unit_test(kerf_folded_into_the_lengths),
        cmocka_unit_test(textbook_rolls),
        cmocka_unit_test(wood_industry_sheets),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
