/* Boards with faults: where parts may begin, and what is left behind the last. */
#include "cutting/measured.h"
#include "cutting/measuring.h"

sb_avoids sb_need_avoids(const sb_need *need) {
    return need->clear || need->spare ? SB_AVOIDS_ALL : need->sound ? SB_AVOIDS_SPLITS : SB_AVOIDS_NOTHING;
}

void sb_faults_of(sb_run *run, const sb_supply *supply, sb_offered *on) {
    for (size_t i = 0; i < supply->bad.count; i++) {
        const sb_stretch *bad = &supply->bad.items[i];
        sb_fault fault = {bad->from.nm - supply->trim1.nm, bad->to.nm - supply->trim1.nm,
                          bad->split ? SB_AVOIDS_SPLITS : SB_AVOIDS_ALL};
        SB_PUSH(run->pool, on->faults, fault);
    }
}

/* ---- where a part may begin ---------------------------------------------------------------------- */

/* The end of a fault that a part here would touch; `at` itself where there is none. */
static int64_t behind_fault(const sb_offered *on, sb_avoids avoids, int64_t length, int64_t at) {
    for (size_t i = 0; i < on->faults.count; i++) {
        const sb_fault *fault = &on->faults.items[i];
        if (avoids >= fault->by && fault->from < at + length && fault->to > at)
            return fault->to;
    }
    return at;
}

int64_t sb_first_place(const sb_offered *on, sb_avoids avoids, int64_t length, int64_t close, int64_t apart) {
    int64_t at = close, behind;
    while ((behind = behind_fault(on, avoids, length, at)) != at)
        at = behind > apart ? behind : apart;
    return at;
}

/* ---- how many of a kind fit alone ---------------------------------------------------------------- */

/* Any gap of a kerf or more is granted here, so that no load has more. */
static int64_t most_of(const sb_bench *bench, const sb_offered *on, const sb_kind *kind) {
    const sb_turn *turn = &kind->turns[0];
    if (!bench->endings.items[turn->front].square || !bench->endings.items[turn->rear].square)
        return kind->demand;
    int64_t count = 0, at = 0;
    while (count < kind->demand) {
        at = sb_first_place(on, kind->avoids, kind->length, at, at) + kind->length;
        if (at > on->room)
            break;
        at += bench->kerf;
        count++;
    }
    return count;
}

void sb_measure_boards(sb_bench *bench) {
    for (size_t s = 0; s < bench->boards.count; s++) {
        sb_offered *on = &bench->boards.items[s];
        if (on->faults.count == 0)
            continue;
        on->most = SB_NEW_ARRAY(bench->run->pool, int64_t, bench->kinds.count);
        for (size_t i = 0; i < bench->kinds.count; i++)
            on->most[i] = most_of(bench, on, &bench->kinds.items[i]);
    }
    bench->scratch->measuring = sb_measuring_new(bench);
}

/* ---- behind the last part ------------------------------------------------------------------------ */

/* The rest of a board: from the last cut on, and what of it is kept. */
typedef struct rest {
    int64_t from, room;
    int64_t at, end; /* the longest piece without a split */
    bool useful;
} rest;

static void consider(rest *r, int64_t at, int64_t end) {
    if (end - at > r->end - r->at)
        r->at = at, r->end = end;
}

static rest rest_of(const sb_bench *bench, const sb_offered *on, const sb_layout *layout) {
    int64_t useful = bench->problem->stock.items[bench->stock].useful_length.nm;
    rest r = {layout->used + bench->endings.items[layout->last].kerf, on->room, 0, 0, false};
    int64_t at = r.from, apart = r.from + bench->kerf;
    for (size_t i = 0; i < on->faults.count; i++) {
        const sb_fault *fault = &on->faults.items[i];
        if (fault->by != SB_AVOIDS_SPLITS || fault->to <= at || fault->from >= on->room)
            continue;
        consider(&r, at, fault->from);
        at = fault->to > apart ? fault->to : apart;
    }
    consider(&r, at, on->room);
    r.useful = useful > 0 && r.end - r.at >= useful;
    return r;
}

