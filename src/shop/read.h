/* shop/read.h -- what the readers of a shop's files share; for this room only.
 *
 * A reader goes on after a mistake, so that all mistakes of all files come out together. What it could not
 * read stays zero.
 */
#ifndef SHOP_READ_H
#define SHOP_READ_H

#include "sawbill/shop.h"

typedef struct shop_stocks {
    const sb_stock **items;
    size_t count, capacity;
} shop_stocks;
bool shop_among(const shop_stocks *stocks, const sb_stock *stock);

typedef struct shop_reader {
    sb_run *run;
    sb_shop *shop;
    shop_stocks doubtful;           /* their rows have mistakes: prices are not held against them */
    shop_stocks mispriced;          /* a price row of theirs has mistakes: what they are worth is not known */
    bool offer_lost;                /* a price row names no stock: perhaps of one that seems unsold */
    bool rack_lost;                 /* a row of the rack has mistakes: perhaps the one that a measured board names */
    bool grades_known, stock_known; /* their files could be read; else no name is held against them */
} shop_reader;

/* ---- one reader a file ---- */

bool shop_read_settings(shop_reader *reader, const char *path); /* false when there is no file */
void shop_read_grades(shop_reader *reader, const char *path);
void shop_read_operations(shop_reader *reader, const char *path);
void shop_read_stock(shop_reader *reader, const char *path);
void shop_read_prices(shop_reader *reader, const char *path);
void shop_read_rack(shop_reader *reader, const char *path);
void shop_read_measured(shop_reader *reader, const char *path);

/* The stock of this id as stock.csv has it, whatever the shop takes instead. */
const sb_stock *shop_stock_itself(const sb_shop *shop, const char *id);

/* An error when a rack piece is worth more than the same costs new, or less than a leftover of its size is
 * credited: a plan could then earn money by buying boards, or by cutting a bit off. */
void shop_check_worth(sb_run *run, const sb_shop *shop, sb_place at, const sb_rack_item *item);

/* ---- words ---- */

bool shop_kind_find(const char *word, sb_stock_kind *out);
bool shop_driver_find(const char *word, sb_driver *out);
bool shop_driver_planned(sb_driver driver); /* counted from the cutting plan */
void shop_unknown_kind(sb_run *run, sb_place at, const char *word);
void shop_unknown_driver(sb_run *run, sb_place at, const char *word);

/* ---- prices ---- */

bool shop_per_fits(sb_per per, sb_stock_kind kind);
const char *shop_per_words(sb_run *run, sb_stock_kind kind); /* "each, m, ft": what a kind is sold by */
void shop_unknown_per(sb_run *run, sb_place at, const char *word, sb_stock_kind kind);
/* `pack`: what a pack holds, unrounded: a gallon at so much a gallon costs just that. */
sb_cost shop_offer_each(const sb_stock *stock, const sb_offer *offer, sb_ratio pack, int digits);

/* ---- rows ---- */

typedef struct shop_row {
    sb_run *run;
    const sb_csv *csv;
    const sb_column *columns;
    size_t index;
    size_t errors; /* told before this row */
} shop_row;

/* No error was told since the row began. */
bool shop_sound(shop_row row);

/* Reads a CSV file and hands over its rows but the empty ones. False when none was read, for there is no file
 * or its header is faulty: what rows would tell then follows from that. */
typedef void shop_row_read(shop_reader *reader, shop_row row);
bool shop_each_row(shop_reader *reader, const char *path, const sb_column *columns, size_t count,
                   shop_row_read *read);

/* ---- the cells of one row: what cannot be read, or is empty, leaves `out` as it was ---- */

typedef enum shop_demand {
    SHOP_OPTIONAL,
    SHOP_NEEDED
} shop_demand;

const char *shop_text(shop_row row, size_t column);
sb_place shop_at(shop_row row, size_t column); /* the cell, or the row when it has no such cell */
bool shop_given(shop_row row, size_t column);
bool shop_need(shop_row row, size_t column);                    /* false and an error when it is empty */
void shop_refuse(shop_row row, size_t column, const char *why); /* an error when it is not */
bool shop_id(shop_row row, size_t column, const char **out);    /* needed, and fit to be named */
void shop_length(shop_row row, size_t column, shop_demand demand, sb_length *out); /* above zero */
void shop_count(shop_row row, size_t column, int64_t least, int64_t *out);
void shop_yes(shop_row row, size_t column, bool *out);
/* An amount of a stock in the unit of its kind: 200, 2.5 l, 1 kg, 50 m. */
void shop_exact_amount(shop_row row, size_t column, const sb_stock *stock, sb_ratio *out);
void shop_amount(shop_row row, size_t column, const sb_stock *stock, int64_t *out); /* rounded down */
void shop_coverage(shop_row row, size_t column, sb_area *out); /* needed: 12 m2/l, 400 ft2/gal */
void shop_spread(shop_row row, size_t column, sb_mass *out);   /* needed: 180 g/m2, 40 lb/1000 ft2 */

/* Tells that `what` stands twice, and where it stood first. */
void shop_twice(sb_run *run, sb_place at, const char *what, const char *name, sb_place first);

/* For messages: a kerf of 2.8 mm is not "about 3 mm", whatever the shop's step. */
const char *shop_exactly(sb_run *run, sb_length length, const sb_style *style);

#endif
