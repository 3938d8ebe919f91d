/* Drawings onto paper: the scale, the shapes, then the labels, the largest room first. */
#include "writers/drawing.h"

#include "writers/label.h"

#include <string.h>

#define POINTS_PER_MM (72 / 25.4)

typedef struct lay {
    sb_run *run;
    const type_case *type;
    const sb_drawing *drawing;
    double scale;     /* points per nm */
    double width;     /* of the paper */
    bool marks_alone; /* a mark may stand without its number; among numbers to cut at it would be missed */
    ink shapes, labels;
    size_t homeless; /* labels without room where they belong: outside, or left out */
    SB_LIST(ink_box) taken;
    label_sets inside, above, below, corner, on;
} lay;

static double x_of(const lay *l, sb_length x) {
    return (double)x.nm * l->scale;
}

static ink_point point_of(const lay *l, sb_point p) {
    return (ink_point){x_of(l, p.x), x_of(l, p.y)};
}

/* ---- shapes --------------------------------------------------------------------------------------------- */

static void put_shape(lay *l, const sb_shape *shape) {
    static const double pens[] = {
        [SB_PEN_LINE] = 0.8, [SB_PEN_THIN] = 0.5, [SB_PEN_HEAVY] = 1.6, [SB_PEN_DASHED] = 0.7};
    ink_shape put = {.count = shape->points.count,
                     .closed = shape->closed,
                     .fill = shape->fill,
                     .pen = pens[shape->pen],
                     .dashed = shape->pen == SB_PEN_DASHED};
    put.points = SB_NEW_ARRAY(l->run->pool, ink_point, put.count);
    for (size_t i = 0; i < put.count; i++)
        put.points[i] = point_of(l, shape->points.items[i]);
    SB_PUSH(l->run->pool, l->shapes.items, ((ink_item){.shape = put}));
}

/* ---- labels in their rooms ------------------------------------------------------------------------------ */

static PangoLayout *set_text(const lay *l, const char *text, int size, bool strong) {
    return text && *text ? type_set(l->run, l->type, text, size, strong, 0) : NULL;
}

static void sort_label(lay *l, const sb_label *label) {
    bool small = label->place == SB_LABEL_ON || label->place == SB_LABEL_CORNER;
    label_set set = {.label = label, .at = point_of(l, label->at)};
    set.text = set_text(l, label->text, TYPE_SMALL, false);
    set.number = set_text(l, label->number, small ? TYPE_SMALL : TYPE_NUMBER, true);
    set.mark = set.text ? set_text(l, label->mark, TYPE_TITLE, true) : NULL;
    label_sets *const lists[] = {[SB_LABEL_INSIDE] = &l->inside,
                                 [SB_LABEL_ABOVE] = &l->above,
                                 [SB_LABEL_BELOW] = &l->below,
                                 [SB_LABEL_CORNER] = &l->corner,
                                 [SB_LABEL_ON] = &l->on};
    if (set.text || set.number)
        SB_PUSH(l->run->pool, *lists[label->place], set);
}

static bool is_free(const lay *l, ink_box box) {
    for (size_t i = 0; i < l->taken.count; i++)
        if (ink_overlap(box, l->taken.items[i]))
            return false;
    return true;
}

static ink_box box_around(ink_point middle, double width, double height) {
    return (ink_box){middle.x - width / 2, middle.y - height / 2, width, height};
}

/* In the middle of its room, else as near above or below it as what stands there already lets it. */
static bool find_free(const lay *l, ink_box *box, double high) {
    const double step = 1, middle = box->top;
    for (double off = 0; off <= (high - box->height) / 2; off += step)
        for (int way = -1; way <= 1; way += 2) {
            box->top = middle + way * off;
            if (is_free(l, *box))
                return true;
        }
    return false;
}

/* The first of its forms that the room holds. */
static bool put_inside(lay *l, label_set *set) {
    label_form forms[LABEL_FORMS];
    bool by_mark[LABEL_FORMS];
    double wide = x_of(l, set->label->wide) - 4, high = x_of(l, set->label->high) - 2;
    size_t count = label_forms(l->run, l->type, set, wide, forms, by_mark);
    if (!l->marks_alone && count == LABEL_FORMS)
        count--;
    for (size_t i = 0; i < count; i++) {
        double width = form_width(&forms[i]), height = form_height(&forms[i]);
        ink_box box = box_around(set->at, width, height);
        if (form_is_empty(&forms[i]) || width > wide || height > high || !find_free(l, &box, high))
            continue;
        form_put(l->run, &l->labels, &forms[i], box, true);
        SB_PUSH(l->run->pool, l->taken, box);
        set->by_mark = by_mark[i];
        return true;
    }
    return false;
}

