/* Recipes by name, read once each, with the recipes inside them. */
#include "recipe/reader.h"

#include <dirent.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>

typedef enum book_state {
    UNOPENED, /* read, its components not yet looked for */
    OPENING,  /* looking for its components: whoever meets it now stands inside it */
    WHOLE,
    FAULTY
} book_state;

typedef struct book_entry {
    const char *name;
    const sb_recipe *recipe;
    bool misread; /* its own file has mistakes */
    book_state state;
    struct book_entry *asker; /* while OPENING: the recipe that this one is a component of */
} book_entry;

struct sb_recipe_book {
    const char *folder;
    bool decimal_comma;
    SB_LIST(book_entry *) entries;
};

sb_recipe_book *sb_recipe_book_open(sb_run *run, const char *folder, bool decimal_comma) {
    sb_recipe_book *book = SB_NEW(run->pool, sb_recipe_book);
    book->folder = sb_pool_copy(run->pool, folder, strlen(folder));
    book->decimal_comma = decimal_comma;
    return book;
}

static book_entry *find(const sb_recipe_book *book, const char *name) {
    for (size_t i = 0; i < book->entries.count; i++)
        if (strcmp(book->entries.items[i]->name, name) == 0)
            return book->entries.items[i];
    return NULL;
}

static book_entry *add(sb_run *run, sb_recipe_book *book, const char *name) {
    book_entry *entry = SB_NEW(run->pool, book_entry);
    *entry = (book_entry){.name = name, .state = UNOPENED};
    SB_PUSH(run->pool, book->entries, entry);
    return entry;
}

void sb_recipe_book_add(sb_run *run, sb_recipe_book *book, const sb_recipe *recipe) {
    book_entry *entry = find(book, recipe->name);
    if (!entry)
        entry = add(run, book, recipe->name);
    entry->recipe = recipe;
    entry->state = UNOPENED;
}

/* ---- the folder ------------------------------------------------------------------------------------------------- */

