/* formula/number.h -- numbers that stay exact as long as they can.
 *
 * A number is num / den in lowest terms, den > 0, both within 128 bits: an area in square nanometres
 * leaves 64 bits behind at nine square metres, a volume at once. What does not fit, and what roots and
 * trigonometry give, is inexact: only `real` counts then. `real` is always set; it is infinite or
 * not-a-number after an overflow, and the evaluator turns that into an error.
 *
 * Whether an inexact number is whole, or equal to another, is asked with a relative tolerance of 1e-9:
 * 2.9999999999 rows that come from a tangent are three rows, and a nanometre per metre is nothing to a saw.
 */
#ifndef FORMULA_NUMBER_H
#define FORMULA_NUMBER_H

#include "sawbill/measure.h"

__extension__ typedef __int128 sb_wide;

typedef struct sb_number {
    sb_wide num, den; /* when exact */
    double real;
    bool exact;
} sb_number;

sb_number sb_number_ratio(sb_wide num, sb_wide den); /* den 0: out of range */
sb_number sb_number_whole(int64_t whole);
sb_number sb_number_real(double real);

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

/* Integers for the typed results; false when out of range. `up` takes 0.01 off an inexact number first,
 * so that noise in the last digits does not cost a unit. */
bool sb_number_to_up(sb_number a, int64_t *out);
bool sb_number_to_nearest(sb_number a, int64_t *out);

#endif
