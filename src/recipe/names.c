/* Names: each once in its space, none a word of the language; and words that must name something. */
#include "recipe/reader.h"

#include <string.h>

#define uthash_malloc(size)       sb_pool_alloc(pool, (size))
#define uthash_free(memory, size) ((void)(memory), (void)(size))
#include <uthash.h>

typedef struct recipe_spelling {
    const char *word;
    recipe_name *last;
    UT_hash_handle hh;
} recipe_spelling;

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

static recipe_name *last_name(const recipe_reader *reader, const char *word) {
    recipe_spelling *found = NULL;
    HASH_FIND_STR(reader->spellings, word, found);
    return found ? found->last : NULL;
}

const recipe_name *recipe_find_name(const recipe_reader *reader, recipe_space space, const char *word) {
    const recipe_name *name = last_name(reader, word);
    while (name && name->space != space)
        name = name->alike;
    return name;
}

static void tell_taken(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token) {
    const recipe_name *first = NULL;
    for (const recipe_name *name = last_name(reader, token->text); name; name = name->alike)
        if (clash(name, space, what))
            first = name;
    if (first)
        sb_error(reader->run, token->place, "\"%s\" is the name of %s %s in line %zu already", token->text,
                 strchr("aeiou", *first->what) ? "an" : "a", first->what, recipe_line_number(first->place));
}

static void push_name(recipe_reader *reader, recipe_name *name) {
    sb_pool *pool = reader->run->pool;
    recipe_spelling *spelling = NULL;
    HASH_FIND_STR(reader->spellings, name->word, spelling);
    if (!spelling) {
        spelling = SB_NEW(pool, recipe_spelling);
        spelling->word = name->word;
        HASH_ADD_KEYPTR(hh, reader->spellings, spelling->word, strlen(spelling->word), spelling);
    }
    name->alike = spelling->last;
    spelling->last = name;
    SB_PUSH(pool, reader->names, name);
}

void recipe_add_name(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token) {
    if (reserved(space, token->text))
        sb_error(reader->run, token->place, "\"%s\" has a meaning of its own here: expected another name",
                 token->text);
    else
        tell_taken(reader, space, what, token);
    recipe_name *name = SB_NEW(reader->run->pool, recipe_name);
    *name = (recipe_name){.space = space, .word = token->text, .what = what, .place = token->place};
    push_name(reader, name);
}

const sb_token *recipe_new_name(recipe_reader *reader, recipe_space space, const char *what) {
    const sb_token *token = recipe_word(reader, "a name");
    if (token)
        recipe_add_name(reader, space, what, token);
    return token;
}

/* From here on another repeat may count with the same name. */
void recipe_counter_gone(recipe_reader *reader, const char *word) {
    recipe_name *name = last_name(reader, word);
    while (name && name->space != RECIPE_VALUES)
        name = name->alike;
    if (name)
        name->gone = true;
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
        if (reader->names.items[i]->space == reference->space)
            recipe_add_word(reader->run, &known, reader->names.items[i]->word);
    sb_error_unknown(reader->run, reference->place, reference->what, reference->word, known.items,
                     known.count);
}

void recipe_check_references(recipe_reader *reader) {
    for (size_t i = 0; i < reader->references.count; i++)
        if (!recipe_find_name(reader, reader->references.items[i].space, reader->references.items[i].word))
            tell_unknown(reader, &reader->references.items[i]);
}