static int64_t cuts_around(const rest *r) {
    return r->useful ? (r->at > r->from) + (r->end < r->room) : 0;
}

static int64_t not_below_nothing(int64_t length) {
    return length > 0 ? length : 0;
}

/* ---- what comes of a load ------------------------------------------------------------------------ */

/* A front cut behind waste is one of the layout's. */
static int64_t cuts_in_front(const sb_bench *bench, const sb_offered *on, const sb_layout *layout) {
    const sb_lying *first = &layout->parts.items[0];
    size_t front = bench->kinds.items[first->kind].turns[first->turn].front;
    return on->trued || (first->at == 0 && !bench->endings.items[front].square);
}

static void count_outcome(const sb_bench *bench, const sb_offered *on, const sb_layout *layout,
                          sb_outcome *out) {
    rest r = rest_of(bench, on, layout);
    out->rest = on->room - layout->used;
    out->left = r.useful ? r.end - r.at : not_below_nothing(r.room - r.from);
    out->cuts = layout->cuts + cuts_in_front(bench, on, layout) + cuts_around(&r);
    out->cuts += on->ragged || out->rest > 0 || !bench->endings.items[layout->last].square;
    if (bench->useful > 0 && r.useful)
        out->leftover = sb_mul_div_down(out->left, bench->value, 1000 * (int64_t)SB_NM_PER_MM);
}

sb_outcome sb_measured_outcome(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    const sb_offered *on = &bench->boards.items[board];
    const sb_layout *layout = sb_measured_layout(bench, board, lots, count);
    sb_outcome out = {.fits = layout != NULL, .rest = -1};
    out.settings = sb_load_settings(bench, lots, count);
    if (layout)
        count_outcome(bench, on, layout, &out);
    out.cost = on->fixed + bench->change * out.settings + bench->cut * out.cuts - out.leftover;
    return out;
}

/* ---- into the plan ------------------------------------------------------------------------------- */

static void add_waste(const sb_bench *bench, sb_board_plan *plan, int64_t from, int64_t to) {
    int64_t start = bench->problem->supplies.items[plan->supply].trim1.nm;
    sb_waste waste = {{start + from}, {start + (to > from ? to : from)}};
    plan->offcut.nm += waste.to.nm - waste.from.nm;
    SB_PUSH(bench->run->pool, plan->waste, waste);
}

/* A part that is not directly behind the one before has a front cut of its own, and waste before that. */
static void add_skipped(const sb_bench *bench, const sb_layout *layout, size_t part, sb_board_plan *plan) {
    const sb_lying *now = &layout->parts.items[part], *before = now - 1;
    size_t front = bench->kinds.items[now->kind].turns[now->turn].front;
    int64_t from = 0, close = 0, cuts;
    if (part > 0) {
        const sb_kind *kind = &bench->kinds.items[before->kind];
        size_t rear = kind->turns[before->turn].rear;
        close = before->at + kind->length + sb_junction(bench, rear, front, &cuts);
        from = before->at + kind->length + bench->endings.items[rear].kerf;
    }
    if (now->at > close)
        add_waste(bench, plan, from, now->at - bench->endings.items[front].kerf);
}

void sb_measured_record(const sb_bench *bench, size_t board, const sb_layout *layout, sb_board_plan *plan) {
    rest r = rest_of(bench, &bench->boards.items[board], layout);
    plan->leftover.nm = r.useful ? r.end - r.at : 0;
    plan->offcut.nm = r.useful ? 0 : not_below_nothing(r.room - r.from);
    for (size_t i = 0; i < layout->parts.count; i++)
        add_skipped(bench, layout, i, plan);
    if (r.useful)
        plan->leftover_at.nm = bench->problem->supplies.items[plan->supply].trim1.nm + r.at;
    if (r.useful && r.at > r.from)
        add_waste(bench, plan, r.from, r.at - bench->kerf);
    if (r.useful && r.end < r.room)
        add_waste(bench, plan, r.end + bench->kerf, r.room);
}
