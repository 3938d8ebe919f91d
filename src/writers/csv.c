/* CSV as RFC 4180 has it: CRLF at the end of each record, quotes where a field needs them. */
#include "sawbill/writers.h"

#include "writers/bytes.h"
#include "writers/glyphs.h"

#include <string.h>

/* Could a spreadsheet take a cell that starts so for a formula? The characters are those of OWASP "CSV
 * Injection", the full-width forms among them; blanks in front do not help. */
static bool starts_formula(const char *text) {
    static const char *const starts[] = {"=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠"};
    text += strspn(text, " ");
    for (size_t i = 0; i < sizeof starts / sizeof *starts; i++)
        if (strncmp(text, starts[i], strlen(starts[i])) == 0)
            return true;
    return false;
}

/* Semicolons and tabs separate cells for readers in some countries, so they count as separators. */
static bool needs_quotes(const char *text) {
    size_t length = strlen(text);
    return strcspn(text, ",;\t\r\n\"") < length || starts_formula(text) ||
           (length && (text[0] == ' ' || text[length - 1] == ' '));
}

static void add_text(sb_run *run, bytes *out, const char *text) {
    if (!needs_quotes(text)) {
        bytes_add_text(run, out, text);
        return;
    }
    bytes_add_text(run, out, starts_formula(text) ? "\"'" : "\"");
    for (; *text; text++)
        bytes_add(run, out, *text == '"' ? "\"\"" : text, *text == '"' ? 2 : 1);
    bytes_add_text(run, out, "\"");
}

/* 864, 864.5, 19.05: without zeros at the end. */
static const char *shortest(sb_run *run, int64_t amount, int digits) {
    while (digits > 0 && amount % 10 == 0) {
        amount /= 10;
        digits--;
    }
    return sb_write_decimal(run, amount, digits, false);
}

/* Amounts in the units of machines: mm, major money units, per cent, hours. */
static const char *amount_text(sb_run *run, const sb_document *document, const sb_cell *cell) {
    switch (cell->kind) {
    case SB_CELL_COUNT:
        return sb_write_decimal(run, cell->amount, 0, false);
    case SB_CELL_NUMBER:
        return sb_write_decimal(run, cell->amount, cell->digits, false);
    case SB_CELL_PRICE:
        return shortest(run, cell->amount, cell->digits);
    case SB_CELL_LENGTH:
        return shortest(run, cell->amount, 6);
    case SB_CELL_MONEY:
        return sb_write_decimal(run, cell->amount, document->currency.digits, false);
    case SB_CELL_SHARE:
        return sb_pool_print(run->pool, "%s%%", shortest(run, cell->amount, 4));
    case SB_CELL_DURATION:
        return shortest(run, sb_mul_div(cell->amount, 10000, 3600000), 4);
    case SB_CELL_DATE:
        return sb_write_date(run, cell->date);
    case SB_CELL_EMPTY:
    case SB_CELL_TEXT:
    case SB_CELL_TICK:
        break;
    }
    return "";
}

static void add_row(sb_run *run, bytes *out, const sb_document *document, const sb_table *table,
                    const sb_cell *row) {
    for (size_t i = 0; i < table->column_count; i++) {
        if (i)
            bytes_add_text(run, out, ",");
        if (row[i].kind == SB_CELL_TEXT)
            add_text(run, out, row[i].text);
        else
            bytes_add_text(run, out, amount_text(run, document, &row[i]));
    }
    bytes_add_text(run, out, "\r\n");
}

static void add_headings(sb_run *run, bytes *out, const sb_table *table) {
    for (size_t i = 0; i < table->column_count; i++) {
        if (i)
            bytes_add_text(run, out, ",");
        add_text(run, out, table->headings[i].text);
    }
    bytes_add_text(run, out, "\r\n");
}

const char *sb_write_csv(sb_run *run, const sb_document *document, const sb_table *table, size_t *size) {
    bytes out = {0};
    if (!table->no_heading)
        add_headings(run, &out, table);
    for (size_t row = 0; row + table->total_rows < table->rows.count; row++)
        add_row(run, &out, document, table, table->rows.items[row]);
    const char *text = bytes_end(run, &out);
    *size = out.count;
    return text;
}
