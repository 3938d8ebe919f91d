/* cutting/check.h -- the independent checker: shares nothing with the planner but the public types.
 *
 * Every file of it works from the plan and the problem alone and computes kerfs, positions, cuts and costs
 * anew.
 */
#ifndef CUTTING_CHECK_H
#define CUTTING_CHECK_H

#include "sawbill/cutting.h"

typedef struct sb_checking {
    sb_run *run;
    const sb_plan *plan;
    bool sound;
} sb_checking;

/* Refuses the plan: "board 3: ..." */
void sb_refuse(sb_checking *c, const char *what, size_t index, const char *why);

void sb_check_board(sb_checking *c, size_t index);
void sb_check_sheet(sb_checking *c, size_t index);

#endif
