/* papers/revision.h -- what is kept of an estimate, so that the next revision can say what has changed. */
#ifndef SAWBILL_PAPERS_REVISION_H
#define SAWBILL_PAPERS_REVISION_H

#include "sawbill/papers.h"

/* One figure of an estimate, known by its option and its name. */
typedef struct kept_figure {
    const char *option, *name;
    sb_cell_kind kind; /* MONEY, COUNT, SHARE or DURATION, in that kind's unit */
    int64_t amount;
} kept_figure;
typedef struct kept_figures {
    kept_figure *items;
    size_t count, capacity;
} kept_figures;

struct sb_stored {
    const char *revision, *date, *currency;
    kept_figures figures;
};

kept_figures revision_figures(sb_run *run, const sb_ways *ways);
const char *revision_kind_word(sb_cell_kind kind); /* money count share time */

#endif
