/* Inputs, choices and derived values of recipes: the formula, its values, the line; and what they rest on. */
#include "papers/why.h"

#include <string.h>

typedef struct chain {
    why *w;
    const sb_making *making;
    why_words told;
} chain;

static const char *value_text(const chain *c, const sb_formula *formula, sb_scope *scope) {
    sb_style style = sb_style_unrounded(&c->w->shop->settings.style);
    return sb_value_text(c->w->run, sb_formula_value(c->w->run, formula, scope), &style);
}

static const char *worked(const chain *c, const sb_formula *formula, sb_scope *scope) {
    sb_style style = sb_style_unrounded(&c->w->shop->settings.style);
    return sb_formula_worked(c->w->run, formula, scope, &style);
}

static const sb_recipe_set *given(const chain *c, const char *name) {
    for (size_t i = c->making->given.count; i > 0; i--)
        if (strcmp(c->making->given.items[i - 1].name, name) == 0)
            return &c->making->given.items[i - 1];
    return NULL;
}

/* "gate, field" */
static void say(chain *c, const char *name, const char *value, const char *how, sb_place place) {
    why_say(c->w, sb_pool_print(c->w->run->pool, "%s, %s", c->making->path, name), value, how, place);
}

static void follow(chain *c, const sb_formula *formula);

/* ---- one name -------------------------------------------------------------------------------------------- */

static void say_input(chain *c, const sb_recipe_input *input) {
    const sb_recipe_set *set = given(c, input->name);
    const sb_formula *formula = set ? set->formula : input->standard;
    sb_scope *scope = set ? c->making->given_scope : c->making->scope;
    const char *how = sb_pool_print(c->w->run->pool, "%s %s",
                                    set ? "set to" : "the recipe's own:", worked(c, formula, scope));
    say(c, input->name, value_text(c, formula, scope), how, set ? set->place : input->place);
    if (!set)
        follow(c, formula);
}

/* A word of the choice stands for itself; anything else is worked out where it is written. */
static const char *chosen(const chain *c, const sb_recipe_choice *choice, const sb_recipe_set *set) {
    const char *text = sb_place_text(c->w->run, sb_formula_place(set->formula));
    for (size_t i = 0; i < choice->words.count; i++)
        if (strcmp(choice->words.items[i], text) == 0)
            return text;
    return value_text(c, set->formula, c->making->given_scope);
}

static void say_choice(chain *c, const sb_recipe_choice *choice) {
    const sb_recipe_set *set = given(c, choice->name);
    const char *words = "";
    for (size_t i = 0; i < choice->words.count; i++)
        words = sb_pool_print(c->w->run->pool, "%s%s%s", words, i ? " | " : "", choice->words.items[i]);
    say(c, choice->name, set ? chosen(c, choice, set) : choice->words.items[0],
        sb_pool_print(c->w->run->pool, "%s of %s", set ? "chosen out" : "the first", words),
        set ? set->place : choice->place);
}

static void say_let(chain *c, const sb_recipe_let *let) {
    say(c, let->name, value_text(c, let->formula, c->making->scope),
        worked(c, let->formula, c->making->scope), let->place);
    follow(c, let->formula);
}

static void say_role(chain *c, const char *role) {
    for (size_t i = 0; i < c->making->roles.count; i++) {
        const struct sb_making_role *taken = &c->making->roles.items[i];
        if (strcmp(taken->name, role) == 0 && taken->stock)
            say(c, role, taken->stock->id, "the stock for this role", taken->stock->place);
    }
}

static const sb_recipe_input *find_input(const sb_recipe *recipe, const char *name) {
    for (size_t i = 0; i < recipe->inputs.count; i++)
        if (strcmp(recipe->inputs.items[i].name, name) == 0)
            return &recipe->inputs.items[i];
    return NULL;
}

