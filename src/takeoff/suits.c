/* Whether a stock is of the right kind for a part, before anything is measured. */
#include "takeoff/inside.h"

static bool suits_sheet(sb_run *run, const sb_recipe_part *line, const sb_stock *stock) {
    sb_place at = line->guard.place;
    if (line->thickness || line->glued)
        sb_error(run, at, "%s is a sheet: `%s` is for parts out of boards", stock->id,
                 line->glued ? "glued" : "planed");
    if (!line->wide)
        sb_error(run, at, "%s is cut from a sheet: expected a `width`", line->name);
    return line->wide && !line->thickness && !line->glued;
}

/* What is for panels has no meaning on a board, and must not be lost without a word. */
static bool suits_grain(sb_run *run, const sb_recipe_part *line, const sb_stock *stock) {
    bool edged = line->edging_role && line->edging_edges, across = line->grain == SB_GRAIN_ACROSS;
    if (edged)
        sb_error(run, line->guard.place, "%s is timber: `edging` goes on parts cut from a sheet", stock->id);
    if (across)
        sb_error(run, line->guard.place, "%s is timber: its grain runs along the part", stock->id);
    return !edged && !across;
}

static bool suits_timber(sb_run *run, const sb_recipe_part *line, const sb_stock *stock) {
    bool sawn = !line->thickness || stock->sawn;
    bool wide = stock->width.nm > 0 || line->wide;
    if (!sawn)
        sb_error(run, sb_formula_place(line->thickness),
                 "%s is not sawn stock: expected sawn stock for a part that is `planed`", stock->id);
    if (!wide)
        sb_error(run, line->guard.place, "%s comes in random widths: expected a `width` for the part %s",
                 stock->id, line->name);
    return sawn && wide && suits_grain(run, line, stock);
}

bool takeoff_suits(sb_run *run, const sb_recipe_part *line, const sb_stock *stock) {
    const char *what = sb_pool_print(run->pool, "the part %s", line->name);
    if (!takeoff_is_kind(run, stock, TAKEOFF_FOR_PARTS, what, line->guard.place))
        return false;
    return stock->kind == SB_STOCK_SHEET ? suits_sheet(run, line, stock) : suits_timber(run, line, stock);
}
