/* cutting/sheet_mix.h -- the linear program that bounds the cost of sheets, by column generation.
 *
 *   minimise   sum over patterns j of  c_s x_j                                   x_j >= 0
 *   such that  sum of a_ij x_j >= d_i                   for every pane i         (dual y_i)
 *              sum of x_j over those on s <= n_s        where n_s is a limit
 *
 * Patterns are what sheet_worth.h finds, so they may hold a pane more often than is wanted: the program is a guide to
 * duals. What these prove (sheet_proof.h) is a bound whether or not the program is solved to the end.
 */
#ifndef CUTTING_SHEET_MIX_H
#define CUTTING_SHEET_MIX_H

#include "cutting/sheets.h"

/* Raises `bound`; stops once it meets the cost of `best`. `duals` by pane gets what the parts are worth [thousandths];
 * false: nothing was found. */
bool sb_sheet_mix(const sb_sheet_bench *bench, const sb_laying *best, sb_bound *bound, double *duals);

#endif
