/* cutting/measuring.h -- what loads on boards with faults are worked out in, used again and again; for the files of
 * cutting/measured.h only. */
#ifndef CUTTING_MEASURING_H
#define CUTTING_MEASURING_H

#include "cutting/boards.h"

#define SB_SUBLOADS 3000 /* of one load, at most */

typedef struct sb_subload { /* some of the parts of a load, laid from the front */
    int64_t end, cuts;      /* cuts: without the truing cut and the last */
    size_t parts;           /* 0: not reached */
    int64_t gap;            /* what is cut away before the last part, with what its cuts take more */
    size_t lot, turn;       /* of the last part */
    size_t ending;          /* at its rear */
} sb_subload;

typedef struct sb_filled { /* parts from the front up to one place */
    int64_t end;
    double worth;
    size_t from; /* the filling it grew from; SIZE_MAX: the empty board */
    size_t kind, ending;
} sb_filled;

typedef struct sb_measuring {
    sb_subload *subloads;
    size_t *stride;  /* by lot */
    int64_t *open;   /* by lot */
    sb_lot *lots;    /* of the load being laid, by kind */
    double *values;  /* by kind: the caller's */
    int64_t *limits; /* by kind: the caller's */
    int64_t *ends;   /* by sub-load: the soonest end */
    int64_t looked;  /* sub-loads looked at, times the lots */
    SB_LIST(sb_filled) filled;
} sb_measuring;

/* How many sub-loads the load has, itself and none among them: one part more of lot i is stride[i] further on. 0: too many. */
size_t sb_number_subloads(sb_measuring *m, const sb_lot *lots, size_t count);
sb_measuring *sb_measuring_new(const sb_bench *bench);

#endif
