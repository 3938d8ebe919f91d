/* formula/tree.h -- the tree a formula is read into. */
#ifndef FORMULA_TREE_H
#define FORMULA_TREE_H

#include "formula/functions.h"
#include "formula/term.h"

typedef enum sb_node {
    SB_NODE_LITERAL,   /* 20 mm, true */
    SB_NODE_NAME,      /* long, slatted */
    SB_NODE_ATTRIBUTE, /* slat.width */
    SB_NODE_CALL,
    SB_NODE_NEGATE,
    SB_NODE_NOT,
    SB_NODE_AND,
    SB_NODE_OR,
    SB_NODE_ADD,
    SB_NODE_SUBTRACT,
    SB_NODE_MULTIPLY,
    SB_NODE_DIVIDE,
    SB_NODE_POWER,
    SB_NODE_EQUAL,
    SB_NODE_UNEQUAL,
    SB_NODE_LESS,
    SB_NODE_AT_MOST,
    SB_NODE_MORE,
    SB_NODE_AT_LEAST
} sb_node;

struct sb_formula {
    sb_node node;
    sb_place place; /* with its parentheses, if any */
    bool wrapped;   /* it stands in parentheses */
    size_t height;  /* of the tree below: a leaf is 1 */
    sb_formula **operands;
    size_t count;
    sb_term literal;
    const char *word, *attribute;
    const sb_function *function;
};

/* The formula's own text without parentheses around the whole, shortened when it is long: for messages. */
const char *sb_formula_quote(sb_run *run, const sb_formula *formula);

/* `long-20` is one word where a difference was meant; `hyphen` points into the word, `right` goes behind. */
void sb_error_glued_minus(sb_run *run, sb_place at, const char *word, const char *hyphen, const char *right);

#endif
