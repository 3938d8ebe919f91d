/* The exact cost of a load, and lists of loads. */
#include "cutting/measured.h"

/* ---- one load ------------------------------------------------------------------------------------ */

int64_t sb_load_settings(const sb_bench *bench, const sb_lot *lots, size_t count) {
    int64_t settings = 0;
    for (size_t i = 0; i < count; i++) {
        const sb_kind *kind = &bench->kinds.items[lots[i].kind];
        bool seen = false;
        for (size_t j = 0; j < i && !kind->alone && !seen; j++)
            seen = bench->kinds.items[lots[j].kind].setting == kind->setting;
        settings += !seen;
    }
    return settings;
}

/* What the parts and the cuts between them come to, without the ends of the board. */
typedef struct row {
    int64_t used, cuts, last_kerf;
    bool front_square, rear_square;
} row;

static row row_of_square(const sb_bench *bench, const sb_lot *lots, size_t count) {
    row r = {-bench->kerf, -1, bench->kerf, true, true};
    for (size_t i = 0; i < count; i++) {
        r.used += lots[i].count * (bench->kinds.items[lots[i].kind].length + bench->kerf);
        r.cuts += lots[i].count;
    }
    return r;
}

static row row_of(const sb_bench *bench, const sb_layout *layout) {
    const sb_kind *first = &bench->kinds.items[layout->parts.items[0].kind];
    size_t front = first->turns[layout->parts.items[0].turn].front;
    row r = {layout->used, layout->cuts, bench->endings.items[layout->last].kerf,
             bench->endings.items[front].square, bench->endings.items[layout->last].square};
    return r;
}

/* But for the stop settings, which are the same however the parts lie. */
static sb_outcome outcome_of(const sb_bench *bench, size_t board, row r) {
    const sb_offered *on = &bench->boards.items[board];
    sb_outcome out = {.rest = on->room - r.used};
    out.fits = out.rest >= 0;
    out.left = out.rest > r.last_kerf ? out.rest - r.last_kerf : 0;
    out.cuts = r.cuts + (on->trued || !r.front_square) + (on->ragged || out.rest > 0 || !r.rear_square);
    if (bench->useful > 0 && out.left >= bench->useful)
        out.leftover = sb_mul_div_down(out.left, bench->value, 1000 * (int64_t)SB_NM_PER_MM);
    out.cost = on->fixed + bench->cut * out.cuts - out.leftover;
    return out;
}

sb_outcome sb_layout_outcome(const sb_bench *bench, size_t board, const sb_layout *layout) {
    return outcome_of(bench, board, row_of(bench, layout));
}

sb_outcome sb_load_outcome(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    return bench->boards.items[board].faults.count > 0 ? sb_measured_outcome(bench, board, lots, count)
                                                       : sb_faultless_outcome(bench, board, lots, count);
}

sb_outcome sb_faultless_outcome(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    sb_outcome out = sb_load_is_square(bench, lots, count)
                         ? outcome_of(bench, board, row_of_square(bench, lots, count))
                         : sb_layout_outcome(bench, board, sb_layout_find(bench, board, lots, count));
    out.settings = sb_load_settings(bench, lots, count);
    out.cost += bench->change * out.settings;
    return out;
}

/* ---- lists of loads ------------------------------------------------------------------------------ */

void sb_cutting_clear(sb_cutting *cutting) {
    cutting->loads.count = cutting->lots.count = 0;
    cutting->missing = cutting->cost = 0;
}

/* Kinds in the order of the bench: longest first. */
static void sort_lots(sb_lot *lots, size_t count) {
    for (size_t i = 1; i < count; i++)
        for (size_t j = i; j > 0 && lots[j].kind < lots[j - 1].kind; j--) {
            sb_lot old = lots[j];
            lots[j] = lots[j - 1];
            lots[j - 1] = old;
        }
}

void sb_cutting_add(const sb_bench *bench, sb_cutting *cutting, size_t board, int64_t count,
                    const sb_lot *lots, size_t lot_count, int64_t cost) {
    sb_load load = {board, count, cutting->lots.count, lot_count, cost};
    for (size_t i = 0; i < lot_count; i++)
        SB_PUSH(bench->run->pool, cutting->lots, lots[i]);
    sort_lots(&cutting->lots.items[load.first], lot_count);
    SB_PUSH(bench->run->pool, cutting->loads, load);
    cutting->cost += count * cost;
}

void sb_cutting_copy(const sb_bench *bench, sb_cutting *to, const sb_cutting *from) {
    sb_cutting_clear(to);
    for (size_t i = 0; i < from->loads.count; i++) {
        const sb_load *load = &from->loads.items[i];
        sb_cutting_add(bench, to, load->board, load->count, &from->lots.items[load->first], load->lots,
                       load->cost);
    }
    to->missing = from->missing;
}

bool sb_cutting_better(const sb_cutting *one, const sb_cutting *other) {
    return one->missing < other->missing || (one->missing == other->missing && one->cost < other->cost);
}
