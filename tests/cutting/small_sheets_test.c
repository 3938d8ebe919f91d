/* Small jobs of sheets against brute force: all guillotine arrangements of all groups of parts, any number of
 * stages. */
#include "problems.h"

#define MOST   5
#define SHAPES 400

typedef struct shape {
    int64_t w, l;
} shape;

typedef struct trial {
    const sb_problem *p;
    const sb_need *item[MOST];
    size_t items;
    shape shapes[1 << MOST][SHAPES]; /* least boxes a group can be cut from */
    size_t count[1 << MOST];
} trial;

/* ---- boxes of a group: two smaller groups side by side or end to end, a kerf between ------------- */

static void add_shape(trial *t, unsigned group, int64_t w, int64_t l) {
    size_t kept = 0;
    for (size_t i = 0; i < t->count[group]; i++) {
        shape s = t->shapes[group][i];
        if (s.w <= w && s.l <= l)
            return;
        if (s.w < w || s.l < l)
            t->shapes[group][kept++] = s;
    }
    assert_true(kept < SHAPES);
    t->shapes[group][kept++] = (shape){w, l};
    t->count[group] = kept;
}

static void join(trial *t, unsigned group, unsigned a, unsigned b) {
    int64_t k = t->p->rules.panel_kerf.nm;
    for (size_t i = 0; i < t->count[a]; i++)
        for (size_t j = 0; j < t->count[b]; j++) {
            shape x = t->shapes[a][i], y = t->shapes[b][j];
            add_shape(t, group, x.w + k + y.w, x.l > y.l ? x.l : y.l);
            add_shape(t, group, x.w > y.w ? x.w : y.w, x.l + k + y.l);
        }
}

static void find_shapes(trial *t) {
    for (unsigned group = 1; group < 1u << t->items; group++) {
        t->count[group] = 0;
        for (size_t i = 0; i < t->items; i++) {
            const sb_need *need = t->item[i];
            if (group != 1u << i)
                continue;
            if (need->grain != SB_CUT_ACROSS)
                add_shape(t, group, need->width.nm, need->length.nm);
            if (need->grain != SB_CUT_ALONG)
                add_shape(t, group, need->length.nm, need->width.nm);
        }
        for (unsigned a = (group - 1) & group; a > group / 2; a = (a - 1) & group)
            join(t, group, a, group & ~a);
    }
}

/* ---- groups to sheets ---------------------------------------------------------------------------- */

static int64_t price_of(const trial *t, unsigned group) {
    int64_t least = INT64_MAX / 4;
    for (size_t s = 0; s < t->p->supplies.count; s++) {
        const sb_supply *on = &t->p->supplies.items[s];
        for (size_t i = 0; i < t->count[group]; i++)
            if (t->shapes[group][i].w <= on->width.nm - 2 * on->trim1.nm &&
                t->shapes[group][i].l <= on->length.nm - 2 * on->trim2.nm && on->price.milli < least)
                least = on->price.milli;
    }
    return least;
}

static int64_t least_cost(const sb_problem *p) {
    static trial t;
    int64_t best[1 << MOST] = {0};
    t.p = p;
    t.items = 0;
    for (size_t n = 0; n < p->needs.count; n++)
        for (int64_t i = 0; i < p->needs.items[n].count; i++)
            t.item[t.items++] = &p->needs.items[n];
    find_shapes(&t);
    for (unsigned group = 1; group < 1u << t.items; group++) {
        best[group] = price_of(&t, group);
        for (unsigned a = (group - 1) & group; a > group / 2; a = (a - 1) & group) {
            int64_t apart = best[a] + best[group & ~a];
            best[group] = apart < best[group] ? apart : best[group];
        }
    }
    return best[(1u << t.items) - 1];
}

/* ---- random jobs --------------------------------------------------------------------------------- */

static void make_job(sb_run *run, sb_problem *p, uint32_t *seed) {
    start(run, p, roll(seed, 3) ? 3.2 : 0);
    add_stock(run, p, "ply", true);
    sb_supply *s = add_supply(run, p, 1220, 1220, 2600 + roll(seed, 200));
    s->trim1 = s->trim2 = mm(roll(seed, 2) ? 10 : 0);
    if (roll(seed, 2))
        add_supply(run, p, 2440, 1220, 4900 + roll(seed, 300))->trim1 = mm(roll(seed, 2) ? 10 : 0);
    for (uint32_t left = MOST; left > 0;) {
        uint32_t count = 1 + roll(seed, left > 2 ? 2 : left);
        sb_need *need =
            add_need(run, p, "panel", 200 + 10 * roll(seed, 100), 200 + 10 * roll(seed, 70), count);
        need->grain = (sb_cut_grain)roll(seed, 3);
        left -= count;
    }
}

static void against_brute_force(void **state) {
    uint32_t seed = 21;
    int hits = 0, proofs = 0, jobs = 200;
    (void)state;
    for (int job = 0; job < jobs; job++) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed);
        const sb_plan *plan = planned(&run, &p);
        int64_t least = least_cost(&p);
        assert_true(plan->cost.milli >= least);
        assert_true(plan->bound.milli <= least);
        hits += plan->cost.milli == least;
        proofs += plan->proved;
        sb_run_free(&run);
    }
    print_message("least cost reached in %d of %d, proved in %d\n", hits, jobs, proofs);
    assert_true(hits >= jobs - 2);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(against_brute_force)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
