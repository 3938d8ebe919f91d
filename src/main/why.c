/* main/why.c -- where a figure comes from. */
#include "main/command.h"

int command_why(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    const sb_way *way = ways ? desk_way(run, options, &desk, ways) : NULL;
    if (!way)
        return STATUS_WRONG_INPUT;
    const char *figure = options->words.items[1];
    if (options->json)
        show_record(run, sb_record_why(run, desk.shop, desk.job, way, figure));
    else
        show_document(run, options, sb_paper_why(run, desk.shop, desk.job, way, figure));
    return STATUS_DONE;
}
