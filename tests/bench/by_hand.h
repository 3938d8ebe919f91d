/* bench/by_hand.h -- two plain ways to lay out sheets, to compare with: on their own code, material alone.
 *
 * Each takes one size of sheet for the whole job; the cheapest size counts. Parts too large for a size rule it out.
 */
#ifndef BENCH_BY_HAND_H
#define BENCH_BY_HAND_H

#include "sawbill/cutting.h"

/* First-fit decreasing height: parts by falling width, each into the first strip it fits, else a new strip on the first
 * sheet with room for it, else a new sheet. */
int64_t by_hand_shelves(sb_run *run, const sb_problem *problem);
/* Parts by falling area, each into the free rectangle with least area to spare, which is then cut along the longer
 * rest. */
int64_t by_hand_best_fit(sb_run *run, const sb_problem *problem);

#endif
