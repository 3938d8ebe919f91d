/* What may be a name, and the names a formula asks for. */
#include "formula/tree.h"

#include <string.h>

bool sb_formula_reserved(const char *word) {
    static const char *const words[] = {"and", "or",   "not", "when", "per",  "from", "to",
                                        "of",  "with", "on",  "end",  "true", "false"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strcmp(words[i], word) == 0)
            return true;
    return sb_function_find(word) != NULL;
}

void sb_error_glued_minus(sb_run *run, sb_place at, const char *word, const char *hyphen, const char *right) {
    sb_error(run, at, "'%s' is one word: write blanks around the minus: %s - %s", word,
             sb_pool_copy(run->pool, word, (size_t)(hyphen - word)), right);
}

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
