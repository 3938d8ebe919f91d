/* papers/record_risk.h -- what the cost of one way may come to and what moves its price, for machines. */
#ifndef SAWBILL_PAPERS_RECORD_RISK_H
#define SAWBILL_PAPERS_RECORD_RISK_H

#include "sawbill/papers.h"

/* Adds `risk` and `sensitivity`, null where there is nothing to tell. */
void record_risk(sb_run *run, sb_record *in, const sb_way *way, int digits);
void record_sensitivity(sb_run *run, sb_record *in, const sb_way *way, int digits);

#endif
