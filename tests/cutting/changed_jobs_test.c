/* A job changed a little: what must then hold of its cost and its bound, whatever the plan looks like. */
#include "problems.h"

/* All costs on; what is in the rack costs what it would be credited. With `shaped`, some parts have angled ends and some
 * are ripped. */
static void make_job(sb_run *run, sb_problem *p, uint32_t *seed, bool shaped) {
    static const double angles[] = {0, 45, -45, 30};
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    *stock = (sb_cut_stock){.name = "pine", .width = mm(95), .useful_length = mm(500), .value = 150000};
    p->rules.material_only = roll(seed, 3) == 0;
    p->rules.board.milli = roll(seed, 20000);
    p->rules.change.milli = roll(seed, 50000);
    p->rules.stop.milli = roll(seed, 60000);
    p->rules.cut.milli = roll(seed, 8000);
    for (double length = 2400; length <= 4800; length += 600 * (1 + roll(seed, 2)))
        add_supply(run, p, length, 0, (int64_t)(length * 0.4) + roll(seed, 100))->trim1 =
            mm(10 * roll(seed, 2));
    for (uint32_t left = 3 + roll(seed, 5); left > 0; left--) {
        sb_need *need = add_need(run, p, "part", 250 + 0.5 * roll(seed, 3900), 0, 1 + roll(seed, 6));
        need->width = mm(shaped && roll(seed, 3) == 0 ? 30 : 0);
        need->end1 = end_of(shaped ? angles[roll(seed, 4)] : 0, 0);
        need->end2 = end_of(shaped ? angles[roll(seed, 4)] : 0, 0);
    }
}

static void add_rack_piece(sb_run *run, sb_problem *p, double length) {
    sb_supply *rack = add_supply(run, p, length, 0, 0);
    rack->price.milli = rack->length.nm / SB_NM_PER_MM * p->stock.items[0].value / 1000;
    rack->leftover = true;
    rack->available = 1;
}

typedef void change(sb_run *run, sb_problem *p, uint32_t *seed);
typedef void comparison(const sb_plan *before, const sb_plan *after);

static void compare_jobs(uint32_t seed, int jobs, bool shaped, change *to, comparison *holds) {
    while (jobs-- > 0) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed, shaped);
        search_briefly(&p, jobs);
        if (roll(&seed, 2))
            add_rack_piece(&run, &p, 600 + roll(&seed, 900));
        const sb_plan before = *planned(&run, &p);
        to(&run, &p, &seed);
        holds(&before, planned(&run, &p));
        sb_run_free(&run);
    }
}

/* ---- rows in another order ----------------------------------------------------------------------- */

#define SHUFFLE(rows, seed)                                                                                  \
    for (size_t i = (rows).count; i > 1; i--) {                                                              \
        size_t other = roll(seed, (uint32_t)i);                                                              \
        memcpy(kept, &(rows).items[i - 1], sizeof *(rows).items);                                            \
        (rows).items[i - 1] = (rows).items[other];                                                           \
        memcpy(&(rows).items[other], kept, sizeof *(rows).items);                                            \
    }

static void shuffle(sb_run *run, sb_problem *p, uint32_t *seed) {
    char kept[sizeof(sb_need) + sizeof(sb_supply)];
    (void)run;
    SHUFFLE(p->needs, seed)
    SHUFFLE(p->supplies, seed)
}

/* Each row of several parts as two. */
static void split(sb_run *run, sb_problem *p, uint32_t *seed) {
    size_t rows = p->needs.count;
    for (size_t i = 0; i < rows; i++) {
        sb_need part = p->needs.items[i];
        if (part.count < 2)
            continue;
        part.count = 1 + roll(seed, (uint32_t)part.count - 1);
        p->needs.items[i].count -= part.count;
        SB_PUSH(run->pool, p->needs, part);
    }
    shuffle(run, p, seed);
}

static void same_figures(const sb_plan *before, const sb_plan *after) {
    assert_int_equal(after->cost.milli, before->cost.milli);
    assert_int_equal(after->bound.milli, before->bound.milli);
    assert_int_equal(after->proved, before->proved);
}

static void rows_in_any_order_cost_the_same(void **state) {
    (void)state;
    compare_jobs(21, 25, false, shuffle, same_figures);
    compare_jobs(22, 12, true, shuffle, same_figures);
}

static void split_rows_cost_the_same(void **state) {
    (void)state;
    compare_jobs(23, 15, false, split, same_figures);
    compare_jobs(24, 8, true, split, same_figures);
}

/* ---- more to choose from, or for less ------------------------------------------------------------ */

