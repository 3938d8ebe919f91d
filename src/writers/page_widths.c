/* How wide the columns of a table are on a page. */
#include "writers/page_widths.h"

#include "writers/shown.h"

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

static void measure_column(const laid_table *laid, size_t column, span *s) {
    const sb_table *table = laid->table;
    if (laid->heads)
        widen(s, type_longest_word(laid->heads[column]), type_longest_word(laid->heads[column]));
    for (size_t row = 0; row < table->rows.count; row++) {
        const sb_cell *cell = &table->rows.items[row][column];
        PangoLayout *layout = laid->cells[row * table->column_count + column];
        if (cell->kind == SB_CELL_TICK)
            widen(s, TICK_WIDTH, TICK_WIDTH);
        else if (layout)
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

void page_widths(sb_run *run, const laid_table *laid, double width) {
    size_t count = laid->table->column_count;
    span *spans = SB_NEW_ARRAY(run->pool, span, count);
    for (size_t i = 0; i < count; i++)
        measure_column(laid, i, &spans[i]);
    share(laid, spans, width - between * (double)(count - 1) - (double)count * 0.1);
    for (size_t i = 1; i < count; i++)
        laid->lefts[i] = laid->lefts[i - 1] + laid->widths[i - 1] + between;
}
