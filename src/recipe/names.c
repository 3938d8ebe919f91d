/* Names: each once in its space, none a word of the language; and words that must name something. */
#include "recipe/reader.h"

#include <string.h>

static const char *const grammar_words[] = {"and", "or",   "not", "when", "per",  "from", "to",
                                            "of",  "with", "on",  "end",  "true", "false"};

static bool is_grammar_word(const char *word) {
    for (size_t i = 0; i < sizeof grammar_words / sizeof *grammar_words; i++)
        if (strcmp(grammar_words[i], word) == 0)
            return true;
    return false;
}

static bool in_formulas(recipe_space space) {
    return space == RECIPE_VALUES || space == RECIPE_WORDS;
}

static bool made(recipe_space space) {
    return space == RECIPE_PARTS || space == RECIPE_COMPONENTS;
}

/* Parts and roles never stand alone in a formula, so they may be called like a function: `floor`. */
static bool reserved(recipe_space space, const char *word) {
    return in_formulas(space) ? sb_formula_reserved(word) : is_grammar_word(word);
}

/* ---- what is taken ------------------------------------------------------------------------------------------ */

/* Words of choices and names of values meet in formulas. Two choices may have the same word, a role several
 * lines, and a counter may be used again once its repeat has ended. */
static bool clash(const recipe_name *name, recipe_space space, const char *what) {
    if (name->gone && strcmp(name->what, what) == 0)
        return false;
    if (space == name->space)
        return space != RECIPE_WORDS && space != RECIPE_ROLES;
    return (in_formulas(space) && in_formulas(name->space)) || (made(space) && made(name->space));
}

const recipe_name *recipe_find_name(const recipe_reader *reader, recipe_space space, const char *word) {
    for (size_t i = 0; i < reader->names.count; i++)
        if (reader->names.items[i].space == space && strcmp(reader->names.items[i].word, word) == 0)
            return &reader->names.items[i];
    return NULL;
}

static void tell_taken(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token) {
    for (size_t i = 0; i < reader->names.count; i++) {
        const recipe_name *name = &reader->names.items[i];
        if (strcmp(name->word, token->text) != 0 || !clash(name, space, what))
            continue;
        sb_error(
            reader->run, token->place, "\"%s\" is the name of %s in line %zu already", token->text,
            sb_pool_print(reader->run->pool, "%s %s", strchr("aeiou", *name->what) ? "an" : "a", name->what),
            recipe_line_number(name->place));
        return;
    }
}

void recipe_add_name(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token) {
    if (reserved(space, token->text))
        sb_error(reader->run, token->place, "\"%s\" has a meaning of its own here: expected another name",
                 token->text);
    else
        tell_taken(reader, space, what, token);
    recipe_name name = {.space = space, .word = token->text, .what = what, .place = token->place};
    SB_PUSH(reader->run->pool, reader->names, name);
}

const sb_token *recipe_new_name(recipe_reader *reader, recipe_space space, const char *what) {
    const sb_token *token = recipe_word(reader, "a name");
    if (token)
        recipe_add_name(reader, space, what, token);
    return token;
}

/* From here on another repeat may count with the same name. */
void recipe_counter_gone(recipe_reader *reader, const char *word) {
    for (size_t i = reader->names.count; i > 0; i--) {
        recipe_name *name = &reader->names.items[i - 1];
        if (name->space != RECIPE_VALUES || strcmp(name->word, word) != 0)
            continue;
        name->gone = true;
        return;
    }
}

/* ---- what is asked for ---------------------------------------------------------------------------------------- */

void recipe_refer(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token) {
    recipe_name name = {.space = space, .word = token->text, .what = what, .place = token->place};
    SB_PUSH(reader->run->pool, reader->references, name);
}

void recipe_add_word(sb_run *run, recipe_words *words, const char *word) {
    for (size_t i = 0; i < words->count; i++)
        if (strcmp(words->items[i], word) == 0)
            return;
    SB_PUSH(run->pool, *words, word);
}

static void tell_unknown(recipe_reader *reader, const recipe_name *reference) {
    recipe_words known = {0};
    for (size_t i = 0; i < reader->names.count; i++)
        if (reader->names.items[i].space == reference->space)
            recipe_add_word(reader->run, &known, reader->names.items[i].word);
    sb_error_unknown(reader->run, reference->place, reference->what, reference->word, known.items,
                     known.count);
}

void recipe_check_references(recipe_reader *reader) {
    for (size_t i = 0; i < reader->references.count; i++)
        if (!recipe_find_name(reader, reader->references.items[i].space, reader->references.items[i].word))
            tell_unknown(reader, &reader->references.items[i]);
}
