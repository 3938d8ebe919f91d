/* What is done to parts off the saw: glued up, edged, planed, trimmed to fit. */
#include "papers/cuts.h"

static const char *glue_words(const cuts_paper *p, const sb_part *part) {
    const char *words = "";
    if (part->staves > 1)
        words = sb_pool_print(
            p->run->pool, "glue up from %lld staves of %s x %s", (long long)part->staves,
            sb_write_length(p->run, part->cut_width.nm ? part->cut_width : part->stock->width, p->style),
            sb_write_length_unit(p->run, part->cut_length, p->style));
    if (part->layers > 1)
        words = sb_pool_print(p->run->pool, "%s%sglue face to face, %lld layers", words, *words ? "; " : "",
                              (long long)part->layers);
    return words;
}

static const char *edge_words(const cuts_paper *p, const sb_part *part) {
    if (!part->edging || part->edging_edges == 0)
        return "";
    unsigned e = part->edging_edges;
    return sb_pool_print(p->run->pool, "%s on%s%s%s%s", part->edging->title,
                         e & SB_EDGE_FRONT ? " front" : "", e & SB_EDGE_BACK ? " back" : "",
                         e & SB_EDGE_LEFT ? " left" : "", e & SB_EDGE_RIGHT ? " right" : "");
}

static const char *planed_words(const cuts_paper *p, const sb_part *part) {
    return part->planed ? sb_pool_print(p->run->pool, "plane to %s x %s",
                                        sb_write_length(p->run, part->thickness, p->style),
                                        cuts_length(p, part->width))
                        : "";
}

static const char *fit_words(const cuts_paper *p, const sb_part *part) {
    if (part->allow.nm > 0)
        return sb_pool_print(p->run->pool, "cut %s long, at %s", cuts_length(p, part->allow),
                             cuts_length(p, part->cut_length));
    return part->allow_width.nm > 0
               ? sb_pool_print(p->run->pool, "cut %s wide", cuts_length(p, part->allow_width))
               : "";
}

static const char *ends_words(const cuts_paper *p, const sb_part *part) {
    if (!sb_part_ends_later(part) || (cuts_end_square(part->end1) && cuts_end_square(part->end2)))
        return "";
    const char *ends = cuts_ends(p->run, part->end1, part->end2, p->style);
    const char *reach = cuts_later_limits(p, part);
    return *reach ? sb_pool_print(p->run->pool, "%s; %s", ends, reach) : ends;
}

static const char *joined(const cuts_paper *p, const char *const *words, size_t count) {
    const char *all = "";
    for (size_t i = 0; i < count; i++)
        if (*words[i])
            all = sb_pool_print(p->run->pool, "%s%s%s", all, *all ? "; " : "", words[i]);
    return all;
}

const char *cuts_next_words(const cuts_paper *p, const sb_part *part) {
    const char *words[] = {glue_words(p, part), planed_words(p, part), fit_words(p, part),
                           ends_words(p, part), edge_words(p, part)};
    return joined(p, words, sizeof words / sizeof *words);
}

static const char *all_words(const cuts_paper *p, const sb_part *part) {
    const char *words[] = {cuts_next_words(p, part), part->note ? part->note : "",
                           part->from_volume ? "select and cut from random widths; not in the plan" : ""};
    return joined(p, words, sizeof words / sizeof *words);
}

static void part_row(const cuts_paper *p, sb_table *table, const sb_part *part) {
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(part->title);
    row[1] = sb_cell_count(part->count);
    row[2] = sb_cell_length(part->length);
    row[3] = sb_cell_length(part->width);
    row[4] = sb_cell_size(part->thickness);
    row[5] = sb_cell_text(all_words(p, part));
    row[6] = sb_cell_tick();
}

static void piece_table(const cuts_paper *p, sb_sheet *sheet, const sb_takeoff *takeoff, size_t piece) {
    sb_table *table = NULL;
    for (size_t i = 0; i < takeoff->parts.count; i++) {
        if (takeoff->parts.items[i].piece != piece)
            continue;
        const char *title = sb_pool_print(p->run->pool, "%s, %lld off", takeoff->pieces.items[piece].title,
                                          (long long)takeoff->pieces.items[piece].count);
        if (!table)
            table = sb_table_add(p->run, sheet, title, "Part|Off>|Length>|Width>|Thick>|Then|Done");
        part_row(p, table, &takeoff->parts.items[i]);
    }
}

void cuts_after(cuts_paper *p, sb_sheet *sheet) {
    const sb_takeoff *takeoff = p->takeoff;
    sb_heading_add(p->run, sheet, "Glue, edge, fit");
    sb_paragraph_add(p->run, sheet,
                     "All parts in their finished sizes, and what is done to them off the saw.", false);
    for (size_t i = 0; i < takeoff->pieces.count; i++) {
        if (i > 0)
            sb_room_break_add(p->run, sheet);
        piece_table(p, sheet, takeoff, i);
    }
}
