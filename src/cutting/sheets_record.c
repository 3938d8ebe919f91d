/* From cut trees to sheet plans: cuts in the order of work, parts for their needs, usable leftovers. */
#include "cutting/sheets.h"
#include "cutting/words.h"

typedef struct recording {
    const sb_sheet_bench *bench;
    sb_plan *plan;
    size_t *need;  /* by pane: the need being made, into pane.needs */
    int64_t *open; /* of that need, still to be made */
    size_t first;  /* sheet of the plan that is recorded here */
} recording;

/* ---- needs in turn ------------------------------------------------------------------------------- */

static void start_needs(recording *r) {
    size_t panes = r->bench->panes.count;
    r->need = SB_NEW_ARRAY(r->bench->run->pool, size_t, panes);
    r->open = SB_NEW_ARRAY(r->bench->run->pool, int64_t, panes);
    for (size_t i = 0; i < panes; i++)
        r->open[i] = r->bench->problem->needs.items[r->bench->panes.items[i].needs.items[0]].count;
}

static size_t next_need(recording *r, size_t index) {
    const sb_pane *pane = &r->bench->panes.items[index];
    while (r->open[index] == 0 && r->need[index] + 1 < pane->needs.count)
        r->open[index] = r->bench->problem->needs.items[pane->needs.items[++r->need[index]]].count;
    r->open[index]--;
    return pane->needs.items[r->need[index]];
}

/* ---- cuts ---------------------------------------------------------------------------------------- */

static sb_rect rect_of(int64_t x, int64_t y, int64_t w, int64_t l) {
    return (sb_rect){{x}, {y}, {w}, {l}};
}

static void add_cut(const recording *r, sb_sheet_plan *sheet, int stage, bool across, int64_t at,
                    sb_rect divides) {
    SB_PUSH(r->bench->run->pool, sheet->cuts, ((sb_sheet_cut){stage, across, {at}, divides}));
}

/* The four edges, each kerf inside its trim: near long edge, far long edge, near end, far end. */
static void add_truing(const recording *r, sb_sheet_plan *sheet) {
    const sb_supply *supply = &r->bench->problem->supplies.items[sheet->supply];
    int64_t kerf = r->bench->kerf, w = supply->width.nm, l = supply->length.nm;
    int64_t sides = supply->trim1.nm, ends = supply->trim2.nm;
    if (sides > 0) {
        add_cut(r, sheet, 0, false, sides - kerf, rect_of(0, 0, w, l));
        add_cut(r, sheet, 0, false, w - sides, rect_of(sides, 0, w - sides, l));
    }
    if (ends > 0) {
        add_cut(r, sheet, 0, true, ends - kerf, rect_of(sides, 0, w - 2 * sides, l));
        add_cut(r, sheet, 0, true, l - ends, rect_of(sides, ends, w - 2 * sides, l - ends));
    }
}

static int deepest(const sb_tree *tree) {
    int stage = 0;
    for (size_t i = 0; i < tree->count; i++)
        stage = tree->items[i].stage > stage ? tree->items[i].stage : stage;
    return stage;
}

/* A node comes after the one it was cut from, so that within a stage the order of the nodes is an order of
 * work. */
static void add_cuts(const recording *r, sb_sheet_plan *sheet, const sb_tree *tree) {
    add_truing(r, sheet);
    int stages = deepest(tree);
    for (int stage = 1; stage <= stages; stage++)
        for (size_t i = 0; i < tree->count; i++) {
            const sb_node *node = &tree->items[i];
            if (node->first != SIZE_MAX && node->stage == stage)
                add_cut(r, sheet, stage, node->across, node->at, rect_of(node->x, node->y, node->w, node->l));
        }
}

/* ---- sheets -------------------------------------------------------------------------------------- */

