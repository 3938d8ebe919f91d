/* cutting/exact.h -- the exact finish: all loads that a cheaper plan could use, and the best whole numbers of them.
 *
 *   y      duals by kind, B = sum of y_i d_i - sum of m_s n_s the bound they prove, m_s >= 0 for limited boards
 *   r_l    = c_l + m_s - sum of y_i a_il >= 0, what load l costs more than it is worth
 *
 * A plan costs B + sum of r_l x_l or more. So a plan that costs less than B + T uses only loads with r_l < T. They
 * are enumerated, and an integer program over them tells the least cost, or that nothing costs less than B + T:
 * then B + T is a bound. T is the gap to the best plan known, or, where that gives too many loads, a part of it.
 *
 * Where every part is made just as often as it is wanted, a plan costs B + sum of r_l x_l + sum of m_s u_s, u being the
 * limited boards left over. The program then counts without B: floating point tells grains of so small a sum apart.
 */
#ifndef CUTTING_EXACT_H
#define CUTTING_EXACT_H

#include "cutting/search.h"

/* Improves `best` and `bound` as far as the work goes, and where only the last grain is open, proof being near, for so
 * many nodes of the integer program at least. The columns are those of the whole demand, converged. */
void sb_exact(sb_filling *f, sb_columns *c, sb_cutting *best, sb_bound *bound, int64_t last_nodes);

#endif
