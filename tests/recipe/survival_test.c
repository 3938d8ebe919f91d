/* The project's own recipes and jobs read without a word; damaged at random, every mistake has its place, and what
 * reads without a mistake is whole. The dice roll the same every time. */
#include "bench.h"

#include <dirent.h>

typedef SB_LIST(const char *) text_list;

static bool ends_with(const char *name, const char *ending) {
    size_t length = strlen(name), tail = strlen(ending);
    return length > tail && strcmp(name + length - tail, ending) == 0;
}

static int compare(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static text_list files_in(sb_run *run, const char *path, const char *ending) {
    text_list files = {0};
    DIR *folder = opendir(path);
    assert_non_null(folder);
    for (struct dirent *file; (file = readdir(folder)) != NULL;)
        if (ends_with(file->d_name, ending))
            SB_PUSH(run->pool, files, sb_pool_print(run->pool, "%s/%s", path, file->d_name));
    closedir(folder);
    assert_true(files.count > 0);
    qsort(files.items, files.count, sizeof *files.items, compare);
    return files;
}

/* ---- as they are ------------------------------------------------------------------------------------------- */

static void every_template_reads_without_a_word(void **state) {
    sb_run *run = *state;
    text_list files = files_in(run, "templates", ".recipe");
    sb_recipe_book *book = sb_recipe_book_open(run, "templates", false);
    for (size_t i = 0; i < files.count; i++) {
        const char *name = strrchr(files.items[i], '/') + 1;
        name = sb_pool_copy(run->pool, name, strlen(name) - strlen(".recipe"));
        const sb_recipe *recipe = sb_recipe_book_get(run, book, name, (sb_place){0});
        assert_no_notices(run);
        assert_true(*recipe->title && *recipe->about);
        assert_true(recipe->parts.count + recipe->components.count > 0);
    }
}

static void every_sample_reads_without_a_word(void **state) {
    sb_run *run = *state;
    text_list files = files_in(run, "samples", ".job");
    for (size_t i = 0; i < files.count; i++) {
        const sb_job *job = sb_job_read(run, files.items[i], false);
        assert_no_notices(run);
        assert_true(job->pieces.count > 0 && job->date.year > 2000);
    }
}

/* ---- damaged -------------------------------------------------------------------------------------------------- */

static void damage_letter(dice *d, char *text, size_t size) {
    static const char letters[] = " \t\n#:|,.=<>()+-*/^\"'%09amz_;~@";
    text[roll(d, size)] = letters[roll(d, sizeof letters - 1)];
}

/* Two stretches of the text change places, as when lines are moved about. */
static void damage_order(dice *d, char *text, size_t size) {
    char piece[40];
    size_t length = 1 + roll(d, sizeof piece - 1);
    if (size < 2 * length)
        return;
    size_t a = roll(d, size - length), b = roll(d, size - length);
    memcpy(piece, text + a, length);
    memmove(text + a, text + b, length);
    memcpy(text + b, piece, length);
}

static const char *damaged(sb_run *run, dice *d, const char *text) {
    size_t size = strlen(text);
    char *copy = sb_pool_copy(run->pool, text, size);
    for (uint64_t times = 1 + roll(d, 6); times > 0; times--) {
        if (roll(d, 3))
            damage_letter(d, copy, size);
        else
            damage_order(d, copy, size);
    }
    copy[roll(d, 8) ? size : roll(d, size)] = '\0';
    return copy;
}

static void assert_places(sb_run *run, const sb_source *source) {
    for (size_t i = 0; sb_notices_message(run, i); i++) {
        sb_place at = sb_notices_place(run, i);
        assert_ptr_equal(at.source, source);
        assert_true(at.offset + at.length <= sb_source_size(source));
        assert_int_equal(sb_notices_level(run, i), SB_ERROR);
    }
    assert_non_null(sb_notices_text(run, SB_NOTE, false));
}

static void assert_whole_recipe(const sb_recipe *recipe) {
    assert_true(*recipe->name && *recipe->title);
    for (size_t i = 0; i < recipe->parts.count; i++) {
        const sb_recipe_part *part = &recipe->parts.items[i];
        assert_true(part->name && *part->title && part->role && part->length && part->guard.place.source);
        assert_true(!part->glued || part->width || part->planed_width);
    }
    for (size_t i = 0; i < recipe->inputs.count; i++)
        assert_non_null(recipe->inputs.items[i].standard);
    for (size_t i = 0; i < recipe->lets.count; i++)
        assert_non_null(recipe->lets.items[i].formula);
    for (size_t i = 0; i < recipe->choices.count; i++)
        assert_true(recipe->choices.items[i].words.count >= 2);
    for (size_t i = 0; i < recipe->works.count; i++)
        assert_true(recipe->works.items[i].guard.place.source != NULL);
}

static void assert_whole_job(const sb_job *job) {
    assert_true(*job->name && *job->customer && job->date.year > 0 && job->pieces.count > 0);
    for (size_t i = 0; i < job->pieces.count; i++)
        assert_true(job->pieces.items[i].count >= 1 && *job->pieces.items[i].recipe);
}

static void try_recipe(dice *d, const char *text) {
    sb_run run = sb_run_new();
    const sb_source *source = sb_source_of(&run, "damaged", damaged(&run, d, text));
    const sb_recipe *recipe = source ? sb_recipe_of(&run, source, false) : NULL;
    if (recipe)
        sb_recipe_look_over(&run, recipe);
    if (recipe && sb_ok(&run))
        assert_whole_recipe(recipe);
    if (source)
        assert_places(&run, source);
    sb_run_free(&run);
}

static void try_job(dice *d, const char *text) {
    sb_run run = sb_run_new();
    const sb_source *source = sb_source_of(&run, "damaged", damaged(&run, d, text));
    const sb_job *job = source ? sb_job_of(&run, source, false) : NULL;
    if (job && sb_ok(&run))
        assert_whole_job(job);
    if (source)
        assert_places(&run, source);
    sb_run_free(&run);
}

static void damaged_files(void **state) {
    sb_run *run = *state;
    dice d = {20260302};
    text_list recipes = files_in(run, "templates", ".recipe"), jobs = files_in(run, "samples", ".job");
    for (int round = 0; round < 40; round++) {
        for (size_t i = 0; i < recipes.count; i++)
            try_recipe(&d, sb_source_text(sb_source_read(run, recipes.items[i])));
        for (size_t i = 0; i < jobs.count; i++)
            try_job(&d, sb_source_text(sb_source_read(run, jobs.items[i])));
    }
}

/* ---- no memory --------------------------------------------------------------------------------------------------- */

typedef struct reading {
    sb_run *run;
    const char *text;
} reading;

static void read_under_limit(void *context) {
    reading *r = context;
    const sb_recipe *recipe = sb_recipe_of(r->run, sb_source_of(r->run, "a.recipe", r->text), false);
    sb_recipe_look_over(r->run, recipe);
}

/* Wherever memory runs out, control comes back; with enough of it the recipe reads well. */
static void memory_runs_out_anywhere(void **state) {
    const char *text = sb_source_text(sb_source_read(*state, "templates/splayed-planter.recipe"));
    bool done = false;
    size_t failures = 0;
    for (size_t limit = 8192; !done && limit < 64u << 20; limit += limit / 7) {
        sb_run run = sb_run_new();
        reading r = {&run, text};
        sb_pool_limit(run.pool, limit);
        done = sb_pool_run(run.pool, read_under_limit, &r);
        failures += !done;
        if (done)
            assert_no_notices(&run);
        sb_run_free(&run);
    }
    assert_true(done && failures > 3);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(every_template_reads_without_a_word),
        AT_THE_BENCH(every_sample_reads_without_a_word),
        AT_THE_BENCH(damaged_files),
        AT_THE_BENCH(memory_runs_out_anywhere),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
