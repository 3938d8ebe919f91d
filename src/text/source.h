/* What a source holds; for this room only. */
#ifndef TEXT_SOURCE_H
#define TEXT_SOURCE_H

#include "sawbill/text.h"

struct sb_source {
    const char *name;
    const char *text; /* behind a byte order mark */
    size_t size;
    const size_t *lines; /* offset at which each line starts */
    size_t line_count;
    sb_source *next; /* another file of the run */
};

/* Index of the line a byte stands in. */
size_t source_line(const sb_source *source, size_t offset);
/* Where the line starts, and where it ends before its line end. */
void source_line_bounds(const sb_source *source, size_t line, size_t *start, size_t *end);

#endif
