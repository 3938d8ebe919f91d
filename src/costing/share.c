/* Sharing an amount out so that the shares add up to it: the method of the largest remainder. */
#include "costing/inside.h"

#include <stdlib.h>

__extension__ typedef __int128 wide;

typedef struct remainder {
    wide rest;
    size_t index;
} remainder;

static int larger_first(const void *left, const void *right) {
    const remainder *a = left, *b = right;
    if (a->rest != b->rest)
        return a->rest > b->rest ? -1 : 1;
    return a->index < b->index ? -1 : 1;
}

static int64_t weight_of(const int64_t *weights, size_t i, bool even) {
    if (even)
        return 1;
    return weights[i] > 0 ? weights[i] : 0;
}

static void spread(sb_run *run, int64_t amount, const int64_t *weights, size_t count, int64_t *shares) {
    wide all = 0;
    for (size_t i = 0; i < count; i++)
        all += weight_of(weights, i, false);
    bool even = all == 0;
    if (even)
        all = (wide)count;
    remainder *rests = SB_NEW_ARRAY(run->pool, remainder, count);
    int64_t left = amount;
    for (size_t i = 0; i < count; i++) {
        wide due = (wide)amount * weight_of(weights, i, even);
        shares[i] = (int64_t)(due / all);
        rests[i] = (remainder){due % all, i};
        left -= shares[i];
    }
    qsort(rests, count, sizeof *rests, larger_first);
    for (size_t i = 0; i < (size_t)left; i++)
        shares[rests[i].index]++;
}

void costing_share(sb_run *run, int64_t amount, const int64_t *weights, size_t count, int64_t *shares) {
    if (count == 0)
        return;
    if (amount == SB_BAD) {
        for (size_t i = 0; i < count; i++)
            shares[i] = SB_BAD;
        return;
    }
    spread(run, amount < 0 ? -amount : amount, weights, count, shares);
    for (size_t i = 0; amount < 0 && i < count; i++)
        shares[i] = -shares[i];
}

static const int64_t WEIGHTS_MOST = 1 << 26; /* 67 108 864: an amount may have 2^26 minor units beside it */

const int64_t *costing_in_lowest_terms(const costing *c, const int64_t *weights) {
    int64_t *lowest = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1), divisor = 0, sum = 0;
    for (size_t i = 0; weights && i < c->count; i++)
        divisor = weights[i] > 0 ? sb_common_divisor(divisor, weights[i]) : divisor;
    for (size_t i = 0; i < c->count; i++) {
        lowest[i] = divisor == 0 ? 1 : weights[i] > 0 ? weights[i] / divisor : 0;
        sum = sb_add(sum, lowest[i]);
    }
    for (size_t i = 0; sum > WEIGHTS_MOST && i < c->count; i++)
        lowest[i] = sb_mul_div_up(lowest[i], WEIGHTS_MOST, sum);
    return lowest;
}

void sb_share_out(sb_run *run, sb_money amount, const int64_t *weights, size_t count, sb_money *shares) {
    int64_t *bare = SB_NEW_ARRAY(run->pool, int64_t, count + 1);
    costing_share(run, amount.minor, weights, count, bare);
    for (size_t i = 0; i < count; i++)
        shares[i].minor = bare[i];
}
