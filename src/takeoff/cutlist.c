/* From takeoffs to a cutting problem: stock used, needs, and what there is to cut from. */
#include "takeoff/inside.h"

#include <string.h>

typedef struct listing {
    sb_run *run;
    const sb_shop *shop;
    const sb_takeoff *const *takeoffs;
    size_t count;
    const sb_length *spares; /* by takeoff and total; NULL: as the grades have it */
    sb_cutlist *list;
    SB_LIST(const sb_stock *) stock; /* beside problem.stock */
} listing;

static bool planned(const sb_stock *stock) {
    return stock->kind == SB_STOCK_BOARD || stock->kind == SB_STOCK_SHEET;
}

/* ---- stock ---------------------------------------------------------------------------------------------------- */

static size_t index_of(const listing *l, const sb_stock *stock) {
    size_t i = 0;
    while (i < l->stock.count && l->stock.items[i] != stock)
        i++;
    return i;
}

static void add_stock(listing *l, const sb_stock *stock) {
    if (!planned(stock) || index_of(l, stock) < l->stock.count)
        return;
    sb_cut_stock entry = {.name = stock->id,
                          .sheet = stock->kind == SB_STOCK_SHEET,
                          .width = stock->width,
                          .thickness = stock->thickness,
                          .value = sb_shop_leftover_rate(l->shop, stock).milli};
    takeoff_useful(&entry, &l->shop->settings);
    SB_PUSH(l->run->pool, l->stock, stock);
    SB_PUSH(l->run->pool, l->list->problem.stock, entry);
}

static void add_stocks(listing *l) {
    for (size_t i = 0; i < l->count; i++)
        for (size_t j = 0; j < l->takeoffs[i]->parts.count; j++)
            add_stock(l, l->takeoffs[i]->parts.items[j].stock);
}

/* ---- needs ------------------------------------------------------------------------------------------------------ */

static sb_cut_grain grain_of(const sb_part *part) {
    static const sb_cut_grain grains[] = {
        [SB_GRAIN_ALONG] = SB_CUT_ALONG, [SB_GRAIN_ACROSS] = SB_CUT_ACROSS, [SB_GRAIN_FREE] = SB_CUT_FREE};
    return grains[part->grain];
}

static void add_need(listing *l, const sb_takeoff *takeoff, const sb_part *part) {
    if (!planned(part->stock) || part->blanks <= 0)
        return;
    sb_need need = {.name = part->title,
                    .stock = index_of(l, part->stock),
                    .length = part->cut_length,
                    .width = part->cut_width,
                    .count = part->blanks,
                    .clear = part->clear,
                    .sound = part->sound,
                    .grain = grain_of(part),
                    .tag = l->list->needs.count,
                    .place = part->place};
    if (!sb_part_ends_later(part))
        need.end1 = part->end1, need.end2 = part->end2;
    struct sb_need_source source = {takeoff, part};
    SB_PUSH(l->run->pool, l->list->needs, source);
    SB_PUSH(l->run->pool, l->list->problem.needs, need);
}

static void add_needs(listing *l) {
    size_t at = 0;
    for (size_t i = 0; i < l->count; i++) {
        const sb_takeoff *takeoff = l->takeoffs[i];
        for (size_t j = 0; j < takeoff->parts.count; j++)
            add_need(l, takeoff, &takeoff->parts.items[j]);
        for (size_t j = 0; j < takeoff->totals.count; j++, at++) {
            const sb_stock_total *total = &takeoff->totals.items[j];
            takeoff_spare_needs(l->run, l->list, takeoff, total,
                                l->spares ? l->spares[at] : total->spare_length, index_of(l, total->stock));
        }
    }
}

/* ---- supplies ------------------------------------------------------------------------------------------------------ */

static sb_length trim_of(sb_length own, const sb_saw *saw) {
    return own.nm == SB_BAD ? saw->trim : own;
}

static void push_supply(listing *l, sb_supply supply, struct sb_supply_source source) {
    supply.tag = l->list->supplies.count;
    SB_PUSH(l->run->pool, l->list->supplies, source);
    SB_PUSH(l->run->pool, l->list->problem.supplies, supply);
}

static void add_offers(listing *l, size_t index) {
    const sb_stock *stock = l->stock.items[index];
    bool sheet = stock->kind == SB_STOCK_SHEET;
    const sb_saw *saw = sheet ? &l->shop->settings.panel : &l->shop->settings.crosscut;
    for (size_t i = 0; i < stock->offers.count; i++) {
        const sb_offer *offer = &stock->offers.items[i];
        sb_supply supply = {.stock = index,
                            .length = offer->length,
                            .price = offer->each,
                            .available = offer->available,
                            .trim1 = trim_of(offer->trim1, saw),
                            .trim2 = trim_of(offer->trim2, saw),
                            .label = "",
                            .place = offer->place};
        if (sheet)
            supply.width = offer->width.nm > 0 ? offer->width : stock->width;
        push_supply(l, supply, (struct sb_supply_source){.offer = offer, .stock = stock});
    }
}

/* A rack piece has ends of its own: fresh ends need no trim. It costs what a leftover like it is credited, unless a
 * value was told. */
static void add_rack(listing *l, size_t index) {
    const sb_stock *stock = l->stock.items[index];
    for (size_t i = 0; i < l->shop->rack.count; i++) {
        const sb_rack_item *item = &l->shop->rack.items[i];
        if (item->stock != stock || item->count <= 0)
            continue;
        sb_supply supply = {.stock = index,
                            .length = item->length,
                            .price = {sb_mul(item->value.minor, 1000)},
                            .available = item->count,
                            .leftover = true,
                            .label = item->label,
                            .measured = item->measured,
                            .bad = item->bad,
                            .place = item->place};
        if (stock->kind == SB_STOCK_SHEET)
            supply.width = item->width.nm > 0 ? item->width : stock->width;
        if (item->value.minor == SB_BAD)
            supply.price = sb_shop_leftover_value(l->shop, stock, item->length, supply.width);
        push_supply(l, supply, (struct sb_supply_source){.rack = item, .stock = stock});
    }
}

bool takeoff_rack_used(const sb_takeoff *const *takeoffs, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (takeoffs[i]->job->use_rack)
            return true;
    return false;
}

const sb_cutlist *takeoff_cutlist(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs,
                                  size_t count, const sb_length *spares) {
    listing l = {.run = run, .shop = shop, .takeoffs = takeoffs, .count = count, .spares = spares};
    bool rack = takeoff_rack_used(takeoffs, count);
    l.list = SB_NEW(run->pool, sb_cutlist);
    l.list->problem.rules = takeoff_rules(shop);
    add_stocks(&l);
    add_needs(&l);
    for (size_t i = 0; i < l.stock.count; i++) {
        if (rack)
            add_rack(&l, i);
        add_offers(&l, i);
    }
    return l.list;
}

const sb_cutlist *sb_cutlist_of(sb_run *run, const sb_shop *shop, const sb_takeoff *const *takeoffs,
                                size_t count) {
    return takeoff_cutlist(run, shop, takeoffs, count, NULL);
}
