/* One kind of part: how many, of what, how long; the rest depends on the kind of stock. */
#include "takeoff/inside.h"

static bool read_count(takeoff_parting *parting) {
    const takeoff_making *making = parting->making;
    int64_t count = 1;
    if (parting->line->count &&
        !sb_formula_count(making->walk->run, parting->line->count, parting->scope, &count))
        return false;
    parting->part.per_piece = sb_mul(count, making->per_piece);
    parting->part.count = sb_mul(count, making->count);
    return true;
}

static bool read_stock(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    const sb_stock *stock = takeoff_stock_of_role(parting->making, line->role, line->guard.place);
    parting->part.stock = stock;
    return stock && takeoff_suits(parting->making->walk->run, line, stock);
}

/* Where the length comes from, as it is before it goes on the shop's step. */
static const char *worked(takeoff_parting *parting) {
    takeoff_walk *walk = parting->making->walk;
    const sb_style *style = &walk->shop->settings.style;
    sb_style unrounded = sb_style_unrounded(style);
    const char *text = sb_formula_worked(walk->run, parting->line->length, parting->scope, &unrounded);
    sb_length exact;
    if (!sb_formula_length(walk->run, parting->line->length, parting->scope, &exact) ||
        exact.nm == parting->part.length.nm)
        return text;
    return sb_pool_print(walk->run->pool, "%s, rounded up to %s", text,
                         sb_write_length_unit(walk->run, parting->part.length, style));
}

static bool read_length(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    sb_part *part = &parting->part;
    takeoff_walk *walk = parting->making->walk;
    if (!takeoff_size(parting, line->length, "length", &part->length) ||
        !takeoff_extra(parting, line->allow, "allowance", &part->allow) ||
        !takeoff_extra(parting, line->allow_width, "allowance", &part->allow_width))
        return false;
    part->cut_length = takeoff_on_step(walk, sb_length_add(part->length, part->allow));
    part->length_formula = line->length;
    part->length_worked = worked(parting);
    return true;
}

static bool by_kind(takeoff_parting *parting) {
    switch (parting->part.stock->kind) {
    case SB_STOCK_SHEET:
        return takeoff_sheet_part(parting);
    case SB_STOCK_VOLUME:
        return takeoff_volume_part(parting);
    default:
        return takeoff_board_part(parting);
    }
}

static void begin(takeoff_parting *parting) {
    const takeoff_making *making = parting->making;
    const sb_recipe_part *line = parting->line;
    parting->part = (sb_part){.piece = making->piece,
                              .making = making->index,
                              .name = line->name,
                              .title = line->title && *line->title ? line->title : line->name,
                              .path = making->path,
                              .role = line->role,
                              .clear = line->clear,
                              .sound = line->sound,
                              .grain = line->grain,
                              .staves = 1,
                              .layers = 1,
                              .note = line->note,
                              .place = line->guard.place};
}

/* What can be told is told: a width also where the length is wrong. */
static bool read_sizes(takeoff_parting *parting) {
    bool stocked = read_stock(parting), long_enough = read_length(parting);
    bool sheet = stocked && parting->part.stock->kind == SB_STOCK_SHEET; /* its edging is taken off its length */
    return stocked && (long_enough || !sheet) && by_kind(parting) && long_enough && takeoff_layers(parting) &&
           takeoff_edging_covers(parting);
}

bool takeoff_part(takeoff_parting *parting) {
    sb_part *part = &parting->part;
    begin(parting);
    bool counted = read_count(parting);
    if (counted && part->count == 0)
        return true;
    bool sized = read_sizes(parting);
    if (!takeoff_ends(parting) || !sized || !takeoff_ends_apart(parting) || !counted)
        return false;
    part->blanks = sb_mul(part->count, sb_mul(part->staves, part->layers));
    takeoff_outline(parting);
    return true;
}
