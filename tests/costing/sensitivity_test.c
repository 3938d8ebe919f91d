/* What moves the price: each move is what the whole build-up gives with that one figure changed in the shop or the job. */
#include "made.h"

#include <stdlib.h>

static sb_money price_of(const sb_estimate *e) {
    return sb_money_add(sb_money_sub(e->price, e->discount), e->delivery);
}

static const sb_mover *mover(const sb_sensitivity *s, const char *what) {
    for (size_t i = 0; i < s->movers.count; i++)
        if (strcmp(s->movers.items[i].what, what) == 0)
            return &s->movers.items[i];
    return NULL;
}

typedef struct figure {
    const char *what;
    int64_t *(*value)(made *m);
} figure;

static int64_t *hour(made *m) {
    return &m->shop.settings.workers.items[0].hour.minor;
}
static int64_t *larch(made *m) {
    return &m->order.lines.items[0].each.milli;
}
static int64_t *overhead(made *m) {
    sb_settings *s = &m->shop.settings;
    return s->overhead_hour.minor ? &s->overhead_hour.minor : &s->overhead_labour.ppm;
}
static int64_t *contingency(made *m) {
    return &m->shop.settings.contingency.ppm;
}
static int64_t *profit(made *m) {
    return &m->shop.settings.margin.ppm;
}
static int64_t *discount(made *m) {
    return &m->job.discount.share.ppm;
}
static int64_t *extra(made *m) {
    return m->job.extras.count ? &m->job.extras.items[0].micro : NULL;
}
static int64_t *assembly(made *m) {
    return &m->shop.operations.items[0].time.ms;
}

static const figure figures[] = {{"Hourly rate of joiner", hour},
                                 {"Price of Larch 20 x 95", larch},
                                 {"Overhead", overhead},
                                 {"Contingency", contingency},
                                 {"Margin", profit},
                                 {"Discount", discount},
                                 {"Extra: Crane", extra},
                                 {"Time of Assemble", assembly}};

/* In steps that a tenth of can be told exactly. */
static void round_off(int64_t *value, int64_t step) {
    if (value)
        *value -= *value % step;
}

static made *tenths_by_chance(chance *c) {
    made *m = made_by_chance(c);
    m->shop.settings.charge = SB_CHARGE_BOUGHT; /* credits go by the price too */
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        round_off(figures[i].value(m), figures[i].value == extra ? 100000 : 10);
    return m;
}

static int64_t price_with(chance from, const figure *f, int64_t tenths) {
    made *m = tenths_by_chance(&from);
    int64_t *value = f->value(m);
    if (value)
        *value = *value * tenths / 10;
    int64_t price = price_of(made_estimate(m)).minor;
    made_free(m);
    return price;
}

static void moves_are_those_of_the_whole_build_up(void **state) {
    (void)state;
    chance c = {2718};
    int compared = 0;
    for (int round = 0; round < 120; round++) {
        chance before = c;
        made *m = tenths_by_chance(&c);
        const sb_sensitivity *s = sb_sensitivity_of(&m->run, made_estimate(m), &m->cutlist);
        assert_int_equal(s->price.minor, price_with(before, &figures[0], 10));
        for (size_t i = 0; i < sizeof figures / sizeof *figures; i++) {
            const sb_mover *found = mover(s, figures[i].what);
            if (!found)
                continue;
            if (found->more.minor != SB_BAD)
                assert_int_equal(found->more.minor, price_with(before, &figures[i], 11) - s->price.minor);
            assert_int_equal(found->less.minor, price_with(before, &figures[i], 9) - s->price.minor);
            compared++;
        }
        made_free(m);
    }
    assert_true(compared > 400);
}

static int64_t reach(const sb_mover *m) {
    int64_t more = m->more.minor == SB_BAD ? 0 : llabs(m->more.minor),
            less = m->less.minor == SB_BAD ? 0 : llabs(m->less.minor);
    return more > less ? more : less;
}

/* At most ten, the largest first, and nothing that moves nothing. */
static void the_largest_come_first(void **state) {
    (void)state;
    chance c = {31};
    for (int round = 0; round < 100; round++) {
        made *m = made_by_chance(&c);
        const sb_sensitivity *s = sb_sensitivity_of(&m->run, made_estimate(m), &m->cutlist);
        assert_true(s->movers.count <= 10);
        for (size_t i = 0; i < s->movers.count; i++) {
            assert_true(reach(&s->movers.items[i]) > 0);
            assert_true(i == 0 || reach(&s->movers.items[i]) <= reach(&s->movers.items[i - 1]));
        }
        made_free(m);
    }
}

/* By hand: 100.00 of material at a margin of 20 %: 125.00. Material at 110: 137.50; a margin of 22 %: 128.21, of 18 %: 121.95. */
static void by_hand(void **state) {
    (void)state;
    made *m = made_new(0);
    made_piece(m, "Stool", 1);
    m->shop.settings.margin.ppm = 200000;
    SB_PUSH(m->run.pool, m->job.extras, ((sb_job_amount){.micro = 100000000, .given = true, .text = "Oak"}));
    const sb_sensitivity *s = sb_sensitivity_of(&m->run, made_estimate(m), &m->cutlist);
    assert_int_equal(s->movers.count, 2);
    assert_string_equal(s->movers.items[0].what, "Extra: Oak");
    assert_int_equal(s->movers.items[0].more.minor, 1250);
    assert_int_equal(s->movers.items[0].less.minor, -1250);
    assert_int_equal(s->movers.items[1].more.minor, 321);
    assert_int_equal(s->movers.items[1].less.minor, -305);
    m->shop.settings.margin.ppm = 950000; /* a tenth more of it is no margin any more */
    size_t told = sb_notices_raised(&m->run, SB_ERROR);
    s = sb_sensitivity_of(&m->run, made_estimate(m), &m->cutlist);
    assert_int_equal(mover(s, "Margin")->more.minor, SB_BAD);
    assert_int_equal(sb_notices_raised(&m->run, SB_ERROR), told); /* and that is none of the job's concern */
    made_free(m);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(by_hand),
        cmocka_unit_test(moves_are_those_of_the_whole_build_up),
        cmocka_unit_test(the_largest_come_first),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
