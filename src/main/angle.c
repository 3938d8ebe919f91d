/* main/angle.c -- saw settings for a frame, a splayed box, a point. Both readings, always named. */
#include "main/command.h"

#include <stdlib.h>
#include <string.h>

static const char caution[] = "Cut a trial corner in scrap first. Eyes, ears and dust protected, hands well "
                              "clear of the blade, short pieces clamped; the "
                              "saw maker's manual and local rules come first.";

static bool number_word(const char *text, double least, double most, double *out) {
    char *end;
    *out = strtod(text, &end);
    return *text && *end == '\0' && *out >= least && *out <= most;
}

static sb_angle degrees(double value) {
    return (sb_angle){(int64_t)(value * 1e6 + (value < 0 ? -0.5 : 0.5))};
}

static void add_reading(sb_run *run, sb_table *table, const char *what, double from_square) {
    sb_cell *row = sb_row_add(run, table);
    sb_style style = {SB_UNITS_MM, {SB_NM_PER_MM}, false};
    row[0] = sb_cell_text(what);
    row[1] = sb_cell_text(sb_write_angle(run, degrees(from_square), &style));
    row[2] = sb_cell_text(sb_write_angle(run, degrees(90 - from_square), &style));
}

static bool long_less_short(sb_run *run, const sb_options *options, double mitre, sb_length *run_length,
                            sb_style *style) {
    sb_length width;
    if (!option_length(run, "width", options->width, &width))
        return false;
    bool inches =
        (options->units && strcmp(options->units, "in") == 0) || strpbrk(options->width, "\"'i") != NULL;
    *style = inches ? (sb_style){SB_UNITS_IN, {SB_NM_PER_INCH / 64}, false}
                    : (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 10}, false};
    *run_length = sb_mitre_run(width, degrees(mitre));
    return true;
}

typedef struct answer {
    const char *title, *advice;
    sb_saw_setting setting;
    bool wide; /* the width was told: so is long point less short point */
    sb_length gap;
    sb_style style;
    bool bare; /* no words around the figures */
} answer;

static sb_record *answer_record(sb_run *run, const answer *a) {
    sb_record *record = sb_record_object(run);
    sb_put_text(run, record, "title", a->title);
    sb_put_decimal(run, record, "mitre_from_square", degrees(a->setting.mitre).udeg, 6);
    sb_put_decimal(run, record, "bevel_from_square", degrees(a->setting.bevel).udeg, 6);
    if (a->wide)
        sb_put_length(run, record, "long_point_less_short_point_mm", a->gap);
    return record;
}

static sb_document *answer_document(sb_run *run, const answer *a) {
    sb_document *document = sb_document_new(run, a->title, (sb_date){0}, a->style, (sb_currency){"", 2});
    sb_sheet *sheet = sb_sheet_add(run, document, "Angle");
    sb_heading_add(run, sheet, a->title);
    sb_table *table =
        sb_table_add(run, sheet, "", "Saw setting|Saw's scale, from square>|On the piece, against its edge>");
    add_reading(run, table, "mitre (swing)", a->setting.mitre);
    if (a->setting.bevel != 0)
        add_reading(run, table, "bevel (tilt)", a->setting.bevel);
    if (a->wide)
        sb_paragraph_add(run, sheet,
                         sb_pool_print(run->pool, "Long point less short point, one end: %s.",
                                       sb_write_length_unit(run, a->gap, &a->style)),
                         false);
    if (a->bare)
        return document;
    sb_paragraph_add(run, sheet, a->advice, false);
    sb_paragraph_add(run, sheet, caution, true);
    return document;
}

static void show_setting(sb_run *run, const sb_options *options, const char *title, sb_saw_setting setting,
                         const char *advice) {
    answer a = {.title = title,
                .advice = advice,
                .setting = setting,
                .wide = options->width != NULL,
                .style = {SB_UNITS_MM, {SB_NM_PER_MM / 10}, false},
                .bare = options->quiet};
    if (a.wide && !long_less_short(run, options, setting.mitre, &a.gap, &a.style))
        return;
    const sb_document *document = answer_document(run, &a);
    if (!out_xlsx(run, options, "angle", document))
        return;
    if (options->json)
        show_record(run, answer_record(run, &a));
    else
        show(run, sb_write_text(run, document, 80));
}

static int angle_frame(sb_run *run, const sb_options *options) {
    double sides;
    sb_saw_setting setting;
    if (options->words.count != 2 || !number_word(options->words.items[1], 3, 360, &sides) ||
        sides != (int)sides || !sb_saw_frame((int)sides, &setting))
        return wrong_use("use: sawbill angle frame SIDES, with 3 to 360 sides");
    show_setting(run, options, sb_pool_print(run->pool, "Flat frame of %d sides", (int)sides), setting,
                 "Both ends alike: the long points of a part lie on the same edge, outside.");
    return STATUS_DONE;
}

static int angle_splay(sb_run *run, const sb_options *options) {
    double sides, slope;
    sb_saw_setting setting;
    if (options->words.count != 3 || !number_word(options->words.items[1], 3, 360, &sides) ||
        sides != (int)sides || !number_word(options->words.items[2], 0, 90, &slope) ||
        !sb_saw_splayed((int)sides, slope, options->butt, &setting))
        return wrong_use("use: sawbill angle splay SIDES SLOPE [--butt], the slope of the sides in degrees "
                         "above level (90: upright)");
    show_setting(run, options,
                 sb_pool_print(run->pool, "Box of %d sides sloping %g\xC2\xB0 above level, %s corners",
                               (int)sides, slope, options->butt ? "butted" : "mitred"),
                 setting,
                 "The part lies flat on the table, its outer face up; the far end is cut with the same "
                 "setting mirrored.");
    return STATUS_DONE;
}

/* Two equal cuts that meet at the given angle: each leans half of it against the piece's edge. */
static int angle_point(sb_run *run, const sb_options *options) {
    double angle;
    if (options->words.count != 2 || !number_word(options->words.items[1], 1, 179, &angle))
        return wrong_use("use: sawbill angle point ANGLE, the angle of the finished point, 1 to 179 degrees");
    sb_saw_setting setting = {90 - angle / 2, 0};
    show_setting(run, options, sb_pool_print(run->pool, "Point of %g\xC2\xB0, two equal cuts", angle),
                 setting,
                 setting.mitre > 60 ? "No mitre saw swings this far: clamp the piece to an auxiliary fence "
                                      "square to the saw's own and set "
                                      "the saw to the reading on the piece, or saw it by hand."
                                    : "Make one cut, turn the piece over, make the other.");
    return STATUS_DONE;
}

int command_angle(sb_run *run, const sb_options *options) {
    const char *kind = options->words.items[0];
    if (options->butt && strcmp(kind, "splay") != 0)
        return wrong_use("--butt goes with splay: angle %s has no corners to butt", kind);
    if (strcmp(kind, "frame") == 0)
        return angle_frame(run, options);
    if (strcmp(kind, "splay") == 0)
        return angle_splay(run, options);
    if (strcmp(kind, "point") == 0)
        return angle_point(run, options);
    return wrong_use("angle knows frame, splay and point, not '%s'", kind);
}
