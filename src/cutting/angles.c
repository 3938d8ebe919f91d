/* Saw settings: what the scales of the saw must show, and what an angled cut takes along the board. */
#include <math.h>

#include "sawbill/cutting.h"

#define DEGREE (3.14159265358979323846 / 180)
/* Noise of the trigonometry in nm: taken off before rounding up, so that 2 x 3.2 mm stays 6.4 mm. */
#define NOISE 1e-3

static double radians(sb_angle angle) {
    return (double)angle.udeg * 1e-6 * DEGREE;
}

/* Half the outside angle of the corner takes the place of 180/n: both are the angle a flat frame is mitred
 * at. */
static sb_saw_setting corner_of(double half_turn, double pitch, bool butted) {
    double turn = half_turn * DEGREE, slope = pitch * DEGREE;
    double mitre = atan2(cos(slope) * sin(turn), cos(turn)) / DEGREE;
    double bevel = asin(sin(slope) * sin(turn)) / DEGREE;
    return (sb_saw_setting){mitre, butted ? 90 - 2 * bevel : bevel};
}

bool sb_saw_frame(int sides, sb_saw_setting *out) {
    return sb_saw_splayed(sides, 0, false, out);
}

bool sb_saw_splayed(int sides, double pitch, bool butted, sb_saw_setting *out) {
    return sides >= 3 && sb_saw_corner(180 - 360.0 / sides, pitch, butted, out);
}

bool sb_saw_corner(double corner, double pitch, bool butted, sb_saw_setting *out) {
    if (!(corner > 0 && corner < 180 && pitch >= 0 && pitch <= 90))
        return false;
    *out = corner_of(90 - corner / 2, pitch, butted);
    return true;
}

/* The moulding is a side that slopes by what the spring angle lacks of a right one. */
bool sb_saw_crown(double spring, double corner, sb_saw_setting *out) {
    return sb_saw_corner(corner, 90 - spring, false, out);
}

sb_length sb_mitre_run(sb_length width, sb_angle mitre) {
    return (sb_length){llround((double)width.nm * fabs(tan(radians(mitre))))};
}

sb_length sb_kerf_along(sb_length kerf, sb_cut_end end) {
    double along = (double)kerf.nm / (cos(radians(end.mitre)) * cos(radians(end.bevel)));
    return (sb_length){(int64_t)ceil(along - NOISE)};
}
