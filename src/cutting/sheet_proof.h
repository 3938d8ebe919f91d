/* cutting/sheet_proof.h -- what shows a lower bound for one stock of sheets: duals of the parts, worths of the sheets.
 *
 * Every pane i has a dual y_i, every offer s a worth z_s that the parts on one sheet never exceed, and a cost c_s
 * that every sheet of it costs at least, its largest leftover taken off, or nothing where that is more. With C for what
 * every plan costs besides, less what all sheets gain whose leftover may be worth more than they cost,
 *   bound = C + min of sum of c_s n_s    such that  sum of z_s n_s >= sum of y_i d_i,  0 <= n_s <= available, whole.
 * Duals and worths are whole, in 1/SB_SHEET_SCALE of a thousandth.
 */
#ifndef CUTTING_SHEET_PROOF_H
#define CUTTING_SHEET_PROOF_H

#include "cutting/sheets.h"

#define SB_SHEET_SCALE 1000

typedef struct sb_sheet_proof {
    const char *how;
    const int64_t *duals, *worths; /* y by pane, z by offer; NULL: left to the rows of a bound by numbers */
    const sb_scales *scales;       /* by pane; NULL: none */
    int64_t unit[2];               /* see sb_bound */
    const bool *once;              /* by pane: no sheet holds it twice; NULL: none is so */
} sb_sheet_proof;

int64_t sb_sheet_least(const sb_sheet_bench *bench, size_t offer); /* c, never below 0 */
int64_t sb_sheet_common(const sb_sheet_bench *bench);              /* C */
/* So many sheets of an offer could be of use: no more than there are, nor than parts. */
int64_t sb_sheets_usable(const sb_sheet_bench *bench, size_t offer);
/* What these duals and worths prove; SB_BAD: nothing. */
int64_t sb_sheet_proves(const sb_sheet_bench *bench, const sb_sheet_proof *proof);
/* Writes the proof down. */
void sb_sheet_show(const sb_sheet_bench *bench, const sb_sheet_proof *proof, sb_bound *bound);
/* Raises `bound` to it, and writes the proof down, where that proves more. */
void sb_sheet_prove(const sb_sheet_bench *bench, const sb_sheet_proof *proof, sb_bound *bound);

#endif
