/* The worth of a board with faults: loads that have no place there are left out, and those that have cost what they must.
 *
 * Here a gap of a kerf or more is granted anywhere between square parts, so that a load without a place has none on the
 * board either, and a load that has one keeps it when a part is taken off. Of every sub-load the soonest end is then exact.
 */
#include "cutting/measured.h"
#include "cutting/measuring.h"

#define MOST_WORK 2000000 /* sub-loads looked at for the worths of all boards */
#define STEPS     300000  /* nodes, likewise */

/* ---- has a load a place? ------------------------------------------------------------------------- */

static void extend(const sb_bench *bench, const sb_offered *on, const sb_lot *lots, size_t count,
                   size_t index) {
    sb_measuring *m = bench->scratch->measuring;
    for (size_t i = 0; i < count; i++) {
        const sb_kind *kind = &bench->kinds.items[lots[i].kind];
        if ((int64_t)(index / m->stride[i]) % (lots[i].count + 1) == lots[i].count)
            continue;
        int64_t at = m->ends[index] + bench->kerf, *next = &m->ends[index + m->stride[i]];
        int64_t end = sb_first_place(on, kind->avoids, kind->length, at, at) + kind->length;
        if (end <= on->room && end < *next)
            *next = end;
    }
}

bool sb_measured_may_fit(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    const sb_offered *on = &bench->boards.items[board];
    sb_measuring *m = bench->scratch->measuring;
    size_t all = bench->all_square ? sb_number_subloads(m, lots, count) : 0;
    for (size_t i = 0; i < all; i++)
        m->ends[i] = i == 0 ? -bench->kerf : INT64_MAX;
    for (size_t i = 0; i < all; i++)
        if (m->ends[i] != INT64_MAX)
            extend(bench, on, lots, count, i);
    m->looked += (int64_t)(all * count);
    return all == 0 || m->ends[all - 1] != INT64_MAX;
}

/* ---- what it costs at least ---------------------------------------------------------------------- */

/* The longest piece without a split from here on. */
static int64_t longest_piece(const sb_offered *on, int64_t at) {
    int64_t longest = 0;
    for (size_t i = 0; i < on->faults.count; i++) {
        const sb_fault *fault = &on->faults.items[i];
        if (fault->by != SB_AVOIDS_SPLITS || fault->to <= at || fault->from >= on->room)
            continue;
        longest = fault->from - at > longest ? fault->from - at : longest;
        at = fault->to;
    }
    return on->room - at > longest ? on->room - at : longest;
}

static int64_t value_of(const sb_bench *bench, int64_t length) {
    bool useful = bench->useful > 0 && length >= bench->useful;
    return useful ? sb_mul_div_down(length, bench->value, 1000 * (int64_t)SB_NM_PER_MM) : 0;
}

/* Where the parts cannot follow each other directly something is cut away: one cut more, which a load that ends flush
 * with the board makes up for. */
int64_t sb_measured_least_cost(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    const sb_offered *on = &bench->boards.items[board];
    sb_measuring *m = bench->scratch->measuring;
    int64_t close = -bench->kerf, pieces = 0;
    size_t all = sb_number_subloads(m, lots, count);
    if (all == 0 || !sb_measured_may_fit(bench, board, lots, count))
        return sb_faultless_outcome(bench, board, lots, count).cost;
    for (size_t i = 0; i < count; i++) {
        close += lots[i].count * (bench->kinds.items[lots[i].kind].length + bench->kerf);
        pieces += lots[i].count;
    }
    int64_t end = m->ends[all - 1], cuts = on->trued + pieces - 1;
    cuts += end > close ? 1 + on->ragged : on->ragged || close < on->room;
    return on->fixed + bench->change * sb_load_settings(bench, lots, count) + bench->cut * cuts -
           value_of(bench, longest_piece(on, end + bench->kerf));
}

/* ---- a load as a knapsack tries it --------------------------------------------------------------- */

static size_t take_trial(const sb_bench *bench, const sb_knapsack *k, size_t more) {
    sb_measuring *m = bench->scratch->measuring;
    size_t count = 0;
    for (size_t i = 0; i < k->items.count; i++) {
        int64_t number = k->items.items[i].trial + (i == more);
        if (number > 0)
            m->lots[count++] = (sb_lot){k->items.items[i].tag, number};
    }
    return count;
}

bool sb_measured_trial_may_fit(const sb_bench *bench, size_t board, const sb_knapsack *k, size_t more) {
    size_t count = take_trial(bench, k, more);
    return sb_measured_may_fit(bench, board, bench->scratch->measuring->lots, count);
}

int64_t sb_measured_excess(const sb_bench *bench, size_t board, const sb_knapsack *k) {
    const sb_lot *lots = bench->scratch->measuring->lots;
    size_t count = take_trial(bench, k, SIZE_MAX);
    return sb_measured_least_cost(bench, board, lots, count) -
           sb_faultless_outcome(bench, board, lots, count).cost;
}

/* ---- the worth ----------------------------------------------------------------------------------- */

typedef struct looking {
    const sb_bench *bench;
    size_t board;
    const sb_valuing *by;
    int64_t best; /* of the loads that have a place */
} looking;

static bool look_at(void *context, const sb_knapsack *k, int64_t worth, int64_t room) {
    looking *l = context;
    (void)room;
    if (worth > l->best && sb_measured_trial_may_fit(l->bench, l->board, k, SIZE_MAX)) {
        worth -= l->by->bare ? 0 : l->by->scale * sb_measured_excess(l->bench, l->board, k);
        l->best = worth > l->best ? worth : l->best;
    }
    return l->bench->scratch->measuring->looked < MOST_WORK / (int64_t)l->bench->boards.count;
}

/* No load worth less is looked at. Where handling counts, a worth up to what the board costs is all the same to a proof;
 * else what a load is worth that was found by its places. */
static int64_t worth_by_place(const sb_bench *bench, size_t board, const sb_valuing *by) {
    sb_measuring *m = bench->scratch->measuring;
    sb_pick *load = &bench->scratch->picks[1];
    int64_t worth = 0;
    for (size_t i = 0; i < bench->kinds.count; i++) {
        m->limits[i] = bench->kinds.items[i].demand;
        m->values[i] = (double)by->duals[i] / (double)by->scale;
    }
    if (!sb_measured_load(bench, board, m->values, m->limits, load))
        return 0;
    for (size_t i = 0; i < load->lots.count; i++)
        worth += by->duals[load->lots.items[i].kind] * load->lots.items[i].count;
    return worth;
}

void sb_measured_worth(const sb_bench *bench, size_t board, const sb_valuing *by, sb_worth *out) {
    sb_measuring *m = bench->scratch->measuring;
    int64_t floor =
        by->bare ? worth_by_place(bench, board, by) : bench->boards.items[board].fixed * by->scale;
    looking l = {bench, board, by, floor};
    sb_valuing above = *by;
    above.floor = floor;
    m->looked = 0;
    if (!out->any || !bench->all_square || out->upper <= floor)
        return;
    bool all = sb_worths_all(bench, board, &above, STEPS / (int64_t)bench->boards.count, look_at, &l);
    bench->work->left -= m->looked / 8;
    if (all && l.best < out->upper)
        out->upper = l.best;
}
