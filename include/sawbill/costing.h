/* sawbill/costing.h -- from takeoff and plan to money.
 *
 * In this order, every amount rounded once to the minor unit, half away from zero, where it is made:
 *   material line    round(quantity * each)
 *   labour line      round(quantity * time of one * hourly rate)
 *   overhead         round(hours * rate), or round(labour * share)
 *   cost             material + labour + overhead
 *   contingency      round(cost * share)                        base = cost + contingency
 *   price            per kind of piece: round(base / (1 - margin)) or round(base * (1 + markup))
 *   discount         per kind of piece: round(price * share)
 *   unit             (price - discount) / count, with tax when the shop quotes gross, UP to the price point
 *   line             count * unit
 *   supplement       what the lines lack to the shop's minimum, as the quote shows prices
 *   delivery         round(each * how many)
 *   tax              by rate: each line has one; on the sum of each rate's lines or line by line; inside it when the shop quotes gross
 *   gross            net + tax                                  deposit = round(gross * share)
 *   stages           round(gross * (shares up to here)) - what was due before: they and the rest add up to gross
 * Lines add up to totals to the minor unit.
 *
 * The job's cost is shared out over its kinds of piece: a material line by what each uses of that stock, a labour line by what
 * each causes, lines for the batch by labour time; overhead as labour is, contingency by cost. Shares are whole minor units that
 * add up to the line (largest remainder).
 */
#ifndef SAWBILL_COSTING_H
#define SAWBILL_COSTING_H

#include "sawbill/takeoff.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* Lines come in this order. */
typedef enum sb_material_group {
    SB_MATERIAL_TIMBER,
    SB_MATERIAL_SHEETS,
    SB_MATERIAL_FIXINGS,
    SB_MATERIAL_FINISH,
    SB_MATERIAL_GLUE,
    SB_MATERIAL_OTHER,
    SB_MATERIAL_EXTRA, /* of the job */
    SB_MATERIAL_CREDIT /* usable leftovers, negative */
} sb_material_group;
const char *sb_material_group_word(sb_material_group group); /* timber sheets fixings finish glue other extra credit */

/* What the line of something bought says: "Larch 20 x 95, 4200 mm, of Fen Timber". `lot`: how much is bought of timber by volume. */
const char *sb_offer_words(sb_run *run, const sb_shop *shop, const sb_stock *stock, const sb_offer *offer, int64_t lot);

typedef struct sb_material_line {
    sb_material_group group;
    const char *what;           /* "Larch 20 x 95, 4200 mm, of Fen Timber" */
    const sb_stock *stock;      /* NULL: an extra */
    const sb_order_line *order; /* NULL: an extra or a credit */
    int64_t quantity_milli;     /* thousandths of a board, sheet, pack, m3; 1000 for an extra or a credit. What is charged: less
                                   than what is bought under SB_CHARGE_USED */
    sb_cost each;
    sb_money amount; /* round(quantity * each) */
    const int64_t *weights; /* by kind of piece: how the amount is shared out; their sum stays below 2^27 */
    sb_place place;  /* the price row, the job line */
} sb_material_line;

/* Where the timber and sheets of one stock go, by volume in mm3. Used up is taken less kept, waste what is in no part and no
 * spare; `kept` are usable leftovers and strips. */
typedef struct sb_wood {
    const sb_stock *stock;
    int64_t taken, kept, parts, spare;
} sb_wood;

typedef struct sb_labour_line {
    const sb_operation *operation;
    const char *text; /* what for, "" when nothing was said */
    bool from_plan;   /* counted from the cutting plan */
    bool batch;       /* once for the batch */
    int64_t quantity_milli; /* of the driver's unit */
    sb_share learned;       /* the average time as a share of the first one's: 1 000 000 where nothing is learnt */
    int64_t repeated;       /* pieces it is learnt on */
    sb_duration time;       /* quantity * operation->time * learned, to the nearest ms */
    sb_money hour;          /* the worker's rate */
    sb_money amount;        /* round(quantity * operation->time * hour): the time is not rounded in between */
    const int64_t *weights; /* as above */
    sb_place place;
} sb_labour_line;

