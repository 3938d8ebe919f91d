/* sawbill/cutting.h -- needs, stock and rules in; cutting plans with cost and lower bound out.
 *
 * Knows neither recipes nor rates. Lengths in nm, costs in thousandths of the currency's minor unit.
 *
 * Board. Length L, front trim a, end trim b, kerf k, parts p1..pn (long points, allowance inside).
 *   r = L - a - b - (p1 + .. + pn) - (k12 + .. + k(n-1)n) >= 0, where kij = k between square ends and
 *   k / (cos m cos b) at an angled cut, rounded up. A trim is 0 or at least k, its own kerf inside it.
 *   If r is not above the kerf of the last cut nothing is left (that kerf may run out of the board);
 *   otherwise r less that kerf is left: a leftover if it reaches the useful length, else offcut.
 * Off square. Neighbours of full width whose meeting ends are parallel share one cut: the second begins
 *   k / (cos m cos b) behind the first on every fibre, which is W tan m + T tan b / cos m nearer than its long
 *   points would have it (W, T: width and thickness of the board; 0 when not told). So parts with parallel
 *   ends take their edge length + k / cos m each, and alternating trapezoids (long + short) / 2 + k / cos m.
 *   Ends that do not meet parallel keep their long points and the larger of the two kerfs. A part may be
 *   turned end for end, rolled over its length, or both.
 * Ripped. A need narrower than its board is ripped out of a section of the board: floor((W + k) / (w + k))
 *   strips side by side, k being the rip saw's kerf. One section holds strips of one length and width, takes
 *   the board like one square part, and is crosscut once; off-square ends are cut on each strip afterwards.
 * Cuts on a board: the truing cut at the front (also where there is no trim but the first end is off
 *   square), one behind every part or section (two where off-square neighbours do not meet parallel), none
 *   behind the last if it is square and flush with an untrimmed end; each off-square end of a strip; and those around
 *   what is cut away of a measured board.
 * Measured. A supply whose knots and splits are told is one board. A stretch counts over the whole width. No clear
 *   part lies over a knot or a split, no sound part over a split, by their long points (a section over its width);
 *   other parts lie anywhere, a spare where a clear part may. A part begins at the trued end or directly behind the
 *   part before it. Only where it would lie there over a stretch that it avoids, all up to the end of such a stretch
 *   is cut away as waste, and the part begins behind that: the part before has its rear cut and this one a front cut
 *   of its own, with both kerfs between them even where the stretch ends sooner. At the trued end the front cut comes
 *   besides the truing cut, its kerf behind the trued end. Behind the last cut the longest piece without a split
 *   (the first of equals) is the leftover if it is useful, sawn off with one more cut at each end that is not the
 *   board's or the last part's; such a cut lies in the split, or a kerf behind the last cut. All else is offcut.
 * Stop setting: a length over long points with its two ends. Parts alike in these share a setting; a section is
 *   set square.
 * Sheet. Edge-to-edge cuts, kerf at every cut, trim at every factory edge (truing is stage 0), grain
 *   honoured, stages as the rules allow. Cuts of stage 1 run along the length (rips) unless crosscut_first;
 *   from stage to stage the direction changes; a rectangle may be handed on uncut to a later stage. With
 *   `trims` a third stage may only cut waste off a part. `longest_rip` binds cuts along the length, truing
 *   excepted; `smallest_strip` binds the strips of stage 1 that carry parts.
 * Fence setting on a sheet: a distance from the edge of the divided rectangle to the cut, truing excepted.
 * Return on a sheet: a piece that a cut of one stage leaves and a cut of a later stage divides goes back over the saw.
 *   What a cut leaves for the next cut of the same stage lies at the saw still, and so does the trued sheet.
 * Cost = prices of boards and sheets used (rack pieces at their credit)
 *   + board * boards + change * sum over boards of the distinct stop settings on it + stop * distinct stop
 *   settings in the batch + cut * cuts + sheet * sheets + fence * sum over sheets of the distinct fence
 *   settings on it + back * returns + sheet_cut * cuts in sheets (truing included) - value of usable leftovers (each
 *   rounded down).
 */
#ifndef SAWBILL_CUTTING_H
#define SAWBILL_CUTTING_H

