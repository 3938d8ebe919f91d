/* What must hold for any recipe: nothing is lost or made up on the way from the job to the cutting list. */
#include "desk.h"

static uint64_t seed;

static int pick(int from, int to) {
    seed = seed * 6364136223846793005u + 1442695040888963407u;
    return from + (int)((seed >> 33) % (uint64_t)(to - from + 1));
}

static const char *yes_or(const char *text) {
    return pick(0, 1) ? text : "";
}

/* ---- recipes by chance -------------------------------------------------------------------------------------------- */

static const char *some_board(desk *d) {
    sb_pool *pool = d->run.pool;
    switch (pick(0, 4)) {
    case 0:
        return sb_pool_print(pool, "  of rail\n  width %d mm\n%s", pick(20, 95),
                             yes_or("  allow 3 mm by 0 mm\n"));
    case 1:
        return sb_pool_print(pool, "  of beam\n  planed %d mm by %d mm\n", pick(20, 47), pick(30, 97));
    case 2:
        return sb_pool_print(pool, "  of rail\n  width %d mm\n  glued 0 loss %d mm over %d mm with glue\n",
                             pick(60, 900), pick(0, 4), pick(0, 50));
    case 3:
        return sb_pool_print(pool, "  of beam\n  planed 20 mm by 60 mm\n  laminated %d with glue\n",
                             pick(2, 4));
    default:
        return sb_pool_print(pool, "  of rail\n  end1 mitre %d deg scale\n%s", pick(-60, 60),
                             yes_or("  end2 mitre 30 deg piece bevel 15 deg scale\n"));
    }
}

static const char *some_material(desk *d) {
    sb_pool *pool = d->run.pool;
    switch (pick(0, 3)) {
    case 0:
        return sb_pool_print(pool, "  of board\n  width %d mm\n%s", pick(100, 600),
                             yes_or("  edging tape front left\n"));
    case 1:
        return sb_pool_print(pool, "  of rough\n  width %d mm\n", pick(40, 300));
    default:
        return some_board(d);
    }
}

static const char *some_parts(desk *d, int count) {
    const char *text = "";
    for (int i = 0; i < count; i++)
        text = sb_pool_print(d->run.pool, "%spart p%d\n  count %d\n  length long - %d mm\n%s", text, i,
                             pick(0, 6), pick(0, 399), some_material(d));
    return text;
}

#define ROLES                                                                                                \
    "input long 1000 mm\nstock rail slat\nstock beam sawn\nstock board ply\nstock rough random-lost\n"

static const char *some_recipe(desk *d, const char *name) {
    return sb_pool_print(d->run.pool,
                         "recipe %s\n" ROLES "%s"
                         "joint corner %d\n"
                         "fixing screw %d per joint corner\nfixing disc %d\n"
                         "finish oil %d coats on all\nglue glue long * 20 mm per joint corner\n"
                         "work dowel\nwork sand on outside\nwork plane 2 m\n",
                         name, some_parts(d, pick(1, 6)), pick(0, 9), pick(0, 5), pick(0, 5), pick(1, 3));
}

/* Each test works on many recipes, each with a run of its own. */
enum {
    RECIPES = 120
};

static void new_recipe(desk *d, const char *text) {
    d->book = sb_recipe_book_open(&d->run, d->folder, false);
    add_recipe(d, text);
}

static const sb_takeoff *pieces_of(desk *d, int64_t count) {
    return takeoff(d,
                   sb_pool_print(d->run.pool, "piece it\n  recipe thing\n  count %lld\n", (long long)count));
}

/* ---- what must hold -------------------------------------------------------------------------------------------------- */

static void check_part(const sb_takeoff *t, const sb_part *part) {
    int64_t full = part->stock->width.nm, cut = part->cut_width.nm ? part->cut_width.nm : full;
    assert_int_equal(part->count, part->per_piece * t->pieces.items[part->piece].count);
    assert_int_equal(part->blanks, part->count * part->staves * part->layers);
    assert_true(part->cut_length.nm >= part->length.nm - 2 * MM(1)); /* edging is cut off sheets */
    assert_int_equal(part->length.nm % MM(1), 0);
    assert_int_equal(part->cut_length.nm % MM(1), 0);
    assert_true(part->area_outside.um2 <= part->area_all.um2);
    if (part->stock->kind != SB_STOCK_BOARD)
        return;
    assert_true(cut <= full);
    assert_true(cut * part->staves >= part->width.nm);
    assert_int_equal(part->ripped, cut < full);
    assert_true(part->thickness.nm <= part->stock->thickness.nm * part->layers);
}

