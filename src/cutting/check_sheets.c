/* Can this sheet be cut as the plan says? The cuts are made one after the other; what falls out must be the
 * parts. */
#include "cutting/check.h"

#define uthash_malloc(size)       sb_pool_alloc(pool, (size))
#define uthash_free(memory, size) ((void)(memory), (void)(size))
#include <uthash.h>

typedef struct piece {
    sb_rect at;            /* the key */
    int level;             /* stage of the cut it came from; 0: from truing */
    int further;           /* stage of the cut that divides it; 0: none */
    struct piece *brother; /* the other piece of the same cut; NULL: none */
    bool part;
    UT_hash_handle hh;
} piece;

typedef struct sheeting {
    sb_checking *c;
    size_t index;
    const sb_sheet_plan *sheet;
    const sb_supply *supply;
    const sb_cut_stock *stock;
    const sb_cut_rules *rules;
    SB_LIST(piece *) pieces;
    piece *whole; /* those that no cut has divided, by their rectangle */
    int64_t kerf;
} sheeting;

static void refuse(sheeting *s, const char *why) {
    sb_refuse(s->c, "sheet", s->index, why);
}

static bool same_rect(sb_rect a, sb_rect b) {
    return a.x.nm == b.x.nm && a.y.nm == b.y.nm && a.w.nm == b.w.nm && a.l.nm == b.l.nm;
}

/* ---- one cut: what lies before the kerf and what lies behind it ---------------------------------- */

static int64_t start_of(const sb_sheet_cut *cut) {
    return cut->across_width ? cut->divides.y.nm : cut->divides.x.nm;
}

static int64_t end_of(const sb_sheet_cut *cut) {
    return start_of(cut) + (cut->across_width ? cut->divides.l.nm : cut->divides.w.nm);
}

static sb_rect slice(const sb_sheet_cut *cut, int64_t from, int64_t to) {
    sb_rect r = cut->divides;
    if (cut->across_width)
        r.y.nm = from, r.l.nm = to - from;
    else
        r.x.nm = from, r.w.nm = to - from;
    return r;
}

static sb_rect near_side(const sb_sheet_cut *cut) {
    return slice(cut, start_of(cut), cut->at.nm);
}

static sb_rect far_side(const sheeting *s, const sb_sheet_cut *cut) {
    return slice(cut, cut->at.nm + s->kerf, end_of(cut));
}

static bool is_within(const sb_sheet_cut *cut) {
    return cut->at.nm >= start_of(cut) && cut->at.nm < end_of(cut);
}

/* ---- pieces -------------------------------------------------------------------------------------- */

static piece *add_piece(sheeting *s, sb_rect at, int level) {
    sb_pool *pool = s->c->run->pool;
    piece *p = SB_NEW(pool, piece);
    p->at = at;
    p->level = level;
    SB_PUSH(pool, s->pieces, p);
    HASH_ADD(hh, s->whole, at, sizeof p->at, p);
    return p;
}

static piece *find_piece(const sheeting *s, sb_rect at) {
    piece *found = NULL;
    HASH_FIND(hh, s->whole, &at, sizeof at, found);
    return found;
}

/* ---- truing: the four edges, one after the other ------------------------------------------------- */

static size_t check_edge(sheeting *s, size_t next, bool across, bool far, sb_rect *kept) {
    int64_t trim = across ? s->supply->trim2.nm : s->supply->trim1.nm;
    if (trim == 0)
        return next;
    const sb_sheet_cut *cut = next < s->sheet->cuts.count ? &s->sheet->cuts.items[next] : NULL;
    int64_t whole = across ? s->supply->length.nm : s->supply->width.nm;
    int64_t at = far ? whole - trim : trim - s->kerf;
    if (!cut || cut->stage != 0 || cut->across_width != across || cut->at.nm != at ||
        !same_rect(cut->divides, *kept)) {
        refuse(s, "a factory edge is not trued as it should be");
        return next;
    }
    *kept = far ? near_side(cut) : far_side(s, cut);
    return next + 1;
}

static size_t check_truing(sheeting *s) {
    sb_rect kept = {{0}, {0}, s->supply->width, s->supply->length};
    size_t next = 0;
    for (int edge = 0; edge < 4; edge++)
        next = check_edge(s, next, edge >= 2, edge % 2 == 1, &kept);
    add_piece(s, kept, 0);
    return next;
}

/* ---- the saw's rules ----------------------------------------------------------------------------- */

static int deepest_stage(const sheeting *s) {
    if (s->rules->stages == 0)
        return 1000000;
    return s->rules->stages + (s->rules->stages == 2 && s->rules->trims);
}

static void check_rules(sheeting *s, const sb_sheet_cut *cut, const piece *of) {
    bool first_direction = cut->across_width == s->rules->crosscut_first;
    if (cut->stage < 1 || cut->stage < of->level || first_direction != (cut->stage % 2 == 1))
        refuse(s, "a cut runs in the wrong direction for its stage");
    if (cut->stage > deepest_stage(s))
        refuse(s, "more stages than the saw's rules allow");
    if (!cut->across_width && s->rules->longest_rip.nm > 0 && cut->divides.l.nm > s->rules->longest_rip.nm)
        refuse(s, "a rip is longer than the saw reaches");
}

static bool is_something(sb_rect r) {
    return r.w.nm > 0 && r.l.nm > 0;
}

