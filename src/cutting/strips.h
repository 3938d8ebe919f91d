/* cutting/strips.h -- one sheet in strips: strips side by side, in each strip stacks end to end, in each stack
 * parts side by side.
 *
 * u runs across the strips, v along them. With the kerf k added to every size and to the room,
 *   strips of a sheet:  sum of (u + k) <= U + k
 *   stacks of a strip:  sum of (v + k) <= V + k
 *   parts of a stack:   sum of (u + k) <= u of the strip + k
 * All parts of a stack are equally long in v. Two stages allow only parts as wide as their strip; with trims a
 * stack is one part, wide as it may be.
 */
#ifndef CUTTING_STRIPS_H
#define CUTTING_STRIPS_H

#include "cutting/sheets.h"

#define SB_STACKED 8 /* parts in a stack at most */

/* A pane one way round. */
typedef struct sb_lay {
    size_t pane;
    bool turned;
    int64_t u, v;
    size_t first, behind; /* the range of those equally long in v, in the list they stand in */
} sb_lay;

typedef struct sb_stack {
    int64_t v;
    double worth;
    size_t parts;
    const sb_lay *part[SB_STACKED];
} sb_stack;

typedef struct sb_strip {
    int64_t u;
    double worth;
    SB_LIST(sb_stack) stacks; /* in the order they are cut */
} sb_strip;

struct sb_stripping {
    const sb_sheet_filling *f;
    const sb_sheet_bench *bench;
    bool crosscut; /* strips lie across the sheet */
    int stages;    /* 2, 3; with trims 2 lets parts be narrower than the strip */
    bool trims;
    SB_LIST(sb_lay) lays[2]; /* strips along the sheet; across it. By falling v, then falling u */
    int64_t *open;           /* by pane: still to be made, without what lies on this sheet */
    int64_t *left;           /* ... nor in the strip being filled */
    SB_LIST(const sb_lay *) listed; /* those of which some were open when they were listed, in the same order */
    SB_LIST(sb_stack) choices;
    sb_knapsack knapsack;
    sb_strip best, tried;
    double scale; /* from worths to whole numbers */
};

/* To be called when `open` has grown, before strips are filled. */
void sb_strips_list(struct sb_stripping *s);
/* Fills `to`, a strip of width u, out of what is open. */
void sb_strip_fill(struct sb_stripping *s, sb_strip *to, int64_t u, int64_t length);

/* Ready to fill strips out of this; the filling stays the caller's. */
struct sb_stripping *sb_strips_start(const sb_sheet_filling *f);
/* Cuts the strip off the node. False when the saw cannot. Gives the rest of the sheet in *node; SIZE_MAX: none. */
bool sb_strip_cut(struct sb_stripping *s, sb_laid *out, size_t *node, const sb_strip *of);

#endif
