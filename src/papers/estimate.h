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
    bool named;                                /* its steps have names in the workbook; false: one of several batches */
    SB_LIST(const sb_tax *) taxed;             /* every tax that a line may have */
    size_t stage_row, worker_row, minimum_row; /* of the rates */
    sb_sheet *summary, *rating, *pieces, *inputs, *parts, *lengths, *material, *labour, *stock, *leftovers,
        *sharing, *numbers_sheet;
    sb_table *build, *outcome;                    /* on the summary */
    sb_table *rates;                              /* on a sheet of its own */
    sb_table *materials, *works, *costs, *prices; /* totals in the last row */
    sb_table *taxes;                              /* by rate; totals in the last row */
    sb_table *shared;                             /* shares of the kinds of piece; NULL: there is one kind */
    sb_table *tags;                               /* prices of material, for all numbers of pieces */
    const sb_relation *chosen; /* the number of pieces looked at, of those in `numbers`; NULL: the job's */
    sb_table *numbers;         /* the steps in every number of pieces, side by side */
    size_t hours_row;          /* of the numbers */
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
    COST_PIECE,
    COST_MATERIAL,
    COST_LABOUR,
    COST_OVERHEAD,
    COST_COST,
    COST_CONTINGENCY,
    COST_BASE,
    COST_HOURS
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
/* The rate of a tax; NULL, no tax: the first. */
const sb_relation *tax_rate_cell(const estimate_paper *p, const sb_tax *tax);
bool has_minimum(const estimate_paper *p);

/* Totals of the money columns from `first` to `last`, but of one: the sum of what stands above. */
void estimate_totals(estimate_paper *p, sb_table *table, size_t first, size_t last, size_t but);

/* estimate_share.c: what of an amount is one kind's. `build`: the step that the amount is, for where there is one kind. */
typedef enum sharing {
    SHARE_OVERHEAD,
    SHARE_CONTINGENCY
} sharing;
const sb_relation *share_cell(const estimate_paper *p, sharing what, size_t kind, size_t build);
const sb_relation *material_share(const estimate_paper *p, size_t kind);
const sb_relation *labour_share(const estimate_paper *p, size_t kind);
void estimate_shared_start(estimate_paper *p); /* the table, which others mean before it is filled */
void estimate_shared(estimate_paper *p);

/* estimate_numbers.c: the job in several numbers of pieces. */
void estimate_choice(estimate_paper *p, const sb_breaks *breaks);
void estimate_numbers(estimate_paper *p, sb_document *document, const sb_breaks *breaks);
/* What stands below the chosen number of pieces in a row of `numbers`. */
const sb_relation *chosen_cell(const estimate_paper *p, size_t row);
enum { /* rows of `numbers`: the number of pieces, then the steps */
    NUMBER_PIECES,
    NUMBER_STEPS
};

void estimate_rates(estimate_paper *p);
void estimate_total(estimate_paper *p); /* what the total is made of */
void estimate_says_charge(const estimate_paper *p, sb_sheet *sheet); /* which material is charged */
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
