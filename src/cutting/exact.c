/* The exact finish. */
#include "cutting/exact.h"

#include <float.h>
#include <math.h>
#include <stdlib.h>

#include "cutting/average.h"
#include "cutting/integer.h"
#include "cutting/measured.h"
#include "cutting/proof.h"

#define MOST_LOADS 4000
#define FIRST      250     /* loads of the first program; each next one has three times as many */
#define STEPS      3000000 /* nodes for the loads of one board */
#define MOST_NODES 1000000

typedef struct listed {
    sb_load load;
    int64_t reduced; /* r [1/scale thousandths] */
} listed;

typedef struct exact {
    const sb_bench *bench;
    sb_filling *f;
    sb_proof proof;
    sb_cutting *best, *found;
    sb_bound *bound;
    int64_t threshold;     /* T [1/scale thousandths] */
    SB_LIST(listed) loads; /* by rising r, once enumerated */
    SB_LIST(sb_lot) lots;
    size_t board; /* being enumerated */
    int64_t last_nodes;
    bool maximal; /* only loads to which nothing can be added: their cost is that of their board */
    /* As the program counts [grains]: y by kind, m by board, and B; all 0 where parts may be made in excess. */
    int64_t *worth, *rent, base;
} exact;

/* ---- loads --------------------------------------------------------------------------------------- */

static bool has_faults(const exact *e) {
    return e->bench->boards.items[e->board].faults.count > 0;
}

static bool is_maximal(const exact *e, const sb_knapsack *k, int64_t room) {
    for (size_t i = 0; i < k->items.count; i++)
        if (k->items.items[i].trial < k->items.items[i].most && k->items.items[i].size <= room &&
            (!has_faults(e) || sb_measured_trial_may_fit(e->bench, e->board, k, i)))
            return false;
    return true;
}

static int64_t cost_of(const exact *e, const sb_lot *lots, size_t count) {
    if (has_faults(e) && e->bench->all_square)
        return sb_measured_least_cost(e->bench, e->board, lots, count);
    if (sb_load_is_square(e->bench, lots, count))
        return sb_faultless_outcome(e->bench, e->board, lots, count).cost;
    return (int64_t)floor(sb_load_least_cost(e->bench, e->board, lots, count));
}

/* What a load on this board costs where it is worth nothing: least + m. */
static int64_t price_of(const exact *e, size_t board) {
    int64_t least = e->proof.least[board], worth = e->proof.worths[board];
    return sb_is_limited(&e->bench->boards.items[board]) && worth > least ? worth : least;
}

static bool add_load(void *context, const sb_knapsack *k, int64_t worth, int64_t room) {
    exact *e = context;
    sb_pool *pool = e->bench->run->pool;
    if (has_faults(e) && !sb_measured_trial_may_fit(e->bench, e->board, k, SIZE_MAX))
        return true;
    if (e->maximal && !is_maximal(e, k, room))
        return true;
    listed l = {{e->board, 1, e->lots.count, 0, 0}, price_of(e, e->board) - worth};
    for (size_t i = 0; i < k->items.count; i++)
        if (k->items.items[i].trial > 0)
            SB_PUSH(pool, e->lots, ((sb_lot){k->items.items[i].tag, k->items.items[i].trial}));
    l.load.lots = e->lots.count - l.load.first;
    l.load.cost = cost_of(e, &e->lots.items[l.load.first], l.load.lots);
    SB_PUSH(pool, e->loads, l);
    return e->loads.count < MOST_LOADS;
}

static int by_reduced(const void *a, const void *b) {
    const listed *one = a, *other = b;
    if (one->reduced != other->reduced)
        return one->reduced < other->reduced ? -1 : 1;
    return one->load.first < other->load.first ? -1 : one->load.first > other->load.first;
}

static bool enumerate(exact *e) {
    e->loads.count = e->lots.count = 0;
    for (e->board = 0; e->board < e->bench->boards.count; e->board++) {
        int64_t floor = price_of(e, e->board) - e->threshold;
        sb_valuing by = {e->proof.duals, e->proof.scale, false, NULL, floor};
        if (!sb_worths_all(e->bench, e->board, &by, STEPS, add_load, e))
            return false;
    }
    if (e->loads.count > 0)
        qsort(e->loads.items, e->loads.count, sizeof *e->loads.items, by_reduced);
    return true;
}

/* ---- the integer program over the first so many -------------------------------------------------- */

static double most_times(const exact *e, const sb_load *load) {
    int64_t most = e->bench->boards.items[load->board].available;
    for (size_t i = 0; i < load->lots; i++) {
        const sb_lot *lot = &e->lots.items[load->first + i];
        int64_t enough = (e->bench->kinds.items[lot->kind].demand + lot->count - 1) / lot->count;
        most = enough < most ? enough : most;
    }
    return (double)most;
}

