/* The hand method: the longest part first, then the longest that still fits. */
#include "cutting/search.h"

/* ---- which board --------------------------------------------------------------------------------- */

static double price_of(const sb_offered *on) {
    return on->room > 0 ? (double)on->fixed / (double)on->room : 1e300;
}

static bool holds(const sb_filling *f, size_t board) {
    const sb_bench *bench = f->bench;
    for (size_t i = 0; i < bench->kinds.count; i++)
        if (f->demand[i] > 0 && bench->kinds.items[i].length <= bench->boards.items[board].room)
            return true;
    return false;
}

static bool is_from_rack(const sb_bench *bench, size_t board) {
    return bench->problem->supplies.items[bench->boards.items[board].supply].leftover;
}

/* The rack first, then the cheapest by length. */
static size_t next_board(const sb_filling *f) {
    const sb_bench *bench = f->bench;
    size_t best = SIZE_MAX;
    for (size_t s = 0; s < bench->boards.count; s++) {
        if (f->available[s] == 0 || !holds(f, s))
            continue;
        bool rack = is_from_rack(bench, s), best_rack = best != SIZE_MAX && is_from_rack(bench, best);
        bool cheaper =
            best == SIZE_MAX || price_of(&bench->boards.items[s]) < price_of(&bench->boards.items[best]);
        if (best == SIZE_MAX || (rack && !best_rack) || (rack == best_rack && cheaper))
            best = s;
    }
    return best;
}

/* ---- what goes on it ----------------------------------------------------------------------------- */

/* As many of this kind as the board still takes; found by trying, since off-square parts may share their
 * cuts. */
static void add_kind(const sb_filling *f, size_t kind, sb_pick *load) {
    const sb_bench *bench = f->bench;
    int64_t few = 0, many = bench->boards.items[load->board].capacity / bench->kinds.items[kind].least;
    many = f->demand[kind] < many ? f->demand[kind] : many;
    if (many <= 0)
        return;
    SB_PUSH(bench->run->pool, load->lots, ((sb_lot){kind, 0}));
    sb_lot *lot = &load->lots.items[load->lots.count - 1];
    while (few < many) {
        lot->count = (few + many + 1) / 2;
        sb_outcome outcome = sb_load_outcome(bench, load->board, load->lots.items, load->lots.count);
        if (outcome.fits)
            few = lot->count, load->cost = outcome.cost;
        else
            many = lot->count - 1;
    }
    lot->count = few;
    load->lots.count -= few == 0;
}

void sb_fill_longest_first(sb_filling *f, size_t only, sb_cutting *cutting) {
    const sb_bench *bench = f->bench;
    sb_pick *load = &bench->scratch->picks[0];
    for (;;) {
        bool usable = only != SIZE_MAX && f->available[only] > 0 && holds(f, only);
        size_t board = usable ? only : next_board(f);
        if (board == SIZE_MAX)
            break;
        load->board = board;
        load->lots.count = 0;
        for (size_t i = 0; i < bench->kinds.count; i++)
            if (f->demand[i] > 0)
                add_kind(f, i, load);
        if (load->lots.count == 0)
            break;
        int64_t times = sb_filling_times(f, board, load->lots.items, load->lots.count);
        sb_filling_use(f, load, times, cutting);
    }
    for (size_t i = 0; i < bench->kinds.count; i++)
        cutting->missing += f->demand[i] * bench->kinds.items[i].least;
}
