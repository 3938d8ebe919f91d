/* What operators do with measures, and what they say when the measures do not fit. */
#include "formula/evaluate.h"

#include <math.h>
#include <string.h>

enum {
    HIGHEST_POWER = 9
}; /* of a dimension; a volume is 3 */

/* ---- saying what is what ---- */

static bool is_bare_literal(const sb_formula *formula) {
    while (formula->node == SB_NODE_NEGATE)
        formula = formula->operands[0];
    return formula->node == SB_NODE_LITERAL;
}

static bool is_bare_number(sb_term term) {
    return term.kind == SB_VALUE_QUANTITY && sb_dimension_same(term.dimension, SB_DIM_NUMBER);
}

const char *sb_describe(sb_run *run, sb_term term, const sb_formula *formula) {
    const char *kind = is_bare_number(term) ? "a bare number" : sb_term_kind(run, term);
    return sb_pool_print(run->pool, "%s (%s)", kind, sb_formula_quote(run, formula));
}

static const char *example_unit(sb_dimension wanted) {
    static const struct {
        sb_dimension dimension;
        const char *unit;
    } examples[] = {{{.length = 1}, "mm"}, {{.length = 2}, "m2"}, {{.length = 3}, "m3"},
                    {{.angle = 1}, "deg"}, {{.mass = 1}, "kg"},   {{.time = 1}, "min"}};
    for (size_t i = 0; i < sizeof examples / sizeof *examples; i++)
        if (sb_dimension_same(examples[i].dimension, wanted))
            return examples[i].unit;
    return NULL;
}

const char *sb_unit_hint(sb_run *run, const sb_formula *formula, sb_term term, sb_dimension wanted) {
    const char *unit = example_unit(wanted);
    if (!unit || !is_bare_number(term) || !is_bare_literal(formula))
        return "";
    return sb_pool_print(run->pool, ": write a unit, for example %s %s", sb_formula_quote(run, formula),
                         unit);
}

/* ---- staying in range ---- */

sb_term sb_checked(sb_run *run, const sb_formula *formula, sb_number number, sb_dimension dimension) {
    if (isfinite(number.real))
        return sb_term_quantity(number, dimension);
    sb_error(run, formula->place, "the result of %s is too large to count with",
             sb_formula_quote(run, formula));
    return sb_term_none();
}

/* times * d / parts, in every base dimension; false when one of them is not whole or out of reach. */
static bool scale_one(int8_t exponent, int64_t times, int64_t parts, int8_t *out) {
    if (exponent == 0) {
        *out = 0;
        return true;
    }
    if (times > HIGHEST_POWER * parts || times < -HIGHEST_POWER * parts || exponent * times % parts != 0)
        return false;
    int64_t scaled = exponent * times / parts;
    *out = (int8_t)scaled;
    return scaled >= -HIGHEST_POWER && scaled <= HIGHEST_POWER;
}

static bool scale_dimension(sb_dimension d, int64_t times, int64_t parts, sb_dimension *out) {
    return scale_one(d.length, times, parts, &out->length) && scale_one(d.angle, times, parts, &out->angle) &&
           scale_one(d.mass, times, parts, &out->mass) && scale_one(d.time, times, parts, &out->time) &&
           scale_one(d.money, times, parts, &out->money);
}

static bool join_one(int8_t a, int b, int8_t *out) {
    int sum = a + b;
    *out = (int8_t)sum;
    return sum >= -HIGHEST_POWER && sum <= HIGHEST_POWER;
}

/* The dimension of a product (sign 1) or a quotient (sign -1). */
static bool join_dimensions(sb_dimension a, sb_dimension b, int sign, sb_dimension *out) {
    return join_one(a.length, sign * b.length, &out->length) &&
           join_one(a.angle, sign * b.angle, &out->angle) && join_one(a.mass, sign * b.mass, &out->mass) &&
           join_one(a.time, sign * b.time, &out->time) && join_one(a.money, sign * b.money, &out->money);
}

/* ---- sums ---- */

