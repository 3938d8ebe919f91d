/* Saw settings for a corner, without a job: both readings of each angle, always named, and which points are long. */
#include "sawbill/papers.h"

#include <math.h>

static const char caution[] = "Cut a trial corner in scrap first. Eyes, ears and dust protected, hands well "
                              "clear of the blade, short pieces clamped; the saw maker's manual and local "
                              "rules come first.";

/* What is known of each kind once its setting is. */
typedef struct answer {
    const char *title, *advice;
    sb_saw_setting setting;
    int ends;      /* of a part, cut at this setting */
    bool pointed;  /* both cuts are at one end and meet in the middle of the width */
    sb_length gap; /* long point less short point, one end */
} answer;

static sb_angle degrees(double value) {
    return (sb_angle){llround(value * 1e6)};
}

static const char *angle_words(sb_run *run, const sb_angle_ask *ask, double value) {
    return sb_write_angle(run, degrees(value), &ask->style);
}

/* ---- each kind ---------------------------------------------------------------------------------------- */

static bool answer_frame(sb_run *run, const sb_angle_ask *ask, answer *a) {
    a->title = sb_pool_print(run->pool, "Flat frame of %d sides", ask->sides);
    a->advice = "Both ends alike: the long points of a part lie on the same edge, outside.";
    a->ends = 2;
    return sb_saw_frame(ask->sides, &a->setting);
}

static bool answer_splay(sb_run *run, const sb_angle_ask *ask, answer *a) {
    a->title = sb_pool_print(run->pool, "Box of %d sides sloping %s above level, %s corners", ask->sides,
                             angle_words(run, ask, ask->slope), ask->butted ? "butted" : "mitred");
    a->advice = "The part lies flat on the table, its outer face up; the far end is cut with the same "
                "setting mirrored.";
    a->ends = 2;
    return sb_saw_splayed(ask->sides, ask->slope, ask->butted, &a->setting);
}

static bool answer_corner(sb_run *run, const sb_angle_ask *ask, answer *a) {
    a->title = sb_pool_print(run->pool, "Mitred corner of %s", angle_words(run, ask, ask->angle));
    if (ask->slope > 0)
        a->title = sb_pool_print(run->pool, "%s, sides sloping %s above level", a->title,
                                 angle_words(run, ask, ask->slope));
    a->advice = "Both parts of the corner are cut alike, one mirrored. A corner that was measured is as true "
                "as the measuring: halve what two trial pieces show.";
    a->ends = 1;
    return sb_saw_corner(ask->angle, ask->slope, false, &a->setting);
}

/* Two equal cuts that meet at the given angle: each leans half of it against the piece's edge. */
static bool answer_point(sb_run *run, const sb_angle_ask *ask, answer *a) {
    a->title = sb_pool_print(run->pool, "Point of %s, two equal cuts", angle_words(run, ask, ask->angle));
    a->setting = (sb_saw_setting){90 - ask->angle / 2, 0};
    a->advice = a->setting.mitre > 60 ? "No mitre saw swings this far: clamp the piece to an auxiliary fence "
                                        "square to the saw's own and set the saw to the reading on the "
                                        "piece, or saw it by hand."
                                      : "Make one cut, turn the piece over, make the other.";
    a->ends = 1;
    a->pointed = true;
    return ask->angle > 0 && ask->angle < 180;
}

static bool answer_crown(sb_run *run, const sb_angle_ask *ask, answer *a) {
    a->title = sb_pool_print(run->pool, "Crown moulding, %s to the wall, %s corner of %s",
                             angle_words(run, ask, ask->spring), ask->outside ? "outside" : "inside",
                             angle_words(run, ask, ask->angle));
    a->advice = sb_pool_print(
        run->pool,
        "The moulding lies flat, its face up. On a saw that tilts to the right, right and left change places "
        "in "
        "every column; the edge against the fence stays. Nested upside "
        "down between fence and table at its own slope instead, it is cut at a swing of %s without a tilt.",
        angle_words(run, ask, 90 - ask->angle / 2));
    a->ends = 1;
    return sb_saw_crown(ask->spring, ask->angle, &a->setting);
}

static bool answer_of(sb_run *run, const sb_angle_ask *ask, answer *a) {
    static bool (*const kinds[])(sb_run *, const sb_angle_ask *, answer *) = {
        [SB_ANGLE_FRAME] = answer_frame, [SB_ANGLE_SPLAY] = answer_splay, [SB_ANGLE_CORNER] = answer_corner,
        [SB_ANGLE_POINT] = answer_point, [SB_ANGLE_CROWN] = answer_crown,
    };
    *a = (answer){0};
    if (!kinds[ask->kind](run, ask, a))
        return false;
    sb_length width = {a->pointed ? ask->width.nm / 2 : ask->width.nm};
    a->gap = sb_mitre_run(width, degrees(a->setting.mitre));
    return true;
}

static sb_length short_length(const sb_angle_ask *ask, const answer *a) {
    return sb_length_sub(ask->length, sb_length_times(a->gap, a->ends));
}

