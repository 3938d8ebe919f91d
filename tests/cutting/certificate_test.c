/* Certificates verified without the planner: knapsacks by dynamic programming over half millimetres, covers
 * by counting. */
#include "problems.h"

#include <stdlib.h>

#define HALF    500000 /* [nm] */
#define UNITS   13000  /* no board here is longer than 6.5 m */
#define NOTHING INT64_MIN

/* ---- the worth of one board ---------------------------------------------------------------------- */

typedef struct verifying {
    const sb_problem *p;
    const sb_bound *b;
    int64_t
        exact[UNITS + 1]; /* best worth of loads that take exactly so many half millimetres; NOTHING: none */
    int64_t next[UNITS + 1];
    int64_t setup, cut, scale;
} verifying;

/* As many of one size as counted, each a cut, the first a stop setting. */
static void add_size(verifying *v, int64_t take, int64_t dual, int64_t counted) {
    for (int64_t c = 0; c <= UNITS; c++)
        v->next[c] = v->exact[c];
    for (int64_t x = 1; x <= counted && x * take <= UNITS; x++)
        for (int64_t c = x * take; c <= UNITS; c++) {
            int64_t from = v->exact[c - x * take];
            int64_t worth =
                from == NOTHING ? NOTHING : from + x * (dual - v->cut * v->scale) - v->setup * v->scale;
            if (worth > v->next[c])
                v->next[c] = worth;
        }
    memcpy(v->exact, v->next, sizeof v->exact);
}

static void add_sizes(verifying *v) {
    for (size_t c = 0; c <= UNITS; c++)
        v->exact[c] = c == 0 ? 0 : NOTHING;
    for (size_t n = 0; n < v->p->needs.count; n++)
        if (v->b->counted.items[n] > 0)
            add_size(v, (v->p->needs.items[n].length.nm + v->p->rules.kerf.nm) / HALF, v->b->duals.items[n],
                     v->b->counted.items[n]);
}

/* The most over all loads that fit; with leftovers priced at what is left behind the last kerf. */
static int64_t most(const verifying *v, const sb_supply *s, bool handled) {
    const sb_cut_stock *stock = &v->p->stock.items[0];
    int64_t room = s->length.nm - s->trim1.nm - s->trim2.nm, kerf = v->p->rules.kerf.nm, best = NOTHING;
    for (int64_t c = 1; c <= (room + kerf) / HALF && c <= UNITS; c++) {
        if (v->exact[c] == NOTHING)
            continue;
        int64_t rest = room + kerf - c * HALF, left = rest > kerf ? rest - kerf : 0, worth = v->exact[c];
        bool priced = handled && !v->p->rules.material_only && stock->useful_length.nm > 0;
        if (priced && left >= stock->useful_length.nm)
            worth += (int64_t)((double)left * 1e-9 * (double)stock->value) * v->scale;
        if (handled) {
            int64_t cuts = (s->trim1.nm > 0) - (rest == 0 && s->trim2.nm == 0);
            worth -= v->cut * v->scale * cuts;
        }
        best = worth > best ? worth : best;
    }
    return best;
}

static void verify_worths(verifying *v, bool handled) {
    const sb_cut_rules *rules = &v->p->rules;
    v->setup = handled && !rules->material_only ? rules->change.milli : 0;
    v->cut = handled && !rules->material_only ? rules->cut.milli : 0;
    v->scale = v->b->duals_scale;
    add_sizes(v);
    for (size_t s = 0; s < v->p->supplies.count; s++) {
        int64_t worth = most(v, &v->p->supplies.items[s], handled);
        assert_true(worth == NOTHING || worth <= v->b->worth.items[s]);
    }
}

/* ---- the figure ---------------------------------------------------------------------------------- */

static int64_t sum_of_duals(const sb_bound *b) {
    int64_t sum = 0;
    for (size_t n = 0; n < b->duals.count; n++)
        sum += b->duals.items[n] * b->counted.items[n];
    return sum;
}

static int64_t figure_by_duals(const sb_problem *p, const sb_bound *b) {
    int64_t sum = sum_of_duals(b);
    for (size_t s = 0; s < p->supplies.count; s++) {
        int64_t above = b->worth.items[s] - b->least.items[s];
        if (p->supplies.items[s].available >= 0)
            sum -= above > 0 ? above * p->supplies.items[s].available : 0;
        else
            assert_true(above <= 0);
    }
    return sum;
}

