/* Reading a formula. One function per level of the grammar, lowest first:
 *
 *   or < and < not < comparison < + - < * / < unary - < ^ < operand
 *
 * Comparisons do not chain, ^ groups to the right, all others to the left. A formula ends where an
 * operand is followed by something that is not an operator, so that `4 per piece` leaves `per` to its reader.
 */
#include "formula/tree.h"

#include <string.h>

enum {
    DEEPEST_NESTING = 200,
    TALLEST_TREE = 500
};

typedef struct parser {
    sb_run *run;
    sb_cursor *cursor;
    bool decimal_comma;
    bool failed; /* an error was told, and reading went on to find more */
    int nesting;
    int listing; /* lists of arguments we are inside of */
} parser;

typedef sb_formula *rule(parser *p);

typedef struct sign {
    const char *text;
    sb_node node;
} sign;

static rule parse_any, parse_not, parse_negated;

/* ---- nodes ---- */

static sb_formula *leaf(parser *p, sb_node node, sb_place place) {
    sb_formula *formula = SB_NEW(p->run->pool, sb_formula);
    formula->node = node;
    formula->place = place;
    formula->height = 1;
    return formula;
}

static sb_formula *branch(parser *p, sb_node node, sb_place place, sb_formula *const *operands,
                          size_t count) {
    sb_formula *formula = leaf(p, node, place);
    formula->operands = SB_NEW_ARRAY(p->run->pool, sb_formula *, count ? count : 1);
    formula->count = count;
    for (size_t i = 0; i < count; i++) {
        formula->operands[i] = operands[i];
        if (operands[i]->height >= formula->height)
            formula->height = operands[i]->height + 1;
    }
    if (formula->height <= TALLEST_TREE)
        return formula;
    sb_error(p->run, operands[count - 1]->place,
             "this formula has more than %d steps in a row: give parts of it a name with 'let'",
             TALLEST_TREE);
    return NULL;
}

static sb_formula *join(parser *p, sb_node node, sb_formula *left, sb_formula *right) {
    if (!left || !right)
        return NULL;
    return branch(p, node, sb_place_span(left->place, right->place), (sb_formula *[]){left, right}, 2);
}

/* ---- levels ---- */

/* Recursion ends here before the stack does. */
static sb_formula *deeper(parser *p, rule *inner) {
    if (p->nesting == DEEPEST_NESTING) {
        sb_error(p->run, p->cursor->at->place,
                 "this formula is nested more than %d deep: give parts of it a name with 'let'",
                 DEEPEST_NESTING);
        return NULL;
    }
    p->nesting++;
    sb_formula *formula = inner(p);
    p->nesting--;
    return formula;
}

static bool take(parser *p, const sign *signs, size_t count, sb_node *node) {
    for (size_t i = 0; i < count; i++) {
        const char *text = signs[i].text;
        if (sb_take_symbol(p->cursor, text) || (text[0] >= 'a' && sb_take_word(p->cursor, text))) {
            *node = signs[i].node;
            return true;
        }
    }
    return false;
}

/* operand { operator operand }, grouped to the left */
static sb_formula *chain(parser *p, rule *operand, const sign *signs, size_t count) {
    sb_formula *left = operand(p);
    sb_node node;
    while (left && take(p, signs, count, &node))
        left = join(p, node, left, operand(p));
    return left;
}

static sb_formula *parse_product(parser *p) {
    static const sign signs[] = {{"*", SB_NODE_MULTIPLY}, {"/", SB_NODE_DIVIDE}};
    return chain(p, parse_negated, signs, 2);
}

static sb_formula *parse_sum(parser *p) {
    static const sign signs[] = {{"+", SB_NODE_ADD}, {"-", SB_NODE_SUBTRACT}};
    return chain(p, parse_product, signs, 2);
}

static const sign comparisons[] = {{"=", SB_NODE_EQUAL},     {"!=", SB_NODE_UNEQUAL}, {"<=", SB_NODE_AT_MOST},
                                   {">=", SB_NODE_AT_LEAST}, {"<", SB_NODE_LESS},     {">", SB_NODE_MORE}};
enum {
    COMPARISON_COUNT = sizeof comparisons / sizeof *comparisons
};

static bool doubled_equals(parser *p) {
    if (!sb_at_symbol(p->cursor, "=") && !sb_at_symbol(p->cursor, "=="))
        return false;
    sb_error(p->run, p->cursor->at->place, "one = compares; two are not needed");
    return true;
}

static sb_formula *parse_comparison(parser *p) {
    sb_formula *left = parse_sum(p);
    sb_node node, second;
    if (!left || !take(p, comparisons, COMPARISON_COUNT, &node))
        return left;
    if (node == SB_NODE_EQUAL && doubled_equals(p))
        return NULL;
    sb_formula *compared = join(p, node, left, parse_sum(p));
    sb_place place = p->cursor->at->place;
    if (!compared || !take(p, comparisons, COMPARISON_COUNT, &second))
        return compared;
    sb_error(p->run, place, "comparisons do not chain: write a < b and b < c");
    return NULL;
}

