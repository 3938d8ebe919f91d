/* What must hold for every job in every shop: a thousand of them, by chance, the same each time. */
#include "made.h"

enum {
    ROUNDS = 1500
};

#define SUM(list, count_of, field, into)                                                                     \
    for (size_t at = 0; at < (count_of); at++)                                                               \
    (into) += (list)[at].field.minor

static void lines_add_up(const sb_estimate *e) {
    int64_t material = 0, labour = 0;
    SUM(e->materials.items, e->materials.count, amount, material);
    SUM(e->labour.items, e->labour.count, amount, labour);
    assert_int_equal(material, e->material_total.minor);
    assert_int_equal(labour, e->labour_total.minor);
    assert_int_equal(e->cost.minor, material + labour + e->overhead.minor);
    assert_int_equal(e->base.minor, e->cost.minor + e->contingency.minor);
}

static void shares_add_up(const sb_estimate *e) {
    int64_t material = 0, labour = 0, overhead = 0, contingency = 0, base = 0, time = 0;
    SUM(e->pieces.items, e->pieces.count, material, material);
    SUM(e->pieces.items, e->pieces.count, labour, labour);
    SUM(e->pieces.items, e->pieces.count, overhead, overhead);
    SUM(e->pieces.items, e->pieces.count, contingency, contingency);
    SUM(e->pieces.items, e->pieces.count, base, base);
    for (size_t i = 0; i < e->pieces.count; i++)
        time += e->pieces.items[i].time.ms;
    assert_int_equal(material, e->material_total.minor);
    assert_int_equal(labour, e->labour_total.minor);
    assert_int_equal(overhead, e->overhead.minor);
    assert_int_equal(contingency, e->contingency.minor);
    assert_int_equal(base, e->base.minor);
    assert_int_equal(time, e->time.ms);
}

static void totals_add_up(const sb_estimate *e, const sb_settings *s) {
    int64_t line = 0, net = 0, price = 0, discount = 0;
    SUM(e->pieces.items, e->pieces.count, line, line);
    SUM(e->pieces.items, e->pieces.count, net, net);
    SUM(e->pieces.items, e->pieces.count, price, price);
    SUM(e->pieces.items, e->pieces.count, discount, discount);
    assert_int_equal(price, e->price.minor);
    assert_int_equal(discount, e->discount.minor);
    assert_int_equal(net, e->pieces_net.minor);
    assert_int_equal(e->net.minor, net + e->supplement.minor + e->delivery.minor);
    assert_int_equal(e->gross.minor, e->net.minor + e->tax.minor);
    assert_int_equal(line + e->supplement_line.minor + e->delivery_line.minor,
                     s->prices_gross ? e->gross.minor : e->net.minor);
    assert_int_equal(e->supplement_line.minor, line < e->minimum.minor ? e->minimum.minor - line : 0);
    assert_int_equal(e->pieces_net.minor, e->price.minor - e->discount.minor + e->rounding.minor);
    for (size_t i = 0; i < e->pieces.count; i++)
        assert_int_equal(e->pieces.items[i].line.minor,
                         e->pieces.items[i].unit.minor * e->pieces.items[i].count);
}

static void taxes_rest_on_the_net(const sb_estimate *e) {
    int64_t base = 0, amount = 0;
    for (size_t i = 0; i < e->taxes.count; i++) {
        base += e->taxes.items[i].base.minor;
        amount += e->taxes.items[i].amount.minor;
    }
    assert_int_equal(amount, e->tax.minor);
    if (e->taxes.count)
        assert_int_equal(base, e->net.minor);
    else
        assert_int_equal(e->tax.minor, 0);
}

/* What the lines of one tax come to, from the lines themselves. */
static int64_t base_of(const sb_estimate *e, const sb_tax *tax) {
    int64_t base = e->delivery_tax == tax ? e->delivery.minor : 0;
    base += e->job_tax == tax ? e->supplement.minor : 0;
    for (size_t i = 0; i < e->pieces.count; i++)
        base += e->pieces.items[i].tax == tax ? e->pieces.items[i].net.minor : 0;
    return base;
}

/* By line or on the total: no more than half a minor unit a line apart, and one for what lies inside. */
static void tax_is_near_the_rate(const sb_estimate *e) {
    for (size_t i = 0; i < e->taxes.count; i++) {
        const sb_tax_line *line = &e->taxes.items[i];
        int64_t off = line->amount.minor - line->base.minor * line->tax->rate.ppm / 1000000;
        int64_t most = 4 + (int64_t)e->pieces.count;
        assert_int_equal(line->base.minor, base_of(e, line->tax));
        assert_true(off <= most && off >= -most);
    }
}

