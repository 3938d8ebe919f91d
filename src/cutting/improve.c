/* Local improvement: a few boards are taken apart and their parts put on boards anew; what is cheaper stays. */
#include "cutting/improve.h"

#define TRIES 3 /* fillings tried for one group */

/* ---- where things stand -------------------------------------------------------------------------- */

static void take_stock(sb_improving *im) {
    const sb_bench *bench = im->bench;
    for (size_t s = 0; s < bench->boards.count; s++)
        im->left[s] = bench->boards.items[s].available;
    for (size_t i = 0; i < bench->kinds.count; i++)
        im->unmade[i] = bench->kinds.items[i].demand;
    for (size_t l = 0; l < im->now->loads.count; l++) {
        const sb_load *load = &im->now->loads.items[l];
        if (im->left[load->board] != INT64_MAX)
            im->left[load->board] -= load->count;
        for (size_t i = 0; i < load->lots; i++)
            im->unmade[im->now->lots.items[load->first + i].kind] -=
                load->count * im->now->lots.items[load->first + i].count;
    }
}

static int64_t missing_of(const sb_improving *im) {
    int64_t missing = 0;
    for (size_t i = 0; i < im->bench->kinds.count; i++)
        missing += im->unmade[i] * im->bench->kinds.items[i].least;
    return missing;
}

/* ---- cheapest board for a load ------------------------------------------------------------------- */

static void choose_board(sb_improving *im, size_t index) {
    sb_load load = im->now->loads.items[index];
    const sb_lot *lots = &im->now->lots.items[load.first];
    for (size_t s = 0; s < im->bench->boards.count; s++) {
        if (s == load.board || im->left[s] < load.count)
            continue;
        sb_outcome outcome = sb_load_outcome(im->bench, s, lots, load.lots);
        if (!outcome.fits || outcome.cost >= im->now->loads.items[index].cost)
            continue;
        im->now->loads.items[index].board = s;
        im->now->loads.items[index].cost = outcome.cost;
    }
    const sb_load *chosen = &im->now->loads.items[index];
    im->now->cost -= load.count * (load.cost - chosen->cost);
    if (im->left[load.board] != INT64_MAX)
        im->left[load.board] += load.count;
    if (im->left[chosen->board] != INT64_MAX)
        im->left[chosen->board] -= load.count;
}

/* ---- taking apart and putting together ----------------------------------------------------------- */

/* Cost above what its parts are thought to be worth. */
static double loss(const sb_improving *im, const sb_load *load) {
    double worth = 0;
    for (size_t i = 0; i < load->lots; i++) {
        const sb_lot *lot = &im->now->lots.items[load->first + i];
        worth += im->worth[lot->kind] * (double)lot->count;
    }
    return (double)load->cost - worth;
}

/* Of a few loads drawn, the one that loses most. */
static size_t draw_load(sb_improving *im, size_t draws) {
    size_t best = SIZE_MAX;
    while (draws-- > 0) {
        size_t drawn = sb_work_dice(im->bench->work, im->now->loads.count);
        bool taken = false;
        for (size_t i = 0; i < im->members; i++)
            taken = taken || (im->group[i] == drawn && im->now->loads.items[drawn].count == 1);
        if (!taken && (best == SIZE_MAX ||
                       loss(im, &im->now->loads.items[drawn]) > loss(im, &im->now->loads.items[best])))
            best = drawn;
    }
    return best;
}

static void draw_group(sb_improving *im, size_t wanted) {
    im->members = 0;
    while (wanted-- > 0) {
        size_t load = draw_load(im, 1 + sb_work_dice(im->bench->work, 3));
        size_t same = 0;
        for (size_t i = 0; load != SIZE_MAX && i < im->members; i++)
            same += im->group[i] == load;
        if (load != SIZE_MAX && (int64_t)same < im->now->loads.items[load].count)
            im->group[im->members++] = load;
    }
}

/* The parts of the group are to be made again, its boards are free again. */
static void take_apart(sb_improving *im) {
    sb_filling *f = im->f;
    for (size_t s = 0; s < im->bench->boards.count; s++)
        f->available[s] = im->left[s];
    for (size_t i = 0; i < im->bench->kinds.count; i++)
        f->demand[i] = im->unmade[i];
    im->group_cost = 0;
    for (size_t m = 0; m < im->members; m++) {
        const sb_load *load = &im->now->loads.items[im->group[m]];
        for (size_t i = 0; i < load->lots; i++)
            f->demand[im->now->lots.items[load->first + i].kind] +=
                im->now->lots.items[load->first + i].count;
        if (f->available[load->board] != INT64_MAX)
            f->available[load->board]++;
        im->group_cost += load->cost;
    }
}