static sb_formula *parse_not(parser *p) {
    sb_place place = p->cursor->at->place;
    if (!sb_take_word(p->cursor, "not"))
        return parse_comparison(p);
    sb_formula *operand = deeper(p, parse_not);
    return operand ? branch(p, SB_NODE_NOT, sb_place_span(place, operand->place), &operand, 1) : NULL;
}

static sb_formula *parse_and(parser *p) {
    return chain(p, parse_not, &(sign){"and", SB_NODE_AND}, 1);
}

static sb_formula *parse_any(parser *p) {
    return chain(p, parse_and, &(sign){"or", SB_NODE_OR}, 1);
}

/* ---- operands ---- */

static sb_formula *expected(parser *p, const char *what) {
    const sb_token *token = p->cursor->at;
    if (token->kind == SB_END)
        sb_error(p->run, token->place, "expected %s, found the end of the line", what);
    else
        sb_error(p->run, token->place, "expected %s, found '%s'", what,
                 token->kind == SB_TEXT ? ":" : sb_place_text(p->run, token->place));
    return NULL;
}

static sb_formula *expected_operand(parser *p) {
    return expected(p, "a measure, a number, a name or (");
}

/* A quantity that cannot be read is told, and reading goes on: the line may hold more mistakes. */
static sb_formula *parse_quantity(parser *p) {
    const sb_token *token = p->cursor->at++;
    sb_formula *formula = leaf(p, SB_NODE_LITERAL, token->place);
    sb_quantity quantity;
    const char *why;
    if (sb_quantity_read(p->run, token->text, p->decimal_comma, &quantity, &why)) {
        formula->literal = sb_term_quantity(sb_number_of(quantity.amount), quantity.dimension);
        p->failed =
            sb_tell_number_in_pieces(p->run, p->cursor, p->decimal_comma, p->listing > 0) || p->failed;
    } else {
        sb_error(p->run, token->place, "%s", why);
        p->failed = true;
    }
    return formula;
}

static bool take_close(parser *p, sb_place opened) {
    if (sb_take_symbol(p->cursor, ")"))
        return true;
    if (sb_tell_no_unit(p->run, p->cursor, p->decimal_comma)) {
        p->failed = true;
        return take_close(p, opened);
    }
    expected(p, sb_pool_print(p->run->pool, "an operator or ) for the ( in column %zu",
                              sb_place_position(opened).column));
    return false;
}

static sb_formula *parse_group(parser *p) {
    sb_place opened = p->cursor->at->place;
    sb_take_symbol(p->cursor, "(");
    sb_formula *inner = deeper(p, parse_any);
    sb_place closed = p->cursor->at->place;
    if (!inner || !take_close(p, opened))
        return NULL;
    inner->place = sb_place_span(opened, closed);
    inner->wrapped = true;
    return inner;
}

static bool count_fits(parser *p, const sb_formula *call) {
    const sb_function *function = call->function;
    if (call->count >= function->least && (function->most == SB_ANY_COUNT || call->count <= function->most))
        return true;
    sb_error(p->run, call->place, "%s has %zu argument%s here: expected %s", function->name, call->count,
             call->count == 1 ? "" : "s", function->usage);
    return false;
}

static sb_formula *parse_arguments(parser *p, const sb_token *name, const sb_function *function) {
    SB_LIST(sb_formula *) arguments = {0};
    sb_place opened = p->cursor->at->place;
    sb_take_symbol(p->cursor, "(");
    bool more = !sb_at_symbol(p->cursor, ")");
    while (more) {
        p->listing++;
        sb_formula *argument = deeper(p, parse_any);
        p->listing--;
        if (!argument)
            return NULL;
        SB_PUSH(p->run->pool, arguments, argument);
        more = sb_take_symbol(p->cursor, ",");
    }
    sb_place closed = p->cursor->at->place;
    if (!take_close(p, opened))
        return NULL;
    sb_formula *call =
        branch(p, SB_NODE_CALL, sb_place_span(name->place, closed), arguments.items, arguments.count);
    if (call)
        call->function = function;
    if (call && function && !count_fits(p, call))
        p->failed = true;
    return call;
}

static sb_formula *parse_call(parser *p, const sb_token *name) {
    const sb_function *function = sb_function_find(name->text);
    if (!function) {
        size_t count;
        const char *const *known = sb_function_names(p->run, &count);
        sb_error_unknown(p->run, name->place, "function", name->text, known, count);
        p->failed = true;
    }
    return parse_arguments(p, name, function);
}

