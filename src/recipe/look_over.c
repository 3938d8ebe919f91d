/* What can be told of a recipe without making anything: every formula is worked out once with open values, for names that
 * nothing satisfies, measures that do not fit, and values that depend on themselves, in every branch and whatever the
 * choices. */
#include "recipe/reader.h"

#include <string.h>

typedef enum kind {
    ANYTHING,
    TRUTH,
    LENGTH,
    AREA,
    ANGLE,
    COUNT,
    NUMBER
} kind;

typedef struct looking {
    sb_run *run;
    const sb_recipe *recipe;
    sb_scope *recipe_scope;
    sb_scope *scope; /* where the line being looked at stands: inside its repeats */
} looking;

/* ---- what the names are ---------------------------------------------------------------------------------------------- */

static sb_value some(sb_dimension dimension) {
    return sb_value_open(sb_value_quantity((sb_quantity){sb_ratio_of(1, 1), dimension, true}));
}

static void name_inputs(looking *at) {
    for (size_t i = 0; i < at->recipe->inputs.count; i++) {
        const sb_recipe_input *input = &at->recipe->inputs.items[i];
        if (input->standard)
            sb_scope_set_open(at->run, at->scope, input->name, input->standard);
        else
            sb_scope_set(at->run, at->scope, input->name, (sb_value){0});
    }
}

static void name_choices(looking *at) {
    for (size_t i = 0; i < at->recipe->choices.count; i++) {
        const sb_recipe_choice *choice = &at->recipe->choices.items[i];
        const char *word = choice->words.count ? choice->words.items[0] : "";
        sb_scope_set(at->run, at->scope, choice->name, sb_value_open(sb_value_word(word)));
        sb_scope_choice(at->run, at->scope, choice->name, choice->words.items, choice->words.count);
    }
}

static void name_lets(looking *at) {
    for (size_t i = 0; i < at->recipe->lets.count; i++) {
        const sb_recipe_let *let = &at->recipe->lets.items[i];
        if (let->formula)
            sb_scope_set_formula(at->run, at->scope, let->name, let->formula);
        else
            sb_scope_set(at->run, at->scope, let->name, (sb_value){0});
    }
}

static void name_measures(looking *at) {
    const sb_dimension density = {.length = -3, .mass = 1};
    for (size_t i = 0; i < at->recipe->roles.count; i++) {
        const char *role = at->recipe->roles.items[i].role;
        sb_scope_set_attribute(at->run, at->scope, role, "thickness", some(SB_DIM_LENGTH));
        sb_scope_set_attribute(at->run, at->scope, role, "width", some(SB_DIM_LENGTH));
        sb_scope_set_attribute(at->run, at->scope, role, "density", some(density));
    }
}

/* ---- one formula, one line -------------------------------------------------------------------------------------------- */

static void look(looking *at, const sb_formula *formula, kind wanted) {
    union {
        bool truth;
        sb_length length;
        sb_area area;
        sb_angle angle;
        int64_t number;
    } out;
    sb_run *run = at->run;
    if (!formula)
        return;
    switch (wanted) {
    case ANYTHING:
        sb_formula_value(run, formula, at->scope);
        return;
    case TRUTH:
        sb_formula_truth(run, formula, at->scope, &out.truth);
        return;
    case LENGTH:
        sb_formula_length(run, formula, at->scope, &out.length);
        return;
    case AREA:
        sb_formula_area(run, formula, at->scope, &out.area);
        return;
    case ANGLE:
        sb_formula_angle(run, formula, at->scope, &out.angle);
        return;
    case COUNT:
        sb_formula_count(run, formula, at->scope, &out.number);
        return;
    case NUMBER:
        sb_formula_micro(run, formula, at->scope, &out.number);
        return;
    }
}

/* A repeat is met through the lines inside it; what is told twice there is shown once. */
static void enter_loop(looking *at, const sb_recipe_loop *loop) {
    if (!loop) {
        at->scope = at->recipe_scope;
        return;
    }
    enter_loop(at, loop->guard.loop);
    look(at, loop->guard.when, TRUTH);
    look(at, loop->from, NUMBER);
    look(at, loop->to, NUMBER);
    at->scope = sb_scope_new(at->run, at->scope);
    sb_scope_set(at->run, at->scope, loop->name, some(SB_DIM_NUMBER));
}

static void enter(looking *at, const sb_recipe_guard *guard) {
    enter_loop(at, guard->loop);
    look(at, guard->when, TRUTH);
}

/* ---- the head of the recipe ----------------------------------------------------------------------------------------- */

static bool alike(sb_value a, sb_value b) {
    return a.kind == b.kind && sb_dimension_same(a.dimension, b.dimension);
}

static void look_at_limit(looking *at, const sb_recipe_input *input, sb_value standard,
                          const sb_formula *formula) {
    if (!formula)
        return;
    sb_value limit = sb_formula_value(at->run, formula, at->scope);
    if (limit.kind == SB_VALUE_NONE || standard.kind == SB_VALUE_NONE || alike(limit, standard))
        return;
    sb_error(at->run, sb_formula_place(formula), "the limit of %s must be of its own kind: expected %s",
             input->name, sb_dimension_name(at->run, standard.dimension));
}

static void look_at_input(looking *at, const sb_recipe_input *input) {
    sb_value standard = {0};
    if (input->standard)
        standard = sb_formula_value(at->run, input->standard, at->scope);
    if (standard.kind == SB_VALUE_TRUTH || standard.kind == SB_VALUE_WORD) {
        sb_error(at->run, sb_formula_place(input->standard),
                 "expected a measure or a number as the default of %s: `choice` is for words", input->name);
        standard.kind = SB_VALUE_NONE;
    }
    look_at_limit(at, input, standard, input->least);
    look_at_limit(at, input, standard, input->most);
}

