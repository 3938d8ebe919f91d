/* A cell as people read it: the one place where formats without number formats of their own get theirs. */
#ifndef WRITERS_SHOWN_H
#define WRITERS_SHOWN_H

#include "sawbill/document.h"

const char *cell_shown(sb_run *run, const sb_document *document, const sb_cell *cell);
/* Is it set to the right? Numbers are; a table of pairs follows its marks alone. */
bool cell_right(const sb_table *table, size_t column, const sb_cell *cell);
bool cell_is_number(const sb_cell *cell); /* an amount, which must never be broken into lines */

#endif
