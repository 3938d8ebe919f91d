/* main/quote.c -- the main job: a job file to all its papers. */
#include "main/command.h"

static bool write_papers(sb_run *run, const sb_desk *desk, const sb_ways *ways) {
    const sb_job *job = desk->job;
    const sb_shop *shop = desk->shop;
    const sb_way *way = &ways->list.items[0];
    const sb_wording *wording = desk_wording(run, desk);
    if (!wording)
        return false;
    sb_document *quote = sb_paper_quote(run, shop, job, ways, wording);
    sb_document *estimate = sb_paper_estimate(run, shop, job, ways);
    sb_document *cuts = sb_paper_cuts(run, shop, job, way);
    const char *name = job->title ? job->title : job->name;
    sb_document *order = sb_paper_order(run, shop, name, job->date, way->order);
    sb_document *list = sb_paper_order_list(run, shop, name, job->date, way->order);
    if (!sb_ok(run))
        return false;
    sb_file_set *files = sb_file_set_new(run, desk->folder);
    return file_xlsx(run, files, sb_pool_print(run->pool, "%s-quote", desk->base), quote) &&
           file_pdf(run, files, sb_pool_print(run->pool, "%s-quote", desk->base), quote) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-estimate", desk->base), estimate) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-cuts", desk->base), cuts) &&
           file_pdf(run, files, sb_pool_print(run->pool, "%s-cuts", desk->base), cuts) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-order", desk->base), order) &&
           file_csv(run, files, sb_pool_print(run->pool, "%s-order", desk->base), list) &&
           sb_file_set_keep(run, files);
}

static const char *papers_list(sb_run *run, const sb_desk *desk) {
    static const char *const papers[][2] = {
        {"quote.pdf", "for the customer"},           {"quote.xlsx", "the same as a workbook"},
        {"estimate.xlsx", "for the shop only"},      {"cuts.pdf", "for the saw"},
        {"cuts.xlsx", "the same as a workbook"},     {"order.xlsx", "for the merchants"},
        {"order.csv", "the same for other programs"}};
    const char *list = sb_pool_print(run->pool, "\nPapers: %s/\n", desk->folder);
    for (size_t i = 0; i < sizeof papers / sizeof *papers; i++)
        list = sb_pool_print(run->pool, "%s  %s-%-14s %s\n", list, desk->base, papers[i][0], papers[i][1]);
    return list;
}

int command_quote(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    if (!ways || !write_papers(run, &desk, ways))
        return STATUS_WRONG_INPUT;
    if (options->json) {
        show_record(run, sb_record_quote(run, desk.shop, desk.job, ways));
    } else {
        show_document(run, options, sb_paper_summary(run, desk.shop, desk.job, ways));
        if (!options->quiet)
            show(run, papers_list(run, &desk));
    }
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
