/* Sizes of parts: on the shop's step, rounded up; above nothing and within what a workshop can hold. */
#include "takeoff/inside.h"

static const sb_length LONGEST = {INT64_C(100000000000)}; /* 100 m */

sb_length takeoff_on_step(const takeoff_walk *walk, sb_length length) {
    sb_length step = walk->shop->settings.own_style.step;
    return step.nm > 0 ? sb_length_up_to_step(length, step) : length;
}

sb_style sb_style_unrounded(const sb_style *style) {
    sb_style unrounded = *style;
    unrounded.step.nm = style->units == SB_UNITS_IN ? SB_NM_PER_INCH / 64 : SB_NM_PER_MM / 1000;
    return unrounded;
}

const char *takeoff_length_text(const takeoff_walk *walk, sb_length length) {
    return sb_write_length_unit(walk->run, length, &walk->shop->settings.style);
}

static bool tell(takeoff_parting *parting, const sb_formula *formula, const char *what, const char *why) {
    takeoff_walk *walk = parting->making->walk;
    const char *worked = sb_formula_worked(walk->run, formula, parting->scope, &walk->shop->settings.style);
    sb_error(walk->run, sb_formula_place(formula), "the %s of %s is %s: %s", what, parting->line->name,
             worked, why);
    return false;
}

static bool raw_size(takeoff_parting *parting, const sb_formula *formula, const char *what, sb_length *out) {
    if (!sb_formula_length(parting->making->walk->run, formula, parting->scope, out))
        return false;
    if (out->nm <= 0)
        return tell(parting, formula, what, "expected more than nothing");
    if (out->nm > LONGEST.nm)
        return tell(parting, formula, what, "expected at most 100 m");
    return true;
}

bool takeoff_size(takeoff_parting *parting, const sb_formula *formula, const char *what, sb_length *out) {
    bool good = raw_size(parting, formula, what, out);
    *out = takeoff_on_step(parting->making->walk, *out);
    return good;
}

bool takeoff_width(takeoff_parting *parting, const sb_formula *formula, sb_length full, sb_length *out) {
    bool good = raw_size(parting, formula, "width", out);
    sb_length stepped = takeoff_on_step(parting->making->walk, *out);
    *out = out->nm <= full.nm && stepped.nm > full.nm ? full : stepped;
    return good;
}

bool takeoff_extra(takeoff_parting *parting, const sb_formula *formula, const char *what, sb_length *out) {
    out->nm = 0;
    if (!formula)
        return true;
    if (!sb_formula_length(parting->making->walk->run, formula, parting->scope, out))
        return false;
    if (out->nm < 0)
        return tell(parting, formula, what, "expected nothing or more");
    if (out->nm > LONGEST.nm)
        return tell(parting, formula, what, "expected at most 100 m");
    return true;
}
