/* --set [PIECE.]NAME=VALUE: what if. */
#include "recipe/reader.h"

#include <string.h>

static bool has_piece(const sb_job *job, const char *name) {
    for (size_t i = 0; i < job->pieces.count; i++)
        if (strcmp(job->pieces.items[i].name, name) == 0)
            return true;
    return false;
}

static bool check_piece(sb_run *run, const sb_job *job, const sb_token *piece) {
    if (has_piece(job, piece->text))
        return true;
    const char **known = SB_NEW_ARRAY(run->pool, const char *, job->pieces.count + 1);
    for (size_t i = 0; i < job->pieces.count; i++)
        known[i] = job->pieces.items[i].name;
    sb_error_unknown(run, piece->place, "piece", piece->text, known, job->pieces.count);
    return false;
}

/* [PIECE.]NAME */
static bool take_name(recipe_reader *reader, const sb_job *job, sb_recipe_set *set) {
    const sb_token *first = recipe_word(reader, "the name of an input, as long=1200mm");
    if (!first)
        return false;
    *set = (sb_recipe_set){.name = first->text, .place = first->place};
    if (!sb_take_symbol(&reader->cursor, "."))
        return true;
    const sb_token *second = recipe_word(reader, "the name of an input behind the dot");
    if (!check_piece(reader->run, job, first) || !second)
        return false;
    set->name = sb_pool_print(reader->run->pool, "%s.%s", first->text, second->text);
    set->place = sb_place_span(first->place, second->place);
    return true;
}

static bool take_setting(recipe_reader *reader, const sb_job *job, sb_recipe_set *set) {
    if (!take_name(reader, job, set))
        return false;
    if (!sb_take_symbol(&reader->cursor, "=")) {
        recipe_expected(reader, "= and a value");
        return false;
    }
    set->formula = recipe_formula(reader, "a value");
    return set->formula && sb_expect_end(reader->run, &reader->cursor);
}

/* The copy gets a list of its own; of two values for a name the later counts. */
static const sb_job *with_set(sb_run *run, const sb_job *job, const sb_recipe_set *set) {
    sb_job *copy = SB_NEW(run->pool, sb_job);
    *copy = *job;
    copy->sets.items = NULL;
    copy->sets.count = copy->sets.capacity = 0;
    for (size_t i = 0; i < job->sets.count; i++)
        if (strcmp(job->sets.items[i].name, set->name) != 0)
            SB_PUSH(run->pool, copy->sets, job->sets.items[i]);
    SB_PUSH(run->pool, copy->sets, *set);
    return copy;
}

const sb_job *sb_job_with(sb_run *run, const sb_job *job, const char *setting, bool decimal_comma) {
    const sb_source *source = sb_source_of(run, "--set", setting);
    if (!source)
        return NULL;
    recipe_reader reader = recipe_reader_new(run, source, &recipe_in_jobs, decimal_comma);
    sb_recipe_set set;
    reader.cursor = sb_tokens_of(run, reader.lexer, (sb_place){source, 0, sb_source_size(source)});
    return take_setting(&reader, job, &set) ? with_set(run, job, &set) : NULL;
}
