/* cutting/sheet_program.h -- a linear program over ways to cut sheets.
 *
 *   minimise   sum over ways j of  c_j x_j                                   x_j >= 0
 *   such that  sum of a_ij x_j >= d_i                   for every pane i     (dual y_i)
 *              sum of x_j over those on s <= n_s        where n_s is a limit (dual -m_s)
 *
 * What is not made may be made up at twice the dearest sheet for one part.
 */
#ifndef CUTTING_SHEET_PROGRAM_H
#define CUTTING_SHEET_PROGRAM_H

#include "cutting/lp.h"
#include "cutting/sheets.h"

typedef struct sb_sheet_program {
    const sb_sheet_bench *bench;
    sb_lp *lp;
    size_t rows;
    size_t *row_of_offer; /* SIZE_MAX: more of it than could be used */
    double unit;          /* thousandths to the program's 1 */
    sb_lp_entry *entries;
} sb_sheet_program;

/* NULL without memory. `unit`: about what a sheet costs. */
sb_sheet_program *sb_sheet_program_new(const sb_sheet_bench *bench, double unit, const int64_t *demand,
                                       const int64_t *available);
void sb_sheet_program_add(sb_sheet_program *p, size_t offer, const int64_t *made, double cost);
/* What is still to be made, and still there. */
void sb_sheet_program_want(sb_sheet_program *p, const int64_t *demand, const int64_t *available);
/* Fills duals by pane [thousandths]; false when it could not be solved. */
bool sb_sheet_program_solve(sb_sheet_program *p, double *duals);
double sb_sheet_program_rent(const sb_sheet_program *p, size_t offer); /* m [thousandths] */

#endif
