/* Labels to stick on parts, one for each that is made, and on what goes back into the rack. */
#include "papers/cuts.h"

#include <string.h>

typedef struct labels {
    const cuts_paper *p;
    sb_cards *cards;
    const char *job;
} labels;

/* ---- parts ---- */

static const char *size_of(const cuts_paper *p, const sb_part *part) {
    sb_style exact = sb_style_exact(p->style);
    return sb_pool_print(p->run->pool, "%s x %s x %s", sb_write_length(p->run, part->length, p->style),
                         sb_write_length(p->run, part->width, &exact),
                         sb_write_length_unit(p->run, part->thickness, &exact));
}

/* Off the saw, else the first work that the recipe has for the piece. */
static const char *next_work(const labels *l, const sb_part *part) {
    const char *words = cuts_next_words(l->p, part);
    for (size_t i = 0; !*words && i < l->p->takeoff->works.count; i++)
        if (l->p->takeoff->works.items[i].piece == part->piece)
            words = l->p->takeoff->works.items[i].operation->title;
    return *words ? sb_pool_print(l->p->run->pool, "Next: %s", words) : "";
}

/* "Long trough, 3 of 8": which of the pieces it is for */
static const char *piece_of(const labels *l, const sb_part *part, int64_t number) {
    const sb_takeoff_piece *piece = &l->p->takeoff->pieces.items[part->piece];
    int64_t a_piece = part->per_piece > 0 ? part->per_piece : 1;
    return piece->count == 1 ? piece->title
                             : sb_pool_print(l->p->run->pool, "%s, %lld of %lld", piece->title,
                                             (long long)(number / a_piece + 1), (long long)piece->count);
}

/* Short, as a label wants it: "Ends: both 45° on the scale", "Ends: square, 10° on the scale". */
static const char *ends_of(const labels *l, sb_cut_end end1, sb_cut_end end2) {
    const cuts_paper *p = l->p;
    if (cuts_end_square(end1) && cuts_end_square(end2))
        return "";
    const char *first = cuts_end_square(end1) ? "square" : cuts_setting(p->run, end1, p->style);
    const char *second = cuts_end_square(end2) ? "square" : cuts_setting(p->run, end2, p->style);
    return strcmp(first, second) == 0
               ? sb_pool_print(p->run->pool, "Ends: both %s on the scale", first)
               : sb_pool_print(p->run->pool, "Ends: %s, %s on the scale", first, second);
}

static void label_part(labels *l, const sb_part *part) {
    sb_run *run = l->p->run;
    const char *size = size_of(l->p, part), *ends = ends_of(l, part->end1, part->end2),
               *next = next_work(l, part);
    for (int64_t i = 0; i < part->count; i++) {
        sb_card *card = sb_card_add(run, l->cards, part->title, size);
        sb_card_line(run, card, piece_of(l, part, i));
        sb_card_line(run, card, ends);
        sb_card_line(run, card, next);
        sb_card_line(run, card, l->job);
        sb_card_line(run, card, part->note ? part->note : "");
    }
}

/* ---- the rack ---- */

static void label_left(labels *l, size_t supply, const char *size, const char *what, int64_t first,
                       int64_t count) {
    sb_run *run = l->p->run;
    const char *title = cuts_stock_title(l->p, l->p->problem->supplies.items[supply].stock);
    for (int64_t i = 0; i < count; i++) {
        sb_card *card = sb_card_add(run, l->cards, title, size);
        sb_card_line(run, card,
                     sb_pool_print(run->pool, "Left over of %s %lld", what, (long long)(first + i)));
        sb_card_line(run, card, "Next: into the rack");
        sb_card_line(run, card, l->job);
    }
}

