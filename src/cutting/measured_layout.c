/* The order of a load on a board with faults. */
#include "cutting/measured.h"
#include "cutting/measuring.h"

typedef struct laying {
    const sb_bench *bench;
    const sb_offered *on;
    const sb_lot *lots;
    size_t count;
    sb_measuring *m;
} laying;

static const sb_kind *kind_of(const laying *l, size_t lot) {
    return &l->bench->kinds.items[l->lots[lot].kind];
}

/* ---- one part behind another --------------------------------------------------------------------- */

/* The sub-load with this part behind it; false when it does not fit. */
static bool put(const laying *l, const sb_subload *before, size_t lot, size_t turn, sb_subload *out) {
    const sb_kind *kind = kind_of(l, lot);
    size_t front = kind->turns[turn].front;
    int64_t close = 0, apart = l->bench->endings.items[front].kerf, cuts = 0, cuts_apart = 1;
    if (before->parts > 0) {
        close = before->end + sb_junction(l->bench, before->ending, front, &cuts);
        apart += before->end + l->bench->endings.items[before->ending].kerf;
        cuts_apart = 2;
    }
    int64_t at = sb_first_place(l->on, kind->avoids, kind->length, close, apart);
    *out = (sb_subload){at + kind->length,
                        before->cuts + (at == close ? cuts : cuts_apart),
                        before->parts + 1,
                        at - close,
                        lot,
                        turn,
                        kind->turns[turn].rear};
    return out->end <= l->on->room;
}

static bool is_better(const sb_subload *one, const sb_subload *other) {
    return other->parts == 0 || one->end < other->end || (one->end == other->end && one->cuts < other->cuts);
}

/* ---- all sub-loads ------------------------------------------------------------------------------- */

size_t sb_number_subloads(sb_measuring *m, const sb_lot *lots, size_t count) {
    size_t all = 1;
    for (size_t i = 0; i < count; i++) {
        m->stride[i] = all;
        if ((size_t)lots[i].count >= SB_SUBLOADS / all)
            return 0;
        all *= (size_t)lots[i].count + 1;
    }
    return all;
}

static void extend(const laying *l, size_t index) {
    const sb_subload *from = &l->m->subloads[index];
    for (size_t lot = 0; lot < l->count; lot++) {
        int64_t has = (int64_t)(index / l->m->stride[lot]) % (l->lots[lot].count + 1);
        sb_subload next, *known = &l->m->subloads[index + l->m->stride[lot]];
        if (has == l->lots[lot].count)
            continue;
        for (size_t turn = 0; turn < kind_of(l, lot)->turn_count; turn++)
            if (put(l, from, lot, turn, &next) && is_better(&next, known))
                *known = next;
    }
}

static void lay(sb_layout *layout, const laying *l, const sb_subload *part, size_t index) {
    layout->parts.items[index] =
        (sb_lying){l->lots[part->lot].kind, part->turn, part->end - kind_of(l, part->lot)->length};
}

static void begin(sb_layout *layout, const laying *l, const sb_subload *whole) {
    layout->parts.count = 0;
    for (size_t i = 0; i < whole->parts; i++)
        SB_PUSH(l->bench->run->pool, layout->parts, ((sb_lying){0}));
    layout->used = whole->end;
    layout->cuts = whole->cuts;
    layout->last = whole->ending;
}

static bool lay_by_subloads(const laying *l, size_t all, sb_layout *layout) {
    for (size_t i = 0; i < all; i++)
        l->m->subloads[i].parts = 0;
    for (size_t i = 0; i < all; i++)
        if (i == 0 || l->m->subloads[i].parts > 0)
            extend(l, i);
    l->bench->work->left -= (int64_t)(all * l->count / 8);
    size_t index = all - 1;
    if (l->m->subloads[index].parts == 0)
        return false;
    begin(layout, l, &l->m->subloads[index]);
    for (size_t part = layout->parts.count; part-- > 0; index -= l->m->stride[l->m->subloads[index].lot])
        lay(layout, l, &l->m->subloads[index], part);
    return true;
}

/* ---- part by part -------------------------------------------------------------------------------- */

static bool next_part(const laying *l, const sb_subload *before, sb_subload *best) {
    sb_subload next;
    best->parts = 0;
    for (size_t lot = 0; lot < l->count; lot++)
        for (size_t turn = 0; l->m->open[lot] > 0 && turn < kind_of(l, lot)->turn_count; turn++)
            if (put(l, before, lot, turn, &next) &&
                (best->parts == 0 || next.gap < best->gap ||
                 (next.gap == best->gap && kind_of(l, lot)->avoids > kind_of(l, best->lot)->avoids)))
                *best = next;
    return best->parts > 0;
}

static bool lay_part_by_part(const laying *l, sb_layout *layout) {
    sb_subload last = {0}, next = {0};
    size_t parts = 0;
    for (size_t i = 0; i < l->count; i++) {
        l->m->open[i] = l->lots[i].count;
        parts += (size_t)l->lots[i].count;
    }
    layout->parts.count = 0;
    l->bench->work->left -= (int64_t)(parts * l->count / 4);
    for (; last.parts < parts; last = next) {
        if (!next_part(l, &last, &next))
            return false;
        SB_PUSH(l->bench->run->pool, layout->parts, ((sb_lying){0}));
        lay(layout, l, &next, last.parts);
        l->m->open[next.lot]--;
    }
    layout->used = last.end;
    layout->cuts = last.cuts;
    layout->last = last.ending;
    return true;
}

/* ---- the load ------------------------------------------------------------------------------------ */

sb_measuring *sb_measuring_new(const sb_bench *bench) {
    sb_pool *pool = bench->run->pool;
    sb_measuring *m = SB_NEW(pool, sb_measuring);
    m->subloads = SB_NEW_ARRAY(pool, sb_subload, SB_SUBLOADS);
    m->stride = SB_NEW_ARRAY(pool, size_t, bench->kinds.count);
    m->open = SB_NEW_ARRAY(pool, int64_t, bench->kinds.count);
    m->lots = SB_NEW_ARRAY(pool, sb_lot, bench->kinds.count);
    m->ends = SB_NEW_ARRAY(pool, int64_t, SB_SUBLOADS);
    m->limits = SB_NEW_ARRAY(pool, int64_t, bench->kinds.count);
    m->values = SB_NEW_ARRAY(pool, double, bench->kinds.count);
    return m;
}

/* A load lies the same way in whatever order its lots are told. */
static void sort_lots(sb_measuring *m, const sb_lot *lots, size_t count) {
    for (size_t i = 0; i < count; i++) {
        size_t at = i;
        for (; at > 0 && m->lots[at - 1].kind > lots[i].kind; at--)
            m->lots[at] = m->lots[at - 1];
        m->lots[at] = lots[i];
    }
}

const sb_layout *sb_measured_layout(const sb_bench *bench, size_t board, const sb_lot *lots, size_t count) {
    const sb_offered *on = &bench->boards.items[board];
    laying l = {bench, on, bench->scratch->measuring->lots, count, bench->scratch->measuring};
    sb_layout *found = &bench->scratch->found;
    for (size_t i = 0; i < count; i++)
        if (lots[i].count > on->most[lots[i].kind])
            return NULL;
    sort_lots(l.m, lots, count);
    size_t all = sb_number_subloads(l.m, l.lots, l.count);
    bool laid = all > 0 ? lay_by_subloads(&l, all, found) : lay_part_by_part(&l, found);
    return laid ? found : NULL;
}
