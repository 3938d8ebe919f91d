/* Messages: what they look like, what they add up to, and the nearest word. */
#include "bench.h"

static sb_place find(const sb_source *source, const char *words) {
    const char *found = strstr(sb_source_text(source), words);
    assert_non_null(found);
    return (sb_place){source, (size_t)(found - sb_source_text(source)), strlen(words)};
}

static void the_line_and_a_caret(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "trough.recipe", "recipe trough\nlength hihg - 20 mm\n");
    sb_error(run, find(s, "hihg"), "unknown word \"%s\"", "hihg");
    assert_string_equal(sb_notices_text(run, SB_NOTE, false),
                        "trough.recipe:2:8: error: unknown word \"hihg\"\n"
                        "    length hihg - 20 mm\n"
                        "           ^~~~\n");
}

static void tabs_and_letters_keep_the_caret_in_place(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "\tl\xC3\xA4nge\tx\r\nnext");
    sb_advise(run, find(s, "x"), "here");
    assert_string_equal(sb_notices_text(run, SB_NOTE, false), "a:1:8: advice: here\n"
                                                              "    \tl\xC3\xA4nge\tx\n"
                                                              "    \t     \t^\n");
}

static void wide_letters_and_marks(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "\xE6\x9C\xA8 e\xCC\x81 x");
    sb_error(run, find(s, "x"), "here");
    assert_string_equal(sb_notices_text(run, SB_NOTE, false), "a:1:6: error: here\n"
                                                              "    \xE6\x9C\xA8 e\xCC\x81 x\n"
                                                              "    \xE3\x80\x80   ^\n");
}

static void the_end_of_a_line_and_of_a_file(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "let x =\nlet y =");
    sb_error(run, (sb_place){s, 7, 0}, "first");
    sb_error(run, (sb_place){s, 15, 0}, "second");
    assert_string_equal(sb_notices_text(run, SB_NOTE, false), "a:1:8: error: first\n"
                                                              "    let x =\n"
                                                              "           ^\n"
                                                              "a:2:8: error: second\n"
                                                              "    let y =\n"
                                                              "           ^\n");
}

static void a_place_over_several_lines_is_marked_in_its_first(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "one two\nthree");
    sb_error(run, (sb_place){s, 4, 9}, "all of it");
    assert_string_equal(sb_notices_text(run, SB_NOTE, false), "a:1:5: error: all of it\n"
                                                              "    one two\n"
                                                              "        ^~~\n");
}

static void long_lines_are_cut_around_the_caret(void **state) {
    sb_run *run = *state;
    char line[1001];
    memset(line, 'x', 1000);
    line[1000] = 0;
    memcpy(line + 500, "HERE", 4);
    const sb_source *s = sb_source_of(run, "a", line);
    sb_error(run, find(s, "HERE"), "look");
    const char *text = sb_notices_text(run, SB_NOTE, false);
    const char *here = strstr(text, "HERE"), *caret = strstr(text, "^~~~");
    assert_true(strlen(text) < 300);
    assert_non_null(here);
    const char *line_start = strchr(text, '\n') + 1, *caret_start = strchr(line_start, '\n') + 1;
    assert_int_equal(here - line_start, caret - caret_start);
}

static void nothing_dangerous_reaches_the_terminal(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "x \033[2J y");
    sb_notices_enter(run, (sb_place){0}, "piece \"\033[1m\"");
    sb_error(run, find(s, "y"), "unknown word \"%s\"", "\033[2J");
    sb_error(run, (sb_place){sb_source_of(run, "\033.job", "x"), 0, 1}, "look");
    assert_null(strchr(sb_notices_text(run, SB_NOTE, false), '\033'));
}

static void colour_only_when_asked(void **state) {
    sb_run *run = *state;
    sb_error(run, find(sb_source_of(run, "a", "x"), "x"), "look");
    assert_null(strchr(sb_notices_text(run, SB_NOTE, false), '\033'));
    assert_non_null(strstr(sb_notices_text(run, SB_NOTE, true), "\033[1;31merror:\033[0m look"));
}

