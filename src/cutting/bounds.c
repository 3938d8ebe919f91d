/* Lower bounds of one stock of boards; each proof is one way to turn duals into a figure no plan can
 * undercut. */
#include <math.h>

#include "cutting/proof.h"

#define STEPS  300000 /* nodes for one knapsack; past them a proof is weaker, not wrong */
#define ROUNDS 6

/* ---- the sum of what everything is worth --------------------------------------------------------- */

int64_t sb_proof_total(const sb_proof *p) {
    int64_t total = 0;
    for (size_t i = 0; i < p->bench->kinds.count; i++)
        total = sb_add(total, sb_mul(p->duals[i], p->bench->kinds.items[i].demand));
    return total;
}

static void find_worths(sb_proof *p, bool bare) {
    sb_worth *found = p->bench->scratch->worth;
    for (size_t s = 0; s < p->bench->boards.count; s++) {
        sb_worth_find(p->bench, s, &(sb_valuing){p->duals, p->scale, bare, NULL, INT64_MIN}, STEPS, found);
        p->worths[s] = found->any ? found->upper : 0;
    }
}

static void count_fixed(sb_proof *p) {
    for (size_t s = 0; s < p->bench->boards.count; s++)
        p->least[s] = p->bench->boards.items[s].fixed * p->scale;
}

/* ---- by duals: no board without limit is worth more than it costs -------------------------------- */

static double excess(const sb_proof *p) {
    double most = 1;
    for (size_t s = 0; s < p->bench->boards.count; s++) {
        if (sb_is_limited(&p->bench->boards.items[s]) || p->worths[s] <= p->least[s])
            continue;
        double over = p->least[s] > 0 ? (double)p->worths[s] / (double)p->least[s] : 2;
        most = fmax(most, fmax(over, 1 + 1e-9));
    }
    return most;
}

void sb_prove_by_duals(sb_proof *p) {
    count_fixed(p);
    find_worths(p, false);
    double over = excess(p);
    for (int round = 1; over > 1 && round <= ROUNDS; round++) {
        for (size_t i = 0; i < p->bench->kinds.count; i++)
            p->duals[i] = (int64_t)((double)p->duals[i] / (round < 3 ? over : over * over));
        find_worths(p, false);
        over = excess(p);
    }
    p->how = "duals";
    p->bound = over > 1 ? SB_BAD : sb_proof_total(p);
    for (size_t s = 0; s < p->bench->boards.count; s++) {
        int64_t above = p->worths[s] - p->least[s];
        if (sb_is_limited(&p->bench->boards.items[s]) && above > 0)
            p->bound = sb_sub(p->bound, sb_mul(above, p->bench->boards.items[s].available));
    }
}

/* ---- by covering: whole boards whose worths add up ----------------------------------------------- */

static void cover(sb_proof *p) {
    sb_cover *covers = SB_NEW_ARRAY(p->bench->run->pool, sb_cover, p->bench->boards.count);
    size_t count = 0;
    int64_t total = sb_proof_total(p);
    for (size_t s = 0; s < p->bench->boards.count; s++)
        if (p->worths[s] > 0)
            covers[count++] = (sb_cover){p->least[s], p->worths[s], p->bench->boards.items[s].available};
    p->how = "cover";
    p->bound = SB_BAD;
    if (total == SB_BAD)
        return;
    int64_t least = sb_cover_least(p->bench->run, covers, count, total, p->lack);
    p->bound = least == INT64_MAX ? SB_BAD : sb_add(least, p->common);
}

/* Handling counts against the worth of a load; what the worths lack is paid in handling. */
static void prove_with_handling(sb_proof *p) {
    p->lack = true;
    count_fixed(p);
    find_worths(p, false);
    cover(p);
}

static int64_t value_of(const sb_proof *p, int64_t half) {
    return sb_mul_div_up(half, p->scale * p->bench->value, 2000 * (int64_t)SB_NM_PER_MM);
}

/* Every board: price, charge, its truing cut, perhaps one stop setting, less the leftover of an empty one. */
static bool count_least(sb_proof *p, bool setting) {
    const sb_bench *bench = p->bench;
    for (size_t s = 0; s < bench->boards.count; s++) {
        const sb_offered *on = &bench->boards.items[s];
        int64_t cuts = (int64_t)on->trued - (on->ragged ? 0 : 1);
        p->least[s] = p->scale * (on->fixed + bench->cut * cuts + (setting ? bench->change : 0));
        p->least[s] -= bench->useful > 0 ? value_of(p, on->capacity) : 0;
        if (p->least[s] < 0)
            return false;
    }
    return true;
}

