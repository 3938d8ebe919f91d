/* main/why.c -- where a figure comes from. */
#include "main/command.h"

int command_why(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    if (!desk_open(run, options, options->words.items[0], &desk))
        return STATUS_WRONG_INPUT;
    sb_tune tune = desk_tune(options);
    const sb_ways *ways = sb_ways_of(run, desk.shop, desk.book, desk.job, &tune);
    const sb_way *way = ways && sb_ok(run) ? desk_way(run, options, &desk, ways) : NULL;
    if (!way)
        return STATUS_WRONG_INPUT;
    const char *figure = options->words.items[1];
    if (options->json)
        show_record(run, sb_record_why(run, desk.shop, desk.job, way, figure));
    else
        show_document(run, options, sb_paper_why(run, desk.shop, desk.job, way, figure));
    return STATUS_DONE;
}