static sb_formula *parse_attribute(parser *p, const sb_token *owner) {
    sb_take_symbol(p->cursor, ".");
    const sb_token *attribute = p->cursor->at;
    if (attribute->kind != SB_WORD)
        return expected(p, sb_pool_print(p->run->pool, "a word behind '%s.', as in slat.width", owner->text));
    p->cursor->at++;
    sb_formula *formula = leaf(p, SB_NODE_ATTRIBUTE, sb_place_span(owner->place, attribute->place));
    formula->word = owner->text;
    formula->attribute = attribute->text;
    return formula;
}

static sb_formula *parse_truth(parser *p, const sb_token *word) {
    sb_formula *formula = leaf(p, SB_NODE_LITERAL, word->place);
    formula->literal = sb_term_truth(strcmp(word->text, "true") == 0);
    return formula;
}

/* `long-20 mm`: a hyphen makes it one word, and a unit is left over. A difference was meant. */
static void tell_glued_minus(parser *p, const sb_token *word) {
    const char *hyphen = strrchr(word->text, '-'), *why;
    const sb_token *unit = p->cursor->at;
    sb_quantity quantity;
    if (!hyphen || hyphen[1] < '0' || hyphen[1] > '9' || unit->kind != SB_WORD)
        return;
    const char *right = sb_pool_print(p->run->pool, "%s %s", hyphen + 1, unit->text);
    if (!sb_quantity_read(p->run, right, p->decimal_comma, &quantity, &why))
        return;
    sb_error_glued_minus(p->run, sb_place_span(word->place, unit->place), word->text, hyphen, right);
    p->cursor->at++;
    p->failed = true;
}

static bool is_exponent(const char *word) {
    size_t digits = strspn(word, "0123456789");
    const char *mark = word + digits;
    if (digits == 0 || (*mark != 'e' && *mark != 'E'))
        return false;
    mark += mark[1] == '-' ? 2 : 1;
    return *mark >= '0' && *mark <= '9';
}

/* `1e300 m`: a word to the lexer, and meant as a number. Its unit is taken along. */
static void tell_exponent(parser *p, const sb_token *word) {
    sb_quantity quantity;
    const char *why;
    if (!is_exponent(word->text) || sb_quantity_read(p->run, word->text, p->decimal_comma, &quantity, &why))
        return;
    sb_error(p->run, word->place, "%s", why);
    p->failed = true;
    const char *unit = sb_pool_print(p->run->pool, "1 %s", p->cursor->at->text);
    if (p->cursor->at->kind == SB_WORD && sb_quantity_read(p->run, unit, p->decimal_comma, &quantity, &why))
        p->cursor->at++;
}

static sb_formula *parse_name(parser *p, const sb_token *word) {
    tell_exponent(p, word);
    tell_glued_minus(p, word);
    sb_formula *formula = leaf(p, SB_NODE_NAME, word->place);
    formula->word = word->text;
    return formula;
}

static sb_formula *parse_word(parser *p) {
    const sb_token *word = p->cursor->at;
    const sb_function *function = sb_function_find(word->text);
    bool truth = strcmp(word->text, "true") == 0 || strcmp(word->text, "false") == 0;
    if (sb_formula_reserved(word->text) && !function && !truth)
        return expected_operand(p);
    p->cursor->at++;
    if (sb_at_symbol(p->cursor, "("))
        return parse_call(p, word);
    if (truth)
        return parse_truth(p, word);
    if (sb_at_symbol(p->cursor, "."))
        return parse_attribute(p, word);
    if (!function)
        return parse_name(p, word);
    sb_error(p->run, word->place, "%s is a function: expected %s", function->name, function->usage);
    return NULL;
}

static sb_formula *parse_operand(parser *p) {
    if (p->cursor->at->kind == SB_QUANTITY)
        return parse_quantity(p);
    if (p->cursor->at->kind == SB_WORD)
        return parse_word(p);
    return sb_at_symbol(p->cursor, "(") ? parse_group(p) : expected_operand(p);
}

static sb_formula *parse_power(parser *p) {
    sb_formula *base = parse_operand(p);
    if (!base || !sb_take_symbol(p->cursor, "^"))
        return base;
    return join(p, SB_NODE_POWER, base, deeper(p, parse_negated));
}

static sb_formula *parse_negated(parser *p) {
    sb_place place = p->cursor->at->place;
    if (!sb_take_symbol(p->cursor, "-"))
        return parse_power(p);
    sb_formula *operand = deeper(p, parse_negated);
    return operand ? branch(p, SB_NODE_NEGATE, sb_place_span(place, operand->place), &operand, 1) : NULL;
}

/* ---- the whole ---- */

const sb_formula *sb_formula_parse(sb_run *run, sb_cursor *cursor, bool decimal_comma) {
    parser p = {.run = run, .cursor = cursor, .decimal_comma = decimal_comma};
    const sb_formula *formula = parse_any(&p);
    return p.failed ? NULL : formula;
}

sb_place sb_formula_place(const sb_formula *formula) {
    return formula->place;
}
