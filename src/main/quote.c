/* main/quote.c -- the main job: a job file to all its papers. */
#include "main/command.h"

/* What the papers are made of. */
typedef struct worked {
    const sb_desk *desk;
    const sb_ways *ways;
    const sb_breaks *breaks;
} worked;

typedef struct papers {
    const sb_document *quote, *estimate, *cuts, *order, *list;
} papers;

/* False after errors. */
static bool fill_papers(sb_run *run, const worked *w, papers *out) {
    const sb_desk *desk = w->desk;
    const sb_job *job = desk->job;
    const sb_way *way = &w->ways->list.items[0];
    const sb_wording *wording = desk_wording(run, desk);
    const char *name = job->title ? job->title : job->name;
    if (!wording)
        return false;
    *out = (papers){
        sb_paper_quote(run, desk->shop, job, w->ways, w->breaks, wording),
        sb_paper_estimate(run, desk->shop, job, w->ways, w->breaks),
        sb_paper_cuts(run, desk->shop, job, way),
        sb_paper_order(run, desk->shop, name, job->date, way->order),
        sb_paper_order_list(run, desk->shop, name, job->date, way->order),
    };
    return sb_ok(run);
}

static bool write_papers(sb_run *run, const worked *w) {
    papers p;
    if (!fill_papers(run, w, &p))
        return false;
    sb_file_set *files = sb_file_set_new(run, w->desk->folder);
    const char *base = w->desk->base;
    return file_xlsx(run, files, sb_pool_print(run->pool, "%s-quote", base), p.quote) &&
           file_pdf(run, files, sb_pool_print(run->pool, "%s-quote", base), p.quote) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-estimate", base), p.estimate) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-cuts", base), p.cuts) &&
           file_pdf(run, files, sb_pool_print(run->pool, "%s-cuts", base), p.cuts) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-order", base), p.order) &&
           file_csv(run, files, sb_pool_print(run->pool, "%s-order", base), p.list) &&
           sb_file_set_keep(run, files);
}

static const char *papers_list(sb_run *run, const sb_desk *desk) {
    static const char *const written[][2] = {
        {"quote.pdf", "for the customer"},           {"quote.xlsx", "the same as a workbook"},
        {"estimate.xlsx", "for the shop only"},      {"cuts.pdf", "for the saw"},
        {"cuts.xlsx", "the same as a workbook"},     {"order.xlsx", "for the merchants"},
        {"order.csv", "the same for other programs"}};
    const char *list = sb_pool_print(run->pool, "\nPapers: %s/\n", desk->folder);
    for (size_t i = 0; i < sizeof written / sizeof *written; i++)
        list = sb_pool_print(run->pool, "%s  %s-%-14s %s\n", list, desk->base, written[i][0], written[i][1]);
    return list;
}

static void show_result(sb_run *run, const sb_options *options, const worked *w) {
    const sb_desk *desk = w->desk;
    if (options->json) {
        sb_record *record = sb_record_quote(run, desk->shop, desk->job, w->ways);
        if (w->breaks->list.count > 1)
            sb_record_breaks(run, record, desk->shop, w->breaks);
        show_record(run, record);
        return;
    }
    show_document(run, options, sb_paper_summary(run, desk->shop, desk->job, w->ways));
    if (!options->quiet)
        show(run, papers_list(run, desk));
}

int command_quote(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    worked w = {.desk = &desk, .ways = desk_ways(run, options, &desk)};
    if (!w.ways)
        return STATUS_WRONG_INPUT;
    sb_tune tune = desk_tune(run, options, &desk);
    w.breaks = sb_breaks_of(run, desk.shop, desk.book, desk.job, &tune, w.ways);
    if (!write_papers(run, &w))
        return STATUS_WRONG_INPUT;
    show_result(run, options, &w);
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
