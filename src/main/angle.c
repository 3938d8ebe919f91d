/* main/angle.c -- saw settings without a job: what is asked, kind by kind. */
#include "main/command.h"

#include <stdlib.h>
#include <string.h>

/* A word behind the kind: a number within limits. */
typedef struct figure {
    double least, most;
    bool whole;
} figure;

typedef struct kind_row {
    const char *name;
    sb_angle_kind kind;
    const char *form, *limits;
    figure figures[2];
    size_t least, most; /* how many figures */
} kind_row;

static const kind_row kinds[] = {
    {"frame", SB_ANGLE_FRAME, "SIDES", "3 to 360 sides", {{3, 360, true}}, 1, 1},
    {"splay",
     SB_ANGLE_SPLAY,
     "SIDES SLOPE [--butt]",
     "3 to 360 sides, and their slope in degrees above level (90: upright)",
     {{3, 360, true}, {0, 90, false}},
     2,
     2},
    {"corner",
     SB_ANGLE_CORNER,
     "ANGLE [SLOPE]",
     "the angle between the sides, 1 to 179 degrees, and their slope in degrees above level (0: flat)",
     {{1, 179, false}, {0, 90, false}},
     1,
     2},
    {"point",
     SB_ANGLE_POINT,
     "ANGLE",
     "the angle of the finished point, 1 to 179 degrees",
     {{1, 179, false}},
     1,
     1},
    {"crown",
     SB_ANGLE_CROWN,
     "SPRING CORNER [--outside]",
     "the angle between moulding and wall, 0 to 90 degrees, and that between the walls, 1 to 179",
     {{0, 90, false}, {1, 179, false}},
     2,
     2},
};
enum {
    KIND_COUNT = sizeof kinds / sizeof *kinds
};

static const kind_row *find_kind(const char *name) {
    for (size_t i = 0; i < KIND_COUNT; i++)
        if (strcmp(kinds[i].name, name) == 0)
            return &kinds[i];
    return NULL;
}

static int unknown_kind(const char *name) {
    const char *names[KIND_COUNT];
    for (size_t i = 0; i < KIND_COUNT; i++)
        names[i] = kinds[i].name;
    const char *near = sb_nearest(name, names, KIND_COUNT);
    return wrong_use("angle knows frame, splay, corner, point and crown, not '%s'%s%s%s", name,
                     near ? "; did you mean '" : "", near ? near : "", near ? "'?" : "");
}

static bool read_figure(const char *text, figure within, double *out) {
    char *end;
    *out = strtod(text, &end);
    return *text && *end == '\0' && *out >= within.least && *out <= within.most &&
           (!within.whole || *out == (double)(int)*out);
}

static bool read_figures(const kind_row *row, const sb_options *options, double *figures) {
    size_t count = options->words.count - 1;
    if (count < row->least || count > row->most)
        return false;
    for (size_t i = 0; i < count; i++)
        if (!read_figure(options->words.items[i + 1], row->figures[i], &figures[i]))
            return false;
    return true;
}

/* In the unit the lengths were given in, unless one is asked for. */
static sb_style style_of(const sb_options *options) {
    bool inches = (options->width && strpbrk(options->width, "\"'i")) ||
                  (options->length && strpbrk(options->length, "\"'i"));
    if (options->units)
        inches = strcmp(options->units, "in") == 0;
    return inches ? (sb_style){SB_UNITS_IN, {SB_NM_PER_INCH / 64}, false}
                  : (sb_style){SB_UNITS_MM, {SB_NM_PER_MM / 10}, false};
}

static bool read_lengths(sb_run *run, const sb_options *options, sb_angle_ask *ask) {
    bool read = !options->width || option_length(run, "width", options->width, &ask->width);
    return (!options->length || option_length(run, "length", options->length, &ask->length)) && read;
}

static void put_figures(sb_angle_ask *ask, const double *figures) {
    switch (ask->kind) {
    case SB_ANGLE_FRAME:
    case SB_ANGLE_SPLAY:
        ask->sides = (int)figures[0];
        ask->slope = figures[1];
        break;
    case SB_ANGLE_CORNER:
    case SB_ANGLE_POINT:
        ask->angle = figures[0];
        ask->slope = figures[1];
        break;
    case SB_ANGLE_CROWN:
        ask->spring = figures[0];
        ask->angle = figures[1];
        break;
    }
}

static int answer(sb_run *run, const sb_options *options, const sb_angle_ask *ask) {
    if (!sb_angle_possible(run, ask)) {
        sb_error(run, (sb_place){0}, "the part is too short: its cuts meet before they reach the other edge");
        return STATUS_WRONG_INPUT;
    }
    const sb_document *document = sb_paper_angle(run, ask, options->quiet);
    if (!out_xlsx(run, options, "angle", document))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_angle(run, ask));
    else
        show(run, sb_write_text(run, document, 80));
    return STATUS_DONE;
}

int command_angle(sb_run *run, const sb_options *options) {
    const kind_row *row = find_kind(options->words.items[0]);
    double figures[2] = {0};
    if (!row)
        return unknown_kind(options->words.items[0]);
    if (options->butt && row->kind != SB_ANGLE_SPLAY)
        return wrong_use("--butt goes with splay: angle %s has no corners to butt", row->name);
    if (options->outside && row->kind != SB_ANGLE_CROWN)
        return wrong_use("--outside goes with crown: angle %s is the same inside and outside", row->name);
    if (options->length && !options->width)
        return wrong_use("--length goes with --width: the short points lie where the width puts them");
    if (!read_figures(row, options, figures))
        return wrong_use("use: sawbill angle %s %s, with %s", row->name, row->form, row->limits);
    sb_angle_ask ask = {.kind = row->kind, .butted = options->butt, .outside = options->outside};
    put_figures(&ask, figures);
    ask.style = style_of(options);
    return read_lengths(run, options, &ask) ? answer(run, options, &ask) : STATUS_WRONG_INPUT;
}
