/* takeoff/inside.h -- what the files of this room share while a job is taken off.
 *
 * A walk goes over the pieces of one job. A making is one recipe at work: a piece of the job, or a component
 * inside one. Counts are multiplied on the way down and nothing is ever done piece by piece.
 */
#ifndef SAWBILL_TAKEOFF_INSIDE_H
#define SAWBILL_TAKEOFF_INSIDE_H

#include "sawbill/takeoff.h"

enum {
    TAKEOFF_MOST_TURNS = 10000,    /* of one repeat, those around it multiplied in */
    TAKEOFF_MOST_PARTS = 10000000, /* in a job */
    TAKEOFF_MOST_MAKINGS = 100000, /* recipes at work in a job */
    TAKEOFF_DEEPEST = 32           /* components inside components */
};

typedef struct takeoff_walk {
    sb_run *run;
    const sb_shop *shop;
    sb_recipe_book *book;
    const sb_job *job;
    const sb_job_option *option; /* may be NULL */
    sb_takeoff *takeoff;
    int64_t parts; /* so far */
    bool crowded;  /* more recipes at work than TAKEOFF_MOST_MAKINGS, which has been told */
    const sb_recipe_choice
        *tried; /* made only to find mistakes, with this word of this choice; NULL: made in earnest */
    const char *tried_word;
    SB_LIST(sb_cut_end) past_saw; /* angles the saw does not reach that have been told */
} takeoff_walk;

/* Where a line takes place: in a turn of the repeat around it, or once. */
typedef struct takeoff_turn {
    const sb_recipe_loop *loop;        /* NULL: outside all repeats */
    const struct takeoff_turn *around; /* the turn in which this repeat stands */
    sb_scope *scope;
} takeoff_turn;
typedef struct takeoff_turns {
    const takeoff_turn **items;
    size_t count, capacity;
} takeoff_turns;

typedef struct takeoff_making {
    takeoff_walk *walk;
    const struct takeoff_making *caller; /* NULL: the job */
    const sb_recipe *recipe;
    sb_scope *scope;
    size_t piece;      /* into takeoff.pieces */
    size_t index;      /* into takeoff.makings */
    const char *path;  /* "trough / end frame" */
    int64_t per_piece; /* how many of it in one piece */
    int64_t count;     /* in the whole job */
    int depth;
    SB_LIST(struct takeoff_role {
        const char *name;
        const sb_stock *stock;
    })
    roles;
    SB_LIST(struct takeoff_repeat {
        const sb_recipe_loop *loop;
        takeoff_turns turns;
    })
    repeats;
    SB_LIST(struct takeoff_made { /* its own parts, line by line and turn by turn */
                                  const char *name;
                                  const takeoff_turn *turn;
                                  int64_t count;      /* in the whole job */
                                  sb_length length;   /* of one */
                                  sb_area surface[3]; /* of one, by sb_surface */
    })
    made;
    SB_LIST(struct takeoff_joints {
        const char *name;
        const takeoff_turn *turn;
        int64_t count; /* in the whole job */
    })
    joints;
} takeoff_making;

/* What a caller hands to a recipe. Of two values for the same name the later counts. */
typedef struct takeoff_givens {
    const takeoff_making *caller; /* whose roles may stand for stock; NULL: the job */
    sb_scope *scope;              /* in which values are evaluated */
    SB_LIST(sb_recipe_set) sets;
    SB_LIST(sb_recipe_stock) stocks;
} takeoff_givens;

/* Takes the job off with one word of one choice, for the mistakes of the recipe's lines. What its checks and ranges stop
 * ends there, silently: that is what they are for. */
void takeoff_try(sb_run *run, const sb_shop *shop, sb_recipe_book *book, const sb_job *job,
                 const sb_recipe_choice *choice, const char *word); /* takeoff.c */

/* ---- option.c: what the job, its option and what-if settings say about a piece -------------------------------------------- */

int64_t takeoff_piece_count(const takeoff_walk *walk, const sb_job_piece *piece);
takeoff_givens takeoff_piece_givens(takeoff_walk *walk, const sb_job_piece *piece, const sb_recipe *recipe);
/* Lines for all pieces, of the option or what-if, that no piece's recipe has anything to do with. */
void takeoff_check_settings(takeoff_walk *walk, const sb_recipe *const *recipes);

