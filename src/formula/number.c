#include "formula/number.h"

#include <math.h>

static const double tolerance = 1e-9;  /* relative: see number.h */
static const double noise = 0.01;      /* [units of the result] allowed for before rounding up */
static const double most_whole = 9e18; /* what fits 64 bits, a little less */

/* ---- making ---- */

sb_number sb_number_real(double real) {
    return (sb_number){.real = real};
}

sb_number sb_number_of(sb_ratio ratio) {
    return sb_ratio_ok(ratio) ? (sb_number){ratio, sb_ratio_real(ratio)} : sb_number_real(NAN);
}

sb_number sb_number_whole(int64_t whole) {
    return sb_number_of((sb_ratio){whole, 1});
}

bool sb_number_exact(sb_number a) {
    return sb_ratio_ok(a.ratio);
}

/* ---- arithmetic ---- */

/* The exact result where there is one. */
static sb_number either(sb_ratio ratio, double real) {
    return sb_ratio_ok(ratio) ? sb_number_of(ratio) : sb_number_real(real);
}

sb_number sb_number_add(sb_number a, sb_number b) {
    return either(sb_ratio_add(a.ratio, b.ratio), a.real + b.real);
}

sb_number sb_number_sub(sb_number a, sb_number b) {
    return either(sb_ratio_sub(a.ratio, b.ratio), a.real - b.real);
}

sb_number sb_number_mul(sb_number a, sb_number b) {
    return either(sb_ratio_mul(a.ratio, b.ratio), a.real * b.real);
}

sb_number sb_number_div(sb_number a, sb_number b) {
    return either(sb_ratio_div(a.ratio, b.ratio), a.real / b.real);
}

sb_number sb_number_negate(sb_number a) {
    a.ratio.num = -a.ratio.num;
    a.real = -a.real;
    return a;
}

/* ---- powers ---- */

/* exponent >= 0; out of range sticks, so a large exponent costs no more than its bits */
static sb_ratio ratio_power(sb_ratio a, int64_t exponent) {
    sb_ratio power = sb_ratio_of(1, 1);
    for (; exponent > 0; exponent /= 2) {
        if (exponent % 2 != 0)
            power = sb_ratio_mul(power, a);
        if (exponent > 1)
            a = sb_ratio_mul(a, a);
    }
    return power;
}

/* The whole root of a >= 0, SB_BAD when there is none. Floating point only guesses; multiplication decides.
 */
static int64_t whole_root(int64_t a, int64_t degree) {
    int64_t guess = llroundl(powl((long double)a, 1.0L / (long double)degree));
    for (int64_t root = guess > 0 ? guess - 1 : 0; root <= guess + 1; root++) {
        sb_ratio power = ratio_power(sb_ratio_of(root, 1), degree);
        if (sb_ratio_ok(power) && power.num == a)
            return root;
    }
    return SB_BAD;
}

static sb_ratio ratio_root(sb_ratio a, int64_t degree) {
    return degree == 1 ? a : sb_ratio_of(whole_root(a.num, degree), whole_root(a.den, degree));
}

static sb_ratio exact_power(sb_ratio a, int64_t p, int64_t q) {
    sb_ratio power = ratio_power(ratio_root(a, q), p < 0 ? -p : p);
    return p < 0 ? sb_ratio_div(sb_ratio_of(1, 1), power) : power;
}

static double real_power(double a, int64_t p, int64_t q) {
    return p == 1 && q == 2 ? sqrt(a)
                            : pow(a, (double)p / (double)q); /* sqrt rounds correctly, pow need not */
}

sb_number sb_number_power(sb_number a, int64_t p, int64_t q) {
    sb_ratio power = sb_number_exact(a) ? exact_power(a.ratio, p, q) : a.ratio;
    return either(power, real_power(a.real, p, q));
}

/* ---- order ---- */

int sb_number_sign(sb_number a) {
    return sb_number_exact(a) ? (a.ratio.num > 0) - (a.ratio.num < 0) : (a.real > 0) - (a.real < 0);
}

int sb_number_compare(sb_number a, sb_number b) {
    if (sb_number_exact(a) && sb_number_exact(b))
        return sb_ratio_compare(a.ratio, b.ratio);
    if (fabs(a.real - b.real) <= tolerance * fmax(fabs(a.real), fabs(b.real)))
        return 0;
    return a.real < b.real ? -1 : 1;
}

/* ---- whole numbers ---- */

static sb_number inexact_floor(double real) {
    double nearest = round(real);
    double whole = fabs(real - nearest) <= tolerance * fmax(1, fabs(real)) ? nearest : floor(real);
    return fabs(whole) < most_whole ? sb_number_whole((int64_t)whole) : sb_number_real(whole);
}

sb_number sb_number_floor(sb_number a) {
    return sb_number_exact(a) ? sb_number_whole(sb_ratio_whole_down(a.ratio, 1)) : inexact_floor(a.real);
}

sb_number sb_number_ceil(sb_number a) {
    return sb_number_negate(sb_number_floor(sb_number_negate(a)));
}

sb_number sb_number_round(sb_number a) {
    sb_number half = sb_number_of((sb_ratio){1, 2});
    return sb_number_sign(a) < 0 ? sb_number_ceil(sb_number_sub(a, half))
                                 : sb_number_floor(sb_number_add(a, half));
}

static bool narrow(double whole, int64_t *out) {
    bool fits = fabs(whole) < most_whole; /* not so for what is not a number */
    *out = fits ? (int64_t)whole : SB_BAD;
    return fits;
}

bool sb_number_up(sb_number a, int64_t scale, int64_t *out) {
    if (!sb_number_exact(a))
        return narrow(ceil(a.real * (double)scale - noise), out);
    *out = sb_ratio_whole_up(a.ratio, scale);
    return *out != SB_BAD;
}

bool sb_number_nearest(sb_number a, int64_t scale, int64_t *out) {
    if (!sb_number_exact(a))
        return narrow(round(a.real * (double)scale), out);
    *out = sb_ratio_whole(a.ratio, scale);
    return *out != SB_BAD;
}
