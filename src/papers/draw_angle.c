/* The saw set to an angle: what its scale shows and what the piece shows, for both ways that it may swing or tilt. Mitres are
 * seen from above, the fence at the top; bevels from in front, the table at the bottom. One is the other upside down. */
#include "papers/draw.h"

#include <math.h>

#define DEGREE (3.14159265358979323846 / 180)

/* Millimetres on paper. */
enum {
    PANEL = 88, /* width of one of the two figures */
    HEIGHT = 60,
    BETWEEN = 4,  /* swing and tilt of one end */
    STOP_TOP = 8, /* the fence, or the table */
    EDGE = 14,    /* where the piece lies against it */
    CLEAR = 34    /* left of all of the blade, for what the piece shows */
};
static const double piece_most = 24, reach_most = 34, blade_half = 0.5;

typedef struct figure {
    sb_run *run;
    sb_drawing *drawing;
    const sb_style *style;
    const sb_saw *saw; /* NULL: not told */
    sb_angle angle;
    double left, top; /* of the panel */
    bool to_left;     /* the blade's free end */
    bool tilts;
    double lean, width, pivot; /* angle in radians; of the piece; along the fence */
} figure;

typedef struct spot {
    double x, y;
} spot;

static sb_length on_paper(double mm) {
    return (sb_length){llround(mm * SB_NM_PER_MM)};
}

static sb_point point_at(const figure *f, double x, double y) {
    return (sb_point){on_paper(f->left + x), on_paper(f->top + (f->tilts ? HEIGHT - y : y))};
}

static void put_shape(const figure *f, const spot *spots, size_t count, bool closed, sb_fill fill,
                      sb_pen pen) {
    sb_shape *shape = sb_shape_add(f->run, f->drawing, fill, pen, closed);
    for (size_t i = 0; i < count; i++) {
        sb_point p = point_at(f, spots[i].x, spots[i].y);
        sb_shape_point(f->run, shape, p.x, p.y);
    }
}

static void put_words(const figure *f, spot at, double wide, double high, const char *text,
                      const char *number) {
    sb_label_add(f->run, f->drawing,
                 (sb_label){.place = SB_LABEL_INSIDE,
                            .at = point_at(f, at.x, at.y),
                            .wide = on_paper(wide),
                            .high = on_paper(high),
                            .text = text,
                            .number = number,
                            .mark = ""});
}

/* Where the blade stands, so far from the fence. */
static double blade_x(const figure *f, double away) {
    return f->pivot + (f->to_left ? -away : away) * tan(f->lean);
}

static double lesser(double a, double b) {
    return a < b ? a : b;
}

/* ---- what lies on the saw ---------------------------------------------------------------------------------- */

static void put_stop(const figure *f) {
    spot bar[] = {{0, STOP_TOP}, {PANEL - 5, STOP_TOP}, {PANEL - 5, EDGE}, {0, EDGE}};
    put_shape(f, bar, 4, true, SB_FILL_DOTS, SB_PEN_LINE);
    put_words(f, (spot){14, (STOP_TOP + EDGE) / 2.0}, 26, EDGE - STOP_TOP, f->tilts ? "table" : "fence", "");
}

/* The piece is kept to the left of the blade; what is to its right falls off. */
static void put_piece(const figure *f) {
    double near = EDGE + f->width, at_edge = blade_x(f, 0), at_near = blade_x(f, f->width);
    spot kept[] = {{1, EDGE}, {at_edge, EDGE}, {at_near, near}, {1, near}};
    spot waste[] = {{at_edge, EDGE}, {PANEL - 8, EDGE}, {PANEL - 8, near}, {at_near, near}};
    put_shape(f, waste, 4, true, SB_FILL_HATCH, SB_PEN_THIN);
    put_shape(f, kept, 4, true, SB_FILL_PAPER, SB_PEN_HEAVY);
}

static void put_blade(const figure *f) {
    double from = -lesser(4, 6 / tan(f->lean)), to = f->width + lesser(9, 12 / tan(f->lean));
    double half = blade_half / cos(f->lean);
    spot blade[] = {{blade_x(f, from) - half, EDGE + from},
                    {blade_x(f, from) + half, EDGE + from},
                    {blade_x(f, to) + half, EDGE + to},
                    {blade_x(f, to) - half, EDGE + to}};
    put_shape(f, blade, 4, true, SB_FILL_BLACK, SB_PEN_THIN);
    spot square[] = {{f->pivot, EDGE}, {f->pivot, EDGE + f->width + 11}};
    put_shape(f, square, 2, false, SB_FILL_NONE, SB_PEN_DASHED);
}

/* ---- the two readings -------------------------------------------------------------------------------------- */

