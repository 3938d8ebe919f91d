/* Puts the blocks of one sheet on its worksheet. */
#include "writers/xlsx.h"

#include "writers/bytes.h"
#include "writers/shown.h"

typedef struct sheet_pen {
    xlsx *x;
    const xlsx_sheet *laid;
    lxw_worksheet *worksheet;
} sheet_pen;

static void keep_error(sheet_pen *pen, lxw_error error) {
    if (!pen->x->error)
        pen->x->error = error;
}

static void set_height(sheet_pen *pen, uint32_t row, double height) {
    keep_error(pen, worksheet_set_row(pen->worksheet, row, height < 409 ? height : 409, NULL));
}

/* Text stays text: no address becomes a link, no = a formula. */
static void put_text(sheet_pen *pen, uint32_t row, uint32_t row_to, size_t column, size_t column_to,
                     const char *text, xlsx_look look) {
    lxw_format *format = xlsx_format_of(pen->x, look);
    lxw_col_t from = (lxw_col_t)column, to = (lxw_col_t)column_to;
    if (row == row_to && from == to)
        keep_error(pen, worksheet_write_string(pen->worksheet, row, from, text, format));
    else
        keep_error(pen, worksheet_merge_range(pen->worksheet, row, from, row_to, to, text, format));
}

/* ---- headings and paragraphs
 * ------------------------------------------------------------------------------- */

static void put_block_text(sheet_pen *pen, const xlsx_block *place) {
    const sb_block *block = place->block;
    bool heading = block->kind == SB_BLOCK_HEADING;
    xlsx_look look = {.number = "",
                      .size = heading        ? 14
                              : block->small ? 9
                                             : 0,
                      .bold = heading,
                      .wrap = true};
    const char *text = xlsx_text(pen->x->run, block->text, (sb_place){0});
    uint32_t last = place->row + place->rows - 1;
    put_text(pen, place->row, last, 0, pen->laid->column_count - 1, text, look);
    for (uint32_t row = place->row; row <= last; row++)
        set_height(pen, row, place->height);
}

/* ---- tables
 * ------------------------------------------------------------------------------------------------ */

/* Text beside a column of numbers keeps a little away from them. */
static bool wants_indent(const sb_table *table, size_t column, bool right) {
    return column > 0 && !right && table->headings[column - 1].right;
}

static size_t lines_in(sheet_pen *pen, const char *text, size_t from, size_t to, bool bold) {
    double room = xlsx_span(pen->laid, from, to) - 1;
    return wrap_text(pen->x->run, clean_text(pen->x->run, text), bold ? room / 1.08 : room, glyph_print)
        .count;
}

static double row_height(size_t lines) {
    return (double)lines * (xlsx_line_height(0) - 0.5) + 2;
}

static const sb_cell a_text = {.kind = SB_CELL_TEXT, .text = ""};

static void put_headings(sheet_pen *pen, const sb_table *table, uint32_t row) {
    size_t most = 1;
    for (size_t i = 0; i < table->column_count; i++) {
        const sb_heading *heading = &table->headings[i];
        size_t last = xlsx_last_column(pen->laid, table, i, &a_text);
        xlsx_look look = {
            .number = "", .bold = true, .wrap = true, .right = heading->right, .rule_below = true};
        look.indent = wants_indent(table, i, heading->right);
        put_text(pen, row, row, i, last, xlsx_text(pen->x->run, heading->text, (sb_place){0}), look);
        size_t lines = lines_in(pen, heading->text, i, last, true);
        most = lines > most ? lines : most;
    }
    set_height(pen, row, row_height(most));
}

static void put_number(sheet_pen *pen, uint32_t row, size_t column, const sb_cell *cell, lxw_format *format) {
    const sb_document *document = pen->x->document;
    double number = sb_cell_number(cell, &document->style, document->currency);
    lxw_col_t col = (lxw_col_t)column;
    if (cell->relation)
        keep_error(pen, worksheet_write_formula_num(pen->worksheet, row, col,
                                                    xlsx_formula(pen->x, pen->laid, cell->relation), format,
                                                    number));
    else
        keep_error(pen, worksheet_write_number(pen->worksheet, row, col, number, format));
}

