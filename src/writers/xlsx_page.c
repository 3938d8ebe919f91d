/* The page that a sheet is printed on. */
#include "writers/xlsx.h"

#include "text/utf8.h"
#include "writers/bytes.h"

#include <string.h>

/* ---- footer: "14 planters, 2026-03-31            page 1 of 2" --------------------------------------- */

/* In a footer & begins a command. A footer has 255 characters at most, and half a page's width to show them.
 */
static void add_escaped(sb_run *run, bytes *out, const char *text) {
    enum {
        SHOWN_MOST = 80
    };
    const char *end = text + strlen(text);
    for (int count = 0; text < end && count < SHOWN_MOST; count++) {
        size_t length = utf8_next(text, (size_t)(end - text), NULL);
        bytes_add(run, out, *text == '\n' ? " " : text, length ? length : 1);
        if (*text == '&')
            bytes_add_text(run, out, "&");
        text += length ? length : 1;
    }
}

/* The blank after the font size keeps digits of the text out of it. */
static const char *footer(sb_run *run, const sb_document *document) {
    bytes out = {0};
    if (document->foot[0]) {
        bytes_add_text(run, &out, "&L&8 ");
        add_escaped(run, &out, clean_text(run, document->foot));
    }
    bytes_add_text(run, &out, "&R&8 ");
    add_escaped(run, &out, document->page_word ? document->page_word : "page");
    bytes_add_text(run, &out, " &P ");
    add_escaped(run, &out, document->of_word ? document->of_word : "of");
    bytes_add_text(run, &out, " &N");
    return bytes_end(run, &out);
}

/* ---- print set-up ------------------------------------------------------------------------------------ */

#define TOP     0.7 /* margins, inches */
#define BOTTOM  0.8
#define CAREFUL 0.98 /* so much of a page is filled: programs round the heights of rows */

/* Height of a page once the columns fit its width, points. */
static double page_height(const sb_document *document, const xlsx_sheet *laid) {
    double tall =
        laid->sheet->landscape ? (document->letter ? 8.5 : 210 / 25.4) : (document->letter ? 11 : 297 / 25.4);
    double room = xlsx_page_room(document, laid->sheet), wide = room;
    if (laid->column_count)
        wide = xlsx_span(laid, 0, laid->column_count - 1);
    return (tall - TOP - BOTTOM) * 72 * (wide > room ? wide / room : 1);
}

/* Without gaps at the end. */
static double height_of(const xlsx_sheet *laid, uint32_t from, uint32_t to) {
    double height = 0;
    while (to > from && laid->keeps[to - 1] == XLSX_GAP)
        to--;
    for (uint32_t row = from; row < to; row++)
        height += laid->heights[row];
    return height;
}

static double pages_filled(const sb_document *document, const xlsx_sheet *laid) {
    return height_of(laid, 0, laid->row_count) / (page_height(document, laid) * CAREFUL);
}

/* What is a little too long is drawn onto the page. */
bool xlsx_fits_page(const sb_document *document, const xlsx_sheet *laid) {
    return pages_filled(document, laid) <= 1.08;
}

/* A few rows alone on the last page are drawn onto the one before, where type need not shrink much for it. 0: as many
 * pages as it takes. */
static uint16_t pages_to_fill(double filled) {
    double whole = (double)(uint16_t)filled;
    bool few_over = whole >= 1 && whole < 1000 && filled > whole && filled < whole * 1.15;
    return few_over ? (uint16_t)whole : 0;
}

/* A table of several pages shows its headings on each, where it is the only one with headings. */
static const xlsx_block *headed_alone(const xlsx_sheet *laid) {
    const xlsx_block *headed = NULL;
    for (size_t i = 0; i < laid->block_count; i++) {
        const xlsx_block *place = &laid->blocks[i];
        if (place->block->kind != SB_BLOCK_TABLE || place->block->table->no_heading)
            continue;
        if (headed)
            return NULL;
        headed = place;
    }
    return headed;
}

/* ---- rows that belong together --------------------------------------------------------------------- */

