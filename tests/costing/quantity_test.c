/* What must hold when more is made of the same: real recipes by chance, planned and priced in full. Runs in the project's folder. */
#include "made.h"

typedef struct shelf {
    const char *recipe, *input;
    int64_t least, most; /* mm */
} shelf;
static const shelf recipes[] = {{"ledged-gate", "wide", 700, 1200},
                                {"mitred-frame", "wide", 250, 700},
                                {"raised-bed", "long", 1000, 2200},
                                {"shelf-unit", "wide", 600, 1000},
                                {"trough-planter", "long", 700, 1800}};
enum {
    KINDS = sizeof recipes / sizeof *recipes,
    ROUNDS = 10
};
static const int64_t counts[] = {1, 2, 3, 5, 8};
enum {
    SIZES = sizeof counts / sizeof *counts
};

typedef struct batch {
    sb_run run;
    const sb_estimate *e;
} batch;

/* A shop whose plans cost their boards alone: such are mostly proved. Then the plan is all that the material costs, and the rest of the work
 * comes from the recipe. */
static void boards_alone(sb_shop *shop) {
    size_t kept = 0;
    for (size_t i = 0; i < shop->operations.count; i++)
        if (shop->operations.items[i].driver > SB_BY_SHEET_CUT)
            shop->operations.items[kept++] = shop->operations.items[i];
    shop->operations.count = kept;
    shop->settings.leftover_value.ppm = 0;
    shop->settings.charge = SB_CHARGE_BOUGHT;
}

static batch make(const shelf *what, int64_t size, int64_t count) {
    batch b = {.run = sb_run_new()};
    sb_shop *shop = sb_shop_read(&b.run, "rates");
    boards_alone(shop);
    sb_recipe_book *book = sb_recipe_book_open(&b.run, "templates", false);
    const char *text = sb_pool_print(b.run.pool,
                                     "job batch\ndate 2026-03-02\ncustomer Somebody\nrack no\npiece it\n  "
                                     "recipe %s\n  count %lld\n  set %s %lld mm\n",
                                     what->recipe, (long long)count, what->input, (long long)size);
    const sb_job *job = sb_job_of(&b.run, sb_source_of(&b.run, "batch.job", text), false);
    const sb_tune tune = {.price_alone = true, .material_only = true};
    const sb_ways *ways = sb_ways_of(&b.run, shop, book, job, &tune);
    if (!ways)
        fail_msg("%s", sb_notices_text(&b.run, SB_NOTE, false));
    b.e = ways->list.items[0].estimate;
    return b;
}

/* What is paid once, however many are made. */
static int64_t set_up(const sb_estimate *e) {
    int64_t sum = 0;
    for (size_t i = 0; i < e->labour.count; i++)
        if (e->labour.items[i].batch)
            sum += e->labour.items[i].amount.minor;
    return sum;
}

/* Each amount is rounded once: a minor unit for a line is no fall. */
static int64_t roundings(const sb_estimate *e) {
    return (int64_t)(e->materials.count + e->labour.count) + 2;
}

static void compare(const sb_estimate *few, int64_t few_count, const sb_estimate *many, int64_t many_count,
                    int *proved) {
    assert_true(set_up(many) * few_count <= set_up(few) * many_count);
    if (!few->plan->proved || !many->plan->proved)
        return;
    (*proved)++;
    if (many->cost.minor + roundings(many) < few->cost.minor)
        fail_msg("%lld cost %lld, %lld cost %lld", (long long)few_count, (long long)few->cost.minor,
                 (long long)many_count, (long long)many->cost.minor);
}

/* No pack is sold at a discount for many in these rates: the cheapest cover of more is never cheaper. */
static void more_never_costs_less_and_set_up_thins_out(void **state) {
    (void)state;
    chance c = {1936};
    int proved = 0;
    for (int round = 0; round < ROUNDS; round++) {
        const shelf *what = &recipes[round % KINDS];
        int64_t size = chance_from(&c, what->least / 10, what->most / 10) * 10;
        batch before = make(what, size, counts[0]);
        for (size_t i = 1; i < SIZES; i++) {
            batch next = make(what, size, counts[i]);
            compare(before.e, counts[i - 1], next.e, counts[i], &proved);
            sb_run_free(&before.run);
            before = next;
        }
        sb_run_free(&before.run);
    }
    assert_true(proved > ROUNDS);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(more_never_costs_less_and_set_up_thins_out),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
