/* From needs and supplies of one stock to kinds and boards on offer. */
#include <math.h>
#include <stdlib.h>

#include "cutting/boards.h"
#include "cutting/duals.h"
#include "cutting/measured.h"
#include "cutting/order.h"
#include "cutting/words.h"

#define DEGREE (3.14159265358979323846 / 180)
#define SQUARE 0    /* the first of a bench's endings */
#define NOISE  1e-3 /* [nm], of the trigonometry */

/* ---- ends ---------------------------------------------------------------------------------------- */

static bool same_end(sb_cut_end a, sb_cut_end b) {
    return a.mitre.udeg == b.mitre.udeg && a.bevel.udeg == b.bevel.udeg;
}

static bool is_square(sb_cut_end end) {
    return same_end(end, (sb_cut_end){{0}, {0}});
}

static sb_cut_end end_of(int64_t mitre, int64_t bevel) {
    return (sb_cut_end){{mitre}, {bevel}};
}

/* How much nearer two long points come where their ends are parallel. */
static double overlap(sb_cut_end end, int64_t width, int64_t thickness) {
    double mitre = fabs((double)end.mitre.udeg) * 1e-6 * DEGREE,
           bevel = fabs((double)end.bevel.udeg) * 1e-6 * DEGREE;
    return (double)width * tan(mitre) + (double)thickness * tan(bevel) / cos(mitre);
}

static double kerf_in(sb_cut_end end, int64_t kerf) {
    double mitre = (double)end.mitre.udeg * 1e-6 * DEGREE, bevel = (double)end.bevel.udeg * 1e-6 * DEGREE;
    return (double)kerf / (cos(mitre) * cos(bevel));
}

static size_t ending_of(sb_bench *bench, sb_cut_end end) {
    for (size_t i = 0; i < bench->endings.count; i++)
        if (same_end(bench->endings.items[i].end, end))
            return i;
    sb_ending ending = {end, is_square(end), sb_kerf_along((sb_length){bench->kerf}, end).nm, 0, SIZE_MAX};
    double shared = kerf_in(end, bench->kerf) - overlap(end, bench->width, bench->thickness);
    ending.shared = (int64_t)ceil(shared - NOISE);
    SB_PUSH(bench->run->pool, bench->endings, ending);
    return bench->endings.count - 1;
}

static void pair_endings(sb_bench *bench) {
    for (size_t i = 0; i < bench->endings.count; i++)
        for (size_t j = 0; j < bench->endings.count; j++) {
            sb_cut_end a = bench->endings.items[i].end, b = bench->endings.items[j].end;
            if (same_end(a, end_of(-b.mitre.udeg, -b.bevel.udeg)))
                bench->endings.items[i].opposite = j;
        }
}

/* ---- turns: as it is, turned flat end for end, rolled over its length, both ---------------------- */

typedef struct ends {
    sb_cut_end front, rear;
} ends;

enum {
    TURNED = 1,
    ROLLED = 2,
    WAYS = 4
};

static ends lying(const sb_need *need, int way) {
    sb_cut_end a = need->end1, b = need->end2;
    switch (way) {
    case TURNED:
        return (ends){end_of(-b.mitre.udeg, b.bevel.udeg), end_of(-a.mitre.udeg, a.bevel.udeg)};
    case ROLLED:
        return (ends){end_of(-a.mitre.udeg, -a.bevel.udeg), end_of(-b.mitre.udeg, -b.bevel.udeg)};
    case TURNED | ROLLED:
        return (ends){end_of(b.mitre.udeg, -b.bevel.udeg), end_of(a.mitre.udeg, -a.bevel.udeg)};
    default:
        return (ends){a, b};
    }
}

static void add_turn(sb_bench *bench, sb_kind *kind, int way) {
    ends lies = lying(kind->like, way);
    sb_turn turn = {ending_of(bench, lies.front), ending_of(bench, lies.rear)};
    for (size_t i = 0; i < kind->turn_count; i++)
        if (kind->turns[i].front == turn.front && kind->turns[i].rear == turn.rear)
            return;
    kind->turns[kind->turn_count++] = turn;
}

bool sb_need_same_shape(const sb_need *a, const sb_need *b) {
    for (int way = 0; way < WAYS; way++) {
        ends lies = lying(a, way);
        if (same_end(lies.front, b->end1) && same_end(lies.rear, b->end2))
            return true;
    }
    return false;
}

void sb_need_lies(const sb_need *need, sb_placed *part) {
    for (int way = 0; way < WAYS; way++) {
        ends lies = lying(need, way);
        if (!same_end(lies.front, part->front) || !same_end(lies.rear, part->rear))
            continue;
        part->turned = (way & TURNED) != 0;
        part->rolled = (way & ROLLED) != 0;
        return;
    }
}

