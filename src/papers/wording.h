/* papers/wording.h -- the words of the customer's paper, with what is filled into them. */
#ifndef SAWBILL_PAPERS_WORDING_H
#define SAWBILL_PAPERS_WORDING_H

#include "sawbill/papers.h"

/* The text for a key with "{slot}" replaced by the value. */
const char *wording_fill(sb_run *run, const sb_wording *wording, const char *key, const char *slot,
                         const char *value);
/* In the language's order: "25 November 2026", "25.11.2026". */
const char *wording_date(sb_run *run, const sb_wording *wording, sb_date date);

#endif
