/* The recipes that come with the project, put together again from their parts: outside sizes, gaps and angles have
 * to close. Nothing here uses the recipes' own formulas. Runs in the project's folder, with the default rates. */
#include "pieces.h"

/* ---- trough planter ---- */

static void a_trough_closes(void **state) {
    const sb_takeoff *t =
        made(*state,
             "piece p\n  recipe trough-planter\n  set long 1400 mm\n  set wide 400 mm\n  set high 500 mm\n");
    const sb_part *post = part_named(t, "post"), *slat = part_named(t, "long-slat"),
                  *end = part_named(t, "short-slat");
    const sb_part *rim = part_named(t, "long-rim"), *side_rim = part_named(t, "short-rim");
    const sb_part *floor_board = part_named(t, "floor-board"), *bearer = part_named(t, "bearer"),
                  *post_board = part_named(t, "post-board");
    assert_int_equal(post->count, 6); /* over 1200 mm a pair in the middle */
    assert_close(mm(slat->length), 1400, 0);
    assert_close(mm(end->length) + 2 * mm(slat->thickness), 400, 0.5);
    assert_close(mm(post->length) + mm(rim->thickness), 500, 0.5);
    /* one side: rows and equal gaps fill the height from 20 mm above the ground to the rim */
    double rows = (double)slat->count / 2, clad = mm(post->length) - 20;
    double gap = (clad - rows * mm(slat->width)) / (rows - 1);
    assert_true(gap >= 8 && gap <= 40);
    assert_int_equal(end->count, slat->count);
    /* the rim: two mitres meet at a right angle, and hide side and post */
    assert_close(mitre(rim->end1) + mitre(side_rim->end2), 90, 1e-6);
    assert_close(mm(rim->length), 1400, 0);
    assert_close(mm(side_rim->length), 400, 0);
    assert_true(mm(rim->width) >= mm(slat->thickness) + mm(post->width));
    /* the floor: bearers on the posts' inner faces, short boards between posts, full ones between these */
    assert_close(mm(bearer->length) + 2 * mm(slat->thickness), 1400, 0.5);
    assert_close(mm(post_board->length) + 2 * (mm(slat->thickness) + mm(post->width)), 400, 0.5);
    assert_true(mm(post_board->length) >= 2 * mm(bearer->thickness));
    assert_true(mm(post_board->width) >= mm(post->width)); /* full boards pass beside the posts */
    assert_int_equal(2 * post_board->count, post->count);
    double boards = (double)(floor_board->count + post_board->count);
    double floor_gap = (1400 - 2 * mm(slat->thickness) - boards * mm(floor_board->width)) / (boards - 1);
    assert_true(floor_gap >= 8 && floor_gap <= 30);
    assert_close(mm(floor_board->length) + 2 * mm(slat->thickness), 400, 0.5);
    assert_int_equal(floor_board->allow.nm, MM(2));
}

static void a_panelled_trough_closes(void **state) {
    const sb_takeoff *t =
        made(*state, "piece p\n  recipe trough-planter\n  set sides panelled\n  set long 1200 mm\n");
    const sb_part *panel = part_named(t, "long-panel"), *end = part_named(t, "short-panel"),
                  *post = part_named(t, "post");
    assert_close(mm(panel->length), 1200, 0);
    assert_close(mm(end->length) + 2 * mm(panel->thickness), 400, 0.5);
    assert_close(mm(panel->width), mm(post->length) - 20, 0.5);
    assert_int_equal(parts_named(t, "long-slat"), 0);
}

/* ---- splayed planter: in coordinates ---- */

typedef struct point {
    double x, y, z;
} point;

static point minus(point a, point b) {
    return (point){a.x - b.x, a.y - b.y, a.z - b.z};
}

static double dot(point a, point b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}

