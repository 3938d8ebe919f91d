#ifndef WRITERS_PAGE_WIDTHS_H
#define WRITERS_PAGE_WIDTHS_H

#include "writers/pages.h"

/* Fills widths and lefts from what the cells hold. `above`: the table before, NULL: none. */
void page_widths(sb_run *run, const laid_table *laid, double width, const laid_table *above);
/* A text of a total, or of a table without headings, runs on over the empty cells beside it. */
bool page_runs_on(const sb_table *table, size_t row, size_t column);
double page_cell_width(const laid_table *laid, size_t row, size_t column); /* what there is for its text */

#endif
