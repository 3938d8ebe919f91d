/* Formulas that must come to a certain kind of value. */
#include "formula/evaluate.h"

#include <math.h>
#include <string.h>

static const double longest = 1e6; /* [mm] 1 km: nothing in a workshop is longer */
static const int64_t um2_per_mm2 = 1000000;
static const int64_t most_counted = 10000000;

sb_value sb_formula_value(sb_run *run, const sb_formula *formula, sb_scope *scope) {
    return sb_term_value(sb_evaluate_in(run, formula, scope));
}

static bool evaluate_as(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_dimension wanted,
                        sb_number *out) {
    sb_term term = sb_evaluate_in(run, formula, scope);
    *out = term.number;
    if (term.kind == SB_VALUE_NONE)
        return false;
    if (term.kind == SB_VALUE_QUANTITY && sb_dimension_same(term.dimension, wanted))
        return true;
    sb_error(run, formula->place, "expected %s, and this is %s%s", sb_dimension_name(run, wanted),
             sb_describe(run, term, formula), sb_unit_hint(run, formula, term, wanted));
    return false;
}

static bool tell_range(sb_run *run, const sb_formula *formula, const char *limit) {
    sb_error(run, formula->place, "%s comes to more than %s", sb_formula_quote(run, formula), limit);
    return false;
}

bool sb_formula_length(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_length *out) {
    sb_number number;
    if (!evaluate_as(run, formula, scope, SB_DIM_LENGTH, &number))
        return false;
    if (fabs(number.real) > longest || !sb_number_up(number, SB_NM_PER_MM, &out->nm))
        return tell_range(run, formula, "1 km");
    return true;
}

bool sb_formula_area(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_area *out) {
    sb_number number;
    if (!evaluate_as(run, formula, scope, SB_DIM_AREA, &number))
        return false;
    if (fabs(number.real) > longest * longest || !sb_number_nearest(number, um2_per_mm2, &out->um2))
        return tell_range(run, formula, "a square kilometre");
    return true;
}

bool sb_formula_angle(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_angle *out) {
    sb_number number;
    if (!evaluate_as(run, formula, scope, SB_DIM_ANGLE, &number))
        return false;
    return sb_number_nearest(number, 1, &out->udeg) || tell_range(run, formula, "any angle there is");
}

/* "5 / 2 is 2.5"; "this is 2.5" where the formula says no more. */
static const char *comes_to(sb_run *run, const sb_formula *formula, sb_number number) {
    sb_style exact = {.step = {1}};
    const char *text = sb_term_text(run, sb_term_quantity(number, SB_DIM_NUMBER), &exact);
    const char *quote = sb_formula_quote(run, formula);
    bool plain = formula->node == SB_NODE_LITERAL || strcmp(quote, text) == 0;
    return sb_pool_print(run->pool, "%s is %s", plain ? "this" : quote, text);
}

bool sb_formula_count(sb_run *run, const sb_formula *formula, sb_scope *scope, int64_t *out) {
    sb_number number;
    if (!evaluate_as(run, formula, scope, SB_DIM_NUMBER, &number))
        return false;
    sb_number whole = sb_number_round(number);
    if (sb_number_compare(number, whole) != 0) {
        sb_error(run, formula->place,
                 "expected a whole number, and %s: floor(...) or ceil(...) makes it whole",
                 comes_to(run, formula, number));
        return false;
    }
    if (sb_number_nearest(whole, 1, out) && *out >= 0 && *out <= most_counted)
        return true;
    sb_error(run, formula->place, "expected a count from 0 to ten million, and %s",
             comes_to(run, formula, number));
    return false;
}

bool sb_formula_truth(sb_run *run, const sb_formula *formula, sb_scope *scope, bool *out) {
    sb_term term = sb_evaluate_in(run, formula, scope);
    *out = term.truth;
    return sb_wants_truth(run, formula, term);
}

bool sb_formula_micro(sb_run *run, const sb_formula *formula, sb_scope *scope, int64_t *millionths) {
    sb_number number;
    if (!evaluate_as(run, formula, scope, SB_DIM_NUMBER, &number))
        return false;
    return sb_number_nearest(number, 1000000, millionths) || tell_range(run, formula, "nine million million");
}