/* ---- kinds --------------------------------------------------------------------------------------- */

static int64_t own_width(const sb_bench *bench, const sb_need *need) {
    return need->width.nm == 0 ? bench->width : need->width.nm;
}

static int64_t strips_of(const sb_bench *bench, const sb_need *need) {
    if (need->width.nm == 0 || need->width.nm >= bench->width)
        return 0;
    return (bench->width + bench->rip_kerf) / (need->width.nm + bench->rip_kerf);
}

static bool alike(const sb_bench *bench, const sb_need *a, const sb_need *b) {
    return a->length.nm == b->length.nm && own_width(bench, a) == own_width(bench, b) &&
           (!bench->faulty || sb_need_avoids(a) == sb_need_avoids(b)) && sb_need_same_shape(a, b);
}

static sb_kind *kind_like(sb_bench *bench, const sb_need *need) {
    for (size_t i = 0; i < bench->kinds.count; i++)
        if (alike(bench, bench->kinds.items[i].like, need))
            return &bench->kinds.items[i];
    sb_kind kind = {.like = need, .length = need->length.nm, .strips = strips_of(bench, need)};
    kind.avoids = sb_need_avoids(need);
    for (int way = 0; way < WAYS && !kind.strips; way++)
        add_turn(bench, &kind, way);
    if (kind.strips) {
        kind.turns[kind.turn_count++] = (sb_turn){SQUARE, SQUARE};
        kind.strip_ends = !is_square(need->end1) + !is_square(need->end2);
    }
    SB_PUSH(bench->run->pool, bench->kinds, kind);
    return &bench->kinds.items[bench->kinds.count - 1];
}

static void add_need(sb_bench *bench, const sb_need *need) {
    sb_kind *kind = kind_like(bench, need);
    kind->pieces += need->count;
    SB_PUSH(bench->run->pool, kind->needs, (size_t)(need - bench->problem->needs.items));
}

/* What one end takes at the least: half of what its junction takes, doubled. */
static int64_t least_of(const sb_bench *bench, size_t ending) {
    const sb_ending *e = &bench->endings.items[ending];
    return e->opposite != SIZE_MAX ? e->shared : e->kerf;
}

static bool is_cut_square(const sb_kind *kind) {
    return kind->turns[0].front == SQUARE && kind->turns[0].rear == SQUARE;
}

static int by_row(const void *a, const void *b) {
    const size_t *one = a, *other = b;
    return *one < *other ? -1 : *one > *other;
}

static void finish_kind(sb_bench *bench, sb_kind *kind) {
    qsort(kind->needs.items, kind->needs.count, sizeof *kind->needs.items, by_row);
    int64_t front = least_of(bench, kind->turns[0].front), rear = least_of(bench, kind->turns[0].rear);
    kind->demand = kind->strips ? (kind->pieces + kind->strips - 1) / kind->strips : kind->pieces;
    kind->least = 2 * kind->length + front + rear;
    if (front > bench->cap_least)
        bench->cap_least = front;
    if (rear > bench->cap_least)
        bench->cap_least = rear;
    bench->all_square = bench->all_square && is_cut_square(kind);
}

static bool same_cuts(const sb_kind *a, const sb_kind *b) {
    if (a->strips || b->strips)
        return is_cut_square(a) && is_cut_square(b);
    return sb_need_same_shape(a->like, b->like);
}

/* Kinds of one length and one pair of ends share a stop setting, whatever their width. */
static void number_settings(sb_bench *bench) {
    for (size_t i = 0; i < bench->kinds.count; i++) {
        sb_kind *kind = &bench->kinds.items[i];
        kind->setting = i;
        kind->alone = true;
        for (size_t j = 0; j < i; j++) {
            sb_kind *other = &bench->kinds.items[j];
            if (other->length != kind->length || !same_cuts(other, kind))
                continue;
            kind->setting = other->setting;
            kind->alone = other->alone = false;
        }
    }
}

/* ---- boards on offer ----------------------------------------------------------------------------- */

static bool is_carried(const sb_cut_rules *rules, const sb_supply *supply) {
    return supply->leftover || rules->longest_board.nm == 0 || supply->length.nm <= rules->longest_board.nm;
}

