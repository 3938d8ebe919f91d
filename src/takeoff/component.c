/* Recipes inside a recipe: their counts multiply, their paths grow. */
#include "takeoff/inside.h"

static takeoff_givens givens_of(takeoff_making *making, const sb_recipe_component *component,
                                sb_scope *scope) {
    sb_pool *pool = making->walk->run->pool;
    takeoff_givens givens = {.caller = making, .scope = scope};
    for (size_t i = 0; i < component->sets.count; i++)
        SB_PUSH(pool, givens.sets, component->sets.items[i]);
    for (size_t i = 0; i < component->stocks.count; i++)
        SB_PUSH(pool, givens.stocks, component->stocks.items[i]);
    return givens;
}

static bool count_of(takeoff_making *making, const sb_recipe_component *component, sb_scope *scope,
                     int64_t *count) {
    *count = 1;
    return !component->count || sb_formula_count(making->walk->run, component->count, scope, count);
}

static void make_inner(takeoff_making *making, const sb_recipe_component *component, const sb_recipe *recipe,
                       sb_scope *scope) {
    int64_t count;
    if (!count_of(making, component, scope, &count) || count == 0)
        return;
    takeoff_making inner = {.walk = making->walk,
                            .caller = making,
                            .recipe = recipe,
                            .piece = making->piece,
                            .per_piece = sb_mul(making->per_piece, count),
                            .count = sb_mul(making->count, count),
                            .depth = making->depth + 1};
    inner.path = sb_pool_print(making->walk->run->pool, "%s / %s", making->path, component->name);
    takeoff_givens givens = givens_of(making, component, scope);
    takeoff_make(&inner, &givens);
}

/* Told once: whoever comes next would only repeat it. */
static bool too_many(takeoff_walk *walk, const sb_recipe_component *component) {
    bool crowded = walk->takeoff->makings.count >= TAKEOFF_MOST_MAKINGS;
    if (crowded && !walk->crowded)
        sb_error(walk->run, component->guard.place,
                 "recipes inside recipes come to more than %d at work in one job", TAKEOFF_MOST_MAKINGS);
    walk->crowded = crowded;
    return crowded;
}

static bool too_deep(const takeoff_making *making, const sb_recipe_component *component) {
    if (making->depth < TAKEOFF_DEEPEST)
        return false;
    sb_error(making->walk->run, component->guard.place,
             "components stand inside each other more than %d deep", TAKEOFF_DEEPEST);
    return true;
}

static void make_component(takeoff_making *making, const sb_recipe_component *component) {
    sb_run *run = making->walk->run;
    takeoff_turns turns = takeoff_where(making, &component->guard);
    if (turns.count == 0)
        return;
    if (too_many(making->walk, component) || too_deep(making, component))
        return;
    const sb_recipe *recipe =
        sb_recipe_book_get(run, making->walk->book, component->recipe, component->guard.place);
    sb_notices_enter(run, component->guard.place, sb_pool_print(run->pool, "component %s", component->name));
    size_t errors = sb_notices_raised(run, SB_ERROR); /* the next turns would only repeat them */
    for (size_t i = 0; recipe && i < turns.count && sb_notices_raised(run, SB_ERROR) == errors; i++)
        make_inner(making, component, recipe, turns.items[i]->scope);
    sb_notices_leave(run);
}

void takeoff_components(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->components.count; i++)
        make_component(making, &making->recipe->components.items[i]);
}