static void put_cell(sheet_pen *pen, const sb_table *table, uint32_t row, size_t column, const sb_cell *cell,
                     bool ruled) {
    xlsx_look look = {.number = xlsx_number_format(pen->x, cell), .bold = cell->strong, .rule_above = ruled};
    look.right = cell_right(table, column, cell);
    look.indent = wants_indent(table, column, look.right);
    look.wrap = cell->kind == SB_CELL_TEXT;
    look.box = cell->kind == SB_CELL_TICK;
    if (cell->kind == SB_CELL_TEXT && cell->text[0])
        put_text(pen, row, row, column, xlsx_last_column(pen->laid, table, column, cell),
                 xlsx_text(pen->x->run, cell->text, cell->place), look);
    else if (cell_is_number(cell) || cell->kind == SB_CELL_DATE)
        put_number(pen, row, column, cell, xlsx_format_of(pen->x, look));
    else if (look.box || look.rule_above)
        keep_error(
            pen, worksheet_write_blank(pen->worksheet, row, (lxw_col_t)column, xlsx_format_of(pen->x, look)));
}

static void define_name(sheet_pen *pen, const sb_cell *cell, uint32_t row, size_t column) {
    const char *address = xlsx_address(pen->x->run, pen->laid, row, column);
    keep_error(pen, workbook_define_name(pen->x->workbook, xlsx_cell_name(pen->x, cell->name),
                                         sb_pool_print(pen->x->run->pool, "=%s", address)));
}

static void put_row(sheet_pen *pen, const sb_table *table, const sb_cell *cells, uint32_t row, bool ruled) {
    size_t most = 1;
    for (size_t i = 0; i < table->column_count; i++) {
        put_cell(pen, table, row, i, &cells[i], ruled);
        if (cells[i].name)
            define_name(pen, &cells[i], row, i);
        if (cells[i].kind != SB_CELL_TEXT)
            continue;
        size_t last = xlsx_last_column(pen->laid, table, i, &cells[i]);
        size_t lines = lines_in(pen, cells[i].text, i, last, cells[i].strong);
        most = lines > most ? lines : most;
    }
    set_height(pen, row, row_height(most));
}

static void put_table(sheet_pen *pen, const xlsx_block *place) {
    const sb_table *table = place->block->table;
    uint32_t body = xlsx_body_row(place);
    if (table->title[0]) {
        xlsx_look look = {.number = "", .bold = true};
        put_text(pen, place->row, place->row, 0, 0, xlsx_text(pen->x->run, table->title, (sb_place){0}),
                 look);
        set_height(pen, place->row, row_height(1) + 2);
    }
    if (!table->no_heading)
        put_headings(pen, table, body - 1);
    for (size_t row = 0; row < table->rows.count; row++) {
        bool ruled = table->total_rows && row == table->rows.count - table->total_rows;
        put_row(pen, table, table->rows.items[row], body + (uint32_t)row, ruled);
    }
}

void xlsx_put_sheet(xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet) {
    sheet_pen pen = {.x = x, .laid = laid, .worksheet = worksheet};
    for (size_t i = 0; i < laid->column_count; i++)
        keep_error(&pen, worksheet_set_column(worksheet, (lxw_col_t)i, (lxw_col_t)i, laid->widths[i], NULL));
    for (size_t i = 0; i < laid->blocks.count; i++) {
        const xlsx_block *place = &laid->blocks.items[i];
        if (place->block->kind == SB_BLOCK_TABLE)
            put_table(&pen, place);
        else if (place->block->kind != SB_BLOCK_PAGE_BREAK)
            put_block_text(&pen, place);
        if (place->gap > 0)
            set_height(&pen, place->row + place->rows, place->gap);
    }
}
