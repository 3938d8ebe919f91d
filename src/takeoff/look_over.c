/* A recipe against a shop, for all its lines: the stock and the operations it names, and one piece of it made with every
 * word of its choices. Where the rates have mistakes of their own only what they do not have at all is told. */
#include "takeoff/inside.h"

typedef struct looking {
    sb_run *run;
    const sb_shop *shop;
    const sb_recipe *recipe;
} looking;

/* ---- stock ------------------------------------------------------------------------------------------------ */

static void look_at_roles(const looking *at) {
    for (size_t i = 0; i < at->recipe->roles.count; i++) {
        const sb_recipe_role *line = &at->recipe->roles.items[i];
        if (*line->stock && !sb_shop_stock(at->shop, line->stock))
            sb_shop_unknown_stock(at->run, at->shop, line->guard.place, line->stock);
    }
}

static void look_at(const looking *at, const char *word, unsigned kinds, const char *what, sb_place place) {
    if (word && *word)
        takeoff_look_at_stock(at->run, at->shop, at->recipe, word, kinds, what, place);
}

static void look_at_part(const looking *at, const sb_recipe_part *part) {
    sb_place place = part->guard.place;
    const char *role = part->role ? part->role : ""; /* none where the part's `of` is missing */
    takeoff_stocks stocks = takeoff_stocks_of_role(at->run, at->shop, at->recipe, role);
    for (size_t i = 0; i < stocks.count && at->shop->sound; i++)
        takeoff_suits(at->run, part, stocks.items[i]);
    look_at(at, part->edging_role, TAKEOFF_FOR_EDGING, "edging", place);
    look_at(at, part->glue_role, TAKEOFF_FOR_GLUE, "glue", place);
}

static void look_at_uses(const looking *at) {
    const sb_recipe *recipe = at->recipe;
    for (size_t i = 0; i < recipe->fixings.count; i++)
        look_at(at, recipe->fixings.items[i].stock, TAKEOFF_FOR_FIXINGS, "a fixing",
                recipe->fixings.items[i].guard.place);
    for (size_t i = 0; i < recipe->finishes.count; i++)
        look_at(at, recipe->finishes.items[i].stock, TAKEOFF_FOR_FINISHES, "a finish",
                recipe->finishes.items[i].guard.place);
    for (size_t i = 0; i < recipe->glues.count; i++)
        look_at(at, recipe->glues.items[i].stock, TAKEOFF_FOR_GLUE, "glue",
                recipe->glues.items[i].guard.place);
}

static void look_at_stock(const looking *at) {
    look_at_roles(at);
    for (size_t i = 0; i < at->recipe->parts.count; i++)
        look_at_part(at, &at->recipe->parts.items[i]);
    look_at_uses(at);
}

/* ---- operations ----------------------------------------------------------------------------------------------- */

static void look_at_works(const looking *at) {
    for (size_t i = 0; i < at->recipe->works.count; i++) {
        const sb_recipe_work *line = &at->recipe->works.items[i];
        const sb_operation *operation = sb_shop_operation(at->shop, line->operation);
        if (operation)
            takeoff_look_at_work(at->run, at->recipe, line, operation);
        else
            sb_shop_unknown_operation(at->run, at->shop, line->guard.place, line->operation);
    }
}

/* ---- one piece ---------------------------------------------------------------------------------------------------- */

/* The recipe as it stands, but for one word. */
static void try_words(const looking *at, sb_recipe_book *book) {
    const sb_job *job = sb_job_for_one(at->run, at->recipe);
    for (size_t i = 0; i < at->recipe->choices.count; i++) {
        const sb_recipe_choice *choice = &at->recipe->choices.items[i];
        for (size_t j = 1; j < choice->words.count; j++) {
            const char *word = choice->words.items[j];
            sb_notices_enter(at->run, choice->place,
                             sb_pool_print(at->run->pool, "the choice %s %s", choice->name, word));
            takeoff_try(at->run, at->shop, book, job, choice, word);
            sb_notices_leave(at->run);
        }
    }
}

/* ---- a recipe and those inside it ------------------------------------------------------------------------------------ */

typedef struct recipes_seen {
    SB_LIST(const sb_recipe *) list;
} recipes_seen;

static bool seen_before(sb_run *run, recipes_seen *seen, const sb_recipe *recipe) {
    for (size_t i = 0; i < seen->list.count; i++)
        if (seen->list.items[i] == recipe)
            return true;
    SB_PUSH(run->pool, seen->list, recipe);
    return false;
}

static void look_over(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const char *name, sb_place place,
                      recipes_seen *seen) {
    const sb_recipe *recipe = sb_recipe_book_peek(run, book, name, place);
    const looking at = {run, shop, recipe};
    if (!recipe || seen_before(run, seen, recipe))
        return;
    if (shop->stock.count)
        look_at_stock(&at);
    if (shop->operations.count)
        look_at_works(&at);
    for (size_t i = 0; i < recipe->components.count; i++)
        look_over(run, shop, book, recipe->components.items[i].recipe,
                  recipe->components.items[i].recipe_place, seen);
    if (shop->sound && sb_recipe_book_get(run, book, name, place))
        try_words(&at, book);
}

void sb_takeoff_look_over(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const char *name,
                          sb_place place) {
    look_over(run, shop, book, name, place, &(recipes_seen){0});
}
