#include "formula/evaluate.h"

#include <string.h>

/* ---- what a call wants ---- */

bool sb_call_wants(const sb_call *call, size_t index, sb_dimension dimension) {
    sb_term term = call->terms[index];
    const sb_formula *operand = call->operands[index];
    if (term.kind == SB_VALUE_QUANTITY && sb_dimension_same(term.dimension, dimension))
        return true;
    sb_error(call->run, operand->place, "%s wants %s, and this is %s%s", call->formula->function->name,
             sb_dimension_name(call->run, dimension), sb_describe(call->run, term, operand),
             sb_unit_hint(call->run, operand, term, dimension));
    return false;
}

static bool wants_quantity(const sb_call *call, size_t index) {
    if (call->terms[index].kind == SB_VALUE_QUANTITY)
        return true;
    sb_error(call->run, call->operands[index]->place, "%s wants a measure or a number, and this is %s",
             call->formula->function->name,
             sb_describe(call->run, call->terms[index], call->operands[index]));
    return false;
}

bool sb_call_wants_same(const sb_call *call) {
    if (!wants_quantity(call, 0) || !wants_quantity(call, 1))
        return false;
    sb_term a = call->terms[0], b = call->terms[1];
    if (sb_dimension_same(a.dimension, b.dimension))
        return true;
    const char *hint = sb_unit_hint(call->run, call->operands[0], a, b.dimension);
    if (!*hint)
        hint = sb_unit_hint(call->run, call->operands[1], b, a.dimension);
    sb_error(call->run, sb_place_span(call->operands[0]->place, call->operands[1]->place),
             "%s wants measures of one kind, and these are %s and %s%s", call->formula->function->name,
             sb_describe(call->run, a, call->operands[0]), sb_describe(call->run, b, call->operands[1]),
             hint);
    return false;
}

/* ---- least and most ---- */

static sb_term pick(const sb_call *call, int wanted_order) {
    if (!sb_call_wants_same(call))
        return sb_term_none();
    sb_term a = call->terms[0], b = call->terms[1];
    return sb_number_compare(b.number, a.number) == wanted_order ? b : a;
}

static sb_term call_min(const sb_call *call) {
    return pick(call, -1);
}

static sb_term call_max(const sb_call *call) {
    return pick(call, 1);
}

/* ---- rounding ---- */

typedef sb_number rounding(sb_number);

static bool wants_step(const sb_call *call) {
    if (!sb_call_wants_same(call))
        return false;
    if (sb_number_sign(call->terms[1].number) > 0)
        return true;
    sb_error(call->run, call->operands[1]->place, "the step of %s must be more than 0",
             call->formula->function->name);
    return false;
}

static sb_term to_step(const sb_call *call, rounding *whole) {
    if (!wants_step(call))
        return sb_term_none();
    sb_number step = call->terms[1].number;
    sb_number steps = whole(sb_number_div(call->terms[0].number, step));
    return sb_checked(call->run, call->formula, sb_number_mul(steps, step), call->terms[0].dimension);
}

static sb_term to_whole(const sb_call *call, rounding *whole) {
    if (call->count == 2)
        return to_step(call, whole);
    sb_term term = call->terms[0];
    if (term.kind == SB_VALUE_QUANTITY && !sb_dimension_same(term.dimension, SB_DIM_NUMBER)) {
        const char *name = call->formula->function->name;
        const char *text = sb_formula_quote(call->run, call->operands[0]);
        sb_error(call->run, call->operands[0]->place, "%s of %s needs a step: %s", name,
                 sb_describe(call->run, term, call->operands[0]),
                 term.dimension.length == 1 ? sb_pool_print(call->run->pool, "%s(%s, 1 mm)", name, text)
                                            : call->formula->function->usage);
        return sb_term_none();
    }
    if (!sb_call_wants(call, 0, SB_DIM_NUMBER))
        return sb_term_none();
    return sb_term_quantity(whole(term.number), SB_DIM_NUMBER);
}

static sb_term call_round(const sb_call *call) {
    return to_whole(call, sb_number_round);
}

static sb_term call_floor(const sb_call *call) {
    return to_whole(call, sb_number_floor);
}

static sb_term call_ceil(const sb_call *call) {
    return to_whole(call, sb_number_ceil);
}

static sb_term call_round_up(const sb_call *call) {
    return to_step(call, sb_number_ceil);
}

static sb_term call_round_down(const sb_call *call) {
    return to_step(call, sb_number_floor);
}

/* ---- size and root ---- */

static sb_term call_abs(const sb_call *call) {
    if (!wants_quantity(call, 0))
        return sb_term_none();
    sb_term term = call->terms[0];
    if (sb_number_sign(term.number) < 0)
        term.number = sb_number_negate(term.number);
    return term;
}

static sb_term call_sqrt(const sb_call *call) {
    return wants_quantity(call, 0)
               ? sb_power(call->run, call->formula, call->operands[0], call->terms[0], 1, 2)
               : sb_term_none();
}

/* ---- the table ---- */

static const sb_function functions[] = {
    {"min", "min(a, b, ...)", 1, SB_ANY_COUNT, call_min},
    {"max", "max(a, b, ...)", 1, SB_ANY_COUNT, call_max},
    {"round", "round(x) or round(x, step)", 1, 2, call_round},
    {"floor", "floor(x) or floor(x, step)", 1, 2, call_floor},
    {"ceil", "ceil(x) or ceil(x, step)", 1, 2, call_ceil},
    {"round_up", "round_up(x, step)", 2, 2, call_round_up},
    {"round_down", "round_down(x, step)", 2, 2, call_round_down},
    {"abs", "abs(x)", 1, 1, call_abs},
    {"sqrt", "sqrt(x)", 1, 1, call_sqrt},
    {"sin", "sin(angle)", 1, 1, sb_call_sin},
    {"cos", "cos(angle)", 1, 1, sb_call_cos},
    {"tan", "tan(angle)", 1, 1, sb_call_tan},
    {"asin", "asin(x)", 1, 1, sb_call_asin},
    {"acos", "acos(x)", 1, 1, sb_call_acos},
    {"atan", "atan(x)", 1, 1, sb_call_atan},
    {"atan2", "atan2(y, x)", 2, 2, sb_call_atan2},
    {"if", "if(condition, a, b)", 3, 3, NULL},
};

enum {
    FUNCTION_COUNT = sizeof functions / sizeof *functions
};

const sb_function *sb_function_find(const char *name) {
    for (size_t i = 0; i < FUNCTION_COUNT; i++)
        if (strcmp(functions[i].name, name) == 0)
            return &functions[i];
    return NULL;
}

const char *const *sb_function_names(sb_run *run, size_t *count) {
    const char **names = SB_NEW_ARRAY(run->pool, const char *, FUNCTION_COUNT);
    for (size_t i = 0; i < FUNCTION_COUNT; i++)
        names[i] = functions[i].name;
    *count = FUNCTION_COUNT;
    return names;
}
