/* What a way of making the job takes in timber and time: lengths, areas, waste, weight, lead time. */
#include "costing/inside.h"

/* Volumes in cubic millimetres: wide enough for any job that fits the rest. */
static int64_t cubic_mm(sb_area area, sb_length thickness) {
    return sb_mul_div(sb_area_volume(area, thickness).nl, 1, 1000);
}

static const sb_stock *stock_of(const costing *c, size_t supply) {
    return c->cutlist->supplies.items[c->plan->problem->supplies.items[supply].tag].stock;
}

static int64_t boards_volume(costing *c) {
    int64_t volume = 0;
    for (size_t i = 0; i < c->plan->boards.count; i++) {
        const sb_board_plan *board = &c->plan->boards.items[i];
        const sb_stock *stock = stock_of(c, board->supply);
        sb_length full = c->plan->problem->supplies.items[board->supply].length;
        sb_length kept = board->leftover.nm > 0 ? board->leftover : (sb_length){0};
        c->estimate->boards_length =
            sb_length_add(c->estimate->boards_length, sb_length_times(full, board->count));
        sb_area face = sb_length_area(sb_length_sub(full, kept), stock->width);
        face.um2 = sb_sub(face.um2, sb_board_strips_kept(c->plan->problem, board).um2);
        volume = sb_add(volume, sb_mul(board->count, cubic_mm(face, stock->thickness)));
    }
    return volume;
}

static int64_t spare_volume(const costing *c) {
    int64_t volume = 0;
    for (size_t i = 0; i < c->plan->boards.count; i++) {
        const sb_board_plan *board = &c->plan->boards.items[i];
        const sb_stock *stock = stock_of(c, board->supply);
        for (size_t j = 0; j < board->parts.count; j++) {
            const sb_need *need = &c->plan->problem->needs.items[board->parts.items[j].need];
            int64_t one =
                need->spare ? cubic_mm(sb_length_area(need->length, stock->width), stock->thickness) : 0;
            volume = sb_add(volume, sb_mul(board->count, one));
        }
    }
    return volume;
}

static int64_t sheets_volume(costing *c) {
    int64_t volume = 0;
    for (size_t i = 0; i < c->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &c->plan->sheets.items[i];
        const sb_supply *supply = &c->plan->problem->supplies.items[sheet->supply];
        sb_area face = sb_length_area(supply->length, supply->width), used = face;
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            used.um2 = sb_sub(used.um2,
                              sb_length_area(sheet->leftovers.items[j].l, sheet->leftovers.items[j].w).um2);
        c->estimate->sheets_area.um2 = sb_add(c->estimate->sheets_area.um2, sb_mul(face.um2, sheet->count));
        volume = sb_add(volume, sb_mul(sheet->count, cubic_mm(used, stock_of(c, sheet->supply)->thickness)));
    }
    return volume;
}

/* Timber that is bought by volume, with its grade's waste. */
static int64_t rough_volume(const costing *c) {
    int64_t volume = 0;
    for (size_t i = 0; i < c->takeoff->usages.count; i++)
        if (c->takeoff->usages.items[i].stock->kind == SB_STOCK_VOLUME)
            volume = sb_add(volume, sb_mul_div(c->takeoff->usages.items[i].amount, 1, 1000));
    return volume;
}

static int64_t finished_volume(const costing *c) {
    int64_t volume = 0;
    for (size_t i = 0; i < c->takeoff->totals.count; i++)
        volume = sb_add(volume, sb_mul_div(c->takeoff->totals.items[i].net_volume.nl, 1, 1000));
    return volume;
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

static int lead_days(const costing *c) {
    const sb_settings *s = &c->shop->settings;
    if (s->week.ms <= 0)
        return -1;
    int64_t days = sb_add(s->lead_days, sb_mul_div_up(c->estimate->time.ms, 7, s->week.ms));
    return days < 0 || days > INT32_MAX ? -1 : (int)days;
}

void costing_measures(costing *c) {
    sb_estimate *e = c->estimate;
    int64_t taken = sb_add(sb_add(boards_volume(c), sheets_volume(c)), rough_volume(c));
    int64_t spare = spare_volume(c), useful = sb_add(finished_volume(c), spare);
    if (taken > 0) {
        e->waste.ppm = sb_mul_div(sb_sub(taken, useful), 1000000, taken);
        e->spare.ppm = sb_mul_div(spare, 1000000, taken);
    }
    e->mass = mass_of(c);
    e->lead_days = lead_days(c);
}