/* Marks below are numbers to cut at: nothing else may stand among them. */
static bool below_is_free(const lay *l) {
    for (size_t i = 0; i < l->drawing->labels.count; i++)
        if (l->drawing->labels.items[i].place == SB_LABEL_BELOW && *l->drawing->labels.items[i].number)
            return false;
    return true;
}

/* What has no room where it belongs goes above; or below where that is nearer. */
static void put_outside(lay *l, const label_set *set) {
    l->homeless++;
    if (set->label->again)
        return;
    if (below_is_free(l) && set->at.y > x_of(l, l->drawing->height) / 2)
        SB_PUSH(l->run->pool, l->below, *set);
    else
        SB_PUSH(l->run->pool, l->above, *set);
}

static void put_all_inside(lay *l) {
    for (size_t i = 0; i < l->inside.count; i++)
        if (!put_inside(l, &l->inside.items[i]))
            put_outside(l, &l->inside.items[i]);
}

/* ---- rings along lines ---------------------------------------------------------------------------------- */

static double ring_radius(const label_set *set) {
    double width = type_width(set->number), height = type_height(set->number);
    return (width > height ? width : height) / 2 + 1;
}

/* The first free place from there on. */
static bool put_ring_from(lay *l, label_set *set, double start) {
    double radius = ring_radius(set), wide = x_of(l, set->label->wide), high = x_of(l, set->label->high);
    double length = wide > high ? wide : high;
    for (double along = start > radius + 2 ? start : radius + 2; along <= length - radius; along += 4) {
        ink_point middle = wide > high ? (ink_point){set->at.x - wide / 2 + along, set->at.y}
                                       : (ink_point){set->at.x, set->at.y + high / 2 - along};
        ink_box box = box_around(middle, 2 * radius, 2 * radius);
        if (!is_free(l, box_around(middle, 2 * radius + 3, 2 * radius + 3)))
            continue;
        ink_ring(l->run, &l->labels, middle, radius, 0.7);
        label_form form = {NULL, set->number, true, false};
        form_put(l->run, &l->labels, &form, box, false);
        SB_PUSH(l->run->pool, l->taken, box);
        return true;
    }
    return false;
}

/* Near the beginning of the line, but off the corner. */
static bool put_ring(lay *l, label_set *set) {
    double wide = x_of(l, set->label->wide), high = x_of(l, set->label->high);
    return put_ring_from(l, set, (wide > high ? wide : high) / 8) || put_ring_from(l, set, 0);
}

/* A line too short for its ring has it outside. */
static void put_rings(lay *l) {
    for (size_t i = 0; i < l->on.count; i++)
        if (!put_ring(l, &l->on.items[i]))
            put_outside(l, &l->on.items[i]);
}

/* ---- frames in corners ---------------------------------------------------------------------------------- */

static bool put_frame_at(lay *l, const label_set *set, ink_box box) {
    ink_box around = {box.left - 1.5, box.top - 1.5, box.width + 3, box.height + 3};
    if (!is_free(l, around))
        return false;
    ink_frame(l->run, &l->labels, box, SB_FILL_PAPER, 0.7);
    label_form form = {NULL, set->number, true, false};
    form_put(l->run, &l->labels, &form, box, false);
    SB_PUSH(l->run->pool, l->taken, box);
    return true;
}

/* Along the near edge from the left, then along the left edge upwards. */
static bool put_frame(lay *l, const label_set *set) {
    const double off = 9, low = 3, step = 4; /* beside what marks the corner */
    double width = type_width(set->number) + 4, height = type_height(set->number) + 1;
    double wide = x_of(l, set->label->wide), high = x_of(l, set->label->high);
    double left = set->at.x - wide / 2 + off, top = set->at.y + high / 2 - low - height;
    if (height + 4 > high || width + 4 > wide)
        return false;
    if (top < set->at.y - high / 2 + 2)
        top = set->at.y - height / 2;
    for (double x = left; x + width + 2 < set->at.x + wide / 2; x += step)
        if (put_frame_at(l, set, (ink_box){x, top, width, height}))
            return true;
    for (double y = top; y > set->at.y - high / 2 + 2; y -= step)
        if (put_frame_at(l, set, (ink_box){left, y, width, height}))
            return true;
    return false;
}

