/* sawbill/costing.h -- from takeoff and plan to money.
 *
 * In this order: material + labour + overhead = cost; cost + contingency = base; price = base / (1 - margin) or base * (1 + markup);
 * less discount; unit price up to the shop's price point; line = count * unit price; + delivery; tax per rate. Amounts are
 * rounded once, where a line is made; lines add up to totals to the minor unit.
 *
 * The job's cost is shared out over its kinds of piece: each material line by what the piece uses of that stock, each
 * labour line by what it causes, batch lines by labour. Shares are whole minor units that add up to the line (largest remainder).
 */
#ifndef SAWBILL_COSTING_H
#define SAWBILL_COSTING_H

#include "sawbill/takeoff.h"

#ifdef __cplusplus
extern "C" {
#endif

typedef enum sb_material_group { SB_MATERIAL_TIMBER, SB_MATERIAL_SHEETS, SB_MATERIAL_FIXINGS, SB_MATERIAL_FINISH, SB_MATERIAL_GLUE,
                                 SB_MATERIAL_OTHER, SB_MATERIAL_EXTRA, SB_MATERIAL_CREDIT /* usable leftovers, negative */ } sb_material_group;

typedef struct sb_material_line {
    sb_material_group group;
    const char *what;          /* "larch 20 x 95, 4200 mm, of Fen Timber" */
    const sb_stock *stock;     /* NULL: an extra */
    const sb_order_line *order;/* NULL: an extra or a credit */
    int64_t quantity_milli;    /* thousandths of a board, sheet, pack; 1000 for an extra. Charged, not bought, with SB_CHARGE_USED */
    sb_cost each;
    sb_money amount;           /* round(quantity * each) */
    sb_place place;            /* the price row, the job line */
} sb_material_line;

typedef struct sb_labour_line {
    const sb_operation *operation;
    const char *text;
    bool from_plan;
    int64_t quantity_milli;    /* of the driver's unit */
    sb_duration time;
    sb_money hour;             /* the worker's rate */
    sb_money amount;           /* round(time * hour) */
    sb_place place;
} sb_labour_line;

typedef struct sb_price_line { /* one kind of piece */
    size_t piece;
    int64_t count;
    sb_money material, labour, overhead, cost, contingency, base;
    sb_money price;            /* with margin or markup, before discount, for all */
    sb_money discount;
    sb_money unit;             /* what the quote shows: net or gross as the shop quotes */
    sb_money line;             /* count * unit */
    sb_money net;              /* of the line, without tax */
    sb_duration time;
} sb_price_line;

typedef struct sb_tax_line { const sb_tax *tax; sb_money base, amount; } sb_tax_line;

typedef struct sb_estimate {
    const sb_shop *shop;
    const sb_job *job;
    const sb_takeoff *takeoff;
    const sb_plan *plan;
    const sb_order *order;
    SB_LIST(sb_material_line) materials;
    SB_LIST(sb_labour_line) labour;
    SB_LIST(sb_price_line) pieces;
    SB_LIST(sb_tax_line) taxes;
    sb_duration time;
    sb_money material_total, labour_total, overhead, cost, contingency, base;
    sb_price_method method;
    sb_share rate;             /* margin or markup as asked for */
    sb_share contingency_rate, discount_rate;
    sb_money price, discount;  /* sums over pieces */
    sb_money rounding;         /* net of the lines less (price - discount): what price points add */
    sb_money pieces_net, delivery, net, tax, gross, deposit;
    sb_share deposit_rate;
    sb_money floor;            /* net price that just pays material, labour, overhead and delivery */
    sb_share margin_left;      /* (net - floor - contingency...) see below: (net - delivery - cost) / (net - delivery) */
    sb_money earned_hour;      /* (net - everything but labour) per hour worked */
    sb_mass mass;              /* of all pieces */
    sb_length boards_length; sb_area sheets_area; /* bought and from the rack */
    sb_share waste;            /* of timber and sheets used up: 1 - finished volume / (taken - usable leftovers) */
    int lead_days;
} sb_estimate;

/* Advice (status 3): a net price under the floor, a price older than the shop's limit at the job's date, an offer without date is silent. */
const sb_estimate *sb_estimate_of(sb_run *run, const sb_shop *shop, const sb_takeoff *takeoff, const sb_cutlist *cutlist,
                                  const sb_plan *plan, const sb_order *order);

/* One way to make a job, worked through to the end. */
typedef struct sb_way {
    const sb_job_option *option; /* NULL: no options */
    const sb_takeoff *takeoff;
    const sb_cutlist *cutlist;
    const sb_plan *plan;
    const sb_order *order;
    const sb_estimate *estimate;
} sb_way;
typedef struct sb_ways { SB_LIST(sb_way) list; } sb_ways; /* in the order of the job file; at least one */
/* `tune` may be NULL: search limits for the planner (seconds, stop_asked, material_only). NULL when there were errors. */
typedef struct sb_tune { double seconds; const volatile int *stop_asked; bool material_only; } sb_tune;
const sb_ways *sb_ways_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job, const sb_tune *tune);

/* Shares `amount` out by weights, in whole minor units that add up to it (largest remainder, earlier first on ties).
 * All weights zero: even shares. */
void sb_share_out(sb_run *run, sb_money amount, const int64_t *weights, size_t count, sb_money *shares);

/* Which order of rounding a tax takes: on the total once, or line by line. */
sb_money sb_tax_of(sb_money net, sb_share rate);
/* The tax inside a gross amount: gross - round(gross / (1 + rate)). */
sb_money sb_tax_inside(sb_money gross, sb_share rate);

#ifdef __cplusplus
}
#endif
#endif
