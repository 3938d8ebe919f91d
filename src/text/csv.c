/* From fields to the columns asked for. */
#include "text/csv.h"

#include <string.h>
#include <strings.h>

enum {
    NO_COLUMN = -1
};

/* ---- the header ------------------------------------------------------------------------------------- */

static int find_column(const sb_column *columns, size_t count, const char *name) {
    for (size_t i = 0; i < count; i++)
        if (strcasecmp(columns[i].name, name) == 0)
            return (int)i;
    return NO_COLUMN;
}

static void refuse_column(sb_run *run, const sb_cell_in *heading, const sb_column *columns, size_t count) {
    const char **names = SB_NEW_ARRAY(run->pool, const char *, count);
    for (size_t i = 0; i < count; i++)
        names[i] = columns[i].name;
    sb_error_unknown(run, heading->place, "column", heading->text, names, count);
}

/* For each field of the header the column it stands for. A field without a name is left out: spreadsheets
 * write empty ones at the right. */
static int *read_header(sb_run *run, const csv_row *header, const sb_column *columns, size_t count) {
    int *column_of = SB_NEW_ARRAY(run->pool, int, header->count);
    bool *seen = SB_NEW_ARRAY(run->pool, bool, count);
    for (size_t i = 0; i < header->count; i++) {
        const sb_cell_in *heading = &header->items[i];
        int found = column_of[i] = find_column(columns, count, heading->text);
        if (found == NO_COLUMN && *heading->text)
            refuse_column(run, heading, columns, count);
        else if (found != NO_COLUMN && seen[found])
            sb_error(run, heading->place, "the column \"%s\" is here twice", heading->text);
        if (found != NO_COLUMN)
            seen[found] = true;
    }
    for (size_t i = 0; i < count; i++)
        if (columns[i].required && !seen[i])
            sb_error(run, header->place, "the column \"%s\" is missing from this header", columns[i].name);
    return column_of;
}

/* ---- the rows --------------------------------------------------------------------------------------- */

static void fill_row(sb_run *run, const csv_row *row, const csv_row *header, const int *column_of,
                     size_t count, sb_cell_in *cells) {
    for (size_t i = 0; i < count; i++)
        cells[i] = (sb_cell_in){.text = "", .place = row->place};
    for (size_t i = 0; i < row->count; i++) {
        const sb_cell_in *field = &row->items[i];
        bool named = i < header->count && *header->items[i].text;
        if (named && column_of[i] != NO_COLUMN)
            cells[column_of[i]] = *field;
        else if (!named && *field->text && i < header->count)
            sb_error(run, field->place, "this field stands in a column without a name");
        else if (!named && *field->text)
            sb_error(run, field->place, "too many fields: the header names %zu, this is number %zu",
                     header->count, i + 1);
    }
}

const sb_csv *sb_csv_of(sb_run *run, const sb_source *source, const sb_column *columns, size_t count) {
    if (!source)
        return NULL;
    char separator = csv_separator(source);
    sb_csv *csv = SB_NEW(run->pool, sb_csv);
    *csv = (sb_csv){.source = source, .column_count = count, .decimal_comma = separator == ';'};
    csv_rows rows = csv_fields(run, source, separator);
    if (rows.count == 0) {
        sb_error(run, (sb_place){source, 0, 0},
                 "the file is empty; a header with the names of columns was expected");
        csv->faulty_header = true;
        return csv;
    }
    const csv_row *header = &rows.items[0];
    size_t errors = sb_notices_count(run, SB_ERROR);
    const int *column_of = read_header(run, header, columns, count);
    csv->faulty_header = sb_notices_count(run, SB_ERROR) > errors;
    csv->row_count = rows.count - 1;
    csv->cells = sb_pool_alloc_array(run->pool, csv->row_count, count * sizeof *csv->cells);
    csv->rows = SB_NEW_ARRAY(run->pool, sb_place, csv->row_count);
    for (size_t i = 0; i < csv->row_count; i++) {
        csv->rows[i] = rows.items[i + 1].place;
        fill_row(run, &rows.items[i + 1], header, column_of, count, csv->cells + i * count);
    }
    return csv;
}

const sb_csv *sb_csv_read(sb_run *run, const char *path, const sb_column *columns, size_t count) {
    return sb_csv_of(run, sb_source_read(run, path), columns, count);
}

const sb_cell_in *sb_csv_cell(const sb_csv *csv, size_t row, size_t column) {
    return &csv->cells[row * csv->column_count + column];
}
