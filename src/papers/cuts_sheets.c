/* Sheet by sheet: numbered cuts in the order of work, each with its fence setting from a trued or sawn edge. */
#include "papers/cuts.h"

static void cut_row(const cuts_paper *p, sb_table *table, const sb_sheet_cut *cut, int64_t number) {
    const char *kind = cut->across_width ? "crosscut" : "rip";
    sb_length from = cut->across_width ? cut->divides.y : cut->divides.x;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_count(number);
    row[1] = sb_cell_text(cut->stage == 0 ? sb_pool_print(p->run->pool, "true an edge (%s)", kind) : kind);
    row[2] = sb_cell_text(cuts_face(p, cut->divides.w, cut->divides.l));
    if (cut->stage > 0)
        row[3] = sb_cell_strong(sb_cell_length(sb_length_sub(cut->at, from)));
    row[4] = sb_cell_tick();
}

static void parts_table(const cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan) {
    const sb_supply *supply = &p->problem->supplies.items[plan->supply];
    sb_table *table = sb_table_add(p->run, sheet, "Parts on it, from the trued corner",
                                   "Part|Across>|Along>|From side>|From end>|Grain|Done");
    for (size_t i = 0; i < plan->parts.count; i++) {
        const sb_sheet_part *part = &plan->parts.items[i];
        const sb_need *need = &p->problem->needs.items[part->need];
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_text(cuts_name(p, part->need));
        row[1] = sb_cell_length(part->at.w);
        row[2] = sb_cell_length(part->at.l);
        row[3] = sb_cell_length(sb_length_sub(part->at.x, supply->trim1));
        row[4] = sb_cell_length(sb_length_sub(part->at.y, supply->trim2));
        row[5] = sb_cell_text(need->grain == SB_CUT_FREE ? "either way"
                              : part->turned             ? "across the part"
                                                         : "along the part");
        row[6] = sb_cell_tick();
    }
}

static void cuts_table(const cuts_paper *p, sb_sheet *sheet, const sb_sheet_plan *plan, const char *title) {
    sb_table *table = sb_table_add(p->run, sheet, title, "Cut>|What|Of the piece>|Fence at>|Done");
    for (size_t i = 0; i < plan->cuts.count; i++)
        cut_row(p, table, &plan->cuts.items[i], (int64_t)i + 1);
}

void cuts_sheets(cuts_paper *p, sb_sheet *sheet) {
    sb_heading_add(p->run, sheet, "Sheets: cuts in order");
    sb_paragraph_add(p->run, sheet,
                     "Grain runs along the sheet. The fence is measured from the edge of the piece nearest "
                     "the trued corner to the near "
                     "side of the blade; what falls beyond the blade waits for its own cuts.",
                     true);
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        const sb_sheet_plan *plan = &p->plan->sheets.items[i];
        const sb_supply *supply = &p->problem->supplies.items[plan->supply];
        const char *title =
            sb_pool_print(p->run->pool, "%s %s: %s, %s", plan->count == 1 ? "Sheet" : "Sheets",
                          cuts_number(p, first, plan->count), cuts_stock_title(p, supply->stock),
                          cuts_face(p, supply->width, supply->length));
        cuts_table(p, sheet, plan, title);
        parts_table(p, sheet, plan);
        first += plan->count;
    }
}
