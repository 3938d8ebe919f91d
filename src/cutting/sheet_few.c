/* Few parts, in strips: every way to put them together is looked at.
 *
 * What is to be made is a number of each pane; every lesser choice of them, a lot, has the least rooms it can be cut out
 * of, by level:
 *   stacks  panes of one length side by side             (in two stages: one pane)
 *   strips  stacks one behind the other                  (in two stages without trimming: of one width)
 *   sheets  strips side by side
 * each a head of the level below and a tail of its own. The cheapest sheets for all that is to be made follow lot by lot.
 */
#include "cutting/sheet_search.h"

#define MOST_LOTS  1024
#define MOST_PAIRS 40000
#define MOST_ROOMS 12 /* of one lot on one level */

enum {
    PANES, /* level 0: one pane, one way round */
    STACKS,
    STRIPS,
    SHEETS,
    LEVELS
};

typedef struct few_room { /* u across the strips, v along them */
    int64_t u, v;
    uint16_t head, tail; /* lots; tail 0: none */
    uint8_t head_room, tail_room;
    bool turned; /* panes */
} few_room;

typedef struct few_rooms {
    size_t count;
    few_room items[MOST_ROOMS];
} few_rooms;

typedef struct few {
    sb_sheet_search *s;
    const sb_sheet_bench *bench;
    size_t panes, lots;
    size_t *stride; /* by pane: what one more of it adds to a lot's number */
    few_rooms *rooms[LEVELS];
    int64_t most_u, most_v;
} few;

typedef struct parting { /* a lot and one part of it after the other */
    const few *f;
    size_t lot, part;
    int64_t *digits; /* of the part */
} parting;

/* ---- lots ------------------------------------------------------------------------------------------- */

static int64_t number_of(const few *f, size_t lot, size_t pane) {
    return (int64_t)(lot / f->stride[pane]) % (f->bench->panes.items[pane].pieces + 1);
}

/* The next part of the lot; false after the last, which is the whole lot. */
static bool next_part(parting *p) {
    for (size_t i = 0; i < p->f->panes; i++) {
        if (p->digits[i] < number_of(p->f, p->lot, i)) {
            p->digits[i]++;
            p->part += p->f->stride[i];
            return true;
        }
        p->part -= (size_t)p->digits[i] * p->f->stride[i];
        p->digits[i] = 0;
    }
    return false;
}

static parting parts_of(const few *f, size_t lot, int64_t *digits) {
    for (size_t i = 0; i < f->panes; i++)
        digits[i] = 0;
    return (parting){f, lot, 0, digits};
}

static bool are_few(few *f) {
    double pairs = 1;
    f->lots = 1;
    for (size_t i = 0; i < f->panes && pairs <= MOST_PAIRS; i++) {
        double pieces = (double)f->bench->panes.items[i].pieces;
        pairs *= (pieces + 1) * (pieces + 2) / 2;
        f->stride[i] = f->lots;
        f->lots *= pairs <= MOST_PAIRS ? (size_t)pieces + 1 : 1;
    }
    if (pairs > MOST_PAIRS || f->lots > MOST_LOTS)
        return false;
    f->bench->work->left -= (int64_t)pairs;
    return true;
}

/* ---- rooms ------------------------------------------------------------------------------------------ */

/* No room of the list that is at least as good stays beside this one. What a level must have alike stays apart. */
static void add_room(const few *f, int level, few_rooms *to, few_room room) {
    bool like_v = level == STACKS, like_u = level == STRIPS && f->bench->stages == 2 && !f->bench->trims;
    size_t kept = 0;
    if (room.u > f->most_u || room.v > f->most_v)
        return;
    for (size_t i = 0; i < to->count; i++) {
        few_room old = to->items[i];
        bool apart = (like_v && old.v != room.v) || (like_u && old.u != room.u);
        if (!apart && old.u <= room.u && old.v <= room.v)
            return;
        if (apart || old.u < room.u || old.v < room.v)
            to->items[kept++] = old;
    }
    to->count = kept;
    if (kept < MOST_ROOMS)
        to->items[to->count++] = room;
}

/* Head and tail together; false where they do not go together. */
static bool join(const few *f, int level, few_room *made, const few_room *head, const few_room *tail) {
    int64_t k = f->bench->kerf, u = head->u + k + tail->u, v = head->v + k + tail->v;
    if (level == STACKS && (f->bench->stages == 2 || head->v != tail->v))
        return false;
    if (level == STRIPS && f->bench->stages == 2 && !f->bench->trims && head->u != tail->u)
        return false;
    made->u = level != STRIPS ? u : head->u > tail->u ? head->u : tail->u;
    made->v = level == STRIPS ? v : head->v > tail->v ? head->v : tail->v;
    return true;
}

