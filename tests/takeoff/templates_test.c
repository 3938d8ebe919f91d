/* The recipes that come with the project as a workshop meets them: whatever is asked for within the ranges is made
 * and can be bought, or a check says why not; screws and bolts fit what they hold. Runs in the project's folder. */
#include "pieces.h"

/* ---- every recipe at the corners of its ranges ---- */

typedef struct corners {
    desk *d;
    const sb_recipe *recipe;
    int made, stopped;
} corners;

static bool a_check_says(const sb_recipe *recipe, const char *message) {
    for (size_t i = 0; i < recipe->checks.count; i++)
        if (!recipe->checks.items[i].advice && strcmp(message, recipe->checks.items[i].text) == 0)
            return true;
    return false;
}

/* Nothing but checks may stop a piece, and a check says more than a word or two. */
static void assert_checks_only(const corners *c, sb_run *run, const char *job) {
    for (size_t i = 0; i < sb_notices_count(run, SB_NOTE); i++) {
        const char *message = sb_notices_message(run, i);
        if (sb_notices_level(run, i) >= SB_ERROR &&
            (!a_check_says(c->recipe, message) || strlen(message) < 20))
            fail_msg("%s%s", job, sb_notices_text(run, SB_ERROR, false));
    }
}

static sb_length trim_of(sb_length told, sb_length saws) {
    return told.nm == SB_BAD ? saws : told;
}

static bool board_holds(const sb_settings *s, const sb_offer *offer, const sb_part *part) {
    int64_t trims = trim_of(offer->trim1, s->crosscut.trim).nm + trim_of(offer->trim2, s->crosscut.trim).nm;
    return (s->vehicle.nm == 0 || offer->length.nm <= s->vehicle.nm) &&
           part->cut_length.nm <= offer->length.nm - trims && part->cut_width.nm <= part->stock->width.nm;
}

static bool sheet_holds(const sb_settings *s, const sb_offer *offer, const sb_part *part) {
    int64_t trims = 2 * s->panel.trim.nm, long_side = offer->length.nm - trims,
            short_side = offer->width.nm - trims;
    bool along = part->cut_length.nm <= long_side && part->cut_width.nm <= short_side;
    bool turned = part->cut_width.nm <= long_side && part->cut_length.nm <= short_side;
    return part->grain == SB_GRAIN_ALONG ? along : part->grain == SB_GRAIN_ACROSS ? turned : along || turned;
}

static bool can_be_bought(const sb_shop *shop, const sb_part *part) {
    for (size_t i = 0; i < part->stock->offers.count; i++) {
        const sb_offer *offer = &part->stock->offers.items[i];
        if (part->stock->kind == SB_STOCK_SHEET ? sheet_holds(&shop->settings, offer, part)
                                                : board_holds(&shop->settings, offer, part))
            return true;
    }
    return false;
}

static void assert_parts_sound(const sb_shop *shop, const sb_takeoff *t, const char *job) {
    assert_true(t->parts.count > 0);
    for (size_t i = 0; i < t->parts.count; i++) {
        const sb_part *part = &t->parts.items[i];
        bool sound = part->length.nm > 0 && part->width.nm > 0 && part->thickness.nm > 0 && part->count > 0 &&
                     part->count <= 500 && part->cut_length.nm >= part->length.nm - MM(2);
        if (!sound || !can_be_bought(shop, part))
            fail_msg("%s%lld %s of %s: %.1f x %.1f x %.1f mm", job, (long long)part->count, part->name,
                     part->stock->id, mm(part->length), mm(part->width), mm(part->thickness));
    }
}

static void try_corner(corners *c, const char *sets) {
    sb_run run = sb_run_new();
    desk corner = {.run = run, .shop = c->d->shop};
    corner.book = sb_recipe_book_open(&corner.run, "templates", false);
    const char *job = sb_pool_print(corner.run.pool, "piece p\n  recipe %s\n%s", c->recipe->name, sets);
    const sb_takeoff *t = try_takeoff(&corner, job, NULL);
    assert_checks_only(c, &corner.run, job);
    if (sb_ok(&corner.run)) {
        assert_parts_sound(c->d->shop, t, job);
        c->made++;
    } else {
        c->stopped++;
    }
    sb_run_free(&corner.run);
}