/* ---- a recipe at work ------------------------------------------------------------------------------------ */

void takeoff_make(takeoff_making *making, const takeoff_givens *givens);       /* make.c */
bool takeoff_open_scope(takeoff_making *making, const takeoff_givens *givens); /* scope.c */
bool takeoff_set_inputs(takeoff_making *making, const takeoff_givens *givens); /* inputs.c */
/* Whether what is given is there to be set. */
bool takeoff_check_names(takeoff_making *making, const takeoff_givens *givens);  /* inputs.c */
bool takeoff_check_roles(takeoff_making *making, const takeoff_givens *givens);  /* stock.c */
bool takeoff_check_ranges(takeoff_making *making, const takeoff_givens *givens); /* ranges.c */
/* The last value given for a name; NULL: none. */
const sb_recipe_set *takeoff_given(const takeoff_givens *givens, const char *name);
/* The word of a choice and the value of an input, as used; NULL and NONE after an error. */
const char *takeoff_choice(takeoff_making *making, const takeoff_givens *givens,
                           const sb_recipe_choice *choice);
sb_value takeoff_input(takeoff_making *making, const takeoff_givens *givens, const sb_recipe_input *input);
void takeoff_components(takeoff_making *making);             /* component.c */
void takeoff_saw_note(takeoff_walk *walk, const char *text); /* make.c: once each */

/* ---- repeat.c: conditions and repetition ------------------------------------------------------------------- */

/* The turns in which a statement takes place: those of the repeat around it in which its condition holds; none when it
 * never does. */
takeoff_turns takeoff_where(takeoff_making *making, const sb_recipe_guard *guard);

/* Kinds of stock, as sets. */
enum {
    TAKEOFF_FOR_PARTS = 1 << SB_STOCK_BOARD | 1 << SB_STOCK_SHEET | 1 << SB_STOCK_VOLUME,
    TAKEOFF_FOR_FIXINGS = 1 << SB_STOCK_FIXING | 1 << SB_STOCK_OTHER,
    TAKEOFF_FOR_FINISHES = 1 << SB_STOCK_FINISH,
    TAKEOFF_FOR_GLUE = 1 << SB_STOCK_GLUE,
    TAKEOFF_FOR_EDGING = 1 << SB_STOCK_EDGING
};

/* ---- stock.c: what a word in a recipe stands for ------------------------------------------------------------- */

bool takeoff_choose_stock(takeoff_making *making, const takeoff_givens *givens); /* for the recipe's roles */
const sb_stock *takeoff_role(const takeoff_making *making, const char *role); /* NULL: no stock was chosen */
/* A part's stock; NULL after an error. */
const sb_stock *takeoff_stock_of_role(takeoff_making *making, const char *role, sb_place at);
/* False after an error at `at` when the stock is of none of the kinds in the set. */
bool takeoff_is_kind(sb_run *run, const sb_stock *stock, unsigned kinds, const char *what, sb_place at);
/* The stocks that the lines of a role name, whether they hold or not; those that the shop has. */
typedef struct takeoff_stocks {
    const sb_stock **items;
    size_t count, capacity;
} takeoff_stocks;
takeoff_stocks takeoff_stocks_of_role(sb_run *run, const sb_shop *shop, const sb_recipe *recipe,
                                      const char *role);
/* Tells what takeoff_stock would, of all the stocks that the word may stand for. */
void takeoff_look_at_stock(sb_run *run, const sb_shop *shop, const sb_recipe *recipe, const char *word,
                           unsigned kinds, const char *what, sb_place at);
/* A role or the id of a stock, of one of the kinds in the set (1 << SB_STOCK_...); NULL after an error. `what` asks for
 * it: "fixing". */
const sb_stock *takeoff_stock(takeoff_making *making, const char *word, unsigned kinds, const char *what,
                              sb_place at);

/* ---- parts ---------------------------------------------------------------------------------------------------- */

