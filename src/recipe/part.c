/* part NAME [when ...] [: title] and the plain lines of its block. */
#include "recipe/reader.h"

#include <string.h>

/* ---- lines with one formula --------------------------------------------------------------------------------- */

static void read_count(recipe_reader *reader) {
    reader->part.count = recipe_formula(reader, "a number");
    if (reader->part.count)
        recipe_end_line(reader);
}

static void read_length(recipe_reader *reader) {
    reader->part.length = recipe_formula(reader, "a length");
    if (reader->part.length)
        recipe_end_line(reader);
}

static void read_width(recipe_reader *reader) {
    reader->part.width = recipe_formula(reader, "a width");
    if (reader->part.width)
        recipe_end_line(reader);
}

/* FORMULA [by FORMULA]; false after an error */
static bool take_by(recipe_reader *reader, const char *what, const char *second_what,
                    const sb_formula **first, const sb_formula **second) {
    *first = recipe_formula(reader, what);
    if (!*first)
        return false;
    if (sb_take_word(&reader->cursor, "by") && !(*second = recipe_formula(reader, second_what)))
        return false;
    return recipe_end_line(reader);
}

static void read_planed(recipe_reader *reader) {
    take_by(reader, "the planed thickness", "the planed width", &reader->part.thickness,
            &reader->part.planed_width);
}

static void read_allow(recipe_reader *reader) {
    take_by(reader, "how much longer it is cut", "how much wider it is cut", &reader->part.allow,
            &reader->part.allow_width);
}

/* ---- words ------------------------------------------------------------------------------------------------------ */

static void read_of(recipe_reader *reader) {
    const sb_token *role = recipe_word(reader, "a role that a `stock` line names");
    if (!role)
        return;
    reader->part.role = role->text;
    recipe_refer(reader, RECIPE_ROLES, "role", role);
    recipe_end_line(reader);
}

static void read_clear(recipe_reader *reader) {
    reader->part.clear = recipe_end_line(reader);
}

static void read_sound(recipe_reader *reader) {
    reader->part.sound = recipe_end_line(reader);
}

static void read_grain(recipe_reader *reader) {
    static const char *const words[] = {
        [SB_GRAIN_ALONG] = "along", [SB_GRAIN_ACROSS] = "across", [SB_GRAIN_FREE] = "free"};
    int word = recipe_one_of(reader, "along, across or free", words, 3);
    if (word < 0)
        return;
    reader->part.grain = (sb_grain)word;
    recipe_end_line(reader);
}

static void read_note(recipe_reader *reader) {
    reader->part.note = recipe_prose(reader);
}

/* Skips a word and the blanks behind it; NULL when another word stands there. */
static const char *behind(const char *text, const char *word) {
    size_t length = strlen(word);
    if (strncmp(text, word, length) != 0 || !strchr(" \t:", text[length]))
        return NULL;
    return text + length + strspn(text + length, " \t");
}

/* `note saw : ...` and `note quote : ...` are the recipe's, wherever they stand; so they are when the text is missing. */
static bool note_of_recipe(recipe_reader *reader) {
    const char *text = sb_place_text(reader->run, reader->line->rest), *rest = behind(text, "saw");
    if (!rest)
        rest = behind(text, "quote");
    return rest && (!*rest || *rest == ':' || behind(rest, "when"));
}

/* A line of its own in a block with a guard: the condition of the whole block. */
void recipe_read_when(recipe_reader *reader) {
    sb_recipe_guard *guard =
        reader->block == &recipe_part_block ? &reader->part.guard : &reader->component.guard;
    if (guard->when) {
        sb_error(reader->run, reader->line->keyword.place,
                 "a second `when`: the first stands behind `%s` in line %zu", reader->block->heading,
                 recipe_line_number(guard->place));
        return;
    }
    guard->when = recipe_formula(reader, "a condition");
    if (guard->when)
        recipe_end_line(reader);
}

/* ---- the block ---------------------------------------------------------------------------------------------------- */

static const recipe_keyword part_keywords[] = {
    {"count", read_count, RECIPE_ONCE, NULL},
    {"of", read_of, RECIPE_ONCE, NULL},
    {"length", read_length, RECIPE_ONCE, NULL},
    {"width", read_width, RECIPE_ONCE, NULL},
    {"planed", read_planed, RECIPE_ONCE, NULL},
    {"glued", recipe_read_glued, RECIPE_ONCE, NULL},
    {"laminated", recipe_read_laminated, RECIPE_ONCE, NULL},
    {"end1", recipe_read_end1, RECIPE_ONCE, NULL},
    {"end2", recipe_read_end2, RECIPE_ONCE, NULL},
    {"ends", recipe_read_ends, RECIPE_ONCE, NULL},
    {"allow", read_allow, RECIPE_ONCE, NULL},
    {"clear", read_clear, RECIPE_ONCE, NULL},
    {"sound", read_sound, RECIPE_ONCE, NULL},
    {"grain", read_grain, RECIPE_ONCE, NULL},
    {"edging", recipe_read_edging, RECIPE_ONCE, NULL},
    {"outside", recipe_read_outside, RECIPE_ONCE, NULL},
    {"note", read_note, RECIPE_ONCE | RECIPE_PROSE, note_of_recipe},
    {"when", recipe_read_when, RECIPE_ONCE, NULL},
};

/* A part whose heading has no name is read for its mistakes alone. */
static void close_part(recipe_reader *reader) {
    recipe_check_part(reader);
    if (reader->part.name)
        SB_PUSH(reader->run->pool, reader->recipe->parts, reader->part);
}

const recipe_block recipe_part_block = {"part", part_keywords, sizeof part_keywords / sizeof *part_keywords,
                                        close_part};

void recipe_read_part(recipe_reader *reader) {
    reader->part = (sb_recipe_part){.guard = {.loop = reader->loop, .place = recipe_line_place(reader)}};
    recipe_open_block(reader, &recipe_part_block);
    const sb_token *name = recipe_new_name(reader, RECIPE_PARTS, "part");
    if (!name)
        return;
    reader->part.name = name->text;
    recipe_end_guarded(reader, &reader->part.guard);
    reader->part.title = recipe_title(reader, name->text);
}
