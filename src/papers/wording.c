/* The wording of the customer's paper: `key : text`, one a line, in templates/wording-LANGUAGE.txt. */
#include "papers/wording.h"

#include <string.h>

static const char *const KEYS[] = {"quote",
                                   "reference",
                                   "revision",
                                   "date",
                                   "valid-until",
                                   "customer",
                                   "subject",
                                   "option",
                                   "options-intro",
                                   "option-choice",
                                   "piece",
                                   "size",
                                   "sizes-both",
                                   "sizes-rounded",
                                   "count",
                                   "unit-price",
                                   "unit-price-net",
                                   "unit-price-gross",
                                   "amount",
                                   "tax",
                                   "delivery",
                                   "net",
                                   "total",
                                   "total-gross",
                                   "deposit",
                                   "list-price",
                                   "discount",
                                   "discounted",
                                   "tax-included",
                                   "breaks",
                                   "breaks-note",
                                   "breaks-kinds",
                                   "breaks-count",
                                   "currency",
                                   "tax-on-total",
                                   "tax-by-line",
                                   "tax-inside",
                                   "tax-on-rates",
                                   "tax-rate",
                                   "tax-base",
                                   "supplement",
                                   "rest",
                                   "terms-stages",
                                   "views",
                                   "view-front",
                                   "view-side",
                                   "notes",
                                   "terms",
                                   "terms-validity",
                                   "terms-deposit",
                                   "terms-payment",
                                   "terms-wood",
                                   "terms-changes",
                                   "accept",
                                   "accept-text",
                                   "name",
                                   "place-date",
                                   "signature",
                                   "page",
                                   "of",
                                   "decimal-mark",
                                   "group-mark",
                                   "date-form",
                                   "months"};
enum {
    KEY_COUNT = sizeof KEYS / sizeof *KEYS
};

/* What a wording from before there were such things may do without: some things speak for themselves, the rest is in English. */
static const struct {
    const char *key, *text;
} SPARED[] = {
    {"revision", "Revision"},
    {"decimal-mark", ""}, /* then as the shop writes numbers */
    {"group-mark", ""},
    {"sizes-both", "We work to the sizes that stand first; those in brackets are rounded."},
    {"sizes-rounded", "Sizes are rounded to {step}; we work to the exact ones."},
    {"views", ""},
    {"view-front", ""},
    {"view-side", ""},
    {"breaks", ""},
    {"breaks-note", ""},
    {"breaks-kinds", "{pieces}; the other numbers in the same proportion."},
    {"breaks-count", ""},
    {"tax-on-rates",
     "Tax is worked out once for each rate, on the sum of its lines, and rounded to the last figure shown."},
    {"tax-rate", "Tax rate"},
    {"tax-base", "Without tax"},
    {"supplement", "Supplement for a small order"},
    {"rest", "Rest, payable on delivery"},
    {"terms-stages", "Payments are due as listed with the total."}};

struct sb_wording {
    const sb_source *source;
    const char *texts[KEY_COUNT]; /* NULL: not in the file */
};

static size_t index_of(const char *key) {
    size_t i = 0;
    while (i < KEY_COUNT && strcmp(KEYS[i], key) != 0)
        i++;
    return i;
}

static void take(sb_run *run, sb_wording *wording, const sb_statement *line) {
    size_t index = index_of(line->keyword.text);
    if (index == KEY_COUNT)
        sb_error_unknown(run, line->keyword.place, "key", line->keyword.text, KEYS, KEY_COUNT);
    else if (wording->texts[index])
        sb_error(run, line->keyword.place, "\"%s\" is here for the second time", line->keyword.text);
    else
        wording->texts[index] = sb_statement_text(run, line);
}

static void spare_words(sb_run *run, sb_wording *wording) {
    for (size_t i = 0; i < sizeof SPARED / sizeof *SPARED; i++) {
        const char **text = &wording->texts[index_of(SPARED[i].key)];
        if (*text)
            continue;
        *text = SPARED[i].text;
        sb_note(run, (sb_place){wording->source, 0, 0},
                **text ? "there is no line \"%s : ...\": where it is wanted, English words stand for it"
                       : "there is no line \"%s : ...\": what it is for stands without these words",
                SPARED[i].key);
    }
}

static void tell_missing(sb_run *run, const sb_wording *wording) {
    for (size_t i = 0; i < KEY_COUNT; i++)
        if (!wording->texts[i])
            sb_error(run, (sb_place){wording->source, 0, 0}, "a line \"%s : ...\" is expected and missing",
                     KEYS[i]);
}

const sb_wording *sb_wording_read(sb_run *run, const char *templates, const char *language) {
    const char *path = sb_pool_print(run->pool, "%s/wording-%s.txt", templates, language);
    const sb_source *source = sb_source_read(run, path);
    if (!source)
        return NULL;
    sb_wording *wording = SB_NEW(run->pool, sb_wording);
    wording->source = source;
    sb_statements lines = sb_statements_read(run, source);
    for (size_t i = 0; i < lines.count; i++)
        take(run, wording, &lines.items[i]);
    spare_words(run, wording);
    tell_missing(run, wording);
    return wording;
}

const char *sb_wording_text(sb_run *run, const sb_wording *wording, const char *key) {
    size_t index = index_of(key);
    if (index < KEY_COUNT && wording->texts[index])
        return wording->texts[index];
    if (index == KEY_COUNT)
        sb_bug(run, (sb_place){wording->source, 0, 0}, "\"%s\" is no key of a wording", key);
    return key; /* one that is missing was told when the file was read */
}

/* The text with the first "{slot}" replaced by the value. */
static const char *fill_slot(sb_run *run, const char *text, const char *slot, const char *value) {
    const char *mark = sb_pool_print(run->pool, "{%s}", slot), *at = strstr(text, mark);
    return at ? sb_pool_print(run->pool, "%.*s%s%s", (int)(at - text), text, value, at + strlen(mark)) : text;
}

const char *wording_fill(sb_run *run, const sb_wording *wording, const char *key, const char *slot,
                         const char *value) {
    return fill_slot(run, sb_wording_text(run, wording, key), slot, value);
}

/* ---- dates ----------------------------------------------------------------------------------------------- */

/* The month's name out of "January, February, ..."; its number where there are too few. */
static const char *month_name(sb_run *run, const char *names, int month) {
    for (int i = 1; i < month; i++) {
        const char *comma = strchr(names, ',');
        if (!comma)
            return sb_pool_print(run->pool, "%d", month);
        names = comma + 1;
    }
    names += strspn(names, " ");
    return sb_pool_copy(run->pool, names, strcspn(names, ","));
}

const char *wording_date(sb_run *run, const sb_wording *wording, sb_date date) {
    const char *text = sb_wording_text(run, wording, "date-form");
    text = fill_slot(run, text, "day", sb_pool_print(run->pool, "%d", date.day));
    text = fill_slot(run, text, "dd", sb_pool_print(run->pool, "%02d", date.day));
    text = fill_slot(run, text, "mm", sb_pool_print(run->pool, "%02d", date.month));
    text =
        fill_slot(run, text, "month", month_name(run, sb_wording_text(run, wording, "months"), date.month));
    return fill_slot(run, text, "year", sb_pool_print(run->pool, "%04d", date.year));
}
