/* piece NAME [: title] / recipe R / count N / set ... / stock ... / note ... in a job */
#include "recipe/reader.h"

static void read_recipe(recipe_reader *reader) {
    const sb_token *name = recipe_word(reader, "a recipe's name");
    if (!name || !recipe_end_line(reader))
        return;
    reader->piece.recipe = name->text;
    reader->piece.recipe_place = name->place;
}

static void read_count(recipe_reader *reader) {
    recipe_take_count(reader, &reader->piece.count);
}

static void read_set(recipe_reader *reader) {
    sb_job_piece *piece = &reader->piece;
    sb_recipe_set set;
    if (recipe_take_set(reader, false, &set) &&
        !recipe_set_twice(reader, piece->sets.items, piece->sets.count, &set))
        SB_PUSH(reader->run->pool, piece->sets, set);
}

static void read_stock(recipe_reader *reader) {
    sb_job_piece *piece = &reader->piece;
    sb_recipe_stock stock;
    if (recipe_take_stock(reader, false, &stock) &&
        !recipe_stock_twice(reader, piece->stocks.items, piece->stocks.count, &stock))
        SB_PUSH(reader->run->pool, piece->stocks, stock);
}

static void read_note(recipe_reader *reader) {
    const char *text = recipe_prose(reader);
    if (text)
        reader->piece.note = recipe_joined(reader, reader->piece.note, text);
}

static void read_tax(recipe_reader *reader) {
    const sb_token *word = recipe_word(reader, "the id of a tax");
    if (!word || !recipe_end_line(reader))
        return;
    reader->piece.tax = word->text;
    reader->piece.tax_place = word->place;
}

/* With the job's pieces still to come, `tax` speaks of the piece; before them, of the job. */
static const recipe_keyword piece_keywords[] = {
    {"recipe", read_recipe, RECIPE_ONCE, NULL},
    {"count", read_count, RECIPE_ONCE, NULL},
    {"set", read_set, 0, NULL},
    {"stock", read_stock, 0, NULL},
    {"tax", read_tax, RECIPE_ONCE, NULL},
    {"note", read_note, RECIPE_PROSE, NULL},
};

static void close_piece(recipe_reader *reader) {
    if (reader->piece.name)
        SB_PUSH(reader->run->pool, reader->job->pieces, reader->piece);
}

const recipe_block recipe_piece_block = {"piece", piece_keywords,
                                         sizeof piece_keywords / sizeof *piece_keywords, close_piece};

void recipe_read_piece(recipe_reader *reader) {
    reader->piece = (sb_job_piece){.count = 1, .place = recipe_line_place(reader)};
    recipe_open_block(reader, &recipe_piece_block);
    const sb_token *name = recipe_new_name(reader, RECIPE_PIECES, "piece");
    if (!name)
        return;
    reader->piece.name = reader->piece.recipe = name->text;
    reader->piece.recipe_place = name->place;
    if (recipe_end_line(reader))
        reader->piece.title = reader->text;
}
