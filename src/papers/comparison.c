/* Options side by side: one column each. */
#include "papers/estimate.h"
#include "papers/figures.h"

#include <string.h>

typedef struct comparison {
    sb_run *run;
    const sb_shop *shop;
    const sb_ways *ways;
    sb_table *table;
} comparison;

static const sb_style *style_of(const comparison *c) {
    return &c->shop->settings.style;
}

/* One row: a label, and for each option the figure that `figure` takes out of it. */
static void put(comparison *c, const char *label, sb_cell (*figure)(const comparison *c, const sb_way *way)) {
    sb_cell *row = sb_row_add(c->run, c->table);
    row[0] = sb_cell_text(label);
    for (size_t i = 0; i < c->ways->list.count; i++)
        row[i + 1] = figure(c, &c->ways->list.items[i]);
}

/* ---- figures that stand in the estimate as they are ---- */

typedef struct figure {
    const char *label;
    sb_cell_kind kind;
    size_t offset; /* in sb_estimate; every measure is one int64_t */
} figure;

static const figure PRICES[] = {{"Total with tax", SB_CELL_MONEY, offsetof(sb_estimate, gross)},
                                {"Net", SB_CELL_MONEY, offsetof(sb_estimate, net)}};
static const figure COSTS[] = {{"Material", SB_CELL_MONEY, offsetof(sb_estimate, material_total)},
                               {"Labour", SB_CELL_MONEY, offsetof(sb_estimate, labour_total)},
                               {"Cost", SB_CELL_MONEY, offsetof(sb_estimate, cost)},
                               {"Floor, net", SB_CELL_MONEY, offsetof(sb_estimate, floor)},
                               {"Margin left, of net", SB_CELL_SHARE, offsetof(sb_estimate, margin_left)},
                               {"Hours", SB_CELL_DURATION, offsetof(sb_estimate, time)},
                               {"Earned per hour", SB_CELL_MONEY, offsetof(sb_estimate, earned_hour)},
                               {"Waste, of used up", SB_CELL_SHARE, offsetof(sb_estimate, waste)},
                               {"Spare, of used up", SB_CELL_SHARE, offsetof(sb_estimate, spare)}};

static sb_cell figure_cell(const sb_estimate *e, const figure *f) {
    int64_t amount;
    memcpy(&amount, (const char *)e + f->offset, sizeof amount);
    return (sb_cell){.kind = f->kind, .text = "", .amount = amount};
}

static void put_figures(comparison *c, const figure *figures, size_t count) {
    for (size_t f = 0; f < count; f++) {
        sb_cell *row = sb_row_add(c->run, c->table);
        row[0] = sb_cell_text(figures[f].label);
        for (size_t i = 0; i < c->ways->list.count; i++)
            row[i + 1] = figure_cell(c->ways->list.items[i].estimate, &figures[f]);
    }
}

/* ---- figures that need a word or a unit ---- */

static sb_cell lead(const comparison *c, const sb_way *way) {
    (void)c;
    return way->estimate->lead_days >= 0 ? sb_cell_count(way->estimate->lead_days) : sb_cell_text("not told");
}

static sb_cell boards(const comparison *c, const sb_way *way) {
    (void)c;
    return sb_cell_count(way->plan->counts.boards);
}

static sb_cell boards_long(const comparison *c, const sb_way *way) {
    return long_cell(style_of(c), way->estimate->boards_length);
}

static sb_cell sheets(const comparison *c, const sb_way *way) {
    (void)c;
    return sb_cell_count(way->plan->counts.sheets);
}

static sb_cell weight(const comparison *c, const sb_way *way) {
    return way->estimate->mass.mg > 0 ? weight_cell(style_of(c), way->estimate->mass)
                                      : sb_cell_text("not known");
}

static sb_cell quality(const comparison *c, const sb_way *way) {
    return sb_cell_text(plan_words(c->run, &c->shop->settings.style, way->plan));
}

static bool takes_any(const sb_ways *ways, bool sheet) {
    for (size_t i = 0; i < ways->list.count; i++) {
        const sb_plan_counts *counts = &ways->list.items[i].plan->counts;
        if (sheet ? counts->sheets > 0 : counts->boards > 0)
            return true;
    }
    return false;
}

