#include "text/writing.h"

#include <string.h>

void writing_bytes(writing *w, const char *bytes, size_t size) {
    while (w->capacity - w->count < size + 1)
        w->items = sb_pool_grow(w->pool, w->items, w->capacity, &w->capacity, 1);
    memcpy(w->items + w->count, bytes, size);
    w->count += size;
}

void writing_text(writing *w, const char *text) {
    writing_bytes(w, text, strlen(text));
}

const char *writing_done(writing *w) {
    writing_bytes(w, "", 1);
    w->count--;
    return w->items;
}
