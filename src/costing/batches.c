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
    costing_sets sets; /* the smallest batch is one */
    sb_batches *out;
} batching;

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
        if (b->out->list.items[i].pieces == times * b->sets.pieces)
            return true;
    return false;
}

/* A size that cannot be made, for want of stock say, is left out. */
static void add_size(batching *b, int64_t times) {
    if (is_there(b, times))
        return;
    const sb_ways *ways = sb_ways_of(&b->aside, b->shop, b->book,
                                     costing_job_of_sets(b->aside.pool, b->job, b->sets, times), b->tune);
    sb_batch batch = {.pieces = times * b->sets.pieces};
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
    int64_t low = list[index - 1].pieces / b->sets.pieces, high = list[index].pieces / b->sets.pieces;
    size_t before = list[index - 1].cheapest;
    while (high - low > 1 && sb_ok(&b->aside)) {
        int64_t middle = low + (high - low) / 2;
        add_size(b, middle);
        const sb_batch *last = &b->out->list.items[b->out->list.count - 1];
        if (last->pieces != middle * b->sets.pieces)
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

/* Those that job or shop ask for; without them some of all sizes. */
static void add_coarse_sizes(batching *b) {
    static const int64_t usual[] = {1, 2, 5, 10, 20, 50, 100};
    const sb_counts *asked = costing_break_sizes(b->shop, b->job);
    for (size_t i = 0; i < asked->count && sb_ok(&b->aside); i++)
        add_size(b, asked->items[i]);
    for (size_t i = 0; asked->count == 0 && i < sizeof usual / sizeof *usual && sb_ok(&b->aside); i++)
        if (usual[i] * b->sets.pieces <= MOST_PIECES)
            add_size(b, usual[i]);
    add_size(b, b->sets.own);
    sort(b);
}

const sb_batches *sb_batches_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                                const sb_tune *tune) {
    sb_tune prices = tune ? *tune : (sb_tune){0};
    prices.price_alone = true;
    batching b = {
        sb_run_aside(run), shop, book, job, &prices, costing_sets_of(job), SB_NEW(run->pool, sb_batches)};
    if (b.sets.own == 0)
        return b.out;
    add_coarse_sizes(&b);
    find_changes(&b);
    return b.out;
}
