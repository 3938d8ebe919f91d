/* Proofs of a lower bound for one stock of sheets. */
#include <math.h>

#include "cutting/duals.h"
#include "cutting/sheet_proof.h"

/* The cost of one sheet that every plan pays, with the largest leftover it could give taken off. */
static int64_t net_of(const sb_sheet_bench *bench, size_t offer) {
    const sb_sheet_offer *on = &bench->offers.items[offer];
    bool whole = false; /* a part may take all of it, without a cut */
    for (size_t i = 0; i < bench->panes.count; i++) {
        const sb_pane *pane = &bench->panes.items[i];
        whole = whole || (pane->upright && pane->width == on->w && pane->length == on->l) ||
                (pane->sideways && pane->length == on->w && pane->width == on->l);
    }
    double leftover = (double)bench->value * (double)on->w * (double)on->l * 1e-18;
    return on->fixed + bench->cut * (on->truing - 1) + (whole ? 0 : bench->fence) -
           (int64_t)ceil(leftover * (1 + 1e-12));
}

/* What every plan pays or loses beside its sheets: a cut for every part; no leftover where parts are. */
static int64_t common_cost(const sb_sheet_bench *bench) {
    int64_t cost = 0;
    double leftover = 0;
    for (size_t i = 0; i < bench->panes.count; i++) {
        const sb_pane *pane = &bench->panes.items[i];
        cost = sb_add(cost, sb_mul(bench->cut, pane->pieces));
        leftover +=
            (double)bench->value * (double)pane->length * (double)pane->width * 1e-18 * (double)pane->pieces;
    }
    return sb_add(cost, (int64_t)floor(leftover * (1 - 1e-12)));
}

/* Sheets whose net cost is below nothing: no plan has more of them than there are, nor than parts. */
static int64_t gain(const sb_sheet_bench *bench) {
    int64_t gain = 0;
    for (size_t o = 0; o < bench->offers.count; o++)
        if (net_of(bench, o) < 0)
            gain = sb_add(gain, sb_mul(net_of(bench, o), sb_sheets_usable(bench, o)));
    return gain;
}

int64_t sb_sheets_usable(const sb_sheet_bench *bench, size_t offer) {
    int64_t pieces = 0, available = bench->offers.items[offer].available;
    for (size_t i = 0; i < bench->panes.count; i++)
        pieces = sb_add(pieces, bench->panes.items[i].pieces);
    return available < pieces ? available : pieces;
}

int64_t sb_sheet_least(const sb_sheet_bench *bench, size_t offer) {
    int64_t net = net_of(bench, offer);
    return net > 0 ? net : 0;
}

static int64_t cover(const sb_sheet_bench *bench, const sb_sheet_proof *proof) {
    sb_cover *covers = SB_NEW_ARRAY(bench->run->pool, sb_cover, bench->offers.count);
    size_t count = 0;
    int64_t total = 0;
    for (size_t i = 0; i < bench->panes.count; i++)
        total = sb_add(total, sb_mul(proof->duals[i], bench->panes.items[i].pieces));
    for (size_t o = 0; o < bench->offers.count; o++)
        if (proof->worths[o] > 0)
            covers[count++] = (sb_cover){sb_sheet_least(bench, o) * SB_SHEET_SCALE, proof->worths[o],
                                         bench->offers.items[o].available};
    if (total == SB_BAD)
        return SB_BAD;
    int64_t least = sb_cover_least(bench->run, covers, count, total, false);
    return least == INT64_MAX ? SB_BAD : sb_mul_div_up(least, 1, SB_SHEET_SCALE);
}

int64_t sb_sheet_common(const sb_sheet_bench *bench) {
    return sb_add(common_cost(bench), gain(bench));
}

int64_t sb_sheet_proves(const sb_sheet_bench *bench, const sb_sheet_proof *proof) {
    return sb_add(cover(bench, proof), sb_sheet_common(bench));
}

/* ---- written down -------------------------------------------------------------------------------- */

/* The pane a need belongs to; SIZE_MAX: it fits no sheet. */
static size_t pane_of(const sb_sheet_bench *bench, size_t need, bool *first) {
    for (size_t i = 0; i < bench->panes.count; i++)
        for (size_t m = 0; m < bench->panes.items[i].needs.count; m++)
            if (bench->panes.items[i].needs.items[m] == need) {
                *first = m == 0;
                return i;
            }
    return SIZE_MAX;
}

static void record_need(const sb_sheet_bench *bench, const sb_sheet_proof *proof, size_t need,
                        sb_bound *bound) {
    static const sb_scales none;
    bool first = false;
    size_t pane = pane_of(bench, need, &first);
    bool cut = pane != SIZE_MAX;
    if (proof->scales)
        SB_PUSH(bench->run->pool, bound->scales, cut ? proof->scales[pane] : none);
    if (proof->once)
        SB_PUSH(bench->run->pool, bound->once, cut && proof->once[pane]);
    if (proof->duals)
        SB_PUSH(bench->run->pool, bound->duals, cut ? proof->duals[pane] : 0);
    SB_PUSH(bench->run->pool, bound->counted, first ? bench->panes.items[pane].pieces : 0);
}

static void record_supplies(const sb_sheet_bench *bench, const sb_sheet_proof *proof, sb_bound *bound) {
    size_t o = 0;
    for (size_t i = 0; i < bench->problem->supplies.count; i++) {
        if (bench->problem->supplies.items[i].stock != bench->stock)
            continue;
        bool usable = o < bench->offers.count && bench->offers.items[o].supply == i;
        if (proof->worths)
            SB_PUSH(bench->run->pool, bound->worth, usable ? proof->worths[o] : -1);
        SB_PUSH(bench->run->pool, bound->least, usable ? sb_sheet_least(bench, o) * SB_SHEET_SCALE : 0);
        o += usable;
    }
}

void sb_sheet_show(const sb_sheet_bench *bench, const sb_sheet_proof *proof, sb_bound *bound) {
    bound->how = proof->how;
    bound->duals_scale = SB_SHEET_SCALE;
    bound->common = sb_mul(sb_sheet_common(bench), SB_SHEET_SCALE);
    bound->unit_x.nm = proof->unit[0];
    bound->unit_y.nm = proof->unit[1];
    bound->duals.count = bound->counted.count = bound->scales.count = bound->once.count = 0;
    bound->worth.count = bound->least.count = 0;
    for (size_t n = 0; n < bench->problem->needs.count; n++)
        if (bench->problem->needs.items[n].stock == bench->stock)
            record_need(bench, proof, n, bound);
    record_supplies(bench, proof, bound);
}

void sb_sheet_prove(const sb_sheet_bench *bench, const sb_sheet_proof *proof, sb_bound *bound) {
    int64_t sum = sb_sheet_proves(bench, proof);
    if (sum == SB_BAD || sum <= bound->bound.milli)
        return;
    bound->bound.milli = sum;
    sb_sheet_show(bench, proof, bound);
}