static void bound_rows(const exact *e, sb_integer *p) {
    size_t kinds = e->bench->kinds.count;
    for (size_t i = 0; i < kinds; i++) {
        p->lower[i] = (double)e->bench->kinds.items[i].demand;
        p->upper[i] = e->maximal ? DBL_MAX : p->lower[i];
    }
    for (size_t s = 0; s < e->bench->boards.count; s++)
        if (sb_is_limited(&e->bench->boards.items[s]))
            p->upper[kinds + s] = (double)e->bench->boards.items[s].available;
}

/* y, m and with them B in whole grains, rounded down: whatever they are, the sum stays what the plan costs. */
static void count_worths(exact *e) {
    const sb_bench *bench = e->bench;
    int64_t grain = e->proof.scale * bench->grain;
    e->worth = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->kinds.count);
    e->rent = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->boards.count);
    for (size_t i = 0; i < bench->kinds.count && !e->maximal; i++) {
        e->worth[i] = e->proof.duals[i] / grain;
        e->base += e->worth[i] * bench->kinds.items[i].demand;
    }
    for (size_t s = 0; s < bench->boards.count && !e->maximal; s++) {
        e->rent[s] = (price_of(e, s) - e->proof.least[s]) / grain;
        if (e->rent[s] > 0)
            e->base -= e->rent[s] * bench->boards.items[s].available;
    }
}

static int64_t cost_in_program(const exact *e, const sb_load *load) {
    int64_t cost = load->cost / e->bench->grain + e->rent[load->board];
    for (size_t i = 0; i < load->lots; i++) {
        const sb_lot *lot = &e->lots.items[load->first + i];
        cost -= e->worth[lot->kind] * lot->count;
    }
    return cost;
}

/* Boards left over, of those that are worth more than they cost. */
static void add_left_over(const exact *e, sb_integer *p) {
    for (size_t s = 0; s < e->bench->boards.count; s++) {
        if (e->rent[s] == 0)
            continue;
        size_t row = e->bench->kinds.count + s;
        p->lower[row] = p->upper[row];
        sb_integer_column(p, (double)e->rent[s], p->upper[row]);
        sb_integer_enter(p, row, 1);
    }
}

static sb_integer *program_of(const exact *e, size_t count) {
    size_t kinds = e->bench->kinds.count;
    sb_integer *p = sb_integer_new(e->bench->run->pool, kinds + e->bench->boards.count);
    bound_rows(e, p);
    for (size_t l = 0; l < count; l++) {
        const sb_load *load = &e->loads.items[l].load;
        sb_integer_column(p, (double)cost_in_program(e, load), most_times(e, load));
        for (size_t i = 0; i < load->lots; i++)
            sb_integer_enter(p, e->lots.items[load->first + i].kind,
                             (double)e->lots.items[load->first + i].count);
        if (sb_is_limited(&e->bench->boards.items[load->board]))
            sb_integer_enter(p, kinds + load->board, 1);
    }
    add_left_over(e, p);
    return p;
}

/* ---- a plan out of its solution ------------------------------------------------------------------ */

/* What of the load is still wanted; parts made in excess are left out. */
static void cut_down(exact *e, const sb_load *load, sb_pick *pick) {
    pick->board = load->board;
    pick->lots.count = 0;
    for (size_t i = 0; i < load->lots; i++) {
        sb_lot lot = e->lots.items[load->first + i];
        lot.count = lot.count < e->f->demand[lot.kind] ? lot.count : e->f->demand[lot.kind];
        if (lot.count > 0)
            SB_PUSH(e->bench->run->pool, pick->lots, lot);
    }
}

static void use(exact *e, const sb_load *load) {
    sb_pick *pick = &e->bench->scratch->picks[0];
    cut_down(e, load, pick);
    if (pick->lots.count == 0 || e->f->available[load->board] == 0)
        return;
    sb_outcome outcome = sb_load_outcome(e->bench, load->board, pick->lots.items, pick->lots.count);
    pick->cost = outcome.cost;
    if (outcome.fits) /* the program counts on cuts that cannot all be shared */
        sb_filling_use(e->f, pick, 1, e->found);
}

static void take_solution(exact *e, const double *x, size_t count) {
    sb_filling_reset(e->f);
    sb_cutting_clear(e->found);
    for (size_t l = 0; l < count; l++)
        for (int64_t n = (int64_t)floor(x[l] + 0.5); n > 0; n--)
            use(e, &e->loads.items[l].load);
    sb_fill(e->f, false, e->found);
    if (sb_cutting_better(e->found, e->best))
        sb_cutting_copy(e->bench, e->best, e->found);
}

