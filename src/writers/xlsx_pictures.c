/* Drawings on worksheets: pictures over rows as high as they are together. */
#include "writers/xlsx.h"

#include "writers/picture.h"

/* More would make the file slow to open: of the others it is said where they stand. */
enum {
    PICTURES_MOST = 400
};
static const double row_most = 20; /* points */

struct xlsx_picture {
    const sb_drawing *drawing;
    picture png;
};

static bool take_sheet(xlsx *x, const type_case *type, const sb_sheet *sheet) {
    double width = xlsx_page_room(x->document, sheet) * 7 * 0.75 - 4; /* digits of 7 pixels of 3/4 points */
    for (size_t i = 0; i < sheet->blocks.count; i++) {
        xlsx_picture taken = {.drawing = sheet->blocks.items[i].drawing};
        if (!taken.drawing || x->pictures.count >= PICTURES_MOST)
            continue;
        if (!picture_png(x->run, type, taken.drawing, width, &taken.png))
            return false;
        SB_PUSH(x->run->pool, x->pictures, taken);
    }
    return true;
}

static bool any_drawing(const sb_document *document) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++)
            if (document->sheets.items[s]->blocks.items[b].kind == SB_BLOCK_DRAWING)
                return true;
    return false;
}

bool xlsx_take_pictures(xlsx *x) {
    if (!any_drawing(x->document))
        return true;
    const type_case *type = type_open(x->run);
    bool taken = type != NULL;
    for (size_t i = 0; taken && i < x->document->sheets.count; i++)
        taken = take_sheet(x, type, x->document->sheets.items[i]);
    return taken;
}

static const xlsx_picture *picture_of(const xlsx_sheet *laid, const sb_drawing *drawing) {
    for (size_t i = 0; i < laid->pictures->count; i++)
        if (laid->pictures->items[i].drawing == drawing)
            return &laid->pictures->items[i];
    return NULL;
}

bool xlsx_lay_picture(const xlsx_sheet *laid, xlsx_block *place) {
    const xlsx_picture *found = picture_of(laid, place->block->drawing);
    if (!found)
        return false;
    place->rows = (uint32_t)(found->png.height / row_most) + 1;
    place->height = found->png.height / place->rows;
    place->gap = 8;
    return true;
}

void xlsx_name_picture(sb_run *run, xlsx_block *place) {
    const char *title = place->block->drawing->title;
    sb_block *words = SB_NEW(run->pool, sb_block);
    *words = (sb_block){.kind = SB_BLOCK_PARAGRAPH, .small = true};
    words->text = sb_pool_print(run->pool, "%s: see the picture on the pages to print", title);
    place->block = words;
}

lxw_error xlsx_put_picture(const xlsx_sheet *laid, const xlsx_block *place, lxw_worksheet *worksheet) {
    const xlsx_picture *found = picture_of(laid, place->block->drawing);
    lxw_image_options options = {.x_scale = found->png.scale,
                                 .y_scale = found->png.scale,
                                 .object_position = LXW_OBJECT_MOVE_DONT_SIZE};
    return worksheet_insert_image_buffer_opt(worksheet, place->row, 0, found->png.bytes, found->png.size,
                                             &options);
}

size_t xlsx_pictures_size(const xlsx *x) {
    size_t size = 0;
    for (size_t i = 0; i < x->pictures.count; i++)
        size += x->pictures.items[i].png.size;
    return size;
}
