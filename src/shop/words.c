/* The words of stock kinds and of what drives an operation. */
#include "shop/read.h"

#include <string.h>

static const char *const kind_words[] = {"board",  "sheet", "volume", "fixing",
                                         "finish", "glue",  "edging", "other"};
static const char *const kind_units[] = {"", "", "", "", "ml", "mg", "mm", ""};
static const char *const driver_words[SB_DRIVER_COUNT] = {
    "board",  "change",    "stop",  "cut", "hard-cut", "rip",  "sheet", "fence",
    "return", "sheet-cut", "joint", "m",   "m2",       "part", "piece", "batch",
    "each"};

#define COUNT(words) (sizeof(words) / sizeof *(words))

static bool find(const char *const *words, size_t count, const char *word, size_t *out) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(words[i], word) == 0) {
            *out = i;
            return true;
        }
    return false;
}

const char *sb_stock_kind_word(sb_stock_kind kind) {
    return kind_words[kind];
}

const char *sb_stock_kind_unit(sb_stock_kind kind) {
    return kind_units[kind];
}

const char *sb_driver_word(sb_driver driver) {
    return driver_words[driver];
}

bool shop_kind_find(const char *word, sb_stock_kind *out) {
    size_t index;
    if (!find(kind_words, COUNT(kind_words), word, &index))
        return false;
    *out = (sb_stock_kind)index;
    return true;
}

bool shop_driver_find(const char *word, sb_driver *out) {
    size_t index;
    if (!find(driver_words, COUNT(driver_words), word, &index))
        return false;
    *out = (sb_driver)index;
    return true;
}

bool shop_driver_planned(sb_driver driver) {
    return driver <= SB_BY_SHEET_CUT;
}

void shop_unknown_kind(sb_run *run, sb_place at, const char *word) {
    sb_error_unknown(run, at, "kind of stock", word, kind_words, COUNT(kind_words));
}

void shop_unknown_driver(sb_run *run, sb_place at, const char *word) {
    sb_error_unknown(run, at, "measure of work", word, driver_words, COUNT(driver_words));
}
