/* cutting/cheapest.h -- the cheapest whole numbers of boards that cover every row.
 *
 *   minimise   sum of p_s n_s                    0 <= n_s <= most_s, whole
 *   such that  sum of z_ks n_s >= total_k        for every row k
 *              n is not ruled out (with n goes all that is less in every number)
 *
 * Depth first, the boards that are cheapest for their worth last. A branch ends where a row lacks more than the boards
 * still to come can be worth at the limit, by their best price for worth and by tables of what each amount of money buys.
 */
#ifndef CUTTING_CHEAPEST_H
#define CUTTING_CHEAPEST_H

#include "sawbill/text.h"

#define SB_CHEAPEST_ROWS 64 /* at most */

typedef struct sb_cover_row {
    int64_t total, *worths; /* z by board, not negative */
    double *ratio;          /* by place: what a unit of worth costs at least from there on */
    int64_t *reach;         /* by place and money: the most worth it buys from there on; NULL: not tabled */
} sb_cover_row;

typedef struct sb_cheapest {
    sb_pool *pool;
    size_t boards;
    const int64_t *prices, *most;
    SB_LIST(sb_cover_row) rows;
    bool (*is_out)(const void *context, const int64_t *numbers); /* NULL: nothing is ruled out */
    const void *context;
    int64_t *found, cost; /* out */
    /* the search's own */
    size_t *order; /* boards by place */
    int64_t unit;  /* of money in the tables; 0: there are none */
    int64_t *now, *lacks, limit, nodes;
} sb_cheapest;

typedef enum sb_cheapest_end {
    SB_CHEAPEST_FOUND,
    SB_CHEAPEST_NONE, /* nothing costs so little */
    SB_CHEAPEST_OPEN  /* the nodes were used up */
} sb_cheapest_end;

/* No limit will be above `dearest`. Prices are not negative; the arrays stay the caller's. */
sb_cheapest sb_cheapest_new(sb_pool *pool, size_t boards, const int64_t *prices, const int64_t *most,
                            int64_t dearest);
/* The first row tells the order of the search. */
void sb_cheapest_row(sb_cheapest *c, const int64_t *worths, int64_t total);
/* The cheapest that cost no more than the limit; *nodes is what the search may use, and what is left of it. */
sb_cheapest_end sb_cheapest_find(sb_cheapest *c, int64_t limit, int64_t *nodes);

#endif