static const char *value_text(sb_run *run, const sb_formula *formula) {
    return formula ? sb_place_text(run, sb_formula_place(formula)) : NULL;
}

/* Least, most and standard of every input with each other, and all words of all choices. */
static void try_corners(corners *c, size_t input, const char *sets) {
    sb_run *run = &c->d->run;
    if (input == c->recipe->inputs.count + c->recipe->choices.count) {
        try_corner(c, sets);
    } else if (input < c->recipe->inputs.count) {
        const sb_recipe_input *in = &c->recipe->inputs.items[input];
        const char *values[] = {value_text(run, in->least), value_text(run, in->most),
                                value_text(run, in->standard)};
        assert_true(values[0] && values[1]); /* every input has a range */
        for (size_t i = 0; i < 3; i++)
            try_corners(c, input + 1, sb_pool_print(run->pool, "%s  set %s %s\n", sets, in->name, values[i]));
    } else {
        const sb_recipe_choice *choice = &c->recipe->choices.items[input - c->recipe->inputs.count];
        for (size_t i = 0; i < choice->words.count; i++)
            try_corners(
                c, input + 1,
                sb_pool_print(run->pool, "%s  set %s %s\n", sets, choice->name, choice->words.items[i]));
    }
}

static void try_recipe(desk *d, const char *rates, const char *name) {
    open_rates(d, rates);
    corners c = {.d = d, .recipe = sb_recipe_book_get(&d->run, d->book, name, (sb_place){0})};
    assert_non_null(c.recipe);
    assert_true(strlen(c.recipe->about) > 60);
    try_corners(&c, 0, "");
    if (c.made <= c.stopped)
        fail_msg("%s: %d corners are stopped, %d made: the ranges are too wide", name, c.stopped, c.made);
}

static void corners_are_sound(void **state) {
    for (size_t i = 0; i < RECIPES; i++) {
        try_recipe(*state, "rates", recipe_names[i]);
        try_recipe(*state, "rates/imperial", recipe_names[i]);
    }
}

/* ---- as the recipes stand, in both shops ---- */

static void assert_planned(desk *d, const char *rates, const char *recipe) {
    open_rates(d, rates);
    const sb_takeoff *t = takeoff(d, sb_pool_print(d->run.pool, "piece p\n  recipe %s\n", recipe));
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
    const sb_plan *plan = sb_plan_make(&d->run, &list->problem);
    const sb_order *order = sb_order_of(&d->run, d->shop, &t, 1, list, plan, false);
    if (!order || order->lines.count == 0 || sb_notices_count(&d->run, SB_ADVICE) > 0)
        desk_fail(d, sb_pool_print(d->run.pool, "%s with %s", recipe, rates));
    assert_true(*t->pieces.items[0].size_text);
}

static void every_recipe_is_planned_and_ordered(void **state) {
    for (size_t i = 0; i < RECIPES; i++) {
        assert_planned(*state, "rates", recipe_names[i]);
        assert_planned(*state, "rates/imperial", recipe_names[i]);
    }
}

/* ---- screws and bolts: long enough to hold, not so long that the point shows ---- */

typedef struct hold {
    const char *recipe, *sets, *fixing;
    const char *first, *second, *third; /* what it goes through: PART/thickness, /width or /length */
} hold;

static double through(const sb_takeoff *t, const char *what) {
    char name[64];
    const char *way = strrchr(what, '/');
    snprintf(name, sizeof name, "%.*s", (int)(way - what), what);
    const sb_part *part = part_named(t, name);
    return mm(strcmp(way, "/length") == 0  ? part->length
              : strcmp(way, "/width") == 0 ? part->width
                                           : part->thickness);
}

/* "Screw 5 x 60, stainless" is 60 mm long. */
static double length_of(const desk *d, const char *stock) {
    const char *x = strstr(sb_shop_stock(d->shop, stock)->title, " x ");
    assert_non_null(x);
    return atof(x + 3);
}

static const char slatted[] = "", panelled[] = "  set sides panelled\n";

