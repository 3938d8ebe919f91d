/* cutting/measured.h -- loads on boards whose knots and splits are known (the geometry stands in sawbill/cutting.h).
 *
 * A part behind another, or first on the board, begins at the least place s that is either
 *   c   directly behind the part before it (junction c), at the trued end (c = 0), or
 *   max(t, m)   behind the end t of a stretch that it would touch further in front, where m leaves room for the rear
 *       kerf of the part before and its own front kerf,
 * and at which it touches nothing that it avoids. To begin later never helps it, so that a load is laid by its order
 * alone. The order: of every sub-load the one that ends soonest, then with fewest cuts (a dynamic program over the
 * numbers of each kind); where there are too many sub-loads, part by part, each time the one with the least gap.
 *
 * Square parts that no fault is in the way of lie as on other boards. Between angled ends the order found need not be the
 * best. The bound does not lean on any of this: a load costs there what it costs on a board without faults, with a cut
 * more and less left where square parts cannot follow each other directly; loads without a place do not count, nor such as
 * have more than `most` of a kind (measured_worth.c).
 */
#ifndef CUTTING_MEASURED_H
#define CUTTING_MEASURED_H

#include "cutting/duals.h"

sb_avoids sb_need_avoids(const sb_need *need);
void sb_faults_of(sb_run *run, const sb_supply *supply, sb_offered *on);
/* Once kinds and boards are known. */
void sb_measure_boards(sb_bench *bench);

/* Where a part may begin. `close`: directly behind the one before; `apart`: behind a cut of that one's and one of its own. */
int64_t sb_first_place(const sb_offered *on, sb_avoids avoids, int64_t length, int64_t close, int64_t apart);
/* In bench->scratch->found until the next call; NULL when no place was found for the load. */
const sb_layout *sb_measured_layout(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
sb_outcome sb_measured_outcome(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
/* Leftover, offcut and what is cut away, for a layout on that board. */
void sb_measured_record(const sb_bench *bench, size_t board, const sb_layout *layout, sb_board_plan *plan);

/* A good load by the value of each kind [thousandths], at most `limits` of each; false when nothing fits. */
bool sb_measured_load(const sb_bench *bench, size_t board, const double *values, const int64_t *limits,
                      sb_pick *out);

/* False where a load has no place, for all that the kerfs may be. */
bool sb_measured_may_fit(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
/* The same of what a knapsack tries, with one part more of item `more`; SIZE_MAX: none. */
bool sb_measured_trial_may_fit(const sb_bench *bench, size_t board, const sb_knapsack *k, size_t more);
/* Of square parts: no less than this, wherever they lie. Of what a knapsack tries: how much more that is than without faults. */
int64_t sb_measured_least_cost(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
int64_t sb_measured_excess(const sb_bench *bench, size_t board, const sb_knapsack *k);
/* Lowers the worth's `upper` to that of loads that have a place; as far as the work goes. */
void sb_measured_worth(const sb_bench *bench, size_t board, const sb_valuing *by, sb_worth *out);

/* In cost.c. What comes of a load if the board had no faults. */
sb_outcome sb_faultless_outcome(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
int64_t sb_load_settings(const sb_bench *bench, const sb_lot *lots, size_t count);

#endif