static void units_stand_on_price_points(const sb_estimate *e, const sb_settings *s) {
    for (size_t i = 0; s->price_point.minor > 0 && i < e->pieces.count; i++)
        assert_int_equal((e->pieces.items[i].unit.minor + s->point_less.minor) % s->price_point.minor, 0);
}

/* Deposit, stages and rest are the total, and none of them is money back. */
static void payments_add_up(const sb_estimate *e) {
    int64_t due = e->deposit.minor + e->rest.minor;
    for (size_t i = 0; i < e->stages.count; i++) {
        due += e->stages.items[i].amount.minor;
        assert_true(e->gross.minor < 0 || e->stages.items[i].amount.minor >= 0);
        int64_t off =
            e->stages.items[i].amount.minor - e->gross.minor * e->stages.items[i].share.ppm / 1000000;
        assert_true(off >= -1 && off <= 1);
    }
    assert_int_equal(due, e->gross.minor);
    assert_true(e->gross.minor < 0 || e->rest.minor >= 0);
}

/* A price under the floor is told; what is not told is not under it. */
static void the_floor_is_kept_or_told(const made *m, const sb_estimate *e) {
    bool told = sb_status(&m->run) == 3;
    if (e->net.minor < e->floor.minor)
        assert_true(told);
    else if (e->discount_rate.ppm == 0)
        assert_false(told);
}

static void identities(void **state) {
    (void)state;
    chance c = {20260302};
    int told = 0;
    for (int round = 0; round < ROUNDS; round++) {
        made *m = made_by_chance(&c);
        const sb_estimate *e = made_estimate(m);
        assert_true(sb_ok(&m->run));
        lines_add_up(e);
        shares_add_up(e);
        totals_add_up(e, &m->shop.settings);
        taxes_rest_on_the_net(e);
        tax_is_near_the_rate(e);
        units_stand_on_price_points(e, &m->shop.settings);
        payments_add_up(e);
        the_floor_is_kept_or_told(m, e);
        told += sb_status(&m->run) == 3;
        made_free(m);
    }
    assert_true(told > 5); /* the dice did throw prices under the floor */
}

/* Without discount and price points, the margin left is the one asked for, to a minor unit for each kind of piece. */
static void the_margin_asked_for_is_left(void **state) {
    (void)state;
    chance c = {11};
    for (int round = 0; round < ROUNDS; round++) {
        made *m = made_by_chance(&c);
        m->shop.settings.price_point.minor = m->shop.settings.point_less.minor = 0;
        m->shop.settings.minimum.minor = 0;
        m->job.discount.given = false;
        const sb_estimate *e = made_estimate(m);
        int64_t loose = 0;
        for (size_t i = 0; i < e->pieces.count; i++)
            loose += 3 + 2 * e->pieces.items[i].count; /* units go up to the minor unit */
        int64_t share = e->method == SB_MARGIN_ON_PRICE ? e->margin_left.ppm : e->markup_left.ppm;
        int64_t whole = e->method == SB_MARGIN_ON_PRICE ? e->pieces_net.minor : e->base.minor;
        whole += e->method == SB_MARGIN_ON_PRICE ? e->supplement.minor : 0;
        int64_t off = (share - e->rate.ppm) * whole / 1000000;
        assert_true(whole <= 0 || (off >= -loose && off <= loose));
        made_free(m);
    }
}

/* Asking for more never lowers the price of any piece, nor the total. */
static void more_margin_never_costs_less(void **state) {
    (void)state;
    chance c = {5};
    for (int round = 0; round < ROUNDS; round++) {
        chance same = c;
        made *low = made_by_chance(&c), *high = made_by_chance(&same);
        low->shop.settings.margin.ppm = chance_from(&c, 0, 800000);
        high->shop.settings.margin.ppm = low->shop.settings.margin.ppm + chance_from(&c, 1, 150000);
        const sb_estimate *a = made_estimate(low), *b = made_estimate(high);
        for (size_t i = 0; i < a->pieces.count; i++)
            assert_true(b->pieces.items[i].unit.minor >= a->pieces.items[i].unit.minor);
        if (low->shop.settings.prices_gross || a->supplement_line.minor == 0)
            assert_true(b->gross.minor >=
                        a->gross.minor); /* a supplement may be taxed higher than what takes its place */
        assert_true(low->shop.settings.prices_gross || b->net.minor >= a->net.minor);
        assert_int_equal(a->floor.minor, b->floor.minor);
        made_free(low);
        made_free(high);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(identities),
        cmocka_unit_test(the_margin_asked_for_is_left),
        cmocka_unit_test(more_margin_never_costs_less),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
