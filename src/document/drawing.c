/* Drawings: shapes in exact lengths, and what is to be read beside them. */
#include "sawbill/document.h"

sb_drawing *sb_drawing_add(sb_run *run, sb_sheet *sheet, const char *title, const char *name, sb_length width,
                           sb_length height) {
    sb_drawing *drawing = SB_NEW(run->pool, sb_drawing);
    drawing->title = title;
    drawing->name = name;
    drawing->width = width;
    drawing->height = height;
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_DRAWING, .text = "", .drawing = drawing}));
    return drawing;
}

sb_shape *sb_shape_add(sb_run *run, sb_drawing *drawing, sb_fill fill, sb_pen pen, bool closed) {
    SB_PUSH(run->pool, drawing->shapes, ((sb_shape){.fill = fill, .pen = pen, .closed = closed}));
    return &drawing->shapes.items[drawing->shapes.count - 1];
}

void sb_shape_point(sb_run *run, sb_shape *shape, sb_length x, sb_length y) {
    SB_PUSH(run->pool, shape->points, ((sb_point){x, y}));
}

void sb_shape_rect(sb_run *run, sb_drawing *drawing, sb_fill fill, sb_pen pen, sb_point corner,
                   sb_length width, sb_length height) {
    sb_shape *shape = sb_shape_add(run, drawing, fill, pen, true);
    sb_length right = sb_length_add(corner.x, width), bottom = sb_length_add(corner.y, height);
    sb_shape_point(run, shape, corner.x, corner.y);
    sb_shape_point(run, shape, right, corner.y);
    sb_shape_point(run, shape, right, bottom);
    sb_shape_point(run, shape, corner.x, bottom);
}

void sb_shape_line(sb_run *run, sb_drawing *drawing, sb_pen pen, sb_point from, sb_point to) {
    sb_shape *shape = sb_shape_add(run, drawing, SB_FILL_NONE, pen, false);
    sb_shape_point(run, shape, from.x, from.y);
    sb_shape_point(run, shape, to.x, to.y);
}

void sb_label_add(sb_run *run, sb_drawing *drawing, sb_label label) {
    SB_PUSH(run->pool, drawing->labels, label);
}

/* ---- cards ---- */

sb_cards *sb_cards_add(sb_run *run, sb_sheet *sheet, int64_t columns, int64_t rows) {
    sb_cards *cards = SB_NEW(run->pool, sb_cards);
    cards->columns = columns;
    cards->rows = rows;
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_CARDS, .text = "", .cards = cards}));
    return cards;
}

sb_card *sb_card_add(sb_run *run, sb_cards *cards, const char *title, const char *number) {
    SB_PUSH(run->pool, cards->items, ((sb_card){.title = title, .number = number}));
    return &cards->items.items[cards->items.count - 1];
}

void sb_card_line(sb_run *run, sb_card *card, const char *text) {
    if (*text)
        SB_PUSH(run->pool, card->lines, text);
}
