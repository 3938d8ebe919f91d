/* sawbill/measure.h -- exact measures, and how people write them.
 *
 * One-field structs, so that the compiler refuses to add a length to money. All are integers:
 *   length nm, area um2, volume nl (1 nl = 0.001 mm3), mass mg, angle millionths of a degree,
 *   time ms, money in the currency's minor unit, cost in thousandths of the minor unit, share in ppm.
 * An amount out of range is SB_BAD. It sticks: whatever is computed with it is SB_BAD again, so one
 * check at the end tells. Nothing wraps around.
 */
#ifndef SAWBILL_MEASURE_H
#define SAWBILL_MEASURE_H

#include "sawbill/text.h"

#ifdef __cplusplus
extern "C" {
#endif
#pragma GCC visibility push(default) /* the library hides all else */

#define SB_BAD INT64_MIN

typedef struct sb_length { int64_t nm; } sb_length;
typedef struct sb_area { int64_t um2; } sb_area;
typedef struct sb_volume { int64_t nl; } sb_volume;
typedef struct sb_mass { int64_t mg; } sb_mass;
typedef struct sb_angle { int64_t udeg; } sb_angle;
typedef struct sb_duration { int64_t ms; } sb_duration;
typedef struct sb_money { int64_t minor; } sb_money;
typedef struct sb_cost { int64_t milli; } sb_cost;
typedef struct sb_share { int64_t ppm; } sb_share; /* 25 % = 250 000 */
typedef struct sb_date { int year, month, day; } sb_date; /* zeroed = none */

#define SB_NM_PER_MM 1000000
#define SB_NM_PER_INCH 25400000 /* 25.4 mm exactly: international yard and pound agreement, 1959 */
#define SB_NM_PER_FOOT 304800000
#define SB_UM2_PER_FOOT2 INT64_C(92903040000)
#define SB_MM(mm) ((sb_length){(int64_t)(mm) * SB_NM_PER_MM})

/* ---- arithmetic that says when it leaves the range ------------------------------------------------ */

int64_t sb_add(int64_t a, int64_t b);
int64_t sb_sub(int64_t a, int64_t b);
int64_t sb_mul(int64_t a, int64_t b);
/* a * b / c through 128 bits, rounded half away from zero; c != 0 */
int64_t sb_common_divisor(int64_t a, int64_t b); /* the greatest; of 0 and b it is b */
int64_t sb_mul_div(int64_t a, int64_t b, int64_t c);
int64_t sb_mul_div_up(int64_t a, int64_t b, int64_t c);   /* towards plus infinity */
int64_t sb_mul_div_down(int64_t a, int64_t b, int64_t c); /* towards minus infinity */

sb_length sb_length_add(sb_length a, sb_length b);
sb_length sb_length_sub(sb_length a, sb_length b);
sb_length sb_length_times(sb_length a, int64_t n);
sb_length sb_length_up_to_step(sb_length length, sb_length step); /* step > 0 */
sb_length sb_length_down_to_step(sb_length length, sb_length step);
sb_area sb_length_area(sb_length a, sb_length b);                    /* rounded to the nearest um2 */
sb_volume sb_area_volume(sb_area area, sb_length height);
sb_mass sb_volume_mass(sb_volume volume, int64_t kg_per_m3);
sb_money sb_money_add(sb_money a, sb_money b);
sb_money sb_money_sub(sb_money a, sb_money b);
sb_money sb_money_times(sb_money a, int64_t n);
sb_money sb_money_share(sb_money a, sb_share share);                 /* half away from zero */
sb_money sb_cost_money(sb_cost cost);                                /* half away from zero */
sb_money sb_money_up_to_step(sb_money amount, sb_money step);        /* price points; step > 0 */

/* base / (1 - margin): margin is a share of price. SB_BAD when margin >= 100 %. */
sb_money sb_money_with_margin(sb_money base, sb_share margin);
/* base * (1 + markup): markup is a share of cost. */
sb_money sb_money_with_markup(sb_money base, sb_share markup);

/* ---- exact ratios: what a literal is before anyone says what for ------------------------------------- */

typedef struct sb_ratio { int64_t num, den; } sb_ratio; /* den > 0, reduced; den 0 = out of range */
sb_ratio sb_ratio_of(int64_t num, int64_t den); /* reduces; den 0 and SB_BAD give out of range */
bool sb_ratio_ok(sb_ratio r);                   /* in range */
sb_ratio sb_ratio_add(sb_ratio a, sb_ratio b);  /* out of range sticks here as well */
sb_ratio sb_ratio_sub(sb_ratio a, sb_ratio b);
sb_ratio sb_ratio_mul(sb_ratio a, sb_ratio b);
sb_ratio sb_ratio_div(sb_ratio a, sb_ratio b); /* by zero: out of range */
int sb_ratio_compare(sb_ratio a, sb_ratio b);  /* below 0, 0, above 0; both in range */
double sb_ratio_real(sb_ratio r);
/* r * scale as a whole number: nearest (half away from zero), towards plus or minus infinity. */
int64_t sb_ratio_whole(sb_ratio r, int64_t scale);
int64_t sb_ratio_whole_up(sb_ratio r, int64_t scale);
int64_t sb_ratio_whole_down(sb_ratio r, int64_t scale);

/* Base dimensions and their exponents; volume is length 3. All zero: a bare number. */
typedef struct sb_dimension { int8_t length, angle, mass, time, money; } sb_dimension;
#define SB_DIM_NUMBER ((sb_dimension){0})
#define SB_DIM_LENGTH ((sb_dimension){.length = 1})
#define SB_DIM_AREA ((sb_dimension){.length = 2})
#define SB_DIM_VOLUME ((sb_dimension){.length = 3})
#define SB_DIM_ANGLE ((sb_dimension){.angle = 1})
#define SB_DIM_MASS ((sb_dimension){.mass = 1})
#define SB_DIM_TIME ((sb_dimension){.time = 1})
#define SB_DIM_MONEY ((sb_dimension){.money = 1})
bool sb_dimension_same(sb_dimension a, sb_dimension b);
const char *sb_dimension_name(sb_run *run, sb_dimension d); /* "a length", "an area", "a number" */

/* Amounts are in mm^length (not nm: a litre in nm3 leaves 64 bits), udeg, mg, ms and millionths of the
 * major money unit. So a length is sb_ratio_whole(amount, SB_NM_PER_MM), an area (um2) likewise, and a
 * volume (nl) is sb_ratio_whole(amount, 1000). */
typedef struct sb_quantity {
    sb_ratio amount;
    sb_dimension dimension;
    bool has_unit; /* false: a bare number, which a length column may take as mm */
} sb_quantity;

/* The PCRE2 rule that finds a quantity in a line; made from the unit table so that the two agree.
 * With decimal_comma, 1,5 is one and a half (a list of arguments then needs a blank after its comma). */
const char *sb_quantity_pattern(sb_run *run, bool decimal_comma);
/* Lexer for the line grammar: words, quantities, strings, symbols, text behind a colon. */
const sb_lexer *sb_line_lexer(sb_run *run, bool decimal_comma);

/* 1200 | 1.2 m | 47 1/4" | 3' 11-1/4" | 3ft 11 1/4in | 45 deg | 22deg30min | 12 % | 3 m2 | 40 min ...
 * A minus in front is read too; the pattern above leaves it to the formula. On failure returns false and *why is a
 * whole sentence ("1/63 inch is not on any tape; ..."). Lengths above 1 km, "nan", "inf", "1e9" are refused. A unit is
 * one of mm cm m in " ft ' m2 ft2 m3 bf l ml kg g lb deg min h % and what the table in units.c adds; behind feet may
 * stand inches, behind degrees minutes and seconds, behind hours minutes. */
bool sb_quantity_read(sb_run *run, const char *text, bool decimal_comma, sb_quantity *out,
                      const char **why);

/* With the cursor behind what ends in a quantity. True after an error, the cursor behind what was told:
 * a word behind a bare number, as `20 mn`, is no unit; a bare number goes on in pieces, as `47 1/4` without its unit, or
 * `2,5` where a comma is none (in a list, where commas part, that is left alone). */
bool sb_tell_no_unit(sb_run *run, sb_cursor *cursor, bool decimal_comma);
bool sb_tell_number_in_pieces(sb_run *run, sb_cursor *cursor, bool decimal_comma, bool in_list);

/* ---- typed reading, for CSV cells and settings: false after an error notice at the place ---------------- */

/* A minus in front is read by all but counts and dates; whether a negative one makes sense is for the caller to say.
 * Lengths, angles and times go to the nearest nm, udeg and ms; money, numbers and percentages with more decimals than
 * they can hold are refused. */

bool sb_read_length(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_length *out); /* bare = mm */
bool sb_read_angle(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_angle *out);   /* bare = degrees */
bool sb_read_money(sb_run *run, const char *text, sb_place at, bool decimal_comma, int digits, sb_money *out);
bool sb_read_micro(sb_run *run, const char *text, sb_place at, bool decimal_comma, int64_t *micro);  /* a number, in millionths */
bool sb_read_share(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_share *out);   /* "12 %", bare = percent */
bool sb_read_duration(sb_run *run, const char *text, sb_place at, bool decimal_comma, sb_duration *out); /* bare = minutes */
bool sb_read_count(sb_run *run, const char *text, sb_place at, int64_t *out);                       /* whole, >= 0 */
bool sb_read_date(sb_run *run, const char *text, sb_place at, sb_date *out);                        /* 2026-03-31 */
bool sb_read_yes(sb_run *run, const char *text, sb_place at, bool *out);                            /* yes | no */

typedef struct sb_counts {
    int64_t *items;
    size_t count, capacity;
} sb_counts;
/* `1, 5, 10, 25`: sizes of batches, none twice, at most 12 of them; in `out` the smaller ones come first. */
bool sb_read_sizes(sb_run *run, sb_cursor *cursor, sb_counts *out);

/* ---- measured boards: what a person with a tape found on them ---------------------------------------------- */

/* Lengths from the board's front end, the one that is trued first. */
typedef struct sb_stretch {
    sb_length from, to;
    bool split; /* else a knot */
    sb_place place;
} sb_stretch;
typedef struct sb_stretches { /* as they follow each other on the board */
    sb_stretch *items;
    size_t count, capacity;
} sb_stretches;

/* One line of a list of measured boards. */
typedef struct sb_finding {
    const char *board; /* its label */
    sb_place at;       /* of the label */
    bool faultless;    /* nothing was found on it */
    sb_stretch stretch;
} sb_finding;
typedef struct sb_findings {
    sb_finding *items;
    size_t count, capacity;
} sb_findings;

/* A CSV file with the columns board, from, to, kind (knot | split): a line for each stretch, or a board alone where
 * nothing was found. Lines with mistakes are told and left out. */
sb_findings sb_findings_read(sb_run *run, const char *path);
/* Adds what a line says to the stretches of its board, which is so long; an error where it goes beyond the board. */
void sb_finding_add(sb_run *run, const sb_finding *finding, sb_length board, sb_stretches *to);

/* ---- dates, currencies ---------------------------------------------------------------------------------- */

int64_t sb_date_days(sb_date date);             /* days since 1970-01-01, Gregorian */
sb_date sb_date_plus(sb_date date, int days);
typedef struct sb_currency { const char *code; int digits; } sb_currency; /* ISO 4217 minor unit exponent */
bool sb_currency_find(const char *code, sb_currency *out);

/* ---- prices per something ------------------------------------------------------------------------------- */

typedef enum sb_per { SB_PER_EACH, SB_PER_M, SB_PER_FT, SB_PER_M2, SB_PER_FT2, SB_PER_M3, SB_PER_BF,
                      SB_PER_L, SB_PER_GAL, SB_PER_KG, SB_PER_LB, SB_PER_PACK } sb_per;
bool sb_per_find(const char *word, sb_per *out); /* each m ft m2 ft2 m3 bf l gal kg lb pack */
const char *sb_per_word(sb_per per);
typedef struct sb_price { int64_t micro; sb_per per; } sb_price; /* millionths of the major unit */

/* What one item of these sizes costs. Board feet go by nominal thickness and width and actual length
 * (American Softwood Lumber Standard PS 20); nominal 0 means "as actual". SB_BAD when the unit does
 * not fit (litres of a board). Not rounded to the minor unit: thousandths of it. A size that is needed and not
 * above zero is SB_BAD too. */
typedef struct sb_item_size { sb_length length, width, thickness, nominal_width, nominal_thickness; } sb_item_size;
sb_cost sb_price_of_item(sb_price price, sb_item_size size, int money_digits);
int64_t sb_board_feet_milli(sb_length thickness, sb_length width, sb_length length); /* thousandths */

/* ---- writing --------------------------------------------------------------------------------------------- */

typedef enum sb_units { SB_UNITS_MM, SB_UNITS_IN } sb_units;
typedef struct sb_style {
    sb_units units;
    sb_length step;       /* 0.5 mm, 1/16 in ...; what is off the step is marked with ~ */
    bool decimal_comma;
} sb_style;
/* What the customer's quote tells sizes in; none told: as the shop's papers do. */
typedef enum sb_quote_units { SB_QUOTE_OWN, SB_QUOTE_MM, SB_QUOTE_IN, SB_QUOTE_BOTH } sb_quote_units;
/* As fine as sizes of stock are told, which are no marks on the tape: 1/64 in, 0.001 mm. */
sb_style sb_style_exact(const sb_style *style);
/* `style` may be NULL: millimetres, exact, decimal point. In inches a step that is not so many 64ths counts as 1/64;
 * without a step millimetres are exact. SB_BAD is written "out of range". */
const char *sb_write_length(sb_run *run, sb_length length, const sb_style *style);  /* "864" or 34 1/64" */
const char *sb_write_length_unit(sb_run *run, sb_length length, const sb_style *style); /* "864 mm" */
/* Of stock: "2440 x 1220 mm", length first; width 0: "2440 mm". Exact as above. */
const char *sb_write_size(sb_run *run, sb_length length, sb_length width, const sb_style *style);
/* Of a piece, in words that need no more than the tape shows, each to the nearest step: "1400 x 400 x 500 mm"; of none "". */
const char *sb_write_sizes(sb_run *run, const sb_length *sizes, size_t count, const sb_style *style);
const char *sb_write_angle(sb_run *run, sb_angle angle, const sb_style *style);     /* 22.5° : at most 1 decimal, 2 where needed */
/* With the currency's decimals, in groups of three with a blank between: 1 234.50. No code or sign of the currency. */
const char *sb_write_money(sb_run *run, sb_money money, sb_currency currency, const sb_style *style);
const char *sb_write_decimal(sb_run *run, int64_t amount, int digits, bool decimal_comma); /* amount / 10^digits, all digits */
const char *sb_write_fixed(sb_run *run, int64_t amount, int digits_in, int digits_out, bool decimal_comma); /* rounds */
/* "21 %", "9.975 %": all decimals it has, `least` of them at least; a share short of the whole never reads as the whole. */
const char *sb_write_share(sb_run *run, sb_share share, int least, bool decimal_comma);
const char *sb_write_date(sb_run *run, sb_date date); /* ISO 8601 */
double sb_length_mm(sb_length length); /* for JSON and spreadsheets only */

#pragma GCC visibility pop
#ifdef __cplusplus
}
#endif
#endif