typedef struct sb_price_line { /* one kind of piece, all of them together unless it says otherwise */
    size_t piece;              /* into takeoff.pieces */
    int64_t count;
    sb_money material, labour, overhead; /* shares of the job's */
    sb_money cost;                       /* material + labour + overhead */
    sb_money contingency;                /* share of the job's */
    sb_money base;                       /* cost + contingency */
    sb_money price;                      /* with margin or markup, before discount */
    sb_money discount;
    sb_money unit; /* of one: what the quote shows, net or gross as the shop quotes */
    sb_money line; /* count * unit */
    sb_money net;  /* of the line, without tax */
    const sb_tax *tax; /* NULL: none */
    sb_duration time;
} sb_price_line;

typedef struct sb_tax_line {
    const sb_tax *tax;
    sb_money base, amount;
} sb_tax_line;

typedef struct sb_stage {
    sb_share share;
    const char *text;
    sb_money amount;
    sb_place place;
} sb_stage;

typedef struct sb_estimate {
    const sb_shop *shop;
    const sb_job *job;
    const sb_takeoff *takeoff;
    const sb_plan *plan;
    const sb_order *order;
    SB_LIST(sb_material_line) materials; /* by group */
    SB_LIST(sb_labour_line) labour;      /* recipes' work, the plan's, the batch's */
    SB_LIST(sb_price_line) pieces;       /* as in takeoff.pieces */
    SB_LIST(sb_tax_line) taxes;          /* by rate, as the lines first name them; none without a tax */
    SB_LIST(sb_stage) stages;            /* payments between deposit and rest */
    sb_duration time;                    /* of all labour, to the nearest ms */
    sb_money material_total, labour_total, overhead;
    const int64_t *overhead_weights; /* by the hours of each kind of piece; NULL: by its labour cost */
    sb_money cost;        /* material + labour + overhead */
    sb_money contingency; /* contingency_rate of cost */
    sb_money base;        /* cost + contingency */
    sb_price_method method;
    sb_share rate; /* margin (of price) or markup (on base) as asked for */
    sb_share contingency_rate, discount_rate, deposit_rate;
    sb_money price, discount; /* sums over pieces */
    sb_money rounding;        /* pieces_net - (price - discount): what price points add */
    sb_money pieces_net;      /* sum of the lines' net; quoted gross: net - delivery - supplement */
    sb_money minimum;         /* of the pieces' lines; 0: none */
    sb_money supplement_line; /* what they lack to it, as the quote shows it */
    sb_money supplement;      /* net */
    sb_money delivery;        /* net: each * number, rounded once */
    sb_money delivery_each;   /* as the job says, or for a zone, a trip, a km, a mile */
    int64_t delivery_milli;   /* how many of them, in thousandths */
    sb_money delivery_line;   /* as the quote shows it: with tax when the shop quotes gross */
    const sb_tax *job_tax, *delivery_tax; /* the job's is that of the supplement; NULL: none */
    sb_money net, tax, gross; /* pieces_net + supplement + delivery; its tax; both */
    sb_money deposit;         /* deposit_rate of gross */
    sb_money rest;            /* gross - deposit - stages */
    sb_money floor;           /* cost + delivery: the net price that just pays material, labour, overhead and delivery */
    sb_money left;            /* pieces_net + supplement - base: what is left after discount and rounding */
    sb_share margin_left;     /* left / (pieces_net + supplement): equals the margin asked for when there is neither discount nor rounding */
    sb_share markup_left;     /* left / base: the same money as a share of cost with contingency */
    sb_money earned_hour;     /* (net - material - overhead - delivery) / hours; 0 without hours. Contingency counts as earned */
    sb_mass mass;             /* of all pieces, wood only; 0 when one is not known */
    sb_length boards_length;  /* boards taken, bought and from the rack */
    sb_area sheets_area;      /* sheets taken */
    sb_share waste, spare;    /* of timber and sheets used up, by volume: taken less usable leftovers and strips to keep. Spare is
                                 for defects, as it is planned; waste is in no piece and no spare */
    SB_LIST(sb_wood) wood;    /* that these shares are of, by stock */
    sb_duration drying;       /* waiting for coats to dry: no labour */
    int lead_days;            /* lead_days + ceil(time / week * 7 + drying, in days); -1 when the shop does not tell its week */
} sb_estimate;

/* Errors: a margin of 100 % or more, a discount beyond 100 %, a tax or zone nobody knows, a delivery by what the shop has no price for,
 * deposit and stages beyond the total, amounts out of range.
 * Advice (status 3): a net price under the floor; a discount that leaves less than the base; prices older than the shop allows at
 * the job's date, or dated after it. An offer without a date is silent. NULL only when an argument is. */
