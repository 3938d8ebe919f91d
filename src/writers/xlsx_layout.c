/* Where everything stands on a sheet: widths from what the columns hold, rows one block below the other. */
#include "writers/xlsx.h"

#include "writers/shown.h"

#include <string.h>

/* [digits]. A column of w digits is 7 w + 5 pixels wide at 96 pixels an inch (ECMA-376 18.3.1.13, for the
 * standard font). */
enum {
    PIXELS_PER_DIGIT = 7,
    PIXELS_BESIDE = 5
};
enum {
    TEXT_MOST = 80,
    WORD_MOST = 18,
    HEADING_MOST = 14
};
enum {
    ROWS_MOST = 1048576
};
static const double pad = 1.6;
static const double DENSE = 1.5;

/* ---- the page --------------------------------------------------------------------------------------- */

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

int xlsx_type_size(const sb_block *block) {
    return block->kind == SB_BLOCK_HEADING ? XLSX_HEADING : block->small ? XLSX_SMALL : XLSX_TEXT;
}

static bool is_tick_column(const sb_table *table, size_t column) {
    return column < table->column_count && table->rows.count &&
           table->rows.items[0][column].kind == SB_CELL_TICK;
}

/* Text keeps a little away from the column before it, and numbers from boxes to tick. */
double xlsx_indent(const sb_table *table, size_t column) {
    bool right = table->headings[column].right;
    bool text = column > 0 && !right && !is_tick_column(table, column);
    return text || (right && is_tick_column(table, column + 1)) ? 1.3 : 0;
}

/* ---- widths ----------------------------------------------------------------------------------------- */

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
    double room = line_room(shown, glyph_print) * (cell->strong ? XLSX_BOLD : 1) + pad;
    if (cell->kind == SB_CELL_TEXT)
        widen(w, at_most(word_room(shown, glyph_print) + pad, WORD_MOST), at_most(room, TEXT_MOST));
    else if (cell->kind != SB_CELL_EMPTY && cell->kind != SB_CELL_TICK)
        widen(w, room, room);
}

/* A heading would like to take two lines at the most. */
static double two_lines_room(sb_run *run, const char *text) {
    double room = word_room(text, glyph_print), line = line_room(text, glyph_print);
    while (room < line && wrap_text(run, text, room, glyph_print).count > 2)
        room += 0.5;
    return room;
}

