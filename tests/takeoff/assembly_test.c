/* Pieces put together part by part, each where it belongs: every part is used, none is missing, no two stand in the
 * same place, and nothing stands out of the size told. Places follow from the parts' own sizes and from how the piece
 * goes together, not from the recipes' formulas. Runs in the project's folder. */
#include "pieces.h"

/* ---- boxes ---- */

typedef struct box {
    const char *name;
    double at[3], size[3]; /* x along the piece, y to the rear, z up */
} box;

enum {
    MOST_BOXES = 200
};

typedef struct pile {
    const sb_takeoff *t;
    box boxes[MOST_BOXES];
    size_t count;
} pile;

static const double HAIR = 0.6; /* sizes are put up to half a millimetre */

static const sb_part *part_of(const pile *p, const char *name) {
    return part_named(p->t, name);
}

static double long_of(const pile *p, const char *name) {
    return mm(part_of(p, name)->length);
}

static double wide_of(const pile *p, const char *name) {
    return mm(part_of(p, name)->width);
}

static double thick_of(const pile *p, const char *name) {
    return mm(part_of(p, name)->thickness);
}

/* How a part lies: which of its sizes runs along x, y and z: "lwt" is a board flat on the ground, along x. */
static void put(pile *p, const char *name, const char *lies, double x, double y, double z) {
    box b = {name, {x, y, z}, {0}};
    for (int i = 0; i < 3; i++)
        b.size[i] = lies[i] == 'l' ? long_of(p, name) : lies[i] == 'w' ? wide_of(p, name) : thick_of(p, name);
    assert_true(p->count < MOST_BOXES);
    p->boxes[p->count++] = b;
}

/* Alike on both sides of the middle of a piece that is `size` along an axis (0: x, 1: y). */
static void put_both(pile *p, const char *name, const char *lies, double x, double y, double z, int axis,
                     double size) {
    put(p, name, lies, x, y, z);
    const box *first = &p->boxes[p->count - 1];
    double mirrored = size - first->at[axis] - first->size[axis];
    put(p, name, lies, axis == 0 ? mirrored : x, axis == 1 ? mirrored : y, z);
}

static bool clash(const box *a, const box *b) {
    for (int i = 0; i < 3; i++)
        if (a->at[i] + a->size[i] <= b->at[i] + HAIR || b->at[i] + b->size[i] <= a->at[i] + HAIR)
            return false;
    return true;
}

static void tell_box(const box *b, char *text, size_t size) {
    snprintf(text, size, "%s at %.1f %.1f %.1f, %.1f x %.1f x %.1f", b->name, b->at[0], b->at[1], b->at[2],
             b->size[0], b->size[1], b->size[2]);
}

static void assert_no_clash(const pile *p) {
    char a[160], b[160];
    for (size_t i = 0; i < p->count; i++)
        for (size_t j = 0; j < i; j++)
            if (clash(&p->boxes[i], &p->boxes[j])) {
                tell_box(&p->boxes[i], a, sizeof a);
                tell_box(&p->boxes[j], b, sizeof b);
                fail_msg("%s\nstands in\n%s", a, b);
            }
}

static void assert_within(const pile *p) {
    for (int axis = 0; axis < 3; axis++) {
        double least = 1e9, most = -1e9;
        for (size_t i = 0; i < p->count; i++) {
            least = fmin(least, p->boxes[i].at[axis]);
            most = fmax(most, p->boxes[i].at[axis] + p->boxes[i].size[axis]);
        }
        assert_close(least, 0, 1.1);
        assert_close(most, mm(p->t->pieces.items[0].size[axis]), 1.1);
    }
}

/* Everything of the recipe itself is put somewhere. Parts of components, and those left out on purpose, do not count. */
static void assert_used_up(const pile *p, const char *left_out) {
    for (size_t i = 0; i < p->t->parts.count; i++) {
        const sb_part *part = &p->t->parts.items[i];
        int64_t put_down = 0;
        for (size_t j = 0; j < p->count; j++)
            put_down += strcmp(p->boxes[j].name, part->name) == 0;
        if (!*part->path && strcmp(part->name, left_out) != 0 && put_down != part->per_piece)
            fail_msg("%lld of %s are cut, %lld find a place", (long long)part->per_piece, part->name,
                     (long long)put_down);
    }
}

