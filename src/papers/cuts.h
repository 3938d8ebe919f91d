/* papers/cuts.h -- the shop's cut sheet, made by several files: what to pull, stops, boards, sheets, the rest. */
#ifndef SAWBILL_PAPERS_CUTS_H
#define SAWBILL_PAPERS_CUTS_H

#include "sawbill/papers.h"

typedef struct cuts_paper {
    sb_run *run;
    sb_document *document;
    const sb_plan *plan;
    const sb_problem *problem;
    const sb_cutlist *cutlist;   /* NULL: a bare list */
    const sb_settings *settings; /* NULL: a bare list; so are the shop and the takeoff */
    const sb_shop *shop;
    const sb_takeoff *takeoff;
    const sb_style *style;
} cuts_paper;

/* Of a job; a bare list has neither shop nor takeoff. */
cuts_paper cuts_paper_of(sb_run *run, sb_document *document, const sb_shop *shop, const sb_way *way);

/* What a need is called at the saw: the part and its piece, or the bare list's name; and what wood it needs. */
const char *cuts_name(const cuts_paper *p, size_t need);
bool cuts_any_angle(const cuts_paper *p);
const sb_cut_stock *cuts_stock(const cuts_paper *p, size_t need);
const char *cuts_stock_title(const cuts_paper *p, size_t stock);
const char *cuts_number(const cuts_paper *p, int64_t first, int64_t count); /* "3" or "3 to 6" */
const char *cuts_length(const cuts_paper *p, sb_length length);
/* To the nearest step of the tape: faces and fences of sheets. */
sb_length cuts_mark(const cuts_paper *p, sb_length position);
/* "2440 x 1220 mm", length first */
const char *cuts_face(const cuts_paper *p, sb_length length, sb_length width); /* to the tape */
const char *cuts_kept(const cuts_paper *p, sb_rect left); /* a leftover's, to the step below: what is there */
const char *cuts_size(const cuts_paper *p, const sb_supply *supply); /* as it is sold */

/* "square", "mitre 30° on the scale, 60° on the piece" */
const char *cuts_end(sb_run *run, sb_cut_end end, const sb_style *style);
/* Both ends of a part in one phrase, and which way their long points lie. */
const char *cuts_ends(sb_run *run, sb_cut_end end1, sb_cut_end end2, const sb_style *style);
/* The same as a part lies on its board, the end at the front first: "both 45° (marks: far edge)", "square, then 10°
 * (mark: near edge)". */
const char *cuts_lying_ends(sb_run *run, sb_cut_end front, sb_cut_end rear, const sb_style *style);
/* "45°", "tilt 30°", "45° and tilt 30°": of an end off square */
const char *cuts_setting(sb_run *run, sb_cut_end end, const sb_style *style);
bool cuts_end_square(sb_cut_end end);
/* What is done to the strips of an angled part once they are ripped: ", then mitre each strip"; "" where all is square. */
const char *cuts_after_rip(const sb_need *need);
/* "turned end for end", "rolled over"; "" as it is. */
const char *cuts_turned(bool turned, bool rolled);
/* "long edge 1400, short edge 1210 mm", "each edge 863.5 mm, from long point to short point"; "" where all is square or the
 * section was not told. In cuts_edges.c. */
const char *cuts_edge_words(const cuts_paper *p, const sb_need *need);

/* ---- cuts_limits.c ---- */

/* What to do where the saw does not go that far, or where a piece so wide (0: not told) is wider than it cuts; "" where it does. */
const char *cuts_reach(sb_run *run, const sb_saw *saw, sb_cut_end end, sb_length width,
                       const sb_style *style);
/* A line for each kind of cut of a stock that wants more than the saw set to its angle. */
void cuts_stock_limits(const cuts_paper *p, sb_sheet *sheet, size_t stock);
/* The same of a part whose ends are cut later; "". */
const char *cuts_later_limits(const cuts_paper *p, const sb_part *part);

/* ---- cuts_spares.c ---- */

bool cuts_is_spare(const cuts_paper *p, size_t need);
const char *cuts_spare_name(const cuts_paper *p, size_t spare); /* "spare for seat slat or shorter" */
/* The parts it can stand in for, where they are several: "seat slat / back slat", "any part of this stock". */
const char *cuts_spare_for(const cuts_paper *p, size_t spare);

