/* Columns are as wide as what stands in them. Where that is too wide for the terminal, the widest texts
 * wrap; where even that does not do, each row becomes a short list of its own. Figures are never broken. */
#include "writers/text_table.h"

#include "writers/shown.h"

#include <string.h>

enum {
    GAP = 2,
    WORD_MOST = 12
};

typedef struct grid {
    const sb_table *table;
    const sb_document *document;
    const char ***shown; /* [row][column] */
    const char **headings;
    int *widths, *least; /* [column] */
} grid;

static int larger(int a, int b) {
    return a > b ? a : b;
}

static int smaller(int a, int b) {
    return a < b ? a : b;
}

static int room_of(const char *text) {
    return (int)line_room(text, glyph_columns);
}

/* Texts may shrink to their longest word, long words to a dozen characters. */
static int least_of(const char *text) {
    return smaller((int)word_room(text, glyph_columns), WORD_MOST);
}

static void measure_column(grid *g, size_t column) {
    int width = 0, least = 1;
    if (!g->table->no_heading) {
        width = room_of(g->headings[column]);
        least = least_of(g->headings[column]);
    }
    for (size_t row = 0; row < g->table->rows.count; row++) {
        const char *text = g->shown[row][column];
        const sb_cell *cell = &g->table->rows.items[row][column];
        int room = room_of(text);
        width = larger(width, room);
        least = larger(least, cell->kind == SB_CELL_TEXT ? least_of(text) : room);
    }
    int wish = g->table->headings[column].width;
    g->least[column] = least;
    g->widths[column] = wish > 0 ? larger(least, smaller(width, wish)) : width;
}

static grid grid_of(sb_run *run, const sb_document *document, const sb_table *table) {
    grid g = {.table = table, .document = document};
    g.shown = SB_NEW_ARRAY(run->pool, const char **, table->rows.count);
    g.headings = SB_NEW_ARRAY(run->pool, const char *, table->column_count);
    g.widths = SB_NEW_ARRAY(run->pool, int, table->column_count);
    g.least = SB_NEW_ARRAY(run->pool, int, table->column_count);
    for (size_t row = 0; row < table->rows.count; row++) {
        g.shown[row] = SB_NEW_ARRAY(run->pool, const char *, table->column_count);
        for (size_t i = 0; i < table->column_count; i++)
            g.shown[row][i] = cell_shown(run, document, &table->rows.items[row][i]);
    }
    for (size_t i = 0; i < table->column_count; i++) {
        g.headings[i] = clean_text(run, table->headings[i].text);
        measure_column(&g, i);
    }
    return g;
}

/* Takes from the widest column that can give until all fit; false when none can. */
static bool shrink(grid *g, int columns) {
    int total = -GAP;
    for (size_t i = 0; i < g->table->column_count; i++)
        total += g->widths[i] + GAP;
    for (; total > columns; total--) {
        size_t give = SIZE_MAX;
        for (size_t i = 0; i < g->table->column_count; i++)
            if (g->widths[i] > g->least[i] && (give == SIZE_MAX || g->widths[i] > g->widths[give]))
                give = i;
        if (give == SIZE_MAX)
            return false;
        g->widths[give]--;
    }
    return true;
}

/* ---- side by side ----------------------------------------------------------------------------------- */

static void trim_line(bytes *out) {
    while (out->count && out->items[out->count - 1] == ' ')
        out->count--;
}

/* One line of one cell, blanks around it. */
static void add_slice(sb_run *run, bytes *out, const text_lines *lines, size_t index, int width, bool right) {
    text_line line = index < lines->count ? lines->items[index] : (text_line){"", 0};
    int room = (int)text_room(line.start, line.size, glyph_columns);
    size_t blanks = (size_t)larger(width - room, 0);
    bytes_repeat(run, out, ' ', right ? blanks : 0);
    bytes_add(run, out, line.start, line.size);
    bytes_repeat(run, out, ' ', right ? 0 : blanks);
}

static bool is_right(const grid *g, size_t column, const sb_cell *row) {
    return row ? cell_right(g->table, column, &row[column]) : g->table->headings[column].right;
}

/* `row` is NULL for the headings. */
static void add_row(sb_run *run, bytes *out, const grid *g, const char *const *texts, const sb_cell *row) {
    size_t count = g->table->column_count, height = 0;
    text_lines *lines = SB_NEW_ARRAY(run->pool, text_lines, count);
    for (size_t i = 0; i < count; i++) {
        lines[i] = wrap_text(run, texts[i], larger(g->widths[i], 1), glyph_columns);
        height = lines[i].count > height ? lines[i].count : height;
    }
    for (size_t line = 0; line < height; line++) {
        for (size_t i = 0; i < count; i++) {
            add_slice(run, out, &lines[i], line, g->widths[i], is_right(g, i, row));
            bytes_repeat(run, out, ' ', GAP);
        }
        trim_line(out);
        bytes_add_text(run, out, "\n");
    }
}

static void add_rule(sb_run *run, bytes *out, const grid *g) {
    for (size_t i = 0; i < g->table->column_count; i++) {
        bytes_repeat(run, out, '-', (size_t)g->widths[i]);
        bytes_repeat(run, out, ' ', GAP);
    }
    trim_line(out);
    bytes_add_text(run, out, "\n");
}

static void add_columns(sb_run *run, bytes *out, const grid *g) {
    const sb_table *table = g->table;
    if (!table->no_heading) {
        add_row(run, out, g, g->headings, NULL);
        add_rule(run, out, g);
    }
    for (size_t row = 0; row < table->rows.count; row++) {
        if (table->total_rows && row > 0 && row == table->rows.count - table->total_rows)
            add_rule(run, out, g);
        add_row(run, out, g, g->shown[row], table->rows.items[row]);
    }
}

/* ---- below one another, for tables that are too wide ------------------------------------------------ */

static void add_pair(sb_run *run, bytes *out, const char *heading, const char *text, int columns) {
    const char *both = heading[0] ? sb_pool_print(run->pool, "%s: %s", heading, text) : text;
    text_lines lines = wrap_text(run, both, columns, glyph_columns);
    for (size_t i = 0; i < lines.count; i++) {
        bytes_add(run, out, lines.items[i].start, lines.items[i].size);
        bytes_add_text(run, out, "\n");
    }
}

static void add_lists(sb_run *run, bytes *out, const grid *g, int columns) {
    for (size_t row = 0; row < g->table->rows.count; row++) {
        if (row)
            bytes_add_text(run, out, "\n");
        for (size_t i = 0; i < g->table->column_count; i++)
            if (g->shown[row][i][0])
                add_pair(run, out, g->headings[i], g->shown[row][i], columns);
    }
}

void text_table(sb_run *run, bytes *out, const sb_document *document, const sb_table *table, int columns) {
    grid g = grid_of(run, document, table);
    if (shrink(&g, columns))
        add_columns(run, out, &g);
    else
        add_lists(run, out, &g, columns);
}
