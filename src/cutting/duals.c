/* The worth of a board under given duals: at most two knapsacks. */
#include "cutting/duals.h"
#include "cutting/measured.h"

int64_t sb_duals_scale(const sb_bench *bench) {
    int64_t most = 0;
    for (size_t i = 0; i < bench->boards.count; i++)
        if (bench->boards.items[i].fixed > most)
            most = bench->boards.items[i].fixed;
    return most < 100000000 ? 1000 : most < 10000000000 ? 10 : 1;
}

/* ---- the two cases: no usable leftover; a usable one, counted in full ---------------------------- */

typedef struct valuing {
    const sb_bench *bench;
    const sb_offered *on;
    const sb_valuing *by;
    bool leftover; /* the load leaves a usable one */
} valuing;

/* What the leftover brings at most, on an empty board, and what each half nanometre taken costs of it. */
static int64_t full_leftover(const valuing *v) {
    int64_t half = v->on->capacity - 2 * v->bench->kerf;
    return sb_mul_div_up(half, v->by->scale * v->bench->value, 2000 * (int64_t)SB_NM_PER_MM);
}

static int64_t value_of(const valuing *v, const sb_kind *kind, size_t index) {
    int64_t value = v->by->duals[index] - (v->by->bare ? 0 : v->by->scale * v->bench->cut);
    if (v->leftover)
        value -= sb_mul_div_down(kind->least, v->by->scale * v->bench->value, 2000 * (int64_t)SB_NM_PER_MM);
    return value;
}

/* Cuts that come with the board whatever lies on it. Between angled ends any load might end flush with the board;
 * of square ones it is known which do. */
static int64_t base_cuts(const valuing *v) {
    bool may_be_flush = !v->leftover && !v->on->ragged && !v->bench->all_square;
    return (int64_t)v->on->trued - may_be_flush;
}

/* What a load that ends flush with the board saves. */
static int64_t saved_by_flush(const valuing *v) {
    bool known = !v->leftover && !v->on->ragged && v->bench->all_square;
    return known && !v->by->bare ? v->by->scale * v->bench->cut : 0;
}

static int64_t constant_of(const valuing *v) {
    int64_t constant = v->by->bare ? 0 : -v->by->scale * v->bench->cut * base_cuts(v);
    return v->leftover ? constant + full_leftover(v) : constant;
}

static void fill_items(const valuing *v, sb_knapsack *k) {
    for (size_t i = 0; i < v->bench->kinds.count; i++) {
        const sb_kind *kind = &v->bench->kinds.items[i];
        sb_knap_item item = {.size = kind->least, .value = value_of(v, kind, i), .tag = i};
        item.limit = v->by->limits ? v->by->limits[i] : kind->demand;
        if (v->on->most && v->on->most[i] < item.limit)
            item.limit = v->on->most[i];
        item.setup = kind->alone && !v->by->bare ? v->by->scale * v->bench->change : 0;
        if (item.size <= k->capacity && item.limit > 0)
            SB_PUSH(v->bench->run->pool, k->items, item);
    }
}

static void keep_filling(const valuing *v, const sb_knapsack *k, sb_worth *out) {
    out->best = k->best + constant_of(v);
    out->lots.count = 0;
    for (size_t i = 0; i < k->items.count; i++)
        if (k->items.items[i].taken > 0)
            SB_PUSH(v->bench->run->pool, out->lots,
                    ((sb_lot){k->items.items[i].tag, k->items.items[i].taken}));
}

static void keep_trial(const valuing *v, const sb_knapsack *k, int64_t worth, sb_worth *out) {
    out->any = true;
    out->best = worth;
    out->lots.count = 0;
    for (size_t i = 0; i < k->items.count; i++)
        if (k->items.items[i].trial > 0)
            SB_PUSH(v->bench->run->pool, out->lots,
                    ((sb_lot){k->items.items[i].tag, k->items.items[i].trial}));
}

static sb_knapsack *set_up(const valuing *v, int64_t steps) {
    sb_knapsack *k = v->bench->scratch->knapsack;
    k->items.count = 0;
    k->capacity = v->on->capacity - (v->leftover ? 2 * (v->bench->kerf + v->bench->useful) : 0);
    k->steps = steps;
    k->exact = true;
    k->floor = v->by->floor == INT64_MIN ? INT64_MIN : v->by->floor - constant_of(v);
    fill_items(v, k);
    return k;
}

