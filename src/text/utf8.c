#include "text/utf8.h"

#include <string.h>

/* Shortest form only, no surrogates, nothing above U+10FFFF (RFC 3629). */
size_t utf8_next(const char *bytes, size_t size, uint32_t *code) {
    static const uint32_t least[5] = {0, 0, 0x80, 0x800, 0x10000};
    if (size == 0)
        return 0;
    unsigned char first = (unsigned char)bytes[0];
    size_t length = first < 0x80   ? 1
                    : first < 0xC2 ? 0
                    : first < 0xE0 ? 2
                    : first < 0xF0 ? 3
                    : first < 0xF5 ? 4
                                   : 0;
    if (length == 0 || length > size)
        return 0;
    uint32_t value = length == 1 ? first : first & (0x7Fu >> length);
    for (size_t i = 1; i < length; i++) {
        unsigned char next = (unsigned char)bytes[i];
        if ((next & 0xC0) != 0x80)
            return 0;
        value = value << 6 | (next & 0x3F);
    }
    if (value < least[length] || value > 0x10FFFF || (value >= 0xD800 && value <= 0xDFFF))
        return 0;
    if (code)
        *code = value;
    return length;
}

size_t utf8_first_wrong(const char *bytes, size_t size) {
    size_t at = 0;
    while (at < size) {
        size_t length = utf8_next(bytes + at, size - at, NULL);
        if (length == 0)
            break;
        at += length;
    }
    return at;
}

size_t utf8_count(const char *bytes, size_t size) {
    size_t count = 0;
    for (size_t at = 0; at < size; count++) {
        size_t length = utf8_next(bytes + at, size - at, NULL);
        at += length ? length : 1;
    }
    return count;
}

size_t utf8_blank(const char *bytes, size_t size) {
    static const char *const blanks[] = {" ", "\t", "\xC2\xA0", "\xE2\x80\x89", "\xE2\x80\xAF"};
    for (size_t i = 0; i < sizeof blanks / sizeof *blanks; i++) {
        size_t length = strlen(blanks[i]);
        if (length <= size && memcmp(bytes, blanks[i], length) == 0)
            return length;
    }
    return 0;
}

/* Length of the blank that ends just before `end`. */
static size_t blank_before(const char *text, size_t start, size_t end) {
    for (size_t length = 1; length <= 3 && length <= end - start; length++)
        if (utf8_blank(text + end - length, length) == length)
            return length;
    return 0;
}

void utf8_trim(const char *text, size_t *start, size_t *end) {
    size_t length;
    while ((length = utf8_blank(text + *start, *end - *start)) > 0)
        *start += length;
    while ((length = blank_before(text, *start, *end)) > 0)
        *end -= length;
}