static int compare_names(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static void close_folder(void *folder) {
    closedir(folder);
}

/* In the order of the alphabet, for a folder has none of its own. */
static recipe_words names_in(sb_run *run, const char *path) {
    recipe_words names = {0};
    DIR *folder = opendir(path);
    if (!folder)
        return names;
    sb_pool_defer(run->pool, close_folder, folder);
    for (struct dirent *file; (file = readdir(folder)) != NULL;) {
        size_t length = strlen(file->d_name), tail = strlen(recipe_ending);
        if (length > tail && strcmp(file->d_name + length - tail, recipe_ending) == 0)
            recipe_add_word(run, &names, sb_pool_copy(run->pool, file->d_name, length - tail));
    }
    if (names.count)
        qsort(names.items, names.count, sizeof *names.items, compare_names);
    return names;
}

static const sb_recipe *read_file(sb_run *run, const sb_recipe_book *book, const char *name, sb_place at) {
    struct stat status;
    const char *path = sb_pool_print(run->pool, "%s/%s%s", book->folder, name, recipe_ending);
    if (stat(path, &status) == 0)
        return sb_recipe_read(run, path, book->decimal_comma);
    recipe_words known = names_in(run, book->folder);
    for (size_t i = 0; i < book->entries.count; i++)
        recipe_add_word(run, &known, book->entries.items[i]->name);
    sb_error_unknown(run, at, "recipe", name, known.items, known.count);
    return NULL;
}

/* Reads what is not known yet. NULL after an error. */
static book_entry *entry_of(sb_run *run, sb_recipe_book *book, const char *name, sb_place at) {
    book_entry *entry = find(book, name);
    if (entry)
        return entry;
    size_t errors = sb_notices_raised(run, SB_ERROR);
    const sb_recipe *recipe = read_file(run, book, name, at);
    if (!recipe)
        return NULL;
    entry = add(run, book, name);
    entry->recipe = recipe;
    entry->misread = sb_notices_raised(run, SB_ERROR) > errors;
    return entry;
}

/* ---- recipes inside recipes ----------------------------------------------------------------------------------------- */

static const char *chain(sb_run *run, const book_entry *first, const book_entry *last) {
    const char *text = first->name;
    for (const book_entry *entry = last; entry != first; entry = entry->asker)
        text = sb_pool_print(run->pool, "%s -> %s", entry->name, text);
    return sb_pool_print(run->pool, "%s -> %s", first->name, text);
}

static void tell_input(sb_run *run, const sb_recipe *recipe, const sb_recipe_set *set) {
    recipe_words known = {0};
    for (size_t i = 0; i < recipe->inputs.count; i++)
        recipe_add_word(run, &known, recipe->inputs.items[i].name);
    for (size_t i = 0; i < recipe->choices.count; i++)
        recipe_add_word(run, &known, recipe->choices.items[i].name);
    sb_error_unknown(run, set->place, "input", set->name, known.items, known.count);
}

static void check_role(sb_run *run, const sb_recipe *recipe, const sb_recipe_stock *stock) {
    recipe_words known = {0};
    for (size_t i = 0; i < recipe->roles.count; i++) {
        if (strcmp(recipe->roles.items[i].role, stock->role) == 0)
            return;
        recipe_add_word(run, &known, recipe->roles.items[i].role);
    }
    sb_error_unknown(run, stock->place, "role", stock->role, known.items, known.count);
}

/* What a component sets must be there to be set. */
static void check_component(sb_run *run, const sb_recipe_component *component, const sb_recipe *inner) {
    for (size_t i = 0; i < component->sets.count; i++)
        if (!sb_recipe_has_input(inner, component->sets.items[i].name))
            tell_input(run, inner, &component->sets.items[i]);
    for (size_t i = 0; i < component->stocks.count; i++)
        check_role(run, inner, &component->stocks.items[i]);
}

static bool open_entry(sb_run *run, sb_recipe_book *book, book_entry *entry, book_entry *asker);

static bool open_component(sb_run *run, sb_recipe_book *book, book_entry *entry,
                           const sb_recipe_component *component) {
    book_entry *inner = entry_of(run, book, component->recipe, component->recipe_place);
    if (!inner)
        return false;
    if (inner->state == OPENING) {
        sb_error(run, component->recipe_place, "recipe %s includes itself: %s", inner->name,
                 chain(run, inner, entry));
        return false;
    }
    bool good = open_entry(run, book, inner, entry);
    check_component(run, component, inner->recipe);
    return good;
}

/* A faulty file is looked through all the same, so that all its mistakes come out. Faulty is what was not read whole: a
 * formula that is wrong is told, and has no value where it is used. */
static bool open_entry(sb_run *run, sb_recipe_book *book, book_entry *entry, book_entry *asker) {
    if (entry->state != UNOPENED)
        return entry->state == WHOLE;
    bool good = !entry->misread;
    entry->state = OPENING;
    entry->asker = asker;
    sb_recipe_look_over(run, entry->recipe);
    for (size_t i = 0; i < entry->recipe->components.count; i++)
        good = open_component(run, book, entry, &entry->recipe->components.items[i]) && good;
    entry->state = good ? WHOLE : FAULTY;
    return good;
}

const sb_recipe *sb_recipe_book_get(sb_run *run, sb_recipe_book *book, const char *name, sb_place at) {
    book_entry *entry = entry_of(run, book, name, at);
    return entry && open_entry(run, book, entry, NULL) ? entry->recipe : NULL;
}

const sb_recipe *sb_recipe_book_peek(sb_run *run, sb_recipe_book *book, const char *name, sb_place at) {
    book_entry *entry = entry_of(run, book, name, at);
    if (entry)
        open_entry(run, book, entry, NULL);
    return entry ? entry->recipe : NULL;
}
