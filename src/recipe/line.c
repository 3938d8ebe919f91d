/* The words of one line, in the order people write them. */
#include "recipe/reader.h"

#include <string.h>

size_t recipe_line_number(sb_place place) {
    return sb_place_position(place).line;
}

sb_place recipe_line_place(const recipe_reader *reader) {
    const sb_statement *line = reader->line;
    return line->rest.length ? sb_place_span(line->keyword.place, line->rest) : line->keyword.place;
}

/* ---- words and formulas ----------------------------------------------------------------------------------- */

void recipe_expected(recipe_reader *reader, const char *what) {
    const sb_token *at = reader->cursor.at;
    if (at->kind == SB_END)
        sb_error(reader->run, at->place, "expected %s, but the line ends here", what);
    else if (at->kind == SB_TEXT)
        sb_error(reader->run, at->place, "expected %s before the colon", what);
    else
        sb_error(reader->run, at->place, "expected %s, found \"%s\"", what,
                 sb_place_text(reader->run, at->place));
}

static const sb_token *take(recipe_reader *reader, sb_token_kind kind, const char *what) {
    if (reader->cursor.at->kind == kind)
        return reader->cursor.at++;
    recipe_expected(reader, what);
    return NULL;
}

const sb_token *recipe_word(recipe_reader *reader, const char *what) {
    return take(reader, SB_WORD, what);
}

const sb_token *recipe_number(recipe_reader *reader, const char *what) {
    const sb_token *number = take(reader, SB_QUANTITY, what);
    bool torn =
        number && sb_tell_number_in_pieces(reader->run, &reader->cursor, reader->decimal_comma, false);
    return torn ? NULL : number;
}

/* Words of the language that may stand behind a number; any other was meant as its unit. */
static bool follows_number(const sb_token *token) {
    static const char *const words[] = {"from",  "of",    "on",       "to",    "when",  "if",
                                        "per",   "by",    "with",     "over",  "loss",  "piece",
                                        "scale", "coats", "parallel", "mitre", "bevel", "coat"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (strcmp(words[i], token->text) == 0)
            return true;
    return false;
}

static bool tell_unit(recipe_reader *reader) {
    return !follows_number(reader->cursor.at) &&
           sb_tell_no_unit(reader->run, &reader->cursor, reader->decimal_comma);
}

const sb_formula *recipe_formula(recipe_reader *reader, const char *what) {
    const sb_token *at = reader->cursor.at;
    if (sb_at_symbol(&reader->cursor, "=")) {
        sb_error(reader->run, at->place, "no = is needed: expected %s", what);
        return NULL;
    }
    if (at->kind == SB_END || at->kind == SB_TEXT || sb_at_word(&reader->cursor, "when")) {
        recipe_expected(reader, what);
        return NULL;
    }
    const sb_formula *formula = sb_formula_parse(reader->run, &reader->cursor, reader->decimal_comma);
    return formula && tell_unit(reader) ? NULL : formula;
}

int recipe_one_of(recipe_reader *reader, const char *what, const char *const *words, size_t count) {
    const sb_token *token = recipe_word(reader, what);
    for (size_t i = 0; token && i < count; i++)
        if (strcmp(words[i], token->text) == 0)
            return (int)i;
    if (token)
        sb_error_unknown(reader->run, token->place, "word", token->text, words, count);
    return -1;
}

/* ---- the end of a line -------------------------------------------------------------------------------------- */

static bool take_text_and_end(recipe_reader *reader) {
    reader->text = NULL;
    if (reader->cursor.at->kind == SB_TEXT)
        reader->text = reader->cursor.at++->text;
    if (reader->cursor.at->kind == SB_END)
        return true;
    recipe_expected(reader, "the end of the line");
    return false;
}

bool recipe_end_guarded(recipe_reader *reader, sb_recipe_guard *guard) {
    *guard = (sb_recipe_guard){.loop = reader->loop, .place = recipe_line_place(reader)};
    if (sb_take_word(&reader->cursor, "when")) {
        guard->when = recipe_formula(reader, "a condition");
        if (!guard->when)
            return false;
    }
    if (sb_at_word(&reader->cursor, "if")) {
        sb_error(reader->run, reader->cursor.at->place, "expected `when` and the condition, not `if`");
        return false;
    }
    return take_text_and_end(reader);
}

bool recipe_end_line(recipe_reader *reader) {
    if (!sb_at_word(&reader->cursor, "when") && !sb_at_word(&reader->cursor, "if"))
        return take_text_and_end(reader);
    sb_error(reader->run, reader->cursor.at->place,
             "`%s` takes no condition of its own: if(CONDITION, A, B) chooses between values",
             reader->line->keyword.text);
    return false;
}

/* ---- text ----------------------------------------------------------------------------------------------------- */

const char *recipe_prose(recipe_reader *reader) {
    const char *text = sb_statement_text(reader->run, reader->line);
    if (*text)
        return text;
    sb_error(reader->run, reader->line->keyword.place, "expected text behind `%s`",
             reader->line->keyword.text);
    return NULL;
}

const char *recipe_title(recipe_reader *reader, const char *name) {
    if (reader->text && *reader->text)
        return reader->text;
    char *title = sb_pool_copy(reader->run->pool, name, strlen(name));
    for (char *letter = title; *letter; letter++)
        if (*letter == '-')
            *letter = ' ';
    return title;
}

const char *recipe_joined(recipe_reader *reader, const char *before, const char *text) {
    return before && *before ? sb_pool_print(reader->run->pool, "%s %s", before, text) : text;
}
