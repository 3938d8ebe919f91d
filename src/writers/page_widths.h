#ifndef WRITERS_PAGE_WIDTHS_H
#define WRITERS_PAGE_WIDTHS_H

#include "writers/pages.h"

/* Fills widths and lefts from what the cells hold. */
void page_widths(sb_run *run, const laid_table *laid, double width);

#endif
