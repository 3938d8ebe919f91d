/* sawbill/recipe.h -- recipe files (how a piece is made) and job files (what is ordered), as read.
 *
 * The language is described in templates/README.md. Reading checks grammar, known words, duplicate names and
 * formulas' syntax; sb_recipe_look_over checks names and dimensions; what depends on values (ranges) is checked at
 * expansion, with the same places.
 * Nothing here knows stock or prices.
 */
#ifndef SAWBILL_RECIPE_H
#define SAWBILL_RECIPE_H

#include "sawbill/formula.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

/* Every statement may carry `when CONDITION`; NULL means always. Inside `repeat` blocks `loop` tells which. */
typedef struct sb_recipe_loop sb_recipe_loop;
typedef struct sb_recipe_guard {
    const sb_formula *when;
    const sb_recipe_loop *loop; /* innermost repeat around the line, NULL: none */
    sb_place place;             /* of the statement */
} sb_recipe_guard;

struct sb_recipe_loop { /* repeat NAME from FORMULA to FORMULA ... end */
    const char *name;
    const sb_formula *from, *to;
    sb_recipe_guard guard; /* guard.loop: the one around it */
};

typedef struct sb_recipe_input { /* input NAME DEFAULT [from MIN to MAX] [: text] */
    const char *name, *text;
    const sb_formula *standard, *least, *most; /* least, most may be NULL */
    sb_place place;
} sb_recipe_input;

typedef struct sb_recipe_choice { /* choice NAME word | word ... [: text] ; the first is the default */
    const char *name, *text;
    SB_LIST(const char *) words;
    sb_place place;
} sb_recipe_choice;

typedef struct sb_recipe_role { /* stock ROLE ID [when ...] : the first line of a role whose condition holds counts */
    const char *role, *stock;
    sb_recipe_guard guard;
} sb_recipe_role;

typedef struct sb_recipe_let { /* let NAME FORMULA */
    const char *name;
    const sb_formula *formula;
    sb_place place;
} sb_recipe_let;

typedef struct sb_recipe_check { /* check CONDITION : text ; advise CONDITION : text (tells, does not stop) */
    const sb_formula *condition;
    const char *text;
    bool advice;
    sb_recipe_guard guard;
} sb_recipe_check;

/* An angle in a recipe says which reading it is: on the `scale` of the saw (from square) or on the `piece`
 * (between the end and the piece's edge, 90 degrees less the other). */
typedef struct sb_recipe_angle {
    const sb_formula *formula; /* NULL: square */
    bool on_piece;
} sb_recipe_angle;
typedef struct sb_recipe_end { /* end1 square | mitre A scale|piece [bevel B scale|piece] | bevel ... ; a minus sign turns it over */
    sb_recipe_angle mitre, bevel;
} sb_recipe_end;

typedef enum sb_grain { SB_GRAIN_ALONG, SB_GRAIN_ACROSS, SB_GRAIN_FREE } sb_grain;

/* Edges of a panel: front and back run along its length, left and right along its width. */
enum { SB_EDGE_FRONT = 1, SB_EDGE_BACK = 2, SB_EDGE_LEFT = 4, SB_EDGE_RIGHT = 8 };

typedef struct sb_recipe_part {
    const char *name, *title;
    const sb_formula *count;     /* NULL: 1 */
    const char *role;            /* `of ROLE` */
    const sb_formula *length;    /* over the long points */
    const sb_formula *width;     /* boards: ripped to it, NULL = full width; sheets: needed */
    const sb_formula *thickness; /* `planed THICKNESS [by WIDTH]`: from sawn stock */
    const sb_formula *planed_width;
    bool wide; /* a width stands there, whether it could be read or not */
    sb_recipe_end end1, end2;
    const sb_formula *allow, *allow_width; /* `allow LENGTH [by LENGTH]`: cut long, trimmed to fit */
    bool clear;                            /* no knots, no splits */
    bool sound;                            /* no splits */
    sb_grain grain;                        /* sheets */
    const char *edging_role;               /* `edging ROLE front back left right | all` */
    unsigned edging_edges;
    const sb_formula *staves;    /* `glued STAVES [loss PER-EDGE] [over LENGTH] [with GLUE]`: edge-glued from this many; 0 = as few as the stock's width allows */
    bool glued;
    const sb_formula *edge_loss, *over_length;
    const sb_formula *layers;    /* `laminated N [with GLUE]`: face-glued from N */
    const char *glue_role;       /* `with ROLE-OR-STOCK` behind glued or laminated; NULL: not told */
    int outside_faces, outside_edges, outside_ends; /* `outside face edge edge end | all | none` */
    bool outside_given;          /* else one face counts as outside */
    const char *note;            /* for the saw */
    sb_recipe_guard guard;
} sb_recipe_part;