static void check_needs(desk *d, const sb_takeoff *t) {
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
    int64_t needed = 0, made = 0;
    for (size_t i = 0; i < list->problem.needs.count; i++)
        needed += list->problem.needs.items[i].count * list->problem.needs.items[i].length.nm;
    for (size_t i = 0; i < t->parts.count; i++)
        if (!t->parts.items[i].from_volume)
            made += t->parts.items[i].blanks * t->parts.items[i].cut_length.nm;
    assert_int_equal(needed, made);
}

/* A panel's edging is no sheet. */
static int64_t panel_area(const sb_part *part) {
    int64_t edge = part->edging ? part->edging->thickness.nm : 0;
    int along = !!(part->edging_edges & SB_EDGE_LEFT) + !!(part->edging_edges & SB_EDGE_RIGHT);
    int across = !!(part->edging_edges & SB_EDGE_FRONT) + !!(part->edging_edges & SB_EDGE_BACK);
    if (part->stock->kind != SB_STOCK_SHEET)
        edge = 0;
    return sb_length_area((sb_length){part->length.nm - along * edge},
                          (sb_length){part->width.nm - across * edge})
        .um2;
}

static void check_totals(const sb_takeoff *t) {
    int64_t parts = 0, area = 0, panels = 0;
    for (size_t i = 0; i < t->totals.count; i++) {
        const sb_stock_total *total = &t->totals.items[i];
        parts += total->parts;
        area += total->net_area.um2;
        panels += total->stock->kind == SB_STOCK_SHEET ? total->net_volume.nl : 0;
    }
    for (size_t i = 0; i < t->parts.count; i++) {
        const sb_part *part = &t->parts.items[i];
        parts -= part->count;
        area -= part->count * panel_area(part);
        if (part->stock->kind == SB_STOCK_SHEET)
            panels -= part->count * sb_area_volume((sb_area){panel_area(part)}, part->thickness).nl;
    }
    assert_int_equal(parts, 0);
    assert_int_equal(panels, 0);
    assert_int_equal(area, 0);
}

static void parts_keep_their_bounds(void **state) {
    desk *d = *state;
    open_shop(d);
    seed = 1;
    for (int round = 0; round < RECIPES; round++) {
        new_recipe(d, some_recipe(d, "thing"));
        const sb_takeoff *t = pieces_of(d, pick(1, 50));
        for (size_t i = 0; i < t->parts.count; i++)
            check_part(t, &t->parts.items[i]);
        check_needs(d, t);
        check_totals(t);
    }
}

/* Amounts in two takeoffs agree but for what rounding each line up adds. */
static void assert_same_amounts(const sb_takeoff *one, int64_t times, const sb_takeoff *all, int64_t lines) {
    static const char *const exact[] = {"screw", "disc"}, *const rounded[] = {"oil", "glue", "tape",
                                                                              "random-lost"};
    for (size_t i = 0; i < sizeof exact / sizeof *exact; i++)
        assert_int_equal(used(all, exact[i]), times * used(one, exact[i]));
    for (size_t i = 0; i < sizeof rounded / sizeof *rounded; i++) {
        int64_t gap = times * used(one, rounded[i]) - used(all, rounded[i]);
        assert_true(gap >= -lines * times && gap <= lines * times);
    }
}

static void assert_same_parts(const sb_takeoff *one, int64_t times, const sb_takeoff *all) {
    for (size_t i = 0; i < one->totals.count; i++) {
        const sb_stock_total *a = &one->totals.items[i], *b = total_of(all, a->stock->id);
        assert_int_equal(a->parts * times, b->parts);
        assert_int_equal(a->net_length.nm * times, b->net_length.nm);
        assert_int_equal(a->net_volume.nl * times, b->net_volume.nl);
    }
    assert_int_equal(one->totals.count, all->totals.count);
}

