/* "high - 20 mm = 450 mm - 20 mm = 430 mm": the formula as written, with values for names, and what it comes
 * to. */
#include "formula/evaluate.h"

#include <string.h>

typedef struct worked {
    sb_evaluation evaluation;
    const sb_style *style;
    const sb_formula *whole;
    const char *text; /* so far */
    size_t done;      /* source bytes up to here are in the text [offset] */
} worked;

static void copy_up_to(worked *w, size_t offset) {
    sb_place gap = {w->whole->place.source, w->done, offset - w->done};
    w->text = sb_pool_print(w->evaluation.run->pool, "%s%s", w->text, sb_place_text(w->evaluation.run, gap));
    w->done = offset;
}

/* A negative value, a rate (4 per m), or one of two words under a power wants parentheses where an operator
 * would take it apart. */
static const char *value_text(worked *w, const sb_formula *name, sb_term term, const sb_formula *above) {
    const char *text = sb_term_text(w->evaluation.run, term, w->style);
    bool alone = !above || above->node == SB_NODE_CALL || name->wrapped;
    bool parts = text[0] == '-' || strstr(text, " per ") ||
                 (above && above->node == SB_NODE_POWER && strchr(text, ' '));
    return alone || !parts ? text : sb_pool_print(w->evaluation.run->pool, "(%s)", text);
}

static void put_value(worked *w, const sb_formula *name, const sb_formula *above) {
    sb_term term = sb_evaluate(&w->evaluation, name);
    size_t parenthesis = name->wrapped ? 1 : 0, end = name->place.offset + name->place.length - parenthesis;
    copy_up_to(w, name->place.offset + parenthesis);
    w->text = sb_pool_print(w->evaluation.run->pool, "%s%s", w->text, value_text(w, name, term, above));
    w->done = end;
}

static void substitute(worked *w, const sb_formula *formula, const sb_formula *above);

/* What evaluation passes over stays as it is written: the other branch of `if`, the settled side of `and`. */
static bool passed_over(worked *w, const sb_formula *formula, size_t operand) {
    bool branch = formula->node == SB_NODE_CALL && !formula->function->apply;
    bool either = formula->node == SB_NODE_AND || formula->node == SB_NODE_OR;
    if (operand == 0 || (!branch && !either))
        return false;
    sb_term first = sb_evaluate(&w->evaluation, formula->operands[0]);
    if (branch)
        return operand != (first.truth ? 1 : 2);
    return first.truth == (formula->node == SB_NODE_OR);
}

static void substitute(worked *w, const sb_formula *formula, const sb_formula *above) {
    if (formula->node == SB_NODE_NAME || formula->node == SB_NODE_ATTRIBUTE) {
        put_value(w, formula, above);
        return;
    }
    for (size_t i = 0; i < formula->count; i++)
        if (!passed_over(w, formula, i))
            substitute(w, formula->operands[i], formula);
}

const char *sb_formula_worked(sb_run *run, const sb_formula *formula, sb_scope *scope,
                              const sb_style *style) {
    worked w = {.evaluation = {.run = run, .scope = scope}, .style = style, .whole = formula, .text = ""};
    const char *written = sb_place_text(run, formula->place);
    sb_term result = sb_evaluate(&w.evaluation, formula);
    if (result.kind == SB_VALUE_NONE)
        return written;
    w.done = formula->place.offset;
    substitute(&w, formula, NULL);
    copy_up_to(&w, formula->place.offset + formula->place.length);
    const char *value = sb_term_text(run, result, style);
    const char *text = written;
    if (strcmp(w.text, written) != 0)
        text = sb_pool_print(run->pool, "%s = %s", text, w.text);
    if (strcmp(value, w.text) != 0)
        text = sb_pool_print(run->pool, "%s = %s", text, value);
    return text;
}
