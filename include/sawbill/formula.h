/* sawbill/formula.h -- formulas that know their units.
 *
 *   if COND: comparison, and, or, not; + - * / ^; words; quantities; name; name.attribute; f(x, ...)
 *   functions: min max round floor ceil abs sqrt sin cos tan asin acos atan atan2 if round_up(x, step)
 *   round_down(x, step)
 * Trigonometry is in degrees and wants an angle. Values stay exact ratios as long as they fit; only
 * roots, trigonometry and overflow of the ratio go to double, and `exact` says so.
 */
#ifndef SAWBILL_FORMULA_H
#define SAWBILL_FORMULA_H

#include "sawbill/measure.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

typedef enum sb_value_kind { SB_VALUE_NONE, SB_VALUE_QUANTITY, SB_VALUE_TRUTH, SB_VALUE_WORD } sb_value_kind;

typedef struct sb_value {
    sb_value_kind kind; /* NONE: there was an error, already told; computing on is silent */
    sb_dimension dimension;
    bool exact;
    sb_ratio ratio; /* when exact, in the base units of sb_quantity */
    double real;    /* always, same units */
    bool truth;
    const char *word;
    bool open; /* only the kind and the dimension are known; the amount, truth or word stands in for any other */
} sb_value;

sb_value sb_value_length(sb_length length);
sb_value sb_value_angle(sb_angle angle);
sb_value sb_value_count(int64_t number);
sb_value sb_value_truth(bool truth);
sb_value sb_value_word(const char *word);
sb_value sb_value_quantity(sb_quantity quantity);
/* Any value of the same kind. What is computed from it is open too: dimensions are checked everywhere, in both branches
 * of `if` and on both sides of `and`, and nothing is told that depends on the amount. */
sb_value sb_value_open(sb_value value);
/* "450 mm", "7", "slatted"; style NULL: millimetres, decimal point */
const char *sb_value_text(sb_run *run, sb_value value, const sb_style *style);

typedef struct sb_formula sb_formula; /* opaque tree; every node has its place */

/* Reads the longest formula at the cursor and leaves the cursor behind it (at `when`, `:`, `|`, a
 * comma, the end ...). NULL after an error notice. */
const sb_formula *sb_formula_parse(sb_run *run, sb_cursor *cursor, bool decimal_comma);
sb_place sb_formula_place(const sb_formula *formula);
/* Words that cannot be names: and or not if when per from to of with on end true false, and the functions. */
bool sb_formula_reserved(const char *word);
/* Calls `seen` for every name in the formula, from left to right: `attribute` is NULL for a plain name. */
void sb_formula_names(const sb_formula *formula,
                      void (*seen)(void *context, const char *owner, const char *attribute, sb_place at),
                      void *context);

/* Names and what they stand for. A name may stand for a formula, evaluated when first asked for, so
 * the order of lines does not matter; a cycle is an error that shows the chain a -> b -> a. */
typedef struct sb_scope sb_scope;
sb_scope *sb_scope_new(sb_run *run, sb_scope *parent); /* parent may be NULL; looked in second */
/* These three are false, silently, when the name is reserved or taken in this very scope; a name of the parent may be
 * taken again and hides it. A formula is evaluated in the scope that holds its name. */
bool sb_scope_set(sb_run *run, sb_scope *scope, const char *name, sb_value value);
bool sb_scope_set_formula(sb_run *run, sb_scope *scope, const char *name, const sb_formula *formula);
/* Likewise; what the formula comes to only says of which kind the name is: an open value. */
bool sb_scope_set_open(sb_run *run, sb_scope *scope, const char *name, const sb_formula *formula);
/* `owner.attribute`, as slat.width */
bool sb_scope_set_attribute(sb_run *run, sb_scope *scope, const char *owner, const char *attribute, sb_value value);
/* A word that stands for itself: the values of choices. */
void sb_scope_word(sb_run *run, sb_scope *scope, const char *word);
/* The words that a name, set before in this scope, is chosen from: known as above, and offered where another one is
 * compared with the name. */
void sb_scope_choice(sb_run *run, sb_scope *scope, const char *name, const char *const *words, size_t count);
bool sb_scope_has(const sb_scope *scope, const char *name);

sb_value sb_formula_value(sb_run *run, const sb_formula *formula, sb_scope *scope);

/* Typed evaluation; false after an error that says what was wanted, what came, and where. A length
 * between two nm is rounded up (one from floating point less 0.01 nm of noise). Comparisons of inexact
 * amounts take as equal what differs by noise alone; exact ones compare exactly. `count` wants a whole number from
 * 0 to ten million and allows no fraction. */
bool sb_formula_length(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_length *out);
bool sb_formula_area(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_area *out);
bool sb_formula_angle(sb_run *run, const sb_formula *formula, sb_scope *scope, sb_angle *out);
bool sb_formula_count(sb_run *run, const sb_formula *formula, sb_scope *scope, int64_t *out);
bool sb_formula_truth(sb_run *run, const sb_formula *formula, sb_scope *scope, bool *out);
bool sb_formula_micro(sb_run *run, const sb_formula *formula, sb_scope *scope, int64_t *millionths); /* a bare number */

/* Where a value comes from: "high - 20 mm = 450 mm - 20 mm = 430 mm". */
const char *sb_formula_worked(sb_run *run, const sb_formula *formula, sb_scope *scope, const sb_style *style);

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
