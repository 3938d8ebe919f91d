/* A recipe file: its head, the table of its statements, and what must hold for the whole. */
#include "recipe/reader.h"

#include <string.h>

/* ---- the head --------------------------------------------------------------------------------------------------- */

static void read_name(recipe_reader *reader) {
    const sb_token *name = recipe_word(reader, "the recipe's name");
    if (!name)
        return;
    reader->recipe->name = name->text;
    reader->recipe->place = name->place;
    recipe_end_line(reader);
}

static void read_title(recipe_reader *reader) {
    const char *title = recipe_prose(reader);
    if (title)
        reader->recipe->title = title;
}

/* Several lines make one paragraph. */
static void read_about(recipe_reader *reader) {
    const char *text = recipe_prose(reader);
    if (text)
        reader->recipe->about = recipe_joined(reader, reader->recipe->about, text);
}

static void read_size(recipe_reader *reader) {
    static const char *const names[] = {"a length", "a width", "a height"};
    size_t count = 0;
    do {
        reader->recipe->size[count] = recipe_formula(reader, names[count]);
        if (!reader->recipe->size[count])
            return;
        count++;
    } while (count < 3 && sb_take_symbol(&reader->cursor, ","));
    recipe_end_line(reader);
}

/* ---- the language ------------------------------------------------------------------------------------------------ */

static const recipe_keyword keywords[] = {
    {"recipe", read_name, RECIPE_ONCE | RECIPE_UNREPEATED, NULL},
    {"title", read_title, RECIPE_ONCE | RECIPE_UNREPEATED | RECIPE_PROSE, NULL},
    {"about", read_about, RECIPE_UNREPEATED | RECIPE_PROSE, NULL},
    {"size", read_size, RECIPE_ONCE | RECIPE_UNREPEATED, NULL},
    {"input", recipe_read_input, RECIPE_UNREPEATED, NULL},
    {"choice", recipe_read_choice, RECIPE_UNREPEATED, NULL},
    {"let", recipe_read_let, RECIPE_UNREPEATED, NULL},
    {"check", recipe_read_check, 0, NULL},
    {"advise", recipe_read_advise, 0, NULL},
    {"stock", recipe_read_role, RECIPE_UNREPEATED, NULL},
    {"part", recipe_read_part, 0, NULL},
    {"component", recipe_read_component, 0, NULL},
    {"joint", recipe_read_joint, 0, NULL},
    {"fixing", recipe_read_fixing, 0, NULL},
    {"finish", recipe_read_finish, 0, NULL},
    {"glue", recipe_read_glue, 0, NULL},
    {"work", recipe_read_work, 0, NULL},
    {"outline", recipe_read_outline, 0, NULL},
    {"note", recipe_read_note, 0, NULL},
    {"repeat", recipe_read_repeat, 0, NULL},
    {"end", recipe_read_end, 0, NULL},
};

static const recipe_block file = {"recipe", keywords, sizeof keywords / sizeof *keywords, NULL};
static const recipe_block *const blocks[] = {&recipe_part_block, &recipe_component_block};
const recipe_language recipe_in_recipes = {&file, blocks, sizeof blocks / sizeof *blocks, "a recipe"};

/* ---- the file -------------------------------------------------------------------------------------------------------- */

static void check_head(recipe_reader *reader) {
    if (!recipe_file_has(reader, "recipe"))
        sb_error(reader->run, reader->recipe->place, "expected a line `recipe NAME` at the beginning");
    if (!*reader->recipe->title)
        reader->recipe->title = recipe_title(reader, reader->recipe->name);
}

const sb_recipe *sb_recipe_of(sb_run *run, const sb_source *source, bool decimal_comma) {
    if (!source)
        return NULL;
    recipe_reader reader = recipe_reader_new(run, source, &recipe_in_recipes, decimal_comma);
    reader.recipe = SB_NEW(run->pool, sb_recipe);
    reader.recipe->name = reader.recipe->title = reader.recipe->about = "";
    reader.recipe->place = (sb_place){source, 0, 0};
    recipe_read_lines(&reader);
    recipe_check_repeats(&reader);
    recipe_check_references(&reader);
    reader.text = NULL;
    check_head(&reader);
    return reader.recipe;
}

/* A recipe is looked for by its name, which must therefore be that of its file. */
static void check_file_name(sb_run *run, const sb_recipe *recipe, const char *path) {
    const char *slash = strrchr(path, '/'), *base = slash ? slash + 1 : path;
    size_t length = strlen(base), tail = strlen(recipe_ending);
    if (length <= tail || strcmp(base + length - tail, recipe_ending) != 0 || !*recipe->name)
        return;
    const char *name = sb_pool_copy(run->pool, base, length - tail);
    if (strcmp(recipe->name, name) != 0)
        sb_error(run, recipe->place, "this file is %s: expected `recipe %s`", base, name);
}

const sb_recipe *sb_recipe_read(sb_run *run, const char *path, bool decimal_comma) {
    const sb_recipe *recipe = sb_recipe_of(run, sb_source_read(run, path), decimal_comma);
    if (recipe)
        check_file_name(run, recipe, path);
    return recipe;
}

bool sb_recipe_has_input(const sb_recipe *recipe, const char *name) {
    for (size_t i = 0; i < recipe->inputs.count; i++)
        if (strcmp(recipe->inputs.items[i].name, name) == 0)
            return true;
    for (size_t i = 0; i < recipe->choices.count; i++)
        if (strcmp(recipe->choices.items[i].name, name) == 0)
            return true;
    return false;
}
