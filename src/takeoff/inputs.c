/* Inputs and choices: what the caller gives, or what the recipe says when nothing is given. */
#include "takeoff/inside.h"

#include <string.h>

const sb_recipe_set *takeoff_given(const takeoff_givens *givens, const char *name) {
    for (size_t i = givens->sets.count; i > 0; i--)
        if (strcmp(givens->sets.items[i - 1].name, name) == 0)
            return &givens->sets.items[i - 1];
    return NULL;
}

/* ---- choices ------------------------------------------------------------------------------------------- */

static const char *find_word(const sb_recipe_choice *choice, const char *word) {
    for (size_t i = 0; i < choice->words.count; i++)
        if (strcmp(choice->words.items[i], word) == 0)
            return choice->words.items[i];
    return NULL;
}

static const char *unknown_word(takeoff_making *making, const sb_recipe_choice *choice, sb_place at,
                                const char *word) {
    sb_error_unknown(making->walk->run, at,
                     sb_pool_print(making->walk->run->pool, "word for %s", choice->name), word,
                     choice->words.items, choice->words.count);
    return NULL;
}

/* A word of the choice stands for itself; anything else is a formula that must come to such a word. */
static const char *chosen_word(takeoff_making *making, const takeoff_givens *givens,
                               const sb_recipe_choice *choice, const sb_recipe_set *set) {
    sb_run *run = making->walk->run;
    sb_place at = sb_formula_place(set->formula);
    const char *text = sb_place_text(run, at), *word = find_word(choice, text);
    bool plain =
        text[strspn(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_")] == '\0';
    if (word)
        return word;
    if (plain && !sb_scope_has(givens->scope, text))
        return unknown_word(making, choice, at, text);
    sb_value value = sb_formula_value(run, set->formula, givens->scope);
    if (value.kind == SB_VALUE_NONE)
        return NULL;
    if (value.kind != SB_VALUE_WORD)
        return unknown_word(making, choice, at,
                            sb_value_text(run, value, &making->walk->shop->settings.style));
    word = find_word(choice, value.word);
    return word ? word : unknown_word(making, choice, at, value.word);
}

const char *takeoff_choice(takeoff_making *making, const takeoff_givens *givens,
                           const sb_recipe_choice *choice) {
    const sb_recipe_set *set = takeoff_given(givens, choice->name);
    if (making->walk->tried == choice)
        return making->walk->tried_word;
    if (set)
        return chosen_word(making, givens, choice, set);
    return choice->words.count ? choice->words.items[0] : NULL;
}

static bool set_choices(takeoff_making *making, const takeoff_givens *givens) {
    sb_run *run = making->walk->run;
    bool good = true;
    for (size_t i = 0; i < making->recipe->choices.count; i++) {
        const sb_recipe_choice *choice = &making->recipe->choices.items[i];
        const char *word = takeoff_choice(making, givens, choice);
        sb_scope_set(run, making->scope, choice->name, word ? sb_value_word(word) : (sb_value){0});
        sb_scope_choice(run, making->scope, choice->name, choice->words.items, choice->words.count);
        good = word && good;
    }
    return good;
}

/* ---- inputs -------------------------------------------------------------------------------------------- */

sb_value takeoff_input(takeoff_making *making, const takeoff_givens *givens, const sb_recipe_input *input) {
    const sb_recipe_set *set = takeoff_given(givens, input->name);
    return set ? sb_formula_value(making->walk->run, set->formula, givens->scope)
               : sb_formula_value(making->walk->run, input->standard, making->scope);
}

/* What is given is worked out where it is written; a default waits until it is asked for. */
static bool set_inputs(takeoff_making *making, const takeoff_givens *givens) {
    sb_run *run = making->walk->run;
    bool good = true;
    for (size_t i = 0; i < making->recipe->inputs.count; i++) {
        const sb_recipe_input *input = &making->recipe->inputs.items[i];
        if (!takeoff_given(givens, input->name)) {
            sb_scope_set_formula(run, making->scope, input->name, input->standard);
            continue;
        }
        sb_value value = takeoff_input(making, givens, input);
        sb_scope_set(run, making->scope, input->name, value);
        good = value.kind != SB_VALUE_NONE && good;
    }
    return good;
}

bool takeoff_check_names(takeoff_making *making, const takeoff_givens *givens) {
    const sb_recipe *recipe = making->recipe;
    size_t count = recipe->inputs.count + recipe->choices.count;
    const char **known = SB_NEW_ARRAY(making->walk->run->pool, const char *, count + 1);
    bool good = true;
    for (size_t i = 0; i < count; i++)
        known[i] = i < recipe->inputs.count ? recipe->inputs.items[i].name
                                            : recipe->choices.items[i - recipe->inputs.count].name;
    for (size_t i = 0; i < givens->sets.count; i++) {
        bool found = false;
        for (size_t j = 0; j < count && !found; j++)
            found = strcmp(known[j], givens->sets.items[i].name) == 0;
        if (!found)
            sb_error_unknown(making->walk->run, givens->sets.items[i].place, "input",
                             givens->sets.items[i].name, known, count);
        good = found && good;
    }
    return good;
}

bool takeoff_set_inputs(takeoff_making *making, const takeoff_givens *givens) {
    bool named = takeoff_check_names(making, givens), chosen = set_choices(making, givens);
    return set_inputs(making, givens) && named && chosen;
}
