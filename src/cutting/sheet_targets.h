/* cutting/sheet_targets.h -- numbers of sheets with which a cheaper plan might do. */
#ifndef CUTTING_SHEET_TARGETS_H
#define CUTTING_SHEET_TARGETS_H

#include "cutting/sheet_mix.h"

/* Numbers by offer that cost no more than the limit and that the duals last priced do not rule out: those with most to
 * spare, less a share of what the best plan has and they have not. NULL: there are none. */
const int64_t *sb_sheet_target(const sb_sheet_mix *m, int64_t limit);

#endif
