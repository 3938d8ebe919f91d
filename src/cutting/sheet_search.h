/* cutting/sheet_search.h -- the ways to find layings of one stock of sheets. */
#ifndef CUTTING_SHEET_SEARCH_H
#define CUTTING_SHEET_SEARCH_H

#include "cutting/sheets.h"

typedef struct sb_sheet_search {
    sb_sheet_bench *bench;
    sb_sheet_filling f;
    sb_laying *best;
    sb_bound *bound;
    double *worth;    /* what the best laying taught */
    sb_laid picks[2]; /* the best sheet so far and the one being tried */
    sb_laying tried;
    int64_t budget, left, allowed; /* work of all ways; not yet used; given to the way at hand */
    struct sb_bending *bending;    /* NULL: not in strips alone */
    bool few;                      /* draw the ways of laying out instead of trying all */
    bool brief;                    /* in strips: only by bent worths */
} sb_sheet_search;

void sb_sheets_reset(sb_sheet_search *s); /* everything still to be made, everything there */
bool sb_sheets_are_least(const sb_sheet_search *s);
/* Leaves only one size of sheet on offer, beside what is there in numbers anyway. */
void sb_sheets_offer_only(sb_sheet_search *s, size_t only);
/* Sheet after sheet until nothing is left to be made. With `learn`, worths move towards what parts really cost. */
void sb_sheets_fill(sb_sheet_search *s, bool learn, sb_laying *out);
/* A few sheets of the best laying taken apart and laid out anew, again and again; thoroughly: in all ways. */
void sb_sheets_improve(sb_sheet_search *s, bool thoroughly);

/* Few parts in strips: the cheapest of all ways, where that can be found out. */
void sb_sheets_few(sb_sheet_search *s);

/* Every way to lay out every sheet on offer; `laid` is there until the visit is over. */
typedef void sb_sheet_visit(void *context, const sb_laid *laid);
void sb_sheets_lay_all(sb_sheet_search *s, sb_sheet_visit *visit, void *context);
/* One sheet that begins with strips of these widths; there until the next is laid out. */
struct sb_guillotine;
const sb_laid *sb_sheets_lay_best(sb_sheet_search *s, size_t offer,
                                  struct sb_guillotine *g); /* what it values most */
const sb_laid *sb_sheets_lay_widths(sb_sheet_search *s, size_t offer, const int64_t *widths, size_t count);

sb_laid sb_laid_keep(const sb_sheet_bench *bench, const sb_laid *laid); /* a copy, counted once */
void sb_laying_add(const sb_sheet_bench *bench, sb_laying *to, const sb_laid *laid, int64_t count);
void sb_laying_copy(const sb_sheet_bench *bench, sb_laying *to, const sb_laying *from);
bool sb_laying_better(const sb_laying *one, const sb_laying *other);

#endif