/* From direction `from` to `to`, in radians: 0 along the fence to the right, a right angle away from it. */
static void put_arc(const figure *f, spot middle, double radius, double from, double to) {
    enum {
        STEPS = 12
    };
    spot arc[STEPS + 1];
    for (int i = 0; i <= STEPS; i++) {
        double direction = from + (to - from) * i / STEPS;
        arc[i] = (spot){middle.x + radius * cos(direction), middle.y + radius * sin(direction)};
    }
    put_shape(f, arc, STEPS + 1, false, SB_FILL_NONE, SB_PEN_LINE);
}

/* Between the square line and the blade, beyond the piece. */
static void put_scale(const figure *f) {
    double radius = f->width + 7, half = f->lean / 2, square = 90 * DEGREE;
    double way = f->to_left ? 1 : -1; /* the blade's direction, from square */
    put_arc(f, (spot){f->pivot, EDGE}, radius, square, square + way * f->lean);
    double out = radius + 7.5;
    put_words(f,
              (spot){f->pivot - way * out * sin(half), EDGE + lesser(out * cos(half), HEIGHT - EDGE - 5.5)},
              26, 10.5, "on the scale", sb_write_angle(f->run, f->angle, f->style));
}

/* A dot, and its name beside it on what falls off. */
static void put_long_point(const figure *f, spot corner, double beside) {
    const double r = 1.1;
    spot dot[] = {{corner.x - r, corner.y},
                  {corner.x, corner.y - r},
                  {corner.x + r, corner.y},
                  {corner.x, corner.y + r}};
    put_shape(f, dot, 4, true, SB_FILL_BLACK, SB_PEN_HEAVY);
    put_words(f, (spot){corner.x + 2 + 9.5, corner.y + beside}, 19, 5, "long point", "");
}

/* Between the blade and the edge of the piece where its long point is. */
static void put_on_piece(const figure *f) {
    sb_angle rest = {90000000 - f->angle.udeg};
    bool at_stop = f->to_left; /* the long point */
    spot corner = {blade_x(f, at_stop ? 0 : f->width), at_stop ? EDGE : EDGE + f->width};
    double edge = 180 * DEGREE, opening = 90 * DEGREE - f->lean, radius = lesser(8, f->width * 0.6);
    put_arc(f, corner, radius, edge, at_stop ? edge - opening : edge + opening);
    double middle = f->width / 2, high = lesser(f->width - 0.5, 10.5);
    double right =
        lesser(lesser(blade_x(f, middle - high / 2), blade_x(f, middle + high / 2)), corner.x - radius);
    put_words(f, (spot){right - 1 - 13, EDGE + middle}, 26, high, "on the piece",
              sb_write_angle(f->run, rest, f->style));
    put_long_point(f, corner, at_stop ? 4.5 : -4.5);
}

static bool saw_reaches(const figure *f) {
    sb_reach reach = !f->saw    ? SB_REACHES
                     : f->tilts ? sb_saw_tilts(f->saw, f->angle)
                                : sb_saw_swings(f->saw, f->angle);
    return reach == SB_REACHES || reach == (f->to_left ? SB_REACHES_LEFT_ONLY : SB_REACHES_RIGHT_ONLY);
}

/* Which mark it is for and what the saw is set to; where it does not go that far, what to do instead stands below. */
static void put_heading(const figure *f) {
    static const char *const where[2][2] = {{"near edge", "far edge"}, {"upper face", "lower face"}};
    const char *mark = where[f->tilts][f->to_left];
    spot middle = {PANEL / 2.0 - 3, STOP_TOP / 2.0 - 0.5};
    if (saw_reaches(f))
        put_words(f, middle, PANEL - 8, STOP_TOP - 1,
                  sb_pool_print(f->run->pool, "mark on the %s: %s %s", mark, f->tilts ? "tilt" : "swing",
                                f->to_left ? "left" : "right"),
                  sb_write_angle(f->run, f->angle, f->style));
    else
        put_words(f, middle, PANEL - 8, STOP_TOP - 1,
                  sb_pool_print(f->run->pool, "mark on the %s: past this saw, see below", mark), "");
}

/* A figure for the blade leaning one way. */
static void put_figure(figure f, bool to_left) {
    f.to_left = to_left;
    f.left = to_left ? 0 : PANEL;
    f.lean = (double)f.angle.udeg * 1e-6 * DEGREE;
    f.width = lesser(piece_most, reach_most / tan(f.lean));
    f.pivot = CLEAR + (to_left ? f.width * tan(f.lean) : 0);
    put_stop(&f);
    put_piece(&f);
    put_blade(&f);
    put_scale(&f);
    put_on_piece(&f);
    put_heading(&f);
}

/* ---- which there are --------------------------------------------------------------------------------------- */

/* Ends that the saw is set alike for. */
typedef struct angle_use {
    sb_angle mitre, bevel;
    sb_cut_end end;
    const char *names;
} angle_use;
typedef SB_LIST(angle_use) angle_uses;

static sb_angle size_of(sb_angle angle) {
    return (sb_angle){angle.udeg < 0 ? -angle.udeg : angle.udeg};
}

