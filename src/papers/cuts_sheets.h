/* papers/cuts_sheets.h -- cuts of a sheet by settings of the fence, and the strips that wait between them. */
#ifndef SAWBILL_PAPERS_CUTS_SHEETS_H
#define SAWBILL_PAPERS_CUTS_SHEETS_H

#include "papers/cuts.h"

/* Cuts with one setting of the fence: so many times in each of so many pieces. */
typedef struct fence_setting {
    size_t first; /* into the plan's cuts */
    size_t times, pieces;
} fence_setting;
fence_setting fence_setting_from(const sb_sheet_plan *plan, size_t first);
sb_length fence_of(const sb_sheet_cut *cut);
/* The second of two cuts divides what the first one left. */
bool fence_goes_on(const sb_sheet_cut *before, const sb_sheet_cut *cut);

/* What a cut leaves between the fence and the blade, and beyond; nothing (w or l 0) where that is all blade. */
sb_rect sheet_near(const sb_sheet_cut *cut);
sb_rect sheet_beyond(const sb_sheet_cut *cut, sb_length kerf);

/* Pieces that wait to be divided by a later setting, in the order in which they come about: S1, S2, and so on. */
typedef SB_LIST(sb_rect) sheet_strips;
sheet_strips sheet_strips_of(const cuts_paper *p, const sb_sheet_plan *plan);
size_t sheet_strip_number(const sheet_strips *strips, sb_rect piece); /* from 1; 0: it is none */
/* "S1 to S4", "S1, S3"; "" for none. */
const char *sheet_strips_words(sb_run *run, const size_t *numbers, size_t count);
/* What becomes of the pieces of one setting: "into strips S1 to S4; the rest goes back". */
const char *sheet_result_words(const cuts_paper *p, const sb_sheet_plan *plan, const sheet_strips *strips,
                               fence_setting setting);

#endif
