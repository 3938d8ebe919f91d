/* sawbill/takeoff.h -- from a job to parts, fixings, finishes and work; from parts to cutting's needs; from a plan to the order.
 *
 * Three functions, one after the other: sb_takeoff_of (job -> takeoff), sb_cutlist_of (takeoffs -> a cutting
 * problem), and after planning sb_order_of (what to buy, of whom).
 */
#ifndef SAWBILL_TAKEOFF_H
#define SAWBILL_TAKEOFF_H

#include "sawbill/cutting.h"
#include "sawbill/recipe.h"
#include "sawbill/shop.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* ---- takeoff ---------------------------------------------------------------------------------------- */

/* A kind of part of one piece of the job. Sizes are put on the shop's step, rounded up. */
typedef struct sb_part {
    size_t piece;                        /* into takeoff.pieces */
    size_t making;                       /* into takeoff.makings */
    const char *name, *title;            /* title as the saw sheet shows it */
    const char *path;                    /* "trough", "trough / end frame": where in the piece it sits */
    const char *role;
    const sb_stock *stock;
    int64_t per_piece, count;            /* finished parts: in one piece; in the job */
    sb_length length, width, thickness;  /* finished; boards of full width: width is the stock's */
    sb_cut_end end1, end2;               /* from square, as the saw's scale shows */
    sb_length allow, allow_width;        /* trim-to-fit allowance inside the cut sizes */
    bool clear, sound, ripped, planed, from_volume;
    sb_grain grain;
    const sb_stock *edging;
    unsigned edging_edges;
    int64_t staves, layers;              /* 1 and 1: one piece of wood */
    sb_length edge_loss, over_length;
    /* what the saw makes: `blanks` of cut_length x cut_width (0: the board's full width) */
    int64_t blanks;
    sb_length cut_length, cut_width;
    sb_area area_all, area_outside, area_ends; /* of one finished part */
    const char *note;
    sb_place place;                      /* the recipe line */
    const sb_formula *length_formula;    /* where the length comes from */
    const char *length_worked;           /* "high / 3 = 500 mm / 3 = ~166.667 mm, rounded up to 167 mm" */
} sb_part;

/* An amount of stock that is not cut: fixings (pieces), finish (ml), glue (mg), edging (mm, waste in), volume timber (nl, the
 * grade's waste in), other (pieces). For one kind of piece over the whole job, or for the batch. */
typedef struct sb_usage {
    size_t piece;   /* SB_BATCH: for the batch as a whole */
    const sb_stock *stock;
    int64_t amount;
    int64_t net;    /* volume timber and edging: without the waste */
    int64_t coats;  /* finish: one over the other, at most; else 0 */
    sb_place place;
} sb_usage;
#define SB_BATCH ((size_t)-1)

/* Work from the recipes and the `always` operations; what the plan causes is counted by the plan. */
typedef struct sb_work {
    size_t piece;              /* SB_BATCH: once for the batch */
    const sb_operation *operation;
    int64_t quantity_milli;    /* thousandths of the driver's unit, over the whole job */
    bool ranged;               /* the recipe tells a range, the quantity is the likely one in it */
    int64_t least_milli, most_milli;
    sb_duration time;
    const char *text;
    sb_place place;
} sb_work;

/* What one sees of a piece, from in front or from the side: a stave that may lean. */
typedef struct sb_outline {
    bool side;
    sb_length x, y, width, height; /* of its lower left corner; y from the ground up */
    sb_length lean;                /* how far its top stands to the right of its foot */
} sb_outline;

typedef struct sb_takeoff_piece {
    const sb_job_piece *source;
    const sb_recipe *recipe;
    const char *title, *size_text; /* "1200 x 400 x 450 mm", "" when the recipe gives no size */
    sb_length size[3];             /* as the recipe works them out */
    size_t size_count;
    int64_t count;
    sb_mass mass;                  /* of one piece, wood only; 0 when a density is unknown */
    SB_LIST(const char *) notes;   /* for the quote */
    SB_LIST(sb_outline) outlines;  /* of the recipe itself; later ones cover earlier ones */
    struct sb_takeoff_input { const char *name, *text, *value; } *inputs; /* as used, for the estimate */
    size_t input_count, input_capacity;
} sb_takeoff_piece;

