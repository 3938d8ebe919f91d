/* papers/draw.h -- what the pictures of the cut sheet share. */
#ifndef SAWBILL_PAPERS_DRAW_H
#define SAWBILL_PAPERS_DRAW_H

#include "papers/cuts.h"

/* Letters for what a drawing names, the same for the same words: A, B .. Z, A2, B2 .. */
typedef struct draw_marks {
    SB_LIST(const char *) words;
} draw_marks;
const char *draw_mark(sb_run *run, draw_marks *marks, const char *words);

/* What the patterns in pictures stand for, and their numbers. */
void draw_legend(const cuts_paper *p, sb_sheet *sheet, const char *numbers);
/* One pattern of boards, over several drawings where it has many parts. `first`: its number. */
void draw_board(const cuts_paper *p, sb_sheet *sheet, const sb_board_plan *board, int64_t first);
void draw_sheet(const cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan, int64_t first,
                const char *title);
/* The saw as it is set for each end off square; nothing where all is square. */
void draw_angles(cuts_paper *p);

#endif