/* Worths shaken by up to a tenth either way. */
static void shake(sb_improving *im, int64_t strength) {
    for (size_t i = 0; i < im->bench->kinds.count; i++) {
        if (im->f->demand[i] == 0)
            continue;
        double by = (double)sb_work_dice(im->bench->work, 2001) / 1000 - 1;
        im->f->worth[i] = im->worth[i] * (1 + 0.05 * (double)strength * by);
    }
}

static void refill(sb_improving *im) {
    im->found->missing = INT64_MAX;
    for (int64_t i = 0; i < TRIES; i++) {
        take_apart(im);
        shake(im, i);
        sb_cutting_clear(im->tried);
        sb_fill(im->f, false, im->tried);
        if (!sb_cutting_better(im->tried, im->found))
            continue;
        sb_cutting *old = im->found;
        im->found = im->tried;
        im->tried = old;
    }
}

static void replace_group(sb_improving *im) {
    const sb_bench *bench = im->bench;
    int64_t missing = im->found->missing;
    for (size_t m = 0; m < im->members; m++)
        im->now->loads.items[im->group[m]].count--;
    sb_cutting_clear(im->spare);
    for (int part = 0; part < 2; part++) {
        const sb_cutting *from = part ? im->found : im->now;
        for (size_t l = 0; l < from->loads.count; l++) {
            const sb_load *load = &from->loads.items[l];
            if (load->count > 0)
                sb_cutting_add(bench, im->spare, load->board, load->count, &from->lots.items[load->first],
                               load->lots, load->cost);
        }
    }
    sb_cutting *old = im->now;
    im->now = im->spare;
    im->spare = old;
    im->now->missing = missing;
    take_stock(im);
}

/* Mostly two boards exchange parts; now and then a few are filled anew. */
static bool find_other(sb_improving *im) {
    if (sb_work_dice(im->bench->work, 4) > 0) {
        draw_group(im, 2);
        if (im->members < 2)
            return false;
        take_apart(im);
        bool fits = sb_exchange(im);
        im->found->missing = missing_of(im);
        return fits;
    }
    draw_group(im, 2 + sb_work_dice(im->bench->work, SB_GROUP - 1));
    if (im->members > 0)
        refill(im);
    return im->members > 0;
}

/* True when the group came out better. Equal ones are taken too, to get away from where nothing helps. */
static bool improve_group(sb_improving *im) {
    int64_t missing = missing_of(im);
    if (!find_other(im))
        return false;
    bool better =
        im->found->missing < missing || (im->found->missing == missing && im->found->cost < im->group_cost);
    bool equal = im->found->missing == missing && im->found->cost == im->group_cost;
    if (better || equal)
        replace_group(im);
    return better;
}

/* ---- all of it ----------------------------------------------------------------------------------- */

static sb_improving set_up(sb_filling *f, sb_cutting *cutting) {
    sb_pool *pool = f->bench->run->pool;
    sb_improving im = {.bench = f->bench, .f = f};
    im.now = SB_NEW(pool, sb_cutting);
    im.spare = SB_NEW(pool, sb_cutting);
    im.found = SB_NEW(pool, sb_cutting);
    im.tried = SB_NEW(pool, sb_cutting);
    im.worth = SB_NEW_ARRAY(pool, double, f->bench->kinds.count);
    im.left = SB_NEW_ARRAY(pool, int64_t, f->bench->boards.count + 1);
    im.unmade = SB_NEW_ARRAY(pool, int64_t, f->bench->kinds.count);
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        im.worth[i] = f->worth[i];
    sb_cutting_copy(f->bench, im.now, cutting);
    return im;
}

void sb_improve(sb_filling *f, sb_cutting *cutting, int64_t target) {
    sb_improving im = set_up(f, cutting);
    take_stock(&im);
    for (size_t l = 0; l < im.now->loads.count; l++)
        choose_board(&im, l);
    size_t idle = 0, patience = 1000 + 40 * im.now->loads.count;
    bool done = false;
    while (!done && idle < patience && im.now->loads.count > 0 && sb_work_goes_on(f->bench->work)) {
        idle = improve_group(&im) ? 0 : idle + 1;
        done = im.now->missing == 0 && im.now->cost <= target;
    }
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        f->worth[i] = im.worth[i];
    if (sb_cutting_better(im.now, cutting))
        sb_cutting_copy(f->bench, cutting, im.now);
}
