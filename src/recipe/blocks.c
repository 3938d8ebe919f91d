/* Which line belongs to what: the open block, the file, or neither. */
#include "recipe/reader.h"

#include <string.h>

recipe_reader recipe_reader_new(sb_run *run, const sb_source *source, const recipe_language *language,
                                bool decimal_comma) {
    return (recipe_reader){.run = run,
                           .decimal_comma = decimal_comma,
                           .lexer = sb_line_lexer(run, decimal_comma),
                           .source = source,
                           .language = language};
}

/* ---- looking keywords up ----------------------------------------------------------------------------------- */

static const recipe_keyword *find(const recipe_block *block, const char *word) {
    for (size_t i = 0; block && i < block->count; i++)
        if (strcmp(block->keywords[i].word, word) == 0)
            return &block->keywords[i];
    return NULL;
}

sb_place recipe_seen_in_block(const recipe_reader *reader, const char *word) {
    const recipe_keyword *keyword = find(reader->block, word);
    return keyword ? reader->seen_in_block.places[keyword - reader->block->keywords] : (sb_place){0};
}

static bool has(const recipe_block *block, const recipe_seen *seen, const char *word) {
    const recipe_keyword *keyword = find(block, word);
    return keyword &&
           (seen->places[keyword - block->keywords].source || seen->meant[keyword - block->keywords]);
}

bool recipe_has(const recipe_reader *reader, const char *word) {
    return has(reader->block, &reader->seen_in_block, word);
}

bool recipe_file_has(const recipe_reader *reader, const char *word) {
    return has(reader->language->top, &reader->seen, word);
}

/* ---- keywords that mean nothing here ------------------------------------------------------------------------ */

static const char *article(const char *word) {
    return strchr("aeiou", *word) ? "an" : "a";
}

static bool tell_block(recipe_reader *reader, const recipe_language *language) {
    const sb_token *keyword = &reader->line->keyword;
    for (size_t i = 0; i < language->count; i++) {
        const recipe_block *block = language->inner[i];
        if (!find(block, keyword->text))
            continue;
        sb_error(reader->run, keyword->place, "`%s` belongs to %s %s: expected a line `%s NAME` above it",
                 keyword->text, article(block->heading), block->heading, block->heading);
        return true;
    }
    return false;
}

static bool tell_other_file(recipe_reader *reader) {
    const recipe_language *other =
        reader->language == &recipe_in_recipes ? &recipe_in_jobs : &recipe_in_recipes;
    const sb_token *keyword = &reader->line->keyword;
    bool known = find(other->top, keyword->text) != NULL;
    for (size_t i = 0; i < other->count && !known; i++)
        known = find(other->inner[i], keyword->text) != NULL;
    if (known)
        sb_error(reader->run, keyword->place, "`%s` belongs in %s, and this is %s", keyword->text,
                 other->file, reader->language->file);
    return known;
}

/* The known keyword nearest to an unknown one; NULL: none is near. */
static const char *tell_unknown(recipe_reader *reader) {
    const recipe_block *blocks[] = {reader->block, reader->language->top};
    const char *known[2 * RECIPE_MOST_KEYWORDS];
    size_t count = 0;
    for (size_t i = 0; i < 2; i++)
        for (size_t j = 0; blocks[i] && j < blocks[i]->count; j++)
            known[count++] = blocks[i]->keywords[j].word;
    const sb_token *keyword = &reader->line->keyword;
    sb_error_unknown(reader->run, keyword->place, "keyword", keyword->text, known, count);
    return sb_nearest(keyword->text, known, count);
}

/* ---- reading -------------------------------------------------------------------------------------------------- */

/* False after an error: such a line stands already, or may not stand inside a repeat. */
static bool may_stand(recipe_reader *reader, const recipe_keyword *keyword, sb_place *first) {
    sb_place at = reader->line->keyword.place;
    if (first->source && (keyword->flags & RECIPE_ONCE)) {
        sb_error(reader->run, at, "a second `%s`: the first stands in line %zu", keyword->word,
                 recipe_line_number(*first));
        return false;
    }
    if (!first->source)
        *first = recipe_line_place(reader);
    if (!reader->loop || !(keyword->flags & RECIPE_UNREPEATED))
        return true;
    sb_error(reader->run, at, "`%s` cannot be repeated: expected `end` first, for the repeat in line %zu",
             keyword->word, recipe_line_number(reader->loop->guard.place));
    return false;
}

static void read_with(recipe_reader *reader, const recipe_block *block, recipe_seen *seen,
                      const recipe_keyword *keyword) {
    if (!may_stand(reader, keyword, &seen->places[keyword - block->keywords]))
        return;
    reader->text = NULL;
    if (!(keyword->flags & RECIPE_PROSE))
        reader->cursor = sb_statement_tokens(reader->run, reader->lexer, reader->line);
    keyword->read(reader);
}

static void close_block(recipe_reader *reader) {
    if (reader->block)
        reader->block->close(reader);
    reader->block = NULL;
}

void recipe_open_block(recipe_reader *reader, const recipe_block *block) {
    reader->block = block;
    reader->seen_in_block = (recipe_seen){0};
}

/* After a slip the line is read as what was meant, so that nothing seems to be missing further down. */
static void read_as_meant(recipe_reader *reader, const char *meant) {
    const recipe_keyword *inner = find(reader->block, meant);
    const recipe_block *block = inner ? reader->block : reader->language->top;
    recipe_seen *seen = inner ? &reader->seen_in_block : &reader->seen;
    const recipe_keyword *keyword = inner ? inner : find(block, meant);
    size_t index = (size_t)(keyword - block->keywords);
    sb_place before = seen->places[index];
    if (before.source && (keyword->flags & RECIPE_ONCE))
        return;
    if (!inner)
        close_block(reader);
    read_with(reader, block, seen, keyword);
    seen->places[index] = before;
    seen->meant[index] = true;
}

static void read_unknown(recipe_reader *reader) {
    if (tell_block(reader, reader->language) || tell_other_file(reader))
        return;
    const char *meant = tell_unknown(reader);
    if (meant)
        read_as_meant(reader, meant);
}

static void read_line(recipe_reader *reader, const sb_statement *line) {
    const char *word = line->keyword.text;
    const recipe_keyword *inner = find(reader->block, word), *outer = find(reader->language->top, word);
    reader->line = line;
    if (inner && !(inner->passes && inner->passes(reader))) {
        read_with(reader, reader->block, &reader->seen_in_block, inner);
    } else if (outer) {
        close_block(reader);
        read_with(reader, reader->language->top, &reader->seen, outer);
    } else {
        read_unknown(reader);
    }
}

void recipe_read_lines(recipe_reader *reader) {
    sb_statements lines = sb_statements_read(reader->run, reader->source);
    for (size_t i = 0; i < lines.count; i++)
        read_line(reader, &lines.items[i]);
    close_block(reader);
}