/* A screw goes at least 20 mm into the second piece, or as deep as the first is thick where that is less, and does
 * not come out behind. Common practice, no source. */
static void screws_hold_and_do_not_show(void **state) {
    static const hold holds[] = {
        {"trough-planter", slatted, "screw-5x60", "long-slat/thickness", "post/width", NULL},
        {"trough-planter", panelled, "screw-5x60", "long-panel/thickness", "post/width", NULL},
        {"trough-planter", slatted, "screw-5x60", "floor-board/thickness", "bearer/width", NULL},
        {"trough-planter", slatted, "screw-5x60", "long-rim/thickness", "post/length", NULL},
        {"trough-planter", slatted, "screw-6x80", "bearer/thickness", "post/width", NULL},
        {"splayed-planter", "", "screw-5x60", "side/thickness", "side/width", NULL},
        {"splayed-planter", "", "screw-4x40", "batten/thickness", "side/thickness", NULL},
        {"garden-bench", "", "screw-5x60", "seat-slat/thickness", "side-rail/width", NULL},
        {"garden-bench", "", "screw-5x60", "back-slat/thickness", "back-leg/width", NULL},
        {"garden-bench", "", "screw-6x80", "side-rail/thickness", "block/thickness", NULL},
        {"garden-bench", "", "screw-6x80", "long-rail/thickness", "cross-rail/length", NULL},
        {"shelf-unit", "", "screw-4x40", "side/thickness", "back-rail/length", NULL},
        {"shelf-unit", "", "screw-4x40", "shelf/thickness", "back-rail/width", NULL},
        {"ledged-gate", "", "screw-4x40", "board/thickness", "ledge/thickness", NULL},
        {"ledged-gate", "", "screw-4x40", "board/thickness", "brace/thickness", NULL},
        {"raised-bed", "", "screw-6x80", "long-plank/thickness", "post/thickness", NULL},
        {"raised-bed", "", "screw-6x80", "tie/thickness", "post/thickness", NULL},
        {"planter-seat", "", "screw-5x60", "seat-slat/thickness", "ledger/width", NULL},
        {"planter-seat", "", "screw-5x60", "seat-slat/thickness", "crosspiece/width", NULL},
    };
    desk *d = *state;
    open_rates(d, "rates");
    for (size_t i = 0; i < sizeof holds / sizeof *holds; i++) {
        const hold *h = &holds[i];
        const sb_takeoff *t =
            takeoff(d, sb_pool_print(d->run.pool, "piece p\n  recipe %s\n%s", h->recipe, h->sets));
        double first = through(t, h->first), second = through(t, h->second), screw = length_of(d, h->fixing);
        if (used(t, h->fixing) == 0 || screw < first + fmin(20, first) || screw > first + second)
            fail_msg("%s: %lld of %s through %.1f mm into %.1f mm", h->recipe, (long long)used(t, h->fixing),
                     h->fixing, first, second);
    }
}

/* A bolt goes through all and leaves some 10 mm for washer and nut: an M8 nut is 6.8 mm high, a washer 1.6 mm thick (ISO 4032
 * and ISO 7089, from memory). */
static void bolts_take_their_nuts(void **state) {
    static const hold holds[] = {
        {"garden-bench", "", "bolt-8x100", "front-leg/thickness", "side-rail/thickness", NULL},
        {"planter-seat", "", "bolt-8x100", "leg/thickness", "crosspiece/thickness", NULL},
        {"planter-seat", "", "bolt-8x160", "ledger/thickness", "long-slat/thickness", "post/thickness"},
    };
    desk *d = *state;
    open_rates(d, "rates");
    for (size_t i = 0; i < sizeof holds / sizeof *holds; i++) {
        const hold *h = &holds[i];
        const sb_takeoff *t = takeoff(d, sb_pool_print(d->run.pool, "piece p\n  recipe %s\n", h->recipe));
        double all = through(t, h->first) + through(t, h->second) + (h->third ? through(t, h->third) : 0);
        double bolt = length_of(d, h->fixing);
        assert_true(used(t, h->fixing) > 0);
        assert_true(bolt >= all + 6.8 + 1.6 && bolt <= all + 30);
    }
}

