/* recipe/reader.h -- what the readers of recipes and jobs share: lines, blocks, names. For this room only.
 *
 * Both languages are tables: a block is a table of keywords, each with the function that reads its line. A line
 * belongs to the open block if that knows its keyword, else to the file, which closes the block.
 */
#ifndef RECIPE_READER_H
#define RECIPE_READER_H

#include "sawbill/recipe.h"

typedef struct recipe_reader recipe_reader;

/* ---- keywords and blocks --------------------------------------------------------------------------------- */

enum {
    RECIPE_ONCE = 1,       /* one such line in its block, or in the file */
    RECIPE_PROSE = 2,      /* the rest of the line is text, not words of the language */
    RECIPE_UNREPEATED = 4, /* not between `repeat` and `end` */
    RECIPE_MOST_KEYWORDS = 32
};

typedef struct recipe_keyword {
    const char *word;
    void (*read)(recipe_reader *reader);
    unsigned flags;
    bool (*passes)(
        recipe_reader *reader); /* may be NULL; true: this line is not for the block but for the file */
} recipe_keyword;

typedef struct recipe_block {
    const char *heading; /* the keyword that opens it: "part"; of the outermost: "recipe" or "job" */
    const recipe_keyword *keywords;
    size_t count;
    void (*close)(recipe_reader *reader);
} recipe_block;

typedef struct recipe_language {
    const recipe_block *top;
    const recipe_block *const *inner;
    size_t count;
    const char *file; /* "a recipe" */
} recipe_language;

extern const recipe_language recipe_in_recipes, recipe_in_jobs;
extern const recipe_block recipe_part_block, recipe_component_block, recipe_piece_block, recipe_option_block;

/* ---- names ------------------------------------------------------------------------------------------------- */

typedef enum recipe_space {
    RECIPE_VALUES, /* inputs, choices, derived values, counters */
    RECIPE_WORDS,  /* of choices */
    RECIPE_PARTS,  /* and components: no two of them share a name */
    RECIPE_COMPONENTS,
    RECIPE_JOINTS,
    RECIPE_ROLES,
    RECIPE_PIECES,
    RECIPE_OPTIONS
} recipe_space;

typedef struct recipe_name {
    recipe_space space;
    const char *word, *what; /* what: "input" */
    sb_place place;
    bool gone;                 /* the counter of a repeat that has ended */
    struct recipe_name *alike; /* the name before with the same word, whatever its space */
} recipe_name;

/* ---- the reader -------------------------------------------------------------------------------------------- */

typedef struct recipe_seen {
    sb_place places[RECIPE_MOST_KEYWORDS]; /* of the first line with each keyword of a block */
    bool meant[RECIPE_MOST_KEYWORDS];      /* an unknown keyword is nearest to this one */
} recipe_seen;

struct recipe_reader {
    sb_run *run;
    bool decimal_comma;
    const sb_lexer *lexer;
    const sb_source *source;
    const recipe_language *language;
    const recipe_block *block; /* the open one, NULL: none */
    recipe_seen seen, seen_in_block;

    const sb_statement *line; /* the one being read */
    sb_cursor cursor;
    const char *text; /* what stood behind its colon; NULL: nothing */

    SB_LIST(recipe_name *) names;
    struct recipe_spelling *spellings; /* the last name of every word */
    SB_LIST(recipe_name) references;   /* looked up when all is read */

    sb_recipe *recipe;
    const sb_recipe_loop *loop; /* innermost open repeat */
    sb_recipe_part part;        /* the open blocks' own */
    sb_recipe_component component;
    sb_job *job;
    sb_job_piece piece;
    sb_job_option option;
};

recipe_reader recipe_reader_new(sb_run *run, const sb_source *source, const recipe_language *language,
                                bool decimal_comma);
static const char recipe_ending[] = ".recipe"; /* of the file's name, which is the recipe's */
void recipe_read_lines(recipe_reader *reader); /* blocks.c */
void recipe_open_block(recipe_reader *reader, const recipe_block *block);
/* Where the open block has this keyword; zeroed when it does not. */
sb_place recipe_seen_in_block(const recipe_reader *reader, const char *word);
bool recipe_has(const recipe_reader *reader, const char *word); /* in the open block */
bool recipe_file_has(const recipe_reader *reader, const char *word);

