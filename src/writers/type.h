/* Type on paper: one font, named and loaded by itself, so that every machine sets the same lines. */
#ifndef WRITERS_TYPE_H
#define WRITERS_TYPE_H

#include "sawbill/text.h"

#include <pango/pangocairo.h>

#define TYPE_FONT "DejaVu Sans"
/* Sizes, points: nothing is smaller than 9, and numbers that are set or marked are 12. */
enum {
    TYPE_SMALL = 9,
    TYPE_TEXT = 10,
    TYPE_TITLE = 11,
    TYPE_NUMBER = 12,
    TYPE_HEADING = 15
};

typedef struct type_case type_case;

/* NULL after a failure: the font is not there. */
const type_case *type_open(sb_run *run);

/* A text set in lines no wider than `width` points, 0 for as wide as it takes; cleaned first. Lives as long as the run. */
PangoLayout *type_set(sb_run *run, const type_case *type, const char *text, int size, bool strong,
                      double width);
void type_wrap(PangoLayout *layout, double width);
double type_width(PangoLayout *layout);  /* of the widest line, points */
double type_height(PangoLayout *layout); /* of all lines */
double type_longest_word(PangoLayout *layout);

#endif
