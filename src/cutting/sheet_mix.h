/* cutting/sheet_mix.h -- a bound for the cost of sheets by column generation.
 *
 * The program of sheet_program.h over sheets that hold a pane more often than is wanted, if that is worth most
 * (sheet_worth.h), each at the least it costs. It is a guide to duals; what these prove (sheet_proof.h) is a bound whether
 * or not the program is solved to the end. What can be cut of the sheets it finds becomes a column for plans.
 */
#ifndef CUTTING_SHEET_MIX_H
#define CUTTING_SHEET_MIX_H

#include "cutting/sheet_columns.h"
#include "cutting/sheet_proof.h"
#include "cutting/sheet_worth.h"

typedef struct sb_sheet_mix {
    const sb_sheet_bench *bench;
    sb_sheet_search *s;
    sb_sheet_columns *found;
    sb_sheet_program *program;   /* every offer has a row */
    sb_worths *worths;           /* of the duals last priced */
    int64_t *demand, *available; /* all there is to be made; so many sheets as could be used */
    double *duals;               /* y by pane [thousandths] */
    int64_t *whole, *made;       /* y as the proof counts it; of one sheet */
    SB_LIST(int64_t *) columns;  /* what each makes, by pane */
} sb_sheet_mix;

/* NULL where no duals help, or without memory. Starts from the columns there are. Fine: sizes are hardly rounded, which is
 * many times the work in any number of stages; up to three are fine as it is. */
sb_sheet_mix *sb_sheet_mix_new(sb_sheet_search *s, sb_sheet_columns *columns, bool fine);
/* Raises the search's bound, until it meets the best plan, no sheet improves the mix or the work is used up. */
void sb_sheet_mix_solve(sb_sheet_mix *m);
/* Solves the program as it is and values the sheets at its duals; false when that fails. */
bool sb_sheet_mix_price(sb_sheet_mix *m);
/* What the duals last priced show. */
sb_sheet_proof sb_sheet_mix_proof(const sb_sheet_mix *m);
/* Adds the sheets that are worth more than they cost at these duals; false when there are none. */
bool sb_sheet_mix_add_improving(sb_sheet_mix *m);

#endif
