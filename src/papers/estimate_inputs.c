/* The sheet Inputs: what was ordered, in which size, and what the recipes worked with. */
#include "papers/estimate.h"

static sb_cell *put(const estimate_paper *p, sb_table *table, const char *piece, const char *name,
                    const char *value, const char *text) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(piece);
    row[1] = sb_cell_text(name);
    row[2] = sb_cell_text(value);
    row[3] = sb_cell_text(text ? text : "");
    return row;
}

static void put_piece(const estimate_paper *p, sb_table *table, const sb_takeoff_piece *piece) {
    sb_cell *row = put(p, table, piece->title, "size", piece->size_text ? piece->size_text : "",
                       sb_pool_print(p->run->pool, "%lld off", (long long)piece->count));
    row[0].strong = true;
    for (size_t i = 0; i < piece->input_count; i++)
        put(p, table, "", piece->inputs[i].name, piece->inputs[i].value, piece->inputs[i].text);
}

void estimate_inputs(estimate_paper *p) {
    sb_table *table = sb_table_add(p->run, p->inputs, "", "Piece|Input|Value|What it is");
    for (size_t i = 0; i < p->e->takeoff->pieces.count; i++)
        put_piece(p, table, &p->e->takeoff->pieces.items[i]);
}
