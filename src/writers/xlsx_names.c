/* Names and texts as the format allows them (Office Open XML, ECMA-376, and the limits that spreadsheet
 * programs publish). */
#include "writers/xlsx.h"

#include "text/utf8.h"
#include "writers/bytes.h"

#include <string.h>
#include <strings.h>

enum {
    NAME_MOST = 31,
    TEXT_MOST = 32767,
    LINES_MOST = 253
};

/* Bytes of the longest start of the text that has at most `most` UTF-16 units: that is how the limits count.
 */
static size_t utf16_prefix(const char *text, size_t most) {
    size_t size = strlen(text), at = 0, units = 0;
    while (at < size) {
        uint32_t code = 0;
        size_t length = utf8_next(text + at, size - at, &code);
        units += code > 0xFFFF ? 2 : 1;
        if (units > most)
            break;
        at += length ? length : 1;
    }
    return at;
}

/* ---- sheets ----------------------------------------------------------------------------------------- */

static bool name_taken(const char *name, const xlsx_sheets *before) {
    for (size_t i = 0; i < before->count; i++)
        if (strcasecmp(before->items[i].name, name) == 0)
            return true;
    return strcasecmp(name, "History") == 0;
}

/* No blanks at either end, nothing that formulas or paths use, not empty. A single quote would be doubled in
 * formulas, which not every program reads, so it becomes a typographic one. */
static const char *plain_name(sb_run *run, const char *title) {
    bytes out = {0};
    for (const char *at = clean_text(run, title); *at; at++) {
        if (*at == '\'')
            bytes_add_text(run, &out, "\xE2\x80\x99");
        else if (strchr("\\/*?:[]", *at))
            bytes_add_text(run, &out, "-");
        else
            bytes_add(run, &out, *at == '\n' ? " " : at, 1);
    }
    const char *name = bytes_end(run, &out);
    name += strspn(name, " ");
    return name[0] ? name : "Sheet";
}

/* So much of the name as leaves room for the tail, without a blank at its end. */
static const char *fitted(sb_run *run, const char *name, const char *tail) {
    size_t length = utf16_prefix(name, NAME_MOST - strlen(tail));
    while (name[length - 1] == ' ')
        length--;
    return sb_pool_print(run->pool, "%.*s%s", (int)length, name, tail);
}

const char *xlsx_sheet_name(sb_run *run, const char *title, const xlsx_sheets *before) {
    const char *plain = plain_name(run, title), *name = fitted(run, plain, "");
    for (int number = 2; name_taken(name, before); number++)
        name = fitted(run, plain, sb_pool_print(run->pool, " %d", number));
    return name;
}

/* ---- cells -------------------------------------------------------------------------------------------- */

#define LETTERS "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ"

/* AB12 or R1C1 would be an address. */
static bool like_address(const char *name) {
    size_t letters = strspn(name, LETTERS);
    const char *digits = name + letters;
    bool ends = strspn(digits, "0123456789") == strlen(digits);
    return (letters <= 3 && ends) || (letters == 1 && strchr("rRcC", name[0]));
}

static bool cell_name_taken(const xlsx *x, const char *name) {
    for (size_t i = 0; i < x->cell_names.count; i++)
        if (strcasecmp(x->cell_names.items[i], name) == 0)
            return true;
    return false;
}

const char *xlsx_cell_name(xlsx *x, const char *name) {
    bool plain_start = name[0] && strchr(LETTERS "_", name[0]);
    char *plain = sb_pool_print(x->run->pool, "%s%s", plain_start ? "" : "_", name);
    for (char *at = plain; *at; at++)
        if (!strchr(LETTERS "_0123456789", *at))
            *at = '_';
    const char *unique = like_address(plain) ? sb_pool_print(x->run->pool, "%s_", plain) : plain;
    for (int number = 2; cell_name_taken(x, unique); number++)
        unique = sb_pool_print(x->run->pool, "%s_%d", plain, number);
    SB_PUSH(x->run->pool, x->cell_names, unique);
    return unique;
}

/* ---- texts ------------------------------------------------------------------------------------------ */

static const char *join_lines_after(sb_run *run, const char *text, int most) {
    char *joined = sb_pool_print(run->pool, "%s", text);
    for (char *at = joined; *at; at++)
        if (*at == '\n' && most-- <= 0)
            *at = ' ';
    return joined;
}

/* Readers take _x0041_ for the character with that number, so its first _ is written as one itself. */
static const char *escape_numbers(sb_run *run, const char *text) {
    if (!strstr(text, "_x"))
        return text;
    bytes out = {0};
    for (const char *at = text; *at; at++) {
        bool number =
            at[0] == '_' && at[1] == 'x' && strspn(at + 2, "0123456789abcdefABCDEF") >= 4 && at[6] == '_';
        bytes_add_text(run, &out, number ? "_x005F_" : "");
        bytes_add(run, &out, number ? "" : at, number ? 0 : 1);
    }
    return bytes_end(run, &out);
}

const char *xlsx_text(sb_run *run, const char *text, sb_place place) {
    const char *clean = clean_text(run, text);
    size_t size = utf16_prefix(clean, TEXT_MOST);
    if (clean[size]) {
        sb_advise(run, place, "a text was cut after %d characters, the most that a spreadsheet cell holds",
                  TEXT_MOST);
        clean = sb_pool_copy(run->pool, clean, size);
    }
    clean = join_lines_after(run, clean, LINES_MOST);
    const char *escaped = escape_numbers(run, clean);
    return escaped[utf16_prefix(escaped, TEXT_MOST)] ? clean : escaped;
}