static void look_at_head(looking *at) {
    const sb_recipe *recipe = at->recipe;
    for (size_t i = 0; i < recipe->inputs.count; i++)
        look_at_input(at, &recipe->inputs.items[i]);
    for (size_t i = 0; i < recipe->lets.count; i++)
        look(at, recipe->lets.items[i].formula, ANYTHING);
    for (int i = 0; i < 3; i++)
        look(at, recipe->size[i], LENGTH);
    for (size_t i = 0; i < recipe->roles.count; i++)
        enter(at, &recipe->roles.items[i].guard);
    for (size_t i = 0; i < recipe->checks.count; i++) {
        enter(at, &recipe->checks.items[i].guard);
        look(at, recipe->checks.items[i].condition, TRUTH);
    }
}

/* ---- parts and components ------------------------------------------------------------------------------------------- */

static void look_at_part(looking *at, const sb_recipe_part *part) {
    const struct {
        const sb_formula *formula;
        kind wanted;
    } formulas[] = {
        {part->count, COUNT},
        {part->length, LENGTH},
        {part->width, LENGTH},
        {part->thickness, LENGTH},
        {part->planed_width, LENGTH},
        {part->allow, LENGTH},
        {part->allow_width, LENGTH},
        {part->staves, COUNT},
        {part->edge_loss, LENGTH},
        {part->over_length, LENGTH},
        {part->layers, COUNT},
        {part->end1.mitre.formula, ANGLE},
        {part->end1.bevel.formula, ANGLE},
        {part->end2.mitre.formula, ANGLE},
        {part->end2.bevel.formula, ANGLE},
    };
    enter(at, &part->guard);
    for (size_t i = 0; i < sizeof formulas / sizeof *formulas; i++)
        look(at, formulas[i].formula, formulas[i].wanted);
}

/* A bare word may be one of the inner recipe's choices. */
static bool bare_word(const sb_formula *formula, sb_run *run) {
    const char *text = sb_place_text(run, sb_formula_place(formula));
    return !strpbrk(text, " \t.()+*/^<>=!");
}

static void look_at_component(looking *at, const sb_recipe_component *component) {
    enter(at, &component->guard);
    look(at, component->count, COUNT);
    for (size_t i = 0; i < component->sets.count; i++)
        if (!bare_word(component->sets.items[i].formula, at->run))
            look(at, component->sets.items[i].formula, ANYTHING);
}

/* ---- joints, fixings, finishes, work, notes ---------------------------------------------------------------------------- */

static void look_at_uses(looking *at) {
    const sb_recipe *recipe = at->recipe;
    for (size_t i = 0; i < recipe->joints.count; i++) {
        enter(at, &recipe->joints.items[i].guard);
        look(at, recipe->joints.items[i].count, COUNT);
    }
    for (size_t i = 0; i < recipe->fixings.count; i++) {
        enter(at, &recipe->fixings.items[i].guard);
        look(at, recipe->fixings.items[i].count, COUNT);
    }
    for (size_t i = 0; i < recipe->finishes.count; i++) {
        enter(at, &recipe->finishes.items[i].guard);
        look(at, recipe->finishes.items[i].coats, COUNT);
    }
    for (size_t i = 0; i < recipe->glues.count; i++) {
        enter(at, &recipe->glues.items[i].guard);
        look(at, recipe->glues.items[i].area, AREA);
    }
    for (size_t i = 0; i < recipe->works.count;
         i++) { /* its operation, in the shop, knows what it is counted by */
        enter(at, &recipe->works.items[i].guard);
        look(at, recipe->works.items[i].quantity, ANYTHING);
        look(at, recipe->works.items[i].least, ANYTHING);
        look(at, recipe->works.items[i].most, ANYTHING);
    }
    for (size_t i = 0; i < recipe->notes.count; i++)
        enter(at, &recipe->notes.items[i].guard);
    for (size_t i = 0; i < recipe->outlines.count; i++) {
        const sb_recipe_outline *outline = &recipe->outlines.items[i];
        const sb_formula *const lengths[] = {outline->width, outline->height, outline->x, outline->y};
        enter(at, &outline->guard);
        for (size_t j = 0; j < sizeof lengths / sizeof *lengths; j++)
            look(at, lengths[j], LENGTH);
        look(at, outline->lean, ANGLE);
    }
}

/* ---- the whole ---------------------------------------------------------------------------------------------------------- */

static looking begin(sb_run *run, const sb_recipe *recipe) {
    looking at = {.run = run, .recipe = recipe, .recipe_scope = sb_scope_new(run, NULL)};
    at.scope = at.recipe_scope;
    name_choices(&at);
    name_inputs(&at);
    name_lets(&at);
    name_measures(&at);
    return at;
}

sb_scope *sb_recipe_open_scope(sb_run *run, const sb_recipe *recipe, const sb_recipe_loop *loop) {
    looking at = begin(run, recipe);
    enter_loop(&at, loop);
    return at.scope;
}

void sb_recipe_look_over(sb_run *run, const sb_recipe *recipe) {
    looking at = begin(run, recipe);
    look_at_head(&at);
    for (size_t i = 0; i < recipe->parts.count; i++)
        look_at_part(&at, &recipe->parts.items[i]);
    for (size_t i = 0; i < recipe->components.count; i++)
        look_at_component(&at, &recipe->components.items[i]);
    look_at_uses(&at);
}
