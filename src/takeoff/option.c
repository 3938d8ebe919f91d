/* What a job and one of its options say about each piece. */
#include "takeoff/inside.h"

#include <string.h>

/* "long.high" of the piece `long` gives "high"; NULL when the name is not about this piece. */
static const char *of_piece(const char *name, const char *piece) {
    size_t size = strlen(piece);
    return strncmp(name, piece, size) == 0 && name[size] == '.' ? name + size + 1 : NULL;
}

static bool has_input(const sb_recipe *recipe, const char *name) {
    for (size_t i = 0; i < recipe->inputs.count; i++)
        if (strcmp(recipe->inputs.items[i].name, name) == 0)
            return true;
    for (size_t i = 0; i < recipe->choices.count; i++)
        if (strcmp(recipe->choices.items[i].name, name) == 0)
            return true;
    return false;
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

/* The option's lines for every piece that has such an input, then those for this very piece, which go before
 * them. */
static void add_option_sets(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe,
                            takeoff_givens *givens) {
    for (size_t i = 0; i < walk->option->sets.count; i++)
        if (has_input(recipe, walk->option->sets.items[i].name))
            SB_PUSH(walk->run->pool, givens->sets, walk->option->sets.items[i]);
    for (size_t i = 0; i < walk->option->sets.count; i++) {
        sb_recipe_set set = walk->option->sets.items[i];
        set.name = of_piece(set.name, piece->name);
        if (set.name)
            SB_PUSH(walk->run->pool, givens->sets, set);
    }
}

static void add_option_stocks(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe,
                              takeoff_givens *givens) {
    for (size_t i = 0; i < walk->option->stocks.count; i++)
        if (has_role(recipe, walk->option->stocks.items[i].role))
            SB_PUSH(walk->run->pool, givens->stocks, walk->option->stocks.items[i]);
    for (size_t i = 0; i < walk->option->stocks.count; i++) {
        sb_recipe_stock stock = walk->option->stocks.items[i];
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
        add_option_sets(walk, piece, recipe, &givens);
        add_option_stocks(walk, piece, recipe, &givens);
    }
    return givens;
}

/* ---- lines about nothing -------------------------------------------------------------------------------- */

typedef SB_LIST(const char *) word_list;

static void check_piece(const takeoff_walk *walk, const char *name, sb_place place) {
    word_list known = {0};
    for (size_t i = 0; i < walk->job->pieces.count; i++) {
        if (strcmp(walk->job->pieces.items[i].name, name) == 0)
            return;
        SB_PUSH(walk->run->pool, known, walk->job->pieces.items[i].name);
    }
    sb_error_unknown(walk->run, place, "piece", name, known.items, known.count);
}

/* True when the name says which piece it is about. */
static bool names_a_piece(const takeoff_walk *walk, const char *name, sb_place place) {
    const char *dot = strchr(name, '.');
    if (dot)
        check_piece(walk, sb_pool_copy(walk->run->pool, name, (size_t)(dot - name)), place);
    return dot != NULL;
}

static void check_set(const takeoff_walk *walk, const sb_recipe *const *recipes, const sb_recipe_set *set) {
    word_list known = {0};
    if (names_a_piece(walk, set->name, set->place))
        return;
    for (size_t i = 0; i < walk->job->pieces.count; i++) {
        const sb_recipe *recipe = recipes[i];
        if (!recipe || has_input(recipe, set->name))
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
    if (names_a_piece(walk, stock->role, stock->place))
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

void takeoff_check_option(takeoff_walk *walk, const sb_recipe *const *recipes) {
    const sb_job_option *option = walk->option;
    if (!option)
        return;
    for (size_t i = 0; i < option->sets.count; i++)
        check_set(walk, recipes, &option->sets.items[i]);
    for (size_t i = 0; i < option->stocks.count; i++)
        check_stock(walk, recipes, &option->stocks.items[i]);
    for (size_t i = 0; i < option->count_count; i++)
        check_piece(walk, option->counts[i].piece, option->counts[i].place);
}
