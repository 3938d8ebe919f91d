/* Totals by stock, and what defects in a grade add to them. */
#include "takeoff/inside.h"

enum {
    WHOLE_PPM = 1000000
};

/* ---- grades ------------------------------------------------------------------------------------------------ */

int64_t takeoff_with_waste(const sb_grade *grade, int64_t net) {
    if (!grade || grade->defect.ppm == 0)
        return net;
    if (grade->basis == SB_ADDED_TO_NET)
        return sb_mul_div_up(net, WHOLE_PPM + grade->defect.ppm, WHOLE_PPM);
    return grade->defect.ppm < WHOLE_PPM ? sb_mul_div_up(net, WHOLE_PPM, WHOLE_PPM - grade->defect.ppm)
                                         : SB_BAD;
}

void takeoff_waste(const sb_grade *grade, sb_share *added, sb_share *lost) {
    *added = *lost = (sb_share){0};
    if (!grade)
        return;
    int64_t share = grade->defect.ppm;
    if (grade->basis == SB_ADDED_TO_NET) {
        added->ppm = share;
        lost->ppm = sb_mul_div(share, WHOLE_PPM, WHOLE_PPM + share);
    } else if (share < WHOLE_PPM) {
        lost->ppm = share;
        added->ppm = sb_mul_div(share, WHOLE_PPM, WHOLE_PPM - share);
    }
}

/* ---- sums ---------------------------------------------------------------------------------------------------- */

static sb_stock_total *total_of(takeoff_walk *walk, const sb_stock *stock) {
    sb_takeoff *takeoff = walk->takeoff;
    for (size_t i = 0; i < takeoff->totals.count; i++)
        if (takeoff->totals.items[i].stock == stock)
            return &takeoff->totals.items[i];
    sb_stock_total total = {.stock = stock};
    takeoff_waste(stock->grade, &total.spare_added, &total.spare_lost);
    SB_PUSH(walk->run->pool, takeoff->totals, total);
    return &takeoff->totals.items[takeoff->totals.count - 1];
}

/* Board of full width that stays in one blank: a blank ripped to half the width is half its length. */
static int64_t board_length(const sb_part *part) {
    int64_t length = takeoff_mean_length(part).nm;
    if (part->cut_width.nm == 0 || part->stock->width.nm == 0)
        return length;
    return sb_mul_div_up(length, part->cut_width.nm, part->stock->width.nm);
}

/* What edging adds to a panel in one direction. */
static sb_length edging_in(sb_length finished, sb_length cut) {
    return cut.nm < finished.nm ? sb_length_sub(finished, cut) : (sb_length){0};
}

/* Of a panel what is sheet: without its edging, and without what is trimmed off to fit or cut off at an angle. */
static sb_area face_of(const sb_part *part) {
    if (part->stock->kind != SB_STOCK_SHEET)
        return sb_length_area(part->length, part->width);
    return sb_length_area(sb_length_sub(takeoff_mean_length(part), edging_in(part->length, part->cut_length)),
                          sb_length_sub(part->width, edging_in(part->width, part->cut_width)));
}

sb_volume takeoff_part_volume(const sb_part *part) {
    return sb_area_volume(sb_length_area(takeoff_mean_length(part), part->width), part->thickness);
}

static sb_volume volume_of(const sb_part *part) {
    return part->stock->kind == SB_STOCK_SHEET ? sb_area_volume(face_of(part), part->thickness)
                                               : takeoff_part_volume(part);
}

static void add_part(sb_stock_total *total, const sb_part *part) {
    total->parts = sb_add(total->parts, part->count);
    if (part->stock->kind == SB_STOCK_BOARD)
        total->net_length.nm = sb_add(total->net_length.nm, sb_mul(board_length(part), part->blanks));
    total->net_area.um2 = sb_add(total->net_area.um2, sb_mul(face_of(part).um2, part->count));
    total->net_volume.nl = sb_add(total->net_volume.nl, sb_mul(volume_of(part).nl, part->count));
}

static void check_range(const takeoff_walk *walk, const sb_stock_total *total) {
    if (total->net_length.nm == SB_BAD || total->net_area.um2 == SB_BAD || total->net_volume.nl == SB_BAD)
        sb_error(walk->run, total->stock->place, "the parts of %s come to more than can be counted",
                 total->stock->id);
}

static void add_spare(const takeoff_walk *walk, sb_stock_total *total) {
    if (total->stock->kind != SB_STOCK_BOARD)
        return;
    int64_t with_waste = takeoff_with_waste(total->stock->grade, total->net_length.nm);
    total->spare_length = takeoff_on_step(walk, (sb_length){sb_sub(with_waste, total->net_length.nm)});
}

/* ---- weight ---------------------------------------------------------------------------------------------------- */

/* Of one piece; 0 when the density of any of its wood is unknown. */
static sb_mass mass_of(const sb_takeoff *takeoff, size_t piece) {
    sb_mass mass = {0};
    for (size_t i = 0; i < takeoff->parts.count; i++) {
        const sb_part *part = &takeoff->parts.items[i];
        if (part->piece != piece)
            continue;
        if (part->stock->density == 0)
            return (sb_mass){0};
        mass.mg = sb_add(mass.mg, sb_mul(sb_volume_mass(takeoff_part_volume(part), part->stock->density).mg,
                                         part->per_piece));
    }
    return mass;
}

void takeoff_totals(takeoff_walk *walk) {
    sb_takeoff *takeoff = walk->takeoff;
    for (size_t i = 0; i < takeoff->parts.count; i++)
        add_part(total_of(walk, takeoff->parts.items[i].stock), &takeoff->parts.items[i]);
    for (size_t i = 0; i < takeoff->totals.count; i++) {
        check_range(walk, &takeoff->totals.items[i]);
        add_spare(walk, &takeoff->totals.items[i]);
    }
    for (size_t i = 0; i < takeoff->pieces.count; i++)
        takeoff->pieces.items[i].mass = mass_of(takeoff, i);
}
