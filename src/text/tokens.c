/* Tokens of one line, by PCRE2 rules, and the walk over them. */
#include "text/source.h"
#include "text/utf8.h"

#define PCRE2_CODE_UNIT_WIDTH 8
#include <pcre2.h>
#include <string.h>

typedef struct rule {
    sb_token_kind kind;
    const char *pattern;
    pcre2_code *code;
} rule;

struct sb_lexer {
    struct sb_lexer *next;
    rule *rules;
    size_t count;
    pcre2_match_data *match;
};

/* ---- compiling ---------------------------------------------------------------------------------- */

static void free_code(void *code) {
    pcre2_code_free(code);
}

static void free_match(void *match) {
    pcre2_match_data_free(match);
}

/* Our own patterns; one that does not compile is our mistake. */
static void compile(sb_run *run, rule *r) {
    int error;
    PCRE2_SIZE offset;
    PCRE2_UCHAR words[128];
    r->code = pcre2_compile((PCRE2_SPTR)r->pattern, PCRE2_ZERO_TERMINATED, PCRE2_UTF | PCRE2_ANCHORED, &error,
                            &offset, NULL);
    if (!r->code) {
        pcre2_get_error_message(error, words, sizeof words);
        sb_bug(run, (sb_place){0}, "the pattern %s fails at %zu: %s", r->pattern, (size_t)offset,
               (const char *)words);
        return;
    }
    sb_pool_defer(run->pool, free_code, r->code);
    (void)pcre2_jit_compile(r->code, PCRE2_JIT_COMPLETE); /* only faster; works without */
}

static bool same_rules(const sb_lexer *lexer, const sb_lex_rule *rules, size_t count) {
    if (lexer->count != count)
        return false;
    for (size_t i = 0; i < count; i++)
        if (lexer->rules[i].kind != rules[i].kind || strcmp(lexer->rules[i].pattern, rules[i].pattern) != 0)
            return false;
    return true;
}

sb_lexer *sb_lexer_new(sb_run *run, const sb_lex_rule *rules, size_t count) {
    for (sb_lexer *known = run->lexers; known; known = known->next)
        if (same_rules(known, rules, count))
            return known;
    sb_lexer *lexer = SB_NEW(run->pool, sb_lexer);
    *lexer = (sb_lexer){.rules = SB_NEW_ARRAY(run->pool, rule, count), .count = count};
    for (size_t i = 0; i < count; i++) {
        const char *pattern = sb_pool_copy(run->pool, rules[i].pattern, strlen(rules[i].pattern));
        lexer->rules[i] = (rule){.kind = rules[i].kind, .pattern = pattern};
        compile(run, &lexer->rules[i]);
    }
    lexer->match = pcre2_match_data_create(2, NULL);
    if (lexer->match)
        sb_pool_defer(run->pool, free_match, lexer->match);
    else
        sb_fail(run, (sb_place){0}, "no memory for reading words");
    lexer->next = run->lexers;
    run->lexers = lexer;
    return lexer;
}

/* ---- cutting a line up ---------------------------------------------------------------------------- */

typedef struct token_list {
    sb_token *items;
    size_t count, capacity;
} token_list;

/* Length of what the rule matches at `at`, 0 when it does not. The subject ends where the place ends;
 * it begins with the source, so that patterns may look back. */
static size_t match_rule(sb_run *run, const sb_lexer *lexer, const rule *r, sb_place rest, sb_token *token) {
    const char *text = rest.source->text;
    if (!r->code || !lexer->match)
        return 0;
    int groups = pcre2_match(r->code, (PCRE2_SPTR)text, rest.offset + rest.length, rest.offset,
                             PCRE2_NO_UTF_CHECK, lexer->match, NULL);
    if (groups < 0 && groups != PCRE2_ERROR_NOMATCH)
        sb_bug(run, rest, "reading the words of this line failed with %d", groups);
    if (groups < 1 && groups != 0)
        return 0;
    const PCRE2_SIZE *bounds = pcre2_get_ovector_pointer(lexer->match);
    size_t from = bounds[0], to = bounds[1], length = to - from;
    if (pcre2_get_ovector_count(lexer->match) > 1 && groups != 1 && bounds[2] != PCRE2_UNSET)
        from = bounds[2], to = bounds[3];
    *token = (sb_token){.kind = r->kind,
                        .text = sb_pool_copy(run->pool, text + from, to - from),
                        .place = {rest.source, rest.offset, length}};
    return length;
}

