/* Names in formulas that nothing in the recipe can satisfy, found without evaluating anything. */
#include "recipe/reader.h"

#include <string.h>

typedef struct name_check {
    sb_run *run;
    const sb_recipe *recipe;
    const sb_recipe_loop *loop; /* around the formula */
    recipe_words names;         /* inputs, choices, their words, derived values */
    recipe_words roles;
} name_check;

static const char *const attributes[] = {"thickness", "width", "density"};
enum {
    ATTRIBUTE_COUNT = sizeof attributes / sizeof *attributes
};

/* ---- what is known --------------------------------------------------------------------------------------------- */

static void collect(name_check *check) {
    const sb_recipe *recipe = check->recipe;
    for (size_t i = 0; i < recipe->inputs.count; i++)
        recipe_add_word(check->run, &check->names, recipe->inputs.items[i].name);
    for (size_t i = 0; i < recipe->lets.count; i++)
        recipe_add_word(check->run, &check->names, recipe->lets.items[i].name);
    for (size_t i = 0; i < recipe->choices.count; i++) {
        const sb_recipe_choice *choice = &recipe->choices.items[i];
        recipe_add_word(check->run, &check->names, choice->name);
        for (size_t j = 0; j < choice->words.count; j++)
            recipe_add_word(check->run, &check->names, choice->words.items[j]);
    }
    for (size_t i = 0; i < recipe->roles.count; i++)
        recipe_add_word(check->run, &check->roles, recipe->roles.items[i].role);
}

static bool among(const char *word, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(words[i], word) == 0)
            return true;
    return false;
}

static bool known_name(const name_check *check, const char *word) {
    for (const sb_recipe_loop *loop = check->loop; loop; loop = loop->guard.loop)
        if (strcmp(loop->name, word) == 0)
            return true;
    return among(word, check->names.items, check->names.count);
}

static bool known_role(const name_check *check, const char *word) {
    return among(word, check->roles.items, check->roles.count);
}

/* ---- what is not -------------------------------------------------------------------------------------------------- */

/* `long-20` is one word. When what stands before a hyphen is a name, a difference was meant. */
static bool tell_missing_blanks(name_check *check, const char *word, sb_place at) {
    for (const char *hyphen = strchr(word, '-'); hyphen; hyphen = strchr(hyphen + 1, '-')) {
        const char *left = sb_pool_copy(check->run->pool, word, (size_t)(hyphen - word));
        if (!known_name(check, left))
            continue;
        sb_error(check->run, at, "\"%s\" is one word: write blanks around the minus: %s - %s", word, left,
                 hyphen + 1);
        return true;
    }
    return false;
}

static void check_name(name_check *check, const char *word, sb_place at) {
    if (known_name(check, word))
        return;
    if (known_role(check, word)) {
        sb_error(check->run, at, "which measure of %s: expected %s.thickness, %s.width or %s.density", word,
                 word, word, word);
        return;
    }
    if (tell_missing_blanks(check, word, at))
        return;
    recipe_words known = {0};
    for (const sb_recipe_loop *loop = check->loop; loop; loop = loop->guard.loop)
        recipe_add_word(check->run, &known, loop->name);
    for (size_t i = 0; i < check->names.count; i++)
        recipe_add_word(check->run, &known, check->names.items[i]);
    sb_error_unknown(check->run, at, "name", word, known.items, known.count);
}

static void check_attribute(name_check *check, const char *owner, const char *attribute, sb_place at) {
    if (!known_role(check, owner) && known_name(check, owner))
        sb_error(check->run, at, "%s is a single value: only a role has measures, as %s.thickness", owner,
                 check->roles.count ? check->roles.items[0] : "slat");
    else if (!known_role(check, owner))
        sb_error_unknown(check->run, at, "role before the dot", owner, check->roles.items,
                         check->roles.count);
    else if (!among(attribute, attributes, ATTRIBUTE_COUNT))
        sb_error_unknown(check->run, at, sb_pool_print(check->run->pool, "measure of %s", owner), attribute,
                         attributes, ATTRIBUTE_COUNT);
}

static void seen(void *context, const char *owner, const char *attribute, sb_place at) {
    if (attribute)
        check_attribute(context, owner, attribute, at);
    else
        check_name(context, owner, at);
}

/* ---- where formulas stand -------------------------------------------------------------------------------------------- */

static void look(name_check *check, const sb_formula *formula) {
    if (formula)
        sb_formula_names(formula, seen, check);
}

