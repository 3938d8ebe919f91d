/* Exact ratios. Each result is reduced; one that does not fit 64 bits is out of range and stays so. */
#include "measure/wide.h"

static const sb_ratio out_of_range = {0, 0};

static wide greatest_common(wide a, wide b) {
    while (b != 0) {
        wide rest = a % b;
        a = b;
        b = rest;
    }
    return a < 0 ? -a : a;
}

static sb_ratio reduced(wide num, wide den) {
    if (den == 0)
        return out_of_range;
    wide common = greatest_common(num, den);
    if (den < 0)
        common = -common;
    int64_t n = wide_narrow(num / common), d = wide_narrow(den / common);
    return n == SB_BAD || d == SB_BAD ? out_of_range : (sb_ratio){n, d};
}

static bool both_ok(sb_ratio a, sb_ratio b) {
    return sb_ratio_ok(a) && sb_ratio_ok(b);
}

sb_ratio sb_ratio_of(int64_t num, int64_t den) {
    return num == SB_BAD || den == SB_BAD ? out_of_range : reduced(num, den);
}

bool sb_ratio_ok(sb_ratio r) {
    return r.den != 0;
}

sb_ratio sb_ratio_add(sb_ratio a, sb_ratio b) {
    return both_ok(a, b) ? reduced((wide)a.num * b.den + (wide)b.num * a.den, (wide)a.den * b.den)
                         : out_of_range;
}

sb_ratio sb_ratio_sub(sb_ratio a, sb_ratio b) {
    return sb_ratio_add(a, (sb_ratio){-b.num, b.den});
}

sb_ratio sb_ratio_mul(sb_ratio a, sb_ratio b) {
    return both_ok(a, b) ? reduced((wide)a.num * b.num, (wide)a.den * b.den) : out_of_range;
}

sb_ratio sb_ratio_div(sb_ratio a, sb_ratio b) {
    return both_ok(a, b) ? reduced((wide)a.num * b.den, (wide)a.den * b.num) : out_of_range;
}

int sb_ratio_compare(sb_ratio a, sb_ratio b) {
    wide left = (wide)a.num * b.den, right = (wide)b.num * a.den;
    return left < right ? -1 : left > right;
}

double sb_ratio_real(sb_ratio r) {
    return (double)r.num / (double)r.den;
}

int64_t sb_ratio_whole(sb_ratio r, int64_t scale) {
    return sb_mul_div(r.num, scale, r.den);
}

int64_t sb_ratio_whole_up(sb_ratio r, int64_t scale) {
    return sb_mul_div_up(r.num, scale, r.den);
}

int64_t sb_ratio_whole_down(sb_ratio r, int64_t scale) {
    return sb_mul_div_down(r.num, scale, r.den);
}
