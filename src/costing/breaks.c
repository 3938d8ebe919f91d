/* Quantity breaks: the job in batches of the sizes it is asked for, each planned and priced in full. */
#include "costing/inside.h"

typedef struct breaking {
    sb_run *run;
    const sb_shop *shop;
    sb_recipe_book *book;
    const sb_job *job;
    const sb_tune *tune;
    costing_sets sets;
    sb_breaks *out;
} breaking;

/* Why it cannot be made. */
static const char *first_error(const sb_run *aside) {
    const char *why = "";
    for (size_t i = 0; !*why && sb_notices_message(aside, i); i++)
        if (sb_notices_level(aside, i) >= SB_ERROR)
            why = sb_notices_message(aside, i);
    return why;
}

static void tell(const breaking *b, int64_t size, const sb_run *aside) {
    sb_place place = b->job->breaks.given ? b->job->breaks.place : sb_shop_setting(b->shop, "breaks");
    sb_advise(b->run, place, "a batch of %lld is left out: %s", (long long)(size * b->sets.pieces),
              first_error(aside));
}

/* What a size has to tell, the job has told, or it is none of its concern; but what keeps it from being made is. */
static void add_size(breaking *b, int64_t size) {
    sb_run aside = sb_run_aside(b->run);
    const sb_job *job = costing_job_of_sets(b->run->pool, b->job, b->sets, size);
    const sb_ways *ways = sb_ways_of(&aside, b->shop, b->book, job, b->tune);
    if (ways)
        SB_PUSH(b->run->pool, b->out->list, ((sb_break){size, size * b->sets.pieces, job, ways}));
    else
        tell(b, size, &aside);
}

static void add_own(breaking *b, const sb_ways *ways) {
    b->out->own = b->out->list.count;
    SB_PUSH(b->run->pool, b->out->list,
            ((sb_break){b->sets.own, b->sets.own * b->sets.pieces, b->job, ways}));
}

const sb_breaks *sb_breaks_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                              const sb_tune *tune, const sb_ways *own) {
    sb_tune prices = tune ? *tune : (sb_tune){0};
    prices.price_alone = true;
    breaking b = {run, shop, book, job, &prices, costing_sets_of(job), SB_NEW(run->pool, sb_breaks)};
    const sb_counts *sizes = costing_break_sizes(shop, job);
    size_t i = 0;
    for (; b.sets.own > 0 && i < sizes->count && sizes->items[i] < b.sets.own; i++)
        add_size(&b, sizes->items[i]);
    add_own(&b, own);
    for (; b.sets.own > 0 && i < sizes->count; i++)
        if (sizes->items[i] > b.sets.own)
            add_size(&b, sizes->items[i]);
    return b.out;
}

const sb_ways *sb_break_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                           const sb_tune *tune, const sb_ways *own, int64_t pieces) {
    costing_sets sets = costing_sets_of(job);
    if (pieces == sets.own * sets.pieces)
        return own;
    if (pieces <= 0 || sets.own == 0 || pieces % sets.pieces != 0) {
        sb_error(run, (sb_place){0}, "%lld pieces: the job comes in multiples of %lld", (long long)pieces,
                 (long long)sets.pieces);
        return NULL;
    }
    sb_run aside = sb_run_aside(run);
    const sb_job *other = costing_job_of_sets(run->pool, job, sets, pieces / sets.pieces);
    const sb_ways *ways = sb_ways_of(&aside, shop, book, other, tune);
    if (!ways)
        sb_error(run, (sb_place){0}, "%lld pieces cannot be made: %s", (long long)pieces,
                 first_error(&aside));
    return ways;
}
