/* main/takeoff.c -- totals and the order over several jobs, planned together. */
#include "main/command.h"

#include <string.h>

typedef struct stack {
    const sb_takeoff **items;
    size_t count, capacity;
} stack;

static const sb_job_option *chosen_option(sb_run *run, const sb_options *options, const sb_job *job) {
    if (job->options.count == 0)
        return NULL;
    for (size_t i = 0; options->option && i < job->options.count; i++)
        if (strcmp(job->options.items[i].name, options->option) == 0)
            return &job->options.items[i];
    if (options->option)
        sb_advise(run, job->place, "'%s' has no option '%s'; its first one is taken", job->name,
                  options->option);
    return &job->options.items[0];
}

/* All jobs of one takeoff stand in one shop with one set of rates: one rack, one price list. */
static bool same_rates(sb_run *run, const sb_desk *first, const sb_desk *other) {
    if (strcmp(first->shop->folder, other->shop->folder) == 0)
        return true;
    sb_error(run, other->job->place,
             "this job uses the rates in %s, the first one those in %s: take them off apart",
             other->shop->folder, first->shop->folder);
    return false;
}

static bool open_all(sb_run *run, const sb_options *options, sb_desk *first, stack *takeoffs) {
    for (size_t i = 0; i < options->words.count; i++) {
        sb_desk next = {0};
        if (!desk_open(run, options, options->words.items[i], &next))
            continue;
        if (takeoffs->count == 0)
            *first = next;
        else if (!same_rates(run, first, &next))
            continue;
        next.shop = first->shop;
        const sb_takeoff *takeoff =
            sb_takeoff_of(run, next.shop, next.book, next.job, chosen_option(run, options, next.job));
        if (takeoff)
            SB_PUSH(run->pool, *takeoffs, takeoff);
    }
    return sb_ok(run) && takeoffs->count > 0;
}

static bool write_papers(sb_run *run, const sb_options *options, const sb_desk *desk, const char *title,
                         const sb_document *paper, const sb_order *order) {
    if (!options->out)
        return true;
    sb_file_set *files = sb_file_set_new(run, options->out);
    sb_date date = desk->job->date;
    return file_xlsx(run, files, "takeoff", paper) &&
           file_xlsx(run, files, "order", sb_paper_order(run, desk->shop, title, date, order)) &&
           file_csv(run, files, "order", sb_paper_order_list(run, desk->shop, title, date, order)) &&
           sb_file_set_keep(run, files);
}

int command_takeoff(sb_run *run, const sb_options *options) {
    sb_desk first = {0};
    stack takeoffs = {0};
    if (!open_all(run, options, &first, &takeoffs))
        return STATUS_WRONG_INPUT;
    const sb_cutlist *needed = sb_cutlist_of(run, first.shop, takeoffs.items, takeoffs.count);
    if (!needed || !sb_ok(run))
        return STATUS_WRONG_INPUT;
    sb_cutlist *cutlist = SB_NEW(run->pool, sb_cutlist);
    *cutlist = *needed;
    cutlist->problem.rules.seconds = options->seconds;
    cutlist->problem.rules.watch = watch_new(run, options, first.shop->settings.currency.digits);
    needed = cutlist;
    const sb_plan *plan = sb_cutlist_plan(run, first.shop, takeoffs.items, takeoffs.count, &needed);
    if (!plan || !sb_ok(run))
        return STATUS_WRONG_INPUT;
    const sb_order *order = sb_order_of(run, first.shop, takeoffs.items, takeoffs.count, needed, plan, true);
    if (!order || !sb_ok(run))
        return STATUS_WRONG_INPUT;
    const char *title =
        takeoffs.count == 1 ? first.job->title : sb_pool_print(run->pool, "%zu jobs", takeoffs.count);
    sb_document *paper =
        sb_paper_takeoff(run, first.shop, title, takeoffs.items, takeoffs.count, plan, order);
    if (!write_papers(run, options, &first, title, paper, order))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_takeoff(run, first.shop, takeoffs.items, takeoffs.count, plan, order));
    else
        show_document(run, options, paper);
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
