/* Parts out of boards: of full width, ripped, planed from sawn stock. Timber by volume comes in random widths: its
 * stock has no width, and nothing here limits it then. */
#include "takeoff/inside.h"

/* ---- planed from sawn ------------------------------------------------------------------------------------ */

static bool tell_too_thin(takeoff_parting *parting, sb_length needed) {
    const takeoff_walk *walk = parting->making->walk;
    const sb_part *part = &parting->part;
    sb_error(walk->run, sb_formula_place(parting->line->thickness),
             "%s planed to %s wants sawn stock of at least %s, since %s is planed off; %s is %s thick",
             part->name, takeoff_length_text(walk, part->thickness), takeoff_length_text(walk, needed),
             takeoff_length_text(walk, parting->planing), part->stock->id,
             takeoff_length_text(walk, part->stock->thickness));
    return false;
}

/* The thickness of one layer. */
static bool plane(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    const sb_formula *formula = parting->line->thickness;
    part->thickness = part->stock->thickness;
    if (!formula)
        return true;
    if (!takeoff_size(parting, formula, "thickness", &part->thickness))
        return false;
    part->planed = true;
    parting->planing = parting->making->walk->shop->settings.planing;
    sb_length needed = sb_length_add(part->thickness, parting->planing);
    return needed.nm <= part->stock->thickness.nm || tell_too_thin(parting, needed);
}

/* ---- width ------------------------------------------------------------------------------------------------- */

const sb_formula *takeoff_width_formula(const sb_recipe_part *line) {
    return line->planed_width ? line->planed_width : line->width;
}

static bool tell_too_wide(takeoff_parting *parting, sb_length most) {
    const takeoff_walk *walk = parting->making->walk;
    const sb_part *part = &parting->part;
    sb_error(walk->run, sb_formula_place(takeoff_width_formula(parting->line)),
             "%s is %s wide, and a board of %s gives %s%s: glue it up from staves (`glued`), or choose wider "
             "stock",
             part->name, takeoff_length_text(walk, part->width), part->stock->id,
             takeoff_length_text(walk, most), part->planed ? " once it is planed" : "");
    return false;
}

/* What the saw rips: the width with planing and allowance; the whole board when nothing falls off. */
static bool rip(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    const takeoff_walk *walk = parting->making->walk;
    sb_length full = part->stock->width;
    sb_length width = sb_length_add(sb_length_add(part->width, parting->planing), part->allow_width);
    part->cut_width = takeoff_on_step(walk, width);
    if (full.nm == 0)
        return true;
    if (width.nm > full.nm) {
        sb_error(walk->run, parting->line->guard.place, "with its allowance %s is %s wide, and %s is %s",
                 part->name, takeoff_length_text(walk, width), part->stock->id,
                 takeoff_length_text(walk, full));
        return false;
    }
    part->ripped = part->cut_width.nm < full.nm;
    if (!part->ripped)
        part->cut_width.nm = 0;
    return true;
}

static bool one_board(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    const sb_formula *formula = takeoff_width_formula(parting->line);
    sb_length most = sb_length_sub(part->stock->width, parting->planing);
    bool random = part->stock->width.nm == 0;
    if (!formula) {
        part->width = most;
        return true;
    }
    if (!takeoff_width(parting, formula, most, &part->width))
        return false;
    return random || part->width.nm <= most.nm ? rip(parting) : tell_too_wide(parting, most);
}

bool takeoff_board_part(takeoff_parting *parting) {
    return plane(parting) && (parting->line->glued ? takeoff_glued_part(parting) : one_board(parting));
}