/* One recipe at work, a piece of the job or a component in one, kept so that its names can be asked for. */
typedef struct sb_making {
    size_t piece;                  /* into takeoff.pieces */
    const char *path;              /* "trough / end frame" */
    const sb_recipe *recipe;
    sb_scope *scope;               /* what its names stand for */
    SB_LIST(sb_recipe_set) given;  /* of two for the same name the later counts */
    sb_scope *given_scope;         /* in which they are worked out */
    SB_LIST(struct sb_making_role { const char *name; const sb_stock *stock; }) roles;
} sb_making;
/* Lengths as they are before they go on the shop's step. */
sb_style sb_style_unrounded(const sb_style *style);

/* Timber and panels of one stock, over the job. */
typedef struct sb_stock_total {
    const sb_stock *stock;
    int64_t parts;
    sb_length net_length;   /* boards, of full width: what stays in the parts, halfway between long and short points; a part
                               ripped to half the width is half its length */
    sb_area net_area;       /* length x width of the finished parts; of panels what is sheet, without edging and what is cut off at
                               angles */
    sb_volume net_volume;   /* of the finished parts, panels likewise */
    sb_length spare_length; /* boards: the grade's defect allowance, planned and priced once. Sheets have none; timber by
                               volume has it in its usage */
    sb_share spare_added;   /* the allowance as a share added to net, and as a share lost of what is bought */
    sb_share spare_lost;
} sb_stock_total;

typedef struct sb_takeoff {
    const sb_shop *shop;
    const sb_job *job;
    const sb_job_option *option; /* NULL: the job as it stands */
    SB_LIST(sb_takeoff_piece) pieces;
    SB_LIST(sb_making) makings;
    SB_LIST(sb_part) parts;
    SB_LIST(sb_usage) usages;
    SB_LIST(sb_work) works;
    SB_LIST(sb_stock_total) totals;
    SB_LIST(const char *) saw_notes;
} sb_takeoff;

/* How the amounts come about.
 *   Surfaces: a face is width x mean length, an edge thickness x mean length, the mean length lying halfway between the long and
 *     the short points of both ends; an end is width x thickness / (cos mitre cos bevel). Outside is one face unless told.
 *   Planed: thickness + planing and width + planing come out of sawn stock. With `laminated N` the thickness is that of one layer.
 *   Glue of glued and laminated parts: every joint's area once, times the spread; the joint is as long and thick as it is when
 *     it is glued, with over-length and allowance, before planing. Finish: area x coats / coverage, rounded up once for a line
 *     and kind of piece. Edging: every edge and 25 mm at both its ends.
 *   In a turn of a repeat, parts and joints made in that repeat are those of this very turn.
 *   Fixings and work are per piece unless told; `per batch` counts once for the job, however many pieces have the line (where its
 *     amounts differ, the largest). Work per joint or part without a number is for all joints or parts of the recipe; work by
 *     the metre `per part` is for the parts' own length. A recipe's surfaces are those of its own parts, not of its components. */

/* What can be told of a recipe, and of those inside it, against a shop: stock and operations that it does not have or that do
 * not suit, on any line, and mistakes that show when one piece is made, as the recipe stands but for one word of one
 * choice at a time. `place` names the recipe. */
void sb_takeoff_look_over(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const char *name,
                          sb_place place);

/* Expands one option of a job (NULL: none). Errors carry the recipe line and the job's piece. Inputs out of range, failed checks,
 * stock unknown or of the wrong kind, sizes zero or negative or beyond 100 m, more than ten million parts or a hundred thousand recipes at work: errors. Parts longer
 * than any stock are left for the planner to tell. NULL only when nothing could be done. */
const sb_takeoff *sb_takeoff_of(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                                const sb_job_option *option);

/* ---- to cutting ---------------------------------------------------------------------------------------- */

