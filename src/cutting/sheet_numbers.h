/* cutting/sheet_numbers.h -- how many sheets of each size, as a bound.
 *
 *   minimise   sum of c_s n_s                         n_s sheets of offer s, whole, within what is available
 *   such that  sum of z_ks n_s >= sum of y_ki d_i     for every row k, a proof as in sheet_proof.h
 *
 * The cheapest numbers that obey all rows are tried with the mix (sheet_mix.h): where it cannot make everything of so many
 * sheets, its duals give a row that these numbers break. Where it can, their cost is the bound; as far as part sheets
 * and sizes of different prices go, that is the program in whole numbers of sheets, with ways to cut them in parts.
 */
#ifndef CUTTING_SHEET_NUMBERS_H
#define CUTTING_SHEET_NUMBERS_H

#include "cutting/sheet_mix.h"

/* Raises the search's bound. */
void sb_sheet_numbers(sb_sheet_mix *m);

#endif