/* None is fine: some benches need no cross rail. */
static int count_of(const pile *p, const char *name) {
    return (int)parts_named(p->t, name);
}

static pile begin(desk *d, const char *rates, const char *job) {
    open_rates(d, rates);
    return (pile){.t = takeoff(d, job)};
}

static void end(const pile *p) {
    assert_no_clash(p);
    assert_within(p);
    assert_used_up(p, "");
}

/* ---- trough planter ---- */

/* Between two short boards `from` and `to`, at even distances. */
static void lay_floor(pile *p, double from, double to, double y, double z, int boards) {
    double gap = (to - from - boards * wide_of(p, "floor-board")) / (boards + 1);
    assert_true(gap >= 8);
    for (int i = 0; i < boards; i++)
        put(p, "floor-board", "wlt", from + gap + i * (wide_of(p, "floor-board") + gap), y, z);
}

static void build_trough_sides(pile *p, double length, double width, double top) {
    double thick = thick_of(p, "long-slat"), slat = wide_of(p, "long-slat");
    int rows = count_of(p, "long-slat") / 2;
    for (int i = 0; i < rows; i++) {
        double z = 20 + i * (top - 20 - slat) / (rows - 1);
        put_both(p, "long-slat", "ltw", 0, 0, z, 1, width);
        put_both(p, "short-slat", "tlw", 0, thick, z, 0, length);
    }
}

static void build_trough(pile *p, double length, double width) {
    double side = thick_of(p, "long-slat"), post = wide_of(p, "post"), top = long_of(p, "post");
    double board = wide_of(p, "floor-board"), floor_at = 20 + wide_of(p, "bearer");
    int pairs = count_of(p, "post") / 2;
    build_trough_sides(p, length, width, top);
    for (int i = 0; i < pairs; i++) {
        double x = side + i * (length - 2 * side - post) / (pairs - 1);
        double board_x = side + i * (length - 2 * side - board) / (pairs - 1);
        put_both(p, "post", "wtl", x, side, 0, 1, width);
        put(p, "post-board", "wlt", board_x, side + post, floor_at);
        if (i > 0)
            lay_floor(p, board_x - (length - 2 * side - board) / (pairs - 1) + board, board_x, side, floor_at,
                      count_of(p, "floor-board") / (pairs - 1));
    }
    put_both(p, "bearer", "ltw", side, side + post, 20, 1, width);
    put_both(p, "long-rim", "lwt", 0, 0, top, 1, width);
}

static void a_trough_goes_together(void **state) {
    static const double sizes[][3] = {
        {1000, 400, 450}, {1400, 400, 500}, {900, 450, 500}, {400, 300, 250}, {2400, 600, 900}};
    desk *d = *state;
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        pile p = begin(
            d, "rates",
            sb_pool_print(
                d->run.pool,
                "piece p\n  recipe trough-planter\n  set long %g mm\n  set wide %g mm\n  set high %g mm\n",
                sizes[i][0], sizes[i][1], sizes[i][2]));
        build_trough(&p, sizes[i][0], sizes[i][1]);
        assert_no_clash(&p);
        assert_within(&p);
        assert_used_up(&p, "short-rim"); /* mitred into the long ones */
    }
}

/* ---- workbench ---- */

static void build_corner_of_legs(pile *p, double x, double y, double depth, double foot) {
    double rail = thick_of(p, "long-rail"), high = wide_of(p, "long-rail");
    put_both(p, "leg-foot", "wtl", x, y, 0, 1, depth);
    put_both(p, "leg-half", "wtl", x, y, foot + high, 1, depth);
    put_both(p, "leg", "wtl", x, y + rail, 0, 1, depth);
}

