/* The cut sheet: for a job with all its names, or for a bare list. */
#include "papers/draw.h"
#include "papers/figures.h"

static const char caution[] = "Before you start: eye and ear protection on, dust extraction on, guards and "
                              "riving knife in place, hands "
                              "well clear of the blade. Clamp short pieces or cut them from longer ones, and "
                              "never hold them by hand. The "
                              "saw maker's manual, local rules and qualified people come first. This sheet "
                              "certifies neither strength nor "
                              "safety of a piece.";
static const char reading[] = "Every mark is measured from the trued end. The blade runs beyond the mark, on "
                              "the side away from the trued "
                              "end, and takes nothing of the part. Kerfs are in the numbers.";
static const char reading_angles[] =
    "Angles are given twice: as the saw's scale shows them, counted from a square cut, and as they stand on "
    "the "
    "piece against its edge. Set 30 and the piece shows 60. Lengths of angled parts are over the long "
    "points.";

const char *cuts_name(const cuts_paper *p, size_t need) {
    const sb_need *n = &p->problem->needs.items[need];
    const struct sb_need_source *source = p->cutlist ? &p->cutlist->needs.items[n->tag] : NULL;
    if (source && !source->part)
        return cuts_spare_name(p, need);
    const char *part = source ? source->part->title : n->name;
    bool one_piece = !source || source->takeoff->pieces.count == 1;
    const char *piece = one_piece ? "" : source->takeoff->pieces.items[source->part->piece].title;
    const char *wood = n->clear ? "clear wood" : n->sound ? "sound wood" : "";
    if (!*piece && !*wood)
        return part;
    return sb_pool_print(p->run->pool, "%s (%s%s%s)", part, piece, *piece && *wood ? "; " : "", wood);
}

bool cuts_any_angle(const cuts_paper *p) {
    for (size_t i = 0; i < p->problem->needs.count; i++)
        if (!cuts_end_square(p->problem->needs.items[i].end1) ||
            !cuts_end_square(p->problem->needs.items[i].end2))
            return true;
    return false;
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

sb_length cuts_mark(const cuts_paper *p, sb_length position) {
    sb_length half = {p->style->step.nm / 2};
    return sb_length_down_to_step(sb_length_add(position, half), p->style->step);
}

const char *cuts_face(const cuts_paper *p, sb_length length, sb_length width) {
    return sb_pool_print(p->run->pool, "%s x %s", sb_write_length(p->run, cuts_mark(p, length), p->style),
                         cuts_length(p, cuts_mark(p, width)));
}

bool cuts_is_short(const cuts_paper *p, sb_length longest) {
    return p->settings && longest.nm < p->settings->short_part.nm;
}

const char *cuts_kept(const cuts_paper *p, sb_rect left) {
    return cuts_face(p, sb_length_down_to_step(left.l, p->style->step),
                     sb_length_down_to_step(left.w, p->style->step));
}

const char *cuts_size(const cuts_paper *p, const sb_supply *supply) {
    bool sheet = p->problem->stock.items[supply->stock].sheet;
    return sb_write_size(p->run, supply->length, sheet ? supply->width : (sb_length){0}, p->style);
}

/* What the plan comes to, and how near it is to the least that any plan could cost. */
static const char *plan_line(const cuts_paper *p) {
    const sb_document *d = p->document;
    const char *cost = sb_write_money(p->run, sb_cost_money(p->plan->cost), d->currency, p->style);
    return sb_pool_print(p->run->pool, "The plan costs %s%s%s: %s.", cost, *d->currency.code ? " " : "",
                         d->currency.code, plan_words(p->run, p->style, p->plan));
}

/* Of a part as it is in the end: a panel gets its angles when it is glued up. */
static bool any_angle_later(const sb_takeoff *takeoff) {
    for (size_t i = 0; takeoff && i < takeoff->parts.count; i++)
        if (!cuts_end_square(takeoff->parts.items[i].end1) || !cuts_end_square(takeoff->parts.items[i].end2))
            return true;
    return false;
}

/* With what the two usual mistakes cost; common practice, no source, and worked in tests/papers/trade_marks_test.c. */
static const char *reading_words(const cuts_paper *p) {
    sb_length kerf = p->problem->rules.kerf;
    sb_style exact = sb_style_exact(p->style);
    if (p->plan->boards.count == 0 || kerf.nm == 0)
        return reading;
    return sb_pool_print(
        p->run->pool,
        "%s A blade on the wrong side of a mark makes the part %s short, one through its middle %s.", reading,
        sb_write_length_unit(p->run, kerf, &exact),
        sb_write_length_unit(p->run, (sb_length){kerf.nm / 2}, &exact));
}

/* The page that goes to the pile and the rack, before the first cut and after the last. */
static void fill_pull(cuts_paper *p) {
    const sb_takeoff *takeoff = p->takeoff;
    sb_sheet *sheet = sb_sheet_add(p->run, p->document, "Pull");
    sb_heading_add(p->run, sheet, p->document->title);
    sb_paragraph_add(p->run, sheet, caution, false);
    sb_paragraph_add(p->run, sheet, reading_words(p), false);
    if (cuts_any_angle(p) || any_angle_later(takeoff))
        sb_paragraph_add(p->run, sheet, reading_angles, false);
    for (size_t i = 0; takeoff && i < takeoff->saw_notes.count; i++)
        sb_paragraph_add(p->run, sheet, takeoff->saw_notes.items[i], false);
    cuts_pull(p, sheet);
    cuts_keep(p, sheet);
    sb_paragraph_add(p->run, sheet, plan_line(p), true);
}

static void fill(cuts_paper *p) {
    fill_pull(p);
    if (p->plan->boards.count > 0) {
        cuts_stops(p, sb_sheet_add(p->run, p->document, "Stops"));
        draw_angles(p);
        cuts_boards(p, sb_sheet_add(p->run, p->document, "Boards"));
    }
    if (p->plan->sheets.count > 0)
        cuts_sheets(p, sb_sheet_add(p->run, p->document, "Sheets"));
    if (p->takeoff || cuts_any_rip(p))
        cuts_after(p, sb_sheet_add(p->run, p->document, "Rip, glue, edge, fit"));
}

cuts_paper cuts_paper_of(sb_run *run, sb_document *document, const sb_shop *shop, const sb_way *way) {
    return (cuts_paper){.run = run,
                        .document = document,
                        .plan = way->plan,
                        .problem = &way->cutlist->problem,
                        .cutlist = way->cutlist,
                        .shop = shop,
                        .settings = &shop->settings,
                        .takeoff = way->takeoff,
                        .style = &shop->settings.style};
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
    cuts_paper p = cuts_paper_of(run, document, shop, way);
    fill(&p);
    return document;
}

sb_document *sb_paper_bare_cuts(sb_run *run, const sb_plan *plan, sb_style style, sb_currency currency) {
    sb_document *document = sb_document_new(run, "Cut sheet", (sb_date){0}, style, currency);
    document->letter = style.units == SB_UNITS_IN;
    cuts_paper p = {
        .run = run, .document = document, .plan = plan, .problem = plan->problem, .style = &document->style};
    fill(&p);
    return document;
}
