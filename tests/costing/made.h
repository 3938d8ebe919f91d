/* A workshop, a takeoff and a cutting plan put together by hand, so that money can be tested without recipes and planner. */
#ifndef TESTS_COSTING_MADE_H
#define TESTS_COSTING_MADE_H

#include "sawbill/costing.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include <cmocka.h>

typedef struct made {
    sb_run run;
    sb_shop shop;
    sb_job job;
    sb_takeoff takeoff;
    sb_cutlist cutlist;
    sb_plan plan;
    sb_order order;
} made;

/* ---- the shop ---------------------------------------------------------------------------------------------- */

static inline sb_stock *made_stock(made *m, const char *id, const char *title, sb_stock_kind kind) {
    sb_stock *stock = SB_NEW(m->run.pool, sb_stock);
    *stock = (sb_stock){.id = id, .title = title, .material = "wood", .kind = kind};
    stock->thickness = SB_MM(20);
    stock->width = kind == SB_STOCK_SHEET ? SB_MM(1220) : SB_MM(95);
    SB_PUSH(m->run.pool, m->shop.stock, stock);
    return stock;
}

/* One offer of the stock: a board of `mm`, or a pack when mm is 0. `each` in thousandths of the minor unit. */
static inline const sb_offer *made_offer(made *m, sb_stock *stock, int64_t mm, int64_t pack, int64_t each) {
    sb_offer *old = stock->offers.items;
    assert_null(old); /* one each: pointers to it must stay */
    sb_offer offer = {.merchant = "Fen Timber",
                      .sold = "",
                      .length = SB_MM(mm),
                      .pack = pack,
                      .each = {each},
                      .available = -1};
    SB_PUSH(m->run.pool, stock->offers, offer);
    return &stock->offers.items[0];
}

static inline const sb_operation *made_operation(made *m, const char *id, const char *title, sb_driver driver,
                                                 int64_t ms) {
    sb_operation operation = {.id = id, .title = title, .driver = driver, .time = {ms}};
    operation.worker = &m->shop.settings.workers.items[0];
    if (m->shop.operations.count == 0) /* room for all, so that pointers stay */
        m->shop.operations.items = SB_NEW_ARRAY(m->run.pool, sb_operation, m->shop.operations.capacity = 32);
    assert_true(m->shop.operations.count < 32);
    SB_PUSH(m->run.pool, m->shop.operations, operation);
    return &m->shop.operations.items[m->shop.operations.count - 1];
}

static inline made *made_new(int64_t hour_minor) {
    made *m = test_calloc(1, sizeof *m);
    m->run = sb_run_new();
    sb_settings *s = &m->shop.settings;
    s->name = "Alder Row Workshop";
    s->contact = "hello@alderrow.example";
    s->language = "en";
    s->currency = (sb_currency){"EUR", 2};
    s->style = (sb_style){SB_UNITS_MM, SB_MM(1), false};
    s->leftover_length = SB_MM(600);
    s->charge = SB_CHARGE_BOUGHT;
    SB_PUSH(m->run.pool, s->workers, ((sb_worker){.id = "joiner", .hour = {hour_minor}}));
    m->job = (sb_job){.name = "orchard", .customer = "Quince House", .date = {2026, 3, 2}, .use_rack = true};
    m->takeoff.shop = &m->shop;
    m->takeoff.job = &m->job;
    m->plan.problem = &m->cutlist.problem;
    return m;
}

static inline void made_free(made *m) {
    sb_run_free(&m->run);
    test_free(m);
}

static inline void made_tax(made *m, int64_t ppm) {
    SB_PUSH(m->run.pool, m->shop.settings.taxes, ((sb_tax){.id = "vat", .title = "VAT", .rate = {ppm}}));
}

/* ---- what is made ---------------------------------------------------------------------------------------------- */

static inline size_t made_piece(made *m, const char *title, int64_t count) {
    sb_takeoff_piece piece = {
        .title = title, .size_text = "1200 x 400 mm", .size = {SB_MM(1200), SB_MM(400)}, .size_count = 2, .count = count, .mass = {4000000}};
    SB_PUSH(m->run.pool, m->takeoff.pieces, piece);
    return m->takeoff.pieces.count - 1;
}

static inline void made_part(made *m, size_t piece, const sb_stock *stock, int64_t blanks, int64_t mm) {
    sb_part part = {.piece = piece, .name = "slat", .title = "Slat", .path = "", .stock = stock};
    part.per_piece = part.count = part.blanks = blanks;
    part.length = part.cut_length = SB_MM(mm);
    part.width = stock->width;
    part.thickness = stock->thickness;
    if (stock->kind == SB_STOCK_SHEET)
        part.width = part.cut_width = SB_MM(300);
    SB_PUSH(m->run.pool, m->takeoff.parts, part);
}

