/* cutting/knapsack.h -- the best filling of one length.
 *
 *   maximise   sum of value_i x_i - setup_i [x_i > 0]
 *   such that  sum of size_i x_i <= capacity,  0 <= x_i <= limit_i, whole, at least one x_i > 0
 *
 * First depth first over the items by falling worth per length, cut off where even the best remaining worth per
 * length cannot beat what is known, or where the one or two items that still fit cannot. When the nodes allowed are
 * used up, by lists of states if asked: of the fillings of the first i items only those are kept that no other
 * undercuts in length and beats in worth, and that can still win (knapsack_lists.c). Neither needs a grid.
 */
#ifndef CUTTING_KNAPSACK_H
#define CUTTING_KNAPSACK_H

#include "sawbill/text.h"

typedef struct sb_knap_item {
    int64_t size, value, limit, setup;
    size_t tag;    /* the caller's own */
    int64_t taken; /* out */
    /* the search's own */
    int64_t most, trial;
    int64_t smallest, shortest; /* from this item on: of those that bring something, of those that can be taken */
    double density;
} sb_knap_item;

typedef struct sb_knap_single { /* what one more item can bring */
    int64_t size, value;
    int64_t most; /* of this and all smaller ones */
} sb_knap_single;

typedef struct sb_knap_state { /* one filling of the first items */
    int64_t size, worth;
    size_t from; /* the state it grew from; SIZE_MAX: nothing */
    size_t item;
    int64_t count;
} sb_knap_state;

typedef struct sb_knapsack {
    SB_LIST(sb_knap_item) items; /* sorted anew by every solve */
    int64_t capacity;
    int64_t steps; /* in: nodes allowed; out: nodes left, below 0 when lists were needed */
    int64_t floor; /* in: fillings worth no more are of no interest; INT64_MIN: all are */
    bool exact;    /* in: when the nodes are used up, go on by lists */
    bool any;      /* out: something of interest fits */
    int64_t best;  /* out: of the filling in `taken`; `floor` when there is none of interest */
    int64_t upper; /* out: no filling is worth more; INT64_MIN when nothing fits */
    /* the search's own, used again and again */
    sb_pool *pool;
    bool open; /* nodes were left out */
    SB_LIST(sb_knap_single) singles;
    SB_LIST(sb_knap_state) states;
    SB_LIST(size_t) base, line, next;
} sb_knapsack;

/* Values below 1e12, sizes positive. */
void sb_knapsack_solve(sb_pool *pool, sb_knapsack *k);

/* Every filling worth more than `floor`, in `trial`; false from `visit` breaks off. False when broken off or when
 * the nodes were used up. */
typedef bool sb_knap_visit(void *context, const sb_knapsack *k, int64_t worth, int64_t room);
bool sb_knapsack_all(sb_pool *pool, sb_knapsack *k, sb_knap_visit *visit, void *context);

/* For its own files only. */
void sb_knapsack_prepare(sb_pool *pool, sb_knapsack *k);
/* True when nothing below this node can beat `best`; otherwise *reach is the most it can come to. */
bool sb_knapsack_is_beaten(const sb_knapsack *k, size_t i, int64_t room, int64_t worth, double *reach);
/* No filling of `room` from item i on is worth more. */
double sb_knapsack_ceiling(const sb_knapsack *k, size_t i, int64_t room);
/* False when there were too many states; otherwise `best` and `upper` are exact. */
bool sb_knapsack_by_lists(sb_knapsack *k);
/* Rounding noise of the densities, far below one unit of value. */
#define SB_KNAP_NOISE 0.01

#endif
