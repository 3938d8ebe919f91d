/* From takeoffs to a cutting problem: needs, supplies, spare, the shop's rules; and a bare list under them. */
#include "desk.h"

#define SHELF                                                                                                \
    "input n 4\nstock rail slat\nstock board ply\nstock soft knotty\n"                                       \
    "part rail\n  count n\n  of rail\n  length 800 mm\n  clear\n  end1 mitre 45 deg scale\n  allow 2 mm\n"   \
    "part strip\n  of rail\n  length 800 mm\n  width 40 mm\n  sound\n"                                            \
    "part panel\n  count 2\n  of board\n  length 700 mm\n  width 300 mm\n  grain across\n"                   \
    "  end1 bevel 30 deg scale\n"                                                                            \
    "part top\n  of rail\n  length 900 mm\n  width 180 mm\n  glued 3 loss 1 mm over 20 mm with glue\n"       \
    "  end1 mitre 10 deg scale\n"

static const sb_cutlist *cutlist_of(desk *d, const sb_takeoff *t) {
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
    assert_non_null(list);
    return list;
}

static const sb_need *need_named(const sb_cutlist *list, const char *name) {
    for (size_t i = 0; i < list->problem.needs.count; i++)
        if (strcmp(list->problem.needs.items[i].name, name) == 0)
            return &list->problem.needs.items[i];
    fail_msg("no need %s", name);
    return NULL;
}

static size_t stock_named(const sb_cutlist *list, const char *name) {
    for (size_t i = 0; i < list->problem.stock.count; i++)
        if (strcmp(list->problem.stock.items[i].name, name) == 0)
            return i;
    fail_msg("no stock %s", name);
    return 0;
}

/* ---- needs -------------------------------------------------------------------------------------------------------- */

static void needs_are_what_the_saw_makes(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state, SHELF, 3);
    const sb_cutlist *list = cutlist_of(*state, t);
    const sb_need *rail = need_named(list, "rail"), *strip = need_named(list, "strip");
    const sb_need *panel = need_named(list, "panel"), *top = need_named(list, "top");
    assert_int_equal(list->problem.needs.count, 4);
    assert_int_equal(rail->count, 12);
    assert_mm(rail->length, 802);
    assert_int_equal(rail->width.nm, 0);
    assert_int_equal(rail->end1.mitre.udeg, 45000000);
    assert_true(rail->clear);
    assert_mm(strip->width, 40);
    assert_true(strip->sound && !strip->clear);
    assert_int_equal(panel->grain, SB_CUT_ACROSS);
    assert_int_equal(panel->end1.bevel.udeg, 0);
    assert_mm(panel->width, 300);
    assert_int_equal(top->count, 9);
    assert_mm(top->width, 62);
    assert_mm(top->length, 920);
    assert_int_equal(top->end1.mitre.udeg, 0);
    for (size_t i = 0; i < list->problem.needs.count; i++)
        assert_ptr_equal(list->needs.items[list->problem.needs.items[i].tag].part, &t->parts.items[i]);
}

static void timber_by_volume_is_not_planned(void **state) {
    const sb_takeoff *t =
        takeoff_recipe(*state, "stock top random-lost\npart a\n  of top\n  length 1 m\n  width 100 mm\n", 1);
    const sb_cutlist *list = cutlist_of(*state, t);
    assert_int_equal(list->problem.stock.count, 0);
    assert_int_equal(list->problem.needs.count, 0);
}

static void spare_is_planned_in_lengths_of_parts(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock soft knotty\n"
                                         "part long\n  count 4\n  of soft\n  length 1500 mm\n"
                                         "part middle\n  of soft\n  length 1000 mm\n"
                                         "part short\n  count 6\n  of soft\n  length 500 mm\n",
                                         1);
    const sb_cutlist *list = cutlist_of(*state, t);
    /* 10 m net, 30 % added: 3 m, two of 1.5 m and nothing beyond */
    assert_int_equal(list->problem.needs.count, 4);
    const sb_need *whole = &list->problem.needs.items[3];
    assert_string_equal(whole->name, "spare");
    assert_mm(whole->length, 1500);
    assert_int_equal(whole->count, 2);
    assert_null(list->needs.items[whole->tag].part);
    assert_ptr_equal(list->needs.items[whole->tag].takeoff, t);
}

