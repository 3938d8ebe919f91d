/* `set NAME VALUE` and `stock ROLE ID`, as components, pieces and options have them. */
#include "recipe/reader.h"

#include <string.h>

/* NAME or, where pieces are told apart, PIECE.NAME. */
static const char *take_name(recipe_reader *reader, bool of_pieces, const char *what, sb_place *place) {
    const sb_token *first = recipe_word(reader, what);
    if (!first)
        return NULL;
    *place = first->place;
    if (!of_pieces && sb_at_symbol(&reader->cursor, ".")) {
        sb_error(reader->run, first->place,
                 "only an option says which piece it is about: expected the name alone");
        return NULL;
    }
    if (!of_pieces || !sb_take_symbol(&reader->cursor, "."))
        return first->text;
    recipe_refer(reader, RECIPE_PIECES, "piece", first);
    const sb_token *second = recipe_word(reader, what);
    if (!second)
        return NULL;
    *place = sb_place_span(first->place, second->place);
    return sb_pool_print(reader->run->pool, "%s.%s", first->text, second->text);
}

bool recipe_take_set(recipe_reader *reader, bool of_pieces, sb_recipe_set *out) {
    out->name = take_name(reader, of_pieces, "the name of an input or choice", &out->place);
    if (!out->name)
        return false;
    out->formula = recipe_formula(reader, "a value");
    return out->formula && recipe_end_line(reader);
}

bool recipe_take_stock(recipe_reader *reader, bool of_pieces, sb_recipe_stock *out) {
    out->role = take_name(reader, of_pieces, "a role", &out->place);
    const sb_token *stock = out->role ? recipe_word(reader, "the id of a stock") : NULL;
    if (!stock)
        return false;
    out->stock = stock->text;
    out->place = sb_place_span(out->place, stock->place);
    return recipe_end_line(reader);
}

static bool twice(recipe_reader *reader, const char *name, sb_place first, sb_place second) {
    sb_error(reader->run, second, "%s is told twice: line %zu has it already", name,
             recipe_line_number(first));
    return true;
}

bool recipe_set_twice(recipe_reader *reader, const sb_recipe_set *sets, size_t count,
                      const sb_recipe_set *set) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(sets[i].name, set->name) == 0)
            return twice(reader, set->name, sets[i].place, set->place);
    return false;
}

bool recipe_stock_twice(recipe_reader *reader, const sb_recipe_stock *stocks, size_t count,
                        const sb_recipe_stock *stock) {
    for (size_t i = 0; i < count; i++)
        if (strcmp(stocks[i].role, stock->role) == 0)
            return twice(reader, stock->role, stocks[i].place, stock->place);
    return false;
}

bool recipe_take_count(recipe_reader *reader, int64_t *out) {
    const sb_token *token = recipe_number(reader, "a number");
    int64_t count;
    if (!token || !sb_read_count(reader->run, token->text, token->place, &count))
        return false;
    if (count < 1 || count > 1000000) {
        sb_error(reader->run, token->place, "expected a number from 1 to a million");
        return false;
    }
    *out = count;
    return recipe_end_line(reader);
}
