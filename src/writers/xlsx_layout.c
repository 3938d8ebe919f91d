/* Where everything stands on a sheet: widths from what the columns hold, rows one block below the other. */
#include "writers/xlsx.h"

#include "writers/shown.h"

/* [digits]. A column of w digits is 7 w + 5 pixels wide at 96 pixels an inch (ECMA-376 18.3.1.13, for the
 * standard font). */
enum {
    PIXELS_PER_DIGIT = 7,
    PIXELS_BESIDE = 5,
    TEXT_MOST = 80,
    WORD_MOST = 16,
    HEADING_MOST = 12
};
static const double pad = 1.6, bold = 1.08;

/* ---- the page
 * ---------------------------------------------------------------------------------------------- */

double xlsx_page_room(const sb_document *document, const sb_sheet *sheet) {
    double a4 = sheet->landscape ? 297 / 25.4 : 210 / 25.4;
    double letter = sheet->landscape ? 11 : 8.5;
    return ((document->letter ? letter : a4) - 2 * XLSX_MARGIN) * 96 / PIXELS_PER_DIGIT;
}

double xlsx_span(const xlsx_sheet *sheet, size_t from, size_t to) {
    double room = -(double)PIXELS_BESIDE / PIXELS_PER_DIGIT;
    for (size_t i = from; i <= to; i++)
        room += sheet->widths[i] + (double)PIXELS_BESIDE / PIXELS_PER_DIGIT;
    return room;
}

double xlsx_line_height(int size) {
    return size == 0 ? 15 : size * 1.35;
}

/* ---- widths
 * ------------------------------------------------------------------------------------------------ */

typedef struct width {
    double least, wish; /* what must fit on one line; what would like to */
} width;

static void widen(width *w, double least, double wish) {
    w->least = least > w->least ? least : w->least;
    w->wish = wish > w->wish ? wish : w->wish;
}

static double at_most(double value, double most) {
    return value < most ? value : most;
}

static void measure_cell(sb_run *run, const sb_document *document, const sb_cell *cell, width *w) {
    const char *shown = cell_shown(run, document, cell);
    double room = line_room(shown, glyph_print) * (cell->strong ? bold : 1) + pad;
    if (cell->kind == SB_CELL_TEXT)
        widen(w, at_most(word_room(shown, glyph_print) + pad, WORD_MOST), at_most(room, TEXT_MOST));
    else if (cell->kind != SB_CELL_EMPTY && cell->kind != SB_CELL_TICK)
        widen(w, room, room);
}

static void measure_heading(sb_run *run, const sb_heading *heading, width *w) {
    const char *text = clean_text(run, heading->text);
    double word = word_room(text, glyph_print) * bold + pad, line = line_room(text, glyph_print) * bold + pad;
    widen(w, at_most(word, WORD_MOST), line < HEADING_MOST ? line : at_most(word, WORD_MOST));
}

static bool runs_on(const xlsx_sheet *sheet, const sb_table *table, size_t column, const sb_cell *cell) {
    return column + 1 == table->column_count && table->column_count < sheet->table_columns &&
           !table->headings[column].right && cell->kind == SB_CELL_TEXT;
}

size_t xlsx_last_column(const xlsx_sheet *sheet, const sb_table *table, size_t column, const sb_cell *cell) {
    return runs_on(sheet, table, column, cell) ? sheet->column_count - 1 : column;
}

static void measure_table(sb_run *run, const sb_document *document, const xlsx_sheet *sheet,
                          const sb_table *table, width *widths) {
    for (size_t column = 0; column < table->column_count; column++) {
        if (!table->no_heading)
            measure_heading(run, &table->headings[column], &widths[column]);
        for (size_t row = 0; row < table->rows.count; row++) {
            const sb_cell *cell = &table->rows.items[row][column];
            if (!runs_on(sheet, table, column, cell))
                measure_cell(run, document, cell, &widths[column]);
        }
    }
}

/* The widest column that can give does so, until the page is wide enough or nobody can. */
static void shrink(xlsx_sheet *sheet, const width *widths, double page) {
    while (xlsx_span(sheet, 0, sheet->column_count - 1) > page) {
        size_t give = SIZE_MAX;
        for (size_t i = 0; i < sheet->column_count; i++)
            if (sheet->widths[i] > widths[i].least + 0.5 &&
                (give == SIZE_MAX || sheet->widths[i] > sheet->widths[give]))
                give = i;
        if (give == SIZE_MAX)
            return;
        sheet->widths[give] -= 0.5;
    }
}

