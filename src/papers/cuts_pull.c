/* What to take from the pile and the rack before the first cut, and what goes back after the last. */
#include "papers/cuts.h"

static const char *origin(const cuts_paper *p, const sb_supply *supply) {
    if (supply->leftover)
        return *supply->label ? sb_pool_print(p->run->pool, "rack, %s", supply->label) : "rack";
    return p->cutlist ? p->cutlist->supplies.items[supply->tag].offer->merchant
                      : sb_pool_print(p->run->pool, "stock row %zu", supply->row);
}

static const char *size_words(const cuts_paper *p, const sb_supply *supply) {
    bool sheet = p->problem->stock.items[supply->stock].sheet;
    return sheet ? cuts_face(p, supply->width, supply->length) : cuts_length(p, supply->length);
}

static int64_t taken(const sb_plan *plan, size_t supply) {
    int64_t count = 0;
    for (size_t i = 0; i < plan->boards.count; i++)
        if (plan->boards.items[i].supply == supply)
            count += plan->boards.items[i].count;
    for (size_t i = 0; i < plan->sheets.count; i++)
        if (plan->sheets.items[i].supply == supply)
            count += plan->sheets.items[i].count;
    return count;
}

void cuts_pull(cuts_paper *p, sb_sheet *sheet) {
    sb_table *table = sb_table_add(p->run, sheet, "Pull these", "Count>|Stock|Size>|From|Done");
    for (size_t i = 0; i < p->problem->supplies.count; i++) {
        int64_t count = taken(p->plan, i);
        if (count == 0)
            continue;
        const sb_supply *supply = &p->problem->supplies.items[i];
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_count(count);
        row[1] = sb_cell_text(cuts_stock_title(p, supply->stock));
        row[2] = sb_cell_text(size_words(p, supply));
        row[3] = sb_cell_text(origin(p, supply));
        row[4] = sb_cell_tick();
    }
}

static void keep_row(cuts_paper *p, sb_table *table, int64_t count, size_t supply, const char *size,
                     const char *from) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_count(count);
    row[1] = sb_cell_text(cuts_stock_title(p, p->problem->supplies.items[supply].stock));
    row[2] = sb_cell_text(size);
    row[3] = sb_cell_text(from);
    row[4] = sb_cell_tick();
}

static void keep_from_boards(cuts_paper *p, sb_table *table) {
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->boards.count; i++) {
        const sb_board_plan *board = &p->plan->boards.items[i];
        if (board->leftover.nm > 0)
            keep_row(p, table, board->count, board->supply,
                     cuts_length(p, sb_length_down_to_step(board->leftover, p->style->step)),
                     sb_pool_print(p->run->pool, "board%s %s", board->count == 1 ? "" : "s",
                                   cuts_number(p, first, board->count)));
        first += board->count;
    }
}

static void keep_from_sheets(cuts_paper *p, sb_table *table) {
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &p->plan->sheets.items[i];
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            keep_row(p, table, sheet->count, sheet->supply,
                     cuts_face(p, sb_length_down_to_step(sheet->leftovers.items[j].w, p->style->step),
                               sb_length_down_to_step(sheet->leftovers.items[j].l, p->style->step)),
                     sb_pool_print(p->run->pool, "sheet%s %s", sheet->count == 1 ? "" : "s",
                                   cuts_number(p, first, sheet->count)));
        first += sheet->count;
    }
}

static bool keeps_anything(const sb_plan *plan) {
    for (size_t i = 0; i < plan->boards.count; i++)
        if (plan->boards.items[i].leftover.nm > 0)
            return true;
    for (size_t i = 0; i < plan->sheets.count; i++)
        if (plan->sheets.items[i].leftovers.count > 0)
            return true;
    return false;
}

void cuts_keep(cuts_paper *p, sb_sheet *sheet) {
    if (!keeps_anything(p->plan))
        return;
    sb_table *table = sb_table_add(p->run, sheet, "When all is cut: back into the rack, with a label",
                                   "Count>|Stock|Size>|From|Done");
    keep_from_boards(p, table);
    keep_from_sheets(p, table);
}
