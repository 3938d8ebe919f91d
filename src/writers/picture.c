/* One drawing alone: SVG for screens and other programs, PNG for whatever shows pictures. */
#include "sawbill/writers.h"

#include "writers/drawing.h"
#include "writers/paper_file.h"

#include <cairo-svg.h>

enum {
    WIDTH = 510, /* points: the page of a document between its margins */
    TALLEST = 750,
    AROUND = 8,
    DOTS_PER_INCH = 150
};

static void draw(sb_run *run, cairo_surface_t *surface, const ink *drawn) {
    cairo_t *cairo = cairo_create(surface);
    ink page = {0};
    ink_frame(run, &page, (ink_box){0, 0, drawn->width + 2 * AROUND, drawn->height + 2 * AROUND},
              SB_FILL_PAPER, 0);
    ink_place(run, &page, drawn, AROUND, AROUND);
    ink_draw(cairo, &page);
    cairo_destroy(cairo);
}

bool sb_write_svg(sb_run *run, const sb_drawing *drawing, const char *path) {
    const type_case *type = type_open(run);
    paper_file *file = type ? paper_file_open(run, path) : NULL;
    if (!file)
        return false;
    ink drawn = drawing_ink(run, type, drawing, WIDTH, TALLEST);
    cairo_surface_t *surface = cairo_svg_surface_create_for_stream(
        paper_file_take, file, drawn.width + 2 * AROUND, drawn.height + 2 * AROUND);
    draw(run, surface, &drawn);
    return paper_file_close(run, file, surface);
}

bool sb_write_png(sb_run *run, const sb_drawing *drawing, const char *path) {
    const type_case *type = type_open(run);
    paper_file *file = type ? paper_file_open(run, path) : NULL;
    if (!file)
        return false;
    const double dots = DOTS_PER_INCH / 72.0;
    ink drawn = drawing_ink(run, type, drawing, WIDTH, TALLEST);
    cairo_surface_t *surface =
        cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)((drawn.width + 2 * AROUND) * dots + 0.5),
                                   (int)((drawn.height + 2 * AROUND) * dots + 0.5));
    cairo_surface_set_device_scale(surface, dots, dots);
    draw(run, surface, &drawn);
    cairo_surface_write_to_png_stream(surface, paper_file_take, file);
    return paper_file_close(run, file, surface);
}