#include "sawbill/measure.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* ---- in ------------------------------------------------------------------------------------------ */

/* From square, as the saw's scale shows; plus: long point on the far edge (mitre), the lower face (bevel). */
typedef struct sb_cut_end {
    sb_angle mitre, bevel;
} sb_cut_end;

typedef enum sb_cut_grain {
    SB_CUT_ALONG,
    SB_CUT_ACROSS,
    SB_CUT_FREE
} sb_cut_grain;

typedef struct sb_cut_stock {
    const char *name;
    bool sheet;
    sb_length width;         /* boards: 0 = not told; then nothing can be ripped */
    sb_length thickness;     /* boards: 0 = not told; parallel bevels then save only their kerf */
    sb_length useful_length; /* least size of a leftover worth keeping; 0: none is */
    sb_length useful_width;  /* sheets; either way round */
    int64_t value;           /* of a usable leftover: thousandths of the minor unit per m, per m2 (sheets) */
} sb_cut_stock;

typedef struct sb_need {
    const char *name;
    size_t stock;          /* into problem.stock */
    sb_length length;      /* over the long points, allowance inside; on the step */
    sb_length width;       /* boards: 0 = the board's; sheets: needed */
    int64_t count;         /* >= 1 */
    sb_cut_end end1, end2; /* front and rear */
    bool clear; /* no knots, no splits; this and the next count on measured boards alone */
    bool sound; /* no splits */
    bool spare; /* goes with other needs as long as it: that they are too long is told there alone */
    sb_cut_grain grain; /* sheets: length lies along the sheet's length, across it, or either way */
    size_t tag;         /* the caller's own, untouched */
    sb_place place;     /* for messages */
} sb_need;

/* trim1 and trim2. Boards: at the front end and at the far end. Sheets: trim1 at each of the two edges that run
 * along the length (in x), trim2 at each of the two end edges (in y). */
typedef struct sb_supply {
    size_t stock;
    sb_length length, width; /* width: sheets; boards 0 */
    sb_cost price;
    int64_t available; /* -1: no limit */
    bool leftover;     /* from the rack */
    sb_length trim1, trim2;
    const char *label; /* of a rack piece or a measured board, else "" */
    size_t tag;
    size_t row; /* line of STOCK.csv, the first after the header is 1; 0 elsewhere */
    bool measured; /* boards: `bad` holds all that is bad of it, and there is one such board */
    sb_stretches bad;
    sb_place place;
} sb_supply;

/* Who waits for a plan: may ask for an end, and is told of each stock how far the search is. */
typedef struct sb_watch {
    const volatile int *stop_asked; /* set by a signal handler; NULL: never */
    /* Called often: the least cost known so far and what no plan can undercut; in the end once without a stock. NULL:
     * nobody listens. */
    void (*tell)(void *context, const char *stock, sb_cost cost, sb_cost bound);
    void *context;
} sb_watch;

typedef struct sb_cut_rules {
    sb_length kerf, rip_kerf, panel_kerf;
    sb_length longest_board; /* what the vehicle carries; 0: no limit (does not bind rack pieces or sheets) */
    int stages;              /* sheets: 2, 3; 0 any */
    bool trims;              /* two stages with trimming */
    bool crosscut_first;     /* default: rips first */
    sb_length longest_rip, smallest_strip; /* 0: no limit */
    /* Thousandths of the minor unit, each time; with material_only taken as zero, leftover values too. */
    bool material_only;
    sb_cost board, change, stop, cut;      /* boards */
    sb_cost sheet, fence, back, sheet_cut; /* sheets; back: each return */
    int64_t effort; /* work the search may do; 0: the standard amount. Counts work, not time. */
    double seconds; /* outer guard; 0: none. Where it allows for more work than the standard amount, that is done. */
    const sb_watch *watch; /* NULL: nobody */
} sb_cut_rules;

typedef struct sb_problem {
    SB_LIST(sb_cut_stock) stock;
    SB_LIST(sb_need) needs;
    SB_LIST(sb_supply) supplies;
    sb_cut_rules rules;
} sb_problem;

/* ---- out ----------------------------------------------------------------------------------------- */

