/* A document on pages: blocks below one another, tables over as many pages as they take. */
#ifndef WRITERS_PAGES_H
#define WRITERS_PAGES_H

#include "writers/ink.h"

typedef SB_LIST(ink) ink_pages;

/* Every page of a document, with its foot. */
ink_pages pages_of(sb_run *run, const type_case *type, const sb_document *document);

/* ---- inside this part of the room --------------------------------------------------------------------- */

typedef struct flow {
    sb_run *run;
    const type_case *type;
    const sb_document *document;
    ink_pages pages;
    bool landscape;
    double width; /* between the margins */
    double y;     /* where the next line begins */
    double bottom;
} flow;

#define PAGE_SIDE 43.0 /* margins */
#define PAGE_TOP  40.0
#define PAGE_FOOT 52.0

ink *flow_page(flow *f); /* the one being filled */
void flow_turn(flow *f); /* a new page */
bool flow_fits(const flow *f, double height);
bool flow_at_top(const flow *f);
double flow_most(const flow *f); /* of a page, from top to bottom */

/* ---- tables: page_table.c ------------------------------------------------------------------------------- */

typedef struct laid_table {
    const sb_table *table;
    PangoLayout *title;  /* NULL: none */
    PangoLayout **heads; /* [columns] NULL: none are shown */
    PangoLayout **cells; /* [rows * columns] NULL: nothing to read */
    double *widths, *lefts;
    double *heights; /* [rows] */
    double head_height;
} laid_table;

laid_table table_lay(sb_run *run, const type_case *type, const sb_document *document, const sb_table *table,
                     double width,
                     const laid_table *above); /* above: the block before, where that is a table; else NULL */
double table_height(const laid_table *laid);
double table_first_height(const laid_table *laid); /* of what must not be parted from what is above */
void table_place(flow *f, const laid_table *laid);

/* ---- cards: page_cards.c ---- */

/* On pages of their own: the one being filled is empty. */
void cards_place(flow *f, const sb_cards *cards);

#endif
