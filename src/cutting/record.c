/* From loads to board plans: which need each part is for, and where it lies. */
#include <stdlib.h>

#include "cutting/measured.h"
#include "cutting/words.h"

typedef struct recording {
    sb_bench *bench;
    sb_plan *plan;
    const sb_cutting *cutting;
    size_t *need;  /* by kind: the need being made, into kind.needs */
    int64_t *open; /* by kind: of that need, still to be made */
} recording;

/* ---- needs in turn ------------------------------------------------------------------------------- */

static void start_needs(recording *r) {
    size_t kinds = r->bench->kinds.count;
    r->need = SB_NEW_ARRAY(r->bench->run->pool, size_t, kinds);
    r->open = SB_NEW_ARRAY(r->bench->run->pool, int64_t, kinds);
    for (size_t i = 0; i < kinds; i++)
        r->open[i] = r->bench->problem->needs.items[r->bench->kinds.items[i].needs.items[0]].count;
}

/* SIZE_MAX when all needs of the kind are made: the last section then stays in part unripped. */
static size_t next_need(recording *r, size_t index) {
    const sb_kind *kind = &r->bench->kinds.items[index];
    while (r->open[index] == 0 && r->need[index] + 1 < kind->needs.count)
        r->open[index] = r->bench->problem->needs.items[kind->needs.items[++r->need[index]]].count;
    if (r->open[index] == 0)
        return SIZE_MAX;
    r->open[index]--;
    return kind->needs.items[r->need[index]];
}

/* ---- one board ----------------------------------------------------------------------------------- */

static void place_part(recording *r, sb_board_plan *board, const sb_lying *lying, int64_t start,
                       size_t need) {
    const sb_bench *bench = r->bench;
    const sb_turn *turn = &bench->kinds.items[lying->kind].turns[lying->turn];
    sb_placed part = {.need = need, .at = {start + lying->at}};
    part.front = bench->endings.items[turn->front].end;
    part.rear = bench->endings.items[turn->rear].end;
    sb_need_lies(&bench->problem->needs.items[need], &part);
    SB_PUSH(bench->run->pool, board->parts, part);
}

/* A strip lies as its part is told: it gets its ends once it is ripped. */
static void place_strip(recording *r, sb_board_plan *board, int64_t at, int64_t across, size_t index) {
    const sb_need *need = &r->bench->problem->needs.items[index];
    sb_placed part = {.need = index, .at = {at}, .across = {across}, .front = need->end1, .rear = need->end2};
    SB_PUSH(r->bench->run->pool, board->parts, part);
}

/* Strips side by side, a rip behind each unless the last is flush with the far edge. */
static void place_section(recording *r, sb_board_plan *board, const sb_lying *lying, int64_t start) {
    const sb_bench *bench = r->bench;
    const sb_kind *kind = &bench->kinds.items[lying->kind];
    int64_t width = kind->like->width.nm, across = 0, rips = 0;
    for (int64_t strip = 0; strip < kind->strips; strip++) {
        size_t need = next_need(r, lying->kind);
        if (need == SIZE_MAX)
            break;
        place_strip(r, board, start + lying->at, across, need);
        rips += across + width < bench->width;
        across += width + bench->rip_kerf;
        board->cuts += kind->strip_ends;
    }
    board->ripped.nm += rips * kind->length;
}

static sb_board_plan plan_board(recording *r, const sb_load *load, const sb_layout *layout,
                                sb_outcome outcome) {
    const sb_bench *bench = r->bench;
    const sb_offered *on = &bench->boards.items[load->board];
    const sb_cut_stock *stock = &bench->problem->stock.items[bench->stock];
    int64_t start = bench->problem->supplies.items[on->supply].trim1.nm;
    sb_board_plan board = {.supply = on->supply, .count = 1, .stops = outcome.settings};
    board.cuts = outcome.cuts; /* the ends of strips come to it one by one */
    for (size_t i = 0; i < layout->parts.count; i++) {
        const sb_lying *lying = &layout->parts.items[i];
        if (bench->kinds.items[lying->kind].strips)
            place_section(r, &board, lying, start);
        else
            place_part(r, &board, lying, start, next_need(r, lying->kind));
    }
    bool useful = stock->useful_length.nm > 0 && outcome.left >= stock->useful_length.nm;
    board.leftover.nm = useful ? outcome.left : 0;
    board.offcut.nm = useful ? 0 : outcome.left;
    if (on->faults.count > 0)
        sb_measured_record(bench, load->board, layout, &board);
    return board;
}

