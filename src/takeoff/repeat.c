/* Conditions and repetition. Every turn of a repeat has a scope of its own, in which its counter has a value. */
#include "takeoff/inside.h"

static bool holds(takeoff_making *making, const sb_formula *when, sb_scope *scope) {
    bool truth = false;
    return !when || (sb_formula_truth(making->walk->run, when, scope, &truth) && truth);
}

/* A counter may begin or end below zero; it is a whole number all the same. */
static bool limit_of(takeoff_making *making, const sb_formula *formula, sb_scope *scope, int64_t *out) {
    int64_t micro;
    if (!sb_formula_micro(making->walk->run, formula, scope, &micro))
        return false;
    *out = micro / 1000000;
    if (micro % 1000000 == 0)
        return true;
    sb_error(making->walk->run, sb_formula_place(formula),
             "a repeat counts in whole numbers: floor(...) or ceil(...) makes this one whole");
    return false;
}

static bool too_many(takeoff_making *making, const sb_recipe_loop *loop, size_t so_far, int64_t from,
                     int64_t to) {
    if (to < from || to - from < TAKEOFF_MOST_TURNS - (int64_t)so_far)
        return false;
    sb_error(making->walk->run, loop->guard.place, "%s takes more than %d turns in all", loop->name,
             TAKEOFF_MOST_TURNS);
    return true;
}

static takeoff_scopes turns_of(takeoff_making *making, const sb_recipe_loop *loop) {
    sb_run *run = making->walk->run;
    takeoff_scopes around = takeoff_where(making, &loop->guard), turns = {0};
    for (size_t i = 0; i < around.count; i++) {
        int64_t from, to;
        if (!limit_of(making, loop->from, around.items[i], &from) ||
            !limit_of(making, loop->to, around.items[i], &to) ||
            too_many(making, loop, turns.count, from, to))
            break;
        for (int64_t turn = from; turn <= to; turn++) {
            sb_scope *scope = sb_scope_new(run, around.items[i]);
            sb_scope_set(run, scope, loop->name, sb_value_count(turn));
            SB_PUSH(run->pool, turns, scope);
        }
    }
    return turns;
}

/* The statements of one repeat share its scopes. */
static takeoff_scopes known_turns(takeoff_making *making, const sb_recipe_loop *loop) {
    for (size_t i = 0; i < making->turns.count; i++)
        if (making->turns.items[i].loop == loop)
            return (takeoff_scopes){making->turns.items[i].scopes, making->turns.items[i].count, 0};
    takeoff_scopes turns = turns_of(making, loop);
    struct takeoff_turns entry = {loop, turns.items, turns.count};
    SB_PUSH(making->walk->run->pool, making->turns, entry);
    return turns;
}

takeoff_scopes takeoff_where(takeoff_making *making, const sb_recipe_guard *guard) {
    sb_scope *alone[1] = {making->scope};
    takeoff_scopes all = {alone, 1, 1}, where = {0};
    if (guard->loop)
        all = known_turns(making, guard->loop);
    for (size_t i = 0; i < all.count; i++)
        if (holds(making, guard->when, all.items[i]))
            SB_PUSH(making->walk->run->pool, where, all.items[i]);
    return where;
}
