/* cutting/sheet_mix.h -- a bound for the cost of sheets by column generation.
 *
 * The program of sheet_program.h over sheets that hold a pane more often than is wanted, if that is worth most
 * (sheet_worth.h), each at its net cost. It is a guide to duals; what these prove (sheet_proof.h) is a bound whether or not
 * the program is solved to the end. What can be cut of the sheets it finds becomes a column for plans.
 */
#ifndef CUTTING_SHEET_MIX_H
#define CUTTING_SHEET_MIX_H

#include "cutting/sheet_columns.h"

/* Raises the search's bound, until it meets the best plan or the work is used up. Starts from the columns there are. */
void sb_sheet_mix(sb_sheet_search *s, sb_sheet_columns *columns);

#endif
