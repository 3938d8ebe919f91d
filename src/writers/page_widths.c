/* How wide the columns of a table are on a page. */
#include "writers/page_widths.h"

#include "writers/shown.h"

#include <string.h>

static const double between = 11; /* columns */
enum {
    TICK_WIDTH = 16
};

typedef struct span {
    double least, wish;
} span;

static void widen(span *s, double least, double wish) {
    s->least = least > s->least ? least : s->least;
    s->wish = wish > s->wish ? wish : s->wish;
}

/* A heading would like to take two lines at the most. */
static double heading_wish(PangoLayout *head) {
    enum {
        STEP = 4,
        HEADING_MOST = 90
    };
    double width = type_longest_word(head) + 1;
    for (type_wrap(head, width); pango_layout_get_line_count(head) > 2 && width < HEADING_MOST; width += STEP)
        type_wrap(head, width + STEP);
    return width;
}

bool page_runs_on(const sb_table *table, size_t row, size_t column) {
    const sb_cell *cells = table->rows.items[row];
    bool total = row + table->total_rows >= table->rows.count;
    return (total || table->no_heading) && column + 1 < table->column_count &&
           !table->headings[column].right && cells[column].kind == SB_CELL_TEXT &&
           cells[column + 1].kind == SB_CELL_EMPTY;
}

static void measure_column(const laid_table *laid, size_t column, span *s) {
    const sb_table *table = laid->table;
    if (laid->heads)
        widen(s, type_longest_word(laid->heads[column]), heading_wish(laid->heads[column]));
    for (size_t row = 0; row < table->rows.count; row++) {
        const sb_cell *cell = &table->rows.items[row][column];
        PangoLayout *layout = laid->cells[row * table->column_count + column];
        if (cell->kind == SB_CELL_TICK)
            widen(s, TICK_WIDTH, TICK_WIDTH);
        else if (layout && !page_runs_on(table, row, column))
            widen(s, cell_is_number(cell) ? type_width(layout) : type_longest_word(layout),
                  type_width(layout));
    }
}

static double given(const span *spans, size_t count, double most) {
    double sum = 0;
    for (size_t i = 0; i < count; i++) {
        double wish = spans[i].wish < most ? spans[i].wish : most;
        sum += wish > spans[i].least ? wish : spans[i].least;
    }
    return sum;
}

/* The widest columns give way to one another until all fit; words are broken only where even that does not help. */
static void share(const laid_table *laid, const span *spans, double room) {
    size_t count = laid->table->column_count;
    double low = 0, high = 10000;
    for (int i = 0; i < 40; i++) {
        double middle = (low + high) / 2;
        if (given(spans, count, middle) > room)
            high = middle;
        else
            low = middle;
    }
    double least = given(spans, count, 0), shrunk = least > room ? room / least : 1;
    for (size_t i = 0; i < count; i++) {
        double wish = spans[i].wish < low ? spans[i].wish : low;
        laid->widths[i] = (wish > spans[i].least ? wish : spans[i].least) * shrunk + 0.1;
    }
}

double page_cell_width(const laid_table *laid, size_t row, size_t column) {
    size_t last = column;
    if (page_runs_on(laid->table, row, column))
        while (last + 1 < laid->table->column_count &&
               laid->table->rows.items[row][last + 1].kind == SB_CELL_EMPTY)
            last++;
    return laid->lefts[last] + laid->widths[last] - laid->lefts[column];
}

/* Whether every figure has room in the columns of another table. */
static bool has_room(const laid_table *laid, const laid_table *above) {
    size_t columns = laid->table->column_count;
    for (size_t i = 0; i < laid->table->rows.count * columns; i++) {
        const sb_cell *cell = &laid->table->rows.items[i / columns][i % columns];
        if (laid->cells[i] && cell_is_number(cell) && type_width(laid->cells[i]) > above->widths[i % columns])
            return false;
    }
    return true;
}

/* A table without headings goes on in the columns of the one above it, if it has as many. */
static bool goes_on(const laid_table *laid, const laid_table *above) {
    return above && laid->table->no_heading && above->table &&
           above->table->column_count == laid->table->column_count && has_room(laid, above);
}

void page_widths(sb_run *run, const laid_table *laid, double width, const laid_table *above) {
    size_t count = laid->table->column_count;
    if (goes_on(laid, above)) {
        memcpy(laid->widths, above->widths, count * sizeof *laid->widths);
        memcpy(laid->lefts, above->lefts, count * sizeof *laid->lefts);
        return;
    }
    span *spans = SB_NEW_ARRAY(run->pool, span, count);
    for (size_t i = 0; i < count; i++)
        measure_column(laid, i, &spans[i]);
    share(laid, spans, width - between * (double)(count - 1) - (double)count * 0.1);
    for (size_t i = 1; i < count; i++)
        laid->lefts[i] = laid->lefts[i - 1] + laid->widths[i - 1] + between;
}
