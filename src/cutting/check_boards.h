/* cutting/check_boards.h -- one board under the checker's eyes, for its two files. */
#ifndef CUTTING_CHECK_BOARDS_H
#define CUTTING_CHECK_BOARDS_H

#include "cutting/check.h"

typedef struct sb_boarding {
    sb_checking *c;
    size_t index;
    const sb_board_plan *board;
    const sb_supply *supply;
    const sb_cut_stock *stock;
    bool measured; /* something bad is told of it */
    int64_t cuts, ripped;
    size_t wasted;  /* of what is cut away, as many as are accounted for */
    int64_t offcut; /* that much of it */
} sb_boarding;

static inline void refuse(sb_boarding *b, const char *why) {
    sb_refuse(b->c, "board", b->index, why);
}

static inline const sb_need *need_of(const sb_boarding *b, size_t part) {
    return &b->c->plan->problem->needs.items[b->board->parts.items[part].need];
}

static inline const sb_cut_rules *rules_of(const sb_boarding *b) {
    return &b->c->plan->problem->rules;
}

/* ---- check_measured.c ---------------------------------------------------------------------------- */

/* No part lies over what it keeps off; all that is cut away has been accounted for. */
void sb_check_stretches(sb_boarding *b);
/* The part stands behind a gap that begins at `from`: at `close` it would lie over something bad. `kerf`: of its front. */
void sb_check_skip(sb_boarding *b, size_t part, int64_t close, int64_t from, int64_t kerf);
/* Behind the last cut, at `from`; `rest`: behind the last part. */
void sb_check_measured_rest(sb_boarding *b, int64_t from, int64_t rest);

#endif
