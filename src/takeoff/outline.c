/* The surface of a finished part.
 *
 * A part of length L over its long points, width W and thickness T has ends that lean by mitre m and bevel b. An
 * end runs W tan m across the width and T tan b / cos m through the thickness, so halfway between its points the part is
 * shorter by half of that, and that mean length gives its two faces (W each), its two edges (T each) and its volume
 * exactly. An end has the area W T / (cos m cos b).
 */
#include "takeoff/inside.h"

#include <math.h>

static double cosine(sb_angle angle) {
    return cos((double)angle.udeg * 1e-6 * 3.14159265358979323846 / 180);
}

static bool square(sb_cut_end end) {
    return end.mitre.udeg == 0 && end.bevel.udeg == 0;
}

static int64_t half_run(const sb_part *part, sb_cut_end end) {
    if (square(end))
        return 0;
    double across = (double)sb_mitre_run(part->width, end.mitre).nm;
    double through = (double)sb_mitre_run(part->thickness, end.bevel).nm / cosine(end.mitre);
    return llround((across + through) / 2);
}

sb_length takeoff_mean_length(const sb_part *part) {
    int64_t mean = sb_sub(part->length.nm, sb_add(half_run(part, part->end1), half_run(part, part->end2)));
    return (sb_length){mean > 0 ? mean : 0};
}

static int64_t end_area(const sb_part *part, sb_cut_end end) {
    int64_t area = sb_length_area(part->width, part->thickness).um2;
    return square(end) ? area : llround((double)area / (cosine(end.mitre) * cosine(end.bevel)));
}

void takeoff_outline(takeoff_parting *parting) {
    const sb_recipe_part *line = parting->line;
    sb_part *part = &parting->part;
    sb_length mean = takeoff_mean_length(part);
    int64_t face = sb_length_area(mean, part->width).um2, edge = sb_length_area(mean, part->thickness).um2;
    int64_t ends = sb_add(end_area(part, part->end1), end_area(part, part->end2));
    part->area_ends.um2 = ends;
    part->area_all.um2 = sb_add(sb_mul(2, sb_add(face, edge)), ends);
    part->area_outside.um2 = face;
    if (line->outside_given)
        part->area_outside.um2 =
            sb_add(sb_add(sb_mul(face, line->outside_faces), sb_mul(edge, line->outside_edges)),
                   sb_mul_div(ends, line->outside_ends, 2));
}