static size_t next_token(sb_run *run, const sb_lexer *lexer, sb_place rest, sb_token *token) {
    size_t length = 0;
    for (size_t i = 0; i < lexer->count && length == 0; i++)
        length = match_rule(run, lexer, &lexer->rules[i], rest, token);
    return length;
}

/* Says what is wrong with the character and returns its length. */
static size_t refuse_character(sb_run *run, sb_place rest) {
    const char *text = rest.source->text + rest.offset;
    size_t length = utf8_next(text, rest.length, NULL);
    rest.length = length ? length : 1;
    if (*text == '"')
        sb_error(run, rest, "this quote is never closed");
    else
        sb_error(run, rest, "the character %s means nothing here", sb_place_text(run, rest));
    return rest.length;
}

static sb_place behind(sb_place place, size_t length) {
    place.offset += length;
    place.length -= length;
    return place;
}

sb_cursor sb_tokens_of(sb_run *run, const sb_lexer *lexer, sb_place place) {
    token_list tokens = {0};
    while (place.length > 0) {
        sb_token token;
        size_t length = utf8_blank(place.source->text + place.offset, place.length);
        if (length == 0) {
            length = next_token(run, lexer, place, &token);
            if (length > 0)
                SB_PUSH(run->pool, tokens, token);
            else
                length = refuse_character(run, place);
        }
        place = behind(place, length);
    }
    sb_token end = {.kind = SB_END, .text = "", .place = place};
    SB_PUSH(run->pool, tokens, end);
    return (sb_cursor){tokens.items};
}

sb_cursor sb_statement_tokens(sb_run *run, const sb_lexer *lexer, const sb_statement *statement) {
    return sb_tokens_of(run, lexer, statement->rest);
}

/* ---- walking -------------------------------------------------------------------------------------- */

static bool at_token(const sb_cursor *cursor, sb_token_kind kind, const char *text) {
    return cursor->at->kind == kind && strcmp(cursor->at->text, text) == 0;
}

bool sb_at_word(const sb_cursor *cursor, const char *word) {
    return at_token(cursor, SB_WORD, word);
}

bool sb_at_symbol(const sb_cursor *cursor, const char *symbol) {
    return at_token(cursor, SB_SYMBOL, symbol);
}

bool sb_take_word(sb_cursor *cursor, const char *word) {
    bool there = sb_at_word(cursor, word);
    if (there)
        cursor->at++;
    return there;
}

bool sb_take_symbol(sb_cursor *cursor, const char *symbol) {
    bool there = sb_at_symbol(cursor, symbol);
    if (there)
        cursor->at++;
    return there;
}

static void error_expected(sb_run *run, const sb_cursor *cursor, const char *what) {
    if (cursor->at->kind == SB_END)
        sb_error(run, cursor->at->place, "expected %s, but the line ends here", what);
    else
        sb_error(run, cursor->at->place, "expected %s, found \"%s\"", what,
                 sb_place_text(run, cursor->at->place));
}

const sb_token *sb_expect_word(sb_run *run, sb_cursor *cursor, const char *what) {
    if (cursor->at->kind == SB_WORD || cursor->at->kind == SB_STRING)
        return cursor->at++;
    error_expected(run, cursor, what);
    return NULL;
}

bool sb_expect_symbol(sb_run *run, sb_cursor *cursor, const char *symbol) {
    if (sb_take_symbol(cursor, symbol))
        return true;
    error_expected(run, cursor, sb_pool_print(run->pool, "\"%s\"", symbol));
    return false;
}

bool sb_expect_end(sb_run *run, const sb_cursor *cursor) {
    if (cursor->at->kind == SB_END)
        return true;
    error_expected(run, cursor, "the end of the line");
    return false;
}