typedef enum sb_recipe_basis { SB_PER_THE_PIECE, SB_PER_THE_PART, SB_PER_THE_JOINT, SB_PER_THE_BATCH } sb_recipe_basis;

typedef struct sb_recipe_joint { /* joint NAME COUNT [: text]   COUNT per piece */
    const char *name, *text;
    const sb_formula *count;
    sb_recipe_guard guard;
} sb_recipe_joint;

typedef struct sb_recipe_fixing { /* fixing ROLE-OR-STOCK COUNT [per piece | part NAME | joint NAME | batch] */
    const char *stock;
    const sb_formula *count;
    sb_recipe_basis basis;
    const char *of; /* the part or joint */
    sb_recipe_guard guard;
} sb_recipe_fixing;

typedef enum sb_surface { SB_SURFACE_ALL, SB_SURFACE_OUTSIDE, SB_SURFACE_ENDS } sb_surface;

typedef struct sb_recipe_finish { /* finish ROLE-OR-STOCK COUNT coats on all | outside | ends [of PART, PART ...] */
    const char *stock;
    const sb_formula *coats;
    sb_surface surface;
    SB_LIST(const char *) parts; /* empty: all parts */
    sb_recipe_guard guard;
} sb_recipe_finish;

typedef struct sb_recipe_glue { /* glue ROLE-OR-STOCK AREA [per piece | part NAME | joint NAME | batch] */
    const char *stock;
    const sb_formula *area;
    sb_recipe_basis basis;
    const char *of;
    sb_recipe_guard guard;
} sb_recipe_glue;

typedef struct sb_recipe_work { /* work OPERATION [QUANTITY [from LEAST to MOST] | on SURFACE [of PART, ...]] [per piece | part NAME | joint NAME | batch] [: text] */
    const char *operation, *text;
    const sb_formula *quantity; /* length, area or number as the operation's driver wants; NULL: 1, or all joints/parts of the basis */
    const sb_formula *least, *most; /* `QUANTITY from LEAST to MOST`: the quantity is the likely one in a range; NULL: it is sure */
    bool on_surface;
    sb_surface surface;
    SB_LIST(const char *) parts;
    sb_recipe_basis basis;
    const char *of;
    sb_recipe_guard guard;
} sb_recipe_work;

typedef struct sb_recipe_set { /* set NAME FORMULA-OR-WORD */
    const char *name;
    const sb_formula *formula;
    sb_place place;
} sb_recipe_set;
typedef struct sb_recipe_stock { /* stock ROLE ID : an override in a job or component; ID may be a role of the caller in a component */
    const char *role, *stock;
    sb_place place;
} sb_recipe_stock;

typedef struct sb_recipe_component { /* component NAME [: title] / recipe R / count N / set ... / stock ... */
    const char *name, *title, *recipe; /* recipe: NAME unless told */
    sb_place recipe_place;             /* where it is named */
    const sb_formula *count;
    SB_LIST(sb_recipe_set) sets;
    SB_LIST(sb_recipe_stock) stocks;
    sb_recipe_guard guard;
} sb_recipe_component;

typedef struct sb_recipe_note { /* note saw : text ; note quote : text */
    bool for_quote;
    const char *text;
    sb_recipe_guard guard;
} sb_recipe_note;

