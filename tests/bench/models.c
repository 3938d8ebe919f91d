/* Cutting jobs as integer programs. */
#include "models.h"

#include <float.h>
#include <stdlib.h>

#define MAJOR 100000.0 /* thousandths of the minor unit */

size_t bench_row(bench_program *p, double lower, double upper) {
    SB_PUSH(p->pool, p->lower, lower);
    SB_PUSH(p->pool, p->upper, upper);
    return p->lower.count - 1;
}

void bench_column(bench_program *p, double cost, double most) {
    SB_PUSH(p->pool, p->costs, cost);
    SB_PUSH(p->pool, p->most, most);
    SB_PUSH(p->pool, p->starts, (int)p->amounts.count);
}

void bench_entry(bench_program *p, size_t row, double amount) {
    SB_PUSH(p->pool, p->row_of, (int)row);
    SB_PUSH(p->pool, p->amounts, amount);
}

static int64_t take_of(const sb_problem *p, const sb_need *need) {
    return need->length.nm + p->rules.kerf.nm;
}

static int64_t capacity_of(const sb_problem *p, const sb_supply *supply) {
    return supply->length.nm - supply->trim1.nm - supply->trim2.nm + p->rules.kerf.nm;
}

static int64_t pieces_of(const sb_problem *p) {
    int64_t pieces = 0;
    for (size_t n = 0; n < p->needs.count; n++)
        pieces += p->needs.items[n].count;
    return pieces;
}

/* ---- by arcs ------------------------------------------------------------------------------------- */

typedef struct arc {
    int64_t from, to; /* sums [units] */
    size_t need;
} arc;

typedef struct graph {
    const sb_problem *p;
    bench_program *out;
    int64_t unit, longest; /* of the grid of all lengths [nm]; capacity [units] */
    int64_t *times;        /* by sum: of the need at hand on the way here, at least; -1: not reached */
    size_t *row;           /* by sum that is reached; else SIZE_MAX */
    SB_LIST(arc) arcs;
} graph;

static int64_t divisor(int64_t a, int64_t b) {
    return b == 0 ? a : divisor(b, a % b);
}

static void find_grid(graph *g) {
    int64_t longest = 0;
    for (size_t n = 0; n < g->p->needs.count; n++)
        g->unit = divisor(g->unit, take_of(g->p, &g->p->needs.items[n]));
    for (size_t s = 0; s < g->p->supplies.count; s++) {
        int64_t capacity = capacity_of(g->p, &g->p->supplies.items[s]);
        g->unit = divisor(g->unit, capacity);
        longest = capacity > longest ? capacity : longest;
    }
    g->longest = longest / g->unit;
}

static void add_arcs(graph *g, size_t index) {
    const sb_need *need = &g->p->needs.items[index];
    int64_t take = take_of(g->p, need) / g->unit;
    for (int64_t u = 0; u <= g->longest; u++)
        g->times[u] = g->times[u] < 0 ? -1 : 0;
    for (int64_t u = 0; u + take <= g->longest; u++) {
        if (g->times[u] < 0 || g->times[u] >= need->count)
            continue;
        SB_PUSH(g->out->pool, g->arcs, ((arc){u, u + take, index}));
        if (g->times[u + take] < 0)
            g->times[u + take] = g->times[u] + 1;
    }
}

static int by_length(const void *a, const void *b) {
    const sb_need *one = *(const sb_need *const *)a, *other = *(const sb_need *const *)b;
    return one->length.nm != other->length.nm ? (one->length.nm > other->length.nm ? -1 : 1)
           : one < other                      ? -1
                                              : 1;
}

static void add_all_arcs(graph *g) {
    size_t count = g->p->needs.count;
    const sb_need **sorted = SB_NEW_ARRAY(g->out->pool, const sb_need *, count + 1);
    for (size_t n = 0; n < count; n++)
        sorted[n] = &g->p->needs.items[n];
    qsort(sorted, count, sizeof *sorted, by_length);
    for (int64_t u = 1; u <= g->longest; u++)
        g->times[u] = -1;
    for (size_t n = 0; n < count; n++)
        add_arcs(g, (size_t)(sorted[n] - g->p->needs.items));
}

