/* What a recipe asks for, derives and checks: input, choice, let, check, advise, stock. What has a name is kept
 * even when the rest of its line is faulty, so that one mistake is told once. */
#include "recipe/reader.h"

#include <string.h>

/* ---- input NAME DEFAULT [from MIN] [to MAX] [: text] --------------------------------------------------------- */

static bool take_input(recipe_reader *reader, sb_recipe_input *input) {
    input->standard = recipe_formula(reader, "the default");
    if (!input->standard)
        return false;
    if (sb_take_word(&reader->cursor, "from") && !(input->least = recipe_formula(reader, "the least value")))
        return false;
    if (sb_take_word(&reader->cursor, "to") && !(input->most = recipe_formula(reader, "the greatest value")))
        return false;
    return recipe_end_line(reader);
}

void recipe_read_input(recipe_reader *reader) {
    const sb_token *name = recipe_new_name(reader, RECIPE_VALUES, "input");
    if (!name)
        return;
    sb_recipe_input input = {.name = name->text, .place = name->place};
    if (take_input(reader, &input))
        input.text = reader->text;
    SB_PUSH(reader->run->pool, reader->recipe->inputs, input);
}

/* ---- choice NAME word | word ... [: text] ---------------------------------------------------------------------- */

static bool has_word(const sb_recipe_choice *choice, const char *word) {
    for (size_t i = 0; i < choice->words.count; i++)
        if (strcmp(choice->words.items[i], word) == 0)
            return true;
    return false;
}

static bool take_word(recipe_reader *reader, sb_recipe_choice *choice) {
    const sb_token *word = recipe_word(reader, "a word to choose");
    if (!word)
        return false;
    if (has_word(choice, word->text))
        sb_error(reader->run, word->place, "\"%s\" stands twice among the words of %s", word->text,
                 choice->name);
    recipe_add_name(reader, RECIPE_WORDS, "word of a choice", word);
    SB_PUSH(reader->run->pool, choice->words, word->text);
    return true;
}

static bool take_words(recipe_reader *reader, sb_recipe_choice *choice) {
    do {
        if (!take_word(reader, choice))
            return false;
    } while (sb_take_symbol(&reader->cursor, "|"));
    if (choice->words.count > 1)
        return recipe_end_line(reader);
    recipe_expected(reader, "| and a second word to choose");
    return false;
}

void recipe_read_choice(recipe_reader *reader) {
    const sb_token *name = recipe_new_name(reader, RECIPE_VALUES, "choice");
    if (!name)
        return;
    sb_recipe_choice choice = {.name = name->text, .place = name->place};
    if (take_words(reader, &choice))
        choice.text = reader->text;
    SB_PUSH(reader->run->pool, reader->recipe->choices, choice);
}

/* ---- let NAME FORMULA -------------------------------------------------------------------------------------------- */

void recipe_read_let(recipe_reader *reader) {
    const sb_token *name = recipe_new_name(reader, RECIPE_VALUES, "derived value");
    if (!name)
        return;
    sb_recipe_let let = {.name = name->text, .place = name->place};
    let.formula = recipe_formula(reader, "its formula");
    if (let.formula)
        recipe_end_line(reader);
    SB_PUSH(reader->run->pool, reader->recipe->lets, let);
}

/* ---- check CONDITION [when ...] : text --------------------------------------------------------------------------- */

static void read_condition(recipe_reader *reader, bool advice) {
    sb_recipe_check check = {.condition = recipe_formula(reader, "a condition"), .advice = advice};
    if (!check.condition || !recipe_end_guarded(reader, &check.guard))
        return;
    if (!reader->text || !*reader->text) {
        sb_error(reader->run, reader->cursor.at->place,
                 "expected a colon and what to say when this does not hold");
        return;
    }
    check.text = reader->text;
    SB_PUSH(reader->run->pool, reader->recipe->checks, check);
}

void recipe_read_check(recipe_reader *reader) {
    read_condition(reader, false);
}

void recipe_read_advise(recipe_reader *reader) {
    read_condition(reader, true);
}

/* ---- stock ROLE ID [when ...] -------------------------------------------------------------------------------------- */

/* A line behind one that always holds is never used. */
static void check_reached(recipe_reader *reader, const sb_token *role) {
    const sb_recipe *recipe = reader->recipe;
    for (size_t i = 0; i < recipe->roles.count; i++) {
        const sb_recipe_role *before = &recipe->roles.items[i];
        if (strcmp(before->role, role->text) != 0 || before->guard.when)
            continue;
        sb_error(reader->run, role->place,
                 "%s has its stock from line %zu already, which always holds: expected a `when` there",
                 role->text, recipe_line_number(before->guard.place));
        return;
    }
}

void recipe_read_role(recipe_reader *reader) {
    const sb_token *name = recipe_new_name(reader, RECIPE_ROLES, "role");
    if (!name)
        return;
    check_reached(reader, name);
    const sb_token *stock = recipe_word(reader, "the id of a stock");
    sb_recipe_role role = {.role = name->text, .stock = stock ? stock->text : ""};
    if (stock)
        recipe_end_guarded(reader, &role.guard);
    SB_PUSH(reader->run->pool, reader->recipe->roles, role);
}