static void enter(name_check *check, const sb_recipe_guard *guard) {
    check->loop = guard->loop;
    look(check, guard->when);
}

/* A repeat is met through the lines inside it; what is told twice there is shown once. */
static void look_at_loops(name_check *check) {
    const sb_recipe_loop *innermost = check->loop;
    for (const sb_recipe_loop *loop = innermost; loop; loop = loop->guard.loop) {
        enter(check, &loop->guard);
        look(check, loop->from);
        look(check, loop->to);
    }
    check->loop = innermost;
}

static void enter_line(name_check *check, const sb_recipe_guard *guard) {
    check->loop = guard->loop;
    look_at_loops(check);
    enter(check, guard);
}

static void look_at_head(name_check *check) {
    const sb_recipe *recipe = check->recipe;
    for (int i = 0; i < 3; i++)
        look(check, recipe->size[i]);
    for (size_t i = 0; i < recipe->inputs.count; i++) {
        look(check, recipe->inputs.items[i].standard);
        look(check, recipe->inputs.items[i].least);
        look(check, recipe->inputs.items[i].most);
    }
    for (size_t i = 0; i < recipe->lets.count; i++)
        look(check, recipe->lets.items[i].formula);
    for (size_t i = 0; i < recipe->roles.count; i++)
        enter_line(check, &recipe->roles.items[i].guard);
    for (size_t i = 0; i < recipe->checks.count; i++) {
        enter_line(check, &recipe->checks.items[i].guard);
        look(check, recipe->checks.items[i].condition);
    }
}

static void look_at_part(name_check *check, const sb_recipe_part *part) {
    const sb_formula *const formulas[] = {
        part->count,
        part->length,
        part->width,
        part->thickness,
        part->planed_width,
        part->allow,
        part->allow_width,
        part->staves,
        part->edge_loss,
        part->over_length,
        part->layers,
        part->end1.mitre.formula,
        part->end1.bevel.formula,
        part->end2.mitre.formula,
        part->end2.bevel.formula,
    };
    enter_line(check, &part->guard);
    for (size_t i = 0; i < sizeof formulas / sizeof *formulas; i++)
        look(check, formulas[i]);
}

/* A bare word may be one of the inner recipe's choices. */
static bool bare_word(const sb_formula *formula, sb_run *run) {
    const char *text = sb_place_text(run, sb_formula_place(formula));
    return !strpbrk(text, " \t.()+*/^<>=!");
}

static void look_at_component(name_check *check, const sb_recipe_component *component) {
    enter_line(check, &component->guard);
    look(check, component->count);
    for (size_t i = 0; i < component->sets.count; i++)
        if (!bare_word(component->sets.items[i].formula, check->run))
            look(check, component->sets.items[i].formula);
}

static void look_at_uses(name_check *check) {
    const sb_recipe *recipe = check->recipe;
    for (size_t i = 0; i < recipe->joints.count; i++) {
        enter_line(check, &recipe->joints.items[i].guard);
        look(check, recipe->joints.items[i].count);
    }
    for (size_t i = 0; i < recipe->fixings.count; i++) {
        enter_line(check, &recipe->fixings.items[i].guard);
        look(check, recipe->fixings.items[i].count);
    }
    for (size_t i = 0; i < recipe->finishes.count; i++) {
        enter_line(check, &recipe->finishes.items[i].guard);
        look(check, recipe->finishes.items[i].coats);
    }
    for (size_t i = 0; i < recipe->glues.count; i++) {
        enter_line(check, &recipe->glues.items[i].guard);
        look(check, recipe->glues.items[i].area);
    }
    for (size_t i = 0; i < recipe->works.count; i++) {
        enter_line(check, &recipe->works.items[i].guard);
        look(check, recipe->works.items[i].quantity);
    }
    for (size_t i = 0; i < recipe->notes.count; i++)
        enter_line(check, &recipe->notes.items[i].guard);
}

void sb_recipe_check_names(sb_run *run, const sb_recipe *recipe) {
    name_check check = {.run = run, .recipe = recipe};
    collect(&check);
    look_at_head(&check);
    for (size_t i = 0; i < recipe->parts.count; i++)
        look_at_part(&check, &recipe->parts.items[i]);
    for (size_t i = 0; i < recipe->components.count; i++)
        look_at_component(&check, &recipe->components.items[i]);
    look_at_uses(&check);
    recipe_check_circles(run, recipe);
}
