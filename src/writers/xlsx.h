/* What the files of the spreadsheet writer share. A workbook is made in two walks over the document: the
 * layout finds where each block stands, so that a formula may point forward; then everything is put there. */
#ifndef WRITERS_XLSX_H
#define WRITERS_XLSX_H

#include "sawbill/writers.h"
#include "writers/glyphs.h"

#include <xlsxwriter.h>

/* Sizes of type, points: common sans serif of equal widths on most machines. */
#define XLSX_FONT "Arial"
enum {
    XLSX_TEXT = 10,
    XLSX_HEADING = 14,
    XLSX_SMALL = 8
};
#define XLSX_BOLD 1.1 /* bold is so much wider */

typedef struct xlsx_block {
    const sb_block *block;
    size_t from, to; /* rows of a table that stand here */
    uint32_t row;    /* its first, from 0 */
    uint32_t rows;   /* how many, the gap below not counted */
    size_t lines;    /* of a heading or paragraph */
    double height;   /* of each row of a heading or paragraph, points */
    double gap;      /* height of the empty row below, points; 0: a break, without rows */
} xlsx_block;

/* May a page begin with a row? */
typedef enum xlsx_keep {
    XLSX_FREE,    /* it may */
    XLSX_GROUPED, /* only where its group is longer than a page */
    XLSX_BOUND,   /* never: it stands with the row above */
    XLSX_GAP      /* never; empty, and may hang over the page's end */
} xlsx_keep;

typedef struct xlsx_picture xlsx_picture;
typedef SB_LIST(xlsx_picture) xlsx_picture_list;

/* A worksheet: a sheet of the document up to a page break, or from one to the next, or a part of that. Breaks that are
 * set by hand within a worksheet are ignored by some programs and misread by others; worksheets are not.
 */
typedef struct xlsx_sheet {
    const sb_sheet *sheet;
    const char *name;
    const xlsx_picture_list *pictures;
    const sb_block *first; /* [block_count] */
    size_t block_count;
    size_t rows_from;     /* of the first block, a table: what is above stands on the worksheet before */
    size_t rows_to;       /* of the last block; 0: all */
    double *widths;       /* [column_count] in digits of the standard font */
    size_t table_columns; /* of the widest table */
    size_t column_count;  /* with the one that fills the page */
    xlsx_block *blocks;   /* [block_count] */
    uint32_t row_count;
    double *heights;  /* [row_count] points */
    xlsx_keep *keeps; /* [row_count] */
} xlsx_sheet;
typedef SB_LIST(xlsx_sheet) xlsx_sheets;

/* How a cell looks. Two cells that look alike share one format. */
typedef struct xlsx_look {
    const char *number; /* number format, "" none */
    int size;           /* points */
    bool bold, wrap, right, indent, middle;
    bool rule_below, rule_above, line_below, box; /* a line is a light rule */
    bool input;                                   /* tinted: it may be changed */
} xlsx_look;

typedef struct xlsx {
    sb_run *run;
    const sb_document *document;
    lxw_workbook *workbook; /* NULL once closed */
    lxw_error error;        /* the first */
    xlsx_sheets sheets;
    xlsx_picture_list pictures;
    SB_LIST(struct xlsx_format {
        xlsx_look look;
        lxw_format *format;
    })
    formats;
    SB_LIST(const char *) cell_names;
} xlsx;

/* xlsx_layout.c */
/* False after an error: more rows than a worksheet has. */
bool xlsx_lay_out(sb_run *run, const sb_document *document, xlsx_sheet *sheet);
uint32_t xlsx_body_row(const xlsx_block *block); /* where the first of a table's rows stands */
/* The last column that column `column` of a table covers: narrow tables let their last column run on. */
size_t xlsx_last_column(const xlsx_sheet *sheet, const sb_table *table, size_t column, const sb_cell *cell);
double xlsx_span(const xlsx_sheet *sheet, size_t from, size_t to); /* width of the columns, [digits] */
double xlsx_indent(const sb_table *table, size_t column);          /* [digits] */
double xlsx_page_room(const sb_document *document, const sb_sheet *sheet); /* width of the page, [digits] */
int xlsx_type_size(const sb_block *block);
double xlsx_row_height(size_t lines, int size); /* points */

/* xlsx_rows.c */
void xlsx_measure_rows(sb_run *run, xlsx_sheet *laid);
size_t xlsx_cell_lines(sb_run *run, const xlsx_sheet *laid, const sb_table *table, size_t column,
                       const sb_cell *cell);
size_t xlsx_row_lines(sb_run *run, const xlsx_sheet *laid, const sb_table *table, const sb_cell *cells);
sb_cell xlsx_heading_cell(const sb_heading *heading);

/* xlsx_format.c */
lxw_format *xlsx_format_of(xlsx *x, xlsx_look look);
const char *xlsx_number_format(const xlsx *x, const sb_cell *cell);

/* xlsx_formula.c */
typedef struct xlsx_found {
    const xlsx_sheet *sheet;
    uint32_t row;
} xlsx_found;
/* Where a row of a table stands; it does, sb_document_sound has seen to it. */
xlsx_found xlsx_find(const xlsx *x, const sb_table *table, size_t row);
const char *xlsx_formula(const xlsx *x, const xlsx_sheet *from, const sb_relation *relation);
/* 'Boards to buy'!$C$7 */
const char *xlsx_address(sb_run *run, const xlsx_sheet *sheet, uint32_t row, size_t column);

/* xlsx_names.c: what the format allows. */
const char *xlsx_sheet_name(sb_run *run, const char *title, const xlsx_sheets *before);
const char *xlsx_cell_name(xlsx *x, const char *name);
/* Clean, and cut with an advice where it is longer than a cell may hold. */
const char *xlsx_text(sb_run *run, const char *text, sb_place place);

/* xlsx_sheet.c */
void xlsx_put_sheet(xlsx *x, xlsx_sheet *laid, lxw_worksheet *worksheet);

/* xlsx_pictures.c */
bool xlsx_take_pictures(xlsx *x); /* of all drawings; false after a failure */
size_t xlsx_pictures_size(const xlsx *x);
bool xlsx_lay_picture(const xlsx_sheet *laid, xlsx_block *place); /* false: there is none */
void xlsx_name_picture(sb_run *run, xlsx_block *place);           /* a line of text instead */
lxw_error xlsx_put_picture(const xlsx_sheet *laid, const xlsx_block *place, lxw_worksheet *worksheet);

/* xlsx_charts.c */
void xlsx_lay_chart(xlsx_block *place);
lxw_error xlsx_put_chart(xlsx *x, const xlsx_sheet *laid, const xlsx_block *place, lxw_worksheet *worksheet);

/* xlsx_page.c */
#define XLSX_MARGIN 0.6 /* inches, left and right */
void xlsx_set_page(xlsx *x, const xlsx_sheet *laid, lxw_worksheet *worksheet);
/* Of a page once the columns fit its width, points. */
double xlsx_page_height(const sb_document *document, const xlsx_sheet *laid);
/* Of rows, gaps at the end not counted, points. */
double xlsx_height(const xlsx_sheet *laid, uint32_t from, uint32_t to);
bool xlsx_fits_page(const sb_document *document, const xlsx_sheet *laid);
bool xlsx_drawn_onto_page(const sb_document *document, const xlsx_sheet *laid); /* it is printed on one */

/* xlsx_parts.c: worksheets that stand for one, with its widths, to be laid out each; it alone where none is needed. */
xlsx_sheets xlsx_parts_of(sb_run *run, const sb_document *document, const xlsx_sheet *whole);

#endif
