/* The two halves of CSV in: bytes to fields, fields to columns. For this room only. */
#ifndef TEXT_CSV_H
#define TEXT_CSV_H

#include "sawbill/text.h"

typedef struct csv_row {
    sb_cell_in *items;
    size_t count, capacity;
    sb_place place;
} csv_row;

typedef struct csv_rows {
    csv_row *items;
    size_t count, capacity;
} csv_rows;

/* All rows with anything in them; the first is the header. Errors: a quote never closed, text behind a
 * closing quote. */
csv_rows csv_fields(sb_run *run, const sb_source *source, char separator);

/* The commonest of comma, semicolon and tab in the first line that is neither empty nor a comment. */
char csv_separator(const sb_source *source);

#endif
