/* Files out: all of a set or none of it. */
#include "bench.h"

#include <dirent.h>
#include <signal.h>
#include <sys/resource.h>
#include <sys/stat.h>

static const char *content(sb_run *run, const char *folder, const char *name) {
    char block[256] = "";
    FILE *file = fopen(sb_pool_print(run->pool, "%s/%s", folder, name), "rb");
    if (!file)
        return NULL;
    size_t size = fread(block, 1, sizeof block - 1, file);
    fclose(file);
    return sb_pool_copy(run->pool, block, size);
}

static int entries(const char *folder) {
    int count = 0;
    DIR *open_folder = opendir(folder);
    assert_non_null(open_folder);
    while (readdir(open_folder))
        count++;
    closedir(open_folder);
    return count - 2; /* . and .. */
}

static void write_text(sb_run *run, sb_file_set *set, const char *name, const char *text) {
    assert_true(sb_file_set_write(run, set, name, text, strlen(text)));
}

/* A set "a", "b" with old content that stands there already. */
static const char *folder_with_old(sb_run *run) {
    const char *folder = new_folder(run);
    new_file(run, folder, "a", "old a", 5);
    new_file(run, folder, "b", "old b", 5);
    return folder;
}

static void nothing_shows_before_it_is_kept(void **state) {
    sb_run *run = *state;
    const char *folder = folder_with_old(run);
    sb_file_set *set = sb_file_set_new(run, folder);
    write_text(run, set, "a", "new a");
    write_text(run, set, "c", "new c");
    assert_string_equal(content(run, folder, "a"), "old a");
    assert_null(content(run, folder, "c"));
    assert_true(sb_file_set_keep(run, set));
    assert_string_equal(content(run, folder, "a"), "new a");
    assert_string_equal(content(run, folder, "b"), "old b"); /* not of the set */
    assert_string_equal(content(run, folder, "c"), "new c");
    assert_int_equal(entries(folder), 3);
}

static void what_others_write_by_path(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    sb_file_set *set = sb_file_set_new(run, folder);
    const char *path = sb_file_set_path(run, set, "quote.xlsx");
    FILE *file = fopen(path, "wb");
    fputs("sheet", file);
    fclose(file);
    assert_null(content(run, folder, "quote.xlsx"));
    assert_true(sb_file_set_keep(run, set));
    assert_string_equal(content(run, folder, "quote.xlsx"), "sheet");
}

static void the_usual_permissions(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    struct stat status, usual;
    assert_int_equal(stat(new_file(run, folder, "usual", "", 0), &usual), 0);
    sb_file_set *set = sb_file_set_new(run, folder);
    write_text(run, set, "a", "x");
    assert_true(sb_file_set_keep(run, set));
    assert_int_equal(stat(sb_pool_print(run->pool, "%s/a", folder), &status), 0);
    assert_int_equal(status.st_mode, usual.st_mode);
}

static void not_kept_leaves_no_trace(void **state) {
    sb_run *run = *state;
    const char *folder = folder_with_old(run);
    sb_run other = sb_run_new();
    sb_file_set *here = sb_file_set_new(&other, folder);
    sb_file_set *deep = sb_file_set_new(&other, sb_pool_print(run->pool, "%s/one/two//three/", folder));
    write_text(&other, here, "a", "new a");
    write_text(&other, deep, "x", "new x");
    assert_int_equal(entries(folder), 4); /* two old, one temporary, one folder */
    sb_run_free(&other);
    assert_int_equal(entries(folder), 2);
    assert_string_equal(content(run, folder, "a"), "old a");
}

static void folders_are_made_and_stay(void **state) {
    sb_run *run = *state;
    const char *folder = sb_pool_print(run->pool, "%s/one/two", new_folder(run));
    sb_run other = sb_run_new();
    sb_file_set *set = sb_file_set_new(&other, folder);
    write_text(&other, set, "x", "new x");
    assert_true(sb_file_set_keep(&other, set));
    sb_run_free(&other);
    assert_string_equal(content(run, folder, "x"), "new x");
}

static void nothing_is_kept_after_an_error(void **state) {
    sb_run *run = *state;
    const char *folder = folder_with_old(run);
    sb_file_set *set = sb_file_set_new(run, folder);
    write_text(run, set, "a", "new a");
    sb_error(run, (sb_place){0}, "the input is wrong");
    assert_false(sb_file_set_keep(run, set));
    assert_string_equal(content(run, folder, "a"), "old a");
}

/* ---- what the system refuses ---- */

