/* Sharing out over the kinds of piece: every amount of the job, line by line, in whole units of the last figure that add up
 * to it, as sb_share_out does it. One kind of piece has all of everything, and needs no table. */
#include "papers/estimate.h"

__extension__ typedef __int128 wide;

enum {
    SHARED_WHAT,
    SHARED_NUMBER,
    SHARED_PIECE,
    SHARED_AMOUNT,
    SHARED_WEIGHT,
    SHARED_REST,
    SHARED_SHARE
};

static size_t kinds_of(const estimate_paper *p) {
    return p->e->pieces.count;
}

static size_t lines_of(const estimate_paper *p) {
    return p->e->materials.count + p->e->labour.count;
}

/* Groups of rows: each line, then overhead and contingency. */
size_t shared_group(const estimate_paper *p, sharing what) {
    return lines_of(p) + (size_t)what;
}

const sb_relation *share_cell(const estimate_paper *p, sharing what, size_t kind, size_t build) {
    if (kinds_of(p) == 1)
        return build_cell(p, build);
    return sb_rel_cell(p->run, p->shared, shared_group(p, what) * kinds_of(p) + kind, SHARED_SHARE);
}

static const sb_relation *sum_of_lines(const estimate_paper *p, size_t kind, size_t first, size_t count) {
    if (count == 0)
        return sb_rel_number(p->run, 0, 0);
    const sb_relation *number = sb_rel_number(p->run, (int64_t)kind + 1, 0);
    return sb_rel_round(p->run,
                        sb_rel_kept(p->run, (sb_relation){.kind = SB_REL_SUM_OF,
                                                          .a = number,
                                                          .table = p->shared,
                                                          .row = first * kinds_of(p),
                                                          .row_to = (first + count) * kinds_of(p) - 1,
                                                          .key = SHARED_NUMBER,
                                                          .column = SHARED_SHARE}),
                        p->digits);
}

const sb_relation *material_share(const estimate_paper *p, size_t kind) {
    if (kinds_of(p) == 1)
        return build_cell(p, BUILD_MATERIAL);
    return sum_of_lines(p, kind, 0, p->e->materials.count);
}

const sb_relation *labour_share(const estimate_paper *p, size_t kind) {
    if (kinds_of(p) == 1)
        return build_cell(p, BUILD_LABOUR);
    return sum_of_lines(p, kind, p->e->materials.count, p->e->labour.count);
}

/* ---- the table ---- */

typedef struct group {
    const char *what;
    sb_money amount;
    const sb_relation *from; /* where the amount stands */
    const int64_t *weights;  /* by kind */
    const sb_table *live;    /* the weights are amounts of this table, by row; NULL: they stand */
    size_t column;
} group;

static int64_t rest_of(sb_money amount, int64_t weight, int64_t all) {
    wide due = (wide)(amount.minor < 0 ? -amount.minor : amount.minor) * weight;
    return (int64_t)(due % (all > 0 ? all : 1));
}

static int64_t sum(const int64_t *weights, size_t count) {
    int64_t all = 0;
    for (size_t i = 0; i < count; i++)
        all = sb_add(all, weights[i]);
    return all;
}

static int64_t units_of(int digits) {
    int64_t units = 1;
    for (int i = 0; i < digits; i++)
        units *= 10;
    return units;
}

static sb_cell weight_cell_of(const estimate_paper *p, const group *g, size_t kind) {
    sb_cell cell = sb_cell_count(g->weights[kind]);
    if (!g->live)
        return cell;
    const sb_relation *amount = sb_rel_cell(p->run, g->live, kind, g->column);
    return sb_cell_related(cell,
                           rel_product(p->run, amount, sb_rel_number(p->run, units_of(p->digits), 0), 0));
}

static const sb_relation *shared_relation(const estimate_paper *p, sb_relation_kind kind, size_t first,
                                          size_t row) {
    return sb_rel_kept(p->run, (sb_relation){.kind = kind,
                                             .a = sb_rel_cell(p->run, p->shared, row, SHARED_AMOUNT),
                                             .table = p->shared,
                                             .row = first,
                                             .row_to = first + kinds_of(p) - 1,
                                             .own = row,
                                             .column = SHARED_WEIGHT,
                                             .column_to = SHARED_REST,
                                             .digits = p->digits});
}

