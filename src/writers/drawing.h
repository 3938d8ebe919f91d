/* A drawing with every label in its place. */
#ifndef WRITERS_DRAWING_H
#define WRITERS_DRAWING_H

#include "writers/ink.h"

/* As wide as that at the most, and no taller where a smaller scale can help it. */
ink drawing_ink(sb_run *run, const type_case *type, const sb_drawing *drawing, double width, double height);

#endif
