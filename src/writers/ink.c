/* Lists of what stands on a page. */
#include "writers/ink.h"

static void add_shape(sb_run *run, ink *to, const ink_point *points, size_t count, bool closed, sb_fill fill,
                      double pen) {
    ink_shape shape = {.count = count, .closed = closed, .fill = fill, .pen = pen};
    shape.points = SB_NEW_ARRAY(run->pool, ink_point, count);
    for (size_t i = 0; i < count; i++)
        shape.points[i] = points[i];
    SB_PUSH(run->pool, to->items, ((ink_item){.shape = shape}));
}

void ink_rule(sb_run *run, ink *to, ink_point from, ink_point end, double pen) {
    ink_point points[] = {from, end};
    add_shape(run, to, points, 2, false, SB_FILL_NONE, pen);
}

void ink_frame(sb_run *run, ink *to, ink_box box, sb_fill fill, double pen) {
    double right = box.left + box.width, bottom = box.top + box.height;
    ink_point points[] = {{box.left, box.top}, {right, box.top}, {right, bottom}, {box.left, bottom}};
    add_shape(run, to, points, 4, true, fill, pen);
}

/* A circle of 24 sides is round enough in this size. */
void ink_ring(sb_run *run, ink *to, ink_point middle, double radius, double pen) {
    enum {
        SIDES = 24
    };
    /* Cosine of 0, 15, 30, 45, 60, 75 and 90 degrees; no library rounds these in its own way. */
    static const double cosine[] = {1, 0.9659258, 0.8660254, 0.7071068, 0.5, 0.2588190, 0};
    ink_point points[SIDES];
    for (int i = 0; i < SIDES; i++) {
        int quarter = i / 6, step = i % 6;
        double along = cosine[step], beside = cosine[6 - step];
        double x[] = {along, -beside, -along, beside}, y[] = {beside, along, -beside, -along};
        points[i] = (ink_point){middle.x + radius * x[quarter], middle.y + radius * y[quarter]};
    }
    add_shape(run, to, points, SIDES, true, SB_FILL_PAPER, pen);
}

/* ---- texts -------------------------------------------------------------------------------------------- */

static double points_of(int units) {
    return (double)units / PANGO_SCALE;
}

static PangoRectangle line_box(PangoLayout *layout, int line) {
    PangoRectangle box;
    pango_layout_line_get_extents(pango_layout_get_line_readonly(layout, line), NULL, &box);
    return box;
}

static int type_size(PangoLayout *layout) {
    return pango_font_description_get_size(pango_layout_get_font_description(layout)) / PANGO_SCALE;
}

double ink_lines_height(PangoLayout *layout, int from, int end) {
    double height = 0;
    for (int i = from; i < end; i++)
        height += points_of(line_box(layout, i).height);
    return height;
}

double ink_lines(sb_run *run, ink *to, PangoLayout *layout, int from, int end, ink_box box, double to_right,
                 bool backed) {
    double top = box.top;
    for (int i = from; i < end; i++) {
        PangoRectangle line = line_box(layout, i);
        double width = points_of(line.width), height = points_of(line.height);
        double left = box.left + (box.width - width) * to_right;
        ink_text text = {.line = pango_layout_get_line_readonly(layout, i),
                         .start = {left, top - points_of(line.y)},
                         .box = {left, top, width, height},
                         .backed = backed,
                         .size = type_size(layout)};
        SB_PUSH(run->pool, to->items, ((ink_item){.is_text = true, .text = text}));
        top += height;
    }
    return top - box.top;
}

void ink_turned(sb_run *run, ink *to, PangoLayout *layout, ink_box box, bool backed) {
    PangoRectangle line = line_box(layout, 0);
    double width = points_of(line.height), height = points_of(line.width);
    double left = box.left + (box.width - width) / 2, bottom = box.top + (box.height + height) / 2;
    ink_text text = {.line = pango_layout_get_line_readonly(layout, 0),
                     .start = {left - points_of(line.y), bottom},
                     .box = {left, bottom - height, width, height},
                     .turned = true,
                     .backed = backed,
                     .size = type_size(layout)};
    SB_PUSH(run->pool, to->items, ((ink_item){.is_text = true, .text = text}));
}

void ink_place(sb_run *run, ink *to, const ink *from, double x, double y) {
    for (size_t i = 0; i < from->items.count; i++) {
        ink_item item = from->items.items[i];
        if (item.is_text) {
            item.text.start = (ink_point){item.text.start.x + x, item.text.start.y + y};
            item.text.box.left += x;
            item.text.box.top += y;
        } else {
            const ink_point *points = item.shape.points;
            item.shape.points = SB_NEW_ARRAY(run->pool, ink_point, item.shape.count);
            for (size_t j = 0; j < item.shape.count; j++)
                item.shape.points[j] = (ink_point){points[j].x + x, points[j].y + y};
        }
        SB_PUSH(run->pool, to->items, item);
    }
}

/* ---- overlaps ------------------------------------------------------------------------------------------ */

/* Boxes that touch do not overlap; a hundredth of a point is rounding. */
bool ink_overlap(ink_box a, ink_box b) {
    const double hair = 0.01;
    return a.left + a.width > b.left + hair && b.left + b.width > a.left + hair &&
           a.top + a.height > b.top + hair && b.top + b.height > a.top + hair;
}

bool ink_find_overlap(const ink *page, const ink_text **one, const ink_text **other) {
    for (size_t i = 0; i < page->items.count; i++)
        for (size_t j = i + 1; j < page->items.count; j++) {
            *one = &page->items.items[i].text;
            *other = &page->items.items[j].text;
            if (page->items.items[i].is_text && page->items.items[j].is_text &&
                ink_overlap((*one)->box, (*other)->box))
                return true;
        }
    return false;
}
