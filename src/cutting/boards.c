/* The search over one stock of boards: several ways, the cheapest kept, a bound beside it. */
#include "cutting/dive.h"
#include "cutting/exact.h"
#include "cutting/numbers.h"

#define LAST_NODES 400 /* of the exact finish at least */

typedef struct searching {
    sb_bench *bench;
    sb_filling f;
    sb_cutting *best, *tried;
    sb_bound *bound;
    int64_t budget, left, allowed; /* of all ways; not yet used; given to the way at hand */
    sb_filling all;                /* everything still to be made: what the columns look at */
    sb_columns *mix;
} searching;

/* ---- keeping the cheapest ------------------------------------------------------------------------ */

static void begin(searching *s) {
    sb_filling_reset(&s->f);
    sb_cutting_clear(s->tried);
}

static void keep_if_better(searching *s) {
    if (sb_cutting_better(s->tried, s->best))
        sb_cutting_copy(s->bench, s->best, s->tried);
}

static bool is_least(const searching *s) {
    return s->best->missing == 0 && s->best->cost <= s->bound->bound.milli;
}

static bool goes_on(const searching *s) {
    return !is_least(s) && sb_work_goes_on(s->bench->work);
}

/* A share of the budget for the next way; what is left of all of it for the last. */
static void allow(searching *s, int64_t percent) {
    s->left -= s->allowed - s->bench->work->left;
    s->allowed = percent < 100 ? s->budget / 100 * percent : s->left;
    s->bench->work->left = s->allowed;
}

/* ---- the ways ------------------------------------------------------------------------------------ */

static void try_longest_first(searching *s) {
    begin(s);
    sb_fill_longest_first(&s->f, SIZE_MAX, s->tried);
    sb_cutting_copy(s->bench, s->best, s->tried);
    for (size_t board = 0; board < s->bench->boards.count && s->bench->boards.count > 1; board++) {
        begin(s);
        sb_fill_longest_first(&s->f, board, s->tried);
        keep_if_better(s);
    }
}

static void try_worths(searching *s, int rounds) {
    for (int i = 0; i < rounds && goes_on(s); i++) {
        begin(s);
        sb_fill(&s->f, true, s->tried);
        keep_if_better(s);
    }
}

static void use_worths(searching *s, const double *worths) {
    for (size_t i = 0; i < s->bench->kinds.count; i++)
        s->f.worth[i] = worths[i] > 0 ? worths[i] : 1;
}

/* The linear program: its duals prove a bound. False when it could not be solved. */
static bool try_mix(searching *s) {
    s->all = sb_filling_new(s->bench);
    s->mix = sb_columns_new(s->bench, s->all.demand, s->all.available);
    if (!s->mix || !sb_columns_solve(s->mix, 20 * s->mix->rows + 200))
        return false;
    sb_bound_try(s->bench, s->mix->duals, s->bound);
    return true;
}

static void try_rounding(searching *s) {
    static const double shifts[] = {0, 0.5, 0.3, 0.7, 0.15, 0.9};
    for (size_t i = 0; i < sizeof shifts / sizeof *shifts && goes_on(s); i++) {
        begin(s);
        use_worths(s, s->mix->duals);
        sb_mix_round(&s->f, s->mix, shifts[i], s->tried);
        keep_if_better(s);
    }
}

static void try_diving(searching *s) {
    if (goes_on(s))
        sb_dive(&s->f, s->mix, s->best, s->bound->bound.milli);
}

static void try_to_improve(searching *s) {
    if (goes_on(s))
        sb_improve(&s->f, s->best, s->bound->bound.milli);
}

static void try_numbers(searching *s) {
    if (goes_on(s) && sb_numbers_apply(s->bench))
        sb_numbers(s->bench, s->mix, s->best, s->bound);
}

static void try_exact(searching *s) {
    if (goes_on(s))
        sb_exact(&s->f, s->mix, s->best, s->bound, LAST_NODES);
}

/* What nothing can undercut before anything is proved: leftovers may be worth more than their board. */
static int64_t least_of_all(const sb_bench *bench) {
    int64_t least = 0;
    for (size_t s = 0; s < bench->boards.count && bench->useful > 0; s++) {
        const sb_offered *on = &bench->boards.items[s];
        int64_t gain = sb_mul_div_up(on->room, bench->value, 1000 * (int64_t)SB_NM_PER_MM) - on->fixed;
        least = -gain < least ? -gain : least;
    }
    return sb_mul(least, sb_bench_pieces(bench));
}

/* From below that, so that a proof of as much is written down. */
static void start_bound(searching *s) {
    s->bound->how = "duals";
    s->bound->duals_scale = 1;
    s->bound->bound.milli = sb_sub(least_of_all(s->bench), 1);
    sb_bound_by_length(s->bench, s->bound);
}

void sb_boards_search(sb_bench *bench, sb_cutting *best, sb_bound *bound) {
    searching s = {.bench = bench, .f = sb_filling_new(bench), .best = best, .bound = bound};
    s.tried = SB_NEW(bench->run->pool, sb_cutting);
    s.budget = s.left = s.allowed = bench->work->left;
    try_longest_first(&s);
    if (best->missing == 0)
        sb_work_show(bench->work, bench->problem->stock.items[bench->stock].name, &best->cost, &bound->bound);
    allow(&s, 10);
    start_bound(&s);
    allow(&s, 5);
    try_worths(&s, 3);
    allow(&s, 100);
    bool mixed = goes_on(&s) && try_mix(&s);
    allow(&s, 10);
    if (mixed)
        try_rounding(&s);
    allow(&s, 25);
    if (mixed)
        try_diving(&s);
    allow(&s, 30);
    try_worths(&s, 10);
    try_to_improve(&s);
    allow(&s, 100);
    if (mixed) {
        try_numbers(&s);
        try_exact(&s);
    }
}
