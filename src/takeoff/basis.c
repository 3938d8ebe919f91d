/* What amounts are per: the piece, a part, a joint, the batch; and the surface of parts. */
#include "takeoff/inside.h"

#include <string.h>

static const takeoff_turn *turn_of(const sb_recipe_loop *loop, const takeoff_turn *inside) {
    while (inside && inside->loop != loop)
        inside = inside->around;
    return inside;
}

/* Of the turns of a repeat that stands around both, only the line's own counts. */
static bool meant(const takeoff_turn *made, const takeoff_turn *line) {
    for (; line->loop; line = line->around) {
        const takeoff_turn *shared = turn_of(line->loop, made);
        if (shared)
            return shared == line;
    }
    return true;
}

/* ---- joints ------------------------------------------------------------------------------------------------ */

void takeoff_joints(takeoff_making *making) {
    sb_run *run = making->walk->run;
    for (size_t i = 0; i < making->recipe->joints.count; i++) {
        const sb_recipe_joint *line = &making->recipe->joints.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        for (size_t j = 0; j < turns.count; j++) {
            int64_t count = 1;
            if (line->count && !sb_formula_count(run, line->count, turns.items[j]->scope, &count))
                break;
            struct takeoff_joints made = {line->name, turns.items[j], sb_mul(count, making->count)};
            SB_PUSH(run->pool, making->joints, made);
        }
    }
}

int64_t takeoff_count_joints(const takeoff_making *making, const char *name, const takeoff_turn *turn) {
    int64_t count = 0;
    for (size_t i = 0; i < making->joints.count; i++) {
        const struct takeoff_joints *made = &making->joints.items[i];
        if ((!name || strcmp(made->name, name) == 0) && meant(made->turn, turn))
            count = sb_add(count, made->count);
    }
    return count;
}

/* ---- parts ---------------------------------------------------------------------------------------------- */

static bool is_named(const struct takeoff_made *made, const char *const *names, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(names[i], made->name) == 0)
            return true;
    return count == 0;
}

int64_t takeoff_count_parts(const takeoff_making *making, const char *name, const takeoff_turn *turn) {
    int64_t count = 0;
    for (size_t i = 0; i < making->made.count; i++) {
        const struct takeoff_made *made = &making->made.items[i];
        if (is_named(made, &name, name ? 1 : 0) && meant(made->turn, turn))
            count = sb_add(count, made->count);
    }
    return count;
}

sb_length takeoff_run_of_parts(const takeoff_making *making, const char *name, const takeoff_turn *turn) {
    sb_length length = {0};
    for (size_t i = 0; i < making->made.count; i++) {
        const struct takeoff_made *made = &making->made.items[i];
        if (is_named(made, &name, 1) && meant(made->turn, turn))
            length = sb_length_add(length, sb_length_times(made->length, made->count));
    }
    return length;
}

sb_area takeoff_surface(const takeoff_making *making, sb_surface surface, const char *const *names,
                        size_t count, const takeoff_turn *turn) {
    sb_area total = {0};
    for (size_t i = 0; i < making->made.count; i++) {
        const struct takeoff_made *made = &making->made.items[i];
        if (is_named(made, names, count) && meant(made->turn, turn))
            total.um2 = sb_add(total.um2, sb_mul(made->surface[surface].um2, made->count));
    }
    return total;
}

/* ---- per what -------------------------------------------------------------------------------------------------- */

int64_t takeoff_basis(const takeoff_making *making, sb_recipe_basis basis, const char *of,
                      const takeoff_turn *turn) {
    switch (basis) {
    case SB_PER_THE_PART:
        return takeoff_count_parts(making, of, turn);
    case SB_PER_THE_JOINT:
        return takeoff_count_joints(making, of, turn);
    case SB_PER_THE_BATCH:
        return 1;
    default:
        return making->count;
    }
}
