/* cutting/improve.h -- local improvement, for its two files only. */
#ifndef CUTTING_IMPROVE_H
#define CUTTING_IMPROVE_H

#include "cutting/search.h"

#define SB_GROUP 4 /* most boards taken apart at once */

typedef struct sb_improving {
    const sb_bench *bench;
    sb_filling *f;
    sb_cutting *now, *spare, *found, *tried;
    double *worth;   /* what f's worths were at the start */
    int64_t *left;   /* boards still there */
    int64_t *unmade; /* parts on no board */
    size_t group[SB_GROUP];
    size_t members;
    int64_t group_cost;
    sb_pick sides[2];
} sb_improving;

/* Of the two loads in the group, one part goes over to the other, or two parts change places; each then gets
 * its cheapest board. The outcome is in `found`; false when it does not fit. */
bool sb_exchange(sb_improving *im);

#endif
