/* The names a formula asks for, without evaluating it. */
#include "formula/tree.h"

void sb_formula_names(const sb_formula *formula,
                      void (*seen)(void *context, const char *owner, const char *attribute, sb_place at),
                      void *context) {
    if (formula->node == SB_NODE_NAME)
        seen(context, formula->word, NULL, formula->place);
    if (formula->node == SB_NODE_ATTRIBUTE)
        seen(context, formula->word, formula->attribute, formula->place);
    for (size_t i = 0; i < formula->count; i++)
        sb_formula_names(formula->operands[i], seen, context);
}
