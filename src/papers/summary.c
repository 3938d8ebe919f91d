/* What the terminal shows after `quote`: the price, what it rests on, what to buy. */
#include "papers/figures.h"

typedef struct summary {
    sb_run *run;
    const sb_shop *shop;
    const sb_job *job;
    const sb_way *way;
    const sb_estimate *e;
    sb_sheet *sheet;
} summary;

static void put_pieces(const summary *s) {
    bool gross = s->shop->settings.prices_gross && s->e->taxes.count > 0;
    sb_table *table = sb_table_add(s->run, s->sheet, "",
                                   gross ? "Piece|Size|Number>|Each, with tax>|Amount>"
                                         : "Piece|Size|Number>|Each, net>|Amount>");
    for (size_t i = 0; i < s->e->pieces.count; i++) {
        const sb_price_line *line = &s->e->pieces.items[i];
        const sb_takeoff_piece *piece = &s->e->takeoff->pieces.items[line->piece];
        sb_cell *row = sb_row_add(s->run, table);
        row[0] = sb_cell_text(piece->title);
        row[1] = sb_cell_text(piece->size_text);
        row[2] = sb_cell_count(line->count);
        row[3] = sb_cell_money(line->unit);
        row[4] = sb_cell_money(line->line);
    }
    if (s->e->supplement_line.minor != 0) {
        sb_cell *row = sb_row_add(s->run, table);
        row[0] = sb_cell_text("Supplement to the minimum");
        row[4] = sb_cell_money(s->e->supplement_line);
    }
    if (s->e->delivery_line.minor != 0) {
        sb_cell *row = sb_row_add(s->run, table);
        row[0] = sb_cell_text("Delivery");
        row[4] = sb_cell_money(s->e->delivery_line);
    }
}

static void put(const summary *s, sb_table *table, const char *label, const char *value) {
    sb_cell *row = sb_row_add(s->run, table);
    row[0] = sb_cell_text(label);
    row[1] = sb_cell_text(value);
}

static const char *money(const summary *s, sb_money amount) {
    return money_words(s->run, s->shop, amount);
}

/* "210.00 EUR VAT 21 % + 12.00 EUR VAT 6 %" */
static const char *taxes_words(const summary *s) {
    const char *words = "";
    for (size_t i = 0; i < s->e->taxes.count; i++) {
        const sb_tax_line *line = &s->e->taxes.items[i];
        words = sb_pool_print(s->run->pool, "%s%s%s %s %s", words, i ? " + " : "", money(s, line->amount),
                              line->tax->title, share_words(s->run, s->shop, line->tax->rate));
    }
    return words;
}

static const char *total_words(const summary *s) {
    if (s->e->taxes.count == 0)
        return money(s, s->e->gross);
    if (s->e->taxes.count > 1)
        return sb_pool_print(s->run->pool, "%s = %s net + %s", money(s, s->e->gross), money(s, s->e->net),
                             taxes_words(s));
    return sb_pool_print(s->run->pool, "%s = %s net + %s %s", money(s, s->e->gross), money(s, s->e->net),
                         money(s, s->e->tax), s->e->taxes.items[0].tax->title);
}

static const char *stages_words(const summary *s) {
    const char *words = "";
    for (size_t i = 0; i < s->e->stages.count; i++)
        words = sb_pool_print(s->run->pool, "%s%s %s, ", words, money(s, s->e->stages.items[i].amount),
                              s->e->stages.items[i].text);
    return sb_pool_print(s->run->pool, "%srest %s", words, money(s, s->e->rest));
}

static const char *floor_words(const summary *s) {
    sb_money above = sb_money_sub(s->e->net, s->e->floor);
    return sb_pool_print(s->run->pool, "%s net; this price is %s %s it", money(s, s->e->floor),
                         money(s, (sb_money){above.minor < 0 ? -above.minor : above.minor}),
                         above.minor < 0 ? "UNDER" : "above");
}

static const char *margin_words(const summary *s) {
    return sb_pool_print(
        s->run->pool, "%s of the pieces' net price (a markup of %s)",
        share_words(s->run, s->shop, (sb_share){sb_mul_div(s->e->margin_left.ppm, 1, 1000) * 1000}),
        share_words(s->run, s->shop, (sb_share){sb_mul_div(s->e->markup_left.ppm, 1, 1000) * 1000}));
}

