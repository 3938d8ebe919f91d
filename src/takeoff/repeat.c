/* Conditions and repetition. Every turn of a repeat has a scope of its own, in which its counter has a value. */
#include "takeoff/inside.h"

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

static const takeoff_turn *new_turn(sb_run *run, const sb_recipe_loop *loop, const takeoff_turn *around,
                                    int64_t number) {
    takeoff_turn *turn = SB_NEW(run->pool, takeoff_turn);
    *turn = (takeoff_turn){loop, around, sb_scope_new(run, around->scope)};
    sb_scope_set(run, turn->scope, loop->name, sb_value_count(number));
    return turn;
}

static takeoff_turns turns_of(takeoff_making *making, const sb_recipe_loop *loop) {
    sb_run *run = making->walk->run;
    takeoff_turns around = takeoff_where(making, &loop->guard), turns = {0};
    for (size_t i = 0; i < around.count; i++) {
        int64_t from, to;
        if (!limit_of(making, loop->from, around.items[i]->scope, &from) ||
            !limit_of(making, loop->to, around.items[i]->scope, &to) ||
            too_many(making, loop, turns.count, from, to))
            break;
        for (int64_t number = from; number <= to; number++)
            SB_PUSH(run->pool, turns, new_turn(run, loop, around.items[i], number));
    }
    return turns;
}

/* The statements of one repeat share its turns. */
static takeoff_turns known_turns(takeoff_making *making, const sb_recipe_loop *loop) {
    for (size_t i = 0; i < making->repeats.count; i++)
        if (making->repeats.items[i].loop == loop)
            return making->repeats.items[i].turns;
    struct takeoff_repeat repeat = {loop, turns_of(making, loop)};
    SB_PUSH(making->walk->run->pool, making->repeats, repeat);
    return repeat.turns;
}

static takeoff_turns once(takeoff_making *making) {
    sb_pool *pool = making->walk->run->pool;
    takeoff_turn *turn = SB_NEW(pool, takeoff_turn);
    takeoff_turns alone = {0};
    turn->scope = making->scope;
    SB_PUSH(pool, alone, turn);
    return alone;
}

/* A condition that cannot be worked out is told in one turn only. */
takeoff_turns takeoff_where(takeoff_making *making, const sb_recipe_guard *guard) {
    takeoff_turns all = guard->loop ? known_turns(making, guard->loop) : once(making), where = {0};
    for (size_t i = 0; i < all.count; i++) {
        bool holds = true;
        if (guard->when && !sb_formula_truth(making->walk->run, guard->when, all.items[i]->scope, &holds))
            break;
        if (holds)
            SB_PUSH(making->walk->run->pool, where, all.items[i]);
    }
    return where;
}
