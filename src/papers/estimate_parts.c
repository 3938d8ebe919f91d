/* The sheet Parts: what the saw makes; and the sheet Lengths: where each length comes from. */
#include "papers/estimate.h"

#include <string.h>

enum {
    PART_NAME,
    PART_OF,
    PART_STOCK,
    PART_COUNT,
    PART_LENGTH,
    PART_WIDTH,
    PART_THICKNESS,
    PART_BLANKS,
    PART_CUT_LENGTH,
    PART_CUT_WIDTH,
    PART_ENDS
};

static const char *end_words(const estimate_paper *p, sb_cut_end end) {
    const sb_style *style = &p->shop->settings.style;
    if (end.mitre.udeg == 0 && end.bevel.udeg == 0)
        return "square";
    const char *mitre =
        end.mitre.udeg ? sb_pool_print(p->run->pool, "mitre %s", sb_write_angle(p->run, end.mitre, style))
                       : "";
    const char *bevel =
        end.bevel.udeg ? sb_pool_print(p->run->pool, "bevel %s", sb_write_angle(p->run, end.bevel, style))
                       : "";
    return sb_pool_print(p->run->pool, "%s%s%s", mitre, *mitre && *bevel ? " " : "", bevel);
}

static const char *ends_words(const estimate_paper *p, const sb_part *part) {
    const char *one = end_words(p, part->end1), *two = end_words(p, part->end2);
    bool square = part->end1.mitre.udeg == 0 && part->end1.bevel.udeg == 0 && part->end2.mitre.udeg == 0 &&
                  part->end2.bevel.udeg == 0;
    if (square)
        return "";
    return strcmp(one, two) == 0 ? sb_pool_print(p->run->pool, "both %s", one)
                                 : sb_pool_print(p->run->pool, "%s / %s", one, two);
}

/* "Bench", or "Bench / end frame": the path begins with the piece's name, which its title says better. */
static const char *place_words(const estimate_paper *p, const sb_part *part) {
    const sb_takeoff_piece *piece = &p->e->takeoff->pieces.items[part->piece];
    const char *below = part->path ? strstr(part->path, " / ") : NULL;
    return below ? sb_pool_print(p->run->pool, "%s%s", piece->title, below) : piece->title;
}

static void put_part(estimate_paper *p, sb_table *table, const sb_part *part) {
    sb_cell *row = sb_row_add(p->run, table);
    row[PART_NAME] = sb_cell_text(part->title ? part->title : part->name);
    row[PART_OF] = sb_cell_text(place_words(p, part));
    row[PART_STOCK] = sb_cell_text(part->stock->id);
    row[PART_COUNT] = sb_cell_count(part->count);
    row[PART_LENGTH] = sb_cell_length(part->length);
    row[PART_WIDTH] = sb_cell_length(part->width);
    row[PART_THICKNESS] = sb_cell_size(part->thickness);
    row[PART_BLANKS] = sb_cell_count(part->blanks);
    row[PART_CUT_LENGTH] = sb_cell_length(part->cut_length);
    if (part->cut_width.nm > 0)
        row[PART_CUT_WIDTH] = sb_cell_length(part->cut_width);
    row[PART_ENDS] = sb_cell_text(ends_words(p, part));
}

void estimate_parts(estimate_paper *p) {
    sb_paragraph_add(
        p->run, p->parts,
        "Finished sizes, and what the saw makes for them. Angles are from square, as the saw's scale shows.",
        false);
    sb_table *table =
        sb_table_add(p->run, p->parts, "",
                     "Part|Of|Stock|Count>|Length>|Width>|Thick>|Blanks>|Cut length>|Cut width>|Ends");
    for (size_t i = 0; i < p->e->takeoff->parts.count; i++)
        put_part(p, table, &p->e->takeoff->parts.items[i]);
}

static void put_length(const estimate_paper *p, sb_table *table, const sb_part *part) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(part->title ? part->title : part->name);
    row[1] = sb_cell_text(place_words(p, part));
    row[2] = sb_cell_length(part->length);
    row[3] = sb_cell_text(part->length_worked ? part->length_worked : "");
    row[3].place = part->place;
}

void estimate_lengths(estimate_paper *p) {
    sb_table *table = sb_table_add(p->run, p->lengths, "", "Part|Of|Length>|Comes from");
    for (size_t i = 0; i < p->e->takeoff->parts.count; i++)
        put_length(p, table, &p->e->takeoff->parts.items[i]);
}
