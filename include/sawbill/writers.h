/* sawbill/writers.h -- what a paper looks like; one small file per format. Knows only documents. */
#ifndef SAWBILL_WRITERS_H
#define SAWBILL_WRITERS_H

#include "sawbill/document.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* A spreadsheet: one worksheet a sheet, and one more for what follows a page break, named after the heading there.
 * Relations are live formulas with stored values; text never becomes a formula; every sheet is set up for print.
 * Same document, same bytes. False after a notice: an error of the document, or a failure of the file. */
bool sb_write_xlsx(sb_run *run, const sb_document *document, const char *path);
/* Pages, A4 or Letter, with foot and page numbers: headings, paragraphs, tables and drawings in one font of their own. No
 * text stands on another; type is 9 points or more, numbers 12. Same document, same bytes. */
bool sb_write_pdf(sb_run *run, const sb_document *document, const char *path);
/* One drawing alone, as wide as the page of a document. */
bool sb_write_svg(sb_run *run, const sb_drawing *drawing, const char *path);
bool sb_write_png(sb_run *run, const sb_drawing *drawing, const char *path);
/* RFC 4180: CRLF, quoting; text that a spreadsheet could take for a formula gets a single quote in front (OWASP);
 * numbers with a point, lengths in mm, shares with %, hours. One table of the document, without its totals. */
const char *sb_write_csv(sb_run *run, const sb_document *document, const sb_table *table, size_t *size);
/* For the terminal: at most `columns` wide, long texts wrapped; a table whose figures do not fit side by
 * side lists them below one another. The titles of sheets show where there are several. */
const char *sb_write_text(sb_run *run, const sb_document *document, int columns);
/* JSON through jansson, keys in the order given, 2 blanks of indent, newline at the end. Lengths and decimals print
 * shortest exact: 864, 864.5, 19.05. */
const char *sb_write_json(sb_run *run, const sb_record *record);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
