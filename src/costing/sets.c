/* A job as so many sets: the fewest pieces that have the job's proportion, options that count otherwise included. */
#include "costing/inside.h"

costing_sets costing_sets_of(const sb_job *job) {
    costing_sets sets = {0, 0};
    for (size_t i = 0; i < job->pieces.count; i++) {
        sets.own = sb_common_divisor(sets.own, job->pieces.items[i].count);
        sets.pieces = sb_add(sets.pieces, job->pieces.items[i].count);
    }
    for (size_t i = 0; i < job->options.count; i++)
        for (size_t j = 0; j < job->options.items[i].count_count; j++)
            sets.own = sb_common_divisor(job->options.items[i].counts[j].count, sets.own);
    if (sets.own > 0)
        sets.pieces /= sets.own;
    return sets;
}

static sb_job_option option_of(sb_pool *pool, sb_job_option option, int64_t own, int64_t times) {
    struct sb_job_count *counts = SB_NEW_ARRAY(pool, struct sb_job_count, option.count_count + 1);
    for (size_t i = 0; i < option.count_count; i++) {
        counts[i] = option.counts[i];
        counts[i].count = sb_mul(counts[i].count / own, times);
    }
    option.counts = counts;
    option.count_capacity = option.count_count;
    return option;
}

const sb_job *costing_job_of_sets(sb_pool *pool, const sb_job *of, costing_sets sets, int64_t times) {
    sb_job *job = SB_NEW(pool, sb_job);
    *job = *of;
    job->pieces.items = NULL;
    job->pieces.count = job->pieces.capacity = 0;
    for (size_t i = 0; i < of->pieces.count; i++) {
        SB_PUSH(pool, job->pieces, of->pieces.items[i]);
        job->pieces.items[i].count = sb_mul(of->pieces.items[i].count / sets.own, times);
    }
    job->options.items = NULL;
    job->options.count = job->options.capacity = 0;
    for (size_t i = 0; i < of->options.count; i++)
        SB_PUSH(pool, job->options, option_of(pool, of->options.items[i], sets.own, times));
    return job;
}

const sb_counts *costing_break_sizes(const sb_shop *shop, const sb_job *job) {
    return job->breaks.given ? &job->breaks.sizes : &shop->settings.breaks;
}