static void add_name(sb_run *run, angle_use *use, const char *name) {
    use->names = *use->names ? sb_pool_print(run->pool, "%s; %s", use->names, name) : name;
}

static void add_end(const cuts_paper *p, angle_uses *uses, sb_cut_end end, const char *name, bool first) {
    sb_angle mitre = size_of(end.mitre), bevel = size_of(end.bevel);
    if (cuts_end_square(end))
        return;
    size_t i = 0;
    while (i < uses->count &&
           (uses->items[i].mitre.udeg != mitre.udeg || uses->items[i].bevel.udeg != bevel.udeg))
        i++;
    if (i == uses->count)
        SB_PUSH(p->run->pool, *uses, ((angle_use){mitre, bevel, end, ""}));
    else if (!first)
        return; /* the other end of the same part */
    add_name(p->run, &uses->items[i], name);
}

static bool same_size(sb_cut_end a, sb_cut_end b) {
    return size_of(a.mitre).udeg == size_of(b.mitre).udeg && size_of(a.bevel).udeg == size_of(b.bevel).udeg;
}

/* From the saw, and of parts that get their angles when they are glued up. */
static angle_uses angles_of(const cuts_paper *p) {
    const sb_takeoff *takeoff = p->takeoff;
    angle_uses uses = {0};
    for (size_t i = 0; i < p->problem->needs.count; i++) {
        const sb_need *need = &p->problem->needs.items[i];
        add_end(p, &uses, need->end1, cuts_name(p, i), true);
        add_end(p, &uses, need->end2, cuts_name(p, i), !same_size(need->end1, need->end2));
    }
    for (size_t i = 0; takeoff && i < takeoff->parts.count; i++) {
        const sb_part *part = &takeoff->parts.items[i];
        if (!sb_part_ends_later(part))
            continue;
        add_end(p, &uses, part->end1, part->title, true);
        add_end(p, &uses, part->end2, part->title, !same_size(part->end1, part->end2));
    }
    return uses;
}

/* ---- on paper ---------------------------------------------------------------------------------------------- */

static const char intro[] =
    "The piece lies to the left of the blade and is kept; what is hatched falls off. "
    "Where the piece is kept on the right of the blade, the same mark wants the other "
    "figure. The far edge lies against the fence, the lower face on the table; the page "
    "Boards says which of them a mark is on.";

static const char *title_of(const cuts_paper *p, const angle_use *use) {
    const char *swing = sb_write_angle(p->run, use->mitre, p->style);
    const char *tilt = sb_write_angle(p->run, use->bevel, p->style);
    if (use->mitre.udeg > 0 && use->bevel.udeg > 0)
        return sb_pool_print(p->run->pool, "Mitre %s together with bevel %s: %s", swing, tilt, use->names);
    return use->mitre.udeg > 0 ? sb_pool_print(p->run->pool, "Mitre %s: %s", swing, use->names)
                               : sb_pool_print(p->run->pool, "Bevel %s: %s", tilt, use->names);
}

/* Swing and tilt of a compound end below one another, so that no page comes between them. */
static void add_drawing(const cuts_paper *p, sb_sheet *sheet, const angle_use *use, size_t index) {
    const sb_angle angles[] = {use->mitre, use->bevel};
    bool compound = use->mitre.udeg > 0 && use->bevel.udeg > 0;
    sb_drawing *drawing =
        sb_drawing_add(p->run, sheet, title_of(p, use), sb_pool_print(p->run->pool, "angle-%zu", index + 1),
                       on_paper(2 * PANEL), on_paper(compound ? 2 * HEIGHT + BETWEEN : HEIGHT));
    figure f = {.run = p->run,
                .drawing = drawing,
                .style = p->style,
                .saw = p->settings ? &p->settings->crosscut : NULL};
    drawing->scale_most = 1;
    for (int i = 0; i < 2; i++) {
        f.angle = angles[i];
        f.tilts = i == 1;
        if (f.angle.udeg == 0)
            continue;
        put_figure(f, true);
        put_figure(f, false);
        f.top += HEIGHT + BETWEEN;
    }
}

void draw_angles(cuts_paper *p) {
    angle_uses uses = angles_of(p);
    if (uses.count == 0)
        return;
    sb_sheet *sheet = sb_sheet_add(p->run, p->document, "Angles");
    sb_heading_add(p->run, sheet, "Angles");
    sb_paragraph_add(p->run, sheet, intro, false);
    for (size_t i = 0; i < uses.count; i++) {
        const angle_use *use = &uses.items[i];
        add_drawing(p, sheet, use, i);
        const char *reach =
            p->settings ? cuts_reach(p->run, &p->settings->crosscut, use->end, (sb_length){0}, p->style) : "";
        if (*reach)
            sb_paragraph_add(
                p->run, sheet,
                sb_pool_print(p->run->pool, "%s: %s.", cuts_setting(p->run, use->end, p->style), reach),
                false);
    }
}