/* tag of a need: index into `needs`; tag of a supply: index into `supplies`. */
typedef struct sb_cutlist {
    sb_problem problem;
    SB_LIST(struct sb_need_source { const sb_takeoff *takeoff; const sb_part *part; /* NULL: spare for defects */ }) needs;
    SB_LIST(struct sb_supply_source { const sb_offer *offer; const sb_rack_item *rack; /* one of them */ const sb_stock *stock; }) supplies;
} sb_cutlist;
/* Several takeoffs are planned together. The rack is used unless every job says otherwise; its pieces have fresh ends and no
 * trim. Spare for defects: further needs named "spare", each as long as the longest part of its stock; the last one, for
 * the remainder, as long as the shortest part that is not shorter than it. Blanks of glued and laminated parts, and sheet parts, are cut square. */
const sb_cutlist *sb_cutlist_of(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs, size_t count);

/* Plans a list of these takeoffs. A defect allowance stands in for boards that nobody measured: where the plan cuts parts from
 * measured ones, the list is made anew with the spare length in proportion to what is cut from the others (and rounded up as
 * above), and planned again, a few times at most. *list becomes the list that the plan is of; it never has less spare than that
 * plan asks for, and the plan's bound is for so much spare. */
const sb_plan *sb_cutlist_plan(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs, size_t count,
                               const sb_cutlist **list);

/* Whether the ends of a part are cut once it is glued up, or out of its sheet. */
bool sb_part_ends_later(const sb_part *part);

/* Cuts of a plan past the limits of the shop's crosscut saw: those that sb_saw_way does not call plain. A part's ends by the width
 * that is cut, shared ones once; square cuts of a board too wide for them, truing included, with the first part on it. */
typedef struct sb_hard_cut {
    size_t need;         /* into the problem's needs; SIZE_MAX: see `part` */
    const sb_part *part; /* whose ends are cut later; else NULL */
    bool square;         /* else the ends off square */
    int64_t count;
} sb_hard_cut;
typedef SB_LIST(sb_hard_cut) sb_hard_cuts;
sb_hard_cuts sb_hard_cuts_of(sb_run *run, const sb_shop *shop, const sb_takeoff *takeoff, const sb_plan *plan);

/* Gives a bare list's problem the shop's rules: what labour costs, what leftovers are worth against the list's own lowest
 * price, stages, strip and rip limits. Kerfs, trims and the vehicle stay as the list says. */
void sb_problem_under_shop(sb_run *run, sb_problem *problem, const sb_shop *shop);

/* ---- the order ------------------------------------------------------------------------------------------- */

typedef struct sb_order_line {
    const char *merchant; /* "" : from the rack */
    const sb_stock *stock;
    const sb_offer *offer;       /* NULL for the rack */
    const sb_rack_item *rack;    /* NULL for bought */
    int64_t count;               /* boards, sheets or packs; pieces out of the rack. 1 lot: timber by volume, and what
                                    is measured out of the rack (ml, mg, mm) */
    int64_t needed;              /* what the jobs take of this line, in the unit of sb_usage; boards and sheets: count. Over
                                    all lines of a stock it adds up to what they use; 0 for a reorder */
    sb_cost each;                /* of one board, sheet, pack, piece or lot. Out of the rack: the value told there; else what
                                    a leftover like it is credited (boards, sheets), or what the same costs new */
    sb_money amount;             /* count * each, rounded once */
    bool reorder;                /* bought because the rack falls under its minimum, for no job */
} sb_order_line;
typedef struct sb_order {
    SB_LIST(sb_order_line) lines; /* by merchant, then as in stock.csv; rack lines last */
    sb_money total;               /* of what is bought */
} sb_order;
/* Packs and tins are chosen so that the amount is covered at least cost, after what the rack holds. `reorder`: also lines for stock
 * that falls under its minimum once the jobs have taken theirs. An amount that nobody sells enough of is an error. */
const sb_order *sb_order_of(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs, size_t count,
                            const sb_cutlist *cutlist, const sb_plan *plan, bool reorder);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
