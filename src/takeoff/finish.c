/* Oil and paint: area times coats over coverage, in millilitres, rounded up once for all pieces of a kind. */
#include "takeoff/inside.h"

/* What a line asks for: coats times the area they cover, and how many lie one over the other. */
typedef struct coating {
    sb_area area;
    int64_t coats;
} coating;

static bool coating_of(takeoff_making *making, const sb_recipe_finish *line, const takeoff_turns *turns,
                       coating *out) {
    *out = (coating){{0}, 0};
    for (size_t i = 0; i < turns->count; i++) {
        int64_t coats = 1;
        if (line->coats && !sb_formula_count(making->walk->run, line->coats, turns->items[i]->scope, &coats))
            return false;
        if (coats == 0) {
            sb_error(making->walk->run, line->guard.place,
                     "no coats: expected at least one; `when` leaves a finish out");
            return false;
        }
        sb_area here =
            takeoff_surface(making, line->surface, line->parts.items, line->parts.count, turns->items[i]);
        out->area.um2 = sb_add(out->area.um2, sb_mul(here.um2, coats));
        out->coats = coats > out->coats ? coats : out->coats;
    }
    return true;
}

static void use(takeoff_making *making, const sb_recipe_finish *line, const takeoff_turns *turns) {
    coating made;
    sb_place at = line->guard.place;
    const sb_stock *stock = takeoff_stock(making, line->stock, TAKEOFF_FOR_FINISHES, "a finish", at);
    if (!coating_of(making, line, turns, &made) || !stock)
        return;
    if (stock->coverage.um2 <= 0) {
        sb_error(making->walk->run, at, "nothing is known of how far %s goes: its `coverage` is missing",
                 stock->id);
        return;
    }
    int64_t amount = sb_mul_div_up(made.area.um2, 1, stock->coverage.um2);
    sb_usage usage = {.stock = stock, .amount = amount, .net = amount, .coats = made.coats, .place = at};
    takeoff_use(making, false, usage);
}

void takeoff_finishes(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->finishes.count; i++) {
        const sb_recipe_finish *line = &making->recipe->finishes.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        if (turns.count > 0)
            use(making, line, &turns);
    }
}
