/* The shop's paper: how the price of the first option comes about, one sheet a subject; further options
 * beside it. */
#include "papers/estimate.h"
#include "papers/figures.h"

static void pair(estimate_paper *p, sb_table *table, const char *label, const char *text) {
    if (!text || !*text)
        return;
    sb_cell *row = sb_row_add(p->run, table);
    row[0] = sb_cell_text(label);
    row[1] = sb_cell_text(text);
}

static void put_facts(estimate_paper *p) {
    sb_table *table = sb_table_add(p->run, p->rating, "", "|");
    table->no_heading = true;
    pair(p, table, "Job", p->job->title ? p->job->title : p->job->name);
    pair(p, table, "Reference", p->job->reference);
    pair(p, table, "Revision", p->job->revision);
    pair(p, table, "Customer", p->job->customer);
    pair(p, table, "Date", sb_write_date(p->run, p->job->date));
    pair(p, table, "Option", p->way->option ? way_words(p->way) : NULL);
    pair(p, table, "Currency", p->shop->settings.currency.code);
}

/* One number of pieces has a sheet for each subject; several have some each. */
static void start_sheets(estimate_paper *p, sb_document *document, bool several) {
    if (!several)
        p->pieces = sb_sheet_add(p->run, document, "Pieces");
    p->inputs = sb_sheet_add(p->run, document, "Inputs");
    p->parts = sb_sheet_add(p->run, document, "Parts");
    p->parts->landscape = true;
    p->lengths = sb_sheet_add(p->run, document, "Lengths");
    if (!several) {
        p->material = sb_sheet_add(p->run, document, "Material");
        p->labour = sb_sheet_add(p->run, document, "Labour");
    }
    p->stock = sb_sheet_add(p->run, document, "Boards and sheets");
    p->leftovers = sb_sheet_add(p->run, document, "Leftovers");
    if (!several && p->e->pieces.count > 1)
        p->sharing = sb_sheet_add(p->run, document, "Sharing");
}

static void put_price(estimate_paper *p) {
    p->build = sb_table_add(p->run, p->summary, "From cost to price", "Step|How|Share or rate>|Amount>");
    sb_room_break_add(p->run, p->summary);
    sb_heading_add(p->run, p->summary, "What it leaves");
    p->outcome = sb_table_add(p->run, p->summary, "", "Figure|How|Value>");
    estimate_build(p);
    estimate_outcome(p);
    estimate_total(p);
    sb_paragraph_add(
        p->run, p->summary,
        "Tinted cells of the workbook may be changed, and every amount follows, while the cutting plan is "
        "held as it is: see the sheet Rates.",
        true);
}

/* Tables stand in reading order; they are filled in the order in which one means the other. */
static void fill(estimate_paper *p, sb_document *document, const sb_breaks *breaks) {
    p->rating = sb_sheet_add(p->run, document, "Rates");
    p->summary = sb_sheet_add(p->run, document, "Summary");
    put_facts(p);
    if (breaks)
        estimate_choice(p, breaks);
    estimate_rates(p);
    if (breaks)
        estimate_numbers(p, document, breaks);
    start_sheets(p, document, breaks != NULL);
    if (!breaks) {
        estimate_material(p);
        estimate_labour(p);
    }
    put_price(p);
    estimate_inputs(p);
    estimate_parts(p);
    estimate_lengths(p);
    estimate_stock(p);
    estimate_leftovers(p);
}

static sb_document *document_of(sb_run *run, const sb_shop *shop, const sb_job *job) {
    const sb_settings *s = &shop->settings;
    const char *title = sb_pool_print(run->pool, "Estimate: %s", job->title ? job->title : job->name);
    sb_document *document = sb_document_new(run, title, job->date, s->style, s->currency);
    document->author = s->name;
    document->letter = s->style.units == SB_UNITS_IN;
    document->foot =
        sb_pool_print(run->pool, "%s, %s: for the shop only", job->reference ? job->reference : job->name,
                      sb_write_date(run, job->date));
    return document;
}

sb_document *sb_paper_estimate(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_ways *ways,
                               const sb_breaks *breaks) {
    const sb_settings *s = &shop->settings;
    sb_document *document = document_of(run, shop, job);
    estimate_paper p = {
        .run = run, .shop = shop, .job = job, .way = &ways->list.items[0], .digits = s->currency.digits};
    p.e = p.way->estimate;
    p.gross = s->prices_gross;
    p.by_line = s->tax_per_line && p.e->taxes.count > 0;
    p.by_hour = s->overhead_hour.minor != 0;
    p.named = true;
    fill(&p, document, breaks && breaks->list.count > 1 ? breaks : NULL);
    if (p.way->sensitivity) {
        estimate_risk(&p, sb_sheet_add(run, document, "Risk"));
        estimate_sensitivity(&p, sb_sheet_add(run, document, "Sensitivity"));
    }
    if (ways->list.count > 1)
        comparison_fill(run, shop, sb_sheet_add(run, document, "Options"), ways);
    return document;
}