/* Every plan: a cut for each part, each stop setting on one board at least, no leftover where parts are. */
static void count_common(sb_proof *p, bool setting) {
    const sb_bench *bench = p->bench;
    p->common = 0;
    for (size_t i = 0; i < bench->kinds.count; i++) {
        const sb_kind *kind = &bench->kinds.items[i];
        int64_t settings = !setting && kind->setting == i ? bench->change : 0;
        int64_t taken = bench->useful > 0 ? value_of(p, kind->least) - 1 : 0;
        p->common = sb_add(p->common, sb_mul(p->scale * bench->cut + (taken > 0 ? taken : 0), kind->demand));
        p->common = sb_add(p->common, p->scale * settings);
    }
}

static void prove_by_boards(sb_proof *p, bool setting) {
    p->bound = SB_BAD;
    p->lack = false;
    if (!count_least(p, setting))
        return;
    count_common(p, setting);
    find_worths(p, true);
    cover(p);
}

/* ---- into the certificate ------------------------------------------------------------------------ */

/* Each need in its kind counts at the first need of the kind. */
static void record_needs(const sb_proof *p, sb_bound *bound) {
    const sb_bench *bench = p->bench;
    bound->duals.count = bound->counted.count = 0;
    for (size_t n = 0; n < bench->problem->needs.count; n++) {
        int64_t dual = 0, counted = 0;
        if (bench->problem->needs.items[n].stock != bench->stock)
            continue;
        for (size_t i = 0; i < bench->kinds.count; i++)
            if (bench->kinds.items[i].needs.items[0] == n)
                dual = p->duals[i], counted = bench->kinds.items[i].demand;
        SB_PUSH(bench->run->pool, bound->duals, dual);
        SB_PUSH(bench->run->pool, bound->counted, counted);
    }
}

static void record_supplies(const sb_proof *p, sb_bound *bound) {
    const sb_bench *bench = p->bench;
    bound->worth.count = bound->least.count = 0;
    for (size_t i = 0; i < bench->problem->supplies.count; i++) {
        if (bench->problem->supplies.items[i].stock != bench->stock)
            continue;
        size_t s = sb_board_of(bench, i);
        SB_PUSH(bench->run->pool, bound->worth, s != SIZE_MAX ? p->worths[s] : -1);
        SB_PUSH(bench->run->pool, bound->least, s != SIZE_MAX ? p->least[s] : 0);
    }
}

void sb_proof_keep(const sb_proof *p, sb_bound *bound) {
    if (p->bound == SB_BAD)
        return;
    int64_t whole = sb_mul_div_up(p->bound, 1, p->scale);
    if (whole <= bound->bound.milli)
        return;
    bound->bound.milli = whole;
    bound->how = p->how;
    bound->duals_scale = p->scale;
    bound->common = p->common;
    bound->lack = p->lack;
    bound->threshold = p->threshold;
    record_needs(p, bound);
    record_supplies(p, bound);
}

/* ---- all proofs for one set of duals ------------------------------------------------------------- */

sb_proof sb_proof_new(const sb_bench *bench, const double *duals) {
    sb_pool *pool = bench->run->pool;
    sb_proof p = {.bench = bench, .scale = sb_duals_scale(bench), .bound = SB_BAD};
    p.duals = SB_NEW_ARRAY(pool, int64_t, bench->kinds.count);
    p.worths = SB_NEW_ARRAY(pool, int64_t, bench->boards.count);
    p.least = SB_NEW_ARRAY(pool, int64_t, bench->boards.count);
    for (size_t i = 0; i < bench->kinds.count; i++)
        p.duals[i] = duals[i] > 0 ? (int64_t)(duals[i] * (double)p.scale) : 0;
    return p;
}

void sb_bound_try(const sb_bench *bench, const double *duals, sb_bound *bound) {
    bool handling = bench->change > 0 || bench->cut > 0;
    sb_proof p = sb_proof_new(bench, duals);
    prove_by_boards(&p, true);
    sb_proof_keep(&p, bound);
    if (bench->change > 0) {
        prove_by_boards(&p, false);
        sb_proof_keep(&p, bound);
    }
    p.common = 0;
    if (bench->useful > 0)
        sb_prove_by_duals(&p);
    else if (handling)
        prove_with_handling(&p);
    if (bench->useful > 0 || handling)
        sb_proof_keep(&p, bound);
}

void sb_bound_by_length(const sb_bench *bench, sb_bound *bound) {
    double *duals = SB_NEW_ARRAY(bench->run->pool, double, bench->kinds.count), price = INFINITY;
    for (size_t s = 0; s < bench->boards.count; s++) {
        const sb_offered *on = &bench->boards.items[s];
        if (on->fixed > 0 && on->capacity > 0)
            price = fmin(price, (double)on->fixed / (double)on->capacity);
    }
    for (size_t i = 0; i < bench->kinds.count; i++)
        duals[i] = isinf(price) ? 0 : price * (double)bench->kinds.items[i].least;
    sb_bound_try(bench, duals, bound);
}