static const sb_recipe_choice *find_choice(const sb_recipe *recipe, const char *name) {
    for (size_t i = 0; i < recipe->choices.count; i++)
        if (strcmp(recipe->choices.items[i].name, name) == 0)
            return &recipe->choices.items[i];
    return NULL;
}

static const sb_recipe_let *find_let(const sb_recipe *recipe, const char *name) {
    for (size_t i = 0; i < recipe->lets.count; i++)
        if (strcmp(recipe->lets.items[i].name, name) == 0)
            return &recipe->lets.items[i];
    return NULL;
}

/* A counter of a repeat is nothing that could be told here: it has many values. */
static void say_name(chain *c, const char *name) {
    const sb_recipe *recipe = c->making->recipe;
    if (find_input(recipe, name))
        say_input(c, find_input(recipe, name));
    else if (find_choice(recipe, name))
        say_choice(c, find_choice(recipe, name));
    else if (find_let(recipe, name))
        say_let(c, find_let(recipe, name));
}

/* ---- the chain --------------------------------------------------------------------------------------------- */

static bool told(chain *c, const char *name) {
    size_t before = c->told.count;
    why_word_once(c->w, &c->told, name);
    return c->told.count == before;
}

static void follow_name(void *context, const char *owner, const char *attribute, sb_place at) {
    (void)at;
    chain *c = context;
    const char *key = attribute ? sb_pool_print(c->w->run->pool, "%s.", owner) : owner;
    if (told(c, key))
        return;
    if (attribute)
        say_role(c, owner);
    else
        say_name(c, owner);
}

static void follow(chain *c, const sb_formula *formula) {
    sb_formula_names(formula, follow_name, c);
}

void why_names_of(why *w, const sb_making *making, const sb_formula *formula) {
    chain c = {.w = w, .making = making};
    follow(&c, formula);
}

/* ---- as a figure --------------------------------------------------------------------------------------------- */

static bool asked(const chain *c, const char *figure, const char *name) {
    return why_means(c->w, figure, c->making->piece, c->making->path, name, name);
}

static bool say_asked(chain *c, const char *figure, const char *name) {
    if (!asked(c, figure, name))
        return false;
    told(c, name);
    say_name(c, name);
    return true;
}

/* Of the piece itself: "1400 x 400 x 500 mm", measure by measure. */
static bool say_size(chain *c, const char *figure) {
    const sb_takeoff_piece *piece = &c->w->way->takeoff->pieces.items[c->making->piece];
    if (c->making->recipe != piece->recipe || piece->size_count == 0 || !asked(c, figure, "size"))
        return false;
    say(c, "size", piece->size_text, "as the papers show it, to the shop's step", piece->source->place);
    for (size_t i = 0; i < piece->size_count; i++) {
        const sb_formula *formula = c->making->recipe->size[i];
        say(c, sb_pool_print(c->w->run->pool, "size %zu", i + 1), value_text(c, formula, c->making->scope),
            worked(c, formula, c->making->scope), sb_formula_place(formula));
        follow(c, formula);
    }
    return true;
}

static bool of_making(chain *c, const char *figure) {
    const sb_recipe *recipe = c->making->recipe;
    bool found = say_size(c, figure);
    for (size_t i = 0; i < recipe->inputs.count; i++)
        found = say_asked(c, figure, recipe->inputs.items[i].name) || found;
    for (size_t i = 0; i < recipe->choices.count; i++)
        found = say_asked(c, figure, recipe->choices.items[i].name) || found;
    for (size_t i = 0; i < recipe->lets.count; i++)
        found = say_asked(c, figure, recipe->lets.items[i].name) || found;
    return found;
}

bool why_value(why *w, const char *figure) {
    bool found = false;
    for (size_t i = 0; i < w->way->takeoff->makings.count; i++) {
        chain c = {.w = w, .making = &w->way->takeoff->makings.items[i]};
        found = of_making(&c, figure) || found;
    }
    return found;
}