static void put_wood(comparison *c) {
    if (takes_any(c->ways, false)) {
        put(c, "Boards", boards);
        put(c, sb_pool_print(c->run->pool, "Boards, %s", long_unit(style_of(c))), boards_long);
    }
    if (takes_any(c->ways, true))
        put(c, "Sheets", sheets);
    put(c, sb_pool_print(c->run->pool, "Weight, %s", weight_unit(style_of(c))), weight);
    put(c, "Lead time, days", lead);
    put(c, "Cutting plan", quality);
}

/* ---- the price of one, by piece ---- */

static const sb_takeoff_piece *piece_at(const sb_way *way, size_t i) {
    return &way->takeoff->pieces.items[way->estimate->pieces.items[i].piece];
}

static const char *piece_name(const sb_way *way, size_t i) {
    const sb_takeoff_piece *piece = piece_at(way, i);
    return piece->source ? piece->source->name : piece->title;
}

static const sb_price_line *find_piece(const sb_way *way, const char *name) {
    for (size_t i = 0; i < way->estimate->pieces.count; i++)
        if (strcmp(piece_name(way, i), name) == 0)
            return &way->estimate->pieces.items[i];
    return NULL;
}

static void put_piece(comparison *c, const sb_way *from, size_t index) {
    sb_cell *row = sb_row_add(c->run, c->table);
    row[0] = sb_cell_text(sb_pool_print(c->run->pool, "Each: %s", piece_at(from, index)->title));
    for (size_t i = 0; i < c->ways->list.count; i++) {
        const sb_price_line *line = find_piece(&c->ways->list.items[i], piece_name(from, index));
        row[i + 1] = line ? sb_cell_money(line->unit) : sb_cell_text("-");
    }
}

static bool seen_before(const sb_ways *ways, size_t way, const char *name) {
    for (size_t before = 0; before < way; before++)
        if (find_piece(&ways->list.items[before], name))
            return true;
    return false;
}

/* Each piece once, in the order of the first option that has it. */
static void put_pieces(comparison *c) {
    for (size_t w = 0; w < c->ways->list.count; w++) {
        const sb_way *way = &c->ways->list.items[w];
        for (size_t i = 0; i < way->estimate->pieces.count; i++)
            if (!seen_before(c->ways, w, piece_name(way, i)))
                put_piece(c, way, i);
    }
}

/* ---- the table ---- */

const char *comparison_headings(sb_run *run, const char *first, const sb_ways *ways) {
    const char *text = first;
    for (size_t i = 0; i < ways->list.count; i++) {
        char *title = sb_pool_print(run->pool, "%s", way_words(&ways->list.items[i]));
        for (char *bar = strchr(title, '|'); bar; bar = strchr(bar, '|'))
            *bar = '/';
        text = sb_pool_print(run->pool, "%s|%s>", text, title);
    }
    return text;
}

void comparison_fill(sb_run *run, const sb_shop *shop, sb_sheet *sheet, const sb_ways *ways) {
    comparison c = {.run = run, .shop = shop, .ways = ways};
    c.table = sb_table_add(run, sheet, "", comparison_headings(run, "", ways));
    put_figures(&c, PRICES, sizeof PRICES / sizeof *PRICES);
    put_pieces(&c);
    put_figures(&c, COSTS, sizeof COSTS / sizeof *COSTS);
    put_wood(&c);
}

sb_document *sb_paper_comparison(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways) {
    const sb_settings *s = &shop->settings;
    const char *title = sb_pool_print(run->pool, "Options: %s", job->title ? job->title : job->name);
    sb_document *document = sb_document_new(run, title, job->date, s->style, s->currency);
    document->author = s->name;
    document->foot =
        sb_pool_print(run->pool, "%s, %s: for the shop only", job->reference ? job->reference : job->name,
                      sb_write_date(run, job->date));
    sb_sheet *sheet = sb_sheet_add(run, document, "Options");
    sb_heading_add(run, sheet, job->title ? job->title : job->name);
    comparison_fill(run, shop, sheet, ways);
    sb_paragraph_add(
        run, sheet,
        sb_pool_print(
            run->pool,
            "Money in %s. Margin left: what discount and price points leave over cost with contingency, "
            "as a share of the pieces' net price. Of the timber and sheets used up spare is for defects, and "
            "waste is in no piece and no spare.",
            s->currency.code),
        true);
    return document;
}
