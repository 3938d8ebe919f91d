/* Puts the blocks of one sheet on its worksheet. */
#include "writers/xlsx.h"

#include "writers/shown.h"

typedef struct sheet_pen {
    xlsx *x;
    xlsx_sheet *laid;
    lxw_worksheet *worksheet;
} sheet_pen;

static void keep_error(sheet_pen *pen, lxw_error error) {
    if (!pen->x->error)
        pen->x->error = error;
}

/* A stretch of cells that one text may cover. */
typedef struct stretch {
    uint32_t row, row_to;
    size_t column, column_to;
    size_t lines; /* that the text takes in it */
} stretch;

/* Text stays text: no address becomes a link, no = a formula. One line runs on over the empty cells beside
 * it; only what must wrap merges them. */
static void put_text(sheet_pen *pen, stretch at, const char *text, xlsx_look look) {
    look.wrap = at.lines > 1;
    lxw_format *format = xlsx_format_of(pen->x, look);
    lxw_col_t from = (lxw_col_t)at.column, to = (lxw_col_t)at.column_to;
    if (look.wrap && (at.row < at.row_to || from < to)) {
        keep_error(pen, worksheet_merge_range(pen->worksheet, at.row, from, at.row_to, to, text, format));
        return;
    }
    keep_error(pen, worksheet_write_string(pen->worksheet, at.row, from, text, format));
    for (lxw_col_t column = (lxw_col_t)(from + 1); column <= to; column++)
        keep_error(pen, worksheet_write_blank(pen->worksheet, at.row, column, format));
}

/* ---- headings and paragraphs -------------------------------------------------------------------------- */

static void put_block_text(sheet_pen *pen, const xlsx_block *place) {
    const sb_block *block = place->block;
    xlsx_look look = {.number = "", .size = xlsx_type_size(block), .bold = block->kind == SB_BLOCK_HEADING};
    uint32_t last = place->row + place->rows - 1;
    stretch at = {place->row, last, 0, pen->laid->column_count - 1, place->lines};
    put_text(pen, at, xlsx_text(pen->x->run, block->text, (sb_place){0}), look);
}

/* ---- tables ------------------------------------------------------------------------------------------- */

static stretch text_stretch(sheet_pen *pen, const sb_table *table, uint32_t row, size_t column,
                            const sb_cell *cell) {
    return (stretch){row, row, column, xlsx_last_column(pen->laid, table, column, cell),
                     xlsx_cell_lines(pen->x->run, pen->laid, table, column, cell)};
}

static void put_headings(sheet_pen *pen, const sb_table *table, uint32_t row) {
    for (size_t i = 0; i < table->column_count; i++) {
        const sb_heading *heading = &table->headings[i];
        xlsx_look look = {
            .number = "", .size = XLSX_TEXT, .bold = true, .right = heading->right, .rule_below = true};
        look.indent = xlsx_indent(table, i) > 0;
        sb_cell cell = xlsx_heading_cell(heading);
        stretch at = text_stretch(pen, table, row, i, &cell);
        put_text(pen, at, xlsx_text(pen->x->run, heading->text, (sb_place){0}), look);
    }
}

