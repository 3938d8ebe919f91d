/* option NAME [: title] / set [PIECE.]NAME VALUE / stock [PIECE.]ROLE ID / count PIECE N / drop PIECE / note ... */
#include "recipe/reader.h"

#include <string.h>

static void read_set(recipe_reader *reader) {
    sb_job_option *option = &reader->option;
    sb_recipe_set set;
    if (recipe_take_set(reader, true, &set) &&
        !recipe_set_twice(reader, option->sets.items, option->sets.count, &set))
        SB_PUSH(reader->run->pool, option->sets, set);
}

static void read_stock(recipe_reader *reader) {
    sb_job_option *option = &reader->option;
    sb_recipe_stock stock;
    if (recipe_take_stock(reader, true, &stock) &&
        !recipe_stock_twice(reader, option->stocks.items, option->stocks.count, &stock))
        SB_PUSH(reader->run->pool, option->stocks, stock);
}

/* ---- how many ------------------------------------------------------------------------------------------------- */

static bool take_piece(recipe_reader *reader, struct sb_job_count *count) {
    const sb_token *piece = recipe_word(reader, "a piece's name");
    if (!piece)
        return false;
    *count = (struct sb_job_count){.piece = piece->text, .place = piece->place};
    recipe_refer(reader, RECIPE_PIECES, "piece", piece);
    return true;
}

static void add_count(recipe_reader *reader, struct sb_job_count count) {
    sb_job_option *option = &reader->option;
    for (size_t i = 0; i < option->count_count; i++)
        if (strcmp(option->counts[i].piece, count.piece) == 0) {
            sb_error(reader->run, count.place, "the number of %s is told twice: line %zu has it already",
                     count.piece, recipe_line_number(option->counts[i].place));
            return;
        }
    option->counts = sb_pool_grow(reader->run->pool, option->counts, option->count_count,
                                  &option->count_capacity, sizeof *option->counts);
    option->counts[option->count_count++] = count;
}

static void read_count(recipe_reader *reader) {
    struct sb_job_count count;
    if (take_piece(reader, &count) && recipe_take_count(reader, &count.count))
        add_count(reader, count);
}

static void read_drop(recipe_reader *reader) {
    struct sb_job_count count;
    if (take_piece(reader, &count) && recipe_end_line(reader))
        add_count(reader, count);
}

static void read_note(recipe_reader *reader) {
    const char *text = recipe_prose(reader);
    if (text)
        reader->option.note = recipe_joined(reader, reader->option.note, text);
}

/* ---- the block --------------------------------------------------------------------------------------------------- */

static const recipe_keyword option_keywords[] = {
    {"set", read_set, 0, NULL},   {"stock", read_stock, 0, NULL},          {"count", read_count, 0, NULL},
    {"drop", read_drop, 0, NULL}, {"note", read_note, RECIPE_PROSE, NULL},
};

static void close_option(recipe_reader *reader) {
    if (reader->option.name)
        SB_PUSH(reader->run->pool, reader->job->options, reader->option);
}

const recipe_block recipe_option_block = {"option", option_keywords,
                                          sizeof option_keywords / sizeof *option_keywords, close_option};

void recipe_read_option(recipe_reader *reader) {
    reader->option = (sb_job_option){.place = recipe_line_place(reader)};
    recipe_open_block(reader, &recipe_option_block);
    const sb_token *name = recipe_new_name(reader, RECIPE_OPTIONS, "option");
    if (!name)
        return;
    reader->option.name = name->text;
    recipe_end_line(reader);
    reader->option.title = recipe_title(reader, name->text);
}
