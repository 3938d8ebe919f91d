/* papers/cuts_stops.h -- the stops of a batch: which they are, in which order boards come to them, how they read. */
#ifndef SAWBILL_PAPERS_CUTS_STOPS_H
#define SAWBILL_PAPERS_CUTS_STOPS_H

#include "papers/cuts.h"

typedef struct span { /* boards by number, both ends included */
    int64_t first, last;
    int64_t each; /* off each of them; 0: strips alone, beside those of another part */
    bool stays;   /* one board, at the saw already from the stop before */
} span;
typedef SB_LIST(span) spans;

typedef struct stop_part { /* what is cut at a stop, by its name */
    const char *name;
    int64_t count; /* a strip for each */
} stop_part;

typedef struct stop {
    size_t need;    /* the first need cut at it; stands for stock, length, ends and width */
    size_t setting; /* the first row of those that the saw is set once for */
    bool needed;    /* not spares alone */
    int64_t count, strips;
    int64_t turned, rolled, both; /* of its parts, how many lie so on their boards */
    SB_LIST(stop_part) parts;     /* each name once */
    SB_LIST(size_t) spares;       /* needs, each once */
    spans boards;                 /* in the order of their numbers */
    spans visits;                 /* the same in the order of work: cuts_stops_order.c */
} stop;

typedef struct stops {
    stop *items;
    size_t count, capacity;
} stops;

/* The order of boards within each stop, of stops that follow each other. A board is fetched for each stop that it is put to,
 * except where it is the last one of a stop and the first of the next: there it stays at the saw. As often as it can be. */
void cuts_order_boards(sb_run *run, stops *all);

/* The stops of one stock, from `start` on; where the next stock starts. */
size_t cuts_stock_stops(const cuts_paper *p, sb_sheet *sheet, const stops *all, size_t start);

#endif
