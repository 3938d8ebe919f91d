/* One drawing alone: SVG for screens and other programs, PNG for whatever shows pictures. */
#include "writers/picture.h"

#include "sawbill/writers.h"
#include "writers/drawing.h"
#include "writers/paper_file.h"

#include <cairo-svg.h>
#include <stdlib.h>
#include <string.h>

enum {
    WIDTH = 510, /* points: the page of a document between its margins */
    TALLEST = 750,
    AROUND = 8,
    DOTS_PER_INCH = 144
};

static void draw(sb_run *run, cairo_surface_t *surface, const ink *drawn) {
    cairo_t *cairo = cairo_create(surface);
    ink page = {0};
    cairo_set_source_rgb(cairo, 1, 1, 1);
    cairo_paint(cairo);
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

/* ---- PNG ------------------------------------------------------------------------------------------------ */

/* Memory of the C library: nothing may leap out of cairo while it writes. */
typedef struct heap {
    unsigned char *bytes;
    size_t size, capacity;
} heap;

static void release(void *thing) {
    heap *h = thing;
    free(h->bytes);
    h->bytes = NULL;
}

static cairo_status_t take(void *thing, const unsigned char *bytes, unsigned int size) {
    heap *h = thing;
    if (h->size + size > h->capacity) {
        size_t capacity = 2 * (h->size + size);
        unsigned char *grown = realloc(h->bytes, capacity);
        if (!grown)
            return CAIRO_STATUS_NO_MEMORY;
        h->bytes = grown;
        h->capacity = capacity;
    }
    memcpy(h->bytes + h->size, bytes, size);
    h->size += size;
    return CAIRO_STATUS_SUCCESS;
}

bool picture_png(sb_run *run, const type_case *type, const sb_drawing *drawing, double width, picture *out) {
    const double dots = DOTS_PER_INCH / 72.0;
    ink drawn = drawing_ink(run, type, drawing, width - 2 * AROUND, TALLEST);
    heap *h = SB_NEW(run->pool, heap);
    sb_pool_defer(run->pool, release, h);
    *out = (picture){.width = drawn.width + 2 * AROUND, .height = drawn.height + 2 * AROUND};
    cairo_surface_t *surface = cairo_image_surface_create(CAIRO_FORMAT_RGB24, (int)(out->width * dots + 0.5),
                                                          (int)(out->height * dots + 0.5));
    cairo_surface_set_device_scale(surface, dots, dots);
    draw(run, surface, &drawn);
    cairo_status_t status = cairo_surface_write_to_png_stream(surface, take, h);
    cairo_surface_destroy(surface);
    if (status != CAIRO_STATUS_SUCCESS)
        sb_fail(run, (sb_place){0}, "a picture cannot be drawn: %s", cairo_status_to_string(status));
    out->bytes = h->bytes;
    out->size = h->size;
    out->scale = 96.0 / DOTS_PER_INCH;
    return status == CAIRO_STATUS_SUCCESS;
}

bool sb_write_png(sb_run *run, const sb_drawing *drawing, const char *path) {
    const type_case *type = type_open(run);
    picture png;
    if (!type || !picture_png(run, type, drawing, WIDTH + 2 * AROUND, &png))
        return false;
    paper_file *file = paper_file_open(run, path);
    if (!file)
        return false;
    paper_file_take(file, png.bytes, (unsigned int)png.size);
    return paper_file_close(run, file, NULL);
}
