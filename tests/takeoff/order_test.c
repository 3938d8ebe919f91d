/* The order: boards as planned, the cheapest packs, the rack first, minimums kept. */
#include "desk.h"

/* A plan by hand: `count` boards or sheets of one supply. */
static void plan_boards(desk *d, sb_plan *plan, const sb_cutlist *list, size_t supply, int64_t count) {
    plan->problem = &list->problem;
    sb_board_plan board = {.supply = supply, .count = count};
    SB_PUSH(d->run.pool, plan->boards, board);
}

static const sb_order *order_of(desk *d, const sb_takeoff *t, bool reorder) {
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
    sb_plan plan = {.problem = &list->problem};
    return sb_order_of(&d->run, d->shop, &t, 1, list, &plan, reorder);
}

static const sb_order *order_recipe(desk *d, const char *recipe, int count, bool reorder) {
    const sb_takeoff *t = takeoff_recipe(d, recipe, count);
    const sb_order *order = order_of(d, t, reorder);
    if (!sb_ok(&d->run))
        desk_fail(d, recipe);
    return order;
}

static const sb_order_line *line_of(const sb_order *order, const char *merchant, const char *stock, int nth) {
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_order_line *line = &order->lines.items[i];
        if (strcmp(line->merchant, merchant) == 0 && strcmp(line->stock->id, stock) == 0 && nth-- == 0)
            return line;
    }
    fail_msg("no line for %s of %s", stock, merchant);
    return NULL;
}

/* ---- boards --------------------------------------------------------------------------------------------------------- */

static void boards_are_bought_as_planned(void **state) {
    desk *d = *state;
    const sb_takeoff *t =
        takeoff_recipe(d, "stock rail slat\npart a\n  count 20\n  of rail\n  length 1 m\n", 1);
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
    sb_plan plan = {0};
    plan_boards(d, &plan, list, 0, 2); /* rack, 2 m */
    plan_boards(d, &plan, list, 4, 2); /* 5 m of Alder Yard */
    plan_boards(d, &plan, list, 2, 1); /* 3 m of Fen Timber */
    plan_boards(d, &plan, list, 2, 3); /* and again, cut otherwise */
    const sb_order *order = sb_order_of(&d->run, d->shop, &t, 1, list, &plan, false);
    assert_int_equal(order->lines.count, 3);
    assert_string_equal(order->lines.items[0].merchant, "Alder Yard");
    assert_int_equal(order->lines.items[0].count, 2);
    assert_int_equal(order->lines.items[0].amount.minor, 2500);
    assert_string_equal(order->lines.items[1].merchant, "Fen Timber");
    assert_int_equal(order->lines.items[1].count, 4);
    assert_int_equal(order->lines.items[1].amount.minor, 3600);
    const sb_order_line *rack = &order->lines.items[2];
    assert_string_equal(rack->merchant, "");
    assert_string_equal(rack->rack->label, "R1");
    assert_null(rack->offer);
    assert_int_equal(rack->amount.minor, 500);
    assert_int_equal(order->total.minor, 6100);
}

/* ---- packs ---------------------------------------------------------------------------------------------------------- */

static void the_rack_goes_first_then_the_cheapest_packs(void **state) {
    const sb_order *order = order_recipe(*state, "fixing screw 430\n", 1, false);
    /* 150 from the rack; 280 open: 200 + 100 cost 32.00, two of 200 cost 40.00, three of 100 cost 36.00 */
    const sb_order_line *big = line_of(order, "Fen Timber", "screw", 0),
                        *small = line_of(order, "Alder Yard", "screw", 0);
    const sb_order_line *rack = line_of(order, "", "screw", 0);
    assert_int_equal(order->lines.count, 3);
    assert_int_equal(big->count, 1);
    assert_int_equal(small->count, 1);
    assert_int_equal(small->needed, 100);
    assert_int_equal(big->needed + small->needed + rack->needed, 430);
    assert_int_equal(rack->count, 150);
    assert_int_equal(rack->amount.minor, 750);
    assert_int_equal(order->total.minor, 3200);
}

static void what_a_tin_gives_is_one_lot(void **state) {
    const sb_order *order = order_recipe(*state,
                                         "stock rail knotty\n"
                                         "part a\n  count 15\n  of rail\n  length 10 m\n  outside face\n"
                                         "finish oil 1 coats on outside\n",
                                         1, false);
    /* 1250 ml: 400 from the rack at 18.00 a litre new, the rest from one tin of a litre */
    const sb_order_line *rack = line_of(order, "", "oil", 0), *tin = line_of(order, "Alder Yard", "oil", 0);
    assert_int_equal(rack->count, 1);
    assert_int_equal(rack->needed, 400);
    assert_int_equal(rack->amount.minor, 720);
    assert_int_equal(tin->count, 1);
    assert_int_equal(tin->offer->pack, 1000);
    assert_int_equal(tin->needed, 850);
}