/* outline front|side WIDTH by HEIGHT at X, Y [lean ANGLE] : what one sees of the piece; X, Y: its lower left corner, on the ground */
typedef struct sb_recipe_outline {
    bool side;
    const sb_formula *width, *height, *x, *y;
    const sb_formula *lean; /* from upright, to the right at the top; NULL: none */
    sb_recipe_guard guard;
} sb_recipe_outline;

typedef struct sb_recipe {
    const char *name, *title, *about;
    const sb_formula *size[3]; /* `size LONG, WIDE, HIGH` for the quote; NULL when not given */
    SB_LIST(sb_recipe_input) inputs;
    SB_LIST(sb_recipe_choice) choices;
    SB_LIST(sb_recipe_role) roles;
    SB_LIST(sb_recipe_let) lets;
    SB_LIST(sb_recipe_check) checks;
    SB_LIST(sb_recipe_part) parts;
    SB_LIST(sb_recipe_joint) joints;
    SB_LIST(sb_recipe_fixing) fixings;
    SB_LIST(sb_recipe_finish) finishes;
    SB_LIST(sb_recipe_glue) glues;
    SB_LIST(sb_recipe_work) works;
    SB_LIST(sb_recipe_component) components;
    SB_LIST(sb_recipe_outline) outlines; /* later ones cover earlier ones */
    SB_LIST(sb_recipe_note) notes;
    sb_place place;
} sb_recipe;

/* NULL when the file cannot be read; else what could be read, see sb_ok. */
const sb_recipe *sb_recipe_read(sb_run *run, const char *path, bool decimal_comma);
const sb_recipe *sb_recipe_of(sb_run *run, const sb_source *source, bool decimal_comma);
/* What can be told without making anything, in every line, whatever its condition: names that no input, choice, derived
 * value, counter or role's measure satisfies, measures that do not fit, values that depend on themselves. Each is an
 * error where it stands. */
void sb_recipe_look_over(sb_run *run, const sb_recipe *recipe);

/* A scope in which the recipe's names stand for open values (see formula.h), inside `loop` when it is not NULL. */
sb_scope *sb_recipe_open_scope(sb_run *run, const sb_recipe *recipe, const sb_recipe_loop *loop);

/* Whether a `set` may give this name a value: an input or a choice. */
bool sb_recipe_has_input(const sb_recipe *recipe, const char *name);

/* Recipes by name out of a folder: NAME.recipe, read once each. */
typedef struct sb_recipe_book sb_recipe_book;
sb_recipe_book *sb_recipe_book_open(sb_run *run, const char *folder, bool decimal_comma);
/* NULL after errors: at `at` (with the nearest name in the folder) when there is no such recipe, inside the recipe's own
 * file when it could not be read whole. Pulls in components' recipes too, and is NULL when one of them is; a recipe that includes
 * itself, however far down, is an error that shows the chain. */
const sb_recipe *sb_recipe_book_get(sb_run *run, sb_recipe_book *book, const char *name, sb_place at);
/* The same, but what could be read of it when it has mistakes; NULL when it cannot be read at all. */
const sb_recipe *sb_recipe_book_peek(sb_run *run, sb_recipe_book *book, const char *name, sb_place at);
void sb_recipe_book_add(sb_run *run, sb_recipe_book *book, const sb_recipe *recipe); /* for tests */

/* ---- jobs ------------------------------------------------------------------------------------------ */

typedef struct sb_job_piece { /* piece NAME [: title] / recipe R / count N / set NAME VALUE / stock ROLE ID / tax ID / note ... */
    const char *name, *title, *recipe; /* recipe: NAME unless told; title NULL: the recipe's */
    int64_t count;
    SB_LIST(sb_recipe_set) sets;
    SB_LIST(sb_recipe_stock) stocks;
    const char *note; /* on the quote */
    const char *tax;  /* NULL: the job's */
    sb_place tax_place;
    sb_place place, recipe_place; /* its line; where the recipe's name stands */
} sb_job_piece;

