/* main/why.c -- where a figure comes from; without a figure, which ones can be asked. */
#include "main/command.h"

int command_why(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    if (!ways)
        return STATUS_WRONG_INPUT;
    const sb_way *way = &ways->list.items[0];
    const char *figure = options->words.count > 1 ? options->words.items[1] : NULL;
    sb_document *paper = sb_paper_why(run, desk.shop, desk.job, way, figure);
    if (!paper || !out_xlsx(run, options, sb_pool_print(run->pool, "%s-why", desk.base), paper))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_why(run, desk.shop, desk.job, way, figure));
    else
        show(run, sb_write_text(run, paper, 80));
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