/* 9 m net, 30 % added: 2.7 m, one of 1.5 m and 1.2 m beyond, which stands in for a part of 1.3 m. */
static void the_last_spare_is_as_long_as_a_part(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock soft knotty\n"
                                         "part long\n  count 4\n  of soft\n  length 1500 mm\n"
                                         "part middle\n  of soft\n  length 1300 mm\n"
                                         "part short\n  of soft\n  length 1 m\n"
                                         "part block\n  of soft\n  length 700 mm\n",
                                         1);
    const sb_cutlist *list = cutlist_of(*state, t);
    assert_int_equal(list->problem.needs.count, 6);
    assert_mm(list->problem.needs.items[4].length, 1500);
    assert_int_equal(list->problem.needs.items[4].count, 1);
    assert_mm(list->problem.needs.items[5].length, 1300);
    assert_int_equal(list->problem.needs.items[5].count, 1);
}

static sb_length spare_of(const sb_cutlist *list) {
    sb_length spare = {0};
    for (size_t i = 0; i < list->problem.needs.count; i++)
        if (list->problem.needs.items[i].spare)
            spare.nm += list->problem.needs.items[i].count * list->problem.needs.items[i].length.nm;
    return spare;
}

static sb_length cut_from_measured(const sb_cutlist *list, const sb_plan *plan) {
    sb_length length = {0};
    for (size_t b = 0; b < plan->boards.count; b++)
        for (size_t i = 0; i < plan->boards.items[b].parts.count; i++) {
            const sb_need *need = &list->problem.needs.items[plan->boards.items[b].parts.items[i].need];
            if (list->problem.supplies.items[plan->boards.items[b].supply].measured && !need->spare)
                length.nm += plan->boards.items[b].count * need->length.nm;
        }
    return length;
}

/* 10 m net, 30 % added. A measured board of 4 m takes parts that need no spare; what is cut from the others has 30 %,
 * in lengths of parts, and a plan of it costs less. */
static void measured_boards_need_no_spare(void **state) {
    desk *d = *state;
    const sb_takeoff *t = takeoff_recipe(d,
                                         "stock soft knotty\n"
                                         "part long\n  count 4\n  of soft\n  length 1500 mm\n"
                                         "part middle\n  of soft\n  length 1000 mm\n"
                                         "part short\n  count 6\n  of soft\n  length 500 mm\n",
                                         1);
    const sb_cutlist *list = cutlist_of(d, t);
    const sb_plan *plan = sb_cutlist_plan(&d->run, d->shop, &t, 1, &list);
    assert_mm(spare_of(list), 3000);
    sb_rack_item board = {.label = "M1", .stock = sb_shop_stock(d->shop, "knotty"), .count = 1, .value = {100}};
    board.length = SB_MM(4000);
    board.measured = true;
    SB_PUSH(d->run.pool, d->shop->rack, board);
    const sb_cutlist *measured = cutlist_of(d, t), *first = measured;
    const sb_plan *less = sb_cutlist_plan(&d->run, d->shop, &t, 1, &measured);
    assert_true(sb_ok(&d->run));
    assert_ptr_not_equal(measured, first);
    assert_ptr_equal(less->problem, &measured->problem);
    sb_length cut = cut_from_measured(measured, less);
    assert_true(cut.nm >= SB_MM(3000).nm);
    assert_true(spare_of(measured).nm < SB_MM(3000).nm);
    assert_true(spare_of(measured).nm >= (SB_MM(10000).nm - cut.nm) * 3 / 10);
    assert_true(less->cost.milli < plan->cost.milli);
}

static void a_small_spare_is_as_long_as_the_shortest_part(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state, "stock soft knotty\npart a\n  of soft\n  length 1 m\n", 1);
    const sb_need *spare = need_named(cutlist_of(*state, t), "spare");
    assert_mm(spare->length, 1000);
    assert_int_equal(spare->count, 1);
}

