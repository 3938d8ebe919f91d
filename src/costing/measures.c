/* What a way of making the job takes in timber and time: lengths, areas, waste, weight, lead time. */
#include "costing/inside.h"

static const int64_t DAY_MS = 86400000;

/* Volumes in cubic millimetres: wide enough for any job that fits the rest. */
static int64_t cubic_mm(sb_area area, sb_length thickness) {
    return sb_mul_div(sb_area_volume(area, thickness).nl, 1, 1000);
}

static const sb_stock *stock_of(const costing *c, size_t supply) {
    return c->cutlist->supplies.items[c->plan->problem->supplies.items[supply].tag].stock;
}

static sb_wood *wood_of(costing *c, const sb_stock *stock) {
    sb_estimate *e = c->estimate;
    for (size_t i = 0; i < e->wood.count; i++)
        if (e->wood.items[i].stock == stock)
            return &e->wood.items[i];
    sb_wood wood = {.stock = stock};
    SB_PUSH(c->run->pool, e->wood, wood);
    return &e->wood.items[e->wood.count - 1];
}

static void add(int64_t *to, int64_t count, sb_area face, const sb_stock *stock) {
    *to = sb_add(*to, sb_mul(count, cubic_mm(face, stock->thickness)));
}

static void add_board(costing *c, const sb_board_plan *board) {
    const sb_problem *problem = c->plan->problem;
    const sb_stock *stock = stock_of(c, board->supply);
    sb_wood *wood = wood_of(c, stock);
    sb_length full = problem->supplies.items[board->supply].length;
    sb_area left = sb_length_area(board->leftover, stock->width);
    c->estimate->boards_length =
        sb_length_add(c->estimate->boards_length, sb_length_times(full, board->count));
    left.um2 = sb_add(board->leftover.nm > 0 ? left.um2 : 0, sb_board_strips_kept(problem, board).um2);
    add(&wood->taken, board->count, sb_length_area(full, stock->width), stock);
    add(&wood->kept, board->count, left, stock);
    for (size_t j = 0; j < board->parts.count; j++) {
        const sb_need *need = &problem->needs.items[board->parts.items[j].need];
        if (need->spare)
            add(&wood->spare, board->count, sb_length_area(need->length, stock->width), stock);
    }
}

static void add_sheet(costing *c, const sb_sheet_plan *sheet) {
    const sb_supply *supply = &c->plan->problem->supplies.items[sheet->supply];
    const sb_stock *stock = stock_of(c, sheet->supply);
    sb_wood *wood = wood_of(c, stock);
    sb_area face = sb_length_area(supply->length, supply->width);
    c->estimate->sheets_area.um2 = sb_add(c->estimate->sheets_area.um2, sb_mul(face.um2, sheet->count));
    add(&wood->taken, sheet->count, face, stock);
    for (size_t j = 0; j < sheet->leftovers.count; j++)
        add(&wood->kept, sheet->count,
            sb_length_area(sheet->leftovers.items[j].l, sheet->leftovers.items[j].w), stock);
}

/* Timber that is bought by volume is taken with its grade's waste. */
static void add_wood(costing *c) {
    for (size_t i = 0; i < c->plan->boards.count; i++)
        add_board(c, &c->plan->boards.items[i]);
    for (size_t i = 0; i < c->plan->sheets.count; i++)
        add_sheet(c, &c->plan->sheets.items[i]);
    for (size_t i = 0; i < c->takeoff->usages.count; i++) {
        const sb_usage *usage = &c->takeoff->usages.items[i];
        if (usage->stock->kind != SB_STOCK_VOLUME)
            continue;
        sb_wood *wood = wood_of(c, usage->stock);
        wood->taken = sb_add(wood->taken, sb_mul_div(usage->amount, 1, 1000));
    }
    for (size_t i = 0; i < c->takeoff->totals.count; i++) {
        sb_wood *wood = wood_of(c, c->takeoff->totals.items[i].stock);
        wood->parts = sb_add(wood->parts, sb_mul_div(c->takeoff->totals.items[i].net_volume.nl, 1, 1000));
    }
}

static sb_mass mass_of(const costing *c) {
    sb_mass mass = {0};
    for (size_t i = 0; i < c->count; i++) {
        const sb_takeoff_piece *piece = &c->takeoff->pieces.items[i];
        if (piece->mass.mg == 0 && piece->count > 0)
            return (sb_mass){0};
        mass.mg = sb_add(mass.mg, sb_mul(piece->mass.mg, piece->count));
    }
    return mass;
}

/* ---- time ---- */

/* All coats of one stock on a piece: what two lines ask for, on different faces, dries together. */
static int64_t coats_of(const costing *c, size_t piece, const sb_stock *stock) {
    int64_t coats = 0;
    for (size_t i = 0; i < c->takeoff->usages.count; i++) {
        const sb_usage *usage = &c->takeoff->usages.items[i];
        if (usage->piece == piece && usage->stock == stock && usage->coats > coats)
            coats = usage->coats;
    }
    return coats;
}

/* Coats of one stock dry one after the other, and before those of the next; pieces dry side by side. */
static sb_duration drying_of(const costing *c) {
    sb_duration longest = {0};
    for (size_t piece = 0; piece < c->count; piece++) {
        int64_t ms = 0;
        for (size_t i = 0; i < c->shop->stock.count; i++) {
            const sb_stock *stock = c->shop->stock.items[i];
            if (stock->drying.ms > 0)
                ms = sb_add(ms, sb_mul(coats_of(c, piece, stock), stock->drying.ms));
        }
        longest.ms = ms > longest.ms || ms == SB_BAD ? ms : longest.ms;
    }
    return longest;
}

static int lead_days(const costing *c) {
    const sb_settings *s = &c->shop->settings;
    if (s->week.ms <= 0)
        return -1;
    int64_t working = sb_mul_div_up(c->estimate->time.ms, 7 * DAY_MS, s->week.ms);
    int64_t days = sb_add(s->lead_days, sb_mul_div_up(sb_add(working, c->estimate->drying.ms), 1, DAY_MS));
    return days < 0 || days > INT32_MAX ? -1 : (int)days;
}

static void share_wood(sb_estimate *e) {
    int64_t used = 0, parts = 0, spare = 0;
    for (size_t i = 0; i < e->wood.count; i++) {
        used = sb_add(used, sb_sub(e->wood.items[i].taken, e->wood.items[i].kept));
        parts = sb_add(parts, e->wood.items[i].parts);
        spare = sb_add(spare, e->wood.items[i].spare);
    }
    if (used <= 0)
        return;
    e->waste.ppm = sb_mul_div(sb_sub(used, sb_add(parts, spare)), 1000000, used);
    e->spare.ppm = sb_mul_div(spare, 1000000, used);
}

void costing_measures(costing *c) {
    add_wood(c);
    share_wood(c->estimate);
    c->estimate->mass = mass_of(c);
    c->estimate->drying = drying_of(c);
    c->estimate->lead_days = lead_days(c);
}