/* Inches: the screws of the workbench, whose lengths stand in their titles. */
static void workbench_screws(void **state) {
    desk *d = *state;
    open_rates(d, "rates/imperial");
    const sb_takeoff *t = takeoff(d, "piece p\n  recipe workbench\n");
    double inch = 25.4, rail = through(t, "long-rail/thickness"), leg = through(t, "leg/thickness"),
           plank = through(t, "top-plank/thickness"), skin = through(t, "top-skin/thickness");
    assert_non_null(strstr(sb_shop_stock(d->shop, "screw-2-1-2in")->title, "x 2 1/2 in"));
    assert_true(2.5 * inch < rail + leg && 2.5 * inch >= rail + 20);
    assert_true(3 * inch <= plank + through(t, "long-rail/width") && 3 * inch >= plank + 20);
    assert_true(2 * inch < skin + plank && 2 * inch >= skin + 20);
    assert_true(used(t, "screw-2-1-2in") > 0 && used(t, "screw-3in") > 0 && used(t, "screw-2in") > 0);
}

/* ---- counted by hand ---- */

static void trough_counts(void **state) {
    /* 1000 mm: four posts; 450 high: clad 410, four rows of 95 and three gaps of 10; floor: 960 less two short boards,
     * 770, seven boards of 95 with gaps of 13 */
    const sb_takeoff *t = made(*state, "piece p\n  recipe trough-planter\n  count 2\n");
    assert_int_equal(parts_named(t, "post"), 2 * 4);
    assert_int_equal(parts_named(t, "long-slat"), 2 * 8);
    assert_int_equal(parts_named(t, "floor-board"), 2 * 7);
    assert_int_equal(parts_named(t, "post-board"), 2 * 2);
    /* 16 slats with four screws, nine floor boards with two, four rim pieces with four */
    assert_int_equal(used(t, "screw-5x60"), 2 * (16 * 4 + 9 * 2 + 4 * 4));
    assert_int_equal(used(t, "screw-6x80"), 2 * (2 * 4));
    /* 2 x 1.4 x 0.41 + 0.4 m2 = 1.548 m2 of film, bought by the square metre */
    assert_int_equal(used(t, "planter-film"), 2 * 2);
    assert_int_equal(worked_milli(t, "mitre-corner"), 2 * 4 * 1000);
    assert_int_equal(worked_milli(t, "assemble"), 2 * (20 + 6 * 4) * 1000);
}

static void gate_counts(void **state) {
    /* 900 mm: six full boards, two of 83 mm, 2 mm between; over 1500 mm three ledges and two braces */
    const sb_takeoff *t = made(*state, "piece p\n  recipe ledged-gate\n");
    assert_int_equal(parts_named(t, "board"), 6);
    assert_mm(part_named(t, "outer-board")->width, 83);
    assert_int_equal(parts_named(t, "ledge"), 2);
    /* two screws where a board crosses ledge or brace, sixteen for hinges and latch */
    assert_int_equal(used(t, "screw-4x40"), 2 * 8 * 3 + 16);
    const sb_takeoff *high = takeoff(*state, "piece p\n  recipe ledged-gate\n  set high 1800 mm\n");
    assert_int_equal(parts_named(high, "ledge"), 3);
    assert_int_equal(parts_named(high, "brace"), 2);
}

static void a_regular_frame_tells_its_circle(void **state) {
    /* a hexagon's corners lie on a circle of twice its side */
    const sb_takeoff *t =
        made(*state, "piece p\n  recipe mitred-frame\n  set shape regular\n  set wide 500 mm\n");
    assert_mm(t->pieces.items[0].size[0], 1000);
    assert_mm(part_named(t, "bar")->length, 500);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(corners_are_sound),
        AT_DESK(every_recipe_is_planned_and_ordered),
        AT_DESK(screws_hold_and_do_not_show),
        AT_DESK(bolts_take_their_nuts),
        AT_DESK(workbench_screws),
        AT_DESK(trough_counts),
        AT_DESK(gate_counts),
        AT_DESK(a_regular_frame_tells_its_circle),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
