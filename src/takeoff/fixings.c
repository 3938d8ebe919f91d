/* Screws, bolts, hinges, film: so many per piece, part, joint or batch. */
#include "takeoff/inside.h"

static void use(takeoff_making *making, const sb_recipe_fixing *line, const takeoff_turns *turns) {
    int64_t each, amount = 0;
    const sb_stock *stock =
        takeoff_stock(making, line->stock, TAKEOFF_FOR_FIXINGS, "a fixing", line->guard.place);
    for (size_t i = 0; i < turns->count; i++) {
        if (!sb_formula_count(making->walk->run, line->count, turns->items[i]->scope, &each))
            return;
        int64_t basis = takeoff_basis(making, line->basis, line->of, turns->items[i]);
        amount = sb_add(amount, sb_mul(each, basis));
    }
    sb_usage usage = {.stock = stock, .amount = amount, .net = amount, .place = line->guard.place};
    if (stock)
        takeoff_use(making, line->basis == SB_PER_THE_BATCH, usage);
}

void takeoff_fixings(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->fixings.count; i++) {
        const sb_recipe_fixing *line = &making->recipe->fixings.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        if (turns.count > 0)
            use(making, line, &turns);
    }
}
