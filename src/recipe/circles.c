/* Derived values that stand for each other in a circle, found without evaluating anything: also where no part uses them. */
#include "recipe/reader.h"

#include <string.h>

typedef struct circle_walk {
    sb_run *run;
    const sb_recipe *recipe;
    size_t *path; /* the values being followed, from the first on */
    size_t depth;
    bool *done; /* by value: nothing new to find from here */
} circle_walk;

static void follow(circle_walk *walk, size_t value);

static void tell(circle_walk *walk, size_t from) {
    const sb_recipe_let *lets = walk->recipe->lets.items;
    const char *chain = "";
    for (size_t i = from; i < walk->depth; i++)
        chain = sb_pool_print(walk->run->pool, "%s%s -> ", chain, lets[walk->path[i]].name);
    size_t first = walk->path[from];
    sb_error(walk->run, lets[first].place, "values stand for each other in a circle: %s%s", chain, lets[first].name);
}

static void seen(void *context, const char *owner, const char *attribute, sb_place at) {
    circle_walk *walk = context;
    (void)at;
    for (size_t i = 0; !attribute && i < walk->recipe->lets.count; i++)
        if (strcmp(walk->recipe->lets.items[i].name, owner) == 0)
            follow(walk, i);
}

static void follow(circle_walk *walk, size_t value) {
    for (size_t i = 0; i < walk->depth; i++)
        if (walk->path[i] == value) {
            tell(walk, i);
            return;
        }
    if (walk->done[value] || !walk->recipe->lets.items[value].formula)
        return;
    walk->path[walk->depth++] = value;
    sb_formula_names(walk->recipe->lets.items[value].formula, seen, walk);
    walk->depth--;
    walk->done[value] = true;
}

void recipe_check_circles(sb_run *run, const sb_recipe *recipe) {
    size_t count = recipe->lets.count;
    circle_walk walk = {.run = run, .recipe = recipe};
    walk.path = SB_NEW_ARRAY(run->pool, size_t, count + 1);
    walk.done = SB_NEW_ARRAY(run->pool, bool, count + 1);
    for (size_t i = 0; i < count && i < 2000; i++)
        follow(&walk, i);
}
