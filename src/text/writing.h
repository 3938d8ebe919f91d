/* A text that grows; for this room only. */
#ifndef TEXT_WRITING_H
#define TEXT_WRITING_H

#include "sawbill/text.h"

typedef struct writing {
    sb_pool *pool;
    char *items;
    size_t count, capacity;
} writing;

void writing_bytes(writing *w, const char *bytes, size_t size);
void writing_text(writing *w, const char *text);
/* The text so far, with its NUL. */
const char *writing_done(writing *w);

#endif