/* The numbers that may be chosen, offered in the cell. */
static void offer_choices(sheet_pen *pen, uint32_t row, size_t column, const sb_counts *among) {
    char **list = SB_NEW_ARRAY(pen->x->run->pool, char *, among->count + 1);
    for (size_t i = 0; i < among->count; i++)
        list[i] = sb_pool_print(pen->x->run->pool, "%lld", (long long)among->items[i]);
    lxw_data_validation validation = {.validate = LXW_VALIDATION_TYPE_LIST, .value_list = list};
    keep_error(pen, worksheet_data_validation_cell(pen->worksheet, row, (lxw_col_t)column, &validation));
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

/* What the cells of one row have in common. */
typedef struct row_place {
    uint32_t row;
    size_t lines; /* of its tallest cell */
    bool ruled;   /* the first of the totals */
    bool lined;   /* a light line below leads the eye */
} row_place;

static xlsx_look look_of(sheet_pen *pen, const sb_table *table, size_t column, const sb_cell *cell,
                         row_place at) {
    xlsx_look look = {.number = xlsx_number_format(pen->x, cell), .size = XLSX_TEXT, .bold = cell->strong};
    look.right = cell_right(table, column, cell);
    look.indent = look.right == table->headings[column].right && xlsx_indent(table, column) > 0;
    look.middle = !table->no_heading || at.lines == 1; /* text at the top would touch a rule */
    look.rule_above = at.ruled;
    look.box = cell->kind == SB_CELL_TICK;
    look.input = cell->input;
    look.line_below = at.lined && !look.box;
    return look;
}

static void put_cell(sheet_pen *pen, const sb_table *table, size_t column, const sb_cell *cell,
                     row_place at) {
    xlsx_look look = look_of(pen, table, column, cell, at);
    if (cell->kind == SB_CELL_TEXT && cell->text[0])
        put_text(pen, text_stretch(pen, table, at.row, column, cell),
                 xlsx_text(pen->x->run, cell->text, cell->place), look);
    else if (cell_is_number(cell) || cell->kind == SB_CELL_DATE)
        put_number(pen, at.row, column, cell, xlsx_format_of(pen->x, look));
    else if (look.box || look.rule_above || look.line_below)
        keep_error(pen, worksheet_write_blank(pen->worksheet, at.row, (lxw_col_t)column,
                                              xlsx_format_of(pen->x, look)));
    if (cell->among)
        offer_choices(pen, at.row, column, cell->among);
}

static void define_name(sheet_pen *pen, const sb_cell *cell, uint32_t row, size_t column) {
    const char *address = xlsx_address(pen->x->run, pen->laid, row, column);
    keep_error(pen, workbook_define_name(pen->x->workbook, xlsx_cell_name(pen->x, cell->name),
                                         sb_pool_print(pen->x->run->pool, "=%s", address)));
}

static void put_row(sheet_pen *pen, const sb_table *table, const sb_cell *cells, row_place at) {
    at.lines = xlsx_row_lines(pen->x->run, pen->laid, table, cells);
    for (size_t i = 0; i < table->column_count; i++) {
        put_cell(pen, table, i, &cells[i], at);
        if (cells[i].name)
            define_name(pen, &cells[i], at.row, i);
    }
}

static void put_table(sheet_pen *pen, const xlsx_block *place) {
    const sb_table *table = place->block->table;
    uint32_t body = xlsx_body_row(place);
    if (table->title[0]) {
        xlsx_look look = {.number = "", .size = XLSX_TEXT, .bold = true};
        stretch at = {place->row, place->row, 0, 0, 1};
        put_text(pen, at, xlsx_text(pen->x->run, table->title, (sb_place){0}), look);
    }
    if (!table->no_heading)
        put_headings(pen, table, body - 1);
    size_t first_total = table->rows.count - table->total_rows;
    for (size_t row = place->from; row < place->to; row++) {
        row_place at = {.row = body + (uint32_t)(row - place->from)};
        at.ruled = table->total_rows && row == first_total;
        at.lined = !table->no_heading && row < first_total && (row + 1 < first_total || !table->total_rows);
        put_row(pen, table, table->rows.items[row], at);
    }
}

void xlsx_put_sheet(xlsx *x, xlsx_sheet *laid, lxw_worksheet *worksheet) {
    sheet_pen pen = {.x = x, .laid = laid, .worksheet = worksheet};
    for (size_t i = 0; i < laid->column_count; i++)
        keep_error(&pen, worksheet_set_column(worksheet, (lxw_col_t)i, (lxw_col_t)i, laid->widths[i], NULL));
    for (uint32_t row = 0; row < laid->row_count; row++)
        keep_error(&pen, worksheet_set_row(worksheet, row, laid->heights[row], NULL));
    for (size_t i = 0; i < laid->block_count; i++) {
        const xlsx_block *place = &laid->blocks[i];
        if (place->block->kind == SB_BLOCK_TABLE)
            put_table(&pen, place);
        else if (place->block->kind == SB_BLOCK_DRAWING && place->gap > 0)
            keep_error(&pen, xlsx_put_picture(laid, place, worksheet));
        else if (place->block->kind == SB_BLOCK_CHART)
            keep_error(&pen, xlsx_put_chart(x, laid, place, worksheet));
        else if (place->gap > 0)
            put_block_text(&pen, place);
    }
}