static void build_bench_frame(pile *p, double length, double depth) {
    const double over = 3 * 25.4, foot = long_of(p, "leg-foot");
    double rail = thick_of(p, "long-rail"), high = wide_of(p, "long-rail"), leg = wide_of(p, "leg");
    double upper = long_of(p, "leg") - high;
    build_corner_of_legs(p, over + rail, over, depth, foot);
    build_corner_of_legs(p, length - over - rail - leg, over, depth, foot);
    for (int i = 0; i < 2; i++) {
        double z = i ? upper : foot;
        put_both(p, "long-rail", "ltw", over, over, z, 1, depth);
        put_both(p, "short-rail", "tlw", over, over + rail, z, 0, length);
    }
    int crossings = count_of(p, "cross-rail"); /* between the legs, at even distances */
    for (int i = 1; i <= crossings; i++)
        put(p, "cross-rail", "tlw", length * i / (crossings + 1) - rail / 2, over + rail, upper);
    int shelves = count_of(p, "shelf");
    for (int i = 0; i < shelves; i++)
        put(p, "shelf", "lwt", over + rail + leg + 3 + i * long_of(p, "shelf"), over, foot + high);
}

static void build_bench_top(pile *p) {
    double z = long_of(p, "leg"), y = 0;
    for (int i = 0; i < count_of(p, "top-plank"); i++, y += wide_of(p, "top-plank"))
        put(p, "top-plank", "lwt", 0, y, z);
    put(p, "last-plank", "lwt", 0, y, z);
    for (int i = 0; i < count_of(p, "top-skin"); i++)
        put(p, "top-skin", "lwt", i * long_of(p, "top-skin"), 0, z + thick_of(p, "top-plank"));
}

static void a_workbench_goes_together(void **state) {
    static const double sizes[][3] = {{72, 24, 34}, {90, 26.5, 34}, {36, 18, 28}, {120, 36, 42}}; /* inches */
    desk *d = *state;
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++) {
        pile p = begin(
            d, "rates/imperial",
            sb_pool_print(d->run.pool,
                          "piece p\n  recipe workbench\n  set long %g\"\n  set deep %g\"\n  set high %g\"\n",
                          sizes[i][0], sizes[i][1], sizes[i][2]));
        build_bench_frame(&p, sizes[i][0] * 25.4, sizes[i][1] * 25.4);
        build_bench_top(&p);
        end(&p);
    }
}

/* ---- raised bed ---- */

static void a_bed_goes_together(void **state) {
    desk *d = *state;
    pile p = begin(d, "rates",
                   "piece p\n  recipe raised-bed\n  set long 2400 mm\n  set wide 1100 mm\n  set rows 4\n");
    double plank = thick_of(&p, "long-plank"), post = wide_of(&p, "post");
    for (int i = 0; i < 4; i++) {
        put_both(&p, "long-plank", "ltw", 0, 0, i * 145, 1, 1100);
        put_both(&p, "short-plank", "tlw", 0, plank, i * 145, 0, 2400);
    }
    int pairs = count_of(&p, "post") / 2;
    double pitch = (2400 - 2 * plank - post) / (pairs - 1);
    assert_true(pitch <= 900);
    for (int i = 0; i < pairs; i++)
        put_both(&p, "post", "wtl", plank + i * pitch, plank, 0, 1, 1100);
    for (int i = 1; i < pairs - 1; i++)
        put(&p, "tie", "tlw", plank + i * pitch + post, plank, 200);
    end(&p);
}

/* ---- seat between planters: the troughs as blocks ---- */

static void a_seat_goes_together(void **state) {
    desk *d = *state;
    pile p = begin(d, "rates", "piece p\n  recipe planter-seat\n  set long 2600 mm\n");
    static const box troughs[] = {{"trough", {0, 0, 0}, {400, 500, 510}},
                                  {"trough", {2200, 0, 0}, {400, 500, 510}}};
    for (size_t i = 0; i < 2; i++)
        p.boxes[p.count++] = troughs[i];
    double seat = 450, slat = thick_of(&p, "seat-slat"), ledger = wide_of(&p, "ledger"), under = seat - slat;
    put_both(&p, "ledger", "tlw", 400, 0, under - ledger, 0, 2600);
    double y = wide_of(&p, "outer-slat") + 10;
    put_both(&p, "outer-slat", "lwt", 402, 0, under, 1, 500);
    for (int i = 0; i < count_of(&p, "seat-slat"); i++, y += wide_of(&p, "seat-slat") + 10)
        put(&p, "seat-slat", "lwt", 402, y, under);
    assert_close(y + wide_of(&p, "outer-slat"), 500, 1);
    int pieces = count_of(&p, "crosspiece");
    assert_int_equal(count_of(&p, "leg"), 2 * pieces);
    for (int i = 1; i <= pieces; i++) {
        double x = 400 + 1800.0 * i / (pieces + 1);
        put(&p, "crosspiece", "tlw", x, 0, under - wide_of(&p, "crosspiece"));
        put_both(&p, "leg", "twl", x + thick_of(&p, "crosspiece"), 0, 0, 1, 500);
    }
    end(&p);
}

