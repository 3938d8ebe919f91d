/* papers/why_cuts.h -- what the figures of the cut sheet have in common. */
#ifndef SAWBILL_PAPERS_WHY_CUTS_H
#define SAWBILL_PAPERS_WHY_CUTS_H

#include "papers/cuts.h"
#include "papers/why.h"

/* Over a word, whatever its case; false, and not moved, where it does not stand there. */
bool why_skip(const char **text, const char *word);
bool why_number(const char **text, int64_t *number);
/* "3" or "3 to 6", and at most what papers print behind it: ", rack piece L2", ": Birch plywood". False: something else. */
bool why_numbers(const char *text, int64_t *first);

cuts_paper why_cuts_paper(const why *w);
const sb_part *why_need_part(const cuts_paper *p, size_t need); /* NULL: a spare */
sb_place why_need_place(const cuts_paper *p, size_t need);      /* the recipe line, the grade */
/* The part, down to its recipe line; a spare, to its grade. */
void why_say_need(why *w, const cuts_paper *p, size_t need);
/* Which board or sheet that is, and its price, bought or from the rack. */
void why_say_supply(why *w, const cuts_paper *p, size_t supply, const char *what);
/* Where it is told what truing one of its ends or edges takes. */
sb_place why_trim_place(const why *w, const cuts_paper *p, size_t supply, const char *saw);

/* "480" or "480 mm", as the cut sheet writes lengths. */
bool why_is_length(const cuts_paper *p, const char *text, sb_length length);
/* Boards of which something goes back into the rack; false: there are none. In why_boards.c. */
bool why_kept_boards(why *w, const cuts_paper *p);
/* "fence at 826", each once. In why_sheets.c. */
void why_fences(const why *w, const cuts_paper *p, why_words *words);

#endif
