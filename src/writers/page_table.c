/* Tables on pages: headings on each, groups kept together, totals with what they are of. */
#include "writers/page_widths.h"
#include "writers/shown.h"

static const double after = 14; /* below the table */
enum {
    TICK_SIZE = 12,
    KEPT_WHOLE = 240 /* points: a table no higher than that has no page turned within it */
};

/* ---- laying out ------------------------------------------------------------------------------------------ */

/* Above and below a row's text: pairs stand closer, no rule parts them. */
static double padding_of(const laid_table *laid) {
    return laid->table->no_heading ? 1.8 : 3.5;
}

static PangoLayout *set_cell(sb_run *run, const type_case *type, const sb_document *document,
                             const sb_cell *cell) {
    const char *shown = cell->kind == SB_CELL_TICK ? "" : cell_shown(run, document, cell);
    if (!*shown)
        return NULL;
    bool large = cell_is_number(cell) && !document->even;
    return type_set(run, type, shown, large ? TYPE_NUMBER : TYPE_TEXT, cell->strong, 0);
}

static PangoLayout *cell_at(const laid_table *laid, size_t row, size_t column) {
    return laid->cells[row * laid->table->column_count + column];
}

static double first_baseline(PangoLayout *layout) {
    return (double)pango_layout_get_baseline(layout) / PANGO_SCALE;
}

/* Texts of a row stand on one line. */
static double row_baseline(const laid_table *laid, size_t row) {
    double most = 0;
    for (size_t i = 0; i < laid->table->column_count; i++) {
        PangoLayout *layout = cell_at(laid, row, i);
        double baseline = layout ? first_baseline(layout) : 0;
        most = baseline > most ? baseline : most;
    }
    return most;
}

static double row_height(const laid_table *laid, size_t row) {
    double most = 0, baseline = row_baseline(laid, row);
    bool tick = false;
    for (size_t i = 0; i < laid->table->column_count; i++) {
        PangoLayout *layout = cell_at(laid, row, i);
        double height = layout ? type_height(layout) + baseline - first_baseline(layout) : 0;
        most = height > most ? height : most;
        tick = tick || laid->table->rows.items[row][i].kind == SB_CELL_TICK;
    }
    if (tick && most < TICK_SIZE)
        most = TICK_SIZE;
    return most > 0 ? most + 2 * padding_of(laid) : 8;
}

static void set_texts(sb_run *run, const type_case *type, const sb_document *document, laid_table *laid) {
    const sb_table *table = laid->table;
    size_t columns = table->column_count;
    laid->title = table->title[0] ? type_set(run, type, table->title, TYPE_TITLE, true, 0) : NULL;
    laid->heads = table->no_heading ? NULL : SB_NEW_ARRAY(run->pool, PangoLayout *, columns);
    for (size_t i = 0; laid->heads && i < columns; i++)
        laid->heads[i] = type_set(run, type, table->headings[i].text, TYPE_SMALL, true, 0);
    laid->cells = SB_NEW_ARRAY(run->pool, PangoLayout *, table->rows.count * columns + 1);
    for (size_t i = 0; i < table->rows.count * columns; i++)
        laid->cells[i] = set_cell(run, type, document, &table->rows.items[i / columns][i % columns]);
}

laid_table table_lay(sb_run *run, const type_case *type, const sb_document *document, const sb_table *table,
                     double width, const laid_table *above) {
    laid_table laid = {.table = table};
    size_t columns = table->column_count, rows = table->rows.count;
    laid.widths = SB_NEW_ARRAY(run->pool, double, columns);
    laid.lefts = SB_NEW_ARRAY(run->pool, double, columns);
    laid.heights = SB_NEW_ARRAY(run->pool, double, rows + 1);
    set_texts(run, type, document, &laid);
    page_widths(run, &laid, width, above);
    if (laid.title)
        type_wrap(laid.title, width);
    for (size_t i = 0; laid.heads && i < columns; i++) {
        type_wrap(laid.heads[i], laid.widths[i]);
        double height = type_height(laid.heads[i]) + 5;
        laid.head_height = height > laid.head_height ? height : laid.head_height;
    }
    for (size_t i = 0; i < rows * columns; i++)
        if (laid.cells[i])
            type_wrap(laid.cells[i], page_cell_width(&laid, i / columns, i % columns));
    for (size_t row = 0; row < rows; row++)
        laid.heights[row] = row_height(&laid, row);
    return laid;
}

