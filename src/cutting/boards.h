/* cutting/boards.h -- one stock of boards, as the planner sees it.
 *
 * A bench holds the kinds of parts to cut (needs alike in length, width and ends are one kind; a ripped kind
 * counts sections) and the boards on offer. A load is what one board carries: so many of each kind. A cutting
 * is a list of loads that together make what is wanted.
 *
 *   used(load)  = parts and the kerfs between them, after the best known order               [nm]
 *   rest        = room - used >= 0, room = L - a - b                                           [nm]
 *   cost(load)  = fixed + change * settings + cut * cuts - value of the leftover             [thousandths]
 *   fixed       = price + board charge
 *
 * For the bound every kind has a least take q, and every board a capacity C, both in half nanometres, such
 * that sum of q over the parts of any load that fits is at most C (see sb_bench_make).
 */
#ifndef CUTTING_BOARDS_H
#define CUTTING_BOARDS_H

#include "cutting/work.h"

/* What a part keeps off on a measured board; each keeps off what those before it do. */
typedef enum sb_avoids {
    SB_AVOIDS_NOTHING,
    SB_AVOIDS_SPLITS,
    SB_AVOIDS_ALL
} sb_avoids;

/* One end as it can lie on the board, with what a cut there takes. */
typedef struct sb_ending {
    sb_cut_end end;
    bool square;
    int64_t kerf;    /* along the board, rounded up [nm] */
    int64_t shared;  /* from long point to long point where it meets its opposite; may be negative [nm] */
    size_t opposite; /* the ending it can share a cut with; SIZE_MAX: none lies on this bench */
} sb_ending;

/* One way a part can lie: endings at its front and rear. */
typedef struct sb_turn {
    size_t front, rear;
} sb_turn;

typedef struct sb_kind {
    const sb_need *like; /* the first of the needs cut alike */
    int64_t length;      /* [nm] */
    int64_t strips;      /* side by side in a section, which is cut square; 0: full width */
    int64_t strip_ends;  /* ends off square that each strip gets afterwards; every plan has these cuts */
    int64_t pieces;
    int64_t demand; /* pieces, or sections of `strips` */
    int64_t least;  /* q [half nm] */
    size_t setting; /* stop setting */
    bool alone;     /* no other kind has its stop setting */
    sb_avoids avoids;
    sb_turn turns[4];
    size_t turn_count;
    SB_LIST(size_t) needs; /* into problem.needs */
} sb_kind;

typedef struct sb_fault { /* a bad stretch; parts that avoid as much as `by` or more keep off it */
    int64_t from, to;     /* from the start of the room; may lie beyond its ends [nm] */
    sb_avoids by;
} sb_fault;

typedef struct sb_offered {
    size_t supply;     /* into problem.supplies */
    int64_t room;      /* [nm] */
    int64_t capacity;  /* C [half nm] */
    int64_t fixed;     /* [thousandths] */
    int64_t available; /* INT64_MAX: no limit */
    bool trued;        /* has a front trim */
    bool ragged;       /* has an end trim: the last part is always cut off */
    SB_LIST(sb_fault) faults; /* as they follow each other; none: see cutting/measured.h */
    int64_t *most;            /* by kind: no load has more of it; NULL without faults */
} sb_offered;

static inline bool sb_is_limited(const sb_offered *on) {
    return on->available != INT64_MAX;
}

typedef struct sb_bench {
    sb_run *run;
    const sb_problem *problem;
    size_t stock;
    SB_LIST(sb_kind) kinds;
    SB_LIST(sb_offered) boards;
    SB_LIST(sb_ending) endings; /* the first is square */
    bool all_square;
    bool faulty; /* a board has faults: kinds differ in what they avoid */
    int64_t kerf, rip_kerf, width, thickness; /* [nm] */
    int64_t change, cut;                      /* [thousandths] */
    int64_t useful;                           /* least leftover worth keeping; 0: none */
    int64_t value;                            /* of a leftover, thousandths a metre */
    int64_t grain;                            /* no two plans differ by less, unless they cost the same */
    int64_t cap_least; /* the most one end can take; twice that is part of every capacity [half nm] */
    struct sb_scratch *scratch; /* room to lay loads out in, used again and again */
    sb_work *work;
} sb_bench;

