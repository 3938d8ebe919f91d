/* From bytes to fields. libcsv splits; it is fed byte by byte, so that each field knows its place. It is
 * lenient about quotes, so that 47 1/4" needs none around it; what is wrong with quotes is found here. */
#include "text/csv.h"
#include "text/source.h"
#include "text/utf8.h"

#include <csv.h>
#include <string.h>

typedef enum quoting {
    UNQUOTED,
    OPEN,
    CLOSED
} quoting;

typedef struct feed {
    sb_run *run;
    const sb_source *source;
    struct csv_parser parser;
    char separator;
    size_t at; /* the byte being fed */
    size_t row_start, field_start;
    quoting quoting;
    size_t quote; /* where the field's quote was opened */
    csv_row row;
    csv_rows rows;
} feed;

/* ---- the separator -------------------------------------------------------------------------------- */

char csv_separator(const sb_source *source) {
    static const char separators[] = ",;\t";
    size_t count[3] = {0}, best = 0, start = 0, end = 0;
    for (size_t line = 0; line < source->line_count && start == end; line++) {
        source_line_bounds(source, line, &start, &end);
        if (start < end && source->text[start] == '#')
            start = end;
    }
    bool quoted = false;
    for (size_t at = start; at < end; at++) {
        quoted ^= source->text[at] == '"';
        for (size_t i = 0; i < 3; i++)
            count[i] += !quoted && source->text[at] == separators[i];
    }
    for (size_t i = 1; i < 3; i++)
        best = count[i] > count[best] ? i : best;
    return separators[best];
}

/* ---- what libcsv found ------------------------------------------------------------------------------ */

static void field_found(void *bytes, size_t size, void *context) {
    feed *f = context;
    size_t start = 0, end = size, from = f->field_start, to = f->at;
    utf8_trim(bytes ? bytes : "", &start, &end);
    utf8_trim(f->source->text, &from, &to);
    sb_cell_in cell = {.text =
                           end > start ? sb_pool_copy(f->run->pool, (char *)bytes + start, end - start) : "",
                       .place = {f->source, from, to - from}};
    SB_PUSH(f->run->pool, f->row, cell);
    f->field_start = f->at + 1;
    f->quoting = UNQUOTED;
}

static bool row_is_empty(const csv_row *row) {
    for (size_t i = 0; i < row->count; i++)
        if (*row->items[i].text)
            return false;
    return true;
}

static void row_found(int line_end, void *context) {
    feed *f = context;
    (void)line_end;
    if (!row_is_empty(&f->row)) {
        f->row.place = (sb_place){f->source, f->row_start, f->at - f->row_start};
        SB_PUSH(f->run->pool, f->rows, f->row);
    }
    f->row = (csv_row){0};
}

/* ---- feeding ---------------------------------------------------------------------------------------- */

static void free_parser(void *parser) {
    csv_free(parser);
}

static bool is_line_end(char c) {
    return c == '\n' || c == '\r';
}

static size_t skip_line(const feed *f, size_t at) {
    while (at < f->source->size && !is_line_end(f->source->text[at]))
        at++;
    return at;
}

/* Forgets the row begun and goes on behind the line that holds `offset`. */
static void restart_behind(feed *f, size_t offset) {
    csv_free(&f->parser);
    csv_init(&f->parser, 0);
    csv_set_delim(&f->parser, (unsigned char)f->separator);
    f->row = (csv_row){0};
    f->quoting = UNQUOTED;
    f->at = f->row_start = f->field_start = skip_line(f, offset);
}

static void refuse_quote(feed *f) {
    sb_place quote = {f->source, f->quote, 1}, here = {f->source, f->at, 1};
    if (f->at == f->source->size)
        sb_error(f->run, quote, "this quote is never closed");
    else if (source_line(f->source, f->quote) != source_line(f->source, f->at))
        sb_error(f->run, quote, "this quote is never closed: the next one, in line %zu, opens another text",
                 sb_place_position(here).line);
    else
        sb_error(
            f->run, here,
            "behind a closing quote only the separator may follow; a quote inside a text is written twice");
    restart_behind(f, f->quote);
}

/* Follows the quotes of the field; false when this byte may not stand here. */
static bool follow_quotes(feed *f, char c) {
    bool blank = (c == ' ' || c == '\t') && c != f->separator;
    bool first = f->quoting == UNQUOTED && c == '"';
    for (size_t at = f->field_start; first && at < f->at; at++)
        first = f->source->text[at] == ' ' || f->source->text[at] == '\t';
    if (first) {
        f->quoting = OPEN;
        f->quote = f->at;
    } else if (f->quoting == OPEN && c == '"') {
        f->quoting = CLOSED;
    } else if (f->quoting == CLOSED && c == '"' && f->source->text[f->at - 1] == '"') {
        f->quoting = OPEN; /* a doubled quote stands for one */
    } else if (f->quoting == CLOSED) {
        return blank || c == f->separator || is_line_end(c);
    }
    return true;
}

static void feed_byte(feed *f) {
    char c = f->source->text[f->at];
    bool row_begins = f->at == f->row_start;
    if (row_begins && c == '#') {
        f->at = f->row_start = f->field_start = skip_line(f, f->at);
        return;
    }
    if (!follow_quotes(f, c)) {
        refuse_quote(f);
        return;
    }
    if (csv_parse(&f->parser, &c, 1, field_found, row_found, f) != 1)
        sb_fail(f->run, (sb_place){f->source, f->at, 1}, "no memory for this field");
    f->at++;
    if (is_line_end(c) && f->quoting != OPEN)
        f->row_start = f->field_start = f->at;
}

csv_rows csv_fields(sb_run *run, const sb_source *source, char separator) {
    feed *f = SB_NEW(run->pool, feed);
    *f = (feed){.run = run, .source = source, .separator = separator};
    csv_init(&f->parser, 0);
    csv_set_delim(&f->parser, (unsigned char)separator);
    sb_pool_defer(run->pool, free_parser, &f->parser);
    while (f->at < source->size) {
        feed_byte(f);
        if (f->at == source->size && f->quoting == OPEN)
            refuse_quote(f);
    }
    csv_fini(&f->parser, field_found, row_found, f);
    csv_free(&f->parser);
    return f->rows;
}
