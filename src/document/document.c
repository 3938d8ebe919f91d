/* Documents are built from the top down; everything stays where it was put. */
#include "sawbill/document.h"

#include <string.h>

sb_document *sb_document_new(sb_run *run, const char *title, sb_date date, sb_style style,
                             sb_currency currency) {
    sb_document *document = SB_NEW(run->pool, sb_document);
    document->title = title;
    document->author = "";
    document->foot = "";
    document->date = date;
    document->style = style;
    document->currency = currency;
    return document;
}

sb_sheet *sb_sheet_add(sb_run *run, sb_document *document, const char *title) {
    sb_sheet *sheet = SB_NEW(run->pool, sb_sheet);
    sheet->title = title;
    SB_PUSH(run->pool, document->sheets, sheet);
    return sheet;
}

void sb_heading_add(sb_run *run, sb_sheet *sheet, const char *text) {
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_HEADING, .text = text}));
}

void sb_paragraph_add(sb_run *run, sb_sheet *sheet, const char *text, bool small) {
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_PARAGRAPH, .text = text, .small = small}));
}

void sb_page_break_add(sb_run *run, sb_sheet *sheet) {
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_PAGE_BREAK, .text = ""}));
}

void sb_room_break_add(sb_run *run, sb_sheet *sheet) {
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_ROOM_BREAK, .text = ""}));
}

sb_chart *sb_chart_add(sb_run *run, sb_sheet *sheet, sb_chart chart) {
    sb_chart *kept = SB_NEW(run->pool, sb_chart);
    *kept = chart;
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_CHART, .text = "", .chart = kept}));
    return kept;
}

/* ---- tables ---- */

static size_t count_headings(const char *headings) {
    size_t count = 1;
    for (const char *at = headings; *at; at++)
        count += *at == '|';
    return count;
}

static sb_heading read_heading(sb_run *run, const char *text, size_t length) {
    bool right = length > 0 && text[length - 1] == '>';
    return (sb_heading){.text = sb_pool_copy(run->pool, text, right ? length - 1 : length), .right = right};
}

sb_table *sb_table_add(sb_run *run, sb_sheet *sheet, const char *title, const char *headings) {
    sb_table *table = SB_NEW(run->pool, sb_table);
    table->title = title;
    table->column_count = count_headings(headings);
    table->headings = SB_NEW_ARRAY(run->pool, sb_heading, table->column_count);
    for (size_t i = 0; i < table->column_count; i++) {
        size_t length = strcspn(headings, "|");
        table->headings[i] = read_heading(run, headings, length);
        headings += length + 1;
    }
    SB_PUSH(run->pool, sheet->blocks, ((sb_block){.kind = SB_BLOCK_TABLE, .text = "", .table = table}));
    return table;
}

static sb_cell *add_row(sb_run *run, sb_table *table) {
    sb_cell *row = SB_NEW_ARRAY(run->pool, sb_cell, table->column_count);
    for (size_t i = 0; i < table->column_count; i++)
        row[i].text = "";
    SB_PUSH(run->pool, table->rows, row);
    return row;
}

sb_cell *sb_row_add(sb_run *run, sb_table *table) {
    if (table->total_rows)
        sb_bug(run, (sb_place){0}, "a row was added below the totals of table \"%s\"", table->title);
    return add_row(run, table);
}

sb_cell *sb_group_add(sb_run *run, sb_table *table) {
    SB_PUSH(run->pool, table->groups, table->rows.count);
    return sb_row_add(run, table);
}

sb_cell *sb_total_row_add(sb_run *run, sb_table *table) {
    table->total_rows++;
    return add_row(run, table);
}
