/* UTF-8, as far as this room needs it. */
#ifndef TEXT_UTF8_H
#define TEXT_UTF8_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

/* Length of the character at `bytes` (1 to 4), 0 when it is not UTF-8. `*code` may be NULL. */
size_t utf8_next(const char *bytes, size_t size, uint32_t *code);
/* Offset of the first byte that is not UTF-8; `size` when all is well. */
size_t utf8_first_wrong(const char *bytes, size_t size);
/* How many characters; a byte that is none counts as one. */
size_t utf8_count(const char *bytes, size_t size);
/* Length of the blank at `bytes`: space, tab, no-break and thin spaces; 0 when there is none. */
size_t utf8_blank(const char *bytes, size_t size);

/* Moves *start and *end inwards over blanks. */
void utf8_trim(const char *text, size_t *start, size_t *end);

#endif
