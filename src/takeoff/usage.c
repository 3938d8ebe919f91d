/* What is used besides planned timber and sheets, by piece and recipe line. */
#include "takeoff/inside.h"

static bool same_line(const sb_usage *a, const sb_usage *b) {
    return a->piece == b->piece && a->stock == b->stock && a->place.source == b->place.source &&
           a->place.offset == b->place.offset;
}

static sb_usage *find(sb_takeoff *takeoff, const sb_usage *usage) {
    for (size_t i = takeoff->usages.count; i > 0; i--)
        if (same_line(&takeoff->usages.items[i - 1], usage))
            return &takeoff->usages.items[i - 1];
    return NULL;
}

static int64_t greater(int64_t a, int64_t b) {
    return a > b ? a : b;
}

void takeoff_use(takeoff_making *making, bool batch, sb_usage usage) {
    sb_run *run = making->walk->run;
    if (usage.amount == 0)
        return;
    if (usage.amount < 0) {
        sb_error(run, usage.place, "the amount of %s is out of all range", usage.stock->id);
        return;
    }
    usage.piece = batch ? SB_BATCH : making->piece;
    sb_usage *same = find(making->walk->takeoff, &usage);
    if (!same) {
        SB_PUSH(run->pool, making->walk->takeoff->usages, usage);
        return;
    }
    same->amount = batch ? greater(same->amount, usage.amount) : sb_add(same->amount, usage.amount);
    same->net = batch ? greater(same->net, usage.net) : sb_add(same->net, usage.net);
    same->coats = greater(same->coats, usage.coats);
}
