/* main/compare.c -- a job's options side by side. */
#include "main/command.h"

int command_compare(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    if (!ways)
        return STATUS_WRONG_INPUT;
    if (desk.job->options.count < 2)
        sb_note(run, desk.job->place,
                "the job has %s; 'option' lines in the job file add more ways to make it",
                desk.job->options.count == 0 ? "no options" : "one option");
    sb_document *paper = sb_paper_comparison(run, desk.shop, desk.job, ways);
    if (!out_xlsx(run, options, sb_pool_print(run->pool, "%s-options", desk.base), paper))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_comparison(run, desk.shop, desk.job, ways));
    else
        show_document(run, options, paper);
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
