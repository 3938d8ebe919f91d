/* Tables of the terminal. */
#ifndef WRITERS_TEXT_TABLE_H
#define WRITERS_TEXT_TABLE_H

#include "sawbill/document.h"
#include "writers/bytes.h"
#include "writers/glyphs.h"

void text_table(sb_run *run, bytes *out, const sb_document *document, const sb_table *table, int columns);

#endif