static sb_term refuse_pair(sb_run *run, const sb_formula *formula, const char *verb, size_t first,
                           const char *joint, const sb_term terms[2]) {
    const sb_formula *const *operands = (const sb_formula *const *)formula->operands;
    const char *hint = sb_unit_hint(run, operands[0], terms[0], terms[1].dimension);
    if (!*hint)
        hint = sb_unit_hint(run, operands[1], terms[1], terms[0].dimension);
    size_t second = 1 - first;
    sb_error(run, formula->place, "cannot %s %s %s %s%s", verb,
             sb_describe(run, terms[first], operands[first]), joint,
             sb_describe(run, terms[second], operands[second]), hint);
    return sb_term_none();
}

static bool both_quantities(const sb_term terms[2]) {
    return terms[0].kind == SB_VALUE_QUANTITY && terms[1].kind == SB_VALUE_QUANTITY;
}

static bool alike(const sb_term terms[2]) {
    return both_quantities(terms) && sb_dimension_same(terms[0].dimension, terms[1].dimension);
}

static sb_term add(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    if (!alike(terms))
        return refuse_pair(run, formula, "add", 1, "to", terms);
    return sb_checked(run, formula, sb_number_add(terms[0].number, terms[1].number), terms[0].dimension);
}

static sb_term subtract(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    if (!alike(terms))
        return refuse_pair(run, formula, "take", 1, "from", terms);
    return sb_checked(run, formula, sb_number_sub(terms[0].number, terms[1].number), terms[0].dimension);
}

/* ---- products ---- */

static sb_term no_such_measure(sb_run *run, const sb_formula *formula) {
    sb_error(run, formula->place, "there is no measure for %s: its power is too high",
             sb_formula_quote(run, formula));
    return sb_term_none();
}

static sb_term multiply(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    sb_dimension dimension;
    if (!both_quantities(terms))
        return refuse_pair(run, formula, "multiply", 0, "by", terms);
    if (!join_dimensions(terms[0].dimension, terms[1].dimension, 1, &dimension))
        return no_such_measure(run, formula);
    return sb_checked(run, formula, sb_number_mul(terms[0].number, terms[1].number), dimension);
}

static sb_term divide(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    sb_dimension dimension;
    if (!both_quantities(terms))
        return refuse_pair(run, formula, "divide", 0, "by", terms);
    if (!join_dimensions(terms[0].dimension, terms[1].dimension, -1, &dimension))
        return no_such_measure(run, formula);
    if (sb_number_sign(terms[1].number) == 0) {
        sb_error(run, formula->operands[1]->place, "division by zero: %s is 0",
                 sb_formula_quote(run, formula->operands[1]));
        return sb_term_none();
    }
    return sb_checked(run, formula, sb_number_div(terms[0].number, terms[1].number), dimension);
}

/* ---- powers ---- */

static sb_term refuse_power(sb_run *run, const sb_formula *base, const char *why) {
    sb_error(run, base->place, "%s: %s", why, sb_formula_quote(run, base));
    return sb_term_none();
}

sb_term sb_power(sb_run *run, const sb_formula *whole, const sb_formula *base, sb_term term, int64_t p,
                 int64_t q) {
    sb_dimension dimension;
    int sign = sb_number_sign(term.number);
    if (sign < 0 && q != 1)
        return refuse_power(run, base, "there is no root of a negative number");
    if (sign == 0 && p < 0)
        return refuse_power(run, base, "division by zero: a negative power of 0");
    if (!scale_dimension(term.dimension, p, q, &dimension)) {
        sb_error(run, whole->place, "there is no measure for %s: %s does not go into it",
                 sb_formula_quote(run, whole), sb_describe(run, term, base));
        return sb_term_none();
    }
    return sb_checked(run, whole, sb_number_power(term.number, p, q), dimension);
}

/* Bare numbers take any exponent. */
static sb_term real_power(sb_run *run, const sb_formula *formula, sb_term base, double exponent) {
    if (!is_bare_number(base)) {
        sb_error(run, formula->operands[1]->place,
                 "the exponent of %s must be an exact fraction, such as 2 or 1/2",
                 sb_describe(run, base, formula->operands[0]));
        return sb_term_none();
    }
    int sign = sb_number_sign(base.number);
    if (sign < 0)
        return refuse_power(run, formula->operands[0], "there is no root of a negative number");
    if (sign == 0 && exponent <= 0)
        return refuse_power(run, formula->operands[0], "division by zero: a negative power of 0");
    return sb_checked(run, formula, sb_number_real(pow(base.number.real, exponent)), SB_DIM_NUMBER);
}

