/* Names and what they stand for. A name's formula is evaluated in the scope that holds the name, once, and
 * its value kept: what it comes to cannot depend on who asks. */
#include "formula/evaluate.h"

#include <string.h>

#define uthash_malloc(size)       sb_pool_alloc(pool, size)
#define uthash_free(memory, size) ((void)(memory), (void)(size))
#include <uthash.h>

typedef enum state {
    UNASKED,
    ASKED,
    KNOWN
} state;

typedef struct sb_scope_name {
    const char *key; /* a name, `owner.attribute` or a word */
    sb_scope *scope;
    state state;
    sb_term term;                /* when KNOWN */
    const sb_formula *formula;   /* when not */
    bool open;                   /* only the kind of what the formula comes to is known */
    struct sb_scope_name *asker; /* when ASKED: the name whose formula asked, NULL for none */
    const char *const *choices;  /* words that it is chosen from */
    size_t choice_count;
    UT_hash_handle hh;
} sb_scope_name;

struct sb_scope {
    sb_scope *parent;
    sb_scope_name *names, *attributes, *words;
};

/* ---- filling ---- */

sb_scope *sb_scope_new(sb_run *run, sb_scope *parent) {
    sb_scope *scope = SB_NEW(run->pool, sb_scope);
    scope->parent = parent;
    return scope;
}

static sb_scope_name *find_here(sb_scope_name *table, const char *key) {
    sb_scope_name *entry;
    HASH_FIND_STR(table, key, entry);
    return entry;
}

/* NULL when the key is taken in this table. */
static sb_scope_name *add(sb_pool *pool, sb_scope *scope, sb_scope_name **table, const char *key) {
    if (find_here(*table, key))
        return NULL;
    sb_scope_name *entry = SB_NEW(pool, sb_scope_name);
    entry->key = sb_pool_copy(pool, key, strlen(key));
    entry->scope = scope;
    HASH_ADD_KEYPTR(hh, *table, entry->key, strlen(entry->key), entry);
    return entry;
}

static bool add_value(sb_pool *pool, sb_scope *scope, sb_scope_name **table, const char *key,
                      sb_value value) {
    sb_scope_name *entry = add(pool, scope, table, key);
    if (!entry)
        return false;
    entry->state = KNOWN;
    entry->term = sb_term_of(value);
    return true;
}

bool sb_scope_set(sb_run *run, sb_scope *scope, const char *name, sb_value value) {
    return !sb_formula_reserved(name) && add_value(run->pool, scope, &scope->names, name, value);
}

bool sb_scope_set_formula(sb_run *run, sb_scope *scope, const char *name, const sb_formula *formula) {
    sb_scope_name *entry = sb_formula_reserved(name) ? NULL : add(run->pool, scope, &scope->names, name);
    if (entry)
        entry->formula = formula;
    return entry != NULL;
}

bool sb_scope_set_open(sb_run *run, sb_scope *scope, const char *name, const sb_formula *formula) {
    if (!sb_scope_set_formula(run, scope, name, formula))
        return false;
    find_here(scope->names, name)->open = true;
    return true;
}

static const char *attribute_key(sb_run *run, const char *owner, const char *attribute) {
    return sb_pool_print(run->pool, "%s.%s", owner, attribute);
}

bool sb_scope_set_attribute(sb_run *run, sb_scope *scope, const char *owner, const char *attribute,
                            sb_value value) {
    return add_value(run->pool, scope, &scope->attributes, attribute_key(run, owner, attribute), value);
}

void sb_scope_word(sb_run *run, sb_scope *scope, const char *word) {
    sb_scope_name *entry = add(run->pool, scope, &scope->words, word);
    if (!entry)
        return;
    entry->state = KNOWN;
    entry->term = sb_term_word(entry->key);
}

void sb_scope_choice(sb_run *run, sb_scope *scope, const char *name, const char *const *words, size_t count) {
    sb_scope_name *entry = find_here(scope->names, name);
    for (size_t i = 0; i < count; i++)
        sb_scope_word(run, scope, words[i]);
    if (entry)
        entry->choices = words, entry->choice_count = count;
}

