/* cutting/sheet_dive.h -- whole plans out of the mix: fix what is surest, look for sheets for the rest, go on.
 *
 * In every step the sheets that the program wants a whole number of times are fixed, or else the one it wants most; what
 * is left is laid out for new duals. The quick way finishes each rest too, so that every step gives a plan. Dives that
 * follow set aside what earlier ones fixed first.
 */
#ifndef CUTTING_SHEET_DIVE_H
#define CUTTING_SHEET_DIVE_H

#include "cutting/sheet_columns.h"

/* Dives until the best plan costs no more than the bound or the work is used up. */
void sb_sheets_dive(sb_sheet_search *s, sb_sheet_columns *c);
/* The best whole numbers of the sheets there are, CBC's word within a limit of nodes. */
void sb_sheets_choose(sb_sheet_search *s, sb_sheet_columns *c);
/* The greatest amount by which the costs of any two plans differ at least [thousandths]. */
int64_t sb_sheets_grain(const sb_sheet_bench *bench);

#endif
