/* The shop's rules for a cutting plan: what the saws can do, and what handling costs. */
#include "takeoff/inside.h"

#include <string.h>

static sb_cost cost_of(const sb_shop *shop, sb_driver driver) {
    const sb_operation *operation = sb_shop_driven(shop, driver);
    return operation && operation->worker ? sb_labour_cost(operation->time, operation->worker) : (sb_cost){0};
}

static void set_handling(sb_cut_rules *rules, const sb_shop *shop) {
    rules->board = cost_of(shop, SB_BY_BOARD);
    rules->change = cost_of(shop, SB_BY_CHANGE);
    rules->stop = cost_of(shop, SB_BY_STOP);
    rules->cut = cost_of(shop, SB_BY_CUT);
    rules->sheet = cost_of(shop, SB_BY_SHEET);
    rules->fence = cost_of(shop, SB_BY_FENCE);
    rules->back = cost_of(shop, SB_BY_RETURN);
    rules->sheet_cut = cost_of(shop, SB_BY_SHEET_CUT);
}

static void set_stages(sb_cut_rules *rules, const sb_settings *settings) {
    rules->stages = settings->panel_stages;
    rules->trims = settings->panel_trims;
    rules->crosscut_first = !settings->panel_rip_first;
    rules->longest_rip = settings->panel.longest_rip;
    rules->smallest_strip = settings->panel.smallest_strip;
}

sb_cut_rules takeoff_rules(const sb_shop *shop) {
    const sb_settings *settings = &shop->settings;
    sb_cut_rules rules = {.kerf = settings->crosscut.kerf,
                          .rip_kerf = settings->rip.kerf,
                          .panel_kerf = settings->panel.kerf,
                          .longest_board = settings->vehicle};
    set_handling(&rules, shop);
    set_stages(&rules, settings);
    return rules;
}

void takeoff_useful(sb_cut_stock *stock, const sb_settings *settings) {
    stock->useful_length = stock->sheet ? settings->leftover_sheet_length : settings->leftover_length;
    stock->useful_width = stock->sheet ? settings->leftover_sheet_width : (sb_length){0};
}

/* ---- a bare list under the shop's rules ---------------------------------------------------------------------- */

/* The lowest price of a metre or square metre of what can be had new; SB_BAD: nothing can. */
static int64_t lowest_rate(const sb_problem *problem, size_t stock) {
    int64_t lowest = SB_BAD;
    for (size_t i = 0; i < problem->supplies.count; i++) {
        const sb_supply *supply = &problem->supplies.items[i];
        if (supply->stock != stock || supply->leftover)
            continue;
        int64_t rate = problem->stock.items[stock].sheet
                           ? sb_mul_div_down(supply->price.milli, INT64_C(1000000000000),
                                             sb_length_area(supply->length, supply->width).um2)
                           : sb_mul_div_down(supply->price.milli, 1000000000, supply->length.nm);
        if (lowest == SB_BAD || rate < lowest)
            lowest = rate;
    }
    return lowest;
}

void sb_problem_under_shop(sb_run *run, sb_problem *problem, const sb_shop *shop) {
    (void)run;
    set_handling(&problem->rules, shop);
    set_stages(&problem->rules, &shop->settings);
    for (size_t i = 0; i < problem->stock.count; i++) {
        sb_cut_stock *stock = &problem->stock.items[i];
        int64_t rate = lowest_rate(problem, i);
        takeoff_useful(stock, &shop->settings);
        stock->value = rate == SB_BAD ? 0 : sb_mul_div_down(rate, shop->settings.leftover_value.ppm, 1000000);
    }
}
