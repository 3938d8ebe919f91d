/* Money in whole minor units; rounded half away from zero, once. */
#include "sawbill/measure.h"

enum {
    WHOLE = 1000000
}; /* ppm */

sb_money sb_money_add(sb_money a, sb_money b) {
    return (sb_money){sb_add(a.minor, b.minor)};
}

sb_money sb_money_sub(sb_money a, sb_money b) {
    return (sb_money){sb_sub(a.minor, b.minor)};
}

sb_money sb_money_times(sb_money a, int64_t n) {
    return (sb_money){sb_mul(a.minor, n)};
}

sb_money sb_money_share(sb_money a, sb_share share) {
    return (sb_money){sb_mul_div(a.minor, share.ppm, WHOLE)};
}

sb_money sb_cost_money(sb_cost cost) {
    return (sb_money){sb_mul_div(cost.milli, 1, 1000)};
}

sb_money sb_money_up_to_step(sb_money amount, sb_money step) {
    return (sb_money){sb_mul(sb_mul_div_up(amount.minor, 1, step.minor), step.minor)};
}

sb_money sb_money_with_margin(sb_money base, sb_share margin) {
    if (margin.ppm >= WHOLE)
        return (sb_money){SB_BAD};
    return (sb_money){sb_mul_div(base.minor, WHOLE, sb_sub(WHOLE, margin.ppm))};
}

sb_money sb_money_with_markup(sb_money base, sb_share markup) {
    return (sb_money){sb_mul_div(base.minor, sb_add(WHOLE, markup.ppm), WHOLE)};
}
