/* bench/sheets.h -- what the parts of the bench for sheets share. */
#ifndef SAWBILL_BENCH_SHEETS_H
#define SAWBILL_BENCH_SHEETS_H

#include "bench.h"

enum {
    SHEET_MOST = 512, /* instances of a set */
    SHEET_WAYS = 4
};

typedef struct sheet_tally {
    int count, proved, apart, known, met, beaten, bound_met;
    double sheets, bounds, cost, shelves, fit;
    double times[SHEET_MOST], gaps[SHEET_MOST];
} sheet_tally;

void sheet_tally_sort(sheet_tally *t);
double sheet_percent(double of, double all); /* 100 of nothing */

typedef struct sheet_way { /* how plans are made */
    const char *name;
    bool turn;
    int stages;
    bool trims;
} sheet_way;

/* The price of fewer stages: two, two with trimming, three, any. */
extern const sheet_way sheet_ways[SHEET_WAYS];
void sheet_print_ways(const char *name, const char *unit, const int *planned, const double *amounts);

/* A target of 0 is none. */
void sheet_print_times(const sheet_tally *t, double median, double longest);

/* ---- random workshop jobs, one large batch (panels.c) ---------------------------------------------- */

void bench_panels(void);
void bench_panels_handled(void); /* handling and leftovers priced */
void bench_panels_stages(void);
void bench_panels_thousand(void);

#endif