static void availability_is_kept(void **state) {
    desk *d = *state;
    order_of(d, takeoff_recipe(d, "fixing rare 4\n", 1), false);
    assert_false(sb_ok(&d->run));
    assert_non_null(strstr(sb_notices_message(&d->run, 0), "has no parts"));
    assert_non_null(strstr(sb_notices_message(&d->run, 1), "nobody sells enough of rare: 4"));
}

static void lines_go_by_merchant_then_as_in_stock(void **state) {
    const sb_order *order =
        order_recipe(*state,
                     "glue glue 1 m * 1 m\nfixing disc 1\nfixing screw 1000\n"
                     "stock rail random-lost\npart a\n  of rail\n  length 1 m\n  width 100 mm\n",
                     1, false);
    static const char *const expected[] = {"Alder Yard glue", "Alder Yard disc", "Fen Timber random-lost",
                                           "Fen Timber screw"};
    /* 850 screws are open: 4 x 200 and 100, from two merchants */
    size_t at = 0;
    for (size_t i = 0; i < order->lines.count; i++) {
        char text[80];
        snprintf(text, sizeof text, "%s %s", order->lines.items[i].merchant, order->lines.items[i].stock->id);
        if (strcmp(text, "Alder Yard screw") != 0 && *order->lines.items[i].merchant)
            assert_string_equal(text, expected[at++]);
    }
    assert_int_equal(at, 4);
    assert_string_equal(order->lines.items[0].stock->id, "screw");
    assert_string_equal(order->lines.items[order->lines.count - 1].merchant, "");
}

/* ---- by volume ------------------------------------------------------------------------------------------------------- */

static void timber_by_volume_is_one_lot(void **state) {
    const sb_order *order = order_recipe(*state,
                                         "stock top random-lost\n"
                                         "part a\n  count 100\n  of top\n  length 1 m\n  width 100 mm\n",
                                         1, false);
    /* 0.428571 m3, to the litre above: 0.429 m3 at 2000.00 */
    const sb_order_line *line = &order->lines.items[0];
    assert_int_equal(order->lines.count, 1);
    assert_int_equal(line->count, 1);
    assert_int_equal(line->needed, INT64_C(428571428572));
    assert_int_equal(line->amount.minor, 85800);
}

/* 12 x 12 x 1 in is one board foot, 0.002359737216 m3 exactly (definitions of GNU units; the exact product). */
static void board_feet_are_counted_from_volume(void **state) {
    const sb_order *order = order_recipe(*state,
                                         "stock top random-bf\n"
                                         "part a\n  count 10\n  of top\n  length 12 in\n  width 12 in\n",
                                         1, false);
    /* on a step of 1 mm a foot is 305 mm: 10 x 305 x 305 x 25.4 mm3 are 10.013 board feet, at 6.00 */
    assert_int_equal(order->lines.items[0].needed, INT64_C(10) * 305 * 305 * 25400);
    assert_int_equal(order->lines.items[0].each.milli, 10014 * 600);
}

/* Pieces under an inch count as an inch: 3/4 in x 6 in x 8 ft are 4 board feet, not 3 (goodwoodcorp.com, hardwood terminology). On a
 * step of 1 mm they are 2439 x 153 mm and come to 4.017. */
static void thin_boards_count_as_an_inch(void **state) {
    const sb_order *order =
        order_recipe(*state, "stock top thin-bf\npart a\n  of top\n  length 8 ft\n  width 6 in\n", 1, false);
    assert_int_equal(order->lines.items[0].each.milli, 4017 * 600);
}

static void the_rack_is_left_alone_when_the_job_says_so(void **state) {
    desk *d = *state;
    open_shop(d);
    add_recipe(d, "recipe thing\nfixing screw 100\n");
    const sb_order *order = order_of(d, takeoff(d, "piece it\n  recipe thing\nrack no\n"), false);
    assert_int_equal(order->lines.count, 1);
    assert_string_equal(order->lines.items[0].merchant, "Alder Yard");
    assert_int_equal(order->lines.items[0].count, 1);
}

/* ---- minimums ---------------------------------------------------------------------------------------------------------- */

static void stock_under_its_minimum_is_bought_again(void **state) {
    const sb_order *order = order_recipe(*state, "fixing screw 100\n", 1, true);
    /* 50 of 150 screws are left, 200 should be: 150 more. Of six slats three are there: 3 at the lowest price a
     * metre; the 5 m boards of Alder Yard cost least but the van carries 4.8 m. */
    const sb_order_line *screws = line_of(order, "Fen Timber", "screw", 0),
                        *slats = line_of(order, "Fen Timber", "slat", 0);
    assert_int_equal(order->lines.count, 3);
    assert_true(screws->reorder);
    assert_int_equal(screws->count, 1);
    assert_int_equal(screws->needed, 0);
    assert_true(slats->reorder);
    assert_int_equal(slats->count, 3);
    assert_mm(slats->offer->length, 4000);
    assert_int_equal(order->total.minor, 2000 + 3300);
}

