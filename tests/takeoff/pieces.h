/* Pieces made after the recipes that come with the project, and words to measure them with. The tests that use this
 * run in the project's folder. */
#ifndef TESTS_TAKEOFF_PIECES_H
#define TESTS_TAKEOFF_PIECES_H

#include "desk.h"

#include <math.h>

static const double PI = 3.14159265358979323846;

static const char *const recipe_names[] = {
    "trough-planter", "splayed-planter", "garden-bench", "dining-table", "shelf-unit",
    "workbench",      "ledged-gate",     "raised-bed",   "mitred-frame", "planter-seat"};
enum {
    RECIPES = sizeof recipe_names / sizeof *recipe_names
};

static inline double degrees(double radians) {
    return radians * 180 / PI;
}

static inline double radians(double degree) {
    return degree * PI / 180;
}

static inline void open_rates(desk *d, const char *rates) {
    d->shop = sb_shop_read(&d->run, rates);
    if (!d->shop || !sb_ok(&d->run))
        desk_fail(d, rates);
    d->book = sb_recipe_book_open(&d->run, "templates", false);
}

static inline const sb_takeoff *made(desk *d, const char *job) {
    open_rates(d, "rates");
    return takeoff(d, job);
}

static inline double mm(sb_length length) {
    return sb_length_mm(length);
}

static inline double mitre(sb_cut_end end) {
    return (double)end.mitre.udeg / 1e6;
}

static inline double bevel(sb_cut_end end) {
    return (double)end.bevel.udeg / 1e6;
}

/* Sizes are put up to half a millimetre, so a closing dimension may be off by that for every part in it. */
static inline void assert_close(double found, double wanted, double within) {
    if (fabs(found - wanted) > within)
        fail_msg("%.4f is not %.4f within %.4f", found, wanted, within);
}

static inline int64_t parts_named(const sb_takeoff *t, const char *name) {
    int64_t count = 0;
    for (size_t i = 0; i < t->parts.count; i++)
        if (strcmp(t->parts.items[i].name, name) == 0)
            count += t->parts.items[i].count;
    return count;
}

#endif
