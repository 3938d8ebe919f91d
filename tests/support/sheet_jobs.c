/* Random jobs in sheets. */
#include "sheet_jobs.h"

#define SQUARE_METRE 2400 /* price [minor units] */
#define VALUE        800  /* of a leftover, per square metre */

/* Park and Miller's minimal standard generator. */
static uint32_t roll(uint32_t *seed, uint32_t sides) {
    *seed = (uint32_t)((uint64_t)*seed * 48271u % 2147483647u);
    return *seed % sides;
}

static void add_sheet(sb_run *run, sb_problem *p, int64_t length, int64_t width, uint32_t dearer) {
    sb_supply s = {.length = SB_MM(length), .width = SB_MM(width), .available = -1, .label = ""};
    s.price.milli = length * width * SQUARE_METRE / 1000000 * (1000 + dearer);
    s.trim1 = s.trim2 = SB_MM(10);
    SB_PUSH(run->pool, p->supplies, s);
}

static void add_sheets(sb_run *run, sb_problem *p, uint32_t *seed) {
    add_sheet(run, p, 2440, 1220, roll(seed, 81));
    add_sheet(run, p, 2500, 1250, roll(seed, 81));
    add_sheet(run, p, 3050, 1220, roll(seed, 81));
    add_sheet(run, p, 1220, 1220, 100 + roll(seed, 101));
    add_sheet(run, p, 1220, 610, 150 + roll(seed, 101));
}

static void add_panel(sb_run *run, sb_problem *p, uint32_t *seed, int64_t count) {
    sb_need need = {.name = "panel", .count = count};
    need.width = SB_MM(80 + roll(seed, 521));
    need.length = SB_MM(200 + roll(seed, 1001));
    need.grain = roll(seed, 3) ? SB_CUT_FREE : SB_CUT_ALONG;
    SB_PUSH(run->pool, p->needs, need);
}

static sb_problem *bare_job(sb_run *run, uint32_t *seed, bool handling) {
    sb_problem *p = SB_NEW(run->pool, sb_problem);
    for (int i = 0; i < 5; i++)
        roll(seed, 2);
    p->rules.panel_kerf = (sb_length){SB_NM_PER_MM * 32 / 10};
    p->rules.stages = 3;
    p->rules.material_only = !handling;
    p->rules.sheet.milli = 150000;
    p->rules.fence.milli = 30000;
    p->rules.sheet_cut.milli = 20000;
    sb_cut_stock ply = {.name = "ply", .sheet = true, .value = VALUE * 1000};
    ply.useful_length = SB_MM(600);
    ply.useful_width = SB_MM(300);
    SB_PUSH(run->pool, p->stock, ply);
    add_sheets(run, p, seed);
    return p;
}

sb_problem *sheet_job(sb_run *run, uint32_t index, bool handling) {
    uint32_t seed = 2000 + 7919 * index;
    sb_problem *p = bare_job(run, &seed, handling);
    for (uint32_t left = 4 + roll(&seed, 27); left > 0; left--)
        add_panel(run, p, &seed, 1 + roll(&seed, 20));
    return p;
}

sb_problem *sheet_batch(sb_run *run, uint32_t kinds, uint32_t panels) {
    uint32_t seed = 77;
    sb_problem *p = bare_job(run, &seed, false);
    for (uint32_t i = 0; i < kinds; i++)
        add_panel(run, p, &seed, panels / kinds + (i < panels % kinds));
    return p;
}