static void offer(sb_bench *bench, size_t index) {
    const sb_supply *supply = &bench->problem->supplies.items[index];
    const sb_cut_rules *rules = &bench->problem->rules;
    int64_t room = supply->length.nm - supply->trim1.nm - supply->trim2.nm;
    if (supply->available == 0 || room <= 0 || !is_carried(rules, supply))
        return;
    sb_offered on = {.supply = index, .room = room, .available = supply->available};
    on.fixed = supply->price.milli + (rules->material_only ? 0 : rules->board.milli);
    on.trued = supply->trim1.nm > 0;
    on.ragged = supply->trim2.nm > 0;
    if (on.available < 0)
        on.available = INT64_MAX;
    sb_faults_of(bench->run, supply, &on);
    bench->faulty = bench->faulty || on.faults.count > 0;
    SB_PUSH(bench->run->pool, bench->boards, on);
}

static void offer_all(sb_bench *bench) {
    for (size_t i = 0; i < bench->problem->supplies.count; i++)
        if (bench->problem->supplies.items[i].stock == bench->stock)
            offer(bench, i);
    if (bench->boards.count > 0)
        qsort(bench->boards.items, bench->boards.count, sizeof *bench->boards.items, sb_by_room);
}

/* ---- needs that fit no board --------------------------------------------------------------------- */

static int64_t longest_room(const sb_bench *bench) {
    int64_t room = 0;
    for (size_t i = 0; i < bench->boards.count; i++)
        if (bench->boards.items[i].room > room)
            room = bench->boards.items[i].room;
    return room;
}

static int64_t room_of(const sb_supply *supply) {
    return supply->length.nm - supply->trim1.nm - supply->trim2.nm;
}

/* The shortest supply of this stock that the part would fit, were it to be had and carried. */
static const sb_supply *shortest_that_fits(const sb_bench *bench, const sb_need *need, bool to_be_had) {
    const sb_supply *best = NULL;
    for (size_t i = 0; i < bench->problem->supplies.count; i++) {
        const sb_supply *supply = &bench->problem->supplies.items[i];
        if (supply->stock != bench->stock || room_of(supply) < need->length.nm ||
            (supply->available != 0) != to_be_had)
            continue;
        if (!best || supply->length.nm < best->length.nm)
            best = supply;
    }
    return best;
}

static const sb_supply *longest_on_offer(const sb_bench *bench) {
    const sb_supply *longest = NULL;
    for (size_t i = 0; i < bench->boards.count; i++) {
        const sb_supply *supply = &bench->problem->supplies.items[bench->boards.items[i].supply];
        if (!longest || room_of(supply) > room_of(longest))
            longest = supply;
    }
    return longest;
}

/* What would have been long enough; "" when nothing would. */
static const char *would_do(const sb_bench *bench, const sb_need *need) {
    sb_run *run = bench->run;
    const sb_supply *uncarried = shortest_that_fits(bench, need, true),
                    *gone = shortest_that_fits(bench, need, false);
    if (uncarried)
        return sb_pool_print(run->pool, "; one of %s would do, but the vehicle carries %s",
                             sb_words_length(run, uncarried->length.nm),
                             sb_words_length(run, bench->problem->rules.longest_board.nm));
    return gone ? sb_pool_print(run->pool, "; one of %s would do, but there is none left",
                                sb_words_length(run, gone->length.nm))
                : "";
}

static void tell_too_long(const sb_bench *bench, const sb_need *need) {
    sb_run *run = bench->run;
    const char *stock = bench->problem->stock.items[bench->stock].name,
               *part = sb_words_length(run, need->length.nm);
    const sb_supply *nearest = longest_on_offer(bench);
    if (nearest)
        sb_error(run, need->place,
                 "\"%s\" is %s long; the nearest is \"%s\" of %s, of which %s can be used%s", need->name,
                 part, stock, sb_words_length(run, nearest->length.nm),
                 sb_words_length(run, room_of(nearest)), would_do(bench, need));
    else
        sb_error(run, need->place, "\"%s\": there is no \"%s\" on offer%s", need->name, stock,
                 would_do(bench, need));
}

static bool fits_the_width(const sb_bench *bench, const sb_need *need) {
    const sb_cut_stock *stock = &bench->problem->stock.items[bench->stock];
    if (need->width.nm == 0 || (bench->width > 0 && need->width.nm <= bench->width))
        return true;
    if (bench->width == 0)
        sb_error(bench->run, need->place, "\"%s\" is %s wide, but the width of \"%s\" is not told",
                 need->name, sb_words_length(bench->run, need->width.nm), stock->name);
    else
        sb_error(bench->run, need->place, "\"%s\" is %s wide; \"%s\" is %s wide", need->name,
                 sb_words_length(bench->run, need->width.nm), stock->name,
                 sb_words_length(bench->run, bench->width));
    return false;
}

