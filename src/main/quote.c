/* main/quote.c -- the main job: a job file to all its papers. */
#include "main/command.h"

#include <string.h>

/* What the papers are made of. */
typedef struct worked {
    const sb_desk *desk;
    const sb_ways *ways;
    const sb_breaks *breaks;
} worked;

typedef struct papers {
    const sb_document *quote, *cuts, *order, *list;
    sb_document *estimate;
} papers;

/* The papers of a revision carry its letter. */
static const char *base_of(sb_run *run, const sb_desk *desk, const char *revision) {
    return revision ? sb_pool_print(run->pool, "%s-%s", desk->base, revision) : desk->base;
}

static const char *record_name(sb_run *run, const sb_desk *desk, const char *revision) {
    return sb_pool_print(run->pool, "%s-estimate.json", base_of(run, desk, revision));
}

/* Where the estimate before was kept. One writes a letter when the second is due: the first may have none. */
static const char *stored_before(sb_run *run, const sb_desk *desk, const char *before) {
    const char *lettered = path_join(run, desk->folder, record_name(run, desk, before));
    const char *plain = path_join(run, desk->folder, record_name(run, desk, NULL));
    return !path_exists(lettered) && path_exists(plain) ? plain : lettered;
}

/* What has changed since the revision before, if there is one and its estimate was kept. */
static void add_changes(sb_run *run, const worked *w, sb_document *estimate) {
    const sb_desk *desk = w->desk;
    const char *before = desk->job->revision ? sb_revision_before(run, desk->job->revision) : NULL;
    if (!before)
        return;
    const sb_stored *stored = sb_stored_read(run, stored_before(run, desk, before), desk->shop, desk->job);
    if (stored)
        sb_paper_changes(run, estimate, desk->job, w->ways, stored);
}

static bool file_record(sb_run *run, const worked *w, sb_file_set *files) {
    const sb_desk *desk = w->desk;
    const char *text = sb_write_json(run, sb_record_estimate(run, desk->shop, desk->job, w->ways));
    return text &&
           sb_file_set_write(run, files, record_name(run, desk, desk->job->revision), text, strlen(text));
}

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
        .quote = sb_paper_quote(run, desk->shop, job, w->ways, w->breaks, wording),
        .estimate = sb_paper_estimate(run, desk->shop, job, w->ways, w->breaks),
        .cuts = sb_paper_cuts(run, desk->shop, job, way),
        .order = sb_paper_order(run, desk->shop, name, job->date, way->order),
        .list = sb_paper_order_list(run, desk->shop, name, job->date, way->order),
    };
    add_changes(run, w, out->estimate);
    return sb_ok(run);
}

static bool write_papers(sb_run *run, const worked *w) {
    papers p;
    if (!fill_papers(run, w, &p))
        return false;
    sb_file_set *files = sb_file_set_new(run, w->desk->folder);
    const char *base = base_of(run, w->desk, w->desk->job->revision);
    return file_xlsx(run, files, sb_pool_print(run->pool, "%s-quote", base), p.quote) &&
           file_pdf(run, files, sb_pool_print(run->pool, "%s-quote", base), p.quote) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-estimate", base), p.estimate) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-cuts", base), p.cuts) &&
           file_pdf(run, files, sb_pool_print(run->pool, "%s-cuts", base), p.cuts) &&
           file_xlsx(run, files, sb_pool_print(run->pool, "%s-order", base), p.order) &&
           file_csv(run, files, sb_pool_print(run->pool, "%s-order", base), p.list) &&
           file_record(run, w, files) && sb_file_set_keep(run, files);
}

static const char *papers_list(sb_run *run, const sb_desk *desk) {
    static const char *const written[][2] = {
        {"quote.pdf", "for the customer"},           {"quote.xlsx", "the same as a workbook"},
        {"estimate.xlsx", "for the shop only"},      {"cuts.pdf", "for the saw"},
        {"cuts.xlsx", "the same as a workbook"},     {"order.xlsx", "for the merchants"},
        {"order.csv", "the same for other programs"}, {"estimate.json", "kept for the next revision"}};
    const char *list = sb_pool_print(run->pool, "\nPapers: %s/\n", desk->folder);
    const char *base = base_of(run, desk, desk->job->revision);
    for (size_t i = 0; i < sizeof written / sizeof *written; i++)
        list = sb_pool_print(run->pool, "%s  %s-%-14s %s\n", list, base, written[i][0], written[i][1]);
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
    show_document(run, options, sb_paper_summary(run, desk->shop, desk->job, w->ways, w->breaks));
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
