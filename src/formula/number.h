/* formula/number.h -- numbers that stay exact as long as they can.
 *
 * `real` is always set. While `ratio` is in range the number is exact and the ratio counts; what leaves its
 * range, and what roots and trigonometry give, is inexact. After an overflow `real` is infinite or not a
 * number, and the evaluator turns that into an error.
 *
 * Whether an inexact number is whole, or equal to another, is asked with a relative tolerance of
 * 1e-9: 2.9999999999 rows that come from a tangent are three rows, and a nanometre in a metre is nothing to a
 * saw.
 */
#ifndef FORMULA_NUMBER_H
#define FORMULA_NUMBER_H

#include "sawbill/measure.h"

typedef struct sb_number {
    sb_ratio ratio; /* out of range: inexact */
    double real;
} sb_number;

sb_number sb_number_of(sb_ratio ratio); /* not a number when the ratio is out of range */
sb_number sb_number_whole(int64_t whole);
sb_number sb_number_real(double real);
bool sb_number_exact(sb_number a);

sb_number sb_number_add(sb_number a, sb_number b);
sb_number sb_number_sub(sb_number a, sb_number b);
sb_number sb_number_mul(sb_number a, sb_number b);
sb_number sb_number_div(sb_number a, sb_number b); /* b is not zero */
sb_number sb_number_negate(sb_number a);
/* a ^ (p / q): exact when the root is. q > 0; a >= 0 unless q is 1; a is not zero when p < 0. */
sb_number sb_number_power(sb_number a, int64_t p, int64_t q);

int sb_number_sign(sb_number a);                 /* -1, 0, 1 */
int sb_number_compare(sb_number a, sb_number b); /* -1, 0, 1 */

sb_number sb_number_floor(sb_number a);
sb_number sb_number_ceil(sb_number a);
sb_number sb_number_round(sb_number a); /* half away from zero */

/* a * scale as an integer; false when out of range. `up` takes 0.01 off an inexact number first, so that
 * noise in the last digits does not cost a unit. */
bool sb_number_up(sb_number a, int64_t scale, int64_t *out);
bool sb_number_nearest(sb_number a, int64_t scale, int64_t *out);

#endif