/* ---- shelf unit ---- */

/* The housings take the shelves' ends: they are put down shorter by what the sides swallow. */
static void a_shelf_unit_goes_together(void **state) {
    desk *d = *state;
    pile p = begin(d, "rates",
                   "piece p\n  recipe shelf-unit\n  set shelves 3\n  set high 1600 mm\n  set housing 5 mm\n");
    double thick = thick_of(&p, "side"), plinth = wide_of(&p, "plinth"), pitch = (1600 - plinth - thick) / 4;
    put_both(&p, "side", "twl", 0, 0, 0, 0, 900);
    put(&p, "plinth", "ltw", thick, 30, 0);
    for (int i = 0; i < 5; i++) {
        put(&p, "shelf", "lwt", thick - 5, 0, plinth + i * pitch);
        box *shelf = &p.boxes[p.count - 1];
        assert_close(shelf->size[0] - 2 * 5, 900 - 2 * thick, HAIR);
        shelf->at[0] = thick, shelf->size[0] -= 2 * 5;
    }
    double rail = wide_of(&p, "back-rail"), behind = 300 - thick_of(&p, "back-rail");
    put(&p, "back-rail", "ltw", thick, behind, plinth + thick);
    put(&p, "back-rail", "ltw", thick, behind, 1600 - thick - rail);
    end(&p);
}

/* ---- garden bench: seen from above and from the front; the raked legs in their own plane ---- */

static void a_bench_frame_goes_together(void **state) {
    desk *d = *state;
    pile p =
        begin(d, "rates",
              "piece p\n  recipe garden-bench\n  set long 2000 mm\n  set deep 450 mm\n  set rake 5 deg\n");
    double leg = thick_of(&p, "front-leg"), rail = thick_of(&p, "side-rail"), top = long_of(&p, "front-leg");
    double under = top - wide_of(&p, "side-rail"), back = 450 - thick_of(&p, "long-rail");
    put_both(&p, "front-leg", "twl", 0, 0, 0, 0, 2000);
    put_both(&p, "side-rail", "tlw", leg, 0, under, 0, 2000);
    put(&p, "long-rail", "ltw", leg + rail, 0, under);
    put(&p, "long-rail", "ltw", leg + rail, back, under);
    int crossings = count_of(&p, "cross-rail");
    for (int i = 1; i <= crossings; i++)
        put(&p, "cross-rail", "tlw", 2000.0 * i / (crossings + 1), thick_of(&p, "long-rail"), under);
    for (int i = 0; i < 2; i++) /* upright blocks in the four corners */
        put_both(&p, "block", "wtl", leg + rail, i ? back - thick_of(&p, "block") : thick_of(&p, "long-rail"),
                 under, 0, 2000);
    int full = count_of(&p, "seat-slat");
    for (int i = 0; i < full; i++)
        put(&p, "seat-slat", "lwt", 0, i * (wide_of(&p, "seat-slat") + 10), top);
    put(&p, "rear-slat", "lwt", 0, full * (wide_of(&p, "seat-slat") + 10), top);
    assert_no_clash(&p);
    const box *rear = &p.boxes[p.count - 1];
    assert_close(rear->at[1] + rear->size[1], 450, HAIR); /* the raked leg's front, where the slats lie */
    /* between two supports less than a metre */
    assert_true((2000 - 2 * (leg + rail)) / (crossings + 1) <= 1000);
    /* up the back: slats, 10 mm between, and the gap over the seat end at the legs' tops */
    double up = (850 - 440) / cos(radians(5));
    assert_true(60 + count_of(&p, "back-slat") * (wide_of(&p, "back-slat") + 10) - 10 <= up);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_DESK(a_trough_goes_together),     AT_DESK(a_workbench_goes_together),
        AT_DESK(a_bed_goes_together),        AT_DESK(a_seat_goes_together),
        AT_DESK(a_shelf_unit_goes_together), AT_DESK(a_bench_frame_goes_together),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
