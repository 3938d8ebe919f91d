/* Whole boards out of a mix in fractions. */
#include <math.h>

#include "cutting/search.h"

/* Cuts the load up to `most` times, as far as its parts are wanted and its boards are there. */
static void use(sb_filling *f, const sb_columns *mix, const sb_load *load, int64_t most, sb_cutting *cutting) {
    const sb_lot *lots = &mix->lots.items[load->first];
    sb_pick *pick = &f->bench->scratch->picks[0];
    int64_t times = sb_filling_times(f, load->board, lots, load->lots);
    times = most < times ? most : times;
    sb_outcome outcome = sb_load_outcome(f->bench, load->board, lots, load->lots);
    if (times <= 0 || !outcome.fits) /* the mix counts on cuts that cannot all be shared */
        return;
    pick->board = load->board;
    pick->cost = outcome.cost;
    pick->lots.count = 0;
    for (size_t i = 0; i < load->lots; i++)
        SB_PUSH(f->bench->run->pool, pick->lots, lots[i]);
    sb_filling_use(f, pick, times, cutting);
}

/* The load whose fraction is largest first, since it is the surest. */
static size_t next_load(const sb_columns *mix, const bool *done) {
    size_t best = SIZE_MAX;
    for (size_t i = 0; i < mix->loads.count; i++) {
        if (done[i] || mix->times[i] <= 0)
            continue;
        double fraction = mix->times[i] - floor(mix->times[i]);
        if (best == SIZE_MAX || fraction > mix->times[best] - floor(mix->times[best]))
            best = i;
    }
    return best;
}

void sb_mix_round(sb_filling *f, const sb_columns *mix, double shift, sb_cutting *cutting) {
    bool *done = SB_NEW_ARRAY(f->bench->run->pool, bool, mix->loads.count + 1);
    size_t i;
    while ((i = next_load(mix, done)) != SIZE_MAX) {
        const sb_load *load = &mix->loads.items[i];
        done[i] = true;
        use(f, mix, load, (int64_t)floor(mix->times[i] + shift + 1e-6), cutting);
    }
    sb_fill(f, true, cutting);
}
