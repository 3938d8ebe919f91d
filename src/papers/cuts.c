/* The cut sheet: for a job with all its names, or for a bare list. */
#include "papers/cuts.h"
#include "papers/figures.h"

static const char caution[] =
    "Before you start: eye and ear protection on, dust extraction on, guards and riving knife in place, "
    "hands well clear of the "
    "blade. Clamp short pieces or cut them from longer ones, and never hold them by hand. The saw maker's "
    "manual, local rules and "
    "qualified people come first. This sheet certifies neither strength nor safety of a piece.";
static const char reading[] =
    "Every mark is measured from the trued end, on the finished side of the line: the blade runs just beyond "
    "the mark, away "
    "from the trued end. Kerfs are in the numbers. Angles are given twice: as the saw's scale shows them, "
    "counted from a square cut, and "
    "as they stand on the piece against its edge. Lengths of angled parts are over the long points.";

const char *cuts_name(const cuts_paper *p, size_t need) {
    const sb_need *n = &p->problem->needs.items[need];
    if (!p->cutlist)
        return n->name;
    const struct sb_need_source *source = &p->cutlist->needs.items[n->tag];
    if (!source->part)
        return "spare for defects";
    const sb_takeoff_piece *piece = &source->takeoff->pieces.items[source->part->piece];
    return source->takeoff->pieces.count == 1
               ? source->part->title
               : sb_pool_print(p->run->pool, "%s (%s)", source->part->title, piece->title);
}

const sb_cut_stock *cuts_stock(const cuts_paper *p, size_t need) {
    return &p->problem->stock.items[p->problem->needs.items[need].stock];
}

const char *cuts_stock_title(const cuts_paper *p, size_t stock) {
    for (size_t i = 0; p->cutlist && i < p->problem->supplies.count; i++)
        if (p->problem->supplies.items[i].stock == stock)
            return p->cutlist->supplies.items[p->problem->supplies.items[i].tag].stock->title;
    return p->problem->stock.items[stock].name;
}

const char *cuts_number(const cuts_paper *p, int64_t first, int64_t count) {
    long long from = (long long)first, to = (long long)(first + count - 1);
    return count == 1 ? sb_pool_print(p->run->pool, "%lld", from)
                      : sb_pool_print(p->run->pool, "%lld to %lld", from, to);
}

const char *cuts_length(const cuts_paper *p, sb_length length) {
    return sb_write_length_unit(p->run, length, p->style);
}

const char *cuts_face(const cuts_paper *p, sb_length width, sb_length length) {
    return sb_pool_print(p->run->pool, "%s x %s", sb_write_length(p->run, width, p->style),
                         sb_write_length_unit(p->run, length, p->style));
}

/* What the plan comes to, and how near it is to the least that any plan could cost. */
static const char *plan_line(const cuts_paper *p) {
    const sb_document *d = p->document;
    const char *cost = sb_write_money(p->run, sb_cost_money(p->plan->cost), d->currency, p->style);
    return sb_pool_print(p->run->pool, "The plan costs %s%s%s: %s.", cost, *d->currency.code ? " " : "",
                         d->currency.code, plan_words(p->run, p->plan));
}

/* All pages lie alike: some programs print a workbook in the orientation of its first sheet. */
static sb_sheet *add_sheet(cuts_paper *p, const char *title) {
    sb_sheet *sheet = sb_sheet_add(p->run, p->document, title);
    sheet->landscape = true;
    return sheet;
}

static void fill(cuts_paper *p) {
    sb_sheet *pull = add_sheet(p, "Pull");
    sb_heading_add(p->run, pull, p->document->title);
    sb_paragraph_add(p->run, pull, caution, false);
    cuts_pull(p, pull);
    sb_paragraph_add(p->run, pull, reading, true);
    if (p->plan->boards.count > 0) {
        cuts_stops(p, add_sheet(p, "Stops"));
        cuts_boards(p, add_sheet(p, "Boards"));
    }
    if (p->plan->sheets.count > 0)
        cuts_sheets(p, add_sheet(p, "Sheets"));
    cuts_keep(p, pull);
    sb_paragraph_add(p->run, pull, plan_line(p), true);
}

sb_document *sb_paper_cuts(sb_run *run, const sb_shop *shop, const sb_job *job, const sb_way *way) {
    const char *name = job->title ? job->title : job->name;
    const char *title = way->option && way->option->title
                            ? sb_pool_print(run->pool, "Cut sheet: %s, %s", name, way->option->title)
                            : sb_pool_print(run->pool, "Cut sheet: %s", name);
    const sb_settings *settings = &shop->settings;
    sb_document *document = sb_document_new(run, title, job->date, settings->style, settings->currency);
    document->foot = sb_pool_print(run->pool, "%s, %s", name, sb_write_date(run, job->date));
    document->letter = settings->style.units == SB_UNITS_IN;
    cuts_paper p = {run,          document, way->plan,       &way->cutlist->problem,
                    way->cutlist, settings, &settings->style};
    fill(&p);
    cuts_after(&p, way->takeoff, add_sheet(&p, "Glue, edge, fit"));
    return document;
}

sb_document *sb_paper_bare_cuts(sb_run *run, const sb_plan *plan, sb_style style, sb_currency currency) {
    sb_document *document = sb_document_new(run, "Cut sheet", (sb_date){0}, style, currency);
    document->letter = style.units == SB_UNITS_IN;
    cuts_paper p = {run, document, plan, plan->problem, NULL, NULL, &document->style};
    fill(&p);
    return document;
}