/* ---- cuts_marks.c ---- */

/* Marks of one board from its trued end, by part; strips of one section have the same. */
typedef struct cuts_marks {
    sb_length *from, *to;
    sb_length step; /* the marks are on this one, the shop's or a finer one */
    bool fit;       /* false: the board has no room for marks, only for stops */
    sb_length rest; /* left over or offcut */
    sb_length *
        cut; /* by part: where waste before it is cut off; below nothing: there is none, or it has an angled front */
} cuts_marks;
/* "true: 10 mm off; no room to spare, finer marks" */
const char *cuts_truing(const cuts_paper *p, const sb_supply *supply, const cuts_marks *marks);
cuts_marks cuts_marks_of(const cuts_paper *p, const sb_board_plan *board);
bool cuts_is_strip(const cuts_paper *p, size_t need); /* ripped out of a wider board */
bool cuts_beside(const cuts_paper *p, const sb_board_plan *board,
                 size_t part); /* a section's second strip and on */
/* One cut is both the rear of the part before and this one's front; true for the first. */
bool cuts_shares(const cuts_paper *p, const sb_board_plan *board, size_t part);
/* Width of what stays beside the last strip of a section, on the tape's step. */
sb_length cuts_strip_left(const cuts_paper *p, const sb_board_plan *board, size_t part);
bool cuts_strip_kept(const cuts_paper *p, const sb_board_plan *board, size_t part); /* else offcut */

/* A mark for the page Boards; what is finer than the tape is written out. In cuts_boards.c. */
sb_cell cuts_mark_cell(const cuts_paper *p, sb_length mark, sb_length step);

/* ---- cuts_measured.c: boards whose knots and splits are known ---- */

/* What is cut away just before a part; NULL: nothing. */
const sb_waste *cuts_waste_before(const cuts_paper *p, const sb_board_plan *board, size_t part);
/* No part lies by its marks over what it keeps off. */
bool cuts_marks_keep_off(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks);
/* What is bad of the board: "knot from 900 to 940 mm, split from 2330 mm on"; "" where nothing is. */
const char *cuts_bad_words(const cuts_paper *p, const sb_board_plan *board);
/* Behind the last part: what is cut away before the leftover, the leftover, and what is cut off behind it. */
typedef struct cuts_rest {
    sb_length from; /* behind the last cut */
    sb_length before,
        behind;       /* marks of the cuts at the leftover's ends; below nothing: it has no such cut */
    sb_length length; /* of what is left over or falls off, on the tape's step */
} cuts_rest;
cuts_rest cuts_rest_of(const cuts_paper *p, const sb_board_plan *board, const cuts_marks *marks);
/* The waste before a part, where there is some. */
void cuts_waste_row(const cuts_paper *p, sb_table *table, const sb_board_plan *board, const cuts_marks *marks,
                    size_t part, const char *boards);
void cuts_rest_rows(const cuts_paper *p, sb_table *table, const sb_board_plan *board, const cuts_marks *marks,
                    const char *boards);
bool cuts_any_waste(const cuts_paper *p);

void cuts_pull(cuts_paper *p, sb_sheet *sheet);
void cuts_stops(cuts_paper *p, sb_sheet *sheet);
void cuts_boards(cuts_paper *p, sb_sheet *sheet);
void cuts_sheets(cuts_paper *p, sb_sheet *sheet);
void cuts_keep(cuts_paper *p, sb_sheet *sheet);
/* What is done to a part off the saw, in one short phrase for its label: "glue up; cut the ends" */
const char *cuts_next_words(const cuts_paper *p, const sb_part *part);
/* Shorter than what the shop holds by hand; never on a bare list. */
bool cuts_is_short(const cuts_paper *p, sb_length longest);

/* ---- cuts_rip.c ---- */

extern const char cuts_short_rip[]; /* what is said of short pieces at a rip fence */

bool cuts_any_rip(const cuts_paper *p);
void cuts_rip(const cuts_paper *p, sb_sheet *sheet);

void cuts_after(cuts_paper *p, sb_sheet *sheet);

#endif
