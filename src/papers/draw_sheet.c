/* Sheets as they are cut: their length lies along the page, the trued corner at the lower left. */
#include "papers/cuts_sheets.h"
#include "papers/draw.h"

typedef struct sheet_view {
    const cuts_paper *p;
    const sb_sheet_plan *plan;
    const sb_supply *supply;
    sb_drawing *drawing;
    sb_length band; /* above the sheet, for the grain arrow */
} sheet_view;

/* The sheet's y runs along the page, its x upwards. */
static sb_point corner_of(const sheet_view *v, sb_rect r) {
    sb_length top = sb_length_sub(v->supply->width, sb_length_add(r.x, r.w));
    return (sb_point){r.y, sb_length_add(v->band, top)};
}

static void put_rect(const sheet_view *v, sb_rect r, sb_fill fill, sb_pen pen) {
    sb_shape_rect(v->p->run, v->drawing, fill, pen, corner_of(v, r), r.l, r.w);
}

static void put_label(const sheet_view *v, sb_label_place place, sb_rect r, sb_label label) {
    sb_point corner = corner_of(v, r);
    label.place = place;
    label.at = (sb_point){{corner.x.nm + r.l.nm / 2}, {corner.y.nm + r.w.nm / 2}};
    label.wide = r.l;
    label.high = r.w;
    sb_label_add(v->p->run, v->drawing, label);
}

static const char *size_words(const sheet_view *v, sb_rect r) {
    const cuts_paper *p = v->p;
    return sb_pool_print(p->run->pool, "%s x %s", sb_write_length(p->run, cuts_mark(p, r.l), p->style),
                         sb_write_length(p->run, cuts_mark(p, r.w), p->style));
}

/* The kerf, and its number on it. */
static void put_cut(const sheet_view *v, size_t index, bool again) {
    const sb_sheet_cut *cut = &v->plan->cuts.items[index];
    sb_rect kerf = cut->divides;
    sb_length wide = v->p->problem->rules.panel_kerf;
    if (cut->across_width) {
        kerf.y = cut->at;
        kerf.l = wide;
    } else {
        kerf.x = cut->at;
        kerf.w = wide;
    }
    put_rect(v, kerf, SB_FILL_BLACK, SB_PEN_THIN);
    if (cut->across_width)
        kerf.l = (sb_length){0};
    else
        kerf.w = (sb_length){0};
    put_label(v, SB_LABEL_ON, kerf,
              (sb_label){.text = "",
                         .number = sb_pool_print(v->p->run->pool, "%zu", index + 1),
                         .mark = "",
                         .again = again});
}

/* Its neighbour in the list, on either axis. */
static bool is_like_before(const sb_sheet_plan *plan, size_t i) {
    const sb_sheet_part *a = &plan->parts.items[i], *b = i ? a - 1 : NULL;
    return b && a->need == b->need && a->turned == b->turned &&
           (a->at.x.nm == b->at.x.nm || a->at.y.nm == b->at.y.nm);
}

/* In a corner of each, so that the cuts can name them. */
static void put_strips(const sheet_view *v) {
    const sheet_strips strips = sheet_strips_of(v->p, v->plan);
    for (size_t i = 0; i < strips.count; i++)
        put_label(
            v, SB_LABEL_CORNER, strips.items[i],
            (sb_label){.text = "", .number = sb_pool_print(v->p->run->pool, "S%zu", i + 1), .mark = ""});
}

static void put_parts(const sheet_view *v) {
    draw_marks letters = {0};
    for (size_t i = 0; i < v->plan->parts.count; i++) {
        const sb_sheet_part *part = &v->plan->parts.items[i];
        const char *name = cuts_name(v->p, part->need), *size = size_words(v, part->at);
        put_rect(v, part->at, SB_FILL_PAPER, SB_PEN_LINE);
        put_label(v, SB_LABEL_INSIDE, part->at,
                  (sb_label){.text = name,
                             .number = size,
                             .mark = draw_mark(v->p->run, &letters,
                                               sb_pool_print(v->p->run->pool, "%s %s", name, size)),
                             .again = is_like_before(v->plan, i)});
    }
}

