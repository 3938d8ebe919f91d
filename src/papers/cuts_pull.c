/* What to take from the pile and the rack before the first cut, and what goes back after the last. */
#include "papers/cuts.h"

static const char *origin(const cuts_paper *p, const sb_supply *supply) {
    if (supply->leftover)
        return *supply->label ? sb_pool_print(p->run->pool, "rack, %s", supply->label) : "rack";
    return p->cutlist ? p->cutlist->supplies.items[supply->tag].offer->merchant
                      : sb_pool_print(p->run->pool, "stock row %zu", supply->row);
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
        row[2] = sb_cell_text(cuts_size(p, supply));
        row[3] = sb_cell_text(origin(p, supply));
        row[4] = sb_cell_tick();
    }
}

/* ---- what goes back ---- */

typedef struct keeping {
    cuts_paper *p;
    sb_sheet *sheet;
    sb_table *table; /* NULL: nothing so far */
} keeping;

static const char *origin_words(const keeping *k, const char *what, int64_t first, int64_t count) {
    return sb_pool_print(k->p->run->pool, "%s%s %s", what, count == 1 ? "" : "s",
                         cuts_number(k->p, first, count));
}

static void keep_row(keeping *k, int64_t count, size_t supply, const char *size, const char *from) {
    cuts_paper *p = k->p;
    if (!k->table)
        k->table = sb_table_add(p->run, k->sheet, "When all is cut: back into the rack, with a label",
                                "Count>|Stock|Size>|From|Done");
    sb_cell *row = sb_row_add(p->run, k->table);
    row[0] = sb_cell_count(count);
    row[1] = sb_cell_text(cuts_stock_title(p, p->problem->supplies.items[supply].stock));
    row[2] = sb_cell_text(size);
    row[3] = sb_cell_text(from);
    row[4] = sb_cell_tick();
}

/* Those of one size and board in one row. */
static void keep_strips(keeping *k, const sb_board_plan *board, int64_t first) {
    const cuts_paper *p = k->p;
    const sb_need *needs = p->problem->needs.items;
    for (size_t i = 0, alike; i < board->parts.count; i += alike) {
        size_t need = board->parts.items[i].need;
        sb_length width = cuts_strip_left(p, board, i);
        for (alike = 1; i + alike < board->parts.count; alike++)
            if (needs[board->parts.items[i + alike].need].length.nm != needs[need].length.nm ||
                cuts_strip_left(p, board, i + alike).nm != width.nm)
                break;
        if (!cuts_strip_kept(p, need, width))
            continue;
        keep_row(k, sb_mul(board->count, (int64_t)alike), board->supply,
                 cuts_face(p, needs[need].length, width),
                 sb_pool_print(p->run->pool, "%s, beside ripped parts",
                               origin_words(k, "board", first, board->count)));
    }
}

static void keep_from_boards(keeping *k) {
    int64_t first = 1;
    for (size_t i = 0; i < k->p->plan->boards.count; i++) {
        const sb_board_plan *board = &k->p->plan->boards.items[i];
        if (board->leftover.nm > 0)
            keep_row(k, board->count, board->supply, cuts_length(k->p, cuts_marks_of(k->p, board).rest),
                     origin_words(k, "board", first, board->count));
        keep_strips(k, board, first);
        first += board->count;
    }
}

static void keep_from_sheets(keeping *k) {
    const cuts_paper *p = k->p;
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &p->plan->sheets.items[i];
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            keep_row(k, sheet->count, sheet->supply,
                     cuts_face(p, sb_length_down_to_step(sheet->leftovers.items[j].l, p->style->step),
                               sb_length_down_to_step(sheet->leftovers.items[j].w, p->style->step)),
                     origin_words(k, "sheet", first, sheet->count));
        first += sheet->count;
    }
}

void cuts_keep(cuts_paper *p, sb_sheet *sheet) {
    keeping k = {.p = p, .sheet = sheet};
    keep_from_boards(&k);
    keep_from_sheets(&k);
}
