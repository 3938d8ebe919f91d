/* One part from board to board, or one for another. */
#include "cutting/improve.h"

static void copy_side(const sb_improving *im, size_t member, sb_pick *to) {
    const sb_load *load = &im->now->loads.items[im->group[member]];
    to->lots.count = 0;
    for (size_t i = 0; i < load->lots; i++)
        SB_PUSH(im->bench->run->pool, to->lots, im->now->lots.items[load->first + i]);
}

static void give(sb_improving *im, sb_pick *to, size_t kind, int64_t count) {
    for (size_t i = 0; i < to->lots.count; i++)
        if (to->lots.items[i].kind == kind) {
            to->lots.items[i].count += count;
            return;
        }
    SB_PUSH(im->bench->run->pool, to->lots, ((sb_lot){kind, count}));
}

/* Takes one of a kind drawn, or all of it; the kind and how many. */
static sb_lot take(sb_improving *im, sb_pick *from) {
    size_t drawn = sb_work_dice(im->bench->work, from->lots.count);
    sb_lot *lot = &from->lots.items[drawn];
    int64_t count = sb_work_dice(im->bench->work, 3) == 0 ? lot->count : 1;
    sb_lot taken = {lot->kind, count};
    lot->count -= count;
    if (lot->count == 0)
        *lot = from->lots.items[--from->lots.count];
    return taken;
}

/* The cheapest board that is still there; false when none holds the load. */
static bool choose_board(sb_improving *im, sb_pick *side) {
    bool found = false;
    for (size_t s = 0; s < im->bench->boards.count; s++) {
        if (im->f->available[s] == 0)
            continue;
        sb_outcome outcome = sb_load_outcome(im->bench, s, side->lots.items, side->lots.count);
        if (!outcome.fits || (found && outcome.cost >= side->cost))
            continue;
        side->board = s;
        side->cost = outcome.cost;
        found = true;
    }
    im->bench->work->left -= 4 * (int64_t)im->bench->boards.count;
    if (found && im->f->available[side->board] != INT64_MAX)
        im->f->available[side->board]--;
    return found;
}

static bool settle(sb_improving *im, sb_pick *side) {
    if (side->lots.count == 0)
        return true;
    if (!choose_board(im, side))
        return false;
    sb_cutting_add(im->bench, im->found, side->board, 1, side->lots.items, side->lots.count, side->cost);
    return true;
}

bool sb_exchange(sb_improving *im) {
    sb_pick *one = &im->sides[0], *other = &im->sides[1];
    copy_side(im, 0, one);
    copy_side(im, 1, other);
    sb_lot over = take(im, one);
    if (sb_work_dice(im->bench->work, 3) > 0) {
        sb_lot back = take(im, other);
        give(im, one, back.kind, back.count);
    }
    give(im, other, over.kind, over.count);
    sb_cutting_clear(im->found);
    return settle(im, one) && settle(im, other);
}
