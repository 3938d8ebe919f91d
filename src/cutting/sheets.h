/* cutting/sheets.h -- one stock of sheets, as the planner sees it.
 *
 * A pane is a kind of part: needs alike in length, width and grain. A tree is one sheet's cuts: every node is
 * a rectangle that is a part, is waste, or is divided by one cut from edge to edge into a first piece of a
 * given size and the rest behind the kerf. Coordinates are from the factory corner: x, w across the sheet, y,
 * l along it [nm].
 *
 * Stages alternate in direction; odd ones run in the first direction (rips, unless crosscuts come first).
 */
#ifndef CUTTING_SHEETS_H
#define CUTTING_SHEETS_H

#include "cutting/knapsack.h"
#include "cutting/work.h"

typedef struct sb_pane {
    const sb_need *like;
    int64_t length, width;  /* [nm] */
    bool upright, sideways; /* the length may lie along the sheet; across it */
    int64_t pieces;
    double area; /* with a kerf at two sides [nm2] */
    SB_LIST(size_t) needs;
} sb_pane;

typedef struct sb_sheet_offer {
    size_t supply;
    int64_t x, y, w, l; /* what truing leaves */
    int64_t fixed;      /* price and sheet charge [thousandths] */
    int64_t available;  /* INT64_MAX: no limit */
    int64_t truing;     /* cuts */
} sb_sheet_offer;

typedef struct sb_node {
    int64_t x, y, w, l;
    size_t pane;          /* SIZE_MAX: no part */
    bool turned;          /* the part's length lies across the sheet */
    size_t first, second; /* SIZE_MAX: none */
    bool across;          /* its cut runs across the width */
    int64_t at;
    int level; /* stage of the cut that made it; 0: the whole sheet */
    int stage; /* of its own cut */
} sb_node;

typedef SB_LIST(sb_node) sb_tree; /* the first node is what truing leaves */

/* A sheet with what is on it: while searching, and as part of a plan. */
typedef struct sb_laid {
    size_t offer;
    int64_t count;
    sb_tree tree;
    int64_t *made; /* by pane, on one sheet */
    int64_t cost;  /* of one */
    double ratio;  /* worth for cost; below 0: nothing lies on it */
} sb_laid;

typedef struct sb_laying { /* sheets that together make what is wanted */
    SB_LIST(sb_laid) sheets;
    int64_t cost;
    double missing; /* area of what could not be placed */
} sb_laying;

typedef struct sb_sheet_bench {
    sb_run *run;
    const sb_problem *problem;
    size_t stock;
    SB_LIST(sb_pane) panes;
    SB_LIST(sb_sheet_offer) offers;
    int64_t kerf;
    int64_t longest_rip, smallest_strip; /* INT64_MAX and 0 where there is no limit */
    int stages; /* deepest stage allowed; with trims the next one may take waste off */
    bool crosscut_first, trims;
    int64_t fence, back, cut;       /* [thousandths] */
    int64_t value;                  /* of usable leftovers, per m2; 0: not priced */
    struct sb_stripping *stripping; /* room to fill strips in, used again and again */
    struct sb_putting *putting;     /* the same for putting piece by piece */
    struct sb_recting *recting;     /* and for rectangles by rectangles; NULL: too many panes */
    sb_work *work;
} sb_sheet_bench;

/* NULL when the stock is wanted by nobody. Needs that fit no sheet are told and put on plan->short_of. */
sb_sheet_bench *sb_sheet_bench_make(sb_run *run, sb_plan *plan, size_t stock, sb_work *work);

/* ---- trees --------------------------------------------------------------------------------------- */

void sb_tree_start(const sb_sheet_bench *bench, size_t offer, sb_tree *tree);
/* May this node be divided in this direction, and its first piece be `size` wide? */
bool sb_tree_may_cut(const sb_sheet_bench *bench, const sb_tree *tree, size_t node, bool across,
                     int64_t size);
/* A strip straight from stage 1 that is too narrow to be worked on. */
bool sb_tree_is_thin(const sb_sheet_bench *bench, const sb_node *node);
/* Divides; gives the first piece, `size` wide, which is the node itself when nothing is to be cut off. The
 * rest, if the kerf leaves any, is node.second. */
size_t sb_tree_cut(const sb_sheet_bench *bench, sb_tree *tree, size_t node, bool across, int64_t size);
/* A part into a node: one cut or two, the first in direction `across`. False when the rules forbid it. */
bool sb_tree_put(const sb_sheet_bench *bench, sb_tree *tree, size_t node, size_t pane, bool turned,
                 bool across);
int64_t sb_pane_w(const sb_pane *pane, bool turned);
int64_t sb_pane_l(const sb_pane *pane, bool turned);
int64_t sb_tree_cost(const sb_sheet_bench *bench, size_t offer, const sb_tree *tree);
bool sb_leftover_is_useful(const sb_cut_stock *stock, int64_t w, int64_t l);
int64_t sb_tree_fences(const sb_tree *tree);
/* The same parts in the order in which one would cut them, where that costs no more. */
void sb_tree_tidy(const sb_sheet_bench *bench, sb_laid *laid);
int64_t sb_tree_returns(const sb_tree *tree); /* pieces that go back over the saw */

/* ---- the search ---------------------------------------------------------------------------------- */

typedef struct sb_sheet_filling {
    const sb_sheet_bench *bench;
    double *worth;      /* by pane */
    int64_t *demand;    /* still to be made */
    int64_t *available; /* by offer */
} sb_sheet_filling;

/* Lays one sheet out of what is still to be made, or goes on with one; fills tree and made. */
struct sb_stripping *sb_stripping_new(const sb_sheet_bench *bench);
struct sb_putting *sb_putting_new(const sb_sheet_bench *bench);
void sb_lay_strips(const sb_sheet_filling *f, bool crosscut, int stages, sb_laid *out);
/* The same, beginning with strips of these widths. */
void sb_lay_widths(const sb_sheet_filling *f, const int64_t *widths, size_t count, sb_laid *out);
void sb_lay_pieces(const sb_sheet_filling *f, int rule, sb_laid *out);
#define SB_PIECE_RULES 6
/* The best of the rectangles whose sides are sums of sizes; false where there would be too many. */
struct sb_recting *sb_recting_new(const sb_sheet_bench *bench);
bool sb_lay_rects(const sb_sheet_filling *f, sb_laid *out);

void sb_sheets_search(sb_sheet_bench *bench, sb_laying *best, sb_bound *bound);
void sb_sheet_bound(const sb_sheet_bench *bench, sb_bound *bound);
void sb_sheets_record(sb_sheet_bench *bench, const sb_laying *laying, sb_plan *plan);

#endif
