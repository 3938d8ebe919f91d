/* cutting/sheet_columns.h -- sheets that could be cut, laid out in full, and the cheapest mix of them.
 *
 * The program of sheet_program.h over sheets that make no more of a pane than is wanted, each at what it really costs.
 * Sheets that would make more than is still to be made stand aside.
 */
#ifndef CUTTING_SHEET_COLUMNS_H
#define CUTTING_SHEET_COLUMNS_H

#include "cutting/sheet_program.h"
#include "cutting/sheet_search.h"

typedef struct sb_sheet_columns {
    const sb_sheet_bench *bench;
    sb_sheet_program *program;
    const int64_t *demand, *available; /* still to be made, still there: the caller's */
    SB_LIST(sb_laid) laid;             /* count: 1 while it may be used, else 0 */
    SB_LIST(uint64_t) keys;            /* of what each makes */
    double *duals;                     /* by pane [thousandths] */
    double *cost;                      /* by offer: what a sheet costs at least */
    SB_LIST(double) times;             /* by column, of the last solve */
    double value;                      /* of the last solve [thousandths] */
} sb_sheet_columns;

sb_sheet_columns *sb_sheet_columns_new(const sb_sheet_bench *bench, const int64_t *demand,
                                       const int64_t *available);
/* False when one that makes the same is there already, as cheap. */
bool sb_sheet_columns_add(sb_sheet_columns *c, const sb_laid *laid);
/* After demand or available have changed. */
void sb_sheet_columns_refit(sb_sheet_columns *c);
/* Solves and adds sheets in turn, for at most so many rounds. False when the program could not be solved. */
bool sb_sheet_columns_solve(sb_sheet_columns *c, sb_sheet_search *s, int rounds);

#endif
