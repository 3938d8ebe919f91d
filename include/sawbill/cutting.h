/* sawbill/cutting.h -- needs, stock and rules in; cutting plans with cost and lower bound out.
 *
 * Knows neither recipes nor rates. Lengths in nm, costs in thousandths of the currency's minor unit.
 *
 * Board. Length L, front trim a, end trim b, kerf k, parts p1..pn (long points, allowance inside).
 *   r = L - a - b - (p1 + .. + pn) - (k12 + .. + k(n-1)n) >= 0, where kij = k between square ends,
 *   k / (cos m cos b) at an angled cut, rounded up. A trim is 0 or at least k, its own kerf inside it. If r <= k nothing is left
 *   (the last kerf may run out of the board); if r > k, r - k is left: a leftover if it reaches the
 *   useful length, else offcut.
 *   Off square, in width w: parts whose ends are parallel take their edge length + k / cos m each;
 *   alternating trapezoids (long + short) / 2 + k / cos m each; ends that do not meet parallel keep their
 *   long points and the larger of the two kerfs.
 *   A need narrower than its board is ripped out of a section of the board: floor((W + k) / (w + k)) strips side by side.
 * Sheet. Edge-to-edge cuts, kerf at every cut, trim at every factory edge (truing is not a stage), grain
 *   honoured, stages as the rules allow.
 * Cost = prices of boards and sheets used (rack pieces at their credit)
 *   + board * boards + change * sum over boards of the distinct stop settings on it + stop * distinct stop
 *   settings in the batch + cut * cuts (truing included); for sheets likewise with fence settings
 *   - value of usable leftovers.
 */
#ifndef SAWBILL_CUTTING_H
#define SAWBILL_CUTTING_H

#include "sawbill/measure.h"

