/* A fresh run for every test, recipes and jobs out of strings, and questions about what was read. */
#ifndef RECIPE_BENCH_H
#define RECIPE_BENCH_H

#include "sawbill/recipe.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

static inline int lay_out(void **state) {
    sb_run *run = calloc(1, sizeof *run);
    *run = sb_run_new();
    *state = run;
    return run->notices ? 0 : -1;
}

static inline int tidy_up(void **state) {
    sb_run_free(*state);
    free(*state);
    return 0;
}

#define AT_THE_BENCH(test) cmocka_unit_test_setup_teardown(test, lay_out, tidy_up)

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

static inline void remove_folder(void *path) {
    char command[512];
    snprintf(command, sizeof command, "rm -rf '%s'", (const char *)path);
    if (system(command) != 0)
        fprintf(stderr, "left behind: %s\n", (const char *)path);
}

/* A new folder that goes away with the run. */
static inline const char *new_folder(sb_run *run) {
    const char *base = getenv("TMPDIR");
    char *path = sb_pool_print(run->pool, "%s/sawbill-test-XXXXXX", base && *base ? base : "/tmp");
    assert_non_null(mkdtemp(path));
    sb_pool_defer(run->pool, remove_folder, path);
    return path;
}

static inline const char *new_file(sb_run *run, const char *folder, const char *name, const char *text) {
    const char *path = sb_pool_print(run->pool, "%s/%s", folder, name);
    FILE *file = fopen(path, "wb");
    assert_non_null(file);
    assert_true(fputs(text, file) >= 0);
    assert_int_equal(fclose(file), 0);
    return path;
}

#endif
