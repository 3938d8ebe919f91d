#include "writers/glyphs.h"

#include "text/utf8.h"
#include "writers/bytes.h"

#include <string.h>

/* ---- which may be shown ----------------------------------------------------------------------------- */

static bool is_control(uint32_t code) {
    return code < 0x20 || (code >= 0x7F && code < 0xA0);
}

/* U+FFFE and U+FFFF are no characters of XML. */
static bool is_nothing(uint32_t code) {
    return code == 0xFFFE || code == 0xFFFF;
}

static void add_clean(sb_run *run, bytes *clean, const char *at, size_t length, uint32_t code) {
    if (length == 0 || is_nothing(code))
        bytes_add_text(run, clean, "\xEF\xBF\xBD");
    else if (code == '\r')
        bytes_add(run, clean, "\n", at[1] == '\n' ? 0 : 1);
    else if (code != '\n' && is_control(code))
        bytes_add(run, clean, " ", 1);
    else
        bytes_add(run, clean, at, length);
}

const char *clean_text(sb_run *run, const char *text) {
    bytes clean = {0};
    const char *end = text + strlen(text);
    while (text < end) {
        uint32_t code = 0;
        size_t length = utf8_next(text, (size_t)(end - text), &code);
        add_clean(run, &clean, text, length, code);
        text += length ? length : 1;
    }
    return bytes_end(run, &clean);
}

/* ---- how much room ---------------------------------------------------------------------------------- */

typedef struct code_range {
    uint32_t from, to;
} code_range;

/* Combining marks and invisible joiners (Unicode general categories Mn, Cf), those in common use. */
static const code_range zero_width[] = {{0x300, 0x36F},   {0x483, 0x489},   {0x591, 0x5BD},
                                        {0x64B, 0x65F},   {0x1AB0, 0x1AFF}, {0x1DC0, 0x1DFF},
                                        {0x200B, 0x200F}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F},
                                        {0xFE20, 0xFE2F}, {0xFEFF, 0xFEFF}};
/* East Asian Wide and Fullwidth (Unicode Standard Annex 11), by blocks. */
static const code_range double_width[] = {{0x1100, 0x115F}, {0x2E80, 0xA4CF},   {0xAC00, 0xD7A3},
                                          {0xF900, 0xFAFF}, {0xFE30, 0xFE6F},   {0xFF00, 0xFF60},
                                          {0xFFE0, 0xFFE6}, {0x1F300, 0x1FAFF}, {0x20000, 0x3FFFD}};

static bool in_ranges(uint32_t code, const code_range *ranges, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (code >= ranges[i].from && code <= ranges[i].to)
            return true;
    return false;
}

double glyph_columns(uint32_t code) {
    if (code < 0x300)
        return 1;
    if (in_ranges(code, zero_width, sizeof zero_width / sizeof *zero_width))
        return 0;
    return in_ranges(code, double_width, sizeof double_width / sizeof *double_width) ? 2 : 1;
}

/* In ten points of Arial or its equals, with a little to spare. */
double glyph_print(uint32_t code) {
    if (code >= 0x80)
        return code < 0x300 ? 1.15 : glyph_columns(code) * 1.15;
    if (strchr("ijl.,:;'|!", (int)code))
        return 0.46;
    if (strchr(" ()[]-/ftr\"", (int)code))
        return 0.57;
    if (strchr("mwMW@%", (int)code))
        return 1.58;
    return code >= 'A' && code <= 'Z' ? 1.28 : 1.05;
}

/* Steps over one character of clean text. */
static double step(const char **at, const char *end, glyph_measure *measure) {
    uint32_t code = 0xFFFD;
    size_t length = utf8_next(*at, (size_t)(end - *at), &code);
    *at += length ? length : 1;
    return measure(code);
}

double text_room(const char *text, size_t size, glyph_measure *measure) {
    double room = 0;
    for (const char *at = text, *end = text + size; at < end;)
        room += step(&at, end, measure);
    return room;
}

static double widest(const char *text, const char *separators, glyph_measure *measure) {
    double most = 0;
    while (*text) {
        size_t size = strcspn(text, separators);
        double room = text_room(text, size, measure);
        most = room > most ? room : most;
        text += size + (text[size] != '\0');
    }
    return most;
}

double word_room(const char *text, glyph_measure *measure) {
    return widest(text, " \n", measure);
}

double line_room(const char *text, glyph_measure *measure) {
    return widest(text, "\n", measure);
}

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static bool ends_number(char c) {
    return is_digit(c) || c == '"';
}

/* Both blanks of "20 x 95" and of "4 x leg". */
static bool is_times(const char *text, const char *at) {
    if (at[1] == 'x' && at[2] == ' ')
        return ends_number(at[-1]);
    return at - text >= 3 && at[-1] == 'x' && at[-2] == ' ' && ends_number(at[-3]);
}

/* "3 mm", "5 %", "1 683.00", "7 1/2"; both blanks of "20 x 95". */
bool blank_is_bound(const char *text, const char *at) {
    size_t digits = strspn(at + 1, "0123456789");
    if (*at != ' ' || at == text)
        return false;
    if (is_times(text, at))
        return true;
    if (!is_digit(at[-1]))
        return false;
    bool unit = at[1] == 'm' && at[2] == 'm' && !((at[3] >= 'a' && at[3] <= 'z') || is_digit(at[3]));
    return unit || at[1] == '%' || digits == 3 || (digits > 0 && at[1 + digits] == '/');
}

/* ---- lines ------------------------------------------------------------------------------------------ */

/* Where the line that starts at `text` ends: before the last blank that fits, else before the character
 * that does not fit; one character always does. */
static const char *line_end(const char *text, const char *end, double limit, glyph_measure *measure) {
    const char *blank = NULL, *bound = NULL, *at = text;
    double room = 0;
    while (at < end) {
        const char *here = at;
        bool is_blank = *at == ' ';
        room += step(&at, end, measure);
        if (is_blank && here > text && here[-1] != ' ')
            *(blank_is_bound(text, here) ? &bound : &blank) = here;
        if (room > limit && !is_blank)
            return blank ? blank : bound ? bound : here > text ? here : at;
    }
    return end;
}

static void wrap_paragraph(sb_run *run, text_lines *lines, const char *at, size_t size, double limit,
                           glyph_measure *measure) {
    const char *end = at + size;
    while (end > at && end[-1] == ' ')
        end--;
    do {
        const char *to = line_end(at, end, limit, measure);
        SB_PUSH(run->pool, *lines, ((text_line){at, (size_t)(to - at)}));
        for (at = to; at < end && *at == ' ';)
            at++;
    } while (at < end);
}

text_lines wrap_text(sb_run *run, const char *text, double limit, glyph_measure *measure) {
    text_lines lines = {0};
    for (;;) {
        size_t size = strcspn(text, "\n");
        wrap_paragraph(run, &lines, text, size, limit, measure);
        if (!text[size])
            return lines;
        text += size + 1;
    }
}
