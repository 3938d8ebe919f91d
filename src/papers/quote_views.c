#include "papers/quote_views.h"

/* Millimetres on paper. */
enum {
    PAGE = 176,
    WIDEST = 104, /* of both views together */
    TALLEST = 60, /* of the higher view */
    APART = 34,   /* beside each view, for its height */
    CAPTION = 7,
    FOOT = 10, /* below, for the width */
    LINE = 6   /* of one measure */
};

typedef struct extent {
    int64_t left, right, top; /* nm; the ground is at 0 */
    bool any;
} extent;

typedef struct views {
    sb_run *run;
    const sb_takeoff_piece *piece;
    const quote_sizes *sizes;
    sb_drawing *drawing;
    int64_t unit;   /* nm of the piece in a millimetre of paper */
    int64_t ground; /* from the drawing's top */
} views;

static int64_t lesser(int64_t a, int64_t b) {
    return a < b ? a : b;
}

static int64_t greater(int64_t a, int64_t b) {
    return a > b ? a : b;
}

static extent extent_of(const sb_takeoff_piece *piece, bool side) {
    extent e = {0};
    for (size_t i = 0; i < piece->outlines.count; i++) {
        const sb_outline *o = &piece->outlines.items[i];
        if (o->side != side)
            continue;
        int64_t left = o->x.nm + lesser(o->lean.nm, 0),
                right = o->x.nm + o->width.nm + greater(o->lean.nm, 0);
        e.left = e.any ? lesser(e.left, left) : left;
        e.right = e.any ? greater(e.right, right) : right;
        e.top = greater(e.top, o->y.nm + o->height.nm);
        e.any = true;
    }
    return e;
}

static int64_t width_of(extent e) {
    return e.right - e.left;
}

/* ---- measures ------------------------------------------------------------------------------------------- */

static void line(const views *v, int64_t x1, int64_t y1, int64_t x2, int64_t y2) {
    sb_shape_line(v->run, v->drawing, SB_PEN_THIN, (sb_point){{x1}, {y1}}, (sb_point){{x2}, {y2}});
}

static void words(const views *v, int64_t x, int64_t y, int64_t wide, int64_t high, const char *text,
                  const char *number) {
    sb_label_add(v->run, v->drawing,
                 (sb_label){.place = SB_LABEL_INSIDE,
                            .at = {{x}, {y}},
                            .wide = {wide},
                            .high = {high},
                            .text = text,
                            .number = number,
                            .mark = ""});
}

/* In the middle of a line that is as high; the second unit stands below it. */
static void measure(const views *v, int64_t x, int64_t y, int64_t wide, int64_t nm) {
    sb_length size = {nm};
    int64_t high = LINE * v->unit;
    words(v, x, y, wide, high, "", sb_write_sizes(v->run, &size, 1, &v->sizes->first));
    if (!v->sizes->both)
        return;
    const char *second = sb_write_sizes(v->run, &size, 1, &v->sizes->second);
    words(v, x, y + high, wide, high, sb_pool_print(v->run->pool, "(%s)", second), "");
}

/* Between two short strokes, the number below it. */
static void measure_width(const views *v, int64_t left, int64_t width) {
    int64_t u = v->unit, y = v->ground + 3 * u;
    line(v, left, y, left + width, y);
    line(v, left, y - u, left, y + u);
    line(v, left + width, y - u, left + width, y + u);
    measure(v, left + width / 2, y + 4 * u, greater(width, 26 * u), width);
}

static void measure_height(const views *v, int64_t right, int64_t height) {
    int64_t u = v->unit, x = right + 4 * u, top = v->ground - height;
    line(v, x, top, x, v->ground);
    line(v, x - u, top, x + u, top);
    line(v, x - u, v->ground, x + u, v->ground);
    int64_t up = v->sizes->both ? LINE * u / 2 : 0;
    measure(v, x + 16 * u, v->ground - height / 2 - up, 28 * u, height);
}

/* ---- a view --------------------------------------------------------------------------------------------- */

static void put_outline(const views *v, const sb_outline *o, int64_t offset) {
    sb_shape *shape = sb_shape_add(v->run, v->drawing, SB_FILL_PAPER, SB_PEN_LINE, true);
    int64_t left = o->x.nm + offset, foot = v->ground - o->y.nm, top = foot - o->height.nm;
    sb_shape_point(v->run, shape, (sb_length){left}, (sb_length){foot});
    sb_shape_point(v->run, shape, (sb_length){left + o->lean.nm}, (sb_length){top});
    sb_shape_point(v->run, shape, (sb_length){left + o->lean.nm + o->width.nm}, (sb_length){top});
    sb_shape_point(v->run, shape, (sb_length){left + o->width.nm}, (sb_length){foot});
}

static void put_view(const views *v, bool side, extent e, int64_t left, const char *caption) {
    if (!e.any)
        return;
    int64_t u = v->unit, middle = left + width_of(e) / 2;
    for (size_t i = 0; i < v->piece->outlines.count; i++)
        if (v->piece->outlines.items[i].side == side)
            put_outline(v, &v->piece->outlines.items[i], left - e.left);
    line(v, left - 2 * u, v->ground, left + width_of(e) + 2 * u, v->ground);
    words(v, middle, CAPTION * u / 2, greater(width_of(e), 26 * u), CAPTION * u, caption, "");
    measure_width(v, left, width_of(e));
    measure_height(v, left + width_of(e), e.top);
}

void quote_views(sb_run *run, sb_sheet *sheet, const sb_takeoff_piece *piece, const quote_sizes *sizes,
                 const sb_wording *wording, size_t number) {
    extent front = extent_of(piece, false), side = extent_of(piece, true);
    if (!front.any && !side.any)
        return;
    int64_t tall = greater(front.top, side.top), wide = width_of(front) + width_of(side);
    views v = {.run = run, .piece = piece, .sizes = sizes};
    v.unit = greater(greater(wide / WIDEST, tall / TALLEST), 1);
    v.ground = tall + CAPTION * v.unit;
    int64_t foot = FOOT + (sizes->both ? LINE : 0);
    v.drawing = sb_drawing_add(run, sheet, piece->title, sb_pool_print(run->pool, "piece-%zu", number),
                               (sb_length){PAGE * v.unit}, (sb_length){v.ground + foot * v.unit});
    int64_t left = 3 * v.unit;
    put_view(&v, false, front, left, sb_wording_text(run, wording, "view-front"));
    if (front.any)
        left += width_of(front) + APART * v.unit;
    put_view(&v, true, side, left, sb_wording_text(run, wording, "view-side"));
}
