/* The shop's paper: its formulas give the stored cents, and a changed rate gives what the program would have said. */
#include "paper.h"

static sb_document *estimate_of(made *m, const sb_ways *ways) {
    sb_document *document = sb_paper_estimate(&m->run, &m->shop, &m->job, ways, NULL);
    if (!sb_ok(&m->run))
        fail_msg("%s", sb_notices_text(&m->run, SB_NOTE, false));
    return document;
}

static bool leaves_any(const sb_plan *plan) {
    size_t count = 0;
    for (size_t i = 0; i < plan->boards.count; i++)
        count += plan->boards.items[i].leftover.nm > 0;
    for (size_t i = 0; i < plan->sheets.count; i++)
        count += plan->sheets.items[i].leftovers.count;
    return count > 0;
}

static void formulas_give_the_same_cents(void **state) {
    (void)state;
    chance c = {1234};
    for (int round = 0; round < 150; round++) {
        made *m = made_by_chance(&c);
        sb_ways *ways = paper_ways(m);
        sb_document *document = estimate_of(m, ways);
        paper_agrees(document);
        assert_true(sb_document_sound(&m->run, document));
        assert_int_equal(paper_says(document, "This job leaves nothing usable."), !leaves_any(&m->plan));
        const sb_estimate *e = ways->list.items[0].estimate;
        assert_int_equal(paper_worked(document, "cost"), e->cost.minor);
        assert_int_equal(paper_worked(document, "price"), e->price.minor);
        assert_int_equal(paper_worked(document, "net"), e->net.minor);
        assert_int_equal(paper_worked(document, "tax"), e->tax.minor);
        assert_int_equal(paper_worked(document, "total"), e->gross.minor);
        assert_int_equal(paper_worked(document, "deposit"), e->deposit.minor);
        assert_int_equal(paper_worked(document, "floor"), e->floor.minor);
        assert_int_equal(paper_worked(document, "rest"), e->rest.minor);
        for (size_t i = 0; i < e->stages.count; i++)
            assert_int_equal(paper_worked(document, sb_pool_print(m->run.pool, "stage_%zu", i + 1)),
                             e->stages.items[i].amount.minor);
        made_free(m);
    }
}

/* ---- what if, in the spreadsheet --------------------------------------------------------------------------------- */

typedef struct change {
    const char *cell;
    int64_t least, most, step;
} change;

static sb_tax *tax_like(made *m, const char *id) {
    for (size_t i = 0; i < m->shop.settings.taxes.count; i++)
        if (strcmp(m->shop.settings.taxes.items[i].id, id) == 0)
            return &m->shop.settings.taxes.items[i];
    fail_msg("no tax '%s'", id);
    return NULL;
}

/* What the program says with the same change in the shop's settings. */
static void change_settings(made *m, const sb_estimate *before, const char *cell, int64_t value) {
    sb_settings *s = &m->shop.settings;
    if (strcmp(cell, "margin_rate") == 0 || strcmp(cell, "markup_rate") == 0)
        s->margin.ppm = value;
    else if (strcmp(cell, "discount_rate") == 0)
        m->job.discount = (sb_job_share){.share = {value}, .given = true};
    else if (strcmp(cell, "price_point") == 0)
        s->price_point.minor = value;
    else if (strcmp(cell, "deposit_rate") == 0)
        s->deposit.ppm = value;
    else if (strcmp(cell, "tax_rate") == 0)
        tax_like(m, before->taxes.items[0].tax->id)->rate.ppm = value;
    else if (strcmp(cell, "tax_rate_2") == 0)
        tax_like(m, before->taxes.items[1].tax->id)->rate.ppm = value;
    else if (strcmp(cell, "price_point_less") == 0)
        s->point_less.minor = value;
    else if (strcmp(cell, "minimum") == 0)
        s->minimum.minor = value;
    else if (strcmp(cell, "stage_rate_1") == 0)
        s->stages.items[0].share.ppm = value;
    else if (strcmp(cell, "delivery_each") == 0 && m->job.delivery_by == SB_DELIVERY_TRIPS)
        s->delivery_trip.minor = value;
    else if (strcmp(cell, "delivery_each") == 0)
        m->job.delivery.micro = value * 10000;
    else if (strcmp(cell, "contingency_rate") == 0)
        s->contingency.ppm = value;
    else if (strcmp(cell, "overhead_rate") == 0)
        *(s->overhead_hour.minor ? &s->overhead_hour.minor : &s->overhead_labour.ppm) = value;
    else if (strcmp(cell, "hourly_rate_1") == 0)
        s->workers.items[0].hour.minor = value;
    else
        fail_msg("no setting for '%s'", cell);
}

