/* The walk over the tree. An operand that came to NONE was told about already, so whatever needs it is NONE
 * too, silently; but the other operands are still evaluated, since they may hold mistakes of their own. */
#include "formula/evaluate.h"

#include <string.h>

enum {
    QUOTE_LENGTH = 60
}; /* [bytes] of a formula's text in a message */

/* ---- quoting ---- */

static bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

static bool continues_character(char c) {
    return ((unsigned char)c & 0xC0) == 0x80;
}

const char *sb_formula_quote(sb_run *run, const sb_formula *formula) {
    const char *text = sb_place_text(run, formula->place);
    size_t size = strlen(text);
    if (formula->wrapped && size >= 2) {
        for (text++, size -= 2; size > 0 && is_blank(text[0]); size--)
            text++;
        while (size > 0 && is_blank(text[size - 1]))
            size--;
    }
    if (size <= QUOTE_LENGTH)
        return sb_pool_copy(run->pool, text, size);
    size = QUOTE_LENGTH - 3;
    while (continues_character(text[size]))
        size--;
    return sb_pool_print(run->pool, "%s...", sb_pool_copy(run->pool, text, size));
}

/* ---- truths ---- */

bool sb_wants_truth(sb_run *run, const sb_formula *operand, sb_term term) {
    if (term.kind == SB_VALUE_TRUTH)
        return true;
    if (term.kind != SB_VALUE_NONE)
        sb_error(run, operand->place, "expected a condition such as %s > 0, and this is %s",
                 sb_formula_quote(run, operand), sb_describe(run, term, operand));
    return false;
}

/* `and`, `or`: the right side only when the left one leaves it open, so that `n != 0 and x / n > 2` is safe.
 */
static sb_term both_or_either(sb_evaluation *evaluation, const sb_formula *formula) {
    const sb_formula *left = formula->operands[0], *right = formula->operands[1];
    sb_term first = sb_evaluate(evaluation, left);
    bool settled = formula->node == SB_NODE_OR;
    if (first.kind == SB_VALUE_TRUTH && first.truth == settled && !first.open)
        return first;
    bool usable = sb_wants_truth(evaluation->run, left, first);
    sb_term second = sb_evaluate(evaluation, right);
    usable = sb_wants_truth(evaluation->run, right, second) && usable;
    second.open = second.open || first.open;
    return usable ? second : sb_term_none();
}

static sb_term negate_truth(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_term term = sb_evaluate(evaluation, formula->operands[0]);
    if (!sb_wants_truth(evaluation->run, formula->operands[0], term))
        return sb_term_none();
    term.truth = !term.truth;
    return term;
}

/* Which of the two it will be is not known: its kind is, where both are alike. */
static sb_term either(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_term first = sb_evaluate(evaluation, formula->operands[1]);
    sb_term second = sb_evaluate(evaluation, formula->operands[2]);
    if (first.kind == SB_VALUE_NONE || second.kind == SB_VALUE_NONE)
        return sb_term_none();
    if (first.kind == second.kind && sb_dimension_same(first.dimension, second.dimension))
        return sb_term_open(first);
    sb_error(evaluation->run, formula->place, "if gives %s or %s: expected two values of one kind",
             sb_describe(evaluation->run, first, formula->operands[1]),
             sb_describe(evaluation->run, second, formula->operands[2]));
    return sb_term_none();
}

static sb_term choose(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_term condition = sb_evaluate(evaluation, formula->operands[0]);
    if (!sb_wants_truth(evaluation->run, formula->operands[0], condition))
        return sb_term_none();
    if (condition.open)
        return either(evaluation, formula);
    return sb_evaluate(evaluation, formula->operands[condition.truth ? 1 : 2]);
}

/* ---- measures ---- */

static sb_term negate(sb_evaluation *evaluation, const sb_formula *formula) {
    const sb_formula *operand = formula->operands[0];
    sb_term term = sb_evaluate(evaluation, operand);
    if (term.kind == SB_VALUE_QUANTITY)
        term.number = sb_number_negate(term.number);
    if (term.open)
        term = sb_term_open(term);
    if (term.kind == SB_VALUE_QUANTITY || term.kind == SB_VALUE_NONE)
        return term;
    sb_error(evaluation->run, formula->place, "expected a measure or a number behind -, and this is %s",
             sb_describe(evaluation->run, term, operand));
    return sb_term_none();
}

