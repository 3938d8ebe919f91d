/* Sheet by sheet: numbered cuts in the order of work, each with its fence setting from a trued or sawn edge. */
#include "papers/cuts_sheets.h"
#include "papers/draw.h"

static const char intro[] =
    "Grain runs along the sheet. Cut in the order of the numbers. The fence is set from the near edge of the "
    "piece to the near side of the blade; one setting serves so many cuts (times) in each of so many pieces "
    "of the stated size, along the grain first. Strips S1, S2 and so on wait until a cut names them. In "
    "truing, the first cut takes the stated amount off a factory edge; then the sheet is turned, and the "
    "second has the trued edge against the fence.";

/* Truing: the first cut takes off what the sheet's edge loses, the second has its fence against the trued edge. */
static void true_row(const cuts_paper *p, sb_cell *row, const sb_sheet_plan *plan, fence_setting s) {
    const sb_supply *supply = &p->problem->supplies.items[plan->supply];
    const sb_sheet_cut *last = &plan->cuts.items[s.first + s.times - 1];
    row[1] = sb_cell_strong(sb_cell_length(cuts_mark(p, fence_of(last))));
    sb_length off = last->across_width ? supply->trim2 : supply->trim1;
    row[5] = sb_cell_text(sb_pool_print(p->run->pool, "true %s: %s off, turn",
                                        last->across_width ? "ends" : "sides", cuts_length(p, off)));
}

/* "S1 to S3: 826 x 1234 mm"; of the sheet itself and of a rest that lies at the fence already, its size alone. */
static const char *piece_words(const cuts_paper *p, const sb_sheet_plan *plan, const sheet_strips *strips,
                               fence_setting s) {
    const sb_sheet_cut *cuts = &plan->cuts.items[s.first];
    size_t *numbers = SB_NEW_ARRAY(p->run->pool, size_t, s.pieces), count = 0;
    for (size_t i = 0; i < s.pieces; i++) {
        numbers[count] = sheet_strip_number(strips, cuts[i * s.times].divides);
        count += numbers[count] > 0;
    }
    const char *face = cuts_face(p, cuts->divides.l, cuts->divides.w);
    return count == 0
               ? face
               : sb_pool_print(p->run->pool, "%s: %s", sheet_strips_words(p->run, numbers, count), face);
}

static void setting_row(const cuts_paper *p, sb_table *table, const sb_sheet_plan *plan,
                        const sheet_strips *strips, fence_setting s) {
    const sb_sheet_cut *cut = &plan->cuts.items[s.first];
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(cuts_number(p, (int64_t)s.first + 1, (int64_t)(s.times * s.pieces)));
    row[1] = sb_cell_strong(sb_cell_length(cuts_mark(p, fence_of(cut))));
    row[2] = sb_cell_count((int64_t)s.times);
    row[3] = sb_cell_count((int64_t)s.pieces);
    row[4] = sb_cell_text(piece_words(p, plan, strips, s));
    row[5] = sb_cell_text(sb_pool_print(p->run->pool, "%s %s", cut->across_width ? "crosscut" : "rip",
                                        sheet_result_words(p, plan, strips, s)));
    row[6] = sb_cell_tick();
    if (cut->stage == 0)
        true_row(p, row, plan, s);
}

static void cuts_table(const cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan, const char *title) {
    sb_table *table = sb_table_add(p->run, sheet, title, "Cut|Fence at>|Times>|Pieces>|Piece|What|Done");
    const sheet_strips strips = sheet_strips_of(p, plan);
    for (size_t i = 0; i < plan->cuts.count;) {
        fence_setting s = fence_setting_from(plan, i);
        setting_row(p, table, plan, &strips, s);
        i += s.times * s.pieces;
    }
}

/* ---- parts ---- */

/* Parts alike in one row across or along the sheet share a line. */
typedef struct places {
    const sb_sheet_part *part; /* the first */
    size_t count;
    const char *sides, *ends; /* where they begin, from the trued corner */
} places;

static const char *place_words(const cuts_paper *p, sb_length at, sb_length trim) {
    return sb_write_length(p->run, cuts_mark(p, sb_length_sub(at, trim)), p->style);
}

static places place_of(const cuts_paper *p, const sb_sheet_plan *plan, size_t index) {
    const sb_supply *supply = &p->problem->supplies.items[plan->supply];
    const sb_sheet_part *part = &plan->parts.items[index];
    return (places){part, 1, place_words(p, part->at.x, supply->trim1),
                    place_words(p, part->at.y, supply->trim2)};
}

