/* cutting/sheet_bend.h -- sheets in strips, found by bending the worths of parts.
 *
 * The strips that are worth most at the duals y (sheet_worth.h) often hold a pane more often than it is wanted. Such a
 * pane is then counted for less,
 *   y_i - t_i,  where t_i rises with every piece too many and falls again where there is room for more,
 * and the strips are chosen anew. The widths found each time are filled with what is really wanted.
 */
#ifndef CUTTING_SHEET_BEND_H
#define CUTTING_SHEET_BEND_H

#include "cutting/sheet_search.h"

struct sb_bending *sb_bending_new(const sb_sheet_bench *bench); /* NULL where strips cannot be valued */
/* The search's worths are the duals. Sheets worth no more than `cost`, by offer, are of no interest; NULL: all are. */
void sb_sheets_bend(struct sb_bending *b, sb_sheet_search *s, const double *cost, sb_sheet_visit *visit,
                    void *context);

#endif
