/* papers/relate.h -- relations that the money papers use again and again. Each is rounded to `digits`
 * decimals. */
#ifndef SAWBILL_PAPERS_RELATE_H
#define SAWBILL_PAPERS_RELATE_H

#include "sawbill/document.h"

/* A cell of a table, to be meant by others. */
typedef struct spot {
    const sb_table *table;
    size_t row, column;
} spot;

spot spot_last(const sb_table *table, size_t column); /* in the row added last */
const sb_relation *rel_spot(sb_run *run, spot at);

const sb_relation *rel_product(sb_run *run, const sb_relation *a, const sb_relation *b, int digits);
const sb_relation *rel_ratio(sb_run *run, const sb_relation *a, const sb_relation *b, int digits);
const sb_relation *rel_plus(sb_run *run, const sb_relation *a, const sb_relation *b, int digits);
const sb_relation *rel_less(sb_run *run, const sb_relation *a, const sb_relation *b, int digits);
/* a / (1 + share): what lies before tax; a * (1 + share); a / (1 - share) */
const sb_relation *rel_before(sb_run *run, const sb_relation *a, const sb_relation *share, int digits);
const sb_relation *rel_raised(sb_run *run, const sb_relation *a, const sb_relation *share, int digits);
const sb_relation *rel_with_margin(sb_run *run, const sb_relation *a, const sb_relation *share, int digits);
/* The sum of a column over all rows above the totals. */
const sb_relation *rel_sum_of(sb_run *run, const sb_table *table, size_t column, int digits);

#endif
