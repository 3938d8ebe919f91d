#include "formula/number.h"

#include <math.h>

static const double tolerance = 1e-9; /* relative: see number.h */
static const double noise = 0.01;     /* [units of the result] allowed for before rounding up */

/* The lowest 128-bit integer has no positive twin, so it counts as out of range. */
static const sb_wide most = ((sb_wide)INT64_MAX << 64) + UINT64_MAX;

/* ---- integers ---------------------------------------------------------------------------------- */

static sb_wide magnitude(sb_wide a) {
    return a < 0 ? -a : a;
}

static sb_wide common_divisor(sb_wide a, sb_wide b) {
    a = magnitude(a);
    b = magnitude(b);
    while (b != 0 && (a > INT64_MAX || b > INT64_MAX)) {
        sb_wide rest = a % b;
        a = b;
        b = rest;
    }
    uint64_t x = (uint64_t)a, y = (uint64_t)b; /* the usual case, several times faster */
    if (b == 0)
        return a;
    while (y != 0) {
        uint64_t rest = x % y;
        x = y;
        y = rest;
    }
    return (sb_wide)x;
}

static bool multiply(sb_wide a, sb_wide b, sb_wide *product) {
    return !__builtin_mul_overflow(a, b, product) && *product >= -most;
}

static bool add(sb_wide a, sb_wide b, sb_wide *sum) {
    return !__builtin_add_overflow(a, b, sum) && *sum >= -most;
}

static bool integer_power(sb_wide a, int64_t exponent, sb_wide *power) {
    *power = 1;
    for (; exponent > 0; exponent /= 2) {
        if (exponent % 2 != 0 && !multiply(*power, a, power))
            return false;
        if (exponent > 1 && !multiply(a, a, &a))
            return false;
    }
    return true;
}

/* The whole root of a >= 0, if there is one. Floating point only guesses; multiplication decides. */
static bool integer_root(sb_wide a, int64_t degree, sb_wide *root) {
    if (degree > 127) {
        *root = a;
        return a <= 1;
    }
    sb_wide guess = (sb_wide)roundl(powl((long double)a, 1.0L / (long double)degree));
    for (*root = guess > 0 ? guess - 1 : 0; *root <= guess + 1; ++*root) {
        sb_wide power;
        if (integer_power(*root, degree, &power) && power == a)
            return true;
    }
    return false;
}

/* ---- making ------------------------------------------------------------------------------------- */

sb_number sb_number_real(double real) {
    return (sb_number){.den = 1, .real = real};
}

static sb_number reduced(sb_wide num, sb_wide den) {
    return (sb_number){.num = num, .den = den, .real = (double)num / (double)den, .exact = true};
}

sb_number sb_number_ratio(sb_wide num, sb_wide den) {
    if (den == 0)
        return sb_number_real(NAN);
    sb_wide divisor = common_divisor(num, den);
    if (den < 0)
        divisor = -divisor;
    return reduced(num / divisor, den / divisor);
}

sb_number sb_number_whole(int64_t whole) {
    return reduced(whole, 1);
}

/* ---- arithmetic ---------------------------------------------------------------------------------- */

static bool add_exactly(sb_number a, sb_number b, sb_number *sum) {
    sb_wide divisor = common_divisor(a.den, b.den), left, right, num, den;
    bool fits = a.exact && b.exact && multiply(a.num, b.den / divisor, &left) &&
                multiply(b.num, a.den / divisor, &right) && add(left, right, &num) &&
                multiply(a.den, b.den / divisor, &den);
    if (fits)
        *sum = sb_number_ratio(num, den);
    return fits;
}

sb_number sb_number_add(sb_number a, sb_number b) {
    sb_number sum;
    return add_exactly(a, b, &sum) ? sum : sb_number_real(a.real + b.real);
}

sb_number sb_number_negate(sb_number a) {
    a.num = -a.num;
    a.real = -a.real;
    return a;
}

sb_number sb_number_sub(sb_number a, sb_number b) {
    return sb_number_add(a, sb_number_negate(b));
}

