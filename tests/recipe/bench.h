/* Recipes and jobs out of strings, and questions about what was read. */
#ifndef RECIPE_BENCH_H
#define RECIPE_BENCH_H

#include "../text/bench.h"
#include "sawbill/recipe.h"

static inline const sb_recipe *recipe_of(sb_run *run, const char *text) {
    return sb_recipe_of(run, sb_source_of(run, "a.recipe", text), false);
}

static inline const sb_job *job_of(sb_run *run, const char *text) {
    return sb_job_of(run, sb_source_of(run, "a.job", text), false);
}

static inline void assert_no_notices(sb_run *run) {
    if (sb_notices_count(run, SB_NOTE))
        fail_msg("expected no notices:\n%s", sb_notices_text(run, SB_NOTE, false));
}

/* The formula as it was written; "" for none. */
static inline const char *written(sb_run *run, const sb_formula *formula) {
    return formula ? sb_place_text(run, sb_formula_place(formula)) : "";
}

static inline void assert_written(sb_run *run, const sb_formula *formula, const char *text) {
    assert_string_equal(written(run, formula), text);
}

static inline size_t line_of(sb_place place) {
    return sb_place_position(place).line;
}

/* One notice, at this place, with these words in it. */
static inline void assert_only_notice(sb_run *run, const char *text, size_t line, size_t column,
                                      const char *part) {
    sb_position at = sb_place_position(sb_notices_place(run, 0));
    const char *message = sb_notices_message(run, 0);
    if (sb_notices_count(run, SB_NOTE) != 1 || !strstr(message, part) || at.line != line ||
        at.column != column)
        fail_msg("in\n%s\nexpected at %zu:%zu and alone: %s\nfound:\n%s", text, line, column, part,
                 sb_notices_text(run, SB_NOTE, false));
}

static inline const char *new_text(sb_run *run, const char *folder, const char *name, const char *text) {
    return new_file(run, folder, name, text, strlen(text));
}

#endif
