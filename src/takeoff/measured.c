/* Plans where boards were measured: what is cut from them needs no spare for defects. */
#include "takeoff/inside.h"

#define AGAIN 3 /* plans after the first, at most */

typedef struct planning {
    sb_run *run;
    const sb_shop *shop;
    const sb_takeoff *const *takeoffs;
    size_t count, spares;      /* spares: one for every total */
    sb_length *asked, *listed; /* by takeoff and total: what a plan asks for, what its list has */
} planning;

/* ---- how much of a stock is cut from measured boards --------------------------------------------- */

static bool is_of(const sb_cutlist *list, const sb_need *need, const sb_takeoff *takeoff,
                  const sb_stock *stock) {
    const struct sb_need_source *source = &list->needs.items[need->tag];
    return source->takeoff == takeoff && source->part && source->part->stock == stock;
}

static int64_t length_of_parts(const sb_cutlist *list, const sb_takeoff *takeoff, const sb_stock *stock) {
    int64_t length = 0;
    for (size_t i = 0; i < list->problem.needs.count; i++) {
        const sb_need *need = &list->problem.needs.items[i];
        if (is_of(list, need, takeoff, stock))
            length = sb_add(length, sb_mul(need->length.nm, need->count));
    }
    return length;
}

static int64_t length_measured(const sb_cutlist *list, const sb_plan *plan, const sb_takeoff *takeoff,
                               const sb_stock *stock) {
    int64_t length = 0;
    for (size_t b = 0; b < plan->boards.count; b++) {
        const sb_board_plan *board = &plan->boards.items[b];
        for (size_t i = 0; list->problem.supplies.items[board->supply].measured && i < board->parts.count;
             i++) {
            const sb_need *need = &list->problem.needs.items[board->parts.items[i].need];
            if (is_of(list, need, takeoff, stock))
                length = sb_add(length, sb_mul(need->length.nm, board->count));
        }
    }
    return length;
}

static sb_length spare_asked(const planning *p, const sb_cutlist *list, const sb_plan *plan,
                             const sb_takeoff *takeoff, const sb_stock_total *total) {
    int64_t all = length_of_parts(list, takeoff, total->stock),
            measured = length_measured(list, plan, takeoff, total->stock);
    if (measured <= 0 || total->spare_length.nm <= 0)
        return total->spare_length;
    sb_length spare = {sb_mul_div_up(total->spare_length.nm, sb_sub(all, measured), all)};
    return sb_length_up_to_step(spare, p->shop->settings.own_style.step);
}

/* ---- lists with less spare ----------------------------------------------------------------------- */

/* What the plan asks for, into p->asked. Whether its list has as much, and whether it has more than that. */
static bool look_at(planning *p, const sb_cutlist *list, const sb_plan *plan, bool *more) {
    bool enough = true;
    size_t at = 0;
    *more = false;
    for (size_t i = 0; i < p->count; i++)
        for (size_t j = 0; j < p->takeoffs[i]->totals.count; j++, at++) {
            p->asked[at] = spare_asked(p, list, plan, p->takeoffs[i], &p->takeoffs[i]->totals.items[j]);
            enough = enough && p->asked[at].nm <= p->listed[at].nm;
            *more = *more || p->asked[at].nm < p->listed[at].nm;
        }
    return enough;
}

static const sb_cutlist *list_with(planning *p, const sb_cutlist *like) {
    for (size_t i = 0; i < p->spares; i++)
        p->listed[i] = p->asked[i];
    sb_cutlist *list = SB_NEW(p->run->pool, sb_cutlist);
    *list = *takeoff_cutlist(p->run, p->shop, p->takeoffs, p->count, p->asked);
    list->problem.rules = like->problem.rules;
    return list;
}

static planning set_up(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs, size_t count) {
    planning p = {.run = run, .shop = shop, .takeoffs = takeoffs, .count = count};
    for (size_t i = 0; i < count; i++)
        p.spares += takeoffs[i]->totals.count;
    p.asked = SB_NEW_ARRAY(run->pool, sb_length, p.spares + 1);
    p.listed = SB_NEW_ARRAY(run->pool, sb_length, p.spares + 1);
    size_t at = 0;
    for (size_t i = 0; i < count; i++)
        for (size_t j = 0; j < takeoffs[i]->totals.count; j++)
            p.listed[at++] = takeoffs[i]->totals.items[j].spare_length;
    return p;
}

const sb_plan *sb_cutlist_plan(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs,
                               size_t count, const sb_cutlist **list) {
    planning p = set_up(run, shop, takeoffs, count);
    const sb_cutlist *now = *list;
    const sb_plan *plan = sb_plan_make(run, &now->problem), *best = plan;
    for (int again = 0; plan && sb_ok(run); again++) {
        bool more, enough = look_at(&p, now, plan, &more);
        if (enough && plan->cost.milli <= best->cost.milli)
            best = plan, *list = now;
        if (again == AGAIN || (enough && !more))
            break;
        now = list_with(&p, now);
        plan = sb_plan_make(run, &now->problem);
    }
    return best;
}
