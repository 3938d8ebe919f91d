/* The sheet Inputs: what was ordered, in which size, and what the recipes worked with. */
#include "papers/estimate.h"

static void put(sb_cell *row, const char *name, const char *value, const char *text) {
    row[1] = sb_cell_text(name);
    row[2] = sb_cell_text(value ? value : "");
    row[3] = sb_cell_text(text ? text : "");
}

static void put_piece(const estimate_paper *p, sb_table *table, const sb_takeoff_piece *piece) {
    sb_cell *row = sb_group_add(p->run, table);
    row[0] = sb_cell_strong(sb_cell_text(piece->title));
    put(row, "size", piece->size_text, sb_pool_print(p->run->pool, "%lld off", (long long)piece->count));
    for (size_t i = 0; i < piece->input_count; i++)
        put(sb_row_add(p->run, table), piece->inputs[i].name, piece->inputs[i].value, piece->inputs[i].text);
}

void estimate_inputs(estimate_paper *p) {
    sb_table *table = sb_table_add(p->run, p->inputs, "", "Piece|Input|Value|What it is");
    for (size_t i = 0; i < p->e->takeoff->pieces.count; i++)
        put_piece(p, table, &p->e->takeoff->pieces.items[i]);
}
