/* The word the user may have meant. */
#include "sawbill/text.h"
#include "text/utf8.h"
#include "text/writing.h"

#include <string.h>

enum {
    LONGEST = 64,
    LISTED = 8
};

typedef struct letters {
    uint32_t code[LONGEST];
    size_t count; /* 0 when the word is too long to compare */
} letters;

static letters spell(const char *word) {
    letters l = {.count = 0};
    size_t size = strlen(word);
    for (size_t at = 0; at < size;) {
        uint32_t code = 0;
        size_t length = utf8_next(word + at, size - at, &code);
        if (l.count == LONGEST)
            return (letters){.count = 0};
        l.code[l.count++] = code >= 'A' && code <= 'Z' ? code + 32 : code;
        at += length ? length : 1;
    }
    return l;
}

static size_t least(size_t a, size_t b) {
    return a < b ? a : b;
}

/* Edit distance where inserting, dropping, changing a letter or swapping two neighbours counts one
 * (optimal string alignment), kept in three rows. */
static size_t distance(const letters *a, const letters *b) {
    size_t rows[3][LONGEST + 1];
    size_t *before = rows[0], *last = rows[1], *now = rows[2];
    for (size_t j = 0; j <= b->count; j++)
        last[j] = j;
    for (size_t i = 1; i <= a->count; i++) {
        now[0] = i;
        for (size_t j = 1; j <= b->count; j++) {
            size_t change = last[j - 1] + (a->code[i - 1] != b->code[j - 1]);
            now[j] = least(change, least(last[j], now[j - 1]) + 1);
            if (i > 1 && j > 1 && a->code[i - 1] == b->code[j - 2] && a->code[i - 2] == b->code[j - 1])
                now[j] = least(now[j], before[j - 2] + 1);
        }
        size_t *oldest = before;
        before = last, last = now, now = oldest;
    }
    return last[b->count];
}

/* About one slip in three letters may be a typing error; more is another word. */
static size_t slips_allowed(size_t letters_in_longer) {
    return (letters_in_longer + 1) / 3;
}

static bool begins(const char *word, const char *beginning) {
    return strlen(beginning) >= 3 && strncmp(word, beginning, strlen(beginning)) == 0;
}

const char *sb_nearest(const char *word, const char *const *known, size_t count) {
    const char *best = NULL, *longer = NULL;
    size_t best_distance = 0;
    letters asked = spell(word);
    for (size_t i = 0; i < count; i++) {
        letters candidate = spell(known[i]);
        if (!longer && begins(known[i], word))
            longer = known[i];
        if (asked.count == 0 || candidate.count == 0)
            continue;
        size_t d = distance(&asked, &candidate);
        size_t allowed = slips_allowed(asked.count > candidate.count ? asked.count : candidate.count);
        if (d <= allowed && (!best || d < best_distance))
            best = known[i], best_distance = d;
    }
    return best ? best : longer;
}

static bool stands_before(const char *const *known, size_t index) {
    for (size_t i = 0; i < index; i++)
        if (strcmp(known[i], known[index]) == 0)
            return true;
    return false;
}

/* "one, two, three" up to a handful, each once */
static const char *list_known(sb_run *run, const char *const *known, size_t count) {
    writing w = {.pool = run->pool};
    size_t listed = 0;
    for (size_t i = 0; i < count && listed <= LISTED; i++) {
        if (stands_before(known, i))
            continue;
        writing_text(&w, listed ? ", " : "");
        writing_text(&w, listed < LISTED ? known[i] : "...");
        listed++;
    }
    return writing_done(&w);
}

void sb_error_unknown(sb_run *run, sb_place at, const char *what, const char *word, const char *const *known,
                      size_t count) {
    const char *near = sb_nearest(word, known, count);
    if (near)
        sb_error(run, at, "unknown %s \"%s\"; did you mean \"%s\"?", what, word, near);
    else if (count == 0)
        sb_error(run, at, "unknown %s \"%s\"; none is known here", what, word);
    else
        sb_error(run, at, "unknown %s \"%s\"; known: %s", what, word, list_known(run, known, count));
}
