/* What to take from the pile and the rack before the first cut, and what goes back after the last. */
#include "papers/cuts.h"

#include <string.h>

static const char *origin(const cuts_paper *p, const sb_supply *supply) {
    if (supply->leftover)
        return *supply->label ? sb_pool_print(p->run->pool, "rack, %s", supply->label) : "rack";
    return p->cutlist       ? p->cutlist->supplies.items[supply->tag].offer->merchant
           : *supply->label ? sb_pool_print(p->run->pool, "stock row %zu, %s", supply->row, supply->label)
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

static sb_cell *pull_row(cuts_paper *p, sb_sheet *sheet, sb_table **table) {
    if (!*table)
        *table = sb_table_add(p->run, sheet, "Pull these", "Count>|Stock|Size>|From|Done");
    return sb_row_add(p->run, *table);
}

/* Timber in random widths: as much of it as is bought, to lay the parts out on. */
static void pull_volumes(cuts_paper *p, sb_sheet *sheet, sb_table **table) {
    const sb_takeoff *takeoff = p->takeoff;
    for (size_t i = 0; takeoff && i < takeoff->totals.count; i++) {
        const sb_stock *stock = takeoff->totals.items[i].stock;
        int64_t amount = 0;
        if (stock->kind != SB_STOCK_VOLUME)
            continue;
        for (size_t j = 0; j < takeoff->usages.count; j++)
            if (takeoff->usages.items[j].stock == stock)
                amount = sb_add(amount, takeoff->usages.items[j].amount);
        sb_cell *row = pull_row(p, sheet, table);
        row[1] = sb_cell_text(stock->title);
        row[2] = sb_cell_text(sb_stock_amount_text(p->run, stock, amount, p->style));
        row[3] = sb_cell_text("random widths");
        row[4] = sb_cell_tick();
    }
}

void cuts_pull(cuts_paper *p, sb_sheet *sheet) {
    sb_table *table = NULL;
    for (size_t i = 0; i < p->problem->supplies.count; i++) {
        int64_t count = taken(p->plan, i);
        if (count == 0)
            continue;
        const sb_supply *supply = &p->problem->supplies.items[i];
        sb_cell *row = pull_row(p, sheet, &table);
        row[0] = sb_cell_count(count);
        row[1] = sb_cell_text(cuts_stock_title(p, supply->stock));
        row[2] = sb_cell_text(cuts_size(p, supply));
        row[3] = sb_cell_text(origin(p, supply));
        row[4] = sb_cell_tick();
    }
    pull_volumes(p, sheet, &table);
}

/* ---- what goes back ---- */

typedef struct keeping {
    cuts_paper *p;
    sb_sheet *sheet;
    sb_table *table, *strips; /* NULL: nothing so far */
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

static bool ends_with(const char *text, const char *end) {
    size_t size = strlen(text), tail = strlen(end);
    return size >= tail && strcmp(text + size - tail, end) == 0;
}

/* A strip is no stock of its own: it waits for small parts, without a label. Those of one size stand in one row. */
static void strip_row(keeping *k, int64_t count, size_t supply, const char *size, const char *from) {
    cuts_paper *p = k->p;
    const char *title = cuts_stock_title(p, p->problem->supplies.items[supply].stock);
    for (size_t i = 0; k->strips && i < k->strips->rows.count; i++) {
        sb_cell *row = k->strips->rows.items[i];
        if (strcmp(row[1].text, title) != 0 || strcmp(row[2].text, size) != 0)
            continue;
        row[0] = sb_cell_count(row[0].amount + count);
        if (!ends_with(row[3].text, from))
            row[3].text = sb_pool_print(p->run->pool, "%s, %s", row[3].text, from);
        return;
    }
    if (!k->strips)
        k->strips = sb_table_add(p->run, k->sheet, "Strips ripped off beside parts, to keep for small ones",
                                 "Count>|Stock|Size>|From|Done");
    sb_cell *row = sb_row_add(p->run, k->strips);
    row[0] = sb_cell_count(count);
    row[1] = sb_cell_text(title);
    row[2] = sb_cell_text(size);
    row[3] = sb_cell_text(from);
    row[4] = sb_cell_tick();
}

static void keep_strips(keeping *k, const sb_board_plan *board, int64_t first) {
    const cuts_paper *p = k->p;
    for (size_t i = 0; i < board->parts.count; i++) {
        size_t need = board->parts.items[i].need;
        sb_length width = cuts_strip_left(p, board, i);
        if (cuts_strip_kept(p, board, i))
            strip_row(k, board->count, board->supply,
                      cuts_face(p, p->problem->needs.items[need].length, width),
                      origin_words(k, "board", first, board->count));
    }
}

static void keep_from_boards(keeping *k) {
    int64_t first = 1;
    for (size_t i = 0; i < k->p->plan->boards.count; i++) {
        const sb_board_plan *board = &k->p->plan->boards.items[i];
        if (board->leftover.nm > 0)
            keep_row(k, board->count, board->supply, cuts_length(k->p, cuts_marks_of(k->p, board).rest),
                     origin_words(k, "board", first, board->count));
        first += board->count;
    }
}

static void keep_from_sheets(keeping *k) {
    const cuts_paper *p = k->p;
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; i++) {
        const sb_sheet_plan *sheet = &p->plan->sheets.items[i];
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            keep_row(k, sheet->count, sheet->supply, cuts_kept(p, sheet->leftovers.items[j]),
                     origin_words(k, "sheet", first, sheet->count));
        first += sheet->count;
    }
}

void cuts_keep(cuts_paper *p, sb_sheet *sheet) {
    keeping k = {.p = p, .sheet = sheet};
    keep_from_boards(&k);
    keep_from_sheets(&k);
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->boards.count; first += p->plan->boards.items[i++].count)
        keep_strips(&k, &p->plan->boards.items[i], first);
}