static bool lie_alike(const sb_sheet_part *a, const sb_sheet_part *b, bool across) {
    return a->need == b->need && a->turned == b->turned &&
           (across ? a->at.y.nm == b->at.y.nm : a->at.x.nm == b->at.x.nm);
}

/* The parts from `index` on that share a line. */
static places places_from(const cuts_paper *p, const sb_sheet_plan *plan, size_t index) {
    places all = place_of(p, plan, index);
    const sb_sheet_part *parts = plan->parts.items;
    bool across = index + 1 < plan->parts.count && lie_alike(all.part, &parts[index + 1], true);
    const char **list = across ? &all.sides : &all.ends;
    for (size_t i = index + 1; i < plan->parts.count && lie_alike(all.part, &parts[i], across); i++) {
        places next = place_of(p, plan, i);
        *list = sb_pool_print(p->run->pool, "%s, %s", *list, across ? next.sides : next.ends);
        all.count++;
    }
    return all;
}

static void leftover_rows(const cuts_paper *p, sb_table *table, const sb_sheet_plan *plan) {
    const sb_supply *supply = &p->problem->supplies.items[plan->supply];
    for (size_t i = 0; i < plan->leftovers.count; i++) {
        sb_rect left = plan->leftovers.items[i];
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_text("left over: back into the rack");
        row[1] = sb_cell_count(1);
        row[2] = sb_cell_length(sb_length_down_to_step(left.w, p->style->step));
        row[3] = sb_cell_length(sb_length_down_to_step(left.l, p->style->step));
        row[4] = sb_cell_text(place_words(p, left.x, supply->trim1));
        row[5] = sb_cell_text(place_words(p, left.y, supply->trim2));
        row[6] = sb_cell_tick();
    }
}

static const char *name_words(const cuts_paper *p, const sb_sheet_part *part) {
    sb_length longest = part->at.w.nm > part->at.l.nm ? part->at.w : part->at.l;
    const char *name = cuts_name(p, part->need);
    return cuts_is_short(p, longest) ? sb_pool_print(p->run->pool, "%s; %s", name, cuts_short_rip) : name;
}

static void parts_table(const cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan, int64_t first) {
    const char *title =
        sb_pool_print(p->run->pool, "Parts of %s %s, and where they begin from the trued corner",
                      plan->count == 1 ? "sheet" : "each of sheets", cuts_number(p, first, plan->count));
    sb_table *table = sb_table_add(p->run, sheet, title, "Part|Off>|Across>|Along>|From side|From end|Done");
    for (size_t i = 0; i < plan->parts.count;) {
        places at = places_from(p, plan, i);
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_text(name_words(p, at.part));
        row[1] = sb_cell_count((int64_t)at.count);
        row[2] = sb_cell_length(at.part->at.w);
        row[3] = sb_cell_length(at.part->at.l);
        row[4] = sb_cell_text(at.sides);
        row[5] = sb_cell_text(at.ends);
        row[6] = sb_cell_tick();
        i += at.count;
    }
    leftover_rows(p, table, plan);
}

/* ---- sheets ---- */

static void add_sheet(cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan, int64_t first) {
    const sb_supply *supply = &p->problem->supplies.items[plan->supply];
    const char *label = supply->leftover && *supply->label
                            ? sb_pool_print(p->run->pool, ", rack piece %s", supply->label)
                            : "";
    const char *title = sb_pool_print(p->run->pool, "%s %s: %s, %s%s", plan->count == 1 ? "Sheet" : "Sheets",
                                      cuts_number(p, first, plan->count), cuts_stock_title(p, supply->stock),
                                      cuts_size(p, supply), label);
    draw_sheet(p, sheet, plan, first, title);
    cuts_table(p, sheet, plan, title);
    parts_table(p, sheet, plan, first);
}

void cuts_sheets(cuts_paper *p, sb_sheet *sheet) {
    sb_heading_add(p->run, sheet, "Sheets");
    sb_paragraph_add(p->run, sheet, intro, false);
    draw_legend(p, sheet, "length x width; rings: cuts, frames: strips");
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        const sb_sheet_plan *plan = &p->plan->sheets.items[i];
        if (i > 0)
            sb_room_break_add(p->run, sheet);
        add_sheet(p, sheet, plan, first);
        first += plan->count;
    }
}
