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

double xlsx_page_height(const sb_document *document, const xlsx_sheet *laid) {
    double tall =
        laid->sheet->landscape ? (document->letter ? 8.5 : 210 / 25.4) : (document->letter ? 11 : 297 / 25.4);
    double room = xlsx_page_room(document, laid->sheet), wide = room;
    if (laid->column_count)
        wide = xlsx_span(laid, 0, laid->column_count - 1);
    return (tall - TOP - BOTTOM) * 72 * CAREFUL * (wide > room ? wide / room : 1);
}

double xlsx_height(const xlsx_sheet *laid, uint32_t from, uint32_t to) {
    double height = 0;
    while (to > from && laid->keeps[to - 1] == XLSX_GAP)
        to--;
    for (uint32_t row = from; row < to; row++)
        height += laid->heights[row];
    return height;
}

static double pages_filled(const sb_document *document, const xlsx_sheet *laid) {
    return xlsx_height(laid, 0, laid->row_count) / xlsx_page_height(document, laid);
}

/* What is a little too long is drawn onto the page. */
bool xlsx_fits_page(const sb_document *document, const xlsx_sheet *laid) {
    return pages_filled(document, laid) <= 1.08;
}

/* A few rows alone on the last page are drawn onto the one before, where type need not shrink much for it. 0: as many
 * pages as it takes. */
static uint16_t pages_to_fill(double filled) {
    double whole = (double)(uint16_t)filled;
    bool few_over = whole >= 1 && whole < 1000 && filled > whole && filled < whole * 1.25;
    return few_over ? (uint16_t)whole : 0;
}

bool xlsx_drawn_onto_page(const sb_document *document, const xlsx_sheet *laid) {
    double filled = pages_filled(document, laid);
    return filled <= 1 || pages_to_fill(filled) == 1;
}

/* A table of several pages shows its headings on each, where it is the only one with headings. */
static void repeat_headings(const xlsx_sheet *laid, lxw_worksheet *worksheet) {
    const xlsx_block *headed = NULL;
    for (size_t i = 0; i < laid->block_count; i++) {
        const xlsx_block *place = &laid->blocks[i];
        if (place->block->kind != SB_BLOCK_TABLE || place->block->table->no_heading)
            continue;
        if (headed)
            return;
        headed = place;
    }
    if (headed)
        worksheet_repeat_rows(worksheet, xlsx_body_row(headed) - 1, xlsx_body_row(headed) - 1);
}

static void print_first_page(const xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet) {
    double room = xlsx_page_height(x->document, laid);
    uint32_t rows = 1;
    while (rows < laid->row_count && xlsx_height(laid, 0, rows + 1) <= room)
        rows++;
    worksheet_print_area(worksheet, 0, 0, rows - 1, (lxw_col_t)(laid->column_count - 1));
    worksheet_fit_to_pages(worksheet, 1, 1);
}

/* A printed page of a document of several sheets says whose it is: the tab's name stands nowhere else on paper. */
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
    if (x->document->sheets.count > 1)
        worksheet_set_header_opt(worksheet, "&L&8&A", &options);
    worksheet_set_footer_opt(worksheet, footer(x->run, x->document), &options);
    worksheet_gridlines(worksheet, LXW_HIDE_ALL_GRIDLINES);
    double filled = pages_filled(x->document, laid);
    worksheet_fit_to_pages(worksheet, 1, pages_to_fill(filled));
    if (filled > 1 && laid->sheet->first_page)
        print_first_page(x, laid, worksheet);
    else if (filled > 1)
        repeat_headings(laid, worksheet);
}
