/* Can this board be sawn as the plan says? Every part, kerf, cut and remainder is worked out anew. */
#include <math.h>
#include <stdlib.h>

#include "cutting/check_boards.h"

#define HAIR          1.5 /* [nm]: what rounding a trigonometric amount up may come to */
#define RADIANS(udeg) ((long double)(udeg)*3.14159265358979323846264L / 180e6L)

/* ---- a part as it lies --------------------------------------------------------------------------- */

static bool is_square(sb_cut_end end) {
    return end.mitre.udeg == 0 && end.bevel.udeg == 0;
}

static bool equal(sb_cut_end a, int64_t mitre, int64_t bevel) {
    return a.mitre.udeg == mitre && a.bevel.udeg == bevel;
}

/* Turned flat brings end2 to the front and the far edge near; rolled over keeps the order and flips both signs. */
static bool lies_as_told(const sb_need *need, const sb_placed *part) {
    const sb_cut_end first = part->turned ? need->end2 : need->end1,
                     second = part->turned ? need->end1 : need->end2;
    int mitre = part->turned != part->rolled ? -1 : 1, bevel = part->rolled ? -1 : 1;
    return equal(part->front, mitre * first.mitre.udeg, bevel * first.bevel.udeg) &&
           equal(part->rear, mitre * second.mitre.udeg, bevel * second.bevel.udeg);
}

static bool is_strip(const sb_boarding *b, size_t part) {
    int64_t width = need_of(b, part)->width.nm;
    return width > 0 && width != b->stock->width.nm;
}

/* As it is crosscut: the section of a strip is cut square. */
static sb_cut_end cut_front(const sb_boarding *b, size_t part) {
    return is_strip(b, part) ? (sb_cut_end){{0}, {0}} : b->board->parts.items[part].front;
}

static sb_cut_end cut_rear(const sb_boarding *b, size_t part) {
    return is_strip(b, part) ? (sb_cut_end){{0}, {0}} : b->board->parts.items[part].rear;
}

/* ---- sections ------------------------------------------------------------------------------------ */

/* The strips of one section stand at one place, one size, with a rip kerf between them. Gives the part behind
 * them. */
static size_t check_section(sb_boarding *b, size_t first) {
    const sb_need *like = need_of(b, first);
    int64_t edge = 0, kerf = rules_of(b)->rip_kerf.nm, at = b->board->parts.items[first].at.nm;
    size_t i = first;
    for (; i < b->board->parts.count && is_strip(b, i) && b->board->parts.items[i].at.nm == at; i++) {
        const sb_placed *part = &b->board->parts.items[i];
        const sb_need *need = need_of(b, i);
        if (need->length.nm != like->length.nm || need->width.nm != like->width.nm)
            refuse(b, "strips of different sizes in one section");
        if (part->across.nm != edge)
            refuse(b, "a strip does not lie a kerf behind its neighbour");
        edge = part->across.nm + need->width.nm;
        if (edge > b->stock->width.nm)
            refuse(b, "a strip lies over the edge of the board");
        if (edge < b->stock->width.nm)
            b->ripped += need->length.nm;
        edge += kerf;
        b->cuts += !is_square(part->front) + !is_square(part->rear);
    }
    return i;
}

static size_t after_item(sb_boarding *b, size_t first) {
    if (is_strip(b, first))
        return check_section(b, first);
    if (b->board->parts.items[first].across.nm != 0)
        refuse(b, "a part of full width does not lie at the edge");
    return first + 1;
}

/* ---- neighbours ---------------------------------------------------------------------------------- */

static long double kerf_along(const sb_boarding *b, sb_cut_end end) {
    if (is_square(end))
        return (long double)rules_of(b)->kerf.nm;
    return (long double)rules_of(b)->kerf.nm /
           (cosl(RADIANS(end.mitre.udeg)) * cosl(RADIANS(end.bevel.udeg)));
}

static long double nearer(const sb_boarding *b, sb_cut_end end) {
    long double mitre = fabsl(RADIANS(end.mitre.udeg)), bevel = fabsl(RADIANS(end.bevel.udeg));
    return (long double)b->stock->width.nm * tanl(mitre) +
           (long double)b->stock->thickness.nm * tanl(bevel) / cosl(mitre);
}

static int64_t whole_kerf(const sb_boarding *b, sb_cut_end end) {
    return (int64_t)ceill(kerf_along(b, end) - 0.001L);
}

/* Part `next` stands exactly one cut behind part `one`, or on a measured board behind what is cut away. */
static void check_neighbours(sb_boarding *b, size_t one, size_t next) {
    const sb_placed *behind = &b->board->parts.items[one], *before = &b->board->parts.items[next];
    int64_t gap = before->at.nm - behind->at.nm - need_of(b, one)->length.nm;
    sb_cut_end rear = cut_rear(b, one), front = cut_front(b, next);
    int64_t end = behind->at.nm + need_of(b, one)->length.nm;
    bool square = is_square(rear) && is_square(front);
    bool share = equal(front, -rear.mitre.udeg, -rear.bevel.udeg);
    long double kerf = fmaxl(kerf_along(b, rear), kerf_along(b, front));
    long double wanted = share ? kerf_along(b, front) - nearer(b, front) : kerf;
    if (b->measured && (long double)gap > wanted + (square ? 0 : HAIR)) {
        b->cuts += 2;
        sb_check_skip(b, next, end + (int64_t)ceill(wanted - 0.001L), end + whole_kerf(b, rear),
                      whole_kerf(b, front));
        return;
    }
    b->cuts += share ? 1 : 2;
    if ((long double)gap < wanted - 0.01L)
        refuse(b, "two parts stand nearer than the blade is wide");
    if ((long double)gap > wanted + (square ? 0 : HAIR))
        refuse(b, "there is a gap between two parts");
}