static bool multiply_exactly(sb_number a, sb_number b, sb_number *product) {
    if (!a.exact || !b.exact)
        return false;
    sb_wide first = common_divisor(a.num, b.den), second = common_divisor(b.num, a.den), num, den;
    bool fits =
        multiply(a.num / first, b.num / second, &num) && multiply(a.den / second, b.den / first, &den);
    if (fits)
        *product = reduced(num, den);
    return fits;
}

sb_number sb_number_mul(sb_number a, sb_number b) {
    sb_number product;
    return multiply_exactly(a, b, &product) ? product : sb_number_real(a.real * b.real);
}

sb_number sb_number_div(sb_number a, sb_number b) {
    sb_number inverse = b, quotient;
    inverse.num = b.num < 0 ? -b.den : b.den;
    inverse.den = magnitude(b.num);
    return multiply_exactly(a, inverse, &quotient) ? quotient : sb_number_real(a.real / b.real);
}

static bool power_exactly(sb_number a, int64_t p, int64_t q, sb_number *power) {
    sb_wide num = a.num, den = a.den;
    if (!a.exact)
        return false;
    if (q > 1 && !(integer_root(a.num, q, &num) && integer_root(a.den, q, &den)))
        return false;
    int64_t times = p < 0 ? -p : p;
    if (!integer_power(num, times, &num) || !integer_power(den, times, &den))
        return false;
    *power = p < 0 ? sb_number_ratio(den, num) : sb_number_ratio(num, den);
    return true;
}

sb_number sb_number_power(sb_number a, int64_t p, int64_t q) {
    sb_number power;
    if (power_exactly(a, p, q, &power))
        return power;
    if (p == 1 && q == 2)
        return sb_number_real(sqrt(a.real)); /* correctly rounded, which pow does not promise */
    return sb_number_real(pow(a.real, (double)p / (double)q));
}

/* ---- order ------------------------------------------------------------------------------------------ */

int sb_number_sign(sb_number a) {
    if (a.exact)
        return (a.num > 0) - (a.num < 0);
    return (a.real > 0) - (a.real < 0);
}

int sb_number_compare(sb_number a, sb_number b) {
    sb_number difference = sb_number_sub(a, b);
    double size = fmax(fabs(a.real), fabs(b.real));
    if (!difference.exact && fabs(difference.real) <= tolerance * size)
        return 0;
    return sb_number_sign(difference);
}

/* ---- whole numbers ---------------------------------------------------------------------------------- */

static sb_wide floor_division(sb_wide num, sb_wide den) {
    return num / den - (num % den < 0 ? 1 : 0);
}

static sb_number inexact_floor(double real) {
    double nearest = round(real);
    double whole = fabs(real - nearest) <= tolerance * fmax(1, fabs(real)) ? nearest : floor(real);
    return fabs(whole) < 9e18 ? sb_number_whole((int64_t)whole) : sb_number_real(whole);
}

sb_number sb_number_floor(sb_number a) {
    return a.exact ? reduced(floor_division(a.num, a.den), 1) : inexact_floor(a.real);
}

sb_number sb_number_ceil(sb_number a) {
    return sb_number_negate(sb_number_floor(sb_number_negate(a)));
}

sb_number sb_number_round(sb_number a) {
    if (sb_number_sign(a) < 0)
        return sb_number_negate(sb_number_round(sb_number_negate(a)));
    return sb_number_floor(sb_number_add(a, sb_number_ratio(1, 2)));
}

static bool to_integer(sb_number whole, int64_t *out) {
    if (!whole.exact || whole.num > INT64_MAX || whole.num <= INT64_MIN)
        return false;
    *out = (int64_t)whole.num;
    return true;
}

bool sb_number_to_up(sb_number a, int64_t *out) {
    if (a.exact)
        return to_integer(sb_number_ceil(a), out);
    double up = ceil(a.real - noise);
    if (!(fabs(up) < 9e18))
        return false;
    *out = (int64_t)up;
    return true;
}

bool sb_number_to_nearest(sb_number a, int64_t *out) {
    return to_integer(sb_number_round(a), out);
}