/* ---- settled cost by cost ------------------------------------------------------------------------ */

/* The integer program reckons in floating point: where it cannot tell grains apart, a millionth of what it counts is
 * given away. */
static int64_t certain(const exact *e, int64_t cost) {
    int64_t counted = llabs(cost / e->bench->grain - e->base);
    return cost - cost % e->bench->grain - counted / 1000000 * e->bench->grain;
}

/* No plan costs `cost` or less; the next there can be costs a grain more. */
static void raise_bound(exact *e, int64_t cost) {
    sb_proof p = e->proof;
    int64_t below = certain(e, cost);
    p.how = "enumeration";
    p.threshold = sb_sub(sb_mul(below, p.scale) + 1, p.bound);
    p.bound = sb_mul(below + e->bench->grain, p.scale);
    sb_proof_keep(&p, e->bound);
}

/* The most whole grains that a plan made of these loads alone must not pass to be the least of all. */
static int64_t reach_of(const exact *e, size_t count) {
    int64_t threshold = count < e->loads.count ? e->loads.items[count].reduced : e->threshold;
    int64_t cost = (e->proof.bound + threshold - 1) / e->proof.scale;
    return cost - cost % e->bench->grain;
}

/* As the program counts: a plan made of it may cost more, where not all cuts can be shared. */
static int64_t cost_of_solution(const exact *e, const double *x, size_t count) {
    int64_t cost = 0;
    for (size_t l = 0; l < count; l++)
        cost += (int64_t)floor(x[l] + 0.5) * e->loads.items[l].load.cost;
    return cost;
}

/* Settles whether a plan of the first so many loads costs `cost` or less. */
static bool settle(exact *e, size_t count, int64_t cost) {
    sb_integer *p = program_of(e, count);
    p->cutoff = (double)(cost / e->bench->grain - e->base) + 0.5;
    int64_t per_node = 2500 + 3 * (int64_t)count + 100 * (int64_t)p->rows;
    p->seconds = sb_work_seconds(e->bench->work);
    int64_t nodes = e->bench->work->left / per_node;
    if (cost - e->bound->bound.milli < e->bench->grain && nodes < e->last_nodes)
        nodes = e->last_nodes;
    p->nodes = nodes < MOST_NODES ? (int)nodes : MOST_NODES;
    sb_integer_end end = sb_integer_solve(p);
    e->bench->work->left -= (p->used + 10) * per_node;
    if (end == SB_INTEGER_BEST || end == SB_INTEGER_SOME)
        take_solution(e, p->x, count);
    if (end == SB_INTEGER_NONE)
        raise_bound(e, cost);
    if (end == SB_INTEGER_BEST)
        raise_bound(e, cost_of_solution(e, p->x, count) - e->bench->grain);
    return end == SB_INTEGER_NONE || end == SB_INTEGER_BEST;
}

/* The next lower number of loads behind which a full grain lies. */
static void settle_all(exact *e) {
    int64_t proved = e->bound->bound.milli;
    for (size_t count = FIRST; sb_work_goes_on(e->bench->work); count *= 3) {
        if (count > e->loads.count)
            count = e->loads.count;
        int64_t cost = reach_of(e, count), better = e->best->cost - e->bench->grain;
        cost = cost < better ? cost : better;
        if (cost >= proved && !settle(e, count, cost))
            return;
        if (count == e->loads.count || e->bound->bound.milli >= e->best->cost)
            return;
    }
}

/* The duals inside the face, and the bound they prove. */
static bool find_duals(exact *e, sb_columns *c) {
    double *duals = SB_NEW_ARRAY(e->bench->run->pool, double, e->bench->kinds.count);
    if (!sb_average_duals(c, duals))
        return false;
    e->proof = sb_proof_new(e->bench, duals);
    sb_prove_by_duals(&e->proof);
    if (e->proof.bound == SB_BAD)
        return false;
    sb_proof_keep(&e->proof, e->bound);
    return true;
}

void sb_exact(sb_filling *f, sb_columns *c, sb_cutting *best, sb_bound *bound, int64_t last_nodes) {
    exact e = {.bench = f->bench, .f = f, .best = best, .bound = bound, .last_nodes = last_nodes};
    e.found = SB_NEW(f->bench->run->pool, sb_cutting);
    e.maximal = f->bench->change == 0 && f->bench->cut == 0 && f->bench->useful == 0;
    if (best->missing > 0 || !find_duals(&e, c))
        return;
    count_worths(&e);
    int64_t gap = sb_mul(best->cost - f->bench->grain, e.proof.scale) - e.proof.bound;
    for (e.threshold = gap + 1; e.threshold > 0; e.threshold /= 2)
        if (enumerate(&e)) {
            settle_all(&e);
            return;
        }
}
