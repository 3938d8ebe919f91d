/* Which stock a role uses, and what a word in a recipe stands for. */
#include "takeoff/inside.h"

#include <string.h>

const sb_stock *takeoff_role(const takeoff_making *making, const char *role) {
    for (size_t i = 0; i < making->roles.count; i++)
        if (strcmp(making->roles.items[i].name, role) == 0)
            return making->roles.items[i].stock;
    return NULL;
}

/* ---- choosing ------------------------------------------------------------------------------------------ */

static const sb_stock *stock_by_id(takeoff_making *making, const char *id, sb_place at) {
    const sb_stock *stock = sb_shop_stock(making->walk->shop, id);
    if (!stock)
        sb_shop_unknown_stock(making->walk->run, making->walk->shop, at, id);
    return stock;
}

/* density in kg/m3 is a thousandth of that in mg/mm3 */
static sb_value density_value(int64_t density) {
    sb_quantity quantity = {sb_ratio_of(density, 1000), {.length = -3, .mass = 1}, true};
    return sb_value_quantity(quantity);
}

static void set_attributes(takeoff_making *making, const char *role, const sb_stock *stock) {
    sb_run *run = making->walk->run;
    if (stock->thickness.nm > 0)
        sb_scope_set_attribute(run, making->scope, role, "thickness", sb_value_length(stock->thickness));
    if (stock->width.nm > 0)
        sb_scope_set_attribute(run, making->scope, role, "width", sb_value_length(stock->width));
    if (stock->density > 0)
        sb_scope_set_attribute(run, making->scope, role, "density", density_value(stock->density));
}

static bool chosen(const takeoff_making *making, const char *role) {
    for (size_t i = 0; i < making->roles.count; i++)
        if (strcmp(making->roles.items[i].name, role) == 0)
            return true;
    return false;
}

static bool choose(takeoff_making *making, const char *role, const sb_stock *stock) {
    struct takeoff_role entry = {role, stock};
    SB_PUSH(making->walk->run->pool, making->roles, entry);
    if (stock)
        set_attributes(making, role, stock);
    return stock != NULL;
}

static const sb_recipe_stock *override_of(const takeoff_givens *givens, const char *role) {
    for (size_t i = givens->stocks.count; i > 0; i--)
        if (strcmp(givens->stocks.items[i - 1].role, role) == 0)
            return &givens->stocks.items[i - 1];
    return NULL;
}

/* A caller may hand down a role of its own. */
static const sb_stock *overriding(takeoff_making *making, const takeoff_givens *givens,
                                  const sb_recipe_stock *override) {
    const sb_stock *stock = givens->caller ? takeoff_role(givens->caller, override->stock) : NULL;
    return stock ? stock : stock_by_id(making, override->stock, override->place);
}

/* The first line of a role whose condition holds counts. */
static bool choose_by_line(takeoff_making *making, const sb_recipe_role *line) {
    bool faulty = false;
    if (chosen(making, line->role) || takeoff_where(making, &line->guard).count == 0)
        return true;
    const sb_stock *stock = stock_by_id(making, line->stock, line->guard.place);
    faulty = !choose(making, line->role, stock);
    return !faulty;
}

static bool first_of_role(const sb_recipe *recipe, size_t index) {
    for (size_t i = 0; i < index; i++)
        if (strcmp(recipe->roles.items[i].role, recipe->roles.items[index].role) == 0)
            return false;
    return true;
}

/* Overrides and roles without a condition come first, for conditions may ask for their measures. */
static bool choose_certain(takeoff_making *making, const takeoff_givens *givens) {
    bool good = true;
    for (size_t i = 0; i < making->recipe->roles.count; i++) {
        const sb_recipe_role *line = &making->recipe->roles.items[i];
        const sb_recipe_stock *override = override_of(givens, line->role);
        if (!first_of_role(making->recipe, i))
            continue;
        if (override)
            good = choose(making, line->role, overriding(making, givens, override)) && good;
        else if (!line->guard.when && !line->guard.loop)
            good = choose_by_line(making, line) && good;
    }
    return good;
}

bool takeoff_check_roles(takeoff_making *making, const takeoff_givens *givens) {
    sb_run *run = making->walk->run;
    const sb_recipe *recipe = making->recipe;
    const char **known = SB_NEW_ARRAY(run->pool, const char *, recipe->roles.count + 1);
    size_t count = 0;
    bool good = true;
    for (size_t i = 0; i < recipe->roles.count; i++)
        if (first_of_role(recipe, i))
            known[count++] = recipe->roles.items[i].role;
    for (size_t i = 0; i < givens->stocks.count; i++) {
        const sb_recipe_stock *given = &givens->stocks.items[i];
        bool found = false;
        for (size_t j = 0; j < count && !found; j++)
            found = strcmp(known[j], given->role) == 0;
        if (!found)
            sb_error_unknown(run, given->place, "role", given->role, known, count);
        good = found && good;
    }
    return good;
}

