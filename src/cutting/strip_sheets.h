/* cutting/strip_sheets.h -- given sheets, each a row of strips, and the parts that have found no room on them yet. */
#ifndef CUTTING_STRIP_SHEETS_H
#define CUTTING_STRIP_SHEETS_H

#include "cutting/sheet_search.h"
#include "cutting/strips.h"

#define SB_ROW 40 /* strips on one sheet at most */

typedef struct sb_strip_sheet {
    size_t offer, count;
    size_t strips[SB_ROW]; /* into strips of the sheets below */
} sb_strip_sheet;

typedef struct sb_strip_sheets {
    const sb_sheet_bench *bench;
    struct sb_stripping *room; /* its `open` tells what has no room yet */
    const double *worth;       /* by pane */
    double over;               /* worth of what has no room yet */
    SB_LIST(sb_strip_sheet) sheets;
    SB_LIST(sb_strip) strips; /* on the sheets, or unused; each with what its parts are worth here */
    SB_LIST(size_t) unused;
} sb_strip_sheets;

/* So many sheets by offer, laid out as in this laying as far as it has them, else empty. */
void sb_strip_sheets_start(sb_strip_sheets *q, const sb_laying *from, const int64_t *numbers);
bool sb_strip_sheets_are_done(const sb_strip_sheets *q); /* everything has found room */
/* Lays them out in `out`, with room for one sheet in `spare`; false when the saw cannot cut them so. */
bool sb_strip_sheets_lay(sb_strip_sheets *q, sb_laid *spare, sb_laying *out);

int64_t sb_strip_sheets_across(const sb_strip_sheets *q, size_t offer); /* room for strips side by side */
int64_t sb_strip_sheets_along(const sb_strip_sheets *q, size_t offer);
/* What the parts of this strip take, no less than is safe to cut. */
int64_t sb_strip_sheets_width(const sb_strip_sheets *q, const sb_strip *strip);
/* The parts of a strip are wanted again (by 1), or have found room (by -1). */
void sb_strip_sheets_count(sb_strip_sheets *q, const sb_strip *strip, int64_t by);
size_t sb_strip_sheets_slot(sb_strip_sheets *q); /* an unused strip */

#endif
