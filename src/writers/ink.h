/* What stands on a page, found before anything is drawn: lines of text with their boxes, and shapes. Points, from the page's
 * upper left corner. */
#ifndef WRITERS_INK_H
#define WRITERS_INK_H

#include "sawbill/document.h"
#include "writers/type.h"

typedef struct ink_point {
    double x, y;
} ink_point;

typedef struct ink_box {
    double left, top, width, height;
} ink_box;

typedef struct ink_shape {
    ink_point *points; /* [count] */
    size_t count;
    bool closed;
    sb_fill fill;
    double pen; /* width of the line, 0: none */
    bool dashed;
} ink_shape;

/* One line of a text. Turned ones read from below upwards. */
typedef struct ink_text {
    PangoLayoutLine *line; /* of a layout that lives as long as the run */
    ink_point start;       /* of its baseline */
    ink_box box;
    bool turned;
    bool backed; /* on white, over what is below */
    int size;    /* of its type */
} ink_text;

typedef struct ink_item {
    bool is_text;
    ink_text text;
    ink_shape shape;
} ink_item;

typedef struct ink {
    double width, height;
    bool bare;               /* a page without a foot */
    SB_LIST(ink_item) items; /* in the order of drawing */
} ink;

void ink_rule(sb_run *run, ink *to, ink_point from, ink_point end, double pen);
void ink_frame(sb_run *run, ink *to, ink_box box, sb_fill fill, double pen);
void ink_ring(sb_run *run, ink *to, ink_point middle, double radius, double pen);
/* Lines `from` to before `end` of a layout: the first stands with its top at the box's top; within its width they lie to the
 * left, the middle (0.5) or the right (1). The height they take. */
double ink_lines(sb_run *run, ink *to, PangoLayout *layout, int from, int end, ink_box box, double to_right,
                 bool backed);
/* A layout of one line, turned, within a box as high as the line is long. */
void ink_turned(sb_run *run, ink *to, PangoLayout *layout, ink_box box, bool backed);
double ink_lines_height(PangoLayout *layout, int from, int end);
/* All of `from`, moved. */
void ink_place(sb_run *run, ink *to, const ink *from, double x, double y);

bool ink_overlap(ink_box a, ink_box b);
/* Two lines of text that lie on one another; false: there are none. For tests. */
bool ink_find_overlap(const ink *page, const ink_text **one, const ink_text **other);

void ink_draw(cairo_t *cairo, const ink *page);

#endif
