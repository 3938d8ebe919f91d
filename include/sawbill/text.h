/* sawbill/text.h -- memory, source text with places, notices, tokens, CSV in, files out.
 *
 * Everything above this floor receives one `sb_run`: the memory of the run and its messages.
 * Always true:
 *   - memory comes from the pool and is freed with it, all at once; nobody frees a single thing;
 *   - strings are UTF-8, end in NUL and are never NULL unless the field says so;
 *   - every message goes through the notices; nothing in the library prints or exits;
 *   - after an error a step may still run on (to find more errors), but nothing is written.
 */
#ifndef SAWBILL_TEXT_H
#define SAWBILL_TEXT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* ---- memory ------------------------------------------------------------------------------- */

typedef struct sb_pool sb_pool;

sb_pool *sb_pool_new(void);      /* NULL when there is no memory at all */
void sb_pool_free(sb_pool *pool); /* runs what was deferred (last first), then frees everything */

/* Runs `work(context)`. False when memory ran out inside it: control came straight back here and
 * the pool can only be freed. Outside of sb_pool_run a failed allocation returns NULL. */
bool sb_pool_run(sb_pool *pool, void (*work)(void *context), void *context);

void *sb_pool_alloc(sb_pool *pool, size_t size); /* zeroed, aligned for any type */
void *sb_pool_alloc_array(sb_pool *pool, size_t count, size_t size); /* a product out of range is no memory */
/* The pool takes no more than so many bytes from the system, 0 = no limit. For tests of running out. */
void sb_pool_limit(sb_pool *pool, size_t bytes);
char *sb_pool_copy(sb_pool *pool, const char *bytes, size_t size); /* adds the NUL */
char *sb_pool_print(sb_pool *pool, const char *format, ...) __attribute__((format(printf, 2, 3)));

/* Gives something that is not pool memory (a compiled pattern, an open file) to the pool. When even this
 * finds no memory, the thing is released at once. */
void sb_pool_defer(sb_pool *pool, void (*release)(void *thing), void *thing);

/* Makes room for one more; used through SB_PUSH, which is for work inside sb_pool_run. */
void *sb_pool_grow(sb_pool *pool, void *items, size_t count, size_t *capacity, size_t item_size);

#define SB_NEW(pool, type) ((type *)sb_pool_alloc((pool), sizeof(type)))
#define SB_NEW_ARRAY(pool, type, count) ((type *)sb_pool_alloc_array((pool), (count), sizeof(type)))

/* A growing list: `SB_LIST(sb_part) parts;` starts empty when zeroed. */
#define SB_LIST(type)                                                                              \
    struct {                                                                                       \
        type *items;                                                                               \
        size_t count, capacity;                                                                    \
    }
#define SB_PUSH(pool, list, value)                                                                 \
    ((list).items = sb_pool_grow((pool), (list).items, (list).count, &(list).capacity,             \
                                 sizeof *(list).items),                                            \
     (list).items[(list).count++] = (value))

/* ---- the run ------------------------------------------------------------------------------ */

typedef struct sb_notices sb_notices;

typedef struct sb_run {
    sb_pool *pool;
    sb_notices *notices;
    struct sb_lexer *lexers; /* those compiled so far, kept by sb_lexer_new */
    struct sb_source *sources; /* files read so far, kept by sb_source_read */
    const struct sb_lexer *line_lexers[2]; /* kept by the room above that makes them (measure.h) */
} sb_run;

sb_run sb_run_new(void);     /* pool is NULL when there is no memory */
void sb_run_free(sb_run *run);
/* The same run with notices of its own: what is told there nobody hears. */
sb_run sb_run_aside(const sb_run *run);

/* ---- source text -------------------------------------------------------------------------- */

typedef struct sb_source sb_source; /* opaque: name, bytes, where its lines start */

/* A stretch of a source. A zeroed place means "nowhere"; it is legal everywhere. */
typedef struct sb_place {
    const sb_source *source;
    size_t offset; /* [bytes] */
    size_t length; /* [bytes] */
} sb_place;

typedef struct sb_position {
    const char *file; /* "" for nowhere */
    size_t line;      /* from 1 */
    size_t column;    /* from 1, in characters, a tab counting as one */
} sb_position;

/* NULL after an error notice: unreadable, a folder, not UTF-8, a NUL byte, above 64 MiB. Later steps take NULL.
 * A byte order mark is skipped; CRLF and CR count as line ends. A path is read once in a run: asked for again it gives
 * the same source, so that its mistakes stay the same notices. */