static void several_jobs_are_one_problem(void **state) {
    desk *d = *state;
    open_shop(d);
    add_recipe(d, "recipe thing\n" SHELF);
    const sb_takeoff *both[2];
    both[0] = takeoff(d, "piece a\n  recipe thing\n");
    both[1] = takeoff(d, "piece a\n  recipe thing\n  count 2\nrack no\n");
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, both, 2);
    assert_int_equal(list->problem.stock.count, 2);
    assert_int_equal(list->problem.needs.count, 8);
    assert_ptr_equal(list->needs.items[4].takeoff, both[1]);
    assert_int_equal(list->problem.needs.items[4].count, 8);
}

/* ---- supplies ----------------------------------------------------------------------------------------------------- */

static void supplies_are_offers_and_the_rack(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state, SHELF, 1);
    const sb_cutlist *list = cutlist_of(*state, t);
    size_t slat = stock_named(list, "slat"), found = 0;
    for (size_t i = 0; i < list->problem.supplies.count; i++) {
        const sb_supply *supply = &list->problem.supplies.items[i];
        const struct sb_supply_source *source = &list->supplies.items[supply->tag];
        assert_true((source->offer == NULL) != (source->rack == NULL));
        if (supply->stock != slat)
            continue;
        found++;
        assert_int_equal(supply->leftover, source->rack != NULL);
        assert_ptr_equal(source->stock, sb_shop_stock(((desk *)*state)->shop, "slat"));
    }
    assert_int_equal(found, 5);
}

static void a_rack_piece_has_fresh_ends_and_its_value(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state, SHELF, 1);
    const sb_cutlist *list = cutlist_of(*state, t);
    const sb_supply *first = &list->problem.supplies.items[0], *second = &list->problem.supplies.items[1];
    assert_string_equal(first->label, "R1");
    assert_int_equal(first->available, 2);
    assert_int_equal(first->trim1.nm, 0);
    assert_int_equal(first->trim2.nm, 0);
    /* slats cost 2.50 a metre at least; half of that for two metres */
    assert_int_equal(first->price.milli, 250000);
    assert_string_equal(second->label, "R2");
    assert_int_equal(second->price.milli, 200000);
}

static void an_offer_has_its_trim_or_the_saws(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state, SHELF, 1);
    const sb_cutlist *list = cutlist_of(*state, t);
    const sb_supply *plain = &list->problem.supplies.items[2], *own = &list->problem.supplies.items[4];
    assert_mm(plain->length, 3000);
    assert_mm(plain->trim1, 10);
    assert_mm(plain->trim2, 10);
    assert_int_equal(plain->available, -1);
    assert_int_equal(plain->price.milli, 900000);
    assert_mm(own->length, 5000);
    assert_mm(own->trim1, 20);
    assert_int_equal(own->trim2.nm, 0);
    assert_int_equal(own->available, 3);
    const sb_supply *sheet = &list->problem.supplies.items[list->problem.supplies.count - 1];
    assert_mm(sheet->trim1, 8);
    assert_mm(sheet->width, 1250);
}

static void the_rack_may_be_left_alone(void **state) {
    desk *d = *state;
    open_shop(d);
    add_recipe(d, "recipe thing\n" SHELF);
    const sb_cutlist *list = cutlist_of(d, takeoff(d, "piece a\n  recipe thing\nrack no\n"));
    for (size_t i = 0; i < list->problem.supplies.count; i++)
        assert_false(list->problem.supplies.items[i].leftover);
}

/* ---- rules ---------------------------------------------------------------------------------------------------------- */