typedef struct takeoff_parting { /* one part while it is worked out */
    takeoff_making *making;
    sb_scope *scope;
    const sb_recipe_part *line;
    sb_part part;
    sb_length planing;    /* taken off thickness and width; 0 unless planed */
    sb_area joint;        /* glued in one finished part */
    const sb_stock *glue; /* NULL: none named */
} takeoff_parting;

void takeoff_parts(takeoff_making *making);  /* parts.c */
bool takeoff_part(takeoff_parting *parting); /* part.c: fills in part; false after an error */
/* suits.c: whether a part such as the line describes can be made out of this stock at all; false after an error */
bool takeoff_suits(sb_run *run, const sb_recipe_part *line, const sb_stock *stock);
bool takeoff_board_part(takeoff_parting *parting);                   /* board.c: full width, ripped, planed */
const sb_formula *takeoff_width_formula(const sb_recipe_part *line); /* board.c */
bool takeoff_glued_part(takeoff_parting *parting);                   /* glued.c: staves side by side */
bool takeoff_layers(takeoff_parting *parting);        /* glued.c: layers on one another, glue */
bool takeoff_sheet_part(takeoff_parting *parting);    /* sheet.c */
bool takeoff_edging_covers(takeoff_parting *parting); /* sheet.c: the whole thickness of an edge */
bool takeoff_volume_part(takeoff_parting *parting);   /* volume.c */
bool takeoff_ends(takeoff_parting *parting);          /* ends.c */
bool takeoff_ends_apart(takeoff_parting *parting);    /* ends.c: once the sizes are known */
void takeoff_outline(takeoff_parting *parting);       /* outline.c: areas of the finished part */
sb_length
takeoff_mean_length(const sb_part *part); /* outline.c: length halfway between long and short points */
void takeoff_part_uses(takeoff_parting *parting); /* part_uses.c: glue, edging, timber by volume */

/* sizes.c: sizes on the shop's step, rounded up. */
sb_length takeoff_on_step(const takeoff_walk *walk, sb_length length);
/* Above nothing and at most 100 m; `what` is "length". */
bool takeoff_size(takeoff_parting *parting, const sb_formula *formula, const char *what, sb_length *out);
/* A width; `full` itself when only the step would make it wider than that. */
bool takeoff_width(takeoff_parting *parting, const sb_formula *formula, sb_length full, sb_length *out);
/* Nothing or more; 0 without a formula. */
bool takeoff_extra(takeoff_parting *parting, const sb_formula *formula, const char *what, sb_length *out);
const char *takeoff_length_text(const takeoff_walk *walk, sb_length length); /* "47 mm" */

/* ---- amounts ---------------------------------------------------------------------------------------------------- */

void takeoff_joints(takeoff_making *making);   /* basis.c */
void takeoff_fixings(takeoff_making *making);  /* fixings.c */
void takeoff_finishes(takeoff_making *making); /* finish.c */
void takeoff_glues(takeoff_making *making);    /* glue.c */
void takeoff_works(takeoff_making *making);    /* work.c */
void takeoff_outlines(takeoff_making *making); /* view.c: of a piece of the job, not of what is inside it */
void takeoff_always(takeoff_walk *walk);       /* work.c: what every job has */
/* Whether a line says what its operation is counted by, whatever its amount: errors where it does not. */
void takeoff_look_at_work(sb_run *run, const sb_recipe *recipe, const sb_recipe_work *line,
                          const sb_operation *operation);

/* What a line means by the parts or joints of a name, in a turn of its own: of those made in repeats around both, the
 * ones of this very turn; else all of them. Over the recipe's own, in the whole job; name NULL: all. */
int64_t takeoff_count_parts(const takeoff_making *making, const char *name, const takeoff_turn *turn);
int64_t takeoff_count_joints(const takeoff_making *making, const char *name, const takeoff_turn *turn);
sb_length takeoff_run_of_parts(const takeoff_making *making, const char *name,
                               const takeoff_turn *turn); /* their lengths added up */
/* A surface of the parts of these names; none: of all. */
sb_area takeoff_surface(const takeoff_making *making, sb_surface surface, const char *const *names,
                        size_t count, const takeoff_turn *turn);
/* How many pieces, parts or joints of this name; 1 for the batch. */
int64_t takeoff_basis(const takeoff_making *making, sb_recipe_basis basis, const char *of,
                      const takeoff_turn *turn);

