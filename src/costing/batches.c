/* Batches of several sizes, each option planned and priced in full. */
#include "costing/inside.h"

#include <stdlib.h>

#define MOST_PIECES 200 /* no batch has more, unless the job's own has */

typedef struct batching {
    sb_run aside; /* what these batches have to tell, the job has told, or it is none of its concern */
    const sb_shop *shop;
    sb_recipe_book *book;
    const sb_job *job;
    const sb_tune *tune;
    int64_t least, own; /* pieces of the smallest batch; the job is so many of it */
    sb_batches *out;
} batching;

/* The job with each count `times` its share of the smallest batch. */
static sb_job *job_of(batching *b, int64_t times) {
    sb_pool *pool = b->aside.pool;
    sb_job *job = SB_NEW(pool, sb_job);
    *job = *b->job;
    job->pieces.items = NULL;
    job->pieces.count = job->pieces.capacity = 0;
    for (size_t i = 0; i < b->job->pieces.count; i++) {
        SB_PUSH(pool, job->pieces, b->job->pieces.items[i]);
        job->pieces.items[i].count = b->job->pieces.items[i].count / b->own * times;
    }
    return job;
}

static size_t cheapest_of(const sb_batch *batch) {
    size_t best = 0;
    for (size_t i = 1; i < batch->nets.count; i++)
        if (batch->nets.items[i].minor < batch->nets.items[best].minor)
            best = i;
    return best;
}

static int by_pieces(const void *a, const void *b) {
    const sb_batch *one = a, *other = b;
    return (one->pieces > other->pieces) - (one->pieces < other->pieces);
}

static bool is_there(const batching *b, int64_t times) {
    for (size_t i = 0; i < b->out->list.count; i++)
        if (b->out->list.items[i].pieces == times * b->least)
            return true;
    return false;
}

/* A size that cannot be made, for want of stock say, is left out. */
static void add_size(batching *b, int64_t times) {
    if (is_there(b, times))
        return;
    const sb_ways *ways = sb_ways_of(&b->aside, b->shop, b->book, job_of(b, times), b->tune);
    sb_batch batch = {.pieces = times * b->least};
    if (!ways)
        return;
    for (size_t i = 0; i < ways->list.count; i++)
        SB_PUSH(b->aside.pool, batch.nets, ways->list.items[i].estimate->net);
    batch.cheapest = cheapest_of(&batch);
    SB_PUSH(b->aside.pool, b->out->list, batch);
}

static void sort(batching *b) {
    if (b->out->list.count > 0)
        qsort(b->out->list.items, b->out->list.count, sizeof *b->out->list.items, by_pieces);
}

/* Halves the stretch before the batch at `index` until the change stands between neighbours. */
static void find_change(batching *b, size_t index) {
    const sb_batch *list = b->out->list.items;
    int64_t low = list[index - 1].pieces / b->least, high = list[index].pieces / b->least;
    size_t before = list[index - 1].cheapest;
    while (high - low > 1 && sb_ok(&b->aside)) {
        int64_t middle = low + (high - low) / 2;
        add_size(b, middle);
        const sb_batch *last = &b->out->list.items[b->out->list.count - 1];
        if (last->pieces != middle * b->least)
            return;
        *(last->cheapest == before ? &low : &high) = middle;
    }
}

static void find_changes(batching *b) {
    size_t coarse = b->out->list.count;
    for (size_t i = 1; i < coarse; i++)
        if (b->out->list.items[i].cheapest != b->out->list.items[i - 1].cheapest)
            find_change(b, i);
    sort(b);
}

static void add_coarse_sizes(batching *b) {
    static const int64_t sizes[] = {1, 2, 5, 10, 20, 50, 100};
    for (size_t i = 0; i < sizeof sizes / sizeof *sizes; i++)
        if (sizes[i] * b->least <= MOST_PIECES && sb_ok(&b->aside))
            add_size(b, sizes[i]);
    add_size(b, b->own);
    sort(b);
}

const sb_batches *sb_batches_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                                const sb_tune *tune) {
    batching b = {sb_run_aside(run), shop, book, job, tune, 0, 0, SB_NEW(run->pool, sb_batches)};
    int64_t pieces = 0;
    for (size_t i = 0; i < job->pieces.count; i++) {
        b.own = sb_common_divisor(b.own, job->pieces.items[i].count);
        pieces += job->pieces.items[i].count;
    }
    if (b.own == 0)
        return b.out;
    b.least = pieces / b.own;
    add_coarse_sizes(&b);
    find_changes(&b);
    return b.out;
}