static void offer_another_length(sb_run *run, sb_problem *p, uint32_t *seed) {
    double length = 3100 + roll(seed, 2900);
    add_supply(run, p, length, 0, (int64_t)(length * 0.4))->trim2 = mm(10);
}

static void lower_a_price(sb_run *run, sb_problem *p, uint32_t *seed) {
    sb_supply *supply = &p->supplies.items[roll(seed, (uint32_t)p->supplies.count)];
    (void)run;
    supply->price.milli -= supply->price.milli / 100 * (1 + roll(seed, 30));
}

static void find_a_leftover(sb_run *run, sb_problem *p, uint32_t *seed) {
    add_rack_piece(run, p, 500 + roll(seed, 1900));
}

static int both_proved;

static void not_dearer(const sb_plan *before, const sb_plan *after) {
    assert_true(after->bound.milli <= before->cost.milli);
    if (before->proved && after->proved)
        assert_true(after->cost.milli <= before->cost.milli);
    both_proved += before->proved && after->proved;
}

static void more_choice_never_costs_more(void **state) {
    (void)state;
    compare_jobs(31, 20, false, offer_another_length, not_dearer);
    compare_jobs(32, 20, false, lower_a_price, not_dearer);
    compare_jobs(33, 20, false, find_a_leftover, not_dearer);
    compare_jobs(34, 10, true, offer_another_length, not_dearer);
    compare_jobs(35, 10, true, find_a_leftover, not_dearer);
    print_message("both proved in %d of 80\n", both_proved);
    assert_true(both_proved > 30);
}

/* ---- kerf k stands for k more in every length ---------------------------------------------------- */

/* Leftovers aside: what is left is a kerf longer then. */
static void fold_kerf_into_lengths(sb_run *run, sb_problem *p, uint32_t *seed) {
    int64_t kerf = p->rules.kerf.nm;
    (void)run;
    (void)seed;
    for (size_t i = 0; i < p->needs.count; i++)
        p->needs.items[i].length.nm += kerf;
    for (size_t i = 0; i < p->supplies.count; i++)
        p->supplies.items[i].length.nm += kerf;
    p->rules.kerf.nm = p->rules.rip_kerf.nm = 0;
}

static void kerf_folded_in_costs_the_same(void **state) {
    uint32_t seed = 41;
    (void)state;
    for (int job = 0; job < 20; job++) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed, false);
        search_briefly(&p, job);
        p.stock.items[0].useful_length.nm = 0;
        const sb_plan before = *planned(&run, &p);
        fold_kerf_into_lengths(&run, &p, &seed);
        same_figures(&before, planned(&run, &p));
        sb_run_free(&run);
    }
}

/* ---- one, none, nothing to pay ------------------------------------------------------------------- */

static void a_single_part(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 3000, 0, 500);
    add_supply(&run, &p, 2400, 0, 420);
    add_need(&run, &p, "shelf", 900, 0, 1);
    const sb_plan *plan = planned(&run, &p);
    assert_true(plan->proved);
    assert_int_equal(plan->cost.milli, 420000);
    sb_run_free(&run);
}

static void no_part_at_all(void **state) {
    sb_run run;
    sb_problem p;
    (void)state;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    add_supply(&run, &p, 3000, 0, 500);
    const sb_plan *plan = planned(&run, &p);
    assert_int_equal(plan->boards.count, 0);
    assert_int_equal(plan->cost.milli, 0);
    sb_run_free(&run);
}

/* Boards for nothing, and all that is charged besides; then nothing charged at all. */
static void boards_for_nothing(void **state) {
    (void)state;
    for (int charged = 0; charged < 2; charged++) {
        sb_run run;
        sb_problem p;
        start(&run, &p, 3);
        add_stock(&run, &p, "pine", false);
        p.rules.material_only = !charged;
        p.rules.board.milli = 7000;
        add_supply(&run, &p, 3000, 0, 0);
        add_need(&run, &p, "shelf", 900, 0, 5);
        const sb_plan *plan = planned(&run, &p);
        assert_true(plan->proved);
        assert_int_equal(plan->cost.milli, charged ? 14000 : 0); /* three and two */
        sb_run_free(&run);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(rows_in_any_order_cost_the_same),
        cmocka_unit_test(split_rows_cost_the_same),
        cmocka_unit_test(more_choice_never_costs_more),
        cmocka_unit_test(kerf_folded_in_costs_the_same),
        cmocka_unit_test(a_single_part),
        cmocka_unit_test(no_part_at_all),
        cmocka_unit_test(boards_for_nothing),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
