/* Works out the relations of a document anew, to compare with the amounts that it stores. */
#ifndef TESTS_RELATION_EVAL_H
#define TESTS_RELATION_EVAL_H

#include "sawbill/document.h"

/* As a spreadsheet would; NaN where it would show an error (a circle, a division by zero). */
long double relation_value(const sb_document *document, const sb_relation *relation);

/* The first cell whose amount is not what its relation gives: money to the minor unit exactly, other kinds to
 * half of their last digit. NULL when all agree. */
const sb_cell *relation_first_wrong(const sb_document *document);

#endif
