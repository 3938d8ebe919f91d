/* Measured boards by brute force: every order of every choice of few parts on each board, each part at every place that it
 * may begin at. No plan may cost less, no bound may be above, and what is called proved is the least. */
#include "problems.h"

enum {
    MOST_PARTS = 5,
    SETS = 1 << MOST_PARTS
};

typedef struct brute {
    const sb_problem *p;
    const sb_need *parts[MOST_PARTS];
    int count;
    int64_t on[3][SETS]; /* least cost by supply and parts; INT64_MAX: no way */
    const sb_supply *supply;
    size_t row;
    const sb_need *lying[MOST_PARTS];
} brute;

static bool keeps_off(const sb_need *need, const sb_stretch *bad) {
    return need->clear || (need->sound && bad->split);
}

static bool touches(const brute *b, const sb_need *need, int64_t at) {
    for (size_t s = 0; s < b->supply->bad.count; s++)
        if (keeps_off(need, &b->supply->bad.items[s]) && at < b->supply->bad.items[s].to.nm &&
            at + need->length.nm > b->supply->bad.items[s].from.nm)
            return true;
    return false;
}

/* The longest piece behind `from` without a split: both its ends tried at every split and at the ends of the rest. */
static int64_t leftover_of(const brute *b, int64_t from, int64_t *cuts) {
    int64_t end = b->supply->length.nm - b->supply->trim2.nm, best = 0, kerf = b->p->rules.kerf.nm;
    for (size_t i = 0; i <= b->supply->bad.count; i++)
        for (size_t j = 0; j <= b->supply->bad.count; j++) {
            int64_t at = from, to = end;
            if (i < b->supply->bad.count)
                at =
                    b->supply->bad.items[i].to.nm > from + kerf ? b->supply->bad.items[i].to.nm : from + kerf;
            if (j < b->supply->bad.count)
                to = b->supply->bad.items[j].from.nm;
            bool split = (i < b->supply->bad.count &&
                          (!b->supply->bad.items[i].split || b->supply->bad.items[i].to.nm <= from)) ||
                         (j < b->supply->bad.count && !b->supply->bad.items[j].split) || to > end;
            for (size_t s = 0; s < b->supply->bad.count; s++)
                split = split || (b->supply->bad.items[s].split && b->supply->bad.items[s].from.nm < to &&
                                  b->supply->bad.items[s].to.nm > at);
            if (split || to - at <= best)
                continue;
            best = to - at;
            *cuts = (at > from) + (to < end);
        }
    return best;
}

static int settings_of(const brute *b, int count) {
    int settings = 0;
    for (int i = 0; i < count; i++) {
        bool fresh = true;
        for (int j = 0; j < i; j++)
            fresh = fresh && b->lying[j]->length.nm != b->lying[i]->length.nm;
        settings += fresh;
    }
    return settings;
}

static int64_t cost_of(const brute *b, int count, int64_t end, int64_t cuts) {
    const sb_cut_rules *rules = &b->p->rules;
    const sb_cut_stock *stock = &b->p->stock.items[0];
    int64_t far = b->supply->length.nm - b->supply->trim2.nm, more = 0, value = 0;
    if (rules->material_only)
        return b->supply->price.milli;
    cuts += end < far || b->supply->trim2.nm > 0;
    int64_t left = leftover_of(b, end + rules->kerf.nm, &more);
    if (stock->useful_length.nm > 0 && left >= stock->useful_length.nm) {
        value = left * stock->value / 1000000000;
        cuts += more;
    }
    return b->supply->price.milli + rules->board.milli + rules->change.milli * settings_of(b, count) +
           rules->cut.milli * cuts - value;
}

static void lay(brute *b, int set, int left, int count, int64_t end, int64_t cuts);

static void lay_at(brute *b, int set, int left, int count, int part, int64_t at, int64_t cuts) {
    if (touches(b, b->parts[part], at) ||
        at + b->parts[part]->length.nm > b->supply->length.nm - b->supply->trim2.nm)
        return;
    b->lying[count] = b->parts[part];
    lay(b, set, left & ~(1 << part), count + 1, at + b->parts[part]->length.nm, cuts);
}

/* `end`: of the last part; of the trim where there is none. */
static void lay(brute *b, int set, int left, int count, int64_t end, int64_t cuts) {
    int64_t kerf = b->p->rules.kerf.nm, close = count ? end + kerf : end;
    if (left == 0) {
        int64_t cost = cost_of(b, count, end, cuts);
        if (cost < b->on[b->row][set])
            b->on[b->row][set] = cost;
        return;
    }
    for (int i = 0; i < b->count; i++) {
        if (!(left & 1 << i))
            continue;
        lay_at(b, set, left, count, i, close, cuts + (count > 0));
        for (size_t s = 0; s < b->supply->bad.count; s++) {
            int64_t to = b->supply->bad.items[s].to.nm, at = to > close + kerf ? to : close + kerf;
            if (to > close)
                lay_at(b, set, left, count, i, at, cuts + 1 + (count > 0));
        }
    }
}

