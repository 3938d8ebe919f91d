/* Puts down with cairo what stands on a page: black on white, patterns that a copier keeps. */
#include "writers/ink.h"

static const double hatch_step = 4, dot_step = 5, dot_radius = 0.45;

static void path(cairo_t *cairo, const ink_shape *shape) {
    for (size_t i = 0; i < shape->count; i++)
        (i ? cairo_line_to : cairo_move_to)(cairo, shape->points[i].x, shape->points[i].y);
    if (shape->closed)
        cairo_close_path(cairo);
}

static ink_box box_of(const ink_shape *shape) {
    double left = shape->points[0].x, right = left, top = shape->points[0].y, bottom = top;
    for (size_t i = 1; i < shape->count; i++) {
        ink_point p = shape->points[i];
        left = p.x < left ? p.x : left;
        right = p.x > right ? p.x : right;
        top = p.y < top ? p.y : top;
        bottom = p.y > bottom ? p.y : bottom;
    }
    return (ink_box){left, top, right - left, bottom - top};
}

/* Lines that lean, on a grid of the page, so that neighbouring shapes go on in one another. */
static void hatch(cairo_t *cairo, ink_box box) {
    double bottom = box.top + box.height, first = box.left + box.top, last = box.left + box.width + bottom;
    cairo_set_line_width(cairo, 0.5);
    for (double sum = (double)(long)(first / hatch_step) * hatch_step; sum <= last; sum += hatch_step) {
        cairo_move_to(cairo, sum - box.top, box.top);
        cairo_line_to(cairo, sum - bottom, bottom);
    }
    cairo_stroke(cairo);
}

static void dots(cairo_t *cairo, ink_box box) {
    double right = box.left + box.width, bottom = box.top + box.height;
    for (double y = (double)(long)(box.top / dot_step) * dot_step; y <= bottom; y += dot_step)
        for (double x = (double)(long)(box.left / dot_step) * dot_step; x <= right; x += dot_step)
            cairo_rectangle(cairo, x - dot_radius, y - dot_radius, 2 * dot_radius, 2 * dot_radius);
    cairo_fill(cairo);
}

static void fill(cairo_t *cairo, const ink_shape *shape) {
    double grey = shape->fill == SB_FILL_BLACK ? 0 : 1;
    path(cairo, shape);
    cairo_set_source_rgb(cairo, grey, grey, grey);
    cairo_fill(cairo);
    cairo_set_source_rgb(cairo, 0, 0, 0);
    if (shape->fill != SB_FILL_HATCH && shape->fill != SB_FILL_DOTS)
        return;
    cairo_save(cairo);
    path(cairo, shape);
    cairo_clip(cairo);
    (shape->fill == SB_FILL_HATCH ? hatch : dots)(cairo, box_of(shape));
    cairo_restore(cairo);
}

static void draw_shape(cairo_t *cairo, const ink_shape *shape) {
    static const double dash[] = {4, 2.5};
    if (shape->fill != SB_FILL_NONE)
        fill(cairo, shape);
    if (shape->pen <= 0)
        return;
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_set_line_width(cairo, shape->pen);
    cairo_set_line_join(cairo, CAIRO_LINE_JOIN_MITER);
    cairo_set_dash(cairo, dash, shape->dashed ? 2 : 0, 0);
    path(cairo, shape);
    cairo_stroke(cairo);
    cairo_set_dash(cairo, dash, 0, 0);
}

static void draw_text(cairo_t *cairo, const ink_text *text) {
    if (text->backed) {
        cairo_set_source_rgb(cairo, 1, 1, 1);
        cairo_rectangle(cairo, text->box.left, text->box.top, text->box.width, text->box.height);
        cairo_fill(cairo);
    }
    cairo_set_source_rgb(cairo, 0, 0, 0);
    cairo_save(cairo);
    cairo_translate(cairo, text->start.x, text->start.y);
    if (text->turned)
        cairo_rotate(cairo, -1.5707963267948966);
    cairo_move_to(cairo, 0, 0);
    pango_cairo_show_layout_line(cairo, text->line);
    cairo_restore(cairo);
}

void ink_draw(cairo_t *cairo, const ink *page) {
    for (size_t i = 0; i < page->items.count; i++)
        if (page->items.items[i].is_text)
            draw_text(cairo, &page->items.items[i].text);
        else
            draw_shape(cairo, &page->items.items[i].shape);
}
