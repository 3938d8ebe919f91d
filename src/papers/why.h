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
    const sb_way *way;
    SB_LIST(why_step) steps;
} why;

void why_say(why *w, const char *what, const char *value, const char *how, sb_place place);
void why_say_money(why *w, const char *what, sb_money money, const char *how, sb_place place);
void why_say_length(why *w, const char *what, sb_length length, const char *how, sb_place place);

/* Each answers if the figure is one of its own and says so. */
bool why_total(why *w, const char *figure); /* total, net, price, cost, labour, ... : steps of the price */
bool why_fact(why *w, const char *figure); /* a line of the risk, a payment: why_facts.c */
bool why_part(why *w, const char *figure);  /* a part's name or title */
bool why_value(why *w, const char *figure); /* an input, choice or derived value of a recipe */
bool why_stock(why *w, const char *figure); /* a stock's id or title */
bool why_work(why *w, const char *figure);  /* an operation's id or title */
bool why_measure(why *w, const char *figure); /* waste, spare, weight, lead time, the cutting plan: why_measures.c */
bool why_rate(why *w, const char *figure); /* a worker's hour, a group of material: why_rates.c */
bool why_piece(why *w, const char *figure); /* a piece's name or title */

void why_risk(why *w); /* why_risk.c */
void why_sensitivity(why *w);

/* The figure is the name or the title; or one of these of a piece or of what a path leads to: "gate.brace", "Garden gate.brace",
 * "trough / end frame.rail", "brace (Garden gate)". */
bool why_means(const why *w, const char *figure, size_t piece, const char *path, const char *name,
               const char *title);
/* What the names in a formula of that recipe stand for, and what those rest on, each once. */
void why_names_of(why *w, const sb_making *making, const sb_formula *formula);

/* ---- which figures there are: why_list.c -------------------------------------------------------------- */

typedef SB_LIST(const char *) why_words;
typedef struct why_group {
    const char *title;
    why_words names;  /* that are listed */
    why_words titles; /* that mean the same */
} why_group;
typedef SB_LIST(why_group) why_groups;

why_groups why_figures(const why *w);
void why_totals(const why *w, why_group *group); /* why_total.c: those of the price */
void why_facts(const why *w, why_group *group);  /* why_facts.c: risk and payments */
void why_measures(const why *w, why_group *group);
void why_rates(const why *w, why_group *group);
/* An error that names what the asker may have meant. */
void why_unknown(const why *w, const char *figure);
void why_word_once(const why *w, why_words *words, const char *word);

#endif