static void the_shop_gives_the_rules(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state, SHELF, 1);
    const sb_cutlist *list = cutlist_of(*state, t);
    const sb_cut_rules *rules = &list->problem.rules;
    assert_mm(rules->kerf, 3);
    assert_mm(rules->rip_kerf, 2.8);
    assert_mm(rules->panel_kerf, 2.8);
    assert_mm(rules->longest_board, 4800);
    assert_int_equal(rules->stages, 2);
    assert_true(rules->trims);
    assert_true(rules->crosscut_first);
    assert_mm(rules->longest_rip, 2600);
    assert_mm(rules->smallest_strip, 40);
    /* 36.00 an hour is 60 cents a minute */
    assert_int_equal(rules->board.milli, 120000);
    assert_int_equal(rules->cut.milli, 30000);
    assert_int_equal(rules->stop.milli, 180000);
    assert_int_equal(rules->change.milli, 60000);
    assert_int_equal(rules->sheet.milli, 300000);
    assert_int_equal(rules->fence.milli, 90000);
    assert_int_equal(rules->back.milli, 30000);
    assert_int_equal(rules->sheet_cut.milli, 60000);
    const sb_cut_stock *slat = &list->problem.stock.items[stock_named(list, "slat")];
    const sb_cut_stock *ply = &list->problem.stock.items[stock_named(list, "ply")];
    assert_mm(slat->width, 95);
    assert_mm(slat->thickness, 20);
    assert_mm(slat->useful_length, 600);
    assert_int_equal(slat->value, 125000);
    assert_true(ply->sheet);
    assert_mm(ply->useful_width, 300);
    /* 75.00 for 3.125 m2 are 24.00 a square metre; half of it */
    assert_int_equal(ply->value, 1200000);
}

static void a_bare_list_gets_what_labour_and_leftovers_are_worth(void **state) {
    desk *d = *state;
    open_shop(d);
    sb_problem problem = {.rules = {.kerf = SB_MM(4), .panel_kerf = SB_MM(5), .longest_board = SB_MM(1000)}};
    SB_PUSH(d->run.pool, problem.stock, ((sb_cut_stock){.name = "a"}));
    SB_PUSH(d->run.pool, problem.stock, ((sb_cut_stock){.name = "b", .sheet = true}));
    SB_PUSH(d->run.pool, problem.stock, ((sb_cut_stock){.name = "c"}));
    SB_PUSH(d->run.pool, problem.supplies,
            ((sb_supply){.stock = 0, .length = SB_MM(2000), .price = {500000}, .available = -1}));
    SB_PUSH(d->run.pool, problem.supplies,
            ((sb_supply){.stock = 0, .length = SB_MM(4000), .price = {800000}, .available = -1}));
    SB_PUSH(
        d->run.pool, problem.supplies,
        ((sb_supply){.stock = 0, .length = SB_MM(4000), .price = {100}, .available = 1, .leftover = true}));
    SB_PUSH(d->run.pool, problem.supplies,
            ((sb_supply){.stock = 1, .length = SB_MM(2000), .width = SB_MM(1000), .price = {4000000}}));
    sb_problem_under_shop(&d->run, &problem, d->shop);
    assert_mm(problem.rules.kerf, 4);
    assert_mm(problem.rules.panel_kerf, 5);
    assert_mm(problem.rules.longest_board, 1000);
    assert_int_equal(problem.rules.stages, 2);
    assert_int_equal(problem.rules.cut.milli, 30000);
    assert_int_equal(problem.stock.items[0].value, 100000);
    assert_mm(problem.stock.items[0].useful_length, 600);
    assert_int_equal(problem.stock.items[1].value, 1000000);
    assert_mm(problem.stock.items[1].useful_width, 300);
    assert_int_equal(problem.stock.items[2].value, 0);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(needs_are_what_the_saw_makes),
        AT_DESK(timber_by_volume_is_not_planned),
        AT_DESK(spare_is_planned_in_lengths_of_parts),
        AT_DESK(the_last_spare_is_as_long_as_a_part),
        AT_DESK(a_small_spare_is_as_long_as_the_shortest_part),
        AT_DESK(measured_boards_need_no_spare),
        AT_DESK(several_jobs_are_one_problem),
        AT_DESK(supplies_are_offers_and_the_rack),
        AT_DESK(a_rack_piece_has_fresh_ends_and_its_value),
        AT_DESK(an_offer_has_its_trim_or_the_saws),
        AT_DESK(the_rack_may_be_left_alone),
        AT_DESK(the_shop_gives_the_rules),
        AT_DESK(a_bare_list_gets_what_labour_and_leftovers_are_worth),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