static sb_sheet_plan plan_sheet(recording *r, const sb_laid *laid) {
    const sb_sheet_bench *bench = r->bench;
    sb_sheet_plan sheet = {.supply = bench->offers.items[laid->offer].supply, .count = 1};
    sheet.fences = sb_tree_fences(&laid->tree);
    sheet.returns = sb_tree_returns(&laid->tree);
    add_cuts(r, &sheet, &laid->tree);
    for (size_t i = 0; i < laid->tree.count; i++) {
        const sb_node *node = &laid->tree.items[i];
        sb_rect at = rect_of(node->x, node->y, node->w, node->l);
        if (node->pane != SIZE_MAX)
            SB_PUSH(bench->run->pool, sheet.parts,
                    ((sb_sheet_part){next_need(r, node->pane), at, node->turned}));
        else if (node->first == SIZE_MAX &&
                 sb_leftover_is_useful(&bench->problem->stock.items[bench->stock], node->w, node->l))
            SB_PUSH(bench->run->pool, sheet.leftovers, at);
    }
    return sheet;
}

static bool same_rect(sb_rect a, sb_rect b) {
    return a.x.nm == b.x.nm && a.y.nm == b.y.nm && a.w.nm == b.w.nm && a.l.nm == b.l.nm;
}

static bool same_parts(const sb_sheet_plan *a, const sb_sheet_plan *b) {
    if (a->parts.count != b->parts.count)
        return false;
    for (size_t i = 0; i < a->parts.count; i++) {
        const sb_sheet_part *one = &a->parts.items[i], *other = &b->parts.items[i];
        if (one->need != other->need || one->turned != other->turned || !same_rect(one->at, other->at))
            return false;
    }
    return true;
}

static bool same_cuts(const sb_sheet_plan *a, const sb_sheet_plan *b) {
    if (a->cuts.count != b->cuts.count)
        return false;
    for (size_t i = 0; i < a->cuts.count; i++) {
        const sb_sheet_cut *one = &a->cuts.items[i], *other = &b->cuts.items[i];
        if (one->stage != other->stage || one->across_width != other->across_width ||
            one->at.nm != other->at.nm || !same_rect(one->divides, other->divides))
            return false;
    }
    return true;
}

/* The sheet that is cut alike, of those recorded here; NULL: none yet. */
static sb_sheet_plan *alike(const recording *r, const sb_sheet_plan *sheet) {
    for (size_t i = r->first; i < r->plan->sheets.count; i++) {
        sb_sheet_plan *other = &r->plan->sheets.items[i];
        if (other->supply == sheet->supply && same_parts(other, sheet) && same_cuts(other, sheet))
            return other;
    }
    return NULL;
}

static void record_laid(recording *r, const sb_laid *laid) {
    for (int64_t n = 0; n < laid->count; n++) {
        sb_sheet_plan sheet = plan_sheet(r, laid);
        sb_sheet_plan *same = alike(r, &sheet);
        if (same)
            same->count++;
        else
            SB_PUSH(r->bench->run->pool, r->plan->sheets, sheet);
    }
}

/* ---- what is short ------------------------------------------------------------------------------- */

static void tell_shortage(recording *r, size_t index, int64_t missing) {
    const sb_need *need = &r->bench->problem->needs.items[index];
    SB_PUSH(r->bench->run->pool, r->plan->short_of, ((sb_shortage){index, missing}));
    sb_error(r->bench->run, need->place,
             "not enough \"%s\": %lld of %lld \"%s\" (%s by %s) cannot be cut from what is on offer, within "
             "the rules of the saw",
             r->bench->problem->stock.items[r->bench->stock].name, (long long)missing, (long long)need->count,
             need->name, sb_words_length(r->bench->run, need->length.nm),
             sb_words_length(r->bench->run, need->width.nm));
}

void sb_sheets_record(sb_sheet_bench *bench, const sb_laying *laying, sb_plan *plan) {
    recording r = {.bench = bench, .plan = plan, .first = plan->sheets.count};
    start_needs(&r);
    for (size_t i = 0; i < laying->sheets.count; i++) {
        sb_laid laid = laying->sheets.items[i];
        sb_tree_tidy(bench, &laid);
        record_laid(&r, &laid);
    }
    for (size_t i = 0; i < bench->panes.count; i++) {
        const sb_pane *pane = &bench->panes.items[i];
        if (r.open[i] > 0)
            tell_shortage(&r, pane->needs.items[r.need[i]], r.open[i]);
        for (size_t n = r.need[i] + 1; n < pane->needs.count; n++)
            tell_shortage(&r, pane->needs.items[n], bench->problem->needs.items[pane->needs.items[n]].count);
    }
}
