/* A regular frame is drawn as what it is: so many equal sides round a middle. Geometry. */
#include "sample.h"

#include <math.h>

typedef struct extent {
    int64_t left, right, top;
} extent;

static int64_t least(int64_t a, int64_t b) {
    return a < b ? a : b;
}

static int64_t most(int64_t a, int64_t b) {
    return a > b ? a : b;
}

static extent extent_of(const sb_takeoff_piece *piece) {
    extent e = {INT64_MAX, 0, 0};
    for (size_t i = 0; i < piece->outlines.count; i++) {
        const sb_outline *o = &piece->outlines.items[i];
        assert_true(o->y.nm >= -1000);
        e.left = least(e.left, o->x.nm + least(o->lean.nm, 0));
        e.right = most(e.right, o->x.nm + o->width.nm + most(o->lean.nm, 0));
        e.top = most(e.top, o->y.nm + o->height.nm);
    }
    return e;
}

static bool near_mm(int64_t nm, double mm) {
    return fabs((double)nm / 1e6 - mm) < 1.01; /* strokes are a millimetre wide */
}

/* Lines of the outside: as many as the frame has sides, each as long as a side. */
static int sides_drawn(const sb_takeoff_piece *piece, double side) {
    int count = 0;
    for (size_t i = 0; i < piece->outlines.count; i++) {
        const sb_outline *o = &piece->outlines.items[i];
        double length = o->height.nm > 1000000 ? hypot((double)o->lean.nm, (double)o->height.nm) / 1e6
                                               : (double)o->width.nm / 1e6;
        count += fabs(length - side) < 0.01;
    }
    return count;
}

static void regular_frames(void **state) {
    (void)state;
    for (int sides = 3; sides <= 16; sides++) {
        sample s;
        char lines[120];
        snprintf(lines, sizeof lines, "piece f\n  recipe mitred-frame\n  set shape regular\n  set sides %d\n",
                 sides);
        sample_make(&s, lines);
        const sb_takeoff_piece *piece = &s.ways->list.items[0].takeoff->pieces.items[0];
        double turn = acos(-1.0) / sides, reach = 600 / sin(turn) / 2, flat = reach * cos(turn), widest = 0;
        for (int corner = 0; corner < sides; corner++)
            widest = fmax(widest, reach * sin((2 * corner + 1) * turn));
        extent e = extent_of(piece);
        assert_true(near_mm(e.right - e.left, 2 * widest));
        assert_true(near_mm(e.top, sides % 2 ? flat + reach : 2 * flat));
        assert_int_equal(sides_drawn(piece, 600), sides);
        sample_close(&s);
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(regular_frames),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
