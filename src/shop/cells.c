/* Rows of CSV files, and typed reading of CSV cells, on top of measure's: empty cells, zeros and signs are
 * judged here. */
#include "shop/read.h"

#include <string.h>

/* ---- rows ---- */

static bool row_empty(shop_row row) {
    for (size_t column = 0; column < row.csv->column_count; column++)
        if (shop_given(row, column))
            return false;
    return true;
}

bool shop_each_row(shop_reader *reader, const char *path, const sb_column *columns, size_t count,
                   shop_row_read *read) {
    const sb_csv *csv = sb_csv_read(reader->run, path, columns, count);
    if (!csv || csv->faulty_header)
        return false;
    for (size_t i = 0; i < csv->row_count; i++) {
        shop_row row = {reader->run, csv, columns, i, sb_notices_raised(reader->run, SB_ERROR)};
        if (!row_empty(row))
            read(reader, row);
    }
    return true;
}

bool shop_sound(shop_row row) {
    return sb_notices_raised(row.run, SB_ERROR) == row.errors;
}

/* ---- cells ---- */

const char *shop_text(shop_row row, size_t column) {
    return sb_csv_cell(row.csv, row.index, column)->text;
}

sb_place shop_at(shop_row row, size_t column) {
    return sb_csv_cell(row.csv, row.index, column)->place;
}

bool shop_given(shop_row row, size_t column) {
    return shop_text(row, column)[0] != '\0';
}

bool shop_need(shop_row row, size_t column) {
    if (shop_given(row, column))
        return true;
    sb_error(row.run, shop_at(row, column), "the column `%s` is empty here", row.columns[column].name);
    return false;
}

void shop_refuse(shop_row row, size_t column, const char *why) {
    if (shop_given(row, column))
        sb_error(row.run, shop_at(row, column), "leave the column `%s` empty here: %s",
                 row.columns[column].name, why);
}

/* Whether recipes and jobs, which read lines, see one word in it. */
static bool one_word(sb_run *run, const char *text) {
    const sb_source *source = sb_source_of(run, "", text);
    if (!source)
        return false;
    sb_cursor cursor =
        sb_tokens_of(run, sb_line_lexer(run, false), (sb_place){source, 0, sb_source_size(source)});
    return cursor.at->kind == SB_WORD && cursor.at[1].kind == SB_END;
}

bool shop_id(shop_row row, size_t column, const char **out) {
    if (!shop_need(row, column))
        return false;
    *out = shop_text(row, column);
    if (one_word(row.run, *out))
        return true;
    sb_error(row.run, shop_at(row, column),
             "`%s` cannot be named in a recipe: expected one word of letters, digits, - and _", *out);
    return false;
}

static bool present(shop_row row, size_t column, shop_demand demand) {
    return demand == SHOP_NEEDED ? shop_need(row, column) : shop_given(row, column);
}

void shop_length(shop_row row, size_t column, shop_demand demand, sb_length *out) {
    sb_length length;
    if (!present(row, column, demand) ||
        !sb_read_length(row.run, shop_text(row, column), shop_at(row, column), row.csv->decimal_comma,
                        &length))
        return;
    if (length.nm > 0)
        *out = length;
    else
        sb_error(row.run, shop_at(row, column), "expected a length above zero in the column `%s`",
                 row.columns[column].name);
}

void shop_count(shop_row row, size_t column, int64_t least, int64_t *out) {
    int64_t count;
    if (!shop_given(row, column) ||
        !sb_read_count(row.run, shop_text(row, column), shop_at(row, column), &count))
        return;
    if (count >= least)
        *out = count;
    else
        sb_error(row.run, shop_at(row, column), "expected at least %lld in the column `%s`", (long long)least,
                 row.columns[column].name);
}

void shop_yes(shop_row row, size_t column, bool *out) {
    if (shop_given(row, column))
        sb_read_yes(row.run, shop_text(row, column), shop_at(row, column), out);
}

void shop_twice(sb_run *run, sb_place at, const char *what, const char *name, sb_place first) {
    sb_position where = sb_place_position(first);
    sb_error(run, at, "%s %s stands twice: first at %s:%zu", what, name, where.file, where.line);
}

const char *shop_exactly(sb_run *run, sb_length length, const sb_style *style) {
    sb_style exact = sb_style_exact(style);
    return sb_write_length_unit(run, length, &exact);
}
