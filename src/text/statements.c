/* The line grammar: a keyword and the rest of its line, comments gone. */
#include "text/source.h"
#include "text/utf8.h"

#include <string.h>

/* A quote opens a text at the start of a word. Behind a digit it is an inch mark. */
static bool opens_text(const char *line, size_t at) {
    return line[at] == '"' && (at == 0 || strchr(" \t(:,|=", line[at - 1]));
}

static size_t behind_text(const char *line, size_t at, size_t end) {
    const char *close = memchr(line + at + 1, '"', end - at - 1);
    return close ? (size_t)(close - line) + 1 : at + 1;
}

static size_t comment_start(const char *line, size_t end) {
    for (size_t at = 0; at < end;) {
        if (line[at] == '#' && (at == 0 || line[at - 1] == ' ' || line[at - 1] == '\t'))
            return at;
        at = opens_text(line, at) ? behind_text(line, at, end) : at + 1;
    }
    return end;
}

/* The keyword ends at a blank or a colon. */
static size_t keyword_length(const char *text, size_t size) {
    size_t length = 0;
    while (length < size && utf8_blank(text + length, size - length) == 0 &&
           (length == 0 || text[length] != ':'))
        length++;
    return length;
}

sb_statements sb_statements_read(sb_run *run, const sb_source *source) {
    sb_statements all = {0};
    for (size_t line = 0; source && line < source->line_count; line++) {
        size_t start, end;
        source_line_bounds(source, line, &start, &end);
        end = start + comment_start(source->text + start, end - start);
        utf8_trim(source->text, &start, &end);
        if (start == end)
            continue;
        size_t length = keyword_length(source->text + start, end - start), rest = start + length;
        utf8_trim(source->text, &rest, &end);
        sb_statement s = {.keyword = {.kind = SB_WORD,
                                      .text = sb_pool_copy(run->pool, source->text + start, length),
                                      .place = {source, start, length}},
                          .rest = {source, rest, end - rest}};
        SB_PUSH(run->pool, all, s);
    }
    return all;
}

const char *sb_statement_text(sb_run *run, const sb_statement *statement) {
    const char *text = statement->rest.source->text;
    size_t start = statement->rest.offset, end = start + statement->rest.length;
    if (start < end && text[start] == ':')
        start++;
    utf8_trim(text, &start, &end);
    bool quoted = end - start >= 2 && text[start] == '"' &&
                  memchr(text + start + 1, '"', end - start - 1) == text + end - 1;
    return quoted ? sb_pool_copy(run->pool, text + start + 1, end - start - 2)
                  : sb_pool_copy(run->pool, text + start, end - start);
}