static void put_kind(estimate_paper *p, const group *g, size_t first, size_t kind, sb_money share) {
    sb_cell *row = sb_row_add(p->run, p->shared);
    size_t at = first + kind;
    row[SHARED_WHAT] = sb_cell_text(kind == 0 ? g->what : "");
    row[SHARED_NUMBER] = sb_cell_count((int64_t)kind + 1);
    row[SHARED_PIECE] = sb_cell_text(p->e->takeoff->pieces.items[p->e->pieces.items[kind].piece].title);
    row[SHARED_AMOUNT] = sb_cell_related(sb_cell_money(g->amount), g->from);
    row[SHARED_WEIGHT] = weight_cell_of(p, g, kind);
    row[SHARED_REST] =
        sb_cell_related(sb_cell_count(rest_of(g->amount, g->weights[kind], sum(g->weights, kinds_of(p)))),
                        shared_relation(p, SB_REL_REST, first, at));
    row[SHARED_SHARE] = sb_cell_related(sb_cell_money(share), shared_relation(p, SB_REL_SHARE, first, at));
}

static void put_group(estimate_paper *p, group g) {
    size_t count = kinds_of(p), first = p->shared->rows.count;
    sb_money *shares = SB_NEW_ARRAY(p->run->pool, sb_money, count + 1);
    sb_share_out(p->run, g.amount, g.weights, count, shares);
    for (size_t kind = 0; kind < count; kind++)
        put_kind(p, &g, first, kind, shares[kind]);
}

static void put_lines(estimate_paper *p) {
    for (size_t i = 0; i < p->e->materials.count; i++) {
        const sb_material_line *line = &p->e->materials.items[i];
        put_group(p, (group){.what = line->what,
                             .amount = line->amount,
                             .from = sb_rel_cell(p->run, p->materials, i, MATERIAL_AMOUNT),
                             .weights = line->weights});
    }
    for (size_t i = 0; i < p->e->labour.count; i++) {
        const sb_labour_line *line = &p->e->labour.items[i];
        put_group(p, (group){.what = line->operation->title,
                             .amount = line->amount,
                             .from = sb_rel_cell(p->run, p->works, i, WORK_AMOUNT),
                             .weights = line->weights});
    }
}

/* Amounts of the kinds of piece, as weights. */
static const int64_t *amounts(const estimate_paper *p, size_t offset) {
    int64_t *weights = SB_NEW_ARRAY(p->run->pool, int64_t, kinds_of(p) + 1);
    for (size_t i = 0; i < kinds_of(p); i++)
        weights[i] = ((const sb_money *)((const char *)&p->e->pieces.items[i] + offset))->minor;
    return weights;
}

static void put_overhead(estimate_paper *p) {
    group g = {.what = "Overhead", .amount = p->e->overhead, .from = build_cell(p, BUILD_OVERHEAD)};
    g.weights = p->e->overhead_weights;
    if (!g.weights) {
        g.weights = amounts(p, offsetof(sb_price_line, labour));
        g.live = p->costs;
        g.column = COST_LABOUR;
    }
    put_group(p, g);
}

void estimate_shared(estimate_paper *p) {
    if (kinds_of(p) == 1)
        return;
    put_lines(p);
    put_overhead(p);
    put_group(p, (group){"Contingency", p->e->contingency, build_cell(p, BUILD_CONTINGENCY),
                         amounts(p, offsetof(sb_price_line, cost)), p->costs, COST_COST});
}

void estimate_shared_start(estimate_paper *p) {
    if (kinds_of(p) == 1)
        return;
    p->sharing->first_page = true;
    sb_paragraph_add(
        p->run, p->sharing,
        "How each amount is shared out over the kinds of piece: by the weights, in whole units of the last "
        "figure; what is left over goes to the largest remainders. Material goes by what each kind takes of "
        "a stock, labour by what it causes, what is for the batch by labour time. Of this sheet the first "
        "page alone is printed.",
        true);
    p->shared = sb_table_add(p->run, p->sharing, "Shares of the kinds of piece",
                             "What|No.>|Piece|Amount>|Weight>|Remainder>|Share>");
}