static void try_case(const valuing *v, int64_t steps, sb_worth *out) {
    sb_knapsack *k = set_up(v, steps);
    sb_knapsack_solve(v->bench->run->pool, k);
    v->bench->work->left -= steps - k->steps + (int64_t)k->items.count / 4 + 1;
    if (!k->any)
        return;
    int64_t upper = k->upper + constant_of(v);
    out->upper = upper > out->upper ? upper : out->upper;
    if (!out->any || k->best + constant_of(v) > out->best)
        keep_filling(v, k, out);
    out->any = true;
}

/* Of the loads that end flush, the best: only those near the best of all can beat it by the cut they save. */
typedef struct flushing {
    const valuing *v;
    sb_worth *out;
} flushing;

static bool visit_flush(void *context, const sb_knapsack *k, int64_t worth, int64_t room) {
    const flushing *f = context;
    int64_t saving = worth + constant_of(f->v) + saved_by_flush(f->v);
    if (room > 0 || (f->out->any && saving <= f->out->best) || saving <= f->v->by->floor)
        return true;
    keep_trial(f->v, k, saving, f->out);
    return true;
}

static void try_flush(const valuing *v, int64_t steps, sb_worth *out) {
    int64_t saved = saved_by_flush(v), upper = v->bench->scratch->knapsack->upper;
    if (saved == 0 || upper == INT64_MIN)
        return;
    sb_knapsack *k = set_up(v, steps);
    k->floor = upper - saved;
    flushing f = {v, out};
    bool all = sb_knapsack_all(v->bench->run->pool, k, visit_flush, &f);
    v->bench->work->left -= steps - k->steps;
    if (!out->any)
        return;
    int64_t most = all ? out->best : upper + constant_of(v) + saved;
    out->upper = most > out->upper ? most : out->upper;
}

void sb_worth_find(const sb_bench *bench, size_t board, const sb_valuing *by, int64_t steps, sb_worth *out) {
    valuing v = {bench, &bench->boards.items[board], by, false};
    out->any = false;
    out->upper = INT64_MIN;
    try_case(&v, steps, out);
    try_flush(&v, steps, out);
    v.leftover = true;
    if (bench->useful > 0 && !by->bare)
        try_case(&v, steps, out);
    if (v.on->faults.count > 0)
        sb_measured_worth(bench, board, by, out);
}

/* Loads that leave a usable leftover are visited as such only. */
typedef struct visiting {
    const valuing *v;
    sb_knap_visit *visit;
    void *context;
    int64_t least_room; /* less than this is left */
} visiting;

static bool visit_load(void *context, const sb_knapsack *k, int64_t worth, int64_t room) {
    const visiting *by = context;
    int64_t whole = worth + constant_of(by->v) + (room == 0 ? saved_by_flush(by->v) : 0);
    return room >= by->least_room || whole <= by->v->by->floor || by->visit(by->context, k, whole, room);
}

static bool visit_case(visiting *by, int64_t steps) {
    const sb_bench *bench = by->v->bench;
    sb_knapsack *k = set_up(by->v, steps);
    k->floor -= saved_by_flush(by->v);
    bool all = sb_knapsack_all(bench->run->pool, k, visit_load, by);
    bench->work->left -= steps - k->steps;
    return all;
}

bool sb_worths_all(const sb_bench *bench, size_t board, const sb_valuing *by, int64_t steps,
                   sb_knap_visit *visit, void *context) {
    valuing v = {bench, &bench->boards.items[board], by, false};
    bool priced = bench->useful > 0 && !by->bare;
    visiting tight = {&v, visit, context, priced ? 2 * (bench->kerf + bench->useful) : INT64_MAX};
    if (!visit_case(&tight, steps))
        return false;
    v.leftover = true;
    return !priced || visit_case(&(visiting){&v, visit, context, INT64_MAX}, steps);
}

/* ---- cost of a load as the bound counts it ------------------------------------------------------- */

double sb_load_least_cost(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    const sb_offered *on = &bench->boards.items[board];
    valuing v = {bench, on, NULL, false};
    int64_t taken = 0, pieces = 0, settings = 0;
    for (size_t i = 0; i < count; i++) {
        const sb_kind *kind = &bench->kinds.items[lots[i].kind];
        taken += kind->least * lots[i].count;
        pieces += lots[i].count;
        settings += kind->alone;
    }
    double left = (double)(on->capacity - taken) / 2 - (double)bench->kerf;
    v.leftover = bench->useful > 0 && left >= (double)bench->useful;
    bool flush = taken == on->capacity && bench->all_square && !on->ragged;
    double cost =
        (double)(on->fixed + bench->change * settings + bench->cut * (pieces + base_cuts(&v) - flush));
    if (v.leftover)
        cost -= left * (double)bench->value / (1000.0 * SB_NM_PER_MM);
    return cost;
}
