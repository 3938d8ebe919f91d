/* cutting/columns.h -- column generation: the cheapest mix of loads when boards may be cut in fractions.
 *
 *   minimise   sum over loads l of  c_l x_l                                            x_l >= 0
 *   such that  sum of a_il x_l >= d_i                       for every kind i            (dual y_i)
 *              sum of x_l over the loads on board s <= n_s  where n_s is a limit        (dual -m_s)
 *
 * d and n are what is still to be made and still there: a dive fixes loads, takes them off and goes on. Loads
 * are found as they are needed: the load worth most at the duals y, as long as it is worth more than its board
 * costs. Loads that make more of a kind than is wanted stand aside.
 */
#ifndef CUTTING_COLUMNS_H
#define CUTTING_COLUMNS_H

#include "cutting/boards.h"
#include "cutting/duals.h"
#include "cutting/lp.h"

typedef struct sb_columns {
    const sb_bench *bench;
    sb_lp *lp;
    const int64_t *demand, *available; /* d by kind, n by board: the caller's */
    size_t *row_of_board;              /* SIZE_MAX: more of it than could be used */
    SB_LIST(sb_load) loads;            /* .count: 1 while it may be used, else 0; .cost is not used */
    SB_LIST(sb_lot) lots;
    double *duals; /* y by kind, then -m by row of a limited board [thousandths] */
    double *times; /* x by load, until the next solve */
    size_t rows;
    double value;   /* of the last solve [thousandths] */
    bool converged; /* no load is missing */
    double unit;    /* thousandths to the program's 1 */
    int64_t scale, *whole, *limits;
    sb_worth worth;
    sb_lp_entry *entries;
    SB_LIST(double) room_for_times;
} sb_columns;

/* A program over loads of one kind each, which make everything; NULL without memory. */
sb_columns *sb_columns_new(const sb_bench *bench, const int64_t *demand, const int64_t *available);
void sb_columns_add(sb_columns *c, size_t board, const sb_lot *lots, size_t count);
/* After demand or available have changed. */
void sb_columns_refit(sb_columns *c);
/* Solves and adds loads in turn, for at most so many rounds. False when the program could not be solved. */
bool sb_columns_solve(sb_columns *c, size_t rounds);

#endif
