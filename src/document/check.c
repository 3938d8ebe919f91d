/* What must hold of a document before anyone writes it. */
#include "sawbill/document.h"

static const sb_table *table_of(const sb_block *block) {
    return block->kind == SB_BLOCK_TABLE ? block->table : NULL;
}

static bool has_table(const sb_document *document, const sb_table *table) {
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++)
            if (table && table_of(&document->sheets.items[s]->blocks.items[b]) == table)
                return true;
    return false;
}

static bool in_table(const sb_document *document, const sb_relation *r) {
    return has_table(document, r->table) && r->column < r->table->column_count &&
           r->row < r->table->rows.count && r->row_to < r->table->rows.count;
}

/* Only cells of the document are meant, and every branch that a kind needs is there. */
static bool sound_relation(const sb_document *document, const sb_relation *r) {
    if (!r)
        return false;
    switch (r->kind) {
    case SB_REL_CELL:
        return in_table(document, r);
    case SB_REL_SUM:
        return r->row > r->row_to ? r->table != NULL : in_table(document, r) && !r->table->groups.count;
    case SB_REL_SUM_OF:
        return in_table(document, r) && !r->table->groups.count && r->key < r->table->column_count &&
               sound_relation(document, r->a);
    case SB_REL_PICK: /* of rows that may not be parted either */
        return in_table(document, r) && r->column_to < r->table->column_count && !r->table->groups.count &&
               r->column <= r->column_to && sound_relation(document, r->a);
    case SB_REL_REST:
    case SB_REL_SHARE:
        return in_table(document, r) && r->column_to < r->table->column_count && !r->table->groups.count &&
               r->row <= r->own && r->own <= r->row_to && sound_relation(document, r->a);
    case SB_REL_NUMBER:
        return r->amount != SB_BAD;
    case SB_REL_ROUND:
        return sound_relation(document, r->a);
    case SB_REL_ADD:
    case SB_REL_SUB:
    case SB_REL_MUL:
    case SB_REL_DIV:
    case SB_REL_ROUND_UP_TO:
    case SB_REL_WHERE:
    case SB_REL_MAX:
        break;
    }
    return sound_relation(document, r->a) && sound_relation(document, r->b);
}

static bool sound_cell(sb_run *run, const sb_document *document, const sb_cell *cell, const char *heading) {
    if (cell->amount == SB_BAD) {
        sb_error(run, cell->place, "a figure is too large to be written: column \"%s\" of \"%s\"", heading,
                 document->title);
        return false;
    }
    if (cell->relation && !sound_relation(document, cell->relation)) {
        sb_bug(run, cell->place, "a figure follows from a cell that \"%s\" does not have: column \"%s\"",
               document->title, heading);
        return false;
    }
    return true;
}

static bool sound_table(sb_run *run, const sb_document *document, const sb_table *table) {
    bool sound = true;
    for (size_t row = 0; row < table->rows.count; row++)
        for (size_t column = 0; column < table->column_count; column++)
            sound &= sound_cell(run, document, &table->rows.items[row][column], table->headings[column].text);
    return sound;
}

bool sb_document_sound(sb_run *run, const sb_document *document) {
    bool sound = true;
    for (size_t s = 0; s < document->sheets.count; s++)
        for (size_t b = 0; b < document->sheets.items[s]->blocks.count; b++) {
            const sb_table *table = table_of(&document->sheets.items[s]->blocks.items[b]);
            if (table)
                sound &= sound_table(run, document, table);
        }
    return sound;
}
