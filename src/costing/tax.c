/* Tax on a net amount, tax inside a gross amount, and unit prices that take it in. */
#include "sawbill/costing.h"

__extension__ typedef __int128 wide;

static const int64_t WHOLE = 1000000; /* 100 % in ppm */

sb_money sb_tax_of(sb_money net, sb_share rate) {
    return sb_money_share(net, rate);
}

sb_money sb_tax_inside(sb_money gross, sb_share rate) {
    sb_money net = {sb_mul_div(gross.minor, WHOLE, sb_add(WHOLE, rate.ppm))};
    return sb_money_sub(gross, net);
}

sb_money sb_unit_price(sb_money amount, int64_t count, sb_share tax, sb_money point, sb_money less) {
    int64_t step = point.minor > 0 ? point.minor : 1;
    if (amount.minor == SB_BAD || sb_mul(sb_mul(count, WHOLE), step) == SB_BAD)
        return (sb_money){SB_BAD};
    if (amount.minor <= 0)
        return (sb_money){0};
    wide due = (wide)amount.minor * (WHOLE + tax.ppm) + (wide)less.minor * count * WHOLE;
    wide whole = (wide)step * count * WHOLE, points = due / whole;
    if (points * whole < due)
        points++;
    if (points > INT64_MAX / step)
        return (sb_money){SB_BAD};
    return sb_money_sub(sb_money_times((sb_money){step}, (int64_t)points), less);
}
