/* For the terminal: headings underlined, paragraphs wrapped; tables stand in text_table.c. */
#include "sawbill/writers.h"

#include "writers/text_table.h"

#include <string.h>

static void add_lines(sb_run *run, bytes *out, const char *text, int columns) {
    text_lines lines = wrap_text(run, clean_text(run, text), columns, glyph_columns);
    for (size_t i = 0; i < lines.count; i++) {
        bytes_add(run, out, lines.items[i].start, lines.items[i].size);
        bytes_add_text(run, out, "\n");
    }
}

static void add_heading(sb_run *run, bytes *out, const char *text, char rule, int columns) {
    double room = line_room(clean_text(run, text), glyph_columns);
    add_lines(run, out, text, columns);
    bytes_repeat(run, out, rule, (size_t)(room < columns ? room : columns));
    bytes_add_text(run, out, "\n");
}

/* One empty line between blocks, none at the start. */
static void add_gap(sb_run *run, bytes *out) {
    if (out->count)
        bytes_add_text(run, out, "\n");
}

static void add_block(sb_run *run, bytes *out, const sb_document *document, const sb_block *block,
                      int columns) {
    if (block->kind != SB_BLOCK_HEADING && block->kind != SB_BLOCK_PARAGRAPH && block->kind != SB_BLOCK_TABLE)
        return;
    add_gap(run, out);
    if (block->kind == SB_BLOCK_HEADING) {
        add_heading(run, out, block->text, '-', columns);
    } else if (block->kind == SB_BLOCK_PARAGRAPH) {
        add_lines(run, out, block->text, columns);
    } else {
        if (block->table->title[0])
            add_lines(run, out, block->table->title, columns);
        text_table(run, out, document, block->table, columns);
    }
}

static bool opens_with(const sb_sheet *sheet, const char *text) {
    return sheet->blocks.count && sheet->blocks.items[0].kind == SB_BLOCK_HEADING &&
           strcmp(sheet->blocks.items[0].text, text) == 0;
}

/* Where there are several sheets each shows its title, unless its first heading says the same. */
static void add_sheet(sb_run *run, bytes *out, const sb_document *document, const sb_sheet *sheet,
                      int columns) {
    if (document->sheets.count > 1 && !opens_with(sheet, sheet->title)) {
        add_gap(run, out);
        add_heading(run, out, sheet->title, '=', columns);
    }
    for (size_t i = 0; i < sheet->blocks.count; i++)
        add_block(run, out, document, &sheet->blocks.items[i], columns);
}

/* What has pictures and no figures besides has nothing for a terminal. */
static bool is_pictures(const sb_sheet *sheet) {
    bool drawings = false;
    for (size_t i = 0; i < sheet->blocks.count; i++) {
        drawings = drawings || sheet->blocks.items[i].kind == SB_BLOCK_DRAWING;
        if (sheet->blocks.items[i].kind == SB_BLOCK_TABLE)
            return false;
    }
    return drawings;
}

const char *sb_write_text(sb_run *run, const sb_document *document, int columns) {
    bytes out = {0};
    if (columns < 2)
        columns = 2; /* room for one wide character */
    for (size_t i = 0; i < document->sheets.count; i++)
        if (!is_pictures(document->sheets.items[i]))
            add_sheet(run, &out, document, document->sheets.items[i], columns);
    return bytes_end(run, &out);
}
