/* cutting/work.h -- how much a search may do, and its dice.
 *
 * Work is counted in steps, so that the same input gives the same plan on any machine. The clock and the
 * user's signal only break a search off.
 */
#ifndef CUTTING_WORK_H
#define CUTTING_WORK_H

#include "sawbill/cutting.h"

typedef struct sb_work {
    const sb_cut_rules *rules;
    double started; /* [s] of a clock that never goes back */
    int64_t left;   /* steps this part of the search may still do */
    uint64_t dice;
    bool broken_off; /* by time or a signal */
    /* What whoever watches is told; see sb_work_show. */
    const char *stock;
    const int64_t *cost;
    const sb_cost *bound;
} sb_work;

sb_work sb_work_start(const sb_cut_rules *rules);
/* From now on, of this stock, whoever watches is told the best plan's cost and the bound. */
void sb_work_show(sb_work *work, const char *stock, const int64_t *cost, const sb_cost *bound);
/* Whoever watches is told that nothing more comes. */
void sb_work_end(const sb_work *work);
/* True while there is work left to spend; looks at the clock too. */
bool sb_work_goes_on(sb_work *work);
/* Time is over or the user asked to stop: what must still be done is done the shortest way. */
bool sb_work_is_broken_off(sb_work *work);
/* Until time is over; 0: there is no such guard. */
double sb_work_seconds(const sb_work *work);
/* A number from 0 to below `sides`, always the same sequence. */
uint64_t sb_work_dice(sb_work *work, uint64_t sides);

#endif
