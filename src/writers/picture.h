/* A drawing as PNG in memory. */
#ifndef WRITERS_PICTURE_H
#define WRITERS_PICTURE_H

#include "writers/ink.h"

typedef struct picture {
    const unsigned char *bytes; /* [size] */
    size_t size;
    double width, height; /* on paper, points */
    double scale;         /* of its dots, to those of 96 an inch */
} picture;

/* False after a failure notice. */
bool picture_png(sb_run *run, const type_case *type, const sb_drawing *drawing, double width, picture *out);

#endif
