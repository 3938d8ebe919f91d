/* From needs and supplies of one stock to panes and sheets on offer. */
#include <limits.h>

#include "cutting/sheets.h"
#include "cutting/words.h"

/* ---- sheets on offer ----------------------------------------------------------------------------- */

static void offer(sb_sheet_bench *bench, size_t index) {
    const sb_supply *supply = &bench->problem->supplies.items[index];
    const sb_cut_rules *rules = &bench->problem->rules;
    sb_sheet_offer on = {
        .supply = index, .x = supply->trim1.nm, .y = supply->trim2.nm, .available = supply->available};
    on.w = supply->width.nm - 2 * supply->trim1.nm;
    on.l = supply->length.nm - 2 * supply->trim2.nm;
    on.fixed = supply->price.milli + (rules->material_only ? 0 : rules->sheet.milli);
    on.truing = 2 * (supply->trim1.nm > 0) + 2 * (supply->trim2.nm > 0);
    if (on.available < 0)
        on.available = INT64_MAX;
    if (on.available > 0 && on.w > 0 && on.l > 0)
        SB_PUSH(bench->run->pool, bench->offers, on);
}

/* ---- panes --------------------------------------------------------------------------------------- */

static bool alike(const sb_need *a, const sb_need *b) {
    return a->length.nm == b->length.nm && a->width.nm == b->width.nm && a->grain == b->grain;
}

static void add_need(sb_sheet_bench *bench, size_t index) {
    const sb_need *need = &bench->problem->needs.items[index];
    sb_pane *pane = NULL;
    for (size_t i = 0; i < bench->panes.count && !pane; i++)
        if (alike(bench->panes.items[i].like, need))
            pane = &bench->panes.items[i];
    if (!pane) {
        sb_pane new_pane = {.like = need, .length = need->length.nm, .width = need->width.nm};
        new_pane.upright = need->grain != SB_CUT_ACROSS;
        new_pane.sideways =
            need->grain == SB_CUT_ACROSS || (need->grain == SB_CUT_FREE && need->length.nm != need->width.nm);
        new_pane.area = (double)(need->length.nm + bench->kerf) * (double)(need->width.nm + bench->kerf);
        SB_PUSH(bench->run->pool, bench->panes, new_pane);
        pane = &bench->panes.items[bench->panes.count - 1];
    }
    pane->pieces += need->count;
    SB_PUSH(bench->run->pool, pane->needs, index);
}

/* ---- needs that fit no sheet --------------------------------------------------------------------- */

static bool lies_on(const sb_sheet_offer *on, int64_t w, int64_t l) {
    return w <= on->w && l <= on->l;
}

static bool fits_on(const sb_sheet_offer *on, const sb_need *need) {
    bool upright = need->grain != SB_CUT_ACROSS, sideways = need->grain != SB_CUT_ALONG;
    return (upright && lies_on(on, need->width.nm, need->length.nm)) ||
           (sideways && lies_on(on, need->length.nm, need->width.nm));
}

static int64_t lacking(const sb_sheet_offer *on, int64_t w, int64_t l) {
    return (w > on->w ? w - on->w : 0) + (l > on->l ? l - on->l : 0);
}

/* The sheet that lacks least. */
static const sb_sheet_offer *nearest(const sb_sheet_bench *bench, const sb_need *need) {
    const sb_sheet_offer *best = NULL;
    int64_t least = INT64_MAX;
    for (size_t i = 0; i < bench->offers.count; i++) {
        const sb_sheet_offer *on = &bench->offers.items[i];
        int64_t up = need->grain != SB_CUT_ACROSS ? lacking(on, need->width.nm, need->length.nm) : INT64_MAX;
        int64_t side = need->grain != SB_CUT_ALONG ? lacking(on, need->length.nm, need->width.nm) : INT64_MAX;
        int64_t lacks = up < side ? up : side;
        if (lacks < least)
            least = lacks, best = on;
    }
    return best;
}

static void tell_too_large(const sb_sheet_bench *bench, const sb_need *need) {
    static const char *const lies[] = {"along the sheet", "across the sheet", "either way"};
    sb_run *run = bench->run;
    const char *stock = bench->problem->stock.items[bench->stock].name;
    const sb_sheet_offer *on = nearest(bench, need);
    if (!on) {
        sb_error(run, need->place, "\"%s\": there is no \"%s\" on offer", need->name, stock);
        return;
    }
    const sb_supply *supply = &bench->problem->supplies.items[on->supply];
    sb_error(run, need->place,
             "\"%s\" (length %s, width %s, length %s) fits no sheet; the nearest is \"%s\" of length %s, "
             "width %s, of which %s "
             "by %s can be used",
             need->name, sb_words_length(run, need->length.nm), sb_words_length(run, need->width.nm),
             lies[need->grain], stock, sb_words_length(run, supply->length.nm),
             sb_words_length(run, supply->width.nm), sb_words_length(run, on->l),
             sb_words_length(run, on->w));
}

static bool can_be_cut(const sb_sheet_bench *bench, const sb_need *need) {
    for (size_t i = 0; i < bench->offers.count; i++)
        if (fits_on(&bench->offers.items[i], need))
            return true;
    tell_too_large(bench, need);
    return false;
}

/* ---- the bench ----------------------------------------------------------------------------------- */

static sb_sheet_bench *bare_bench(sb_run *run, const sb_problem *problem, size_t stock, sb_work *work) {
    const sb_cut_rules *rules = &problem->rules;
    sb_sheet_bench *bench = SB_NEW(run->pool, sb_sheet_bench);
    *bench = (sb_sheet_bench){.run = run, .problem = problem, .stock = stock, .work = work};
    bench->kerf = rules->panel_kerf.nm;
    bench->longest_rip = rules->longest_rip.nm > 0 ? rules->longest_rip.nm : INT64_MAX;
    bench->smallest_strip = rules->smallest_strip.nm;
    bench->stages = rules->stages > 0 ? rules->stages : INT_MAX - 1;
    bench->trims = rules->trims && rules->stages == 2;
    bench->crosscut_first = rules->crosscut_first;
    bench->fence = rules->material_only ? 0 : rules->fence.milli;
    bench->back = rules->material_only ? 0 : rules->back.milli;
    bench->cut = rules->material_only ? 0 : rules->sheet_cut.milli;
    bench->value = rules->material_only ? 0 : problem->stock.items[stock].value;
    return bench;
}

sb_sheet_bench *sb_sheet_bench_make(sb_run *run, sb_plan *plan, size_t stock, sb_work *work) {
    const sb_problem *problem = plan->problem;
    sb_sheet_bench *bench = bare_bench(run, problem, stock, work);
    for (size_t i = 0; i < problem->supplies.count; i++)
        if (problem->supplies.items[i].stock == stock)
            offer(bench, i);
    for (size_t i = 0; i < problem->needs.count; i++) {
        const sb_need *need = &problem->needs.items[i];
        if (need->stock != stock)
            continue;
        if (can_be_cut(bench, need))
            add_need(bench, i);
        else
            SB_PUSH(run->pool, plan->short_of, ((sb_shortage){i, need->count}));
    }
    if (bench->panes.count == 0)
        return NULL;
    bench->stripping = sb_stripping_new(bench);
    bench->putting = sb_putting_new(bench);
    bench->recting = bench->stages > 3 ? sb_recting_new(bench) : NULL;
    return bench;
}
