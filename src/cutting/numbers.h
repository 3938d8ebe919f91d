/* cutting/numbers.h -- the numbers of boards, where a plan costs only its boards.
 *
 *   n_s    boards of supply s at p_s each: a plan on no more than these costs the sum of p_s n_s at most
 *   row    sum of z_s n_s >= sum of y_i d_i, for duals y and the worth z_s of a board at these: the numbers of every
 *          plan obey it
 *   leaf   numbers that obey every row although no plan lies on them, as the exact finish shows for these boards
 *          alone; nor does one on fewer or shorter ones
 *
 * The cheapest numbers that obey all rows and lie in no leaf are looked for, time and again. Where the linear
 * program cannot make everything on them, its duals are a row that they break; where it can, the exact finish gives
 * the plan, which is then the least of all, or a leaf. Nothing costs less than the numbers last found.
 */
#ifndef CUTTING_NUMBERS_H
#define CUTTING_NUMBERS_H

#include "cutting/search.h"

/* True where neither handling nor leftovers are priced, and there are boards to choose from; but not where one has
 * faults: it does not stand in for a shorter one. */
bool sb_numbers_apply(const sb_bench *bench);
/* Improves `best` and `bound` as far as the work goes, from the duals of the mix on. */
void sb_numbers(const sb_bench *bench, const sb_columns *mix, sb_cutting *best, sb_bound *bound);

#endif
