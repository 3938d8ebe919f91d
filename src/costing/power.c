/* Powers out of the four basic operations, which IEEE 754 rounds alike on every machine; those of the C library
 * differ in their last bits from one to the next. */
#include "costing/inside.h"

#include <math.h>

static const double LN_2 = 0.69314718055994530942;

/* 2 atanh((m - 1) / (m + 1)), with m within a factor of the root of two from 1: the terms fall thirtyfold each. */
static double logarithm(double x) {
    int exponent;
    double m = frexp(x, &exponent); /* exact */
    if (m < 0.70710678118654752440) {
        m *= 2;
        exponent--;
    }
    double s = (m - 1) / (m + 1), square = s * s, term = s, sum = 0;
    for (int n = 1; n < 26; n += 2) {
        sum += term / n;
        term *= square;
    }
    return 2 * sum + exponent * LN_2;
}

static double exponential(double x) {
    int twos = (int)(x / LN_2 + (x < 0 ? -0.5 : 0.5));
    double rest = x - twos * LN_2, term = 1, sum = 1;
    for (int n = 1; n < 18; n++) {
        term *= rest / n;
        sum += term;
    }
    return ldexp(sum, twos); /* exact */
}

double costing_power(double base, double exponent) {
    if (base <= 0)
        return exponent == 0 ? 1 : 0;
    return exponential(exponent * logarithm(base));
}

/* n^(log2 share): what is left of the average when n are made, in ppm. */
sb_share sb_learned(sb_share share, int64_t count) {
    if (share.ppm <= 0 || count <= 1)
        return (sb_share){1000000};
    double doublings = logarithm((double)count) / LN_2;
    return (sb_share){(int64_t)(costing_power((double)share.ppm / 1e6, doublings) * 1e6 + 0.5)};
}
