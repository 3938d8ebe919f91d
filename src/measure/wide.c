#include "measure/wide.h"

/* 320 bits, lowest first: room for five factors of 63 bits and a doubling */
enum {
    LIMBS = 5
};
__extension__ typedef unsigned __int128 double_limb;

int64_t wide_narrow(wide value) {
    return value > INT64_MAX || value <= INT64_MIN ? SB_BAD : (int64_t)value;
}

static void multiply(uint64_t limbs[LIMBS], uint64_t factor) {
    double_limb carry = 0;
    for (size_t i = 0; i < LIMBS; i++) {
        carry += (double_limb)limbs[i] * factor;
        limbs[i] = (uint64_t)carry;
        carry >>= 64;
    }
}

/* Rounded down; dividing by one divisor after the other rounds down as dividing by their product does. */
static void divide(uint64_t limbs[LIMBS], uint64_t divisor) {
    double_limb rest = 0;
    for (size_t i = LIMBS; i > 0; i--) {
        rest = rest << 64 | limbs[i - 1];
        limbs[i - 1] = (uint64_t)(rest / divisor);
        rest %= divisor;
    }
}

int64_t wide_product(const int64_t *factors, size_t factor_count, const int64_t *divisors,
                     size_t divisor_count) {
    uint64_t limbs[LIMBS] = {2}; /* twice the product: half of what comes out, rounded up, is the nearest */
    bool negative = false;
    for (size_t i = 0; i < factor_count; i++) {
        if (factors[i] == SB_BAD)
            return SB_BAD;
        negative ^= factors[i] < 0;
        multiply(limbs, (uint64_t)(factors[i] < 0 ? -factors[i] : factors[i]));
    }
    for (size_t i = 0; i < divisor_count; i++)
        divide(limbs, (uint64_t)divisors[i]);
    for (size_t i = 1; i < LIMBS; i++)
        if (limbs[i])
            return SB_BAD;
    uint64_t nearest = limbs[0] / 2 + limbs[0] % 2;
    if (nearest > INT64_MAX)
        return SB_BAD;
    return negative ? -(int64_t)nearest : (int64_t)nearest;
}

int64_t wide_power_of_ten(int exponent) {
    int64_t power = 1;
    while (exponent-- > 0)
        power *= 10;
    return power;
}
