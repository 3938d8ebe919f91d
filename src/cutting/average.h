/* cutting/average.h -- the average of many optimal duals.
 *
 * The optimal duals of a cutting program are seldom the only ones. With every demand moved by up to a thousandth,
 * the program ends in another corner of the same face; the average of these corners lies inside it. There fewer
 * loads have a small reduced cost, often by a factor of a thousand, which is what enumeration lives on.
 */
#ifndef CUTTING_AVERAGE_H
#define CUTTING_AVERAGE_H

#include "cutting/columns.h"

/* `out` by kind [thousandths]. False when a program could not be solved or the work was used up. */
bool sb_average_duals(sb_columns *c, double *out);

#endif
