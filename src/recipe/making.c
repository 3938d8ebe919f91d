/* How a part is made up and what of it shows: glued, laminated, edging, outside. */
#include "recipe/reader.h"

#include <string.h>

/* ---- glue ------------------------------------------------------------------------------------------------------ */

/* [with ROLE]; a part takes one glue, whether it is glued, laminated or both */
static bool take_glue(recipe_reader *reader) {
    if (!sb_take_word(&reader->cursor, "with"))
        return recipe_end_line(reader);
    const sb_token *glue = recipe_word(reader, "a glue: a role or the id of a stock");
    if (!glue)
        return false;
    if (reader->part.glue_role && strcmp(reader->part.glue_role, glue->text) != 0) {
        sb_error(reader->run, glue->place, "a part takes one glue, and this one has %s already",
                 reader->part.glue_role);
        return false;
    }
    reader->part.glue_role = glue->text;
    return recipe_end_line(reader);
}

void recipe_read_glued(recipe_reader *reader) {
    sb_recipe_part *part = &reader->part;
    part->glued = true;
    part->staves = recipe_formula(reader, "a number of staves (0: as few as the stock's width allows)");
    if (!part->staves)
        return;
    if (sb_take_word(&reader->cursor, "loss") &&
        !(part->edge_loss = recipe_formula(reader, "what jointing takes off each edge")))
        return;
    if (sb_take_word(&reader->cursor, "over") &&
        !(part->over_length = recipe_formula(reader, "how much longer the staves are")))
        return;
    take_glue(reader);
}

void recipe_read_laminated(recipe_reader *reader) {
    reader->part.layers = recipe_formula(reader, "a number of layers");
    if (reader->part.layers)
        take_glue(reader);
}

/* ---- edging ROLE front back left right | all -------------------------------------------------------------------- */

static const char *const edge_words[] = {"front", "back", "left", "right", "all"};
static const unsigned edge_bits[] = {SB_EDGE_FRONT, SB_EDGE_BACK, SB_EDGE_LEFT, SB_EDGE_RIGHT,
                                     SB_EDGE_FRONT | SB_EDGE_BACK | SB_EDGE_LEFT | SB_EDGE_RIGHT};

static bool take_edge(recipe_reader *reader) {
    sb_place at = reader->cursor.at->place;
    int edge = recipe_one_of(reader, "front, back, left, right or all", edge_words, 5);
    if (edge < 0)
        return false;
    if (reader->part.edging_edges & edge_bits[edge]) {
        sb_error(reader->run, at, "this edge has its edging already");
        return false;
    }
    reader->part.edging_edges |= edge_bits[edge];
    return true;
}

void recipe_read_edging(recipe_reader *reader) {
    const sb_token *role = recipe_word(reader, "an edging: a role or the id of a stock");
    if (!role)
        return;
    reader->part.edging_role = role->text;
    do {
        if (!take_edge(reader))
            return;
    } while (reader->cursor.at->kind == SB_WORD && !sb_at_word(&reader->cursor, "when"));
    recipe_end_line(reader);
}

/* ---- outside face face edge edge end end | all | none ------------------------------------------------------------- */

static int *surface_of(sb_recipe_part *part, int word) {
    int *const surfaces[] = {&part->outside_faces, &part->outside_edges, &part->outside_ends};
    return surfaces[word];
}

static bool take_surface(recipe_reader *reader) {
    static const char *const words[] = {"face", "edge", "end"};
    sb_place at = reader->cursor.at->place;
    int word = recipe_one_of(reader, "face, edge or end (or all, or none)", words, 3);
    if (word < 0)
        return false;
    if (++*surface_of(&reader->part, word) <= 2)
        return true;
    sb_error(reader->run, at, "a part has two %ss", words[word]);
    return false;
}

void recipe_read_outside(recipe_reader *reader) {
    sb_recipe_part *part = &reader->part;
    part->outside_given = true;
    if (sb_take_word(&reader->cursor, "all"))
        part->outside_faces = part->outside_edges = part->outside_ends = 2;
    else if (!sb_take_word(&reader->cursor, "none"))
        do {
            if (!take_surface(reader))
                return;
        } while (reader->cursor.at->kind == SB_WORD && !sb_at_word(&reader->cursor, "when"));
    recipe_end_line(reader);
}