static void divide(sheeting *s, piece *of, const sb_sheet_cut *cut) {
    sb_rect sides[2] = {near_side(cut), far_side(s, cut)};
    piece *made[2] = {NULL, NULL};
    of->further = cut->stage;
    HASH_DEL(s->whole, of);
    for (size_t i = 0; i < 2; i++)
        if (is_something(sides[i]))
            made[i] = add_piece(s, sides[i], cut->stage);
    for (size_t i = 0; i < 2; i++)
        if (made[i])
            made[i]->brother = made[1 - i];
}

static void make_cut(sheeting *s, const sb_sheet_cut *cut) {
    piece *of = find_piece(s, cut->divides);
    if (!of || !is_within(cut)) {
        refuse(s, !of ? "a cut divides a rectangle that is not there" : "a cut lies outside its rectangle");
        return;
    }
    check_rules(s, cut, of);
    divide(s, of, cut);
}

/* ---- parts --------------------------------------------------------------------------------------- */

static bool lies_right(const sb_need *need, const sb_sheet_part *part) {
    int64_t w = part->turned ? need->length.nm : need->width.nm,
            l = part->turned ? need->width.nm : need->length.nm;
    if (need->grain == SB_CUT_ALONG && part->turned)
        return false;
    if (need->grain == SB_CUT_ACROSS && !part->turned)
        return false;
    return part->at.w.nm == w && part->at.l.nm == l;
}

static void check_parts(sheeting *s) {
    for (size_t i = 0; i < s->sheet->parts.count; i++) {
        const sb_sheet_part *part = &s->sheet->parts.items[i];
        const sb_need *need = &s->c->plan->problem->needs.items[part->need];
        piece *at = find_piece(s, part->at);
        if (need->stock != s->supply->stock)
            refuse(s, "a part of another stock");
        if (!lies_right(need, part))
            refuse(s, "a part has the wrong size or lies against its grain");
        if (!at || at->part)
            refuse(s, "a part does not come out of the cuts");
        else
            at->part = true;
    }
}

/* With trims, what a third-stage cut parts is a part and waste. A strip that is worked on must be safe to
 * hold. */
static void check_pieces(sheeting *s) {
    for (size_t i = 0; i < s->pieces.count; i++) {
        const piece *p = s->pieces.items[i];
        int64_t strip = s->rules->crosscut_first ? p->at.l.nm : p->at.w.nm;
        bool trimmed = s->rules->stages == 2 && p->level == 3;
        if (trimmed && p->part && p->brother && (p->brother->part || p->brother->further))
            refuse(s, "a third stage divides parts, not waste from a part");
        if (p->level == 1 && (p->part || p->further > 1) && strip < s->rules->smallest_strip.nm)
            refuse(s, "a strip is narrower than is safe to hold");
    }
}

/* ---- leftovers and settings ---------------------------------------------------------------------- */

static bool is_useful(const sheeting *s, sb_rect r) {
    int64_t length = s->stock->useful_length.nm, width = s->stock->useful_width.nm;
    bool kept = length > 0 && width > 0;
    return kept && ((r.l.nm >= length && r.w.nm >= width) || (r.w.nm >= length && r.l.nm >= width));
}

static void check_leftovers(sheeting *s) {
    size_t useful = 0, found = 0;
    for (size_t i = 0; i < s->pieces.count; i++) {
        const piece *p = s->pieces.items[i];
        if (p->part || p->further || !is_useful(s, p->at))
            continue;
        useful++;
        for (size_t l = 0; l < s->sheet->leftovers.count; l++)
            found += same_rect(s->sheet->leftovers.items[l], p->at);
    }
    if (useful != found || useful != s->sheet->leftovers.count)
        refuse(s, "usable leftovers are not what the cuts leave");
}

static void check_fences(sheeting *s) {
    int64_t fences = 0;
    for (size_t i = 0; i < s->sheet->cuts.count; i++) {
        const sb_sheet_cut *cut = &s->sheet->cuts.items[i];
        bool fresh = cut->stage > 0;
        for (size_t j = 0; j < i && fresh; j++) {
            const sb_sheet_cut *other = &s->sheet->cuts.items[j];
            fresh = other->stage == 0 || other->at.nm - start_of(other) != cut->at.nm - start_of(cut);
        }
        fences += fresh;
    }
    if (fences != s->sheet->fences)
        refuse(s, "fence settings are miscounted");
}

/* A piece that one stage made and a later one divides goes back over the saw. */
static void check_returns(sheeting *s) {
    int64_t returns = 0;
    for (size_t i = 0; i < s->pieces.count; i++)
        returns += s->pieces.items[i]->level > 0 && s->pieces.items[i]->further > s->pieces.items[i]->level;
    if (returns != s->sheet->returns)
        refuse(s, "pieces that go back over the saw are miscounted");
}

void sb_check_sheet(sb_checking *c, size_t index) {
    const sb_problem *problem = c->plan->problem;
    sheeting s = {.c = c, .index = index, .sheet = &c->plan->sheets.items[index], .rules = &problem->rules};
    s.supply = &problem->supplies.items[s.sheet->supply];
    s.stock = &problem->stock.items[s.supply->stock];
    s.kerf = problem->rules.panel_kerf.nm;
    if (!s.stock->sheet || s.sheet->parts.count == 0) {
        refuse(&s, s.stock->sheet ? "nothing is cut from it" : "a board is planned as a sheet");
        return;
    }
    for (size_t next = check_truing(&s), i = next; i < s.sheet->cuts.count; i++) {
        if (i > next && s.sheet->cuts.items[i].stage < s.sheet->cuts.items[i - 1].stage)
            refuse(&s, "the cuts are not in the order of work");
        make_cut(&s, &s.sheet->cuts.items[i]);
    }
    check_parts(&s);
    check_pieces(&s);
    check_leftovers(&s);
    check_fences(&s);
    check_returns(&s);
}
