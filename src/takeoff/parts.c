/* The parts of a recipe. Turns of a repeat that give parts alike in everything become one kind of part. */
#include "takeoff/inside.h"

static bool sizes_alike(const sb_part *a, const sb_part *b) {
    return a->length.nm == b->length.nm && a->width.nm == b->width.nm && a->thickness.nm == b->thickness.nm &&
           a->cut_length.nm == b->cut_length.nm && a->cut_width.nm == b->cut_width.nm &&
           a->allow.nm == b->allow.nm && a->allow_width.nm == b->allow_width.nm && a->staves == b->staves &&
           a->layers == b->layers && a->edge_loss.nm == b->edge_loss.nm &&
           a->over_length.nm == b->over_length.nm;
}

static bool ends_alike(sb_cut_end a, sb_cut_end b) {
    return a.mitre.udeg == b.mitre.udeg && a.bevel.udeg == b.bevel.udeg;
}

static bool alike(const sb_part *a, const sb_part *b) {
    return a->stock == b->stock && a->edging == b->edging && sizes_alike(a, b) &&
           ends_alike(a->end1, b->end1) && ends_alike(a->end2, b->end2);
}

static void add(sb_run *run, sb_takeoff *takeoff, const sb_part *part, size_t first_of_line) {
    for (size_t i = takeoff->parts.count; i > first_of_line; i--) {
        sb_part *other = &takeoff->parts.items[i - 1];
        if (!alike(other, part))
            continue;
        other->per_piece = sb_add(other->per_piece, part->per_piece);
        other->count = sb_add(other->count, part->count);
        other->blanks = sb_add(other->blanks, part->blanks);
        return;
    }
    SB_PUSH(run->pool, takeoff->parts, *part);
}

/* Ten million parts are a slip of the pen; told once. */
static bool within_reason(takeoff_parting *parting) {
    takeoff_walk *walk = parting->making->walk;
    if (walk->parts > TAKEOFF_MOST_PARTS)
        return false;
    int64_t parts = sb_add(walk->parts, parting->part.blanks);
    bool fits = parts >= 0 && parts <= TAKEOFF_MOST_PARTS && parting->part.count >= 0;
    walk->parts = fits ? parts : TAKEOFF_MOST_PARTS + 1;
    if (!fits)
        sb_error(walk->run, parting->part.place, "with %s the job comes to more than ten million parts",
                 parting->line->name);
    return fits;
}

static void remember(takeoff_making *making, const sb_part *part, const takeoff_turn *turn) {
    struct takeoff_made made = {
        .name = part->name, .turn = turn, .count = part->count, .length = part->length};
    made.surface[SB_SURFACE_ALL] = part->area_all;
    made.surface[SB_SURFACE_OUTSIDE] = part->area_outside;
    made.surface[SB_SURFACE_ENDS] = part->area_ends;
    SB_PUSH(making->walk->run->pool, making->made, made);
}

/* False after an error, which further turns would only repeat. */
static bool make_part(takeoff_making *making, const sb_recipe_part *line, const takeoff_turn *turn,
                      size_t first_of_line) {
    takeoff_parting parting = {.making = making, .scope = turn->scope, .line = line};
    if (!takeoff_part(&parting))
        return false;
    if (parting.part.count == 0)
        return true;
    if (!within_reason(&parting))
        return false;
    remember(making, &parting.part, turn);
    add(making->walk->run, making->walk->takeoff, &parting.part, first_of_line);
    takeoff_part_uses(&parting);
    return true;
}

void takeoff_parts(takeoff_making *making) {
    sb_takeoff *takeoff = making->walk->takeoff;
    for (size_t i = 0; i < making->recipe->parts.count; i++) {
        const sb_recipe_part *line = &making->recipe->parts.items[i];
        takeoff_turns turns = takeoff_where(making, &line->guard);
        size_t first_of_line = takeoff->parts.count;
        for (size_t j = 0; j < turns.count && make_part(making, line, turns.items[j], first_of_line); j++)
            continue;
    }
}
