/* Files as text, and where in them something stands. */
#include "bench.h"

static const sb_source *read_bytes(sb_run *run, const char *bytes, size_t size) {
    return sb_source_read(run, new_file(run, new_folder(run), "file", bytes, size));
}

static void assert_position(sb_place place, size_t line, size_t column) {
    sb_position p = sb_place_position(place);
    assert_int_equal(p.line, line);
    assert_int_equal(p.column, column);
}

static void lines_and_columns(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "one\ntwo\r\nthree\rfour\n\nsix");
    assert_position((sb_place){s, 0, 1}, 1, 1);
    assert_position((sb_place){s, 3, 1}, 1, 4); /* the line end belongs to its line */
    assert_position((sb_place){s, 4, 1}, 2, 1);
    assert_position((sb_place){s, 9, 1}, 3, 1);
    assert_position((sb_place){s, 15, 1}, 4, 1);
    assert_position((sb_place){s, 20, 1}, 5, 1);
    assert_position((sb_place){s, 21, 3}, 6, 1);
    assert_position((sb_place){s, 24, 0}, 6, 4); /* the end of the text is a place too */
}

static void columns_count_characters(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "\tl\xC3\xA4rche \xE2\x80\xB3 x");
    assert_position((sb_place){s, 1, 1}, 1, 2);
    assert_position((sb_place){s, 4, 1}, 1, 4); /* behind the two bytes of a with dots */
    assert_position((sb_place){s, strlen("\tl\xC3\xA4rche \xE2\x80\xB3 "), 1}, 1, 11);
}

static void marks_at_the_start_are_skipped(void **state) {
    sb_run *run = *state;
    const sb_source *s = read_bytes(run, "\xEF\xBB\xBFname", 7);
    assert_string_equal(sb_source_text(s), "name");
    assert_int_equal(sb_source_size(s), 4);
    assert_position((sb_place){s, 0, 4}, 1, 1);
}

static void empty_is_a_text(void **state) {
    sb_run *run = *state;
    const sb_source *s = read_bytes(run, "", 0);
    assert_string_equal(sb_source_text(s), "");
    assert_position((sb_place){s, 0, 0}, 1, 1);
    assert_true(sb_ok(run));
}

static void nowhere_is_a_place(void **state) {
    sb_run *run = *state;
    sb_position p = sb_place_position((sb_place){0});
    assert_string_equal(p.file, "");
    assert_int_equal(p.line, 0);
    assert_string_equal(sb_place_text(run, (sb_place){0}), "");
}

static void spans(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "high - 20 mm"), *other = sb_source_of(run, "b", "x");
    sb_place high = {s, 0, 4}, mm = {s, 7, 5};
    assert_string_equal(sb_place_text(run, sb_place_span(high, mm)), "high - 20 mm");
    assert_string_equal(sb_place_text(run, sb_place_span((sb_place){0}, mm)), "20 mm");
    assert_string_equal(sb_place_text(run, sb_place_span(high, (sb_place){0})), "high");
    assert_string_equal(sb_place_text(run, sb_place_span(high, (sb_place){other, 0, 1})), "high");
    assert_string_equal(sb_place_text(run, sb_place_span((sb_place){s, 0, 12}, (sb_place){s, 5, 1})),
                        "high - 20 mm");
}

/* ---- what is no text --------------------------------------------------------------------------------- */

static void folders_are_no_files(void **state) {
    sb_run *run = *state;
    assert_null(sb_source_read(run, new_folder(run)));
    assert_notice(run, 0, "", "it is a folder");
    assert_int_equal(sb_status(run), 1);
}

static void missing_files(void **state) {
    sb_run *run = *state;
    assert_null(sb_source_read(run, sb_pool_print(run->pool, "%s/none.job", new_folder(run))));
    assert_notice(run, 0, "", "none.job");
}

static void nul_bytes(void **state) {
    sb_run *run = *state;
    assert_null(read_bytes(run, "one\ntw\0o", 8));
    assert_notice(run, 0, "2:3", "NUL");
}

/* RFC 3629: overlong forms, surrogates, what is above U+10FFFF, and cut characters are no UTF-8. */
static void wrong_encodings(void **state) {
    sb_run *run = *state;
    static const char *const wrong[] = {
        "a\xE4rger", "a\xC0\x80", "a\xE0\x80\x80", "a\xED\xA0\x80", "a\xF4\x90\x80\x80",
        "a\xF5xxx",  "a\xE2\x80", "a\x80",         "a\xC3(",        "a\xF0\x8F\xBF\xBF"};
    for (size_t i = 0; i < sizeof wrong / sizeof *wrong; i++) {
        assert_null(sb_source_of(run, "x", wrong[i]));
        assert_notice(run, i, "1:2", "is not UTF-8");
    }
    assert_non_null(sb_source_of(run, "x",
                                 "\xC2\x80\xDF\xBF\xE0\xA0\x80\xED\x9F\xBF\xEE\x80\x80\xF0\x90\x80\x80"
                                 "\xF4\x8F\xBF\xBF"));
}

static void too_large(void **state) {
    sb_run *run = *state;
    const char *path = new_file(run, new_folder(run), "large", "x", 1);
    assert_int_equal(truncate(path, 64L * 1024 * 1024 + 1), 0);
    assert_null(sb_source_read(run, path));
    assert_notice(run, 0, "", "larger than 64 MiB");
}

static void many_files_stay_readable(void **state) {
    sb_run *run = *state;
    const char *path = new_file(run, new_folder(run), "one", "x", 1);
    for (int i = 0; i < 3000; i++) /* more than a process may have open */
        assert_non_null(sb_source_read(run, path));
}

/* The same notice at the same place is told once, however many readers ask for the file. */
static void a_file_is_read_once(void **state) {
    sb_run *run = *state;
    const char *folder = new_folder(run);
    const char *good = new_file(run, folder, "good", "a\n", 2), *bad = new_file(run, folder, "bad", "\xFF\n", 2);
    assert_ptr_equal(sb_source_read(run, good), sb_source_read(run, good));
    assert_null(sb_source_read(run, bad));
    assert_null(sb_source_read(run, bad));
    assert_int_equal(sb_notices_count(run, SB_ERROR), 1);
    assert_int_equal(sb_notices_raised(run, SB_ERROR), 2);
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(a_file_is_read_once),
        AT_THE_BENCH(lines_and_columns),
        AT_THE_BENCH(columns_count_characters),
        AT_THE_BENCH(marks_at_the_start_are_skipped),
        AT_THE_BENCH(empty_is_a_text),
        AT_THE_BENCH(nowhere_is_a_place),
        AT_THE_BENCH(spans),
        AT_THE_BENCH(folders_are_no_files),
        AT_THE_BENCH(missing_files),
        AT_THE_BENCH(nul_bytes),
        AT_THE_BENCH(wrong_encodings),
        AT_THE_BENCH(too_large),
        AT_THE_BENCH(many_files_stay_readable),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