static void label_rack(labels *l) {
    const cuts_paper *p = l->p;
    int64_t first = 1;
    for (size_t i = 0; i < p->plan->boards.count; first += p->plan->boards.items[i++].count) {
        const sb_board_plan *board = &p->plan->boards.items[i];
        if (board->leftover.nm > 0)
            label_left(l, board->supply, cuts_length(p, cuts_marks_of(p, board).rest), "board", first,
                       board->count);
    }
    first = 1;
    for (size_t i = 0; i < p->plan->sheets.count; first += p->plan->sheets.items[i++].count) {
        const sb_sheet_plan *sheet = &p->plan->sheets.items[i];
        for (size_t j = 0; j < sheet->leftovers.count; j++)
            label_left(l, sheet->supply, cuts_kept(p, sheet->leftovers.items[j]), "sheet", first,
                       sheet->count);
    }
}

/* ---- a bare list ----------------------------------------------------------------------------------------- */

/* As much of its size as the list tells. */
static const char *bare_size(const cuts_paper *p, const sb_need *need) {
    const sb_cut_stock *stock = &p->problem->stock.items[need->stock];
    sb_length width = need->width.nm > 0 ? need->width : stock->width;
    if (width.nm == 0)
        return cuts_length(p, need->length);
    sb_style exact = sb_style_exact(p->style);
    const char *across = sb_write_length(p->run, width, &exact);
    if (stock->thickness.nm > 0)
        across =
            sb_pool_print(p->run->pool, "%s x %s", across, sb_write_length(p->run, stock->thickness, &exact));
    return sb_pool_print(p->run->pool, "%s x %s%s", sb_write_length(p->run, need->length, p->style), across,
                         p->style->units == SB_UNITS_MM ? " mm" : "");
}

static void label_need(labels *l, const sb_need *need) {
    sb_run *run = l->p->run;
    const char *size = bare_size(l->p, need);
    for (int64_t i = 0; i < need->count; i++) {
        sb_card *card = sb_card_add(run, l->cards, need->name, size);
        if (need->count > 1)
            sb_card_line(
                run, card,
                sb_pool_print(run->pool, "%lld of %lld", (long long)(i + 1), (long long)need->count));
        sb_card_line(run, card, l->p->problem->stock.items[need->stock].name);
        sb_card_line(run, card, ends_of(l, need->end1, need->end2));
        sb_card_line(run, card, l->job);
    }
}

/* ---- on pages -------------------------------------------------------------------------------------------- */

static sb_cards *cards_add(sb_run *run, sb_document *document, const struct sb_label_grid *grid) {
    sb_cards *cards = sb_cards_add(run, sb_sheet_add(run, document, "Labels"), grid->columns, grid->rows);
    cards->side = grid->side, cards->top = grid->top;
    cards->across = grid->across, cards->down = grid->down;
    return cards;
}

sb_document *sb_paper_labels(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way) {
    const sb_settings *settings = &shop->settings;
    const char *name = job->title ? job->title : job->name;
    sb_document *document = sb_document_new(run, sb_pool_print(run->pool, "Labels: %s", name), job->date,
                                            settings->style, settings->currency);
    document->letter = settings->style.units == SB_UNITS_IN;
    const cuts_paper p = cuts_paper_of(run, document, shop, way);
    labels l = {&p, cards_add(run, document, &settings->labels),
                job->reference && *job->reference ? sb_pool_print(run->pool, "%s, %s", name, job->reference)
                                                  : name};
    for (size_t i = 0; i < way->takeoff->parts.count; i++)
        label_part(&l, &way->takeoff->parts.items[i]);
    label_rack(&l);
    return document;
}

sb_document *sb_paper_bare_labels(sb_run *run, const sb_plan *plan, const char *name,
                                  const struct sb_label_grid *grid, sb_style style) {
    sb_document *document = sb_document_new(run, sb_pool_print(run->pool, "Labels: %s", name), (sb_date){0},
                                            style, (sb_currency){"", 2});
    document->letter = style.units == SB_UNITS_IN;
    const cuts_paper p = {
        .run = run, .document = document, .plan = plan, .problem = plan->problem, .style = &document->style};
    labels l = {&p, cards_add(run, document, grid), name};
    for (size_t i = 0; i < plan->problem->needs.count; i++)
        label_need(&l, &plan->problem->needs.items[i]);
    label_rack(&l);
    return document;
}
