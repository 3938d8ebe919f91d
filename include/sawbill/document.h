/* sawbill/document.h -- what a paper IS: tables of typed cells, and records for machines.
 *
 * A document is a list of sheets; a sheet is a list of blocks below one another; a block is a heading, a
 * paragraph, a list of pairs, a table or a drawing. Nothing here knows how it will look in a format.
 */
#ifndef SAWBILL_DOCUMENT_H
#define SAWBILL_DOCUMENT_H

#include "sawbill/measure.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* ---- cells ------------------------------------------------------------------------------------------ */

typedef enum sb_cell_kind {
    SB_CELL_EMPTY,
    SB_CELL_TEXT,
    SB_CELL_COUNT,    /* whole number */
    SB_CELL_NUMBER,   /* decimal: amount / 10^digits */
    SB_CELL_LENGTH,   /* written in the document's units and step */
    SB_CELL_MONEY,    /* minor units of the document's currency */
    SB_CELL_PRICE,    /* money with more decimals: amount / 10^digits major units */
    SB_CELL_SHARE,    /* per cent, from ppm */
    SB_CELL_DURATION, /* hours, from ms */
    SB_CELL_DATE,
    SB_CELL_TICK      /* an empty box to tick */
} sb_cell_kind;

typedef struct sb_relation sb_relation;

typedef struct sb_cell {
    sb_cell_kind kind;
    const char *text;
    int64_t amount;    /* in the kind's unit */
    int digits;        /* of NUMBER and PRICE */
    sb_date date;
    const sb_relation *relation; /* how it follows from other cells; NULL: it is given */
    const char *name;            /* a name for the cell in a spreadsheet ("total"), NULL: none */
    bool strong;
    bool input; /* made to be changed: a spreadsheet shows it so */
    const sb_counts *among; /* of an input: what it may be changed to; NULL: anything */
    bool exact; /* LENGTH: as fine as sizes of stock are told, whatever the document's step; SHARE: all its decimals */
    sb_place place;
} sb_cell;

/* A relation is a small tree. Cells are meant by their table, row (from 0, heading not counted) and column. */
typedef enum sb_relation_kind {
    SB_REL_CELL, SB_REL_NUMBER, SB_REL_ADD, SB_REL_SUB, SB_REL_MUL, SB_REL_DIV,
    SB_REL_ROUND,    /* half away from zero, to `digits` decimals */
    SB_REL_ROUND_UP_TO, /* a >= 0 up to a multiple of b > 0 */
    SB_REL_MAX,      /* the larger of a and b */
    SB_REL_WHERE,    /* b where a is above 0, else 0 */
    SB_REL_SUM,      /* of a column from row to row_to, both in it; 0 when row > row_to */
    SB_REL_SUM_OF,   /* the same, of those rows alone whose `key` column is a */
    SB_REL_PICK,     /* from column to column_to: finds a in the row `row`, gives what stands below it in `row_to` */
    /* An amount of money shared out over the rows row to row_to by whole weights in `column`, to whole units of its last
     * figure (`digits` decimals), by the largest remainder: earlier rows first where they are alike. `a`: the amount.
     * The weights' sum times the amount in those units stays below 2^53, else a spreadsheet loses the last figure. */
    SB_REL_REST,     /* of row `own`: the remainder that its share leaves, in parts of the weights' sum */
    SB_REL_SHARE     /* of row `own`; the remainders stand in column_to */
} sb_relation_kind;
typedef struct sb_table sb_table;
struct sb_relation {
    sb_relation_kind kind;
    const sb_relation *a, *b;
    const sb_table *table;
    size_t row, row_to, column, column_to, key, own;
    int digits;
    int64_t amount; int amount_digits; /* NUMBER: amount / 10^amount_digits */
};
const sb_relation *sb_rel_cell(sb_run *run, const sb_table *table, size_t row, size_t column);
const sb_relation *sb_rel_number(sb_run *run, int64_t amount, int digits);
const sb_relation *sb_rel(sb_run *run, sb_relation_kind kind, const sb_relation *a, const sb_relation *b);
const sb_relation *sb_rel_round(sb_run *run, const sb_relation *a, int digits);
const sb_relation *sb_rel_sum(sb_run *run, const sb_table *table, size_t column, size_t row, size_t row_to);
const sb_relation *sb_rel_kept(sb_run *run, sb_relation relation); /* any relation, to stay */