static const char *work_words(const summary *s) {
    if (s->e->time.ms == 0)
        return "none";
    return sb_pool_print(s->run->pool, "%s, earning %s an hour", hours_words(s->run, s->shop, s->e->time),
                         money(s, s->e->earned_hour));
}

static const char *lead_words(const summary *s) {
    const char *drying = "";
    if (s->e->drying.ms)
        drying = sb_pool_print(s->run->pool, ", with %s for coats to dry",
                               hours_words(s->run, s->shop, s->e->drying));
    return sb_pool_print(s->run->pool, "%d day%s%s", s->e->lead_days, s->e->lead_days == 1 ? "" : "s",
                         drying);
}

static const char *tenths(const summary *s, sb_share share) {
    return share_words(s->run, s->shop, (sb_share){sb_mul_div(share.ppm, 1, 1000) * 1000});
}

static const char *risk_words(const summary *s) {
    const sb_risk *risk = s->way->risk;
    return sb_pool_print(s->run->pool, "costs %s or less in 80 %% of cases, loses money in %s",
                         money(s, risk->cost80), tenths(s, risk->loses));
}

static const char *cost_words(const summary *s) {
    const sb_settings *settings = &s->shop->settings;
    const sb_money parts[] = {s->e->material_total, s->e->labour_total, s->e->overhead};
    const char *words[3];
    for (size_t i = 0; i < 3; i++)
        words[i] = sb_write_money(s->run, parts[i], settings->currency, &settings->style);
    return sb_pool_print(s->run->pool, "%s = material %s + labour %s + overhead %s", money(s, s->e->cost),
                         words[0], words[1], words[2]);
}

static const char *waste_words(const summary *s) {
    const char *spare = s->e->spare.ppm == 0 ? ""
                                             : sb_pool_print(s->run->pool, " and spare for defects %s",
                                                             tenths(s, s->e->spare));
    return sb_pool_print(s->run->pool, "waste %s%s of what is used up", tenths(s, s->e->waste), spare);
}

static void put_outcome(const summary *s) {
    sb_table *table = sb_table_add(s->run, s->sheet, "", "|");
    table->no_heading = true;
    put(s, table, "Total", total_words(s));
    if (s->e->discount.minor != 0)
        put(s, table, "Discount",
            sb_pool_print(s->run->pool, "%s of price, in the prices above",
                          share_words(s->run, s->shop, s->e->discount_rate)));
    if (s->e->deposit.minor != 0)
        put(s, table, "Deposit", money(s, s->e->deposit));
    if (s->e->stages.count > 0)
        put(s, table, "Stages", stages_words(s));
    put(s, table, "Cost", cost_words(s));
    put(s, table, "Floor", floor_words(s));
    put(s, table, "Margin left", margin_words(s));
    put(s, table, "Work", work_words(s));
    if (s->way->risk)
        put(s, table, "Risk", risk_words(s));
    if (s->e->lead_days >= 0)
        put(s, table, "Lead time", lead_words(s));
    put(s, table, "Cutting plan",
        sb_pool_print(s->run->pool, "%s; %s", plan_words(s->run, &s->shop->settings.style, s->way->plan),
                      waste_words(s)));
}

/* Whole boards and sheets, whatever the job is charged; packs and tins are in the order list. */
static bool by_length(const sb_material_line *line) {
    return line->group == SB_MATERIAL_TIMBER || line->group == SB_MATERIAL_SHEETS;
}

static void put_taken(const summary *s, sb_table *table, const sb_material_line *line) {
    sb_cell *row = sb_row_add(s->run, table);
    row[0] = sb_cell_count(line->order->count);
    row[1] = sb_cell_text(line->what);
    row[2] = sb_cell_money(line->order->amount);
}

static void tell_others(const summary *s, size_t count) {
    if (count)
        sb_paragraph_add(
            s->run, s->sheet,
            sb_pool_print(s->run->pool,
                          "With them %zu line%s of fixings, finish and other supplies: see the order list.",
                          count, count == 1 ? "" : "s"),
            false);
}