static inline void made_usage(made *m, size_t piece, const sb_stock *stock, int64_t amount) {
    SB_PUSH(m->run.pool, m->takeoff.usages, ((sb_usage){.piece = piece, .stock = stock, .amount = amount}));
}

static inline void made_work(made *m, size_t piece, const sb_operation *operation, int64_t milli,
                             const char *text) {
    sb_work work = {.piece = piece, .operation = operation, .quantity_milli = milli, .text = text};
    SB_PUSH(m->run.pool, m->takeoff.works, work);
}

/* ---- what is bought ---------------------------------------------------------------------------------------------- */

static inline void made_order(made *m, const sb_stock *stock, int64_t count, int64_t needed) {
    const sb_offer *offer = &stock->offers.items[0];
    sb_order_line line = {
        .merchant = offer->merchant, .stock = stock, .offer = offer, .count = count, .needed = needed};
    line.each = offer->each;
    line.amount = sb_cost_money((sb_cost){sb_mul(offer->each.milli, count)});
    SB_PUSH(m->run.pool, m->order.lines, line);
    m->order.total = sb_money_add(m->order.total, line.amount);
}

/* Boards of a stock's only offer, each with the same leftover. */
static inline void made_boards(made *m, const sb_stock *stock, int64_t count, int64_t left_mm) {
    const sb_offer *offer = &stock->offers.items[0];
    struct sb_supply_source source = {.offer = offer, .stock = stock};
    SB_PUSH(m->run.pool, m->cutlist.supplies, source);
    sb_supply supply = {
        .stock = m->cutlist.problem.stock.count, .length = offer->length, .price = offer->each};
    supply.available = -1;
    supply.label = "";
    supply.tag = m->cutlist.supplies.count - 1;
    SB_PUSH(m->run.pool, m->cutlist.problem.stock, ((sb_cut_stock){.name = stock->id}));
    SB_PUSH(m->run.pool, m->cutlist.problem.supplies, supply);
    sb_board_plan board = {
        .supply = m->cutlist.problem.supplies.count - 1, .count = count, .leftover = SB_MM(left_mm)};
    SB_PUSH(m->run.pool, m->plan.boards, board);
    m->plan.counts.boards += count;
    m->plan.material.milli += offer->each.milli * count;
    sb_cost left = sb_shop_leftover_value(&m->shop, stock, SB_MM(left_mm), (sb_length){0});
    m->plan.leftovers.milli += left.milli * count;
    m->plan.cost.milli = m->plan.material.milli - m->plan.leftovers.milli;
}

static inline const sb_estimate *made_estimate(made *m) {
    return sb_estimate_of(&m->run, &m->shop, &m->takeoff, &m->cutlist, &m->plan, &m->order);
}

/* ---- chance, the same every time ----------------------------------------------------------------------------------- */

typedef struct chance {
    uint64_t state;
} chance;

static inline uint64_t chance_next(chance *c) {
    c->state ^= c->state << 13;
    c->state ^= c->state >> 7;
    c->state ^= c->state << 17;
    return c->state;
}

static inline int64_t chance_from(chance *c, int64_t low, int64_t high) {
    return low + (int64_t)(chance_next(c) % (uint64_t)(high - low + 1));
}

/* A second and third tax, a minimum, price points like 9.95, stages of payment, delivery by the trip. */
static inline void made_terms_by_chance(made *m, chance *c) {
    sb_settings *s = &m->shop.settings;
    if (chance_from(c, 0, 2) == 0 && s->taxes.count)
        SB_PUSH(m->run.pool, s->taxes,
                ((sb_tax){.id = "low", .title = "VAT", .rate = {chance_from(c, 0, 120) * 1000}}));
    if (chance_from(c, 0, 3) == 0 && s->taxes.count)
        SB_PUSH(m->run.pool, s->taxes, ((sb_tax){.id = "none", .title = "No VAT"}));
    if (s->taxes.count && chance_from(c, 0, 1))
        m->job.delivery_tax = s->taxes.items[chance_from(c, 0, (int64_t)s->taxes.count - 1)].id;
    if (chance_from(c, 0, 2) == 0)
        s->minimum.minor = chance_from(c, 1, 200000);
    if (s->price_point.minor > 0 && chance_from(c, 0, 1))
        s->point_less.minor = chance_from(c, 0, s->price_point.minor - 1);
    for (int64_t i = chance_from(c, 0, 3); i > 0; i--)
        SB_PUSH(m->run.pool, s->stages, ((sb_stage_share){{chance_from(c, 1, 233333)}, "as it grows", {0}}));
    s->delivery_trip.minor = chance_from(c, 1, 9000);
    if (m->job.delivery.given && chance_from(c, 0, 1)) {
        m->job.delivery_by = SB_DELIVERY_TRIPS;
        m->job.delivery.micro = chance_from(c, 1, 5000) * 1000;
    }
}

