/* The sample jobs: pieces and key parts as worked out by hand, from the jobs' figures and the sizes of the stock; each
 * job is planned and ordered without a word of advice. Runs in the project's folder. */
#include "pieces.h"

/* ---- a sample, taken off ---- */

static const sb_takeoff *sample(desk *d, const char *name, const char *option) {
    const char *path = sb_pool_print(d->run.pool, "samples/%s.job", name);
    sb_place at;
    const char *rates = sb_job_rates(&d->run, path, &at);
    open_rates(d, *rates ? sb_pool_print(d->run.pool, "rates/%s", rates) : "rates");
    d->job = sb_job_read(&d->run, path, false);
    if (!d->job || !sb_ok(&d->run))
        desk_fail(d, path);
    const sb_takeoff *t = sb_takeoff_of(&d->run, d->shop, d->book, d->job, option_named(d, option));
    if (!t || sb_notices_count(&d->run, SB_ADVICE) > 0)
        desk_fail(d, path);
    return t;
}

/* So many of a part in a piece of the job, each so long, rounded up to the step of the shop. */
static const sb_part *assert_cut(const sb_takeoff *t, const char *piece, const char *name, int count,
                                 double length) {
    for (size_t i = 0; i < t->parts.count; i++) {
        const sb_part *part = &t->parts.items[i];
        if (strcmp(t->pieces.items[part->piece].source->name, piece) != 0 || strcmp(part->name, name) != 0)
            continue;
        if (part->count != count || mm(part->length) < length - 1e-6 || mm(part->length) > length + 1.6)
            fail_msg("%s: %lld %s of %.4f mm, expected %d of %.4f mm", piece, (long long)part->count, name,
                     mm(part->length), count, length);
        return part;
    }
    fail_msg("%s has no %s", piece, name);
    return NULL;
}

static void assert_piece(const sb_takeoff *t, size_t i, const char *name, int count) {
    assert_true(i < t->pieces.count);
    assert_string_equal(t->pieces.items[i].source->name, name);
    assert_int_equal(t->pieces.items[i].count, count);
}

/* ---- fourteen planters in two sizes ---- */

static void planters_with_slats(void **state) {
    const sb_takeoff *t = sample(*state, "harbour-planters", "slats");
    assert_int_equal(t->pieces.count, 2);
    assert_piece(t, 0, "long", 8);
    assert_piece(t, 1, "short", 6);
    /* 500 less the rim's 20; six posts where it is longer than 1200, else four */
    assert_cut(t, "long", "post", 8 * 6, 480);
    assert_cut(t, "short", "post", 6 * 4, 480);
    /* 460 high from 20 above ground: four rows of 95, 26.7 apart, on both sides; the short ones 2 x 20 less */
    assert_cut(t, "long", "long-slat", 8 * 8, 1400);
    assert_cut(t, "long", "short-slat", 8 * 8, 360);
    assert_cut(t, "short", "long-slat", 6 * 8, 900);
    assert_cut(t, "short", "short-slat", 6 * 8, 410);
    assert_cut(t, "long", "long-rim", 8 * 2, 1400);
    assert_cut(t, "short", "short-rim", 6 * 2, 450);
    assert_cut(t, "long", "bearer", 8 * 2, 1360);
    assert_cut(t, "short", "bearer", 6 * 2, 860);
    /* floor, long: 1360 less three boards at the posts leaves 2 x 537.5, five boards and six gaps of 10.4 in each;
     * short: 860 less two leaves 670, six boards and seven gaps of 14.3. At the posts: across less 2 x 70 */
    assert_cut(t, "long", "floor-board", 8 * 10, 360);
    assert_cut(t, "short", "floor-board", 6 * 6, 410);
    assert_cut(t, "long", "post-board", 8 * 3, 220);
    assert_cut(t, "short", "post-board", 6 * 2, 270);
}

static void planters_with_panels(void **state) {
    const sb_takeoff *t = sample(*state, "harbour-planters", "panels");
    const sb_part *panel = assert_cut(t, "long", "long-panel", 16, 1400);
    assert_mm(panel->width, 460);
    /* plywood of 18 mm: 400 less 36, 1400 less 36 */
    assert_cut(t, "long", "short-panel", 16, 364);
    assert_cut(t, "long", "bearer", 16, 1364);
    assert_int_equal(parts_named(t, "long-slat"), 0);
}

/* ---- feet, inches and millimetres ---- */

static void boathouse(void **state) {
    const double inch = 25.4;
    const sb_takeoff *t = sample(*state, "boathouse-imperial", NULL);
    assert_piece(t, 0, "workbench", 2);
    assert_piece(t, 1, "low-bench", 1);
    assert_piece(t, 2, "frame", 6);
    /* 34" less plank 1 1/2" and plywood 23/32": 31 25/32", on the step 31 13/16" */
    const sb_part *leg = assert_cut(t, "workbench", "leg", 8, 31.8125 * inch);
    assert_int_equal(leg->length.nm * 16 % SB_NM_PER_INCH, 0);
    /* 7' 6" less 3" at both ends; 26 1/2" takes four planks of 5 1/2" and one of 4 1/2" */
    assert_cut(t, "workbench", "long-rail", 8, 84 * inch);
    assert_cut(t, "workbench", "top-plank", 8, 90 * inch);
    assert_mm(assert_cut(t, "workbench", "last-plank", 2, 90 * inch)->width, 4.5 * inch);
    /* between the long rails: 26 1/2" - 6" - 3"; four at the ends and two under the top */
    assert_cut(t, "workbench", "short-rail", 8, 17.5 * inch);
    assert_cut(t, "workbench", "cross-rail", 4, 17.5 * inch);
    /* 1500 mm are 59.055", less 6", on the step 53 1/16"; 28" high, no shelf */
    assert_mm(assert_cut(t, "low-bench", "long-rail", 4, 1500 - 6 * inch)->length, 53.0625 * inch);
    assert_cut(t, "low-bench", "leg", 4, 25.8125 * inch);
    assert_int_equal(parts_named(t, "shelf"), 2);
    /* six frames: two and two, mitred at 45 degrees */
    assert_close(mitre(assert_cut(t, "frame", "level", 12, 24 * inch)->end1), 45, 0);
    assert_cut(t, "frame", "upright", 12, 17.75 * inch);
    assert_string_equal(part_named(t, "upright")->stock->id, "1x3-oak");
}

