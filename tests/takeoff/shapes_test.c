/* Ends, surfaces, sheets with grain and edging, weight, totals. */
#include "desk.h"

#include <math.h>

#define M2(m2) ((int64_t)((m2)*1e12))

static void assert_udeg(sb_angle angle, double degrees) {
    assert_int_equal(angle.udeg, llround(degrees * 1e6));
}

static void assert_area(sb_area area, double m2) {
    if (fabs((double)area.um2 / 1e12 - m2) > 1e-9)
        fail_msg("expected %.9f m2, got %.9f", m2, (double)area.um2 / 1e12);
}

/* ---- ends ------------------------------------------------------------------------------------------------------ */

/* A mitre saw's scale counts from a square cut: set at 30, the piece shows 60 degrees (common practice, no source). */
static void an_angle_says_which_reading_it_is(void **state) {
    const sb_takeoff *t =
        takeoff_recipe(*state,
                       "stock rail slat\n"
                       "part a\n  of rail\n  length 1 m\n  end1 mitre 30 deg scale\n"
                       "  end2 mitre 60 deg piece\n"
                       "part b\n  of rail\n  length 1 m\n  end1 mitre -60 deg piece bevel 10 deg scale\n"
                       "part c\n  of rail\n  length 1 m\n  end1 mitre 90 deg piece\n",
                       1);
    assert_udeg(part_named(t, "a")->end1.mitre, 30);
    assert_udeg(part_named(t, "a")->end2.mitre, 30);
    assert_udeg(part_named(t, "b")->end1.mitre, -30);
    assert_udeg(part_named(t, "b")->end1.bevel, 10);
    assert_udeg(part_named(t, "c")->end1.mitre, 0);
    assert_udeg(part_named(t, "c")->end2.mitre, 0);
}

static void a_scale_stays_under_90(void **state) {
    assert_error(*state, "stock rail slat\npart a\n  of rail\n  length 1 m\n  end1 mitre 90 deg scale\n",
                 "less than 90 degrees");
}

static void a_piece_has_no_angle_of_nothing(void **state) {
    assert_error(*state, "stock rail slat\npart a\n  of rail\n  length 1 m\n  end1 mitre 0 deg piece\n",
                 "more than 0 and at most 90 degrees");
}

static void ends_do_not_run_into_each_other(void **state) {
    assert_error(*state,
                 "stock rail slat\npart a\n  of rail\n  length 180 mm\n  end1 mitre 45 deg scale\n"
                 "  end2 mitre 45 deg scale\n",
                 "run into each other");
}

static void parallel_ends_may_overlap(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\n"
                                         "part a\n  of rail\n  length 180 mm\n  end1 mitre 45 deg scale\n"
                                         "  end2 mitre -45 deg scale\n",
                                         1);
    assert_int_equal(t->parts.count, 1);
}

/* ---- surfaces ------------------------------------------------------------------------------------------------------ */

static void a_square_part_is_a_box(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\n"
                                         "part a\n  of rail\n  length 1 m\n"
                                         "part b\n  of rail\n  length 1 m\n  outside face edge edge end\n",
                                         1);
    const sb_part *a = part_named(t, "a"), *b = part_named(t, "b");
    assert_area(a->area_all, 2 * (0.095 + 0.020) + 2 * 0.095 * 0.020);
    assert_area(a->area_ends, 2 * 0.095 * 0.020);
    assert_area(a->area_outside, 0.095);
    assert_area(b->area_outside, 0.095 + 2 * 0.020 + 0.095 * 0.020);
}

/* Two 45 degree mitres on 70 mm: the short edge is 140 mm shorter, the face is a trapezoid, each end is longer by the
 * root of two. */
static void a_mitred_part_is_a_trapezoid(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail post\n"
                                         "part a\n  of rail\n  length 600 mm\n  end1 mitre 45 deg scale\n"
                                         "  end2 mitre 45 deg scale\n",
                                         1);
    const sb_part *a = part_named(t, "a");
    double face = 0.070 * (0.600 + 0.460) / 2, edges = 0.070 * (0.600 + 0.460),
           ends = 2 * 0.070 * 0.070 * sqrt(2);
    assert_area(a->area_outside, face);
    assert_area(a->area_ends, ends);
    assert_area(a->area_all, 2 * face + edges + ends);
    double volume = face * 0.070;
    assert_true(fabs((double)total_of(t, "post")->net_volume.nl / 1e12 - volume) < 1e-9);
}

