/* The beta distribution of a three-point value, drawn by its inverse: one number from the generator, one value.
 *
 * With alpha + beta = 6 its density is x^a (1 - x)^b, a + b = 4. The table holds the sum of it up to the end of each of
 * many equal cells; between them it counts as even. */
#include "costing/inside.h"

enum {
    CELLS = 1024
};

struct sb_beta {
    double sums[CELLS + 1];
};

static double density(double x, double a) {
    return costing_power(x, a) * costing_power(1 - x, 4 - a);
}

/* Gauss-Legendre of two points: neither lies on an end, where the density may be steep. */
static double cell_mass(int cell, double a) {
    const double off = 0.28867513459481288225; /* 1 / (2 sqrt 3) */
    return (density((cell + 0.5 - off) / CELLS, a) + density((cell + 0.5 + off) / CELLS, a)) / 2;
}

const sb_beta *sb_beta_of(sb_run *run, int64_t least, int64_t likely, int64_t most) {
    sb_beta *beta = SB_NEW(run->pool, sb_beta);
    double a = 4 * (double)(likely - least) / (double)(most - least);
    beta->sums[0] = 0;
    for (int i = 0; i < CELLS; i++)
        beta->sums[i + 1] = beta->sums[i] + cell_mass(i, a);
    return beta;
}

double sb_beta_at(const sb_beta *beta, double unit) {
    double wanted = unit * beta->sums[CELLS];
    int low = 0, high = CELLS; /* sums[low] <= wanted < sums[high] */
    while (high - low > 1) {
        int middle = (low + high) / 2;
        *(beta->sums[middle] <= wanted ? &low : &high) = middle;
    }
    double within = beta->sums[high] - beta->sums[low];
    return (low + (within > 0 ? (wanted - beta->sums[low]) / within : 0.5)) / CELLS;
}

double sb_three_point_mean(int64_t least, int64_t likely, int64_t most) {
    return ((double)least + 4 * (double)likely + (double)most) / 6;
}

double sb_three_point_variance(int64_t least, int64_t likely, int64_t most) {
    double mean = sb_three_point_mean(least, likely, most);
    return (mean - (double)least) * ((double)most - mean) / 7;
}