static void put_timber(const summary *s) {
    sb_table *table = sb_table_add(s->run, s->sheet, "", "Number>|Boards and sheets|Amount>");
    size_t others = 0;
    for (size_t i = 0; i < s->e->materials.count; i++) {
        const sb_material_line *line = &s->e->materials.items[i];
        if (line->order && by_length(line))
            put_taken(s, table, line);
        else
            others += line->order != NULL;
    }
    tell_others(s, others);
}

static void put_options(const summary *s, const sb_ways *ways) {
    sb_table *table = sb_table_add(s->run, s->sheet, "Options (the first is the one above)",
                                   "Option|Total>|Cost>|Hours>|Margin left>");
    for (size_t i = 0; i < ways->list.count; i++) {
        const sb_way *way = &ways->list.items[i];
        sb_cell *row = sb_row_add(s->run, table);
        row[0] = sb_cell_text(way_words(way));
        row[1] = sb_cell_money(way->estimate->gross);
        row[2] = sb_cell_money(way->estimate->cost);
        row[3] = sb_cell_duration(way->estimate->time);
        row[4] = sb_cell_share(way->estimate->margin_left);
    }
}

/* The first option in other numbers. */
static void put_breaks(const summary *s, const sb_breaks *breaks) {
    bool one_kind = s->e->pieces.count == 1, gross = s->shop->settings.prices_gross;
    size_t first = one_kind ? 2 : 1;
    sb_table *table = sb_table_add(s->run, s->sheet, "Other numbers, each planned for itself",
                                   !one_kind ? "Pieces>|Total>|Cost>|Hours>|Margin left>"
                                   : gross   ? "Pieces>|Each, with tax>|Total>|Cost>|Hours>|Margin left>"
                                             : "Pieces>|Each, net>|Total>|Cost>|Hours>|Margin left>");
    for (size_t i = 0; i < breaks->list.count; i++) {
        const sb_break *of = &breaks->list.items[i];
        const sb_estimate *e = of->ways->list.items[0].estimate;
        sb_cell *row = sb_row_add(s->run, table);
        row[0] = sb_cell_count(of->pieces);
        if (one_kind)
            row[1] = sb_cell_money(e->pieces.items[0].unit);
        row[first] = sb_cell_money(e->gross);
        row[first + 1] = sb_cell_money(e->cost);
        row[first + 2] = sb_cell_duration(e->time);
        row[first + 3] = sb_cell_share(e->margin_left);
    }
}

static void put_advice(const summary *s) {
    size_t count = sb_notices_count(s->run, SB_ADVICE);
    if (count)
        sb_paragraph_add(s->run, s->sheet,
                         sb_pool_print(s->run->pool, "%zu message%s ask%s for a look before this goes out.",
                                       count, count == 1 ? "" : "s", count == 1 ? "s" : ""),
                         false);
}

static const char *title_of(const summary *s) {
    const char *title = s->job->title ? s->job->title : s->job->name;
    return sb_pool_print(s->run->pool, "%s, for %s%s%s, %s", title, s->job->customer,
                         s->job->reference ? ", " : "", s->job->reference ? s->job->reference : "",
                         sb_write_date(s->run, s->job->date));
}

sb_document *sb_paper_summary(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways,
                              const sb_breaks *breaks) {
    const sb_settings *settings = &shop->settings;
    summary s = {.run = run, .shop = shop, .job = job, .way = &ways->list.items[0]};
    s.e = s.way->estimate;
    sb_document *document = sb_document_new(run, "", job->date, settings->style, settings->currency);
    s.sheet = sb_sheet_add(run, document, title_of(&s));
    sb_heading_add(run, s.sheet, title_of(&s));
    if (s.way->option)
        sb_paragraph_add(run, s.sheet, sb_pool_print(run->pool, "Option: %s", way_words(s.way)), false);
    put_pieces(&s);
    put_outcome(&s);
    put_timber(&s);
    if (ways->list.count > 1)
        put_options(&s, ways);
    if (breaks && breaks->list.count > 1)
        put_breaks(&s, breaks);
    put_advice(&s);
    return document;
}
