/* outline front|side WIDTH by HEIGHT at X, Y [lean ANGLE] [when ...] */
#include "recipe/reader.h"

static bool take_word(recipe_reader *reader, const char *word) {
    if (sb_take_word(&reader->cursor, word))
        return true;
    recipe_expected(reader, sb_pool_print(reader->run->pool, "`%s`", word));
    return false;
}

static bool take_corner(recipe_reader *reader, sb_recipe_outline *outline) {
    if (!take_word(reader, "at") || !(outline->x = recipe_formula(reader, "how far from the left")))
        return false;
    if (!sb_take_symbol(&reader->cursor, ",")) {
        recipe_expected(reader, "a comma and how far from the ground");
        return false;
    }
    return (outline->y = recipe_formula(reader, "how far from the ground")) != NULL;
}

static bool take_lean(recipe_reader *reader, sb_recipe_outline *outline) {
    return !sb_take_word(&reader->cursor, "lean") ||
           (outline->lean = recipe_formula(reader, "an angle from upright")) != NULL;
}

void recipe_read_outline(recipe_reader *reader) {
    static const char *const views[] = {"front", "side"};
    int view = recipe_one_of(reader, "front or side", views, 2);
    sb_recipe_outline outline = {.side = view == 1};
    if (view >= 0 && (outline.width = recipe_formula(reader, "a width")) && take_word(reader, "by") &&
        (outline.height = recipe_formula(reader, "a height")) && take_corner(reader, &outline) &&
        take_lean(reader, &outline) && recipe_end_guarded(reader, &outline.guard))
        SB_PUSH(reader->run->pool, reader->recipe->outlines, outline);
}
