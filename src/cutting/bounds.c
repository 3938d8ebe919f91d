/* Lower bounds of one stock of boards. */
#include <math.h>

#include "cutting/duals.h"

#define STEPS  300000 /* nodes for one proof; past them the proof is weaker, not wrong */
#define ROUNDS 6

static bool is_limited(const sb_offered *on) {
    return on->available != INT64_MAX;
}

/* ---- the sum of what everything is worth ------------------------------------------------------------------ */

static int64_t total_worth(const sb_bench *bench, const int64_t *duals) {
    int64_t total = 0;
    for (size_t i = 0; i < bench->kinds.count; i++)
        total = sb_add(total, sb_mul(duals[i], bench->kinds.items[i].demand));
    return total;
}

static void find_worths(const sb_bench *bench, const int64_t *duals, int64_t scale, int64_t *worths) {
    sb_worth *found = bench->scratch->worth;
    for (size_t s = 0; s < bench->boards.count; s++) {
        sb_worth_find(bench, s, duals, scale, STEPS, found);
        worths[s] = found->any ? found->upper : 0;
    }
}

/* ---- with leftovers priced: worth above cost must not be without limit --------------------------------------- */

/* Shrinks the duals until no board without limit is worth more than it costs; 1 when that holds already. */
static double excess(const sb_bench *bench, const int64_t *worths, int64_t scale) {
    double most = 1;
    for (size_t s = 0; s < bench->boards.count; s++) {
        const sb_offered *on = &bench->boards.items[s];
        double fixed = (double)(on->fixed * scale), worth = (double)worths[s];
        if (is_limited(on) || worths[s] <= on->fixed * scale)
            continue;
        double over = fixed > 0 ? worth / fixed : 2;
        most = fmax(most, over < 1 + 1e-9 ? 1 + 1e-9 : over);
    }
    return most;
}

static void shrink(const sb_bench *bench, int64_t *duals, double by) {
    for (size_t i = 0; i < bench->kinds.count; i++)
        duals[i] = (int64_t)((double)duals[i] / by);
}

static int64_t bound_by_sum(const sb_bench *bench, int64_t *duals, int64_t scale, int64_t *worths) {
    find_worths(bench, duals, scale, worths);
    double over = excess(bench, worths, scale);
    for (int round = 1; over > 1; round++) {
        if (round > ROUNDS)
            return SB_BAD;
        shrink(bench, duals, round < 3 ? over : over * over);
        find_worths(bench, duals, scale, worths);
        over = excess(bench, worths, scale);
    }
    int64_t bound = total_worth(bench, duals);
    for (size_t s = 0; s < bench->boards.count; s++) {
        const sb_offered *on = &bench->boards.items[s];
        int64_t above = worths[s] - on->fixed * scale;
        if (is_limited(on) && above > 0)
            bound = sb_sub(bound, sb_mul(above, on->available));
    }
    return bound;
}

/* ---- otherwise: whole boards that cover the sum ---------------------------------------------------------------- */

static int64_t bound_by_cover(const sb_bench *bench, const int64_t *duals, int64_t scale, int64_t *worths) {
    sb_cover *covers = SB_NEW_ARRAY(bench->run->pool, sb_cover, bench->boards.count);
    size_t count = 0;
    int64_t total = total_worth(bench, duals);
    find_worths(bench, duals, scale, worths);
    for (size_t s = 0; s < bench->boards.count; s++) {
        const sb_offered *on = &bench->boards.items[s];
        if (worths[s] > 0)
            covers[count++] = (sb_cover){on->fixed * scale, worths[s], on->available};
    }
    if (total == SB_BAD)
        return SB_BAD;
    int64_t least = sb_cover_least(bench->run, covers, count, total, bench->change > 0 || bench->cut > 0);
    return least == INT64_MAX ? SB_BAD : least;
}

/* ---- into the certificate -------------------------------------------------------------------------------------- */

/* Each need in its kind counts at the first need of the kind. */
static void record_needs(const sb_bench *bench, const int64_t *duals, sb_bound *bound) {
    bound->duals.count = bound->counted.count = 0;
    for (size_t n = 0; n < bench->problem->needs.count; n++) {
        int64_t dual = 0, counted = 0;
        if (bench->problem->needs.items[n].stock != bench->stock)
            continue;
        for (size_t i = 0; i < bench->kinds.count; i++)
            if (bench->kinds.items[i].needs.items[0] == n)
                dual = duals[i], counted = bench->kinds.items[i].demand;
        SB_PUSH(bench->run->pool, bound->duals, dual);
        SB_PUSH(bench->run->pool, bound->counted, counted);
    }
}

static void record_worths(const sb_bench *bench, const int64_t *worths, sb_bound *bound) {
    bound->worth.count = 0;
    size_t s = 0;
    for (size_t i = 0; i < bench->problem->supplies.count; i++) {
        if (bench->problem->supplies.items[i].stock != bench->stock)
            continue;
        bool usable = s < bench->boards.count && bench->boards.items[s].supply == i;
        SB_PUSH(bench->run->pool, bound->worth, usable ? worths[s] : -1);
        s += usable;
    }
}

void sb_bound_try(const sb_bench *bench, const double *duals, sb_bound *bound) {
    int64_t scale = sb_duals_scale(bench);
    int64_t *whole = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->kinds.count);
    int64_t *worths = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->boards.count);
    for (size_t i = 0; i < bench->kinds.count; i++)
        whole[i] = duals[i] > 0 ? (int64_t)(duals[i] * (double)scale) : 0;
    bool by_sum = bench->useful > 0;
    int64_t least =
        by_sum ? bound_by_sum(bench, whole, scale, worths) : bound_by_cover(bench, whole, scale, worths);
    if (least == SB_BAD || sb_mul_div_up(least, 1, scale) <= bound->bound.milli)
        return;
    bound->bound.milli = sb_mul_div_up(least, 1, scale);
    bound->how = by_sum ? "duals" : "cover";
    bound->duals_scale = scale;
    record_needs(bench, whole, bound);
    record_worths(bench, worths, bound);
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
