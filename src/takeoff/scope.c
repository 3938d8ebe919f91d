/* The names a recipe's formulas know: inputs, choices, derived values, and measures of the chosen stock. */
#include "takeoff/inside.h"

/* Derived values wait until they are asked for, so the order of lines does not matter. */
static void set_lets(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->lets.count; i++) {
        const sb_recipe_let *let = &making->recipe->lets.items[i];
        sb_scope_set_formula(making->walk->run, making->scope, let->name, let->formula);
    }
}

/* Where nothing is made, stock that does not suit is told all the same. */
static void tell_unsuited(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->parts.count; i++) {
        const sb_recipe_part *part = &making->recipe->parts.items[i];
        const sb_stock *stock = takeoff_role(making, part->role);
        if (stock)
            takeoff_suits(making->walk->run, part, stock);
    }
}

bool takeoff_open_scope(takeoff_making *making, const takeoff_givens *givens) {
    making->scope = sb_scope_new(making->walk->run, NULL);
    bool given = takeoff_set_inputs(making, givens);
    set_lets(making);
    bool stocked = takeoff_choose_stock(making, givens);
    bool ranged = takeoff_check_ranges(making, givens) && given;
    if (!ranged || !stocked)
        tell_unsuited(making);
    return ranged && stocked;
}
