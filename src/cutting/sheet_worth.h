/* cutting/sheet_worth.h -- the most that the parts on one sheet can be worth, however it is cut.
 *
 * Every pane i has a dual y_i. Sizes and rooms carry a kerf each and are counted in whole units, rounded down: what
 * goes together on the sheet goes together in units. A sheet may take a pane more often than it is wanted, so what comes
 * out is never too low.
 *
 * Any number of stages (guillotine.c). P and Q are the sums of sizes along x and along y in which no size occurs more
 * often than its pane is wanted; p - c stands for the greatest of P that is not above it, q - c likewise.
 *   F(p, q) = max of  y_i                       over panes with w_i <= p, l_i <= q
 *                     F(c, q) + F(p - c, q)     over c in P
 *                     F(p, c) + F(p, q - c)     over c in Q
 * Panes wanted once may be tracked: F is then also by the set of tracked panes that may be used, each once, and the two
 * halves share the set out between them in every way.
 * Up to three stages (strip_stacks.c, strip_worth.c). u runs across the strips, v along them; two stages without trims allow only
 * panes as wide as the strip, with trims one pane to a stack.
 *   S(u, v) = max of sum of y_i                 over stacks of panes that are v long, within u, none more often than
 *                                               it is wanted
 *   K(u, l) = max of S(u, v) + K(u, l - v)      over v; stacks of c panes alike that cannot lie in one stack with others
 *                                               occur as often as c goes into what is wanted
 *   M(x)    = max of K(u, V) + M(x - u)         over u
 */
#ifndef CUTTING_SHEET_WORTH_H
#define CUTTING_SHEET_WORTH_H

#include "cutting/sheets.h"

#define SB_TRACKED 6 /* panes at most */

typedef struct sb_worths {
    const sb_sheet_bench *bench;
    bool by_strips;            /* up to three stages */
    int64_t unit[2];           /* along x, along y [nm] */
    int64_t *upper;            /* by offer: proven for the duals given last */
    bool *once;                /* by pane: tracked */
    struct sb_guillotine *any; /* one of the two */
    struct sb_strip_worths *strips;
} sb_worths;

/* `fineness`: so many points along an axis at most, which settles the units. NULL where that cannot be. */
sb_worths *sb_worths_new(const sb_sheet_bench *bench, int64_t fineness);
void sb_worths_find(sb_worths *w, const int64_t *duals);
/* From now on a sheet holds this pane, wanted once, at most once. False where that would be too much work. */
bool sb_worths_track(sb_worths *w, size_t pane);
/* How often each pane is on the sheet that is worth most, into `made` by pane. */
void sb_worths_best(sb_worths *w, size_t offer, int64_t *made);

/* ---- panes in units ------------------------------------------------------------------------------- */

typedef struct sb_lying_pane {
    size_t pane;
    bool turned;
    int64_t w, l; /* in units, kerf inside */
} sb_lying_pane;

typedef SB_LIST(sb_lying_pane) sb_lying_panes;

/* Every pane in every way it may lie. */
void sb_lying_list(const sb_sheet_bench *bench, const int64_t *unit, sb_lying_panes *to);
/* The least size along an axis, kerf inside [nm]. */
int64_t sb_smallest_size(const sb_sheet_bench *bench, bool along_y);
/* Of an offer, in units, kerf inside. */
int64_t sb_offer_room(const sb_sheet_bench *bench, size_t offer, bool along_y, const int64_t *unit);
/* The greatest common divisor of all sizes and rooms along an axis [nm]. */
int64_t sb_axis_step(const sb_sheet_bench *bench, bool along_y);
int64_t sb_largest_room(const sb_sheet_bench *bench, bool along_y);

/* ---- the two ways ---------------------------------------------------------------------------------- */

struct sb_guillotine *sb_guillotine_new(const sb_sheet_bench *bench, int64_t fineness, int64_t *unit);
void sb_guillotine_find(struct sb_guillotine *g, const int64_t *duals, int64_t *upper);
bool sb_guillotine_track(struct sb_guillotine *g, size_t pane);
size_t sb_guillotine_tracked(const struct sb_guillotine *g, const size_t **panes);
void sb_guillotine_best(struct sb_guillotine *g, size_t offer, int64_t *made);
/* The sheet worth most, cut out of `out` as far as its parts are wanted and true sizes allow. */
void sb_guillotine_lay(struct sb_guillotine *g, const int64_t *demand, sb_laid *out);

struct sb_strip_worths *sb_strip_worths_new(const sb_sheet_bench *bench, int64_t fineness, int64_t *unit);
void sb_strip_worths_value(struct sb_strip_worths *s, const int64_t *duals);
int64_t sb_strip_worths_of(struct sb_strip_worths *s, size_t offer);
void sb_strip_worths_best(struct sb_strip_worths *s, size_t offer, int64_t *made);
/* The widths of the strips on that sheet [nm], in the order they lie; how many, `most` at most. */
size_t sb_strip_worths_widths(struct sb_strip_worths *s, size_t offer, int64_t *widths, size_t most);

#endif
