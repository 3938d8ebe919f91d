/* Glue for joints: area times spread, in milligrams. Glued and laminated parts bring theirs along. */
#include "takeoff/inside.h"

static const int64_t UM2_PER_M2 = 1000000000000;

static bool area_of(takeoff_making *making, const sb_recipe_glue *line, const takeoff_turns *turns,
                    sb_area *area) {
    area->um2 = 0;
    for (size_t i = 0; i < turns->count; i++) {
        sb_area here;
        if (!sb_formula_area(making->walk->run, line->area, turns->items[i]->scope, &here))
            return false;
        int64_t basis = takeoff_basis(making, line->basis, line->of, turns->items[i]);
        area->um2 = sb_add(area->um2, sb_mul(here.um2, basis));
    }
    if (area->um2 >= 0)
        return true;
    sb_error(making->walk->run, sb_formula_place(line->area), "this area is less than nothing");
    return false;
}

static void use(takeoff_making *making, const sb_recipe_glue *line, const takeoff_turns *turns) {
    sb_area area;
    sb_place at = line->guard.place;
    const sb_stock *stock = takeoff_stock(making, line->stock, TAKEOFF_FOR_GLUE, "glue", at);
    if (!area_of(making, line, turns, &area) || !stock)
        return;
    int64_t amount = sb_mul_div_up(area.um2, stock->spread.mg, UM2_PER_M2);
    sb_usage usage = {.stock = stock, .amount = amount, .net = amount, .place = at};
    takeoff_use(making, line->basis == SB_PER_THE_BATCH, usage);
}

void takeoff_glues(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->glues.count; i++) {
        const sb_recipe_glue *line = &making->recipe->glues.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        if (turns.count > 0)
            use(making, line, &turns);
    }
}
