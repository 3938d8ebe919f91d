/* support/sheet_jobs.h -- random jobs in sheets as a workshop has them, the same on every machine.
 *
 * 4 to 30 kinds of panel of 80 to 600 by 200 to 1200 mm, 1 to 20 of each, a third of them with grain; sheets of 2440 x 1220,
 * 2500 x 1250 and 3050 x 1220 at prices off proportion by up to 8 %; a half and a quarter of the first, up to a
 * quarter dearer for their size; kerf 3.2 mm, trim 10 mm at every edge; three stages.
 */
#ifndef SUPPORT_SHEET_JOBS_H
#define SUPPORT_SHEET_JOBS_H

#include "sawbill/cutting.h"

/* Job number `index`; with handling, sheets, fence settings and cuts are paid for and leftovers have a value. */
sb_problem *sheet_job(sb_run *run, uint32_t index, bool handling);
/* So many kinds and so many panels in all. */
sb_problem *sheet_batch(sb_run *run, uint32_t kinds, uint32_t panels);

#endif