static point cross(point a, point b) {
    return (point){a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
}

static double long_of(point a) {
    return sqrt(dot(a, a));
}

/* One side stands at y = -top/2 above, its neighbour at x = top/2; the plane between them stands upright at 45
 * degrees. The saw sees the side lying flat: the mitre is the angle of the cut's line on the face against square, the
 * bevel that between the cut and the face's upright. */
static void splayed_sides_meet(void **state) {
    const sb_takeoff *t =
        made(*state,
             "piece p\n  recipe splayed-planter\n  set top 450 mm\n  set high 400 mm\n  set slope 75 deg\n");
    const sb_part *side = part_named(t, "side");
    double slope = radians(75), foot = 450 - 2 * 400 / tan(slope);
    point top = {225, -225, 400}, bottom = {foot / 2, -foot / 2, 0}; /* the outer corner edge */
    point along = {1, 0, 0}, edge = minus(top, bottom);
    point up_face = {0, -cos(slope), sin(slope)}; /* square to `along`, in the face */
    point face = cross(along, up_face),
          corner = {1 / sqrt(2), 1 / sqrt(2), 0}; /* normals of face and corner plane */
    assert_close(dot(edge, corner), 0, 1e-9);
    double wanted_mitre = degrees(atan2(dot(edge, along), dot(edge, up_face)));
    double wanted_bevel = 90 - degrees(acos(fabs(dot(face, corner)) / long_of(face)));
    assert_close(fabs(mitre(side->end1)), wanted_mitre, 2e-6);
    assert_close(fabs(bevel(side->end1)), wanted_bevel, 2e-6);
    assert_close(mitre(side->end1), mitre(side->end2), 0); /* a trapezoid */
    assert_int_equal(side->count, 4);
    /* over the long points it is as long as the planter is wide above; the face between the level edges fits */
    assert_close(mm(side->length), 450, 0);
    double slant = 400 / sin(slope);
    assert_close(450 - 2 * slant * tan(radians(wanted_mitre)), foot, 1e-6);
    /* before ripping it holds the outer face and, below it, what the level lower edge takes at the inner face */
    assert_close(mm(side->width), slant + mm(side->thickness) / tan(slope), 0.5);
    /* the floor lies on battens along the inner faces, where the room is wider than at the lower edge by their run */
    const sb_part *bottom_panel = part_named(t, "floor"), *batten = part_named(t, "batten");
    double inside = foot - 2 * mm(side->thickness) / sin(slope);
    double there = inside + 2 * mm(batten->width) * cos(slope);
    assert_true(mm(bottom_panel->length) <= there - 2 && mm(bottom_panel->length) >= there - 6);
    assert_true(there - mm(bottom_panel->length) < mm(batten->thickness)); /* it cannot slip off them */
    assert_true(mm(batten->length) + 2 * mm(batten->thickness) <= inside);
}

/* Compound-angle chart of a 12-inch compound mitre saw's operator manual, four sides: pitch 70: 18.88 / 41.64,
 * 60: 26.57 / 37.76 (printed to 0.005 degrees). */
static void splayed_sides_agree_with_the_chart(void **state) {
    static const double chart[][3] = {{70, 18.88, 41.64}, {60, 26.57, 37.76}};
    open_rates(*state, "rates");
    for (size_t i = 0; i < 2; i++) {
        desk *d = *state;
        const char *job = sb_pool_print(
            d->run.pool,
            "piece p\n  recipe splayed-planter\n  set top 600 mm\n  set high 300 mm\n  set slope %g deg\n",
            chart[i][0]);
        const sb_part *side = part_named(takeoff(d, job), "side");
        assert_close(fabs(mitre(side->end1)), chart[i][1], 0.0051);
        assert_close(fabs(bevel(side->end1)), chart[i][2], 0.0051);
    }
}

/* ---- garden bench ---- */

static void a_raked_leg_stands_flat(void **state) {
    const sb_takeoff *t = made(*state, "piece p\n  recipe garden-bench\n  set high 850 mm\n  set rake 12 "
                                       "deg\n  set deep 450 mm\n  set seat 440 mm\n");
    const sb_part *leg = part_named(t, "back-leg"), *front = part_named(t, "front-leg"),
                  *rail = part_named(t, "side-rail");
    const sb_part *slat = part_named(t, "seat-slat"), *long_rail = part_named(t, "long-rail");
    /* parallel ends at the rake: laid at 12 degrees, both ends are level */
    assert_close(mitre(leg->end1), -mitre(leg->end2), 0);
    assert_close(fabs(mitre(leg->end1)), 12, 1e-6);
    /* edge length is long points less one end's run; its upright height is the back's */
    double edge = mm(leg->length) - mm(leg->width) * tan(radians(12));
    assert_close(edge * cos(radians(12)), 850, 0.5);
    assert_null(strchr(t->pieces.items[0].size_text, '~')); /* 450 + 850 tan 12 is no number for a quote */
    /* seat height: front leg, slat on the rail that lies level with it */
    assert_close(mm(front->length) + mm(slat->thickness), 440, 0.5);
    /* the side rail runs from the front leg's front to the back leg's rear, whose level width is width / cos */
    assert_close(mm(rail->length), 450 + mm(leg->width) / cos(radians(12)), 0.5);
    assert_close(fabs(mitre(rail->end2)), 12, 1e-6);
    assert_close(mitre(rail->end1), 0, 0);
    /* between the frames: leg, side rail, long rail, side rail, leg */
    assert_close(mm(long_rail->length) + 2 * mm(front->thickness) + 2 * mm(rail->thickness), 1500, 0.5);
    /* full slats, 10 mm between them, and a ripped one close the seat */
    const sb_part *rear = part_named(t, "rear-slat");
    assert_close((double)slat->count * (mm(slat->width) + 10) + mm(rear->width), 450, 0.5);
    /* two bolts where each leg meets its side rail */
    assert_int_equal(used(t, "bolt-8x100"), 8);
}

/* ---- dining table ---- */

static void a_table_closes(void **state) {
    const sb_takeoff *t = made(
        *state, "piece p\n  recipe dining-table\n  set long 1800 mm\n  set wide 900 mm\n  set high 740 mm\n");
    const sb_part *top = part_named(t, "top"), *leg = part_named(t, "leg");
    const sb_part *rail = part_named(t, "long-rail"), *side = part_named(t, "short-rail");
    /* staves jointed on both edges give at least the width */
    assert_true((mm(top->cut_width) - 2 * 2) * (double)top->staves >= 900);
    assert_true((mm(top->cut_width) - 2 * 2) * (double)top->staves < 900 + (double)top->staves);
    assert_close(mm(top->cut_length), 1840, 0.5);
    assert_true(mm(top->cut_width) <= mm(top->stock->width));
    assert_close(mm(leg->length) + mm(top->thickness), 740, 0.5);
    assert_close(mm(leg->thickness), mm(leg->width), 0.5); /* square in section */
    /* over the legs: leg, rail between the shoulders, leg, and the overhang on both sides */
    assert_close(2 * mm(leg->width) + mm(rail->length) - 2 * 35 + 2 * 150, 1800, 0.5);
    assert_close(2 * mm(leg->width) + mm(side->length) - 2 * 35 + 2 * 60, 900, 0.5);
}

/* ---- shelf unit ---- */

static void shelves_close(void **state) {
    const sb_takeoff *t = made(
        *state, "piece p\n  recipe shelf-unit\n  set wide 850 mm\n  set high 2000 mm\n  set shelves 5\n");
    const sb_part *side = part_named(t, "side"), *shelf = part_named(t, "shelf");
    assert_int_equal(shelf->count, 7);
    /* sides outside, shelves 6 mm deep in both */
    assert_close(mm(shelf->length) + 2 * mm(side->thickness) - 2 * 6, 850, 0.5);
    /* edged in front: what is sawn and the edging make the finished depth */
    assert_close(mm(shelf->cut_width) + mm(shelf->edging->thickness), 300, 0.5);
    assert_close(mm(part_named(t, "back-rail")->length) + 2 * mm(side->thickness), 850, 0.5);
    /* plinth, seven boards and six equal heights between them make the height */
    const sb_part *plinth = part_named(t, "plinth");
    double clear = (2000 - mm(plinth->width) - 7 * mm(shelf->thickness)) / 6;
    assert_true(clear >= 120 && clear > mm(part_named(t, "back-rail")->width));
}

static void solid_shelves_close(void **state) {
    const sb_takeoff *t = made(*state, "piece p\n  recipe shelf-unit\n  set make solid\n");
    const sb_part *side = part_named(t, "solid-side"), *shelf = part_named(t, "solid-shelf");
    assert_close(mm(shelf->length) + 2 * mm(side->thickness) - 2 * 6, 900, 0.5);
    assert_true((mm(side->cut_width) - 4) * (double)side->staves >= 300);
    assert_int_equal(parts_named(t, "side"), 0);
}

/* ---- workbench, in inches ---- */

static void a_workbench_closes(void **state) {
    desk *d = *state;
    open_rates(d, "rates/imperial");
    const sb_takeoff *t =
        takeoff(d, "piece p\n  recipe workbench\n  set long 7' 6\"\n  set deep 26 1/2\"\n  set high 34\"\n");
    const double inch = 25.4;
    const sb_part *leg = part_named(t, "leg"), *plank = part_named(t, "top-plank"),
                  *last = part_named(t, "last-plank");
    const sb_part *skin = part_named(t, "top-skin"), *rail = part_named(t, "short-rail"),
                  *long_rail = part_named(t, "long-rail");
    assert_close(mm(leg->length) + mm(plank->thickness) + mm(skin->thickness), 34 * inch, inch / 16);
    assert_close((double)plank->count * mm(plank->width) + mm(last->width), 26.5 * inch, inch / 16);
    assert_close(mm(long_rail->length) + 2 * 3 * inch, 90 * inch, inch / 16);
    assert_close(mm(rail->length) + 2 * mm(long_rail->thickness) + 2 * 3 * inch, 26.5 * inch, inch / 16);
}

/* ---- ledged and braced gate: the brace in coordinates ---- */

static void a_brace_fits_its_field(void **state) {
    const sb_takeoff *t =
        made(*state, "piece p\n  recipe ledged-gate\n  set wide 950 mm\n  set high 1150 mm\n");
    const sb_part *board = part_named(t, "board"), *outer = part_named(t, "outer-board"),
                  *ledge = part_named(t, "ledge"), *brace = part_named(t, "brace");
    /* boards and the 2 mm between them close the width */
    assert_int_equal(outer->count, 2);
    assert_close((double)board->count * (mm(board->width) + 2) + 2 * mm(outer->width) + 2, 950, 1);
    assert_true(mm(outer->width) >= mm(board->width) / 2 - 2); /* no splinters */
    assert_close(mm(ledge->length), 950 - 2 * 30, 0);
    /* its ends lie along the ledges: parallel, at the brace's own angle against its edge */
    double angle = radians(90 - fabs(mitre(brace->end1)));
    assert_close(mitre(brace->end1), -mitre(brace->end2), 0);
    assert_int_equal(ledge->count, 2);
    double field = 1150 - 2 * 150 - 2 * mm(ledge->width), reach = 950 - 2 * 30;
    /* lower left corner at the heel (0, 0); along the lower edge to the other ledge, then the end's width along it */
    double edge = mm(brace->length) - mm(brace->width) / tan(angle);
    point heel = {0, 0, 0}, up = {edge * cos(angle), edge * sin(angle), 0},
          toe = {up.x + mm(brace->width) / sin(angle), up.y, 0};
    assert_close(up.y - heel.y, field, 1);
    assert_close(toe.x, reach, 2);
    assert_true(toe.x <= reach + 0.5 || mm(brace->allow) > 0);
}

/* ---- mitred frame ---- */

/* A regular frame closes when its corners turn through 360 degrees. Mitres as a compound mitre saw's operator manual
 * prints them: 4 sides 45, 5: 36, 6: 30, 8: 22.5, 10: 18. */
static void frames_close(void **state) {
    static const struct {
        int sides;
        double mitre;
    } handbook[] = {{4, 45}, {5, 36}, {6, 30}, {8, 22.5}, {10, 18}};
    desk *d = *state;
    open_rates(d, "rates");
    for (int sides = 3; sides <= 16; sides++) {
        const char *job = sb_pool_print(
            d->run.pool, "piece p\n  recipe mitred-frame\n  set shape regular\n  set sides %d\n", sides);
        const sb_part *bar = part_named(takeoff(d, job), "bar");
        assert_int_equal(bar->count, sides);
        assert_close((mitre(bar->end1) + mitre(bar->end2)) * sides, 360, 2e-5 * sides);
        for (size_t i = 0; i < sizeof handbook / sizeof *handbook; i++)
            if (handbook[i].sides == sides)
                assert_close(mitre(bar->end1), handbook[i].mitre, 0.05);
    }
}

/* ---- planters with a seat between; raised bed ---- */

static void a_seat_doubles_its_planters(void **state) {
    const sb_takeoff *t = made(*state, "piece p\n  recipe planter-seat\n  count 3\n  set long 2400 mm\n");
    assert_int_equal(parts_named(t, "post"), 3 * 2 * 4);
    /* 2 mm of air at both ends of the slats */
    assert_close(mm(part_named(t, "seat-slat")->length) + 4 + 2 * 400, 2400, 0.5);
    /* full slats, two ripped alike and 10 mm between them make the depth of the troughs */
    const sb_part *slat = part_named(t, "seat-slat"), *outer = part_named(t, "outer-slat");
    assert_close((double)slat->per_piece * (mm(slat->width) + 10) + 2 * mm(outer->width) + 10, 500, 1);
    assert_true(mm(outer->width) <= mm(slat->width));
}

static void a_bed_closes(void **state) {
    const sb_takeoff *t =
        made(*state, "piece p\n  recipe raised-bed\n  set long 2000 mm\n  set wide 1000 mm\n  set rows 3\n");
    const sb_part *plank = part_named(t, "long-plank"), *end = part_named(t, "short-plank");
    assert_close(mm(plank->length), 2000, 0);
    assert_close(mm(end->length) + 2 * mm(plank->thickness), 1000, 0.5);
    assert_int_equal(parts_named(t, "post"), 2 * 4); /* at most 900 mm apart: three bays */
    assert_int_equal(plank->count, 6);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(a_trough_closes),
        AT_DESK(a_panelled_trough_closes),
        AT_DESK(splayed_sides_meet),
        AT_DESK(splayed_sides_agree_with_the_chart),
        AT_DESK(a_raked_leg_stands_flat),
        AT_DESK(a_table_closes),
        AT_DESK(shelves_close),
        AT_DESK(solid_shelves_close),
        AT_DESK(a_workbench_closes),
        AT_DESK(a_brace_fits_its_field),
        AT_DESK(frames_close),
        AT_DESK(a_seat_doubles_its_planters),
        AT_DESK(a_bed_closes),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
