/* Products beyond 64 bits; for this room only. */
#ifndef MEASURE_WIDE_H
#define MEASURE_WIDE_H

#include "sawbill/measure.h"

__extension__ typedef __int128 wide;

/* SB_BAD when it does not fit 64 bits. */
int64_t wide_narrow(wide value);

/* Product of the factors over the product of the divisors (all above zero), through as many bits as it
 * takes, rounded once, half away from zero. At most five factors. */
int64_t wide_product(const int64_t *factors, size_t factor_count, const int64_t *divisors,
                     size_t divisor_count);

int64_t wide_power_of_ten(int exponent); /* 0 to 18 */

#endif