static void join_lots(const few *f, int level, size_t head, size_t tail) {
    const few_rooms *heads = &f->rooms[level - 1][head], *tails = &f->rooms[level][tail];
    few_rooms *to = &f->rooms[level][head + tail];
    for (size_t i = 0; i < heads->count; i++) {
        few_room made = heads->items[i];
        made.head = (uint16_t)head, made.head_room = (uint8_t)i, made.tail = 0;
        if (tail == 0)
            add_room(f, level, to, made);
        for (size_t j = 0; tail > 0 && j < tails->count; j++) {
            made.tail = (uint16_t)tail, made.tail_room = (uint8_t)j;
            if (join(f, level, &made, &heads->items[i], &tails->items[j]))
                add_room(f, level, to, made);
        }
    }
}

static void find_panes(const few *f) {
    for (size_t i = 0; i < f->panes; i++) {
        const sb_pane *pane = &f->bench->panes.items[i];
        for (int turned = 0; turned < 2; turned++) {
            int64_t w = sb_pane_w(pane, turned), l = sb_pane_l(pane, turned);
            few_rooms *to = &f->rooms[PANES][f->stride[i]];
            if (turned ? pane->sideways : pane->upright)
                to->items[to->count++] = f->bench->crosscut_first ? (few_room){l, w, 0, 0, 0, 0, turned}
                                                                  : (few_room){w, l, 0, 0, 0, 0, turned};
        }
    }
}

static void find_rooms(const few *f, int64_t *digits) {
    find_panes(f);
    for (int level = STACKS; level < LEVELS; level++)
        for (size_t lot = 1; lot < f->lots; lot++) {
            parting p = parts_of(f, lot, digits);
            while (next_part(&p))
                join_lots(f, level, p.part, lot - p.part);
        }
}

/* ---- onto a sheet ------------------------------------------------------------------------------------ */

static bool lay_room(const few *f, sb_tree *tree, size_t node, int level, size_t lot, size_t room);

/* Cuts the head off and goes on with the tail. */
static bool lay_head(const few *f, sb_tree *tree, size_t node, int level, const few_room *room) {
    bool across = (level == STRIPS) != f->bench->crosscut_first;
    const few_room *head = &f->rooms[level - 1][room->head].items[room->head_room];
    int64_t size = level == STRIPS ? head->v : head->u;
    if (!sb_tree_may_cut(f->bench, tree, node, across, size))
        return false;
    size_t first = sb_tree_cut(f->bench, tree, node, across, size), second = tree->items[node].second;
    if (!lay_room(f, tree, first, level - 1, room->head, room->head_room))
        return false;
    return room->tail == 0 || (first != node && second != SIZE_MAX &&
                               lay_room(f, tree, second, level, room->tail, room->tail_room));
}

static bool lay_room(const few *f, sb_tree *tree, size_t node, int level, size_t lot, size_t room) {
    const few_room *of = &f->rooms[level][lot].items[room];
    if (level > PANES)
        return lay_head(f, tree, node, level, of);
    for (size_t i = 0; i < f->panes; i++)
        if (f->stride[i] == lot)
            tree->items[node].pane = i;
    tree->items[node].turned = of->turned;
    return !sb_tree_is_thin(f->bench, &tree->items[node]);
}

/* The cheapest way to cut the lot out of this sheet, into `out`; false: it cannot be. */
static bool lay_lot(const few *f, size_t offer, size_t lot, sb_tree *spare, sb_laid *out) {
    const sb_sheet_offer *on = &f->bench->offers.items[offer];
    const few_rooms *rooms = &f->rooms[SHEETS][lot];
    int64_t u = f->bench->crosscut_first ? on->l : on->w, v = f->bench->crosscut_first ? on->w : on->l;
    out->offer = offer;
    out->cost = INT64_MAX;
    for (size_t i = 0; i < rooms->count; i++) {
        if (rooms->items[i].u > u || rooms->items[i].v > v)
            continue;
        sb_tree_start(f->bench, offer, spare);
        if (!lay_room(f, spare, 0, SHEETS, lot, i))
            continue;
        int64_t cost = sb_tree_cost(f->bench, offer, spare);
        if (cost >= out->cost)
            continue;
        sb_tree swapped = out->tree;
        out->tree = *spare;
        *spare = swapped;
        out->cost = cost;
    }
    return out->cost < INT64_MAX;
}

/* ---- the cheapest sheets ------------------------------------------------------------------------------- */

typedef struct few_layer { /* one sheet more of this offer, or any number */
    size_t offer;
    bool once;
    int64_t *cost;    /* by lot: of one such sheet */
    int64_t *sum;     /* by lot: of all sheets up to this layer */
    uint16_t *chosen; /* by lot: what is on the last such sheet; 0: there is none */
} few_layer;

