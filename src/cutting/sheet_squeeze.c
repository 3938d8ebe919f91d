/* Squeezing. */
#include "cutting/sheet_squeeze.h"

#include "cutting/sheet_dive.h"
#include "cutting/sheet_targets.h"
#include "cutting/strip_sheets.h"

#define OPENED  2    /* sheets at once at most */
#define STRIPS  3    /* taken out of a sheet at most, unless all are, */
#define ALL     20   /* which happens so often in a hundred */
#define WIDTHS  3    /* tried for a strip */
#define SHAKEN  0.05 /* share of a part's worth */
#define NOISE   0.1  /* share by which a strip may look better than it is */
#define HEAT    0.03 /* of a part's worth let pass at first */
#define TARGETS 3    /* the work is enough for so many that fail */
#define AIM     0.35 /* of the gap, with the first target, */
#define LESS    0.6  /* and so much of it after one that failed */
#define LEAST   0.01
#define LIGHT   1.5  /* steps of squeezing in the time of one elsewhere */

typedef struct squeezing {
    sb_sheet_search *s;
    sb_sheet_mix *m;
    sb_work *work;
    sb_strip_sheets q;
    double *worth;  /* by pane: duals */
    double average; /* of these */
    sb_strip tried, best;
} squeezing;

static double draw_share(squeezing *z) {
    return (double)sb_work_dice(z->work, 1001) / 1000;
}

/* ---- filled anew ----------------------------------------------------------------------------------- */

static int64_t free_room(const squeezing *z, const sb_strip_sheet *sheet) {
    int64_t room = sb_strip_sheets_across(&z->q, sheet->offer);
    for (size_t i = 0; i < sheet->count; i++)
        room -= z->q.strips.items[sheet->strips[i]].u + z->q.bench->kerf;
    return room;
}

static bool may_lie(const squeezing *z, const sb_lay *lay, int64_t length) {
    return z->q.room->open[lay->pane] > 0 && lay->v <= length;
}

/* The narrowest part still open; INT64_MAX: there is none. */
static int64_t least_width(const squeezing *z, int64_t length) {
    const struct sb_stripping *room = z->q.room;
    int64_t least = INT64_MAX;
    for (size_t i = 0; i < room->listed.count; i++) {
        const sb_lay *lay = room->listed.items[i];
        if (may_lie(z, lay, length) && lay->u < least)
            least = lay->u;
    }
    return least > z->q.bench->smallest_strip ? least : z->q.bench->smallest_strip;
}

/* As wide as some open part, or as up to three of it side by side; 0: none fits. */
static int64_t draw_width(squeezing *z, int64_t room, int64_t length) {
    const struct sb_stripping *on = z->q.room;
    size_t count = on->lays[on->crosscut].count, start = sb_work_dice(z->work, count);
    int64_t kerf = z->q.bench->kerf, least = z->q.bench->smallest_strip;
    for (size_t i = 0; i < count; i++) {
        const sb_lay *lay = &on->lays[on->crosscut].items[(start + i) % count];
        if (!may_lie(z, lay, length) || lay->u > room)
            continue;
        int64_t u = lay->u;
        for (uint64_t more = sb_work_dice(z->work, 3); more > 0 && u + kerf + lay->u <= room; more--)
            u += z->q.bench->stages > 2 ? kerf + lay->u : 0;
        return u > least ? u : least;
    }
    return 0;
}

/* Fills `tried` with a strip in this room; gives its worth for its width, 0 for none. A last strip answers for all the
 * room it leaves unused. */
static double try_strip(squeezing *z, int64_t u, int64_t room, int64_t length, int64_t least) {
    int64_t kerf = z->q.bench->kerf;
    sb_strip_fill(z->q.room, &z->tried, room - u - kerf < least ? room : u, length);
    if (z->tried.stacks.count == 0)
        return 0;
    z->tried.u = sb_strip_sheets_width(&z->q, &z->tried);
    bool last = room - z->tried.u - kerf < least;
    double share = (double)(last ? room + kerf : z->tried.u + kerf);
    return z->tried.worth / share * (1 + NOISE * draw_share(z));
}