const sb_estimate *sb_estimate_of(sb_run *run, const sb_shop *shop, const sb_takeoff *takeoff, const sb_cutlist *cutlist,
                                  const sb_plan *plan, const sb_order *order);

/* ---- how sure it is, and what moves it ---------------------------------------------------------------------------- */

typedef enum sb_risk_kind {
    SB_RISK_TIME,     /* of an operation's unit, in ms */
    SB_RISK_QUANTITY, /* that a recipe's line tells, in thousandths of the operation's unit */
    SB_RISK_PRICE     /* of one board, sheet, pack, m3, in thousandths of the minor unit */
} sb_risk_kind;
typedef struct sb_risk_input {
    sb_risk_kind kind;
    const char *what;
    const sb_operation *operation; /* NULL: a price */
    int64_t least, likely, most;
    sb_money low, high; /* the cost with this alone at its least and at its most, less the cost */
    size_t source;      /* inputs of one source are drawn as one: all prices of a stock, a recipe line in every piece */
    sb_place place;
} sb_risk_input;

/* The cost when times, quantities and prices that are told as ranges are drawn from them: draws[k] = cost of the k-th draw. All else stays
 * as it is: plan, what leftovers are credited, all that is sure. */
typedef struct sb_risk {
    SB_LIST(sb_risk_input) inputs;
    size_t sources;
    int64_t draws; /* 20 000 */
    sb_money mean; /* of all draws */
    sb_money cost10, cost50, cost80, cost90; /* so many per cent of the draws cost at most this */
    sb_share loses;      /* share of the draws that cost more, with delivery, than the net price */
    sb_share confidence; /* as the job or the shop says; else 90 % */
    sb_money price;      /* the net price that pays cost and delivery in that share of the draws */
} sb_risk;
/* NULL when nothing is told as a range. */
const sb_risk *sb_risk_of(sb_run *run, const sb_estimate *estimate);
/* The cost of every draw, in their order; `draws` long. */
const sb_money *sb_risk_costs(sb_run *run, const sb_estimate *estimate, int64_t draws);

/* What the price becomes when one figure alone is a tenth more or less, the cutting plan held: the ten that move it most. The price is net,
 * with discount and delivery, before price points and minimum, which would hide small moves. */
typedef struct sb_mover {
    const char *what; /* "Time of Sand", "Price of Larch slat 20 x 95", "Margin" */
    sb_money more, less; /* the price at 110 % and at 90 % of the figure, less the price; minor SB_BAD: there is none */
    sb_place place;
} sb_mover;
typedef struct sb_sensitivity {
    sb_money price; /* as it is */
    SB_LIST(sb_mover) movers; /* the largest first, at most ten */
} sb_sensitivity;
const sb_sensitivity *sb_sensitivity_of(sb_run *run, const sb_estimate *estimate, const sb_cutlist *cutlist);

/* One way to make a job, worked through to the end. */
typedef struct sb_way {
    const sb_job_option *option; /* NULL: no options */
    const sb_takeoff *takeoff;
    const sb_cutlist *cutlist;
    const sb_plan *plan;
    const sb_order *order;
    const sb_estimate *estimate;
    const sb_risk *risk; /* NULL: nothing is told as a range */
    const sb_sensitivity *sensitivity;
} sb_way;
typedef struct sb_ways {
    SB_LIST(sb_way) list; /* in the order of the job file; at least one */
} sb_ways;
/* Search limits for the planner. The seconds are for all options together, a like share each. */
typedef struct sb_tune {
    double seconds;
    const sb_watch *watch;
    bool material_only;
    bool price_alone; /* neither risk nor sensitivity are asked for */
} sb_tune;
/* The job's tax, the shop's default without one; NULL when there is none, after an error when the job's is unknown. */
const sb_tax *sb_job_tax(sb_run *run, const sb_shop *shop, const sb_job *job);
/* Errors for every tax and zone a job names that the shop does not know, for a delivery it has no price for, and for amounts finer than the
 * currency's minor unit. `sb_ways_of` does it too. */
void sb_job_look_over(sb_run *run, const sb_shop *shop, const sb_job *job);

/* `tune` may be NULL. NULL when there were errors; those of all options are told. */
const sb_ways *sb_ways_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job, const sb_tune *tune);

/* The job's options in batches of the sizes that its breaks ask for, else the shop's, else of several; its pieces in the same
 * proportion: which of them is the cheapest, and from which size on another one is. Each size is planned and priced in full, like a
 * job of its own. */
