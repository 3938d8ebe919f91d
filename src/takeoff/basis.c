/* What amounts are per: the piece, a part, a joint, the batch; and the surface of parts. */
#include "takeoff/inside.h"

#include <string.h>

/* ---- joints ------------------------------------------------------------------------------------------------ */

static struct takeoff_joints *joint_named(takeoff_making *making, const char *name) {
    for (size_t i = 0; i < making->joints.count; i++)
        if (strcmp(making->joints.items[i].name, name) == 0)
            return &making->joints.items[i];
    struct takeoff_joints entry = {name, 0};
    SB_PUSH(making->walk->run->pool, making->joints, entry);
    return &making->joints.items[making->joints.count - 1];
}

void takeoff_joints(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->joints.count; i++) {
        const sb_recipe_joint *line = &making->recipe->joints.items[i];
        takeoff_scopes scopes = takeoff_where(making, &line->guard);
        struct takeoff_joints *joint = joint_named(making, line->name);
        for (size_t j = 0; j < scopes.count; j++) {
            int64_t count = 1;
            if (!line->count || sb_formula_count(making->walk->run, line->count, scopes.items[j], &count))
                joint->count = sb_add(joint->count, sb_mul(count, making->count));
        }
    }
}

/* ---- parts ---------------------------------------------------------------------------------------------- */

static bool is_named(const sb_part *part, const char *const *names, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(names[i], part->name) == 0)
            return true;
    return count == 0;
}

int64_t takeoff_count_parts(const takeoff_making *making, const char *name) {
    int64_t count = 0;
    for (size_t i = making->first_part; i < making->last_part; i++) {
        const sb_part *part = &making->walk->takeoff->parts.items[i];
        if (is_named(part, &name, name ? 1 : 0))
            count = sb_add(count, part->count);
    }
    return count;
}

int64_t takeoff_count_joints(const takeoff_making *making, const char *name) {
    int64_t count = 0;
    for (size_t i = 0; i < making->joints.count; i++)
        if (!name || strcmp(making->joints.items[i].name, name) == 0)
            count = sb_add(count, making->joints.items[i].count);
    return count;
}

sb_length takeoff_run_of_parts(const takeoff_making *making, const char *name) {
    sb_length length = {0};
    for (size_t i = making->first_part; i < making->last_part; i++) {
        const sb_part *part = &making->walk->takeoff->parts.items[i];
        if (is_named(part, &name, 1))
            length = sb_length_add(length, sb_length_times(part->length, part->count));
    }
    return length;
}

sb_area takeoff_surface(const takeoff_making *making, sb_surface surface, const char *const *names,
                        size_t count) {
    sb_area total = {0};
    for (size_t i = making->first_part; i < making->last_part; i++) {
        const sb_part *part = &making->walk->takeoff->parts.items[i];
        if (!is_named(part, names, count))
            continue;
        sb_area one = surface == SB_SURFACE_ALL       ? part->area_all
                      : surface == SB_SURFACE_OUTSIDE ? part->area_outside
                                                      : part->area_ends;
        total.um2 = sb_add(total.um2, sb_mul(one.um2, part->count));
    }
    return total;
}

/* ---- per what -------------------------------------------------------------------------------------------------- */

int64_t takeoff_basis(const takeoff_making *making, sb_recipe_basis basis, const char *of) {
    switch (basis) {
    case SB_PER_THE_PART:
        return takeoff_count_parts(making, of);
    case SB_PER_THE_JOINT:
        return takeoff_count_joints(making, of);
    case SB_PER_THE_BATCH:
        return 1;
    default:
        return making->count;
    }
}