/* A job of one to four kinds of piece in a shop with settings of all sorts. */
static inline made *made_by_chance(chance *c) {
    made *m = made_new(chance_from(c, 0, 6000));
    sb_settings *s = &m->shop.settings;
    if (chance_from(c, 0, 1))
        s->overhead_hour.minor = chance_from(c, 0, 2500);
    else
        s->overhead_labour.ppm = chance_from(c, 0, 900000);
    s->contingency.ppm = chance_from(c, 0, 20) * 5000;
    s->method = chance_from(c, 0, 1) ? SB_MARGIN_ON_PRICE : SB_MARKUP_ON_COST;
    s->margin.ppm = chance_from(c, 0, 80) * 10000;
    s->charge = (sb_material_policy)chance_from(c, 0, 2);
    s->leftover_value.ppm = 500000;
    s->price_point.minor = chance_from(c, 0, 3) * 25;
    s->prices_gross = chance_from(c, 0, 1);
    s->tax_per_line = chance_from(c, 0, 1);
    s->deposit.ppm = chance_from(c, 0, 1) * 300000;
    s->week.ms = 3600000 * 30;
    if (chance_from(c, 0, 4))
        made_tax(m, chance_from(c, 0, 250) * 1000);
    if (chance_from(c, 0, 2) == 0) {
        m->job.discount = (sb_job_share){.share = {chance_from(c, 1, 30) * 10000}, .given = true};
    }
    if (chance_from(c, 0, 1))
        m->job.delivery = (sb_job_amount){.micro = chance_from(c, 1, 20000) * 10000, .given = true};
    if (chance_from(c, 0, 2) == 0) {
        sb_job_amount extra = {.micro = chance_from(c, 1, 9000) * 10000, .given = true, .text = "Crane"};
        SB_PUSH(m->run.pool, m->job.extras, extra);
    }
    made_terms_by_chance(m, c);
    sb_stock *larch = made_stock(m, "larch-20x95", "Larch 20 x 95", SB_STOCK_BOARD);
    sb_stock *screw = made_stock(m, "screw-5x60", "Screw 5 x 60", SB_STOCK_FIXING);
    sb_stock *oil = made_stock(m, "oil-clear", "Clear oil", SB_STOCK_FINISH);
    made_offer(m, larch, 4000, 1, chance_from(c, 1, 30000) * 100);
    made_offer(m, screw, 0, 200, chance_from(c, 1, 3000) * 1000);
    made_offer(m, oil, 0, 2500, chance_from(c, 1, 9000) * 1000);
    const sb_operation *assemble =
        made_operation(m, "assemble", "Assemble", SB_BY_JOINT, chance_from(c, 1, 400000));
    if (chance_from(c, 0, 2) == 0)
        m->shop.operations.items[0].learning.ppm = chance_from(c, 500, 1000) * 1000;
    const sb_operation *office =
        made_operation(m, "office", "Office work", SB_BY_BATCH, 60000 * chance_from(c, 0, 90));
    made_operation(m, "take", "Take a board", SB_BY_BOARD, 1000 * chance_from(c, 1, 300));
    made_operation(m, "saw", "Crosscut", SB_BY_CUT, chance_from(c, 1, 90000));
    size_t kinds = (size_t)chance_from(c, 1, 4);
    int64_t screws = 0, boards = 0;
    for (size_t i = 0; i < kinds; i++) {
        int64_t count = chance_from(c, 1, 20), blanks = count * chance_from(c, 1, 12),
                used = count * chance_from(c, 1, 40);
        size_t piece = made_piece(m, "Trough", count);
        sb_job_piece *source = SB_NEW(m->run.pool, sb_job_piece);
        *source = (sb_job_piece){.name = "trough", .count = count};
        if (s->taxes.count && chance_from(c, 0, 1))
            source->tax = s->taxes.items[chance_from(c, 0, (int64_t)s->taxes.count - 1)].id;
        m->takeoff.pieces.items[piece].source = source;
        made_part(m, piece, larch, blanks, chance_from(c, 200, 1900));
        made_usage(m, piece, screw, used);
        made_work(m, piece, assemble, count * chance_from(c, 500, 9000), "Assemble");
        screws += used;
        boards += blanks / 2 + 1;
        m->plan.counts.cuts += blanks + 2;
    }
    made_usage(m, SB_BATCH, oil, 700);
    made_work(m, SB_BATCH, office, 1000, "Office work");
    made_boards(m, larch, boards, chance_from(c, 0, 1) * chance_from(c, 600, 1500));
    made_order(m, larch, boards, boards);
    made_order(m, screw, (screws + 199) / 200, screws);
    made_order(m, oil, 1, 700);
    return m;
}

#endif
