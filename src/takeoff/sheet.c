/* Parts out of sheets. Edging makes up for what is cut off: the sheet part is smaller by its thickness. */
#include "takeoff/inside.h"

static bool edged(const sb_part *part, unsigned edge) {
    return (part->edging_edges & edge) != 0;
}

static int both(const sb_part *part, unsigned one, unsigned other) {
    return edged(part, one) + edged(part, other);
}

static bool read_edging(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    sb_part *part = &parting->part;
    if (!line->edging_role || !line->edging_edges)
        return true;
    part->edging =
        takeoff_stock(parting->making, line->edging_role, TAKEOFF_FOR_EDGING, "edging", line->guard.place);
    if (!part->edging)
        return false;
    part->edging_edges = line->edging_edges;
    return true;
}

static sb_length cut_size(const takeoff_parting *parting, sb_length size, int edges) {
    sb_length off = {parting->part.edging ? sb_mul(parting->part.edging->thickness.nm, edges) : 0};
    return takeoff_on_step(parting->making->walk, sb_length_sub(size, off));
}

static bool shrink_for_edging(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    part->cut_length = cut_size(parting, part->cut_length, both(part, SB_EDGE_LEFT, SB_EDGE_RIGHT));
    part->cut_width = cut_size(parting, sb_length_add(part->width, part->allow_width),
                               both(part, SB_EDGE_FRONT, SB_EDGE_BACK));
    if (part->cut_length.nm > 0 && part->cut_width.nm > 0)
        return true;
    sb_error(parting->making->walk->run, part->place, "nothing is left of %s once its edging is taken off",
             part->name);
    return false;
}

bool takeoff_sheet_part(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    sb_part *part = &parting->part;
    part->thickness = part->stock->thickness;
    return takeoff_size(parting, line->width, "width", &part->width) && read_edging(parting) &&
           shrink_for_edging(parting);
}

bool takeoff_edging_covers(takeoff_parting *parting) {
    const takeoff_walk *walk = parting->making->walk;
    const sb_part *part = &parting->part;
    if (!part->edging || part->edging->width.nm == 0 || part->edging->width.nm >= part->thickness.nm)
        return true;
    sb_error(walk->run, part->place, "the edges of %s are %s thick, and %s is %s wide", part->name,
             takeoff_length_text(walk, part->thickness), part->edging->id,
             takeoff_length_text(walk, part->edging->width));
    return false;
}
