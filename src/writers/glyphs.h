/* Characters: which may be shown, how much room they take, where a text may be broken into lines. */
#ifndef WRITERS_GLYPHS_H
#define WRITERS_GLYPHS_H

#include "sawbill/text.h"

/* UTF-8 without control characters: any line end becomes \n, other controls a blank (so that no text
 * can steer a terminal or break XML), what is not UTF-8 the replacement character. */
const char *clean_text(sb_run *run, const char *text);

/* The room that a character takes. */
typedef double glyph_measure(uint32_t code);
double glyph_columns(uint32_t code); /* on a terminal: 0, 1 or 2 */
double glyph_print(uint32_t code);   /* on paper, in digits that a column's width counts in */

double text_room(const char *text, size_t size, glyph_measure *measure);

typedef struct text_line {
    const char *start;
    size_t size; /* [bytes] */
} text_line;
typedef SB_LIST(text_line) text_lines;

/* A blank inside a number in pieces, between a number and its unit, or beside the sign for times: "26 1/2", "60 mm", "20 x 95",
 * "4 x leg". Lines end there only where there is no other blank. */
bool blank_is_bound(const char *text, const char *at);
/* Lines of clean text, none taking more than `limit`: broken at \n, else at blanks, else within a word. */
text_lines wrap_text(sb_run *run, const char *text, double limit, glyph_measure *measure);
/* The widest word. */
double word_room(const char *text, glyph_measure *measure);
/* The widest line when nothing is wrapped. */
double line_room(const char *text, glyph_measure *measure);

#endif