static bool has_cell(const sb_estimate *e, const char *cell) {
    return strcmp(cell, "tax_rate_2") == 0      ? e->taxes.count > 1
           : strcmp(cell, "minimum") == 0       ? e->minimum.minor > 0
           : strcmp(cell, "stage_rate_1") == 0  ? e->stages.count > 0
           : strcmp(cell, "delivery_each") == 0 ? e->delivery.minor > 0
                                                : true;
}

static void check_change(chance *c, const change *what) {
    chance same = *c;
    made *m = made_by_chance(c), *other = made_by_chance(&same);
    if (!m->shop.settings.taxes.count) {
        made_tax(m, 100000);
        made_tax(other, 100000);
    }
    const char *cell = what->cell;
    if (strcmp(cell, "margin_rate") == 0 && m->shop.settings.method == SB_MARKUP_ON_COST)
        cell = "markup_rate";
    int64_t value = what->least + what->step * chance_from(c, 0, (what->most - what->least) / what->step);
    sb_ways *ways = paper_ways(m);
    sb_document *document = estimate_of(m, ways);
    const sb_estimate *before = ways->list.items[0].estimate;
    if (!has_cell(before, cell)) {
        made_free(m);
        made_free(other);
        return;
    }
    paper_named(document, cell)->amount = value;
    change_settings(other, before, cell, value);
    const sb_estimate *e = made_estimate(other);
    assert_int_equal(paper_worked(document, "cost"), e->cost.minor);
    assert_int_equal(paper_worked(document, "net"), e->net.minor);
    assert_int_equal(paper_worked(document, "total"), e->gross.minor);
    assert_int_equal(paper_worked(document, "deposit"), e->deposit.minor);
    assert_int_equal(paper_worked(document, "rest"), e->rest.minor);
    made_free(m);
    made_free(other);
}

static void a_changed_rate_runs_through(void **state) {
    (void)state;
    static const change changes[] = {{"margin_rate", 0, 700000, 1000},
                                     {"discount_rate", 0, 300000, 5000},
                                     {"price_point", 1, 500, 1},
                                     {"deposit_rate", 0, 900000, 10000},
                                     {"tax_rate", 0, 250000, 1000},
                                     {"tax_rate_2", 0, 250000, 1000},
                                     {"price_point_less", 0, 24, 1},
                                     {"minimum", 1, 300000, 1},
                                     {"stage_rate_1", 1, 300000, 1},
                                     {"delivery_each", 1, 9000, 1},
                                     {"contingency_rate", 0, 200000, 5000},
                                     {"overhead_rate", 1, 3000, 1},
                                     {"hourly_rate_1", 0, 9000, 1}};
    chance c = {77};
    for (int round = 0; round < 60; round++)
        for (size_t i = 0; i < sizeof changes / sizeof *changes; i++)
            check_change(&c, &changes[i]);
}

/* The price of each line of material, the credit for leftovers and the extras of the job among them. What the program says
 * with the same price on the same plan. */
