/* papers/why.h -- where a figure comes from: a chain of steps, each with its value, how it came about, and its place. */
#ifndef SAWBILL_PAPERS_WHY_H
#define SAWBILL_PAPERS_WHY_H

#include "sawbill/papers.h"

typedef struct why_step {
    const char *what, *value, *how;
    sb_place place;
    bool is_money, is_length; /* the value is this, in words */
    sb_money money;
    sb_length length;
} why_step;

typedef struct why {
    sb_run *run;
    const sb_shop *shop;
    const sb_wording *words; /* of the quote; NULL: none */
    const sb_ways *ways;
    const sb_way *way; /* the one that is asked */
    SB_LIST(why_step) steps;
} why;

typedef SB_LIST(const char *) why_words;
typedef struct why_group {
    const char *title;
    why_words names;  /* that are listed */
    why_words titles; /* that mean the same */
} why_group;
typedef SB_LIST(why_group) why_groups;

void why_say(why *w, const char *what, const char *value, const char *how, sb_place place);
void why_say_money(why *w, const char *what, sb_money money, const char *how, sb_place place);
void why_say_length(why *w, const char *what, sb_length length, const char *how, sb_place place);

/* The same, with all the decimals that there are. */
void why_say_exact_length(why *w, const char *what, sb_length length, const char *how, sb_place place);
void why_say_cost(why *w, const char *what, sb_cost cost, const char *how, sb_place place);

/* Whether somebody knows the figure, who has said then where it comes from. */
bool why_answer(why *w, const char *figure);

/* Each answers if the figure is one of its own and says so. */
bool why_total(why *w, const char *figure);  /* total, net, price, cost, labour, ... : steps of the price */
bool why_fact(why *w, const char *figure);   /* a line of the risk, a payment: why_facts.c */
bool why_part(why *w, const char *figure);   /* a part's name or title */
bool why_value(why *w, const char *figure);  /* an input, choice or derived value of a recipe */
bool why_stock(why *w, const char *figure);  /* a stock's id or title: why_order.c */
bool why_bought(why *w, const char *figure); /* what a merchant gets, all of them, the rack: why_order.c */
bool why_work(why *w, const char *figure);   /* an operation's id or title: why_work.c */
bool why_measure(why *w,
                 const char *figure); /* waste, spare, weight, lead time, the cutting plan: why_measures.c */
bool why_rate(why *w, const char *figure);   /* a worker's hour, a group of material: why_rates.c */
bool why_piece(why *w, const char *figure);  /* a piece's name or title */
bool why_board(why *w, const char *figure);  /* "board 3", "mark 2 of board 3", "offcut": why_boards.c */
bool why_stop(why *w, const char *figure);   /* "stop at 480", "fence at 60" of a rip: why_stops.c */
bool why_sheet(why *w, const char *figure);  /* "sheet 2", "cut 5 of sheet 2", "fence at 412": why_sheets.c */
bool why_spare(why *w, const char *figure);  /* "spare for brace" */
bool why_offer(why *w, const char *figure);  /* a price or rack piece that this plan has no use for */
bool why_option(why *w, const char *figure); /* the total of an option, by its title */

/* The same in the shop's own word, for what papers print otherwise; NULL: none. In why_names.c. */
const char *why_own_word(const why *w, const char *figure);
/* Without what papers put in front of a name or behind it; NULL: there is nothing of that. */
const char *why_bare(const why *w, const char *figure);
void why_printed(const why *w, why_group *group);

void why_say_part(why *w, const sb_part *part);
const char *why_part_words(const why *w, const sb_part *part); /* "gate, brace": the first step of that */
/* "Assemble, Garden bench": the piece where not all have it. */
const char *why_work_words(const why *w, const sb_labour_line *line);
/* "listed at 2.50 per m" */
const char *why_listed(const why *w, const sb_offer *offer);

void why_risk(why *w); /* why_risk.c */
void why_sensitivity(why *w);

/* One of the two, letters large or small. */
bool why_is(const char *figure, const char *name, const char *title);
bool why_ends_in(const char *text, const char *tail);
/* The figure is the name or the title; or one of these of a piece or of what a path leads to: "gate.brace", "Garden gate.brace",
 * "trough / end frame.rail", "brace (Garden gate)". */
bool why_means(const why *w, const char *figure, size_t piece, const char *path, const char *name,
               const char *title);
/* What the names in a formula of that recipe stand for, and what those rest on, each once. */
void why_names_of(why *w, const sb_making *making, const sb_formula *formula);

/* ---- which figures there are: why_list.c -------------------------------------------------------------- */

why_groups why_figures(const why *w);
void why_totals(const why *w, why_group *group); /* why_total.c: those of the price */
void why_facts(const why *w, why_group *group);  /* why_facts.c: risk and payments */
void why_measures(const why *w, why_group *group);
void why_rates(const why *w, why_group *group);
void why_orders(const why *w, why_group *group); /* why_order.c: merchants */
void why_cut_sheet(const why *w, why_group *group);
/* An error that names what the asker may have meant. */
void why_unknown(const why *w, const char *figure);
void why_word_once(const why *w, why_words *words, const char *word);

#endif
