/* Random jobs as a workshop has them. */
#include "workshop_jobs.h"

#define METRE_PRICE 400 /* [minor units] */
#define METRE_VALUE 150 /* of a leftover */

/* Park and Miller's minimal standard generator. */
static uint32_t roll(uint32_t *seed, uint32_t sides) {
    *seed = (uint32_t)((uint64_t)*seed * 48271u % 2147483647u);
    return *seed % sides;
}

static sb_length half_mm(uint32_t halves) {
    return (sb_length){(int64_t)halves * (SB_NM_PER_MM / 2)};
}

/* Of six lengths a merchant has, each at most once. */
static void add_stock_lengths(sb_run *run, sb_problem *p, uint32_t *seed) {
    static const uint32_t lengths[] = {2400, 3000, 3600, 4200, 4800, 6000};
    uint32_t wanted = 3 + roll(seed, 4), left = 6;
    for (uint32_t i = 0; i < 6; i++, left--) {
        if (roll(seed, left) >= wanted)
            continue;
        int64_t price =
            (int64_t)lengths[i] * METRE_PRICE / 1000 * (10000 + (int64_t)roll(seed, 1201)) / 10000;
        SB_PUSH(
            run->pool, p->supplies,
            ((sb_supply){
                .length = half_mm(2 * lengths[i]), .price = {price * 1000}, .available = -1, .label = ""}));
        wanted--;
    }
}

static void add_rack(sb_run *run, sb_problem *p, uint32_t *seed, bool credited) {
    for (uint32_t left = roll(seed, 7); left > 0; left--) {
        sb_length length = half_mm(2 * (600 + roll(seed, 1600)));
        int64_t credit = credited ? length.nm / SB_NM_PER_MM * METRE_VALUE : 0; /* thousandths */
        SB_PUSH(run->pool, p->supplies,
                ((sb_supply){
                    .length = length, .price = {credit}, .available = 1, .leftover = true, .label = "rack"}));
    }
}

static void add_needs(sb_run *run, sb_problem *p, uint32_t *seed, bool large) {
    for (uint32_t left = 5 + roll(seed, large ? 56 : 16); left > 0; left--) {
        sb_length length = half_mm(300 + roll(seed, 4501));
        int64_t count = 1 + roll(seed, large ? 200 : 12);
        SB_PUSH(run->pool, p->needs, ((sb_need){.name = "part", .length = length, .count = count}));
    }
}

static sb_problem *job_without_parts(sb_run *run, workshop_kind kind, uint32_t *seed) {
    sb_problem *p = SB_NEW(run->pool, sb_problem);
    for (int i = 0; i < 5; i++)
        roll(seed, 2);
    p->rules.kerf = p->rules.rip_kerf = half_mm(6);
    p->rules.material_only = kind != WORKSHOP_HANDLING;
    p->rules.change.milli = 40000;
    p->rules.stop.milli = 60000;
    p->rules.cut.milli = 5000;
    p->rules.board.milli = 50000;
    SB_PUSH(run->pool, p->stock,
            ((sb_cut_stock){.name = "pine", .useful_length = half_mm(1200), .value = METRE_VALUE * 1000}));
    add_stock_lengths(run, p, seed);
    add_rack(run, p, seed, kind == WORKSHOP_HANDLING);
    return p;
}

sb_problem *workshop_job(sb_run *run, workshop_kind kind, uint32_t index) {
    uint32_t seed = 1000 + 7919 * index;
    sb_problem *p = job_without_parts(run, kind, &seed);
    add_needs(run, p, &seed, kind == WORKSHOP_LARGE);
    return p;
}

static bool has_length(const sb_problem *p, sb_length length) {
    for (size_t i = 0; i < p->needs.count; i++)
        if (p->needs.items[i].length.nm == length.nm)
            return true;
    return false;
}

/* One of each first, then one here, one there. */
sb_problem *workshop_job_of(sb_run *run, workshop_kind kind, uint32_t index, uint32_t kinds, uint32_t parts) {
    uint32_t seed = 1000 + 7919 * index;
    sb_problem *p = job_without_parts(run, kind, &seed);
    while (p->needs.count < kinds) {
        sb_length length = half_mm(300 + roll(&seed, 4501));
        if (!has_length(p, length))
            SB_PUSH(run->pool, p->needs, ((sb_need){.name = "part", .length = length, .count = 1}));
    }
    for (uint32_t made = kinds; made < parts; made++)
        p->needs.items[roll(&seed, kinds)].count++;
    return p;
}
