/* A load for a board with faults: fillings grow from the front, part by part; of all that end in one of the places the
 * board is divided into, the one worth most is kept. */
#include "cutting/measured.h"
#include "cutting/measuring.h"

#define PLACES 160
#define AGAIN  8 /* parts that end in the place they begin in, at most */

typedef struct filling {
    const sb_bench *bench;
    const sb_offered *on;
    const double *values;
    const int64_t *limits;
    sb_measuring *m;
    size_t best[PLACES + 1]; /* into m->filled; SIZE_MAX: none */
} filling;

static size_t place_of(const filling *f, int64_t end) {
    return (size_t)(sb_mul_div_down(end, PLACES, f->on->room));
}

static void keep(filling *f, sb_filled filled) {
    size_t *best = &f->best[place_of(f, filled.end)];
    const sb_filled *known = *best == SIZE_MAX ? NULL : &f->m->filled.items[*best];
    if (known && (known->worth > filled.worth || (known->worth == filled.worth && known->end <= filled.end)))
        return;
    *best = f->m->filled.count;
    SB_PUSH(f->bench->run->pool, f->m->filled, filled);
}

/* How many of each kind it holds, into m->open. */
static void count_kinds(filling *f, size_t index) {
    for (size_t i = 0; i < f->bench->kinds.count; i++)
        f->m->open[i] = 0;
    for (; index != SIZE_MAX; index = f->m->filled.items[index].from)
        f->m->open[f->m->filled.items[index].kind]++;
}

static void extend_by(filling *f, size_t index, size_t k, size_t turn) {
    const sb_kind *kind = &f->bench->kinds.items[k];
    size_t front = kind->turns[turn].front;
    int64_t close = 0, apart = f->bench->endings.items[front].kerf, cuts;
    double worth = f->values[k] - (f->m->open[k] == 0 ? (double)f->bench->change : 0);
    if (index != SIZE_MAX) {
        const sb_filled *before = &f->m->filled.items[index];
        close = before->end + sb_junction(f->bench, before->ending, front, &cuts);
        apart += before->end + f->bench->endings.items[before->ending].kerf;
        worth += before->worth;
    }
    int64_t at = sb_first_place(f->on, kind->avoids, kind->length, close, apart);
    worth -= at > close ? (double)f->bench->cut : 0;
    if (at + kind->length <= f->on->room)
        keep(f, (sb_filled){at + kind->length, worth, index, k, kind->turns[turn].rear});
}

static void extend(filling *f, size_t index) {
    count_kinds(f, index);
    for (size_t k = 0; k < f->bench->kinds.count; k++)
        for (size_t turn = 0; turn < f->bench->kinds.items[k].turn_count; turn++)
            if (f->m->open[k] < f->limits[k] && f->values[k] > 0)
                extend_by(f, index, k, turn);
    f->bench->work->left -= 1 + (int64_t)f->bench->kinds.count / 8;
}

static void extend_place(filling *f, size_t place) {
    size_t done = SIZE_MAX;
    for (int i = 0; i < AGAIN && f->best[place] != done; i++) {
        done = f->best[place];
        extend(f, done);
    }
}

static size_t worth_most(const filling *f) {
    size_t best = SIZE_MAX;
    for (size_t i = 0; i <= PLACES; i++)
        if (f->best[i] != SIZE_MAX &&
            (best == SIZE_MAX || f->m->filled.items[f->best[i]].worth > f->m->filled.items[best].worth))
            best = f->best[i];
    return best;
}

bool sb_measured_load(const sb_bench *bench, size_t board, const double *values, const int64_t *limits,
                      sb_pick *out) {
    filling f = {bench, &bench->boards.items[board], values, limits, bench->scratch->measuring, {0}};
    for (size_t i = 0; i <= PLACES; i++)
        f.best[i] = SIZE_MAX;
    f.m->filled.count = 0;
    extend(&f, SIZE_MAX);
    for (size_t place = 0; place <= PLACES; place++)
        extend_place(&f, place);
    count_kinds(&f, worth_most(&f));
    out->board = board;
    out->lots.count = 0;
    for (size_t k = 0; k < bench->kinds.count; k++)
        if (f.m->open[k] > 0)
            SB_PUSH(bench->run->pool, out->lots, ((sb_lot){k, f.m->open[k]}));
    return out->lots.count > 0;
}
