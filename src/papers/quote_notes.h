/* papers/quote_notes.h -- what recipes and job say to the customer about pieces: each note once, however many pieces and
 * options have it. */
#ifndef SAWBILL_PAPERS_QUOTE_NOTES_H
#define SAWBILL_PAPERS_QUOTE_NOTES_H

#include "sawbill/papers.h"

typedef struct quote_note {
    const char *text; /* "Long trough, Short trough: lined with film" */
    size_t way;       /* whose it is, unless everywhere */
    bool everywhere;  /* alike in every option */
} quote_note;
typedef SB_LIST(quote_note) quote_notes;

quote_notes quote_notes_of(sb_run *run, const sb_ways *ways);
/* It stands with this option. */
bool quote_note_is_of(const quote_note *note, size_t way);

#endif