bool takeoff_choose_stock(takeoff_making *making, const takeoff_givens *givens) {
    bool good = takeoff_check_roles(making, givens);
    good = choose_certain(making, givens) && good;
    for (size_t i = 0; i < making->recipe->roles.count; i++)
        good = choose_by_line(making, &making->recipe->roles.items[i]) && good;
    return good;
}

/* ---- asking -------------------------------------------------------------------------------------------- */

static bool is_role(const sb_recipe *recipe, const char *word) {
    for (size_t i = 0; i < recipe->roles.count; i++)
        if (strcmp(recipe->roles.items[i].role, word) == 0)
            return true;
    return false;
}

static void tell_unknown(sb_run *run, const sb_shop *shop, const sb_recipe *recipe, const char *word,
                         sb_place at) {
    size_t count = recipe->roles.count + shop->stock.count;
    const char **known = SB_NEW_ARRAY(run->pool, const char *, count + 1);
    for (size_t i = 0; i < count; i++)
        known[i] = i < recipe->roles.count ? recipe->roles.items[i].role
                                           : shop->stock.items[i - recipe->roles.count]->id;
    sb_error_unknown(run, at, "stock or role", word, known, count);
}

const sb_stock *takeoff_stock_of_role(takeoff_making *making, const char *role, sb_place at) {
    const sb_stock *stock = takeoff_role(making, role);
    if (!stock && !chosen(making, role))
        sb_error(making->walk->run, at, "no `stock %s` line holds here, so there is no stock for it", role);
    return stock;
}

static const char *kinds_text(sb_run *run, unsigned kinds) {
    const char *text = "";
    for (int kind = SB_STOCK_BOARD; kind <= SB_STOCK_OTHER; kind++)
        if (kinds & (1u << kind))
            text = sb_pool_print(run->pool, "%s%s%s", text, *text ? " or " : "",
                                 sb_stock_kind_word((sb_stock_kind)kind));
    return text;
}

bool takeoff_is_kind(sb_run *run, const sb_stock *stock, unsigned kinds, const char *what, sb_place at) {
    if (kinds & (1u << stock->kind))
        return true;
    sb_error(run, at, "%s is stock of the kind %s: expected %s for %s", stock->id,
             sb_stock_kind_word(stock->kind), kinds_text(run, kinds), what);
    return false;
}

const sb_stock *takeoff_stock(takeoff_making *making, const char *word, unsigned kinds, const char *what,
                              sb_place at) {
    const takeoff_walk *walk = making->walk;
    bool role = is_role(making->recipe, word);
    const sb_stock *stock = role ? takeoff_stock_of_role(making, word, at) : sb_shop_stock(walk->shop, word);
    if (!stock && !role)
        tell_unknown(walk->run, walk->shop, making->recipe, word, at);
    return stock && takeoff_is_kind(walk->run, stock, kinds, what, at) ? stock : NULL;
}

/* ---- looking over: every line of a role, whether it holds or not ---------------------------------------- */

void takeoff_look_at_stock(sb_run *run, const sb_shop *shop, const sb_recipe *recipe, const char *word,
                           unsigned kinds, const char *what, sb_place at) {
    takeoff_stocks stocks = takeoff_stocks_of_role(run, shop, recipe, word);
    const sb_stock *stock = sb_shop_stock(shop, word);
    if (!is_role(recipe, word) && stock)
        SB_PUSH(run->pool, stocks, stock);
    else if (!is_role(recipe, word))
        tell_unknown(run, shop, recipe, word, at);
    for (size_t i = 0; i < stocks.count && shop->sound; i++)
        takeoff_is_kind(run, stocks.items[i], kinds, what, at);
}

takeoff_stocks takeoff_stocks_of_role(sb_run *run, const sb_shop *shop, const sb_recipe *recipe,
                                      const char *role) {
    takeoff_stocks stocks = {0};
    for (size_t i = 0; i < recipe->roles.count; i++) {
        const sb_recipe_role *line = &recipe->roles.items[i];
        const sb_stock *stock = strcmp(line->role, role) == 0 ? sb_shop_stock(shop, line->stock) : NULL;
        if (stock)
            SB_PUSH(run->pool, stocks, stock);
    }
    return stocks;
}
