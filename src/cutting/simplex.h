/* cutting/simplex.h -- a small linear program that grows by columns.
 *
 *   minimise   sum of c_j x_j                    x_j >= 0
 *   such that  sum of a_ij x_j >= b_i            for the first `covers` rows (parts to be made)
 *              sum of a_ij x_j <= b_i            for the rest (boards that are there)
 *
 * The inverse of the basis is kept in full. The right-hand sides are moved by a hair, each by another one, so
 * that the method cannot run in circles. What comes out is a guide: nothing is proved by it (see bounds.c).
 */
#ifndef CUTTING_SIMPLEX_H
#define CUTTING_SIMPLEX_H

#include "sawbill/text.h"

typedef struct sb_lp_entry {
    size_t row;
    double amount;
} sb_lp_entry;

typedef struct sb_lp_column {
    double cost;
    size_t first, entries; /* into simplex.entries */
    size_t tag;            /* the caller's own; SIZE_MAX for the program's own columns */
} sb_lp_column;

typedef struct sb_simplex {
    sb_pool *pool;
    size_t rows, covers;
    double *wanted;  /* b, moved by a hair */
    double *inverse; /* rows x rows */
    double *basic;   /* value of the basic variable of each row */
    size_t *basis;   /* column of each row */
    double *dual;    /* y: price of each row; <= 0 in the rows of what is there */
    double *direction;
    SB_LIST(sb_lp_column) columns;
    SB_LIST(sb_lp_entry) entries;
    size_t pivots;
} sb_simplex;

/* `missing` is what one unit not covered costs, by covering row. */
sb_simplex *sb_simplex_new(sb_pool *pool, size_t covers, size_t rows, const double *wanted,
                           const double *missing);
void sb_simplex_add(sb_simplex *s, double cost, const sb_lp_entry *entries, size_t count, size_t tag);
/* Runs until no column known improves, or for `pivots`. Duals and basic values are set. */
void sb_simplex_run(sb_simplex *s, size_t pivots);

#endif