typedef struct paging {
    const xlsx_sheet *laid;
    double room, used;
    uint32_t repeated; /* the row that stands on top of each page below it; row_count: none */
    bool parts;        /* a page that is simply filled would part what belongs together */
    SB_LIST(lxw_row_t) breaks;
} paging;

static double repeated_height(const paging *p, uint32_t row) {
    return row > p->repeated ? p->laid->heights[p->repeated] : 0;
}

/* The row behind those that stand with this one. */
static uint32_t together_to(const xlsx_sheet *laid, uint32_t row, xlsx_keep least) {
    uint32_t end = row + 1;
    while (end < laid->row_count && laid->keeps[end] >= least)
        end++;
    return end;
}

/* Where empty rows hang over they go along. */
static uint32_t page_start(const paging *p, uint32_t row) {
    while (p->used > p->room && p->laid->keeps[row - 1] == XLSX_GAP)
        row--;
    return row;
}

static void place_rows(xlsx *x, paging *p, uint32_t from, uint32_t to) {
    uint32_t start = from;
    if (p->used > 0 && p->used + height_of(p->laid, from, to) > p->room * CAREFUL) {
        start = page_start(p, from);
        SB_PUSH(x->run->pool, p->breaks, start);
        p->parts = p->parts || height_of(p->laid, from, to) > p->laid->heights[from];
        p->used = repeated_height(p, from);
    }
    for (uint32_t row = start; row < to; row++)
        p->used += p->laid->heights[row];
}

/* A group that is longer than a page begins where it stands, and fills its pages. */
static void place_all(xlsx *x, paging *p) {
    for (uint32_t row = 0; row < p->laid->row_count;) {
        uint32_t end = together_to(p->laid, row, XLSX_GROUPED);
        bool whole = height_of(p->laid, row, end) + repeated_height(p, row) <= p->room * CAREFUL;
        for (uint32_t next; row < end; row = next) {
            next = whole ? end : together_to(p->laid, row, XLSX_BOUND);
            place_rows(x, p, row, next);
        }
    }
}

/* As many as the format holds at the most (ECMA-376 leaves it open, the library does not). */
static void break_pages(xlsx *x, paging *p, lxw_worksheet *worksheet) {
    if (p->breaks.count > LXW_BREAKS_MAX)
        p->breaks.count = LXW_BREAKS_MAX;
    SB_PUSH(x->run->pool, p->breaks, 0); /* the list's end */
    worksheet_set_h_pagebreaks(worksheet, p->breaks.items);
}

/* ---- all of it --------------------------------------------------------------------------------------- */

/* Pages that break by hand are as long as they are; others may be drawn together a little. */
static void part_pages(xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet) {
    double filled = pages_filled(x->document, laid);
    uint16_t pages = pages_to_fill(filled);
    const xlsx_block *headed = filled > 1 ? headed_alone(laid) : NULL;
    paging p = {.laid = laid, .room = page_height(x->document, laid), .repeated = laid->row_count};
    if (headed) {
        p.repeated = xlsx_body_row(headed) - 1;
        worksheet_repeat_rows(worksheet, p.repeated, p.repeated);
    }
    place_all(x, &p);
    if (p.parts && pages != 1) {
        pages = 0;
        break_pages(x, &p, worksheet);
    }
    worksheet_fit_to_pages(worksheet, 1, pages);
}

void xlsx_set_page(xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet) {
    enum {
        PAPER_LETTER = 1,
        PAPER_A4 = 9
    };
    worksheet_set_paper(worksheet, x->document->letter ? PAPER_LETTER : PAPER_A4);
    if (laid->sheet->landscape)
        worksheet_set_landscape(worksheet);
    worksheet_set_margins(worksheet, XLSX_MARGIN, XLSX_MARGIN, TOP, BOTTOM);
    lxw_header_footer_options options = {.margin = 0.4};
    worksheet_set_footer_opt(worksheet, footer(x->run, x->document), &options);
    worksheet_gridlines(worksheet, LXW_HIDE_ALL_GRIDLINES);
    part_pages(x, laid, worksheet);
}