/* A compound end leans through the thickness as well: T tan b / cos m. */
static void a_compound_end_leans_both_ways(void **state) {
    const sb_takeoff *t =
        takeoff_recipe(*state,
                       "stock rail post\n"
                       "part a\n  of rail\n  length 600 mm\n  end1 mitre 30 deg scale bevel 20 deg scale\n",
                       1);
    double degree = acos(-1) / 180,
           run = 0.070 * tan(30 * degree) + 0.070 * tan(20 * degree) / cos(30 * degree);
    double mean = 0.600 - run / 2, square = 0.070 * 0.070;
    assert_area(part_named(t, "a")->area_all,
                4 * 0.070 * mean + square + square / (cos(30 * degree) * cos(20 * degree)));
}

/* ---- sheets ---------------------------------------------------------------------------------------------------------- */

static void a_sheet_part_makes_room_for_its_edging(void **state) {
    const sb_takeoff *t =
        takeoff_recipe(*state,
                       "stock board ply\n"
                       "stock band tape\n"
                       "part shelf\n  count 2\n  of board\n  length 800 mm\n  width 300 mm\n"
                       "  grain across\n  edging band front left right\n"
                       "part back\n  of board\n  length 800 mm\n  width 300 mm\n  grain free\n"
                       "  edging band all\n  allow 5 mm by 4 mm\n",
                       3);
    const sb_part *shelf = part_named(t, "shelf"), *back = part_named(t, "back");
    assert_mm(shelf->length, 800);
    assert_mm(shelf->width, 300);
    assert_mm(shelf->thickness, 18);
    assert_mm(shelf->cut_length, 798);
    assert_mm(shelf->cut_width, 299);
    assert_int_equal(shelf->grain, SB_GRAIN_ACROSS);
    assert_int_equal(shelf->edging_edges, SB_EDGE_FRONT | SB_EDGE_LEFT | SB_EDGE_RIGHT);
    assert_string_equal(shelf->edging->id, "tape");
    assert_mm(back->cut_length, 803);
    assert_mm(back->cut_width, 302);
    /* shelf: 800 + 2 x 300, and 50 for each of three edges; back: 2200 and 200 */
    assert_int_equal(used(t, "tape"), 6 * (1400 + 150) + 3 * (2200 + 200));
    assert_int_equal(t->usages.items[0].net, 6 * 1400);
}

static void each_edge_lies_where_it_is_named(void **state) {
    const sb_takeoff *t =
        takeoff_recipe(*state,
                       "stock board ply\nstock band tape\n"
                       "part a\n  of board\n  length 800 mm\n  width 300 mm\n  edging band left\n"
                       "part b\n  of board\n  length 800 mm\n  width 300 mm\n  edging band back\n",
                       1);
    assert_mm(part_named(t, "a")->cut_length, 799);
    assert_mm(part_named(t, "a")->cut_width, 300);
    assert_mm(part_named(t, "b")->cut_length, 800);
    assert_mm(part_named(t, "b")->cut_width, 299);
}

static void a_sheet_part_needs_a_width(void **state) {
    assert_error(*state, "stock board ply\npart a\n  of board\n  length 1 m\n", "expected a `width`");
}

static void a_sheet_is_not_planed(void **state) {
    assert_error(*state,
                 "stock board ply\npart a\n  of board\n  length 1 m\n  width 300 mm\n  planed 15 mm\n",
                 "is for parts out of boards");
}

static void edging_covers_the_edge(void **state) {
    assert_error(
        *state,
        "stock board ply\nstock band tape\n"
        "part a\n  of board\n  length 1 m\n  width 300 mm\n  laminated 2 with glue\n  edging band front\n",
        "22 mm wide");
}

static void edging_is_edging(void **state) {
    assert_error(*state,
                 "stock board ply\nstock band slat\n"
                 "part a\n  of board\n  length 1 m\n  width 300 mm\n  edging band front\n",
                 "expected edging");
}

/* ---- weight, totals, size ---------------------------------------------------------------------------------------------- */

static void a_piece_has_its_weight(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\nstock leg post\n"
                                         "part a\n  count 2\n  of rail\n  length 1 m\n"
                                         "part b\n  of leg\n  length 1 m\n",
                                         4);
    /* 2 x 1 m x 95 x 20 mm at 500 kg/m3, 1 m x 70 x 70 mm at 600 kg/m3 */
    assert_int_equal(t->pieces.items[0].mass.mg, 2 * 950000 + 2940000);
}

