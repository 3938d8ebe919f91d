/* papers/why_steps.h -- the steps of the price, each with what it comes from. */
#ifndef SAWBILL_PAPERS_WHY_STEPS_H
#define SAWBILL_PAPERS_WHY_STEPS_H

#include "papers/why.h"

typedef enum why_kind {
    WHY_SUM,  /* of lines, which explain it; without them where it is on the way to another step */
    WHY_STEP, /* on the way to the total: from the steps before it */
    WHY_END,  /* a payment, an outcome: hangs on the end of that way */
    WHY_APART /* explains itself */
} why_kind;

typedef struct why_total_row {
    const char *name, *also;
    void (*say)(why *w);
    why_kind kind;
} why_total_row;

/* In the order of the price, so that all of them together are the whole chain; ends without a name. */
extern const why_total_row why_price_steps[];
/* The list price and the discount as the quote has them, where it shows them: reckoned back from its rounded prices. */
void why_quoted_discount(why *w);
/* The sum alone, of a step whose kind that is. */
void why_say_sum(why *w, const why_total_row *row);

#endif