/* How far behind the long point the end lies on one of the part's four edges. */
static double behind(const sb_bench *bench, const sb_need *need, sb_cut_end end, bool far, bool upper) {
    int64_t width = (end.mitre.udeg > 0) == far ? 0 : own_width(bench, need);
    int64_t thickness = (end.bevel.udeg > 0) == upper ? bench->thickness : 0;
    return overlap(end, width, thickness);
}

static bool has_a_shape(const sb_bench *bench, const sb_need *need) {
    double length = (double)need->length.nm, sum = 0;
    bool shaped = true;
    for (int edge = 0; edge < 4; edge++) {
        bool far = edge & 1, upper = edge & 2;
        double left = length - behind(bench, need, need->end1, far, upper) -
                      behind(bench, need, need->end2, far, upper);
        shaped = shaped && left > -1;
        sum += left;
    }
    if (!shaped || sum < 4)
        sb_error(bench->run, need->place, "\"%s\" is %s over its long points, but its ends take all of that",
                 need->name, sb_words_length(bench->run, need->length.nm));
    return shaped && sum >= 4;
}

static bool can_be_cut(const sb_bench *bench, const sb_need *need, int64_t room) {
    if (need->spare && need->length.nm > room)
        return false;
    if (!fits_the_width(bench, need) || !has_a_shape(bench, need))
        return false;
    if (need->length.nm <= room)
        return true;
    tell_too_long(bench, need);
    return false;
}

/* ---- the bench ----------------------------------------------------------------------------------- */

static sb_bench *bare_bench(sb_run *run, const sb_problem *problem, size_t stock, sb_work *work) {
    const sb_cut_stock *of = &problem->stock.items[stock];
    const sb_cut_rules *rules = &problem->rules;
    sb_bench *bench = SB_NEW(run->pool, sb_bench);
    *bench = (sb_bench){.run = run, .problem = problem, .stock = stock, .all_square = true, .work = work};
    bench->kerf = rules->kerf.nm;
    bench->rip_kerf = rules->rip_kerf.nm;
    bench->width = of->width.nm;
    bench->thickness = of->thickness.nm;
    bench->change = rules->material_only ? 0 : rules->change.milli;
    bench->cut = rules->material_only ? 0 : rules->cut.milli;
    bench->useful = rules->material_only || of->value == 0 ? 0 : of->useful_length.nm;
    bench->value = of->value;
    ending_of(bench, end_of(0, 0));
    return bench;
}

/* Leftovers are worth any amount; all else comes in these. */
static int64_t grain_of(const sb_bench *bench) {
    int64_t grain = sb_common_divisor(bench->change, bench->cut);
    for (size_t s = 0; s < bench->boards.count; s++)
        grain = sb_common_divisor(grain, bench->boards.items[s].fixed);
    return bench->useful > 0 || grain == 0 ? 1 : grain;
}

static void finish_bench(sb_bench *bench) {
    pair_endings(bench);
    number_settings(bench);
    bench->cap_least = INT64_MIN;
    for (size_t i = 0; i < bench->kinds.count; i++)
        finish_kind(bench, &bench->kinds.items[i]);
    for (size_t i = 0; i < bench->boards.count; i++)
        bench->boards.items[i].capacity = 2 * bench->boards.items[i].room + 2 * bench->cap_least;
    bench->grain = grain_of(bench);
    bench->scratch = SB_NEW(bench->run->pool, struct sb_scratch);
    bench->scratch->open = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->kinds.count + 1);
    bench->scratch->knapsack = SB_NEW(bench->run->pool, sb_knapsack);
    bench->scratch->worth = SB_NEW(bench->run->pool, sb_worth);
    if (bench->faulty)
        sb_measure_boards(bench);
}

sb_bench *sb_bench_make(sb_run *run, sb_plan *plan, size_t stock, sb_work *work) {
    const sb_problem *problem = plan->problem;
    sb_bench *bench = bare_bench(run, problem, stock, work);
    offer_all(bench);
    int64_t room = longest_room(bench);
    SB_LIST(const sb_need *) possible = {0};
    for (size_t i = 0; i < problem->needs.count; i++) {
        const sb_need *need = &problem->needs.items[i];
        if (need->stock != stock)
            continue;
        if (can_be_cut(bench, need, room))
            SB_PUSH(run->pool, possible, need);
        else
            SB_PUSH(run->pool, plan->short_of, ((sb_shortage){i, need->count}));
    }
    if (possible.count == 0)
        return NULL;
    qsort(possible.items, possible.count, sizeof *possible.items, sb_by_shape);
    for (size_t i = 0; i < possible.count; i++)
        add_need(bench, possible.items[i]);
    finish_bench(bench);
    return bench;
}
