/* What goes into a piece besides its parts: joint, fixing, finish, glue, work, note. */
#include "recipe/reader.h"

/* ---- what lines share -------------------------------------------------------------------------------------------- */

/* [per piece | part NAME | joint NAME | batch] */
static bool take_basis(recipe_reader *reader, sb_recipe_basis *basis, const char **of) {
    static const char *const words[] = {[SB_PER_THE_PIECE] = "piece",
                                        [SB_PER_THE_PART] = "part",
                                        [SB_PER_THE_JOINT] = "joint",
                                        [SB_PER_THE_BATCH] = "batch"};
    *basis = SB_PER_THE_PIECE;
    if (!sb_take_word(&reader->cursor, "per"))
        return true;
    int word = recipe_one_of(reader, "piece, part, joint or batch", words, 4);
    if (word < 0)
        return false;
    *basis = (sb_recipe_basis)word;
    if (*basis != SB_PER_THE_PART && *basis != SB_PER_THE_JOINT)
        return true;
    const sb_token *name =
        recipe_word(reader, *basis == SB_PER_THE_PART ? "the part's name" : "the joint's name");
    if (!name)
        return false;
    *of = name->text;
    recipe_refer(reader, *basis == SB_PER_THE_PART ? RECIPE_PARTS : RECIPE_JOINTS, words[word], name);
    return true;
}

/* all | outside | ends [of PART, PART ...] */
static bool take_surface(recipe_reader *reader, sb_surface *surface, recipe_words *parts) {
    static const char *const words[] = {
        [SB_SURFACE_ALL] = "all", [SB_SURFACE_OUTSIDE] = "outside", [SB_SURFACE_ENDS] = "ends"};
    int word = recipe_one_of(reader, "all, outside or ends", words, 3);
    if (word < 0)
        return false;
    *surface = (sb_surface)word;
    if (!sb_take_word(&reader->cursor, "of"))
        return true;
    do {
        const sb_token *name = recipe_word(reader, "a part's name");
        if (!name)
            return false;
        recipe_refer(reader, RECIPE_PARTS, "part", name);
        SB_PUSH(reader->run->pool, *parts, name->text);
    } while (sb_take_symbol(&reader->cursor, ","));
    return true;
}

static bool take_stock(recipe_reader *reader, const char **stock) {
    const sb_token *word = recipe_word(reader, "a role or the id of a stock");
    if (word)
        *stock = word->text;
    return word != NULL;
}

/* ---- joints, fixings, glue --------------------------------------------------------------------------------------- */

void recipe_read_joint(recipe_reader *reader) {
    const sb_token *name = recipe_new_name(reader, RECIPE_JOINTS, "joint");
    sb_recipe_joint joint = {.name = name ? name->text : ""};
    if (!name || !(joint.count = recipe_formula(reader, "how many of them a piece has")) ||
        !recipe_end_guarded(reader, &joint.guard))
        return;
    joint.text = reader->text;
    SB_PUSH(reader->run->pool, reader->recipe->joints, joint);
}

void recipe_read_fixing(recipe_reader *reader) {
    sb_recipe_fixing fixing = {0};
    if (take_stock(reader, &fixing.stock) && (fixing.count = recipe_formula(reader, "a number")) &&
        take_basis(reader, &fixing.basis, &fixing.of) && recipe_end_guarded(reader, &fixing.guard))
        SB_PUSH(reader->run->pool, reader->recipe->fixings, fixing);
}

void recipe_read_glue(recipe_reader *reader) {
    sb_recipe_glue glue = {0};
    if (take_stock(reader, &glue.stock) && (glue.area = recipe_formula(reader, "the area that is glued")) &&
        take_basis(reader, &glue.basis, &glue.of) && recipe_end_guarded(reader, &glue.guard))
        SB_PUSH(reader->run->pool, reader->recipe->glues, glue);
}

/* ---- finish ROLE COUNT coats on SURFACE ---------------------------------------------------------------------------- */

static bool take_coats(recipe_reader *reader) {
    if ((sb_take_word(&reader->cursor, "coats") || sb_take_word(&reader->cursor, "coat")) &&
        sb_take_word(&reader->cursor, "on"))
        return true;
    recipe_expected(reader, "`coats on` and then all, outside or ends");
    return false;
}

void recipe_read_finish(recipe_reader *reader) {
    sb_recipe_finish finish = {0};
    recipe_words parts = {0};
    if (!take_stock(reader, &finish.stock) || !(finish.coats = recipe_formula(reader, "a number of coats")) ||
        !take_coats(reader) || !take_surface(reader, &finish.surface, &parts) ||
        !recipe_end_guarded(reader, &finish.guard))
        return;
    finish.parts.items = parts.items;
    finish.parts.count = parts.count;
    finish.parts.capacity = parts.capacity;
    SB_PUSH(reader->run->pool, reader->recipe->finishes, finish);
}

/* ---- work OPERATION [QUANTITY [from LEAST to MOST] | on SURFACE] [per ...] ---------------------------------------------------------------- */

static bool at_quantity(const recipe_reader *reader) {
    const sb_token *at = reader->cursor.at;
    return at->kind != SB_END && at->kind != SB_TEXT && !sb_at_word(&reader->cursor, "per") &&
           !sb_at_word(&reader->cursor, "when");
}

/* [from LEAST to MOST] */
static bool take_range(recipe_reader *reader, sb_recipe_work *work) {
    if (!sb_take_word(&reader->cursor, "from"))
        return true;
    if (!(work->least = recipe_formula(reader, "the least amount")))
        return false;
    if (!sb_take_word(&reader->cursor, "to")) {
        recipe_expected(reader, "`to` and the greatest amount");
        return false;
    }
    work->most = recipe_formula(reader, "the greatest amount");
    return work->most != NULL;
}

static bool take_amount(recipe_reader *reader, sb_recipe_work *work, recipe_words *parts) {
    work->on_surface = sb_take_word(&reader->cursor, "on");
    if (work->on_surface)
        return take_surface(reader, &work->surface, parts);
    if (!at_quantity(reader))
        return true;
    work->quantity = recipe_formula(reader, "an amount");
    return work->quantity && take_range(reader, work);
}

void recipe_read_work(recipe_reader *reader) {
    const sb_token *operation = recipe_word(reader, "an operation");
    sb_recipe_work work = {.operation = operation ? operation->text : ""};
    recipe_words parts = {0};
    if (!operation || !take_amount(reader, &work, &parts) || !take_basis(reader, &work.basis, &work.of) ||
        !recipe_end_guarded(reader, &work.guard))
        return;
    work.parts.items = parts.items;
    work.parts.count = parts.count;
    work.parts.capacity = parts.capacity;
    work.text = reader->text;
    SB_PUSH(reader->run->pool, reader->recipe->works, work);
}

/* ---- note saw|quote [when ...] : text --------------------------------------------------------------------------------- */

void recipe_read_note(recipe_reader *reader) {
    static const char *const words[] = {"saw", "quote"};
    int word = recipe_one_of(reader, "saw or quote", words, 2);
    sb_recipe_note note = {.for_quote = word == 1};
    if (word < 0 || !recipe_end_guarded(reader, &note.guard))
        return;
    if (!reader->text || !*reader->text) {
        sb_error(reader->run, reader->cursor.at->place, "expected a colon and the note");
        return;
    }
    note.text = reader->text;
    SB_PUSH(reader->run->pool, reader->recipe->notes, note);
}
