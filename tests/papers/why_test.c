/* Where a figure comes from: every figure on the papers has an answer, down to its line. */
#include "sample.h"

static const sb_way *first(const sample *s) {
    return &s->ways->list.items[0];
}

static const sb_document *why(sample *s, const char *figure) {
    const sb_document *paper = sample_why(s, figure);
    if (!paper || !sb_ok(&s->run))
        sample_fail(s, figure);
    return paper;
}

static void every_step_of_the_price(void **state) {
    (void)state;
    static const char *const figures[] = {
        "material",    "labour",   "overhead", "cost",  "contingency", "base",  "price", "discount",
        "pieces",      "delivery", "net",      "tax",   "total",       "gross", "floor", "earned per hour",
        "margin left", "deposit",  "hours",    "TOTAL", "margin",      "markup"};
    sample s;
    sample_open(&s, "harbour-planters");
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        why(&s, figures[i]);
    sample_close(&s);
}

/* What stands beside the price on the papers has an answer under the words printed there, and the place it goes by. */
static void figures_beside_the_price(void **state) {
    (void)state;
    static const char *const figures[][2] = {{"Lead time, days", "rates/shop.txt:"},
                                             {"Hourly rate: bench", "rates/shop.txt:"},
                                             {"office", "38.00 EUR"},
                                             {"Waste", "in parts"},
                                             {"Spare for defects", "planned for knots"},
                                             {"Cutting plan", "no plan under"},
                                             {"Weight, kg", "kg/m3"},
                                             {"10 % of cases cost at most", "draws"},
                                             {"Net price that pays in 90 % of cases", "draws"},
                                             {"when the frames are glued", "what is due up to here"},
                                             {"Stage: when the frames are glued", "the total with tax"}};
    sample s;
    sample_own(&s, "harbour-planters");
    sb_estimate *e = (sb_estimate *)first(&s)->estimate;
    sb_stage stage = {.share = {300000}, .text = "when the frames are glued"};
    SB_PUSH(s.run.pool, e->stages, stage);
    for (size_t i = 0; i < sizeof figures / sizeof *figures; i++)
        assert_true(told(why(&s, figures[i][0]), figures[i][1]) > 0);
    sample_close(&s);
}

static void the_total_is_the_whole_chain(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_document *paper = why(&s, "total");
    static const char *const steps[] = {"material", "labour",   "overhead", "cost", "contingency", "base",
                                        "price",    "discount", "delivery", "net",  "tax"};
    for (size_t i = 0; i < sizeof steps / sizeof *steps; i++)
        assert_true(told(paper, steps[i]) > 0);
    const char *gross = sb_write_money(&s.run, first(&s)->estimate->gross, s.shop->settings.currency,
                                       &s.shop->settings.style);
    assert_true(told(paper, gross) > 0);
    assert_true(told(paper, "rates/shop.txt:") > 0);
    sample_close(&s);
}

static void parts_stock_work_and_pieces(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_way *way = first(&s);
    for (size_t i = 0; i < way->takeoff->parts.count; i++) {
        const sb_document *paper = why(&s, way->takeoff->parts.items[i].title);
        assert_true(told(paper, ".recipe:") > 0);
    }
    for (size_t i = 0; i < way->order->lines.count; i++)
        assert_true(told(why(&s, way->order->lines.items[i].stock->id), ".csv:") > 0);
    for (size_t i = 0; i < way->estimate->labour.count; i++)
        assert_true(told(why(&s, way->estimate->labour.items[i].operation->id), "operations.csv:") > 0);
    for (size_t i = 0; i < way->takeoff->pieces.count; i++)
        assert_true(told(why(&s, way->takeoff->pieces.items[i].title), "unit price") > 0);
    sample_close(&s);
}

static void a_length_shows_its_formula(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    const sb_document *paper = why(&s, "short slat");
    assert_true(told(paper, "wide - 2 * slat.thickness = 400 mm - 2 * 20 mm = 360 mm") == 1);
    sample_close(&s);
}

/* What is cut longer than it ends up says by how much and what for; what was bought, in which size and of whom. */
static void lengths_and_sizes_are_told(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    assert_int_equal(told(why(&s, "brace"), "finished length + 2 mm to trim to fit"), 1);
    assert_int_equal(told(why(&s, "brace"), "over-length"), 0);
    const sb_order *order = first(&s)->order;
    for (size_t i = 0; i < order->lines.count && order->lines.items[i].offer; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (line->stock->kind != SB_STOCK_BOARD)
            continue;
        const char *bought = sb_pool_print(
            s.run.pool, "%d x %s, %s", (int)line->count,
            sb_write_length_unit(&s.run, line->offer->length, &s.shop->settings.style), line->merchant);
        assert_int_equal(told(why(&s, line->stock->id), bought), 1);
    }
    sample_close(&s);
}

/* Figures come in the words of the papers: a part of one piece by either of its names. */
static void a_part_of_one_piece(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    static const char *const asked[] = {"long.post", "Long trough.post", "post (Long trough)"};
    for (size_t i = 0; i < sizeof asked / sizeof *asked; i++) {
        assert_int_equal(told(why(&s, asked[i]), "long, post"), 1);
        assert_int_equal(told(why(&s, asked[i]), "short, post"), 0);
    }
    assert_int_equal(told(why(&s, "post"), "short, post"), 1);
    sample_close(&s);
}