typedef struct sb_job_option { /* option NAME [: title] / set [PIECE.]NAME VALUE / stock [PIECE.]ROLE ID / count PIECE N / drop PIECE */
    const char *name, *title;
    SB_LIST(sb_recipe_set) sets;     /* name may be "piece.input" */
    SB_LIST(sb_recipe_stock) stocks; /* role may be "piece.role" */
    struct sb_job_count { const char *piece; int64_t count; sb_place place; } *counts; /* a dropped piece has count 0 */
    size_t count_count, count_capacity;
    const char *note;
    sb_place place;
} sb_job_option;

/* Money amounts are kept as read, in millionths of the major unit, for the shop's currency is not known here. */
typedef struct sb_job_amount { int64_t micro; bool given; const char *text; sb_place place; } sb_job_amount;
typedef enum sb_job_delivery { SB_DELIVERY_AMOUNT, SB_DELIVERY_ZONE, SB_DELIVERY_TRIPS, SB_DELIVERY_KM, SB_DELIVERY_MILES } sb_job_delivery;
typedef struct sb_job_stage { sb_share share; const char *text; sb_place place; } sb_job_stage;
typedef struct sb_job_share { sb_share share; bool given; sb_place place; } sb_job_share;

typedef struct sb_job {
    const char *name;          /* `job NAME`; papers go to a folder of the file's base name all the same */
    const char *path;          /* of the file */
    const char *title, *reference, *revision;
    const char *rates;         /* `rates FOLDER`: a folder below rates/, NULL: rates/ itself */
    sb_date date;              /* needed */
    const char *customer;      /* needed */
    SB_LIST(const char *) address;
    SB_LIST(sb_job_piece) pieces;
    SB_LIST(sb_job_option) options; /* none: the job as it stands is the only way */
    SB_LIST(sb_recipe_set) sets;    /* from --set; win over those of options and pieces; a name may be "piece.input" */
    sb_job_amount delivery;    /* delivery AMOUNT | zone NAME | NUMBER trips | NUMBER km | NUMBER miles [tax ID] [: text], net; the amount or
                                  the number */
    sb_job_delivery delivery_by;
    const char *delivery_zone, *delivery_tax; /* tax NULL: the job's */
    sb_place delivery_zone_place, delivery_tax_place;
    sb_job_amount minimum;         /* minimum AMOUNT, instead of the shop's */
    SB_LIST(sb_job_stage) stages;  /* stage SHARE of total : text, instead of the shop's */
    sb_job_share confidence;
    SB_LIST(sb_job_amount) extras; /* extra AMOUNT : text, a cost, net */
    sb_job_share discount, deposit, margin, markup, contingency;
    int validity_days;         /* 0: the shop's */
    struct sb_job_breaks {     /* `breaks 1, 5, 10 [quoted] | quoted | none`: batches of these sizes, priced beside the job */
        sb_counts sizes;       /* in sets: the fewest pieces in the job's proportion, of one kind of piece one */
        bool given;            /* the job tells them; else they are the shop's */
        bool quoted;           /* the customer sees them */
        sb_place place;
    } breaks;
    const char *tax;           /* NULL: the shop's default */
    sb_place tax_place;
    sb_quote_units quote_units; /* `quote-units mm | in | both`, instead of the shop's */
    bool use_rack;             /* `rack yes | no`, default yes */
    SB_LIST(const char *) notes; /* note TEXT, on the quote */
    sb_place place;
} sb_job;

const sb_job *sb_job_read(sb_run *run, const char *path, bool decimal_comma);
const sb_job *sb_job_of(sb_run *run, const sb_source *source, bool decimal_comma);
/* One piece as the recipe stands, for nobody. */
const sb_job *sb_job_for_one(sb_run *run, const sb_recipe *recipe);
/* The `rates` line of a job file without reading the rest: the shop must be read first to know its decimal sign.
 * "" when there is none. */
const char *sb_job_rates(sb_run *run, const char *path, sb_place *at); /* `at`: where it stands */
/* --set [PIECE.]NAME=VALUE: a copy of the job with the value set on one piece or on all that have such an input.
 * NULL after an error. */
const sb_job *sb_job_with(sb_run *run, const sb_job *job, const char *setting, bool decimal_comma);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
