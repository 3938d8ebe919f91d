/* What a piece looks like, for the quote: the outlines of its own recipe. */
#include "takeoff/inside.h"

#include <math.h>

static const int64_t STEEPEST = 85000000; /* udeg from upright */

static bool above_zero(takeoff_making *making, const sb_formula *formula, sb_length length) {
    if (length.nm > 0)
        return true;
    if (!making->walk->tried)
        sb_error(making->walk->run, sb_formula_place(formula),
                 "an outline that is seen is more than nothing wide and high");
    return false;
}

static bool take_lean(takeoff_making *making, const sb_recipe_outline *line, sb_scope *scope,
                      sb_outline *out) {
    sb_angle lean;
    if (!line->lean)
        return true;
    if (!sb_formula_angle(making->walk->run, line->lean, scope, &lean))
        return false;
    if (lean.udeg < -STEEPEST || lean.udeg > STEEPEST) {
        sb_error(making->walk->run, sb_formula_place(line->lean),
                 "an outline leans at most 85 deg from upright");
        return false;
    }
    double top = (double)out->height.nm * tan((double)lean.udeg * 1e-6 * 3.14159265358979323846 / 180);
    out->lean.nm = llround(top);
    return true;
}

static bool see(takeoff_making *making, const sb_recipe_outline *line, sb_scope *scope) {
    sb_run *run = making->walk->run;
    sb_outline seen = {.side = line->side};
    bool good = sb_formula_length(run, line->width, scope, &seen.width);
    good = sb_formula_length(run, line->height, scope, &seen.height) && good;
    good = sb_formula_length(run, line->x, scope, &seen.x) && good;
    good = sb_formula_length(run, line->y, scope, &seen.y) && good;
    if (!good || !above_zero(making, line->width, seen.width) ||
        !above_zero(making, line->height, seen.height) || !take_lean(making, line, scope, &seen))
        return false;
    SB_PUSH(run->pool, making->walk->takeoff->pieces.items[making->piece].outlines, seen);
    return true;
}

/* After a mistake further turns would only repeat it. */
void takeoff_outlines(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->outlines.count; i++) {
        const sb_recipe_outline *line = &making->recipe->outlines.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        for (size_t j = 0; j < turns.count && see(making, line, turns.items[j]->scope); j++)
            continue;
    }
}
