/* cutting/lp.h -- a linear program that grows by columns; CLP solves it.
 *
 *   minimise   sum of c_j x_j                    0 <= x_j <= u_j
 *   such that  sum of a_ij x_j >= b_i            for the first `covers` rows (parts to be made)
 *              sum of a_ij x_j <= b_i            for the rest (boards that are there)
 *
 * What is not covered may be made up at a price of its own in every covering row, so that there is always a
 * solution. What comes out is a guide: nothing is proved by it (see bounds.c).
 */
#ifndef CUTTING_LP_H
#define CUTTING_LP_H

#include "sawbill/text.h"

typedef struct sb_lp sb_lp;

typedef struct sb_lp_entry {
    int row;
    double amount;
} sb_lp_entry;

/* `missing` is what one unit not covered costs. Costs near 1 suit the tolerances best. NULL without memory. */
sb_lp *sb_lp_new(sb_pool *pool, size_t covers, size_t rows, const double *wanted, double missing);
/* Columns are numbered from 0; u is without limit. */
void sb_lp_add(sb_lp *lp, double cost, const sb_lp_entry *entries, size_t count);
void sb_lp_want(sb_lp *lp, size_t row, double amount);   /* b */
void sb_lp_limit(sb_lp *lp, size_t column, double most); /* u */
/* Solves anew from where it stood; false when that fails. */
bool sb_lp_solve(sb_lp *lp);
double sb_lp_value(const sb_lp *lp);
double sb_lp_dual(const sb_lp *lp, size_t row);     /* y: <= 0 in the rows of what is there */
double sb_lp_times(const sb_lp *lp, size_t column); /* x */
int64_t sb_lp_pivots(const sb_lp *lp);              /* of all solves so far */

#endif