static void the_way_that_led_there(void **state) {
    sb_run *run = *state;
    const sb_source *job = sb_source_of(run, "spring.job", "piece trough 14");
    const sb_source *recipe = sb_source_of(run, "trough.recipe", "length long");
    sb_notices_enter(run, find(job, "trough"), "piece \"trough\"");
    sb_notices_enter(run, (sb_place){0}, "option \"sheets\"");
    sb_error(run, find(recipe, "long"), "too long");
    sb_notices_leave(run);
    sb_notices_leave(run);
    sb_error(run, find(recipe, "length"), "by itself");
    assert_string_equal(sb_notices_text(run, SB_NOTE, false), "trough.recipe:1:1: error: by itself\n"
                                                              "    length long\n"
                                                              "    ^~~~~~\n"
                                                              "trough.recipe:1:8: error: too long\n"
                                                              "    length long\n"
                                                              "           ^~~~\n"
                                                              "  in option \"sheets\"\n"
                                                              "  in piece \"trough\", at spring.job:1:7\n");
    sb_notices_leave(run); /* once too often does no harm */
}

static void known_words_are_listed_once(void **state) {
    sb_run *run = *state;
    const char *const known[] = {"oak", "larch", "oak", "pine", "larch"};
    sb_error_unknown(run, (sb_place){0}, "stock", "xyz-123", known, 5);
    assert_string_equal(sb_notices_message(run, 0), "unknown stock \"xyz-123\"; known: oak, larch, pine");
}

static void the_same_once(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "one two");
    for (int i = 0; i < 3; i++) {
        sb_error(run, find(s, "one"), "wrong");
        sb_error(run, find(s, "two"), "wrong");
        sb_error(run, (sb_place){0}, "wrong");
    }
    assert_int_equal(sb_notices_count(run, SB_NOTE), 3);
}

static void many_stay_quick(void **state) {
    sb_run *run = *state;
    for (int i = 0; i < 50000; i++)
        sb_error(run, (sb_place){0}, "number %d", i);
    assert_int_equal(sb_notices_count(run, SB_ERROR), 50000);
    assert_string_equal(sb_notices_message(run, 49999), "number 49999");
    assert_null(sb_notices_message(run, 50000));
}

static void sources_in_turn_and_each_from_the_top(void **state) {
    sb_run *run = *state;
    const sb_source *a = sb_source_of(run, "a", "1\n2"), *b = sb_source_of(run, "b", "1\n2");
    sb_error(run, find(b, "2"), "m1");
    sb_error(run, find(a, "2"), "m2");
    sb_error(run, find(b, "1"), "m3");
    sb_error(run, find(a, "2"), "m4");
    const char *text = sb_notices_text(run, SB_NOTE, false);
    const char *order[] = {"m3", "m1", "m2", "m4"};
    for (int i = 0; i < 3; i++)
        assert_true(strstr(text, order[i]) < strstr(text, order[i + 1]));
    assert_string_equal(sb_notices_message(run, 0), "m1"); /* asked one by one: as they came */
}

static void the_worst_decides(void **state) {
    sb_run *run = *state;
    sb_place nowhere = {0};
    assert_int_equal(sb_status(run), 0);
    sb_note(run, nowhere, "n");
    assert_int_equal(sb_status(run), 0);
    sb_advise(run, nowhere, "a");
    assert_int_equal(sb_status(run), 3);
    assert_true(sb_ok(run));
    sb_error(run, nowhere, "e");
    assert_int_equal(sb_status(run), 1);
    assert_false(sb_ok(run));
    sb_advise(run, nowhere, "another");
    assert_int_equal(sb_status(run), 1);
    sb_fail(run, nowhere, "f");
    assert_int_equal(sb_status(run), 4);
    sb_bug(run, nowhere, "b");
    assert_int_equal(sb_status(run), 4);
    assert_int_equal(sb_notices_count(run, SB_ADVICE), 5);
    assert_string_equal(sb_notices_text(run, SB_ERROR, false), "error: e\nfailure: f\nbug in sawbill: b\n");
}

/* ---- the nearest word ---- */

static const char *const keywords[] = {"length", "width",  "count", "part",
                                       "fixing", "finish", "check", "larch-70x70"};