/* ---- looking up ---- */

static sb_scope_name *find_name(const sb_scope *scope, const char *name) {
    for (; scope; scope = scope->parent) {
        sb_scope_name *entry = find_here(scope->names, name);
        if (entry)
            return entry;
    }
    return NULL;
}

static sb_scope_name *find_word(const sb_scope *scope, const char *word) {
    for (; scope; scope = scope->parent) {
        sb_scope_name *entry = find_here(scope->words, word);
        if (entry)
            return entry;
    }
    return NULL;
}

static sb_scope_name *find_attribute(const sb_scope *scope, const char *key) {
    for (; scope; scope = scope->parent) {
        sb_scope_name *entry = find_here(scope->attributes, key);
        if (entry)
            return entry;
    }
    return NULL;
}

bool sb_scope_has(const sb_scope *scope, const char *name) {
    return find_name(scope, name) != NULL;
}

/* ---- asking for a name that stands for a formula ---- */

/* From `entry` over all that asked since, back to `entry`: a -> b -> a. Those in the circle become NONE as
 * the walk comes back through them, so it is told once. */
static const char *circle(sb_run *run, const sb_scope_name *entry, const sb_scope_name *last) {
    const char *text = entry->key;
    const sb_scope_name *name = last;
    for (; name != entry; name = name->asker)
        text = sb_pool_print(run->pool, "%s -> %s", name->key, text);
    return sb_pool_print(run->pool, "%s -> %s", entry->key, text);
}

/* It stays NONE, so that this is told once. */
static sb_term too_deep(sb_run *run, const sb_formula *formula, sb_scope_name *entry) {
    sb_error(run, formula->place, "names stand for names more than %d steps deep here", SB_DEEPEST_WALK);
    entry->state = KNOWN;
    entry->term = sb_term_none();
    return entry->term;
}

static sb_term settle(sb_evaluation *evaluation, const sb_formula *formula, sb_scope_name *entry) {
    if (entry->state == KNOWN)
        return entry->term;
    if (entry->state == ASKED) {
        sb_error(evaluation->run, formula->place, "%s depends on itself: %s", entry->key,
                 circle(evaluation->run, entry, evaluation->asker));
        return sb_term_none();
    }
    if (evaluation->depth > SB_DEEPEST_WALK)
        return too_deep(evaluation->run, formula, entry);
    entry->state = ASKED;
    entry->asker = evaluation->asker;
    sb_evaluation inner = {evaluation->run, entry->scope, entry, evaluation->depth};
    entry->term = sb_evaluate(&inner, entry->formula);
    if (entry->open)
        entry->term = sb_term_open(entry->term);
    entry->state = KNOWN;
    return entry->term;
}

/* ---- what is not known ---- */

typedef SB_LIST(const char *) string_list;

static void collect(sb_pool *pool, sb_scope_name *table, string_list *list) {
    for (sb_scope_name *entry = table; entry; entry = entry->hh.next)
        SB_PUSH(pool, *list, entry->key);
}

static string_list names_and_words(sb_pool *pool, const sb_scope *scope) {
    string_list known = {0};
    for (; scope; scope = scope->parent) {
        collect(pool, scope->names, &known);
        collect(pool, scope->words, &known);
    }
    return known;
}

static string_list attributes_of(sb_pool *pool, const sb_scope *scope, const char *owner) {
    string_list found = {0};
    size_t size = strlen(owner);
    for (; scope; scope = scope->parent)
        for (sb_scope_name *entry = scope->attributes; entry; entry = entry->hh.next)
            if (strncmp(entry->key, owner, size) == 0 && entry->key[size] == '.')
                SB_PUSH(pool, found, entry->key + size + 1);
    return found;
}

