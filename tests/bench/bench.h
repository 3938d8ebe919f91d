/* bench/bench.h -- figures for eyes; nothing here is asserted. */
#ifndef SAWBILL_BENCH_H
#define SAWBILL_BENCH_H

#include <stddef.h>
#include <stdint.h>

double bench_seconds(void); /* processor time of this process */

extern int64_t bench_effort; /* for every plan; 0: the standard amount */
extern uint32_t bench_jobs;  /* random jobs of each kind */

void bench_job(void);      /* a batch of 500 pieces with 40 kinds of part: station by station */
void bench_workshop(void); /* random workshop jobs */
/* Published one-dimensional sets, where they are at hand; one set only unless `set` is NULL. */
void bench_lengths(const char *folder, const char *set);
/* Sheets: published sets where they are at hand, random jobs, a large batch; one of these only unless `only` is NULL. */
void bench_sheets(const char *folder, const char *only);

#endif