enum {
    KEYWORDS = sizeof keywords / sizeof *keywords
};

static void slips_of_the_finger(void **state) {
    (void)state;
    assert_string_equal(sb_nearest("legnth", keywords, KEYWORDS), "length"); /* swapped */
    assert_string_equal(sb_nearest("lenth", keywords, KEYWORDS), "length");  /* dropped */
    assert_string_equal(sb_nearest("lenngth", keywords, KEYWORDS), "length");
    assert_string_equal(sb_nearest("Width", keywords, KEYWORDS), "width");
    assert_string_equal(sb_nearest("finsh", keywords, KEYWORDS), "finish");
    assert_string_equal(sb_nearest("larch", keywords, KEYWORDS), "larch-70x70");
    assert_null(sb_nearest("trough", keywords, KEYWORDS));
    assert_null(sb_nearest("", keywords, KEYWORDS));
    assert_null(sb_nearest("x", keywords, KEYWORDS));
    assert_null(sb_nearest("length", NULL, 0));
}

/* One slip in any word of four letters or more leads back to it, where no other is as near. */
static void any_one_slip_is_found(void **state) {
    sb_run *run = *state;
    dice d = {99};
    for (int i = 0; i < 3000; i++) {
        const char *word = keywords[roll(&d, KEYWORDS)];
        size_t size = strlen(word), at = (size_t)roll(&d, size);
        char *typed = sb_pool_copy(run->pool, word, size + 1);
        if (roll(&d, 2)) {
            memmove(typed + at, typed + at + 1, size - at); /* drop one */
        } else if (at + 1 < size) {
            typed[at] = word[at + 1]; /* swap two */
            typed[at + 1] = word[at];
        }
        assert_string_equal(sb_nearest(typed, keywords, KEYWORDS), word);
    }
}

static void words_too_long_to_compare(void **state) {
    sb_run *run = *state;
    const char *long_word = sb_pool_print(run->pool, "%0200d", 7);
    assert_null(sb_nearest(long_word, keywords, KEYWORDS));
    assert_null(sb_nearest("length", &long_word, 1));
}

static void unknown_words(void **state) {
    sb_run *run = *state;
    static const char *const many[] = {"oak", "ash",  "elm",  "yew",  "fir",
                                       "box", "pear", "plum", "lime", "teak"};
    sb_error_unknown(run, (sb_place){0}, "keyword", "legnth", keywords, KEYWORDS);
    sb_error_unknown(run, (sb_place){0}, "stock", "zinc", many, 10);
    sb_error_unknown(run, (sb_place){0}, "stock", "zinc", NULL, 0);
    assert_string_equal(sb_notices_message(run, 0), "unknown keyword \"legnth\"; did you mean \"length\"?");
    assert_string_equal(sb_notices_message(run, 1),
                        "unknown stock \"zinc\"; known: oak, ash, elm, yew, fir, box, pear, plum, ...");
    assert_string_equal(sb_notices_message(run, 2), "unknown stock \"zinc\"; none is known here");
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(the_line_and_a_caret),
        AT_THE_BENCH(tabs_and_letters_keep_the_caret_in_place),
        AT_THE_BENCH(wide_letters_and_marks),
        AT_THE_BENCH(the_end_of_a_line_and_of_a_file),
        AT_THE_BENCH(a_place_over_several_lines_is_marked_in_its_first),
        AT_THE_BENCH(long_lines_are_cut_around_the_caret),
        AT_THE_BENCH(nothing_dangerous_reaches_the_terminal),
        AT_THE_BENCH(colour_only_when_asked),
        AT_THE_BENCH(the_way_that_led_there),
        AT_THE_BENCH(the_same_once),
        AT_THE_BENCH(known_words_are_listed_once),
        AT_THE_BENCH(many_stay_quick),
        AT_THE_BENCH(sources_in_turn_and_each_from_the_top),
        AT_THE_BENCH(the_worst_decides),
        cmocka_unit_test(slips_of_the_finger),
        AT_THE_BENCH(any_one_slip_is_found),
        AT_THE_BENCH(words_too_long_to_compare),
        AT_THE_BENCH(unknown_words),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