const sb_source *sb_source_read(sb_run *run, const char *path);
/* Text that stands in no file, such as what an option was given. */
const sb_source *sb_source_of(sb_run *run, const char *name, const char *text);

const char *sb_source_name(const sb_source *source);
const char *sb_source_text(const sb_source *source);
size_t sb_source_size(const sb_source *source);
sb_position sb_place_position(sb_place place);
const char *sb_place_text(sb_run *run, sb_place place); /* the bytes, as a string */
sb_place sb_place_span(sb_place first, sb_place last);  /* from the first's start to the last's end */

/* ---- notices: the one door for messages ------------------------------------------------------ */

typedef enum sb_level {
    SB_NOTE,    /* worth knowing; status 0 */
    SB_ADVICE,  /* done, but a person should look; status 3 */
    SB_ERROR,   /* the input is wrong or cannot be met; status 1 */
    SB_FAILURE, /* the system failed us: disk full, no permission; status 4 */
    SB_BUG      /* we failed: a plan refused by the checker; status 4 */
} sb_level;

void sb_note(sb_run *run, sb_place at, const char *format, ...) __attribute__((format(printf, 3, 4)));
void sb_advise(sb_run *run, sb_place at, const char *format, ...) __attribute__((format(printf, 3, 4)));
void sb_error(sb_run *run, sb_place at, const char *format, ...) __attribute__((format(printf, 3, 4)));
void sb_fail(sb_run *run, sb_place at, const char *format, ...) __attribute__((format(printf, 3, 4)));
void sb_bug(sb_run *run, sb_place at, const char *format, ...) __attribute__((format(printf, 3, 4)));

/* An error about a word that is not known: names the nearest known one, or lists a few. `what` is
 * "keyword", "stock", ... `known` holds `count` words. */
void sb_error_unknown(sb_run *run, sb_place at, const char *what, const char *word,
                      const char *const *known, size_t count);
/* The nearest known word by edit distance (swaps count one), NULL when none is near. */
const char *sb_nearest(const char *word, const char *const *known, size_t count);

/* While entered, every notice carries the line "in WHAT, at PLACE": a part comes from a recipe that
 * a job called, and the user wants both places. Enter and leave nest. */
void sb_notices_enter(sb_run *run, sb_place at, const char *what);
void sb_notices_leave(sb_run *run);

bool sb_ok(const sb_run *run);         /* no error, failure or bug so far */
int sb_status(const sb_run *run);      /* 0, 1, 3 or 4 by the worst level */
size_t sb_notices_count(const sb_run *run, sb_level at_least);
/* Counts also what had been told before: whether a step met a mistake, new or not. */
size_t sb_notices_raised(const sb_run *run, sb_level at_least);
/* The message of notice `index` (from 0) without place or caret, NULL past the end; for tests. */
const char *sb_notices_message(const sb_run *run, size_t index);
sb_place sb_notices_place(const sb_run *run, size_t index);
sb_level sb_notices_level(const sb_run *run, size_t index);
/* All notices as text: "file:line:column: error: message", the line, a caret, the chain. Sources in the order in
 * which they first came up, each from top to bottom. The same notice at the same place comes once. */
const char *sb_notices_text(sb_run *run, sb_level at_least, bool colour);

/* ---- tokens and statements ------------------------------------------------------------------- */

typedef enum sb_token_kind {
    SB_WORD,     /* long, larch-70x70, 2x4-spf */
    SB_QUANTITY, /* 20 mm, 3' 11-1/4", 0.5, 12 %: the lexer knows the shape, measure the meaning */
    SB_STRING,   /* "in quotes"; text without the quotes */
    SB_SYMBOL,   /* ( ) + - * / ^ , . = != < <= > >= | */
    SB_TEXT,     /* what stands behind a colon, to the end of the line */
    SB_END       /* end of the line; text is "" */
} sb_token_kind;

typedef struct sb_token {
    sb_token_kind kind;
    const char *text;
    sb_place place;
} sb_token;

/* A lexer is a list of PCRE2 rules tried in order at each point; whitespace is skipped. Rooms above
 * bring the rule for quantities, since units are theirs. Compiled once per run, freed with it. */