static void try_boards(brute *b) {
    for (b->row = 0; b->row < 3; b->row++) {
        b->supply = &b->p->supplies.items[b->row];
        for (int set = 0; set < 1 << b->count; set++) {
            b->on[b->row][set] = set ? INT64_MAX : 0;
            if (set)
                lay(b, set, set, 0, b->supply->trim1.nm, b->supply->trim1.nm > 0);
        }
    }
}

static int64_t plus(int64_t a, int64_t c) {
    return a == INT64_MAX || c == INT64_MAX ? INT64_MAX : a + c;
}

/* The first supply has no limit, the other two are one board each. */
static int64_t least_of(brute *b) {
    int64_t bought[SETS], least = INT64_MAX;
    int all = (1 << b->count) - 1;
    for (int set = 0; set <= all; set++) {
        bought[set] = set ? INT64_MAX : 0;
        for (int sub = set; sub; sub = (sub - 1) & set)
            if (plus(b->on[0][sub], bought[set & ~sub]) < bought[set])
                bought[set] = b->on[0][sub] + bought[set & ~sub];
    }
    for (int one = 0; one <= all; one++)
        for (int other = 0; other <= all; other++) {
            int64_t cost = plus(plus(b->on[1][one], b->on[2][other]), bought[all & ~one & ~other]);
            if ((one & other) == 0 && cost < least)
                least = cost;
        }
    return least;
}

/* ---- jobs by chance ------------------------------------------------------------------------------ */

static void add_measured(sb_run *run, sb_problem *p, uint32_t *seed) {
    sb_supply *board = add_supply(run, p, 600 + roll(seed, 900), 0, 50 + roll(seed, 300));
    int64_t at = 0;
    board->measured = board->leftover = true;
    board->available = 1;
    board->trim1 = board->trim2 = mm(roll(seed, 3) ? 0 : 10);
    for (size_t i = 1 + roll(seed, 3); i > 0; i--) {
        sb_stretch bad = {{at + mm(roll(seed, 400)).nm}, {0}, roll(seed, 2), {0}};
        bad.to.nm = bad.from.nm + mm(1 + roll(seed, 60)).nm;
        at = bad.from.nm;
        if (bad.to.nm <= board->length.nm)
            SB_PUSH(run->pool, board->bad, bad);
    }
}

static void make_job(sb_run *run, sb_problem *p, uint32_t *seed) {
    start(run, p, 3);
    sb_cut_stock *stock = add_stock(run, p, "pine", false);
    p->rules.material_only = roll(seed, 4) == 0;
    p->rules.board.milli = roll(seed, 3000);
    p->rules.change.milli = roll(seed, 2) ? roll(seed, 9000) : 0;
    p->rules.cut.milli = roll(seed, 5000);
    stock->useful_length = mm(roll(seed, 2) ? 200 : 0);
    stock->value = 90000;
    sb_supply *bought = add_supply(run, p, 1000 + roll(seed, 500), 0, 400 + roll(seed, 200));
    bought->trim1 = bought->trim2 = mm(roll(seed, 2) ? 10 : 0);
    add_measured(run, p, seed);
    add_measured(run, p, seed);
    int left = MOST_PARTS;
    while (left > 0) {
        int count = 1 + (int)roll(seed, 3);
        count = count < left ? count : left;
        sb_need *need = add_need(run, p, "part", 100 + roll(seed, 500), 0, count);
        need->clear = roll(seed, 3) == 0;
        need->sound = roll(seed, 3) == 0;
        left -= count;
    }
}

static void against_brute_force(void **state) {
    static brute b;
    uint32_t seed = 99;
    int proved = 0, found = 0;
    (void)state;
    for (int i = 0; i < 400; i++) {
        sb_run run;
        sb_problem p;
        make_job(&run, &p, &seed);
        const sb_plan *plan = planned(&run, &p);
        b.p = &p;
        b.count = 0;
        for (size_t n = 0; n < p.needs.count; n++)
            for (int64_t k = 0; k < p.needs.items[n].count; k++)
                b.parts[b.count++] = &p.needs.items[n];
        try_boards(&b);
        int64_t least = least_of(&b);
        if (plan->bound.milli > least || plan->cost.milli < least)
            print_error("job %d: bound %lld, least %lld, cost %lld\n", i, (long long)plan->bound.milli,
                        (long long)least, (long long)plan->cost.milli);
        assert_true(plan->bound.milli <= least);
        assert_true(plan->cost.milli >= least);
        found += plan->cost.milli == least;
        proved += plan->proved;
        sb_run_free(&run);
    }
    print_message("%d of 400 are the least, %d proved so\n", found, proved);
    assert_true(found > 390 && proved > 300);
}

int main(void) {
    const struct CMUnitTest tests[] = {cmocka_unit_test(against_brute_force)};
    return cmocka_run_group_tests(tests, NULL, NULL);
}
