/* What parts keep off on a measured board, and what is cut away for it. */
#include "cutting/check_boards.h"

static bool keeps_off(const sb_need *need, const sb_stretch *bad) {
    return need->clear || need->spare || (need->sound && bad->split);
}

static bool lies_over(const sb_need *need, int64_t at, const sb_stretch *bad) {
    return at < bad->to.nm && bad->from.nm < at + need->length.nm;
}

void sb_check_stretches(sb_boarding *b) {
    for (size_t i = 0; i < b->board->parts.count; i++)
        for (size_t s = 0; s < b->supply->bad.count; s++)
            if (keeps_off(need_of(b, i), &b->supply->bad.items[s]) &&
                lies_over(need_of(b, i), b->board->parts.items[i].at.nm, &b->supply->bad.items[s]))
                refuse(b, b->supply->bad.items[s].split ? "a part lies over a split"
                                                        : "a part lies over a knot");
    if (b->wasted != b->board->waste.count)
        refuse(b, "more is cut away than its parts ask for");
}

static void check_waste(sb_boarding *b, int64_t from, int64_t to) {
    const sb_waste *told = b->wasted < b->board->waste.count ? &b->board->waste.items[b->wasted] : NULL;
    to = to > from ? to : from;
    if (!told || told->from.nm != from || told->to.nm != to)
        refuse(b, "what is cut away is told wrong");
    b->wasted++;
    b->offcut += to - from;
}

/* The part would lie over something bad at `close`; it stands where that ends, or a front cut behind `from`. */
void sb_check_skip(sb_boarding *b, size_t part, int64_t close, int64_t from, int64_t kerf) {
    const sb_need *need = need_of(b, part);
    int64_t at = b->board->parts.items[part].at.nm, apart = from + kerf;
    bool asked = false, ends = false;
    for (size_t s = 0; s < b->supply->bad.count; s++) {
        const sb_stretch *bad = &b->supply->bad.items[s];
        asked = asked || (keeps_off(need, bad) && lies_over(need, close, bad));
        ends = ends || (keeps_off(need, bad) && (bad->to.nm == at || (at == apart && bad->to.nm < at)));
    }
    if (!asked || !ends || at < apart)
        refuse(b, "a part stands behind a gap that nothing bad asks for");
    check_waste(b, from, at - kerf);
}

/* True when a split lies within. */
static bool is_split_in(const sb_boarding *b, int64_t from, int64_t to) {
    for (size_t s = 0; s < b->supply->bad.count; s++)
        if (b->supply->bad.items[s].split && b->supply->bad.items[s].from.nm < to &&
            b->supply->bad.items[s].to.nm > from)
            return true;
    return false;
}

/* The longest piece without a split that begins at `at` and ends at a split or at `end`. */
static int64_t sound_from(const sb_boarding *b, int64_t at, int64_t end) {
    for (size_t s = 0; s < b->supply->bad.count; s++) {
        int64_t from = b->supply->bad.items[s].from.nm;
        if (b->supply->bad.items[s].split && b->supply->bad.items[s].to.nm > at && from < end)
            end = from;
    }
    return end;
}

/* What is left from `from` on: one piece without a split is kept, if it is useful, and all else falls off. */
void sb_check_measured_rest(sb_boarding *b, int64_t from, int64_t rest) {
    int64_t end = b->supply->length.nm - b->supply->trim2.nm, kerf = rules_of(b)->kerf.nm;
    int64_t at = from, to = sound_from(b, from, end), useful = b->stock->useful_length.nm;
    for (size_t s = 0; s < b->supply->bad.count; s++) {
        int64_t behind = b->supply->bad.items[s].to.nm;
        behind = behind > from + kerf ? behind : from + kerf;
        if (!b->supply->bad.items[s].split || b->supply->bad.items[s].to.nm <= from ||
            is_split_in(b, behind, behind + 1))
            continue;
        if (sound_from(b, behind, end) - behind > to - at)
            at = behind, to = sound_from(b, behind, end);
    }
    if (rest < 0)
        refuse(b, "the parts are longer than the board");
    if (useful > 0 && to - at >= useful) {
        if (at > from)
            b->cuts++, check_waste(b, from, at - kerf);
        if (to < end)
            b->cuts++, check_waste(b, to + kerf, end);
        if (b->board->leftover.nm != to - at || b->board->leftover_at.nm != at)
            refuse(b, "what is left over is miscounted");
    } else {
        b->offcut += from < end ? end - from : 0;
        if (b->board->leftover.nm != 0)
            refuse(b, "leftover and offcut are mixed up");
    }
    if (b->board->offcut.nm != b->offcut)
        refuse(b, "what falls off is miscounted");
}