/* The value of a cell as a spreadsheet holds it: money in major units, shares as fractions, hours, lengths in
 * the document's unit, dates as days since 1899-12-30; 0 for texts, NaN for SB_BAD. Relations count in it. */
double sb_cell_number(const sb_cell *cell, const sb_style *style, sb_currency currency);

sb_cell sb_cell_text(const char *text);
sb_cell sb_cell_count(int64_t count);
sb_cell sb_cell_decimal(int64_t amount, int digits);
sb_cell sb_cell_length(sb_length length);
sb_cell sb_cell_size(sb_length length); /* of stock: exact */
sb_cell sb_cell_money(sb_money money);
sb_cell sb_cell_price(int64_t amount, int digits);
sb_cell sb_cell_share(sb_share share); /* as it comes out: to one decimal */
sb_cell sb_cell_rate(sb_share share);  /* as it is told: with all its decimals */
sb_cell sb_cell_duration(sb_duration duration);
sb_cell sb_cell_date(sb_date date);
sb_cell sb_cell_tick(void);
sb_cell sb_cell_related(sb_cell cell, const sb_relation *relation);
sb_cell sb_cell_strong(sb_cell cell);
sb_cell sb_cell_named(sb_cell cell, const char *name);
sb_cell sb_cell_input(sb_cell cell);

/* ---- tables, sheets, documents ------------------------------------------------------------------------ */

typedef struct sb_heading {
    const char *text;
    int width; /* [characters] 0 = follows the contents; else texts on the terminal wrap at it */
    bool right;
} sb_heading;
struct sb_table {
    const char *title; /* "" none */
    sb_heading *headings;
    size_t column_count;
    SB_LIST(sb_cell *) rows; /* each column_count cells */
    SB_LIST(size_t) groups;  /* rows that open a group: it and those up to the next one belong on one page.
                                It may be parted between two of them: no sum runs over it */
    size_t total_rows;       /* how many at the end are totals (ruled off) */
    bool no_heading;         /* pairs: the headings are not shown */
};
/* ---- drawings: shapes to one scale, and labels that the writer finds room for -------------------------------- */

typedef struct sb_point { sb_length x, y; } sb_point; /* x to the right, y down, from the drawing's corner */

typedef enum sb_fill {
    SB_FILL_NONE,
    SB_FILL_PAPER, /* white: covers what is below */
    SB_FILL_BLACK, /* kerfs */
    SB_FILL_HATCH, /* offcut */
    SB_FILL_DOTS   /* left over */
} sb_fill;
typedef enum sb_pen { SB_PEN_LINE, SB_PEN_THIN, SB_PEN_HEAVY, SB_PEN_DASHED } sb_pen;
typedef struct sb_shape {
    SB_LIST(sb_point) points;
    bool closed;
    sb_fill fill;
    sb_pen pen;
} sb_shape;

typedef enum sb_label_place {
    SB_LABEL_INSIDE, /* in its room; above or below the shapes with a line to it where that is too small */
    SB_LABEL_ABOVE,  /* in a row above all shapes, with a line to its point */
    SB_LABEL_BELOW,
    SB_LABEL_CORNER, /* its number in a frame, near the lower left corner of its room */
    SB_LABEL_ON      /* a ring somewhere along its room, which has no width or no height */
} sb_label_place;
/* Text and number stand beside or below one another; where the text has no room its mark stands for it, and is explained
 * below the drawing. */