static void put_frames(lay *l) {
    for (size_t i = 0; i < l->corner.count; i++)
        if (!put_frame(l, &l->corner.items[i]))
            put_outside(l, &l->corner.items[i]);
}

/* ---- what marks stand for ------------------------------------------------------------------------------- */

static const char *add_key(const lay *l, const char *key, const label_sets *labels) {
    for (size_t i = 0; i < labels->count; i++) {
        const sb_label *label = labels->items[i].label;
        if (!labels->items[i].by_mark)
            continue;
        const char *entry = sb_pool_print(l->run->pool, "%s\xC2\xA0=\xC2\xA0%s%s%s", label->mark, label->text,
                                          *label->number ? ", " : "", label->number);
        if (strstr(key, entry))
            continue;
        key = *key ? sb_pool_print(l->run->pool, "%s;  %s", key, entry) : entry;
    }
    return key;
}

static const char *key_of(const lay *l) {
    const char *key = add_key(l, "", &l->inside);
    key = add_key(l, key, &l->above);
    return add_key(l, key, &l->below);
}

static double put_text(lay *l, ink *to, const char *text, int size, bool strong, double y) {
    if (!*text)
        return 0;
    PangoLayout *layout = type_set(l->run, l->type, text, size, strong, l->width);
    return ink_lines(l->run, to, layout, 0, pango_layout_get_line_count(layout), (ink_box){0, y, l->width, 0},
                     0, false);
}

/* ---- all of it ------------------------------------------------------------------------------------------ */

/* Texts before rings, which find room beside them along their lines, or the other way round. */
static lay labels_put(const lay *empty, bool rings_first) {
    lay l = *empty;
    for (size_t i = 0; i < l.drawing->labels.count; i++)
        sort_label(&l, &l.drawing->labels.items[i]);
    l.marks_alone = below_is_free(&l);
    put_frames(&l);
    if (rings_first)
        put_rings(&l);
    put_all_inside(&l);
    if (!rings_first)
        put_rings(&l);
    return l;
}

static ink lay_at(lay *l) {
    double high = x_of(l, l->drawing->height);
    lay empty = *l, other;
    *l = labels_put(&empty, false);
    if (l->homeless > 0 && l->on.count > 0 && (other = labels_put(&empty, true)).homeless < l->homeless)
        *l = other;
    for (size_t i = 0; i < l->drawing->shapes.count; i++)
        put_shape(l, &l->drawing->shapes.items[i]);
    ink rows = {0}, all = {.width = l->width};
    double above = label_row(l->run, &rows, &l->above, l->width, 0, true);
    double below = label_row(l->run, &rows, &l->below, l->width, high, false);
    double y = put_text(l, &all, l->drawing->title, TYPE_TITLE, true, 0);
    y += (y > 0 ? 4 : 0) + above;
    ink_place(l->run, &all, &l->shapes, 0, y);
    ink_place(l->run, &all, &rows, 0, y);
    ink_place(l->run, &all, &l->labels, 0, y);
    y += high + below + 3;
    y += put_text(l, &all, key_of(l), TYPE_TEXT, false, y);
    all.height = y;
    return all;
}

static double largest_scale(const sb_drawing *drawing, double width) {
    double fill = width / (double)drawing->width.nm;
    double most = drawing->scale_most ? POINTS_PER_MM / SB_NM_PER_MM / (double)drawing->scale_most : fill;
    return fill < most ? fill : most;
}

ink drawing_ink(sb_run *run, const type_case *type, const sb_drawing *drawing, double width, double height) {
    ink laid = {0};
    double scale = largest_scale(drawing, width);
    for (int tries = 0; tries < 12; tries++, scale *= 0.9) {
        lay l = {.run = run, .type = type, .drawing = drawing, .scale = scale, .width = width};
        laid = lay_at(&l);
        if (laid.height <= height)
            break;
    }
    return laid;
}