static void what_a_pack_has_over_counts_for_the_minimum(void **state) {
    const sb_order *order = order_recipe(*state, "fixing screw 151\n", 1, true);
    /* one screw short of the rack: a pack of 100 leaves 99 over, 101 are missing to the minimum of 200 */
    const sb_order_line *first = line_of(order, "Alder Yard", "screw", 0),
                        *again = line_of(order, "Fen Timber", "screw", 0);
    assert_false(first->reorder);
    assert_int_equal(first->count, 1);
    assert_true(again->reorder);
    assert_int_equal(again->count, 1);
}

/* ---- the cheapest packs against all choices ------------------------------------------------------------------------------ */

static uint64_t seed;
static int64_t random_to(int64_t most) { /* 1 to most */
    seed = seed * 6364136223846793005u + 1442695040888963407u;
    return (int64_t)((seed >> 33) % (uint64_t)most) + 1;
}

/* The least cost of covering `open` with offers from `from` on; all choices are tried. */
static int64_t by_trying(const sb_stock *stock, size_t from, int64_t open) {
    if (open <= 0)
        return 0;
    if (from == stock->offers.count)
        return INT64_MAX / 2;
    const sb_offer *offer = &stock->offers.items[from];
    int64_t best = INT64_MAX / 2;
    for (int64_t n = 0;
         n * offer->pack < open + offer->pack && (offer->available < 0 || n <= offer->available); n++) {
        int64_t cost = n * offer->each.milli + by_trying(stock, from + 1, open - n * offer->pack);
        if (cost < best)
            best = cost;
    }
    return best;
}

static void no_choice_of_packs_is_cheaper(void **state) {
    desk *d = *state;
    sb_stock stock = {.id = "nail", .title = "Nail", .kind = SB_STOCK_FIXING};
    sb_shop shop = {.folder = ""};
    sb_job job = {.name = "job"};
    SB_PUSH(d->run.pool, shop.stock, &stock);
    seed = 20260302;
    for (int round = 0; round < 400; round++) {
        stock.offers.count = 0;
        for (int64_t i = random_to(4); i > 0; i--) {
            sb_offer offer = {
                .merchant = "m", .sold = "", .pack = random_to(25), .available = random_to(3) == 1 ? random_to(4) : -1};
            offer.each.milli = offer.pack * 1000 + random_to(6000);
            SB_PUSH(d->run.pool, stock.offers, offer);
        }
        sb_takeoff t = {.shop = &shop, .job = &job};
        sb_usage usage = {.stock = &stock, .amount = random_to(90)};
        SB_PUSH(d->run.pool, t.usages, usage);
        const sb_takeoff *one = &t;
        size_t before = sb_notices_count(&d->run, SB_ERROR);
        sb_plan plan = {0};
        sb_cutlist list = {0};
        const sb_order *order = sb_order_of(&d->run, &shop, &one, 1, &list, &plan, false);
        int64_t least = by_trying(&stock, 0, usage.amount), cost = 0, holds = 0, needed = 0;
        for (size_t i = 0; i < order->lines.count; i++) {
            const sb_order_line *line = &order->lines.items[i];
            cost += line->count * line->each.milli;
            holds += line->count * line->offer->pack;
            needed += line->needed;
            assert_true(line->offer->available < 0 || line->count <= line->offer->available);
        }
        if (least == INT64_MAX / 2) {
            assert_int_equal(order->lines.count, 0);
            assert_true(sb_notices_count(&d->run, SB_ERROR) >= before);
            continue;
        }
        assert_int_equal(cost, least);
        assert_true(holds >= usage.amount);
        assert_int_equal(needed, usage.amount);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(boards_are_bought_as_planned),
        AT_DESK(the_rack_goes_first_then_the_cheapest_packs),
        AT_DESK(what_a_tin_gives_is_one_lot),
        AT_DESK(availability_is_kept),
        AT_DESK(lines_go_by_merchant_then_as_in_stock),
        AT_DESK(timber_by_volume_is_one_lot),
        AT_DESK(board_feet_are_counted_from_volume),
        AT_DESK(thin_boards_count_as_an_inch),
        AT_DESK(the_rack_is_left_alone_when_the_job_says_so),
        AT_DESK(stock_under_its_minimum_is_bought_again),
        AT_DESK(what_a_pack_has_over_counts_for_the_minimum),
        AT_DESK(no_choice_of_packs_is_cheaper),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
