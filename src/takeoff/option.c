/* What a job, one of its options and what-if settings say about each piece. */
#include "takeoff/inside.h"

#include <string.h>

/* "long.high" of the piece `long` gives "high"; NULL when the name is not about this piece. */
static const char *of_piece(const char *name, const char *piece) {
    size_t size = strlen(piece);
    return strncmp(name, piece, size) == 0 && name[size] == '.' ? name + size + 1 : NULL;
}

static bool has_role(const sb_recipe *recipe, const char *name) {
    for (size_t i = 0; i < recipe->roles.count; i++)
        if (strcmp(recipe->roles.items[i].role, name) == 0)
            return true;
    return false;
}

/* ---- one piece ---------------------------------------------------------------------------------------- */

int64_t takeoff_piece_count(const takeoff_walk *walk, const sb_job_piece *piece) {
    int64_t count = piece->count;
    for (size_t i = 0; walk->option && i < walk->option->count_count; i++)
        if (strcmp(walk->option->counts[i].piece, piece->name) == 0)
            count = walk->option->counts[i].count;
    return count;
}

/* Lines for every piece that has such an input, then those for this very piece, which go before them. */
static void add_sets(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe,
                     const sb_recipe_set *sets, size_t count, takeoff_givens *givens) {
    for (size_t i = 0; i < count; i++)
        if (sb_recipe_has_input(recipe, sets[i].name))
            SB_PUSH(walk->run->pool, givens->sets, sets[i]);
    for (size_t i = 0; i < count; i++) {
        sb_recipe_set set = sets[i];
        set.name = of_piece(set.name, piece->name);
        if (set.name)
            SB_PUSH(walk->run->pool, givens->sets, set);
    }
}

static void add_stocks(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe,
                       takeoff_givens *givens) {
    const sb_job_option *option = walk->option;
    for (size_t i = 0; i < option->stocks.count; i++)
        if (has_role(recipe, option->stocks.items[i].role))
            SB_PUSH(walk->run->pool, givens->stocks, option->stocks.items[i]);
    for (size_t i = 0; i < option->stocks.count; i++) {
        sb_recipe_stock stock = option->stocks.items[i];
        stock.role = of_piece(stock.role, piece->name);
        if (stock.role)
            SB_PUSH(walk->run->pool, givens->stocks, stock);
    }
}

takeoff_givens takeoff_piece_givens(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe) {
    takeoff_givens givens = {.scope = sb_scope_new(walk->run, NULL)};
    for (size_t i = 0; i < piece->sets.count; i++)
        SB_PUSH(walk->run->pool, givens.sets, piece->sets.items[i]);
    for (size_t i = 0; i < piece->stocks.count; i++)
        SB_PUSH(walk->run->pool, givens.stocks, piece->stocks.items[i]);
    if (walk->option) {
        add_sets(walk, piece, recipe, walk->option->sets.items, walk->option->sets.count, &givens);
        add_stocks(walk, piece, recipe, &givens);
    }
    add_sets(walk, piece, recipe, walk->job->sets.items, walk->job->sets.count, &givens);
    return givens;
}

/* ---- lines about nothing: that pieces are known was seen to when the job was read -------------------------------------------------------------------------------- */

typedef SB_LIST(const char *) word_list;

static void check_set(const takeoff_walk *walk, const sb_recipe *const *recipes, const sb_recipe_set *set) {
    word_list known = {0};
    if (strchr(set->name, '.'))
        return;
    for (size_t i = 0; i < walk->job->pieces.count; i++) {
        const sb_recipe *recipe = recipes[i];
        if (!recipe || sb_recipe_has_input(recipe, set->name))
            return;
        for (size_t j = 0; j < recipe->inputs.count; j++)
            SB_PUSH(walk->run->pool, known, recipe->inputs.items[j].name);
        for (size_t j = 0; j < recipe->choices.count; j++)
            SB_PUSH(walk->run->pool, known, recipe->choices.items[j].name);
    }
    sb_error_unknown(walk->run, set->place, "input", set->name, known.items, known.count);
}

static void check_stock(const takeoff_walk *walk, const sb_recipe *const *recipes,
                        const sb_recipe_stock *stock) {
    word_list known = {0};
    if (strchr(stock->role, '.'))
        return;
    for (size_t i = 0; i < walk->job->pieces.count; i++) {
        const sb_recipe *recipe = recipes[i];
        if (!recipe || has_role(recipe, stock->role))
            return;
        for (size_t j = 0; j < recipe->roles.count; j++)
            SB_PUSH(walk->run->pool, known, recipe->roles.items[j].role);
    }
    sb_error_unknown(walk->run, stock->place, "role", stock->role, known.items, known.count);
}

void takeoff_check_settings(takeoff_walk *walk, const sb_recipe *const *recipes) {
    const sb_job_option *option = walk->option;
    for (size_t i = 0; i < walk->job->sets.count; i++)
        check_set(walk, recipes, &walk->job->sets.items[i]);
    if (!option)
        return;
    for (size_t i = 0; i < option->sets.count; i++)
        check_set(walk, recipes, &option->sets.items[i]);
    for (size_t i = 0; i < option->stocks.count; i++)
        check_stock(walk, recipes, &option->stocks.items[i]);
}
