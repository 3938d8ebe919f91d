/* What a part lacks, and lines of a part that contradict each other. */
#include "recipe/reader.h"

static const char *part_name(const recipe_reader *reader) {
    return reader->part.name ? reader->part.name : "this part";
}

static void need(recipe_reader *reader, const char *keyword, const char *what) {
    if (!recipe_has(reader, keyword))
        sb_error(reader->run, reader->part.guard.place, "%s has no `%s`: expected %s", part_name(reader),
                 keyword, what);
}

typedef struct contradiction {
    const char *line, *against, *why;
} contradiction;

static const contradiction contradictions[] = {
    {"edging", "glued", "edging goes on a panel cut from a sheet, not on one glued from staves"},
    {"edging", "planed", "edging goes on a panel cut from a sheet, not on planed timber"},
    {"grain", "glued", "the grain of a panel glued from staves runs along its length"},
    {"grain", "planed", "the grain of planed timber runs along its length"},
};

static void check_contradictions(recipe_reader *reader) {
    for (size_t i = 0; i < sizeof contradictions / sizeof *contradictions; i++) {
        const contradiction *c = &contradictions[i];
        sb_place line = recipe_seen_in_block(reader, c->line),
                 against = recipe_seen_in_block(reader, c->against);
        if (line.source && against.source)
            sb_error(reader->run, line, "`%s` does not go with `%s` in line %zu: %s", c->line, c->against,
                     recipe_line_number(against), c->why);
    }
}

/* One width, told once; a glued panel needs one. */
static void check_width(recipe_reader *reader) {
    sb_recipe_part *part = &reader->part;
    sb_place width = recipe_seen_in_block(reader, "width"), glued = recipe_seen_in_block(reader, "glued");
    bool misread = recipe_seen_in_block(reader, "planed").source && !part->thickness;
    part->wide = width.source || part->planed_width || misread;
    if (width.source && part->planed_width)
        sb_error(reader->run, width, "the width stands behind `planed ... by` in line %zu already",
                 recipe_line_number(recipe_seen_in_block(reader, "planed")));
    if (glued.source && !width.source && !part->planed_width)
        sb_error(reader->run, glued, "%s has no `width`: expected the width that its staves are glued up to",
                 part_name(reader));
    if (part->allow_width && !width.source && !part->planed_width)
        sb_error(reader->run, sb_formula_place(part->allow_width),
                 "%s has no `width`, so it keeps the board's: nothing can be allowed for in width",
                 part_name(reader));
}

void recipe_check_part(recipe_reader *reader) {
    need(reader, "of", "the role it is cut from, as `of leg`");
    need(reader, "length", "a length, over the long points");
    check_width(reader);
    check_contradictions(reader);
}