typedef struct sb_label {
    sb_label_place place;
    sb_point at;          /* what it points to; the middle of its room */
    sb_length wide, high; /* of the room, for INSIDE, CORNER and ON */
    const char *text, *number, *mark; /* each may be "" */
    bool again;           /* as the one before it: left out where it has no room of its own */
} sb_label;

typedef struct sb_drawing {
    const char *title, *name; /* name: of a file of its own, without ending; "": none is made of it */
    sb_length width, height;
    int64_t scale_most; /* no larger than 1 : so many; 0: as large as there is room */
    SB_LIST(sb_shape) shapes; /* in the order of drawing */
    SB_LIST(sb_label) labels;
} sb_drawing;

/* ---- cards: labels in a grid that fills pages of their own, to be stuck on or cut apart ---------------------- */

typedef struct sb_card {
    const char *title, *number; /* what it is; what size it has */
    SB_LIST(const char *) lines; /* the more important ones first: the last are cut where there is no room */
} sb_card;
typedef struct sb_cards {
    int64_t columns, rows;
    sb_length side, top, across, down; /* margins of the page; gaps */
    SB_LIST(sb_card) items;
} sb_cards;

/* ---- charts: of a table's figures, so that they follow them; spreadsheets alone show them --------------------- */

typedef enum sb_chart_kind { SB_CHART_BARS, SB_CHART_LINES } sb_chart_kind; /* one bar a name; lines over numbers */
typedef struct sb_chart {
    sb_chart_kind kind;
    const char *title, *along, *figures; /* of the axes: of the names or numbers, of the figures */
    const sb_table *table;
    bool across;        /* names and figures stand in rows of the table, from column `first` to `last`; else in columns */
    size_t first, last; /* columns or rows */
    size_t names;       /* the row or column of names; of LINES of numbers */
    SB_LIST(size_t) series; /* rows or columns of figures; each is called what stands before it or over it */
} sb_chart;

typedef enum sb_block_kind {
    SB_BLOCK_HEADING, SB_BLOCK_PARAGRAPH, SB_BLOCK_TABLE, SB_BLOCK_DRAWING, SB_BLOCK_CARDS, SB_BLOCK_CHART, SB_BLOCK_PAGE_BREAK,
    SB_BLOCK_ROOM_BREAK
} sb_block_kind;
typedef struct sb_block {
    sb_block_kind kind;
    const char *text;
    bool small;
    sb_table *table;
    sb_drawing *drawing;
    sb_cards *cards;
    sb_chart *chart;
} sb_block;
typedef struct sb_sheet {
    const char *title; /* cleaned by the writer where a format forbids characters */
    bool landscape;
    bool first_page; /* of a worksheet the first page alone is printed */
    bool dense;      /* a worksheet may be half as wide again as its page, and is printed so much smaller */
    SB_LIST(sb_block) blocks;
} sb_sheet;
typedef struct sb_document {
    const char *title, *author, *foot; /* foot: "job, date" on each page */
    const char *group;                 /* between groups of three figures of an amount, where it is shown as text; NULL: a blank */
    const char *page_word, *of_word;   /* "page", "of" in the document's language; NULL: English */
    sb_date date;
    sb_style style;
    sb_currency currency;
    bool letter;                       /* US letter paper, else A4 */
    bool even;                         /* on pages numbers are no larger than words: nobody reads them at a saw */
    SB_LIST(sb_sheet *) sheets;
} sb_document;

