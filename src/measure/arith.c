/* Whole numbers that say when they leave the range, and lengths, areas, volumes made of them. */
#include "measure/wide.h"

int64_t sb_add(int64_t a, int64_t b) {
    return a == SB_BAD || b == SB_BAD ? SB_BAD : wide_narrow((wide)a + b);
}

int64_t sb_sub(int64_t a, int64_t b) {
    return a == SB_BAD || b == SB_BAD ? SB_BAD : wide_narrow((wide)a - b);
}

int64_t sb_mul(int64_t a, int64_t b) {
    return a == SB_BAD || b == SB_BAD ? SB_BAD : wide_narrow((wide)a * b);
}

/* ---- dividing ------------------------------------------------------------------------------------- */

typedef enum rounding {
    NEAREST,
    UP,
    DOWN
} rounding;

static wide divide(wide n, wide d, rounding way) {
    wide quotient = n / d, rest = n % d;
    bool negative = (rest < 0) != (d < 0);
    if (rest == 0)
        return quotient;
    if (way == UP)
        return negative ? quotient : quotient + 1;
    if (way == DOWN)
        return negative ? quotient - 1 : quotient;
    wide twice = 2 * (rest < 0 ? -rest : rest), size = d < 0 ? -d : d;
    return twice < size ? quotient : negative ? quotient - 1 : quotient + 1;
}

static int64_t multiply_divide(int64_t a, int64_t b, int64_t c, rounding way) {
    if (a == SB_BAD || b == SB_BAD || c == SB_BAD || c == 0)
        return SB_BAD;
    return wide_narrow(divide((wide)a * b, c, way));
}

int64_t sb_mul_div(int64_t a, int64_t b, int64_t c) {
    return multiply_divide(a, b, c, NEAREST);
}

int64_t sb_mul_div_up(int64_t a, int64_t b, int64_t c) {
    return multiply_divide(a, b, c, UP);
}

int64_t sb_mul_div_down(int64_t a, int64_t b, int64_t c) {
    return multiply_divide(a, b, c, DOWN);
}

/* ---- sizes ---------------------------------------------------------------------------------------- */

sb_length sb_length_add(sb_length a, sb_length b) {
    return (sb_length){sb_add(a.nm, b.nm)};
}

sb_length sb_length_sub(sb_length a, sb_length b) {
    return (sb_length){sb_sub(a.nm, b.nm)};
}

sb_length sb_length_times(sb_length a, int64_t n) {
    return (sb_length){sb_mul(a.nm, n)};
}

sb_length sb_length_up_to_step(sb_length length, sb_length step) {
    return (sb_length){sb_mul(sb_mul_div_up(length.nm, 1, step.nm), step.nm)};
}

sb_length sb_length_down_to_step(sb_length length, sb_length step) {
    return (sb_length){sb_mul(sb_mul_div_down(length.nm, 1, step.nm), step.nm)};
}

/* 1 um2 = 10^6 nm2 */
sb_area sb_length_area(sb_length a, sb_length b) {
    return (sb_area){sb_mul_div(a.nm, b.nm, 1000000)};
}

/* um2 * nm = 10^6 nm3, 1 nl = 10^15 nm3 */
sb_volume sb_area_volume(sb_area area, sb_length height) {
    return (sb_volume){sb_mul_div(area.um2, height.nm, 1000000000)};
}

/* 1 nl = 10^-12 m3, 1 kg = 10^6 mg */
sb_mass sb_volume_mass(sb_volume volume, int64_t kg_per_m3) {
    return (sb_mass){sb_mul_div(volume.nl, kg_per_m3, 1000000)};
}

double sb_length_mm(sb_length length) {
    return (double)length.nm / SB_NM_PER_MM;
}

int64_t sb_common_divisor(int64_t a, int64_t b) {
    while (b != 0) {
        int64_t rest = a % b;
        a = b;
        b = rest;
    }
    return a;
}