static void fill_layer(const few *f, const few_layer *layer, const int64_t *before, int64_t *digits) {
    for (size_t lot = 0; lot < f->lots; lot++) {
        parting p = parts_of(f, lot, digits);
        layer->sum[lot] = before[lot];
        layer->chosen[lot] = 0;
        while (next_part(&p)) {
            int64_t rest = (layer->once ? before : layer->sum)[lot - p.part];
            if (layer->cost[p.part] == INT64_MAX || rest == INT64_MAX ||
                layer->cost[p.part] + rest >= layer->sum[lot])
                continue;
            layer->sum[lot] = layer->cost[p.part] + rest;
            layer->chosen[lot] = (uint16_t)p.part;
        }
    }
}

typedef SB_LIST(few_layer) few_layers;

static void add_layers(const few *f, size_t offer, int64_t pieces, few_layers *to) {
    sb_pool *pool = f->bench->run->pool;
    int64_t available = f->bench->offers.items[offer].available;
    few_layer layer = {offer, available < pieces, SB_NEW_ARRAY(pool, int64_t, f->lots), NULL, NULL};
    sb_tree spare = {0};
    sb_laid laid = {0};
    for (size_t lot = 1; lot < f->lots; lot++)
        layer.cost[lot] = lay_lot(f, offer, lot, &spare, &laid) ? laid.cost : INT64_MAX;
    for (int64_t n = layer.once ? available : 1; n > 0; n--) {
        layer.sum = SB_NEW_ARRAY(pool, int64_t, f->lots);
        layer.chosen = SB_NEW_ARRAY(pool, uint16_t, f->lots);
        SB_PUSH(pool, *to, layer);
    }
}

static void add_sheet(const few *f, size_t offer, size_t lot) {
    sb_tree spare = {0};
    sb_laid laid = {.made = SB_NEW_ARRAY(f->bench->run->pool, int64_t, f->panes)};
    lay_lot(f, offer, lot, &spare, &laid);
    for (size_t i = 0; i < f->panes; i++)
        laid.made[i] = number_of(f, lot, i);
    sb_laying_add(f->bench, &f->s->tried, &laid, 1);
}

static void read_answer(const few *f, const few_layers *layers) {
    sb_sheet_search *s = f->s;
    size_t lot = f->lots - 1;
    s->tried.sheets.count = 0;
    s->tried.cost = 0;
    s->tried.missing = 0;
    for (size_t i = layers->count; i-- > 0;) {
        const few_layer *layer = &layers->items[i];
        do {
            size_t on = layer->chosen[lot];
            if (on == 0)
                break;
            add_sheet(f, layer->offer, on);
            lot -= on;
        } while (!layer->once);
    }
    if (sb_laying_better(&s->tried, s->best))
        sb_laying_copy(f->bench, s->best, &s->tried);
}

static void choose_sheets(const few *f, int64_t *digits) {
    few_layers layers = {0};
    int64_t pieces = 0, *before = SB_NEW_ARRAY(f->bench->run->pool, int64_t, f->lots);
    for (size_t i = 0; i < f->panes; i++)
        pieces += f->bench->panes.items[i].pieces;
    for (size_t lot = 1; lot < f->lots; lot++)
        before[lot] = INT64_MAX;
    for (size_t o = 0; o < f->bench->offers.count; o++)
        add_layers(f, o, pieces, &layers);
    for (size_t i = 0; i < layers.count; before = layers.items[i++].sum)
        fill_layer(f, &layers.items[i], before, digits);
    f->bench->work->left -= (int64_t)(layers.count * f->lots * 20);
    if (before[f->lots - 1] < INT64_MAX)
        read_answer(f, &layers);
}

void sb_sheets_few(sb_sheet_search *s) {
    sb_pool *pool = s->bench->run->pool;
    few f = {.s = s, .bench = s->bench, .panes = s->bench->panes.count};
    f.stride = SB_NEW_ARRAY(pool, size_t, f.panes);
    int64_t *digits = SB_NEW_ARRAY(pool, int64_t, f.panes);
    if (s->bench->stages > 3 || !are_few(&f))
        return;
    for (size_t o = 0; o < s->bench->offers.count; o++) {
        const sb_sheet_offer *on = &s->bench->offers.items[o];
        int64_t u = s->bench->crosscut_first ? on->l : on->w, v = s->bench->crosscut_first ? on->w : on->l;
        f.most_u = u > f.most_u ? u : f.most_u;
        f.most_v = v > f.most_v ? v : f.most_v;
    }
    for (int level = PANES; level < LEVELS; level++)
        f.rooms[level] = SB_NEW_ARRAY(pool, few_rooms, f.lots);
    find_rooms(&f, digits);
    choose_sheets(&f, digits);
}