sb_document *sb_document_new(sb_run *run, const char *title, sb_date date, sb_style style, sb_currency currency);
sb_sheet *sb_sheet_add(sb_run *run, sb_document *document, const char *title);
void sb_heading_add(sb_run *run, sb_sheet *sheet, const char *text);
void sb_paragraph_add(sb_run *run, sb_sheet *sheet, const char *text, bool small);
void sb_page_break_add(sb_run *run, sb_sheet *sheet);
/* A page begins unless what follows, up to the next break, has room on the one before. */
void sb_room_break_add(sb_run *run, sb_sheet *sheet);
sb_chart *sb_chart_add(sb_run *run, sb_sheet *sheet, sb_chart chart);
sb_cards *sb_cards_add(sb_run *run, sb_sheet *sheet, int64_t columns, int64_t rows);
/* An empty card; stays valid until the next one is added. */
sb_card *sb_card_add(sb_run *run, sb_cards *cards, const char *title, const char *number);
void sb_card_line(sb_run *run, sb_card *card, const char *text); /* "" adds nothing */
sb_drawing *sb_drawing_add(sb_run *run, sb_sheet *sheet, const char *title, const char *name, sb_length width, sb_length height);
/* A shape without points, to be filled; stays valid until the next one is added. */
sb_shape *sb_shape_add(sb_run *run, sb_drawing *drawing, sb_fill fill, sb_pen pen, bool closed);
void sb_shape_point(sb_run *run, sb_shape *shape, sb_length x, sb_length y);
void sb_shape_rect(sb_run *run, sb_drawing *drawing, sb_fill fill, sb_pen pen, sb_point corner, sb_length width, sb_length height);
void sb_shape_line(sb_run *run, sb_drawing *drawing, sb_pen pen, sb_point from, sb_point to);
void sb_label_add(sb_run *run, sb_drawing *drawing, sb_label label);
/* Headings given as "Part|Count>|Length>": a > marks numbers, set to the right. Widths follow the contents. */
sb_table *sb_table_add(sb_run *run, sb_sheet *sheet, const char *title, const char *headings);
/* A new row of empty cells, to be filled; stays where it is. */
sb_cell *sb_row_add(sb_run *run, sb_table *table);
sb_cell *sb_group_add(sb_run *run, sb_table *table);     /* the same; opens a group */
sb_cell *sb_total_row_add(sb_run *run, sb_table *table); /* below all others */

/* False after a notice: an amount is out of range (an error), or a relation means a cell that is not in the
 * document (a bug). Writers of spreadsheets ask this first. */
bool sb_document_sound(sb_run *run, const sb_document *document);

/* ---- records: named, nested values, for machines -------------------------------------------------------- */

typedef enum sb_record_kind { SB_RECORD_OBJECT, SB_RECORD_ARRAY, SB_RECORD_TEXT, SB_RECORD_NUMBER, SB_RECORD_INTEGER, SB_RECORD_TRUTH, SB_RECORD_NULL } sb_record_kind;
typedef struct sb_record sb_record;
struct sb_record {
    sb_record_kind kind;
    const char *key; /* inside an object */
    const char *text;
    double number;
    int64_t integer;
    bool truth;
    sb_record *first, *last, *next;
};
sb_record *sb_record_object(sb_run *run);
/* Each adds to an object under `key`, or to an array with key NULL, and returns what it added. Amounts out of
 * range become null. */
sb_record *sb_put_object(sb_run *run, sb_record *in, const char *key);
sb_record *sb_put_array(sb_run *run, sb_record *in, const char *key);
void sb_put_text(sb_run *run, sb_record *in, const char *key, const char *text); /* NULL: null */
void sb_put_integer(sb_run *run, sb_record *in, const char *key, int64_t integer);
void sb_put_truth(sb_run *run, sb_record *in, const char *key, bool truth);
void sb_put_null(sb_run *run, sb_record *in, const char *key);
void sb_put_length(sb_run *run, sb_record *in, const char *key, sb_length length);      /* number, mm */
void sb_put_money(sb_run *run, sb_record *in, const char *key, sb_money money, int digits); /* decimal string */
void sb_put_decimal(sb_run *run, sb_record *in, const char *key, int64_t amount, int digits); /* number */
/* A record made elsewhere takes its place; nothing may be added to the original afterwards. */
void sb_put_record(sb_run *run, sb_record *in, const char *key, const sb_record *record);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
