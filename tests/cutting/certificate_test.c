/* Certificates verified without the planner: knapsacks by dynamic programming over half millimetres, covers
 * by counting. */
#include "problems.h"

#include <glpk.h>
#include <math.h>
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

static bool keeps_off(const sb_need *need, const sb_stretch *bad) {
    return need->clear || (need->sound && bad->split);
}

/* Where a need may begin from `at` on: behind the last of what it would lie over. */
static int64_t place_from(const sb_supply *s, const sb_need *need, int64_t at) {
    for (size_t i = 0; i < s->bad.count; i++) { /* by place */
        const sb_stretch *bad = &s->bad.items[i];
        if (keeps_off(need, bad) && bad->from.nm < at + need->length.nm && bad->to.nm > at)
            at = bad->to.nm;
    }
    return at;
}

/* The soonest end, if so many of each need lie on one board of the supply, in some order, a kerf or more apart, without touching
 * what they keep off: by where the next part may begin soonest behind each choice of them. NOTHING: they have no place. */
static int64_t soonest_end(const sb_problem *p, const sb_supply *s, const int64_t *counts) {
    static int64_t next[60000];
    size_t all = 1, limit = sizeof next / sizeof *next;
    for (size_t n = 0; n < p->needs.count; n++)
        all *= (size_t)counts[n] + 1;
    assert_true(all <= limit);
    for (size_t i = 0; i < all; i++)
        next[i] = i == 0 ? s->trim1.nm : INT64_MAX;
    for (size_t i = 0; i < all; i++) {
        size_t one = 1;
        for (size_t n = 0; next[i] != INT64_MAX && n < p->needs.count; one *= (size_t)counts[n++] + 1) {
            const sb_need *need = &p->needs.items[n];
            if ((int64_t)(i / one % ((size_t)counts[n] + 1)) == counts[n])
                continue;
            int64_t end = place_from(s, need, next[i]) + need->length.nm;
            if (end <= s->length.nm - s->trim2.nm && end + p->rules.kerf.nm < next[i + one])
                next[i + one] = end + p->rules.kerf.nm;
        }
    }
    return next[all - 1] == INT64_MAX ? NOTHING : next[all - 1] - p->rules.kerf.nm;
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
        assert_true(v->p->supplies.items[s].bad.count > 0 || worth == NOTHING ||
                    worth <= v->b->worth.items[s]);
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

/* ---- by enumeration: all loads that a cheaper plan could use, and another solver's word on them ---------- */

#define MOST_LISTED 200000

typedef struct listing {
    const sb_problem *p;
    const sb_bound *b;
    const sb_supply *supply;
    size_t row;               /* of the supply */
    int64_t room, counts[16]; /* by need, of the load being made; the room has a kerf more */
    double density;           /* the most that a nanometre can be worth */
    int64_t step;             /* all costs are multiples of it */
    glp_prob *program;
    int64_t listed;
} listing;

static int64_t handling(const listing *l, int64_t amount) {
    return l->p->rules.material_only ? 0 : amount;
}

/* Leftover behind the last kerf, at its price. */
static int64_t leftover_value(const listing *l, int64_t rest) {
    const sb_cut_stock *stock = &l->p->stock.items[0];
    int64_t kerf = l->p->rules.kerf.nm, left = rest > kerf ? rest - kerf : 0;
    bool priced =
        !l->p->rules.material_only && stock->useful_length.nm > 0 && left >= stock->useful_length.nm;
    return priced ? (int64_t)((double)left * 1e-9 * (double)stock->value) : 0;
}

/* The longest piece without a split from here to the far end, which begins at `from` or behind a split. */
static int64_t longest_piece(const sb_supply *s, int64_t from) {
    int64_t end = s->length.nm - s->trim2.nm, longest = 0;
    for (size_t i = 0; i <= s->bad.count; i++) {
        int64_t at = i == s->bad.count ? from : s->bad.items[i].to.nm, to = end;
        if (i < s->bad.count && (!s->bad.items[i].split || at <= from))
            continue;
        for (size_t j = 0; j < s->bad.count; j++)
            if (s->bad.items[j].split && s->bad.items[j].to.nm > at && s->bad.items[j].from.nm < to)
                to = s->bad.items[j].from.nm;
        longest = to - at > longest ? to - at : longest;
    }
    return longest;
}

static bool has_place(const listing *l) {
    return l->supply->bad.count == 0 || soonest_end(l->p, l->supply, l->counts) != NOTHING;
}

/* Cuts of so many pieces that take so much where they follow each other directly. On a measured board they may have to
 * end later, for something is cut away; then they may be flush with its far end. */
static int64_t cuts_of(const listing *l, int64_t pieces, int64_t used, int64_t end) {
    bool ragged = l->supply->trim2.nm > 0, away = end > l->supply->trim1.nm + used;
    return (l->supply->trim1.nm > 0) + pieces - 1 + (away ? 1 + ragged : ragged || used < l->room);
}

/* What the load costs besides its board: changes and cuts less its leftover. It has a place. */
static int64_t besides(const listing *l, int64_t used) {
    int64_t settings = 0, pieces = 0, end = l->supply->trim1.nm + used, kerf = l->p->rules.kerf.nm;
    if (l->supply->bad.count > 0)
        end = soonest_end(l->p, l->supply, l->counts);
    for (size_t n = 0; n < l->p->needs.count; n++) {
        settings += l->counts[n] > 0;
        pieces += l->counts[n];
    }
    return handling(l, l->p->rules.change.milli * settings +
                           l->p->rules.cut.milli * cuts_of(l, pieces, used, end)) -
           leftover_value(l, kerf + longest_piece(l->supply, end + kerf));
}

static void list_load(listing *l, int64_t cost) {
    int rows[18], count = 0, column = glp_add_cols(l->program, 1);
    double amounts[18];
    for (size_t n = 0; n < l->p->needs.count; n++)
        if (l->counts[n] > 0)
            rows[++count] = (int)n + 1, amounts[count] = (double)l->counts[n];
    if (l->supply->available >= 0)
        rows[++count] = (int)(l->p->needs.count + l->row) + 1, amounts[count] = 1;
    glp_set_mat_col(l->program, column, count, rows, amounts);
    glp_set_obj_coef(l->program, column, (double)(cost / l->step));
    glp_set_col_kind(l->program, column, GLP_IV);
    glp_set_col_bnds(l->program, column, GLP_LO, 0, 0);
    assert_true(++l->listed < MOST_LISTED);
}

/* r = least + max(0, worth - least) - what the load is worth of itself, below the threshold. */
static void look_at_load(listing *l, int64_t used, int64_t worth) {
    if (used == 0 || !has_place(l))
        return;
    int64_t least = l->b->least.items[l->row], above = l->b->worth.items[l->row] - least,
            cost = besides(l, used);
    if (least + (above > 0 ? above : 0) - worth + cost * l->b->duals_scale < l->b->threshold)
        list_load(l, least / l->b->duals_scale + cost);
}

static void list_from(listing *l, size_t need, int64_t used, int64_t worth) {
    int64_t least = l->b->least.items[l->row], above = l->b->worth.items[l->row] - least;
    double reach = (double)worth + (double)(l->room + l->p->rules.kerf.nm - used) * l->density +
                   (double)leftover_value(l, l->room) * (double)l->b->duals_scale;
    if ((double)(least + (above > 0 ? above : 0)) - reach >= (double)l->b->threshold + 1)
        return;
    if (need == l->p->needs.count) {
        look_at_load(l, used > 0 ? used - l->p->rules.kerf.nm : 0, worth);
        return;
    }
    int64_t take = l->p->needs.items[need].length.nm + l->p->rules.kerf.nm, dual = l->b->duals.items[need];
    for (int64_t x = 0; x <= l->b->counted.items[need] && used + x * take <= l->room + l->p->rules.kerf.nm;
         x++) {
        l->counts[need] = x;
        list_from(l, need + 1, used + x * take, worth + x * dual);
    }
    l->counts[need] = 0;
}

static void list_all(listing *l) {
    for (l->row = 0; l->row < l->p->supplies.count; l->row++) {
        l->supply = &l->p->supplies.items[l->row];
        l->room = l->supply->length.nm - l->supply->trim1.nm - l->supply->trim2.nm;
        list_from(l, 0, 0, 0);
    }
}

/* ---- measured boards: what would be worth more than told has no place there ---------------------------- */

static void place_none_above(listing *l, size_t need, int64_t used, int64_t worth, bool handled) {
    int64_t scale = l->b->duals_scale, told = l->b->worth.items[l->row], kerf = l->p->rules.kerf.nm;
    double reach = (double)worth + (double)(l->room + kerf - used) * l->density +
                   (handled ? (double)leftover_value(l, l->room) * (double)scale : 0);
    if (reach + 1 < (double)told)
        return;
    if (need == l->p->needs.count) {
        if (used > 0 && has_place(l))
            assert_true(worth - (handled ? besides(l, used - kerf) * scale : 0) <= told);
        return;
    }
    int64_t take = l->p->needs.items[need].length.nm + kerf;
    for (int64_t x = 0; x <= l->b->counted.items[need] && used + x * take <= l->room + kerf; x++) {
        l->counts[need] = x;
        place_none_above(l, need + 1, used + x * take, worth + x * l->b->duals.items[need], handled);
    }
    l->counts[need] = 0;
}

static double density_of(const sb_problem *p, const sb_bound *b) {
    double density = 0;
    for (size_t n = 0; n < p->needs.count; n++)
        density = fmax(density,
                       (double)b->duals.items[n] / (double)(p->needs.items[n].length.nm + p->rules.kerf.nm));
    return density;
}

static void verify_measured_worths(const sb_problem *p, const sb_bound *b, bool handled) {
    listing l = {.p = p, .b = b, .density = density_of(p, b)};
    for (l.row = 0; l.row < p->supplies.count; l.row++) {
        l.supply = &p->supplies.items[l.row];
        l.room = l.supply->length.nm - l.supply->trim1.nm - l.supply->trim2.nm;
        if (l.supply->bad.count > 0)
            place_none_above(&l, 0, 0, 0, handled);
    }
}

static glp_prob *program_for(const sb_problem *p, const sb_bound *b) {
    glp_prob *program = glp_create_prob();
    glp_add_rows(program, (int)(p->needs.count + p->supplies.count));
    for (size_t n = 0; n < p->needs.count; n++)
        glp_set_row_bnds(program, (int)n + 1, GLP_FX, (double)b->counted.items[n],
                         (double)b->counted.items[n]);
    for (size_t s = 0; s < p->supplies.count; s++)
        if (p->supplies.items[s].available >= 0)
            glp_set_row_bnds(program, (int)(p->needs.count + s) + 1, GLP_UP, 0,
                             (double)p->supplies.items[s].available);
    return program;
}

enum {
    MOST_NODES = 3000 /* of the other solver */
};

static void give_up_in_time(glp_tree *tree, void *given_up) {
    int all;
    glp_ios_tree_size(tree, NULL, NULL, &all);
    if (all <= MOST_NODES)
        return;
    *(bool *)given_up = true;
    glp_ios_terminate(tree);
}

/* The least number of steps that plans of the listed loads cost, infinite where there is none; NaN: not found out. */
static double least_of(glp_prob *program) {
    glp_iocp options;
    bool given_up = false;
    glp_init_iocp(&options);
    options.presolve = options.gmi_cuts = options.mir_cuts = GLP_ON;
    options.msg_lev = GLP_MSG_OFF;
    options.cb_func = give_up_in_time;
    options.cb_info = &given_up;
    int failed = glp_get_num_cols(program) ? glp_intopt(program, &options) : GLP_ENOPFS;
    bool none = failed == GLP_ENOPFS || failed == GLP_ENODFS || glp_mip_status(program) == GLP_NOFEAS;
    if (given_up)
        return NAN;
    return none ? HUGE_VAL : glp_mip_obj_val(program);
}

static int64_t divisor(int64_t a, int64_t b) {
    return b == 0 ? a : divisor(b, a % b);
}

static int64_t step_of_costs(const sb_problem *p, const sb_bound *b) {
    int64_t step = 0;
    for (size_t s = 0; s < p->supplies.count; s++)
        step = divisor(step, b->least.items[s] / b->duals_scale);
    if (p->rules.material_only)
        return step;
    step = divisor(divisor(step, p->rules.change.milli), p->rules.cut.milli);
    return p->stock.items[0].useful_length.nm > 0 ? 1 : step;
}

/* True when the other solver came to an end. */
static bool verify_enumeration(const sb_problem *p, const sb_bound *b) {
    int64_t reach = (figure_by_duals(p, b) + b->threshold - 1) / b->duals_scale, step = step_of_costs(p, b);
    listing l = {.p = p, .b = b, .step = step, .program = program_for(p, b), .density = density_of(p, b)};
    assert_true(p->needs.count <= 16);
    list_all(&l);
    assert_true(b->bound.milli <= reach - reach % step + step);
    double least = least_of(l.program) * (double)step;
    assert_true(isnan(least) || least > (double)b->bound.milli - 0.5);
    glp_delete_prob(l.program);
    return !isnan(least);
}

/* A ripped need counts sections: as many strips side by side as the board is wide for. */
static void verify_counts(const sb_problem *p, const sb_bound *b) {
    int64_t kerf = p->rules.rip_kerf.nm, width = p->stock.items[0].width.nm;
    for (size_t n = 0; n < p->needs.count; n++) {
        int64_t own = p->needs.items[n].width.nm, strips = own ? (width + kerf) / (own + kerf) : 1;
        assert_int_equal(b->counted.items[n], (p->needs.items[n].count + strips - 1) / strips);
    }
}

/* ---- by branching: rows and leaves leave no numbers of boards that cost less ---------------------------- */

static void verify_duals(const sb_problem *p, const sb_bound *b, bool handled) {
    static verifying v;
    v.p = p;
    v.b = b;
    verify_counts(p, b);
    verify_worths(&v, handled);
    verify_measured_worths(p, b, handled);
}

/* The leaf is closed by itself where no more boards than its numbers are there. */
static void verify_leaf(const sb_problem *p, const sb_branch *leaf) {
    sb_problem narrow = *p;
    sb_supply supplies[4];
    int64_t cost = 0;
    assert_int_equal(leaf->numbers.count, p->supplies.count);
    narrow.supplies.items = supplies;
    for (size_t s = 0; s < p->supplies.count; s++) {
        supplies[s] = p->supplies.items[s];
        supplies[s].available = leaf->numbers.items[s];
        cost += leaf->numbers.items[s] * p->supplies.items[s].price.milli;
    }
    verify_duals(&narrow, &leaf->proof, true);
    assert_true(leaf->proof.bound.milli > cost);
    if (strcmp(leaf->proof.how, "enumeration") == 0)
        verify_enumeration(&narrow, &leaf->proof);
    else
        assert_true(figure_by_duals(&narrow, &leaf->proof) > cost * leaf->proof.duals_scale);
}

static bool obeys(const sb_problem *p, const sb_bound *row, const int64_t *numbers) {
    int64_t worth = 0;
    for (size_t s = 0; s < p->supplies.count; s++)
        worth += row->worth.items[s] * numbers[s];
    return worth >= sum_of_duals(row);
}

static int64_t room_of(const sb_supply *s) {
    return s->length.nm - s->trim1.nm - s->trim2.nm;
}

static bool lies_in(const sb_problem *p, const sb_branch *leaf, const int64_t *numbers) {
    for (size_t s = 0; s < p->supplies.count; s++) {
        int64_t more = 0;
        for (size_t t = 0; t < p->supplies.count; t++)
            if (room_of(&p->supplies.items[t]) >= room_of(&p->supplies.items[s]))
                more += numbers[t] - leaf->numbers.items[t];
        if (more > 0)
            return false;
    }
    return true;
}

static bool is_ruled_out(const sb_problem *p, const sb_bound *b, const int64_t *numbers) {
    for (size_t i = 0; i < b->branches.count; i++) {
        const sb_branch *branch = b->branches.items[i];
        if (branch->numbers.count ? lies_in(p, branch, numbers) : !obeys(p, &branch->proof, numbers))
            return true;
    }
    return false;
}

static void verify_numbers(const sb_problem *p, const sb_bound *b, int64_t *numbers, size_t s, int64_t cost) {
    if (s == p->supplies.count) {
        assert_true(is_ruled_out(p, b, numbers));
        return;
    }
    const sb_supply *supply = &p->supplies.items[s];
    for (int64_t n = 0;
         (supply->available < 0 || n <= supply->available) && cost + n * supply->price.milli < b->bound.milli;
         n++) {
        numbers[s] = n;
        verify_numbers(p, b, numbers, s + 1, cost + n * supply->price.milli);
    }
}

static int leaves_seen;

static void verify_branching(const sb_problem *p, const sb_bound *b) {
    int64_t numbers[4];
    assert_true(p->rules.material_only && p->supplies.count <= 4);
    for (size_t i = 0; i < b->branches.count; i++)
        if (b->branches.items[i]->numbers.count == 0)
            verify_duals(p, &b->branches.items[i]->proof, true);
        else
            verify_leaf(p, b->branches.items[i]), leaves_seen++;
    verify_numbers(p, b, numbers, 0, 0);
}

/* ---- whichever it is ----------------------------------------------------------------------------------- */

static void verify_cover(const sb_problem *p, const sb_bound *b) {
    verify_duals(p, b, b->lack);
    int64_t figure = b->common + cover_from(p, b, 0, sum_of_duals(b), INT64_MAX);
    assert_true(figure <= b->bound.milli * b->duals_scale); /* rounded up to a whole thousandth */
    assert_true(figure > (b->bound.milli - 1) * b->duals_scale);
}

/* Price and charge of one board. */
static void verify_least(const sb_problem *p, const sb_bound *b) {
    for (size_t s = 0; s < p->supplies.count; s++)
        assert_int_equal(b->least.items[s],
                         b->duals_scale * (p->supplies.items[s].price.milli +
                                           (p->rules.material_only ? 0 : p->rules.board.milli)));
}

/* True when it is closed by enumeration, and the other solver says so too. */
static bool verify(const sb_problem *p, const sb_plan *plan) {
    assert_int_equal(plan->certificate->bounds.count, 1);
    const sb_bound *b = &plan->certificate->bounds.items[0];
    if (strcmp(b->how, "branching") == 0) {
        verify_branching(p, b);
        return false;
    }
    if (strcmp(b->how, "cover") == 0) {
        verify_cover(p, b);
        if (b->lack)
            verify_least(p, b);
        return false;
    }
    verify_duals(p, b, true);
    int64_t figure = figure_by_duals(p, b);
    verify_least(p, b);
    if (strcmp(b->how, "enumeration") == 0)
        return verify_enumeration(p, b);
    assert_string_equal(b->how, "duals");
    assert_true(figure <= b->bound.milli * b->duals_scale);
    assert_true(figure > (b->bound.milli - 1) * b->duals_scale);
    return false;
}

/* ---- random jobs --------------------------------------------------------------------------------- */

enum {
    RIPPED = 3, /* handling, and parts with angled ends ripped out of sections, which are cut square */
    FEW = 4,    /* material alone, parts so long that only a few lie on one board */
    MEASURED =
        5 /* handling and leftovers or neither, two measured boards, and parts that keep off what is bad of them */
};

static void rip(sb_need *need, uint32_t *seed) {
    static const double widths[] = {0, 30, 45, 60}, angles[] = {0, 45, -22.5};
    need->width = mm(widths[roll(seed, 4)]);
    if (need->width.nm == 0)
        return;
    need->end1 = end_of(angles[roll(seed, 3)], 0);
    need->end2 = end_of(angles[roll(seed, 3)], 0);
}

static void spoil(sb_run *run, sb_supply *s, uint32_t *seed) {
    int64_t at = 0;
    s->measured = s->leftover = true;
    s->available = 1;
    for (size_t i = 1 + roll(seed, 3); i > 0; i--) {
        sb_stretch bad = {{at + mm(100 + roll(seed, 500)).nm}, {0}, roll(seed, 2), {0}};
        bad.to.nm = bad.from.nm + mm(5 + roll(seed, 90)).nm;
        at = bad.to.nm;
        if (bad.to.nm <= s->length.nm)
            SB_PUSH(run->pool, s->bad, bad);
    }
}

static void measure(sb_run *run, sb_problem *p, uint32_t *seed) {
    sb_supply *whole = add_supply(run, p, 2400, 0, 300 + roll(seed, 400));
    spoil(run, whole, seed);
    spoil(run, whole - 1, seed);
    p->rules.material_only = roll(seed, 2) == 0;
    for (size_t i = 0; i < p->needs.count; i++) {
        p->needs.items[i].clear = roll(seed, 3) == 0;
        p->needs.items[i].sound = roll(seed, 3) == 0;
    }
}

static void make_job(sb_run *run, sb_problem *p, uint32_t *seed, int flavour) {
    static const double lengths[] = {2400, 3000, 3600, 4200, 6000};
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    p->rules.material_only = flavour == 0 || flavour == FEW;
    p->rules.board.milli = roll(seed, 9000);
    p->rules.change.milli = flavour ? roll(seed, 50000) : 0;
    p->rules.cut.milli = flavour ? roll(seed, 5000) : 0;
    stock->useful_length = mm(flavour == 2 || flavour == MEASURED ? 500 : 0);
    stock->value = 150000;
    stock->width = mm(95);
    for (int i = 0; i < 2; i++) {
        double length = lengths[roll(seed, 5)];
        sb_supply *s = add_supply(run, p, length, 0, (int64_t)(length * 0.35) + roll(seed, 90));
        s->trim1 = s->trim2 = mm(roll(seed, 2) ? 10 : 0);
    }
    sb_supply *rack = add_supply(run, p, 700 + roll(seed, 900), 0, 150 + roll(seed, 200));
    rack->available = 1;
    rack->leftover = true;
    size_t kinds = flavour == FEW ? 8 + roll(seed, 5) : 3 + roll(seed, 5);
    for (size_t i = 0; i < kinds; i++) { /* all different, so that a stop setting belongs to one size */
        double length =
            flavour == FEW ? 600 + 10 * roll(seed, 60) : 150 + 20 * (double)i + 20 * roll(seed, 95);
        sb_need *need = add_need(run, p, "part", length, 0, 1 + roll(seed, 8));
        if (flavour == RIPPED)
            rip(need, seed);
    }
    if (flavour == MEASURED)
        measure(run, p, seed);
}

/* Of the plan itself: nothing lies over what it keeps off. */
static void verify_places(const sb_problem *p, const sb_plan *plan) {
    for (size_t b = 0; b < plan->boards.count; b++) {
        const sb_supply *s = &p->supplies.items[plan->boards.items[b].supply];
        for (size_t i = 0; i < plan->boards.items[b].parts.count; i++) {
            const sb_placed *part = &plan->boards.items[b].parts.items[i];
            assert_int_equal(place_from(s, &p->needs.items[part->need], part->at.nm), part->at.nm);
        }
    }
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
    int done = 0, duals = 0, enumerated = 0, branched = 0, confirmed = 0;
    while (done < 40) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed, flavour);
        search_briefly(&p, done);
        if (all_differ(&p)) {
            const sb_plan *plan = planned(&run, &p);
            confirmed += verify(&p, plan);
            verify_places(&p, plan);
            duals += strcmp(plan->certificate->bounds.items[0].how, "duals") == 0 ||
                     plan->certificate->bounds.items[0].lack;
            enumerated += strcmp(plan->certificate->bounds.items[0].how, "enumeration") == 0;
            branched += strcmp(plan->certificate->bounds.items[0].how, "branching") == 0;
            done++;
        }
        sb_run_free(&run);
    }
    print_message(
        "%d of %d by enumeration, %d confirmed by another solver; %d by branching, %d leaves so far\n",
        enumerated, done, confirmed, branched, leaves_seen);
    assert_true(confirmed > 2 || branched > 2);
    assert_true(branched + duals + enumerated > 0);
}