static string_list owners(sb_pool *pool, const sb_scope *scope) {
    string_list found = {0};
    for (; scope; scope = scope->parent)
        for (sb_scope_name *entry = scope->attributes; entry; entry = entry->hh.next)
            SB_PUSH(pool, found, sb_pool_copy(pool, entry->key, strcspn(entry->key, ".")));
    return found;
}

static const char *listed(sb_run *run, const char *owner, string_list attributes) {
    const char *text = "";
    for (size_t i = 0; i < attributes.count; i++)
        text = sb_pool_print(run->pool, "%s%s%s.%s", text, i ? ", " : "", owner, attributes.items[i]);
    return text;
}

static sb_term unknown(sb_run *run, const sb_formula *formula, const char *what, const char *word,
                       string_list known) {
    sb_error_unknown(run, formula->place, what, word, known.items, known.count);
    return sb_term_none();
}

/* What stands before a hyphen is a name, or a number before a name: `long-20`, `20-long`. */
static bool is_difference(const sb_scope *scope, const char *left, const char *right) {
    return sb_scope_has(scope, left) || (left[0] >= '0' && left[0] <= '9' && sb_scope_has(scope, right));
}

static bool tell_missing_blanks(sb_evaluation *evaluation, const sb_formula *formula) {
    const char *word = formula->word;
    for (const char *hyphen = strchr(word, '-'); hyphen; hyphen = strchr(hyphen + 1, '-')) {
        const char *left = sb_pool_copy(evaluation->run->pool, word, (size_t)(hyphen - word));
        if (!is_difference(evaluation->scope, left, hyphen + 1))
            continue;
        sb_error_glued_minus(evaluation->run, formula->place, word, hyphen, hyphen + 1);
        return true;
    }
    return false;
}

bool sb_scope_tell_word(sb_evaluation *evaluation, const sb_formula *asked, const sb_formula *beside) {
    if (asked->node != SB_NODE_NAME || beside->node != SB_NODE_NAME)
        return false;
    const sb_scope_name *choice = find_name(evaluation->scope, beside->word);
    if (!choice || !choice->choices || find_name(evaluation->scope, asked->word) ||
        find_word(evaluation->scope, asked->word))
        return false;
    sb_error_unknown(evaluation->run, asked->place,
                     sb_pool_print(evaluation->run->pool, "word for %s", beside->word), asked->word,
                     choice->choices, choice->choice_count);
    return true;
}

sb_term sb_scope_name_term(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_run *run = evaluation->run;
    const char *word = formula->word;
    sb_scope_name *entry = find_name(evaluation->scope, word);
    if (!entry)
        entry = find_word(evaluation->scope, word);
    if (entry)
        return settle(evaluation, formula, entry);
    string_list attributes = attributes_of(run->pool, evaluation->scope, word);
    if (attributes.count) {
        sb_error(run, formula->place, "which measure of %s: expected %s", word,
                 listed(run, word, attributes));
        return sb_term_none();
    }
    if (tell_missing_blanks(evaluation, formula))
        return sb_term_none();
    return unknown(run, formula, "name", word, names_and_words(run->pool, evaluation->scope));
}

sb_term sb_scope_attribute_term(sb_evaluation *evaluation, const sb_formula *formula) {
    sb_run *run = evaluation->run;
    const char *owner = formula->word, *attribute = formula->attribute;
    sb_scope_name *entry = find_attribute(evaluation->scope, attribute_key(run, owner, attribute));
    if (entry)
        return entry->term;
    string_list has = attributes_of(run->pool, evaluation->scope, owner);
    if (has.count) {
        sb_error(run, formula->place, "%s has no '%s': expected %s", owner, attribute,
                 listed(run, owner, has));
        return sb_term_none();
    }
    if (sb_scope_has(evaluation->scope, owner)) {
        sb_error(run, formula->place, "%s is a single value and has no '%s'", owner, attribute);
        return sb_term_none();
    }
    return unknown(run, formula, "name before the dot", owner, owners(run->pool, evaluation->scope));
}
