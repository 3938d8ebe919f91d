/* The names a recipe's formulas know: inputs, choices, derived values, and measures of the chosen stock. */
#include "takeoff/inside.h"

/* Derived values wait until they are asked for, so the order of lines does not matter. */
static void set_lets(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->lets.count; i++) {
        const sb_recipe_let *let = &making->recipe->lets.items[i];
        sb_scope_set_formula(making->walk->run, making->scope, let->name, let->formula);
    }
}

bool takeoff_open_scope(takeoff_making *making, const takeoff_givens *givens) {
    making->scope = sb_scope_new(making->walk->run, NULL);
    bool given = takeoff_set_inputs(making, givens);
    set_lets(making);
    bool stocked = takeoff_choose_stock(making, givens);
    return given && takeoff_check_ranges(making, givens) && stocked;
}
