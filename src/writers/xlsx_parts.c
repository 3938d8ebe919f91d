/* A worksheet of several pages where a page would part what belongs together: it becomes several worksheets, each of which
 * begins with a whole group, or with a heading and what is below it. */
#include "writers/xlsx.h"

typedef struct walk {
    sb_run *run;
    const xlsx_sheet *whole;
    double room, used; /* of the page, points */
    size_t block;      /* that the rows being walked are in */
    xlsx_sheets parts;
} walk;

/* The row behind those that stand with this one. */
static uint32_t together_to(const xlsx_sheet *whole, uint32_t row, xlsx_keep least) {
    uint32_t end = row + 1;
    while (end < whole->row_count && whole->keeps[end] >= least)
        end++;
    return end;
}

static const xlsx_block *place_at(walk *w, uint32_t row) {
    while (w->block + 1 < w->whole->block_count && w->whole->blocks[w->block + 1].row <= row)
        w->block++;
    return &w->whole->blocks[w->block];
}

/* Sums may run over tables without groups: those stay in one piece. */
static bool may_begin(const xlsx_block *place, uint32_t row) {
    return row == place->row || place->block->table->groups.count > 0;
}

/* Empty rows between two groups stand on neither page. */
static size_t rows_to(const xlsx_sheet *whole, const xlsx_block *place, uint32_t row) {
    while (whole->keeps[row - 1] == XLSX_GAP)
        row--;
    return place->from + row - xlsx_body_row(place);
}

/* The part so far ends above the row; the next one begins with it. */
static void begin_part(walk *w, const xlsx_block *place, uint32_t row) {
    const sb_block *first = w->whole->first + w->block;
    xlsx_sheet *last = &w->parts.items[w->parts.count - 1], next = *w->whole;
    bool within = row > place->row;
    last->block_count = (size_t)(first - last->first) + within;
    last->rows_to = within ? rows_to(w->whole, place, row) : 0;
    next.first = first;
    next.block_count = w->whole->block_count - w->block;
    next.rows_from = within ? place->from + row - xlsx_body_row(place) : 0;
    SB_PUSH(w->run->pool, w->parts, next);
}

static void place_rows(walk *w, uint32_t from, uint32_t to) {
    const xlsx_block *place = place_at(w, from);
    double height = xlsx_height(w->whole, from, to);
    if (w->used > 0 && w->used + height > w->room) {
        if (height > w->whole->heights[from] && may_begin(place, from))
            begin_part(w, place, from);
        w->used = from > place->row ? xlsx_height(w->whole, place->row, xlsx_body_row(place)) : 0;
    }
    for (uint32_t row = from; row < to; row++)
        w->used += w->whole->heights[row];
}

/* A group that is longer than a page begins where it stands, and fills its pages. */
static void place_all(walk *w) {
    for (uint32_t row = 0; row < w->whole->row_count;) {
        uint32_t end = together_to(w->whole, row, XLSX_GROUPED);
        bool whole = xlsx_height(w->whole, row, end) <= w->room;
        for (uint32_t next; row < end; row = next) {
            next = whole ? end : together_to(w->whole, row, XLSX_BOUND);
            place_rows(w, row, next);
        }
    }
}

xlsx_sheets xlsx_parts_of(sb_run *run, const sb_document *document, const xlsx_sheet *whole) {
    walk w = {.run = run, .whole = whole, .room = xlsx_page_height(document, whole)};
    SB_PUSH(run->pool, w.parts, *whole);
    if (!xlsx_drawn_onto_page(document, whole))
        place_all(&w);
    return w.parts;
}