/* The last name of the set is taken by a folder: the others must come back as they were. */
static void the_old_set_comes_back(void **state) {
    sb_run *run = *state;
    const char *folder = folder_with_old(run);
    assert_int_equal(mkdir(sb_pool_print(run->pool, "%s/z", folder), 0777), 0);
    sb_run other = sb_run_new();
    sb_file_set *set = sb_file_set_new(&other, folder);
    write_text(&other, set, "a", "new a");
    write_text(&other, set, "b", "new b");
    write_text(&other, set, "fresh", "new");
    write_text(&other, set, "z", "new z");
    assert_false(sb_file_set_keep(&other, set));
    assert_int_equal(sb_status(&other), 4);
    assert_string_equal(content(run, folder, "a"), "old a");
    assert_string_equal(content(run, folder, "b"), "old b");
    assert_null(content(run, folder, "fresh"));
    sb_run_free(&other);
    assert_int_equal(entries(folder), 3); /* a, b, z and nothing else */
}

/* A file that somebody was to write and did not. */
static void a_missing_temporary(void **state) {
    sb_run *run = *state;
    const char *folder = folder_with_old(run);
    sb_file_set *set = sb_file_set_new(run, folder);
    write_text(run, set, "a", "new a");
    assert_int_equal(unlink(sb_file_set_path(run, set, "b")), 0);
    assert_false(sb_file_set_keep(run, set));
    assert_int_equal(sb_status(run), 4);
    assert_string_equal(content(run, folder, "a"), "old a");
    assert_string_equal(content(run, folder, "b"), "old b");
}

/* No more room: a limit on the size of files stands in for a full disk; both come out of write(). */
static void no_room_left(void **state) {
    sb_run *run = *state;
    const char *folder = folder_with_old(run);
    struct rlimit usual, small = {1000, 0};
    static char bytes[5000];
    assert_int_equal(getrlimit(RLIMIT_FSIZE, &usual), 0);
    small.rlim_max = usual.rlim_max;
    signal(SIGXFSZ, SIG_IGN);
    sb_file_set *set = sb_file_set_new(run, folder);
    setrlimit(RLIMIT_FSIZE, &small);
    bool fits = sb_file_set_write(run, set, "a", bytes, 900);
    bool written = sb_file_set_write(run, set, "b", bytes, sizeof bytes);
    setrlimit(RLIMIT_FSIZE, &usual);
    assert_true(fits);
    assert_false(written);
    assert_notice(run, 0, "", "cannot write");
    assert_int_equal(sb_status(run), 4);
    assert_false(sb_file_set_keep(run, set));
    assert_string_equal(content(run, folder, "a"), "old a");
}

static void folders_that_cannot_be(void **state) {
    sb_run *run = *state;
    const char *path = new_file(run, new_folder(run), "plain", "x", 1);
    assert_null(sb_file_set_new(run, path));
    assert_notice(run, 0, "", "cannot make the folder");
    assert_null(sb_file_set_new(run, sb_pool_print(run->pool, "%s/below", path)));
    assert_int_equal(sb_notices_count(run, SB_FAILURE), 1); /* the same complaint about the same file */
}

static void names_that_lead_elsewhere(void **state) {
    sb_run *run = *state;
    sb_file_set *set = sb_file_set_new(run, new_folder(run));
    assert_null(sb_file_set_path(run, set, "../x"));
    assert_false(sb_file_set_write(run, set, "", "x", 1));
    assert_int_equal(sb_notices_level(run, 0), SB_BUG);
}

/* Two runs that write the same set do not use each other's temporaries. */
static void two_at_once(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    sb_run other = sb_run_new();
    sb_file_set *first = sb_file_set_new(run, folder), *second = sb_file_set_new(&other, folder);
    write_text(run, first, "a", "first");
    write_text(&other, second, "a", "second");
    assert_true(sb_file_set_keep(run, first));
    assert_string_equal(content(run, folder, "a"), "first");
    assert_true(sb_file_set_keep(&other, second));
    assert_string_equal(content(run, folder, "a"), "second");
    sb_run_free(&other);
    assert_int_equal(entries(folder), 1);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(nothing_shows_before_it_is_kept),
        AT_THE_BENCH(what_others_write_by_path),
        AT_THE_BENCH(the_usual_permissions),
        AT_THE_BENCH(not_kept_leaves_no_trace),
        AT_THE_BENCH(folders_are_made_and_stay),
        AT_THE_BENCH(nothing_is_kept_after_an_error),
        AT_THE_BENCH(the_old_set_comes_back),
        AT_THE_BENCH(a_missing_temporary),
        AT_THE_BENCH(no_room_left),
        AT_THE_BENCH(folders_that_cannot_be),
        AT_THE_BENCH(names_that_lead_elsewhere),
        AT_THE_BENCH(two_at_once),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
