/* Reading the ends of a part: square | mitre D | bevel D | mitre D bevel E. */
#include <string.h>

#include "sawbill/cutting.h"

#define STEEPEST 89000000 /* [millionths of a degree] */

typedef struct reading {
    sb_run *run;
    sb_place at;
    bool decimal_comma;
    const char *rest;
} reading;

static bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

static const char *next_word(reading *r) {
    const char *start = r->rest;
    while (is_blank(*start))
        start++;
    const char *end = start;
    while (*end && !is_blank(*end))
        end++;
    r->rest = end;
    return sb_pool_copy(r->run->pool, start, (size_t)(end - start));
}

/* What stands before the next of the two words: an angle may hold blanks ("22 deg 30 min"). */
static const char *up_to_word(reading *r) {
    const char *start = r->rest, *end = start;
    while (*end && strncmp(end, "mitre", 5) != 0 && strncmp(end, "bevel", 5) != 0)
        end++;
    r->rest = end;
    while (is_blank(*start))
        start++;
    while (end > start && is_blank(end[-1]))
        end--;
    return sb_pool_copy(r->run->pool, start, (size_t)(end - start));
}

static bool read_angle(reading *r, const char *what, sb_angle *out) {
    const char *text = up_to_word(r);
    bool minus = *text == '-';
    text += *text == '-' || *text == '+';
    if (*text == '\0') {
        sb_error(r->run, r->at, "expected an angle after \"%s\", in degrees from square", what);
        return false;
    }
    if (!sb_read_angle(r->run, text, r->at, r->decimal_comma, out))
        return false;
    if (out->udeg < 0 || out->udeg > STEEPEST) {
        sb_error(r->run, r->at, "a %s is counted from square and is less than 89 degrees", what);
        return false;
    }
    out->udeg = minus ? -out->udeg : out->udeg;
    return true;
}

static bool read_one(reading *r, const char *word, bool *told, sb_angle *out) {
    if (*told) {
        sb_error(r->run, r->at, "\"%s\" stands twice", word);
        return false;
    }
    *told = true;
    return read_angle(r, word, out);
}

bool sb_cut_end_read(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_cut_end *out) {
    static const char *const words[] = {"square", "mitre", "bevel"};
    reading r = {run, at, decimal_comma, text};
    bool mitre = false, bevel = false;
    *out = (sb_cut_end){{0}, {0}};
    const char *word = next_word(&r);
    if (*word == '\0' || (strcmp(word, "square") == 0 && *next_word(&r) == '\0'))
        return true;
    for (; *word; word = next_word(&r)) {
        bool read = true;
        if (strcmp(word, "mitre") == 0)
            read = read_one(&r, word, &mitre, &out->mitre);
        else if (strcmp(word, "bevel") == 0)
            read = read_one(&r, word, &bevel, &out->bevel);
        else {
            sb_error_unknown(run, at, "end", word, words, sizeof words / sizeof *words);
            read = false;
        }
        if (!read)
            return false;
    }
    return true;
}
