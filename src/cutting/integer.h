/* cutting/integer.h -- an integer program over loads that are all there; CBC solves it.
 *
 *   minimise   sum of c_j x_j                    0 <= x_j <= u_j, whole
 *   such that  lower_i <= sum of a_ij x_j <= upper_i
 */
#ifndef CUTTING_INTEGER_H
#define CUTTING_INTEGER_H

#include "sawbill/text.h"

typedef enum sb_integer_end {
    SB_INTEGER_BEST, /* `x` is a best solution */
    SB_INTEGER_NONE, /* there is none below the cutoff */
    SB_INTEGER_SOME, /* `x` is a solution; the nodes were used up */
    SB_INTEGER_OPEN  /* the nodes were used up without one, or the solver failed */
} sb_integer_end;

typedef struct sb_integer {
    sb_pool *pool;
    size_t rows;
    double *lower, *upper; /* infinite: DBL_MAX with its sign */
    SB_LIST(double) costs, most, amounts; /* most: u */
    SB_LIST(int) starts, row_of;
    double cutoff; /* solutions that cost as much or more are of no interest */
    int nodes;     /* allowed */
    int used;      /* out: nodes looked into */
    double seconds; /* outer guard; 0: none */
    double *x;     /* out, by column */
    double bound;  /* out: no solution costs less, as far as the search came */
} sb_integer;

/* Room for the rows; none is bounded yet. */
sb_integer *sb_integer_new(sb_pool *pool, size_t rows);
/* A column without entries; they follow with sb_integer_enter. */
void sb_integer_column(sb_integer *p, double cost, double most);
void sb_integer_enter(sb_integer *p, size_t row, double amount);
sb_integer_end sb_integer_solve(sb_integer *p);

#endif