static void n_pieces_are_n_times_one(void **state) {
    desk *d = *state;
    open_shop(d);
    seed = 2;
    for (int round = 0; round < RECIPES; round++) {
        new_recipe(d, some_recipe(d, "thing"));
        int64_t n = pick(2, 500);
        const sb_takeoff *one = pieces_of(d, 1), *all = pieces_of(d, n);
        assert_int_equal(one->parts.count, all->parts.count);
        assert_same_parts(one, n, all);
        assert_same_amounts(one, n, all, 40);
        assert_int_equal(worked_milli(one, "dowel") * n, worked_milli(all, "dowel"));
        assert_int_equal(worked_milli(one, "plane") * n, worked_milli(all, "plane"));
        assert_int_equal(worked_milli(one, "office"), worked_milli(all, "office"));
        assert_int_equal(one->pieces.items[0].mass.mg, all->pieces.items[0].mass.mg);
    }
}

static void a_component_is_as_good_as_the_piece_itself(void **state) {
    desk *d = *state;
    open_shop(d);
    seed = 3;
    for (int round = 0; round < RECIPES; round++) {
        new_recipe(d, some_recipe(d, "thing"));
        add_recipe(d, "recipe pair\ncomponent half\n  recipe thing\n  count 2\n  set long 900 mm\n");
        add_recipe(d, "recipe pairs\ninput n 3\ncomponent both\n  recipe pair\n  count n\n");
        int64_t n = pick(1, 20);
        const sb_takeoff *inner =
            takeoff(d, sb_pool_print(d->run.pool, "piece it\n  recipe pairs\n  count %lld\n", (long long)n));
        const sb_takeoff *plain = takeoff(
            d, sb_pool_print(d->run.pool, "piece it\n  recipe thing\n  count %lld\n  set long 900 mm\n",
                             (long long)(6 * n)));
        assert_same_parts(plain, 1, inner);
        assert_same_amounts(plain, 1, inner, 0);
        assert_int_equal(worked_milli(plain, "dowel"), worked_milli(inner, "dowel"));
        assert_int_equal(worked_milli(plain, "sand"), worked_milli(inner, "sand"));
    }
}

static void two_jobs_add_up(void **state) {
    desk *d = *state;
    open_shop(d);
    seed = 4;
    for (int round = 0; round < RECIPES; round++) {
        new_recipe(d, some_recipe(d, "thing"));
        const sb_takeoff *both[2] = {pieces_of(d, pick(1, 9)), pieces_of(d, pick(1, 9))};
        const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, both, 2);
        int64_t needed = 0, made = 0;
        for (size_t i = 0; i < list->problem.needs.count; i++) {
            const struct sb_need_source *source = &list->needs.items[list->problem.needs.items[i].tag];
            needed += list->problem.needs.items[i].count;
            assert_ptr_equal(list->problem.needs.items[i].name, source->part->title);
        }
        for (size_t i = 0; i < 2; i++)
            for (size_t j = 0; j < both[i]->parts.count; j++)
                made += both[i]->parts.items[j].from_volume ? 0 : both[i]->parts.items[j].blanks;
        assert_int_equal(needed, made);
    }
}

static void the_same_job_gives_the_same_takeoff(void **state) {
    desk *d = *state;
    open_shop(d);
    seed = 5;
    for (int round = 0; round < RECIPES; round++) {
        new_recipe(d, some_recipe(d, "thing"));
        const sb_takeoff *a = pieces_of(d, 7), *b = pieces_of(d, 7);
        assert_int_equal(a->parts.count, b->parts.count);
        assert_int_equal(a->usages.count, b->usages.count);
        for (size_t i = 0; i < a->parts.count; i++) {
            assert_string_equal(a->parts.items[i].name, b->parts.items[i].name);
            assert_int_equal(a->parts.items[i].cut_length.nm, b->parts.items[i].cut_length.nm);
        }
        for (size_t i = 0; i < a->usages.count; i++)
            assert_int_equal(a->usages.items[i].amount, b->usages.items[i].amount);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(parts_keep_their_bounds),
        AT_DESK(n_pieces_are_n_times_one),
        AT_DESK(a_component_is_as_good_as_the_piece_itself),
        AT_DESK(two_jobs_add_up),
        AT_DESK(the_same_job_gives_the_same_takeoff),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
