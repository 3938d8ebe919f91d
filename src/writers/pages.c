/* From blocks to pages. */
#include "writers/pages.h"

#include "writers/drawing.h"

/* ---- pages ---------------------------------------------------------------------------------------------- */

static void page_size(const flow *f, double *width, double *height) {
    bool letter = f->document->letter;
    double narrow = letter ? 612 : 595.276, tall = letter ? 792 : 841.89; /* A4: ISO 216, 210 x 297 mm */
    *width = f->landscape ? tall : narrow;
    *height = f->landscape ? narrow : tall;
}

ink *flow_page(flow *f) {
    return &f->pages.items[f->pages.count - 1];
}

void flow_turn(flow *f) {
    ink page = {0};
    page_size(f, &page.width, &page.height);
    SB_PUSH(f->run->pool, f->pages, page);
    f->width = page.width - 2 * PAGE_SIDE;
    f->y = PAGE_TOP;
    f->bottom = page.height - PAGE_FOOT;
}

bool flow_fits(const flow *f, double height) {
    return f->y + height <= f->bottom;
}

bool flow_at_top(const flow *f) {
    return f->y <= PAGE_TOP;
}

double flow_most(const flow *f) {
    return f->bottom - PAGE_TOP;
}

/* ---- blocks --------------------------------------------------------------------------------------------- */

typedef struct laid_block {
    sb_block_kind kind;
    PangoLayout *text;
    const sb_cards *cards;
    laid_table table;
    ink drawing;
    double height, gap; /* gap: below */
} laid_block;

static laid_block lay_text(flow *f, const sb_block *block) {
    bool heading = block->kind == SB_BLOCK_HEADING;
    int size = heading ? TYPE_HEADING : block->small ? TYPE_SMALL : TYPE_TEXT;
    laid_block laid = {.kind = block->kind, .gap = heading ? 7 : 8};
    laid.text = type_set(f->run, f->type, block->text, size, heading, f->width);
    laid.height = type_height(laid.text);
    return laid;
}

static laid_block lay_block(flow *f, const sb_block *block, const laid_table *above) {
    laid_block laid = {.kind = block->kind};
    switch (block->kind) {
    case SB_BLOCK_HEADING:
    case SB_BLOCK_PARAGRAPH:
        return lay_text(f, block);
    case SB_BLOCK_TABLE:
        laid.table = table_lay(f->run, f->type, f->document, block->table, f->width, above);
        laid.height = table_height(&laid.table);
        laid.gap = 14;
        break;
    case SB_BLOCK_DRAWING:
        laid.drawing = drawing_ink(f->run, f->type, block->drawing, f->width, flow_most(f));
        laid.height = laid.drawing.height;
        laid.gap = 16;
        break;
    case SB_BLOCK_CARDS:
        laid.cards = block->cards;
        break;
    case SB_BLOCK_CHART: /* shown by spreadsheets alone */
    case SB_BLOCK_PAGE_BREAK:
    case SB_BLOCK_ROOM_BREAK:
        break;
    }
    return laid;
}

/* Line by line; a few lines stay together. */
static void place_text(flow *f, const laid_block *laid) {
    int count = pango_layout_get_line_count(laid->text);
    if (!flow_fits(f, laid->height) && (laid->height < 80 || !flow_fits(f, 30)))
        flow_turn(f);
    for (int i = 0; i < count; i++) {
        double height = ink_lines_height(laid->text, i, i + 1);
        if (!flow_fits(f, height))
            flow_turn(f);
        f->y += ink_lines(f->run, flow_page(f), laid->text, i, i + 1, (ink_box){PAGE_SIDE, f->y, f->width, 0},
                          0, false);
    }
    f->y += laid->gap;
}

static void place_drawing(flow *f, const laid_block *laid) {
    if (!flow_fits(f, laid->height) && !flow_at_top(f))
        flow_turn(f);
    ink_place(f->run, flow_page(f), &laid->drawing, PAGE_SIDE, f->y);
    f->y += laid->height + laid->gap;
}

/* Much of a page left white is worse than a table that begins on it and goes on over the next; what has room on one page has it
 * to itself sooner. */
static bool turns_for(const flow *f, double height) {
    double room = f->bottom - f->y, share = height <= flow_most(f) ? 0.8 : 0.4;
    return height > room && room <= share * flow_most(f);
}