static void a_changed_price_runs_through(void **state) {
    (void)state;
    chance c = {5};
    for (int round = 0; round < 60; round++) {
        chance same = c;
        made *m = made_by_chance(&c), *other = made_by_chance(&same);
        sb_document *document = estimate_of(m, paper_ways(m));
        sb_cell *const *prices = NULL;
        for (size_t b = 0; b < document->sheets.items[0]->blocks.count; b++) {
            const sb_table *table = document->sheets.items[0]->blocks.items[b].table;
            if (table && strcmp(table->headings[0].text, "Price of material") == 0)
                prices = table->rows.items;
        }
        assert_non_null(prices);
        for (size_t i = 0; i < other->order.lines.count; i++) {
            int64_t price = prices[i][2].amount + chance_from(&c, -200, 40000) * 10;
            price = price < 0 ? 0 : price;
            assert_true(prices[i][2].input);
            prices[i][2].amount = price;
            other->order.lines.items[i].each.milli = price;
        }
        const sb_estimate *e = made_estimate(other);
        assert_int_equal(paper_worked(document, "material_total"), e->material_total.minor);
        assert_int_equal(paper_worked(document, "total"), e->gross.minor);
        made_free(m);
        made_free(other);
    }
}

/* Every number of pieces follows the rates, and the one chosen is the one shown. */
static void numbers_of_pieces_follow(void **state) {
    (void)state;
    enum {
        NUMBERS = 3
    };
    static const change changes[] = {{"margin_rate", 0, 700000, 1000},
                                     {"overhead_rate", 1, 3000, 1},
                                     {"tax_rate", 0, 250000, 1000},
                                     {"contingency_rate", 0, 200000, 5000}};
    chance c = {31};
    for (int round = 0; round < 60; round++) {
        const change *what = &changes[round % 4];
        made *m[NUMBERS], *other[NUMBERS];
        chance shop = c;
        sb_breaks breaks = {.own = 1};
        for (int64_t i = 0; i < NUMBERS; i++) {
            chance same = shop, again = shop;
            m[i] = made_by_chance(&same);
            other[i] = made_by_chance(&again);
            c = same;
            /* more of everything that is counted */
            for (size_t l = 0; l < m[i]->order.lines.count; l++)
                m[i]->order.lines.items[l].count += 3 * i, other[i]->order.lines.items[l].count += 3 * i;
            if (!m[i]->shop.settings.taxes.count)
                made_tax(m[i], 100000), made_tax(other[i], 100000);
            SB_PUSH(m[0]->run.pool, breaks.list,
                    ((sb_break){i + 1, 7 * (i + 1), &m[i]->job, paper_ways(m[i])}));
        }
        sb_document *document =
            sb_paper_estimate(&m[1]->run, &m[1]->shop, &m[1]->job, breaks.list.items[1].ways, &breaks);
        assert_true(sb_document_sound(&m[1]->run, document));
        paper_agrees(document);
        const char *cell = what->cell;
        if (strcmp(cell, "margin_rate") == 0 && m[0]->shop.settings.method == SB_MARKUP_ON_COST)
            cell = "markup_rate";
        int64_t value =
            what->least + what->step * chance_from(&c, 0, (what->most - what->least) / what->step);
        const sb_estimate *before = breaks.list.items[1].ways->list.items[0].estimate;
        paper_named(document, cell)->amount = value;
        for (int64_t i = 0; i < NUMBERS; i++) {
            change_settings(other[i], before, cell, value);
            const sb_estimate *e = made_estimate(other[i]);
            paper_named(document, "quantity")->amount = 7 * (i + 1);
            assert_int_equal(paper_worked(document, "net"), e->net.minor);
            assert_int_equal(paper_worked(document, "total"), e->gross.minor);
            assert_int_equal(paper_worked(document, "floor"), e->floor.minor);
        }
        for (int64_t i = 0; i < NUMBERS; i++) {
            made_free(other[i]);
            if (i != 0)
                made_free(m[i]);
        }
        made_free(m[0]);
    }
}

/* ---- what stands where ----------------------------------------------------------------------------------------------- */