static void put_leftovers(const sheet_view *v) {
    sb_length step = v->p->style->step;
    for (size_t i = 0; i < v->plan->leftovers.count; i++) {
        sb_rect r = v->plan->leftovers.items[i], whole = r; /* in steps, never more than there is */
        whole.l = sb_length_down_to_step(r.l, step);
        whole.w = sb_length_down_to_step(r.w, step);
        put_rect(v, r, SB_FILL_DOTS, SB_PEN_LINE);
        put_label(v, SB_LABEL_INSIDE, r,
                  (sb_label){.text = "left over", .number = size_words(v, whole), .mark = ""});
    }
}

/* An arrow with two heads above the sheet, the word in its middle. */
static void put_grain(const sheet_view *v) {
    sb_run *run = v->p->run;
    int64_t length = v->supply->length.nm, y = v->band.nm / 2, head = v->band.nm / 4;
    int64_t ends[] = {length * 38 / 100, length * 62 / 100};
    for (int i = 0; i < 2; i++) {
        int64_t tip = ends[i], back = i ? tip - 2 * head : tip + 2 * head;
        sb_shape_line(run, v->drawing, SB_PEN_LINE, (sb_point){{length / 2}, {y}}, (sb_point){{tip}, {y}});
        sb_shape *shape = sb_shape_add(run, v->drawing, SB_FILL_BLACK, SB_PEN_LINE, true);
        sb_shape_point(run, shape, (sb_length){tip}, (sb_length){y});
        sb_shape_point(run, shape, (sb_length){back}, (sb_length){y - head});
        sb_shape_point(run, shape, (sb_length){back}, (sb_length){y + head});
    }
    sb_label_add(run, v->drawing,
                 (sb_label){.place = SB_LABEL_INSIDE,
                            .at = {{length / 2}, {y}},
                            .wide = {length / 5},
                            .high = v->band,
                            .text = "grain",
                            .number = "",
                            .mark = ""});
}

/* A black triangle in the corner that all fences are set from. */
static void put_corner(const sheet_view *v) {
    sb_run *run = v->p->run;
    int64_t side = v->supply->length.nm / 90, x = v->supply->trim2.nm;
    int64_t y = v->band.nm + v->supply->width.nm - v->supply->trim1.nm;
    sb_shape *shape = sb_shape_add(run, v->drawing, SB_FILL_BLACK, SB_PEN_THIN, true);
    sb_shape_point(run, shape, (sb_length){x}, (sb_length){y});
    sb_shape_point(run, shape, (sb_length){x + side}, (sb_length){y});
    sb_shape_point(run, shape, (sb_length){x}, (sb_length){y - side});
    sb_label_add(
        run, v->drawing,
        (sb_label){
            .place = SB_LABEL_BELOW, .at = {{x}, {y}}, .text = "trued corner", .number = "", .mark = ""});
}

/* All sheets of a plan to the scale of the longest, which has the page's width: 180 mm. */
static int64_t one_scale(const cuts_paper *p) {
    int64_t longest = 3 * 180 * SB_NM_PER_MM;
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        int64_t length = p->problem->supplies.items[p->plan->sheets.items[i].supply].length.nm;
        longest = length > longest ? length : longest;
    }
    return longest / (180 * SB_NM_PER_MM);
}

void draw_sheet(const cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan, int64_t first,
                const char *title) {
    const sb_supply *supply = &p->problem->supplies.items[plan->supply];
    sheet_view v = {.p = p, .plan = plan, .supply = supply, .band = {supply->length.nm / 24}};
    v.drawing =
        sb_drawing_add(p->run, sheet, title, sb_pool_print(p->run->pool, "sheet-%lld", (long long)first),
                       supply->length, sb_length_add(supply->width, v.band));
    v.drawing->scale_most = one_scale(p);
    put_rect(&v, (sb_rect){{0}, {0}, supply->width, supply->length}, SB_FILL_HATCH, SB_PEN_LINE);
    put_leftovers(&v);
    for (size_t i = 0; i < plan->cuts.count;) {
        fence_setting s = fence_setting_from(plan, i);
        for (size_t end = i + s.times * s.pieces; i < end; i++)
            put_cut(&v, i, i > s.first);
    }
    put_parts(&v);
    put_strips(&v);
    put_corner(&v);
    put_grain(&v);
}
