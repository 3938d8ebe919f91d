/* papers/quote_sizes.h -- the units that sizes on the customer's paper are told in. */
#ifndef SAWBILL_PAPERS_QUOTE_SIZES_H
#define SAWBILL_PAPERS_QUOTE_SIZES_H

#include "sawbill/papers.h"

typedef struct quote_sizes {
    sb_style first, second; /* the shop's own unit comes first where there are two */
    bool both;
} quote_sizes;

/* As the job says, else the shop; numbers as the shop's style writes them. */
quote_sizes quote_sizes_of(const sb_shop *shop, const sb_job *job);
/* "1400 x 400 x 500 mm", behind it the same in the second unit in brackets; "" where the recipe gives no size. */
const char *quote_size(sb_run *run, const quote_sizes *sizes, const sb_takeoff_piece *piece);
/* Where there is one unit alone: whether a size of any piece lies between its steps, by more than anybody would miss. */
bool quote_sizes_are_rounded(const quote_sizes *sizes, const sb_ways *ways);

#endif
