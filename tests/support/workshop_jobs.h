/* support/workshop_jobs.h -- random jobs as a workshop has them, the same on every machine.
 *
 * Small: 5 to 20 lengths of 150 to 2400 mm on a grid of 0.5 mm, 1 to 12 of each; 3 to 6 stock lengths of 2400 to
 * 6000 mm, prices off proportion by up to 12 %; up to 6 leftovers; kerf 3 mm. Large: 5 to 60 lengths, 1 to 200 of
 * each. Rack pieces cost nothing. With handling: a change of the stop costs 0.40, stop settings and leftovers are priced,
 * and a rack piece costs what it would be credited.
 */
#ifndef SUPPORT_WORKSHOP_JOBS_H
#define SUPPORT_WORKSHOP_JOBS_H

#include "sawbill/cutting.h"

typedef enum workshop_kind {
    WORKSHOP_SMALL,
    WORKSHOP_LARGE,
    WORKSHOP_HANDLING
} workshop_kind;

/* Job number `index` of its kind. */
sb_problem *workshop_job(sb_run *run, workshop_kind kind, uint32_t index);
/* The same with so many different lengths, and so many parts in all. */
sb_problem *workshop_job_of(sb_run *run, workshop_kind kind, uint32_t index, uint32_t kinds, uint32_t parts);

#endif