/* The board on offer from this supply; SIZE_MAX: none, as no part fits on it. */
static inline size_t sb_board_of(const sb_bench *bench, size_t supply) {
    for (size_t s = 0; s < bench->boards.count; s++)
        if (bench->boards.items[s].supply == supply)
            return s;
    return SIZE_MAX;
}

/* All that is wanted; SB_BAD where it leaves the range. */
static inline int64_t sb_bench_pieces(const sb_bench *bench) {
    int64_t pieces = 0;
    for (size_t i = 0; i < bench->kinds.count; i++)
        pieces = sb_add(pieces, bench->kinds.items[i].demand);
    return pieces;
}

typedef struct sb_lot { /* so many of one kind */
    size_t kind;
    int64_t count;
} sb_lot;

typedef struct sb_load {
    size_t board; /* into bench.boards */
    int64_t count;
    size_t first, lots; /* into cutting.lots */
    int64_t cost;       /* of one */
} sb_load;

typedef struct sb_cutting {
    SB_LIST(sb_load) loads;
    SB_LIST(sb_lot) lots;
    int64_t missing; /* length of what could not be placed [half nm] */
    int64_t cost;
} sb_cutting;

/* Where the parts of a load lie. */
typedef struct sb_lying {
    size_t kind, turn;
    int64_t at; /* from the start of the room [nm] */
} sb_lying;
typedef struct sb_layout {
    SB_LIST(sb_lying) parts;
    int64_t used, cuts;
    size_t last; /* ending at the rear */
} sb_layout;

/* What comes of a load on a board. */
typedef struct sb_outcome {
    bool fits;
    int64_t rest, left;     /* left: rest less the last kerf, not below 0 [nm] */
    int64_t cuts, settings; /* cuts: without the ends of strips */
    int64_t leftover;       /* value [thousandths] */
    int64_t cost;
} sb_outcome;

/* The same part, turned or rolled over. */
bool sb_need_same_shape(const sb_need *a, const sb_need *b);
/* The way a part lies whose ends show so: its `turned` and `rolled` are set, with the least handling that gives it. */
void sb_need_lies(const sb_need *need, sb_placed *part);
/* NULL when the stock is wanted by nobody. Needs that fit no board are told and put on `short_of`. */
sb_bench *sb_bench_make(sb_run *run, sb_plan *plan, size_t stock, sb_work *work);

/* A load found for one board. */
typedef struct sb_pick {
    size_t board;
    double ratio; /* worth for cost; below 0: nothing fits */
    int64_t cost;
    SB_LIST(sb_lot) lots;
} sb_pick;

/* What a bench works in; `open` holds a number for every kind. */
struct sb_scratch {
    sb_layout found, tried;
    int64_t *open;
    struct sb_knapsack *knapsack;
    struct sb_worth *worth;
    sb_pick picks[2];
    struct sb_measuring *measuring; /* NULL: no board has faults */
};

bool sb_load_is_square(const sb_bench *bench, const sb_lot *lots, size_t count);
/* The best order found for this board, in bench->scratch->found until the next call. */
const sb_layout *sb_layout_find(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
/* Without stop settings. */
sb_outcome sb_layout_outcome(const sb_bench *bench, size_t board, const sb_layout *layout);
/* From the rear long point of one part to the front long point of the next; *cuts = saw cuts between them. */
int64_t sb_junction(const sb_bench *bench, size_t rear, size_t front, int64_t *cuts);
sb_outcome sb_load_outcome(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count);
void sb_cutting_clear(sb_cutting *cutting);
void sb_cutting_add(const sb_bench *bench, sb_cutting *cutting, size_t board, int64_t count,
                    const sb_lot *lots, size_t lot_count, int64_t cost);
void sb_cutting_copy(const sb_bench *bench, sb_cutting *to, const sb_cutting *from);
bool sb_cutting_better(const sb_cutting *one, const sb_cutting *other);

/* The search: fills `best`; `bound` is filled with a valid lower bound and its duals. */
void sb_boards_search(sb_bench *bench, sb_cutting *best, sb_bound *bound);
/* Turns a cutting into board plans and shortages. */
void sb_boards_record(sb_bench *bench, const sb_cutting *cutting, sb_plan *plan);

#endif
