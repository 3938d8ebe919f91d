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

sb_reach sb_saw_reach(const sb_saw *saw, sb_angle mitre, sb_angle bevel) {
    int64_t swing = sb_saw_swing(saw).udeg, tilt = sb_saw_tilt(saw).udeg;
    if (swing > 0 && size_of(mitre) > swing)
        return SB_SWINGS_TOO_LITTLE;
    if (tilt > 0 && size_of(bevel) > tilt)
        return SB_TILTS_TOO_LITTLE;
    if (swing > 0 && size_of(mitre) > saw->mitre_right.udeg)
        return SB_REACHES_LEFT_ONLY;
    return swing > 0 && size_of(mitre) > saw->mitre_left.udeg ? SB_REACHES_RIGHT_ONLY : SB_REACHES;
}
