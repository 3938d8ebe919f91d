#include "writers/bytes.h"

#include <string.h>

void bytes_add(sb_run *run, bytes *to, const char *from, size_t size) {
    for (size_t i = 0; i < size; i++)
        SB_PUSH(run->pool, *to, from[i]);
}

void bytes_add_text(sb_run *run, bytes *to, const char *text) {
    bytes_add(run, to, text, strlen(text));
}

void bytes_repeat(sb_run *run, bytes *to, char c, size_t count) {
    for (size_t i = 0; i < count; i++)
        SB_PUSH(run->pool, *to, c);
}

const char *bytes_end(sb_run *run, bytes *of) {
    SB_PUSH(run->pool, *of, '\0');
    of->count--;
    return of->items;
}
