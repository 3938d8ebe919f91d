/* Labour: the work of the recipes, what the cutting plan causes, and what is done once for the batch. */
#include "costing/inside.h"

#include <string.h>

enum {
    US_PER_MS = 1000
};
static const int64_t US_PER_HOUR = 3600000000;
static const int64_t WHOLE = 1000000; /* 100 % in ppm */

/* The share of its time that counts, in ppm. */
static int64_t counts(const costing *c, const sb_labour_line *line) {
    return costing_changed(c, FIGURE_TIME, line->operation, line->learned.ppm);
}

/* Thousandths of a unit times milliseconds: microseconds, exact where nothing is learnt. */
static int64_t micros_of(const costing *c, const sb_labour_line *line) {
    return sb_mul_div(sb_mul(line->quantity_milli, line->operation->time.ms), counts(c, line), WHOLE);
}

static void reckon(const costing *c, sb_labour_line *line) {
    const sb_worker *worker = line->operation->worker;
    int64_t micros = sb_mul(line->quantity_milli, line->operation->time.ms);
    line->hour.minor = worker ? costing_changed(c, FIGURE_HOUR, worker, worker->hour.minor) : 0;
    line->time.ms = sb_mul_div(micros_of(c, line), 1, US_PER_MS);
    line->amount.minor = sb_mul_div(micros, sb_mul(line->hour.minor, counts(c, line)), US_PER_HOUR * WHOLE);
}

static void share_line(costing *c, const sb_labour_line *line) {
    const int64_t *weights = line->weights;
    int64_t *shares = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    costing_share(c->run, line->amount.minor, weights, c->count, shares);
    for (size_t i = 0; i < c->count; i++) {
        sb_price_line *piece = &c->estimate->pieces.items[i];
        piece->labour = sb_money_add(piece->labour, (sb_money){shares[i]});
    }
    costing_share(c->run, micros_of(c, line), weights, c->count, shares);
    for (size_t i = 0; i < c->count; i++)
        c->spent[i] = sb_add(c->spent[i], shares[i]);
}

static void add_line(costing *c, sb_labour_line line, const int64_t *weights) {
    sb_estimate *e = c->estimate;
    reckon(c, &line);
    line.weights = costing_in_lowest_terms(c, weights);
    SB_PUSH(c->run->pool, e->labour, line);
    e->labour_total = sb_money_add(e->labour_total, line.amount);
    c->micros = sb_add(c->micros, micros_of(c, &line));
    share_line(c, &line);
}

static const char *text_of(const sb_work *work) {
    return work->text ? work->text : "";
}

/* What is learnt is learnt on one kind of piece. */
static bool learnt(const sb_work *work) {
    return work->operation->learning.ppm > 0 && work->piece != SB_BATCH;
}

static bool alike(const sb_work *a, const sb_work *b) {
    return a->operation == b->operation && (a->piece == SB_BATCH) == (b->piece == SB_BATCH) &&
           (!learnt(a) || a->piece == b->piece) && strcmp(text_of(a), text_of(b)) == 0;
}

/* Lines that differ by their kind of piece alone say which it is. */
static const char *text_of_kind(const costing *c, const sb_work *work) {
    const char *text = text_of(work), *kind = c->takeoff->pieces.items[work->piece].title;
    if (c->count < 2)
        return text;
    bool said = *text && strcmp(text, work->operation->title) != 0;
    return said ? sb_pool_print(c->run->pool, "%s, %s", text, kind) : kind;
}

static void learn(const costing *c, const sb_work *work, sb_labour_line *line) {
    line->text = text_of_kind(c, work);
    line->repeated = c->takeoff->pieces.items[work->piece].count;
    line->learned = sb_learned(work->operation->learning, line->repeated);
}

/* Work of one operation for one purpose is one line over all kinds of piece, but for what is learnt. */
static void add_work(costing *c, size_t first) {
    const sb_work *works = c->takeoff->works.items;
    const sb_work *work = &works[first];
    int64_t *weights = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    sb_labour_line line = {
        .operation = work->operation, .text = text_of(work), .place = work->place, .learned = {WHOLE}};
    line.batch = work->piece == SB_BATCH;
    if (learnt(work))
        learn(c, work, &line);
    for (size_t i = first; i < c->takeoff->works.count; i++) {
        if (!alike(work, &works[i]))
            continue;
        line.quantity_milli = sb_add(line.quantity_milli, works[i].quantity_milli);
        if (!line.batch)
            weights[works[i].piece] = sb_add(weights[works[i].piece], works[i].quantity_milli);
    }
    if (line.quantity_milli != 0)
        add_line(c, line, line.batch ? c->busy : weights);
}

static void add_works(costing *c, bool batch) {
    for (size_t i = 0; i < c->takeoff->works.count; i++) {
        const sb_work *work = &c->takeoff->works.items[i];
        bool seen = false;
        for (size_t j = 0; j < i && !seen; j++)
            seen = alike(work, &c->takeoff->works.items[j]);
        if (!seen && (work->piece == SB_BATCH) == batch)
            add_work(c, i);
    }
}

/* In thousandths of the driver's unit. */
static int64_t counted(const sb_plan_counts *counts, sb_driver driver) {
    switch (driver) {
    case SB_BY_BOARD:
        return sb_mul(counts->boards, 1000);
    case SB_BY_CHANGE:
        return sb_mul(counts->changes, 1000);
    case SB_BY_STOP:
        return sb_mul(counts->stops, 1000);
    case SB_BY_CUT:
        return sb_mul(counts->cuts, 1000);
    case SB_BY_RIP: /* metres */
        return sb_mul_div_up(counts->ripped.nm, 1, SB_NM_PER_MM);
    case SB_BY_SHEET:
        return sb_mul(counts->sheets, 1000);
    case SB_BY_FENCE:
        return sb_mul(counts->fences, 1000);
    case SB_BY_RETURN:
        return sb_mul(counts->returns, 1000);
    case SB_BY_SHEET_CUT:
        return sb_mul(counts->sheet_cuts, 1000);
    default:
        return 0;
    }
}

static void add_planned(costing *c) {
    for (sb_driver driver = SB_BY_BOARD; driver <= SB_BY_SHEET_CUT; driver++) {
        const sb_operation *operation = sb_shop_driven(c->shop, driver);
        int64_t quantity =
            driver == SB_BY_HARD_CUT ? costing_hard_cuts(c, NULL) : counted(&c->plan->counts, driver);
        if (!operation || quantity == 0)
            continue;
        sb_labour_line line = {.operation = operation, .text = "", .from_plan = true, .learned = {WHOLE}};
        line.quantity_milli = quantity;
        line.place = operation->place;
        const int64_t *weights = costing_driver_weights(c, driver);
        add_line(c, line, weights ? weights : c->busy);
    }
}

static void set_times(costing *c) {
    sb_estimate *e = c->estimate;
    int64_t *shares = SB_NEW_ARRAY(c->run->pool, int64_t, c->count + 1);
    e->time.ms = sb_mul_div(c->micros, 1, US_PER_MS);
    costing_share(c->run, e->time.ms, c->spent, c->count, shares);
    for (size_t i = 0; i < c->count; i++)
        e->pieces.items[i].time.ms = shares[i];
}

void costing_labour(costing *c) {
    add_works(c, false);
    add_planned(c);
    memcpy(c->busy, c->spent, c->count * sizeof *c->busy);
    add_works(c, true);
    set_times(c);
}
