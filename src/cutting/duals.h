/* cutting/duals.h -- what parts are worth, and the lower bound that follows.
 *
 * Every kind i gets an amount y_i. The worth of a board is the most that the parts on it can come to, after the
 * handling they cause and what the leftover brings:
 *   z = max over loads of  sum of y_i x_i - change * settings - cut * cuts + leftover value
 * Any plan with n_s boards of supply s then costs at least
 *   sum of fixed_s n_s + (sum of y_i d_i - sum of z_s n_s),
 * and where neither handling nor leftovers are priced the bracket cannot be above nothing. All in whole numbers,
 * in 1/scale of a thousandth of the minor unit; only proven values enter.
 */
#ifndef CUTTING_DUALS_H
#define CUTTING_DUALS_H

#include "cutting/boards.h"
#include "cutting/knapsack.h"

typedef struct sb_worth {
    bool any;      /* something of interest fits */
    int64_t best;  /* of the load in `lots` */
    int64_t upper; /* proven: no load is worth more */
    SB_LIST(sb_lot) lots;
} sb_worth;

typedef struct sb_valuing {
    const int64_t *duals; /* by kind */
    int64_t scale;
    bool bare;             /* nothing but the duals counts: no handling, no leftover */
    const int64_t *limits; /* so many of each kind at most; NULL: all that are wanted */
    int64_t floor;         /* loads worth no more are of no interest; INT64_MIN: all are */
} sb_valuing;

int64_t sb_duals_scale(const sb_bench *bench);
/* The load worth most on this board, with at most `steps` nodes for each of its knapsacks. */
void sb_worth_find(const sb_bench *bench, size_t board, const sb_valuing *by, int64_t steps, sb_worth *out);
/* Every load worth more than the floor; false when the visit broke off or the nodes were used up. */
bool sb_worths_all(const sb_bench *bench, size_t board, const sb_valuing *by, int64_t steps,
                   sb_knap_visit *visit, void *context);
/* The least a load can cost, as the bound counts it: its worth with all duals nothing, other sign, plus
 * fixed. */
double sb_load_least_cost(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);

/* Raises `bound` to what these duals prove, where they prove more. */
void sb_bound_try(const sb_bench *bench, const double *duals, sb_bound *bound);
/* The bound by length alone. */
void sb_bound_by_length(const sb_bench *bench, sb_bound *bound);
/* Least whole cost of numbers n_s <= available_s with sum of worth_s n_s >= total; `lack` (cost of one unit
 * of worth not covered, 1 or 0) says whether a lack may be made up. */
typedef struct sb_cover {
    int64_t cost;      /* of one [1/scale thousandths] */
    int64_t worth;     /* > 0 */
    int64_t available; /* INT64_MAX: no limit */
} sb_cover;
int64_t sb_cover_least(sb_run *run, const sb_cover *covers, size_t count, int64_t total, bool lack);

#endif