#ifdef __cplusplus
extern "C" {
#endif

/* ---- in ------------------------------------------------------------------------------------------- */

/* From square, as the saw's scale shows; plus: long point on the far edge (mitre) or the lower face (bevel). */
typedef struct sb_cut_end { sb_angle mitre, bevel; } sb_cut_end;

typedef enum sb_cut_grain { SB_CUT_ALONG, SB_CUT_ACROSS, SB_CUT_FREE } sb_cut_grain;

typedef struct sb_cut_stock {
    const char *name;
    bool sheet;
    sb_length width, thickness;            /* boards: 0 = not told (then nothing can be ripped or angled ends are taken at long points) */
    sb_length useful_length, useful_width; /* least size of a leftover worth keeping; 0 = none is */
    int64_t value;                         /* of a usable leftover: thousandths of the minor unit per metre (boards), m2 (sheets) */
} sb_cut_stock;

typedef struct sb_need {
    const char *name;
    size_t stock;      /* into problem.stock */
    sb_length length;  /* boards: over the long points, allowance inside; on the step. Sheets: along the grain unless across */
    sb_length width;   /* boards: 0 = the board's; sheets: needed */
    int64_t count;     /* >= 1 */
    sb_cut_end end1, end2;
    bool clear;
    sb_cut_grain grain; /* sheets: SB_CUT_ALONG = length lies along the sheet's length */
    size_t tag;         /* the caller's own, untouched */
    sb_place place;     /* for messages */
} sb_need;

typedef struct sb_supply {
    size_t stock;
    sb_length length, width; /* width: sheets; boards 0 */
    sb_cost price;
    int64_t available;       /* -1: no limit */
    bool leftover;           /* from the rack */
    sb_length trim1, trim2;  /* front and end; for sheets trim1 holds for the two edges along the length... see cutting notes */
    const char *label;       /* of a rack piece, else "" */
    size_t tag;
    size_t row;              /* line of STOCK.csv, the first after the header is 1; 0 elsewhere */
    sb_place place;
} sb_supply;

typedef struct sb_cut_rules {
    sb_length kerf, rip_kerf, panel_kerf;
    sb_length longest_board; /* what the vehicle carries; 0: no limit (does not bind rack pieces) */
    int stages;              /* sheets: 2, 3; 0 any */
    bool trims;              /* two stages with trimming */
    bool crosscut_first;     /* default: rips first */
    sb_length longest_rip, smallest_strip; /* 0: no limit */
    /* in thousandths of the minor unit, each time; all zero and leftover values ignored when material_only */
    bool material_only;
    sb_cost board, change, stop, cut; /* boards */
    sb_cost sheet, fence, sheet_cut;  /* sheets */
    int64_t effort;          /* work the search may do; 0: the standard amount. Counts work, not time. */
    double seconds;          /* outer guard; 0: none */
    const volatile int *stop_asked; /* set by a signal handler; NULL: never */
} sb_cut_rules;

typedef struct sb_problem {
    SB_LIST(sb_cut_stock) stock;
    SB_LIST(sb_need) needs;
    SB_LIST(sb_supply) supplies;
    sb_cut_rules rules;
} sb_problem;

/* ---- out ------------------------------------------------------------------------------------------ */

typedef struct sb_placed { /* one part on a board */
    size_t need;
    sb_length at;      /* from the factory end to the part's nearest long point */
    sb_length across;  /* ripped strips: from the board's edge; else 0 */
    bool turned;       /* turned end for end against its neighbour (alternating trapezoids) */
} sb_placed;

typedef struct sb_board_plan {
    size_t supply;
    int64_t count; /* boards cut alike */
    SB_LIST(sb_placed) parts; /* from the front end on */
    sb_length leftover;  /* usable; 0: none */
    sb_length offcut;    /* what falls off else, without kerfs and trims */
    int64_t cuts, stops; /* crosscuts truing included; distinct stop settings; for one board */
    sb_length ripped;    /* length of all rip cuts on one board */
} sb_board_plan;

typedef struct sb_rect { sb_length x, y, w, l; } sb_rect; /* x, w across the sheet's width; y, l along its length; from the factory corner */
typedef struct sb_sheet_part { size_t need; sb_rect at; bool turned; } sb_sheet_part;
typedef struct sb_sheet_cut {
    int stage;        /* from 1; truing cuts are stage 0 */
    bool across_width;/* true: the blade runs across the width, at y = at; false: it runs along the length, at x = at */
    sb_length at;     /* where the kept side begins or ends: the edge of the kerf nearer the corner */
    sb_rect divides;  /* the rectangle it divides */
} sb_sheet_cut;
typedef struct sb_sheet_plan {
    size_t supply;
    int64_t count;
    SB_LIST(sb_sheet_part) parts;
    SB_LIST(sb_sheet_cut) cuts; /* in the order of work */
    SB_LIST(sb_rect) leftovers; /* usable */
    int64_t fences;
} sb_sheet_plan;

typedef struct sb_shortage { size_t need; int64_t missing; } sb_shortage;

/* What an operation is counted by; over the whole plan. */
typedef struct sb_plan_counts {
    int64_t boards, changes, stops, cuts;
    sb_length ripped;
    int64_t sheets, fences, sheet_cuts;
} sb_plan_counts;

typedef struct sb_plan {
    const sb_problem *problem;
    SB_LIST(sb_board_plan) boards; /* by stock, then as they are best cut */
    SB_LIST(sb_sheet_plan) sheets;
    SB_LIST(sb_shortage) short_of; /* not empty: the needs cannot be met; an error has been told */
    sb_plan_counts counts;
    sb_cost material, handling, leftovers; /* cost = material + handling - leftovers */
    sb_cost cost, bound;                   /* bound: no plan can cost less, under the same rules */
    bool proved;                           /* cost = bound, unrounded */
    bool cut_short;                        /* by time or a signal */
    const struct sb_certificate *certificate;
} sb_plan;

/* How the bound of one stock came about; checkable without the planner. Duals: for every need an amount
 * (thousandths of the minor unit a piece) such that no board or sheet on offer, at its price, holds parts worth more than it
 * costs: then the sum of amount * count is a bound. */
typedef struct sb_bound {
    size_t stock;
    const char *how;    /* "duals" | "length" | "area" */
    sb_cost cost, bound;
    SB_LIST(int64_t) duals; /* by need of this stock in the order of problem.needs; empty unless how = "duals" */
    int64_t duals_scale;    /* duals are in 1/scale of a thousandth of the minor unit */
} sb_bound;
typedef struct sb_certificate { SB_LIST(sb_bound) bounds; } sb_certificate;

/* Plans everything. Errors (told at the need's place): a part longer or wider than any stock, with the nearest
 * stock named; supply too short, naming parts and what is missing; trims under the kerf. NULL only when the problem is
 * malformed. Every plan has passed sb_plan_check. Same input, same plan. */
const sb_plan *sb_plan_make(sb_run *run, const sb_problem *problem);

/* The independent checker: feasibility of every board and sheet (geometry, kerfs, trims, grain, stages),
 * demand met exactly, availability kept, cost adds up, bound <= cost. Tells what is wrong as a bug notice. */
bool sb_plan_check(sb_run *run, const sb_plan *plan);

/* ---- bare lists (columns: see rates/README.md) -------------------------------------------------------- */

/* Fills problem.stock, needs, supplies from PARTS.csv and STOCK.csv. `trim` is for rows without their own. */
bool sb_problem_read(sb_run *run, sb_problem *problem, const char *parts_csv, const char *stock_csv, sb_length trim, int money_digits);

/* ---- saw settings -------------------------------------------------------------------------------------- */

/* Flat frame of n sides: mitre 180/n. Box or pyramid of n sides whose sides slope `pitch` above the horizontal (0 flat frame, 90
 * upright box), mitred: mitre = atan(cos pitch tan(180/n)), bevel = asin(sin pitch sin(180/n)); butted: same mitre, bevel
 * 90 - 2 bevel. Degrees. */
typedef struct sb_saw_setting { double mitre, bevel; } sb_saw_setting;
bool sb_saw_frame(int sides, sb_saw_setting *out);
bool sb_saw_splayed(int sides, double pitch, bool butted, sb_saw_setting *out);
/* Long point less short point of one mitred end in a width; stock an angled cut takes along the board, rounded up. */
sb_length sb_mitre_run(sb_length width, sb_angle mitre);
sb_length sb_kerf_along(sb_length kerf, sb_cut_end end);

#ifdef __cplusplus
}
#endif
#endif
