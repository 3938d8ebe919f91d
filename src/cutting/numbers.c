/* The numbers of boards. */
#include "cutting/numbers.h"

#include <string.h>

#include "cutting/cheapest.h"
#include "cutting/exact.h"
#include "cutting/proof.h"

#define NODES      2000000 /* for one search */
#define A_NODE     2       /* steps */
#define ROUNDS     100     /* of pricing on one choice of numbers */
#define LAST_NODES 100     /* of the exact finish at least */

typedef struct numbering {
    const sb_bench *bench;
    sb_bench narrow; /* the same with the numbers at hand for what is available */
    sb_filling f;    /* of the narrow bench */
    sb_columns *c;
    sb_cheapest cheapest;
    SB_LIST(const int64_t *) closed; /* the numbers of each leaf */
    sb_cutting *best;
    sb_bound *bound;
    sb_bound shown; /* the certificate as it grows */
} numbering;

typedef enum outcome {
    RULED_OUT,
    MADE,
    OPEN
} outcome;

/* ---- rows ---------------------------------------------------------------------------------------- */

static void show_row(numbering *n, const sb_proof *p) {
    sb_branch *branch = SB_NEW(n->bench->run->pool, sb_branch);
    branch->proof = (sb_bound){.stock = n->bench->stock, .bound = {INT64_MIN}};
    sb_proof_keep(p, &branch->proof);
    SB_PUSH(n->bench->run->pool, n->shown.branches, branch);
}

/* The row that these duals give; true where the numbers last found break it. */
static bool add_row(numbering *n, const double *duals) {
    sb_proof p = sb_proof_new(&n->narrow, duals);
    sb_prove_by_duals(&p);
    if (p.bound == SB_BAD || n->cheapest.rows.count == SB_CHEAPEST_ROWS)
        return false;
    int64_t total = sb_proof_total(&p), worth = 0;
    for (size_t s = 0; s < n->bench->boards.count; s++)
        worth += p.worths[s] * n->cheapest.found[s];
    sb_cheapest_row(&n->cheapest, p.worths, total);
    show_row(n, &p);
    return worth < total;
}

/* ---- leaves -------------------------------------------------------------------------------------- */

/* Each board of `few` lies within one of `many` of its own. */
static bool lies_within(const sb_bench *bench, const int64_t *few, const int64_t *many) {
    for (size_t s = 0; s < bench->boards.count; s++) {
        int64_t spare = 0;
        for (size_t t = 0; t < bench->boards.count; t++)
            if (bench->boards.items[t].capacity >= bench->boards.items[s].capacity)
                spare += many[t] - few[t];
        if (spare < 0)
            return false;
    }
    return true;
}

static bool is_closed(const void *context, const int64_t *numbers) {
    const numbering *n = context;
    for (size_t i = 0; i < n->closed.count; i++)
        if (lies_within(n->bench, numbers, n->closed.items[i]))
            return true;
    return false;
}

static void show_leaf(numbering *n, const int64_t *numbers, const sb_bound *proof) {
    const sb_bench *bench = n->bench;
    sb_branch *branch = SB_NEW(bench->run->pool, sb_branch);
    branch->proof = *proof;
    for (size_t i = 0; i < bench->problem->supplies.count; i++) {
        if (bench->problem->supplies.items[i].stock != bench->stock)
            continue;
        size_t s = sb_board_of(bench, i);
        SB_PUSH(bench->run->pool, branch->numbers, s != SIZE_MAX ? numbers[s] : 0);
    }
    SB_PUSH(bench->run->pool, n->shown.branches, branch);
}

static void close(numbering *n, const sb_bound *proof) {
    size_t boards = n->bench->boards.count;
    int64_t *numbers = SB_NEW_ARRAY(n->bench->run->pool, int64_t, boards);
    memcpy(numbers, n->cheapest.found, boards * sizeof *numbers);
    SB_PUSH(n->bench->run->pool, n->closed, numbers);
    show_leaf(n, numbers, proof);
}

/* ---- a plan on these numbers --------------------------------------------------------------------- */

static void narrow_down(numbering *n) {
    for (size_t s = 0; s < n->bench->boards.count; s++)
        n->narrow.boards.items[s].available = n->cheapest.found[s];
    sb_filling_reset(&n->f);
    sb_columns_refit(n->c);
}