static void put_best(squeezing *z, sb_strip_sheet *sheet) {
    size_t slot = sb_strip_sheets_slot(&z->q);
    sb_strip *to = &z->q.strips.items[slot], old = *to;
    double over = z->q.over;
    *to = z->best;
    z->best = old;
    sb_strip_sheets_count(&z->q, to, -1);
    to->worth = over - z->q.over;
    sheet->strips[sheet->count++] = slot;
}

/* Beside others the first width tried is all the room there is. */
static bool fill_strip(squeezing *z, sb_strip_sheet *sheet) {
    int64_t room = free_room(z, sheet), length = sb_strip_sheets_along(&z->q, sheet->offer);
    int64_t least = least_width(z, length);
    double most = 0;
    if (room < least || sheet->count == SB_ROW)
        return false;
    for (int n = 0; n < WIDTHS; n++) {
        int64_t u = n == 0 && sheet->count > 0 ? room : draw_width(z, room, length);
        double ratio = u > 0 ? try_strip(z, u, room, length, least) : 0;
        if (ratio <= most)
            continue;
        sb_strip old = z->best;
        most = ratio;
        z->best = z->tried;
        z->tried = old;
    }
    if (most > 0)
        put_best(z, sheet);
    return most > 0;
}

/* ---- taken out --------------------------------------------------------------------------------------- */

static double sheet_worth(const squeezing *z, size_t offer) {
    return (double)z->m->worths->upper[offer];
}

/* What the duals make of it, above what is on it. */
static double loss_of_sheet(const squeezing *z, const sb_strip_sheet *sheet) {
    double loss = sheet_worth(z, sheet->offer);
    for (size_t i = 0; i < sheet->count; i++)
        loss -= z->q.strips.items[sheet->strips[i]].worth;
    return loss;
}

static double loss_of_strip(const squeezing *z, const sb_strip_sheet *sheet, size_t at) {
    const sb_strip *strip = &z->q.strips.items[sheet->strips[at]];
    double all = (double)sb_strip_sheets_across(&z->q, sheet->offer);
    return sheet_worth(z, sheet->offer) * (double)strip->u / all - strip->worth;
}

/* Of two drawn the one that loses more. */
static sb_strip_sheet *draw_sheet(squeezing *z) {
    sb_strip_sheet *one = &z->q.sheets.items[sb_work_dice(z->work, z->q.sheets.count)];
    sb_strip_sheet *other = &z->q.sheets.items[sb_work_dice(z->work, z->q.sheets.count)];
    return loss_of_sheet(z, other) > loss_of_sheet(z, one) ? other : one;
}

static void open_sheet(squeezing *z, sb_strip_sheet *sheet) {
    bool all = sb_work_dice(z->work, 100) < ALL;
    for (size_t left = all ? sheet->count : 1 + sb_work_dice(z->work, STRIPS); left > 0 && sheet->count > 0;
         left--) {
        size_t one = sb_work_dice(z->work, sheet->count), other = sb_work_dice(z->work, sheet->count);
        size_t at = loss_of_strip(z, sheet, other) > loss_of_strip(z, sheet, one) ? other : one;
        sb_strip_sheets_count(&z->q, &z->q.strips.items[sheet->strips[at]], 1);
        sheet->strips[at] = sheet->strips[--sheet->count];
    }
}

/* ---- one attempt --------------------------------------------------------------------------------------- */

static bool holds(const sb_strip_sheet *sheet, size_t strip) {
    for (size_t i = 0; i < sheet->count; i++)
        if (sheet->strips[i] == strip)
            return true;
    return false;
}

/* Strips of `gone` that `kept` does not hold are unused from now on; their parts, if `counted`, open. */
static void leave(squeezing *z, const sb_strip_sheet *gone, const sb_strip_sheet *kept, bool counted) {
    for (size_t i = 0; i < gone->count; i++) {
        if (holds(kept, gone->strips[i]))
            continue;
        if (counted)
            sb_strip_sheets_count(&z->q, &z->q.strips.items[gone->strips[i]], 1);
        SB_PUSH(z->q.bench->run->pool, z->q.unused, gone->strips[i]);
    }
}

