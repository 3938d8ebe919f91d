/* main/main.c -- finds the command, runs it in one pool, tells the notices, gives the exit status. */
#include "main/command.h"

#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

const sb_command commands[] = {
    {"quote", "JOB", "price a job: quote, estimate, cut sheet and order list into a folder",
     "sawbill quote my-shop/jobs/first.job", "json out set units quiet option seconds", 1, 1, command_quote},
    {"takeoff", "JOB...", "totals over jobs, less the rack; what to order, per merchant",
     "sawbill takeoff my-shop/jobs/first.job", "json out set units quiet option seconds", 1, 1000,
     command_takeoff},
    {"cut", "JOB | --parts PARTS.csv --stock STOCK.csv", "cutting plans and the cut sheet",
     "sawbill cut my-shop/jobs/first.job",
     "json out set units quiet option parts stock measured kerf trim material-only drawings labels seconds",
     0, 1, command_cut},
    {"compare", "JOB", "the job's options side by side", "sawbill compare my-shop/jobs/first.job",
     "json out set units quiet batches seconds", 1, 1, command_compare},
    {"why", "JOB [FIGURE...]", "where figures come from; without one, which figures there are",
     "sawbill why my-shop/jobs/first.job total", "json out set units quiet option seconds", 1, 1000,
     command_why},
    {"angle", "frame SIDES | splay SIDES SLOPE | corner ANGLE [SLOPE] | point ANGLE | crown SPRING CORNER",
     "saw settings for a frame, a splayed box, a corner, a point, a crown moulding",
     "sawbill angle splay 4 75", "json out units quiet butt outside width length", 2, 3, command_angle},
    {"check", "[FILE...]", "every error in recipes, jobs and rates", "sawbill check my-shop/jobs/first.job",
     "json units quiet", 0, 1000, command_check},
    {"start", "DIR", "make a shop folder that works at once", "sawbill start my-shop", "json units quiet", 1,
     1, command_start},
};
const size_t command_count = sizeof commands / sizeof *commands;

/* The one thing a signal handler may touch. */
static volatile sig_atomic_t stop_asked;

static void ask_to_stop(int signal_number) {
    (void)signal_number;
    stop_asked = 1;
    signal(SIGINT, SIG_DFL); /* a second Ctrl-C ends the program */
}

const volatile int *stop_flag(void) {
    return (const volatile int *)&stop_asked;
}

bool stop_was_asked(void) {
    return stop_asked != 0;
}

typedef struct sb_errand {
    sb_run *run;
    const sb_command *command;
    int word_count;
    char **words;
    int status;
} sb_errand;

static void do_errand(void *context) {
    sb_errand *errand = context;
    sb_options options = {0};
    if (!options_read(errand->run, errand->command, errand->word_count, errand->words, &options)) {
        errand->status = STATUS_WRONG_USE;
        return;
    }
    if (options.help) {
        options_help(errand->command);
        errand->status = STATUS_DONE;
        return;
    }
    errand->status = errand->command->run(errand->run, &options);
    bool colour = isatty(STDERR_FILENO) && getenv("NO_COLOR") == NULL;
    fputs(sb_notices_text(errand->run, options.quiet ? SB_ADVICE : SB_NOTE, colour), stderr);
}

/* The worse of what the command says and what the notices say; wrong use stands above both. */
static int final_status(int command_status, int notice_status) {
    static const int order[] = {STATUS_DONE, STATUS_LOOK, STATUS_WRONG_INPUT, STATUS_SYSTEM,
                                STATUS_WRONG_USE};
    int worst = STATUS_DONE;
    for (size_t i = 0; i < sizeof order / sizeof *order; i++)
        if (order[i] == command_status || order[i] == notice_status)
            worst = order[i];
    return worst;
}

static const sb_command *find_command(const char *name) {
    for (size_t i = 0; i < command_count; i++)
        if (strcmp(commands[i].name, name) == 0)
            return &commands[i];
    return NULL;
}

static int unknown_command(const char *name) {
    if (*name == '-')
        return wrong_use("'%s' stands before the command; options go behind it: sawbill COMMAND %s", name,
                         name);
    const char *names[sizeof commands / sizeof *commands];
    for (size_t i = 0; i < command_count; i++)
        names[i] = commands[i].name;
    const char *near = sb_nearest(name, names, command_count);
    if (near)
        return wrong_use("there is no command '%s'; did you mean '%s'?", name, near);
    return wrong_use("there is no command '%s'; 'sawbill --help' lists them", name);
}

static int run_command(const sb_command *command, int word_count, char **words) {
    sb_run run = sb_run_new();
    sb_errand errand = {&run, command, word_count, words, STATUS_DONE};
    if (!run.pool || !sb_pool_run(run.pool, do_errand, &errand)) {
        fputs("sawbill: out of memory; nothing was written\n", stderr);
        sb_run_free(&run);
        return STATUS_SYSTEM;
    }
    int status = final_status(errand.status, sb_status(&run));
    sb_run_free(&run);
    return status;
}

int main(int argc, char **argv) {
    signal(SIGINT, ask_to_stop);
    signal(SIGPIPE, SIG_IGN); /* whoever reads may have read enough: the work goes on to its end */
    signal(SIGXFSZ, SIG_IGN); /* a file that may not grow is a failed write, told like one */
    if (argc < 2) {
        commands_help();
        return STATUS_WRONG_USE;
    }
    int status = STATUS_DONE;
    if (strcmp(argv[1], "--help") == 0 || strcmp(argv[1], "-h") == 0 || strcmp(argv[1], "help") == 0) {
        commands_help();
    } else if (strcmp(argv[1], "--version") == 0) {
        puts("sawbill " SAWBILL_VERSION);
    } else {
        const sb_command *command = find_command(argv[1]);
        status = command ? run_command(command, argc - 2, argv + 2) : unknown_command(argv[1]);
    }
    if (output_failed() && status != STATUS_SYSTEM) { /* else the command has told it */
        fputs("sawbill: could not write to standard output\n", stderr);
        return STATUS_SYSTEM;
    }
    return status;
}