/* What stands for the best plan of the narrow bench is a grain dearer than the numbers. */
static outcome finish(numbering *n) {
    int64_t cost = n->cheapest.cost;
    sb_cutting *plan = SB_NEW(n->bench->run->pool, sb_cutting);
    sb_bound proof = {.stock = n->bench->stock, .how = "duals", .duals_scale = 1};
    plan->cost = cost + n->bench->grain;
    sb_exact(&n->f, n->c, plan, &proof, LAST_NODES);
    if (plan->cost <= cost) {
        sb_cutting_copy(n->bench, n->best, plan);
        return MADE;
    }
    if (proof.bound.milli <= cost)
        return OPEN;
    close(n, &proof);
    return RULED_OUT;
}

static outcome find_plan(numbering *n) {
    narrow_down(n);
    if (!sb_columns_solve(n->c, ROUNDS) || !n->c->converged)
        return OPEN;
    return add_row(n, n->c->duals) ? RULED_OUT : finish(n);
}

/* ---- one after another --------------------------------------------------------------------------- */

static void raise_bound(numbering *n, int64_t cost) {
    if (cost > n->best->cost)
        cost = n->best->cost;
    if (cost <= n->bound->bound.milli)
        return;
    n->shown.bound.milli = cost;
    *n->bound = n->shown;
}

static sb_cheapest_end find_numbers(numbering *n, int64_t limit) {
    int64_t nodes = NODES;
    sb_cheapest_end end = sb_cheapest_find(&n->cheapest, limit, &nodes);
    n->bench->work->left -= (NODES - nodes) * A_NODE;
    if (end == SB_CHEAPEST_FOUND)
        raise_bound(n, n->cheapest.cost);
    if (end == SB_CHEAPEST_NONE)
        raise_bound(n, limit - limit % n->bench->grain + n->bench->grain);
    return end;
}

/* Searches are quick as long as their limit is near the bound: it goes up in steps. */
static void go_up(numbering *n) {
    int64_t grain = n->bench->grain, step = (n->best->cost - n->bound->bound.milli) / 64 + grain;
    while (n->bound->bound.milli < n->best->cost && step >= grain && sb_work_goes_on(n->bench->work)) {
        int64_t limit = n->bound->bound.milli + step, better = n->best->cost - grain;
        sb_cheapest_end end = find_numbers(n, limit < better ? limit : better);
        if (end == SB_CHEAPEST_FOUND && find_plan(n) != RULED_OUT)
            return;
        step = end == SB_CHEAPEST_NONE ? 2 * step : end == SB_CHEAPEST_OPEN ? step / 8 : step;
    }
}

/* ---- set up -------------------------------------------------------------------------------------- */

/* None is available at first, so that each has a row in the program. */
static void make_narrow(numbering *n) {
    n->narrow = *n->bench;
    memset(&n->narrow.boards, 0, sizeof n->narrow.boards);
    for (size_t s = 0; s < n->bench->boards.count; s++) {
        SB_PUSH(n->bench->run->pool, n->narrow.boards, n->bench->boards.items[s]);
        n->narrow.boards.items[s].available = 0;
    }
}

static void set_up_search(numbering *n) {
    sb_pool *pool = n->bench->run->pool;
    size_t boards = n->bench->boards.count;
    int64_t pieces = sb_bench_pieces(n->bench); /* more boards than these cannot be used */
    int64_t *prices = SB_NEW_ARRAY(pool, int64_t, boards), *most = SB_NEW_ARRAY(pool, int64_t, boards);
    for (size_t s = 0; s < boards; s++) {
        prices[s] = n->bench->boards.items[s].fixed;
        int64_t available = n->bench->boards.items[s].available;
        most[s] = available < pieces ? available : pieces;
    }
    n->cheapest = sb_cheapest_new(pool, boards, prices, most, n->best->cost);
    n->cheapest.is_out = is_closed;
    n->cheapest.context = n;
}

static bool set_up(numbering *n) {
    make_narrow(n);
    set_up_search(n);
    n->f = sb_filling_new(&n->narrow);
    n->c = sb_columns_new(&n->narrow, sb_filling_new(&n->narrow).demand, n->cheapest.found);
    n->shown = (sb_bound){.stock = n->bench->stock, .how = "branching", .duals_scale = 1};
    return n->c != NULL;
}

bool sb_numbers_apply(const sb_bench *bench) {
    return bench->boards.count > 1 && !bench->faulty && bench->change == 0 && bench->cut == 0 &&
           bench->useful == 0;
}

void sb_numbers(const sb_bench *bench, const sb_columns *mix, sb_cutting *best, sb_bound *bound) {
    numbering n = {.bench = bench, .best = best, .bound = bound};
    if (best->missing > 0 || !set_up(&n))
        return;
    add_row(&n, mix->duals);
    add_row(&n, n.f.worth); /* by length, as a filling starts */
    go_up(&n);
}
