/* main/why.c -- where figures come from; without a figure, which ones can be asked. */
#include "main/command.h"

/* The words of the quote are names of figures too; a shop without them does without these names. */
static const sb_wording *words_of(const sb_run *run, const sb_desk *desk) {
    sb_run aside = sb_run_aside(run);
    return desk_wording(&aside, desk);
}

/* A question about another number of pieces is asked of the job in that number. */
static bool ask(sb_run *run, const sb_options *options, const sb_desk *desk, const sb_ways *own,
                const char *text, sb_questions *questions) {
    sb_question question = sb_question_of(run, text);
    sb_tune tune = desk_tune(run, options, desk);
    question.ways = question.pieces
                        ? sb_break_of(run, desk->shop, desk->book, desk->job, &tune, own, question.pieces)
                        : own;
    if (question.ways)
        SB_PUSH(run->pool, *questions, question);
    return question.ways != NULL;
}

int command_why(sb_run *run, const sb_options *options) {
    sb_desk desk = {0};
    sb_questions questions = {0};
    const sb_ways *ways = desk_ways(run, options, &desk);
    bool asked = ways != NULL;
    for (size_t i = 1; ways && i < options->words.count; i++)
        asked = ask(run, options, &desk, ways, options->words.items[i], &questions) && asked;
    if (!asked)
        return STATUS_WRONG_INPUT;
    const sb_wording *words = words_of(run, &desk);
    sb_document *paper = sb_paper_why(run, desk.shop, desk.job, words, ways, &questions);
    if (!paper || !out_xlsx(run, options, sb_pool_print(run->pool, "%s-why", desk.base), paper))
        return STATUS_WRONG_INPUT;
    if (options->json)
        show_record(run, sb_record_why(run, desk.shop, desk.job, words, ways, &questions));
    else
        show(run, sb_write_text(run, paper, 80));
    return stop_was_asked() ? STATUS_LOOK : STATUS_DONE;
}