bool sb_angle_possible(sb_run *run, const sb_angle_ask *ask) {
    answer a;
    return answer_of(run, ask, &a) && (ask->length.nm == 0 || short_length(ask, &a).nm >= 0);
}

/* ---- on paper ----------------------------------------------------------------------------------------- */

static void add_reading(sb_run *run, const sb_angle_ask *ask, sb_table *table, const char *what,
                        double from_square) {
    sb_cell *row = sb_row_add(run, table);
    row[0] = sb_cell_text(what);
    row[1] = sb_cell_strong(sb_cell_text(angle_words(run, ask, from_square)));
    row[2] = sb_cell_text(angle_words(run, ask, 90 - from_square));
}

static void add_length(sb_run *run, sb_table *table, const char *what, sb_length length) {
    sb_cell *row = sb_row_add(run, table);
    row[0] = sb_cell_text(what);
    row[1] = sb_cell_length(length);
}

static void add_lengths(sb_run *run, const sb_angle_ask *ask, sb_sheet *sheet, const answer *a) {
    if (ask->width.nm == 0)
        return;
    const char *unit = ask->style.units == SB_UNITS_IN ? "Lengths, inches|>" : "Lengths, mm|>";
    sb_table *table = sb_table_add(run, sheet, "", unit);
    if (ask->length.nm > 0)
        add_length(run, table, a->pointed ? "over the point" : "over the long points", ask->length);
    add_length(run, table, a->pointed ? "point beyond its shoulders" : "long point less short point, one end",
               a->gap);
    if (ask->length.nm > 0)
        add_length(run, table,
                   a->pointed     ? "to the shoulders"
                   : a->ends == 1 ? "to the short point, other end square"
                                  : "between the short points",
                   short_length(ask, a));
}

/* Four cuts make the corners of a room; which edge lies against the fence follows from the face being up. The rule is common
 * practice in manuals of saws that tilt to the left; it follows as well from where the long points must be: below at an
 * inside corner, above at an outside one. */
static void add_crown_cuts(sb_run *run, const sb_angle_ask *ask, sb_sheet *sheet) {
    static const char *const cuts[2][2][4] = {
        {{"left of the corner", "ceiling edge", "right", "left of the blade"},
         {"right of the corner", "wall edge", "left", "left of the blade"}},
        {{"left of the corner", "wall edge", "left", "right of the blade"},
         {"right of the corner", "ceiling edge", "right", "right of the blade"}}};
    sb_table *table = sb_table_add(run, sheet, "Blade tilted to the left",
                                   "Piece|Against the fence|Swing to the|Piece kept lies");
    for (size_t i = 0; i < 2; i++) {
        sb_cell *row = sb_row_add(run, table);
        for (size_t j = 0; j < 4; j++)
            row[j] = sb_cell_text(cuts[ask->outside][i][j]);
    }
}

sb_document *sb_paper_angle(sb_run *run, const sb_angle_ask *ask, bool bare) {
    answer a;
    if (!answer_of(run, ask, &a))
        return NULL;
    sb_document *document = sb_document_new(run, a.title, (sb_date){0}, ask->style, (sb_currency){"", 2});
    document->letter = ask->style.units == SB_UNITS_IN;
    sb_sheet *sheet = sb_sheet_add(run, document, "Angle");
    sb_heading_add(run, sheet, a.title);
    sb_table *table =
        sb_table_add(run, sheet, "", "Saw setting|Saw's scale, from square>|On the piece, against its edge>");
    add_reading(run, ask, table, "mitre (swing)", a.setting.mitre);
    if (a.setting.bevel != 0)
        add_reading(run, ask, table, "bevel (tilt)", a.setting.bevel);
    add_lengths(run, ask, sheet, &a);
    if (ask->kind == SB_ANGLE_CROWN)
        add_crown_cuts(run, ask, sheet);
    if (bare)
        return document;
    sb_paragraph_add(run, sheet, a.advice, false);
    sb_paragraph_add(run, sheet, caution, true);
    return document;
}

/* ---- for machines ------------------------------------------------------------------------------------- */

sb_record *sb_record_angle(sb_run *run, const sb_angle_ask *ask) {
    answer a;
    if (!answer_of(run, ask, &a))
        return NULL;
    sb_record *record = sb_record_object(run);
    sb_put_text(run, record, "title", a.title);
    sb_put_decimal(run, record, "mitre_from_square", degrees(a.setting.mitre).udeg, 6);
    sb_put_decimal(run, record, "bevel_from_square", degrees(a.setting.bevel).udeg, 6);
    sb_put_decimal(run, record, "mitre_on_piece", degrees(90 - a.setting.mitre).udeg, 6);
    sb_put_decimal(run, record, "bevel_on_piece", degrees(90 - a.setting.bevel).udeg, 6);
    if (ask->width.nm > 0)
        sb_put_length(run, record, "long_point_less_short_point_mm", a.gap);
    if (ask->width.nm > 0 && ask->length.nm > 0) {
        sb_put_length(run, record, "long_points_mm", ask->length);
        sb_put_length(run, record, "short_points_mm", short_length(ask, &a));
    }
    return record;
}
