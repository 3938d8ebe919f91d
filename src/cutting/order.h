/* cutting/order.h -- one order for needs and supplies, whatever order their rows are in: the cost of a plan does not
 * hang on it. Rows alike in all that counts keep theirs. */
#ifndef CUTTING_ORDER_H
#define CUTTING_ORDER_H

#include "cutting/boards.h"

/* Of pointers to needs: the longest first, then by all else that tells kinds apart. */
int sb_by_shape(const void *a, const void *b);
/* Of boards on offer: those there are most of, then the shortest first. */
int sb_by_room(const void *a, const void *b);
/* How many kinds of parts each stock has: rows that are alike count once. */
int64_t *sb_kinds_by_stock(sb_pool *pool, const sb_problem *problem);

#endif
