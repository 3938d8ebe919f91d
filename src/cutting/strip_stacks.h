/* cutting/strip_stacks.h -- what may lie side by side across a strip: S(u, v) of sheet_worth.h. */
#ifndef CUTTING_STRIP_STACKS_H
#define CUTTING_STRIP_STACKS_H

#include "cutting/sheet_worth.h"

/* Panes equally long in v, side by side; made by putting one more on another stack. */
typedef struct sb_stack_step {
    int64_t u, v, worth;
    size_t pane; /* the last that was put on */
    bool turned;
    size_t below;  /* the stack under it, into steps; SIZE_MAX: none */
    int64_t limit; /* times in one strip; INT64_MAX: not known */
} sb_stack_step;

typedef struct sb_stack_at {
    int64_t u;
    size_t step;
} sb_stack_at;

typedef struct sb_stacks {
    const sb_sheet_bench *bench;
    sb_lying_panes panes; /* w is u and l is v here, whichever way strips run; by falling l */
    int64_t widest;
    SB_LIST(sb_stack_step) steps;
    SB_LIST(size_t) front, merged; /* stacks of one length, each wider worth more than the last; into steps */
    SB_LIST(sb_stack_at) order;    /* all stacks, by rising width */
} sb_stacks;

void sb_stacks_start(sb_stacks *s, const sb_sheet_bench *bench, const int64_t *unit, int64_t widest);
/* Fills steps and order for these duals. */
void sb_stacks_list(sb_stacks *s, const int64_t *duals);
/* With its inner kerfs [nm]. */
int64_t sb_stack_width(const sb_stacks *s, size_t step);

#endif
