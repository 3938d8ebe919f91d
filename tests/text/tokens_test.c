/* The line grammar: statements, tokens, and the walk over them. */
#include "bench.h"

static const sb_lexer *simple_lexer(sb_run *run) {
    static const sb_lex_rule rules[] = {
        {SB_TEXT, ":\\s*(?|\"([^\"]*)\"|(.*?))\\s*$"},
        {SB_QUANTITY, "[0-9]+(?: ?mm)?"},
        {SB_WORD, "\\p{L}[\\p{L}0-9-]*"},
        {SB_STRING, "\"([^\"]*)\""},
        {SB_SYMBOL, "<=|[-+(),|<=]"},
    };
    return sb_lexer_new(run, rules, sizeof rules / sizeof *rules);
}

static sb_statements statements_of(sb_run *run, const char *text) {
    return sb_statements_read(run, sb_source_of(run, "a.recipe", text));
}

static sb_cursor tokens_of(sb_run *run, const char *line) {
    const sb_source *s = sb_source_of(run, "line", line);
    return sb_tokens_of(run, simple_lexer(run), (sb_place){s, 0, sb_source_size(s)});
}

static void assert_token(sb_cursor *cursor, sb_token_kind kind, const char *text) {
    assert_int_equal(cursor->at->kind, kind);
    assert_string_equal(cursor->at->text, text);
    if (kind != SB_END)
        cursor->at++;
}

/* ---- statements -------------------------------------------------------------------------------------- */

static void keyword_and_rest(void **state) {
    sb_run *run = *state;
    sb_statements all =
        statements_of(run, "recipe   trough\r\n\r\n\ttitle \"Slatted # trough\"\rpart\n  # remark\n"
                           "length long - 2   # both ends\nnote: hello # world\n#end");
    static const char *const expected[][2] = {
        {"recipe", "trough"}, {"title", "Slatted # trough"}, {"part", ""}, {"length", "long - 2"},
        {"note", "hello"},
    };
    assert_int_equal(all.count, 5);
    for (size_t i = 0; i < 5; i++) {
        assert_string_equal(all.items[i].keyword.text, expected[i][0]);
        assert_string_equal(sb_statement_text(run, &all.items[i]), expected[i][1]);
        assert_string_equal(sb_place_text(run, all.items[i].keyword.place), expected[i][0]);
    }
    assert_int_equal(all.items[2].rest.length, 0);
    assert_int_equal(sb_place_position(all.items[3].keyword.place).line, 6);
    assert_true(sb_ok(run));
}

/* An inch mark opens no text, so a comment behind it is still a comment. */
static void inch_marks_are_no_quotes(void **state) {
    sb_run *run = *state;
    sb_statements all = statements_of(run, "length 47 1/4\" # from the shop\nlabel 3\" x 4\"\nnote \"3\n"
                                           "title \"a\" # \"b\"");
    assert_string_equal(sb_statement_text(run, &all.items[0]), "47 1/4\"");
    assert_string_equal(sb_statement_text(run, &all.items[1]), "3\" x 4\"");
    assert_string_equal(sb_statement_text(run, &all.items[2]), "\"3");
    assert_string_equal(sb_statement_text(run, &all.items[3]), "a");
}

static void what_looks_like_a_comment(void **state) {
    sb_run *run = *state;
    sb_statements all = statements_of(run, "note item#4 stays # this goes\nnote : nothing #");
    assert_string_equal(sb_statement_text(run, &all.items[0]), "item#4 stays");
    assert_string_equal(sb_statement_text(run, &all.items[1]), "nothing");
}

static void nothing_at_all(void **state) {
    sb_run *run = *state;
    assert_int_equal(statements_of(run, "").count, 0);
    assert_int_equal(statements_of(run, "\n \t \n# only this\n").count, 0);
    assert_int_equal(sb_statements_read(run, NULL).count, 0);
}

static void odd_lines_are_statements_too(void **state) {
    sb_run *run = *state;
    sb_statements all = statements_of(run, ": x\n= 3\nl\xC3\xA4nge 5");
    assert_string_equal(all.items[0].keyword.text, ":");
    assert_string_equal(all.items[1].keyword.text, "=");
    assert_string_equal(all.items[2].keyword.text, "l\xC3\xA4nge");
}

/* ---- tokens ---- */

static void kinds_of_tokens(void **state) {
    sb_run *run = *state;
    sb_cursor c = tokens_of(run, "  when n <= 20 mm of \"long slat\" : too low, by \"far\"  ");
    assert_token(&c, SB_WORD, "when");
    assert_token(&c, SB_WORD, "n");
    assert_token(&c, SB_SYMBOL, "<=");
    assert_token(&c, SB_QUANTITY, "20 mm");
    assert_token(&c, SB_WORD, "of");
    assert_token(&c, SB_STRING, "long slat");
    assert_token(&c, SB_TEXT, "too low, by \"far\"");
    assert_token(&c, SB_END, "");
    assert_token(&c, SB_END, "");
}

static void text_behind_a_colon(void **state) {
    sb_run *run = *state;
    sb_cursor c = tokens_of(run, "x : \"  in quotes \"");
    c.at++;
    assert_token(&c, SB_TEXT, "  in quotes ");
    c = tokens_of(run, "x:");
    c.at++;
    assert_token(&c, SB_TEXT, "");
    assert_token(&c, SB_END, "");
}

static void tokens_know_their_place(void **state) {
    sb_run *run = *state;
    sb_cursor c = tokens_of(run, "\xC3\xA4 \xC2\xA0 \"b c\" 4");
    assert_string_equal(sb_place_text(run, c.at[1].place), "\"b c\"");
    assert_int_equal(sb_place_position(c.at[1].place).column, 5);
    assert_int_equal(sb_place_position(c.at[3].place).column, 12);
    assert_int_equal(c.at[3].kind, SB_END);
}