static bool is_break(const laid_block *laid) {
    return laid->kind == SB_BLOCK_PAGE_BREAK || laid->kind == SB_BLOCK_ROOM_BREAK;
}

/* What must stand on the page with a heading: the first thing below it. */
static double first_height(const laid_block *laid, size_t count) {
    double height = 0;
    for (size_t i = 0; i < count && !is_break(&laid[i]); i++) {
        const laid_block *b = &laid[i];
        if (b->kind == SB_BLOCK_TABLE)
            return height + table_first_height(&b->table);
        height += b->height + b->gap;
        if (b->kind != SB_BLOCK_HEADING)
            return height;
    }
    return height;
}

static double height_to_break(const laid_block *laid, size_t count) {
    double height = 0;
    for (size_t i = 0; i < count && !is_break(&laid[i]); i++)
        height += laid[i].height + laid[i].gap;
    return height;
}

static void place_block(flow *f, const laid_block *laid, size_t left) {
    double first = first_height(laid, left);
    switch (laid->kind) {
    case SB_BLOCK_HEADING:
        if (!flow_fits(f, first) && first <= flow_most(f) && !flow_at_top(f))
            flow_turn(f);
        place_text(f, laid);
        break;
    case SB_BLOCK_PARAGRAPH:
        place_text(f, laid);
        break;
    case SB_BLOCK_TABLE:
        table_place(f, &laid->table);
        break;
    case SB_BLOCK_DRAWING:
        place_drawing(f, laid);
        break;
    case SB_BLOCK_CARDS:
        if (!flow_at_top(f))
            flow_turn(f);
        cards_place(f, laid->cards);
        break;
    case SB_BLOCK_CHART:
        break;
    case SB_BLOCK_PAGE_BREAK:
        if (left > 1 && !flow_at_top(f))
            flow_turn(f);
        break;
    case SB_BLOCK_ROOM_BREAK:
        if (left > 1 && turns_for(f, height_to_break(laid + 1, left - 1)))
            flow_turn(f);
        break;
    }
}

static void place_sheet(flow *f, const sb_sheet *sheet) {
    f->landscape = sheet->landscape;
    flow_turn(f);
    laid_block *laid = SB_NEW_ARRAY(f->run->pool, laid_block, sheet->blocks.count + 1);
    for (size_t i = 0; i < sheet->blocks.count; i++)
        laid[i] = lay_block(f, &sheet->blocks.items[i],
                            i > 0 && laid[i - 1].table.table ? &laid[i - 1].table : NULL);
    for (size_t i = 0; i < sheet->blocks.count; i++)
        place_block(f, &laid[i], sheet->blocks.count - i);
}

/* ---- the foot ------------------------------------------------------------------------------------------- */

static void put_foot(flow *f, size_t index) {
    ink *page = &f->pages.items[index];
    const sb_document *d = f->document;
    double width = page->width - 2 * PAGE_SIDE, y = page->height - PAGE_FOOT + 10;
    const char *number = sb_pool_print(f->run->pool, "%s %zu %s %zu", d->page_word ? d->page_word : "page",
                                       index + 1, d->of_word ? d->of_word : "of", f->pages.count);
    PangoLayout *right = type_set(f->run, f->type, number, TYPE_SMALL, false, 0);
    double left_width = width - type_width(right) - 20;
    PangoLayout *left = type_set(f->run, f->type, d->foot, TYPE_SMALL, false, left_width);
    ink_rule(f->run, page, (ink_point){PAGE_SIDE, y - 4}, (ink_point){PAGE_SIDE + width, y - 4}, 0.5);
    ink_lines(f->run, page, right, 0, 1, (ink_box){PAGE_SIDE, y, width, 0}, 1, false);
    int lines = pango_layout_get_line_count(left);
    ink_lines(f->run, page, left, 0, lines < 2 ? lines : 2, (ink_box){PAGE_SIDE, y, left_width, 0}, 0, false);
}

ink_pages pages_of(sb_run *run, const type_case *type, const sb_document *document) {
    flow f = {.run = run, .type = type, .document = document};
    for (size_t i = 0; i < document->sheets.count; i++)
        place_sheet(&f, document->sheets.items[i]);
    for (size_t i = 0; i < f.pages.count; i++)
        if (!f.pages.items[i].bare)
            put_foot(&f, i);
    return f.pages;
}
