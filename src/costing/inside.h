/* costing/inside.h -- what the files of this room share while one estimate is made. */
#ifndef SAWBILL_COSTING_INSIDE_H
#define SAWBILL_COSTING_INSIDE_H

#include "sawbill/costing.h"

/* "What if one figure were another": read wherever that figure is. */
typedef enum costing_figure {
    FIGURE_NONE,
    FIGURE_TIME,  /* of an operation */
    FIGURE_HOUR,  /* of a worker */
    FIGURE_STOCK, /* prices of a stock, and what its leftovers are credited */
    FIGURE_EXTRA, /* of the job */
    FIGURE_OVERHEAD,
    FIGURE_CONTINGENCY,
    FIGURE_PROFIT,
    FIGURE_DISCOUNT,
    FIGURE_DELIVERY
} costing_figure;
typedef struct costing_change {
    costing_figure figure;
    const void *of; /* the operation, worker, stock or extra */
    int64_t ppm;    /* of what it is */
} costing_change;

typedef struct costing {
    sb_run *run;
    const sb_shop *shop;
    const sb_job *job;
    const sb_takeoff *takeoff;
    const sb_cutlist *cutlist;
    const sb_plan *plan;
    const sb_order *order;
    sb_estimate *estimate;
    costing_change change;
    size_t count;   /* kinds of piece */
    int64_t micros; /* the whole time in microseconds: exact, for overhead by the hour */
    int64_t *spent; /* [count] each kind's part of it */
    int64_t *busy;  /* [count] the same before what is for the batch, which is shared by it */
} costing;

/* estimate.c: the value, changed if it is the figure that is asked about. */
int64_t costing_changed(const costing *c, costing_figure figure, const void *of, int64_t value);
/* The estimate with one figure changed; amounts out of range are left for whoever reads it. */
const sb_estimate *costing_estimate_with(sb_run *run, const sb_estimate *as_it_is, const sb_cutlist *cutlist,
                                         costing_change change);

/* share.c: the same as sb_share_out, on bare numbers. */
void costing_share(sb_run *run, int64_t amount, const int64_t *weights, size_t count, int64_t *shares);

/* Weights by which a line is shared out: in lowest terms, and no finer than a spreadsheet can follow to the last
 * figure (its numbers have 53 bits, an amount times a weight must fit). All even where there are none, or `weights` is
 * NULL. */
const int64_t *costing_in_lowest_terms(const costing *c, const int64_t *weights);

/* power.c: base^exponent, base >= 0, the same to the last bit on every machine. */
double costing_power(double base, double exponent);

/* weights.c: [count] weights; NULL when no kind of piece has any. */
const int64_t *costing_stock_weights(const costing *c, const sb_stock *stock);
const int64_t *costing_driver_weights(const costing *c, sb_driver driver);
/* Cuts past the limits of the saw, in thousandths; their number by kind of piece is added to weights[count], unless NULL. */
int64_t costing_hard_cuts(const costing *c, int64_t *weights);

/* left.c: what the plan leaves over, and which supply of the plan belongs to an order line. */
bool costing_is_of(const costing *c, size_t supply, const sb_order_line *line);
/* Usable leftovers of one stock: their number, length (boards) or area (sheets), and value by the shop's
 * rule. */
typedef struct costing_left {
    int64_t count;
    sb_length length;
    sb_area area;
    sb_cost value;
} costing_left;
costing_left costing_left_of(const costing *c, const sb_stock *stock);

/* charge.c: what of an order line is charged, in thousandths. */
int64_t costing_charged(const costing *c, const sb_order_line *line);

/* sets.c: the job is `own` sets of so many pieces; the same job in another number of them. */
typedef struct costing_sets {
    int64_t own, pieces;
} costing_sets;
costing_sets costing_sets_of(const sb_job *job);
const sb_job *costing_job_of_sets(sb_pool *pool, const sb_job *of, costing_sets sets, int64_t times);
/* How many sets the job's breaks ask for, else the shop's. */
const sb_counts *costing_break_sizes(const sb_shop *shop, const sb_job *job);

/* In this order, each filling its part of the estimate. */
void costing_labour(costing *c);
void costing_materials(costing *c);
void costing_prices(costing *c);
void costing_delivery(costing *c); /* before the lines are closed */
void costing_close(costing *c);    /* minimum, net, tax by rate, gross */
void costing_payments(costing *c); /* deposit, stages, rest */
void costing_measures(costing *c); /* lengths, areas, waste, mass, lead time */
void costing_advise(const costing *c);

#endif
