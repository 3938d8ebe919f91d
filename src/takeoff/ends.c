/* The ends of a part, as the saw's scale shows them: from square. */
#include "takeoff/inside.h"

static const int64_t SQUARE = 90000000; /* millionths of a degree */

static int64_t size_of(sb_angle angle) {
    return angle.udeg < 0 ? -angle.udeg : angle.udeg;
}

static bool tell_angle(takeoff_parting *parting, const sb_recipe_angle *angle, const char *what,
                       const char *why) {
    takeoff_walk *walk = parting->making->walk;
    sb_error(walk->run, sb_formula_place(angle->formula), "the %s of %s is %s: %s", what, parting->line->name,
             sb_formula_worked(walk->run, angle->formula, parting->scope, &walk->shop->settings.style), why);
    return false;
}

/* On the piece, the angle between the end and the edge: 90 degrees less the other. A minus sign turns it over. */
static bool read_angle(takeoff_parting *parting, const sb_recipe_angle *angle, const char *what,
                       sb_angle *out) {
    out->udeg = 0;
    if (!angle->formula)
        return true;
    if (!sb_formula_angle(parting->making->walk->run, angle->formula, parting->scope, out))
        return false;
    int64_t size = size_of(*out);
    if (angle->on_piece && (size == 0 || size > SQUARE))
        return tell_angle(parting, angle, what, "on the piece, expected more than 0 and at most 90 degrees");
    if (!angle->on_piece && size >= SQUARE)
        return tell_angle(parting, angle, what,
                          "the scale counts from square, expected less than 90 degrees");
    if (angle->on_piece)
        size = SQUARE - size;
    out->udeg = out->udeg < 0 ? -size : size;
    return true;
}

static bool read_end(takeoff_parting *parting, const sb_recipe_end *line, sb_cut_end *out) {
    return read_angle(parting, &line->mitre, "mitre", &out->mitre) &&
           read_angle(parting, &line->bevel, "bevel", &out->bevel);
}

/* ---- what the saw reaches ---- */

/* The same angle of other parts was told with the first of them; a word that is only tried tells none. */
static bool told_before(takeoff_walk *walk, sb_cut_end angle) {
    if (walk->tried)
        return true;
    for (size_t i = 0; i < walk->past_saw.count; i++)
        if (walk->past_saw.items[i].mitre.udeg == angle.mitre.udeg &&
            walk->past_saw.items[i].bevel.udeg == angle.bevel.udeg)
            return true;
    SB_PUSH(walk->run->pool, walk->past_saw, angle);
    return false;
}

static void advise_reach(takeoff_parting *parting, const sb_recipe_angle *line, sb_cut_end angle) {
    takeoff_walk *walk = parting->making->walk;
    const sb_saw *saw = &walk->shop->settings.crosscut;
    const sb_style *style = &walk->shop->settings.style;
    bool swing = sb_saw_swings(saw, angle.mitre) == SB_REACHES_NOT;
    if ((!swing && sb_saw_tilts(saw, angle.bevel) != SB_REACHES_NOT) || told_before(walk, angle))
        return;
    sb_advise(
        walk->run, sb_formula_place(line->formula),
        "the %s of %s is %s on the scale, and the crosscut saw %s %s at most: the cut sheet says what to do",
        swing ? "mitre" : "bevel", parting->line->name,
        sb_write_angle(walk->run, swing ? angle.mitre : angle.bevel, style), swing ? "swings" : "tilts",
        sb_write_angle(walk->run, swing ? sb_saw_swing(saw) : sb_saw_tilt(saw), style));
}

static void check_reach(takeoff_parting *parting, const sb_recipe_end *line, sb_cut_end end) {
    advise_reach(parting, &line->mitre, (sb_cut_end){.mitre = {size_of(end.mitre)}});
    advise_reach(parting, &line->bevel, (sb_cut_end){.bevel = {size_of(end.bevel)}});
}

/* ---- what is left between the ends ---- */

/* How much shorter than the long points one edge is: what both ends take off it. */
static int64_t taken_off(const sb_part *part, bool far) {
    int64_t taken = 0;
    const sb_angle mitres[2] = {part->end1.mitre, part->end2.mitre};
    for (int i = 0; i < 2; i++)
        if (far ? mitres[i].udeg < 0 : mitres[i].udeg > 0)
            taken = sb_add(taken, sb_mitre_run(part->width, mitres[i]).nm);
    return taken;
}

bool takeoff_ends_apart(takeoff_parting *parting) {
    const sb_part *part = &parting->part;
    if (taken_off(part, true) <= part->length.nm && taken_off(part, false) <= part->length.nm)
        return true;
    const takeoff_walk *walk = parting->making->walk;
    sb_error(walk->run, part->place, "the ends of %s run into each other: it is %s long and %s wide",
             part->name, takeoff_length_text(walk, part->length), takeoff_length_text(walk, part->width));
    return false;
}

bool takeoff_ends(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    sb_part *part = &parting->part;
    if (!read_end(parting, &line->end1, &part->end1) || !read_end(parting, &line->end2, &part->end2))
        return false;
    check_reach(parting, &line->end1, part->end1);
    check_reach(parting, &line->end2, part->end2);
    return true;
}
