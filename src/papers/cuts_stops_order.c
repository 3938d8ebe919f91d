/* The order in which boards come to a stop: the one that is at the saw already first, one that the next stop wants last. */
#include "papers/cuts_stops.h"

static bool has(const stop *s, int64_t board) {
    for (size_t i = 0; s && i < s->boards.count; i++)
        if (s->boards.items[i].each > 0 && s->boards.items[i].first <= board &&
            board <= s->boards.items[i].last)
            return true;
    return false;
}

static bool has_one_board(const stop *s) {
    int64_t count = 0;
    for (size_t i = 0; i < s->boards.count; i++)
        if (s->boards.items[i].each > 0)
            count += s->boards.items[i].last - s->boards.items[i].first + 1;
    return count == 1;
}

/* ---- which boards stay at the saw --------------------------------------------------------------------------- */

/* One board may stay from a stop to the next, but not to the one after it as well, unless it is alone at the middle one. So a
 * board chosen here rules out at most one before and one behind: of those that two stops share, three are enough to choose from. */
enum {
    CHOICES = 4 /* those, and none */
};

typedef struct going_on { /* from one stop to the next */
    int64_t boards[CHOICES];
    int64_t saved[CHOICES]; /* the most from there on with this choice */
    size_t count;
} going_on;

static going_on choices_of(const stop *s, const stop *next) {
    going_on g = {.count = 0};
    for (size_t i = s->boards.count; i-- > 0;) {
        const span *boards = &s->boards.items[i];
        for (int64_t b = boards->last; boards->each > 0 && b >= boards->first; b--)
            if (g.count + 1 < CHOICES && has(next, b))
                g.boards[g.count++] = b;
    }
    g.boards[g.count++] = 0;
    return g;
}

static bool go_together(const stop *between, int64_t in, int64_t out) {
    return in == 0 || in != out || has_one_board(between);
}

/* The best that goes with what came in. */
static size_t best_of(const going_on *g, const stop *between, int64_t in) {
    size_t best = g->count - 1;
    for (size_t i = g->count; i-- > 0;)
        if (go_together(between, in, g->boards[i]) && g->saved[i] >= g->saved[best])
            best = i;
    return best;
}

static void save(going_on *g, const going_on *behind, const stop *between) {
    for (size_t i = 0; i < g->count; i++)
        g->saved[i] =
            (g->boards[i] != 0) + (behind ? behind->saved[best_of(behind, between, g->boards[i])] : 0);
}

/* ---- the order ---------------------------------------------------------------------------------------------- */

static void visit(sb_run *run, stop *s, int64_t from, int64_t to, int64_t each) {
    span *last = s->visits.count ? &s->visits.items[s->visits.count - 1] : NULL;
    if (from > to)
        return;
    if (last && !last->stays && last->each == each && last->last + 1 == from)
        last->last = to;
    else
        SB_PUSH(run->pool, s->visits, ((span){from, to, each, false}));
}

/* The span without the one board. */
static void visit_others(sb_run *run, stop *s, span boards, int64_t first, int64_t last) {
    int64_t low = first < last ? first : last, high = first < last ? last : first, from = boards.first;
    if (boards.first <= low && low <= boards.last) {
        visit(run, s, from, low - 1, boards.each);
        from = low + 1;
    }
    if (boards.first <= high && high <= boards.last) {
        visit(run, s, from, high - 1, boards.each);
        from = high + 1;
    }
    visit(run, s, from, boards.last, boards.each);
}

static int64_t each_of(const stop *s, int64_t board) {
    for (size_t i = 0; i < s->boards.count; i++)
        if (s->boards.items[i].first <= board && board <= s->boards.items[i].last &&
            s->boards.items[i].each > 0)
            return s->boards.items[i].each;
    return 0;
}

static void visit_all(sb_run *run, stop *s, int64_t first, int64_t last) {
    if (first > 0)
        SB_PUSH(run->pool, s->visits, ((span){first, first, each_of(s, first), true}));
    for (size_t i = 0; i < s->boards.count; i++)
        if (s->boards.items[i].each > 0)
            visit_others(run, s, s->boards.items[i], first, last);
    if (last > 0 && last != first)
        visit(run, s, last, last, each_of(s, last));
}

void cuts_order_boards(sb_run *run, stops *all) {
    going_on *going = SB_NEW_ARRAY(run->pool, going_on, all->count + 1);
    for (size_t i = all->count; i-- > 1;) {
        going[i - 1] = choices_of(&all->items[i - 1], &all->items[i]);
        save(&going[i - 1], i + 1 < all->count ? &going[i] : NULL, &all->items[i]);
    }
    int64_t first = 0;
    for (size_t i = 0; i < all->count; i++) {
        const going_on *on = &going[i];
        int64_t last = i + 1 < all->count ? on->boards[best_of(on, &all->items[i], first)] : 0;
        visit_all(run, &all->items[i], first, last);
        first = last;
    }
}