static double title_height(const laid_table *laid) {
    return laid->title ? type_height(laid->title) + 3 : 0;
}

double table_height(const laid_table *laid) {
    double height = title_height(laid) + laid->head_height;
    for (size_t row = 0; row < laid->table->rows.count; row++)
        height += laid->heights[row];
    return height;
}

/* Rows from `row` on that belong together. */
static size_t group_end(const laid_table *laid, size_t row) {
    const sb_table *table = laid->table;
    size_t end = row + 1, next = 0;
    if (table->groups.count) {
        while (next < table->groups.count && table->groups.items[next] <= row)
            next++;
        end = next < table->groups.count ? table->groups.items[next] : table->rows.count;
    }
    if (end + table->total_rows >= table->rows.count)
        end = table->rows.count;
    return end;
}

/* The same, and none of them stands alone on its page: the first takes the next ones with it, the last goes with those before. */
static size_t together(const laid_table *laid, size_t row) {
    size_t count = laid->table->rows.count, end = group_end(laid, row);
    if (row == 0 && end == 1 && end < count)
        end = group_end(laid, end);
    return end + 1 == count ? count : end;
}

static double rows_height(const laid_table *laid, size_t from, size_t end) {
    double height = 0;
    for (size_t row = from; row < end; row++)
        height += laid->heights[row];
    return height;
}

double table_first_height(const laid_table *laid) {
    double height = title_height(laid) + laid->head_height, all = table_height(laid);
    if (all <= KEPT_WHOLE)
        return all;
    return laid->table->rows.count ? height + rows_height(laid, 0, together(laid, 0)) : height;
}

/* ---- placing ------------------------------------------------------------------------------------------- */

static double table_right(const laid_table *laid) {
    size_t last = laid->table->column_count - 1;
    return PAGE_SIDE + laid->lefts[last] + laid->widths[last];
}

static void put_rule_from(flow *f, const laid_table *laid, size_t column, double y, double pen) {
    ink_rule(f->run, flow_page(f), (ink_point){PAGE_SIDE + laid->lefts[column], y},
             (ink_point){table_right(laid), y}, pen);
}

static void put_rule(flow *f, const laid_table *laid, double y, double pen) {
    put_rule_from(f, laid, 0, y, pen);
}

static void place_headings(flow *f, const laid_table *laid) {
    if (!laid->heads)
        return;
    for (size_t i = 0; i < laid->table->column_count; i++) {
        PangoLayout *head = laid->heads[i];
        double top = f->y + laid->head_height - 4 - type_height(head);
        ink_lines(f->run, flow_page(f), head, 0, pango_layout_get_line_count(head),
                  (ink_box){PAGE_SIDE + laid->lefts[i], top, laid->widths[i], 0},
                  laid->table->headings[i].right ? 1 : 0, false);
    }
    f->y += laid->head_height;
    put_rule(f, laid, f->y - 1, 1);
}

static void place_title(flow *f, const laid_table *laid) {
    if (!laid->title)
        return;
    ink_lines(f->run, flow_page(f), laid->title, 0, pango_layout_get_line_count(laid->title),
              (ink_box){PAGE_SIDE, f->y, f->width, 0}, 0, false);
    f->y += title_height(laid);
}

static void turn_page(flow *f, const laid_table *laid) {
    flow_turn(f);
    place_headings(f, laid);
}