typedef struct sb_placed { /* one part on a board */
    size_t need;
    sb_length at;           /* from the factory end to the part's nearest long point */
    sb_length across;       /* ripped strips: from the board's edge; else 0 */
    bool turned;            /* turned flat, end for end: end2 lies to the front */
    bool rolled;            /* rolled over its length: the other face up; with `turned`, tumbled end over end */
    sb_cut_end front, rear; /* its ends as it lies: signs change when a part is turned or rolled over */
} sb_placed;

typedef struct sb_waste { /* cut away of a measured board, without the kerfs; may be all kerf */
    sb_length from, to;   /* from the factory end */
} sb_waste;

typedef struct sb_board_plan {
    size_t supply;
    int64_t count;            /* boards cut alike */
    SB_LIST(sb_placed) parts; /* from the front end on; strips of one section follow each other */
    sb_length leftover;       /* usable; 0: none */
    sb_length offcut;         /* what falls off else, without kerfs and trims */
    int64_t cuts, stops;      /* crosscuts, truing included; distinct stop settings; for one board */
    sb_length ripped;         /* length of all rip cuts on one board */
    SB_LIST(sb_waste) waste;  /* of a measured board: what is cut away before its parts, and around its leftover */
    sb_length leftover_at;    /* where bad is told of the board: where its leftover begins, from the factory end; else 0 */
} sb_board_plan;

typedef struct sb_rect { /* x, w across the sheet's width; y, l along its length; from the factory corner */
    sb_length x, y, w, l;
} sb_rect;

typedef struct sb_sheet_part {
    size_t need;
    sb_rect at;
    bool turned; /* the need's length lies across the sheet's width */
} sb_sheet_part;

typedef struct sb_sheet_cut {
    int stage;         /* from 1; truing cuts are stage 0 */
    bool across_width; /* true: the blade runs across the width, at y = at; else along it, at x = at */
    sb_length at;      /* the edge of the kerf nearer the corner: the kerf lies from `at` to `at` + kerf */
    sb_rect divides;   /* the rectangle it divides */
} sb_sheet_cut;

typedef struct sb_sheet_plan {
    size_t supply;
    int64_t count;
    SB_LIST(sb_sheet_part) parts;
    SB_LIST(sb_sheet_cut) cuts; /* in the order of work: truing, then stage by stage */
    SB_LIST(sb_rect) leftovers; /* usable */
    int64_t fences;             /* distinct fence settings on one sheet */
    int64_t returns;            /* pieces of one sheet that go back over the saw */
} sb_sheet_plan;

typedef struct sb_shortage {
    size_t need;
    int64_t missing;
} sb_shortage;

