/* repeat NAME from FORMULA to FORMULA [when ...] ... end */
#include "recipe/reader.h"

static bool take_word(recipe_reader *reader, const char *word) {
    if (sb_take_word(&reader->cursor, word))
        return true;
    recipe_expected(reader, sb_pool_print(reader->run->pool, "`%s`", word));
    return false;
}

static bool take_range(recipe_reader *reader, sb_recipe_loop *loop) {
    return take_word(reader, "from") && (loop->from = recipe_formula(reader, "the first number")) &&
           take_word(reader, "to") && (loop->to = recipe_formula(reader, "the last number")) &&
           recipe_end_guarded(reader, &loop->guard);
}

/* A faulty line opens its repeat all the same, so that its `end` has something to close. */
void recipe_read_repeat(recipe_reader *reader) {
    sb_recipe_loop *loop = SB_NEW(reader->run->pool, sb_recipe_loop);
    const sb_token *name = recipe_new_name(reader, RECIPE_VALUES, "counter");
    loop->name = name ? name->text : "";
    loop->guard = (sb_recipe_guard){.loop = reader->loop, .place = recipe_line_place(reader)};
    if (name)
        take_range(reader, loop);
    reader->loop = loop;
}

void recipe_read_end(recipe_reader *reader) {
    if (!reader->loop) {
        sb_error(reader->run, reader->line->keyword.place, "`end` without a `repeat` above it");
        return;
    }
    recipe_counter_gone(reader, reader->loop->name);
    reader->loop = reader->loop->guard.loop;
    recipe_end_line(reader);
}

void recipe_check_repeats(recipe_reader *reader) {
    for (; reader->loop; reader->loop = reader->loop->guard.loop)
        sb_error(reader->run, reader->loop->guard.place, "this repeat never ends: expected a line `end`");
}
