/* How far a saw swings and tilts, and whether that does for a cut. */
#include "sawbill/shop.h"

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
