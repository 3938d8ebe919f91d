/* cutting/dive.h -- whole boards out of the linear program, step by step.
 *
 * A dive fixes what the program cuts in whole numbers (or, where nothing is whole, the load with the largest
 * fraction, once), takes it off what is to be made, prices new loads for the rest and solves again, until nothing
 * is left. On the way down every rest is also finished by the quick ways. The dive ends early where
 *   cost fixed + value of the rest's program > best - grain,
 * since nothing better can follow. The first dive follows the program; further ones set aside one or two of the
 * loads it would fix first (limited discrepancy search).
 */
#ifndef CUTTING_DIVE_H
#define CUTTING_DIVE_H

#include "cutting/search.h"

/* Improves `best` until it costs no more than `target` or the work is used up. The columns serve all dives and end
 * as they were. */
void sb_dive(sb_filling *f, sb_columns *c, sb_cutting *best, int64_t target);

#endif
