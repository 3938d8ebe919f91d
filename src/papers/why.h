/* papers/why.h -- where a figure comes from: a chain of steps, each with its value, how it came about, and its place. */
#ifndef SAWBILL_PAPERS_WHY_H
#define SAWBILL_PAPERS_WHY_H

#include "sawbill/papers.h"

typedef struct why_step {
    const char *what, *value, *how;
    sb_place place;
} why_step;

typedef struct why {
    sb_run *run;
    const sb_shop *shop;
    const sb_way *way;
    SB_LIST(why_step) steps;
} why;

void why_say(why *w, const char *what, const char *value, const char *how, sb_place place);

/* Each answers if the figure is one of its own and says so. */
bool why_total(why *w, const char *figure); /* total, net, price, cost, labour, ... : steps of the price */
bool why_part(why *w, const char *figure);  /* a part's name or title */
bool why_stock(why *w, const char *figure); /* a stock's id or title */
bool why_work(why *w, const char *figure);  /* an operation's id or title */
bool why_piece(why *w, const char *figure); /* a piece's name or title */

/* All names that are figures, for near misses. */
typedef struct why_names {
    const char **items;
    size_t count, capacity;
} why_names;
void why_total_names(why *w, why_names *names);

#endif