typedef struct sb_batch {
    int64_t pieces;
    SB_LIST(sb_money) nets; /* by option */
    size_t cheapest;        /* the first of those that cost least */
} sb_batch;
typedef struct sb_batches {
    SB_LIST(sb_batch) list; /* by size; a change of the cheapest stands between neighbouring sizes */
} sb_batches;
const sb_batches *sb_batches_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                                const sb_tune *tune);

/* Quantity breaks: the job beside batches of it in the sizes that the job, else the shop, asks for. A size counts sets: the
 * fewest pieces in the job's proportion, one where there is one kind of piece. `own`: the job itself, always among them.
 * A size that cannot be made, for want of stock say, is left out with advice. `own` of the call: the job's own ways. */
typedef struct sb_break {
    int64_t sets, pieces;
    const sb_job *job;
    const sb_ways *ways;
} sb_break;
typedef struct sb_breaks {
    SB_LIST(sb_break) list; /* by size */
    size_t own;             /* the job, in the list */
} sb_breaks;
const sb_breaks *sb_breaks_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                              const sb_tune *tune, const sb_ways *own);
/* The job in that many pieces, as one of its breaks is made. NULL after an error: it does not come in such a number, or cannot be
 * made. */
const sb_ways *sb_break_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job, const sb_tune *tune,
                           const sb_ways *own, int64_t pieces);

/* Shares `amount` out by weights (>= 0, less counts as 0), in whole minor units that add up to it (largest remainder, earlier
 * first on ties). All weights zero: even shares. */
void sb_share_out(sb_run *run, sb_money amount, const int64_t *weights, size_t count, sb_money *shares);

/* The tax on a net amount: round(net * rate). */
sb_money sb_tax_of(sb_money net, sb_share rate);
/* The tax inside a gross amount: gross - round(gross / (1 + rate)). */
sb_money sb_tax_inside(sb_money gross, sb_share rate);
/* The price of one out of an amount for `count`, up to `less` below a multiple of `point` (0: of the minor unit): with 10.00 less
 * 0.05 to 9.95, 19.95, 29.95 ... Nothing stays nothing. */
sb_money sb_unit_price(sb_money amount, int64_t count, sb_share tax, sb_money point, sb_money less);

/* ---- three-point values ------------------------------------------------------------------------------------------
 *
 * A value that is at least o, most likely m and at most p is drawn from the beta distribution over o..p with alpha = 1 + 4 (m - o) /
 * (p - o), beta = 1 + 4 (p - m) / (p - o): mean (o + 4 m + p) / 6 (Malcolm, Roseboom, Clark, Fazar: Operations Research 7(5), 1959,
 * 646-669), variance (mean - o) (p - mean) / 7. The textbooks' ((p - o) / 6)^2 is an approximation, and used nowhere.
 *
 * Random numbers: xoshiro256** (Blackman, Vigna: Scrambled linear pseudorandom number generators, ACM Transactions on Mathematical
 * Software 47(4), 2021), its state from splitmix64 (Steele, Lea, Flood: Fast splittable pseudorandom number generators, OOPSLA 2014).
 * Whole numbers, and floating point out of + - * / alone, which every machine rounds alike: the same draws everywhere. */
typedef struct sb_generator { uint64_t state[4]; } sb_generator;
uint64_t sb_splitmix64(uint64_t *state);
sb_generator sb_generator_of(uint64_t seed);
uint64_t sb_generator_next(sb_generator *g);
double sb_generator_unit(sb_generator *g); /* from 0 to below 1, in steps of 2^-53 */

typedef struct sb_beta sb_beta;
const sb_beta *sb_beta_of(sb_run *run, int64_t least, int64_t likely, int64_t most); /* least <= likely <= most, least < most */
double sb_beta_at(const sb_beta *beta, double unit); /* the share of the way from least to most under which `unit` of all draws lie */
double sb_three_point_mean(int64_t least, int64_t likely, int64_t most);
double sb_three_point_variance(int64_t least, int64_t likely, int64_t most);

/* Repeated work: with each doubling of the count the average time falls to `share` of what it was (T. P. Wright: Factors affecting the cost
 * of airplanes, Journal of the Aeronautical Sciences 3, 1936, 122-128). The average over `count`, as a share of the first one's time, to
 * the ppm. */
sb_share sb_learned(sb_share share, int64_t count);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