/* ---- one line: line.c ---------------------------------------------------------------------------------------- */

size_t recipe_line_number(sb_place place);
sb_place recipe_line_place(const recipe_reader *reader);                /* the whole line */
void recipe_expected(recipe_reader *reader, const char *what);          /* an error at the cursor */
const sb_token *recipe_word(recipe_reader *reader, const char *what);   /* NULL after an error */
const sb_token *recipe_number(recipe_reader *reader, const char *what); /* a measure or number, as written */
const sb_formula *recipe_formula(recipe_reader *reader, const char *what);
/* `[when CONDITION] [: text]` and the end of the line. False after an error. */
bool recipe_end_guarded(recipe_reader *reader, sb_recipe_guard *guard);
bool recipe_end_line(recipe_reader *reader);     /* the same, where a condition is an error */
const char *recipe_prose(recipe_reader *reader); /* the rest as text; NULL after an error: there is none */
/* The word's place in a list of words, after an error -1. */
int recipe_one_of(recipe_reader *reader, const char *what, const char *const *words, size_t count);
const char *recipe_title(recipe_reader *reader, const char *name); /* the text, else the name with blanks */
const char *recipe_joined(recipe_reader *reader, const char *before,
                          const char *text); /* before may be NULL */

/* ---- names: names.c ---------------------------------------------------------------------------------------- */

/* A new name at the cursor; NULL after an error. One that is taken is told, and returned all the same. */
const sb_token *recipe_new_name(recipe_reader *reader, recipe_space space, const char *what);
const recipe_name *recipe_find_name(const recipe_reader *reader, recipe_space space, const char *word);
void recipe_add_name(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token);
void recipe_refer(recipe_reader *reader, recipe_space space, const char *what, const sb_token *token);
void recipe_check_references(recipe_reader *reader);
/* The words of a space, each once. */
typedef struct recipe_words {
    const char **items;
    size_t count, capacity;
} recipe_words;
void recipe_add_word(sb_run *run, recipe_words *words, const char *word);
void recipe_counter_gone(recipe_reader *reader, const char *word);

/* ---- statements -------------------------------------------------------------------------------------------- */

typedef void recipe_read(recipe_reader *reader);
recipe_read recipe_read_input, recipe_read_choice, recipe_read_let, recipe_read_check, recipe_read_advise,
    recipe_read_role;                                                                          /* inputs.c */
recipe_read recipe_read_repeat, recipe_read_end, recipe_check_repeats;                         /* repeat.c */
recipe_read recipe_read_part, recipe_read_when;                                                /* part.c */
recipe_read recipe_read_glued, recipe_read_laminated, recipe_read_edging, recipe_read_outside; /* making.c */
recipe_read recipe_check_part;                                                                 /* whole.c */
recipe_read recipe_read_end1, recipe_read_end2, recipe_read_ends;                              /* angles.c */
recipe_read recipe_read_joint, recipe_read_fixing, recipe_read_finish, recipe_read_glue, recipe_read_work,
    recipe_read_note;              /* uses.c */
recipe_read recipe_read_outline;   /* outline.c */
recipe_read recipe_read_component; /* component.c */
recipe_read recipe_read_piece;     /* piece.c */
recipe_read recipe_read_option;    /* option.c */
recipe_read recipe_read_delivery, recipe_read_extra, recipe_read_discount, recipe_read_deposit,
    recipe_read_margin, recipe_read_markup, recipe_read_contingency, recipe_read_validity, recipe_read_minimum,
    recipe_read_stage, recipe_read_confidence, recipe_read_breaks; /* money.c; delivery.c */

/* `set [PIECE.]NAME VALUE` and `stock [PIECE.]ROLE ID`: sets.c. False after an error. */
bool recipe_take_set(recipe_reader *reader, bool of_pieces, sb_recipe_set *out);
bool recipe_take_stock(recipe_reader *reader, bool of_pieces, sb_recipe_stock *out);
bool recipe_set_twice(recipe_reader *reader, const sb_recipe_set *sets, size_t count,
                      const sb_recipe_set *set);
bool recipe_stock_twice(recipe_reader *reader, const sb_recipe_stock *stocks, size_t count,
                        const sb_recipe_stock *stock);
bool recipe_take_count(recipe_reader *reader, int64_t *out); /* from 1 to a million */

#endif
