/* bench/bench.h -- figures for eyes; nothing here is asserted. */
#ifndef SAWBILL_BENCH_H
#define SAWBILL_BENCH_H

#include <stddef.h>

double bench_seconds(void); /* processor time of this process */

void bench_job(void);                   /* a batch of 500 pieces with 40 kinds of part: station by station */
void bench_lengths(const char *folder); /* published one-dimensional sets, where they are at hand */

#endif
