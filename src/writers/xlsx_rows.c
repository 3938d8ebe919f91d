/* How high each row of a worksheet is, and which rows belong together on a page. */
#include "writers/xlsx.h"

#include "writers/shown.h"

enum {
    HEIGHT_MOST = 409 /* points */
};

/* ---- lines of text ---------------------------------------------------------------------------------- */

sb_cell xlsx_heading_cell(const sb_heading *heading) {
    return sb_cell_strong(sb_cell_text(heading->text));
}

size_t xlsx_cell_lines(sb_run *run, const xlsx_sheet *laid, const sb_table *table, size_t column,
                       const sb_cell *cell) {
    size_t last = xlsx_last_column(laid, table, column, cell);
    double room = xlsx_span(laid, column, last) - xlsx_indent(table, column);
    room = room / (cell->strong ? XLSX_BOLD : 1) - 1;
    return wrap_text(run, clean_text(run, cell->text), room, glyph_print).count;
}

size_t xlsx_row_lines(sb_run *run, const xlsx_sheet *laid, const sb_table *table, const sb_cell *cells) {
    size_t most = 1;
    for (size_t i = 0; i < table->column_count; i++) {
        size_t lines = xlsx_cell_lines(run, laid, table, i, &cells[i]);
        most = lines > most ? lines : most;
    }
    return most;
}

static size_t heading_lines(sb_run *run, const xlsx_sheet *laid, const sb_table *table) {
    size_t most = 1;
    for (size_t i = 0; i < table->column_count; i++) {
        sb_cell cell = xlsx_heading_cell(&table->headings[i]);
        size_t lines = xlsx_cell_lines(run, laid, table, i, &cell);
        most = lines > most ? lines : most;
    }
    return most;
}

/* ---- rows ------------------------------------------------------------------------------------------- */

static void set_row(xlsx_sheet *laid, uint32_t row, double height, xlsx_keep keep) {
    laid->heights[row] = height < HEIGHT_MOST ? height : HEIGHT_MOST;
    laid->keeps[row] = keep;
}

/* The title and the headings; how the first row of the body stands to them. */
static xlsx_keep measure_top(sb_run *run, xlsx_sheet *laid, const xlsx_block *place, xlsx_keep keep) {
    const sb_table *table = place->block->table;
    uint32_t row = place->row;
    if (table->title[0]) {
        set_row(laid, row++, xlsx_row_height(1, XLSX_TEXT) + 2, keep);
        keep = XLSX_BOUND;
    }
    if (!table->no_heading) {
        set_row(laid, row, xlsx_row_height(heading_lines(run, laid, table), XLSX_TEXT), keep);
        keep = XLSX_BOUND;
    }
    return keep;
}

/* The row that opens a group never stands alone; totals stand with what they are of. `next`: the group to come. */
static xlsx_keep keep_of(const sb_table *table, size_t row, size_t next) {
    if (row + table->total_rows >= table->rows.count)
        return XLSX_BOUND;
    if (next == 0 || (next < table->groups.count && table->groups.items[next] == row))
        return XLSX_FREE;
    return table->groups.items[next - 1] + 1 == row ? XLSX_BOUND : XLSX_GROUPED;
}

static bool is_empty(const sb_table *table, const sb_cell *cells) {
    for (size_t i = 0; i < table->column_count; i++)
        if (cells[i].kind != SB_CELL_EMPTY)
            return false;
    return true;
}

static void measure_table(sb_run *run, xlsx_sheet *laid, const xlsx_block *place, xlsx_keep first) {
    const sb_table *table = place->block->table;
    uint32_t body = xlsx_body_row(place);
    size_t next = 0;
    while (next < table->groups.count && table->groups.items[next] < place->from)
        next++;
    first = measure_top(run, laid, place, first);
    for (size_t row = place->from; row < place->to; row++) {
        const sb_cell *cells = table->rows.items[row];
        xlsx_keep keep = row == place->from       ? first
                         : is_empty(table, cells) ? XLSX_GAP
                                                  : keep_of(table, row, next);
        next += next < table->groups.count && table->groups.items[next] == row;
        size_t lines = xlsx_row_lines(run, laid, table, cells);
        set_row(laid, body + (uint32_t)(row - place->from), xlsx_row_height(lines, XLSX_TEXT), keep);
    }
}

/* Headings stand with what they are over. */
static bool is_under_heading(const xlsx_sheet *laid, size_t block) {
    while (block > 0 && laid->blocks[block - 1].gap == 0) /* a break */
        block--;
    return block > 0 && laid->first[block - 1].kind == SB_BLOCK_HEADING;
}

void xlsx_measure_rows(sb_run *run, xlsx_sheet *laid) {
    laid->heights = SB_NEW_ARRAY(run->pool, double, laid->row_count);
    laid->keeps = SB_NEW_ARRAY(run->pool, xlsx_keep, laid->row_count);
    for (size_t i = 0; i < laid->block_count; i++) {
        const xlsx_block *place = &laid->blocks[i];
        xlsx_keep first = is_under_heading(laid, i) ? XLSX_BOUND : XLSX_FREE;
        if (place->gap == 0)
            continue;
        if (place->block->kind == SB_BLOCK_TABLE)
            measure_table(run, laid, place, first);
        else
            for (uint32_t row = 0; row < place->rows; row++)
                set_row(laid, place->row + row, place->height, row == 0 ? first : XLSX_BOUND);
        set_row(laid, place->row + place->rows, place->gap, XLSX_GAP);
    }
}
