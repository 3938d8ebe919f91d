/* Two plain ways to lay out sheets. A kerf is added to every part and once to the sheet. */
#include "by_hand.h"

#include <stdlib.h>

typedef struct hand_part { /* u across the strips, v along them */
    int64_t u, v;
    bool free;
} hand_part;

typedef SB_LIST(hand_part) hand_parts;

typedef struct hand_rect {
    int64_t u, v;
} hand_rect;

typedef struct hand {
    sb_run *run;
    hand_parts parts;
    SB_LIST(hand_rect) rects; /* strips: u left on the sheet stands with the sheets; v left in the strip */
    SB_LIST(int64_t) rooms;   /* u left on each sheet */
    int64_t u, v;             /* of the sheet */
    int64_t sheets;
} hand;

static int by_width(const void *a, const void *b) {
    const hand_part *one = a, *other = b;
    if (one->u != other->u)
        return one->u > other->u ? -1 : 1;
    return one->v > other->v ? -1 : one->v < other->v;
}

static int by_area(const void *a, const void *b) {
    const hand_part *one = a, *other = b;
    double left = (double)one->u * (double)one->v, right = (double)other->u * (double)other->v;
    return left > right ? -1 : left < right ? 1 : by_width(a, b);
}

static void list_parts(hand *h, const sb_problem *p) {
    int64_t kerf = p->rules.panel_kerf.nm;
    for (size_t i = 0; i < p->needs.count; i++) {
        const sb_need *need = &p->needs.items[i];
        bool across = need->grain == SB_CUT_ACROSS;
        hand_part part = {(across ? need->length.nm : need->width.nm) + kerf,
                          (across ? need->width.nm : need->length.nm) + kerf, need->grain == SB_CUT_FREE};
        for (int64_t n = 0; n < need->count; n++)
            SB_PUSH(h->run->pool, h->parts, part);
    }
}

/* A part that lies badly on the sheet is turned if it may be. */
static bool lay_right(const hand *h, hand_part *part) {
    if (part->u <= h->u && part->v <= h->v)
        return true;
    *part = (hand_part){part->v, part->u, part->free};
    return part->free && part->u <= h->u && part->v <= h->v;
}

/* ---- shelves ------------------------------------------------------------------------------------- */

static void into_strip(hand *h, const hand_part *part) {
    for (size_t i = 0; i < h->rects.count; i++)
        if (part->u <= h->rects.items[i].u && part->v <= h->rects.items[i].v) {
            h->rects.items[i].v -= part->v;
            return;
        }
    size_t sheet = 0;
    while (sheet < h->rooms.count && h->rooms.items[sheet] < part->u)
        sheet++;
    if (sheet == h->rooms.count) {
        SB_PUSH(h->run->pool, h->rooms, h->u);
        h->sheets++;
    }
    h->rooms.items[sheet] -= part->u;
    SB_PUSH(h->run->pool, h->rects, ((hand_rect){part->u, h->v - part->v}));
}

/* ---- best fit ------------------------------------------------------------------------------------ */

static double to_spare(const hand_rect *rect, int64_t u, int64_t v) {
    return u <= rect->u && v <= rect->v ? (double)rect->u * (double)rect->v : 1e300;
}

static void cut_off(hand *h, size_t at, int64_t u, int64_t v) {
    hand_rect rect = h->rects.items[at];
    bool longer_u = rect.u - u > rect.v - v;
    h->rects.items[at] = (hand_rect){rect.u - u, longer_u ? rect.v : v};
    SB_PUSH(h->run->pool, h->rects, ((hand_rect){longer_u ? u : rect.u, rect.v - v}));
}

static void into_rect(hand *h, const hand_part *part) {
    size_t best = SIZE_MAX;
    double least = 1e299;
    bool turned = false;
    for (size_t i = 0; i < h->rects.count; i++)
        for (int turn = 0; turn <= part->free; turn++) {
            double spare = to_spare(&h->rects.items[i], turn ? part->v : part->u, turn ? part->u : part->v);
            if (spare < least)
                least = spare, best = i, turned = turn;
        }
    if (best == SIZE_MAX) {
        best = h->rects.count;
        SB_PUSH(h->run->pool, h->rects, ((hand_rect){h->u, h->v}));
        h->sheets++;
    }
    cut_off(h, best, turned ? part->v : part->u, turned ? part->u : part->v);
}

/* ---- one size of sheet after the other ------------------------------------------------------------ */

typedef void hand_way(hand *h, const hand_part *part);

/* Sheets of this size that it takes; 0: a part does not fit. */
static int64_t sheets_of(hand *h, const sb_problem *p, const sb_supply *s, hand_way *way) {
    h->u = s->width.nm - 2 * s->trim1.nm + p->rules.panel_kerf.nm;
    h->v = s->length.nm - 2 * s->trim2.nm + p->rules.panel_kerf.nm;
    h->rects.count = h->rooms.count = 0;
    h->sheets = 0;
    for (size_t i = 0; i < h->parts.count; i++) {
        hand_part part = h->parts.items[i];
        if (!lay_right(h, &part))
            return 0;
        way(h, &part);
    }
    return h->sheets;
}

static int64_t cheapest(sb_run *run, const sb_problem *p, hand_way *way,
                        int (*order)(const void *, const void *)) {
    hand h = {.run = run};
    int64_t least = 0;
    list_parts(&h, p);
    qsort(h.parts.items, h.parts.count, sizeof *h.parts.items, order);
    for (size_t s = 0; s < p->supplies.count; s++) {
        int64_t cost = sheets_of(&h, p, &p->supplies.items[s], way) * p->supplies.items[s].price.milli;
        least = cost > 0 && (least == 0 || cost < least) ? cost : least;
    }
    return least;
}

int64_t by_hand_shelves(sb_run *run, const sb_problem *problem) {
    return cheapest(run, problem, into_strip, by_width);
}

int64_t by_hand_best_fit(sb_run *run, const sb_problem *problem) {
    return cheapest(run, problem, into_rect, by_area);
}
