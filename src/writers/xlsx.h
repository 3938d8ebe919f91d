/* What the files of the spreadsheet writer share. A workbook is made in two walks over the document: the
 * layout finds where each block stands, so that a formula may point forward; then everything is put there. */
#ifndef WRITERS_XLSX_H
#define WRITERS_XLSX_H

#include "sawbill/writers.h"
#include "writers/glyphs.h"

#include <xlsxwriter.h>

typedef struct xlsx_block {
    const sb_block *block;
    uint32_t row;  /* its first, from 0 */
    uint32_t rows; /* how many, the gap below not counted */
    double height; /* of each row of a heading or paragraph, points */
    double gap;    /* height of the empty row below, points; 0 = there is none */
} xlsx_block;

typedef struct xlsx_sheet {
    const sb_sheet *sheet;
    const char *name;
    double *widths;       /* [column_count] in digits of the standard font */
    size_t table_columns; /* of the widest table */
    size_t column_count;  /* with the one that fills the page */
    SB_LIST(xlsx_block) blocks;
    bool has_breaks;
} xlsx_sheet;

/* How a cell looks. Two cells that look alike share one format. */
typedef struct xlsx_look {
    const char *number; /* number format, "" none */
    int size;           /* points, 0 = the usual 11 */
    bool bold, wrap, right, indent, rule_below, rule_above, box;
} xlsx_look;

typedef struct xlsx {
    sb_run *run;
    const sb_document *document;
    lxw_workbook *workbook; /* NULL once closed */
    lxw_error error;        /* the first */
    xlsx_sheet *sheets;     /* [document->sheets.count] */
    SB_LIST(struct xlsx_format {
        xlsx_look look;
        lxw_format *format;
    })
    formats;
    SB_LIST(const char *) cell_names;
} xlsx;

/* xlsx_layout.c */
xlsx_sheet xlsx_lay_out(sb_run *run, const sb_document *document, const sb_sheet *sheet);
uint32_t xlsx_body_row(const xlsx_block *block); /* where row 0 of the table stands */
/* The last column that column `column` of a table covers: narrow tables let their last column run on. */
size_t xlsx_last_column(const xlsx_sheet *sheet, const sb_table *table, size_t column, const sb_cell *cell);
double xlsx_span(const xlsx_sheet *sheet, size_t from, size_t to); /* width of the columns, [digits] */
double xlsx_page_room(const sb_document *document, const sb_sheet *sheet); /* width of the page, [digits] */
double xlsx_line_height(int size);                                         /* points */

/* xlsx_format.c */
lxw_format *xlsx_format_of(xlsx *x, xlsx_look look);
const char *xlsx_number_format(const xlsx *x, const sb_cell *cell);

/* xlsx_formula.c */
const char *xlsx_formula(const xlsx *x, const xlsx_sheet *from, const sb_relation *relation);
/* 'Boards to buy'!$C$7 */
const char *xlsx_address(sb_run *run, const xlsx_sheet *sheet, uint32_t row, size_t column);

/* xlsx_names.c: what the format allows. */
const char *xlsx_sheet_name(sb_run *run, const char *title, const xlsx_sheet *before, size_t count);
const char *xlsx_cell_name(xlsx *x, const char *name);
/* Clean, and cut with an advice where it is longer than a cell may hold. */
const char *xlsx_text(sb_run *run, const char *text, sb_place place);

/* xlsx_sheet.c */
void xlsx_put_sheet(xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet);

/* xlsx_page.c */
#define XLSX_MARGIN 0.6 /* inches, left and right */
void xlsx_set_page(xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet);

#endif
