/* cutting/search.h -- the ways to find cuttings of one stock of boards. */
#ifndef CUTTING_SEARCH_H
#define CUTTING_SEARCH_H

#include "cutting/boards.h"
#include "cutting/columns.h"

/* Worth of each kind as the searches guess it, and where they have got to. */
typedef struct sb_filling {
    const sb_bench *bench;
    double *worth;      /* by kind [thousandths] */
    int64_t *demand;    /* still to be made, by kind */
    int64_t *available; /* still there, by board */
} sb_filling;

sb_filling sb_filling_new(const sb_bench *bench);
void sb_filling_reset(sb_filling *f); /* everything still to be made, everything there */
/* Worths by length, at the best price per length on offer. */
void sb_filling_by_length(sb_filling *f);

/* How often the load can be cut: parts still wanted, boards still there. */
int64_t sb_filling_times(const sb_filling *f, size_t board, const sb_lot *lots, size_t count);
void sb_filling_use(sb_filling *f, const sb_pick *load, int64_t times, sb_cutting *cutting);

/* Fills board after board, each time the load that is worth most for its cost, until nothing is left. Loads
 * are added to `cutting`. With `learn`, worths move towards what the parts really cost (sequential value
 * correction: Mukhacheva, Belov). */
void sb_fill(sb_filling *f, bool learn, sb_cutting *cutting);
/* The hand method: longest parts first, each board filled from the longest that fits; one supply only, or
 * SIZE_MAX for the rack first and then whatever is cheapest per length. */
void sb_fill_longest_first(sb_filling *f, size_t board, sb_cutting *cutting);

/* Takes a load apart, chooses the cheapest board for it, puts several together anew. Uses f's worths. */
void sb_improve(sb_filling *f, sb_cutting *cutting, int64_t target);

/* Whole numbers out of the mix: rounded down after `shift` is added, the rest filled. */
void sb_mix_round(sb_filling *f, const sb_columns *mix, double shift, sb_cutting *cutting);

#endif