static sb_term power(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    if (terms[0].kind != SB_VALUE_QUANTITY || !is_bare_number(terms[1])) {
        bool base = terms[0].kind != SB_VALUE_QUANTITY;
        sb_error(run, formula->operands[!base]->place, "%s wants %s, and this is %s",
                 base ? "^" : "the exponent of ^", base ? "a measure or a number before it" : "a number",
                 sb_describe(run, terms[!base], formula->operands[!base]));
        return sb_term_none();
    }
    sb_number exponent = terms[1].number;
    if (sb_number_exact(exponent) && exponent.ratio.num > INT32_MIN && exponent.ratio.num < INT32_MAX &&
        exponent.ratio.den < INT32_MAX)
        return sb_power(run, formula, formula->operands[0], terms[0], exponent.ratio.num, exponent.ratio.den);
    return real_power(run, formula, terms[0], exponent.real);
}

/* ---- comparisons ---- */

static bool holds(sb_node node, int order) {
    switch (node) {
    case SB_NODE_EQUAL:
        return order == 0;
    case SB_NODE_UNEQUAL:
        return order != 0;
    case SB_NODE_LESS:
        return order < 0;
    case SB_NODE_AT_MOST:
        return order <= 0;
    case SB_NODE_MORE:
        return order > 0;
    default:
        return order >= 0;
    }
}

/* Two inexact amounts this near each other are equal: a hundredth of what the measure resolves. A relative
 * tolerance alone would find a * tan(x) - a * sin(x) / cos(x) more than 0, or less. */
static double noise_of(sb_dimension dimension) {
    if (sb_dimension_same(dimension, SB_DIM_ANGLE))
        return 1e-2; /* [udeg] */
    bool known = sb_dimension_same(dimension, SB_DIM_NUMBER) || sb_dimension_same(dimension, SB_DIM_LENGTH) ||
                 sb_dimension_same(dimension, SB_DIM_AREA);
    return known ? 1e-8 : 0; /* of a number's millionth; [mm] of a nm; [mm2] of a um2 */
}

static int order_of(const sb_term terms[2]) {
    sb_number a = terms[0].number, b = terms[1].number;
    bool exact = sb_number_exact(a) && sb_number_exact(b);
    if (!exact && fabs(a.real - b.real) <= noise_of(terms[0].dimension))
        return 0;
    return sb_number_compare(a, b);
}

static sb_term compare(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    bool equality = formula->node == SB_NODE_EQUAL || formula->node == SB_NODE_UNEQUAL;
    if (alike(terms))
        return sb_term_truth(holds(formula->node, order_of(terms)));
    if (terms[0].kind != terms[1].kind || both_quantities(terms))
        return refuse_pair(run, formula, "compare", 0, "with", terms);
    if (!equality) {
        sb_error(run, formula->place, "%s has no order: only = and != can compare it",
                 sb_describe(run, terms[0], formula->operands[0]));
        return sb_term_none();
    }
    bool same = terms[0].kind == SB_VALUE_TRUTH ? terms[0].truth == terms[1].truth
                                                : strcmp(terms[0].word, terms[1].word) == 0;
    return sb_term_truth(holds(formula->node, same ? 0 : 1));
}

sb_term sb_operate(sb_run *run, const sb_formula *formula, const sb_term terms[2]) {
    switch (formula->node) {
    case SB_NODE_ADD:
        return add(run, formula, terms);
    case SB_NODE_SUBTRACT:
        return subtract(run, formula, terms);
    case SB_NODE_MULTIPLY:
        return multiply(run, formula, terms);
    case SB_NODE_DIVIDE:
        return divide(run, formula, terms);
    case SB_NODE_POWER:
        return power(run, formula, terms);
    default:
        return compare(run, formula, terms);
    }
}