/* What an operation is counted by; over the whole plan. */
typedef struct sb_plan_counts {
    int64_t boards;
    int64_t changes; /* over boards, the distinct stop settings on each */
    int64_t stops;   /* distinct stop settings in the batch */
    int64_t cuts;
    sb_length ripped;
    int64_t sheets, fences; /* fences: over sheets, the distinct fence settings on each */
    int64_t returns, sheet_cuts;
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

/* How the bound of one stock came about; checkable without the planner. Every need has a dual, an amount of
 * money for each of its `counted` pieces, and every supply a worth: the parts on one board or sheet of it cannot
 * come to more. Duals, worths, `least` and `common` are in 1/duals_scale of a thousandth of the minor unit;
 * S = sum of dual * counted.
 *   "duals"  (boards) bound = S - sum over limited supplies of available * max(0, worth - least); worth <= least
 *            for the others. Worth is after handling and leftover: the most, over all loads, of dual * pieces -
 *            change * settings - cut * cuts + leftover value; `least` is price and charge of one board.
 *   "cover"  bound = common + the least sum of least_s n_s, with n_s boards or sheets of supply s within what is
 *            available, whose worths add up to S or more. Where `lack` is set worth is after handling as above,
 *            and a lack may be made up at one for one. Otherwise worth counts duals alone, `least` holds what
 *            every board or sheet of the supply costs at least (its largest leftover taken off; nothing where that is
 *            worth more), `common` what every plan costs besides, less what sheets gain by such leftovers, as many as
 *            there are, but no more than pieces.
 *   "enumeration"  (boards) duals, worth and least are as with "duals", where the bound S - .. comes to B. Every load
 *            whose least + max(0, worth - least) less its own worth is below `threshold` is written down, and no whole
 *            numbers of these loads make all parts, within what is available, for less than the bound. A plan that costs
 *            less than B + threshold uses no other load. The bound is B + threshold or, where no leftover has a value, the
 *            next multiple of the greatest common divisor of price and charge of all boards, change and cut: all plans
 *            cost a multiple of that.
 *   "branching"  (boards; neither handling nor leftovers priced) by the numbers n_s of boards of each supply: a plan on
 *            them costs the sum of price and charge of each. A branch without numbers is a row: its duals and worths
 *            say that sum of worth_s n_s >= S for every plan. A branch with numbers is a leaf: closed by duals or by
 *            enumeration where just so many are available, it costs more than they do, so no plan lies on them, nor
 *            on numbers with, whatever the room, no more boards of that room or above. All n within what is
 *            available that obey every row and lie in no leaf cost the bound or more.
 * Boards: needs alike in length, width and ends count once, at the first of them; a ripped need counts sections,
 * not pieces. In a load the sum of (length + e1/2 + e2/2) is at most room + e. Room is the length less both
 * trims; e1 and e2 are what the part's ends take: their kerf along the board, less the overlap of parallel ends
 * where the opposite end occurs in this stock; e is the largest of these; a section's ends are square. Between square
 * ends that is length + kerf, and room + kerf.
 * Where a supply has bad stretches, needs are alike only if they avoid the same. No load counts there that has no place:
 * whose parts, in no order, lie on the board a kerf or more apart without touching what they avoid. Where parts that
 * follow each other directly end sooner than the soonest such place, the load has a cut more than they (but is flush
 * with an untrimmed end, maybe), and its leftover is the longest piece without a split behind that place and a kerf.
 * Where a need of the stock is not square all this is left aside but for one thing: no more of a square need than fit
 * alone.
 * Sheets: bounds are covers, of the first three kinds, or by numbers. Needs alike in length, width and grain count once. Sizes and rooms
 * take a kerf each; a part may lie the ways its grain allows.
 *   "cover"       every need has four numbers for its two sizes, along x and along y. What can stand in a row along x has a
 *                 greatest sum F (one knapsack), along y G; the parts on a sheet then have a sum of products of at most
 *                 F G (Fekete and Schepers), and duals are these products at a price, the lesser one where a part may
 *                 lie both ways.
 *   "guillotine"  worth is the most that duals come to on a sheet cut in any number of stages, with any number of each part,
 *                 but those with `once` set once at most.
 *   "strips"      the same for the stages of the rules; in one strip a part comes as often as it counts at most, unless a third
 *                 stage may stack it with others as long.
 *   "numbers"     every branch is a row, a proof of one of these kinds: sum of worth_s n_s >= S for every plan. All n within
 *                 what is available that obey every row cost the bound or more, which is common + sum of least_s n_s.
 * "guillotine" and "strips" count sizes along x in whole unit_x, along y in whole unit_y, rounded down, as rooms are: what goes
 * together on a sheet goes together in units. How worths follow stands in src/cutting/sheet_worth.h. */
typedef struct sb_scales {
    int64_t x_width, x_length; /* of the need's width and length where they lie along x */
    int64_t y_width, y_length; /* along y */
} sb_scales;
typedef struct sb_bound {
    size_t stock;
    const char *how;
    sb_cost cost, bound; /* without what every plan shares: the batch's stop settings, cuts at the ends of strips */
    /* by need of this stock, in the order of problem.needs; scales for sheets only */
    SB_LIST(int64_t) duals;
    SB_LIST(int64_t) counted;
    SB_LIST(sb_scales) scales;
    SB_LIST(bool) once; /* by need, "guillotine" only: of the needs that count here, those no sheet holds twice */
    /* by supply of this stock, in the order of problem.supplies; worth -1: cannot be used */
    SB_LIST(int64_t) worth;
    SB_LIST(int64_t) least;
    int64_t common;
    bool lack;
    int64_t threshold; /* by enumeration only */
    sb_length unit_x, unit_y; /* "guillotine" and "strips" only */
    int64_t duals_scale;
    SB_LIST(struct sb_branch *) branches; /* by branching and by numbers: duals and worths stand there only */
} sb_bound;
typedef struct sb_branch {
    SB_LIST(int64_t) numbers; /* by supply of this stock; none: for any numbers */
    sb_bound proof;
} sb_branch;
typedef struct sb_certificate {
    SB_LIST(sb_bound) bounds;
} sb_certificate;

/* Plans everything. Errors (told at the need's place): a part longer or wider than any stock, with the nearest
 * stock named; supply too short, naming parts and what is missing; trims under the kerf. NULL only when the
 * problem is malformed. Every plan has passed sb_plan_check. Same input, same plan. */
const sb_plan *sb_plan_make(sb_run *run, const sb_problem *problem);

/* The independent checker: feasibility of every board and sheet (geometry, kerfs, trims, grain, stages),
 * demand met exactly, availability kept, cost adds up, bound <= cost. Tells what is wrong as a bug notice. */
bool sb_plan_check(sb_run *run, const sb_plan *plan);

/* ---- beside ripped parts ------------------------------------------------------------------------- */

/* Width of what stays beside the last strip of a section, as long as that; 0 for other parts, and where the blade takes
 * it or all but a shaving. */
sb_length sb_board_strip_left(const sb_problem *problem, const sb_board_plan *board, size_t part);
/* The same where it is worth keeping like a board of that length, as it is not narrower than thick (common practice, no
 * source); else 0. The plan counts it for nothing. */
sb_length sb_board_strip_kept(const sb_problem *problem, const sb_board_plan *board, size_t part);
sb_area sb_board_strips_kept(const sb_problem *problem, const sb_board_plan *board); /* all of one board */

/* ---- bare lists (columns: see rates/README.md) --------------------------------------------------- */

/* Fills problem.stock, needs and supplies from PARTS.csv and STOCK.csv; the rules are the caller's. `trim` is for
 * rows without their own, rows of leftovers included. All mistakes of both files are told. A leftover is a sheet
 * when its stock has sheet rows, or when it has a width and its stock no board rows; without a count it is there
 * once. A sheet part lies with its length along the sheet unless `grain` or `rotate` say otherwise. */
bool sb_problem_read(sb_run *run, sb_problem *problem, const char *parts_csv, const char *stock_csv,
                     sb_length trim, int money_digits);
/* A list of measured boards on top of that: it names rows of STOCK.csv by their label. */
bool sb_problem_measured(sb_run *run, sb_problem *problem, const char *measured_csv);

/* The ends of a part as bare lists write them: square | mitre D | bevel D | mitre D bevel E, D with a sign if need
 * be. False after an error at the place. */
bool sb_cut_end_read(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_cut_end *out);

/* ---- saw settings -------------------------------------------------------------------------------- */

/* Flat frame of n sides: mitre 180/n. Box or pyramid of n sides whose sides slope `pitch` above the horizontal
 * (0 flat frame, 90 upright box), mitred: mitre = atan(cos pitch tan(180/n)), bevel = asin(sin pitch sin(180/n));
 * butted: same mitre, bevel 90 - 2 bevel. Degrees. False for fewer than three sides or a pitch outside 0 to 90. */
typedef struct sb_saw_setting {
    double mitre, bevel;
} sb_saw_setting;
bool sb_saw_frame(int sides, sb_saw_setting *out);
bool sb_saw_splayed(int sides, double pitch, bool butted, sb_saw_setting *out);
/* The same for one corner of any plan angle (degrees, above 0 and below 180); a corner of n sides has 180 - 360/n. */
bool sb_saw_corner(double corner, double pitch, bool butted, sb_saw_setting *out);
/* Crown moulding lying flat, its back down: `spring` is the angle between its back and the wall, 0 to 90 degrees, `corner` that
 * between the walls. An outside corner has the setting of an inside corner, cut from the other side. */
bool sb_saw_crown(double spring, double corner, sb_saw_setting *out);
/* Long point less short point of one mitred end in a width, to the nearest nm; stock an angled cut takes along the
 * board, rounded up. */
sb_length sb_mitre_run(sb_length width, sb_angle mitre);
sb_length sb_kerf_along(sb_length kerf, sb_cut_end end);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
