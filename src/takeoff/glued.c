/* Parts of several pieces of wood: staves glued edge to edge, layers glued face to face. Their blanks are cut
 * square; the part gets its ends once it is glued. */
#include "takeoff/inside.h"

/* ---- staves ------------------------------------------------------------------------------------------------ */

/* Each stave loses its edge loss on both edges when it is jointed. */
static sb_length stave_width(const takeoff_parting *parting, sb_length panel, int64_t staves) {
    sb_length net = {sb_mul_div_up(panel.nm, 1, staves)};
    return sb_length_add(net, sb_length_times(parting->part.edge_loss, 2));
}

static bool tell_stave(takeoff_parting *parting, const char *why) {
    sb_error(parting->making->walk->run, parting->line->guard.place, "%s", why);
    return false;
}

/* The fewest staves that the stock is wide enough for; 0 when its width is lost in jointing. */
static int64_t fewest(const takeoff_parting *parting, sb_length panel) {
    sb_length full = parting->part.stock->width;
    int64_t net = full.nm - 2 * parting->part.edge_loss.nm;
    return net > 0 ? sb_mul_div_up(panel.nm, 1, net) : 0;
}

static bool read_staves(takeoff_parting *parting, int64_t *staves) {
    *staves = 0;
    return !parting->line->staves ||
           sb_formula_count(parting->making->walk->run, parting->line->staves, parting->scope, staves);
}

static bool choose_staves(takeoff_parting *parting, sb_length panel) {
    const takeoff_walk *walk = parting->making->walk;
    sb_part *part = &parting->part;
    sb_length full = part->stock->width;
    int64_t least = full.nm > 0 ? fewest(parting, panel) : 1;
    if (!read_staves(parting, &part->staves))
        return false;
    if (full.nm == 0 && part->staves == 0)
        return tell_stave(parting,
                          sb_pool_print(walk->run->pool,
                                        "%s comes in random widths: say how many staves %s is glued from",
                                        part->stock->id, part->name));
    if (least == 0)
        return tell_stave(parting, sb_pool_print(walk->run->pool, "jointing takes the whole width of %s, %s",
                                                 part->stock->id, takeoff_length_text(walk, full)));
    if (part->staves == 0)
        part->staves = least;
    if (part->staves >= least)
        return true;
    return tell_stave(parting,
                      sb_pool_print(walk->run->pool,
                                    "%lld staves for %s would be %s wide each, and %s is %s: at least %lld",
                                    (long long)part->staves, part->name,
                                    takeoff_length_text(walk, stave_width(parting, panel, part->staves)),
                                    part->stock->id, takeoff_length_text(walk, full), (long long)least));
}

bool takeoff_glued_part(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    const takeoff_walk *walk = parting->making->walk;
    if (!takeoff_size(parting, takeoff_width_formula(parting->line), "width", &part->width) ||
        !takeoff_extra(parting, parting->line->edge_loss, "loss at each edge", &part->edge_loss) ||
        !takeoff_extra(parting, parting->line->over_length, "over-length", &part->over_length))
        return false;
    sb_length panel = sb_length_add(part->width, part->allow_width), full = part->stock->width;
    if (!choose_staves(parting, panel))
        return false;
    part->cut_width = takeoff_on_step(walk, stave_width(parting, panel, part->staves));
    part->ripped = full.nm > 0 && part->cut_width.nm < full.nm;
    if (full.nm > 0 && !part->ripped)
        part->cut_width.nm = 0;
    part->cut_length = takeoff_on_step(walk, sb_length_add(part->cut_length, part->over_length));
    return true;
}

/* ---- layers, glue -------------------------------------------------------------------------------------------- */

static bool read_layers(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    const sb_formula *formula = parting->line->layers;
    sb_run *run = parting->making->walk->run;
    if (!formula)
        return true;
    if (!sb_formula_count(run, formula, parting->scope, &part->layers))
        return false;
    if (part->layers >= 1)
        return true;
    sb_error(run, sb_formula_place(formula), "%s has no layers: expected at least one", part->name);
    return false;
}

static bool read_glue(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    if (line->glue_role) {
        parting->glue =
            takeoff_stock(parting->making, line->glue_role, TAKEOFF_FOR_GLUE, "glue", line->guard.place);
        return parting->glue != NULL;
    }
    sb_advise(parting->making->walk->run, line->guard.place,
              "%s is glued, but no glue is named (`with`): its glue is not counted", line->name);
    return true;
}

bool takeoff_layers(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    if (!read_layers(parting))
        return false;
    part->thickness = sb_length_times(part->thickness, part->layers);
    sb_length thick = sb_length_times(part->stock->thickness, part->layers); /* it is planed when it is glued */
    sb_area edges = sb_length_area(part->cut_length, sb_length_times(thick, part->staves - 1));
    sb_area faces = sb_length_area(part->cut_length, sb_length_times(part->width, part->layers - 1));
    parting->joint.um2 = sb_add(edges.um2, faces.um2);
    return parting->joint.um2 == 0 || read_glue(parting);
}
