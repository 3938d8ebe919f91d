/* bench/bench.h -- figures for eyes; nothing here is asserted.
 *
 * Every figure stands beside its target, met or missed; the summary at the end names what was missed.
 */
#ifndef SAWBILL_BENCH_H
#define SAWBILL_BENCH_H

#include "sawbill/cutting.h"

/* ---- as asked for on the command line ------------------------------------------------------------ */

extern int64_t bench_effort;  /* for every plan; 0: the standard amount */
extern uint32_t bench_jobs;   /* random jobs of each kind */
extern uint32_t bench_models; /* small random jobs given to the general solvers too */

/* ---- figures (figures.c) ------------------------------------------------------------------------- */

double bench_seconds(void); /* processor time of this process */

typedef struct bench_numbers {
    size_t count;
    double items[4096]; /* what comes beyond is left out */
} bench_numbers;

void bench_add(bench_numbers *numbers, double number);
/* So many of a hundred are below it: 50 is the median, 100 the greatest. 0 where there are none. */
double bench_part(bench_numbers *numbers, size_t percent);

/* For the summary; `bench_target` also prints the target, below its figure. */
void bench_keep(bool met, const char *figure, const char *target);
void bench_target(bool met, const char *figure, const char *target);
void bench_summary(void);

/* A figure in a line of its own, with its target, which the summary keeps with what `bench_subject` named last. */
void bench_subject(const char *of);
void bench_at_most(const char *what, double value, double most, const char *unit);
void bench_at_least(const char *what, double value, double least, const char *unit);
void bench_plain(const char *what, double value, const char *unit); /* without a target */

/* In cent of `of`. */
double bench_percent(int64_t amount, int64_t of);

/* ---- in a process of its own (child.c) ----------------------------------------------------------- */

typedef enum bench_end {
    BENCH_DONE,
    BENCH_NO_TIME,  /* it did not end in time and was ended */
    BENCH_NO_MEMORY /* it wanted more than allowed */
} bench_end;

typedef void bench_work(void *context, void *result);
/* Runs `work`, silently, in a child that may use so many seconds of the processor and so many megabytes; `result` is
 * what the child made of it. *peak: the most memory it held [MB]; may be NULL. */
bench_end bench_in_child(bench_work *work, void *context, void *result, size_t size, unsigned seconds,
                         unsigned megabytes, double *peak);

/* ---- by hand (boards_by_hand.c) ---------------------------------------------------------------------------- */

/* What the job costs cut by hand: the longest parts first, each on the first board that has room, pieces from the rack
 * before new boards, new boards all of one length: the best one. INT64_MAX where no length serves. Square parts of one
 * stock. */
int64_t bench_hand_cost(sb_run *run, const sb_problem *problem);

/* ---- the parts of the bench ---------------------------------------------------------------------- */

enum {
    BENCH_PIECES = 500
};
const char *bench_recipe(sb_run *run); /* 40 kinds of part, of boards and of sheets */

void bench_papers(void);   /* the same and the planters, from the job file to all papers: time and memory */
void bench_job(void);      /* a batch of 500 pieces with 40 kinds of part: station by station */
void bench_workshop(void); /* random workshop jobs, and the same cut by hand */
void bench_solvers(void);  /* small workshop jobs as arc flow and as assignment, by CBC and GLPK */
void bench_many(void);     /* 10 000 parts of 300 kinds: time and memory */
void bench_growth(void);   /* time against kinds of part and against demand */
/* Published one-dimensional sets, where they are at hand; one set only unless `only` is NULL. */
void bench_lengths(const char *folder, const char *only);
/* Sheets: published sets where they are at hand, random jobs, a large batch; one of these only unless `only` is NULL. */
void bench_sheets(const char *folder, const char *only);

#endif
