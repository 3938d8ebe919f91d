/* xoshiro256** and splitmix64, after the papers named in sawbill/costing.h. */
#include "sawbill/costing.h"

uint64_t sb_splitmix64(uint64_t *state) {
    uint64_t z = (*state += UINT64_C(0x9e3779b97f4a7c15));
    z = (z ^ (z >> 30)) * UINT64_C(0xbf58476d1ce4e5b9);
    z = (z ^ (z >> 27)) * UINT64_C(0x94d049bb133111eb);
    return z ^ (z >> 31);
}

sb_generator sb_generator_of(uint64_t seed) {
    sb_generator g;
    for (int i = 0; i < 4; i++)
        g.state[i] = sb_splitmix64(&seed);
    return g;
}

static uint64_t turned(uint64_t x, int bits) {
    return (x << bits) | (x >> (64 - bits));
}

uint64_t sb_generator_next(sb_generator *g) {
    uint64_t *s = g->state, result = turned(s[1] * 5, 7) * 9, t = s[1] << 17;
    s[2] ^= s[0];
    s[3] ^= s[1];
    s[1] ^= s[2];
    s[0] ^= s[3];
    s[2] ^= t;
    s[3] = turned(s[3], 45);
    return result;
}

double sb_generator_unit(sb_generator *g) {
    return (double)(sb_generator_next(g) >> 11) * (1.0 / 9007199254740992.0); /* 2^53 */
}