/* ---- shelves from sheets or from boards ---- */

static void shelves_from_sheets(void **state) {
    const sb_takeoff *t = sample(*state, "shelf-options", "sheet");
    assert_piece(t, 0, "tall", 4);
    assert_piece(t, 1, "low", 2);
    assert_cut(t, "tall", "side", 8, 2000);
    assert_cut(t, "low", "side", 4, 800);
    /* five shelves, top and bottom: 850 less 2 x 18, and 6 into each side */
    const sb_part *shelf = assert_cut(t, "tall", "shelf", 4 * 7, 826);
    assert_mm(shelf->width, 300);
    assert_mm(shelf->cut_width, 299.5); /* and half a millimetre of edging */
    assert_cut(t, "low", "shelf", 2 * 3, 876);
    assert_cut(t, "tall", "back-rail", 8, 814);
    assert_cut(t, "low", "plinth", 2, 864);
}

static void shelves_from_boards(void **state) {
    const sb_takeoff *t = sample(*state, "shelf-options", "solid");
    /* 145 less 2 mm on both edges: two staves make 282, so three */
    const sb_part *side = assert_cut(t, "tall", "solid-side", 8, 2000);
    assert_int_equal(side->staves, 3);
    assert_int_equal(side->blanks, 24);
    assert_int_equal(assert_cut(t, "low", "solid-shelf", 2 * 3, 876)->blanks, 18);
    assert_int_equal(parts_named(t, "side"), 0);
}

/* ---- out of the rack ---- */

static void a_bench_and_a_gate(void **state) {
    const sb_takeoff *t = sample(*state, "rack-bench", NULL);
    /* bench: seat 440 less a slat of 28; 850 / cos 10 + 95 tan 10 = 863.1 + 16.8; 450 + 95 / cos 10 */
    assert_cut(t, "bench", "front-leg", 2, 412);
    assert_cut(t, "bench", "back-leg", 2, 879.85);
    assert_cut(t, "bench", "side-rail", 2, 546.46);
    assert_cut(t, "bench", "long-rail", 2, 1600 - 4 * 45);
    assert_cut(t, "bench", "cross-rail", 1, 450 - 2 * 45);
    /* 450 deep: three slats with 10 behind each, and 60 left for the rear one */
    assert_cut(t, "bench", "seat-slat", 3, 1600);
    assert_mm(assert_cut(t, "bench", "rear-slat", 1, 1600)->width, 60);
    /* gate: six boards and two of (950 - 6 x 122 - 2) / 2 = 108 */
    assert_cut(t, "gate", "board", 6, 1150);
    assert_mm(assert_cut(t, "gate", "outer-board", 2, 1150)->width, 108);
    assert_cut(t, "gate", "ledge", 2, 890);
    /* field 1150 - 300 - 290 = 560, level 890: atan(560 / 890) = 32.18, asin(120 / 1051.5) = 6.55 degrees;
     * 560 / sin 38.73 + 120 / tan 38.73 = 895.0 + 149.6 */
    const sb_part *brace = assert_cut(t, "gate", "brace", 1, 1044.6);
    assert_close(fabs(mitre(brace->end1)), 90 - 38.73, 0.01);
}

static void the_rack_goes_first(void **state) {
    desk *d = *state;
    const sb_takeoff *t = sample(d, "rack-bench", NULL);
    const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
    const sb_order *order =
        sb_order_of(&d->run, d->shop, &t, 1, list, sb_plan_make(&d->run, &list->problem), false);
    assert_non_null(order);
    int boards = 0, screws = 0;
    for (size_t i = 0; i < order->lines.count; i++) {
        const sb_rack_item *rack = order->lines.items[i].rack;
        boards += rack && rack->stock->kind == SB_STOCK_BOARD;
        screws += rack && strcmp(rack->label, "B2") == 0;
    }
    assert_true(boards >= 3);
    assert_int_equal(screws, 1);
}

/* Planned and ordered whole, every option, with nothing to advise on. */
static void samples_leave_nothing_to_say(void **state) {
    static const char *const names[][2] = {{"harbour-planters", "slats"}, {"harbour-planters", "panels"},
                                           {"boathouse-imperial", NULL},  {"shelf-options", "sheet"},
                                           {"shelf-options", "solid"},    {"rack-bench", NULL}};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) {
        desk *d = *state;
        const sb_takeoff *t = sample(d, names[i][0], names[i][1]);
        const sb_cutlist *list = sb_cutlist_of(&d->run, d->shop, &t, 1);
        const sb_plan *plan = sb_plan_make(&d->run, &list->problem);
        if (!sb_order_of(&d->run, d->shop, &t, 1, list, plan, false) ||
            sb_notices_count(&d->run, SB_ADVICE) > 0)
            desk_fail(d, names[i][0]);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(planters_with_slats), AT_DESK(planters_with_panels),         AT_DESK(boathouse),
        AT_DESK(shelves_from_sheets), AT_DESK(shelves_from_boards),          AT_DESK(a_bench_and_a_gate),
        AT_DESK(the_rack_goes_first), AT_DESK(samples_leave_nothing_to_say),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
