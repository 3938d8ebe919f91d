/* The ends of a part. Every angle says which of its two readings it is, for nobody can tell from the number. */
#include "recipe/reader.h"

static bool take_reading(recipe_reader *reader, sb_recipe_angle *angle) {
    angle->on_piece = sb_take_word(&reader->cursor, "piece");
    if (angle->on_piece || sb_take_word(&reader->cursor, "scale"))
        return true;
    sb_place at =
        reader->cursor.at->kind == SB_WORD ? reader->cursor.at->place : sb_formula_place(angle->formula);
    sb_error(reader->run, at,
             "expected `scale` or `piece` behind the angle: 30 deg scale is counted from square, as the saw "
             "shows it; "
             "30 deg piece is between the cut end and the piece's edge, and the saw shows 60");
    return false;
}

/* An end, and the same end with the signs of its angles turned. */
typedef struct end_and_turned {
    sb_recipe_end end, turned;
} end_and_turned;

/* The formula at `first` up to `last` again, with a minus sign before it. */
static const sb_formula *turned(recipe_reader *reader, const sb_token *first, const sb_token *last) {
    size_t count = (size_t)(last - first);
    sb_token *tokens = SB_NEW_ARRAY(reader->run->pool, sb_token, count + 4), *next = tokens;
    *next++ = (sb_token){SB_SYMBOL, "-", first->place};
    *next++ = (sb_token){SB_SYMBOL, "(", first->place};
    for (const sb_token *token = first; token < last; token++)
        *next++ = *token;
    *next++ = (sb_token){SB_SYMBOL, ")", last[-1].place};
    *next = (sb_token){SB_END, "", last[-1].place};
    sb_cursor cursor = {tokens};
    return sb_formula_parse(reader->run, &cursor, reader->decimal_comma);
}

static bool take_angle(recipe_reader *reader, sb_recipe_angle *angle, sb_recipe_angle *other) {
    const sb_token *first = reader->cursor.at;
    if (angle->formula) {
        sb_error(reader->run, first[-1].place, "an end has one mitre and one bevel at most");
        return false;
    }
    angle->formula = recipe_formula(reader, "an angle");
    const sb_token *last = reader->cursor.at;
    if (!angle->formula || !take_reading(reader, angle))
        return false;
    *other = (sb_recipe_angle){turned(reader, first, last), angle->on_piece};
    return true;
}

/* square | mitre A scale|piece [bevel B scale|piece] | bevel B scale|piece */
static bool take_end(recipe_reader *reader, end_and_turned *both) {
    *both = (end_and_turned){0};
    if (sb_take_word(&reader->cursor, "square"))
        return true;
    for (int angles = 0;; angles++) {
        bool good;
        if (sb_take_word(&reader->cursor, "mitre"))
            good = take_angle(reader, &both->end.mitre, &both->turned.mitre);
        else if (sb_take_word(&reader->cursor, "bevel"))
            good = take_angle(reader, &both->end.bevel, &both->turned.bevel);
        else if (angles > 0)
            return true;
        else
            good = (recipe_expected(reader, "square, mitre or bevel"), false);
        if (!good)
            return false;
    }
}

/* ---- one end -------------------------------------------------------------------------------------------------- */

static void read_end(recipe_reader *reader, sb_recipe_end *end) {
    sb_place earlier = recipe_seen_in_block(reader, "ends");
    end_and_turned both;
    if (earlier.source)
        sb_error(reader->run, reader->line->keyword.place, "`ends` in line %zu says both ends already",
                 recipe_line_number(earlier));
    if (take_end(reader, &both) && recipe_end_line(reader))
        *end = both.end;
}

void recipe_read_end1(recipe_reader *reader) {
    read_end(reader, &reader->part.end1);
}

void recipe_read_end2(recipe_reader *reader) {
    read_end(reader, &reader->part.end2);
}

/* ---- both ends ------------------------------------------------------------------------------------------------ */

/* Alike, the long points lie on one edge, as in a frame; `parallel`, the second end leans the other way. */
void recipe_read_ends(recipe_reader *reader) {
    end_and_turned both;
    if (recipe_has(reader, "end1") || recipe_has(reader, "end2"))
        sb_error(reader->run, reader->line->keyword.place,
                 "an end stands above already: expected `ends` alone");
    if (!take_end(reader, &both))
        return;
    bool parallel = sb_take_word(&reader->cursor, "parallel");
    if (!recipe_end_line(reader))
        return;
    reader->part.end1 = both.end;
    reader->part.end2 = parallel ? both.turned : both.end;
}
