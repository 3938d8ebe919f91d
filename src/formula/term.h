/* formula/term.h -- a value while computing: like sb_value, with a wider number. */
#ifndef FORMULA_TERM_H
#define FORMULA_TERM_H

#include "formula/number.h"
#include "sawbill/formula.h"

typedef struct sb_term {
    sb_value_kind kind; /* NONE: there was an error, already told */
    sb_dimension dimension;
    sb_number number;
    bool truth;
    const char *word;
    bool open; /* see sb_value */
} sb_term;

sb_term sb_term_none(void);
sb_term sb_term_quantity(sb_number number, sb_dimension dimension);
sb_term sb_term_truth(bool truth);
sb_term sb_term_word(const char *word);
sb_term sb_term_open(sb_term term); /* any of its kind: an open amount is always counted as 1 */
sb_term sb_term_of(sb_value value);
sb_value sb_term_value(sb_term term);

/* "an area", "a word", "yes or no" */
const char *sb_term_kind(sb_run *run, sb_term term);
const char *sb_term_text(sb_run *run, sb_term term, const sb_style *style);

#endif
