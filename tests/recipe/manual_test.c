/* The manual of the file language: every example in templates/README.md reads without a word, and every keyword
 * has an example. Examples are fenced blocks: ```recipe and ```job hold whole files, ```recipe-part a few lines that
 * belong to the recipe in ```recipe frame. */
#include "bench.h"

#include "recipe/reader.h"

typedef struct example {
    const char *kind, *text;
    size_t line; /* of its fence */
} example;

typedef struct example_list {
    example *items;
    size_t count, capacity;
} example_list;

static const char *next_line(const char *text) {
    const char *end = strchr(text, '\n');
    return end ? end + 1 : text + strlen(text);
}

static bool is_fence(const char *line) {
    return strncmp(line, "```", 3) == 0;
}

static const char *find_fence(const char *text, size_t *line) {
    for (; *text && !is_fence(text); text = next_line(text))
        ++*line;
    return text;
}

static example_list examples_of(sb_run *run) {
    const sb_source *source = sb_source_read(run, "templates/README.md");
    assert_non_null(source);
    example_list all = {0};
    size_t line = 1;
    for (const char *open = find_fence(sb_source_text(source), &line); *open;) {
        const char *first = next_line(open);
        example e = {.kind = sb_pool_copy(run->pool, open + 3, (size_t)(first - open) - 4), .line = line++};
        const char *close = find_fence(first, &line);
        assert_true(is_fence(close));
        e.text = sb_pool_copy(run->pool, first, (size_t)(close - first));
        SB_PUSH(run->pool, all, e);
        open = find_fence(next_line(close), (line++, &line));
    }
    return all;
}

static bool is_kind(const example *e, const char *kind) {
    return strcmp(e->kind, kind) == 0;
}

static const char *frame_of(const example_list *all) {
    const char *frame = NULL;
    for (size_t i = 0; i < all->count; i++)
        if (is_kind(&all->items[i], "recipe frame"))
            frame = all->items[i].text;
    assert_non_null(frame);
    return frame;
}

/* ---- reading ------------------------------------------------------------------------------------------------ */

static const sb_source *source_of(sb_run *run, const example *e, const char *text) {
    return sb_source_of(run, sb_pool_print(run->pool, "example in line %zu", e->line), text);
}

static void read_as_recipe(sb_run *run, const example *e, const char *text) {
    const sb_recipe *recipe = sb_recipe_of(run, source_of(run, e, text), false);
    sb_recipe_look_over(run, recipe);
    assert_no_notices(run);
}

static void every_example_reads(void **state) {
    sb_run *run = *state;
    example_list all = examples_of(run);
    const char *frame = frame_of(&all);
    size_t recipes = 0, parts = 0, jobs = 0;
    for (size_t i = 0; i < all.count; i++) {
        const example *e = &all.items[i];
        if (is_kind(e, "recipe") || is_kind(e, "recipe frame")) {
            read_as_recipe(run, e, e->text);
            recipes++;
        } else if (is_kind(e, "recipe-part")) {
            read_as_recipe(run, e, sb_pool_print(run->pool, "%s%s", frame, e->text));
            parts++;
        } else if (is_kind(e, "job")) {
            sb_job_of(run, source_of(run, e, e->text), false);
            assert_no_notices(run);
            jobs++;
        } else {
            assert_string_equal(e->kind, "");
        }
    }
    assert_true(recipes >= 3 && parts >= 12 && jobs >= 3);
}

/* ---- nothing is left out ------------------------------------------------------------------------------------- */

static bool begins_a_line(const char *text, const char *word) {
    size_t length = strlen(word);
    for (const char *line = text; *line; line = next_line(line)) {
        const char *start = line + strspn(line, " ");
        if (strncmp(start, word, length) == 0 && strchr(" \n", start[length]))
            return true;
    }
    return false;
}

static bool has_example(const example_list *all, const char *kind, const char *word) {
    for (size_t i = 0; i < all->count; i++)
        if (strncmp(all->items[i].kind, kind, strlen(kind)) == 0 && begins_a_line(all->items[i].text, word))
            return true;
    return false;
}

static void assert_examples(const example_list *all, const char *kind, const recipe_block *block) {
    for (size_t i = 0; i < block->count; i++)
        if (!has_example(all, kind, block->keywords[i].word))
            fail_msg("templates/README.md has no example of `%s` in a %s", block->keywords[i].word, kind);
}

static void every_keyword_has_an_example(void **state) {
    sb_run *run = *state;
    example_list all = examples_of(run);
    assert_examples(&all, "recipe", recipe_in_recipes.top);
    assert_examples(&all, "job", recipe_in_jobs.top);
    for (size_t i = 0; i < recipe_in_recipes.count; i++)
        assert_examples(&all, "recipe", recipe_in_recipes.inner[i]);
    for (size_t i = 0; i < recipe_in_jobs.count; i++)
        assert_examples(&all, "job", recipe_in_jobs.inner[i]);
}

/* The words that cannot be names, as the manual lists them, are those that the formulas keep. */
static void the_words_that_cannot_be_names(void **state) {
    (void)state;
    static const char *const words[] = {"and",  "or", "not", "when", "per",   "from", "to",   "of",
                                        "with", "on", "end", "true", "false", "min",  "floor"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        assert_true(sb_formula_reserved(words[i]));
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(every_example_reads),
        AT_THE_BENCH(every_keyword_has_an_example),
        cmocka_unit_test(the_words_that_cannot_be_names),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
