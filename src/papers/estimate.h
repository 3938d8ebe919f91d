/* papers/estimate.h -- the shop's paper, made by several files: one subject, one sheet, one file.
 *
 * Percentages and rates are cells of their own; every amount is a formula of them and of the lines, so that a
 * changed rate runs through to the total. Rows of the steps, of what they leave and of the rates are known by name.
 */
#ifndef SAWBILL_PAPERS_ESTIMATE_H
#define SAWBILL_PAPERS_ESTIMATE_H

#include "papers/relate.h"
#include "sawbill/papers.h"

/* Rows of "From cost to price", its amounts in column BUILD_AMOUNT. */
enum {
    BUILD_MATERIAL,
    BUILD_LABOUR,
    BUILD_OVERHEAD,
    BUILD_COST,
    BUILD_CONTINGENCY,
    BUILD_BASE,
    BUILD_PRICE,
    BUILD_DISCOUNT,
    BUILD_ROUNDING,
    BUILD_PIECES,
    BUILD_SUPPLEMENT, /* where there is a minimum */
    BUILD_DELIVERY,
    BUILD_NET,
    BUILD_TAX,
    BUILD_GROSS,
    BUILD_DEPOSIT
};
enum {
    BUILD_STEP,
    BUILD_HOW,
    BUILD_SHARE,
    BUILD_AMOUNT
};

/* Rows of "Rates", their values in column RATE_VALUE; taxes, stages, workers' hourly rates and the minimum follow. */
enum {
    RATE_OVERHEAD,
    RATE_CONTINGENCY,
    RATE_PROFIT,
    RATE_DISCOUNT,
    RATE_POINT,
    RATE_POINT_LESS,
    RATE_DELIVERY_EACH,
    RATE_DELIVERY_COUNT,
    RATE_DEPOSIT,
    RATE_TAX
};
enum {
    RATE_NAME,
    RATE_OF,
    RATE_VALUE
};

typedef struct estimate_paper {
    sb_run *run;
    const sb_shop *shop;
    const sb_job *job;
    const sb_way *way;
    const sb_estimate *e;
    int digits; /* of the currency's minor unit */
    bool by_line, gross, by_hour;
    size_t stage_row, worker_row, minimum_row; /* of the rates */
    sb_sheet *summary, *rating, *pieces, *inputs, *parts, *lengths, *material, *labour, *stock, *leftovers;
    sb_table *build, *outcome;                             /* on the summary */
    sb_table *rates;                                       /* on a sheet of its own */
    sb_table *materials, *works, *shares, *costs, *prices; /* totals in the last row */
    sb_table *taxes;                                       /* by rate; totals in the last row */
} estimate_paper;

/* Columns that others mean. */
enum {
    MATERIAL_AMOUNT = 4
};
enum {
    WORK_HOURS = 5,
    WORK_AMOUNT = 7
};
enum {
    PRICE_PIECE,
    PRICE_COUNT,
    PRICE_PRICE,
    PRICE_DISCOUNT,
    PRICE_UNIT,
    PRICE_LINE,
    PRICE_NET,
    PRICE_TAX /* by line */
};
enum {
    TAX_TITLE,
    TAX_RATE,
    TAX_NET,
    TAX_AMOUNT,
    TAX_GROSS
};

const sb_relation *build_cell(const estimate_paper *p, size_t row);
const sb_relation *rate_cell(const estimate_paper *p, size_t row);
const sb_relation *total_cell(const estimate_paper *p, const sb_table *table, size_t column); /* last row */

/* The taxes of the job's lines, at least one; without any, one of nothing. */
size_t tax_count(const estimate_paper *p);
size_t tax_index(const estimate_paper *p, const sb_tax *tax);
bool has_minimum(const estimate_paper *p);

/* Totals of the money columns from `first` to `last`, but of one: the sum of what stands above. */
void estimate_totals(estimate_paper *p, sb_table *table, size_t first, size_t last, size_t but);

void estimate_rates(estimate_paper *p);
void estimate_material(estimate_paper *p);
void estimate_labour(estimate_paper *p);
void estimate_build(estimate_paper *p);
void estimate_pieces(estimate_paper *p);
void estimate_prices(estimate_paper *p); /* on the sheet Pieces: prices, tax by rate */
void estimate_inputs(estimate_paper *p);
void estimate_outcome(estimate_paper *p);
void estimate_parts(estimate_paper *p);
void estimate_lengths(estimate_paper *p);
void estimate_stock(estimate_paper *p);
void estimate_leftovers(estimate_paper *p);
void estimate_risk(estimate_paper *p, sb_sheet *sheet);
void estimate_sensitivity(estimate_paper *p, sb_sheet *sheet);

/* comparison.c: the options side by side, on any sheet. */
/* The first heading, then a column of figures for each option. */
const char *comparison_headings(sb_run *run, const char *first, const sb_ways *ways);
void comparison_fill(sb_run *run, const sb_shop *shop, sb_sheet *sheet, const sb_ways *ways);

#endif