typedef struct sb_lexer sb_lexer;
typedef struct sb_lex_rule {
    sb_token_kind kind;
    const char *pattern; /* PCRE2, UTF, anchored by us; group 1, if any, is the token's text */
} sb_lex_rule;
sb_lexer *sb_lexer_new(sb_run *run, const sb_lex_rule *rules, size_t count);

/* One line of a recipe, job or settings file: a keyword and the rest. Blank lines and comments (# at
 * the line's start or after a blank, outside quotes) are gone. */
typedef struct sb_statement {
    sb_token keyword;
    sb_place rest; /* trimmed, without comment; length 0 when there is none */
} sb_statement;
typedef struct sb_statements {
    sb_statement *items;
    size_t count, capacity;
} sb_statements;
sb_statements sb_statements_read(sb_run *run, const sb_source *source);

/* The rest as plain words; a colon in front and quotes around the whole are removed. */
const char *sb_statement_text(sb_run *run, const sb_statement *statement);

/* A walk over the tokens of one line; never runs past the SB_END token. */
typedef struct sb_cursor {
    const sb_token *at;
} sb_cursor;
sb_cursor sb_statement_tokens(sb_run *run, const sb_lexer *lexer, const sb_statement *statement);
sb_cursor sb_tokens_of(sb_run *run, const sb_lexer *lexer, sb_place place);

bool sb_at_word(const sb_cursor *cursor, const char *word);     /* looks */
bool sb_at_symbol(const sb_cursor *cursor, const char *symbol); /* looks */
bool sb_take_word(sb_cursor *cursor, const char *word);         /* steps over it if it is there */
bool sb_take_symbol(sb_cursor *cursor, const char *symbol);
/* Any word (or string); NULL and an error "expected WHAT" otherwise. */
const sb_token *sb_expect_word(sb_run *run, sb_cursor *cursor, const char *what);
bool sb_expect_symbol(sb_run *run, sb_cursor *cursor, const char *symbol);
bool sb_expect_end(sb_run *run, const sb_cursor *cursor); /* error on anything left over */

/* ---- CSV in -------------------------------------------------------------------------------------- */

typedef struct sb_column {
    const char *name;
    bool required; /* the header must have it */
} sb_column;

typedef struct sb_cell_in {
    const char *text; /* trimmed; "" when empty or the column is absent */
    sb_place place;   /* with its quotes; the whole row when the row or the header lacks the column */
} sb_cell_in;

typedef struct sb_csv {
    const sb_source *source;
    size_t row_count;
    sb_cell_in *cells;  /* [row_count][column_count], in the order of the columns asked for */
    size_t column_count;
    sb_place *rows;     /* [row_count] whole row */
    bool decimal_comma; /* the file is separated by semicolons: 1,5 is a number in it */
    bool faulty_header; /* rows under it would only give errors that follow from that one */
} sb_csv;

/* Comma, semicolon or tab, found from the header. Names of columns are trimmed and may be in capitals. Empty lines,
 * rows without any text, and lines that begin with # are skipped. An inch mark needs no quotes around it. Short rows
 * have empty cells at their end, empty fields beyond the header are left out. Errors: a required column missing, a
 * column unknown (nearest named) or twice, a row with too many fields, a quote never closed (reading goes on behind
 * its line), no header. NULL when the file cannot be read at all. */
const sb_csv *sb_csv_read(sb_run *run, const char *path, const sb_column *columns, size_t count);
const sb_csv *sb_csv_of(sb_run *run, const sb_source *source, const sb_column *columns, size_t count);
const sb_cell_in *sb_csv_cell(const sb_csv *csv, size_t row, size_t column);

/* ---- files out: a set of files is replaced together or not at all ---------------------------------- */

typedef struct sb_file_set sb_file_set;

/* Makes `folder` (and its parents) if needed. Nothing is visible under its final name before
 * sb_file_set_keep; without it the temporaries, and folders made for them, go away with the run. NULL after a failure
 * notice. Names are plain, without folders. */
sb_file_set *sb_file_set_new(sb_run *run, const char *folder);
/* A temporary path, beside the final one, to write to. */
const char *sb_file_set_path(sb_run *run, sb_file_set *set, const char *name);
bool sb_file_set_write(sb_run *run, sb_file_set *set, const char *name, const char *bytes, size_t size);
/* Renames all into place; if one rename fails the old files are put back. Does nothing after an error of any kind
 * in this run. False when nothing was replaced. */
bool sb_file_set_keep(sb_run *run, sb_file_set *set);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