static bool strange_word(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_formula *const *sides = formula->operands;
    bool compares = formula->node == SB_NODE_EQUAL || formula->node == SB_NODE_UNEQUAL;
    return compares && (sb_scope_tell_word(evaluation, sides[0], sides[1]) ||
                        sb_scope_tell_word(evaluation, sides[1], sides[0]));
}

static sb_term operate(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_term terms[2];
    if (strange_word(evaluation, formula))
        return sb_term_none();
    terms[0] = sb_evaluate(evaluation, formula->operands[0]);
    terms[1] = sb_evaluate(evaluation, formula->operands[1]);
    if (terms[0].kind == SB_VALUE_NONE || terms[1].kind == SB_VALUE_NONE)
        return sb_term_none();
    if (formula->node == SB_NODE_POWER && terms[1].open && !sb_dimension_same(terms[0].dimension, SB_DIM_NUMBER))
        return sb_term_none(); /* the exponent decides which measure it is */
    sb_term result = sb_operate(evaluation->run, formula, terms);
    return terms[0].open || terms[1].open ? sb_term_open(result) : result;
}

/* ---- calls ---- */

static sb_term apply(sb_evaluation *evaluation, const sb_formula *formula, sb_formula *const *operands,
                     const sb_term *terms, size_t count) {
    bool open = false;
    for (size_t i = 0; i < count; i++) {
        if (terms[i].kind == SB_VALUE_NONE)
            return sb_term_none();
        open = open || terms[i].open;
    }
    sb_call call = {evaluation->run, formula, operands, terms, count};
    sb_term result = formula->function->apply(&call);
    /* cppcheck-suppress returnDanglingLifetime ; a term holds nothing of the call */
    return open ? sb_term_open(result) : result;
}

/* min and max: two by two, each against the best so far. Messages quote the first operand for those before:
 * they are all of its kind. */
static sb_term fold(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_term first = sb_evaluate(evaluation, formula->operands[0]);
    sb_term best = apply(evaluation, formula, (sb_formula *[]){formula->operands[0], formula->operands[0]},
                         (sb_term[]){first, first}, 2);
    for (size_t i = 1; i < formula->count; i++) {
        sb_term next = sb_evaluate(evaluation, formula->operands[i]);
        best = apply(evaluation, formula, (sb_formula *[]){formula->operands[0], formula->operands[i]},
                     (sb_term[]){best, next}, 2);
    }
    return best;
}

static sb_term call(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_term terms[SB_MOST_ARGUMENTS];
    if (!formula->function->apply)
        return choose(evaluation, formula);
    if (formula->function->most == SB_ANY_COUNT)
        return fold(evaluation, formula);
    for (size_t i = 0; i < formula->count; i++)
        terms[i] = sb_evaluate(evaluation, formula->operands[i]);
    return apply(evaluation, formula, formula->operands, terms, formula->count);
}

/* ---- the walk ---- */

static sb_term evaluate_node(sb_evaluation *evaluation, const sb_formula *formula) {
    switch (formula->node) {
    case SB_NODE_LITERAL:
        return formula->literal;
    case SB_NODE_NAME:
        return sb_scope_name_term(evaluation, formula);
    case SB_NODE_ATTRIBUTE:
        return sb_scope_attribute_term(evaluation, formula);
    case SB_NODE_CALL:
        return call(evaluation, formula);
    case SB_NODE_NEGATE:
        return negate(evaluation, formula);
    case SB_NODE_NOT:
        return negate_truth(evaluation, formula);
    case SB_NODE_AND:
    case SB_NODE_OR:
        return both_or_either(evaluation, formula);
    default:
        return operate(evaluation, formula);
    }
}

sb_term sb_evaluate(sb_evaluation *evaluation, const sb_formula *formula) {
    evaluation->depth++;
    sb_term term = evaluate_node(evaluation, formula);
    evaluation->depth--;
    return term;
}

sb_term sb_evaluate_in(sb_run *run, const sb_formula *formula, sb_scope *scope) {
    return sb_evaluate(&(sb_evaluation){.run = run, .scope = scope}, formula);
}
