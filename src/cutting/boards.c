/* The search over one stock of boards: several ways, the cheapest kept, a bound beside it. */
#include "cutting/dive.h"
#include "cutting/exact.h"

typedef struct searching {
    sb_bench *bench;
    sb_filling f;
    sb_cutting *best, *tried;
    sb_bound *bound;
    int64_t budget;
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

/* A share of the budget for the next way. */
static void allow(searching *s, int64_t percent) {
    s->bench->work->left = s->budget / 100 * percent;
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
    for (int i = 0; i < rounds && !is_least(s) && sb_work_goes_on(s->bench->work); i++) {
        begin(s);
        sb_fill(&s->f, true, s->tried);
        keep_if_better(s);
    }
}

static void use_worths(searching *s, const double *worths) {
    for (size_t i = 0; i < s->bench->kinds.count; i++)
        s->f.worth[i] = worths[i] > 0 ? worths[i] : 1;
}

static void try_mix(searching *s) {
    static const double shifts[] = {0, 0.5, 0.3, 0.7, 0.15, 0.9};
    sb_filling all = sb_filling_new(s->bench);
    sb_columns *mix = sb_columns_new(s->bench, all.demand, all.available);
    allow(s, 40);
    if (!mix || !sb_columns_solve(mix, 20 * mix->rows + 200))
        return;
    sb_bound_try(s->bench, mix->duals, s->bound);
    allow(s, 20);
    for (size_t i = 0; i < sizeof shifts / sizeof *shifts && !is_least(s); i++) {
        if (!sb_work_goes_on(s->bench->work))
            break;
        begin(s);
        use_worths(s, mix->duals);
        sb_mix_round(&s->f, mix, shifts[i], s->tried);
        keep_if_better(s);
    }
    allow(s, 60);
    if (!is_least(s))
        sb_dive(&s->f, mix, s->best, s->bound->bound.milli);
    allow(s, 100);
    if (!is_least(s))
        sb_exact(&s->f, mix, s->best, s->bound);
    use_worths(s, mix->duals);
}

static void try_to_improve(searching *s) {
    if (is_least(s))
        return;
    sb_improve(&s->f, s->best, s->bound->bound.milli);
}

/* What nothing can undercut before anything is proved: leftovers may be worth more than their board. */
static int64_t least_of_all(const sb_bench *bench) {
    int64_t least = 0, pieces = 0;
    for (size_t s = 0; s < bench->boards.count && bench->useful > 0; s++) {
        const sb_offered *on = &bench->boards.items[s];
        int64_t gain = sb_mul_div_up(on->room, bench->value, 1000 * (int64_t)SB_NM_PER_MM) - on->fixed;
        least = -gain < least ? -gain : least;
    }
    for (size_t i = 0; i < bench->kinds.count; i++)
        pieces = sb_add(pieces, bench->kinds.items[i].demand);
    return sb_mul(least, pieces);
}

static void start_bound(searching *s) {
    s->bound->how = "duals";
    s->bound->duals_scale = 1;
    s->bound->bound.milli = least_of_all(s->bench);
    sb_bound_by_length(s->bench, s->bound);
}

void sb_boards_search(sb_bench *bench, sb_cutting *best, sb_bound *bound) {
    searching s = {bench, sb_filling_new(bench), best, SB_NEW(bench->run->pool, sb_cutting),
                   bound, bench->work->left};
    try_longest_first(&s);
    allow(&s, 20);
    start_bound(&s);
    if (is_least(&s) || !sb_work_goes_on(bench->work))
        return;
    allow(&s, 10);
    try_worths(&s, 3);
    if (!is_least(&s))
        try_mix(&s);
    allow(&s, 10);
    try_worths(&s, 10);
    allow(&s, 30);
    try_to_improve(&s);
}