static void measure_heading(sb_run *run, const sb_heading *heading, width *w) {
    const char *text = clean_text(run, heading->text);
    double word = word_room(text, glyph_print) * XLSX_BOLD + pad,
           line = line_room(text, glyph_print) * XLSX_BOLD + pad,
           two = two_lines_room(run, text) * XLSX_BOLD + pad + 1;
    widen(w, at_most(word, WORD_MOST), line < HEADING_MOST ? line : at_most(two, WORD_MOST));
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
        width before = widths[column], *w = &widths[column];
        *w = (width){0, 0};
        if (!table->no_heading)
            measure_heading(run, &table->headings[column], w);
        for (size_t row = 0; row < table->rows.count; row++) {
            const sb_cell *cell = &table->rows.items[row][column];
            if (!runs_on(sheet, table, column, cell))
                measure_cell(run, document, cell, w);
        }
        double indent = xlsx_indent(table, column);
        widen(w, before.least - indent, before.wish - indent);
        w->least += indent;
        w->wish += indent;
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

static size_t most_columns(const xlsx_sheet *sheet) {
    size_t most = 0;
    for (size_t i = 0; i < sheet->block_count; i++) {
        const sb_block *block = &sheet->first[i];
        if (block->kind == SB_BLOCK_TABLE && block->table->column_count > most)
            most = block->table->column_count;
    }
    return most;
}

static void find_widths(sb_run *run, const sb_document *document, xlsx_sheet *laid) {
    size_t used = most_columns(laid);
    double page = xlsx_page_room(document, laid->sheet) * (laid->sheet->dense ? DENSE : 1);
    width *widths = SB_NEW_ARRAY(run->pool, width, used + 1);
    laid->widths = SB_NEW_ARRAY(run->pool, double, used + 1);
    laid->table_columns = laid->column_count = used;
    for (size_t i = 0; i < laid->block_count; i++)
        if (laid->first[i].kind == SB_BLOCK_TABLE)
            measure_table(run, document, laid, laid->first[i].table, widths);
    for (size_t i = 0; i < used; i++)
        laid->widths[i] = widths[i].wish > widths[i].least ? widths[i].wish : widths[i].least;
    if (used)
        shrink(laid, widths, page);
    fill_page(laid, used, page);
}

/* ---- rows --------------------------------------------------------------------------------------------- */

double xlsx_row_height(size_t lines, int size) {
    return (double)lines * size * 1.25 + 4;
}

uint32_t xlsx_body_row(const xlsx_block *block) {
    const sb_table *table = block->block->table;
    return block->row + (table->title[0] != '\0') + !table->no_heading;
}

/* A text of many lines takes several rows, merged, since a row has a greatest height (409 points). */
static void lay_text(sb_run *run, const xlsx_sheet *sheet, xlsx_block *place) {
    enum {
        LINES_A_ROW = 20
    };
    bool heading = place->block->kind == SB_BLOCK_HEADING;
    int size = xlsx_type_size(place->block);
    double room = xlsx_span(sheet, 0, sheet->column_count - 1) * XLSX_TEXT / size / (heading ? XLSX_BOLD : 1);
    size_t lines = wrap_text(run, clean_text(run, place->block->text), room - 1, glyph_print).count;
    place->lines = lines;
    place->rows = (uint32_t)((lines + LINES_A_ROW - 1) / LINES_A_ROW);
    place->height = xlsx_row_height(lines, size) / place->rows;
    place->gap = heading ? 5 : size == XLSX_SMALL ? 4 : 7;
}

static bool is_break(const sb_block *block) {
    return block->kind == SB_BLOCK_PAGE_BREAK || block->kind == SB_BLOCK_ROOM_BREAK;
}

static void lay_table(const xlsx_sheet *sheet, xlsx_block *place) {
    bool first = place->block == sheet->first, last = place->block + 1 == sheet->first + sheet->block_count;
    place->from = first ? sheet->rows_from : 0;
    place->to = last && sheet->rows_to ? sheet->rows_to : place->block->table->rows.count;
    place->rows = xlsx_body_row(place) - place->row + (uint32_t)(place->to - place->from);
    place->gap = 15;
}

/* Rows a block may take at the most: a table's own, a text's at a few letters a row. */
static size_t rows_at_most(const sb_block *block) {
    size_t around = block->kind == SB_BLOCK_DRAWING ? 64 : 8;
    if (block->kind == SB_BLOCK_TABLE)
        return around + block->table->rows.count;
    return around + (block->text ? strlen(block->text) / 4 : 0);
}

static bool too_long(const xlsx_sheet *sheet) {
    size_t rows = 0;
    for (size_t i = 0; i < sheet->block_count; i++)
        rows += rows_at_most(&sheet->first[i]);
    return rows > ROWS_MOST;
}

bool xlsx_lay_out(sb_run *run, const sb_document *document, xlsx_sheet *sheet) {
    if (too_long(sheet)) {
        sb_error(run, (sb_place){0}, "\"%s\" has more rows than a worksheet holds, %d", sheet->sheet->title,
                 ROWS_MOST);
        return false;
    }
    if (!sheet->widths)
        find_widths(run, document, sheet);
    sheet->blocks = SB_NEW_ARRAY(run->pool, xlsx_block, sheet->block_count);
    sheet->row_count = 0;
    for (size_t i = 0; i < sheet->block_count; i++) {
        xlsx_block *place = &sheet->blocks[i];
        *place = (xlsx_block){.block = &sheet->first[i], .row = sheet->row_count};
        if (is_break(place->block))
            continue;
        if (place->block->kind == SB_BLOCK_TABLE)
            lay_table(sheet, place);
        else if (place->block->kind == SB_BLOCK_CHART)
            xlsx_lay_chart(place);
        else if (place->block->kind != SB_BLOCK_DRAWING)
            lay_text(run, sheet, place);
        else if (!xlsx_lay_picture(sheet, place) && *place->block->drawing->title) {
            xlsx_name_picture(run, place);
            lay_text(run, sheet, place);
        }
        if (place->gap <= 0)
            continue;
        sheet->row_count += place->rows + 1;
    }
    xlsx_measure_rows(run, sheet);
    return true;
}