/* All numbers of boards; the last supply covers what is left. */
static int64_t cover_from(const sb_problem *p, const sb_bound *b, size_t s, int64_t left, int64_t best) {
    if (left <= 0)
        return 0;
    if (s == p->supplies.count || best <= 0)
        return b->lack ? left : INT64_MAX / 2;
    int64_t available = p->supplies.items[s].available, worth = b->worth.items[s], least = INT64_MAX / 2;
    for (int64_t n = 0; available < 0 || n <= available; n++) {
        int64_t here = n * b->least.items[s];
        if (n > 0 && (worth <= 0 || here >= least))
            break;
        int64_t cost = here + cover_from(p, b, s + 1, left - n * worth, least - here);
        least = cost < least ? cost : least;
        if (left - n * worth <= 0)
            break;
    }
    return least;
}

static void verify(const sb_problem *p, const sb_plan *plan) {
    static verifying v;
    assert_int_equal(plan->certificate->bounds.count, 1);
    const sb_bound *b = &plan->certificate->bounds.items[0];
    bool by_duals = strcmp(b->how, "duals") == 0;
    v.p = p;
    v.b = b;
    verify_worths(&v, by_duals || b->lack);
    int64_t figure =
        by_duals ? figure_by_duals(p, b) : b->common + cover_from(p, b, 0, sum_of_duals(b), INT64_MAX);
    assert_true(figure <= b->bound.milli * b->duals_scale); /* rounded up to a whole thousandth */
    assert_true(figure > (b->bound.milli - 1) * b->duals_scale);
    if (b->lack || by_duals) /* price and charge of one board */
        for (size_t s = 0; s < p->supplies.count; s++)
            assert_int_equal(b->least.items[s],
                             b->duals_scale * (p->supplies.items[s].price.milli +
                                               (p->rules.material_only ? 0 : p->rules.board.milli)));
}

/* ---- random jobs --------------------------------------------------------------------------------- */

static void make_job(sb_run *run, sb_problem *p, uint32_t *seed, int flavour) {
    static const double lengths[] = {2400, 3000, 3600, 4200, 6000};
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    p->rules.material_only = flavour == 0;
    p->rules.board.milli = roll(seed, 9000);
    p->rules.change.milli = flavour ? roll(seed, 50000) : 0;
    p->rules.cut.milli = flavour ? roll(seed, 5000) : 0;
    stock->useful_length = mm(flavour == 2 ? 500 : 0);
    stock->value = 150000;
    for (int i = 0; i < 2; i++) {
        double length = lengths[roll(seed, 5)];
        sb_supply *s = add_supply(run, p, length, 0, (int64_t)(length * 0.35) + roll(seed, 90));
        s->trim1 = s->trim2 = mm(roll(seed, 2) ? 10 : 0);
    }
    sb_supply *rack = add_supply(run, p, 700 + roll(seed, 900), 0, 150 + roll(seed, 200));
    rack->available = 1;
    rack->leftover = true;
    size_t kinds = 3 + roll(seed, 8);
    for (size_t i = 0; i < kinds; i++) /* all different, so that a stop setting belongs to one size */
        add_need(run, p, "part", 150 + 20 * (double)i + 0.5 * 40 * roll(seed, 95), 0, 1 + roll(seed, 8));
}

static bool all_differ(const sb_problem *p) {
    for (size_t i = 0; i < p->needs.count; i++)
        for (size_t j = 0; j < i; j++)
            if (p->needs.items[i].length.nm == p->needs.items[j].length.nm)
                return false;
    return true;
}

static void verify_jobs(int flavour) {
    uint32_t seed = 77 + (uint32_t)flavour;
    int done = 0, duals = 0;
    while (done < 60) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed, flavour);
        if (all_differ(&p)) {
            const sb_plan *plan = planned(&run, &p);
            verify(&p, plan);
            duals += strcmp(plan->certificate->bounds.items[0].how, "duals") == 0 ||
                     plan->certificate->bounds.items[0].lack;
            done++;
        }
        sb_run_free(&run);
    }
    assert_true(flavour == 0 || duals > 0);
}

static void of_material_alone(void **state) {
    (void)state;
    verify_jobs(0);
}

static void of_jobs_with_handling(void **state) {
    (void)state;
    verify_jobs(1);
}

static void of_jobs_with_leftovers(void **state) {
    (void)state;
    verify_jobs(2);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_material_alone),
        cmocka_unit_test(of_jobs_with_handling),
        cmocka_unit_test(of_jobs_with_leftovers),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
