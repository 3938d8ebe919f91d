/* Boards by chance: the same ones in every run. */
#ifndef TESTS_PAPERS_CHANCE_H
#define TESTS_PAPERS_CHANCE_H

#include "sawbill/cutting.h"

static inline int64_t pick(uint64_t *seed, int64_t from, int64_t to) {
    *seed = *seed * 6364136223846793005u + 1442695040888963407u;
    return from + (int64_t)((*seed >> 33) % (uint64_t)(to - from + 1));
}

static inline sb_cut_end end_by_chance(uint64_t *seed) {
    static const int64_t mitres[] = {0, 0, 45, -45, 30, -12}, bevels[] = {0, 0, 0, 20, -20};
    return (sb_cut_end){{mitres[pick(seed, 0, 5)] * 1000000}, {bevels[pick(seed, 0, 4)] * 1000000}};
}

/* Mitres and bevels of all kinds on boards of 95 x 20 mm, some parts ripped. */
static inline sb_problem *boards_by_chance(sb_run *run, uint64_t *seed) {
    sb_problem *problem = SB_NEW(run->pool, sb_problem);
    problem->rules = (sb_cut_rules){.kerf = {pick(seed, 0, 1) ? 3000000 : pick(seed, 10, 36) * 100000},
                                    .rip_kerf = {3000000},
                                    .panel_kerf = {3000000},
                                    .effort = 1000};
    problem->rules.material_only = true;
    sb_cut_stock stock = {.name = "slat", .width = {95000000}, .thickness = {20000000}};
    SB_PUSH(run->pool, problem->stock, stock);
    for (int64_t i = pick(seed, 1, 5); i > 0; i--) {
        sb_need need = {.name = sb_pool_print(run->pool, "part %d", (int)i), .count = pick(seed, 1, 5)};
        need.length.nm = pick(seed, 250, 900) * 1000000;
        if (pick(seed, 0, 4) == 0)
            need.width.nm = pick(seed, 20, 60) * 1000000;
        if (need.width.nm == 0 || pick(seed, 0, 1))
            need.end1 = end_by_chance(seed), need.end2 = end_by_chance(seed);
        SB_PUSH(run->pool, problem->needs, need);
    }
    sb_supply supply = {.length = {2400000000}, .price = {900000}, .available = -1, .label = "", .row = 1};
    supply.trim1.nm = supply.trim2.nm = pick(seed, 0, 1) * 10000000;
    SB_PUSH(run->pool, problem->supplies, supply);
    return problem;
}

#endif
