/* One recipe at work, from its names to its notes. */
#include "takeoff/inside.h"

#include <string.h>

/* ---- checks -------------------------------------------------------------------------------------------- */

static bool passes(takeoff_making *making, const sb_recipe_check *check) {
    takeoff_turns turns = takeoff_where(making, &check->guard);
    for (size_t i = 0; i < turns.count; i++) {
        bool truth;
        if (!sb_formula_truth(making->walk->run, check->condition, turns.items[i]->scope, &truth))
            return false;
        if (truth)
            continue;
        const char *text = check->text && *check->text ? check->text : "this does not hold";
        if (making->walk->tried)
            return check->advice;
        if (!check->advice)
            sb_error(making->walk->run, check->guard.place, "%s", text);
        else
            sb_advise(making->walk->run, check->guard.place, "%s", text);
        return check->advice;
    }
    return true;
}

static bool passes_all(takeoff_making *making) {
    bool good = true;
    for (size_t i = 0; i < making->recipe->checks.count; i++)
        good = passes(making, &making->recipe->checks.items[i]) && good;
    return good;
}

/* ---- what the piece is, for the papers ------------------------------------------------------------------- */

static void describe_inputs(takeoff_making *making, const takeoff_givens *givens, sb_takeoff_piece *piece) {
    sb_run *run = making->walk->run;
    const sb_recipe *recipe = making->recipe;
    size_t count = recipe->inputs.count + recipe->choices.count;
    piece->inputs = SB_NEW_ARRAY(run->pool, struct sb_takeoff_input, count + 1);
    piece->input_capacity = count + 1;
    for (size_t i = 0; i < recipe->inputs.count; i++) {
        const sb_recipe_input *input = &recipe->inputs.items[i];
        const char *value =
            sb_value_text(run, takeoff_input(making, givens, input), &making->walk->shop->settings.style);
        piece->inputs[piece->input_count++] =
            (struct sb_takeoff_input){input->name, input->text ? input->text : "", value};
    }
    for (size_t i = 0; i < recipe->choices.count; i++) {
        const sb_recipe_choice *choice = &recipe->choices.items[i];
        const char *word = takeoff_choice(making, givens, choice);
        piece->inputs[piece->input_count++] =
            (struct sb_takeoff_input){choice->name, choice->text ? choice->text : "", word ? word : ""};
    }
}

static void describe_size(takeoff_making *making, sb_takeoff_piece *piece) {
    sb_run *run = making->walk->run;
    for (size_t i = 0; i < 3 && making->recipe->size[i]; i++) {
        if (!sb_formula_length(run, making->recipe->size[i], making->scope, &piece->size[i]))
            return;
        piece->size_count = i + 1;
    }
    piece->size_text =
        sb_write_sizes(run, piece->size, piece->size_count, &making->walk->shop->settings.style);
}

static void describe(takeoff_making *making, const takeoff_givens *givens) {
    sb_takeoff_piece *piece = &making->walk->takeoff->pieces.items[making->piece];
    describe_inputs(making, givens, piece);
    describe_size(making, piece);
}

/* ---- notes ----------------------------------------------------------------------------------------------- */

static void note_for_quote(takeoff_making *making, const char *text) {
    sb_takeoff_piece *piece = &making->walk->takeoff->pieces.items[making->piece];
    for (size_t i = 0; i < piece->notes.count; i++)
        if (strcmp(piece->notes.items[i], text) == 0)
            return;
    SB_PUSH(making->walk->run->pool, piece->notes, text);
}

void takeoff_saw_note(takeoff_walk *walk, const char *text) {
    sb_takeoff *takeoff = walk->takeoff;
    for (size_t i = 0; i < takeoff->saw_notes.count; i++)
        if (strcmp(takeoff->saw_notes.items[i], text) == 0)
            return;
    SB_PUSH(walk->run->pool, takeoff->saw_notes, text);
}

/* Says whose note it is: there may be several pieces at the saw. */
static void note_for_saw(takeoff_making *making, const char *text) {
    takeoff_walk *walk = making->walk;
    const char *whose = making->caller ? making->path : walk->takeoff->pieces.items[making->piece].title;
    takeoff_saw_note(walk, sb_pool_print(walk->run->pool, "%s: %s", whose, text));
}

static void notes(takeoff_making *making) {
    for (size_t i = 0; i < making->recipe->notes.count; i++) {
        const sb_recipe_note *note = &making->recipe->notes.items[i];
        if (takeoff_where(making, &note->guard).count == 0)
            continue;
        if (note->for_quote)
            note_for_quote(making, note->text);
        else
            note_for_saw(making, note->text);
    }
}

/* ---- what may be asked later ------------------------------------------------------------------------------- */

static void keep(takeoff_making *making, const takeoff_givens *givens) {
    sb_pool *pool = making->walk->run->pool;
    sb_takeoff *takeoff = making->walk->takeoff;
    sb_making kept = {making->piece, making->path, making->recipe, making->scope,
                      .given_scope = givens->scope};
    for (size_t i = 0; i < givens->sets.count; i++)
        SB_PUSH(pool, kept.given, givens->sets.items[i]);
    for (size_t i = 0; i < making->roles.count; i++) {
        struct sb_making_role role = {making->roles.items[i].name, making->roles.items[i].stock};
        SB_PUSH(pool, kept.roles, role);
    }
    making->index = takeoff->makings.count;
    SB_PUSH(pool, takeoff->makings, kept);
}

/* ---- all of it --------------------------------------------------------------------------------------------- */

void takeoff_make(takeoff_making *making, const takeoff_givens *givens) {
    if (!takeoff_open_scope(making, givens) || !passes_all(making))
        return;
    if (!making->caller)
        describe(making, givens);
    keep(making, givens);
    takeoff_parts(making);
    takeoff_joints(making);
    takeoff_fixings(making);
    takeoff_glues(making);
    takeoff_finishes(making);
    takeoff_works(making);
    if (!making->caller)
        takeoff_outlines(making);
    takeoff_components(making);
    notes(making);
}
