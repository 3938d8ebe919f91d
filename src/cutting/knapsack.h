/* cutting/knapsack.h -- the best filling of one length.
 *
 *   maximise   sum of value_i x_i - setup_i [x_i > 0]
 *   such that  sum of size_i x_i <= capacity,  0 <= x_i <= limit_i, whole, at least one x_i > 0
 *
 * Depth first over the items by falling worth per length, cut off where even the best remaining worth per
 * length cannot beat what is known. After `steps` nodes it stops; `upper` is then still proven, though not
 * reached.
 */
#ifndef CUTTING_KNAPSACK_H
#define CUTTING_KNAPSACK_H

#include "sawbill/text.h"

typedef struct sb_knap_item {
    int64_t size, value, limit, setup;
    size_t tag;    /* the caller's own */
    int64_t taken; /* out */
    /* the search's own */
    int64_t most, trial, smallest;
    double density;
} sb_knap_item;

typedef struct sb_knapsack {
    SB_LIST(sb_knap_item) items; /* sorted anew by every solve */
    int64_t capacity;
    int64_t steps; /* in: nodes allowed; out: nodes left */
    bool any;      /* out: something fits */
    int64_t best;  /* out: of the filling in `taken`; INT64_MIN when nothing fits */
    int64_t upper; /* out: no filling is worth more */
} sb_knapsack;

/* Values below 1e12, sizes positive. */
void sb_knapsack_solve(sb_knapsack *k);

#endif
