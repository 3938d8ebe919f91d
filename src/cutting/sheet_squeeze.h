/* cutting/sheet_squeeze.h -- the parts of a plan in strips squeezed into cheaper sheets.
 *
 * Numbers of sheets that cost less than the best plan, and that the duals do not rule out, are chosen first
 * (sheet_targets.h). With them fixed, strips are taken out and filled anew, again and again, so that the parts left over
 * are worth less and less at the duals; now and then a little more is let pass, less and less of it. When nothing is left
 * over, that is a cheaper plan.
 */
#ifndef CUTTING_SHEET_SQUEEZE_H
#define CUTTING_SHEET_SQUEEZE_H

#include "cutting/sheet_mix.h"

/* Tries until the best plan costs no more than the bound or the work is used up. In strips only. */
void sb_sheets_squeeze(sb_sheet_search *s, sb_sheet_mix *m);

#endif
