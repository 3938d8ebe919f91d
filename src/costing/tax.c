/* Tax on a net amount, tax inside a gross amount, and unit prices that take it in. */
#include "sawbill/costing.h"

static const int64_t WHOLE = 1000000; /* 100 % in ppm */

sb_money sb_tax_of(sb_money net, sb_share rate) {
    return sb_money_share(net, rate);
}

sb_money sb_tax_inside(sb_money gross, sb_share rate) {
    sb_money net = {sb_mul_div(gross.minor, WHOLE, sb_add(WHOLE, rate.ppm))};
    return sb_money_sub(gross, net);
}

sb_money sb_unit_price(sb_money amount, int64_t count, sb_share tax, sb_money point) {
    int64_t step = point.minor > 0 ? point.minor : 1;
    int64_t points = sb_mul_div_up(amount.minor, sb_add(WHOLE, tax.ppm), sb_mul(sb_mul(count, WHOLE), step));
    return sb_money_times((sb_money){step}, points);
}