/* ---- boards alike -------------------------------------------------------------------------------- */

static bool alike(const sb_board_plan *a, const sb_board_plan *b) {
    if (a->supply != b->supply || a->parts.count != b->parts.count)
        return false;
    for (size_t i = 0; i < a->parts.count; i++)
        if (a->parts.items[i].need != b->parts.items[i].need ||
            a->parts.items[i].at.nm != b->parts.items[i].at.nm ||
            a->parts.items[i].across.nm != b->parts.items[i].across.nm)
            return false;
    return true;
}

static void add_board(recording *r, const sb_board_plan *board) {
    sb_plan *plan = r->plan;
    sb_board_plan *last = plan->boards.count > 0 ? &plan->boards.items[plan->boards.count - 1] : NULL;
    if (last && alike(last, board))
        last->count++;
    else
        SB_PUSH(r->bench->run->pool, plan->boards, *board);
}

static void record_load(recording *r, const sb_load *load) {
    const sb_lot *lots = &r->cutting->lots.items[load->first];
    sb_outcome outcome = sb_load_outcome(r->bench, load->board, lots, load->lots);
    const sb_layout *layout = r->bench->boards.items[load->board].faults.count > 0
                                  ? sb_measured_layout(r->bench, load->board, lots, load->lots)
                                  : sb_layout_find(r->bench, load->board, lots, load->lots);
    for (int64_t n = 0; n < load->count; n++) {
        sb_board_plan board = plan_board(r, load, layout, outcome);
        add_board(r, &board);
    }
}

/* ---- in the order they are best cut: boards with the same settings follow each other ------------- */

typedef struct sorted_load {
    const sb_load *load;
    const sb_lot *lots;
} sorted_load;

static int by_parts(const void *a, const void *b) {
    const sorted_load *one = a, *other = b;
    for (size_t i = 0; i < one->load->lots && i < other->load->lots; i++) {
        const sb_lot *left = &one->lots[i], *right = &other->lots[i];
        if (left->kind != right->kind)
            return left->kind < right->kind ? -1 : 1;
        if (left->count != right->count)
            return left->count > right->count ? -1 : 1;
    }
    if (one->load->lots != other->load->lots)
        return one->load->lots < other->load->lots ? -1 : 1;
    if (one->load->board != other->load->board)
        return one->load->board < other->load->board ? -1 : 1;
    return one->load < other->load ? -1 : one->load > other->load;
}

static void record_loads(recording *r) {
    size_t count = r->cutting->loads.count;
    sorted_load *sorted = SB_NEW_ARRAY(r->bench->run->pool, sorted_load, count + 1);
    for (size_t i = 0; i < count; i++)
        sorted[i] = (sorted_load){&r->cutting->loads.items[i],
                                  &r->cutting->lots.items[r->cutting->loads.items[i].first]};
    qsort(sorted, count, sizeof *sorted, by_parts);
    for (size_t i = 0; i < count; i++)
        record_load(r, sorted[i].load);
}

/* ---- what is short ------------------------------------------------------------------------------- */

static void tell_shortage(recording *r, size_t index, int64_t missing) {
    const sb_need *need = &r->bench->problem->needs.items[index];
    SB_PUSH(r->bench->run->pool, r->plan->short_of, ((sb_shortage){index, missing}));
    sb_error(r->bench->run, need->place,
             "not enough \"%s\": %lld of %lld \"%s\" (%s) cannot be cut from what is on offer",
             r->bench->problem->stock.items[r->bench->stock].name, (long long)missing, (long long)need->count,
             need->name, sb_words_length(r->bench->run, need->length.nm));
}

static void tell_shortages(recording *r) {
    for (size_t i = 0; i < r->bench->kinds.count; i++) {
        const sb_kind *kind = &r->bench->kinds.items[i];
        if (r->open[i] > 0)
            tell_shortage(r, kind->needs.items[r->need[i]], r->open[i]);
        for (size_t n = r->need[i] + 1; n < kind->needs.count; n++)
            tell_shortage(r, kind->needs.items[n],
                          r->bench->problem->needs.items[kind->needs.items[n]].count);
    }
}

void sb_boards_record(sb_bench *bench, const sb_cutting *cutting, sb_plan *plan) {
    recording r = {bench, plan, cutting, NULL, NULL};
    start_needs(&r);
    record_loads(&r);
    tell_shortages(&r);
}