/* Inputs, choices and derived values: the formula with its values, its line, and what it rests on. */
static void values_of_a_recipe(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *field = why(&s, "field");
    assert_int_equal(told(field, "(1150 mm - 2 * 150 mm - 2 * 145 mm) / (2 - 1) = 560 mm; "
                                 "templates/ledged-gate.recipe:25"),
                     1);
    assert_int_equal(told(field, "set to 1150 mm; samples/rack-bench.job:15"), 1);
    assert_int_equal(told(field, "the recipe's own: 150 mm; templates/ledged-gate.recipe:10"), 1);
    assert_int_equal(told(field, "larch-28x145"), 1);
    assert_int_equal(told(why(&s, "gate.wide"), "set to 950 mm"), 1);
    sample_close(&s);
    sample_open(&s, "harbour-planters");
    assert_int_equal(told(why(&s, "sides"), "the first of slatted | panelled"), 2);
    sample_close(&s);
}

/* A length off the step is shown as it is, with what became of it: 560 / sin 38.7299 + 120 / tan 38.7299 is 1044.653. */
static void lengths_before_they_are_rounded(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_document *paper = why(&s, "gate.brace");
    assert_int_equal(told(paper, "brace-length = ~1044.653 mm, rounded up to 1045 mm"), 1);
    assert_int_equal(told(paper, "gate, brace-length"), 1);
    assert_int_equal(told(why(&s, "gate.board"), "rounded"), 0);
    sample_close(&s);
}

/* Prices by the metre have more decimals than the cent: what is multiplied is what is shown. */
static void prices_with_all_their_decimals(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "harbour-planters");
    assert_int_equal(told(why(&s, "material"), "2 x 5.18936 EUR"), 1);
    const sb_document *work = why(&s, "fetch-part");
    assert_int_equal(told(work, "4.4333 h"), 1);
    sample_close(&s);
}

static void which_figures_there_are(void **state) {
    (void)state;
    sample s;
    for (int i = 0; i < SAMPLES; i++) {
        sample_open(&s, sample_names[i]);
        const sb_document *list = sample_why(&s, NULL);
        fits_eighty_columns(&s.run, list);
        const sb_record *groups = sample_why_record(&s, NULL)->first;
        assert_string_equal(groups->key, "figures");
        int count = 0;
        for (const sb_record *group = groups->first; group; group = group->next)
            for (const sb_record *name = group->last->first; name; name = name->next, count++)
                why(&s, name->text);
        assert_true(count > 50);
        sample_close(&s);
    }
}

static void near_misses(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    assert_null(sample_why(&s, "totl"));
    assert_non_null(strstr(sb_notices_message(&s.run, 0), "\"total\""));
    assert_null(sample_why_record(&s, "larch-45x59"));
    assert_non_null(strstr(sb_notices_message(&s.run, 1), "\"larch-45x95\""));
    assert_null(sample_why(&s, "slat"));
    assert_non_null(strstr(sb_notices_message(&s.run, 2), "\"seat-slat\""));
    assert_non_null(strstr(sb_notices_message(&s.run, 2), "\"back-slat\""));
    assert_null(sample_why(&s, "gate.barce"));
    assert_non_null(strstr(sb_notices_message(&s.run, 3), "\"brace\""));
    assert_null(sample_why(&s, "xylophone"));
    assert_non_null(strstr(sb_notices_message(&s.run, 4), "without a figure"));
    sample_close(&s);
}

static void the_record_says_the_same(void **state) {
    (void)state;
    sample s;
    sample_open(&s, "rack-bench");
    const sb_record *record = sample_why_record(&s, "net");
    const sb_record *steps = record->first->next;
    assert_string_equal(record->first->text, "net");
    size_t count = 0;
    for (const sb_record *step = steps->first; step; step = step->next)
        count++;
    assert_true(count >= 8);
    /* what is money is told as a decimal string too, as everywhere in records */
    const sb_record *material = steps->first;
    const char *money = NULL;
    for (const sb_record *field = material->first; field; field = field->next)
        if (strcmp(field->key, "money") == 0)
            money = field->text;
    assert_non_null(money);
    assert_int_equal(strspn(money, "-0123456789."), strlen(money));
    sample_close(&s);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(every_step_of_the_price),
        cmocka_unit_test(figures_beside_the_price),
        cmocka_unit_test(the_total_is_the_whole_chain),
        cmocka_unit_test(parts_stock_work_and_pieces),
        cmocka_unit_test(a_length_shows_its_formula),
        cmocka_unit_test(lengths_and_sizes_are_told),
        cmocka_unit_test(near_misses),
        cmocka_unit_test(a_part_of_one_piece),
        cmocka_unit_test(values_of_a_recipe),
        cmocka_unit_test(lengths_before_they_are_rounded),
        cmocka_unit_test(prices_with_all_their_decimals),
        cmocka_unit_test(which_figures_there_are),
        cmocka_unit_test(the_record_says_the_same),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