/* usage.c: adds to what the piece uses by this line. For the batch a line counts once however many pieces
 * have it; where its amounts differ the largest counts. */
void takeoff_use(takeoff_making *making, bool batch, sb_usage usage);

/* ---- the whole job -------------------------------------------------------------------------------------------------- */

void takeoff_totals(takeoff_walk *walk);            /* totals.c */
sb_volume takeoff_part_volume(const sb_part *part); /* finished */
/* What a grade loses, as a share added to net and as one lost of what is bought; zero without a grade. */
void takeoff_waste(const sb_grade *grade, sb_share *added, sb_share *lost);
int64_t takeoff_with_waste(const sb_grade *grade, int64_t net); /* rounded up */

/* ---- the cutting list --------------------------------------------------------------------------------------------------- */

/* defects.c: needs for what a grade's defects cost, of one takeoff. `index` is the stock's in the problem. */
void takeoff_spare_needs(sb_run *run, sb_cutlist *list, const sb_takeoff *takeoff,
                         const sb_stock_total *total, sb_length spare, size_t index);
/* Spare length by takeoff and, in each, by total; NULL: all that the grades ask for. In cutlist.c. */
const sb_cutlist *takeoff_cutlist(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs,
                                  size_t count, const sb_length *spares);
bool takeoff_rack_used(const sb_takeoff *const *takeoffs, size_t count); /* cutlist.c */
/* rules.c */
sb_cut_rules takeoff_rules(const sb_shop *shop);
void takeoff_useful(sb_cut_stock *stock,
                    const sb_settings *settings); /* least size of a leftover worth keeping */

/* ---- the order ---------------------------------------------------------------------------------------- */

typedef struct takeoff_pack {
    int64_t size, cost;
    int64_t available; /* -1: no limit */
    size_t index;      /* the caller's; decides between packs alike */
    int64_t count;     /* out: how many to buy */
} takeoff_pack;
/* packs.c: puts the packs in the order of what a unit costs, and fills in their counts. False when all there is does
 * not cover the need, which is above zero. */
bool takeoff_cheapest_packs(sb_run *run, takeoff_pack *packs, size_t count, int64_t need);

typedef struct takeoff_ordering {
    sb_run *run;
    const sb_shop *shop;
    const sb_takeoff *const *takeoffs;
    size_t count;
    const sb_cutlist *cutlist;
    const sb_plan *plan;
    bool rack;
    sb_order *order;
    SB_LIST(sb_order_line) from_rack; /* come last */
} takeoff_ordering;

/* One stock after the other: lines are pushed, and how much of it is left at hand is told. */
int64_t takeoff_order_cut(takeoff_ordering *o, const sb_stock *stock); /* order_cut.c: boards and sheets */
int64_t takeoff_order_packed(takeoff_ordering *o,
                             const sb_stock *stock); /* order_packed.c: packs, tins, rolls */
void takeoff_order_volume(takeoff_ordering *o, const sb_stock *stock);          /* order_volume.c */
void takeoff_reorder(takeoff_ordering *o, const sb_stock *stock, int64_t left); /* reorder.c */
void takeoff_buy(takeoff_ordering *o, sb_order_line line);  /* order.c: prices the line and keeps it */
void takeoff_take(takeoff_ordering *o, sb_order_line line); /* order.c: likewise, out of the rack */
int64_t takeoff_needed(const takeoff_ordering *o, const sb_stock *stock,
                       sb_place *first);                                  /* order.c: by usages */
int64_t takeoff_held(const takeoff_ordering *o, const sb_stock *stock);   /* order.c: what the rack holds */
int64_t takeoff_bought(const takeoff_ordering *o, const sb_offer *offer); /* order.c: so far */
const char *takeoff_amount_text(const takeoff_ordering *o, const sb_stock *stock,
                                int64_t amount); /* order.c */
/* order_packed.c: buys the cheapest packs for an amount; false when nobody sells enough. What the packs hold above
 * it goes to `over`. */
bool takeoff_buy_packs(takeoff_ordering *o, const sb_stock *stock, int64_t amount, bool reorder,
                       int64_t *over);

#endif
