/* cutting/proof.h -- one lower bound, with what shows it: what becomes an entry of the certificate. */
#ifndef CUTTING_PROOF_H
#define CUTTING_PROOF_H

#include "cutting/duals.h"

typedef struct sb_proof {
    const sb_bench *bench;
    const char *how;
    int64_t scale;
    int64_t *duals;  /* y by kind */
    int64_t *worths; /* z by board */
    int64_t *least;  /* by board: what one costs, as the proof counts it */
    int64_t common;  /* what every plan costs besides */
    bool lack;
    int64_t threshold; /* see sb_bound; 0 unless by enumeration */
    int64_t bound;            /* in 1/scale of a thousandth; SB_BAD: nothing proved */
} sb_proof;

sb_proof sb_proof_new(const sb_bench *bench, const double *duals);
/* S = sum of y_i d_i; SB_BAD where it leaves the range. */
int64_t sb_proof_total(const sb_proof *p);
/* No board without limit is worth more than it costs:
 *   bound = sum of y_i d_i - sum over limited boards of n_s max(0, z_s - least_s) */
void sb_prove_by_duals(sb_proof *p);
/* Writes the proof down where it proves more. */
void sb_proof_keep(const sb_proof *p, sb_bound *bound);

#endif
