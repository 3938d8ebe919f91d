/* main/compare.c -- a job's options side by side. */
#include "main/command.h"

static const sb_batches *batches_of(sb_run *run, const sb_options *options, const sb_desk *desk) {
    sb_tune tune = desk_tune(run, options, desk);
    return sb_batches_of(run, desk->shop, desk->book, desk->job, &tune);
}

static void show_comparison(sb_run *run, const sb_desk *desk, const sb_ways *ways,
                            const sb_batches *batches) {
    sb_record *record = sb_record_comparison(run, desk->shop, desk->job, ways);
    if (batches)
        sb_record_batches(run, record, desk->shop, ways, batches);
    show_record(run, record);
}

int command_compare(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    if (!ways)
        return STATUS_WRONG_INPUT;
    if (desk.job->options.count < 2 && !options->batches) /* batches compare numbers, too */
        sb_note(run, desk.job->place,
                "the job has %s; 'option' lines in the job file add more ways to make it",
                desk.job->options.count == 0 ? "no options" : "one option");
    sb_document *paper = sb_paper_comparison(run, desk.shop, desk.job, ways);
    const sb_batches *batches = options->batches ? batches_of(run, options, &desk) : NULL;
    if (batches)
        sb_paper_batches(run, paper, ways, batches);
    if (!out_xlsx(run, options, sb_pool_print(run->pool, "%s-options", desk.base), paper))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_comparison(run, &desk, ways, batches);
    else
        show_document(run, options, paper);
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
