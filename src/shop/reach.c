/* How far a saw swings and tilts and how wide it cuts, and whether that does for a cut. */
#include "sawbill/shop.h"

#include <math.h>

static sb_angle wider(sb_angle left, sb_angle right) {
    return left.udeg > right.udeg ? left : right;
}

static int64_t size_of(sb_angle angle) {
    return angle.udeg < 0 ? -angle.udeg : angle.udeg;
}

sb_angle sb_saw_swing(const sb_saw *saw) {
    return wider(saw->mitre_left, saw->mitre_right);
}

sb_angle sb_saw_tilt(const sb_saw *saw) {
    return wider(saw->bevel_left, saw->bevel_right);
}

static sb_reach reach_of(sb_angle asked, sb_angle left, sb_angle right) {
    int64_t size = size_of(asked);
    if (wider(left, right).udeg == 0 || (size <= left.udeg && size <= right.udeg))
        return SB_REACHES;
    if (size > wider(left, right).udeg)
        return SB_REACHES_NOT;
    return size <= left.udeg ? SB_REACHES_LEFT_ONLY : SB_REACHES_RIGHT_ONLY;
}

sb_reach sb_saw_swings(const sb_saw *saw, sb_angle mitre) {
    return reach_of(mitre, saw->mitre_left, saw->mitre_right);
}

sb_reach sb_saw_tilts(const sb_saw *saw, sb_angle bevel) {
    return reach_of(bevel, saw->bevel_left, saw->bevel_right);
}

/* ---- how wide ---- */

static double cosine(sb_angle angle) {
    return cos((double)angle.udeg * 1e-6 * 3.14159265358979323846 / 180);
}

/* Of swing or tilt alone. */
static sb_length widest_at(const sb_saw *saw, bool tilts, int64_t size) {
    const sb_widest *steeper = NULL, *last = NULL;
    int64_t at_steeper = 0, at_last = 0;
    for (size_t i = 0; i < saw->widest.count; i++) {
        const sb_widest *line = &saw->widest.items[i];
        int64_t at = tilts ? line->bevel.udeg : line->mitre.udeg;
        if ((tilts ? line->mitre.udeg : line->bevel.udeg) != 0)
            continue;
        if (at >= size && (!steeper || at < at_steeper))
            steeper = line, at_steeper = at;
        if (!last || at > at_last)
            last = line, at_last = at;
    }
    if (steeper || !last)
        return steeper ? steeper->width : (sb_length){0};
    double less = cosine((sb_angle){size}) / cosine((sb_angle){at_last});
    return (sb_length){(int64_t)floor((double)last->width.nm * less)};
}

sb_length sb_saw_widest(const sb_saw *saw, sb_angle mitre, sb_angle bevel) {
    sb_length swung = widest_at(saw, false, size_of(mitre)), tilted = widest_at(saw, true, size_of(bevel));
    if (swung.nm == 0 || tilted.nm == 0)
        return swung.nm == 0 ? tilted : swung;
    return swung.nm < tilted.nm ? swung : tilted;
}

/* Rolled over its length, a piece wants swing and tilt on the other hand, and twice the width can be cut. */
static bool from_both_edges(const sb_saw *saw, sb_angle mitre, sb_angle bevel, sb_length width) {
    return width.nm <= 2 * sb_saw_widest(saw, mitre, bevel).nm && sb_saw_swings(saw, mitre) == SB_REACHES &&
           sb_saw_tilts(saw, bevel) == SB_REACHES;
}

sb_way_to_cut sb_saw_way(const sb_saw *saw, sb_angle mitre, sb_angle bevel, sb_length width) {
    sb_length widest = sb_saw_widest(saw, mitre, bevel);
    if (sb_saw_tilts(saw, bevel) == SB_REACHES_NOT)
        return SB_WAY_BY_HAND;
    if (sb_saw_swings(saw, mitre) == SB_REACHES_NOT)
        return sb_saw_swings(saw, (sb_angle){90000000 - size_of(mitre)}) == SB_REACHES_NOT ? SB_WAY_BY_HAND
                                                                                           : SB_WAY_AUXILIARY;
    if (widest.nm == 0 || width.nm <= widest.nm)
        return SB_WAY_PLAIN;
    return from_both_edges(saw, mitre, bevel, width) ? SB_WAY_BOTH_EDGES : SB_WAY_BY_HAND;
}
