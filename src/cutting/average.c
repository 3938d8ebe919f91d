/* Averaged duals. */
#include "cutting/average.h"

#define CORNERS 40
#define ROUNDS  100 /* of pricing in one corner */

/* Up to a thousandth more of each. */
static void move(sb_columns *c) {
    for (size_t i = 0; i < c->bench->kinds.count; i++) {
        double by = (double)sb_work_dice(c->bench->work, 1000) * 1e-6;
        sb_lp_want(c->lp, i, (double)c->demand[i] * (1 + by));
    }
}

bool sb_average_duals(sb_columns *c, double *out) {
    bool solved = true;
    for (size_t i = 0; i < c->bench->kinds.count; i++)
        out[i] = 0;
    for (int corner = 0; corner < CORNERS && solved; corner++) {
        move(c);
        solved = sb_columns_solve(c, ROUNDS) && c->converged;
        for (size_t i = 0; i < c->bench->kinds.count; i++)
            out[i] += c->duals[i] / CORNERS;
    }
    sb_columns_refit(c);
    return solved;
}