static void place_cell(flow *f, const laid_table *laid, size_t row, size_t column, double top) {
    const sb_cell *cell = &laid->table->rows.items[row][column];
    PangoLayout *layout = cell_at(laid, row, column);
    ink_box box = {PAGE_SIDE + laid->lefts[column], top, page_cell_width(laid, row, column), 0};
    if (cell->kind == SB_CELL_TICK)
        ink_frame(f->run, flow_page(f),
                  (ink_box){box.left + (box.width - TICK_SIZE) / 2, top, TICK_SIZE, TICK_SIZE}, SB_FILL_NONE,
                  0.9);
    if (!layout)
        return;
    box.top += row_baseline(laid, row) - first_baseline(layout);
    ink_lines(f->run, flow_page(f), layout, 0, pango_layout_get_line_count(layout), box,
              cell_right(laid->table, column, cell) ? 1 : 0, false);
}

/* A row taller than a page goes on over as many as it takes, line by line. */
static void place_tall(flow *f, const laid_table *laid, size_t row) {
    int *done = SB_NEW_ARRAY(f->run->pool, int, laid->table->column_count);
    double padding = padding_of(laid);
    bool more = true;
    for (bool first = true; more; first = false) {
        if (!first)
            turn_page(f, laid);
        more = false;
        for (size_t i = 0; i < laid->table->column_count; i++) {
            PangoLayout *layout = cell_at(laid, row, i);
            int count = layout ? pango_layout_get_line_count(layout) : 0, end = done[i];
            while (end < count && flow_fits(f, padding + ink_lines_height(layout, done[i], end + 1)))
                end++;
            if (layout)
                ink_lines(f->run, flow_page(f), layout, done[i], end,
                          (ink_box){PAGE_SIDE + laid->lefts[i], f->y + padding, laid->widths[i], 0}, 0,
                          false);
            more = more || end < count;
            done[i] = end;
        }
    }
    f->y = f->bottom;
}

static bool is_gap(const laid_table *laid, size_t row) {
    for (size_t i = 0; i < laid->table->column_count; i++)
        if (laid->table->rows.items[row][i].kind != SB_CELL_EMPTY)
            return false;
    return true;
}

/* A row that says more to the one above it begins further right; a gap begins at the left. */
static size_t column_begun(const laid_table *laid, size_t row) {
    size_t column = 0;
    while (laid->table->rows.items[row][column].kind == SB_CELL_EMPTY && !is_gap(laid, row))
        column++;
    return column;
}

static void place_row(flow *f, const laid_table *laid, size_t row) {
    const sb_table *table = laid->table;
    size_t first_total = table->rows.count - table->total_rows;
    if (!flow_fits(f, laid->heights[row]) && !flow_at_top(f))
        turn_page(f, laid);
    if (laid->heights[row] > f->bottom - f->y) {
        place_tall(f, laid, row);
        return;
    }
    if (table->total_rows && row == first_total)
        put_rule(f, laid, f->y, 1);
    for (size_t i = 0; i < table->column_count; i++)
        place_cell(f, laid, row, i, f->y + padding_of(laid));
    f->y += laid->heights[row];
    bool last = row + 1 == table->rows.count || row + 1 == first_total;
    if (!table->no_heading && row < first_total && !last && !is_gap(laid, row))
        put_rule_from(f, laid, column_begun(laid, row + 1), f->y, 0.3);
}

void table_place(flow *f, const laid_table *laid) {
    if (!flow_fits(f, table_first_height(laid)) && table_first_height(laid) <= flow_most(f))
        flow_turn(f);
    place_title(f, laid);
    place_headings(f, laid);
    for (size_t row = 0; row < laid->table->rows.count;) {
        size_t end = together(laid, row);
        double height = rows_height(laid, row, end);
        if (!flow_fits(f, height) && height + laid->head_height <= flow_most(f))
            turn_page(f, laid);
        for (; row < end; row++)
            if (!is_gap(laid, row) || flow_fits(f, laid->heights[row]))
                place_row(f, laid, row);
    }
    f->y += after;
}