/* ---- ends of the board --------------------------------------------------------------------------- */

static void check_front(sb_boarding *b) {
    const sb_placed *first = &b->board->parts.items[0];
    int64_t trued = b->supply->trim1.nm;
    if (b->measured && first->at.nm > trued) {
        b->cuts += (trued > 0) + 1;
        sb_check_skip(b, 0, trued, trued, whole_kerf(b, cut_front(b, 0)));
        return;
    }
    if (first->at.nm != trued)
        refuse(b, "the first part does not start where the trim ends");
    b->cuts += trued > 0 || !is_square(cut_front(b, 0));
}

static void check_rear(sb_boarding *b, size_t last) {
    const sb_placed *part = &b->board->parts.items[last];
    sb_cut_end rear = cut_rear(b, last);
    bool square = is_square(rear);
    int64_t rest = b->supply->length.nm - b->supply->trim2.nm - part->at.nm - need_of(b, last)->length.nm;
    int64_t kerf = whole_kerf(b, rear), left = rest > kerf ? rest - kerf : 0;
    if (b->measured) {
        b->cuts += rest > 0 || b->supply->trim2.nm > 0 || !square;
        sb_check_measured_rest(b, b->supply->length.nm - b->supply->trim2.nm - rest + kerf, rest);
        return;
    }
    int64_t told = b->board->leftover.nm + b->board->offcut.nm;
    bool useful = b->stock->useful_length.nm > 0 && told >= b->stock->useful_length.nm;
    if (rest < 0)
        refuse(b, "the parts are longer than the board");
    if (square ? told != left : llabs(told - left) > 1)
        refuse(b, "what is left over is miscounted");
    if (useful ? b->board->offcut.nm != 0 : b->board->leftover.nm != 0)
        refuse(b, "leftover and offcut are mixed up");
    b->cuts += rest > 0 || b->supply->trim2.nm > 0 || !square;
}

/* ---- settings ------------------------------------------------------------------------------------ */

static bool same_ends(const sb_boarding *on, size_t one, size_t other) {
    const sb_placed a = {.front = cut_front(on, one), .rear = cut_rear(on, one)};
    const sb_placed b = {.front = cut_front(on, other), .rear = cut_rear(on, other)};
    static const int turns[4][3] = {{1, 1, 0}, {-1, -1, 0}, {-1, 1, 1}, {1, -1, 1}}; /* signs; ends swapped */
    for (int i = 0; i < 4; i++) {
        sb_cut_end front = turns[i][2] ? b.rear : b.front, rear = turns[i][2] ? b.front : b.rear;
        if (equal(a.front, turns[i][0] * front.mitre.udeg, turns[i][1] * front.bevel.udeg) &&
            equal(a.rear, turns[i][0] * rear.mitre.udeg, turns[i][1] * rear.bevel.udeg))
            return true;
    }
    return false;
}

static int64_t count_settings(const sb_boarding *b) {
    int64_t settings = 0;
    for (size_t i = 0; i < b->board->parts.count; i++) {
        bool fresh = true;
        for (size_t j = 0; j < i && fresh; j++)
            fresh = need_of(b, j)->length.nm != need_of(b, i)->length.nm || !same_ends(b, j, i);
        settings += fresh;
    }
    return settings;
}

/* ---- the board ----------------------------------------------------------------------------------- */

static bool parts_belong(sb_boarding *b) {
    bool belong = true;
    for (size_t i = 0; i < b->board->parts.count; i++) {
        const sb_need *need = need_of(b, i);
        bool own = need->stock == b->supply->stock;
        if (!own)
            refuse(b, "a part of another stock");
        if (!lies_as_told(need, &b->board->parts.items[i]))
            refuse(b, "a part has other ends than were asked for");
        if (need->width.nm > b->stock->width.nm)
            refuse(b, "a part is wider than the board");
        belong = belong && own;
    }
    return belong;
}

void sb_check_board(sb_checking *c, size_t index) {
    const sb_problem *problem = c->plan->problem;
    sb_boarding b = {.c = c, .index = index, .board = &c->plan->boards.items[index]};
    b.supply = &problem->supplies.items[b.board->supply];
    b.stock = &problem->stock.items[b.supply->stock];
    b.measured = b.supply->bad.count > 0;
    if (b.stock->sheet || b.board->parts.count == 0) {
        refuse(&b, b.stock->sheet ? "a sheet is planned as a board" : "nothing is cut from it");
        return;
    }
    if (!b.supply->leftover && problem->rules.longest_board.nm > 0 &&
        b.supply->length.nm > problem->rules.longest_board.nm)
        refuse(&b, "the vehicle cannot carry it");
    if (!parts_belong(&b))
        return;
    check_front(&b);
    size_t last = 0;
    for (size_t i = 0, next; i < b.board->parts.count; i = next) {
        if (i > 0)
            check_neighbours(&b, last, i);
        next = after_item(&b, i);
        last = i;
    }
    check_rear(&b, last);
    sb_check_stretches(&b);
    if (b.cuts != b.board->cuts || b.ripped != b.board->ripped.nm || count_settings(&b) != b.board->stops)
        refuse(&b, "its cuts, rips or stop settings are miscounted");
}
