/* What each kind of piece uses of a stock, and what work its parts cause: the weights by which lines are
 * shared out. */
#include "costing/inside.h"

static int64_t millimetres(sb_length length) {
    return sb_mul_div_up(length.nm, 1, SB_NM_PER_MM);
}

static bool in_sheets(const sb_part *part) {
    return part->stock && part->stock->kind == SB_STOCK_SHEET;
}

static bool planned(const sb_part *part) {
    return part->stock && !part->from_volume &&
           (part->stock->kind == SB_STOCK_BOARD || part->stock->kind == SB_STOCK_SHEET);
}

/* Square millimetres of the board's face that the blanks of a part take. */
static int64_t face(const sb_part *part) {
    sb_length width = part->cut_width.nm > 0 ? part->cut_width : part->stock->width;
    return sb_mul(part->blanks, sb_mul(millimetres(part->cut_length), millimetres(width)));
}

static const int64_t *if_any(const int64_t *weights, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (weights[i] > 0)
            return weights;
    return NULL;
}

const int64_t *costing_stock_weights(const costing *c, const sb_stock *stock) {
    int64_t *weights = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    for (size_t i = 0; i < c->takeoff->parts.count; i++) {
        const sb_part *part = &c->takeoff->parts.items[i];
        if (part->stock == stock && planned(part))
            weights[part->piece] = sb_add(weights[part->piece], face(part));
    }
    for (size_t i = 0; i < c->takeoff->usages.count; i++) {
        const sb_usage *usage = &c->takeoff->usages.items[i];
        if (usage->stock == stock && usage->piece != SB_BATCH)
            weights[usage->piece] = sb_add(weights[usage->piece], usage->amount);
    }
    return if_any(weights, c->count);
}

/* What one kind of part counts for in a driver of the plan. */
static int64_t caused(const sb_part *part, sb_driver driver) {
    switch (driver) {
    case SB_BY_BOARD:
        return in_sheets(part) ? 0 : sb_mul(part->blanks, millimetres(part->cut_length));
    case SB_BY_CHANGE:
    case SB_BY_CUT:
        return in_sheets(part) ? 0 : part->blanks;
    case SB_BY_STOP:
        return in_sheets(part) ? 0 : 1;
    case SB_BY_RIP:
        return in_sheets(part) || part->cut_width.nm == 0
                   ? 0
                   : sb_mul(part->blanks, millimetres(part->cut_length));
    case SB_BY_SHEET:
        return in_sheets(part) ? face(part) : 0;
    case SB_BY_FENCE:
        return in_sheets(part) ? 1 : 0;
    case SB_BY_RETURN:
    case SB_BY_SHEET_CUT:
        return in_sheets(part) ? part->blanks : 0;
    default:
        return 0;
    }
}

int64_t costing_hard_cuts(const costing *c, int64_t *weights) {
    sb_hard_cuts cuts = sb_hard_cuts_of(c->run, c->shop, c->takeoff, c->plan);
    int64_t count = 0;
    for (size_t i = 0; i < cuts.count; i++) {
        const sb_hard_cut *cut = &cuts.items[i];
        const sb_part *part =
            cut->part ? cut->part
                      : c->cutlist->needs.items[c->plan->problem->needs.items[cut->need].tag].part;
        if (weights && part)
            weights[part->piece] = sb_add(weights[part->piece], cut->count);
        count = sb_add(count, cut->count);
    }
    return sb_mul(count, 1000);
}

const int64_t *costing_driver_weights(const costing *c, sb_driver driver) {
    int64_t *weights = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    for (size_t i = 0; i < c->takeoff->parts.count; i++) {
        const sb_part *part = &c->takeoff->parts.items[i];
        if (planned(part))
            weights[part->piece] = sb_add(weights[part->piece], caused(part, driver));
    }
    if (driver == SB_BY_HARD_CUT)
        costing_hard_cuts(c, weights);
    return if_any(weights, c->count);
}