static void weight_is_unknown_with_one_density(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\nstock leg knotty\n"
                                         "part a\n  of rail\n  length 1 m\n"
                                         "part b\n  of leg\n  length 1 m\n",
                                         1);
    assert_int_equal(t->pieces.items[0].mass.mg, 0);
}

static void totals_add_up_by_stock(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock rail slat\nstock board ply\n"
                                         "part a\n  count 3\n  of rail\n  length 1 m\n"
                                         "part b\n  count 2\n  of rail\n  length 1 m\n  width 47.5 mm\n"
                                         "part c\n  of board\n  length 1 m\n  width 500 mm\n",
                                         2);
    assert_int_equal(t->totals.count, 2);
    const sb_stock_total *slat = total_of(t, "slat"), *ply = total_of(t, "ply");
    assert_int_equal(slat->parts, 10);
    /* ripped to 48 of 95 mm: so much of its length */
    assert_int_equal(slat->net_length.nm, 6 * MM(1000) + 4 * ((MM(1000) * 48 + 94) / 95));
    assert_int_equal(slat->net_area.um2, M2(6 * 0.095 + 4 * 0.048));
    assert_int_equal(ply->net_area.um2, M2(1.0));
    assert_int_equal(ply->net_length.nm, 0);
    assert_int_equal(slat->spare_length.nm, 0);
}

static void spare_is_a_share_of_net_length(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "stock one knotty\nstock other knotty-lost\n"
                                         "part a\n  count 10\n  of one\n  length 1 m\n"
                                         "part b\n  count 10\n  of other\n  length 1 m\n",
                                         1);
    /* 10 m net: 3 m added to it, or 4.286 m so that 30 % of what is bought may be lost (woodweb.com knowledge
     * base, "Accounting for Wood Waste") */
    assert_mm(total_of(t, "knotty")->spare_length, 3000);
    assert_mm(total_of(t, "knotty-lost")->spare_length, 4286);
}

static void a_piece_says_its_size_and_inputs(void **state) {
    const sb_takeoff *t = takeoff_recipe(*state,
                                         "size long, 400 mm, high\n"
                                         "input long 1200 mm : outside\n"
                                         "input high 450 mm\n"
                                         "choice side slatted | plain : how\n"
                                         "stock rail slat\n"
                                         "part a\n  of rail\n  length long\n"
                                         "note quote : of larch\n"
                                         "note saw : cut in pairs\n",
                                         1);
    const sb_takeoff_piece *piece = &t->pieces.items[0];
    assert_string_equal(piece->size_text, "1200 x 400 x 450 mm");
    assert_mm(piece->size[2], 450);
    assert_int_equal(piece->input_count, 3);
    assert_string_equal(piece->inputs[0].name, "long");
    assert_string_equal(piece->inputs[0].text, "outside");
    assert_string_equal(piece->inputs[0].value, "1200 mm");
    assert_string_equal(piece->inputs[2].value, "slatted");
    assert_int_equal(piece->notes.count, 1);
    assert_string_equal(piece->notes.items[0], "of larch");
    assert_string_equal(t->saw_notes.items[0], "thing: cut in pairs");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(an_angle_says_which_reading_it_is),
        AT_DESK(a_scale_stays_under_90),
        AT_DESK(a_piece_has_no_angle_of_nothing),
        AT_DESK(ends_do_not_run_into_each_other),
        AT_DESK(parallel_ends_may_overlap),
        AT_DESK(a_square_part_is_a_box),
        AT_DESK(a_mitred_part_is_a_trapezoid),
        AT_DESK(a_compound_end_leans_both_ways),
        AT_DESK(a_sheet_part_makes_room_for_its_edging),
        AT_DESK(each_edge_lies_where_it_is_named),
        AT_DESK(a_sheet_part_needs_a_width),
        AT_DESK(a_sheet_is_not_planed),
        AT_DESK(edging_covers_the_edge),
        AT_DESK(edging_is_edging),
        AT_DESK(a_piece_has_its_weight),
        AT_DESK(weight_is_unknown_with_one_density),
        AT_DESK(totals_add_up_by_stock),
        AT_DESK(spare_is_a_share_of_net_length),
        AT_DESK(a_piece_says_its_size_and_inputs),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