static void one_sheet_a_subject(void **state) {
    (void)state;
    static const char *const titles[] = {
        "Rates",  "Summary",           "Pieces",    "Inputs",  "Parts",  "Lengths", "Material",
        "Labour", "Boards and sheets", "Leftovers", "Sharing", "Options"};
    chance c = {3};
    made *m = made_by_chance(&c);
    sb_ways *ways = paper_ways(m);
    assert_true(m->takeoff.pieces.count > 1); /* one kind shares with nobody */
    assert_int_equal(estimate_of(m, ways)->sheets.count, 11);
    paper_two_options(m, ways);
    sb_document *document = estimate_of(m, ways);
    assert_int_equal(document->sheets.count, 12);
    for (size_t i = 0; i < 12; i++)
        assert_string_equal(document->sheets.items[i]->title, titles[i]);
    assert_true(paper_says(document, "Larch / panels")); /* a bar would split a heading */
    assert_true(paper_says(document, "counted from the cutting plan"));
    made_free(m);
}

/* A third of a minute is no decimal; the cell is seconds / 60 and the amounts stay exact. */
static void times_that_are_no_decimals(void **state) {
    (void)state;
    made *m = made_new(4321);
    const sb_operation *peg = made_operation(m, "peg", "Peg", SB_BY_EACH, 20000);
    made_work(m, made_piece(m, "Rail", 3), peg, 33333, "Peg");
    m->shop.settings.overhead_hour.minor = 1777;
    sb_document *document = estimate_of(m, paper_ways(m));
    paper_agrees(document);
    made_free(m);
}

/* Work by the metre and square metre stands in feet where the shop measures so: 1 ft = 0.3048 m exactly. */
static void work_in_the_shops_units(void **state) {
    (void)state;
    made *m = made_new(4321);
    m->shop.settings.style.units = SB_UNITS_IN;
    size_t piece = made_piece(m, "Rail", 3);
    made_work(m, piece, made_operation(m, "plane", "Plane", SB_BY_METRE, 20000), 33333, "Plane");
    made_work(m, piece, made_operation(m, "sand", "Sand", SB_BY_SQUARE_METRE, 360000), 1204, "Sand");
    sb_document *document = estimate_of(m, paper_ways(m));
    paper_agrees(document);
    const sb_table *works = NULL;
    for (size_t i = 0; i < document->sheets.count; i++)
        if (strcmp(document->sheets.items[i]->title, "Labour") == 0)
            works = document->sheets.items[i]->blocks.items[1].table;
    assert_non_null(works);
    const sb_cell *plane = works->rows.items[0], *sand = works->rows.items[1];
    assert_string_equal(plane[3].text, "ft");
    assert_int_equal(plane[2].amount, 1093602); /* 33.333 m */
    assert_int_equal(plane[4].amount, 101600);  /* a third of a minute a metre */
    assert_string_equal(sand[3].text, "ft2");
    assert_int_equal(sand[2].amount, 129597); /* 1.204 m2 */
    assert_int_equal(sand[4].amount, 557418); /* six minutes a square metre */
    made_free(m);
}

/* A workshop that pays nobody and a job that costs nothing divide by nothing. */
static void an_empty_job(void **state) {
    (void)state;
    made *m = made_new(0);
    made_piece(m, "Air", 1);
    sb_document *document = estimate_of(m, paper_ways(m));
    paper_agrees(document);
    assert_int_equal(paper_worked(document, "total"), 0);
    made_free(m);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(formulas_give_the_same_cents), cmocka_unit_test(a_changed_rate_runs_through),
        cmocka_unit_test(a_changed_price_runs_through), cmocka_unit_test(numbers_of_pieces_follow),
        cmocka_unit_test(one_sheet_a_subject),          cmocka_unit_test(times_that_are_no_decimals),
        cmocka_unit_test(work_in_the_shops_units),      cmocka_unit_test(an_empty_job),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