/* What the columns leave of the page's width is a column of its own, for paragraphs to run over. */
static void fill_page(xlsx_sheet *sheet, size_t used, double page) {
    double left = page - (used ? xlsx_span(sheet, 0, used - 1) : 0) - 1;
    sheet->column_count = left >= 3 ? used + 1 : used;
    sheet->widths[used] = left;
}

static size_t most_columns(const sb_sheet *sheet) {
    size_t most = 0;
    for (size_t i = 0; i < sheet->blocks.count; i++) {
        const sb_block *block = &sheet->blocks.items[i];
        if (block->kind == SB_BLOCK_TABLE && block->table->column_count > most)
            most = block->table->column_count;
    }
    return most;
}

static void find_widths(sb_run *run, const sb_document *document, xlsx_sheet *laid) {
    size_t used = laid->table_columns = most_columns(laid->sheet);
    double page = xlsx_page_room(document, laid->sheet);
    width *widths = SB_NEW_ARRAY(run->pool, width, used + 1);
    laid->widths = SB_NEW_ARRAY(run->pool, double, used + 1);
    laid->column_count = used;
    for (size_t i = 0; i < laid->sheet->blocks.count; i++)
        if (laid->sheet->blocks.items[i].kind == SB_BLOCK_TABLE)
            measure_table(run, document, laid, laid->sheet->blocks.items[i].table, widths);
    for (size_t i = 0; i < used; i++)
        laid->widths[i] = widths[i].wish > widths[i].least ? widths[i].wish : widths[i].least;
    if (used)
        shrink(laid, widths, page);
    fill_page(laid, used, page);
}

/* ---- rows
 * -------------------------------------------------------------------------------------------------- */

uint32_t xlsx_body_row(const xlsx_block *block) {
    const sb_table *table = block->block->table;
    return block->row + (table->title[0] != '\0') + !table->no_heading;
}

static int size_of(const sb_block *block) {
    return block->kind == SB_BLOCK_HEADING ? 14 : block->small ? 9 : 0;
}

/* A text of many lines takes several rows, merged, since a row has a greatest height (409 points). */
static void lay_text(sb_run *run, const xlsx_sheet *sheet, xlsx_block *place) {
    enum {
        LINES_A_ROW = 20
    };
    int size = size_of(place->block);
    double room = xlsx_span(sheet, 0, sheet->column_count - 1) * 11 / (size ? size : 11);
    if (place->block->kind == SB_BLOCK_HEADING)
        room /= bold;
    size_t lines = wrap_text(run, clean_text(run, place->block->text), room - 1, glyph_print).count;
    place->rows = (uint32_t)((lines + LINES_A_ROW - 1) / LINES_A_ROW);
    place->height = (double)lines * xlsx_line_height(size) / place->rows + 1.5;
    place->gap = place->block->kind == SB_BLOCK_HEADING ? 4 : place->block->small ? 5 : 8;
}

static void lay_table(xlsx_block *place) {
    place->rows = xlsx_body_row(place) - place->row + (uint32_t)place->block->table->rows.count;
    place->gap = 14;
}

enum {
    ROWS_MOST = 1048576
};

static bool too_long(const sb_sheet *sheet) {
    size_t rows = 0;
    for (size_t i = 0; i < sheet->blocks.count; i++)
        rows += 24 + (sheet->blocks.items[i].kind == SB_BLOCK_TABLE ? sheet->blocks.items[i].table->rows.count
                                                                    : 0);
    return rows > ROWS_MOST;
}

xlsx_sheet xlsx_lay_out(sb_run *run, const sb_document *document, const sb_sheet *sheet) {
    xlsx_sheet laid = {.sheet = sheet};
    if (too_long(sheet)) {
        sb_error(run, (sb_place){0}, "\"%s\" has more rows than a spreadsheet holds (%d)", sheet->title,
                 ROWS_MOST);
        return laid;
    }
    find_widths(run, document, &laid);
    uint32_t row = 0;
    for (size_t i = 0; i < sheet->blocks.count; i++) {
        xlsx_block place = {.block = &sheet->blocks.items[i], .row = row};
        if (place.block->kind == SB_BLOCK_TABLE)
            lay_table(&place);
        else if (place.block->kind != SB_BLOCK_PAGE_BREAK)
            lay_text(run, &laid, &place);
        laid.has_breaks |= place.block->kind == SB_BLOCK_PAGE_BREAK;
        row += place.rows + (place.gap > 0);
        SB_PUSH(run->pool, laid.blocks, place);
    }
    return laid;
}
