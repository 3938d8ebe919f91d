/* cutting/sheet_mix.h -- a bound for the cost of sheets by column generation.
 *
 * The program of sheet_program.h over sheets that hold a pane more often than is wanted, if that is worth most
 * (sheet_worth.h), each at its net cost. It is a guide to duals; what these prove (sheet_proof.h) is a bound whether or not
 * the program is solved to the end.
 */
#ifndef CUTTING_SHEET_MIX_H
#define CUTTING_SHEET_MIX_H

#include "cutting/sheets.h"

/* Raises `bound`; stops once it meets the cost of `best`. */
void sb_sheet_mix(const sb_sheet_bench *bench, const sb_laying *best, sb_bound *bound);

#endif
