/* formula/evaluate.h -- what a walk over a tree carries with it. */
#ifndef FORMULA_EVALUATE_H
#define FORMULA_EVALUATE_H

#include "formula/tree.h"

struct sb_scope_name;

typedef struct sb_evaluation {
    sb_run *run;
    sb_scope *scope;
    struct sb_scope_name *asker; /* the name whose formula this is, NULL at the start */
    size_t depth;                /* nodes entered and not yet left, over all formulas on the way */
} sb_evaluation;

/* Beyond this depth no further name is asked for. One formula is at most 500 deep and a node costs about
 * half a kilobyte, so this stays far inside any stack. */
enum {
    SB_DEEPEST_WALK = 2000
};

sb_term sb_evaluate(sb_evaluation *evaluation, const sb_formula *formula);
sb_term sb_evaluate_in(sb_run *run, const sb_formula *formula, sb_scope *scope);

/* What a name or an attribute stands for; tells of an unknown one. */
sb_term sb_scope_name_term(sb_evaluation *evaluation, const sb_formula *formula);
sb_term sb_scope_attribute_term(sb_evaluation *evaluation, const sb_formula *formula);
/* True after an error: an unknown word is compared with a choice, and is none of its words. */
bool sb_scope_tell_word(sb_evaluation *evaluation, const sb_formula *asked, const sb_formula *beside);

/* + - * / ^ and comparisons of two operands that are both known. */
sb_term sb_operate(sb_run *run, const sb_formula *formula, const sb_term operands[2]);

/* term ^ (p / q), q > 0; `whole` is what to blame, `base` what the term came from. */
sb_term sb_power(sb_run *run, const sb_formula *whole, const sb_formula *base, sb_term term, int64_t p,
                 int64_t q);

/* "a bare number (20)", "an area (long * wide)": for messages. */
const char *sb_describe(sb_run *run, sb_term term, const sb_formula *formula);
/* ": write a unit, for example 20 mm", when a bare number stands where `wanted` should; else "". */
const char *sb_unit_hint(sb_run *run, const sb_formula *formula, sb_term term, sb_dimension wanted);
/* False, and an error unless the term is NONE, when it is no truth. */
bool sb_wants_truth(sb_run *run, const sb_formula *operand, sb_term term);
/* The term, or NONE after an error when it left the range. */
sb_term sb_checked(sb_run *run, const sb_formula *formula, sb_number number, sb_dimension dimension);

#endif
