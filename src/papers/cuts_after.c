/* What is done to parts off the crosscut saw, in the order of work: ripped, glued up, planed, edged, their ends cut, trimmed to fit. */
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
    if (cuts_end_square(part->end1) && cuts_end_square(part->end2))
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

/* ---- step by step, in the order of work -------------------------------------------------------------------- */

typedef const char *part_words(const cuts_paper *p, const sb_part *part);

static const char *assembled_words(const cuts_paper *p, const sb_part *part) {
    const char *words[] = {glue_words(p, part), planed_words(p, part)};
    return joined(p, words, sizeof words / sizeof *words);
}

static bool is_mitred_strip(const cuts_paper *p, const sb_part *part) {
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (p->cutlist->needs.items[p->problem->needs.items[i].tag].part == part)
            return cuts_is_strip(p, i) && *cuts_after_rip(&p->problem->needs.items[i]);
    return false;
}

/* Of what was ripped, glued up or cut out of a sheet. */
static const char *late_ends_words(const cuts_paper *p, const sb_part *part) {
    const char *words = sb_part_ends_later(part) || is_mitred_strip(p, part) ? ends_words(p, part) : "";
    return *words && part->allow.nm > 0
               ? sb_pool_print(p->run->pool, "%s; %s long, trimmed below", words, cuts_length(p, part->allow))
               : words;
}

const char *cuts_next_words(const cuts_paper *p, const sb_part *part) {
    const char *words[] = {*glue_words(p, part) ? "glue up" : "", planed_words(p, part), edge_words(p, part),
                           *late_ends_words(p, part) ? "cut the ends" : "", fit_words(p, part)};
    return joined(p, words, sizeof words / sizeof *words);
}

static const char *trim_words(const cuts_paper *p, const sb_part *part) {
    const char *words[] = {fit_words(p, part), part->note ? part->note : ""};
    return *words[0] ? joined(p, words, sizeof words / sizeof *words) : "";
}

static const struct {
    const char *title, *headings;
    part_words *words;
    bool long_still; /* what is trimmed later is on it */
} steps[] = {
    {"Glue up, plane", "Part|Off>|Length>|Width>|Glue up, plane|Done", assembled_words, false},
    {"Edge", "Part|Off>|Length>|Width>|Edging|Done", edge_words, false},
    {"Then cut the ends", "Part|Off>|Length>|Width>|Ends|Done", late_ends_words, true},
    {"Trim to fit, to the size stated here", "Part|Off>|Length>|Width>|How|Done", trim_words, false},
};

static const char *name_of(const cuts_paper *p, const sb_part *part) {
    return p->takeoff->pieces.count == 1 ? part->title
                                         : sb_pool_print(p->run->pool, "%s (%s)", part->title,
                                                         p->takeoff->pieces.items[part->piece].title);
}

static void add_step(const cuts_paper *p, sb_sheet *sheet, size_t step) {
    sb_table *table = NULL;
    for (size_t i = 0; i < p->takeoff->parts.count; i++) {
        const sb_part *part = &p->takeoff->parts.items[i];
        const char *words = steps[step].words(p, part);
        if (!*words)
            continue;
        if (!table)
            table = sb_table_add(p->run, sheet, steps[step].title, steps[step].headings);
        sb_cell *row = sb_row_add(p->run, table);
        row[0] = sb_cell_text(name_of(p, part));
        row[1] = sb_cell_count(part->count);
        row[2] = sb_cell_strong(
            sb_cell_length(steps[step].long_still ? sb_length_add(part->length, part->allow) : part->length));
        row[3] = sb_cell_length(part->width);
        row[4] = sb_cell_text(words);
        row[5] = sb_cell_tick();
    }
}

/* ---- all parts ----------------------------------------------------------------------------------------------- */

static const char *note_words(const cuts_paper *p, const sb_part *part) {
    const char *words[] = {part->note ? part->note : "",
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
    row[5] = sb_cell_text(note_words(p, part));
    row[6] = sb_cell_tick();
}

static void piece_table(const cuts_paper *p, sb_sheet *sheet, size_t piece) {
    const sb_takeoff *takeoff = p->takeoff;
    sb_table *table = NULL;
    for (size_t i = 0; i < takeoff->parts.count; i++) {
        if (takeoff->parts.items[i].piece != piece)
            continue;
        const char *title =
            sb_pool_print(p->run->pool, "Finished parts: %s, %lld off", takeoff->pieces.items[piece].title,
                          (long long)takeoff->pieces.items[piece].count);
        if (!table)
            table = sb_table_add(p->run, sheet, title, "Part|Off>|Length>|Width>|Thick>|Note|Done");
        part_row(p, table, &takeoff->parts.items[i]);
    }
}

static const char intro[] =
    "From here on in this order: strips are ripped, panels glued up, planed and edged "
    "before the ends that need it are cut, and what must fit is trimmed last, on the "
    "piece. Sizes are those of the finished part.";

void cuts_after(cuts_paper *p, sb_sheet *sheet) {
    sb_heading_add(p->run, sheet, sheet->title);
    if (p->takeoff)
        sb_paragraph_add(p->run, sheet, intro, false);
    cuts_rip(p, sheet);
    for (size_t i = 0; p->takeoff && i < sizeof steps / sizeof *steps; i++)
        add_step(p, sheet, i);
    for (size_t i = 0; p->takeoff && i < p->takeoff->pieces.count; i++) {
        sb_room_break_add(p->run, sheet);
        piece_table(p, sheet, i);
    }
}
