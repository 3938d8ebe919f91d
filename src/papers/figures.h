/* papers/figures.h -- figures and words that several money papers show alike. */
#ifndef SAWBILL_PAPERS_FIGURES_H
#define SAWBILL_PAPERS_FIGURES_H

#include "sawbill/papers.h"

/* Metres or feet, square metres or square feet, kilograms or pounds: by the style, with the word for a
 * heading. */
const char *long_unit(const sb_style *style);
const char *face_unit(const sb_style *style);
const char *weight_unit(const sb_style *style);
sb_cell long_cell(const sb_style *style, sb_length length);
sb_cell face_cell(const sb_style *style, sb_area area);
sb_cell weight_cell(const sb_style *style, sb_mass mass);

/* "12.50 EUR" */
const char *money_words(sb_run *run, const sb_shop *shop, sb_money amount);
/* "12.50 EUR", "12.825 EUR": with the decimals it has */
const char *exact_cost_words(sb_run *run, const sb_shop *shop, sb_cost cost);
/* "2.5": amount / 10^digits, at least `least` decimals, more where they say something */
const char *number_words(sb_run *run, const sb_shop *shop, int64_t amount, int digits, int least);
/* "12.5 %", "9.975 %": as it is told, with the decimals it has */
const char *share_words(sb_run *run, const sb_shop *shop, sb_share share);
/* "4.76 %": one that is computed, to two decimals at most */
const char *computed_share_words(sb_run *run, const sb_shop *shop, sb_share share);
/* "3.25 h" */
const char *hours_words(sb_run *run, const sb_shop *shop, sb_duration time);
/* "3.2542 h": near enough to be multiplied by hand */
const char *exact_hours_words(sb_run *run, const sb_shop *shop, sb_duration time);
/* "proved least", "at most 0.4 % above least" */
const char *plan_words(sb_run *run, const sb_style *style, const sb_plan *plan);
/* What work is for: what was said, else the kinds of piece that have it; "" where all have, or the batch has. */
const char *work_for_words(sb_run *run, const sb_takeoff *takeoff, const sb_labour_line *line);
/* The option's title, its name, or "the job". */
const char *way_words(const sb_way *way);

#endif