static void of_material_alone(void **state) {
    (void)state;
    verify_jobs(0);
}

static void of_few_parts_on_a_board(void **state) {
    (void)state;
    verify_jobs(FEW);
}

/* Jobs in which some numbers of boards obey all rows although nothing can be made on them. */
static void of_jobs_with_leaves(void **state) {
    (void)state;
    static const uint32_t seeds[] = {457470353, 865859709, 151097369};
    for (size_t i = 0; i < sizeof seeds / sizeof *seeds; i++) {
        uint32_t seed = seeds[i];
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed, FEW);
        verify(&p, planned(&run, &p));
        sb_run_free(&run);
    }
    assert_true(leaves_seen > 0);
}

static void of_jobs_with_handling(void **state) {
    (void)state;
    verify_jobs(1);
}

static void of_jobs_with_leftovers(void **state) {
    (void)state;
    verify_jobs(2);
}

static void of_jobs_with_ripped_parts(void **state) {
    (void)state;
    verify_jobs(RIPPED);
}

static void of_jobs_with_measured_boards(void **state) {
    (void)state;
    verify_jobs(MEASURED);
}

/* What the rack gives for nothing has a certificate like any other. */
static void of_boards_that_cost_nothing(void **state) {
    (void)state;
    sb_run run;
    sb_problem p;
    start(&run, &p, 3);
    add_stock(&run, &p, "pine", false);
    sb_supply *rack = add_supply(&run, &p, 2400, 0, 0);
    rack->available = 3;
    rack->leftover = true;
    add_need(&run, &p, "part", 700, 0, 5);
    const sb_plan *plan = planned(&run, &p);
    const sb_bound *bound = &plan->certificate->bounds.items[0];
    assert_true(plan->proved && plan->cost.milli == 0);
    assert_int_equal(bound->duals.count, 1);
    assert_int_equal(bound->worth.count, 1);
    verify(&p, plan);
    sb_run_free(&run);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(of_material_alone),         cmocka_unit_test(of_boards_that_cost_nothing),
        cmocka_unit_test(of_few_parts_on_a_board),   cmocka_unit_test(of_jobs_with_leaves),
        cmocka_unit_test(of_jobs_with_handling),     cmocka_unit_test(of_jobs_with_leftovers),
        cmocka_unit_test(of_jobs_with_ripped_parts), cmocka_unit_test(of_jobs_with_measured_boards),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