/* A rule sees no further than the place reaches, and nothing of the next line. */
static void a_place_ends_where_it_ends(void **state) {
    sb_run *run = *state;
    const sb_source *s = sb_source_of(run, "a", "wide 20 mm\nhigh");
    sb_cursor c = sb_tokens_of(run, simple_lexer(run), (sb_place){s, 0, 7});
    assert_token(&c, SB_WORD, "wide");
    assert_token(&c, SB_QUANTITY, "20");
    assert_token(&c, SB_END, "");
}

static void characters_that_mean_nothing(void **state) {
    sb_run *run = *state;
    sb_cursor c = tokens_of(run, "a $ b \xE2\x82\xAC \"c");
    assert_notice(run, 0, "1:3", "the character $ means nothing");
    assert_notice(run, 1, "1:7", "the character \xE2\x82\xAC means nothing");
    assert_notice(run, 2, "1:9", "never closed");
    assert_token(&c, SB_WORD, "a");
    assert_token(&c, SB_WORD, "b");
    assert_token(&c, SB_WORD, "c");
    assert_token(&c, SB_END, "");
}

static void lexers_are_compiled_once(void **state) {
    sb_run *run = *state;
    const sb_lexer *lexer = simple_lexer(run);
    sb_lex_rule other = {SB_WORD, "[a-z]+"};
    assert_ptr_equal(simple_lexer(run), lexer);
    assert_ptr_not_equal(sb_lexer_new(run, &other, 1), lexer);
    assert_ptr_equal(simple_lexer(run), lexer);
}

static void a_wrong_pattern_is_our_mistake(void **state) {
    sb_run *run = *state;
    sb_lex_rule rules[] = {{SB_WORD, "(["}, {SB_WORD, "[a-z]+"}};
    sb_lexer *lexer = sb_lexer_new(run, rules, 2);
    assert_int_equal(sb_notices_level(run, 0), SB_BUG);
    const sb_source *s = sb_source_of(run, "a", "still");
    sb_cursor c = sb_tokens_of(run, lexer, (sb_place){s, 0, 5});
    assert_token(&c, SB_WORD, "still");
}

/* ---- walking ---- */

static void taking_and_expecting(void **state) {
    sb_run *run = *state;
    sb_cursor c = tokens_of(run, "4 of \"of\" ( post");
    assert_false(sb_at_word(&c, "of"));
    assert_null(sb_expect_word(run, &c, "the name of a stock"));
    assert_notice(run, 0, "1:1", "expected the name of a stock, found \"4\"");
    c.at++;
    assert_true(sb_take_word(&c, "of"));
    assert_false(sb_take_word(&c, "of")); /* in quotes it is no keyword */
    assert_string_equal(sb_expect_word(run, &c, "a stock")->text, "of");
    assert_true(sb_at_symbol(&c, "("));
    assert_true(sb_expect_symbol(run, &c, "("));
    assert_false(sb_expect_symbol(run, &c, ")"));
    assert_notice(run, 1, "1:13", "expected \")\", found \"post\"");
    assert_false(sb_expect_end(run, &c));
    assert_notice(run, 2, "1:13", "expected the end of the line, found \"post\"");
    assert_string_equal(sb_expect_word(run, &c, "a stock")->text, "post");
    assert_true(sb_expect_end(run, &c));
    assert_null(sb_expect_word(run, &c, "a stock"));
    assert_notice(run, 3, "1:17", "expected a stock, but the line ends here");
    assert_false(sb_take_symbol(&c, "("));
    assert_int_equal(c.at->kind, SB_END);
}

/* Whatever bytes stand in a file, reading it ends, and every place lies within. */
static void noise_is_read_to_its_end(void **state) {
    sb_run *run = *state;
    static const char letters[] = "ab 0 9\"#:'\t\n\r,.-(|$\xC3\xA4";
    dice d = {2024};
    for (int round = 0; round < 2000; round++) {
        char text[64];
        size_t size = (size_t)roll(&d, sizeof text - 1);
        for (size_t i = 0; i < size; i++)
            text[i] = letters[roll(&d, sizeof letters - 1)];
        text[size] = 0;
        const sb_source *s = sb_source_of(run, "noise", text);
        sb_statements all = sb_statements_read(run, s); /* not UTF-8 as often as not */
        for (size_t i = 0; i < all.count; i++)
            for (sb_cursor c = sb_statement_tokens(run, simple_lexer(run), &all.items[i]);; c.at++) {
                assert_true(c.at->place.offset + c.at->place.length <= sb_source_size(s));
                if (c.at->kind == SB_END)
                    break;
                assert_true(c.at->place.length > 0);
            }
    }
}

int main(void) {
    const struct CMUnitTest tests[] = {
        AT_THE_BENCH(keyword_and_rest),
        AT_THE_BENCH(inch_marks_are_no_quotes),
        AT_THE_BENCH(what_looks_like_a_comment),
        AT_THE_BENCH(nothing_at_all),
        AT_THE_BENCH(odd_lines_are_statements_too),
        AT_THE_BENCH(kinds_of_tokens),
        AT_THE_BENCH(text_behind_a_colon),
        AT_THE_BENCH(tokens_know_their_place),
        AT_THE_BENCH(a_place_ends_where_it_ends),
        AT_THE_BENCH(characters_that_mean_nothing),
        AT_THE_BENCH(lexers_are_compiled_once),
        AT_THE_BENCH(a_wrong_pattern_is_our_mistake),
        AT_THE_BENCH(taking_and_expecting),
        AT_THE_BENCH(noise_is_read_to_its_end),
    };
    return cmocka_run_group_tests(tests, NULL, NULL);
}
