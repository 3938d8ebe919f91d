/* Numbers of sheets. */
#include "cutting/sheet_numbers.h"

#include "cutting/cheapest.h"
#include "cutting/duals.h"
#include "cutting/sheet_dive.h"

#define NODES  2000000 /* for one search */
#define A_NODE 2       /* steps */
#define ROUNDS 100     /* of pricing on one choice of numbers */

typedef struct numbering {
    sb_sheet_mix *m;
    const sb_sheet_bench *bench;
    sb_cheapest cheapest;
    int64_t common; /* what every plan costs besides */
    int64_t grain;
    sb_bound shown; /* the certificate as it grows */
} numbering;

/* ---- rows ---------------------------------------------------------------------------------------- */

static int64_t total_of(const numbering *n, const sb_sheet_proof *proof) {
    int64_t total = 0;
    for (size_t i = 0; i < n->bench->panes.count; i++)
        total = sb_add(total, sb_mul(proof->duals[i], n->bench->panes.items[i].pieces));
    return total;
}

static int64_t worth_of_found(const numbering *n, const sb_sheet_proof *proof) {
    int64_t worth = 0;
    for (size_t o = 0; o < n->bench->offers.count; o++)
        worth = sb_add(worth, sb_mul(proof->worths[o], n->cheapest.found[o]));
    return worth;
}

static bool is_broken(const numbering *n, const sb_sheet_proof *proof) {
    int64_t total = total_of(n, proof), worth = worth_of_found(n, proof);
    return total != SB_BAD && worth != SB_BAD && worth < total;
}

static bool add_row(numbering *n, const sb_sheet_proof *proof) {
    if (n->cheapest.rows.count == SB_CHEAPEST_ROWS)
        return false;
    sb_branch *row = SB_NEW(n->bench->run->pool, sb_branch);
    row->proof = (sb_bound){.stock = n->bench->stock};
    sb_sheet_show(n->bench, proof, &row->proof);
    SB_PUSH(n->bench->run->pool, n->shown.branches, row);
    sb_cheapest_row(&n->cheapest, proof->worths, total_of(n, proof));
    return true;
}

/* ---- one choice of numbers ----------------------------------------------------------------------- */

static double cost_of_mix(const numbering *n) {
    return sb_lp_value(n->m->program->lp) * n->m->program->unit;
}

/* True when a row has come that the numbers at hand break. */
static bool rule_out(numbering *n) {
    double enough = (double)n->cheapest.cost * (1 + 1e-7);
    sb_sheet_program_want(n->m->program, n->m->demand, n->cheapest.found);
    for (int round = 0; round < ROUNDS && sb_work_goes_on(n->bench->work); round++) {
        if (!sb_sheet_mix_price(n->m))
            return false;
        sb_sheet_proof proof = sb_sheet_mix_proof(n->m);
        if (is_broken(n, &proof))
            return add_row(n, &proof);
        if (cost_of_mix(n) <= enough || !sb_sheet_mix_add_improving(n->m))
            return false;
    }
    return false;
}

/* ---- one after another --------------------------------------------------------------------------- */

static void raise_bound(numbering *n, int64_t cost) {
    int64_t most = n->m->s->best->cost, bound = sb_add(cost, n->common);
    bound = bound > most ? most : bound;
    if (bound == SB_BAD || bound <= n->m->s->bound->bound.milli)
        return;
    n->shown.bound.milli = bound;
    *n->m->s->bound = n->shown;
}

static sb_cheapest_end find_numbers(numbering *n, int64_t limit) {
    int64_t nodes = NODES;
    sb_cheapest_end end = sb_cheapest_find(&n->cheapest, limit, &nodes);
    n->bench->work->left -= (NODES - nodes) * A_NODE;
    if (end == SB_CHEAPEST_FOUND)
        raise_bound(n, n->cheapest.cost);
    if (end == SB_CHEAPEST_NONE)
        raise_bound(n, limit - limit % n->grain + n->grain);
    return end;
}

/* Searches are quick as long as their limit is near the bound: it goes up in steps. */
static void go_up(numbering *n) {
    const sb_sheet_search *s = n->m->s;
    int64_t step = (s->best->cost - s->bound->bound.milli) / 64 + n->grain;
    while (!sb_sheets_are_least(s) && step >= n->grain && sb_work_goes_on(n->bench->work)) {
        int64_t limit = s->bound->bound.milli + step, better = s->best->cost - n->grain;
        sb_cheapest_end end = find_numbers(n, (limit < better ? limit : better) - n->common);
        if (end == SB_CHEAPEST_FOUND && !rule_out(n))
            return;
        step = end == SB_CHEAPEST_NONE ? 2 * step : end == SB_CHEAPEST_OPEN ? step / 8 : step;
    }
}

static void set_up(numbering *n) {
    size_t offers = n->bench->offers.count;
    int64_t *prices = SB_NEW_ARRAY(n->bench->run->pool, int64_t, offers);
    for (size_t o = 0; o < offers; o++)
        prices[o] = sb_sheet_least(n->bench, o);
    n->common = sb_sheet_common(n->bench);
    int64_t dearest = n->m->s->best->cost - n->common;
    n->cheapest = sb_cheapest_new(n->bench->run->pool, offers, prices, n->m->available, dearest);
    n->shown.stock = n->bench->stock;
    sb_sheet_show(n->bench, &(sb_sheet_proof){.how = "numbers"}, &n->shown);
}

void sb_sheet_numbers(sb_sheet_mix *m) {
    numbering n = {.m = m, .bench = m->bench, .grain = sb_sheets_grain(m->bench)};
    if (m->bench->offers.count < 2 || m->s->best->missing > 0 || !sb_sheet_mix_price(m))
        return;
    set_up(&n);
    sb_sheet_proof proof = sb_sheet_mix_proof(m);
    add_row(&n, &proof);
    go_up(&n);
    sb_sheet_program_want(m->program, m->demand, m->available);
}
