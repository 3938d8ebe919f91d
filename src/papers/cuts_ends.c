/* Angles in words: both readings, always named. */
#include "papers/cuts.h"

static const int64_t RIGHT_ANGLE = 90000000;

static int64_t size_of(sb_angle angle) {
    return angle.udeg < 0 ? -angle.udeg : angle.udeg;
}

bool cuts_end_square(sb_cut_end end) {
    return end.mitre.udeg == 0 && end.bevel.udeg == 0;
}

static const char *angle_words(sb_run *run, const char *what, sb_angle angle, const sb_style *style) {
    sb_angle scale = {size_of(angle)}, piece = {RIGHT_ANGLE - size_of(angle)};
    return sb_pool_print(run->pool, "%s %s on the scale (%s on the piece)", what,
                         sb_write_angle(run, scale, style), sb_write_angle(run, piece, style));
}

const char *cuts_end(sb_run *run, sb_cut_end end, const sb_style *style) {
    if (cuts_end_square(end))
        return "square";
    if (end.bevel.udeg == 0)
        return angle_words(run, "mitre", end.mitre, style);
    if (end.mitre.udeg == 0)
        return angle_words(run, "bevel", end.bevel, style);
    return sb_pool_print(run->pool, "%s, %s", angle_words(run, "mitre", end.mitre, style),
                         angle_words(run, "bevel", end.bevel, style));
}

/* Long points on one edge: the part is a trapezoid; on opposite edges: its ends are parallel. */
static const char *lie_words(sb_angle a, sb_angle b, const char *same, const char *opposite) {
    if (a.udeg == 0 || b.udeg == 0)
        return "";
    return (a.udeg > 0) == (b.udeg > 0) ? same : opposite;
}

/* Which face lies on the table where the blade tilts: plus has the long point on the lower one. */
static const char *face_words(sb_angle front, sb_angle rear) {
    if (front.udeg == 0 && rear.udeg == 0)
        return "";
    if (front.udeg == 0 || rear.udeg == 0 || (front.udeg > 0) == (rear.udeg > 0))
        return front.udeg > 0 || rear.udeg > 0 ? "; long face down" : "; long face up";
    return front.udeg > 0 ? "; bevels lean the same way, at the front end the long face down"
                          : "; bevels lean the same way, at the front end the long face up";
}

const char *cuts_ends(sb_run *run, sb_cut_end end1, sb_cut_end end2, const sb_style *style) {
    if (cuts_end_square(end1) && cuts_end_square(end2))
        return "square";
    bool alike = size_of(end1.mitre) == size_of(end2.mitre) && size_of(end1.bevel) == size_of(end2.bevel);
    const char *first = cuts_end(run, end1, style);
    const char *ends =
        alike ? sb_pool_print(run->pool, "both ends %s", first)
              : sb_pool_print(run->pool, "front end %s, rear end %s", first, cuts_end(run, end2, style));
    const char *mitres = lie_words(end1.mitre, end2.mitre, "; long points on the same edge",
                                   "; ends lean the same way, long points on opposite edges");
    return sb_pool_print(run->pool, "%s%s%s", ends, mitres, face_words(end1.bevel, end2.bevel));
}

const char *cuts_setting(sb_run *run, sb_cut_end end, const sb_style *style) {
    sb_angle mitre = {size_of(end.mitre)}, bevel = {size_of(end.bevel)};
    const char *swing = sb_write_angle(run, mitre, style);
    const char *tilt = sb_pool_print(run->pool, "tilt %s", sb_write_angle(run, bevel, style));
    if (bevel.udeg == 0 || mitre.udeg == 0)
        return bevel.udeg == 0 ? swing : tilt;
    return sb_pool_print(run->pool, "%s and %s", swing, tilt);
}

/* Where the long point stands, and the mark at it: plus lies on the far edge, on the lower face. */
static const char *long_point(sb_run *run, sb_cut_end end) {
    const char *edge = end.mitre.udeg > 0 ? "far edge" : "near edge";
    const char *face = end.bevel.udeg > 0 ? "lower face" : "upper face";
    if (end.mitre.udeg == 0 || end.bevel.udeg == 0)
        return end.bevel.udeg == 0 ? edge : face;
    return sb_pool_print(run->pool, "%s, %s", edge, face);
}

static const char *lying_end(sb_run *run, sb_cut_end end, const char *marks, const sb_style *style) {
    return cuts_end_square(end) ? "square"
                                : sb_pool_print(run->pool, "%s (%s: %s)", cuts_setting(run, end, style),
                                                marks, long_point(run, end));
}

const char *cuts_lying_ends(sb_run *run, sb_cut_end front, sb_cut_end rear, const sb_style *style) {
    if (cuts_end_square(front) && cuts_end_square(rear))
        return "square";
    bool alike = front.mitre.udeg == rear.mitre.udeg && front.bevel.udeg == rear.bevel.udeg;
    return alike ? sb_pool_print(run->pool, "both %s", lying_end(run, front, "marks", style))
                 : sb_pool_print(run->pool, "%s, then %s", lying_end(run, front, "mark", style),
                                 lying_end(run, rear, "mark", style));
}

const char *cuts_after_rip(const sb_need *need) {
    if (need->end1.mitre.udeg != 0 || need->end2.mitre.udeg != 0)
        return ", then mitre each strip";
    return need->end1.bevel.udeg != 0 || need->end2.bevel.udeg != 0 ? ", then bevel each strip" : "";
}

const char *cuts_turned(bool turned, bool rolled) {
    if (turned)
        return rolled ? "turned end for end and rolled over" : "turned end for end";
    return rolled ? "rolled over" : "";
}