/* What flows in flows out: a row for every sum that is reached or is the end of a board. */
static void add_nodes(graph *g) {
    for (size_t s = 0; s < g->p->supplies.count; s++)
        g->times[capacity_of(g->p, &g->p->supplies.items[s]) / g->unit] = 0;
    for (int64_t u = 0; u <= g->longest; u++)
        g->row[u] = g->times[u] < 0 ? SIZE_MAX : bench_row(g->out, 0, 0);
}

static void add_path(graph *g, int64_t from, int64_t to) {
    bench_entry(g->out, g->row[from], -1);
    bench_entry(g->out, g->row[to], 1);
}

static void add_losses(graph *g, double most) {
    int64_t before = 0;
    for (int64_t u = 1; u <= g->longest; u++) {
        if (g->row[u] == SIZE_MAX)
            continue;
        bench_column(g->out, 0, most);
        add_path(g, before, u);
        before = u;
    }
}

static void add_boards(graph *g, double most) {
    for (size_t s = 0; s < g->p->supplies.count; s++) {
        const sb_supply *supply = &g->p->supplies.items[s];
        bench_column(g->out, (double)supply->price.milli / MAJOR,
                     supply->available < 0 ? most : (double)supply->available);
        add_path(g, capacity_of(g->p, supply) / g->unit, 0);
    }
}

void bench_arc_flow(const sb_problem *problem, bench_program *out) {
    graph g = {.p = problem, .out = out};
    find_grid(&g);
    g.times = SB_NEW_ARRAY(out->pool, int64_t, (size_t)g.longest + 1);
    g.row = SB_NEW_ARRAY(out->pool, size_t, (size_t)g.longest + 1);
    for (size_t n = 0; n < problem->needs.count; n++)
        bench_row(out, (double)problem->needs.items[n].count, (double)problem->needs.items[n].count);
    add_all_arcs(&g);
    add_nodes(&g);
    for (size_t a = 0; a < g.arcs.count; a++) {
        bench_column(out, 0, (double)problem->needs.items[g.arcs.items[a].need].count);
        bench_entry(out, g.arcs.items[a].need, 1);
        add_path(&g, g.arcs.items[a].from, g.arcs.items[a].to);
    }
    add_losses(&g, (double)pieces_of(problem));
    add_boards(&g, (double)pieces_of(problem));
}

/* ---- by assignment ------------------------------------------------------------------------------- */

/* y opens the board: room for the parts, and only after the one before it of the same length (`above`). */
static size_t add_board(const sb_problem *p, const sb_supply *supply, size_t above, bench_program *out) {
    size_t room = bench_row(out, -DBL_MAX, 0), next = bench_row(out, 0, DBL_MAX);
    bench_column(out, (double)supply->price.milli / MAJOR, 1);
    bench_entry(out, room, -(double)capacity_of(p, supply) / SB_NM_PER_MM);
    bench_entry(out, next, 1);
    if (above != SIZE_MAX)
        bench_entry(out, above, -1);
    for (size_t n = 0; n < p->needs.count; n++) {
        bench_column(out, 0, (double)p->needs.items[n].count);
        bench_entry(out, n, 1);
        bench_entry(out, room, (double)take_of(p, &p->needs.items[n]) / SB_NM_PER_MM);
    }
    return next;
}

static int64_t boards_of(const sb_problem *p, const sb_supply *supply, int64_t enough) {
    int64_t pieces = pieces_of(p), most = supply->price.milli > 0 ? enough / supply->price.milli : pieces;
    most = most < pieces ? most : pieces;
    return supply->available >= 0 && supply->available < most ? supply->available : most;
}

void bench_assignment(const sb_problem *problem, int64_t enough, bench_program *out) {
    for (size_t n = 0; n < problem->needs.count; n++)
        bench_row(out, (double)problem->needs.items[n].count, (double)problem->needs.items[n].count);
    for (size_t s = 0; s < problem->supplies.count; s++) {
        const sb_supply *supply = &problem->supplies.items[s];
        size_t above = SIZE_MAX;
        for (int64_t b = boards_of(problem, supply, enough); b > 0; b--)
            above = add_board(problem, supply, above, out);
    }
}
