/* The hand method, with code of its own. */
#include "bench.h"

#include <stdlib.h>

typedef struct opened { /* a board that has parts on it, or a piece of the rack that may get some */
    const sb_supply *supply;
    int64_t room;  /* behind the last part, where its kerf goes too; a kerf more while there is none */
    int64_t count; /* parts on it */
    int64_t settings, last; /* lengths on it; the last of them */
} opened;

typedef struct by_hand {
    sb_run *run;
    const sb_problem *p;
    const sb_need **needs; /* the longest first */
    SB_LIST(opened) boards;
} by_hand;

static int by_length(const void *a, const void *b) {
    int64_t one = (*(const sb_need *const *)a)->length.nm, other = (*(const sb_need *const *)b)->length.nm;
    return one > other ? -1 : one < other;
}

static int by_room(const void *a, const void *b) {
    int64_t one = ((const opened *)a)->room, other = ((const opened *)b)->room;
    return one < other ? -1 : one > other;
}

/* Every part takes a kerf along, also the first: so there is one more. */
static void open_board(by_hand *h, const sb_supply *supply) {
    int64_t room = supply->length.nm - supply->trim1.nm - supply->trim2.nm + h->p->rules.kerf.nm;
    SB_PUSH(h->run->pool, h->boards, ((opened){.supply = supply, .room = room}));
}

/* The rack, the shortest piece first. */
static void take_the_rack(by_hand *h) {
    h->boards.count = 0;
    for (size_t s = 0; s < h->p->supplies.count; s++)
        for (int64_t n = 0; n < h->p->supplies.items[s].available; n++)
            open_board(h, &h->p->supplies.items[s]);
    if (h->boards.count > 0)
        qsort(h->boards.items, h->boards.count, sizeof *h->boards.items, by_room);
}

static void put(opened *board, int64_t length, int64_t take) {
    board->room -= take;
    board->count++;
    board->settings += board->last != length;
    board->last = length;
}

/* Parts alike go on where the one before found room. False when one is longer than the board. */
static bool put_all(by_hand *h, const sb_need *need, const sb_supply *fresh) {
    int64_t take = need->length.nm + h->p->rules.kerf.nm;
    size_t at = 0;
    for (int64_t n = 0; n < need->count; n++) {
        while (at < h->boards.count && h->boards.items[at].room < take)
            at++;
        if (at == h->boards.count)
            open_board(h, fresh);
        if (h->boards.items[at].room < take)
            return false;
        put(&h->boards.items[at], need->length.nm, take);
    }
    return true;
}

static int64_t leftover_value(const sb_problem *p, int64_t left) {
    const sb_cut_stock *stock = &p->stock.items[0];
    bool useful = stock->useful_length.nm > 0 && left >= stock->useful_length.nm;
    return useful ? sb_mul_div_down(left, stock->value, 1000 * (int64_t)SB_NM_PER_MM) : 0;
}

/* The formula of sawbill/cutting.h, board by board. */
static int64_t cost_of(const sb_problem *p, const opened *board) {
    const sb_cut_rules *rules = &p->rules;
    const sb_supply *supply = board->supply;
    if (board->count == 0)
        return 0;
    if (rules->material_only)
        return supply->price.milli;
    int64_t left = board->room > rules->kerf.nm ? board->room - rules->kerf.nm : 0;
    int64_t cuts = (supply->trim1.nm > 0) + board->count - (board->room == 0 && supply->trim2.nm == 0);
    return supply->price.milli + rules->board.milli + rules->change.milli * board->settings +
           rules->cut.milli * cuts - leftover_value(p, left);
}

static int64_t cost_of_all(const by_hand *h) {
    int64_t cost = 0;
    for (size_t b = 0; b < h->boards.count; b++)
        cost += cost_of(h->p, &h->boards.items[b]);
    for (size_t n = 0; n < h->p->needs.count && !h->p->rules.material_only; n++)
        if (n == 0 || h->needs[n]->length.nm != h->needs[n - 1]->length.nm)
            cost += h->p->rules.stop.milli;
    return cost;
}

static int64_t cost_with(by_hand *h, const sb_supply *fresh) {
    take_the_rack(h);
    for (size_t n = 0; n < h->p->needs.count; n++)
        if (!put_all(h, h->needs[n], fresh))
            return INT64_MAX;
    return cost_of_all(h);
}

int64_t bench_hand_cost(sb_run *run, const sb_problem *problem) {
    by_hand h = {.run = run, .p = problem};
    int64_t least = INT64_MAX;
    h.needs = SB_NEW_ARRAY(run->pool, const sb_need *, problem->needs.count + 1);
    for (size_t n = 0; n < problem->needs.count; n++)
        h.needs[n] = &problem->needs.items[n];
    qsort(h.needs, problem->needs.count, sizeof *h.needs, by_length);
    for (size_t s = 0; s < problem->supplies.count; s++) {
        if (problem->supplies.items[s].available >= 0)
            continue;
        int64_t cost = cost_with(&h, &problem->supplies.items[s]);
        least = cost < least ? cost : least;
    }
    return least;
}
