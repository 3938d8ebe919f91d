/* Inputs must be of the kind of their default and inside the recipe's range. */
#include "takeoff/inside.h"

#include <math.h>

/* Values of one dimension; what differs by rounding noise alone is equal. */
static int compare(sb_value a, sb_value b) {
    if (a.exact && b.exact)
        return sb_ratio_compare(a.ratio, b.ratio);
    double gap = a.real - b.real;
    if (fabs(gap) <= 1e-12 * fmax(fabs(a.real), fabs(b.real)))
        return 0;
    return gap < 0 ? -1 : 1;
}

static const char *text_of(const takeoff_making *making, sb_value value) {
    return sb_value_text(making->walk->run, value, &making->walk->shop->settings.style);
}

static bool quantities_alike(sb_value a, sb_value b) {
    return a.kind == SB_VALUE_QUANTITY && b.kind == SB_VALUE_QUANTITY &&
           sb_dimension_same(a.dimension, b.dimension);
}

static const char *kind_of(sb_run *run, sb_value value) {
    if (value.kind == SB_VALUE_QUANTITY)
        return sb_dimension_name(run, value.dimension);
    return value.kind == SB_VALUE_TRUTH ? "a yes or no" : "a word";
}

static bool tell_kind(takeoff_making *making, const char *name, sb_place at, sb_value value,
                      sb_value standard) {
    sb_run *run = making->walk->run;
    bool bare = value.kind == SB_VALUE_QUANTITY && sb_dimension_same(value.dimension, SB_DIM_NUMBER);
    sb_error(run, at, "%s wants %s, and %s is %s%s", name, kind_of(run, standard), text_of(making, value),
             kind_of(run, value), bare ? ": write its unit" : "");
    return false;
}

/* A limit's value; NONE when there is no limit or it is faulty. */
static sb_value limit_of(takeoff_making *making, const sb_recipe_input *input, const sb_formula *formula,
                         sb_value value) {
    sb_value limit = {0};
    if (formula)
        limit = sb_formula_value(making->walk->run, formula, making->scope);
    if (limit.kind == SB_VALUE_NONE || quantities_alike(limit, value))
        return limit;
    tell_kind(making, sb_pool_print(making->walk->run->pool, "the limit of %s", input->name),
              sb_formula_place(formula), limit, value);
    return (sb_value){0};
}

static const char *range_text(const takeoff_making *making, sb_value least, sb_value most) {
    sb_pool *pool = making->walk->run->pool;
    if (least.kind == SB_VALUE_NONE)
        return sb_pool_print(pool, "at most %s", text_of(making, most));
    if (most.kind == SB_VALUE_NONE)
        return sb_pool_print(pool, "at least %s", text_of(making, least));
    return sb_pool_print(pool, "%s to %s", text_of(making, least), text_of(making, most));
}

static sb_place place_of(const takeoff_givens *givens, const sb_recipe_input *input) {
    const sb_recipe_set *set = takeoff_given(givens, input->name);
    return set ? sb_formula_place(set->formula) : input->place;
}

static bool check_kind(takeoff_making *making, const takeoff_givens *givens, const sb_recipe_input *input) {
    sb_value value = takeoff_input(making, givens, input);
    sb_value standard = sb_formula_value(making->walk->run, input->standard, making->scope);
    if (value.kind == SB_VALUE_NONE || standard.kind == SB_VALUE_NONE)
        return false;
    return quantities_alike(value, standard) ||
           tell_kind(making, input->name, place_of(givens, input), value, standard);
}

static bool upside_down(takeoff_making *making, const sb_recipe_input *input, sb_value least, sb_value most) {
    if (least.kind == SB_VALUE_NONE || most.kind == SB_VALUE_NONE || compare(least, most) <= 0)
        return false;
    sb_error(making->walk->run, sb_formula_place(input->least),
             "the range of %s is upside down: its least, %s, is above its most, %s", input->name,
             text_of(making, least), text_of(making, most));
    return true;
}

static bool check_range(takeoff_making *making, const takeoff_givens *givens, const sb_recipe_input *input) {
    sb_value value = takeoff_input(making, givens, input);
    sb_value least = limit_of(making, input, input->least, value);
    sb_value most = limit_of(making, input, input->most, value);
    if (upside_down(making, input, least, most))
        return false;
    bool under = least.kind != SB_VALUE_NONE && compare(value, least) < 0;
    bool over = most.kind != SB_VALUE_NONE && compare(value, most) > 0;
    if ((under || over) && !making->walk->tried)
        sb_error(making->walk->run, place_of(givens, input), "%s is %s: expected %s", input->name,
                 text_of(making, value), range_text(making, least, most));
    return !under && !over;
}

static void any_name(void *found, const char *owner, const char *attribute, sb_place at) {
    *(bool *)found = true;
    (void)owner, (void)attribute, (void)at;
}

static bool plain(const sb_formula *limit) {
    bool names = false;
    if (limit)
        sb_formula_names(limit, any_name, &names);
    return !names;
}

/* Kinds first: with a number for a length, limits worked out from it would only confuse. */
bool takeoff_check_ranges(takeoff_making *making, const takeoff_givens *givens) {
    const sb_recipe *recipe = making->recipe;
    bool *kind = SB_NEW_ARRAY(making->walk->run->pool, bool, recipe->inputs.count + 1), kinds = true;
    for (size_t i = 0; i < recipe->inputs.count; i++) {
        kind[i] = check_kind(making, givens, &recipe->inputs.items[i]);
        kinds = kind[i] && kinds;
    }
    bool good = kinds;
    for (size_t i = 0; i < recipe->inputs.count; i++) {
        const sb_recipe_input *input = &recipe->inputs.items[i];
        if (kind[i] && (kinds || (plain(input->least) && plain(input->most))))
            good = check_range(making, givens, input) && good;
    }
    return good;
}
