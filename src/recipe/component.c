/* component NAME [when ...] [: title] / recipe R / count N / set ... / stock ... */
#include "recipe/reader.h"

static void read_recipe(recipe_reader *reader) {
    const sb_token *name = recipe_word(reader, "a recipe's name");
    if (!name)
        return;
    reader->component.recipe = name->text;
    reader->component.recipe_place = name->place;
    recipe_end_line(reader);
}

static void read_count(recipe_reader *reader) {
    reader->component.count = recipe_formula(reader, "a number");
    if (reader->component.count)
        recipe_end_line(reader);
}

static void read_set(recipe_reader *reader) {
    sb_recipe_component *component = &reader->component;
    sb_recipe_set set;
    if (recipe_take_set(reader, false, &set) &&
        !recipe_set_twice(reader, component->sets.items, component->sets.count, &set))
        SB_PUSH(reader->run->pool, component->sets, set);
}

static void read_stock(recipe_reader *reader) {
    sb_recipe_component *component = &reader->component;
    sb_recipe_stock stock;
    if (recipe_take_stock(reader, false, &stock) &&
        !recipe_stock_twice(reader, component->stocks.items, component->stocks.count, &stock))
        SB_PUSH(reader->run->pool, component->stocks, stock);
}

static const recipe_keyword component_keywords[] = {
    {"recipe", read_recipe, RECIPE_ONCE, NULL},
    {"count", read_count, RECIPE_ONCE, NULL},
    {"set", read_set, 0, NULL},
    {"stock", read_stock, 0, NULL},
    {"when", recipe_read_when, RECIPE_ONCE, NULL},
};

static void close_component(recipe_reader *reader) {
    if (reader->component.name)
        SB_PUSH(reader->run->pool, reader->recipe->components, reader->component);
}

const recipe_block recipe_component_block = {
    "component", component_keywords, sizeof component_keywords / sizeof *component_keywords, close_component};

void recipe_read_component(recipe_reader *reader) {
    reader->component =
        (sb_recipe_component){.guard = {.loop = reader->loop, .place = recipe_line_place(reader)}};
    recipe_open_block(reader, &recipe_component_block);
    const sb_token *name = recipe_new_name(reader, RECIPE_COMPONENTS, "component");
    if (!name)
        return;
    reader->component.name = reader->component.recipe = name->text;
    reader->component.recipe_place = name->place;
    recipe_end_guarded(reader, &reader->component.guard);
    reader->component.title = recipe_title(reader, name->text);
}