static void take_back(squeezing *z, sb_strip_sheet *now, const sb_strip_sheet *before) {
    for (size_t i = 0; i < before->count; i++)
        if (!holds(now, before->strips[i]))
            sb_strip_sheets_count(&z->q, &z->q.strips.items[before->strips[i]], -1);
    leave(z, now, before, true);
    *now = *before;
}

static void shake(squeezing *z) {
    for (size_t i = 0; i < z->q.bench->panes.count; i++)
        z->s->f.worth[i] = z->worth[i] * (1 + SHAKEN * (2 * draw_share(z) - 1));
}

/* More left over is let pass up to `slack`. */
static void attempt(squeezing *z, double slack) {
    sb_strip_sheet *opened[OPENED], before[OPENED];
    size_t count = 0;
    double over = z->q.over;
    shake(z);
    for (uint64_t more = 1 + sb_work_dice(z->work, OPENED); more > 0; more--) {
        opened[count] = draw_sheet(z);
        if (count > 0 && opened[count] == opened[0])
            continue;
        before[count] = *opened[count];
        open_sheet(z, opened[count++]);
    }
    sb_strips_list(z->q.room);
    for (size_t n = 0; n < count; n++)
        while (fill_strip(z, opened[n]))
            ;
    bool keep = z->q.over <= over + slack;
    for (size_t n = 0; n < count; n++)
        if (keep)
            leave(z, &before[n], opened[n], false);
        else
            take_back(z, opened[n], &before[n]);
    z->work->left -= 20 + 2 * (int64_t)z->q.bench->panes.count;
}

/* ---- one target after another ---------------------------------------------------------------------------- */

static bool keep_plan(squeezing *z) {
    sb_sheet_search *s = z->s;
    if (!sb_strip_sheets_lay(&z->q, &s->picks[1], &s->tried) || !sb_laying_better(&s->tried, s->best))
        return false;
    sb_laying_copy(s->bench, s->best, &s->tried);
    return true;
}

static bool squeeze_into(squeezing *z, const int64_t *numbers, int64_t work) {
    int64_t end = z->work->left - work;
    sb_strip_sheets_start(&z->q, z->s->best, numbers);
    sb_strips_list(z->q.room);
    shake(z);
    for (size_t n = 0; n < z->q.sheets.count; n++)
        while (fill_strip(z, &z->q.sheets.items[n]))
            ;
    while (!sb_strip_sheets_are_done(&z->q) && z->work->left > end && sb_work_goes_on(z->work)) {
        double left = (double)(z->work->left - end) / (double)work;
        attempt(z, HEAT * z->average * left * draw_share(z));
    }
    return sb_strip_sheets_are_done(&z->q) && keep_plan(z);
}

/* A part of the gap below the best plan. */
static const int64_t *target(squeezing *z, double part) {
    const sb_sheet_search *s = z->s;
    int64_t step = (int64_t)((double)(s->best->cost - s->bound->bound.milli) * part);
    int64_t grain = sb_sheets_grain(s->bench);
    return sb_sheet_target(z->m, s->best->cost - (step > grain ? step : grain));
}

static void set_up(squeezing *z) {
    size_t panes = z->s->bench->panes.count;
    z->worth = SB_NEW_ARRAY(z->s->bench->run->pool, double, panes);
    for (size_t i = 0; i < panes; i++) {
        z->s->f.worth[i] = z->worth[i] = (double)z->m->whole[i] + 1;
        z->average += z->worth[i] / (double)panes;
    }
    z->q.bench = z->s->bench;
    z->q.worth = z->worth;
    z->q.room = sb_strips_start(&z->s->f);
}

void sb_sheets_squeeze(sb_sheet_search *s, sb_sheet_mix *m) {
    squeezing z = {.s = s, .m = m, .work = s->bench->work};
    if (s->best->missing > 0 || !sb_sheet_mix_price(m))
        return;
    set_up(&z);
    z.work->left = (int64_t)((double)z.work->left * LIGHT);
    int64_t each = z.work->left / TARGETS;
    for (double part = AIM; part > LEAST && !sb_sheets_are_least(s) && sb_work_goes_on(z.work);) {
        const int64_t *numbers = target(&z, part);
        if (!numbers || !squeeze_into(&z, numbers, each))
            part *= LESS;
    }
    z.work->left = (int64_t)((double)z.work->left / LIGHT);
}
