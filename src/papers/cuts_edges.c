/* How long an angled part is along each of its edges: over the long points, and between the short ones. */
#include "papers/cuts.h"

#include <math.h>

/* The four lengthwise edges, by what lies on them. */
enum {
    FAR = 1,
    LOWER = 2,
    EDGES = 4
};

/* How far an end falls back from its long point at one edge. */
static int64_t back_at(sb_cut_end end, sb_length width, sb_length thickness, int edge) {
    bool far = end.mitre.udeg >= 0, lower = end.bevel.udeg >= 0;
    double swing = cos((double)end.mitre.udeg * 1e-6 * 3.14159265358979323846 / 180);
    double tilt = (double)sb_mitre_run(thickness, end.bevel).nm / swing;
    return (far == ((edge & FAR) != 0) ? 0 : sb_mitre_run(width, end.mitre).nm) +
           (lower == ((edge & LOWER) != 0) ? 0 : llround(tilt));
}

typedef struct edges {
    sb_length longest, shortest;
    bool swung, tilted;
} edges;

static edges edges_of(const cuts_paper *p, const sb_need *need) {
    const sb_cut_stock *stock = &p->problem->stock.items[need->stock];
    sb_length width = need->width.nm > 0 ? need->width : stock->width;
    edges e = {.swung = need->end1.mitre.udeg != 0 || need->end2.mitre.udeg != 0,
               .tilted = need->end1.bevel.udeg != 0 || need->end2.bevel.udeg != 0};
    if ((e.swung && width.nm == 0) || (e.tilted && stock->thickness.nm == 0))
        return (edges){0};
    e.shortest = need->length;
    for (int edge = 0; edge < EDGES; edge++) {
        int64_t back = sb_add(back_at(need->end1, width, stock->thickness, edge),
                              back_at(need->end2, width, stock->thickness, edge));
        sb_length length = {need->length.nm > back ? need->length.nm - back : 0};
        e.longest = length.nm > e.longest.nm ? length : e.longest;
        e.shortest = length.nm < e.shortest.nm ? length : e.shortest;
    }
    return e;
}

const char *cuts_edge_words(const cuts_paper *p, const sb_need *need) {
    edges e = edges_of(p, need);
    const char *what = !e.tilted ? "edge" : !e.swung ? "face" : "corner line";
    if (!e.swung && !e.tilted)
        return "";
    const char *longest = sb_write_length(p->run, cuts_mark(p, e.longest), p->style);
    const char *shortest = cuts_length(p, cuts_mark(p, e.shortest));
    if (e.longest.nm - e.shortest.nm <= p->style->step.nm / 10)
        return sb_pool_print(p->run->pool, "each %s %s, from long point to short point", what, shortest);
    return sb_pool_print(p->run->pool, "long %s %s, short %s %s", what, longest, what, shortest);
}
