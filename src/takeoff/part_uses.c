/* What a part takes besides the wood that is planned: glue, edging, and timber by volume. */
#include "takeoff/inside.h"

/* Edging is cut longer than its edge by so much at each end and trimmed flush. */
static const int64_t EDGING_OVER = 25 * SB_NM_PER_MM;
static const int64_t UM2_PER_M2 = 1000000000000;

static void use(takeoff_parting *parting, const sb_stock *stock, int64_t amount, int64_t net) {
    sb_usage usage = {.piece = parting->making->piece,
                      .stock = stock,
                      .amount = amount,
                      .net = net,
                      .place = parting->part.place};
    takeoff_use(parting->making, false, usage);
}

static void use_glue(takeoff_parting *parting) {
    int64_t joints = sb_mul(parting->joint.um2, parting->part.count);
    int64_t mass = sb_mul_div_up(joints, parting->glue->spread.mg, UM2_PER_M2);
    use(parting, parting->glue, mass, mass);
}

static void use_edging(takeoff_parting *parting) {
    const sb_part *part = &parting->part;
    const struct {
        unsigned edge;
        sb_length length;
    } edges[] = {{SB_EDGE_FRONT, part->length},
                 {SB_EDGE_BACK, part->length},
                 {SB_EDGE_LEFT, part->width},
                 {SB_EDGE_RIGHT, part->width}};
    int64_t net = 0, all = 0;
    for (size_t i = 0; i < sizeof edges / sizeof *edges; i++) {
        if (!(part->edging_edges & edges[i].edge))
            continue;
        net = sb_add(net, edges[i].length.nm);
        all = sb_add(all, edges[i].length.nm + 2 * EDGING_OVER);
    }
    use(parting, part->edging, sb_mul_div_up(all, part->count, SB_NM_PER_MM),
        sb_mul_div_up(net, part->count, SB_NM_PER_MM));
}

/* The blanks' volume: rough, as they are picked from the boards. */
static void use_volume(takeoff_parting *parting) {
    const sb_part *part = &parting->part;
    sb_volume blank =
        sb_area_volume(sb_length_area(part->cut_length, part->cut_width), part->stock->thickness);
    int64_t net = sb_mul(blank.nl, part->blanks);
    use(parting, part->stock, takeoff_with_waste(part->stock->grade, net), net);
}

void takeoff_part_uses(takeoff_parting *parting) {
    if (parting->glue)
        use_glue(parting);
    if (parting->part.edging)
        use_edging(parting);
    if (parting->part.from_volume)
        use_volume(parting);
}
